// SPDX-License-Identifier: GPL-3.0-or-later
//
// Feasts whose day follows from the year alone: Christmas, Halloween, Valentine's, Easter. Others (mothers'
// day, thanksgiving) are different days in different countries, and are occasions only.
#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace insetbook {

// Easter Sunday of the western churches, of a year of the Gregorian calendar.
std::chrono::year_month_day easter(std::chrono::year year);

// The day of a feast in a year; `word` is folded.
std::optional<std::chrono::year_month_day> feast_day(std::string_view word, std::chrono::year year);

}  // namespace insetbook
