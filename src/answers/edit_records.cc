// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/edit_records.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "answers/words.h"
#include "book/names.h"
#include "card/closed_size.h"
#include "card/paper_weight.h"
#include "language/near_label.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Fields of a sample or a piece that are kept as what is said of it (the table `mention`).
struct SaidField {
  std::string_view name, other_name;
  std::string_view kind;
  bool of_sample, of_piece;
};
constexpr std::array<SaidField, 8> said_fields{{
    {"fold", "folds", "fold", true, false},
    {"occasion", "occasions", "occasion", true, false},
    {"feature", "features", "feature", true, false},
    {"technique", "techniques", "technique", true, true},
    {"material", "materials", "material", true, true},
    {"colour", "color", "paper", false, true},
    {"ink", "inks", "ink", false, true},
    {"supply", "supplies", "supply", true, true},
}};

const SaidField* said_field(EditKind kind, std::string_view folded) {
  for (const SaidField& field : said_fields)
    if ((field.name == folded || field.other_name == folded) &&
        ((kind == EditKind::sample && field.of_sample) || (kind == EditKind::piece && field.of_piece)))
      return &field;
  return nullptr;
}

constexpr EditKind every_kind[] = {EditKind::set,    EditKind::die,    EditKind::line, EditKind::supply,
                                   EditKind::colour, EditKind::sample, EditKind::piece};

bool any_field(std::string_view folded) {
  if (folded == "weight") return true;
  return std::any_of(std::begin(every_kind), std::end(every_kind),
                     [&](EditKind kind) { return said_field(kind, folded) || find_field(kind, folded); });
}

struct Wanted {
  std::string name, field, value;
};

// The field is the longest run of words before the = that names one; what stands before it is the record's
// name.
Result<Wanted> split(std::string_view text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos)
    return failure({.what = "nothing is said to change",
                    .expected = "NAME FIELD=VALUE, for example: low tide made=2026-03-02"});
  const std::string_view before = trim(text.substr(0, equals));
  Wanted wanted{.name = {}, .field = {}, .value = std::string(trim(text.substr(equals + 1)))};
  std::vector<std::size_t> starts;
  for (std::size_t at = before.size(); at != std::string_view::npos && at > 0 && starts.size() < 3;) {
    at = before.find_last_of(' ', at - 1);
    if (at != std::string_view::npos) starts.push_back(at);
  }
  for (auto start = starts.rbegin(); start != starts.rend(); ++start) {
    const std::string field = fold(before.substr(*start + 1));
    if (!any_field(field)) continue;
    wanted.name = trim(before.substr(0, *start));
    wanted.field = field;
    return wanted;
  }
  if (starts.empty())
    return failure(
        {.what = fmt::format("{} names no record", in_quotes(text)), .expected = "NAME FIELD=VALUE"});
  wanted.name = trim(before.substr(0, starts.front()));
  wanted.field = trim(before.substr(starts.front() + 1));
  return wanted;
}

std::vector<std::string> list_of(std::string_view value) {
  std::vector<std::string> parts;
  while (!value.empty()) {
    const std::size_t end = value.find(';');
    if (const std::string_view part = trim(value.substr(0, end)); !part.empty()) parts.emplace_back(part);
    if (end == std::string_view::npos) break;
    value.remove_prefix(end + 1);
  }
  return parts;
}

// One word of the value as what it means; empty term and ids: kept as text.
Mention mention_of(const Book& book, const Vocabulary& vocabulary, std::string_view kind,
                   const std::string& word) {
  Mention mention{.kind = std::string(kind), .term = {}, .colour_id = {}, .supply_id = {}, .written = word};
  if (kind == "paper" || kind == "ink") {
    mention.colour_id = colour_named(book, fold(word));
  } else if (kind == "supply") {
    for (const NameHit& hit : names_exactly(book, fold(word)))
      if (hit.kind == RecordKind::supply) mention.supply_id = hit.id;
  } else if (const std::optional<VocabularyName> name = vocabulary_name(kind)) {
    const std::vector<TermMatch> found = vocabulary.find(word, *name);
    if (!found.empty()) mention.term = found.front().id;
  }
  return mention;
}

// What a word that means nothing was probably to be; empty: nothing is near.
std::string perhaps_meant(const Book& book, const Vocabulary& vocabulary, std::string_view kind,
                          const std::string& word) {
  if (const std::optional<VocabularyName> name = vocabulary_name(kind))
    return near_label(vocabulary, *name, word).value_or("");
  const RecordKind record = kind == "supply" ? RecordKind::supply : RecordKind::colour;
  const std::vector<NameHit> near = find_names(book, word, record, 1);
  return near.empty() || near.front().how != NameHit::How::like ? std::string() : near.front().name;
}

