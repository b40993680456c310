// SPDX-License-Identifier: GPL-3.0-or-later
//
// Thrown within this folder when the index changed under a question or turned out damaged: search.cc begins
// anew.
#pragma once

namespace insetbook {

struct IndexMoved {};

}  // namespace insetbook
