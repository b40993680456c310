// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iterator>
#include <utility>

#include "language/binder.h"
#include "language/colour_uses.h"
#include "language/says.h"

namespace insetbook {
namespace {

bool only_one(FieldName of) {
  return of == FieldName::size || of == FieldName::shape || of == FieldName::role || of == FieldName::die ||
         of == FieldName::side || of == FieldName::count;
}

void each_colour(Node& node, const auto& change) {
  if (node.kind == Node::Kind::any)
    for (Node& child : node.children) each_colour(child, change);
  if (node.kind != Node::Kind::one) return;
  Constraint& constraint = node.constraint.front();
  if (auto* colour = std::get_if<ColourIs>(&constraint.says)) change(constraint, *colour);
}

// Techniques that bring a colour of their own.
bool prints(const Node& node) {
  if (node.kind != Node::Kind::one) return false;
  const auto* technique = std::get_if<TechniqueIs>(&node.constraint.front().says);
  if (!technique || technique->terms.empty()) return false;
  return std::ranges::any_of(
      std::initializer_list<std::string_view>{"stamp", "heat emboss", "print", "colour", "stencil"},
      [&](std::string_view part) { return technique->terms.front().find(part) != std::string::npos; });
}

// Of a size that is a bound: whether it is an upper one.
std::optional<bool> upper_bound_of(const Node& node) {
  if (node.kind != Node::Kind::one) return std::nullopt;
  const auto* size = std::get_if<SizeIs>(&node.constraint.front().says);
  if (!size || !size->one_figure) return std::nullopt;
  if (size->relation == Relation::under || size->relation == Relation::at_most) return true;
  if (size->relation == Relation::over || size->relation == Relation::at_least) return false;
  return std::nullopt;
}

// "cut with a die": a technique of the card or of any piece, or a piece that a die has cut.
Node pieces_apart(Node node) {
  if (node.kind != Node::Kind::any) return node;
  for (Node& child : node.children) {
    const bool said = child.kind == Node::Kind::one;
    const FieldName of = said ? field_of(child.constraint.front().says) : FieldName::text;
    if (of == FieldName::die || of == FieldName::role)
      child = with_child(Node::Kind::piece, Node(std::move(child)));
  }
  return node;
}

}  // namespace

bool is_property(FieldName of) {
  return of == FieldName::colour || of == FieldName::technique || of == FieldName::material ||
         of == FieldName::supply;
}

bool Binder::OpenPiece::has(FieldName of) const {
  return std::ranges::any_of(parts, [&](const Part& part) { return part.of == of && !part.excluded; });
}

bool Binder::OpenPiece::named() const {
  return has_head() || has(FieldName::size) || has(FieldName::die) || has(FieldName::count) ||
         std::ranges::any_of(parts, [](const Part& part) { return part.node.kind == Node::Kind::goes; });
}

void Binder::flush(Level& level) {
  if (level.piece) finish(level);
}

void Binder::finish(Level& level) {
  close_others(level);
  OpenPiece piece = std::move(*level.piece);
  level.piece.reset();
  if (level.excluding == Excluding::term || (piece.excluded && !level.joined_on))
    level.excluding = Excluding::no;
  Slot& slot = level.slots[piece.slot];
  slot.excluded = piece.excluded;
  if (piece.parts.empty()) return;
  const bool properties = std::ranges::all_of(piece.parts, [&](const Part& part) {
    return is_property(part.of) && part.of == piece.parts.front().of && !part.excluded && !part.same_piece;
  });
  if (properties && !piece.outright) {
    for (Part& part : piece.parts) {
      if (!part.also.empty())
        slot.nodes.push_back(choice(std::move(part.node), piece_of(parts_of(part.also))));
      else
        slot.nodes.push_back(pieces_apart(std::move(part.node)));
    }
    return;
  }
  Wanted wanted = this->wanted(std::move(piece), false);
  if (wanted.there && wanted.not_there) {
    std::vector<Node> both;
    both.push_back(std::move(*wanted.there));
    exclude(std::move(*wanted.not_there), both);
    slot.nodes.push_back(whole(std::move(both)));
  } else if (wanted.there) {
    slot.nodes.push_back(std::move(*wanted.there));
  } else {
    slot.nodes.push_back(std::move(*wanted.not_there));
    slot.excluded = !slot.excluded;
  }
}

// "exactly two circles" is two and no three, "at most two" no three. `other`: it is one that another goes
// with, which no plain word can be.
Binder::Wanted Binder::wanted(OpenPiece piece, bool other) const {
  if (piece.alternatives.empty()) tell_paper_from_ink(piece);
  if (piece.has(FieldName::count)) count_roles(piece);
  const bool alone = piece.parts.size() == 1;
  std::optional<Node> second = read_the_other_way(piece);
  const std::optional<int> at_most = piece.at_most;
  Node node = piece.laid                   ? treated_or_laid(std::move(piece))
              : piece.alternatives.empty() ? spread(piece_of(std::move(piece.parts)))
                                           : offered_piece(piece);
  if (second) node = choice(std::move(node), spread(std::move(*second)));
  if (piece.unsure && alone && !other)
    node =
        choice(std::move(node), one(constraint_of(text_, piece.unsure_span, text_of(piece.unsure_word), "")));
  Wanted wanted;
  if (at_most) {
    wanted.not_there = node;
    raise_count(*wanted.not_there, *at_most + 1);
  }
  if (!at_most || piece.exactly) wanted.there = std::move(node);
  return wanted;
}

Node Binder::piece_of(std::vector<Part> parts) {
  std::vector<Node> children;
  for (Part& part : parts) {
    if (part.excluded)
      exclude(std::move(part.node), children);
    else
      children.push_back(std::move(part.node));
  }
  return with_children(Node::Kind::piece, std::move(children));
}

// Whether the `or` is one between properties of the open piece, each of them behind its head: "white circle
// stamped in navy or speckled". What stands behind the head so far is one of them.
bool Binder::or_within_piece(Level& level) {
  if (!level.piece || level.with || level.excluding != Excluding::no || at_ >= items_.size()) return false;
  const Item& next = items_[at_];
  const bool property = says_of_piece(next) && is_property(next.of) && !next.field && !next.article;
  OpenPiece& piece = *level.piece;
  if (!property || head_ahead(items_, at_) || !piece.has_head() || piece.outright || piece.all_offered ||
      piece.link || piece.sample_between || piece.text_between)
    return false;
  const auto behind = piece.parts.begin() + static_cast<std::ptrdiff_t>(piece.offered_from());
  const bool properties = std::all_of(behind, piece.parts.end(), [](const Part& part) {
    return is_property(part.of) && !part.excluded && !part.field && part.also.empty();
  });
  if (behind == piece.parts.end() || !properties) return false;
  piece.alternatives.emplace_back(std::make_move_iterator(behind),
                                  std::make_move_iterator(piece.parts.end()));
  piece.parts.erase(behind, piece.parts.end());
  level.pending = Pending::nothing;
  return true;
}

// One piece or another, which have all up to the head in common, or all that stands outside of the bracket.
Node Binder::offered_piece(OpenPiece& piece) {
  std::vector<std::vector<Part>> offered = std::move(piece.alternatives);
  const auto from = static_cast<std::ptrdiff_t>(piece.offered_from());
  if (!piece.all_offered) {
    offered.emplace_back(piece.parts.begin() + from, piece.parts.end());
    piece.parts.erase(piece.parts.begin() + from, piece.parts.end());
  }
  std::vector<Node> pieces;
  for (std::vector<Part>& parts : offered) {
    OpenPiece each = piece;
    each.alternatives.clear();
    each.parts.insert(each.parts.begin() + from, parts.begin(), parts.end());
    tell_paper_from_ink(each);
    pieces.push_back(piece_of(std::move(each.parts)));
  }
  return with_children(Node::Kind::any, std::move(pieces));
}

// "snail on an arch": an arch with the snail on it as a print, or a snail that lies on an arch.
Node Binder::treated_or_laid(OpenPiece piece) {
  const auto other = piece.parts.begin() + static_cast<std::ptrdiff_t>(piece.laid->parts);
  std::vector<Part> above(piece.parts.begin(), other);
  std::vector<Node> below;
  below.push_back(spread(piece_of({other, piece.parts.end()})));
  Part lies;
  lies.of = FieldName::on;
  lies.node = going(piece.laid->link.how, std::move(below));
  above.push_back(std::move(lies));
  return choice(spread(piece_of(std::move(piece.parts))), spread(piece_of(std::move(above))));
}

// "navy stamping", "stamped navy": the plain colour that a printing technique brings, where another is said
// of the paper. What stands before a shape or a role is of that: "navy stamped white circle".
void Binder::tell_ink_by_its_technique(OpenPiece& piece) {
  std::vector<Part>& parts = piece.parts;
  const auto plain = [&](std::size_t i) {
    bool either =
        i < parts.size() && parts[i].of == FieldName::colour && !parts[i].excluded && !parts[i].field;
    if (either)
      each_colour(parts[i].node, [&](Constraint&, const ColourIs& colour) {
        either = either && colour.use == ColourUse::either && !colour.said.starts_with("like ");
      });
    return either;
  };
  std::size_t colours = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) colours += plain(i) ? 1 : 0;
  if (colours < 2) return;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto* technique = parts[i].node.kind == Node::Kind::one
                                ? std::get_if<TechniqueIs>(&parts[i].node.constraint.front().says)
                                : nullptr;
    if (!technique || !brings_ink(*technique)) continue;
    const auto use_ink = [&](std::size_t colour) {
      each_colour(parts[colour].node, [](Constraint& constraint, ColourIs& said) {
        said.use = ColourUse::ink;
        constraint.means = in_words(constraint.says);
      });
    };
    std::size_t last = i + 1;
    while (plain(last)) ++last;
    // The last of them is of the shape behind it.
    if (last < parts.size() && parts[last].head && last > i + 1) --last;
    for (std::size_t behind = i + 1; behind < last; ++behind) use_ink(behind);
    const bool before = last == i + 1 && i > 0 && plain(i - 1) && prints(parts[i].node);
    if (before) use_ink(i - 1);
    if (before || last > i + 1) return;
  }
}

