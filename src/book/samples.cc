// SPDX-License-Identifier: GPL-3.0-or-later
//
// Samples, their pieces, and what is said of both. An import writes these by the hundred thousand: a new
// record costs one look at an index and its inserts, nothing is read back.
#include <array>
#include <utility>

#include "book/book_parts.h"
#include "book/edit.h"
#include "book/problems.h"
#include "book/records.h"
#include "book/units.h"
#include "book/upsert.h"
#include "shape/shape.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr std::array<std::string_view, 17> sample_columns{"title",
                                                          "key",
                                                          "made",
                                                          "base_width_nm",
                                                          "base_height_nm",
                                                          "base_unit",
                                                          "base_text",
                                                          "scores",
                                                          "finished_text",
                                                          "closed_width_nm",
                                                          "closed_height_nm",
                                                          "closed_unit",
                                                          "words",
                                                          "envelope",
                                                          "steps",
                                                          "based_on",
                                                          "note"};

constexpr std::array<std::string_view, 23> element_columns{
    "sample_id", "position", "name",    "key",       "role",   "side",   "shape",   "width_nm",
    "height_nm", "placed",   "unit",    "size_text", "set_id", "die_id", "line_id", "in_line_id",
    "goes",      "goes_how", "goes_to", "at",        "glue",   "count",  "note"};

std::string_view unit_column(const std::optional<Length>& width, Unit unit) {
  return width ? unit_word(unit) : std::string_view();
}

// ---- mentions

constexpr std::string_view mentions_of_element_sql =
    "SELECT kind, term, colour_id, supply_id, written FROM mention WHERE element_id = ? ORDER BY position, "
    "id";
constexpr std::string_view mentions_of_sample_sql =
    "SELECT kind, term, colour_id, supply_id, written FROM mention WHERE sample_id = ? AND element_id IS "
    "NULL "
    "ORDER BY position, id";

std::vector<Mention> read_mentions(Statement& statement, std::int64_t id) {
  statement.bind(1, id);
  std::vector<Mention> mentions;
  while (statement.step()) {
    Mention& mention = mentions.emplace_back();
    mention.kind = statement.text(0);
    if (!statement.is_null(1)) mention.term = statement.text(1);
    mention.colour_id = statement.maybe_integer(2);
    mention.supply_id = statement.maybe_integer(3);
    mention.written = statement.text(4);
  }
  return mentions;
}

void insert_mentions(const Book& book, std::int64_t sample_id, std::optional<std::int64_t> element_id,
                     const std::vector<Mention>& mentions) {
  std::int64_t position = 0;
  for (const Mention& mention : mentions) {
    Statement& insert = book.statement(
        "INSERT INTO mention (sample_id, element_id, kind, term, colour_id, supply_id, written, position) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    bind_fields(insert, sample_id, element_id, mention.kind);
    mention.term ? insert.bind_kept(4, *mention.term) : insert.bind_null(4);
    insert.bind(5, mention.colour_id)
        .bind(6, mention.supply_id)
        .bind_kept(7, mention.written)
        .bind(8, ++position);
    insert.run();
  }
}

bool rewrite_mentions(const Book& book, std::int64_t sample_id, std::optional<std::int64_t> element_id,
                      const std::vector<Mention>& mentions) {
  const std::vector<Mention> known = element_id
                                         ? read_mentions(book.statement(mentions_of_element_sql), *element_id)
                                         : read_mentions(book.statement(mentions_of_sample_sql), sample_id);
  if (known == mentions) return false;
  Statement& remove = element_id
                          ? book.statement("DELETE FROM mention WHERE element_id = ?")
                          : book.statement("DELETE FROM mention WHERE sample_id = ? AND element_id IS NULL");
  remove.bind(1, element_id ? *element_id : sample_id).run();
  insert_mentions(book, sample_id, element_id, mentions);
  return true;
}

}  // namespace

Result<PutResult> change_mentions(Change& change, std::int64_t sample_id,
                                  std::optional<std::int64_t> element_id, std::string_view kind,
                                  const std::vector<Mention>& mentions) {
  const Book& book = change.book();
  std::vector<Mention> all = element_id ? read_mentions(book.statement(mentions_of_element_sql), *element_id)
                                        : read_mentions(book.statement(mentions_of_sample_sql), sample_id);
  std::erase_if(all, [&](const Mention& mention) { return mention.kind == kind; });
  all.insert(all.end(), mentions.begin(), mentions.end());
  return rewrite_mentions(book, sample_id, element_id, all) ? PutResult::changed : PutResult::same;
}

