// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/kept_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace insetbook {

std::string kept_opening(const Opening& opening) {
  const Shape& shape = opening.shape;
  return fmt::format("{}\n{}\n{} {} {}\n{}\n{}", static_cast<int>(shape.kind), shape.name, shape.width.nm(),
                     shape.height.nm(), opening.give_or_take.nm(), shape.figures, shape.outline);
}

std::string_view take(std::string_view& text, char separator) {
  const std::size_t end = std::min(text.find(separator), text.size());
  const std::string_view part = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return part;
}

bool read_figures(std::string_view text, std::span<std::int64_t> figures) {
  for (std::int64_t& figure : figures) {
    const std::string_view part = take(text, ' ');
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), figure);
    if (error != std::errc() || end != part.data() + part.size()) return false;
  }
  return text.empty();
}

}  // namespace insetbook
