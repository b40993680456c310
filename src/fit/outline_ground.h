// SPDX-License-Identifier: GPL-3.0-or-later
//
// An opening that is an outline, ready for questions: its edges within 1 µm of its curves, which settle
// almost everything, and within 1 nm where they leave an answer undecided.
#pragma once

#include <memory>
#include <optional>

#include "fit/edge_tree.h"
#include "fit/sides.h"
#include "shape/shape.h"

namespace insetbook {

// How far edges are from their curves at most, unless they have to be finer.
inline constexpr std::int64_t usual_error = 1000;  // nm

class OutlineGround {
 public:
  // The outline of a shape (shape_outline.h). `smaller`: scaled to a box that is smaller by so much in width
  // and height; nothing may be left of it, which is a Problem too.
  static Result<OutlineGround> of(const Shape& shape, Length smaller = {});
  static Result<OutlineGround> of(CurvedOutline curves);

  const EdgeTree& edges() const { return edges_; }
  // Made when first asked for; the same as edges() where those have no error.
  const EdgeTree& finest_edges() const;
  const CurvedOutline& curves() const { return curves_; }
  Sides size() const { return {edges_.box().width(), edges_.box().height()}; }

  // Asks the question with the edges, and again with the finest where `open(answer)`.
  template <class Question, class Open>
  auto ask(const Question& question, const Open& open) const {
    auto answer = question(edges_);
    if (edges_.error() > 1 && open(answer)) answer = question(finest_edges());
    return answer;
  }

 private:
  OutlineGround(CurvedOutline curves, EdgeTree edges)
      : curves_(std::move(curves)), edges_(std::move(edges)) {}

  CurvedOutline curves_;
  EdgeTree edges_;
  mutable std::shared_ptr<const EdgeTree> finest_;
};

// The edges of curves scaled to a box, within `error` nm of them.
Result<EdgeTree> scaled_edges(const CurvedOutline& curves, Sides size, std::int64_t error);

}  // namespace insetbook
