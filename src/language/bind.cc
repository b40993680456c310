// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/bind.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "language/says.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr int deepest = 50;
constexpr std::size_t none_yet = static_cast<std::size_t>(-1);

Node one(Constraint constraint) {
  Node node;
  node.kind = Node::Kind::one;
  node.constraint.push_back(std::move(constraint));
  if (Constraint& only = node.constraint.front(); only.means.empty()) only.means = in_words(only.says);
  return node;
}

Node with_children(Node::Kind kind, std::vector<Node> children) {
  Node node;
  node.kind = kind;
  node.children = std::move(children);
  return node;
}

// One constraint, or those bound by "or".
Node offered(std::vector<Constraint> constraints) {
  if (constraints.size() == 1) return one(std::move(constraints.front()));
  std::vector<Node> children;
  for (Constraint& each : constraints) children.push_back(one(std::move(each)));
  return with_children(Node::Kind::any, std::move(children));
}

// "none of a or b" forbids each.
void exclude(Node node, std::vector<Node>& out) {
  if (node.kind == Node::Kind::any) {
    for (Node& child : node.children) exclude(std::move(child), out);
    return;
  }
  std::vector<Node> child;
  child.push_back(std::move(node));
  out.push_back(with_children(Node::Kind::none, std::move(child)));
}

// Brackets that group nothing fall away: `all` within `all`, `any` within `any`, either around one.
void tidy(Node& node) {
  std::vector<Node> children;
  for (Node& child : node.children) {
    tidy(child);
    const auto groups = [](const Node& each) {
      return each.kind == Node::Kind::all || each.kind == Node::Kind::any;
    };
    while (groups(child) && child.children.size() == 1) {
      Node inner = std::move(child.children.front());
      child = std::move(inner);
    }
    if (groups(child) && child.kind == node.kind)
      for (Node& inner : child.children) children.push_back(std::move(inner));
    else if (!groups(child) || !child.children.empty())
      children.push_back(std::move(child));
  }
  node.children = std::move(children);
}

// A piece while it is being read.
struct Part {
  Node node;
  std::optional<Constraint> also;  // the same word as a role, or as a material
  FieldName of = FieldName::text;
  bool head = false;
  bool excluded = false;
};

struct OpenPiece {
  std::vector<Part> parts;
  std::size_t slot = none_yet;
  std::size_t head_at = none_yet;  // of the first head among the parts
  bool sample_between = false;     // something was said of the sample since it began
  bool text_between = false;       // free words stood between
  bool excluded = false;           // the whole piece is
  bool outright = false;           // with:( … )
  bool unsure = false;
  std::optional<int> at_most;  // count
  bool exactly = false;        // count: no more than at_most and no fewer
  std::string unsure_word;
  Span unsure_span;

  bool has(FieldName of) const {
    return std::ranges::any_of(parts, [&](const Part& part) { return part.of == of && !part.excluded; });
  }
  bool has_head() const { return head_at != none_yet; }
  // Whether a piece is named: else its parts are any piece's.
  bool named() const {
    return has_head() || has(FieldName::size) || has(FieldName::die) || has(FieldName::count);
  }
};

bool only_one(FieldName of) {
  return of == FieldName::size || of == FieldName::shape || of == FieldName::role || of == FieldName::die ||
         of == FieldName::side || of == FieldName::count;
}

// Bare properties: alone they may be any piece's or the sample's.
bool is_property(FieldName of) {
  return of == FieldName::colour || of == FieldName::technique || of == FieldName::material ||
         of == FieldName::supply;
}

class Binder {
 public:
  Binder(std::string_view text, Itemised& itemised)
      : text_(text), itemised_(itemised), items_(itemised.items) {}

