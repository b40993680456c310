// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "book/units.h"
#include "book/upsert.h"
#include "importers/json/json_import.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

void insert_measurement(const Book& book, const Measured& one) {
  RecordFields fields("measurement");
  fields.number("line_id", one.line_id)
      .text("standing", one.standing)
      .number("width_nm", one.width.nm())
      .number("height_nm", one.height.nm())
      .text("unit", std::string(unit_word(one.unit)))
      .text("method", one.method)
      .number("mark_nm", nm_of(one.mark))
      .number("give_nm", one.give_or_take.nm())
      .text("measured", one.date)
      .text("note", one.note);
  (void)fields.insert(book);
}

}  // namespace

void JsonImport::take_set(const JsonObject& record) {
  record.only({"uuid", "name", "maker", "code", "stored_in", "status", "note", "dies"});
  const std::string uuid = uuid_of(record), key = key_of(record, "name");
  RecordFields fields("die_set");
  fields.text("name", std::string(trim(record.text("name"))))
      .text("maker", record.text("maker"))
      .text("code", record.text("code"))
      .text("stored_in", record.text("stored_in"))
      .text("status", record.text("status"))
      .text("note", record.text("note"));
  const auto by_name = id_by_key(book_, "SELECT id FROM die_set WHERE key = ?", key);
  const Placed placed = place(record, "die_set", fields, uuid, key, by_name, sets_);
  count(placed.result);
  record.each("dies", [&](const JsonObject& die) { take_die(die, placed.id); });
}

void JsonImport::take_die(const JsonObject& record, std::int64_t set_id) {
  record.only({"uuid", "label", "rank", "code", "stored_in", "status", "note", "lines"});
  const std::string uuid = uuid_of(record), key = key_of(record, "label");
  const auto rank = record.number("rank");
  if (rank && (*rank < 1 || *rank > 999))
    record.wrong("rank", fmt::format("{} is no rank", *rank), "1 = the largest, up to 999");
  RecordFields fields("die");
  fields.number("set_id", set_id)
      .text("label", std::string(trim(record.text("label"))))
      .number("rank", rank)
      .text("code", record.text("code"))
      .text("stored_in", record.text("stored_in"))
      .text("status", record.text("status"))
      .text("note", record.text("note"));
  Statement& find = book_.statement("SELECT id FROM die WHERE set_id = ? AND key = ?");
  find.bind_all(set_id, std::string_view(key));
  const auto by_name = first_integer(find);
  const Placed placed = place(record, "die", fields, uuid, key, by_name, dies_);
  count(placed.result);
  record.each("lines",
              [&](const JsonObject& line) { take_line(line, placed.id, placed.same != Same::by_name); });
}

void JsonImport::take_line(const JsonObject& record, std::int64_t die_id, bool replace) {
  record.only({"kind", "name", "shape", "figures", "outline", "outline_unit", "note", "measurements"});
  const std::string kind =
      record.one_of("kind", {"cut", "stitched", "pierced", "scored", "embossed", "window"});
  if (kind.empty())
    record.wrong("kind", "nothing stands here", "cut, stitched, pierced, scored, embossed or window");
  const std::string name = record.needed_text("name");
  RecordFields fields("line");
  fields.number("die_id", die_id)
      .text("kind", kind)
      .text("name", name)
      .text("shape", record.needed_text("shape"))
      .text("figures", record.text("figures"))
      .text("outline", record.text("outline"))
      .text("outline_unit", record.text("outline_unit"))
      .text("note", record.text("note"));
  const auto known = line_named(die_id, name);
  if (!record.fine()) return;
  bool changed = false;
  const std::int64_t id = known ? *known : fields.insert(book_);
  if (known) changed = replace ? fields.update(book_, id) : fields.fill(book_, id);
  take_measurements(record, id, changed);
  count(!known ? PutResult::added : changed ? PutResult::changed : PutResult::same);
}

