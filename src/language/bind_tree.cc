// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/bind_tree.h"

#include <algorithm>
#include <utility>

#include "language/says.h"

namespace insetbook {

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

Node with_child(Node::Kind kind, Node child) {
  std::vector<Node> children;
  children.push_back(std::move(child));
  return with_children(kind, std::move(children));
}

Node offered(std::vector<Constraint> constraints) {
  if (constraints.size() == 1) return one(std::move(constraints.front()));
  std::vector<Node> children;
  for (Constraint& each : constraints) children.push_back(one(std::move(each)));
  return with_children(Node::Kind::any, std::move(children));
}

void exclude(Node node, std::vector<Node>& out) {
  if (node.kind == Node::Kind::any) {
    for (Node& child : node.children) exclude(std::move(child), out);
    return;
  }
  out.push_back(with_child(Node::Kind::none, std::move(node)));
}

Node whole(std::vector<Node> nodes) {
  if (nodes.size() == 1) return std::move(nodes.front());
  return with_children(Node::Kind::all, std::move(nodes));
}

Node choice(Node left, Node right) {
  std::vector<Node> children;
  for (Node* node : {&left, &right}) {
    if (node->kind == Node::Kind::any)
      for (Node& child : node->children) children.push_back(std::move(child));
    else
      children.push_back(std::move(*node));
  }
  return with_children(Node::Kind::any, std::move(children));
}

Node going(Constraint how, std::vector<Node> other) {
  Node node = one(std::move(how));
  node.kind = Node::Kind::goes;
  node.children = std::move(other);
  return node;
}

bool is_piece(const Node& node) {
  return node.kind == Node::Kind::piece ||
         (node.kind == Node::Kind::any && std::ranges::all_of(node.children, is_piece));
}

Node spread(Node piece) {
  const auto offers_ways = [](const Node& node) {
    return node.kind == Node::Kind::any && std::ranges::any_of(node.children, [](const Node& child) {
             return child.kind == Node::Kind::goes;
           });
  };
  const auto found = std::ranges::find_if(piece.children, offers_ways);
  if (found == piece.children.end()) return piece;
  const auto place = found - piece.children.begin();
  const std::vector<Node> ways = std::move(found->children);
  std::vector<Node> pieces;
  for (const Node& way : ways) {
    Node each = piece;
    each.children[static_cast<std::size_t>(place)] = way;
    pieces.push_back(std::move(each));
  }
  return with_children(Node::Kind::any, std::move(pieces));
}

void raise_count(Node& node, int least) {
  for (Node& child : node.children) {
    if (child.kind == Node::Kind::goes) continue;  // the other piece has its own
    raise_count(child, least);
    if (child.kind != Node::Kind::one) continue;
    Constraint& constraint = child.constraint.front();
    if (auto* count = std::get_if<CountIs>(&constraint.says)) {
      count->least = least;
      constraint.means = in_words(constraint.says);
    }
  }
}

void tidy(Node& node) {
  std::vector<Node> children;
  const auto groups = [](const Node& each) {
    return each.kind == Node::Kind::all || each.kind == Node::Kind::any;
  };
  for (Node& child : node.children) {
    tidy(child);
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

}  // namespace insetbook
