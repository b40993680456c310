// SPDX-License-Identifier: GPL-3.0-or-later
//
// What people call a supply in a cell of another table: "kelp ink", "Harbour Inks, kelp", "ink, Harbour Inks,
// kelp" are one. Every name of every supply is read once; a name that several supplies answer to is nobody's.
// For whoever asks for many: book/names.h finds a single one.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "book/book.h"

namespace insetbook {

class SupplyNames {
 public:
  explicit SupplyNames(const Book& book);
  std::optional<std::int64_t> find(std::string_view name) const;

 private:
  std::unordered_map<std::string, std::optional<std::int64_t>> ids_;  // empty: several
};

}  // namespace insetbook
