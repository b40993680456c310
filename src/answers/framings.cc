// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/framings.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "fit/panels_in_outline.h"

namespace insetbook {
namespace {

// Least that is told from nothing on a ruler.
Length least_seen(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
}

}  // namespace

Framings::Framings(const Book& book, const FramesAsked& asked, const FramesAnswer& answer, Length step)
    : answer_(answer), step_(step), most_(asked.most), rooms_(book) {
  least_shown_ = asked.goes_round ? least_seen(answer.unit) : Length();
  if (Result<PanelReach> reach = reach_of(answer.panel)) reach_ = std::move(*reach);
}

bool Framings::compute(FramingCandidate& candidate, int* not_computed) const {
  const Result<std::optional<Framing>> framed =
      framing({candidate.shape, candidate.found.opening.give_or_take}, answer_.panel, answer_.border, step_,
              answer_.turned_allowed);
  if (!framed && not_computed != nullptr) ++*not_computed;
  if (!framed || !*framed) return false;
  candidate.found.framing = **framed;
  candidate.at_least.reset();
  return true;
}

BorderBounds Framings::bounds(const OpeningRecord& opening, const Shape& shape) {
  if (!is_outline(shape)) return border_bounds(shape, *reach_);
  const std::optional<Room> room = rooms_.room(opening.line_id, {shape, opening.give_or_take});
  if (!room) return {-1, -1, std::numeric_limits<std::int64_t>::max()};
  return border_bounds(*room, {shape.width.nm(), shape.height.nm()}, *reach_, answer_.turned_allowed);
}

std::optional<FramingCandidate> Framings::look(OpeningRecord opening, Shape shape, int& not_computed) {
  FramingCandidate candidate{{std::move(opening), {}, {}, false}, std::move(shape), std::nullopt};
  if (reach_ && (is_outline(candidate.shape) || is_outline(answer_.panel))) {
    const BorderBounds known = bounds(candidate.found.opening, candidate.shape);
    if (known.most < answer_.border.nm()) return std::nullopt;
    if (most_ && put_off(candidate, known)) return candidate;
  }
  if (!compute(candidate, &not_computed)) return std::nullopt;
  return candidate;
}

// Whether the opening surely frames the panel, so that its framing can wait.
bool Framings::put_off(FramingCandidate& candidate, const BorderBounds& known) const {
  const std::int64_t asked = std::max<std::int64_t>(0, answer_.border.nm());
  if (std::max(known.in_middle, known.somewhere) < asked) return settle(candidate);
  candidate.at_least = Length::nm(std::max(asked, known.in_middle));
  return true;
}

// The greatest border itself, where the panel fits in the middle.
bool Framings::settle(FramingCandidate& candidate) const {
  const std::optional<Length> border =
      border_in_the_middle({candidate.shape, candidate.found.opening.give_or_take}, answer_.panel,
                           answer_.border, answer_.turned_allowed);
  if (!border) return false;
  candidate.at_least = border;
  candidate.looked_at = true;
  return true;
}

// Least slack first; what was tried in vain last, and before it what shows nothing where something is to.
void Framings::sort(std::vector<FramingCandidate*>& candidates) const {
  const auto border = [](const FramingCandidate* one) {
    return one->at_least.value_or(one->found.framing.greatest_border);
  };
  const auto shows_nothing = [&](const FramingCandidate* one) {
    return !one->at_least && border(one) < least_shown_;
  };
  std::sort(candidates.begin(), candidates.end(), [&](const FramingCandidate* a, const FramingCandidate* b) {
    if (a->found.refuted != b->found.refuted) return b->found.refuted;
    if (shows_nothing(a) != shows_nothing(b)) return shows_nothing(b);
    if (border(a) != border(b)) return border(a) < border(b);
    return a < b;  // as the book has them
  });
}

std::vector<FramingCandidate*> Framings::in_order(std::vector<FramingCandidate>& candidates) const {
  std::vector<FramingCandidate*> order;
  for (FramingCandidate& one : candidates) order.push_back(&one);
  for (bool changed = true; changed;) {
    changed = false;
    sort(order);
    const std::size_t count = std::min(most_.value_or(order.size()), order.size());
    for (std::size_t i = 0; i < count; ++i) {
      if (!order[i]->at_least) continue;
      changed = true;
      // Computed in full only when its place is known.
      if (!order[i]->looked_at && settle(*order[i])) continue;
      if (!compute(*order[i], nullptr)) order[i] = nullptr;
    }
    // What turned out to be closer to deciding than can be decided does not count as fitting.
    std::erase(order, nullptr);
  }
  return order;
}

}  // namespace insetbook
