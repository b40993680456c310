// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/frames.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "answers/kept_room.h"
#include "answers/options.h"
#include "answers/thing_said.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/settings.h"
#include "fit/panels_in_outline.h"
#include "language/read_opening.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// The newest result of this panel in each line where it was tried by hand.
struct TriedThere {
  std::string result, date;
};
std::map<std::int64_t, TriedThere> tried_by_hand(const Book& book, const Shape& panel) {
  std::map<std::int64_t, TriedThere> found;
  // Two drawings of one size are not the same panel, nor is a heart lying on its side.
  if (panel.kind >= ShapeKind::outline) return found;
  Statement& rows = book.statement(
      "SELECT line_id, result, tried_on FROM tried WHERE shape = ?1"
      " AND ((width_nm = ?2 AND height_nm = ?3) OR (?4 AND width_nm = ?3 AND height_nm = ?2))"
      " ORDER BY tried_on, id");
  rows.bind(1, shape_word(panel.kind)).bind(2, panel.width.nm()).bind(3, panel.height.nm());
  rows.bind(4, std::int64_t{is_outline(panel) ? 0 : 1});
  while (rows.step()) found[rows.integer(0)] = {std::string(rows.text(1)), std::string(rows.text(2))};
  rows.reset();
  return found;
}

// An opening that frames the panel, or may.
struct Candidate {
  FramingOpening found;
  Shape shape;
  std::optional<Length> at_least;  // its framing is not computed yet: the greatest border is so much or more
  bool looked_at = false;          // then: so much in the middle; only the whole search says more
};

void add_tried(const Book& book, const Shape& panel, std::vector<Candidate>& candidates) {
  const std::map<std::int64_t, TriedThere> tried = tried_by_hand(book, panel);
  if (tried.empty()) return;
  for (Candidate& candidate : candidates) {
    FramingOpening& found = candidate.found;
    const auto there = tried.find(found.opening.line_id);
    if (there == tried.end()) continue;
    found.tried = there->second.result;
    if (!there->second.date.empty()) found.tried += ", tried " + there->second.date;
    found.refuted = there->second.result != "fits";
  }
}

// Only lines of the shape asked, where any of them frames the panel.
void keep_shape(const Book& book, const std::string& asked, std::vector<Candidate>& candidates,
                FramesAnswer& answer) {
  const Vocabulary vocabulary = vocabulary_of(book);
  const auto term = [&](std::string_view word) {
    const std::vector<TermMatch> found = vocabulary.find(word, VocabularyName::shape);
    return found.empty() ? std::string(word) : found.front().id;
  };
  const std::string wanted = term(asked);
  const auto others = std::ranges::stable_partition(candidates, [&](const Candidate& candidate) {
    return term(candidate.found.opening.shape_word) == wanted;
  });
  if (others.begin() == candidates.begin()) return;
  answer.opening_shape = wanted;
  answer.other_shapes = others.size();
  candidates.erase(others.begin(), others.end());
}

// Least that is told from nothing on a ruler.
Length least_seen(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
}

// What is asked of every opening.
class Framings {
 public:
  Framings(const Book& book, const FramesAsked& asked, const FramesAnswer& answer, Length step)
      : answer_(answer), step_(step), most_(asked.most), rooms_(book) {
    least_shown_ = asked.goes_round ? least_seen(answer.unit) : Length();
    if (Result<PanelReach> reach = reach_of(answer.panel)) reach_ = std::move(*reach);
  }

  // Whether the opening frames the panel; `not_computed` counts those that nothing can be said of.
  std::optional<Candidate> look(OpeningRecord opening, Shape shape, int& not_computed);
  // All that frame the panel, in their order. Of those put off only such are computed that may be among the
  // first `most`.
  std::vector<Candidate*> in_order(std::vector<Candidate>& candidates) const;

  void keep_rooms() { rooms_.keep(); }

 private:
  bool compute(Candidate& candidate, int* not_computed) const;
  bool put_off(Candidate& candidate, const BorderBounds& known) const;
  bool settle(Candidate& candidate) const;
  BorderBounds bounds(const OpeningRecord& opening, const Shape& shape);
  void sort(std::vector<Candidate*>& candidates) const;

  const FramesAnswer& answer_;
  Length step_, least_shown_;
  std::optional<std::size_t> most_;
  std::optional<PanelReach> reach_;
  KeptRooms rooms_;
};