// "white circle stamped in navy": where an ink was said, a plain colour is the paper's. So it is of a piece
// that has a shape and one colour, "navy circle", unless a technique was said that brings a colour of its
// own.
void Binder::tell_paper_from_ink(OpenPiece& piece) {
  if (piece.outright) return;
  tell_ink_by_its_technique(piece);
  bool ink = false;
  for (Part& part : piece.parts)
    if (!part.excluded)
      each_colour(part.node,
                  [&](Constraint&, const ColourIs& colour) { ink = ink || colour.use == ColourUse::ink; });
  const auto colours = std::ranges::count_if(
      piece.parts, [](const Part& part) { return part.of == FieldName::colour && !part.excluded; });
  const bool printed = std::ranges::any_of(piece.parts, [](const Part& part) { return prints(part.node); }) ||
                       piece.has(FieldName::role);
  if (!ink && (!piece.has(FieldName::shape) || printed || colours > 1)) return;
  for (Part& part : piece.parts) {
    if (part.field) continue;
    each_colour(part.node, [](Constraint& constraint, ColourIs& colour) {
      if (colour.use != ColourUse::either || colour.said.starts_with("like ")) return;
      colour.use = ColourUse::paper;
      constraint.means = in_words(constraint.says);
    });
  }
}

// Whether the item begins another piece than the one that is open.
bool Binder::begins_piece(const Level& level, std::size_t place) const {
  const Item& item = items_[place];
  if (!level.piece) return true;
  const OpenPiece& piece = *level.piece;
  // What is excluded of the piece: "a 60 mm circle, not 2-3/8 in".
  if (piece.outright || level.in_piece) return false;
  if (only_one(item.of) && piece.has(item.of) && !lies_besides(piece, item))
    return !other_bound(level, place);
  if (level.pending == Pending::nothing) return item.field && (piece.sample_between || piece.text_between);
  if (item.by) return false;
  if (head_ahead(items_, place)) return !joins_like_words(level, place);
  if (item.of == FieldName::size) return !piece.has_head();
  if (level.pending == Pending::goes) return false;
  // "more than five pieces, speckled": of the card or any piece of it.
  if (piece.parts.size() == 1 && piece.has(FieldName::count)) return true;
  // "circle and a ribbon": a ribbon is a piece as well as a material.
  if (!item.also.empty() && piece.has_head()) return true;
  return !piece.named() || piece.sample_between;
}

