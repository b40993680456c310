// SPDX-License-Identifier: GPL-3.0-or-later
//
// Envelopes and what goes into them (schema/papers/envelopes.json; each size says where it comes from).
//
// A closed card goes in, either way round, where the envelope is larger than it by the slack in all, each way
// (1/8 in, or 3 mm: the setting "envelope slack"), and also by the card's thickness: paper lying round
// something thick loses that much of each side. So the envelope must be larger each way by the greater of the
// two. Just reached is enough. (Both added together would put no American A2 card, 1/8 in smaller each way
// than its envelope, into it.) That is common practice, no source.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "schema/papers.h"

namespace insetbook {

// In the table's order; each stands upright.
std::span<const EnvelopeSize> envelopes();

// An envelope as somebody wrote it.
struct EnvelopeRead {
  Length width, height;  // as written; a named one stands upright
  Unit unit = Unit::inch;
  const EnvelopeSize* named = nullptr;  // in the table, which lives as long as the program; null for figures
  std::string means;                    // "A6 envelope, 4-3/4 x 6-1/2 in", "4-3/8 x 5-3/4 in"
  std::string other;   // what else that name could mean: "C6 envelope, 114 x 162 mm"; else empty
  std::string source;  // of the size of a name, with its year and how surely it is known; else empty
};

// "C6", "A2 envelope", "4-3/8 x 5-3/4 in", "C6, lined", "A2 (lined)": a name of the table, else two figures;
// what stands behind a comma, a semicolon or in brackets is left aside where the whole is neither. "A2" is
// the American envelope, never the ISO sheet. Empty where no envelope is meant ("none") or it is not known.
std::optional<EnvelopeRead> read_envelope(std::string_view text, Unit no_unit);

// "C6 envelope, 114 x 162 mm"
std::string write_envelope(const EnvelopeSize& envelope);

struct ClosedCard {
  Length width, height;
  std::optional<Length> thickness;  // at the thickest; unknown counts as none
};

struct EnvelopeFit {
  bool goes_in = false;
  bool turned = false;  // the card's width lies along the envelope's height
  // How much larger than the closed card the envelope is, along the card's own width and height; negative
  // where it is smaller. Of the way round that goes in (as it is before turned); where neither does, of the
  // one that lacks less.
  Length left_width, left_height;
  Length wanted;  // the greater of slack and thickness
};
EnvelopeFit fit_in_envelope(const ClosedCard& card, Length envelope_width, Length envelope_height,
                            Length slack);

struct EnvelopeChoice {
  const EnvelopeSize* envelope;  // never null
  EnvelopeFit fit;
};
// All of the table that take it, by their area, the smallest first; empty where none does.
std::vector<EnvelopeChoice> envelopes_for(const ClosedCard& card, Length slack);

}  // namespace insetbook
