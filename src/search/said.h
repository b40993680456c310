// SPDX-License-Identifier: GPL-3.0-or-later
//
// A reason put together from parts, with the places of what was asked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"

namespace insetbook {

struct Said {
  std::string text;
  std::vector<Span> marks;  // bytes of `text`, in order

  // Empty parts add nothing. `asked`: the part is marked.
  void add(const std::string& part, bool asked, std::string_view between = ", ") {
    if (part.empty()) return;
    if (!text.empty()) text += between;
    if (asked) marks.push_back({text.size(), text.size() + part.size()});
    text += part;
  }
  void add(const Said& part, std::string_view between = ", ") {
    if (part.text.empty()) return;
    if (!text.empty()) text += between;
    for (const Span& each : part.marks) marks.push_back({text.size() + each.begin, text.size() + each.end});
    text += part.text;
  }
  void add_in_brackets(const Said& part) {
    text += " (";
    add(part, "");
    text += ")";
  }
};

}  // namespace insetbook
