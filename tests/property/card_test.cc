// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of bases, places and the card check on generated cards.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

#include "card/check.h"
#include "measure/write.h"

namespace insetbook {
namespace {

constexpr std::int64_t eighth = 3'175'000;

struct Strip {
  std::int64_t height;
  std::vector<std::int64_t> cuts;           // places of the creases and the far end
  std::vector<std::pair<int, bool>> order;  // crease (the part before it), mountain
};

// Parts of at least 5/8 in, so that none is a spine.
Strip any_strip() {
  Strip strip;
  strip.height = *rc::gen::inRange<std::int64_t>(8, 60) * eighth;
  const int parts = *rc::gen::inRange(1, 6);
  std::int64_t at = 0;
  for (int i = 0; i < parts; ++i) strip.cuts.push_back(at += *rc::gen::inRange<std::int64_t>(5, 30) * eighth);
  for (int i = 0; i + 1 < parts; ++i) strip.order.emplace_back(i, *rc::gen::arbitrary<bool>());
  for (std::size_t i = strip.order.size(); i > 1; --i)
    std::swap(strip.order[i - 1], strip.order[*rc::gen::inRange<std::size_t>(0, i)]);
  return strip;
}

Base base_of(const Strip& strip) {
  Base base;
  base.width = Length::nm(strip.cuts.back());
  base.height = Length::nm(strip.height);
  for (const auto& [part, mountain] : strip.order)
    base.creases.push_back({true, Length::nm(strip.cuts[static_cast<std::size_t>(part)]), mountain});
  return base;
}

// The slow way: each part is a sheet at a height in space; folding turns everything behind a crease over by
// half a turn about it. Two parts that lie at one height over one another, or one that is turned through
// another, cannot be.
class Turned {
 public:
  explicit Turned(const Strip& strip) {
    std::int64_t before = 0;
    for (const std::int64_t cut : strip.cuts) {
      sheets_.push_back({before, cut, 0, true});
      before = cut;
    }
  }

  bool fold(int crease, bool mountain) {
    const auto held = static_cast<std::size_t>(crease), turned = held + 1;
    const std::int64_t line =
        sheets_[held].inside_up ? std::max(sheets_[held].from, sheets_[held].to) : end_of(held);
    const int level = sheets_[held].level;
    const bool up = sheets_[held].inside_up != mountain;
    for (std::size_t i = 0; i < sheets_.size(); ++i) {
      const auto [low, high] = std::minmax(sheets_[i].from, sheets_[i].to);
      const bool across = low < line && high > line;
      if (across && (up ? sheets_[i].level > level : sheets_[i].level < level)) return false;
    }
    int top = level, bottom = level;
    for (std::size_t i = 0; i < turned; ++i) {
      top = std::max(top, sheets_[i].level);
      bottom = std::min(bottom, sheets_[i].level);
    }
    int own_top = level, own_bottom = level;
    for (std::size_t i = turned; i < sheets_.size(); ++i) {
      own_top = std::max(own_top, sheets_[i].level);
      own_bottom = std::min(own_bottom, sheets_[i].level);
    }
    for (std::size_t i = turned; i < sheets_.size(); ++i) {
      Sheet& sheet = sheets_[i];
      sheet.from = 2 * line - sheet.from;
      sheet.to = 2 * line - sheet.to;
      sheet.inside_up = !sheet.inside_up;
      sheet.level = up ? top + 1 + (own_top - sheet.level) : bottom - 1 - (sheet.level - own_bottom);
    }
    return true;
  }

  // Over each stretch between edges: the parts from the top, each with the face that is up.
  std::map<std::int64_t, std::vector<std::pair<int, bool>>> columns() const {
    std::vector<std::int64_t> xs;
    for (const Sheet& sheet : sheets_) {
      xs.push_back(sheet.from);
      xs.push_back(sheet.to);
    }
    std::sort(xs.begin(), xs.end());
    std::map<std::int64_t, std::vector<std::pair<int, bool>>> columns;
    for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
      if (xs[i] == xs[i + 1]) continue;
      std::vector<std::tuple<int, int, bool>> there;
      for (std::size_t s = 0; s < sheets_.size(); ++s) {
        const auto [low, high] = std::minmax(sheets_[s].from, sheets_[s].to);
        if (low <= xs[i] && high >= xs[i + 1])
          there.emplace_back(-sheets_[s].level, static_cast<int>(s) + 1, sheets_[s].inside_up);
      }
      std::sort(there.begin(), there.end());
      auto& column = columns[xs[i] - xs.front()];
      for (const auto& [level, part, up] : there) column.emplace_back(part, up);
    }
    return columns;
  }

