// SPDX-License-Identifier: GPL-3.0-or-later
//
// The room in the drawn openings of the book (fit/room.h), kept in the derived file: a drawer of a thousand
// outlines is asked for a frame as quickly as it is read. It is found the first time an opening is asked.
#pragma once

#include <optional>
#include <vector>

#include "book/book.h"
#include "book/kept_answers.h"
#include "fit/room.h"

namespace insetbook {

class KeptRooms {
 public:
  explicit KeptRooms(const Book& book) : kept_(book.folder()) {}
  // Empty where the outline cannot be drawn.
  std::optional<Room> room(std::int64_t line_id, const Opening& opening);
  // Keeps what was found meanwhile.
  void keep();

 private:
  KeptAnswers kept_;
  std::vector<AnswerToKeep> found_;
};

}  // namespace insetbook
