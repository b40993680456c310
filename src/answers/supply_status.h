// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether a supply or a die set can be had: what was recorded of it, where that is a status of the
// vocabulary, else what its dates say. The first and the last day count as days on which it can be had.
#pragma once

#include <string>
#include <string_view>

#include "language/vocabulary.h"

namespace insetbook {

// The id of a term of the vocabulary of statuses: "current", "withdrawn", "announced" …
std::string status_today(const Vocabulary& words, std::string_view recorded, std::string_view from,
                         std::string_view until, std::string_view today);

}  // namespace insetbook