 private:
  struct Sheet {
    std::int64_t from, to;  // where its first and its last edge lie
    int level;
    bool inside_up;
  };
  std::int64_t end_of(std::size_t part) const { return sheets_[part].to; }
  std::vector<Sheet> sheets_;
};

std::map<std::int64_t, std::vector<std::pair<int, bool>>> columns_of(const FoldedBase& card) {
  std::vector<std::int64_t> xs;
  for (const BaseSection& one : card.sections) {
    xs.push_back(one.closed_left.nm());
    xs.push_back(one.closed_right().nm());
  }
  std::sort(xs.begin(), xs.end());
  std::map<std::int64_t, std::vector<std::pair<int, bool>>> columns;
  for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
    if (xs[i] == xs[i + 1]) continue;
    for (const int place : card.front_to_back) {
      const BaseSection& one = card.sections[static_cast<std::size_t>(place)];
      if (one.closed_left.nm() <= xs[i] && one.closed_right().nm() >= xs[i + 1])
        columns[xs[i]].emplace_back(one.number, one.inside_to_front());
    }
  }
  return columns;
}

// The same card seen from behind, turned like a page.
std::map<std::int64_t, std::vector<std::pair<int, bool>>> from_behind(
    const std::map<std::int64_t, std::vector<std::pair<int, bool>>>& columns, std::int64_t width) {
  std::map<std::int64_t, std::vector<std::pair<int, bool>>> behind;
  for (auto it = columns.begin(); it != columns.end(); ++it) {
    const std::int64_t end = std::next(it) == columns.end() ? width : std::next(it)->first;
    auto column = it->second;
    std::reverse(column.begin(), column.end());
    for (auto& [part, up] : column) up = !up;
    behind[width - end] = column;
  }
  return behind;
}

RC_GTEST_PROP(FoldedBase, IsWhatTurningSheetAfterSheetGives, ()) {
  const Strip strip = any_strip();
  Turned slow(strip);
  bool can = true;
  for (const auto& [crease, mountain] : strip.order) can = can && slow.fold(crease, mountain);
  const auto card = fold_flat(base_of(strip), Unit::inch);
  RC_CLASSIFY(!can, "cannot be folded");
  RC_ASSERT(card.has_value() == can);
  if (!can) return;
  const auto columns = columns_of(*card);
  const auto slow_columns = slow.columns();
  RC_ASSERT(columns == slow_columns || columns == from_behind(slow_columns, card->width.nm()));
  std::vector<Length> creases;
  for (std::size_t i = 0; i + 1 < strip.cuts.size(); ++i) creases.push_back(Length::nm(strip.cuts[i]));
  RC_ASSERT(card->width == folded_length(Length::nm(strip.cuts.back()), creases));
}

RC_GTEST_PROP(FoldedBase, HasSectionOneInFrontWhereItIsSeen, ()) {
  const Strip strip = any_strip();
  const auto card = fold_flat(base_of(strip), Unit::inch);
  RC_PRE(card.has_value());
  bool front = false, back = false;
  for (const auto& [at, column] : columns_of(*card)) {
    front = front || column.front().first == 1;
    back = back || column.back().first == 1;
  }
  RC_ASSERT(front || !back);
}

// A card of random pieces; each is written again for the mirrored card.
struct PieceMade {
  CardPiece piece, mirrored;
};

std::string in_inches(std::int64_t eighths) {
  return write(Length::nm(eighths * eighth), Unit::inch);
}

PieceMade any_piece(int number, int sections, bool inside) {
  PieceMade made;
  CardPiece& one = made.piece;
  one.name = "piece " + std::to_string(number);
  one.width = Length::nm(*rc::gen::inRange<std::int64_t>(1, 40) * eighth);
  one.height = Length::nm(*rc::gen::inRange<std::int64_t>(1, 40) * eighth);
  one.side = inside ? CardSide::inside : CardSide::front;
  if (number > 0 && *rc::gen::arbitrary<bool>()) one.with = *rc::gen::inRange(0, number);
  made.mirrored = one;
  const int section = *rc::gen::inRange(1, sections + 1);
  one.target = "section " + std::to_string(section);
  made.mirrored.target = "section " + std::to_string(sections + 1 - section);
  const std::string by = in_inches(*rc::gen::inRange<std::int64_t>(0, 12));
  const bool left = *rc::gen::arbitrary<bool>();
  const std::string down = ", " + in_inches(*rc::gen::inRange<std::int64_t>(0, 4)) + " from the top";
  one.at = by + " from the " + (left ? "left" : "right") + down;
  made.mirrored.at = by + " from the " + (left ? "right" : "left") + down;
  if (*rc::gen::arbitrary<bool>()) {
    const Length strip = Length::nm(*rc::gen::inRange<std::int64_t>(1, 30) * eighth);
    one.glue = {GlueSaid::Where::strips, {{left ? left_edge : right_edge, strip}}};
    made.mirrored.glue = {GlueSaid::Where::strips, {{left ? right_edge : left_edge, strip}}};
  }
  return made;
}

std::vector<std::pair<std::string, int>> codes_of(const CheckedCard& checked) {
  std::vector<std::pair<std::string, int>> codes;
  for (const CardProblem& problem : checked.problems) codes.emplace_back(problem.code, problem.piece);
  std::sort(codes.begin(), codes.end());
  return codes;
}

