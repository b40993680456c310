// SPDX-License-Identifier: GPL-3.0-or-later
//
// Rows of question → printed tree; each question printed back as fields must read to the same tree.
#pragma once

#include <gtest/gtest.h>

#include <initializer_list>
#include <string>
#include <string_view>

#include "language/offers.h"
#include "language/read_question.h"

namespace insetbook {

struct TreeRow {
  const char* question;
  const char* tree;
};

inline void compare_trees(std::initializer_list<TreeRow> rows) {
  const Offers offers;
  const auto tree = [&](std::string_view text) {
    const auto question = read_question(text, offers.context());
    return question ? print(*question) : "Problem: " + question.error().what;
  };
  for (const TreeRow& row : rows) {
    EXPECT_EQ(tree(row.question), row.tree) << row.question;
    const auto question = read_question(row.question, offers.context());
    ASSERT_TRUE(question) << row.question;
    const std::string printed = print_as_fields(*question);
    EXPECT_EQ(tree(printed), row.tree) << row.question << " as fields: " << printed;
  }
}

}  // namespace insetbook
