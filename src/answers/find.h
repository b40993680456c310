// SPDX-License-Identifier: GPL-3.0-or-later
//
// A question in a person's words and its answer: samples, or what another command answers where the question
// is for that (question.h, Asks). The answer starts with how the question was read; nothing of it falls away
// in silence. What could not be read is in `problems`, and nothing is looked for then: the rest is only told.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "answers/convert.h"
#include "answers/dies.h"
#include "answers/fits.h"
#include "answers/frames.h"
#include "answers/measure.h"
#include "answers/nearest.h"
#include "answers/pairs.h"
#include "answers/pieces.h"
#include "answers/show.h"
#include "answers/tried_there.h"
#include "answers/unmeasured.h"
#include "answers/where_stored.h"
#include "language/question.h"
#include "search/search.h"

namespace insetbook {

struct FindAsked {
  std::string question;
  std::optional<std::size_t> limit = {};  // else as many as the question says, or 20
  std::optional<Order> order = {};        // else the question's, or the best first
  bool explain = false;
  bool facets = false;  // how many of the hits have each fold, technique, colour …
};

struct Understood {
  std::string text;   // as typed
  std::string means;  // how it was read
};

// A length in another unit, as a question asks for it.
struct ConvertedTo {
  Converted converted;
  Unit unit = Unit::mm;
  bool centimetres = false;
};

struct FindAnswer {
  std::vector<Understood> understood;
  std::vector<Ignored> ignored;
  std::vector<OtherReading> other_readings;
  std::vector<std::string> notes;
  std::string as_fields;          // the question printed back as fields
  std::string explained;          // each stage, where asked
  std::vector<Problem> problems;  // what could not be read; `answer` is then empty
  std::variant<Hits, FitsAnswer, FramesAnswer, PairsAnswer, MeasureAnswer, ShowAnswer, UnmeasuredAnswer,
               StoredAnswer, NearestAnswer, ConvertedTo, DiesAnswer, TriedThereAnswer, PiecesAnswer>
      answer;
};

Result<FindAnswer> find(const Book& book, const FindAsked& asked);

}  // namespace insetbook
