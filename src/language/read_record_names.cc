// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record_names.h"

#include <string>
#include <unordered_map>
#include <unordered_set>

#include "text/utf8.h"

namespace insetbook {

namespace {

std::string described(const LineSaid& line) {
  const PieceSaid& piece = line.piece;
  std::string name = piece.paper.empty() ? std::string() : fold(piece.paper.front());
  const auto add = [&](std::string_view more) {
    if (more.empty()) return;
    if (!name.empty()) name += ' ';
    name += more;
  };
  if (!piece.head.empty())
    add(piece.head);
  else if (!piece.terms.empty() && piece.terms.back().kind == "material")
    add(fold(piece.terms.back().written));
  else if (!piece.supplies.empty())
    add(fold(piece.supplies.front()));
  else if (piece.cut_by)
    add(fold(piece.cut_by->said));
  else
    add("piece");
  constexpr std::size_t longest = 60;
  if (name.size() > longest) name = "piece";
  return name;
}

}  // namespace

void name_pieces(std::vector<PieceOfRecord>& pieces) {
  std::unordered_set<std::string> taken;
  std::unordered_map<std::string, int> numbers;
  const auto unique = [&](const std::string& wanted) {
    if (taken.insert(fold(wanted)).second) return wanted;
    int& number = numbers.try_emplace(fold(wanted), 1).first->second;
    for (;;) {
      std::string name = wanted + " " + std::to_string(++number);
      if (taken.insert(fold(name)).second) return name;
    }
  };
  // Names that were given come first, so that a made one gives way.
  for (PieceOfRecord& piece : pieces)
    if (!fold(piece.said.name).empty()) piece.name = unique(piece.said.name);
  for (PieceOfRecord& piece : pieces)
    if (piece.name.empty()) piece.name = unique(described(piece.said));
}

}  // namespace insetbook
