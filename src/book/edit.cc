// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/edit.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "book/dates.h"
#include "book/link_mentions.h"
#include "book/names.h"
#include "book/problems.h"
#include "book/settings.h"
#include "book/units.h"
#include "book/upsert.h"
#include "measure/read.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

using enum EditKind;

constexpr auto fields = std::to_array<FieldRow>({
    {set, "name", "name", EditedKind::name},
    {set, "maker", "maker", EditedKind::text},
    {set, "code", "code", EditedKind::text},
    {set, "stored in", "stored_in", EditedKind::text},
    {set, "status", "status", EditedKind::text},
    {set, "note", "note", EditedKind::text},
    {die, "name", "label", EditedKind::name},
    {die, "order", "rank", EditedKind::count},
    {die, "code", "code", EditedKind::text},
    {die, "stored in", "stored_in", EditedKind::text},
    {die, "status", "status", EditedKind::text},
    {die, "note", "note", EditedKind::text},
    {line, "name", "name", EditedKind::name},
    {line, "shape", "shape", EditedKind::text},
    {line, "figures", "figures", EditedKind::text},
    {line, "outline", "outline", EditedKind::text},
    {line, "outline unit", "outline_unit", EditedKind::text},
    {line, "note", "note", EditedKind::text},
    {supply, "kind", "kind", EditedKind::name},
    {supply, "set", "set_name", EditedKind::name},
    {supply, "name", "name", EditedKind::name},
    {supply, "colour", "colour_id", EditedKind::name},
    {supply, "words", "words", EditedKind::text},
    {supply, "size", "", EditedKind::size},
    {supply, "thickness", "thickness_nm", EditedKind::length},
    {supply, "from", "from_date", EditedKind::date},
    {supply, "until", "until_date", EditedKind::date},
    {supply, "status", "status", EditedKind::text},
    {supply, "have", "have", EditedKind::text},
    {supply, "cut by", "cut_by", EditedKind::text},
    {supply, "instead", "instead", EditedKind::text},
    {supply, "stored in", "stored_in", EditedKind::text},
    {supply, "price", "price", EditedKind::text},
    {supply, "note", "note", EditedKind::text},
    {colour, "name", "name", EditedKind::name},
    {colour, "value", "srgb", EditedKind::colour_value},
    {colour, "note", "note", EditedKind::text},
    {sample, "name", "title", EditedKind::name},
    {sample, "made", "made", EditedKind::date},
    {sample, "base", "base_", EditedKind::size},
    {sample, "scores", "scores", EditedKind::text},
    {sample, "finished", "closed_", EditedKind::size},
    {sample, "words", "words", EditedKind::text},
    {sample, "envelope", "envelope", EditedKind::text},
    {sample, "steps", "steps", EditedKind::text},
    {sample, "based on", "based_on", EditedKind::text},
    {sample, "note", "note", EditedKind::text},
    {piece, "name", "name", EditedKind::name},
    {piece, "role", "role", EditedKind::text},
    {piece, "side", "side", EditedKind::text},
    {piece, "shape", "shape", EditedKind::text},
    {piece, "size", "", EditedKind::size},
    {piece, "at", "at", EditedKind::text},
    {piece, "glue", "glue", EditedKind::text},
    {piece, "count", "count", EditedKind::count},
    {piece, "note", "note", EditedKind::text},
});

// Other names of fields, as the tables a person keeps have them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 16> other_names{{
    {"title", "name"},
    {"sample", "name"},
    {"label", "name"},
    {"element", "name"},
    {"piece", "name"},
    {"rank", "order"},
    {"kept in", "stored in"},
    {"place", "at"},
    {"notes", "note"},
    {"color", "colour"},
    {"colour value", "value"},
    {"srgb", "value"},
    {"date", "made"},
    {"closed size", "finished"},
    {"face", "side"},
    {"have it", "have"},
}};

