// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "book/upsert.h"
#include "importers/json/json_import.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

void JsonImport::take_colour(const JsonObject& record) {
  record.only({"uuid", "name", "value", "note"});
  const std::string uuid = uuid_of(record), key = key_of(record, "name"), value = record.text("value");
  std::optional<std::int64_t> srgb;
  if (!value.empty()) {
    if (value.size() == 7 && value[0] == '#' &&
        value.find_first_not_of("0123456789abcdef", 1) == std::string::npos)
      srgb = std::stoll(value.substr(1), nullptr, 16);
    else
      record.wrong("value", fmt::format("{} is no colour value", in_quotes(value)), "#rrggbb in lower case");
  }
  RecordFields fields("colour");
  fields.text("name", std::string(trim(record.text("name"))))
      .number("srgb", srgb)
      .text("note", record.text("note"));
  count(place(record, "colour", fields, uuid, key, colour_named(book_, key), colours_).result);
}

void JsonImport::take_supply(const JsonObject& record) {
  record.only({"uuid", "kind",   "set",     "name",         "words",        "colour", "width_nm", "height_nm",
               "unit", "size",   "weight",  "weight_mg_m2", "thickness_nm", "from",   "until",    "status",
               "have", "cut_by", "instead", "stored_in",    "price",        "note"});
  const std::string uuid = uuid_of(record);
  const auto colour = reference(record, "colour", "colour", colours_);
  std::string colour_name;
  if (colour) {
    Statement& find = book_.statement("SELECT name FROM colour WHERE id = ?");
    find.bind(1, *colour);
    if (find.step()) colour_name = find.text(0);
    find.reset();
  }
  const std::string kind = record.text("kind"), set = record.text("set"), name = record.text("name");
  if (name.empty() && set.empty() && !colour)
    record.wrong("name", "the supply has neither a name nor a colour", "what it is called");
  const std::string key = supply_key(kind, set, name, colour_name);
  const SupplyNameKeys keys = supply_name_keys(set, name, colour_name);
  const auto width = record.nm("width_nm");
  RecordFields fields("supply");
  fields.text("kind", kind)
      .text("set_name", set)
      .text("name", name)
      .text("words", record.text("words"))
      .number("colour_id", colour)
      .number("width_nm", width)
      .number("height_nm", record.nm("height_nm"))
      .text("unit", record.one_of("unit", {"in", "mm"}))
      .text("size_text", record.text("size"))
      .text("weight_text", record.text("weight"))
      .number("weight_mg_m2", record.number("weight_mg_m2"))
      .number("thickness_nm", record.nm("thickness_nm"))
      .text("from_date", record.date("from"))
      .text("until_date", record.date("until"))
      .text("status", record.text("status"))
      .text("have", record.text("have"))
      .text("cut_by", record.text("cut_by"))
      .text("instead", record.text("instead"))
      .text("stored_in", record.text("stored_in"))
      .text("price", record.text("price"))
      .text("note", record.text("note"))
      .text("name_key", keys.name)
      .text("full_key", keys.full);
  const auto by_name = id_by_key(book_, "SELECT id FROM supply WHERE key = ?", key);
  count(place(record, "supply", fields, uuid, key, by_name, supplies_).result);
}

}  // namespace insetbook
