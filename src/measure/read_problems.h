// SPDX-License-Identifier: GPL-3.0-or-later
//
// The wording of everything that can be wrong with a written measurement. Private to this folder.
#pragma once

#include <string_view>

#include "measure/figure.h"
#include "text/problem.h"

namespace insetbook::measuring {

// `said` is what is quoted: bytes of `text`, half-open; the place is that of `trouble`, in characters of
// `text`.
Problem problem(const Trouble& trouble, std::string_view text, std::size_t said_begin, std::size_t said_end);

}  // namespace insetbook::measuring
