// SPDX-License-Identifier: GPL-3.0-or-later
//
// A drawing in SVG as closed outlines on paper: groups as they are drawn, every figure in whole nanometres,
// all transforms, nested drawings and `use` worked out. Nothing here knows of dies: import_svg.h makes them.
// The scale comes from the drawing's width and height in units of paper, with its viewBox; where they say
// none (no unit, per cent, or pixels, which programs take for different lengths), it has to be given.
// Refused whole: scripts, links out of the file, entities (xml.h), `use` in a circle, more than 20 000
// outlines once every `use` is drawn. Style sheets are not read: a stroke is what the element or a group
// around it says in `stroke` or `style`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"
#include "shape/curves.h"

namespace insetbook {

// A basic shape that lies straight on the paper, so that its figures say all of it.
struct PlainShape {
  std::string word;  // circle, oval, square, rectangle, rounded rectangle
  Length width, height;
  std::optional<Length> corner_radius;
};

struct DrawnOutline {
  std::string name;     // its label, title or id; blank: it has none that a person gave
  std::string classes;  // of it and of the groups around it, with spaces between
  std::string stroke;   // as written, folded ("#ff0000", "red"); blank: none said
  int line = 0;         // of the file, from 1
  CurvedOutline outline;
  std::optional<PlainShape> plain;
};

struct DrawnGroup {
  std::string name;
  int line = 0;
  std::vector<DrawnGroup> groups;  // none without an outline in it
  std::vector<DrawnOutline> outlines;
};

struct Drawing {
  std::string title;
  Unit unit = Unit::mm;  // inch where the drawing's own size is in inches
  DrawnGroup all;
  std::vector<std::string> not_used;  // one sentence each: "2 of text", "line 14: a path drawn open …"
};

// `unit_nm`: how long a unit of the drawing is, where the person said so; it comes before what the drawing
// says. A Problem says how to give the scale where there is none.
Result<Drawing> read_drawing(std::string_view bytes, std::optional<double> unit_nm);

}  // namespace insetbook