  Result<Node> run() {
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

 private:
  enum class Pending { nothing, joins, comma, goes };
  enum class Excluding { no, term, phrase };

  struct Slot {
    std::vector<Node> nodes;
    bool excluded = false;
    bool or_before = false;
  };

  // What one bracket holds.
  struct Level {
    std::vector<Slot> slots;
    std::optional<OpenPiece> piece;
    Pending pending = Pending::nothing;
    bool and_before = false;
    bool or_before = false;
    Excluding excluding = Excluding::no;
    bool excluded_something = false;  // since the word of negation
    bool joined_on = false;           // "and" or "or" stood behind what was excluded
    bool in_piece = false;            // the exclusion is of the piece that is open
    std::size_t list_end = none_yet;  // the "or" at which a comma list of exclusions ends
    bool with = false;                // with:( … ): one piece, outright
  };

  Result<std::vector<Node>> level(int depth, bool with) {
    Level level;
    level.with = with;
    if (with) {
      level.piece.emplace();
      level.piece->outright = true;
      level.piece->slot = new_slot(level);
    }
    while (at_ < items_.size() && items_[at_].kind != Item::Kind::closes) {
      const std::size_t place = at_++;
      Item& item = items_[place];
      switch (item.kind) {
        case Item::Kind::opens: {
          if (Result<void> read = bracket(level, item, depth, false); !read) return failure(read.error());
          break;
        }
        case Item::Kind::group: {
          if (at_ < items_.size() && items_[at_].kind == Item::Kind::opens) ++at_;
          if (Result<void> read = bracket(level, item, depth, true); !read) return failure(read.error());
          break;
        }
        default:
          take(level, place);
      }
    }
    flush(level);
    return flatten(level);
  }

  void take(Level& level, std::size_t place) {
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
      case Item::Kind::preposition:
        note_going_together(item);
        level.pending = Pending::goes;
        level.and_before = false;
        return;
      case Item::Kind::card:
        return card(level);
      case Item::Kind::tall:
      case Item::Kind::wide:
        return way_round(level, place);
      case Item::Kind::number:
        return number(level, place);
      case Item::Kind::opens:
      case Item::Kind::group:
      case Item::Kind::closes:
        return;
    }
  }

  // --- slots ---

  std::size_t new_slot(Level& level) {
    level.slots.push_back({});
    level.slots.back().or_before = std::exchange(level.or_before, false);
    return level.slots.size() - 1;
  }

  void add_node(Level& level, Node node, bool excluded) {
    const std::size_t slot = new_slot(level);
    level.slots[slot].nodes.push_back(std::move(node));
    level.slots[slot].excluded = excluded;
  }

