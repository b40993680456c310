// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "language/binder.h"
#include "language/says.h"

namespace insetbook {
namespace {

// What is said of a when b goes so with a.
std::optional<GoesHow> seen_from_the_other(GoesHow how) {
  switch (how) {
    case GoesHow::on:
      return GoesHow::behind;
    case GoesHow::behind:
      return GoesHow::on;
    case GoesHow::in:
      return GoesHow::around;
    case GoesHow::around:
    case GoesHow::through:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

Binder::Link Binder::link_of(const Item& item, bool excluded) const {
  Link link;
  link.how = constraint_of(text_, item.span, GoesIs{*item.how}, "");
  link.excluded = excluded;
  return link;
}

// A word that says how pieces go together.
Result<void> Binder::goes(Level& level, std::size_t place) {
  Item& item = items_[place];
  level.and_before = false;
  if (!item.how) {  // "beside"
    ignore(item, "both pieces are looked for; how they go together is not");
    level.pending = Pending::goes;
    return {};
  }
  // "circle on a square and behind a heart": both are said of the circle.
  if (level.pending == Pending::joins || level.pending == Pending::comma) close_others(level);
  if (item.back) {
    goes_back(level, place);
    return {};
  }
  if (item.alone) {
    goes_with_anything(level, place);
    return {};
  }
  Link link = link_of(item, std::exchange(level.not_before, false));
  if (!subject_open(level, place)) {
    ignore(item, "no piece stands before it that could go so");
    level.pending = Pending::goes;
    return {};
  }
  const Item& next = items_[at_];
  if (next.kind == Item::Kind::opens || next.kind == Item::Kind::group) {
    if (next.kind == Item::Kind::group) ++at_;
    return goes_group(level, std::move(link));
  }
  if (*item.how == GoesHow::on && only_treatment(*level.piece) && !link.excluded) {
    if (may_be_laid(*level.piece, place))
      level.piece->laid = {level.piece->parts.size(), std::move(link)};
    else
      ignore(item, "says what was treated so");
    level.pending = Pending::nothing;
    return {};
  }
  level.going = std::move(link);
  level.pending = Pending::goes;
  return {};
}

// "stamping on a circle", "navy ink on a circle", "the dinghy stamp on a circle": of that circle.
bool Binder::only_treatment(const OpenPiece& piece) {
  return !piece.parts.empty() && std::ranges::all_of(piece.parts, [](const Part& part) {
    if (part.of == FieldName::technique || part.of == FieldName::supply) return true;
    const auto* colour = part.node.kind == Node::Kind::one
                             ? std::get_if<ColourIs>(&part.node.constraint.front().says)
                             : nullptr;
    return colour && colour->use == ColourUse::ink;
  });
}

// "snail on an arch", "pearls on a scallop": an image or a trinket may be a piece that lies there. Of "the
// snail stamp on an arch" only the print is meant.
bool Binder::may_be_laid(const OpenPiece& piece, std::size_t place) const {
  const std::string_view said = typed(items_[place - 1].span);
  const std::string_view last = said.substr(said.find_last_of(' ') + 1);
  const bool tool = last == "stamp" || last == "stamps" || last == "folder" || last == "folders";
  return !tool && !piece.laid && at_ < items_.size() && head_ahead(items_, at_) &&
         std::ranges::all_of(piece.parts,
                             [](const Part& part) { return part.of == FieldName::supply && !part.excluded; });
}

// The piece that goes so: the one that is open, or that a bracket before has closed, or, where nothing
// stands before, any piece.
bool Binder::subject_open(Level& level, std::size_t place) {
  if (level.piece) return true;
  if (!level.slots.empty() && level.pending == Pending::nothing && !level.slots.back().nodes.empty()) {
    const std::size_t last = level.slots.size() - 1;
    Slot& slot = level.slots[last];
    if (slot.nodes.size() != 1 || slot.nodes.front().kind != Node::Kind::piece) return false;
    level.piece = OpenPiece();
    level.piece->slot = last;
    level.piece->excluded = slot.excluded;
    level.piece->head_at = 0;
    for (Node& child : slot.nodes.front().children) {
      Part part;
      part.field = true;
      if (child.kind == Node::Kind::one) part.of = field_of(child.constraint.front().says);
      part.head = level.piece->parts.empty();
      part.node = std::move(child);
      level.piece->parts.push_back(std::move(part));
    }
    slot.nodes.clear();
    return true;
  }
  if (!stands_first(level, place)) return false;
  start(level);
  return true;
}

bool Binder::stands_first(const Level& level, std::size_t place) const {
  if (place == 0) return true;
  const Item::Kind before = items_[place - 1].kind;
  return before == Item::Kind::joins || before == Item::Kind::comma || before == Item::Kind::excludes ||
         before == Item::Kind::opens || (before == Item::Kind::card && level.slots.empty());
}

// The piece that follows is one that the open piece goes with.
void Binder::start_other(Level& level) {
  Link link = std::move(*level.going);
  level.going.reset();
  const std::size_t depth = static_cast<std::size_t>(level.depth) + level.waiting.size() + 2;
  if (depth > static_cast<std::size_t>(deepest_bracket))
    too_deep_ =
        problem_at(text_, link.how.span, "more than 50 pieces go with one another in a row", "fewer pieces");
  OpenPiece other;
  other.slot = level.piece->slot;
  other.link = std::move(link);
  level.waiting.push_back(std::move(*level.piece));
  level.piece = std::move(other);
}

void Binder::close_others(Level& level) {
  level.going.reset();
  while (level.piece && level.piece->link && !level.waiting.empty())
    close_other(level, wanted(*level.piece, true));
}

void Binder::close_other(Level& level, Wanted wanted) {
  const Link link = std::move(*level.piece->link);
  level.piece = std::move(level.waiting.back());
  level.waiting.pop_back();
  const auto add = [&](std::optional<Node> node, bool excluded) {
    if (!node || (node->children.empty() && node->kind == Node::Kind::piece)) return;
    std::vector<Node> other;
    other.push_back(std::move(*node));
    add_going(*level.piece, link, std::move(other), excluded);
  };
  add(std::move(wanted.there), link.excluded);
  add(std::move(wanted.not_there), !link.excluded);
}

void Binder::add_going(OpenPiece& subject, const Link& link, std::vector<Node> other, bool excluded) {
  Node node = going(link.how, std::move(other));
  const bool beside = link.alternative && !subject.parts.empty() && subject.parts.back().excluded == excluded;
  if (!beside) {
    Part part;
    part.of = FieldName::on;
    part.excluded = excluded;
    part.node = std::move(node);
    subject.parts.push_back(std::move(part));
    return;
  }
  Node& before = subject.parts.back().node;
  const auto how = [](const Node& goes) { return std::get<GoesIs>(goes.constraint.front().says).how; };
  if (before.kind == Node::Kind::goes && how(before) == how(node) && before.children.size() == 1 &&
      node.children.size() == 1)
    before.children.front() = choice(std::move(before.children.front()), std::move(node.children.front()));
  else
    before = choice(std::move(before), std::move(node));
}

// "circle on a 2 in square or a 3 in heart", "circle on a square or behind a heart".
bool Binder::or_another(Level& level) {
  if (!level.piece || !level.piece->link || at_ >= items_.size()) return false;
  Item& next = items_[at_];
  const bool way = next.kind == Item::Kind::preposition && next.how && !next.back && !next.alone;
  if (!way && !(says_of_piece(next) && head_ahead(items_, at_))) return false;
  Link link = way ? link_of(next, false) : Link{level.piece->link->how, false, false};
  link.excluded = level.piece->link->excluded;
  link.alternative = true;
  if (way) {
    if (at_ + 1 >= items_.size() || !says_of_piece(items_[at_ + 1])) return false;
    ++at_;
  }
  close_other(level, wanted(*level.piece, true));
  level.going = std::move(link);
  level.pending = Pending::goes;
  return true;
}

// "on:( … )", "on (a square or easel)": the piece in the bracket; whatever else stands there is no part of
// it.
Result<void> Binder::goes_group(Level& level, Link link) {
  const int depth = level.depth + static_cast<int>(level.waiting.size()) + 1;
  if (depth > deepest_bracket)
    return failure(
        problem_at(text_, link.how.span, "brackets stand in more than 50 brackets", "fewer brackets"));
  if (!level.piece || (!level.with && level.pending == Pending::nothing &&
                       (level.piece->sample_between || level.piece->text_between)))
    start(level);
  if (at_ < items_.size() && items_[at_].kind == Item::Kind::opens) ++at_;
  auto inside = this->level(depth, !pieces_in_bracket());
  if (!inside) return failure(inside.error());
  if (at_ < items_.size()) ++at_;  // the closing bracket
  const auto found = std::ranges::find_if(*inside, is_piece);
  std::vector<Node> other;
  if (found != inside->end()) {
    other.push_back(std::move(*found));
    inside->erase(found);
  }
  const bool in_piece = std::exchange(level.in_piece, false);
  if (!other.empty() || inside->empty())
    add_going(*level.piece, link, std::move(other), link.excluded || in_piece);
  for (Node& node : *inside) add_node(level, std::move(node), false);
  level.pending = Pending::nothing;
  if (level.excluding == Excluding::term) {
    flush(level);
    end_exclusion(level);
  }
  return {};
}

// Whether the bracket whose first item comes next holds whole pieces, not what is said of one.
bool Binder::pieces_in_bracket() const {
  int depth = 0;
  for (std::size_t i = at_; i < items_.size(); ++i) {
    const Item& item = items_[i];
    if (item.kind == Item::Kind::closes && depth-- == 0) return false;
    if (item.kind == Item::Kind::opens) ++depth;
    const bool with = item.kind == Item::Kind::group && !item.how;
    if (depth == 0 && (with || item.kind == Item::Kind::either)) return true;
    if (with && depth == 1 && i > at_ && items_[at_].kind == Item::Kind::opens) return true;
  }
  return false;
}

// "a ribbon around the front": which piece lies there is not said.
void Binder::goes_with_anything(Level& level, std::size_t place) {
  const Item& item = items_[place];
  const bool excluded = std::exchange(level.not_before, false);
  if (!level.piece || level.piece->parts.empty() ||
      (!level.piece->named() && !level.piece->has(FieldName::supply) &&
       level.piece->parts.back().also.empty()))
    return ignore(item, "no piece stands before it that could go so");
  add_going(*level.piece, link_of(item, excluded), {}, excluded);
  level.pending = Pending::goes;
}

// The slot of the piece before the open one.
std::size_t Binder::piece_before(const Level& level) const {
  const std::size_t open = level.piece->slot;
  if (level.slots[open].or_before) return none_yet;
  for (std::size_t i = open; i-- > 0;) {
    const Slot& slot = level.slots[i];
    if (slot.nodes.empty()) continue;
    if (slot.nodes.size() == 1 && is_piece(slot.nodes.front())) return i;
    return none_yet;
  }
  return none_yet;
}

// "circle with a square behind it": the square, behind the circle.
void Binder::goes_back(Level& level, std::size_t place) {
  const Item& item = items_[place];
  close_others(level);
  const std::size_t before = level.piece ? piece_before(level) : none_yet;
  if (before == none_yet) {
    if (*item.how == GoesHow::on || *item.how == GoesHow::in) return ignore(item, "filler");
    return goes_with_anything(level, place);
  }
  OpenPiece& piece = *level.piece;
  Slot& slot = level.slots[before];
  const bool excluded = std::exchange(level.not_before, false);
  const auto from_there = seen_from_the_other(*item.how);
  if (!piece.excluded || slot.excluded || !from_there) {
    std::vector<Node> other;
    other.push_back(slot.nodes.front());
    add_going(piece, link_of(item, false), std::move(other), excluded);
    level.pending = Pending::goes;
    if (piece.excluded && !slot.excluded) return;  // the one before is there, and this one does not go so
    slot.nodes.clear();
    piece.slot = before;
    piece.excluded = slot.excluded;
    return;
  }
  // "circle without a square behind it": a circle that lies on no square.
  std::vector<Node> other;
  if (Wanted wanted = this->wanted(std::move(piece), true); wanted.there)
    other.push_back(std::move(*wanted.there));
  level.piece.reset();
  Link link = link_of(item, true);
  link.how.says = GoesIs{*from_there};
  std::vector<Node> without;
  exclude(going(link.how, std::move(other)), without);
  Node& node = slot.nodes.front();
  if (node.kind == Node::Kind::piece) node.children.push_back(without.front());
  if (node.kind == Node::Kind::any)
    for (Node& child : node.children)
      if (child.kind == Node::Kind::piece) child.children.push_back(without.front());
  level.pending = Pending::goes;
  end_exclusion(level);
}

}  // namespace insetbook
