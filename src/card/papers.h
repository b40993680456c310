// SPDX-License-Identifier: GPL-3.0-or-later
//
// Sheets of paper by their names: ISO 216, American sheets, what scrapbook paper is sold as
// (schema/papers/papers.json; each size says where it comes from). A name means the sheet: "A2" is 420 x 594
// mm here. What it means said of a card is language/paper_names.h, of an envelope card/envelopes.h.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "schema/papers.h"

namespace insetbook {

std::span<const PaperSize> papers();

// A sheet as somebody said it, upright or lying as it was said; named ones stand upright.
struct PaperRead {
  Length width, height;
  Unit unit = Unit::inch;
  std::string name;    // in the table; empty for figures
  std::string source;  // of the size of a name, with its year and how surely it is known
};

// "A4", "letter paper", "8-1/2 x 11 in". `no_unit`: of figures without one. Empty where it is neither.
std::optional<PaperRead> read_paper(std::string_view text, Unit no_unit);

// The named sheets of that size, either way round, each side within `within` (inclusive), in the table's
// order.
std::vector<const PaperSize*> papers_of_size(Length width, Length height, Length within);

}  // namespace insetbook
