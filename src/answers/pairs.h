// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Which cut shapes make an even border in or around this one?" and "which two dies make a frame a quarter
// inch wide?" A pair is an outer and an inner die: what the outer one cuts, with what the inner one cuts laid
// on its middle (or cut out of it). What shows is the strip between them. It is even where it is as wide
// everywhere (fit.h, `even_strip`); scallops, arches and other drawn outlines are looked at beside their own
// kind only. Two of one shape of which that cannot be said are pairs too where the strip is nowhere more than
// 1/4 in (6 mm) wider than elsewhere, with the least and the greatest width.
//   - A border asked: pairs whose strip is that wide, within half the cutting step; the closest first.
//   - None asked: the narrowest first, from 1/64 in (0.5 mm) on: less cannot be seen.
// Even ones come before others. Each strip is known to half the give-or-take of both dies together.
// The opening is the line that was said, or a size and shape; where only a die was, what goes into it goes
// into the innermost line that is no window, and what goes round it goes round its cut edge. The other die
// counts by its cut edge.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/openings.h"
#include "fit/fit.h"

namespace insetbook {

struct PairsAsked {
  std::string opening;                // as typed; empty: any two dies of the drawer, and a border is wanted
  std::optional<std::string> border;  // as typed
  std::optional<std::string> in_set;  // only dies of this set beside the opening
};

struct DiePair {
  OpeningRecord outer, inner;
  Length least, greatest;  // of the strip; alike where it is even
  bool even = false;
  bool turned = false;  // with the inner one turned by a quarter
  Length give_or_take;  // of the strip
};

struct PairsAnswer {
  std::optional<OpeningRecord> opening;   // what goes into it is measured by this line
  std::optional<OpeningRecord> cut_edge;  // what goes round it by this one, where that is another
  std::string note;                       // how a size was read, where that must be said
  Unit unit = Unit::inch;
  std::optional<Length> border;     // asked
  std::vector<DiePair> around, in;  // of the opening
  std::vector<DiePair> any;         // where no opening was said
  int not_computed = 0;             // cut edges whose shape is not computed yet
};

// A Problem: the opening is none, or not measured; no opening and no border.
Result<PairsAnswer> pairs_of(const Book& book, const PairsAsked& asked);

}  // namespace insetbook
