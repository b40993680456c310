// SPDX-License-Identifier: GPL-3.0-or-later
//
// The names of a record's pieces: the one that was given, else one made of colour and shape or role, with a
// number where another has it already.
#pragma once

#include <vector>

#include "language/read_record_text.h"

namespace insetbook {

void name_pieces(std::vector<PieceOfRecord>& pieces);

}  // namespace insetbook
