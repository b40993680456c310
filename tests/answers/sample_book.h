// SPDX-License-Identifier: GPL-3.0-or-later
//
// The book made of sample-data/*.csv, made once for a test program and removed at its end.
#pragma once

#include "book/book.h"

namespace insetbook {

const Book& sample_book();

}  // namespace insetbook
