// SPDX-License-Identifier: GPL-3.0-or-later
//
// Nodes of a question's tree: how they are made, excluded, offered and tidied. Nothing here knows the items
// they come from.
#pragma once

#include <vector>

#include "language/question.h"

namespace insetbook {

// Its `means` is filled in where it is empty.
Node one(Constraint constraint);
Node with_children(Node::Kind kind, std::vector<Node> children);
Node with_child(Node::Kind kind, Node child);
// One constraint, or those bound by "or".
Node offered(std::vector<Constraint> constraints);
// Adds what forbids the node; "none of a or b" forbids each.
void exclude(Node node, std::vector<Node>& out);
// All of them as one node.
Node whole(std::vector<Node> nodes);
// Either; choices within become one choice.
Node choice(Node left, Node right);
// The piece goes so with `other`; without it, with anything.
Node going(Constraint how, std::vector<Node> other);
// Whether it is a piece, or a choice of pieces only.
bool is_piece(const Node& node);
// A choice of ways to go with another piece is one between whole pieces: piece(a, any(on(b), behind(c))) is
// any(piece(a, on(b)), piece(a, behind(c))).
Node spread(Node piece);
// Every count of the piece itself becomes this one.
void raise_count(Node& node, int least);
// Brackets that group nothing fall away: `all` within `all`, `any` within `any`, either around one.
void tidy(Node& node);

}  // namespace insetbook
