// SPDX-License-Identifier: GPL-3.0-or-later
//
// A row of a table as the change log keeps it: a JSON array of its columns in order, whole numbers, texts and
// null. The book's tables are STRICT and hold nothing else. Written byte for byte the same for the same row,
// so that two rows are compared by their text.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace insetbook {

using RowValue = std::variant<std::monostate, std::int64_t, std::string>;

void append_row_integer(std::string& out, std::int64_t value);
void append_row_text(std::string& out, std::string_view value);

// Empty where the text is no such array.
std::optional<std::vector<RowValue>> read_row_text(std::string_view text);

}  // namespace insetbook
