// SPDX-License-Identifier: GPL-3.0-or-later
//
// The printed form of the answers that a command gives and `find` gives too, when a question is for them
// (run_fits.h has those of fits and frames).
#pragma once

#include "answers/find.h"
#include "cli/output.h"

namespace insetbook::cli {

void print_measured(const MeasureAnswer& answer, Output& out);
void print_shown(const ShowAnswer& answer, Output& out);
void print_unmeasured(const UnmeasuredAnswer& answer, Output& out);
void print_stored(const StoredAnswer& answer, Output& out);
void print_nearest(const NearestAnswer& answer, Output& out);
void print_converted(const ConvertedTo& answer, Output& out);
void print_dies(const DiesAnswer& answer, Output& out);
void print_tried_there(const TriedThereAnswer& answer, Output& out);
void print_pieces(const PiecesAnswer& answer, Output& out);

}  // namespace insetbook::cli
