// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/records.h"

#include <array>

#include "book/book_parts.h"
#include "book/link_mentions.h"
#include "book/plural.h"
#include "book/problems.h"
#include "book/units.h"
#include "book/upsert.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// Whether this is the first row of the change that speaks of this field of this record.
enum class Said { maker, die_code, die_place, die_status, colour_value, tried };
bool first_said(Change& change, std::int64_t id, Said field) {
  return change.memory().said.insert(id * 8 + static_cast<int>(field)).second;
}

}  // namespace

std::optional<std::int64_t> first_integer(Statement& statement) {
  std::optional<std::int64_t> value;
  if (statement.step()) value = statement.maybe_integer(0);
  statement.reset();
  return value;
}

std::optional<std::int64_t> id_by_key(const Book& book, std::string_view sql, std::string_view key) {
  Statement& statement = book.statement(sql);
  statement.bind_kept(1, key);
  return first_integer(statement);
}

// ---- look-up by key

std::optional<std::int64_t> sample_titled(const Book& book, std::string_view folded) {
  return id_by_key(book, "SELECT id FROM sample WHERE key = ?", folded);
}

std::optional<std::int64_t> colour_named(const Book& book, std::string_view folded) {
  return id_by_key(book, "SELECT id FROM colour WHERE key = ?", folded);
}

std::optional<std::int64_t> set_named(const Book& book, std::string_view folded) {
  for (const std::string& form : number_forms(folded)) {
    if (auto id = id_by_key(book, "SELECT id FROM die_set WHERE key = ?", form)) return id;
  }
  return std::nullopt;
}

// ---- colours

Result<std::int64_t> put_colour(Change& change, std::string_view name, std::optional<std::uint32_t> srgb) {
  const Book& book = change.book();
  const std::string key = fold(name);
  const std::optional<std::int64_t> value = srgb ? std::optional<std::int64_t>(*srgb) : std::nullopt;
  std::optional<std::int64_t> id = colour_named(book, key);
  if (!id) {
    book.statement("INSERT INTO colour (uuid, name, key, srgb) VALUES (?, ?, ?, ?)")
        .bind_all(std::string_view(new_uuid()), trim(name), std::string_view(key), value)
        .run();
    id = book.database().last_row();
    colour_is_new(change);
    if (value) first_said(change, *id, Said::colour_value);
  } else if (value && first_said(change, *id, Said::colour_value)) {
    book.statement("UPDATE colour SET srgb = ?1 WHERE id = ?2 AND srgb IS NOT ?1").bind_all(value, *id).run();
  }
  return *id;
}

// ---- dies

