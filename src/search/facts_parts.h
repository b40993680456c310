// SPDX-License-Identifier: GPL-3.0-or-later
//
// What deciding (facts.cc) and explaining (reasons.cc) share: looking things up in one sample.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "search/facts.h"
#include "search/goes_ways.h"

namespace insetbook {

inline bool among(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}
inline bool among(const std::vector<std::int64_t>& list, std::optional<std::int64_t> id) {
  return id && std::find(list.begin(), list.end(), *id) != list.end();
}

// The mention that meets it, of one piece or (null) of the sample and any of its pieces.
const MentionFacts* mention_of(const Says& says, const SampleFacts& sample, const ElementFacts* element);

// The pieces that the element goes with in one of these ways.
std::vector<const ElementFacts*> others(const GoesWays& ways, const ElementFacts& element,
                                        const SampleFacts& sample);
// The pieces of which the other one of a `goes` must be one; none: any.
std::vector<const Node*> asked_others(const Node& goes);
GoesHow how_of(const Node& goes);

// "square", "landscape", "portrait": both sides are known.
std::string form_text(const SidesOnRecord& closed);

}  // namespace insetbook
