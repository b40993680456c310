// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/reading_steps.h"

#include "language/cover.h"
#include "language/pieces.h"
#include "language/recognise.h"

namespace insetbook {

std::size_t reading_steps(std::string_view text, const ReadingContext& context) {
  std::vector<Problem> problems;
  const std::vector<Piece> pieces = split(text, {0, text.size()}, problems);
  Recogniser recogniser(text, pieces, context);
  cover(pieces, recogniser, problems);
  return recogniser.steps();
}

}  // namespace insetbook
