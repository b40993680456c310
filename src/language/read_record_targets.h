// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which piece of the record another one goes with: by its name, or by role, shape, colour and what it is made
// of; the nearest one before it, else the first one behind it.
#pragma once

#include "language/read_record_text.h"

namespace insetbook {

// Fills `goes_to` of every piece; pieces have their names. What is not found, and a circle of pieces, is told
// in `not_read`; what could be several pieces, in `remarks`.
void find_targets(RecordSaid& record, const ReadingContext& context);

}  // namespace insetbook
