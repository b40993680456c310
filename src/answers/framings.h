// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which of many openings frame a panel, and which of them leave the least: a bound from below puts an opening
// off, and only those are computed in full that may be among the first asked for.
#pragma once

#include <optional>
#include <vector>

#include "answers/frames.h"
#include "answers/kept_room.h"
#include "fit/room.h"

namespace insetbook {

// An opening that frames the panel, or may.
struct FramingCandidate {
  FramingOpening found;
  Shape shape;
  std::optional<Length> at_least;  // its framing is not computed yet: the greatest border is so much or more
  bool looked_at = false;          // then: so much in the middle; only the whole search says more
};

// What is asked of every opening.
class Framings {
 public:
  // `answer`: what is asked (panel, border, unit); must live as long.
  Framings(const Book& book, const FramesAsked& asked, const FramesAnswer& answer, Length step);

  // Whether the opening frames the panel; `not_computed` counts those that nothing can be said of.
  std::optional<FramingCandidate> look(OpeningRecord opening, Shape shape, int& not_computed);
  // All that frame the panel, in their order. Of those put off only such are computed that may be among the
  // first `most`.
  std::vector<FramingCandidate*> in_order(std::vector<FramingCandidate>& candidates) const;

  void keep_rooms() { rooms_.keep(); }

 private:
  bool compute(FramingCandidate& candidate, int* not_computed) const;
  bool put_off(FramingCandidate& candidate, const BorderBounds& known) const;
  bool settle(FramingCandidate& candidate) const;
  BorderBounds bounds(const OpeningRecord& opening, const Shape& shape);
  void sort(std::vector<FramingCandidate*>& candidates) const;

  const FramesAnswer& answer_;
  Length step_, least_shown_;
  std::optional<std::size_t> most_;
  std::optional<PanelReach> reach_;
  KeptRooms rooms_;
};

}  // namespace insetbook
