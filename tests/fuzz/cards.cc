// SPDX-License-Identifier: GPL-3.0-or-later
//
// A base and a piece from any text: scores, a place. Lines: scores; place; then bytes that choose the sizes
// and the fold. Whatever is read is folded, and a place that is found is read back from its figures.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "card/check.h"
#include "card/folded.h"

using namespace insetbook;

namespace {

std::string_view line_of(std::string_view& text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  const std::string_view line = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

Length side(std::string_view bytes, std::size_t i) {
  const auto byte = i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 64;
  return Length::inch_fraction(byte + 1, 16);
}

void check_place(std::string_view words, const GroundAndPiece& sizes) {
  const auto said = read_place(words, Unit::inch);
  if (!said) return;
  const auto found = find_place(*said, sizes, Unit::inch);
  if (!found) return;
  const std::string figures = place_in_figures(*found, sizes, Unit::inch);
  const auto again = read_place(figures, Unit::inch);
  if (!again || !find_place(*again, sizes, Unit::inch)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size > 4096) return 0;
  std::string_view text(reinterpret_cast<const char*>(data), size);
  const std::string_view scores = line_of(text), place = line_of(text);
  const GroundAndPiece sizes{side(text, 0), side(text, 1), side(text, 2), side(text, 3)};
  check_place(place, sizes);

  BaseAsWritten written;
  const char* folds[] = {"side fold", "tent", "z fold", "gate", "accordion", ""};
  const auto which = text.size() > 4 ? static_cast<unsigned char>(text[4]) % 6 : 5;
  if (*folds[which] != '\0') written.folds = {folds[which]};
  written.entry.term = folds[which];
  written.entry.to_and_fro = which == 4;
  if (which == 2) written.entry.creases = {{true, true, 1, 4}, {true, false, 1, 2}};
  written.width = sizes.ground_width * 2;
  written.height = sizes.ground_height;
  written.scores = scores;
  const auto base = lay_base(written);
  if (!base) return 0;
  const auto card = fold_flat(*base, Unit::inch);
  if (!card) return 0;
  if (card->width <= Length() || card->height <= Length()) std::abort();
  CardPiece piece;
  piece.width = sizes.width;
  piece.height = sizes.height;
  piece.at = place;
  static_cast<void>(check_card(*card, {piece, piece}, true, Unit::inch));
  return 0;
}