namespace {

struct SetFound {
  std::int64_t id;
  bool added;
};

SetFound put_set(Change& change, const LineRow& row, bool& changed) {
  const Book& book = change.book();
  const std::string key = fold(row.set);
  if (const auto id = id_by_key(book, "SELECT id FROM die_set WHERE key = ?", key)) {
    if (!row.maker.empty() && first_said(change, *id, Said::maker)) {
      Statement& update = book.statement("UPDATE die_set SET maker = ?1 WHERE id = ?2 AND maker <> ?1");
      update.bind_all(std::string_view(row.maker), *id).run();
      changed = changed || book.database().changes() > 0;
    }
    return {*id, false};
  }
  book.statement(
          "INSERT INTO die_set (uuid, name, key, maker, code, stored_in, status) VALUES (?, ?, ?, ?, ?, ?, "
          "?)")
      .bind_all(std::string_view(new_uuid()), trim(row.set), std::string_view(key),
                std::string_view(row.maker), std::string_view(row.code), std::string_view(row.stored_in),
                std::string_view(row.status))
      .run();
  const std::int64_t id = book.database().last_row();
  if (!row.maker.empty()) first_said(change, id, Said::maker);
  return {id, true};
}

struct DieText {
  std::string_view sql;  // sets it where neither the die nor its set says so already
  const std::string& text;
  Said field;
};

void say_of_die(Change& change, std::int64_t id, const LineRow& row, bool& changed) {
  const std::array<DieText, 3> texts{{
      {"UPDATE die SET code = ?1 WHERE id = ?2 AND code <> ?1 AND "
       "(code <> '' OR ?1 <> (SELECT code FROM die_set WHERE id = set_id))",
       row.code, Said::die_code},
      {"UPDATE die SET stored_in = ?1 WHERE id = ?2 AND stored_in <> ?1 AND "
       "(stored_in <> '' OR ?1 <> (SELECT stored_in FROM die_set WHERE id = set_id))",
       row.stored_in, Said::die_place},
      {"UPDATE die SET status = ?1 WHERE id = ?2 AND status <> ?1 AND "
       "(status <> '' OR ?1 <> (SELECT status FROM die_set WHERE id = set_id))",
       row.status, Said::die_status},
  }};
  for (const DieText& one : texts) {
    if (one.text.empty() || !first_said(change, id, one.field)) continue;
    change.book().statement(one.sql).bind_all(std::string_view(one.text), id).run();
    changed = changed || change.database().changes() > 0;
  }
}

std::int64_t put_die(Change& change, std::int64_t set_id, const LineRow& row, bool& changed) {
  const Book& book = change.book();
  const std::string key = fold(row.die);
  const std::optional<std::int64_t> rank = row.rank ? std::optional<std::int64_t>(*row.rank) : std::nullopt;
  Statement& find = book.statement("SELECT id FROM die WHERE set_id = ? AND key = ?");
  find.bind_all(set_id, std::string_view(key));
  std::optional<std::int64_t> id = first_integer(find);
  if (!id) {
    book.statement("INSERT INTO die (uuid, set_id, label, key, rank) VALUES (?, ?, ?, ?, ?)")
        .bind_all(std::string_view(new_uuid()), set_id, trim(row.die), std::string_view(key), rank)
        .run();
    id = book.database().last_row();
    changed = true;
  } else if (rank) {
    book.statement("UPDATE die SET rank = ?1 WHERE id = ?2 AND rank IS NOT ?1").bind_all(rank, *id).run();
    changed = changed || book.database().changes() > 0;
  }
  say_of_die(change, *id, row, changed);
  return *id;
}

std::optional<std::int64_t> update_line(const Book& book, std::int64_t die_id, const LineRow& row,
                                        bool& changed) {
  Statement& find = book.statement("SELECT id FROM line WHERE die_id = ? AND name = ?");
  find.bind_all(die_id, std::string_view(row.line));
  const std::optional<std::int64_t> id = first_integer(find);
  if (!id) return std::nullopt;
  Statement& update = book.statement(
      "UPDATE line SET shape = iif(?1 = '', shape, ?1), figures = iif(?2 = '', figures, ?2), "
      "outline = iif(?3 = '', outline, ?3), outline_unit = iif(?3 = '', outline_unit, ?4), note = iif(?5 = "
      "'', note, ?5) "
      "WHERE id = ?6 AND ((?1 <> '' AND shape <> ?1) OR (?2 <> '' AND figures <> ?2) OR "
      "(?3 <> '' AND (outline <> ?3 OR outline_unit <> ?4)) OR (?5 <> '' AND note <> ?5))");
  update
      .bind_all(std::string_view(row.shape), std::string_view(row.figures), std::string_view(row.outline),
                std::string_view(row.outline_unit), std::string_view(row.note), *id)
      .run();
  changed = changed || book.database().changes() > 0;
  return id;
}

std::int64_t insert_line(const Book& book, std::int64_t die_id, const LineRow& row) {
  book.statement(
          "INSERT INTO line (die_id, kind, name, shape, figures, outline, outline_unit, note) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?)")
      .bind_all(die_id, std::string_view(row.line_kind), std::string_view(row.line),
                std::string_view(row.shape), std::string_view(row.figures), std::string_view(row.outline),
                std::string_view(row.outline_unit), std::string_view(row.note))
      .run();
  return book.database().last_row();
}

}  // namespace