std::string_view table_of(EditKind kind) {
  static constexpr std::array<std::string_view, 7> tables{"die_set", "die",    "line",   "supply",
                                                          "colour",  "sample", "element"};
  return tables[static_cast<std::size_t>(kind)];
}

// What is on record of a die's size is evidence (book/evidence.h), and no field.
bool is_a_measurement(std::string_view folded) {
  constexpr std::array<std::string_view, 7> words{"size",     "width",  "height", "measured",
                                                  "diameter", "method", "read to"};
  return std::find(words.begin(), words.end(), folded) != words.end();
}

Problem no_such_field(EditKind kind, std::string_view name) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = fmt::format("a {} has no field {}", edit_kind_word(kind), in_quotes(name));
  problem.where.text = name;
  if (kind <= EditKind::line && is_a_measurement(fold(name))) {
    problem.expected = "a figure is measured, not changed: insetbook measure NAME --size SIZE";
    return problem;
  }
  problem.expected = "one of its fields";
  problem.candidates = fields_of(kind);
  return problem;
}

Problem bad_value(const FieldRow& field, std::string_view value, std::string expected) {
  Problem problem;
  problem.what = fmt::format("{} is no value for {}", in_quotes(value), in_quotes(field.name));
  problem.where.text = value;
  problem.expected = std::move(expected);
  return problem;
}

Problem name_taken(const Editable& record, std::string_view value) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what = fmt::format("there is a {} {} already", edit_kind_word(record.kind), in_quotes(value));
  problem.where.text = value;
  problem.expected = "another name";
  return problem;
}

PutResult changed_or_same(const Book& book) {
  return book.database().changes() > 0 ? PutResult::changed : PutResult::same;
}

template <class Value>
PutResult set_column(const Book& book, const Editable& record, std::string_view column, const Value& value) {
  const std::string sql = fmt::format("UPDATE \"{0}\" SET \"{1}\" = ?1 WHERE id = ?2 AND \"{1}\" IS NOT ?1",
                                      table_of(record.kind), column);
  book.statement(sql).bind_all(value, record.id).run();
  return changed_or_same(book);
}

// ---- names, which are what a record is told apart by

std::optional<std::int64_t> other_with_key(const Book& book, const Editable& record, std::string_view key) {
  static constexpr std::array<std::string_view, 7> sql{
      "SELECT id FROM die_set WHERE key = ?1 AND id <> ?2",
      "SELECT id FROM die WHERE key = ?1 AND id <> ?2 AND set_id = (SELECT set_id FROM die WHERE id = ?2)",
      "SELECT id FROM line WHERE name = ?1 AND id <> ?2 AND die_id = (SELECT die_id FROM line WHERE id = ?2)",
      "SELECT id FROM supply WHERE key = ?1 AND id <> ?2",
      "SELECT id FROM colour WHERE key = ?1 AND id <> ?2",
      "SELECT id FROM sample WHERE key = ?1 AND id <> ?2",
      "SELECT id FROM element WHERE key = ?1 AND id <> ?2 AND sample_id = (SELECT sample_id FROM element "
      "WHERE id = ?2)"};
  Statement& statement = book.statement(sql[static_cast<std::size_t>(record.kind)]);
  statement.bind_all(key, record.id);
  return first_integer(statement);
}

// Supplies of that colour are told apart and found by its name too.
void renew_supply_keys(const Book& book, std::int64_t id) {
  const std::optional<SupplyRow> row = insetbook::supply(book, id);
  if (!row) return;
  const std::string key = supply_key(row->kind, row->set_name, row->name, row->colour);
  const SupplyNameKeys names = supply_name_keys(row->set_name, row->name, row->colour);
  book.statement(
          "UPDATE supply SET key = ?1, name_key = ?2, full_key = ?3 WHERE id = ?4 AND "
          "(key <> ?1 OR name_key <> ?2 OR full_key <> ?3)")
      .bind_all(std::string_view(key), std::string_view(names.name), std::string_view(names.full), id)
      .run();
}

