// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_question.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "language/bind.h"
#include "language/contradictions.h"
#include "language/cover.h"
#include "language/hand_over.h"
#include "language/items.h"
#include "language/not_answered.h"
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

// Words that are only looked for count apart: a pasted sentence may have many.
Result<void> not_too_much(const std::vector<Item>& items) {
  const auto words = static_cast<std::size_t>(std::ranges::count_if(
      items, [](const Item& item) { return item.kind == Item::Kind::says && item.of == FieldName::text; }));
  std::size_t things = 0;
  for (const Item& item : items) {
    if (item.kind == Item::Kind::says) things += item.offered.size();
    if (item.kind == Item::Kind::number || item.kind == Item::Kind::preposition) ++things;
  }
  if (words <= most_words_asked && things - words <= most_things_asked) return {};
  Problem problem;
  problem.what = words > most_words_asked
                     ? "the question looks for " + std::to_string(words) + " words at once"
                     : "the question asks for " + std::to_string(things - words) + " things at once";
  problem.expected = "at most " + std::to_string(most_things_asked) +
                     " sizes, shapes, colours and the like, and " + std::to_string(most_words_asked) +
                     " words";
  return failure(std::move(problem));
}

// Or a figure; what is not ASCII counts as one.
bool has_a_letter(std::string_view folded) {
  return std::ranges::any_of(folded, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
  });
}

void add(std::vector<Problem>& problems, Problem problem) {
  if (problems.size() < most_problems) problems.push_back(std::move(problem));
}

// Brackets that do not close are closed where the question ends; those that did not open fall away.
void mend_brackets(std::string_view text, std::vector<Piece>& pieces, std::vector<Problem>& problems) {
  std::vector<Span> open;
  std::vector<std::size_t> never_opened;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (pieces[i].kind != Piece::Kind::mark) continue;
    if (pieces[i].folded == "(") open.push_back(pieces[i].span);
    if (pieces[i].folded != ")") continue;
    if (open.empty())
      never_opened.push_back(i);
    else
      open.pop_back();
  }
  for (const Span& span : open) {
    if (problems.size() == most_problems) break;
    add(problems,
        problem_at(text, span, "a bracket begins here and does not end", "a ) where the group ends"));
  }
  if (never_opened.empty()) return;
  std::vector<Piece> kept;
  std::size_t next = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (next == never_opened.size() || i != never_opened[next]) {
      kept.push_back(std::move(pieces[i]));
      continue;
    }
    if (problems.size() < most_problems)
      add(problems, problem_at(text, pieces[i].span, "a bracket ends here and does not begin",
                               "a ( where the group begins"));
    ++next;
  }
  pieces = std::move(kept);
}

// A text of marks only.
std::optional<Problem> nothing_asked(std::string_view text, const std::vector<Piece>& pieces) {
  const bool words = std::ranges::any_of(pieces, [](const Piece& piece) {
    return piece.kind == Piece::Kind::phrase ||
           (piece.kind == Piece::Kind::word && has_a_letter(piece.folded));
  });
  if (words || pieces.empty()) return std::nullopt;
  return problem_at(text, {pieces.front().span.begin, pieces.back().span.end}, "nothing is asked",
                    "words, a size or a field, as in shape:circle");
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
  std::vector<Problem> problems;
  std::vector<Piece> pieces = split(text, {0, text.size()}, problems);
  mend_brackets(text, pieces, problems);
  if (problems.empty())
    if (auto problem = nothing_asked(text, pieces)) problems.push_back(std::move(*problem));
  HandedOver handed = hand_over(text, pieces, context);
  if (handed.question) {
    handed.question->problems = std::move(problems);
    return std::move(*handed.question);
  }
  Recogniser recogniser(text, pieces, context);
  Itemised itemised = itemise(text, pieces, cover(pieces, recogniser, problems));
  if (const Result<void> asked = not_too_much(itemised.items); !asked) return failure(asked.error());
  Result<Node> tree = bind(text, itemised);
  if (!tree) return failure(tree.error());
  Question question;
  question.text = std::string(text);
  question.tree = std::move(*tree);
  std::ranges::stable_sort(problems, {}, [](const Problem& problem) { return problem.where.at; });
  question.problems = std::move(problems);
  question.order = itemised.order;
  question.ignored = std::move(itemised.ignored);
  question.other_readings = std::move(itemised.other);
  for (OtherReading& other : handed.offered) question.other_readings.push_back(std::move(other));
  question.notes = std::move(itemised.notes);
  add_contradictions(question.tree, question.notes);
  if (const std::string_view note = not_answered(pieces); !note.empty()) question.notes.emplace_back(note);
  offer_title(text, context.names, question);
  return question;
}

std::string explain_reading(std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_question) return too_long(text.size()).what;
  std::vector<Problem> problems;
  std::vector<Piece> pieces = split(text, {0, text.size()}, problems);
  std::string out = "pieces: " + print(pieces);
  mend_brackets(text, pieces, problems);
  Recogniser recogniser(text, pieces, context);
  out += "\ncover: " + print(cover(pieces, recogniser, problems), text);
  const Result<Question> question = read_question(text, context);
  out += "\ntree: " + (question ? print(*question) : question.error().what);
  return out;
}

}  // namespace insetbook
