// SPDX-License-Identifier: GPL-3.0-or-later
//
// Look-up of records by name: exactly, by words and prefixes (FTS5), then by trigrams, so that a misspelt
// name is still found. Always in step: the tables live in the records' own transaction
// (schema/migrations/0002_names.sql).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace insetbook {

enum class RecordKind { set = 1, die = 2, supply = 3, colour = 4, sample = 5 };
std::string_view record_kind_word(RecordKind kind);  // "set", …

struct NameHit {
  RecordKind kind;
  std::int64_t id = 0;
  std::string name;  // as a person would write it: "Tidepool Rectangles 2", "ink, Harbour Inks, kelp"
  enum class How { exact, words, like } how = How::exact;
};

// Exact names first, then names that contain all words (the last one as a prefix), then misspelt ones,
// nearest first. Later kinds of match are only looked for where the earlier ones found nothing.
std::vector<NameHit> find_names(const Book& book, std::string_view text, std::optional<RecordKind> kind,
                                std::size_t limit);

// The one record meant, or a Problem (unknown_name with the nearest, ambiguous with all).
Result<NameHit> find_name(const Book& book, std::string_view text, std::optional<RecordKind> kind);

// Records of this very name, by index look-ups only (a question asks this for each of its words): sets
// (plural and singular alike), colours, samples, dies by their label, supplies by their name or by set and
// name. `folded` as text/utf8.h folds.
std::vector<NameHit> names_exactly(const Book& book, std::string_view folded);
// Whether any of those names begins with these words.
bool names_begin(const Book& book, std::string_view folded);
// The name of a record as a person would write it; empty where it is not there.
std::string record_name(const Book& book, RecordKind kind, std::int64_t id);

// Everything that begins so, for type-ahead.
std::vector<NameHit> complete(const Book& book, std::string_view beginning, std::size_t limit);

}  // namespace insetbook
