// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/outline_ground.h"

#include "shape/shape_outline.h"

namespace insetbook {
namespace {

constexpr std::int64_t least_error = 1;  // nm

Result<EdgeTree> edges_within(const CurvedOutline& curves, std::int64_t error) {
  const Result<Flattened> flat = flatten(curves, error);
  if (!flat) return failure(flat.error());
  return EdgeTree(flat->outline, &curves);
}

Problem nothing_left() {
  return {.what = "nothing is left of the outline when it is made smaller",
          .where = {},
          .expected = "an outline larger than its give or take",
          .candidates = {}};
}

}  // namespace

Result<OutlineGround> OutlineGround::of(CurvedOutline curves) {
  Result<EdgeTree> edges = edges_within(curves, usual_error);
  if (!edges) return failure(edges.error());
  return OutlineGround(std::move(curves), std::move(*edges));
}

Result<OutlineGround> OutlineGround::of(const Shape& shape, Length smaller) {
  Result<CurvedOutline> curves = outline_of(shape);
  if (!curves) return failure(curves.error());
  if (smaller <= Length()) return of(std::move(*curves));
  const Length width = shape.width - smaller, height = shape.height - smaller;
  if (std::min(width, height) <= Length()) return failure(nothing_left());
  Result<CurvedOutline> less = scaled_to(*curves, width.nm(), height.nm());
  if (!less) return failure(less.error());
  return of(std::move(*less));
}

const EdgeTree& OutlineGround::finest_edges() const {
  if (edges_.error() <= 1) return edges_;
  if (!finest_) {
    Result<EdgeTree> finest = edges_within(curves_, least_error);
    finest_ = std::make_shared<const EdgeTree>(finest ? std::move(*finest) : edges_);
  }
  return *finest_;
}

Result<EdgeTree> scaled_edges(const CurvedOutline& curves, Sides size, std::int64_t error) {
  const Result<CurvedOutline> scaled = scaled_to(curves, size.width, size.height);
  if (!scaled) return failure(scaled.error());
  return edges_within(*scaled, error);
}

}  // namespace insetbook
