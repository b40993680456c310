// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/bind.h"

#include <algorithm>
#include <utility>

#include "language/binder.h"
#include "language/says.h"

namespace insetbook {

Result<Node> Binder::run() {
  auto nodes = level(0, false);
  // A bracket too many closes nothing.
  while (nodes && at_ < items_.size()) {
    ++at_;
    auto more = level(0, false);
    if (!more) return failure(more.error());
    for (Node& node : *more) nodes->push_back(std::move(node));
  }
  if (!nodes) return failure(nodes.error());
  Node tree = with_children(Node::Kind::all, std::move(*nodes));
  tidy(tree);
  return tree;
}

Result<std::vector<Node>> Binder::level(int depth, bool with) {
  Level level;
  level.depth = depth;
  level.with = with;
  if (with) {
    level.piece = OpenPiece();
    level.piece->outright = true;
    level.piece->slot = new_slot(level);
  }
  while (at_ < items_.size() && (items_[at_].kind != Item::Kind::closes || at_ == properties_end_)) {
    const std::size_t place = at_++;
    Item& item = items_[place];
    Result<void> read;
    if (place == properties_end_)
      close_properties(level);
    else if (item.kind == Item::Kind::opens && open_properties(level))
      continue;
    else if (item.kind == Item::Kind::opens)
      read = bracket(level, item, false);
    else if (item.kind == Item::Kind::group && !item.how)
      read = bracket(level, item, true);
    else if (item.kind == Item::Kind::group)
      read = goes_group(level, link_of(item, std::exchange(level.not_before, false)));
    else if (item.kind == Item::Kind::preposition)
      read = goes(level, place);
    else
      take(level, place);
    if (!read) return failure(read.error());
    if (too_deep_) return failure(*too_deep_);
  }
  flush(level);
  return flatten(level);
}

void Binder::take(Level& level, std::size_t place) {
  Item& item = items_[place];
  switch (item.kind) {
    case Item::Kind::says:
      if (says_of_piece(item)) return piece_item(level, place);
      if (item.of == FieldName::text) return text_item(level, place);
      return sample_item(level, item);
    case Item::Kind::joins:
      return joins(level, item);
    case Item::Kind::comma:
      return comma(level, place);
    case Item::Kind::either:
      return either(level, place);
    case Item::Kind::excludes:
      return excludes(level, place);
    case Item::Kind::card:
      return card(level);
    case Item::Kind::tall:
    case Item::Kind::wide:
      return way_round(level, place);
    case Item::Kind::number:
      return number(level, place);
    case Item::Kind::preposition:
    case Item::Kind::opens:
    case Item::Kind::group:
    case Item::Kind::closes:
    case Item::Kind::each:
      return;
  }
}

std::size_t Binder::new_slot(Level& level) {
  level.slots.push_back({});
  level.slots.back().or_before = std::exchange(level.or_before, false);
  return level.slots.size() - 1;
}

void Binder::add_node(Level& level, Node node, bool excluded) {
  const std::size_t slot = new_slot(level);
  level.slots[slot].nodes.push_back(std::move(node));
  level.slots[slot].excluded = excluded;
}

std::vector<Node> Binder::flatten(Level& level) {
  std::vector<std::vector<Node>> groups;
  for (Slot& slot : level.slots) {
    std::vector<Node> nodes;
    for (Node& node : slot.nodes) {
      if (slot.excluded)
        exclude(std::move(node), nodes);
      else
        nodes.push_back(std::move(node));
    }
    if (nodes.empty()) continue;
    if (!slot.or_before || groups.empty()) {
      groups.push_back(std::move(nodes));
      continue;
    }
    std::vector<Node>& before = groups.back();
    Node left = whole(std::move(before));
    Node right = whole(std::move(nodes));
    before.clear();
    before.push_back(choice(std::move(left), std::move(right)));
  }
  std::vector<Node> out;
  for (std::vector<Node>& group : groups)
    for (Node& node : group) out.push_back(std::move(node));
  return out;
}

void Binder::joins(Level& level, const Item& item) {
  const bool is_and = item.word == "and" || item.word == "and a";
  if (level.excluding != Excluding::no) {
    if (is_and && level.excluding == Excluding::phrase) {
      if (!level.in_piece) {
        level.joined_on = true;
        flush(level);
        level.excluding = Excluding::phrase;
      }
      return;
    }
    if (item.word == "with" && excludes_more(level)) {
      level.pending = Pending::joins;
      level.and_before = false;
      return;
    }
    flush(level);
    end_exclusion(level);
  }
  level.in_piece = false;
  level.pending = Pending::joins;
  level.and_before = is_and && item.word == "and";
}

// "without a liner with marbling": a bare property behind "with" belongs to the excluded piece.
bool Binder::excludes_more(const Level& level) const {
  return level.excluding == Excluding::phrase && !level.in_piece && level.piece && level.piece->excluded &&
         level.piece->named() && at_ < items_.size() && says_of_piece(items_[at_]) &&
         is_property(items_[at_].of) && !items_[at_].field && !head_ahead(items_, at_);
}

void Binder::comma(Level& level, std::size_t place) {
  if (level.excluding == Excluding::phrase) {
    if (level.list_end != none_yet && place < level.list_end) return go_on_excluding(level);
    if (const std::size_t end = list_end(place); end != none_yet) {
      level.list_end = end;
      return go_on_excluding(level);
    }
  }
  if (level.excluding != Excluding::no) {
    flush(level);
    end_exclusion(level);
  }
  level.in_piece = false;
  level.pending = Pending::comma;
  level.and_before = false;
}

void Binder::go_on_excluding(Level& level) {
  if (level.in_piece) return;
  level.joined_on = true;
  flush(level);
  level.excluding = Excluding::phrase;
}

// "no glitter, ribbon or vellum": the "or" (or an item that "or" has bound) at which the list ends.
std::size_t Binder::list_end(std::size_t place) const {
  for (std::size_t i = place + 1; i < items_.size(); ++i) {
    const Item& item = items_[i];
    if (item.kind == Item::Kind::either) return i;
    if (item.kind == Item::Kind::says && item.offered.size() > 1) return i + 1;
    if (item.kind != Item::Kind::says && item.kind != Item::Kind::comma) return none_yet;
    if (item.article) return none_yet;
  }
  return none_yet;
}

void Binder::either(Level& level, std::size_t place) {
  if (or_another(level)) return;
  if (level.excluding == Excluding::phrase) return go_on_excluding(level);
  if (or_within_piece(level)) return;
  flush(level);
  end_exclusion(level);
  const bool before = !level.slots.empty() && !level.with;
  const bool after = place + 1 < items_.size() && items_[place + 1].kind != Item::Kind::closes;
  if (!before || !after) return ignore(items_[place], "there is nothing to choose between");
  level.or_before = true;
  level.pending = Pending::nothing;
}

void Binder::end_exclusion(Level& level) {
  level.excluding = Excluding::no;
  level.excluded_something = false;
  level.joined_on = false;
  level.in_piece = false;
  level.list_end = none_yet;
}

void Binder::excludes(Level& level, std::size_t place) {
  const Item& item = items_[place];
  if (at_ >= items_.size() || items_[at_].kind == Item::Kind::closes)
    return ignore(item, "nothing follows that could be excluded");
  const Item& next = items_[at_];
  // "circle not on a square", "shape:circle -on:(shape:square)"
  const bool way = next.how && !next.back && (next.kind == Item::Kind::preposition || next.field);
  if (way && level.piece && level.excluding == Excluding::no) {
    level.not_before = true;
    return;
  }
  // "circles not cut with moonrise circles"
  const bool by = next.of == FieldName::die && next.by;
  const bool bare = says_of_piece(next) &&
                    (is_property(next.of) || next.of == FieldName::size || next.of == FieldName::at || by) &&
                    !head_ahead(items_, at_) && !goes_ahead();
  const bool of_piece = level.with || (!item.outright && bare && level.piece && level.piece->named());
  if (of_piece) {
    level.in_piece = true;
    level.excluding = item.dash ? Excluding::no : Excluding::phrase;
    level.pending = Pending::nothing;
    if (item.dash) exclude_next_of_piece(level);
    return;
  }
  flush(level);
  end_exclusion(level);
  level.excluding = item.dash ? Excluding::term : Excluding::phrase;
  level.pending = Pending::nothing;
}

// "without a ribbon around it": what is excluded is a piece, for it goes with another.
bool Binder::goes_ahead() const {
  std::size_t i = at_;
  while (i < items_.size() && says_of_piece(items_[i])) ++i;
  return i < items_.size() && items_[i].kind == Item::Kind::preposition && items_[i].how;
}

// with:(… -technique:speckling …): the one field behind the minus sign.
void Binder::exclude_next_of_piece(Level& level) {
  if (at_ < items_.size() && says_of_piece(items_[at_]) && level.piece) {
    add_part(level, items_[at_]);
    ++at_;
  }
  level.in_piece = false;
}

void Binder::sample_item(Level& level, Item& item) {
  if (level.excluding != Excluding::no && level.excluded_something && !level.joined_on) {
    flush(level);
    end_exclusion(level);
  }
  if (level.in_piece) end_exclusion(level);
  // "square landscape cards"
  const std::string_view said = typed(item.span);
  if (item.of == FieldName::closed && (said.ends_with(" card") || said.ends_with(" cards")) &&
      only_a_square(level))
    close_piece(level);
  if (!level.with && (level.pending != Pending::nothing || item.field || level.or_before ||
                      level.excluding != Excluding::no))
    flush_keeping_exclusion(level);
  else if (level.piece)
    level.piece->sample_between = true;
  add_node(level, offered(std::move(item.offered)), level.excluding != Excluding::no);
  after_excluded_unit(level);
  level.pending = Pending::nothing;
}

void Binder::flush_keeping_exclusion(Level& level) {
  const Excluding excluding = level.excluding;
  flush(level);
  level.excluding = excluding;
}

void Binder::after_excluded_unit(Level& level) {
  if (level.excluding == Excluding::no) return;
  level.excluded_something = true;
  level.joined_on = false;
  if (level.excluding == Excluding::term) end_exclusion(level);
}

// Words understood as nothing. Side by side they are excluded together.
void Binder::text_item(Level& level, std::size_t place) {
  if (level.excluding != Excluding::no && level.excluded_something && !level.joined_on) {
    flush(level);
    end_exclusion(level);
  }
  if (level.in_piece) end_exclusion(level);
  if (level.excluding != Excluding::no) flush_keeping_exclusion(level);
  std::vector<Node> nodes;
  nodes.push_back(offered(std::move(items_[place].offered)));
  if (level.excluding == Excluding::phrase)
    while (at_ < items_.size() && items_[at_].kind == Item::Kind::says && items_[at_].of == FieldName::text &&
           !items_[at_].field)
      nodes.push_back(offered(std::move(items_[at_++].offered)));
  if (level.or_before) flush(level);
  if (level.piece) level.piece->text_between = true;
  add_node(level, whole(std::move(nodes)), level.excluding != Excluding::no);
  after_excluded_unit(level);
}

Result<void> Binder::bracket(Level& level, const Item& item, bool with) {
  const int depth = level.depth + static_cast<int>(level.waiting.size()) + 1;
  if (depth > deepest_bracket)
    return failure(problem_at(text_, item.span, "brackets stand in more than 50 brackets", "fewer brackets"));
  if (with && at_ < items_.size() && items_[at_].kind == Item::Kind::opens) ++at_;
  const bool in_with = level.with;
  if (!in_with) flush_keeping_exclusion(level);
  const bool excluded = level.excluding != Excluding::no || level.in_piece;
  auto inside = this->level(depth, with);
  if (!inside) return failure(inside.error());
  if (at_ < items_.size()) ++at_;  // the closing bracket
  // "with:((supply:pearls or paper:sage) shape:circle)"
  if (in_with && !with && level.piece && std::ranges::all_of(*inside, of_one_piece)) {
    for (Node& node : *inside) {
      Part part;
      part.field = true;
      part.excluded = level.in_piece;
      part.node = std::move(node);
      level.piece->parts.push_back(std::move(part));
    }
    level.in_piece = false;
    level.pending = Pending::nothing;
    return {};
  }
  const std::size_t slot = new_slot(level);
  Slot& place = level.slots[slot];
  place.excluded = excluded;
  if ((excluded || place.or_before || or_follows()) && inside->size() > 1)
    place.nodes.push_back(whole(std::move(*inside)));
  else
    place.nodes = std::move(*inside);
  level.in_piece = false;
  if (!in_with) after_excluded_unit(level);
  level.pending = Pending::nothing;
  return {};
}

// "white circle (stamped in navy or speckled)": whether the bracket that has just been opened says what the
// open piece is, and no more.
bool Binder::open_properties(Level& level) {
  const bool free = level.piece && level.pending == Pending::nothing && !level.with && !level.in_piece &&
                    level.excluding == Excluding::no;
  if (!free) return false;
  OpenPiece& piece = *level.piece;
  if (!piece.has_head() || piece.outright || piece.link || piece.laid || piece.excluded ||
      piece.shared != none_yet || !piece.alternatives.empty() || piece.sample_between || piece.text_between)
    return false;
  std::size_t i = at_;
  for (; i < items_.size() && items_[i].kind != Item::Kind::closes; ++i) {
    const Item& item = items_[i];
    const bool property =
        says_of_piece(item) && is_property(item.of) && !item.field && !item.article && item.also.empty();
    if (!property && item.kind != Item::Kind::either && item.kind != Item::Kind::joins &&
        item.kind != Item::Kind::comma)
      return false;
  }
  if (i == at_ || i == items_.size()) return false;
  properties_end_ = i;
  piece.shared = piece.parts.size();
  return true;
}

void Binder::close_properties(Level& level) {
  properties_end_ = none_yet;
  level.pending = Pending::nothing;
  if (!level.piece || level.piece->alternatives.empty()) return;
  OpenPiece& piece = *level.piece;
  const auto last = piece.parts.begin() + static_cast<std::ptrdiff_t>(piece.shared);
  piece.alternatives.emplace_back(std::make_move_iterator(last), std::make_move_iterator(piece.parts.end()));
  piece.parts.erase(last, piece.parts.end());
  piece.all_offered = true;
}

// Whether it says something of a piece and names none: a property, or a choice of some.
bool Binder::of_one_piece(const Node& node) {
  if (node.kind == Node::Kind::one) return field(field_of(node.constraint.front().says)).of_piece;
  if (node.kind != Node::Kind::any && node.kind != Node::Kind::none) return false;
  return std::ranges::all_of(node.children, of_one_piece);
}

Result<Node> bind(std::string_view text, Itemised& itemised) {
  Result<Node> tree = Binder(text, itemised).run();
  std::ranges::stable_sort(itemised.ignored, {}, [](const Ignored& each) { return each.span.begin; });
  return tree;
}

}  // namespace insetbook
