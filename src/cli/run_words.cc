// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/words.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "text/utf8.h"

namespace insetbook::cli {
namespace {

std::string joined(const std::vector<std::string>& parts) {
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::vector<std::string> row_of(const Term& term) {
  return {term.label, joined(term.labels), term.broader, std::string(stands_word(term.stands))};
}

int list(const Invocation& invocation, const Book& book, Output& out) {
  std::vector<std::vector<std::string>> rows;
  if (invocation.words.size() < 2) {
    for (const WordCount& count : vocabularies_of(book))
      rows.push_back({std::string(vocabulary_word(count.vocabulary)), fmt::format("{}", count.terms)});
    if (out.json())
      out.raw(rows_json("vocabularies", {"vocabulary", "terms"}, rows));
    else
      out.table({{"vocabulary", "terms"}, rows});
    return 0;
  }
  const Result<std::vector<Term>> terms = words_in(book, invocation.words[1]);
  if (!terms) return out.problem(terms.error());
  for (const Term& term : *terms) rows.push_back(row_of(term));
  if (out.json())
    out.raw(rows_json("terms", {"term", "labels", "broader", "stands"}, rows));
  else
    out.table({{"term", "also called", "broader", "stands"}, rows});
  return 0;
}

int show_words(const Invocation& invocation, const Book& book, Output& out) {
  std::string word;
  for (std::size_t i = 1; i < invocation.words.size(); ++i) word += (i > 1 ? " " : "") + invocation.words[i];
  const Result<std::vector<WordShown>> shown = show_word(book, word);
  if (!shown) return out.problem(shown.error());
  if (out.json()) {
    std::vector<std::vector<std::string>> rows;
    for (const WordShown& one : *shown)
      rows.push_back({std::string(vocabulary_word(one.term.vocabulary)), one.term.label,
                      joined(one.term.labels), joined(one.broader), joined(one.narrower),
                      std::string(stands_word(one.term.stands)), one.term.caution, one.term.caution_source});
    out.raw(rows_json(
        "words",
        {"vocabulary", "term", "labels", "broader", "narrower", "stands", "caution", "caution_source"},
        rows));
    return 0;
  }
  for (const WordShown& one : *shown) {
    out.headline(fmt::format("{} ({})", one.term.label, vocabulary_word(one.term.vocabulary)));
    if (!one.term.note.empty()) out.line(one.term.note);
    if (!one.term.labels.empty()) out.line("Also called: " + joined(one.term.labels));
    if (!one.broader.empty()) out.line("Broader: " + joined(one.broader));
    if (!one.narrower.empty()) out.line("Narrower: " + joined(one.narrower));
    if (one.term.stands != Stands::not_said)
      out.line(fmt::format("Stands: {}", stands_word(one.term.stands)));
    if (!one.term.caution.empty())
      out.line(fmt::format("Take care: {} ({})", one.term.caution, one.term.caution_source));
  }
  return 0;
}

std::optional<std::string> option_text(const Invocation& invocation, std::string_view name) {
  return invocation.has(name) ? std::optional(invocation.value(name)) : std::nullopt;
}

int add(const Invocation& invocation, Book& book, Output& out) {
  if (invocation.words.size() < 3)
    return out.problem({.what = "words add needs a vocabulary and a word",
                        .expected = "insetbook words add technique \"ink washing\" --broader inking"});
  WordAdded added{.vocabulary = invocation.words[1],
                  .word = {},
                  .means = option_text(invocation, "means"),
                  .broader = option_text(invocation, "broader"),
                  .stands = option_text(invocation, "stands")};
  for (std::size_t i = 2; i < invocation.words.size(); ++i)
    added.word += (i > 2 ? " " : "") + invocation.words[i];
  const Result<Term> term = add_word(book, added);
  if (!term) return out.problem(term.error());
  if (out.json())
    out.raw(plain_json({{"vocabulary", std::string(vocabulary_word(term->vocabulary))},
                        {"term", term->label},
                        {"labels", term->labels},
                        {"broader", term->broader}}));
  else
    out.headline(fmt::format("{} ({}){}", term->label, vocabulary_word(term->vocabulary),
                             term->labels.empty() ? "" : ", also called " + joined(term->labels)));
  return 0;
}

}  // namespace

int run_words(const Invocation& invocation, Output& out) {
  const std::string& what = invocation.words[0];
  const bool adds = what == "add";
  if (!adds && what != "list" && what != "show")
    return out.problem({.what = fmt::format("words cannot \"{}\"", what),
                        .expected = "words list [VOCABULARY], words show WORD or words add VOCABULARY WORD"});
  if (what == "show" && invocation.words.size() < 2)
    return out.problem({.what = "words show needs a word", .expected = "insetbook words show easel"});
  Result<Book> book = open_book(invocation, adds ? Book::Use::write : Book::Use::read, out);
  if (!book) return out.problem(book.error());
  if (adds) return add(invocation, *book, out);
  return what == "list" ? list(invocation, *book, out) : show_words(invocation, *book, out);
}

}  // namespace insetbook::cli
