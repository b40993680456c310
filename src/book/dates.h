// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dates as the book keeps them: ISO 8601, year-month-day, of the Gregorian calendar.
#pragma once

#include <string_view>

namespace insetbook {

bool is_iso_date(std::string_view text);

}  // namespace insetbook