Result<PutLine> put_line(Change& change, const LineRow& row) {
  const Book& book = change.book();
  for (const std::string_view name : std::array<std::string_view, 4>{row.set, row.die, row.line, row.shape})
    if (auto control = control_character_in(name, Lines::one)) return failure(std::move(*control));
  bool changed = false;
  const SetFound set = put_set(change, row, changed);
  const std::int64_t die_id = put_die(change, set.id, row, changed);
  PutLine put;
  const std::optional<std::int64_t> known = update_line(book, die_id, row, changed);
  put.line_id = known ? *known : insert_line(book, die_id, row);
  put.result = !known ? PutResult::added : changed ? PutResult::changed : PutResult::same;
  if (row.measured) {
    Measured measured = *row.measured;
    measured.line_id = put.line_id;
    Result<MeasureOutcome> outcome = record_measurement(change, std::move(measured), false);
    if (!outcome) return failure(outcome.error());
    if (outcome->result != MeasureResult::same && known) put.result = PutResult::changed;
    put.measurement = std::move(*outcome);
  }
  return put;
}

// ---- tried

namespace {

// Records of this panel in this line, on that day, for that sample; `result` empty: whatever came of it.
std::vector<std::int64_t> tried_alike(const Book& book, const TriedRow& row, std::string_view result) {
  Statement& find = book.statement(
      "SELECT id FROM tried WHERE line_id = ? AND shape = ? AND width_nm = ? AND height_nm = ? "
      "AND tried_on = ? AND sample_id IS ? AND ?7 IN ('', result) ORDER BY id");
  find.bind_all(row.line_id, std::string_view(row.shape), row.width.nm(), row.height.nm(),
                std::string_view(row.date), row.sample_id, result);
  std::vector<std::int64_t> ids;
  while (find.step()) ids.push_back(find.integer(0));
  find.reset();
  return ids;
}

PutResult update_tried(const Book& book, std::int64_t id, const TriedRow& row) {
  book.statement(
          "UPDATE tried SET unit = ?1, result = ?2, note = ?3 WHERE id = ?4 AND "
          "(unit <> ?1 OR result <> ?2 OR note <> ?3)")
      .bind_all(unit_word(row.unit), std::string_view(row.result), std::string_view(row.note), id)
      .run();
  return book.database().changes() > 0 ? PutResult::changed : PutResult::same;
}

std::int64_t insert_tried(const Book& book, const TriedRow& row) {
  book.statement(
          "INSERT INTO tried (line_id, shape, width_nm, height_nm, unit, result, tried_on, sample_id, note) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .bind_all(row.line_id, std::string_view(row.shape), row.width.nm(), row.height.nm(),
                unit_word(row.unit), std::string_view(row.result), std::string_view(row.date), row.sample_id,
                std::string_view(row.note))
      .run();
  return book.database().last_row();
}

}  // namespace

Result<PutResult> put_tried(Change& change, const TriedRow& row) {
  const Book& book = change.book();
  const std::vector<std::int64_t> there = tried_alike(book, row, row.result);
  if (!there.empty()) return update_tried(book, there.front(), row);
  insert_tried(book, row);
  return PutResult::added;
}

Result<PutResult> put_tried_of_table(Change& change, const TriedRow& row) {
  const Book& book = change.book();
  for (const std::string_view result : {std::string_view(row.result), std::string_view()}) {
    for (const std::int64_t id : tried_alike(book, row, result))
      if (first_said(change, id, Said::tried)) return update_tried(book, id, row);
  }
  first_said(change, insert_tried(book, row), Said::tried);
  return PutResult::added;
}

// ---- supplies

std::string supply_key(std::string_view kind, std::string_view set_name, std::string_view name,
                       std::string_view colour) {
  return fold(kind) + '\x1f' + fold(set_name) + '\x1f' + fold(name) + '\x1f' + fold(colour);
}

SupplyNameKeys supply_name_keys(std::string_view set_name, std::string_view name, std::string_view colour) {
  SupplyNameKeys keys;
  keys.name = fold(name);
  if (keys.name.empty()) keys.name = fold(colour);
  const std::string set = fold(set_name);
  keys.full = set.empty() || keys.name.empty() ? set + keys.name : set + ' ' + keys.name;
  return keys;
}

