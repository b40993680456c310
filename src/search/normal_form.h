// SPDX-License-Identifier: GPL-3.0-or-later
//
// The tree of a question in the form that the search works on, and what two pieces asked at once mean.
// Normal form: nested `all` are one; what can only be said of a piece stands in a `piece`; free words stand
// outside of pieces, as does whatever else is said of the sample; what goes with a piece is a `piece`, or an
// `any` of such. Pieces that are asked side by side are
// different pieces: a slot is one of them, with how many are wanted. A recorded element stands for as many
// pieces as its count says, and each can fill one slot only. So slots are filled when for every group of them
// the elements that meet any of the group add up to what the group wants (Hall's condition). A piece of which
// nothing but a count is asked counts every piece of the card, those that fill slots among them: it is no
// slot.
#pragma once

#include <vector>

#include "language/question.h"

namespace insetbook {

Node normal_form(const Node& tree);

bool says_of_piece_only(const Says& says);

// Whether the whole node is about free words.
bool is_text(const Node& node);
// Whether it asks what is like a sample.
bool is_alike(const Node& node);
// Whether free words stand anywhere in it, or what is like a sample: what the index is needed for.
bool has_text(const Node& node);

struct Slot {
  std::vector<const Node*> pieces;  // one piece, or several that were offered with "or"
  int wanted = 1;
};

struct Parts {
  std::vector<Slot> slots;
  std::vector<const Node*> others;
};

Slot slot_of(const Node& piece);
// Takes the children of an `all` apart. The node must outlive the result.
Parts parts_of(const Node& all);

// Groups (indexes of slots) within which one element might meet several slots; only groups of two or more.
std::vector<std::vector<std::size_t>> sharing_groups(const std::vector<Slot>& slots);

// How deep statements may be nested: SQLite's parser holds a hundred things at once. How many pieces are told
// apart in one: a condition for each part of the group. What lies deeper, or is more, is left to facts.h.
int sql_depth_of(Node::Kind kind);
inline constexpr int deepest_in_sql = 12;
inline constexpr std::size_t most_told_apart_in_sql = 5;
bool too_much_for_sql(const Node& node);

// Every size that is asked within the node where it counts for closeness (not inside `none`).
std::vector<const SizeIs*> sizes_in(const Node& node);

}  // namespace insetbook