namespace {

// ---- photographs

std::vector<PhotoOnRecord> photos_of(const Book& book, std::int64_t sample_id) {
  Statement& statement =
      book.statement("SELECT file_name, hash FROM photo WHERE sample_id = ? ORDER BY position");
  statement.bind(1, sample_id);
  std::vector<PhotoOnRecord> photos;
  while (statement.step()) photos.push_back({std::string(statement.text(0)), std::string(statement.text(1))});
  return photos;
}

void insert_photos(const Book& book, std::int64_t sample_id, const std::vector<PhotoOnRecord>& photos) {
  std::int64_t position = 0;
  for (const PhotoOnRecord& photo : photos) {
    Statement& insert =
        book.statement("INSERT INTO photo (sample_id, position, file_name, hash) VALUES (?, ?, ?, ?)");
    bind_fields(insert, sample_id, ++position, photo.file_name, photo.hash);
    insert.run();
  }
}

bool rewrite_photos(const Book& book, std::int64_t sample_id, const std::vector<PhotoOnRecord>& photos) {
  if (photos_of(book, sample_id) == photos) return false;
  book.statement("DELETE FROM photo WHERE sample_id = ?").bind(1, sample_id).run();
  insert_photos(book, sample_id, photos);
  return true;
}

}  // namespace

// ---- samples

Result<std::pair<PutResult, std::int64_t>> put_sample(Change& change, const SampleRow& row) {
  static const TableSql sql("sample", sample_columns, "uuid");
  const Book& book = change.book();
  if (auto control = control_character_in(row.title, Lines::one)) return failure(std::move(*control));
  const std::string key = fold(row.title);
  const std::string_view title = trim(row.title);
  const auto write = [&](auto how) {
    return how(title, key, row.made, nm_of(row.base.width), nm_of(row.base.height),
               unit_column(row.base.width, row.base.unit), row.base.text, row.scores, row.finished_text,
               nm_of(row.closed_width), nm_of(row.closed_height),
               unit_column(row.closed_width, row.closed_unit), row.words, row.envelope, row.steps,
               row.based_on, row.note);
  };
  std::optional<std::int64_t> id = sample_titled(book, key);
  if (!id && !row.uuid.empty()) id = id_by_key(book, "SELECT id FROM sample WHERE uuid = ?", row.uuid);
  if (!id) {
    const std::string uuid = row.uuid.empty() ? new_uuid() : row.uuid;
    const std::int64_t added =
        write([&](const auto&... values) { return insert_row(book, sql, values..., uuid); });
    insert_mentions(book, added, std::nullopt, row.mentions);
    insert_photos(book, added, row.photos);
    change.memory().last_position.emplace(added, 0);
    return std::pair(PutResult::added, added);
  }
  bool changed = write([&](const auto&... values) { return update_row(book, sql, *id, values...); });
  changed = rewrite_mentions(book, *id, std::nullopt, row.mentions) || changed;
  changed = rewrite_photos(book, *id, row.photos) || changed;
  return std::pair(changed ? PutResult::changed : PutResult::same, *id);
}

std::optional<SampleRow> sample(const Book& book, std::int64_t id) {
  Statement& row = book.statement(
      "SELECT title, made, base_width_nm, base_height_nm, base_unit, base_text, scores, finished_text, "
      "closed_width_nm, closed_height_nm, closed_unit, words, envelope, steps, based_on, note, uuid, meant "
      "FROM sample WHERE id = ?");
  row.bind(1, id);
  if (!row.step()) return std::nullopt;
  SampleRow sample;
  sample.title = row.text(0);
  sample.made = row.text(1);
  sample.base.width = maybe_length(row.maybe_integer(2));
  sample.base.height = maybe_length(row.maybe_integer(3));
  sample.base.unit = unit_of(row.text(4));
  sample.base.placed = sample.base.width.has_value();  // a base is width x height as written
  sample.base.text = row.text(5);
  sample.scores = row.text(6);
  sample.finished_text = row.text(7);
  sample.closed_width = maybe_length(row.maybe_integer(8));
  sample.closed_height = maybe_length(row.maybe_integer(9));
  sample.closed_unit = unit_of(row.text(10));
  sample.words = row.text(11);
  sample.envelope = row.text(12);
  sample.steps = row.text(13);
  sample.based_on = row.text(14);
  sample.note = row.text(15);
  sample.uuid = row.text(16);
  sample.meant = row.text(17);
  row.reset();
  sample.mentions = read_mentions(book.statement(mentions_of_sample_sql), id);
  sample.photos = photos_of(book, id);
  return sample;
}

// ---- pieces

bool one_figure_is_both(std::string_view shape) {
  const std::optional<ShapeKind> kind = shape_kind(shape);
  return kind == ShapeKind::circle || kind == ShapeKind::square;
}

SizeOnRecord size_of_piece(const Size& size, std::string_view shape, std::string text) {
  SizeOnRecord kept;
  kept.width = size.width;
  if (!size.one_figure || one_figure_is_both(shape.empty() ? std::string_view(size.shape) : shape))
    kept.height = size.height;
  kept.unit = size.unit;
  kept.placed = size.orientation == Orientation::said;
  kept.text = std::move(text);
  return kept;
}