namespace {

constexpr std::array<std::string_view, 24> supply_columns{
    "key",          "kind",      "set_name",   "name",      "words",       "colour_id",
    "width_nm",     "height_nm", "unit",       "size_text", "weight_text", "weight_mg_m2",
    "thickness_nm", "from_date", "until_date", "status",    "have",        "cut_by",
    "instead",      "stored_in", "price",      "note",      "name_key",    "full_key"};

}  // namespace

Result<PutResult> put_supply(Change& change, const SupplyRow& row) {
  static const TableSql sql("supply", supply_columns, "uuid");
  const Book& book = change.book();
  for (const std::string_view name :
       std::array<std::string_view, 4>{row.kind, row.set_name, row.name, row.colour})
    if (auto control = control_character_in(name, Lines::one)) return failure(std::move(*control));
  std::optional<std::int64_t> colour_id;
  if (!fold(row.colour).empty()) {
    const Result<std::int64_t> colour = put_colour(change, row.colour, row.colour_value);
    if (!colour) return failure(colour.error());
    colour_id = *colour;
  }
  const std::string key = supply_key(row.kind, row.set_name, row.name, row.colour);
  const std::string_view unit = row.size.width ? unit_word(row.size.unit) : std::string_view();
  const SupplyNameKeys names = supply_name_keys(row.set_name, row.name, row.colour);
  const auto write = [&](auto how) {
    return how(key, row.kind, row.set_name, row.name, row.words, colour_id, nm_of(row.size.width),
               nm_of(row.size.height), unit, row.size.text, row.weight_text, row.weight_mg_m2,
               nm_of(row.thickness), row.from_date, row.until_date, row.status, row.have, row.cut_by,
               row.instead, row.stored_in, row.price, row.note, names.name, names.full);
  };
  std::optional<std::int64_t> id = id_by_key(book, "SELECT id FROM supply WHERE key = ?", key);
  if (!id && !row.uuid.empty()) id = id_by_key(book, "SELECT id FROM supply WHERE uuid = ?", row.uuid);
  if (id) {
    const bool changed = write([&](const auto&... values) { return update_row(book, sql, *id, values...); });
    return changed ? PutResult::changed : PutResult::same;
  }
  const std::string uuid = row.uuid.empty() ? new_uuid() : row.uuid;
  write([&](const auto&... values) { return insert_row(book, sql, values..., uuid); });
  supply_is_new(change);
  return PutResult::added;
}

std::optional<SupplyRow> supply(const Book& book, std::int64_t id) {
  Statement& row = book.statement(
      "SELECT s.kind, s.set_name, s.name, s.words, c.name, c.srgb, s.width_nm, s.height_nm, s.unit, "
      "s.size_text, "
      "s.weight_text, s.weight_mg_m2, s.thickness_nm, s.from_date, s.until_date, s.status, s.have, s.cut_by, "
      "s.instead, "
      "s.stored_in, s.price, s.note, s.uuid FROM supply s LEFT JOIN colour c ON c.id = s.colour_id WHERE "
      "s.id = ?");
  row.bind(1, id);
  if (!row.step()) return std::nullopt;
  SupplyRow supply;
  supply.kind = row.text(0);
  supply.set_name = row.text(1);
  supply.name = row.text(2);
  supply.words = row.text(3);
  supply.colour = row.text(4);
  if (!row.is_null(5)) supply.colour_value = static_cast<std::uint32_t>(row.integer(5));
  supply.size.width = maybe_length(row.maybe_integer(6));
  supply.size.height = maybe_length(row.maybe_integer(7));
  supply.size.unit = unit_of(row.text(8));
  supply.size.text = row.text(9);
  supply.weight_text = row.text(10);
  supply.weight_mg_m2 = row.maybe_integer(11);
  supply.thickness = maybe_length(row.maybe_integer(12));
  supply.from_date = row.text(13);
  supply.until_date = row.text(14);
  supply.status = row.text(15);
  supply.have = row.text(16);
  supply.cut_by = row.text(17);
  supply.instead = row.text(18);
  supply.stored_in = row.text(19);
  supply.price = row.text(20);
  supply.note = row.text(21);
  supply.uuid = row.text(22);
  row.reset();
  return supply;
}

}  // namespace insetbook
