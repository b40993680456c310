// SPDX-License-Identifier: GPL-3.0-or-later
//
// The settings of a book, from one table: name, what it is for, default in an inch book and in a metric book.
// Unit, cutting step, border, least strip, marks of the scoring board, paper at hand, envelope slack, "high
// of centre", the hemisphere whose seasons are meant, today's date for tests.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "book/book.h"

namespace insetbook {

struct Settings {
  Unit unit = Unit::inch;
  Length cutting_step;         // 1/16 in; 1 mm
  Length border;               // 1/16 in; 2 mm
  Length least_strip;          // 1/8 in; 3 mm
  Length scoring_marks;        // 1/8 in; 5 mm
  std::string paper;           // sizes at hand, '; ' between them
  Length envelope_slack;       // 1/8 in; 3 mm
  std::string high_of_centre;  // "half of the space above"
  bool southern = false;       // the hemisphere: "last spring" is that of the south
  std::string today;           // ISO date, or empty = the day it is
};

struct SettingRow {
  std::string_view name;  // "cutting step"
  std::string_view help;  // one line
  std::string_view inch_default;
  std::string_view mm_default;
};
std::span<const SettingRow> setting_rows();

// A setting's name as the table has it: "Cutting-Step" → "cutting step".
std::optional<std::string_view> setting_called(std::string_view name);

Settings settings(const Book& book);
// The value as it would be kept; empty: the default. A Problem where `set_setting` would refuse it.
Result<std::string> checked_setting(std::string_view name, std::string_view value, Unit unit);
// Reads and checks the value; the Problem names what would be accepted, or the nearest names of settings.
Result<void> set_setting(Book& book, std::string_view name, std::string_view value);
// The value as a person reads it, the default where it is not set.
Result<std::string> setting_text(const Book& book, std::string_view name);

}  // namespace insetbook
