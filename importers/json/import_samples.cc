// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "book/files.h"
#include "book/photos.h"
#include "book/sha256.h"
#include "importers/json/json_import.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

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
  sample.meant = record.text("meant");
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
  record.only({"name", "role", "side",  "shape", "width_nm", "height_nm", "placed",   "unit",
               "size", "set",  "die",   "line",  "in_line",  "goes",      "goes_how", "goes_to",
               "at",   "glue", "count", "note",  "mentions", "meant"});
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
  row.meant = record.text("meant");
  row.mentions = read_mentions(record);
  return row;
}

JsonImport::SampleParts JsonImport::read_elements(const JsonObject& record) {
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
    const bool meant = set_meant(change_, sample_id, done->second, row.meant);
    return done->first == PutResult::same && meant ? PutResult::changed : done->first;
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
               "meant",
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
  const bool meant = set_meant(change_, put->second, std::nullopt, sample.meant);
  count(put->first == PutResult::same && meant ? PutResult::changed : put->first);
  if (!uuid.empty()) samples_.emplace(uuid, put->second);
  put_elements(record, put->second, put->first == PutResult::added, parts);
}

}  // namespace insetbook
