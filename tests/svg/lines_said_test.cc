// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/lines_said.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(LinesSaid, Scales) {
  EXPECT_EQ(*read_scale("1 mm"), 1e6);
  EXPECT_EQ(*read_scale("1"), 1e6);
  EXPECT_EQ(*read_scale("1/2 in"), 12.7e6);
  EXPECT_EQ(*read_scale("96 = 1 in"), 25.4e6 / 96);
  EXPECT_EQ(*read_scale("2.5 = 10 mm"), 4e6);
  for (const std::string text : {"", "big", "0 mm", "0 = 1 in", "-1 = 1 in", "= 1 in", "96 =", "x = 1 in"}) {
    const auto scale = read_scale(text);
    ASSERT_FALSE(scale) << text;
    EXPECT_EQ(scale.error().what, "\"" + text + "\" is no scale of a drawing");
  }
}

TEST(LinesSaid, ReadsWhatIsSaid) {
  const auto said = read_lines_said("Red = stitched; .guide=pierced line;#00FF00 = window 2; ");
  ASSERT_TRUE(said);
  ASSERT_EQ(said->size(), 3u);
  EXPECT_EQ((*said)[0].first, "red");
  EXPECT_EQ((*said)[0].second.kind, "stitched");
  EXPECT_EQ((*said)[1].first, "guide");
  EXPECT_EQ((*said)[1].second.kind, "pierced");
  EXPECT_EQ((*said)[2].first, "#00ff00");
  EXPECT_EQ((*said)[2].second.name, "window 2");
  EXPECT_TRUE(read_lines_said("")->empty());
  for (const std::string text : {"red", "= stitched", "red =", "red = nonsense"})
    EXPECT_FALSE(read_lines_said(text)) << text;
}

TEST(LinesSaid, StrokeBeforeClassBeforeName) {
  const LinesSaid said = *read_lines_said("red = stitched; guide = pierced; inner = scored");
  DrawnOutline outline;
  EXPECT_FALSE(line_said(outline, {}, said));
  outline.name = "Inner";
  EXPECT_EQ(line_said(outline, {}, said)->kind, "scored");
  outline.classes = "thin guide";
  EXPECT_EQ(line_said(outline, {}, said)->kind, "pierced");
  outline.stroke = "red";
  EXPECT_EQ(line_said(outline, {}, said)->kind, "stitched");
}

TEST(LinesSaid, ANameCanBeTheLinesOwn) {
  DrawnOutline outline;
  outline.name = "Stitched line";
  EXPECT_EQ(line_said(outline, {}, {})->kind, "stitched");
  outline.name = "a gull";
  EXPECT_FALSE(line_said(outline, {}, {}));
  EXPECT_EQ(line_said(outline, {"embossed"}, {})->kind, "embossed");
}

}  // namespace
}  // namespace insetbook
