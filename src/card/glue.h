// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where a piece is glued: all over, not at all, or strips along its edges ("left 2 in").
//
// Rule: blank is all over where the piece lies within one section; else it is not known.
#pragma once

#include <vector>

#include "card/face.h"

namespace insetbook {

struct GlueStrip {
  EdgeSide side;
  Length width;
  bool operator==(const GlueStrip&) const = default;
};

struct GlueSaid {
  // `somewhere`: at a part that no figure bounds ("left", "the middle"), which is not known well enough to
  // judge by.
  enum class Where { not_said, whole, none, strips, somewhere } where = Where::not_said;
  std::vector<GlueStrip> strips;
  bool operator==(const GlueSaid&) const = default;
};

// Where on a piece of this size there is glue, from the piece's left and top; `not_said` is taken as whole.
std::vector<Rect> glued_parts(const GlueSaid& said, Length width, Length height);

}  // namespace insetbook