std::optional<std::int64_t> sample_of_piece(const Book& book, std::int64_t element_id) {
  Statement& row = book.statement("SELECT sample_id FROM element WHERE id = ?1");
  row.bind(1, element_id);
  const std::optional<std::int64_t> id = row.step() ? std::optional(row.integer(0)) : std::nullopt;
  row.reset();
  return id;
}

Result<PutResult> change_said(Change& change, const Book& book, const Editable& record,
                              const SaidField& field, const std::string& value, EditAnswer& answer) {
  const Vocabulary vocabulary = vocabulary_of(book);
  std::vector<Mention> mentions;
  for (const std::string& word : list_of(value)) {
    mentions.push_back(mention_of(book, vocabulary, field.kind, word));
    const Mention& last = mentions.back();
    if (last.term || last.colour_id || last.supply_id) continue;
    answer.unknown.push_back(word);
    answer.perhaps.push_back(perhaps_meant(book, vocabulary, field.kind, word));
  }
  if (record.kind == EditKind::sample)
    return change_mentions(change, record.id, std::nullopt, field.kind, mentions);
  const std::optional<std::int64_t> sample_id = sample_of_piece(book, record.id);
  if (!sample_id)
    return failure({.kind = ProblemKind::unknown_name,
                    .what = fmt::format("{} is not in the book", in_quotes(record.name))});
  return change_mentions(change, *sample_id, record.id, field.kind, mentions);
}

// The closed size as the fold closes the base, where the person gave none.
Result<void> close_again(Change& change, const Book& book, std::int64_t sample_id) {
  std::optional<SampleRow> row = sample(book, sample_id);
  if (!row || !row->finished_text.empty()) return {};
  std::vector<std::string> folds;
  for (const Mention& mention : row->mentions)
    if (mention.kind == "fold") folds.push_back(mention.term.value_or(mention.written));
  std::optional<ClosedBase> closed;
  if (row->base.width && row->base.height)
    closed = closed_size(folds, *row->base.width, *row->base.height, row->scores, row->base.unit);
  row->closed_width.reset();
  row->closed_height.reset();
  if (closed) {
    row->closed_width = closed->width;
    row->closed_height = closed->height;
    row->closed_unit = row->base.unit;
  }
  const auto put = put_sample(change, *row);
  if (!put) return failure(put.error());
  return {};
}

Result<PutResult> change_one(Change& change, const Book& book, const Editable& record, const Wanted& wanted,
                             EditAnswer& answer) {
  if (const SaidField* field = said_field(record.kind, wanted.field))
    return change_said(change, book, record, *field, wanted.value, answer);
  if (record.kind == EditKind::supply && wanted.field == "weight")
    return change_weight(change, record.id, wanted.value, read_paper_weight(wanted.value));
  return change_field(change, record, wanted.field, wanted.value);
}

// A deletion by a part of a name could take the wrong record.
Problem only_a_part(std::string_view name, const Editable& record) {
  return {.kind = ProblemKind::refused,
          .what = fmt::format("{} is only a part of a name: nothing is deleted. It would be the {} {}",
                              in_quotes(name), edit_kind_word(record.kind), record.name),
          .expected = fmt::format("insetbook delete \"{}\"", record.name)};
}

}  // namespace

Result<EditAnswer> change_record(Book& book, std::string_view text) {
  const Result<Wanted> wanted = split(text);
  if (!wanted) return failure(wanted.error());
  const Result<Editable> record = find_editable(book, wanted->name);
  if (!record) return failure(record.error());
  EditAnswer answer{.record = record->name,
                    .kind = edit_kind_word(record->kind),
                    .field = wanted->field,
                    .value = wanted->value,
                    .same = false,
                    .unknown = {},
                    .perhaps = {}};
  const Result<void> done = book.change(
      fmt::format("changed {}: {}", record->name, wanted->field), [&](Change& change) -> Result<void> {
        const Result<PutResult> put = change_one(change, book, *record, *wanted, answer);
        if (!put) return failure(put.error());
        answer.same = *put == PutResult::same;
        if (record->kind == EditKind::sample && !answer.same) return close_again(change, book, record->id);
        return {};
      });
  if (!done) return failure(done.error());
  return answer;
}

Result<EditAnswer> delete_record_named(Book& book, std::string_view name) {
  const Result<Editable> record = find_editable(book, name);
  if (!record) return failure(record.error());
  if (record->by_part) return failure(only_a_part(name, *record));
  const Result<void> done =
      book.change(fmt::format("deleted {}", record->name),
                  [&](Change& change) -> Result<void> { return delete_record(change, *record); });
  if (!done) return failure(done.error());
  return EditAnswer{.record = record->name,
                    .kind = edit_kind_word(record->kind),
                    .field = {},
                    .value = {},
                    .same = false,
                    .unknown = {},
                    .perhaps = {}};
}

}  // namespace insetbook