Result<PutResult> rename_supply(Change& change, const Editable& record, const FieldRow& field,
                                std::string_view value) {
  const Book& book = change.book();
  SupplyRow row = insetbook::supply(book, record.id).value_or(SupplyRow());
  (field.name == "kind"   ? row.kind
   : field.name == "set"  ? row.set_name
   : field.name == "name" ? row.name
                          : row.colour) = value;
  const std::string key = supply_key(row.kind, row.set_name, row.name, row.colour);
  if (fold(row.kind).empty()) return failure(bad_value(field, value, "a kind, as in ink or card stock"));
  if (other_with_key(book, record, key)) return failure(name_taken(record, value));
  PutResult result = PutResult::same;
  if (field.name == "colour") {
    std::optional<std::int64_t> colour_id;
    if (!value.empty()) {
      const Result<std::int64_t> put = put_colour(change, value, std::nullopt);
      if (!put) return failure(put.error());
      colour_id = *put;
    }
    result = set_column(book, record, "colour_id", colour_id);
  } else {
    result = set_column(book, record, field.column, value);
  }
  renew_supply_keys(book, record.id);
  supply_is_new(change);
  return result;
}

Result<PutResult> rename(Change& change, const Editable& record, const FieldRow& field,
                         std::string_view value) {
  const Book& book = change.book();
  if (record.kind == supply) return rename_supply(change, record, field, value);
  const std::string key = fold(value);
  if (key.empty()) return failure(bad_value(field, value, "a name"));
  const bool keyed = record.kind != line;
  if (other_with_key(book, record, keyed ? std::string_view(key) : value))
    return failure(name_taken(record, value));
  const PutResult result = set_column(book, record, field.column, value);
  if (keyed) set_column(book, record, "key", std::string_view(key));
  if (record.kind == colour) {
    colour_is_new(change);
    supply_is_new(change);
    Statement& of_colour = book.statement("SELECT id FROM supply WHERE colour_id = ?");
    of_colour.bind(1, record.id);
    std::vector<std::int64_t> supplies;
    while (of_colour.step()) supplies.push_back(of_colour.integer(0));
    for (const std::int64_t id : supplies) renew_supply_keys(book, id);
  }
  return result;
}

// ---- figures

std::string_view size_text_column(const Editable& record, const FieldRow& field) {
  if (field.column == "base_") return "base_text";
  return field.column == "closed_" && record.kind == sample ? "finished_text" : "size_text";
}

std::string shape_of_piece(const Book& book, std::int64_t id) {
  Statement& row = book.statement("SELECT shape FROM element WHERE id = ?");
  row.bind(1, id);
  std::string shape = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return shape;
}

// What the value says. One figure of a supply is kept as text only, as an import keeps it; a card has two.
Result<SizeOnRecord> size_said(const Book& book, const Editable& record, const FieldRow& field,
                               std::string_view value) {
  if (value.empty()) return SizeOnRecord();
  const Result<Size> read = read_size(value, settings(book).unit);
  if (!read) return failure(read.error());
  const bool one_figure = read->one_figure && !one_figure_is_both(read->shape);
  if (record.kind == piece)
    return size_of_piece(*read, read->shape.empty() ? shape_of_piece(book, record.id) : read->shape,
                         std::string(value));
  if (one_figure && record.kind == sample)
    return failure(bad_value(field, value, "a width and a height: 4-1/4 x 5-1/2 in"));
  SizeOnRecord size = one_figure ? SizeOnRecord() : size_of_piece(*read, "", "");
  size.text = value;
  return size;
}

