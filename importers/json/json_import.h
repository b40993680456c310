// SPDX-License-Identifier: GPL-3.0-or-later
//
// The importer behind import_json.h: one record of the file after another, each put into the book by the
// rules there. Its parts are in files of their own:
//   import_json.cc      which record goes where, and what all records have
//   import_words.cc     settings and a person's own terms
//   import_supplies.cc  colours and supplies
//   import_dies.cc      sets with their dies, lines and measurements; panels tried
//   import_samples.cc   samples with their pieces, mentions and photographs
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "book/records.h"
#include "importers/json/format.h"
#include "importers/json/import_json.h"
#include "importers/json/read.h"
#include "importers/json/records.h"

namespace insetbook {

class JsonImport {
 public:
  JsonImport(Change& change, const JsonSource& source, const ImportOptions& options, ImportReport& report)
      : change_(change), book_(change.book()), source_(source), options_(options), report_(report) {}

  Result<void> run();

 private:
  using Ids = std::unordered_map<std::string, std::int64_t>;

  // How a record of the file and one of the book are the same thing, if they are.
  enum class Same { none, by_uuid, by_name };
  struct Placed {
    std::int64_t id = 0;
    PutResult result = PutResult::same;
    Same same = Same::none;
  };
  struct SampleParts {
    std::vector<ElementRow> elements;
    std::vector<std::string> goes_to;  // of each element: the folded name of another
  };

  // import_json.cc
  void take(Section section, const JsonObject& record);
  std::string uuid_of(const JsonObject& record) const;
  std::string key_of(const JsonObject& record, std::string_view member) const;
  Placed place(const JsonObject& record, std::string_view table, const RecordFields& fields,
               const std::string& uuid, const std::string& key, std::optional<std::int64_t> by_name,
               Ids& ids);
  std::optional<std::int64_t> by_uuid(std::string_view table, const std::string& uuid) const;
  std::optional<std::int64_t> reference(const JsonObject& record, std::string_view member,
                                        std::string_view table, const Ids& ids) const;
  Unit unit_in(const JsonObject& record, std::string_view member) const;
  std::optional<Length> length_in(const JsonObject& record, std::string_view member) const;
  void count(PutResult result);
  void refuse(const JsonObject& record, std::string what, std::string expected);
  // import_words.cc
  void take_setting(const JsonObject& record);
  void take_term(const JsonObject& record);
  // import_supplies.cc
  void take_colour(const JsonObject& record);
  void take_supply(const JsonObject& record);
  // import_dies.cc
  void take_set(const JsonObject& record);
  void take_die(const JsonObject& record, std::int64_t set_id);
  void take_line(const JsonObject& record, std::int64_t die_id, bool replace);
  void take_measurements(const JsonObject& record, std::int64_t line_id, bool& changed);
  Measured read_measurement(const JsonObject& record, std::int64_t line_id) const;
  std::optional<std::int64_t> line_named(std::int64_t die_id, const std::string& name) const;
  std::optional<std::int64_t> line_reference(const JsonObject& record, std::string_view member) const;
  void take_tried(const JsonObject& record);
  // import_samples.cc
  void take_sample(const JsonObject& record);
  SampleRow read_sample(const JsonObject& record);
  SampleParts read_elements(const JsonObject& record);
  ElementRow read_element(const JsonObject& record);
  void read_photos(const JsonObject& record, SampleRow& sample);
  void put_elements(const JsonObject& record, std::int64_t sample_id, bool is_new, SampleParts& parts);
  void remove_element(std::int64_t id);
  std::vector<Mention> read_mentions(const JsonObject& record);

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

}  // namespace insetbook
