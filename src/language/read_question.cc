// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_question.h"

#include <utility>

#include "language/bind.h"
#include "language/cover.h"
#include "language/hand_over.h"
#include "language/items.h"
#include "language/pieces.h"
#include "language/recognise.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_question = 64 * 1024;

Problem too_long(std::size_t bytes) {
  Problem problem;
  problem.what = "the question is " + std::to_string(bytes) + " bytes long";
  problem.expected = "at most 65536 bytes";
  return problem;
}

}  // namespace

Result<Question> read_question(std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_question) return failure(too_long(text.size()));
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return failure(pieces.error());
  if (auto other = hand_over(text, *pieces, context.vocabulary, context.unit)) return std::move(*other);
  Recogniser recogniser(text, *pieces, context);
  Result<std::vector<Seen>> seen = cover(*pieces, recogniser);
  if (!seen) return failure(seen.error());
  Itemised itemised = itemise(text, *pieces, std::move(*seen));
  Result<Node> tree = bind(text, itemised);
  if (!tree) return failure(tree.error());
  Question question;
  question.text = std::string(text);
  question.tree = std::move(*tree);
  question.ignored = std::move(itemised.ignored);
  question.other_readings = std::move(itemised.other);
  question.notes = std::move(itemised.notes);
  return question;
}

std::string explain_reading(std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_question) return too_long(text.size()).what;
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return pieces.error().what;
  std::string out = "pieces: " + print(*pieces);
  Recogniser recogniser(text, *pieces, context);
  if (const Result<std::vector<Seen>> seen = cover(*pieces, recogniser))
    out += "\ncover: " + print(*seen, text);
  const Result<Question> question = read_question(text, context);
  out += "\ntree: " + (question ? print(*question) : question.error().what);
  return out;
}

}  // namespace insetbook