Result<PutResult> resize(Change& change, const Editable& record, const FieldRow& field,
                         std::string_view value) {
  const Book& book = change.book();
  const Result<SizeOnRecord> size = size_said(book, record, field, value);
  if (!size) return failure(size.error());
  std::optional<std::int64_t> width = nm_of(size->width), height = nm_of(size->height);
  if (record.kind == piece && height && !size->placed && *width > *height) std::swap(width, height);
  const std::string sql = fmt::format(
      "UPDATE \"{0}\" SET {1}width_nm = ?1, {1}height_nm = ?2, {1}unit = ?3, {2} = ?4{3} WHERE id = ?5 AND "
      "({1}width_nm IS NOT ?1 OR {1}height_nm IS NOT ?2 OR {1}unit <> ?3 OR {2} <> ?4)",
      table_of(record.kind), field.column, size_text_column(record, field),
      record.kind == piece ? ", placed = ?6" : "");
  Statement& statement = book.statement(sql);
  statement.bind_all(width, height, width ? unit_word(size->unit) : std::string_view(), value, record.id);
  if (record.kind == piece) statement.bind(6, std::int64_t{size->placed});
  statement.run();
  return changed_or_same(book);
}

Result<PutResult> change_length(const Book& book, const Editable& record, const FieldRow& field,
                                std::string_view value) {
  if (value.empty()) return set_column(book, record, field.column, std::optional<std::int64_t>());
  const Result<ReadLength> read = read_length(value, settings(book).unit);
  if (!read) return failure(read.error());
  return set_column(book, record, field.column, read->length.nm());
}

Result<PutResult> change_count(const Book& book, const Editable& record, const FieldRow& field,
                               std::string_view value) {
  if (value.empty() && record.kind == die)
    return set_column(book, record, field.column, std::optional<std::int64_t>());
  int count = 0;
  const auto [end, error] = std::from_chars(value.data(), value.data() + value.size(), count);
  if (error != std::errc() || end != value.data() + value.size() || count < 1 || count > 10'000) {
    return failure(bad_value(field, value, "a whole number from 1 to 10000"));
  }
  return set_column(book, record, field.column, std::int64_t{count});
}

Result<PutResult> change_colour(const Book& book, const Editable& record, const FieldRow& field,
                                std::string_view value) {
  if (value.empty()) return set_column(book, record, field.column, std::optional<std::int64_t>());
  const std::string_view digits = value.starts_with('#') ? value.substr(1) : value;
  std::uint32_t srgb = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), srgb, 16);
  if (digits.size() != 6 || error != std::errc() || end != digits.data() + digits.size()) {
    return failure(bad_value(field, value, "six hexadecimal digits, as in #7a9e87"));
  }
  return set_column(book, record, field.column, std::int64_t{srgb});
}

}  // namespace

std::string_view edit_kind_word(EditKind kind) {
  static constexpr std::array<std::string_view, 7> words{"set",    "die",    "line", "supply",
                                                         "colour", "sample", "piece"};
  return words[static_cast<std::size_t>(kind)];
}

std::span<const FieldRow> field_rows() {
  return fields;
}

std::vector<std::string> fields_of(EditKind kind) {
  std::vector<std::string> names;
  for (const FieldRow& field : fields) {
    if (field.record == kind) names.emplace_back(field.name);
  }
  return names;
}

Result<const FieldRow*> find_field(EditKind kind, std::string_view name) {
  const std::string folded = fold(name);
  const auto named = [&](std::string_view wanted) -> const FieldRow* {
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const FieldRow& field) {
      return field.record == kind && field.name == wanted;
    });
    return found == fields.end() ? nullptr : &*found;
  };
  if (const FieldRow* field = named(folded)) return field;
  for (const auto& [other, field_name] : other_names) {
    if (other != folded) continue;
    if (const FieldRow* field = named(field_name)) return field;
  }
  return failure(no_such_field(kind, name));
}

