// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line_stages.h"

#include <utility>

#include "language/cover.h"
#include "language/pieces.h"
#include "language/recognise.h"

namespace insetbook {

Result<Itemised> read_stages(std::string_view text, const ReadingContext& context) {
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return failure(pieces.error());
  Recogniser recogniser(text, *pieces, context);
  Result<std::vector<Seen>> seen = cover(*pieces, recogniser);
  if (!seen) return failure(seen.error());
  return itemise(text, *pieces, std::move(*seen));
}

}  // namespace insetbook
