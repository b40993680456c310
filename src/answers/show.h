// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the book knows of one record: a die set, a die, a supply, a colour or a sample.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "book/names.h"
#include "book/openings.h"
#include "book/records.h"

namespace insetbook {

struct ShownLine {
  OpeningRecord opening;
  std::vector<Measured> measurements;  // the current one first, then newest first
  std::vector<TriedPanel> tried;
};

struct ShownDie {
  std::string set, label;
  int rank = 0;
  std::vector<ShownLine> lines;      // outermost first
  std::vector<std::string> samples;  // titles of samples with a piece cut by it or lying in it, newest first
};

struct ShownSet {
  std::string name, maker, code, stored_in, status, note;
  std::vector<ShownDie> dies;  // by rank
  std::int64_t samples = 0;
};

struct ShownSupply {
  SupplyRow row;
  std::vector<std::string> samples;
};

struct ShownColour {
  std::string name, note;
  std::optional<std::uint32_t> srgb;
  std::vector<std::string> supplies;  // as they are listed: "ink, Harbour Inks, kelp"
  std::vector<std::string> samples;
};

struct ShownElement {
  ElementRow row;
  std::string cut_by;  // "Tidepool Rectangles 2, stitched", or empty
  std::string lies_in;
};

struct ShownSample {
  SampleRow row;
  std::vector<ShownElement> elements;
};

using Shown = std::variant<ShownSet, ShownDie, ShownSupply, ShownColour, ShownSample>;

struct ShowAnswer {
  std::string name;  // the record's own name
  std::string uuid;
  std::string instead_of;  // where the name was misspelt: what was typed
  Shown shown;
};

Result<ShowAnswer> show(const Book& book, std::string_view name);

}  // namespace insetbook
