// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/papers.h"

#include <algorithm>

#include "measure/read.h"

namespace insetbook {

std::span<const PaperSize> papers() {
  return paper_tables().papers;
}

std::optional<PaperRead> read_paper(std::string_view text, Unit no_unit) {
  if (const PaperSize* named = paper_size_named(text))
    return PaperRead{named->width, named->height, named->unit, std::string(named->name),
                     write_source(named->from)};
  const Result<Size> size = read_size(text, no_unit);
  if (!size || size->one_figure) return std::nullopt;
  return PaperRead{size->width, size->height, size->unit, {}, {}};
}

std::vector<const PaperSize*> papers_of_size(Length width, Length height, Length within) {
  const auto near = [&](Length a, Length b) { return a - b <= within && b - a <= within; };
  const auto [shorter, longer] = std::minmax(width, height);
  std::vector<const PaperSize*> found;
  for (const PaperSize& paper : papers())
    if (near(paper.width, shorter) && near(paper.height, longer)) found.push_back(&paper);
  return found;
}

}  // namespace insetbook
