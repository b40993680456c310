// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/contacts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

// "20, 45: 0": where on the line, and how far.
std::vector<std::string> said(const Opening& opening, const Panel& panel) {
  const auto found = contacts(opening, panel);
  if (!found) return {"problem: " + found.error().what};
  std::vector<std::string> result;
  const auto mm = [](Length length) { return std::to_string((length.nm() + 500'000) / 1'000'000); };
  for (const Contact& contact : *found)
    result.push_back(mm(contact.x) + ", " + mm(contact.y) + ": " + mm(contact.distance));
  return result;
}

Panel placed(const Shape& shape, std::int64_t left_mm, std::int64_t top_mm) {
  Panel panel;
  panel.shape = shape;
  panel.left = Length::mm(left_mm);
  panel.top = Length::mm(top_mm);
  return panel;
}

TEST(Contacts, CornersOfARectangleInACircle) {
  // 60 x 80 in a circle of 100: all four corners.
  EXPECT_THAT(said({circle(Length::mm(100)), {}}, placed(rectangle(Length::mm(60), Length::mm(80)), 20, 10)),
              testing::UnorderedElementsAre("20, 10: 0", "80, 10: 0", "20, 90: 0", "80, 90: 0"));
}

TEST(Contacts, TheTighterSideOnly) {
  EXPECT_THAT(said({rectangle(Length::mm(60), Length::mm(80)), {}},
                   placed(rectangle(Length::mm(50), Length::mm(60)), 2, 10)),
              testing::UnorderedElementsAre("0, 10: 2", "0, 70: 2"));
}

}  // namespace
}  // namespace insetbook