// Inside faces, so that which of two sides is the front does not matter.
RC_GTEST_PROP(CardCheck, OfAMirroredCardAnswersTheSame, ()) {
  Strip strip = any_strip();
  const int parts = static_cast<int>(strip.cuts.size());
  Base base = base_of(strip), mirrored = base;
  for (SheetCrease& crease : mirrored.creases) crease.at = base.width - crease.at;
  const auto card = fold_flat(base, Unit::inch), other = fold_flat(mirrored, Unit::inch);
  RC_ASSERT(card.has_value() == other.has_value());
  RC_PRE(card.has_value());
  std::vector<CardPiece> pieces, turned;
  const int count = *rc::gen::inRange(1, 6);
  for (int i = 0; i < count; ++i) {
    const PieceMade made = any_piece(i, parts, true);
    pieces.push_back(made.piece);
    turned.push_back(made.mirrored);
  }
  RC_ASSERT(codes_of(check_card(*card, pieces, false, Unit::inch)) ==
            codes_of(check_card(*other, turned, false, Unit::inch)));
}

// How far a piece may move before it touches or leaves any line that the check knows.
std::int64_t slack_of(const FoldedBase& card, const SeatedPiece& seat, const GlueSaid& glue) {
  std::vector<std::int64_t> lines, edges;
  for (const BaseSection& one : card.sections)
    for (const Length line : {one.closed_left, one.closed_right()}) lines.push_back(line.nm());
  edges = {seat.closed.left.nm(), seat.closed.right().nm()};
  for (const Rect& part : glued_parts(glue, seat.on_face.width, seat.on_face.height)) {
    Rect on_face = part;
    on_face.left += seat.on_face.left;
    on_face.top += seat.on_face.top;
    const Rect closed = in_closed_card(seat.face, on_face);
    edges.push_back(closed.left.nm());
    edges.push_back(closed.right().nm());
  }
  std::int64_t slack = 1'000'000'000;
  for (const std::int64_t edge : edges)
    for (const std::int64_t line : lines) slack = std::min(slack, std::abs(edge - line));
  return slack;
}

RC_GTEST_PROP(CardCheck, KeepsItsVerdictWhereAPieceMovesLessThanItsSlack, ()) {
  const Strip strip = any_strip();
  const auto card = fold_flat(base_of(strip), Unit::inch);
  RC_PRE(card.has_value());
  PieceMade made = any_piece(0, static_cast<int>(strip.cuts.size()), *rc::gen::arbitrary<bool>());
  const CheckedCard before = check_card(*card, {made.piece}, false, Unit::inch);
  RC_PRE(before.seats[0].has_value());
  const std::int64_t slack = slack_of(*card, *before.seats[0], made.piece.glue);
  RC_PRE(slack > 4000);
  const std::int64_t by = *rc::gen::inRange<std::int64_t>(-slack + 2000, slack - 2000);
  const Length left = before.seats[0]->on_face.left + Length::nm(by);
  made.piece.at = (left < Length() ? "hanging off the left edge by " + write(-left, Unit::mm)
                                   : write(left, Unit::mm) + " from the left") +
                  made.piece.at.substr(made.piece.at.find(','));
  const CheckedCard after = check_card(*card, {made.piece}, false, Unit::inch);
  RC_PRE(after.seats[0].has_value());
  RC_ASSERT(codes_of(after) == codes_of(before));
}

RC_GTEST_PROP(Place, FiguresReadBackAreTheSamePlace, ()) {
  const auto any = [](std::int64_t low, std::int64_t high) {
    return Length::nm(*rc::gen::inRange<std::int64_t>(low, high) * eighth / 4);
  };
  const GroundAndPiece sizes{any(8, 300), any(8, 300), any(2, 300), any(2, 300)};
  const char* words =
      *rc::gen::element("", "centred", "high of centre", "low of centre", "left of centre", "bottom right",
                        "flush top", "top left", "same border at top and sides", "1/4 in from the left",
                        "hanging off the bottom edge by 1/16 in");
  const auto said = read_place(words, Unit::inch);
  RC_ASSERT(said.has_value());
  const auto found = find_place(*said, sizes, Unit::inch);
  RC_PRE(found.has_value());
  const std::string figures = place_in_figures(*found, sizes, Unit::inch);
  const auto again = read_place(figures, Unit::inch);
  RC_ASSERT(again.has_value());
  const auto same = find_place(*again, sizes, Unit::inch);
  RC_ASSERT(same.has_value());
  // Half a nanometre cannot be said.
  RC_ASSERT(std::abs((same->left - found->left).nm()) <= 1);
  RC_ASSERT(std::abs((same->top - found->top).nm()) <= 1);
  RC_ASSERT(place_in_figures(*same, sizes, Unit::inch) == figures);
}

}  // namespace
}  // namespace insetbook
