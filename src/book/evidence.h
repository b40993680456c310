// SPDX-License-Identifier: GPL-3.0-or-later
//
// Measurements are evidence: nothing is overwritten. The rules of "Measurements are evidence":
// u, the give or take, is half the mark that a figure was read to (a ruler with none stated: 1/16 in; a
// drawing or maker's figure: u = 0). A new figure within the sum of both u, inclusive, on both sides is a
// confirmation; one that is not is a conflict: kept, while the current figure stands until the person settles
// it. The same figure, method, mark and date again is the same measurement and adds nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct Measured {
  std::int64_t id = 0;
  std::int64_t line_id = 0;
  std::string standing;  // current, confirmation, conflict, earlier
  Length width, height;
  Unit unit = Unit::inch;
  std::string method;          // ruler, callipers, scan, drawing, maker's figure, estimated
  std::optional<Length> mark;  // read to
  Length give_or_take;
  std::string date;  // ISO or empty
  std::string note;
};

// u by the rule above. An unknown method is treated as a ruler.
Length give_or_take(std::string_view method, std::optional<Length> mark, Unit unit);
// The method for any word of it ("calipers", "caliper" → "callipers"); empty when it is none.
std::string measuring_method(std::string_view word);

enum class MeasureResult { added, confirmed, conflict, same };

struct MeasureOutcome {
  MeasureResult result = MeasureResult::added;
  std::vector<Measured> known;       // the current one first, then newest first
  std::vector<std::string> used_by;  // conflict: samples that used the old figure
};

// Records one measurement inside a change. `accept`: the new figure becomes the current one, the old one
// stays as "earlier" (this is how a conflict is settled).
Result<MeasureOutcome> record_measurement(Change& change, Measured measured, bool accept);
std::vector<Measured> measurements_of(const Book& book,
                                      std::int64_t line_id);  // the current one first, then newest first

}  // namespace insetbook
