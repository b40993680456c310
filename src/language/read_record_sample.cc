// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <span>

#include "language/read_record_lines.h"
#include "language/read_record_reader.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// The vocabularies that a table's column of that name tries.
std::span<const VocabularyName> tried_for(std::string_view key) {
  static constexpr VocabularyName of_fold[] = {VocabularyName::fold, VocabularyName::feature};
  static constexpr VocabularyName of_occasion[] = {VocabularyName::occasion};
  static constexpr VocabularyName of_technique[] = {VocabularyName::technique, VocabularyName::feature,
                                                    VocabularyName::material};
  if (key.starts_with("fold")) return of_fold;
  if (key.starts_with("occasion")) return of_occasion;
  return of_technique;
}

}  // namespace

void RecordReader::once(std::string& field, std::string_view value, const Part& part) {
  if (value.empty()) return left_over_line(part, "nothing stands behind the colon", "what it is");
  if (!field.empty() && fold(field) != fold(value))
    return left_over_line(part, "it was said already: \"" + field + "\"", "one of them");
  field = std::string(value);
}

void RecordReader::made(std::string_view value, const Part& part) {
  const Result<DaySaid> day = read_day(value, &context_);
  if (!day) return left_over_line(part, day.error().what, day.error().expected);
  if (fold(value) == "today" || fold(value) == "yesterday")
    record_.remarks.push_back("today is " + context_.today);
  if (!day->other.empty()) two_days(value, *day, part);
  once(record_.sample.made, day->day, part);
}

// "3/4/2024" is kept by the book's order, and told with the other one.
void RecordReader::two_days(std::string_view value, const DaySaid& day, const Part& part) {
  const std::string said = in_quotes(value);
  const bool inches = context_.unit == Unit::inch;
  record_.remarks.push_back("line " + std::to_string(row_) + ": " + said + " was read as " + day.day +
                            ", the " + (inches ? "month" : "day") + " first as in a book in " +
                            (inches ? "inches" : "millimetres") + "; it could be " + day.other);
  NotRead doubtful;
  doubtful.span = {0, part.said.size()};
  doubtful.what = said + " can be read two ways";
  doubtful.expected = day.day + " or " + day.other;
  record_.doubtful.push_back(problem_of(doubtful, part.offset));
}

void RecordReader::finished(std::string_view value, const Part& part) {
  const Result<Size> size = read_size(value, context_.unit);
  if (!size) {
    const LineSaid line = read_line("card " + std::string(value), context_);
    if (line.closed) return close(*line.closed, line.closed_text, part);
    return left_over_line(part, size.error().what, size.error().expected);
  }
  const LineSaid line = read_line(value, context_);
  close(*size, line.piece.size_text.empty() ? write_said(*size) : line.piece.size_text, part);
}

void RecordReader::close(const Size& size, const std::string& text, const Part& part) {
  SampleOfRecord& sample = record_.sample;
  if (sample.closed && (sample.closed->width != size.width || sample.closed->height != size.height))
    return left_over_line(part, "the finished size was said already: " + sample.closed_text, "one of them");
  sample.closed = size;
  sample.closed_text = text;
}

void RecordReader::add_scores(std::string_view value, const Part& part) {
  const LineSaid line = read_line("scored at " + std::string(value), context_);
  if (line.scores.empty()) return left_over_line(part, "no figure is said", "scores: 2-1/8; 4-1/4");
  append(record_.sample.scores, line.scores);
}
void RecordReader::append(std::string& list, std::string_view more) {
  if (more.empty()) return;
  if (!list.empty()) list += "; ";
  list += more;
}

// A ';' parts the steps in the book.
void RecordReader::add_step(std::string_view said) {
  std::string step(trim(said));
  std::ranges::replace(step, ';', ',');
  if (!step.empty()) record_.sample.steps.push_back(std::move(step));
}

void RecordReader::add_supplies(std::string_view value) {
  for (std::string& one : parts_of_list(value)) record_.sample.supplies.push_back(std::move(one));
}

void RecordReader::add_term(TermSaid term) {
  auto& terms = record_.sample.terms;
  const bool there = std::ranges::any_of(
      terms, [&](const TermSaid& each) { return each.kind == term.kind && each.term == term.term; });
  if (!there) terms.push_back(std::move(term));
}

// "technique: dry embossing, speckling"
void RecordReader::terms(std::string_view folded, const Part& value) {
  const std::span<const VocabularyName> vocabularies = tried_for(folded);
  for (const std::string& one : parts_of_list(value.said)) {
    const auto known = std::ranges::find_if(vocabularies, [&](VocabularyName vocabulary) {
      return !context_.vocabulary.find(one, vocabulary).empty();
    });
    if (known != vocabularies.end()) {
      const std::string kind(vocabulary_word(*known));
      add_term({kind, context_.vocabulary.find(one, *known).front().id, one});
      continue;
    }
    const std::size_t at = value.said.find(one);
    const NotRead lost{{at, at + one.size()},
                       "\"" + one + "\" is no " + std::string(vocabulary_word(vocabularies.front())) +
                           " that the vocabularies know",
                       "insetbook words list shows them; insetbook words add adds one",
                       {},
                       {}};
    left_over(lost, value.offset, std::nullopt);
  }
}

}  // namespace insetbook
