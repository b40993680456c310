// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Does a 3 x 4 in panel fit in it?" One panel, said by its size or the name of what has it, in an opening
// that `what_fits` has answered for.
#pragma once

#include <string>

#include "answers/fits.h"

namespace insetbook {

// Sets `answer.panel_asked`. The border that was asked must show, else none need.
Result<void> ask_panel(const Book& book, const std::string& panel, FitsAnswer& answer);

// The answer in one sentence or two: "Yes. A circle 2 in fits: 1/8 in shows on the narrowest side."
std::string panel_sentence(const FitsAnswer& answer);

}  // namespace insetbook