bool Framings::compute(Candidate& candidate, int* not_computed) const {
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

std::optional<Candidate> Framings::look(OpeningRecord opening, Shape shape, int& not_computed) {
  Candidate candidate{{std::move(opening), {}, {}, false}, std::move(shape), std::nullopt};
  if (reach_ && (is_outline(candidate.shape) || is_outline(answer_.panel))) {
    const BorderBounds known = bounds(candidate.found.opening, candidate.shape);
    if (known.most < answer_.border.nm()) return std::nullopt;
    if (most_ && put_off(candidate, known)) return candidate;
  }
  if (!compute(candidate, &not_computed)) return std::nullopt;
  return candidate;
}

// Whether the opening surely frames the panel, so that its framing can wait.
bool Framings::put_off(Candidate& candidate, const BorderBounds& known) const {
  const std::int64_t asked = std::max<std::int64_t>(0, answer_.border.nm());
  if (std::max(known.in_middle, known.somewhere) < asked) return settle(candidate);
  candidate.at_least = Length::nm(std::max(asked, known.in_middle));
  return true;
}

// The greatest border itself, where the panel fits in the middle.
bool Framings::settle(Candidate& candidate) const {
  const std::optional<Length> border =
      border_in_the_middle({candidate.shape, candidate.found.opening.give_or_take}, answer_.panel,
                           answer_.border, answer_.turned_allowed);
  if (!border) return false;
  candidate.at_least = border;
  candidate.looked_at = true;
  return true;
}

// Least slack first; what was tried in vain last, and before it what shows nothing where something is to.
void Framings::sort(std::vector<Candidate*>& candidates) const {
  const auto border = [](const Candidate* one) {
    return one->at_least.value_or(one->found.framing.greatest_border);
  };
  const auto shows_nothing = [&](const Candidate* one) {
    return !one->at_least && border(one) < least_shown_;
  };
  std::sort(candidates.begin(), candidates.end(), [&](const Candidate* a, const Candidate* b) {
    if (a->found.refuted != b->found.refuted) return b->found.refuted;
    if (shows_nothing(a) != shows_nothing(b)) return shows_nothing(b);
    if (border(a) != border(b)) return border(a) < border(b);
    return a < b;  // as the book has them
  });
}

std::vector<Candidate*> Framings::in_order(std::vector<Candidate>& candidates) const {
  std::vector<Candidate*> order;
  for (Candidate& one : candidates) order.push_back(&one);
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

std::vector<Candidate> look_at_all(const Book& book, std::optional<std::int64_t> set_id,
                                   std::optional<std::int64_t> own_die, Framings& framings,
                                   int& not_computed) {
  std::vector<Candidate> candidates;
  for (OpeningRecord& opening : measured_openings(book, set_id)) {
    if (opening.die_id == own_die) continue;  // no die frames itself
    Result<Shape> shape = shape_of(opening);
    if (!shape || !has_outline(*shape)) {
      ++not_computed;
      continue;
    }
    if (auto found = framings.look(std::move(opening), std::move(*shape), not_computed))
      candidates.push_back(std::move(*found));
  }
  framings.keep_rooms();
  return candidates;
}

}  // namespace

Result<FramesAnswer> what_frames(const Book& book, const FramesAsked& asked) {
  const Settings set = settings(book);
  Result<PanelSaid> panel = panel_said(book, asked.size, asked.shape);
  if (!panel) return failure(panel.error());
  FramesAnswer answer;
  answer.unit = panel->unit;
  answer.panel = std::move(panel->shape);
  answer.panel_of = std::move(panel->of);
  answer.note = std::move(panel->note);
  answer.turned_allowed = panel->may_turn;
  if (asked.border) {
    const Result<Length> border = length_option("border", *asked.border, answer.unit, true);
    if (!border) return failure(border.error());
    answer.border = *border;
  }
  std::optional<std::int64_t> set_id;
  if (asked.in_set) {
    const Result<NameHit> named = find_name(book, *asked.in_set, RecordKind::set);
    if (!named) return failure(named.error());
    set_id = named->id;
  }
  Framings framings(book, asked, answer, set.cutting_step);
  std::vector<Candidate> candidates = look_at_all(book, set_id, panel->die_id, framings, answer.not_computed);
  if (asked.opening_shape) keep_shape(book, *asked.opening_shape, candidates, answer);
  add_tried(book, answer.panel, candidates);
  std::vector<Candidate*> order = framings.in_order(candidates);
  answer.total = order.size();
  if (asked.most && order.size() > *asked.most) order.resize(*asked.most);
  for (Candidate* candidate : order) answer.openings.push_back(std::move(candidate->found));
  return answer;
}

}  // namespace insetbook
