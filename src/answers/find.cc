// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/find.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/book_names.h"
#include "answers/find_another.h"
#include "answers/words.h"
#include "language/read_question.h"

namespace insetbook {
namespace {

struct Meant {
  const Constraint* constraint = nullptr;
  bool excluded = false;
};

void collect(const Node& node, bool excluded, std::vector<Meant>& all) {
  for (const Constraint& constraint : node.constraint) all.push_back({&constraint, excluded});
  const bool within = excluded != (node.kind == Node::Kind::none);
  for (const Node& child : node.children) collect(child, within, all);
}

// "Exactly four" is read as four or more, and not five or more: said once.
bool is_other_half(const std::vector<Meant>& all, const Meant& half) {
  const auto from_same_words = [&](const Meant& other) {
    return !other.excluded && other.constraint->span == half.constraint->span &&
           other.constraint->says.index() == half.constraint->says.index();
  };
  return half.excluded && half.constraint->span.end > 0 && std::ranges::any_of(all, from_same_words);
}

std::string means(const std::vector<Meant>& all, const Meant& meant) {
  const auto* count = std::get_if<CountIs>(&meant.constraint->says);
  const bool exactly = count && std::ranges::any_of(all, [&](const Meant& other) {
                         return is_other_half(all, other) && other.constraint->span == meant.constraint->span;
                       });
  if (exactly) return fmt::format("exactly {}", count->least);
  return (meant.excluded ? "not " : "") + meant.constraint->means;
}

// Every constraint in the order of the question's words, each once.
std::vector<Understood> understood_of(const Question& question) {
  std::vector<Meant> all;
  collect(question.tree, false, all);
  std::stable_sort(all.begin(), all.end(), [](const Meant& a, const Meant& b) {
    return a.constraint->span.begin < b.constraint->span.begin;
  });
  std::vector<Understood> understood;
  for (const Meant& meant : all) {
    if (is_other_half(all, meant)) continue;
    Understood one{meant.constraint->text, means(all, meant)};
    const auto same = [&](const Understood& other) {
      return other.text == one.text && other.means == one.means;
    };
    if (std::ranges::none_of(understood, same)) understood.push_back(std::move(one));
  }
  return understood;
}

bool no_samples(const Book& book) {
  Statement& any = book.statement("SELECT 1 FROM sample LIMIT 1");
  const bool none = !any.step();
  any.reset();
  return none;
}

// What is asked outright comes before what the question says.
void set_order(const FindAsked& asked, const Question& question, SearchOptions& options) {
  if (question.order) {
    options.order = question.order->oldest_first ? Order::oldest : Order::newest;
    if (question.order->most) options.limit = static_cast<std::size_t>(*question.order->most);
  }
  options.limit = asked.limit.value_or(options.limit);
  options.order = asked.order.value_or(options.order);
}

}  // namespace

Result<FindAnswer> find(const Book& book, const FindAsked& asked) {
  const Vocabulary vocabulary = vocabulary_of(book);
  const BookNames names(book);
  const ReadingContext context = reading_context(book, vocabulary, names);
  const Result<Question> question = read_question(asked.question, context);
  if (!question) return failure(question.error());
  FindAnswer answer;
  answer.understood = understood_of(*question);
  answer.ignored = question->ignored;
  answer.other_readings = question->other_readings;
  answer.notes = question->notes;
  answer.problems = question->problems;
  if (asked.explain) answer.explained = explain_reading(asked.question, context);
  if (!answer.problems.empty()) return answer;
  if (question->asks != Asks::samples) {
    const Result<void> answered = answer_another(book, *question, context, asked, answer);
    if (!answered) return failure(answered.error());
    return answer;
  }
  answer.as_fields = print_as_fields(*question);
  if (asked.explain) answer.explained += "\n" + explain_search(book, *question);
  SearchOptions options;
  set_order(asked, *question, options);
  options.vocabulary = &vocabulary;
  options.facets = asked.facets;
  Result<Hits> hits = search(book, *question, options);
  if (!hits) return failure(hits.error());
  if (hits->hits.empty() && no_samples(book))
    answer.notes.push_back("The book has no samples yet: insetbook import takes a table of them.");
  answer.answer = std::move(*hits);
  return answer;
}

}  // namespace insetbook
