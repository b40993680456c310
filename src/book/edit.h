// SPDX-License-Identifier: GPL-3.0-or-later
//
// Changing one field of a record, and deleting records. The fields are one table: help and messages are
// written from it. Lengths, sizes, dates and colour values are read here; what takes the language to read
// (folds, techniques, what a piece goes with, weights) arrives finished through the functions below. Deleting
// takes a record's own parts with it (a set's dies, lines, measurements and what was tried in them; a
// sample's pieces, photographs and what is said of it) and is refused, with the list, where other records
// refer to it. Both can be taken back.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "book/records.h"

namespace insetbook {

enum class EditKind { set, die, line, supply, colour, sample, piece };
std::string_view edit_kind_word(EditKind kind);  // "set", "die", …

struct Editable {
  EditKind kind;
  std::int64_t id = 0;
  std::string
      name;  // as a person would write it: "Tidepool Rectangles 2, stitched"; "Moonrise birthday, frame"
  bool by_part = false;  // found by words of its name, not by the whole of it
};

// The record named: as `find_name` has it, or a line of a die or a piece of a sample after a comma. Unknown:
// the nearest names; several: all of them.
Result<Editable> find_editable(const Book& book, std::string_view name);

enum class EditedKind { text, name, date, length, size, count, colour_value };

struct FieldRow {
  EditKind record;
  std::string_view name;    // "stored in"
  std::string_view column;  // of the record's table; for a size, what stands before "width_nm"
  EditedKind kind;
};
std::span<const FieldRow> field_rows();
std::vector<std::string> fields_of(EditKind kind);
// The row for a field's name ("stored in", "stored-in", "kept in"); a Problem with the names there are.
Result<const FieldRow*> find_field(EditKind kind, std::string_view name);

// `same` where the record has that value already. An empty value takes what is there away, where it may be
// blank.
Result<PutResult> change_field(Change& change, const Editable& record, std::string_view field,
                               std::string_view value);
// A supply's weight: as written, with what it comes to.
Result<PutResult> change_weight(Change& change, std::int64_t supply_id, std::string_view text,
                                std::optional<std::int64_t> mg_m2);
// All that is said of a sample (no element) or of a piece in one kind ("fold", "ink"), in place of what was
// said.
Result<PutResult> change_mentions(Change& change, std::int64_t sample_id,
                                  std::optional<std::int64_t> element_id, std::string_view kind,
                                  const std::vector<Mention>& mentions);

Result<void> delete_record(Change& change, const Editable& record);

}  // namespace insetbook
