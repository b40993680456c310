// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_question.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "language/bind.h"
#include "language/cover.h"
#include "language/hand_over.h"
#include "language/items.h"
#include "language/pieces.h"
#include "language/recognise.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_question = 64 * 1024;

Problem too_long(std::size_t bytes) {
  Problem problem;
  problem.what = "the question is " + std::to_string(bytes) + " bytes long";
  problem.expected = "at most 65536 bytes";
  return problem;
}

// Or a figure; what is not ASCII counts as one.
bool has_a_letter(std::string_view folded) {
  return std::ranges::any_of(folded, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
  });
}

// Brackets that do not close or did not open, and a text of marks only.
std::optional<Problem> cannot_be_asked(std::string_view text, const std::vector<Piece>& pieces) {
  std::vector<Span> open;
  bool words = pieces.empty();
  for (const Piece& piece : pieces) {
    if (piece.kind != Piece::Kind::mark) {
      words = words || piece.kind == Piece::Kind::phrase || has_a_letter(piece.folded);
    } else if (piece.folded == "(") {
      open.push_back(piece.span);
    } else if (piece.folded == ")") {
      if (open.empty())
        return problem_at(text, piece.span, "a bracket ends here and does not begin",
                          "a ( where the group begins");
      open.pop_back();
    }
  }
  if (!open.empty())
    return problem_at(text, open.back(), "a bracket begins here and does not end",
                      "a ) where the group ends");
  if (!words)
    return problem_at(text, {pieces.front().span.begin, pieces.back().span.end}, "nothing is asked",
                      "words, a size or a field, as in shape:circle");
  return std::nullopt;
}

// Words only, which are looked for in titles as well.
bool only_words(const Node& tree) {
  for (const Node& child : tree.children)
    if (child.kind != Node::Kind::one || !std::holds_alternative<WordsAre>(child.constraint.front().says))
      return false;
  return true;
}

// A question that is a sample's title, word for word, finds that sample, whatever else its words mean.
void offer_title(std::string_view text, const Names& names, Question& question) {
  if (question.tree.children.empty() || only_words(question.tree)) return;
  for (const NamedRecord& record : names.exactly(fold(text))) {
    if (record.kind != NameKind::sample) continue;
    const Span span{0, text.size()};
    Node title;
    title.kind = Node::Kind::one;
    title.constraint.push_back(
        constraint_of(text, span, TitleIs{record.id, record.name}, "the sample " + record.name));
    Node either;
    either.kind = Node::Kind::any;
    either.children.push_back(std::move(title));
    Node& first = question.tree.children.front();
    if (question.tree.children.size() == 1 && first.kind == Node::Kind::any)
      for (Node& child : first.children) either.children.push_back(std::move(child));
    else if (question.tree.children.size() == 1)
      either.children.push_back(std::move(first));
    else
      either.children.push_back(std::move(question.tree));
    question.tree = Node();
    question.tree.children.push_back(std::move(either));
    question.notes.push_back("there is a sample of that name");
    return;
  }
}

}  // namespace

Result<Question> read_question(std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_question) return failure(too_long(text.size()));
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return failure(pieces.error());
  if (auto problem = cannot_be_asked(text, *pieces)) return failure(std::move(*problem));
  HandedOver handed = hand_over(text, *pieces, context);
  if (handed.question) return std::move(*handed.question);
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
  for (OtherReading& other : handed.offered) question.other_readings.push_back(std::move(other));
  question.notes = std::move(itemised.notes);
  offer_title(text, context.names, question);
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
