// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/normal_form.h"

#include <algorithm>

#include "search/size_rules.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

bool is_words(const Node& node) {
  return node.kind == Kind::one && std::holds_alternative<WordsAre>(node.constraint.front().says);
}

bool is_count(const Node& node) {
  return node.kind == Kind::one && std::holds_alternative<CountIs>(node.constraint.front().says);
}

// "cards with more than five pieces"
bool counts_all_pieces(const Node& node) {
  return node.kind == Kind::piece && !node.children.empty() && std::ranges::all_of(node.children, is_count);
}

int wanted(const Node& piece) {
  int most = 1;
  for (const Node& child : piece.children) {
    if (child.kind != Kind::one) continue;
    if (const auto* count = std::get_if<CountIs>(&child.constraint.front().says)) {
      most = std::max(most, count->least);
    }
  }
  return most;
}

Node within_piece(const Node& node);
Node piece_of(const Node& node);

// What is a constraint by itself as the only child of an `all`.
Node of_one(const Node& node) {
  if (node.kind == Kind::piece || node.kind == Kind::all) return node;
  Node all;
  all.children.push_back(node);
  return all;
}

void append_flat(std::vector<Node>& out, const Node& child) {
  Node each = within_piece(child);
  if (each.kind == Kind::all || each.kind == Kind::piece) {
    for (Node& inner : each.children) out.push_back(std::move(inner));
  } else {
    out.push_back(std::move(each));
  }
}

// The other piece: one, or several offered with "or".
Node other_piece(const Node& node) {
  if (node.kind != Kind::any) return piece_of(of_one(node));
  Node any;
  any.kind = Kind::any;
  for (const Node& child : node.children) any.children.push_back(piece_of(of_one(child)));
  return any;
}

Node goes_form(const Node& node) {
  Node goes;
  goes.kind = Kind::goes;
  goes.constraint = node.constraint;
  if (!node.children.empty()) goes.children.push_back(other_piece(node.children.front()));
  return goes;
}

Node within_piece(const Node& node) {
  if (node.kind == Kind::one) return node;
  if (node.kind == Kind::goes) return goes_form(node);
  Node out;
  out.kind = node.kind == Kind::piece ? Kind::all : node.kind;
  for (const Node& child : node.children) {
    if (out.kind == Kind::all) {
      append_flat(out.children, child);
    } else {
      out.children.push_back(within_piece(child));
    }
  }
  return out;
}

Node piece_of(const Node& node) {
  Node piece;
  piece.kind = Kind::piece;
  for (const Node& child : node.children) append_flat(piece.children, child);
  return piece;
}

Node sample_form(const Node& node);

bool says_of_sample(const Node& node) {
  if (is_text(node)) return true;
  if (node.kind != Kind::one) return false;
  const Says& says = node.constraint.front().says;
  const bool of_either = std::holds_alternative<TechniqueIs>(says) ||
                         std::holds_alternative<MaterialIs>(says) || std::holds_alternative<ColourIs>(says) ||
                         std::holds_alternative<SupplyIs>(says);
  return !of_either && !says_of_piece_only(says);
}

// Adds a child of an `all`, taking out of a piece what is said of the sample.
void append_conjunct(std::vector<Node>& out, Node child) {
  if (child.kind == Kind::all) {
    for (Node& inner : child.children) append_conjunct(out, std::move(inner));
    return;
  }
  if (child.kind != Kind::piece) {
    out.push_back(std::move(child));
    return;
  }
  std::vector<Node> of_sample;
  std::vector<Node> rest;
  for (Node& inner : child.children) (says_of_sample(inner) ? of_sample : rest).push_back(std::move(inner));
  const bool no_piece = rest.empty() && !of_sample.empty();
  child.children = std::move(rest);
  if (!no_piece) out.push_back(std::move(child));
  for (Node& each : of_sample) out.push_back(std::move(each));
}

bool offers_single_pieces(const Node& node) {
  if (node.kind != Kind::any || node.children.empty()) return false;
  return std::all_of(node.children.begin(), node.children.end(),
                     [](const Node& child) { return child.kind == Kind::piece && wanted(child) == 1; });
}

