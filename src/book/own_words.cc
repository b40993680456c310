// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/own_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

#include "book/problems.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr std::string_view between = "; ";

std::string joined_labels(const std::vector<std::string>& labels) {
  std::string text;
  for (const std::string& label : labels) text += (text.empty() ? "" : std::string(between)) + label;
  return text;
}

OwnWord read_word(const Statement& row) {
  OwnWord word;
  word.vocabulary = row.text(1);
  word.term = row.text(2);
  word.labels = split_labels(row.text(3));
  word.broader = row.text(4);
  word.stands = row.text(5);
  return word;
}

struct FoundWord {
  std::int64_t id;
  OwnWord word;
};

std::optional<FoundWord> find_word(const Book& book, std::string_view vocabulary, std::string_view term) {
  Statement& row = book.statement(
      "SELECT id, vocabulary, term, labels, broader, stands FROM own_term WHERE vocabulary = ?");
  row.bind(1, vocabulary);
  const std::string folded = fold(term);
  std::optional<FoundWord> found;
  while (!found && row.step()) {
    if (fold(row.text(2)) == folded) found = FoundWord{row.integer(0), read_word(row)};
  }
  row.reset();
  return found;
}

bool has_label(const std::vector<std::string>& labels, std::string_view label) {
  const std::string folded = fold(label);
  return std::any_of(labels.begin(), labels.end(),
                     [&](const std::string& one) { return fold(one) == folded; });
}

Problem bad_word(std::string_view text, std::string what, std::string expected) {
  Problem problem;
  problem.what = std::move(what);
  problem.where.text = text;
  problem.expected = std::move(expected);
  return problem;
}

std::optional<Problem> fault_in(const std::string& text) {
  if (!valid_utf8(text)) return bad_word(text, "a word is not in UTF-8", "text in UTF-8");
  if (auto control = control_character_in(text, Lines::one)) return control;
  if (fold(text).empty()) return bad_word(text, "a word has no letters", "a word or a few words");
  if (text.find(';') != std::string::npos) {
    return bad_word(text, fmt::format("{} has a semicolon in it", in_quotes(text)),
                    "one word or phrase; give several one by one");
  }
  return std::nullopt;
}

Problem no_such_word(const Book& book, std::string_view vocabulary, std::string_view term) {
  Problem problem =
      bad_word(term, fmt::format("{} is none of your own words for a {}", in_quotes(term), vocabulary),
               "one of your own words");
  problem.kind = ProblemKind::unknown_name;
  for (const OwnWord& word : own_words(book)) {
    if (word.vocabulary == vocabulary) problem.candidates.push_back(word.term);
  }
  if (problem.candidates.empty()) problem.expected = "you have no words of your own there yet";
  return problem;
}

void write_word(const Book& book, std::int64_t id, const OwnWord& word) {
  book.statement("UPDATE own_term SET labels = ?, broader = ?, stands = ? WHERE id = ?")
      .bind_all(std::string_view(joined_labels(word.labels)), std::string_view(word.broader),
                std::string_view(word.stands), id)
      .run();
}

}  // namespace

std::vector<std::string> split_labels(std::string_view text) {
  std::vector<std::string> labels;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(between), text.size());
    if (end > 0) labels.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + between.size(), text.size()));
  }
  return labels;
}

Result<void> check_own_word(const OwnWord& word) {
  if (auto fault = fault_in(word.term)) return failure(std::move(*fault));
  for (const std::string& label : word.labels) {
    if (auto fault = fault_in(label)) return failure(std::move(*fault));
  }
  return {};
}

Result<PutResult> put_own_word(Change& change, const OwnWord& word) {
  const Book& book = change.book();
  if (auto fine = check_own_word(word); !fine) return failure(fine.error());
  std::optional<FoundWord> known = find_word(book, word.vocabulary, word.term);
  OwnWord kept = known ? known->word : word;
  if (!known) kept.labels.clear();
  for (const std::string& label : word.labels) {
    if (!has_label(kept.labels, label)) kept.labels.emplace_back(trim(label));
  }
  if (!word.broader.empty()) kept.broader = word.broader;
  if (!word.stands.empty()) kept.stands = word.stands;
  if (known) {
    if (kept == known->word) return PutResult::same;
    write_word(book, known->id, kept);
    return PutResult::changed;
  }
  book.statement("INSERT INTO own_term (vocabulary, term, labels, broader, stands) VALUES (?, ?, ?, ?, ?)")
      .bind_all(std::string_view(kept.vocabulary), trim(kept.term),
                std::string_view(joined_labels(kept.labels)), std::string_view(kept.broader),
                std::string_view(kept.stands))
      .run();
  return PutResult::added;
}

std::vector<OwnWord> own_words(const Book& book) {
  Statement& row = book.statement(
      "SELECT id, vocabulary, term, labels, broader, stands FROM own_term ORDER BY vocabulary, term");
  std::vector<OwnWord> words;
  while (row.step()) words.push_back(read_word(row));
  return words;
}

Result<void> remove_own_word(Change& change, std::string_view vocabulary, std::string_view term,
                             std::string_view label) {
  const Book& book = change.book();
  std::optional<FoundWord> known = find_word(book, vocabulary, term);
  if (!known || (!label.empty() && !has_label(known->word.labels, label))) {
    return failure(no_such_word(book, vocabulary, known ? label : term));
  }
  if (label.empty()) {
    book.statement("DELETE FROM own_term WHERE id = ?").bind(1, known->id).run();
    return {};
  }
  std::erase_if(known->word.labels, [&](const std::string& one) { return fold(one) == fold(label); });
  write_word(book, known->id, known->word);
  return {};
}

}  // namespace insetbook
