// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a book holds that the five tables have no column for, said in one line.
#pragma once

#include <string>

#include "book/book.h"

namespace insetbook {

// "the tables have no place for 2 settings and 1 earlier figure; …", or empty where nothing is left out.
std::string not_in_tables(const Book& book);

}  // namespace insetbook