// What is said of the sample twice is said once. Pieces asked for alike, "circle and circle", are one piece
// that is wanted twice; of pieces that are offered, each is another one.
void say_once(std::vector<Node>& children, bool all) {
  std::vector<Node> kept;
  std::vector<int> times;
  for (Node& child : children) {
    const auto alike = [&](const Node& other) { return asks_the_same(other, child); };
    const auto same = std::find_if(kept.begin(), kept.end(), alike);
    const bool counted = child.kind == Kind::piece && !counts_all_pieces(child);
    if (same == kept.end() || (counted && !all) || (all && offers_single_pieces(child))) {
      kept.push_back(std::move(child));
      times.push_back(1);
    } else if (counted) {
      ++times[static_cast<std::size_t>(same - kept.begin())];
    }
  }
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (kept[i].kind != Kind::piece || times[i] == 1) continue;
    const int together = times[i] * wanted(kept[i]);
    std::erase_if(kept[i].children, is_count);
    Node count;
    count.kind = Kind::one;
    count.constraint.push_back({CountIs{together}, "", "", {}});
    kept[i].children.push_back(std::move(count));
  }
  children = std::move(kept);
}

Node sample_form(const Node& node) {
  if (node.kind == Kind::piece) return piece_of(node);
  if (node.kind == Kind::goes) return piece_of(of_one(node));
  if (node.kind == Kind::one) {
    return says_of_piece_only(node.constraint.front().says) ? piece_of(of_one(node)) : node;
  }
  Node out;
  out.kind = node.kind;
  for (const Node& child : node.children) {
    Node each = sample_form(child);
    if (out.kind == Kind::all) {
      append_conjunct(out.children, std::move(each));
    } else {
      out.children.push_back(std::move(each));
    }
  }
  say_once(out.children, out.kind == Kind::all);
  const bool needless = out.kind == Kind::all || out.kind == Kind::any;
  if (needless && out.children.size() == 1) return Node(std::move(out.children.front()));
  return out;
}

template <class T>
const T* said(const Node& piece) {
  for (const Node& child : piece.children) {
    if (child.kind != Kind::one) continue;
    if (const auto* says = std::get_if<T>(&child.constraint.front().says)) return says;
  }
  return nullptr;
}

bool no_common(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::none_of(a.begin(), a.end(), [&](const std::string& each) {
    return std::find(b.begin(), b.end(), each) != b.end();
  });
}

bool apart(const Band& a, const Band& b) {
  return a.high < b.low || b.high < a.low;
}

bool sizes_apart(const SizeIs& a, const SizeIs& b) {
  const SizeRule one = size_rule(a);
  const SizeRule two = size_rule(b);
  if (!one.two_figures || !two.two_figures) return false;
  const bool straight = apart(one.first, two.first) || apart(one.second, two.second);
  const bool turned = apart(one.first, two.second) || apart(one.second, two.first);
  return straight && turned;
}

bool never_the_same(const Node& a, const Node& b) {
  const auto* shape_a = said<ShapeIs>(a);
  const auto* shape_b = said<ShapeIs>(b);
  if (shape_a && shape_b && no_common(shape_a->terms, shape_b->terms)) return true;
  const auto* role_a = said<RoleIs>(a);
  const auto* role_b = said<RoleIs>(b);
  // A name may say another role than the recorded one.
  const bool called = role_a && role_b && !(role_a->called.empty() && role_b->called.empty());
  if (role_a && role_b && !called && no_common(role_a->terms, role_b->terms)) return true;
  const auto* side_a = said<SideIs>(a);
  const auto* side_b = said<SideIs>(b);
  if (side_a && side_b && side_a->side != side_b->side) return true;
  const auto* size_a = said<SizeIs>(a);
  const auto* size_b = said<SizeIs>(b);
  return size_a && size_b && sizes_apart(*size_a, *size_b);
}

bool may_share(const Slot& a, const Slot& b) {
  for (const Node* one : a.pieces) {
    for (const Node* two : b.pieces) {
      if (!never_the_same(*one, *two)) return true;
    }
  }
  return false;
}

