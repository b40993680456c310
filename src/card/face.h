// SPDX-License-Identifier: GPL-3.0-or-later
//
// A face of a section, as somebody looks at it with the card upright: where pieces lie. Places on it are from
// its left and top as they are seen. The front is looked at closed, from the front; the back closed, from
// behind (the card turned like a page); the inside open.
//
// Rules ("Folds, faces and the card check"): the front is the face of a section that is turned to the front
// in the closed card, the back the one turned to the back, the inside the one that is up when the base lies
// open; on some sections two of these are one face. Where no section is named: of the front and of the back
// the foremost as it is seen there, of the inside the section at the back, which is what one sees on opening
// the card.
#pragma once

#include <optional>
#include <string_view>

#include "card/folded.h"

namespace insetbook {

enum class CardSide { front, inside, back };

// "front", "inside", "back"; empty: front. Nothing for any other word.
std::optional<CardSide> read_card_side(std::string_view word);

struct Rect {  // nm, y downwards
  Length left, top, width, height;
  Length right() const { return left + width; }
  Length bottom() const { return top + height; }
  bool operator==(const Rect&) const = default;
};

struct Face {
  int section = 0;  // place in FoldedBase::sections
  CardSide side = CardSide::front;
  Length width, height;
  // As it is looked at; seen from this face, so that a valley of the inside is a mountain of the outer face.
  std::array<EdgeKind, 4> edges{};
  bool faces_front = true;                              // in the closed card
  Rect closed;                                          // the section in the closed card, from its front
  bool mirrored_across = false, mirrored_down = false;  // how the closed card shows it, from its front
};

// Where a rectangle of the face lies in the closed card, seen from the front.
Rect in_closed_card(const Face& face, const Rect& on_face);

Face face_of(const FoldedBase& card, int section, CardSide side);

// What "on front", "on inside right", "on section 2", "on the back" name: the words without "on". `side`:
// what is recorded of the piece itself, where it is. Empty where the words name no part of this card.
std::optional<Face> named_face(const FoldedBase& card, std::string_view words, std::optional<CardSide> side);

}  // namespace insetbook
