// SPDX-License-Identifier: GPL-3.0-or-later
//
// Panels that are outlines themselves, anywhere in an outline, the same way up: the opening's own shape made
// smaller, ovals. What is given passed the exact check at its place; the next one larger was excluded at
// every place, or is undecided. That everything larger is excluded with it holds for shapes that, made
// smaller, lie within themselves; almost all do (circles, ovals, hearts, arches …). A panel without an
// outline (its figures do not go into its size) does not fit.
#pragma once

#include "fit/free_rectangle.h"
#include "fit/outline_in_outline.h"

namespace insetbook {

// Panels that grow, as of a chain, with the outline of each; its box from (0, 0).
struct OutlineChain {
  Chain sides;
  std::function<EdgeTree(std::int64_t)> outline;
};

FoundPlace last_outline(const EdgeTree& opening, std::int64_t border, const OutlineChain& chain);

}  // namespace insetbook
