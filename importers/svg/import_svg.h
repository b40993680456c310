// SPDX-License-Identifier: GPL-3.0-or-later
//
// A drawing in real units → a die set. Start here to read this importer; drawing.h turns the file into
// outlines, this turns outlines into dies:
//   - groups that hold nothing but one group are passed through; of what is left, each group is a die, and
//     each outline outside a group is one too. A lone group one of whose outlines says its line (below) is a
//     die, and so is one that was given a name while its outlines were not, and holds all of them side by
//     side in one: a frame with its windows. Groups that are all called what a line is ("cut", "stitched")
//     are layers: what lies in one another in any of them is a die;
//   - a die is called what its label, title or id says, where a person gave one; else dies are numbered, 1
//     being the largest;
//   - in a die, the outline that all others lie in is its cut edge. What lies inside is what its label, its
//     class or its stroke says by `lines`, or by the name of the line itself ("stitched", "window 2"); else
//     it is a window, as a closed line inside a cut one cuts a hole. Several contours in one path are the
//     same as several outlines.
// A line's size is that of its box, its method "drawing", its give-or-take 0. Circles, ovals and rectangles
// that were drawn as such are recorded by name; anything else as an outline, in millimetres, the top left
// corner of the die's cut edge at 0,0. What is not used is a note, with its line in the file; a die that
// cannot be read is refused, the others go in.
#pragma once

#include <string>

#include "book/book.h"
#include "importers/report/report.h"

namespace insetbook {

struct DrawingSource {
  std::string name;  // as the person named it
  std::string stem;  // of the file: the set's name where nothing else says one
  std::string bytes;
};

// Whether a file holds a drawing: by its beginning, whatever it is called.
bool is_drawing(std::string_view bytes);

// Adds to the report. A Problem where nothing can be taken from the file.
Result<void> import_drawing(Change& change, const DrawingSource& source, const ImportOptions& options,
                            ImportReport& report);

}  // namespace insetbook
