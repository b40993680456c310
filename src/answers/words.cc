// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/words.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/own_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr VocabularyName all_vocabularies[] = {
    VocabularyName::technique,   VocabularyName::fold,  VocabularyName::feature,  VocabularyName::shape,
    VocabularyName::occasion,    VocabularyName::role,  VocabularyName::material, VocabularyName::adhesive,
    VocabularyName::colour_word, VocabularyName::status};

Result<VocabularyName> vocabulary_said(std::string_view word) {
  if (const std::optional<VocabularyName> name = vocabulary_name(word)) return *name;
  std::string known;
  for (const VocabularyName name : all_vocabularies)
    known += fmt::format("{}{}", known.empty() ? "" : ", ", vocabulary_word(name));
  return failure({.kind = ProblemKind::unknown_name,
                  .what = fmt::format("there is no vocabulary \"{}\"", word),
                  .expected = known});
}

// Labels that begin alike or lie near, for a word that means nothing yet.
std::vector<std::string> labels_like(const Vocabulary& vocabulary, std::string_view word) {
  constexpr std::size_t most = 5;
  const std::string folded = fold(word);
  const std::size_t limit = folded.size() > 6 ? 2 : 1;
  std::vector<std::string> near;
  for (const std::string& label : vocabulary.all_labels())
    if (near.size() < most && edit_distance(folded, label, limit) <= limit) near.push_back(label);
  return near;
}

// The id of the term of one vocabulary that a word means; the Problem says what is near.
Result<std::string> term_said(const Vocabulary& vocabulary, VocabularyName in, std::string_view word) {
  const std::vector<TermMatch> found = vocabulary.find(word, in);
  if (!found.empty()) return found.front().id;
  return failure({.kind = ProblemKind::unknown_name,
                  .what = fmt::format("\"{}\" is no {} that is known", word, vocabulary_word(in)),
                  .expected = fmt::format("insetbook words list {} shows them", vocabulary_word(in)),
                  .candidates = labels_like(vocabulary, word)});
}

std::vector<std::string> broader_of(const Vocabulary& vocabulary, const Term& term) {
  std::vector<std::string> chain;
  std::optional<Term> next = term;
  while (next && !next->broader.empty()) {
    next = vocabulary.term(term.vocabulary, next->broader);
    if (next) chain.push_back(next->label);
  }
  return chain;
}

Result<OwnWord> own_word_of(const Vocabulary& vocabulary, VocabularyName in, const WordAdded& added) {
  OwnWord word{.vocabulary = std::string(vocabulary_word(in)),
               .term = added.word,
               .labels = {},
               .broader = {},
               .stands = {}};
  if (added.means) {
    const Result<std::string> id = term_said(vocabulary, in, *added.means);
    if (!id) return failure(id.error());
    word.term = vocabulary.term(in, *id)->label;
    word.labels = {added.word};
  }
  if (added.broader) {
    const Result<std::string> id = term_said(vocabulary, in, *added.broader);
    if (!id) return failure(id.error());
    const std::vector<std::string> narrower = vocabulary.with_narrower(in, fold(word.term));
    if (std::find(narrower.begin(), narrower.end(), *id) != narrower.end())
      return failure(
          {.kind = ProblemKind::refused,
           .what = fmt::format("\"{}\" cannot be broader than \"{}\": it is narrower already, or the same",
                               *added.broader, word.term),
           .expected = "a term that does not rest on this one"});
    word.broader = *id;
  }
  if (added.stands) {
    const std::optional<Stands> stands = stands_named(fold(*added.stands));
    if (!stands || in != VocabularyName::fold)
      return failure({.what = in == VocabularyName::fold
                                  ? fmt::format("\"{}\" does not say how a card stands", *added.stands)
                                  : std::string("only a fold says how a card stands"),
                      .expected = "built to stand, part-open or no"});
    word.stands = std::string(stands_word(*stands));
  }
  return word;
}

}  // namespace

Vocabulary vocabulary_of(const Book& book) {
  const std::vector<OwnWord> rows = own_words(book);
  if (rows.empty()) return Vocabulary();
  std::vector<Term> own;
  for (const OwnWord& row : rows) {
    const std::optional<VocabularyName> name = vocabulary_name(row.vocabulary);
    if (!name) continue;
    Term term;
    term.vocabulary = *name;
    term.id = fold(row.term);
    term.label = row.term;
    term.labels = row.labels;
    term.broader = row.broader;
    term.stands = stands_named(row.stands).value_or(Stands::not_said);
    own.push_back(std::move(term));
  }
  return Vocabulary(std::move(own));
}

std::vector<WordCount> vocabularies_of(const Book& book) {
  const Vocabulary vocabulary = vocabulary_of(book);
  std::vector<WordCount> counts;
  for (const VocabularyName name : all_vocabularies) counts.push_back({name, vocabulary.terms(name).size()});
  return counts;
}

Result<std::vector<Term>> words_in(const Book& book, std::string_view vocabulary) {
  const Result<VocabularyName> name = vocabulary_said(vocabulary);
  if (!name) return failure(name.error());
  return vocabulary_of(book).terms(*name);
}

Result<std::vector<WordShown>> show_word(const Book& book, std::string_view word) {
  const Vocabulary vocabulary = vocabulary_of(book);
  std::vector<WordShown> shown;
  for (const TermMatch& match : vocabulary.find(word)) {
    const std::optional<Term> term = vocabulary.term(match.vocabulary, match.id);
    if (!term) continue;
    std::vector<std::string> narrower = vocabulary.with_narrower(match.vocabulary, match.id);
    if (!narrower.empty()) narrower.erase(narrower.begin());
    shown.push_back({*term, broader_of(vocabulary, *term), std::move(narrower)});
  }
  if (shown.empty())
    return failure({.kind = ProblemKind::unknown_name,
                    .what = fmt::format("\"{}\" is no word of a vocabulary", word),
                    .expected = "insetbook words add VOCABULARY WORD adds it",
                    .candidates = labels_like(vocabulary, word)});
  return shown;
}

Result<Term> add_word(Book& book, const WordAdded& added) {
  const Result<VocabularyName> name = vocabulary_said(added.vocabulary);
  if (!name) return failure(name.error());
  if (fold(added.word).empty())
    return failure({.what = "a word to add is missing", .expected = "words add technique \"ink washing\""});
  const Result<OwnWord> word = own_word_of(vocabulary_of(book), *name, added);
  if (!word) return failure(word.error());
  const Result<void> done = book.change(fmt::format("added the {} \"{}\"", word->vocabulary, added.word),
                                        [&](Change& change) -> Result<void> {
                                          const Result<PutResult> put = put_own_word(change, *word);
                                          if (!put) return failure(put.error());
                                          return {};
                                        });
  if (!done) return failure(done.error());
  return vocabulary_of(book).term(*name, fold(word->term)).value();
}

}  // namespace insetbook
