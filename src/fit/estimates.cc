// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cstdlib>

#include "fit/fit.h"

namespace insetbook {
namespace {

struct MeasuredSide {
  std::int64_t rank;
  std::int64_t nm;
};

// numerator/denominator to the nearest whole number, halves away from zero; denominator > 0.
std::int64_t nearest(std::int64_t numerator, std::int64_t denominator) {
  const std::int64_t half = numerator < 0 ? -(denominator / 2) : denominator / 2;
  return (numerator + half) / denominator;
}

std::int64_t rounded_up(std::int64_t numerator, std::int64_t denominator) {
  return (numerator + denominator - 1) / denominator;
}

std::int64_t side_at(const std::vector<MeasuredSide>& sides, std::int64_t rank) {
  const auto after =
      std::find_if(sides.begin(), sides.end(), [&](const MeasuredSide& side) { return side.rank > rank; });
  const MeasuredSide& below = *(after - 1);
  return below.nm + nearest((after->nm - below.nm) * (rank - below.rank), after->rank - below.rank);
}

// Half the greatest departure of a step from the even one (the whole way in equal steps), rounded up; two
// dies have only one step, and then it is half of that.
std::int64_t half_departure(const std::vector<MeasuredSide>& sides) {
  const MeasuredSide &first = sides.front(), &last = sides.back();
  const std::int64_t all_ranks = last.rank - first.rank, all_nm = last.nm - first.nm;
  if (sides.size() == 2) return rounded_up(std::abs(all_nm), 2 * all_ranks);
  std::int64_t greatest = 0;
  for (std::size_t i = 1; i < sides.size(); ++i) {
    const std::int64_t ranks = sides[i].rank - sides[i - 1].rank, nm = sides[i].nm - sides[i - 1].nm;
    greatest =
        std::max(greatest, rounded_up(std::abs(nm * all_ranks - all_nm * ranks), 2 * ranks * all_ranks));
  }
  return greatest;
}

}  // namespace

std::vector<std::optional<Estimate>> estimates(const std::vector<std::optional<Ranked>>& known) {
  std::vector<std::optional<Estimate>> result(known.size());
  std::vector<MeasuredSide> widths, heights;
  Length spread;
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (!known[i]) continue;
    widths.push_back({static_cast<std::int64_t>(i), known[i]->width.nm()});
    heights.push_back({static_cast<std::int64_t>(i), known[i]->height.nm()});
    spread = std::max(spread, known[i]->give_or_take);
  }
  if (widths.size() < 2) return result;
  spread = std::max(spread, Length::nm(std::max(half_departure(widths), half_departure(heights))));
  for (std::int64_t rank = widths.front().rank + 1; rank < widths.back().rank; ++rank) {
    const auto place = static_cast<std::size_t>(rank);
    if (known[place]) continue;
    result[place] = Estimate{Length::nm(side_at(widths, rank)), Length::nm(side_at(heights, rank)), spread};
  }
  return result;
}

}  // namespace insetbook