namespace {

struct ElementFound {
  std::int64_t id, position;
};

std::optional<ElementFound> find_element(const Book& book, std::int64_t sample_id, std::string_view key) {
  Statement& find = book.statement("SELECT id, position FROM element WHERE sample_id = ? AND key = ?");
  bind_fields(find, sample_id, key);
  std::optional<ElementFound> found;
  if (find.step()) found = ElementFound{find.integer(0), find.integer(1)};
  find.reset();
  return found;
}

std::int64_t next_position(Change& change, std::int64_t sample_id) {
  auto& last = change.memory().last_position;
  if (const auto known = last.find(sample_id); known != last.end()) return ++known->second;
  Statement& find = change.book().statement("SELECT max(position) FROM element WHERE sample_id = ?");
  find.bind(1, sample_id);
  return first_integer(find).value_or(0) + 1;
}

}  // namespace

Result<std::pair<PutResult, std::int64_t>> put_element(Change& change, const ElementRow& row) {
  static const TableSql sql("element", element_columns);
  const Book& book = change.book();
  if (auto control = control_character_in(row.name, Lines::one)) return failure(std::move(*control));
  const std::string key = fold(row.name);
  const std::string_view name = trim(row.name);
  std::optional<std::int64_t> width = nm_of(row.size.width), height = nm_of(row.size.height);
  if (!row.size.placed && width && height && *width > *height) std::swap(width, height);
  const std::optional<ElementFound> known = find_element(book, row.sample_id, key);
  std::int64_t position = row.position;
  if (position == 0) position = known ? known->position : next_position(change, row.sample_id);
  const std::int64_t placed = row.size.placed ? 1 : 0, count = row.count;
  const auto write = [&](auto how) {
    return how(row.sample_id, position, name, key, row.role, row.side, row.shape, width, height, placed,
               unit_column(row.size.width, row.size.unit), row.size.text, row.set_id, row.die_id, row.line_id,
               row.in_line_id, row.goes, row.goes_how, row.goes_to, row.at, row.glue, count, row.note);
  };
  if (!known) {
    if (row.position != 0) change.memory().last_position.erase(row.sample_id);
    const std::int64_t id = write([&](const auto&... values) { return insert_row(book, sql, values...); });
    insert_mentions(book, row.sample_id, id, row.mentions);
    return std::pair(PutResult::added, id);
  }
  bool changed = write([&](const auto&... values) { return update_row(book, sql, known->id, values...); });
  changed = rewrite_mentions(book, row.sample_id, known->id, row.mentions) || changed;
  return std::pair(changed ? PutResult::changed : PutResult::same, known->id);
}

std::vector<std::pair<std::int64_t, ElementRow>> elements_of(const Book& book, std::int64_t sample_id) {
  Statement& row = book.statement(
      "SELECT id, position, name, role, side, shape, width_nm, height_nm, placed, unit, size_text, set_id, "
      "die_id, "
      "line_id, in_line_id, goes_to, goes, goes_how, at, glue, note, count, meant FROM element "
      "WHERE sample_id = ? "
      "ORDER BY position, id");
  row.bind(1, sample_id);
  std::vector<std::pair<std::int64_t, ElementRow>> elements;
  while (row.step()) {
    auto& [id, element] = elements.emplace_back();
    id = row.integer(0);
    element.sample_id = sample_id;
    element.position = static_cast<int>(row.integer(1));
    element.name = row.text(2);
    element.role = row.text(3);
    element.side = row.text(4);
    element.shape = row.text(5);
    element.size.width = maybe_length(row.maybe_integer(6));
    element.size.height = maybe_length(row.maybe_integer(7));
    element.size.placed = row.integer(8) != 0;
    element.size.unit = unit_of(row.text(9));
    element.size.text = row.text(10);
    element.set_id = row.maybe_integer(11);
    element.die_id = row.maybe_integer(12);
    element.line_id = row.maybe_integer(13);
    element.in_line_id = row.maybe_integer(14);
    element.goes_to = row.maybe_integer(15);
    element.goes = row.text(16);
    element.goes_how = row.text(17);
    element.at = row.text(18);
    element.glue = row.text(19);
    element.note = row.text(20);
    element.count = static_cast<int>(row.integer(21));
    element.meant = row.text(22);
  }
  for (auto& [id, element] : elements)
    element.mentions = read_mentions(book.statement(mentions_of_element_sql), id);
  return elements;
}

bool set_meant(Change& change, std::int64_t sample_id, std::optional<std::int64_t> element_id,
               std::string_view codes) {
  const Book& book = change.book();
  Statement& row =
      element_id ? book.statement("UPDATE element SET meant = ?1 WHERE id = ?2 AND meant <> ?1 RETURNING id")
                 : book.statement("UPDATE sample SET meant = ?1 WHERE id = ?2 AND meant <> ?1 RETURNING id");
  row.bind(1, codes).bind(2, element_id ? *element_id : sample_id);
  const bool changed = row.step();
  while (changed && row.step()) {
  }
  row.reset();
  return changed;
}

}  // namespace insetbook
