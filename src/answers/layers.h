// SPDX-License-Identifier: GPL-3.0-or-later
//
// "How large are the layers?" A stack of mats and panels from a base or an opening inwards, or from the
// innermost panel outwards, each with the die of the drawer that cuts it, where one does.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "card/layers.h"

namespace insetbook {

struct LayersQuestion {
  std::string from;                  // a size ("4-1/4 x 5-1/2 in", "A6") or an opening of the book
  std::vector<std::string> borders;  // from the outside in; empty: the setting
  int count = 1;                     // layers besides the one that was given
  bool outwards = false;
};

struct LayerShown {
  LayerSize size;
  std::string role;               // "given", "layer 2"
  std::vector<std::string> dies;  // "Tidepool Rectangles 3": cut lines within 1/32 in (0.8 mm) of that size
};

struct LayersAnswer {
  Unit unit = Unit::inch;
  std::string opening;  // where an opening was named: which
  std::string shape;    // of the layers: "rectangle", "circle"
  bool border_is_setting = false;
  std::vector<LayerShown> layers;  // largest first
};

Result<LayersAnswer> layer_sizes(const Book& book, const LayersQuestion& question);

}  // namespace insetbook