// "tidepool rectangles 3 in tidepool rectangles 2": cut by one die, and lying in the line of another.
bool Binder::lies_besides(const OpenPiece& piece, const Item& item) {
  if (item.of != FieldName::die || !item.by || item.offered.size() != 1) return false;
  const auto* die = std::get_if<DieIs>(&item.offered.front().says);
  return die && die->lies_in && std::ranges::all_of(piece.parts, [](const Part& part) {
           if (part.of != FieldName::die) return true;
           const auto* cut_by = part.node.kind == Node::Kind::one
                                    ? std::get_if<DieIs>(&part.node.constraint.front().says)
                                    : nullptr;
           return cut_by && !cut_by->lies_in;
         });
}

// "over 2 in and under 3 in": the other bound of the same piece.
bool Binder::other_bound(const Level& level, std::size_t place) const {
  const Item& item = items_[place];
  const OpenPiece& piece = *level.piece;
  if (item.of != FieldName::size || item.offered.size() != 1 || level.or_before || item.article) return false;
  if (piece.has_head() && head_ahead(items_, place)) return false;
  std::vector<Constraint> said = item.offered;
  const auto bound = upper_bound_of(one(std::move(said.front())));
  return bound && std::ranges::all_of(piece.parts, [&](const Part& part) {
           return part.of != FieldName::size || upper_bound_of(part.node) == !*bound;
         });
}