  std::vector<Node> flatten(Level& level) {
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

  static Node whole(std::vector<Node> nodes) {
    if (nodes.size() == 1) return std::move(nodes.front());
    return with_children(Node::Kind::all, std::move(nodes));
  }

  static Node choice(Node left, Node right) {
    std::vector<Node> children;
    const auto add = [&](Node node) {
      if (node.kind == Node::Kind::any)
        for (Node& child : node.children) children.push_back(std::move(child));
      else
        children.push_back(std::move(node));
    };
    add(std::move(left));
    add(std::move(right));
    return with_children(Node::Kind::any, std::move(children));
  }

  // --- a piece ---

  void flush(Level& level) {
    if (!level.piece || level.with) {
      if (level.with && level.piece) finish(level);
      return;
    }
    finish(level);
  }

  void finish(Level& level) {
    OpenPiece piece = std::move(*level.piece);
    level.piece.reset();
    if (level.excluding == Excluding::term || (piece.excluded && !level.joined_on))
      level.excluding = Excluding::no;
    Slot& slot = level.slots[piece.slot];
    slot.excluded = piece.excluded;
    if (piece.parts.empty()) return;
    const bool properties = std::ranges::all_of(piece.parts, [&](const Part& part) {
      return is_property(part.of) && part.of == piece.parts.front().of && !part.excluded;
    });
    if (properties && !piece.outright) {
      for (Part& part : piece.parts) {
        std::vector<Node> as_role;
        if (part.also) as_role.push_back(one(std::move(*part.also)));
        if (as_role.empty())
          slot.nodes.push_back(std::move(part.node));
        else
          slot.nodes.push_back(
              choice(std::move(part.node), with_children(Node::Kind::piece, std::move(as_role))));
      }
      return;
    }
    tell_paper_from_ink(piece);
    const bool alone = piece.parts.size() == 1;
    std::optional<Node> second = read_the_other_way(piece);
    Node node = piece_of(std::move(piece.parts));
    if (second) node = choice(std::move(node), std::move(*second));
    if (piece.unsure && alone)
      node = choice(std::move(node),
                    one(constraint_of(text_, piece.unsure_span, WordsAre{{piece.unsure_word}, false}, "")));
    slot.nodes.push_back(std::move(node));
    if (piece.exactly && piece.at_most)
      forbid_others(slot, *piece.at_most);
    else if (piece.at_most)
      forbid_more(slot, *piece.at_most);
  }

  static Node piece_of(std::vector<Part> parts) {
    std::vector<Node> children;
    for (Part& part : parts) {
      if (part.excluded)
        exclude(std::move(part.node), children);
      else
        children.push_back(std::move(part.node));
    }
    return with_children(Node::Kind::piece, std::move(children));
  }

  // "sage ribbon": a piece of ribbon, or one whose role is ribbon. Beside a shape or a role a material stays
  // one.
  static std::optional<Node> read_the_other_way(const OpenPiece& piece) {
    if (piece.outright) return std::nullopt;
    const auto both = std::ranges::find_if(
        piece.parts, [](const Part& part) { return part.also.has_value() && !part.excluded; });
    if (both == piece.parts.end() || (both->of == FieldName::material && piece.has_head()))
      return std::nullopt;
    std::vector<Part> parts = piece.parts;
    Part& read = parts[static_cast<std::size_t>(both - piece.parts.begin())];
    read.node = one(*both->also);
    if (parts.size() == 1 && both->of == FieldName::role) return read.node;  // a material alone: any piece's
    return piece_of(std::move(parts));
  }

  static void raise_count(Node& node, int least) {
    for (Node& child : node.children) {
      raise_count(child, least);
      if (child.kind != Node::Kind::one) continue;
      if (auto* count = std::get_if<CountIs>(&child.constraint.front().says)) {
        count->least = least;
        child.constraint.front().means = in_words(child.constraint.front().says);
      }
    }
  }

  // "at most two circles": no three.
  static void forbid_more(Slot& slot, int at_most) {
    raise_count(slot.nodes.back(), at_most + 1);
    slot.excluded = !slot.excluded;
  }

  // "exactly two circles": two, and no three.
  static void forbid_others(Slot& slot, int count) {
    std::vector<Node> both;
    both.push_back(slot.nodes.back());
    Node more = slot.nodes.back();
    raise_count(more, count + 1);
    exclude(std::move(more), both);
    slot.nodes.back() = with_children(Node::Kind::all, std::move(both));
  }

  // "white circle stamped in navy": where an ink was said, a plain colour is the paper's.
  static void tell_paper_from_ink(OpenPiece& piece) {
    const auto colour_in = [](Node& node) { return std::get_if<ColourIs>(&node.constraint.front().says); };
    bool ink = false;
    for (Part& part : piece.parts)
      if (part.node.kind == Node::Kind::one)
        if (const auto* colour = colour_in(part.node))
          ink = ink || (colour->use == ColourUse::ink && !part.excluded);
    if (!ink || piece.outright) return;
    for (Part& part : piece.parts)
      if (part.node.kind == Node::Kind::one)
        if (auto* colour = colour_in(part.node); colour && colour->use == ColourUse::either) {
          colour->use = ColourUse::paper;
          part.node.constraint.front().means = in_words(part.node.constraint.front().says);
        }
  }

  void start(Level& level) {
    flush(level);
    level.piece.emplace();
    level.piece->slot = new_slot(level);
    level.piece->excluded = level.excluding != Excluding::no;
    level.excluded_something = level.piece->excluded;
    level.joined_on = false;
  }

  void add_part(Level& level, Item& item) {
    OpenPiece& piece = *level.piece;
    Part part;
    part.of = item.of;
    part.head = is_head(item);
    part.excluded = level.in_piece;
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

  // Whether the item begins another piece than the one that is open.
  bool begins_piece(const Level& level, std::size_t place) const {
    const Item& item = items_[place];
    if (!level.piece) return true;
    const OpenPiece& piece = *level.piece;
    if (piece.outright) return false;
    if (only_one(item.of) && piece.has(item.of)) return true;
    if (level.pending == Pending::nothing) return item.field && (piece.sample_between || piece.text_between);
    if (item.by) return false;
    if (head_ahead(items_, place)) return !joins_like_words(level, place);
    if (item.of == FieldName::size) return !piece.has_head();
    if (level.pending == Pending::goes) return false;
    return !piece.named() || piece.sample_between;
  }

  // "a sage and navy circle": the words before the shape are of one kind, and no article begins another
  // piece.
  bool joins_like_words(const Level& level, std::size_t place) const {
    const Item& item = items_[place];
    return level.and_before && !item.article && is_property(item.of) && !level.piece->named() &&
           std::ranges::all_of(level.piece->parts, [&](const Part& part) { return part.of == item.of; });
  }

  void piece_item(Level& level, std::size_t place) {
    Item& item = items_[place];
    if (level.in_piece && (is_head(item) || !level.piece)) level.in_piece = false;
    if (level.excluding != Excluding::no && level.excluded_something && !level.piece && !level.joined_on)
      end_exclusion(level);
    if (said_again(level, item)) return;
    if (begins_piece(level, place)) {
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
  static bool said_again(const Level& level, const Item& item) {
    if (item.of != FieldName::role || item.field || !level.piece || level.pending != Pending::nothing ||
        level.piece->outright || level.piece->parts.empty() || item.offered.size() != 1)
      return false;
    const Part& last = level.piece->parts.back();
    if (last.of != FieldName::role || last.excluded || last.node.kind != Node::Kind::one) return false;
    return std::get<RoleIs>(last.node.constraint.front().says).terms ==
           std::get<RoleIs>(item.offered.front().says).terms;
  }

  bool ends_term(bool head, bool field) const {
    return head || field || at_ >= items_.size() || !says_of_piece(items_[at_]) || items_[at_].field;
  }

  // Of two shapes side by side: what stood behind the first goes to the second, unless the shapes come first
  // in the way this person writes ("circle 2 in square 3 in").
  std::vector<Part> taken_from_before(Level& level, std::size_t place) {
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
    while (piece.parts.size() > piece.head_at + 1 && !piece.parts.back().head &&
           !piece.parts.back().excluded) {
      taken.insert(taken.begin(), std::move(piece.parts.back()));
      piece.parts.pop_back();
    }
    return taken;
  }

  // --- connectors ---

  void joins(Level& level, const Item& item) {
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
      flush(level);
      end_exclusion(level);
    }
    level.in_piece = false;
    level.pending = Pending::joins;
    level.and_before = is_and && item.word == "and";
  }

  void comma(Level& level, std::size_t place) {
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

  void go_on_excluding(Level& level) {
    if (level.in_piece) return;
    level.joined_on = true;
    flush(level);
    level.excluding = Excluding::phrase;
  }

  // "no glitter, ribbon or vellum": the "or" (or an item that "or" has bound) at which the list ends.
  std::size_t list_end(std::size_t place) const {
    for (std::size_t i = place + 1; i < items_.size(); ++i) {
      const Item& item = items_[i];
      if (item.kind == Item::Kind::either) return i;
      if (item.kind == Item::Kind::says && item.offered.size() > 1) return i + 1;
      if (item.kind != Item::Kind::says && item.kind != Item::Kind::comma) return none_yet;
      if (item.article) return none_yet;
    }
    return none_yet;
  }

  void either(Level& level, std::size_t place) {
    if (level.excluding == Excluding::phrase) return go_on_excluding(level);
    flush(level);
    end_exclusion(level);
    const bool before = !level.slots.empty() && !level.with;
    const bool after = place + 1 < items_.size() && items_[place + 1].kind != Item::Kind::closes;
    if (!before || !after) return ignore(items_[place], "there is nothing to choose between");
    level.or_before = true;
    level.pending = Pending::nothing;
  }

  void end_exclusion(Level& level) {
    level.excluding = Excluding::no;
    level.excluded_something = false;
    level.joined_on = false;
    level.in_piece = false;
    level.list_end = none_yet;
  }

  void excludes(Level& level, std::size_t place) {
    const Item& item = items_[place];
    if (at_ >= items_.size() || items_[at_].kind == Item::Kind::closes)
      return ignore(item, "nothing follows that could be excluded");
    const Item& next = items_[at_];
    const bool bare = says_of_piece(next) && (is_property(next.of) || next.of == FieldName::size) &&
                      !head_ahead(items_, at_);
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

  // with:(… -technique:speckling …): the one field behind the minus sign.
  void exclude_next_of_piece(Level& level) {
    if (at_ < items_.size() && says_of_piece(items_[at_]) && level.piece) {
      add_part(level, items_[at_]);
      ++at_;
    }
    level.in_piece = false;
  }

  void note_going_together(const Item& item) {
    ignore(item, "both pieces are looked for; how they go together is not");
  }

  // --- what is said of the sample ---

  void sample_item(Level& level, Item& item) {
    if (level.excluding != Excluding::no && level.excluded_something && !level.joined_on) {
      flush(level);
      end_exclusion(level);
    }
    if (level.in_piece) end_exclusion(level);
    if (!level.with && (level.pending != Pending::nothing || item.field || level.or_before ||
                        level.excluding != Excluding::no))
      flush_keeping_exclusion(level);
    else if (level.piece)
      level.piece->sample_between = true;
    add_node(level, offered(std::move(item.offered)), level.excluding != Excluding::no);
    after_excluded_unit(level);
    level.pending = Pending::nothing;
  }

  void flush_keeping_exclusion(Level& level) {
    const Excluding excluding = level.excluding;
    flush(level);
    level.excluding = excluding;
  }

  void after_excluded_unit(Level& level) {
    if (level.excluding == Excluding::no) return;
    level.excluded_something = true;
    level.joined_on = false;
    if (level.excluding == Excluding::term) end_exclusion(level);
  }

  // Words understood as nothing. Side by side they are excluded together.
  void text_item(Level& level, std::size_t place) {
    if (level.excluding != Excluding::no && level.excluded_something && !level.joined_on) {
      flush(level);
      end_exclusion(level);
    }
    if (level.in_piece) end_exclusion(level);
    if (level.excluding != Excluding::no) flush_keeping_exclusion(level);
    std::vector<Node> nodes;
    nodes.push_back(offered(std::move(items_[place].offered)));
    if (level.excluding == Excluding::phrase)
      while (at_ < items_.size() && items_[at_].kind == Item::Kind::says &&
             items_[at_].of == FieldName::text && !items_[at_].field)
        nodes.push_back(offered(std::move(items_[at_++].offered)));
    if (level.or_before) flush(level);
    if (level.piece) level.piece->text_between = true;
    add_node(level, whole(std::move(nodes)), level.excluding != Excluding::no);
    after_excluded_unit(level);
  }

  // --- brackets ---

  Result<void> bracket(Level& level, const Item& item, int depth, bool with) {
    if (depth + 1 > deepest)
      return failure(
          problem_at(text_, item.span, "brackets stand in more than 50 brackets", "fewer brackets"));
    const bool in_with = level.with;
    if (!in_with) flush_keeping_exclusion(level);
    const bool excluded = level.excluding != Excluding::no || level.in_piece;
    auto inside = this->level(depth + 1, with);
    if (!inside) return failure(inside.error());
    if (at_ < items_.size()) ++at_;  // the closing bracket
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

  bool or_follows() const { return at_ < items_.size() && items_[at_].kind == Item::Kind::either; }

  // --- the card ---

  static bool is_square(const Part& part) {
    const auto* shape = part.node.kind == Node::Kind::one
                            ? std::get_if<ShapeIs>(&part.node.constraint.front().says)
                            : nullptr;
    return shape && !shape->terms.empty() && shape->terms.front() == "square";
  }

  void card(Level& level) {
    if (level.piece && !level.with && level.pending == Pending::nothing && close_piece(level)) return;
    // "card 5 x 7", "cards that are 5 x 7"
    if (at_ < items_.size() && items_[at_].kind == Item::Kind::says && items_[at_].of == FieldName::size &&
        !items_[at_].field && !head_ahead(items_, at_) && !level.with) {
      std::vector<Constraint> sizes = std::move(items_[at_++].offered);
      const bool two = std::ranges::none_of(
          sizes, [](const Constraint& c) { return std::get<SizeIs>(c.says).one_figure; });
      if (!two) {
        --at_;
        items_[at_].offered = std::move(sizes);
        return;
      }
      add_closed(level, closed_sizes(std::move(sizes), false));
    }
  }

  // Whether what was said of the piece before "card" was said of the card.
  bool close_piece(Level& level) {
    OpenPiece& piece = *level.piece;
    if (piece.has(FieldName::role) || piece.has(FieldName::die) || piece.has(FieldName::count)) return false;
    const auto shape = std::ranges::find(piece.parts, FieldName::shape, &Part::of);
    const auto size = std::ranges::find(piece.parts, FieldName::size, &Part::of);
    const bool square = shape != piece.parts.end() && is_square(*shape);
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

  static void remove(OpenPiece& piece, FieldName of) {
    std::erase_if(piece.parts, [&](const Part& part) { return part.of == of; });
    const auto head = std::ranges::find(piece.parts, true, &Part::head);
    piece.head_at =
        head == piece.parts.end() ? none_yet : static_cast<std::size_t>(head - piece.parts.begin());
  }

  static std::vector<Constraint> closed_sizes(std::vector<Constraint> sizes, bool square) {
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

  void add_closed(Level& level, std::vector<Constraint> closed) {
    const bool excluded = level.excluding != Excluding::no || (level.piece && level.piece->excluded);
    if (level.piece && level.piece->parts.empty()) {
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
  void way_round(Level& level, std::size_t place) {
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

  static void place_size(SizeIs& size, bool tall) {
    if (size.one_figure) return;
    if ((tall && size.low > size.second) || (!tall && size.low < size.second))
      std::swap(size.low, size.second);
    size.placed = true;
  }

  // --- numbers ---

  void number(Level& level, std::size_t place) {
    Item& item = items_[place];
    const std::size_t head = head_after(place);
    const bool x = fold(std::string_view(item.word)).ends_with("x");
    if (head != none_yet && item.whole &&
        (x || is_plural(items_[head]) || (item.exactly && item.number == 1)))
      return count(level, place);
    const bool related =
        !item.offered.empty() && std::get<SizeIs>(item.offered.front().says).relation != Relation::exact;
    const bool beside_head = (head == place + 1) ||
                             (level.piece && level.piece->has_head() && !level.piece->has(FieldName::size) &&
                              level.pending == Pending::nothing && level.piece->parts.back().head);
    if (!item.offered.empty() && (related || beside_head || !item.whole)) {
      item.kind = Item::Kind::says;
      item.of = FieldName::size;
      const SizeIs& size = std::get<SizeIs>(item.offered.front().says);
      itemised_.notes.push_back("\"" + std::string(typed(item.span)) + "\" is read as " +
                                write(size.low, size.unit));
      return piece_item(level, place);
    }
    if (item.word == "one" || item.number == 1) return ignore(item, "filler");
    item.kind = Item::Kind::says;
    item.of = FieldName::text;
    item.offered.clear();
    item.offered.push_back(constraint_of(text_, item.span, WordsAre{{fold(typed(item.span))}, false}, ""));
    text_item(level, place);
  }

  std::string_view typed(Span span) const { return text_.substr(span.begin, span.end - span.begin); }

  // The shape or role that the phrase of a number turns on, a few items ahead.
  std::size_t head_after(std::size_t place) const {
    for (std::size_t i = place + 1; i < std::min(place + 8, items_.size()); ++i) {
      if (is_head(items_[i])) return i;
      if (!says_of_piece(items_[i])) return none_yet;
    }
    return none_yet;
  }

  static bool is_plural(const Item& head) {
    const std::string& text = head.offered.back().text;
    return text.size() > 2 && text.back() == 's' && text[text.size() - 2] != 's';
  }

  void count(Level& level, std::size_t place) {
    Item& item = items_[place];
    Relation relation = Relation::exact;
    if (!item.offered.empty()) relation = std::get<SizeIs>(item.offered.front().says).relation;
    int least = item.number;
    std::optional<int> at_most;
    if (item.exactly) at_most = least;
    const bool exactly = item.exactly;
    if (relation == Relation::over) ++least;
    if (relation == Relation::at_most) at_most = least;
    if (relation == Relation::under) at_most = least - 1;
    item.kind = Item::Kind::says;
    item.of = FieldName::count;
    item.offered.clear();
    item.offered.push_back(constraint_of(text_, item.span, CountIs{least}, ""));
    if (!level.with) start(level);
    level.pending = Pending::nothing;
    add_part(level, item);
    if (at_most) level.piece->at_most = at_most;
    level.piece->exactly = exactly;
  }

  void ignore(const Item& item, std::string why) {
    itemised_.ignored.push_back({std::string(typed(item.span)), std::move(why), item.span});
  }

  std::string_view text_;
  Itemised& itemised_;
  std::vector<Item>& items_;
  std::size_t at_ = 0;
};

}  // namespace

Result<Node> bind(std::string_view text, Itemised& itemised) {
  Result<Node> tree = Binder(text, itemised).run();
  std::ranges::stable_sort(itemised.ignored, {}, [](const Ignored& each) { return each.span.begin; });
  return tree;
}

}  // namespace insetbook
