// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/pieces.h"

#include <algorithm>

#include "text/utf8.h"

namespace insetbook {
namespace {

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  const std::string folded = fold(text);
  for (std::size_t at = 0; at < folded.size();) {
    const std::size_t end = std::min(folded.find(' ', at), folded.size());
    if (end > at) words.push_back(folded.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

// Two texts of one term, or one of them narrower: "frame" asks for a "mat frame" too.
bool one_term(const Vocabulary& vocabulary, VocabularyName in, std::string_view asked, std::string_view has) {
  const std::vector<TermMatch> of_piece = vocabulary.find(has, in);
  if (of_piece.empty()) return false;
  for (const TermMatch& match : vocabulary.find(asked, in)) {
    const std::vector<std::string> narrower = vocabulary.with_narrower(in, match.id);
    if (std::ranges::find(narrower, of_piece.front().id) != narrower.end()) return true;
  }
  return false;
}

bool has_word(const ShownElement& element, std::string_view word) {
  std::vector<std::string_view> texts{element.row.name, element.row.role, element.row.shape,
                                      element.row.side};
  for (const Mention& mention : element.row.mentions) texts.push_back(mention.written);
  return std::ranges::any_of(texts, [&](std::string_view text) {
    const std::vector<std::string> words = words_of(text);
    return std::ranges::find(words, word) != words.end();
  });
}

bool is_meant(const ShownElement& element, std::string_view said, const Vocabulary& vocabulary) {
  return has_word(element, said) || one_term(vocabulary, VocabularyName::shape, said, element.row.shape) ||
         one_term(vocabulary, VocabularyName::role, said, element.row.role);
}

}  // namespace

Result<PiecesAnswer> pieces_of_sample(const Book& book, const std::string& piece, std::int64_t sample_id,
                                      const Vocabulary& vocabulary) {
  const std::string title = record_name(book, RecordKind::sample, sample_id);
  Result<ShowAnswer> shown = show(book, title);
  if (!shown) return failure(shown.error());
  PiecesAnswer answer{.sample = title, .piece = piece};
  const auto* sample = std::get_if<ShownSample>(&shown->shown);
  if (!sample) return answer;
  const std::vector<std::string> words = words_of(piece);
  for (const ShownElement& element : sample->elements)
    if (is_meant(element, fold(piece), vocabulary) ||
        std::ranges::all_of(words,
                            [&](const std::string& word) { return is_meant(element, word, vocabulary); }))
      answer.pieces.push_back(element);
  answer.all = answer.pieces.empty();
  if (answer.all) answer.pieces = sample->elements;
  return answer;
}

}  // namespace insetbook