void Binder::start(Level& level) {
  flush(level);
  level.piece = OpenPiece();
  level.piece->slot = new_slot(level);
  level.piece->excluded = level.excluding != Excluding::no;
  level.excluded_something = level.piece->excluded;
  level.joined_on = false;
}

void Binder::add_part(Level& level, Item& item) {
  OpenPiece& piece = *level.piece;
  Part part;
  part.of = item.of;
  part.head = is_head(item);
  part.field = item.field;
  part.excluded = level.in_piece;
  part.same_piece = item.same_piece;
  if (part.head && !part.excluded && !piece.has_head()) piece.head_at = piece.parts.size();
  if (item.unsure) {
    piece.unsure = true;
    piece.unsure_word = item.word;
    piece.unsure_span = item.span;
  }
  part.also = std::move(item.also);
  part.node = offered(std::move(item.offered));
  piece.parts.push_back(std::move(part));
  level.pending = Pending::nothing;
}

// "a sage and navy circle": the words before the shape are of one kind, and no article begins another
// piece.
bool Binder::joins_like_words(const Level& level, std::size_t place) const {
  const Item& item = items_[place];
  return level.and_before && !item.article && is_property(item.of) && !level.piece->named() &&
         std::ranges::all_of(level.piece->parts, [&](const Part& part) { return part.of == item.of; });
}

void Binder::piece_item(Level& level, std::size_t place) {
  Item& item = items_[place];
  if (level.in_piece && (is_head(item) || !level.piece)) level.in_piece = false;
  if (level.excluding != Excluding::no && level.excluded_something && !level.piece && !level.joined_on)
    end_exclusion(level);
  if (said_again(level, item)) return;
  // "circle on a square, high of centre": the circle is.
  if (item.of == FieldName::at && !level.going && level.piece && level.piece->link) close_others(level);
  if (level.pending == Pending::goes && level.going) {
    start_other(level);
  } else if (begins_piece(level, place)) {
    std::vector<Part> taken = taken_from_before(level, place);
    start(level);
    for (Part& part : taken) level.piece->parts.push_back(std::move(part));
  }
  const bool head = is_head(item);
  const bool field = item.field;
  add_part(level, item);
  if (level.excluding == Excluding::term && ends_term(head, field)) {
    flush(level);
    end_exclusion(level);
  }
}

