// SPDX-License-Identifier: GPL-3.0-or-later
//
// A question in a person's words and its answer: samples, or, where the question is for them, what fits or
// what frames. The answer starts with how the question was read; nothing of it falls away in silence.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "answers/fits.h"
#include "answers/frames.h"
#include "language/question.h"
#include "search/search.h"

namespace insetbook {

struct FindAsked {
  std::string question;
  std::size_t limit = 20;
  Order order = Order::best;
  bool explain = false;
};

struct Understood {
  std::string text;   // as typed
  std::string means;  // how it was read
};

struct FindAnswer {
  std::vector<Understood> understood;
  std::vector<Ignored> ignored;
  std::vector<OtherReading> other_readings;
  std::vector<std::string> notes;
  std::string as_fields;  // the question printed back as fields
  std::string explained;  // each stage, where asked
  std::variant<Hits, FitsAnswer, FramesAnswer> answer;
};

Result<FindAnswer> find(const Book& book, const FindAsked& asked);

}  // namespace insetbook
