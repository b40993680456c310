// SPDX-License-Identifier: GPL-3.0-or-later
//
// The panels that fit an opening of the book. In a curved or drawn outline they take a search, so they are
// kept (book/kept_answers.h) and the second time is a look-up; a circle or a rectangle is computed as quickly
// as it is looked up, and is not kept.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "fit/fit.h"

namespace insetbook {

struct OpeningPanels {
  std::vector<Panel> panels;
  std::vector<std::string> mended;  // in the opening's path data, each as a sentence with the place
};

// As panels_inside. line_id 0: an opening that is not of the book, nothing is kept. Of a panel that was kept,
// its shape has the kind, the name and the size.
Result<OpeningPanels> panels_of_opening(const Book& book, std::int64_t line_id, const Opening& opening,
                                        const FitQuestion& question);

}  // namespace insetbook
