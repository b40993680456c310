// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the reader asks of the book: the names that a person gave to their sets, supplies, colours and
// samples. The language does not know the store; `answers` hands in an implementation over the book, tests
// hand in a table.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"

namespace insetbook {

// Of a basic colour word: "light blue", "dark green".
enum class Shade { light, dark };
inline std::optional<Shade> shade_named(std::string_view folded) {
  if (folded == "light" || folded == "pale") return Shade::light;
  if (folded == "dark" || folded == "deep") return Shade::dark;
  return std::nullopt;
}
inline std::string_view shade_word(Shade shade) {
  return shade == Shade::light ? "light" : "dark";
}

// What a die is said to be that may be any.
inline constexpr std::string_view any_die = "any die";

enum class NameKind { set, die, supply, colour, sample };

struct NamedRecord {
  NameKind kind;
  std::int64_t id = 0;
  std::string name;    // as recorded
  std::string detail;  // supplies: the kind ("ink", "card stock"); dies: the set
};

class Names {
 public:
  virtual ~Names() = default;

  // Records whose folded name is exactly `folded` (plural and singular alike for sets: "tidepool rectangle"
  // names the set "Tidepool Rectangles").
  virtual std::vector<NamedRecord> exactly(std::string_view folded) const = 0;
  // Whether any name begins with these words: lets the reader stop looking further. May say yes too often.
  virtual bool begins(std::string_view folded) const = 0;
  // Sets whose names begin with these words and go on ("moonrise" of "Moonrise Circles"), in the order of
  // their names.
  virtual std::vector<NamedRecord> sets_begun(std::string_view) const { return {}; }
  // Sets of this maker.
  virtual std::vector<NamedRecord> sets_of_maker(std::string_view) const { return {}; }
  // Names within a small edit distance, nearest first, at most `limit`: for suggestions.
  virtual std::vector<NamedRecord> like(std::string_view folded, std::size_t limit) const = 0;

  // Ids of colours of a basic colour word by value ("green"), and within `delta_e` of a colour or of
  // 0xrrggbb.
  virtual std::vector<std::int64_t> colours_of_word(std::string_view basic_word) const = 0;
  // Those of them that are light or dark.
  virtual std::vector<std::int64_t> colours_of_shade(std::string_view basic_word, Shade) const {
    return colours_of_word(basic_word);
  }
  virtual std::vector<std::int64_t> colours_like(std::int64_t colour, double delta_e) const = 0;
  virtual std::vector<std::int64_t> colours_like_value(std::uint32_t srgb, double delta_e) const = 0;

  // Supplies of a set of stamps or the like, by the set's folded name; their names are the set's.
  virtual std::vector<NamedRecord> supplies_of_set(std::string_view) const { return {}; }
  // The kind of supply that the folded words name, one or many ("stamps"), as it is recorded, else empty.
  virtual std::string supply_kind(std::string_view) const { return {}; }

  // The supplies that are recorded as adhesives.
  virtual std::vector<NamedRecord> adhesives() const { return {}; }

  // What has one of these statuses today (ids of their vocabulary), by what is recorded of it, else by its
  // dates. A colour has it where every supply of that use has; of a kind of supply, or of any.
  using Statuses = std::vector<std::string>;
  virtual std::vector<std::int64_t> colours_with_status(const Statuses&, ColourUse) const { return {}; }
  virtual std::vector<std::int64_t> supplies_with_status(const Statuses&, std::string_view) const {
    return {};
  }
  virtual std::vector<std::int64_t> dies_with_status(const Statuses&) const { return {}; }
  virtual std::vector<std::int64_t> sets_with_status(const Statuses&) const { return {}; }

  // The dies of a set from the largest: ids in rank order (dies without a rank last).
  virtual std::vector<std::int64_t> dies_of(std::int64_t set) const = 0;
  // The dies that a text names by words of their set and label, by order and line ("smallest hexagon",
  // "tidepool 2"), as they are found for every question; a misspelt name is none.
  virtual std::vector<std::int64_t> dies_said(std::string_view) const { return {}; }
  // The die of a set with this folded label ("2", "large tag"), if any.
  virtual std::optional<std::int64_t> die_labelled(std::int64_t set, std::string_view folded) const = 0;
};

}  // namespace insetbook
