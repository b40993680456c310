// SPDX-License-Identifier: GPL-3.0-or-later
//
// While one lives, everything read from the book is of one moment, whatever other programs commit. May be
// nested, and may stand inside a change.
#pragma once

#include "book/book.h"

namespace insetbook {

class Snapshot {
 public:
  explicit Snapshot(const Book& book);
  ~Snapshot();
  Snapshot(const Snapshot&) = delete;
  Snapshot& operator=(const Snapshot&) = delete;

 private:
  const Book& book_;
};

}  // namespace insetbook
