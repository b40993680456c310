// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/import_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_set>

#include "book/files.h"
#include "book/link_mentions.h"
#include "book/own_words.h"
#include "book/photos.h"
#include "book/records.h"
#include "book/settings.h"
#include "book/sha256.h"
#include "book/units.h"
#include "book/upsert.h"
#include "importers/json/format.h"
#include "importers/json/read.h"
#include "importers/json/records.h"
#include "language/vocabulary.h"
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

// How a record of the file and one of the book are the same thing, if they are.
enum class Same { none, by_uuid, by_name };

struct Placed {
  std::int64_t id = 0;
  PutResult result = PutResult::same;
};

struct SampleParts {
  std::vector<ElementRow> elements;
  std::vector<std::string> goes_to;  // of each element: the folded name of another
};

class JsonImport {
 public:
  JsonImport(Change& change, const JsonSource& source, const ImportOptions& options, ImportReport& report)
      : change_(change), book_(change.book()), source_(source), options_(options), report_(report) {}

  Result<void> run();

 private:
  using Ids = std::unordered_map<std::string, std::int64_t>;

  void take(Section section, const JsonObject& record);
  void take_setting(const JsonObject& record);
  void take_term(const JsonObject& record);
  void take_colour(const JsonObject& record);
  void take_set(const JsonObject& record);
  void take_die(const JsonObject& record, std::int64_t set_id);
  void take_line(const JsonObject& record, std::int64_t die_id, bool replace);
  void take_measurements(const JsonObject& record, std::int64_t line_id, bool& changed);
  void take_supply(const JsonObject& record);
  void take_sample(const JsonObject& record);
  SampleRow read_sample(const JsonObject& record);
  SampleParts read_elements(const JsonObject& record);
  ElementRow read_element(const JsonObject& record);
  void read_photos(const JsonObject& record, SampleRow& sample);
  void put_elements(const JsonObject& record, std::int64_t sample_id, bool is_new, SampleParts& parts);
  void remove_element(std::int64_t id);
  std::vector<Mention> read_mentions(const JsonObject& record);
  void take_tried(const JsonObject& record);

  std::string uuid_of(const JsonObject& record) const;
  std::string key_of(const JsonObject& record, std::string_view member) const;
  Placed place(const JsonObject& record, std::string_view table, const RecordFields& fields,
               const std::string& uuid, const std::string& key, std::optional<std::int64_t> by_name, Ids& ids,
               Same& same);
  std::optional<std::int64_t> by_uuid(std::string_view table, const std::string& uuid) const;
  std::optional<std::int64_t> reference(const JsonObject& record, std::string_view member,
                                        std::string_view table, const Ids& ids) const;
  std::optional<std::int64_t> line_reference(const JsonObject& record, std::string_view member) const;
  std::optional<std::int64_t> line_named(std::int64_t die_id, const std::string& name) const;
  Unit unit_in(const JsonObject& record, std::string_view member) const;
  std::optional<Length> length_in(const JsonObject& record, std::string_view member) const;
  void count(PutResult result);
  void refuse(const JsonObject& record, std::string what, std::string expected);

  Change& change_;
  const Book& book_;
  const JsonSource& source_;
  const ImportOptions& options_;
  ImportReport& report_;
  ImportedFile counts_;
  Ids colours_, sets_, dies_, supplies_, samples_;  // of the file, by UUID
  std::unordered_set<std::string> refused_samples_;
  std::int64_t done_ = 0;
};