// "sentiment saying …": two words for the same role side by side.
bool Binder::said_again(const Level& level, const Item& item) {
  if (item.of != FieldName::role || item.field || !level.piece || level.pending != Pending::nothing ||
      level.piece->outright || level.piece->parts.empty() || item.offered.size() != 1)
    return false;
  const Part& last = level.piece->parts.back();
  if (last.of != FieldName::role || last.excluded || last.node.kind != Node::Kind::one) return false;
  return std::get<RoleIs>(last.node.constraint.front().says).terms ==
         std::get<RoleIs>(item.offered.front().says).terms;
}

bool Binder::ends_term(bool head, bool field) const {
  return head || field || at_ >= items_.size() || !says_of_piece(items_[at_]) || items_[at_].field;
}

// Of two shapes side by side: what stood behind the first goes to the second, unless the shapes come first
// in the way this person writes ("circle 2 in square 3 in").
std::vector<Binder::Part> Binder::taken_from_before(Level& level, std::size_t place) {
  std::vector<Part> taken;
  const Item& item = items_[place];
  if (!level.piece || level.piece->outright || level.pending != Pending::nothing || !is_head(item))
    return taken;
  OpenPiece& piece = *level.piece;
  if (!piece.has_head() || !piece.has(item.of)) return taken;
  const bool head_first = piece.head_at == 0;
  const bool follows =
      at_ < items_.size() && says_of_piece(items_[at_]) && !is_head(items_[at_]) && !items_[at_].field;
  if ((head_first && follows) || item.field) return taken;
  while (piece.parts.size() > piece.head_at + 1 && !piece.parts.back().head && !piece.parts.back().excluded) {
    taken.insert(taken.begin(), std::move(piece.parts.back()));
    piece.parts.pop_back();
  }
  return taken;
}

std::vector<Binder::Part> Binder::parts_of(const std::vector<Constraint>& said) {
  std::vector<Part> parts;
  for (const Constraint& each : said) {
    Part part;
    part.of = field_of(each.says);
    part.node = one(each);
    parts.push_back(std::move(part));
  }
  return parts;
}

// "two ribbons": what is counted is pieces, not what they are made of.
void Binder::count_roles(OpenPiece& piece) {
  for (Part& part : piece.parts) {
    const bool material = part.of == FieldName::material && part.also.size() == 1;
    if (part.excluded || (!material && part.of != FieldName::role)) continue;
    if (material) part = parts_of(part.also).front();
    if (part.also.size() == 1) part.also.clear();
  }
}

// "sage ribbon": a piece of ribbon, or one whose role is ribbon. Beside a shape or a role a material stays
// one.
std::optional<Node> Binder::read_the_other_way(const OpenPiece& piece) {
  if (piece.outright) return std::nullopt;
  const auto both = std::ranges::find_if(
      piece.parts, [](const Part& part) { return !part.also.empty() && !part.excluded; });
  if (both == piece.parts.end() || (both->of == FieldName::material && piece.has_head())) return std::nullopt;
  std::vector<Part> read = parts_of(both->also);
  const FieldName other = both->also.size() == 1 ? field_of(both->also.front().says) : FieldName::role;
  // "circle ring": the circle has its shape.
  if (other == FieldName::shape && piece.has(FieldName::shape)) return std::nullopt;
  const bool material = other == FieldName::material;
  if (piece.parts.size() == 1 && material) return read.front().node;  // alone: any piece's
  const auto place = both - piece.parts.begin();
  std::vector<Part> parts(piece.parts.begin(), both);
  std::ranges::move(read, std::back_inserter(parts));
  parts.insert(parts.end(), piece.parts.begin() + place + 1, piece.parts.end());
  return piece_of(std::move(parts));
}

}  // namespace insetbook
