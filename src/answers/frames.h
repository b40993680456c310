// SPDX-License-Identifier: GPL-3.0-or-later
//
// "What frames this panel?" Openings in which a panel, an image or a circle of known size fits with at least
// the border asked (0 unless asked), least slack first (slack: the greatest possible border less the one
// asked).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/openings.h"
#include "fit/fit.h"

namespace insetbook {

struct FramesAsked {
  std::string size;  // as typed: "2-3/8 in circle", "3 x 4 in", "moonrise circles 3", "teapot stamp"
  std::optional<std::string> shape, border, in_set;
  std::optional<std::string> opening_shape =
      {};                                // "which circle …": lines of that shape only, where there are any
  std::optional<std::size_t> most = {};  // only the first so many are wanted; the total is counted anyway
  bool goes_round = false;  // something is to show all round: lines where hardly anything does come last
};

struct FramingOpening {
  OpeningRecord opening;
  Framing framing;
  std::string tried;     // the newest result of this very panel tried there by hand ("too tight, tried
                         // 2026-03-02"), or empty
  bool refuted = false;  // that result was not "fits": listed last
};

struct FramesAnswer {
  Shape panel;
  std::string panel_of;        // the record that has this size: "Moonrise Circles 3, cut", or empty
  std::string note;            // how the size was read, where that must be said
  bool turned_allowed = true;  // the size was said without an orientation
  Unit unit = Unit::inch;
  Length border;
  std::vector<FramingOpening> openings;
  std::size_t total = 0;         // of openings, also where only the first few are kept
  std::string opening_shape;     // only lines of this shape are among them
  std::size_t other_shapes = 0;  // then: so many of other shapes frame it too
  int not_computed = 0;          // measured openings whose shape is not computed yet
};

Result<FramesAnswer> what_frames(const Book& book, const FramesAsked& asked);

}  // namespace insetbook
