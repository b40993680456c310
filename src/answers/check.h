// SPDX-License-Identifier: GPL-3.0-or-later
//
// The card check of a sample: the closed size, whether it stands, how thick and heavy it is, which envelope
// takes it and what the post makes of it, and every problem with what would mend it (card/check.h has the
// rules). What is typical and not recorded is said so.
#pragma once

#include "answers/sample_card.h"
#include "card/envelopes.h"
#include "card/post.h"

namespace insetbook {

struct EnvelopeAnswer {
  std::string name;  // "C6 envelope, 114 x 162 mm"; empty: none takes it
  bool fits = false;
  Length slack;           // of the closer side, beyond what is wanted
  bool recorded = false;  // the one that the sample names, else the smallest that takes it
  std::string source;
};

struct CheckAnswer {
  SampleCard card;
  std::string instead_of;  // where the name was misspelt: what was typed
  std::optional<Length> closed_width, closed_height;
  Stands stands = Stands::not_said;
  std::string stands_why;
  Length thickness;
  std::int64_t card_mg = 0, with_envelope_mg = 0;
  std::vector<std::string> typical;  // what was not recorded and is taken as usual
  std::optional<EnvelopeAnswer> envelope;
  std::vector<PostAnswer> post;
  CheckedCard checked;
  std::vector<std::string> said;  // how the base was read, scores off the marks
};

Result<CheckAnswer> check(const Book& book, std::string_view sample);

// The problems that the check finds at a piece ("the card": at the card as a whole) are meant, and stay quiet
// from now on. Unknown piece, or nothing found at it: a Problem.
struct MeantAnswer {
  std::string sample, piece;
  std::vector<std::string> codes;
};
Result<MeantAnswer> answer_meant(Book& book, std::string_view sample, const std::string& piece);

}  // namespace insetbook
