// SPDX-License-Identifier: GPL-3.0-or-later
//
// The habit of a set: which border the panels left that were tried in its dies.
#pragma once

#include <utility>

#include "book/book.h"
#include "book/openings.h"

namespace insetbook {

// The middle border of the panels tried in the other dies of the opening's set, and how many they are.
std::pair<Length, int> habit_of_set(const Book& book, const OpeningRecord& opening, Length step);

}  // namespace insetbook