// ---- what all records have

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
Placed JsonImport::place(const JsonObject& record, std::string_view table, const RecordFields& fields,
                         const std::string& uuid, const std::string& key, std::optional<std::int64_t> by_name,
                         Ids& ids, Same& same) {
  Placed placed;
  same = Same::none;
  if (!record.fine()) return placed;
  const auto known = by_uuid(table, uuid);
  if (known) {
    same = Same::by_uuid;
    placed.id = *known;
    if (by_name && *by_name != *known) {
      record.wrong({}, "another record of the book has this name", "another name in one of the two");
      return placed;
    }
    RecordFields all = fields;
    placed.result = all.text("key", key).update(book_, *known) ? PutResult::changed : PutResult::same;
  } else if (by_name) {
    same = Same::by_name;
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

// ---- settings, own terms, colours

void JsonImport::take_setting(const JsonObject& record) {
  record.only({"name", "value"});
  const std::string name = record.needed_text("name"), said = record.text("value");
  if (!record.fine()) return;
  const auto value = checked_setting(name, said, settings(book_).unit);
  if (!value)
    return record.wrong(value.error().kind == ProblemKind::unknown_name ? "name" : "value",
                        value.error().what, value.error().expected);
  if (value->empty()) return count(PutResult::same);  // the default, which is not written down
  Statement& insert =
      book_.statement("INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT DO NOTHING");
  insert.bind_all(std::string_view(name), std::string_view(*value)).run();
  count(book_.database().changes() > 0 ? PutResult::added : PutResult::same);
}

void JsonImport::take_term(const JsonObject& record) {
  record.only({"vocabulary", "term", "labels", "broader", "stands"});
  const std::string labels = record.text("labels");
  OwnWord word{.vocabulary = record.needed_text("vocabulary"),
               .term = record.needed_text("term"),
               .labels = split_labels(labels),
               .broader = record.text("broader"),
               .stands = record.one_of("stands", {"built to stand", "part-open", "no"})};
  if (!vocabulary_name(word.vocabulary))
    record.wrong("vocabulary", fmt::format("{} is no vocabulary", in_quotes(word.vocabulary)),
                 "technique, fold, shape …");
  if (const auto fine = check_own_word(word); !fine)
    record.wrong("term", fine.error().what, fine.error().expected);
  if (!record.fine()) return;
  Statement& insert = book_.statement(
      "INSERT INTO own_term (vocabulary, term, labels, broader, stands) VALUES (?, ?, ?, ?, ?) ON CONFLICT "
      "DO NOTHING");
  insert
      .bind_all(std::string_view(word.vocabulary), std::string_view(word.term), std::string_view(labels),
                std::string_view(word.broader), std::string_view(word.stands))
      .run();
  count(book_.database().changes() > 0 ? PutResult::added : PutResult::same);
}

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
  Same same;
  count(place(record, "colour", fields, uuid, key, colour_named(book_, key), colours_, same).result);
}

// ---- die sets

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
  Same same;
  const auto by_name = id_by_key(book_, "SELECT id FROM die_set WHERE key = ?", key);
  const Placed placed = place(record, "die_set", fields, uuid, key, by_name, sets_, same);
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
  Same same;
  const Placed placed = place(record, "die", fields, uuid, key, by_name, dies_, same);
  count(placed.result);
  record.each("lines", [&](const JsonObject& line) { take_line(line, placed.id, same != Same::by_name); });
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

// A line without measurements takes the file's as they stand; else each one that is not known joins those of
// the book.
void JsonImport::take_measurements(const JsonObject& record, std::int64_t line_id, bool& changed) {
  const bool empty = measurements_of(book_, line_id).empty();
  bool current = false;
  record.each("measurements", [&](const JsonObject& said) {
    said.only(
        {"standing", "width_nm", "height_nm", "unit", "method", "mark_nm", "give_nm", "measured", "note"});
    Measured one;
    one.line_id = line_id;
    one.standing = said.one_of("standing", {"current", "confirmation", "conflict", "earlier"});
    if (one.standing.empty())
      said.wrong("standing", "nothing stands here", "current, confirmation, conflict or earlier");
    if (one.standing == "current" && current)
      said.wrong("standing", "two figures of one line are current", "one of them");
    current = current || one.standing == "current";
    const auto width = length_in(said, "width_nm"), height = length_in(said, "height_nm");
    if (!width || !height)
      return said.wrong(width ? "height_nm" : "width_nm", "nothing stands here", "whole nanometres");
    one.width = *width;
    one.height = *height;
    one.unit = unit_in(said, "unit");
    one.method = said.needed_text("method");
    one.mark = length_in(said, "mark_nm");
    const auto give = said.number("give_nm");
    if (give && (*give < 0 || *give > longest_length.nm()))
      said.wrong("give_nm", fmt::format("{} is no give or take", *give), "whole nanometres");
    one.give_or_take = give ? Length::nm(*give) : give_or_take(one.method, one.mark, one.unit);
    one.date = said.date("measured");
    one.note = said.text("note");
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

// ---- supplies

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
  Same same;
  const auto by_name = id_by_key(book_, "SELECT id FROM supply WHERE key = ?", key);
  count(place(record, "supply", fields, uuid, key, by_name, supplies_, same).result);
}

// ---- samples

std::vector<Mention> JsonImport::read_mentions(const JsonObject& record) {
  std::vector<Mention> mentions;
  record.each("mentions", [&](const JsonObject& said) {
    said.only({"kind", "term", "colour", "supply", "written"});
    Mention mention;
    mention.kind = said.one_of(
        "kind", {"fold", "technique", "feature", "occasion", "material", "paper", "ink", "supply"});
    if (mention.kind.empty())
      said.wrong("kind", "nothing stands here",
                 "fold, technique, feature, occasion, material, paper, ink or supply");
    if (said.has("term")) mention.term = said.needed_text("term");
    mention.colour_id = reference(said, "colour", "colour", colours_);
    mention.supply_id = reference(said, "supply", "supply", supplies_);
    mention.written = said.text("written");
    mentions.push_back(std::move(mention));
  });
  return mentions;
}

SampleRow JsonImport::read_sample(const JsonObject& record) {
  SampleRow sample;
  sample.title = record.text("title");
  sample.made = record.date("made");
  sample.base.width = length_in(record, "base_width_nm");
  sample.base.height = length_in(record, "base_height_nm");
  sample.base.unit = unit_in(record, "base_unit");
  sample.base.text = record.text("base");
  sample.scores = record.text("scores");
  sample.finished_text = record.text("finished");
  sample.closed_width = length_in(record, "closed_width_nm");
  sample.closed_height = length_in(record, "closed_height_nm");
  sample.closed_unit = unit_in(record, "closed_unit");
  sample.words = record.text("words");
  sample.envelope = record.text("envelope");
  sample.steps = record.text("steps");
  sample.based_on = record.text("based_on");
  sample.note = record.text("note");
  sample.mentions = read_mentions(record);
  return sample;
}

// A photograph whose bytes are not in the folder does not keep the sample out: it is told beside it.
void JsonImport::read_photos(const JsonObject& record, SampleRow& sample) {
  record.each("photos", [&](const JsonObject& said) {
    said.only({"file_name", "hash"});
    PhotoOnRecord photo{said.needed_text("file_name"), said.needed_text("hash")};
    if (!is_photo_hash(photo.hash))
      return said.wrong("hash", fmt::format("{} is no SHA-256", in_quotes(photo.hash)),
                        "64 hexadecimal digits");
    if (!read_photo(book_, photo.hash)) {
      auto bytes = read_file(source_.folder / "photos" / photo.hash, largest_photo);
      if (bytes && sha256(*bytes) != photo.hash)
        bytes = failure(bad_input("the photograph is not what its name says", "the file as it was exported"));
      if (bytes && !options_.dry_run) bytes = keep_photo(book_, *bytes, photo.file_name);
      if (!bytes) {
        report_.refused.push_back(
            {source_.name, 0, said.path(),
             fmt::format("the photograph {}: {}", in_quotes(photo.file_name), bytes.error().what),
             bytes.error().expected, true});
        return;
      }
    }
    sample.photos.push_back(std::move(photo));
  });
}

ElementRow JsonImport::read_element(const JsonObject& record) {
  record.only({"name",     "role",    "side", "shape", "width_nm", "height_nm", "placed",
               "unit",     "size",    "set",  "die",   "line",     "in_line",   "goes",
               "goes_how", "goes_to", "at",   "glue",  "count",    "note",      "mentions"});
  ElementRow row;
  row.name = record.text("name");
  row.role = record.text("role");
  row.side = record.one_of("side", {"front", "inside", "back"});
  row.shape = record.text("shape");
  row.size.width = length_in(record, "width_nm");
  row.size.height = length_in(record, "height_nm");
  row.size.unit = unit_in(record, "unit");
  row.size.placed = record.number("placed").value_or(0) != 0;
  row.size.text = record.text("size");
  row.set_id = reference(record, "set", "die_set", sets_);
  row.die_id = reference(record, "die", "die", dies_);
  row.line_id = line_reference(record, "line");
  row.in_line_id = line_reference(record, "in_line");
  row.goes = record.text("goes");
  row.goes_how = record.one_of("goes_how", {"on", "in", "behind", "around", "through"});
  row.at = record.text("at");
  row.glue = record.text("glue");
  const auto count = record.number("count").value_or(1);
  if (count < 1 || count > 999) record.wrong("count", fmt::format("{} is no count", count), "1 to 999");
  row.count = static_cast<int>(std::clamp<std::int64_t>(count, 1, 999));
  row.note = record.text("note");
  row.mentions = read_mentions(record);
  return row;
}

SampleParts JsonImport::read_elements(const JsonObject& record) {
  SampleParts parts;
  std::unordered_set<std::string> keys;
  record.each("elements", [&](const JsonObject& said) {
    ElementRow row = read_element(said);
    row.position = static_cast<int>(parts.elements.size()) + 1;
    const std::string key = key_of(said, "name");
    if (!keys.insert(key).second)
      said.wrong("name", fmt::format("two pieces are called {}", in_quotes(row.name)),
                 "another name for one of them");
    parts.elements.push_back(std::move(row));
    parts.goes_to.push_back(fold(said.text("goes_to")));
  });
  record.each("elements", [&](const JsonObject& said) {
    const std::string to = fold(said.text("goes_to"));
    if (!to.empty() && !keys.contains(to))
      said.wrong("goes_to",
                 fmt::format("no piece of the sample is called {}", in_quotes(said.text("goes_to"))),
                 "one of its pieces");
  });
  return parts;
}

void JsonImport::remove_element(std::int64_t id) {
  book_.statement("UPDATE element SET goes_to = NULL WHERE goes_to = ?").bind(1, id).run();
  book_.statement("DELETE FROM mention WHERE element_id = ?").bind(1, id).run();
  book_.statement("DELETE FROM element WHERE id = ?").bind(1, id).run();
}

// A piece may go with one that comes later in the list: such a piece is put once more when that one is there.
void JsonImport::put_elements(const JsonObject& record, std::int64_t sample_id, bool is_new,
                              SampleParts& parts) {
  Ids ids;
  if (!is_new)
    for (const auto& [id, row] : elements_of(book_, sample_id)) ids.emplace(fold(row.name), id);
  Ids left = ids;
  std::vector<std::size_t> again;
  const auto put = [&](std::size_t i) -> std::optional<PutResult> {
    ElementRow& row = parts.elements[i];
    row.sample_id = sample_id;
    if (!parts.goes_to[i].empty()) {
      const auto to = ids.find(parts.goes_to[i]);
      if (to != ids.end()) row.goes_to = to->second;
    }
    const auto done = put_element(change_, row);
    if (!done) {
      record.wrong({}, done.error().what, done.error().expected);
      return std::nullopt;
    }
    ids[fold(row.name)] = done->second;
    return done->first;
  };
  for (std::size_t i = 0; i < parts.elements.size(); ++i) {
    left.erase(fold(parts.elements[i].name));
    const auto result = put(i);
    if (!result) return;
    count(*result);
    if (!parts.goes_to[i].empty() && !parts.elements[i].goes_to) again.push_back(i);
  }
  for (const std::size_t i : again)
    if (!put(i)) return;
  for (const auto& [name, id] : left) {
    remove_element(id);
    ++counts_.changed;
  }
}

void JsonImport::take_sample(const JsonObject& record) {
  record.only({"uuid",
               "title",
               "made",
               "base_width_nm",
               "base_height_nm",
               "base_unit",
               "base",
               "scores",
               "finished",
               "closed_width_nm",
               "closed_height_nm",
               "closed_unit",
               "words",
               "envelope",
               "steps",
               "based_on",
               "note",
               "mentions",
               "elements",
               "photos"});
  const std::string uuid = uuid_of(record), key = key_of(record, "title");
  const auto known = by_uuid("sample", uuid), titled = sample_titled(book_, key);
  SampleRow sample = read_sample(record);
  SampleParts parts = read_elements(record);
  if (titled && titled != known && !uuid.empty()) {
    refused_samples_.insert(uuid);
    return refuse(record, fmt::format("another sample of the book is called {}", in_quotes(sample.title)),
                  "another title in one of the two");
  }
  read_photos(record, sample);
  if (!record.fine()) return;
  sample.uuid = uuid;
  const auto put = put_sample(change_, sample);
  if (!put) return record.wrong({}, put.error().what, put.error().expected);
  count(put->first);
  if (!uuid.empty()) samples_.emplace(uuid, put->second);
  put_elements(record, put->second, put->first == PutResult::added, parts);
}

// ---- tried

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

}  // namespace

Result<void> import_json(Change& change, const JsonSource& source, const ImportOptions& options,
                         ImportReport& report) {
  return JsonImport(change, source, options, report).run();
}

}  // namespace insetbook
