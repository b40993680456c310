// SPDX-License-Identifier: GPL-3.0-or-later
//
// The two hundred questions that the bench asks warm, by kind, each with its bare calls. They are put
// together from the names and words of make_tables.cc, always the same. Where there are two ways into the
// tables, both stand in BareQuestion and the bench takes the quicker one in the book at hand.
#pragma once

#include <string>
#include <vector>

#include "bare.h"

struct MixKind {
  std::string name;
  bool facets = false;  // asked with counts of what narrows the answer
  std::vector<BareQuestion> questions;
};

std::vector<MixKind> question_mix();
