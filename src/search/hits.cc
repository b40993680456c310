// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/hits.h"

#include "search/facts.h"

namespace insetbook {

std::vector<Hit> hits_of(const Book& book, const std::vector<Candidate>& found, const Node& all,
                         const Relaxed& relaxed) {
  Judge judge(book, all, relaxed);
  const FactsNeeded needed = facts_needed(all);
  std::vector<Hit> hits;
  for (const Candidate& each : found) {
    const auto facts = facts_of(book, each.sample, needed);
    if (!facts) continue;
    Hit hit{each.sample, facts->uuid, facts->title, facts->made, judge.explain(*facts), {}};
    if (!relaxed.sizes.empty()) hit.difference = judge.differences(*facts);
    hits.push_back(std::move(hit));
  }
  return hits;
}

}  // namespace insetbook
