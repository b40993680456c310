// SPDX-License-Identifier: GPL-3.0-or-later
//
// What it means that a piece has a size that was asked: one place for the SQL (conditions.cc) and for the
// explanation of a hit (facts.cc). All bands are closed, in whole nanometres; "under 3 in" is therefore "at
// most 3 in less 1 nm".
//   one figure   exact, about: either side lies in the band; under, over, at least, at most, between: both
//   sides do two figures  one side lies in the first band and the other in the second
// Orientation counts only where the question said one and the piece was recorded with one. A piece with a
// width alone answers for that side, and never for two figures; one without a width has no size. The distance
// is how far the nearest reading is from the figure that was asked: 0 for a met under, over or range.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "language/question.h"

namespace insetbook {

struct Band {
  std::int64_t low = 0;
  std::int64_t high = 0;
  bool holds(std::int64_t nm) const { return low <= nm && nm <= high; }
};

// A size that was asked, ready to be compared.
struct SizeRule {
  Band first, second;  // second: two figures only
  Band from_first,
      from_second;  // what the distance is measured from: the figure, or the range, that was asked
  bool two_figures = false;
  bool either_side = true;  // one figure: either side is enough
  bool placed = false;
  bool of_height = false;  // one figure, placed: the height is meant
  std::int64_t exact = 0;  // a distance up to here is an exact size
  bool ranks = true;       // false: whatever meets it has distance 0
};

// `slack` widens every band at both ends: for what comes nearest when nothing is found.
SizeRule size_rule(const SizeIs& size, Length slack = Length());

struct SidesOnRecord {
  std::optional<std::int64_t> width, height;
  bool placed = false;
};

// The distance where the sides meet the rule, else empty.
std::optional<std::int64_t> distance(const SizeRule& rule, const SidesOnRecord& sides);

// Sizes that are compared more loosely than they were asked, when what comes nearest is looked for.
struct Relaxed {
  std::vector<SizeIs> sizes;
  Length slack;

  bool holds(const SizeIs& size) const;
  SizeRule rule(const SizeIs& size) const;
};

// "1/8 in smaller", "1/8 in wider and 1/4 in shorter", "exactly that size".
std::string difference(const SizeIs& size, const SidesOnRecord& sides);

// Forms of a closed card: sides that differ by no more than this are a square.
inline constexpr Length square_within = Length::inch_fraction(1, 32);

}  // namespace insetbook
