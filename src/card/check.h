// SPDX-License-Identifier: GPL-3.0-or-later
//
// The card check: every piece is put on its face, and what would glue the card shut, crease a piece or show
// past the closed card is found. The rules are those of "Folds, faces and the card check":
//
//   past a crease of its own face   valley: over-a-crease; mountain: it hangs free, but glue there:
//   glued-shut past a free edge in the card    glue there: glued-shut, where another section lies behind it
//   past an edge of the closed card that is no crease of that face: off-the-card (not what goes around)
//   in a line and larger than it: does-not-fit        figures that contradict each other: place-impossible
//   a base, layer or thick piece without a size: unknown-size, and no further check of that piece
//   glue not known where it matters: unknown-glue     an easel without a raised stop inside: no-stop
//
// Glue on a piece that lies under it holds to that piece, and shuts nothing. A piece of which no place is
// said is centred on what it lies on; where it would then pass the edge of the closed card, and has room on
// it, on the closed card. A band goes round the way that it is longer, and what is seen of it lies on the
// face. A round or shaped piece is held by its box: it reaches as far. A size that was not said to be width x
// height is taken the other way round where only so it lies on its ground. Lengths agree within 1 µm.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/glue.h"
#include "card/place.h"

namespace insetbook {

// How a piece goes with what it lies on.
enum class LiesHow { on, in, behind, around, through };

struct CardPiece {
  std::string name;
  std::optional<Length> width, height;  // as it lies
  bool may_turn = false;                // which figure is the width was not said
  Unit unit = Unit::inch;
  std::optional<CardSide> side;  // where it was recorded
  LiesHow how = LiesHow::on;
  int with = -1;       // the piece it goes with, a place in the list of pieces
  std::string target;  // else the part of the card ("inside right"); empty: by its side
  std::string at;
  GlueSaid glue;
  bool is_base = false;
  bool needs_size = false;  // a layer, or thick: without a size the card cannot be judged
  bool raised = false;      // on foam, or thick itself
  std::string too_large;    // where it does not fit the line it lies in: why
  std::string too_large_mend;
  std::vector<std::string> meant;  // codes that the person has answered "meant"
};

struct SeatedPiece {
  Face face;
  Rect on_face;                  // its box, from the left and top of the face
  Rect closed;                   // the same in the closed card, from its front
  Rect ground;                   // what it lies on, on the face
  std::string figures;           // the place to mark, on its ground
  std::optional<Length> around;  // how long what goes around has to be at least
  bool turned = false;           // its figures were taken the other way round
};

struct CardProblem {
  std::string code;
  int piece = -1;  // -1: the card as a whole
  std::string why, mend;
  bool operator==(const CardProblem&) const = default;
};

struct CheckedCard {
  std::vector<std::optional<SeatedPiece>> seats;  // one for each piece; empty where it is not known
  std::vector<CardProblem> problems;
  std::vector<CardProblem> meant;        // the same, answered "meant"
  std::vector<std::string> not_checked;  // sentences
};

// `easel`: of that family of folds.
CheckedCard check_card(const FoldedBase& card, const std::vector<CardPiece>& pieces, bool easel, Unit unit);

// How thick the closed card is at its thickest: `layer` for each section, and of each piece what is given.
Length thickest(const FoldedBase& card, Length layer, const std::vector<std::optional<SeatedPiece>>& seats,
                const std::vector<Length>& thickness);

}  // namespace insetbook
