// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/near_word.h"

#include <algorithm>
#include <vector>

#include "text/utf8.h"

namespace insetbook {
namespace {

bool same_letters(const std::vector<Character>& a, const std::vector<Character>& b) {
  const auto sorted = [](const std::vector<Character>& word) {
    std::vector<char32_t> codes;
    for (const Character& each : word) codes.push_back(each.code);
    std::sort(codes.begin(), codes.end());
    return codes;
  };
  return sorted(a) == sorted(b);
}

}  // namespace

std::optional<std::size_t> slip_distance(std::string_view written, std::string_view meant) {
  constexpr std::string_view figures = "0123456789";
  if (written.find_first_of(figures) != std::string_view::npos) return std::nullopt;
  // No character is longer than four bytes: what differs by more is not looked at.
  constexpr std::size_t most_mistakes = 2, longest_character = 4;
  if (std::max(written.size(), meant.size()) - std::min(written.size(), meant.size()) >
      most_mistakes * longest_character)
    return std::nullopt;
  const std::vector<Character> a = characters(written), b = characters(meant);
  const std::size_t letters = std::min(a.size(), b.size());
  if (letters < 4) return std::nullopt;
  const std::size_t most = a.size() < 8 ? 1 : most_mistakes;
  const std::size_t distance = edit_distance(written, meant, most);
  if (distance == 0 || distance > most) return std::nullopt;
  if (a.size() == 4 && !same_letters(a, b)) return std::nullopt;
  const bool first_differs = a.front().code != b.front().code;
  const bool changed_places = a[0].code == b[1].code && a[1].code == b[0].code;
  if (first_differs && !changed_places && (letters < 6 || distance > 1)) return std::nullopt;
  return distance;
}

}  // namespace insetbook
