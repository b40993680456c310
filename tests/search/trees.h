// SPDX-License-Identifier: GPL-3.0-or-later
//
// Trees of questions, put together by hand: the search is tested without the reader of questions.
#pragma once

#include <utility>
#include <vector>

#include "language/question.h"

namespace insetbook {

inline Node asks(Says says, std::string text, std::size_t at = 0) {
  Node node;
  node.kind = Node::Kind::one;
  node.constraint.push_back({std::move(says), std::move(text), "", {at, at + 1}});
  return node;
}

inline Node of_kind(Node::Kind kind, std::vector<Node> children) {
  Node node;
  node.kind = kind;
  node.children = std::move(children);
  return node;
}
inline Node piece(std::vector<Node> children) {
  return of_kind(Node::Kind::piece, std::move(children));
}
inline Node any(std::vector<Node> children) {
  return of_kind(Node::Kind::any, std::move(children));
}
inline Node none(std::vector<Node> children) {
  return of_kind(Node::Kind::none, std::move(children));
}

inline Question question(std::vector<Node> children) {
  Question asked;
  asked.tree = of_kind(Node::Kind::all, std::move(children));
  return asked;
}

inline SizeIs figure(Relation relation, Length low) {
  SizeIs size;
  size.relation = relation;
  size.low = low;
  return size;
}
inline SizeIs figures(Relation relation, Length first, Length second) {
  SizeIs size = figure(relation, first);
  size.one_figure = false;
  size.second = second;
  return size;
}

}  // namespace insetbook