Result<PutResult> change_field(Change& change, const Editable& record, std::string_view name,
                               std::string_view given) {
  const Result<const FieldRow*> found = find_field(record.kind, name);
  if (!found) return failure(found.error());
  const FieldRow& field = **found;
  const std::string_view value = trim(given);
  if (!valid_utf8(value)) return failure(bad_value(field, "?", "text in UTF-8"));
  const Lines lines = field.kind == EditedKind::text ? Lines::several : Lines::one;
  if (auto control = control_character_in(value, lines)) return failure(std::move(*control));
  const Book& book = change.book();
  switch (field.kind) {
    case EditedKind::name:
      return rename(change, record, field, value);
    case EditedKind::size:
      return resize(change, record, field, value);
    case EditedKind::length:
      return change_length(book, record, field, value);
    case EditedKind::count:
      return change_count(book, record, field, value);
    case EditedKind::colour_value:
      return change_colour(book, record, field, value);
    case EditedKind::date:
      if (!value.empty() && !is_iso_date(value))
        return failure(bad_value(field, value, "a date as in 2026-03-08"));
      break;
    case EditedKind::text:
      break;
  }
  return set_column(book, record, field.column, value);
}

Result<PutResult> change_weight(Change& change, std::int64_t supply_id, std::string_view text,
                                std::optional<std::int64_t> mg_m2) {
  change.book()
      .statement(
          "UPDATE supply SET weight_text = ?1, weight_mg_m2 = ?2 WHERE id = ?3 AND "
          "(weight_text <> ?1 OR weight_mg_m2 IS NOT ?2)")
      .bind_all(text, mg_m2, supply_id)
      .run();
  return changed_or_same(change.book());
}

// ---- which record

namespace {

Editable editable(const NameHit& hit) {
  static constexpr std::array<EditKind, 6> kinds{set, set, die, supply, colour, sample};
  return {kinds[static_cast<std::size_t>(hit.kind)], hit.id, hit.name, hit.how != NameHit::How::exact};
}

// "Tidepool Rectangles 2, stitched" and "Moonrise birthday, frame": the part after a comma.
std::vector<Editable> parts_named(const Book& book, std::string_view name) {
  std::vector<Editable> found;
  for (std::size_t comma = name.rfind(','); comma != std::string_view::npos && comma > 0 && found.empty();
       comma = name.rfind(',', comma - 1)) {
    const std::string part = fold(name.substr(comma + 1));
    constexpr std::size_t most = 20;
    for (const NameHit& hit : find_names(book, name.substr(0, comma), std::nullopt, most)) {
      if (hit.how == NameHit::How::like || part.empty()) continue;
      if (hit.kind != RecordKind::die && hit.kind != RecordKind::sample) continue;
      const bool of_die = hit.kind == RecordKind::die;
      Statement& row = of_die
                           ? book.statement("SELECT id, name FROM line WHERE die_id = ?1 AND name = ?2")
                           : book.statement("SELECT id, name FROM element WHERE sample_id = ?1 AND key = ?2");
      row.bind_all(hit.id, std::string_view(part));
      if (row.step()) {
        found.push_back({of_die ? line : piece, row.integer(0), hit.name + ", " + std::string(row.text(1)),
                         hit.how != NameHit::How::exact});
      }
      row.reset();
    }
    if (comma == 0) break;
  }
  return found;
}

Problem several_parts(std::string_view name, const std::vector<Editable>& found) {
  Problem problem;
  problem.kind = ProblemKind::ambiguous;
  problem.what = fmt::format("{} names {} records", in_quotes(name), found.size());
  problem.where.text = name;
  problem.expected = "more of the name of the one that is meant";
  for (const Editable& one : found) problem.candidates.push_back(one.name);
  return problem;
}

}  // namespace

Result<Editable> find_editable(const Book& book, std::string_view name) {
  const Result<NameHit> whole = find_name(book, name, std::nullopt);
  if (whole && whole->how == NameHit::How::exact) return editable(*whole);
  const std::vector<Editable> parts = parts_named(book, name);
  if (parts.size() == 1) return parts.front();
  if (parts.size() > 1) return failure(several_parts(name, parts));
  if (!whole) return failure(whole.error());
  return editable(*whole);
}

}  // namespace insetbook
