// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "language/binder.h"

namespace insetbook {
namespace {

bool is_square(const Node& node) {
  const auto* shape =
      node.kind == Node::Kind::one ? std::get_if<ShapeIs>(&node.constraint.front().says) : nullptr;
  return shape && !shape->terms.empty() && shape->terms.front() == "square";
}

void place_size(SizeIs& size, bool tall) {
  if (size.one_figure) return;
  if ((tall && size.low > size.second) || (!tall && size.low < size.second)) std::swap(size.low, size.second);
  size.placed = true;
}

}  // namespace

// The open piece is no more than "square", with nothing between it and what follows.
bool Binder::only_a_square(const Level& level) const {
  return level.piece && !level.with && level.pending == Pending::nothing && level.piece->parts.size() == 1 &&
         is_square(level.piece->parts.front().node);
}

// "square card 5 in", "card 5 in square": one figure at once behind it, that a square has for both sides.
std::vector<Constraint> Binder::side_behind() {
  if (at_ >= items_.size()) return {};
  const Item& item = items_[at_];
  if (item.kind != Item::Kind::says || item.of != FieldName::size || item.field) return {};
  const bool one_side = std::ranges::all_of(item.offered, [](const Constraint& c) {
    const SizeIs& size = std::get<SizeIs>(c.says);
    return size.one_figure && !size.placed && size.relation != Relation::between;
  });
  return one_side ? item.offered : std::vector<Constraint>();
}

void Binder::card(Level& level) {
  std::vector<Constraint> side = side_behind();
  if (!side.empty() && only_a_square(level) && !head_ahead(items_, at_)) {
    ++at_;
    remove(*level.piece, FieldName::shape);
    return add_closed(level, closed_sizes(std::move(side), true));
  }
  const bool square_behind = at_ + 1 < items_.size() && items_[at_ + 1].kind == Item::Kind::says &&
                             items_[at_ + 1].offered.size() == 1 && !items_[at_ + 1].field &&
                             is_square(one(items_[at_ + 1].offered.front()));
  const bool ends = at_ + 2 >= items_.size() || !says_of_piece(items_[at_ + 2]);
  if (!side.empty() && square_behind && ends && !level.with) {
    at_ += 2;
    return add_closed(level, closed_sizes(std::move(side), true));
  }
  if (level.piece && !level.with && level.pending == Pending::nothing && close_piece(level)) return;
  // "card 5 x 7", "cards that are 5 x 7", "cards under 5 in", "cards 7 in tall"
  if (at_ < items_.size() && items_[at_].kind == Item::Kind::says && items_[at_].of == FieldName::size &&
      !items_[at_].field && !head_ahead(items_, at_) && !level.with) {
    std::vector<Constraint> sizes = std::move(items_[at_++].offered);
    // One figure is a side of the card where it says which, or bounds both.
    const bool of_card = std::ranges::all_of(sizes, [](const Constraint& c) {
      const SizeIs& size = std::get<SizeIs>(c.says);
      const bool bound = size.relation != Relation::exact && size.relation != Relation::about;
      return !size.one_figure || size.placed || bound;
    });
    if (!of_card) {
      --at_;
      items_[at_].offered = std::move(sizes);
      return;
    }
    add_closed(level, closed_sizes(std::move(sizes), false));
  }
}

// Whether what was said of the piece before "card" was said of the card.
bool Binder::close_piece(Level& level) {
  OpenPiece& piece = *level.piece;
  if (piece.has(FieldName::role) || piece.has(FieldName::die) || piece.has(FieldName::count)) return false;
  const auto shape = std::ranges::find(piece.parts, FieldName::shape, &Part::of);
  const auto size = std::ranges::find(piece.parts, FieldName::size, &Part::of);
  const bool square = shape != piece.parts.end() && is_square(shape->node);
  if (shape != piece.parts.end() && !square) return false;
  if (size == piece.parts.end()) {
    if (!square) return false;
    Constraint said = shape->node.constraint.front();
    ClosedSizeIs closed;
    closed.form = ClosedSizeIs::Form::square;
    closed.said = said.text;
    said.says = std::move(closed);
    said.means.clear();
    remove(piece, FieldName::shape);
    add_closed(level, {std::move(said)});
    return true;
  }
  if (size->excluded) return false;
  std::vector<Constraint> sizes;
  if (size->node.kind == Node::Kind::one)
    sizes.push_back(size->node.constraint.front());
  else
    for (Node& child : size->node.children) sizes.push_back(child.constraint.front());
  remove(piece, FieldName::size);
  if (square) remove(piece, FieldName::shape);
  add_closed(level, closed_sizes(std::move(sizes), square));
  return true;
}

void Binder::remove(OpenPiece& piece, FieldName of) {
  std::erase_if(piece.parts, [&](const Part& part) { return part.of == of; });
  const auto head = std::ranges::find(piece.parts, true, &Part::head);
  piece.head_at = head == piece.parts.end() ? none_yet : static_cast<std::size_t>(head - piece.parts.begin());
}

std::vector<Constraint> Binder::closed_sizes(std::vector<Constraint> sizes, bool square) {
  for (Constraint& each : sizes) {
    SizeIs size = std::get<SizeIs>(each.says);
    if (square && size.one_figure && size.relation != Relation::between) {
      size.one_figure = false;
      size.second = size.low;
    }
    ClosedSizeIs closed;
    closed.size = size;
    closed.said = each.text;
    each.says = std::move(closed);
    each.means.clear();
  }
  return sizes;
}

void Binder::add_closed(Level& level, std::vector<Constraint> closed) {
  const bool excluded = level.excluding != Excluding::no || (level.piece && level.piece->excluded);
  if (level.piece && level.piece->parts.empty() && level.piece->link) {
    // "circle on a square card": nothing goes with the card.
    level.piece = std::move(level.waiting.back());
    level.waiting.pop_back();
    add_node(level, offered(std::move(closed)), excluded);
  } else if (level.piece && level.piece->parts.empty()) {
    // The slot of the piece becomes that of the card.
    Slot& slot = level.slots[level.piece->slot];
    level.piece.reset();
    slot.nodes.push_back(offered(std::move(closed)));
    slot.excluded = excluded;
  } else {
    add_node(level, offered(std::move(closed)), excluded);
  }
  after_excluded_unit(level);
}

// "tall", "wide": of the card, or of a size beside it; else a word like any other.
void Binder::way_round(Level& level, std::size_t place) {
  Item& item = items_[place];
  const bool tall = item.kind == Item::Kind::tall;
  if (at_ < items_.size() && items_[at_].kind == Item::Kind::card) {
    ClosedSizeIs closed;
    closed.form = tall ? ClosedSizeIs::Form::portrait : ClosedSizeIs::Form::landscape;
    closed.said = item.word;
    item.of = FieldName::closed;
    item.offered.push_back(constraint_of(text_, item.span, std::move(closed), ""));
    return sample_item(level, item);
  }
  if (at_ < items_.size() && items_[at_].kind == Item::Kind::says && items_[at_].of == FieldName::size) {
    for (Constraint& each : items_[at_].offered) place_size(std::get<SizeIs>(each.says), tall);
    ignore(item, "says which way round the size is");
    return;
  }
  item.of = FieldName::text;
  item.kind = Item::Kind::says;
  item.offered.push_back(constraint_of(text_, item.span, WordsAre{{item.word}, false}, ""));
  text_item(level, place);
}

}  // namespace insetbook