void collect_sizes(const Node& node, std::vector<const SizeIs*>& out) {
  if (node.kind == Kind::none) return;
  for (const Constraint& constraint : node.constraint) {
    if (const auto* size = std::get_if<SizeIs>(&constraint.says)) out.push_back(size);
    if (const auto* closed = std::get_if<ClosedSizeIs>(&constraint.says); closed && closed->size) {
      out.push_back(&*closed->size);
    }
  }
  for (const Node& child : node.children) collect_sizes(child, out);
}

}  // namespace

bool says_of_piece_only(const Says& says) {
  return std::holds_alternative<SizeIs>(says) || std::holds_alternative<ShapeIs>(says) ||
         std::holds_alternative<RoleIs>(says) || std::holds_alternative<DieIs>(says) ||
         std::holds_alternative<SideIs>(says) || std::holds_alternative<CountIs>(says) ||
         std::holds_alternative<GlueIs>(says) || std::holds_alternative<PlaceIs>(says) ||
         std::holds_alternative<GoesIs>(says);
}

int sql_depth_of(Kind kind) {
  return kind == Kind::goes ? 3 : 1;
}

bool is_alike(const Node& node) {
  return node.kind == Kind::one && std::holds_alternative<AlikeTo>(node.constraint.front().says);
}

bool is_text(const Node& node) {
  if (node.kind == Kind::one) return is_words(node);
  return node.kind != Kind::piece && node.kind != Kind::goes && !node.children.empty() &&
         std::all_of(node.children.begin(), node.children.end(), is_text);
}

bool has_text(const Node& node) {
  if (node.kind == Kind::one) return is_words(node) || is_alike(node);
  return std::any_of(node.children.begin(), node.children.end(), has_text);
}

Node normal_form(const Node& tree) {
  Node top;
  top.kind = Kind::all;
  append_conjunct(top.children, sample_form(tree));
  return top;
}

Slot slot_of(const Node& piece) {
  return {{&piece}, wanted(piece)};
}

Parts parts_of(const Node& all) {
  Parts parts;
  for (const Node& child : all.children) {
    if (counts_all_pieces(child)) {
      parts.others.push_back(&child);
    } else if (child.kind == Kind::piece) {
      parts.slots.push_back(slot_of(child));
    } else if (offers_single_pieces(child)) {
      Slot slot;
      for (const Node& piece : child.children) slot.pieces.push_back(&piece);
      parts.slots.push_back(std::move(slot));
    } else {
      parts.others.push_back(&child);
    }
  }
  return parts;
}

std::vector<std::vector<std::size_t>> sharing_groups(const std::vector<Slot>& slots) {
  std::vector<std::vector<std::size_t>> groups;
  std::vector<bool> placed(slots.size(), false);
  for (std::size_t i = 0; i < slots.size(); ++i) {
    if (placed[i]) continue;
    std::vector<std::size_t> group{i};
    placed[i] = true;
    for (std::size_t next = 0; next < group.size(); ++next) {
      for (std::size_t j = i + 1; j < slots.size(); ++j) {
        if (placed[j] || !may_share(slots[group[next]], slots[j])) continue;
        placed[j] = true;
        group.push_back(j);
      }
    }
    if (group.size() > 1) groups.push_back(std::move(group));
  }
  return groups;
}

namespace {

bool too_deep_for_sql(const Node& node) {
  const auto depth = [](const auto& self, const Node& each) -> int {
    int most = 0;
    for (const Node& child : each.children) most = std::max(most, self(self, child));
    return each.kind == Kind::one ? 0 : most + sql_depth_of(each.kind);
  };
  return depth(depth, node) > deepest_in_sql;
}

// Anywhere in it, at the top or in a bracket.
bool too_many_to_tell_apart(const Node& node) {
  if (node.kind == Kind::piece || node.kind == Kind::one) return false;
  if (node.kind == Kind::all) {
    for (const auto& group : sharing_groups(parts_of(node).slots)) {
      if (group.size() > most_told_apart_in_sql) return true;
    }
  }
  return std::any_of(node.children.begin(), node.children.end(), too_many_to_tell_apart);
}

}  // namespace

bool too_much_for_sql(const Node& node) {
  return too_deep_for_sql(node) || too_many_to_tell_apart(node);
}

std::vector<const SizeIs*> sizes_in(const Node& node) {
  std::vector<const SizeIs*> sizes;
  collect_sizes(node, sizes);
  return sizes;
}

}  // namespace insetbook
