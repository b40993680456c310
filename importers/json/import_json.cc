// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/import_json.h"

#include <fmt/format.h>

#include "book/link_mentions.h"
#include "book/units.h"
#include "book/upsert.h"
#include "importers/json/json_import.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

bool is_uuid(std::string_view text) {
  if (text.size() != 36) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool dash = i == 8 || i == 13 || i == 18 || i == 23;
    const bool hex = (text[i] >= '0' && text[i] <= '9') || (text[i] >= 'a' && text[i] <= 'f');
    if (dash ? text[i] != '-' : !hex) return false;
  }
  return true;
}

}  // namespace

std::string JsonImport::uuid_of(const JsonObject& record) const {
  const std::string uuid = record.text("uuid");
  if (uuid.empty() || is_uuid(uuid)) return uuid;
  record.wrong("uuid", fmt::format("{} is no UUID", in_quotes(uuid)),
               "36 characters, hexadecimal in lower case");
  return {};
}

std::string JsonImport::key_of(const JsonObject& record, std::string_view member) const {
  const std::string name = record.needed_text(member);
  std::string key = fold(name);
  if (const auto control = control_character(name, Lines::one))
    record.wrong(member, fmt::format("the name holds {}, at {}", name_of(*control), control->at),
                 "a name on one line");
  if (key.empty()) record.wrong(member, "nothing stands here that is a name", "a name");
  return key;
}

std::optional<std::int64_t> JsonImport::by_uuid(std::string_view table, const std::string& uuid) const {
  if (uuid.empty()) return std::nullopt;
  Statement& find = book_.statement(fmt::format("SELECT id FROM {} WHERE uuid = ?", table));
  find.bind(1, std::string_view(uuid));
  return first_integer(find);
}

std::optional<std::int64_t> JsonImport::reference(const JsonObject& record, std::string_view member,
                                                  std::string_view table, const Ids& ids) const {
  const std::string uuid = record.text(member);
  if (uuid.empty()) return std::nullopt;
  if (const auto known = ids.find(uuid); known != ids.end()) return known->second;
  const auto id = by_uuid(table, uuid);
  if (!id)
    record.wrong(member,
                 fmt::format("no {} has the UUID {}", table == "die_set" ? "set" : table, in_quotes(uuid)),
                 "one of the file or of the book");
  return id;
}

Unit JsonImport::unit_in(const JsonObject& record, std::string_view member) const {
  return unit_of(record.one_of(member, {"in", "mm"}));
}

std::optional<Length> JsonImport::length_in(const JsonObject& record, std::string_view member) const {
  return maybe_length(record.nm(member));
}

void JsonImport::count(PutResult result) {
  ++(result == PutResult::added     ? counts_.added
     : result == PutResult::changed ? counts_.changed
                                    : counts_.same);
}

void JsonImport::refuse(const JsonObject& record, std::string what, std::string expected) {
  ++counts_.refused;
  report_.refused.push_back({source_.name, 0, record.path(), std::move(what), std::move(expected), false});
}

// Puts a record in by the rules of the header. `fields` lack uuid and key.
JsonImport::Placed JsonImport::place(const JsonObject& record, std::string_view table,
                                     const RecordFields& fields, const std::string& uuid,
                                     const std::string& key, std::optional<std::int64_t> by_name, Ids& ids) {
  Placed placed;
  if (!record.fine()) return placed;
  const auto known = by_uuid(table, uuid);
  if (known) {
    placed.same = Same::by_uuid;
    placed.id = *known;
    if (by_name && *by_name != *known) {
      record.wrong({}, "another record of the book has this name", "another name in one of the two");
      return placed;
    }
    RecordFields all = fields;
    placed.result = all.text("key", key).update(book_, *known) ? PutResult::changed : PutResult::same;
  } else if (by_name) {
    placed.same = Same::by_name;
    placed.id = *by_name;
    placed.result = fields.fill(book_, *by_name) ? PutResult::changed : PutResult::same;
  } else {
    RecordFields all = fields;
    placed.id = all.text("key", key).text("uuid", uuid.empty() ? new_uuid() : uuid).insert(book_);
    placed.result = PutResult::added;
  }
  if (!uuid.empty()) ids.emplace(uuid, placed.id);
  if (placed.result != PutResult::same && table == "colour") colour_is_new(change_);
  if (placed.result != PutResult::same && (table == "colour" || table == "supply")) supply_is_new(change_);
  return placed;
}

void JsonImport::take(Section section, const JsonObject& record) {
  switch (section) {
    case Section::settings:
      return take_setting(record);
    case Section::terms:
      return take_term(record);
    case Section::colours:
      return take_colour(record);
    case Section::sets:
      return take_set(record);
    case Section::supplies:
      return take_supply(record);
    case Section::samples:
      return take_sample(record);
    case Section::tried:
      return take_tried(record);
  }
}

Result<void> JsonImport::run() {
  counts_.file = source_.name;
  counts_.kind = "book";
  keep_later_mentions(change_);
  Result<void> read =
      read_exchange(source_.bytes, [&](int section, const JsonObject& record) -> Result<void> {
        take(static_cast<Section>(section), record);
        constexpr std::int64_t every = 1024;
        if (options_.progress && ++done_ % every == 0) options_.progress(done_, 0);
        return {};
      });
  if (!read) {
    Problem problem = read.error();
    problem.where.file = source_.name;
    return failure(std::move(problem));
  }
  report_.files.push_back(counts_);
  return {};
}

Result<void> import_json(Change& change, const JsonSource& source, const ImportOptions& options,
                         ImportReport& report) {
  return JsonImport(change, source, options, report).run();
}

}  // namespace insetbook
