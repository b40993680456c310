// SPDX-License-Identifier: GPL-3.0-or-later
//
// The printed form of the answers to `fits` and `frames`, which `find` prints too when a question is for
// them.
#pragma once

#include "answers/fits.h"
#include "answers/frames.h"
#include "cli/output.h"

namespace insetbook::cli {

void print_fits(const FitsAnswer& answer, Output& out);
void print_frames(const FramesAnswer& answer, Output& out);

}  // namespace insetbook::cli
