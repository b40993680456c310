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
  const Node* piece = nullptr;  // a whole piece that is excluded; `constraint` is what it begins with
};

void all_constraints(const Node& node, std::vector<const Constraint*>& all) {
  for (const Constraint& constraint : node.constraint) all.push_back(&constraint);
  for (const Node& child : node.children) all_constraints(child, all);
}

std::vector<const Constraint*> in_order_of_words(const Node& node) {
  std::vector<const Constraint*> all;
  all_constraints(node, all);
  std::ranges::stable_sort(all, {}, [](const Constraint* each) { return each->span.begin; });
  return all;
}

// Of a piece with more than one thing said of it "not" is said once; else of each thing there is.
void collect(const Node& node, bool excluded, std::vector<Meant>& all) {
  if (excluded && node.kind == Node::Kind::piece && node.children.size() > 1) {
    all.push_back({in_order_of_words(node).front(), true, &node});
    return;
  }
  for (const Constraint& constraint : node.constraint) all.push_back({&constraint, excluded});
  const bool within = excluded != (node.kind == Node::Kind::none);
  for (const Node& child : node.children) collect(child, within, all);
}

// "technique speckling and shape circle"
std::string told(const Node& node) {
  std::string of_children;
  const std::string_view between =
      node.kind == Node::Kind::any || node.kind == Node::Kind::none ? " or " : " and ";
  for (const Node& child : node.children) {
    if (!of_children.empty()) of_children += between;
    of_children += told(child);
  }
  switch (node.kind) {
    case Node::Kind::one:
      return node.constraint.front().means;
    case Node::Kind::goes:
      return node.constraint.front().means + (of_children.empty() ? "" : " a piece with " + of_children);
    case Node::Kind::none:
      return "not " + of_children;
    default:
      return of_children;
  }
}

// "Exactly four" is read as four or more, and not five or more: said once.
bool is_other_half(const std::vector<Meant>& all, const Meant& half) {
  const auto is_there_too = [&](const Constraint* constraint) {
    return constraint->span.end > 0 && std::ranges::any_of(all, [&](const Meant& other) {
             return !other.excluded && other.constraint->span == constraint->span &&
                    other.constraint->says.index() == constraint->says.index();
           });
  };
  if (!half.excluded) return false;
  return half.piece ? std::ranges::all_of(in_order_of_words(*half.piece), is_there_too)
                    : is_there_too(half.constraint);
}

std::string means(const std::vector<Meant>& all, const Meant& meant) {
  const auto* count = std::get_if<CountIs>(&meant.constraint->says);
  const bool exactly =
      count && std::ranges::any_of(all, [&](const Meant& other) {
        const auto of_count = [&](const Constraint* each) { return each->span == meant.constraint->span; };
        if (!is_other_half(all, other)) return false;
        return other.piece ? std::ranges::any_of(in_order_of_words(*other.piece), of_count)
                           : of_count(other.constraint);
      });
  if (exactly) return fmt::format("exactly {}", count->least);
  if (meant.piece) return "no piece with " + told(*meant.piece);
  if (count && meant.excluded) return fmt::format("at most {}", count->least - 1);
  return (meant.excluded ? "not " : "") + meant.constraint->means;
}

// The words of the question that say it.
std::string words_of(const Question& question, const Meant& meant) {
  if (!meant.piece) return meant.constraint->text;
  std::size_t begin = question.text.size(), end = 0;
  for (const Constraint* each : in_order_of_words(*meant.piece)) {
    if (each->span.end == 0) continue;
    begin = std::min(begin, each->span.begin);
    end = std::max(end, each->span.end);
  }
  return begin < end ? question.text.substr(begin, end - begin) : meant.constraint->text;
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
    Understood one{words_of(question, meant), means(all, meant)};
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