Measured JsonImport::read_measurement(const JsonObject& record, std::int64_t line_id) const {
  record.only(
      {"standing", "width_nm", "height_nm", "unit", "method", "mark_nm", "give_nm", "measured", "note"});
  Measured one;
  one.line_id = line_id;
  one.standing = record.one_of("standing", {"current", "confirmation", "conflict", "earlier"});
  if (one.standing.empty())
    record.wrong("standing", "nothing stands here", "current, confirmation, conflict or earlier");
  const auto width = length_in(record, "width_nm"), height = length_in(record, "height_nm");
  if (!width || !height)
    record.wrong(width ? "height_nm" : "width_nm", "nothing stands here", "whole nanometres");
  one.width = width.value_or(Length());
  one.height = height.value_or(Length());
  one.unit = unit_in(record, "unit");
  one.method = record.needed_text("method");
  one.mark = length_in(record, "mark_nm");
  const auto give = record.number("give_nm");
  if (give && (*give < 0 || *give > longest_length.nm()))
    record.wrong("give_nm", fmt::format("{} is no give or take", *give), "whole nanometres");
  one.give_or_take = give ? Length::nm(*give) : give_or_take(one.method, one.mark, one.unit);
  one.date = record.date("measured");
  one.note = record.text("note");
  return one;
}

// A line without measurements takes the file's as they stand; else each one that is not known joins those of
// the book.
void JsonImport::take_measurements(const JsonObject& record, std::int64_t line_id, bool& changed) {
  const bool empty = measurements_of(book_, line_id).empty();
  bool current = false;
  record.each("measurements", [&](const JsonObject& said) {
    const Measured one = read_measurement(said, line_id);
    if (one.standing == "current" && current)
      said.wrong("standing", "two figures of one line are current", "one of them");
    current = current || one.standing == "current";
    if (!said.fine()) return;
    if (empty) {
      insert_measurement(book_, one);
      changed = true;
    } else if (const auto outcome = record_measurement(change_, one, false); !outcome) {
      said.wrong({}, outcome.error().what, outcome.error().expected);
    } else {
      changed = changed || outcome->result != MeasureResult::same;
      if (outcome->result == MeasureResult::conflict)
        report_.notes.push_back(fmt::format(
            "{}: another figure stands in the book; both are kept until you settle it", said.path()));
    }
  });
}

std::optional<std::int64_t> JsonImport::line_named(std::int64_t die_id, const std::string& name) const {
  Statement& find = book_.statement("SELECT id FROM line WHERE die_id = ? AND name = ?");
  find.bind_all(die_id, std::string_view(name));
  return first_integer(find);
}

std::optional<std::int64_t> JsonImport::line_reference(const JsonObject& record,
                                                       std::string_view member) const {
  std::optional<std::int64_t> line;
  record.inside(member, [&](const JsonObject& said) {
    said.only({"die", "name"});
    const auto die = reference(said, "die", "die", dies_);
    const std::string name = said.needed_text("name");
    if (!die) return said.wrong("die", "nothing stands here", "the UUID of a die");
    line = line_named(*die, name);
    if (!line) said.wrong("name", fmt::format("the die has no line {}", in_quotes(name)), "one of its lines");
  });
  return line;
}

void JsonImport::take_tried(const JsonObject& record) {
  record.only({"die", "line", "shape", "width_nm", "height_nm", "unit", "result", "date", "sample", "note"});
  const auto die = reference(record, "die", "die", dies_);
  if (!die) return record.wrong("die", "nothing stands here", "the UUID of a die");
  const std::string name = record.needed_text("line");
  const auto line = line_named(*die, name);
  if (!line)
    return record.wrong("line", fmt::format("the die has no line {}", in_quotes(name)), "one of its lines");
  if (refused_samples_.contains(record.text("sample")))
    return refuse(record, "the sample it names was refused", "that sample first");
  TriedRow row;
  row.line_id = *line;
  row.shape = record.needed_text("shape");
  const auto width = length_in(record, "width_nm"), height = length_in(record, "height_nm");
  if (!width || !height)
    return record.wrong(width ? "height_nm" : "width_nm", "nothing stands here", "whole nanometres");
  row.width = *width;
  row.height = *height;
  row.unit = unit_in(record, "unit");
  row.result = record.one_of("result", {"fits", "too tight", "too loose"});
  if (row.result.empty())
    return record.wrong("result", "nothing stands here", "fits, too tight or too loose");
  row.date = record.date("date");
  row.sample_id = reference(record, "sample", "sample", samples_);
  row.note = record.text("note");
  if (!record.fine()) return;
  const auto put = put_tried(change_, row);
  if (!put) return record.wrong({}, put.error().what, put.error().expected);
  count(*put);
}

}  // namespace insetbook
