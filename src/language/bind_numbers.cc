// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/binder.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {

void Binder::number(Level& level, std::size_t place) {
  Item& item = items_[place];
  const std::size_t head = head_after(place);
  const bool x = item.word != "six" && fold(std::string_view(item.word)).ends_with("x");
  const bool related =
      !item.offered.empty() && std::get<SizeIs>(item.offered.front().says).relation != Relation::exact;
  // "exactly 1 circle", "more than one circle"
  const bool of_one = item.number == 1 && (item.exactly || (related && item.word == "one"));
  if (item.whole && item.number == 0 && !related) {
    if (head == none_yet) return ignore(item, "nothing stands behind it that could be counted");
    return count(level, place);
  }
  if (item.pieces && (item.number != 1 || related || item.exactly)) return count(level, place);
  if (head != none_yet && item.whole && (x || is_plural(head) || of_one)) return count(level, place);
  const bool beside_head =
      (head == place + 1) || (level.piece && level.piece->has_head() && !level.piece->has(FieldName::size) &&
                              level.pending == Pending::nothing && level.piece->parts.back().head);
  if (!item.offered.empty() && (related || beside_head || !item.whole)) {
    item.kind = Item::Kind::says;
    item.of = FieldName::size;
    const SizeIs& size = std::get<SizeIs>(item.offered.front().says);
    itemised_.notes.push_back("\"" + std::string(typed(item.span)) + "\" is read as " +
                              write(size.low, size.unit));
    return piece_item(level, place);
  }
  const bool single = item.word.ends_with("single");
  if ((item.word == "one" || item.number == 1) && !single) return ignore(item, "filler");
  item.kind = Item::Kind::says;
  item.of = FieldName::text;
  item.offered.clear();
  item.offered.push_back(
      constraint_of(text_, item.span, text_of(single ? "single" : fold(typed(item.span))), ""));
  text_item(level, place);
}

// The shape, role, material that is a role as well ("ribbons") or supply called like a role ("pearls") that
// the phrase of a number turns on, a few items ahead.
std::size_t Binder::head_after(std::size_t place) const {
  for (std::size_t i = place + 1; i < std::min(place + 8, items_.size()); ++i) {
    if (is_head(items_[i]) || !items_[i].also.empty() || items_[i].counted) return i;
    if (!says_of_piece(items_[i])) return none_yet;
  }
  return none_yet;
}

// "2 hexagon strips": the last of the heads side by side shows the number.
bool Binder::is_plural(std::size_t head) const {
  while (head + 1 < items_.size() && is_head(items_[head]) && is_head(items_[head + 1])) ++head;
  // One die has one size: "2 second largest tidepool oval" can only be so many.
  const auto* die = std::get_if<DieIs>(&items_[head].offered.front().says);
  if (die && die->sets.empty()) return true;
  const std::string text = fold(std::string_view(items_[head].offered.back().text));
  return text.size() > 2 && text.back() == 's' && text[text.size() - 2] != 's';
}

void Binder::count(Level& level, std::size_t place) {
  Item& item = items_[place];
  Relation relation = Relation::exact;
  if (!item.offered.empty()) relation = std::get<SizeIs>(item.offered.front().says).relation;
  int least = item.number;
  std::optional<int> at_most;
  if (item.exactly || item.number == 0) at_most = least;
  const bool exactly = item.exactly || item.most > 0;
  if (item.most > 0) at_most = item.most;
  if (relation == Relation::over) ++least;
  if (relation == Relation::at_most) at_most = least;
  if (relation == Relation::under) at_most = least - 1;
  item.kind = Item::Kind::says;
  item.of = FieldName::count;
  item.offered.clear();
  item.offered.push_back(constraint_of(text_, item.span, CountIs{std::max(least, 1)}, ""));
  if (level.pending == Pending::goes && level.going)
    start_other(level);
  else if (!level.with)
    start(level);
  level.pending = Pending::nothing;
  add_part(level, item);
  if (at_most) level.piece->at_most = at_most;
  level.piece->exactly = exactly;
}

}  // namespace insetbook
