// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/hand_over.h"
#include "language/question.h"
#include "language/says.h"

namespace insetbook {
namespace {

std::string_view kind_word(Node::Kind kind) {
  switch (kind) {
    case Node::Kind::one:
      return "one";
    case Node::Kind::piece:
      return "piece";
    case Node::Kind::all:
      return "all";
    case Node::Kind::any:
      return "any";
    case Node::Kind::none:
      return "none";
    case Node::Kind::goes:
      return "goes";
  }
  return "";
}

std::string_view asks_word(Asks asks) {
  switch (asks) {
    case Asks::samples:
      return "samples";
    case Asks::fits:
      return "fits";
    case Asks::frames:
      return "frames";
    case Asks::pairs:
      return "pairs";
    case Asks::measured:
      return "measured";
    case Asks::unmeasured:
      return "unmeasured";
    case Asks::kept:
      return "kept";
    case Asks::nearest:
      return "nearest";
    case Asks::convert:
      return "convert";
    case Asks::show:
      return "show";
    case Asks::dies:
      return "dies";
    case Asks::tried:
      return "tried";
    case Asks::used:
      return "used";
  }
  return "";
}

std::string fields_of(const Node& node, bool in_piece);
std::string other_piece(const Node& node);

// Whether it would be read as one piece with another such beside it.
bool runs_together(const Node& node) {
  if (node.kind == Node::Kind::one) return field(field_of(node.constraint.front().says)).of_piece;
  if (node.kind == Node::Kind::any)
    for (const Node& child : node.children)
      if (runs_together(child)) return true;
  return false;
}

std::string children_as_fields(const Node& node, std::string_view between, bool in_piece) {
  std::string out;
  const Node* before = nullptr;
  for (const Node& child : node.children) {
    if (before) {
      if (!in_piece && between == " " && runs_together(*before) && runs_together(child)) out += ',';
      out += between;
    }
    before = &child;
    out += fields_of(child, in_piece);
  }
  return out;
}

std::string fields_of(const Node& node, bool in_piece) {
  switch (node.kind) {
    case Node::Kind::one:
      // Free words in a `with` group would be the piece's own; what can be said of a piece only is grouped
      // outright.
      return as_field(node.constraint.front().says);
    case Node::Kind::piece:
      return "with:(" + children_as_fields(node, " ", true) + ")";
    case Node::Kind::all:
      return "(" + children_as_fields(node, " ", in_piece) + ")";
    case Node::Kind::any:
      return "(" + children_as_fields(node, " or ", in_piece) + ")";
    case Node::Kind::none: {
      std::string out;
      for (const Node& child : node.children) {
        if (!out.empty()) out += ' ';
        const std::string excluded = fields_of(child, in_piece);
        out += excluded.starts_with('-') ? "-(" + excluded + ")" : "-" + excluded;
      }
      return out;
    }
    case Node::Kind::goes:
      return std::string(goes_word(std::get<GoesIs>(node.constraint.front().says).how)) + ":(" +
             (node.children.empty() ? std::string() : other_piece(node.children.front())) + ")";
  }
  return {};
}

// What stands in the bracket of `on:( … )`: the other piece, without the `with` that it has elsewhere.
std::string other_piece(const Node& node) {
  if (node.kind != Node::Kind::piece) return fields_of(node, true);
  std::string out;
  for (const Node& child : node.children) {
    if (!out.empty()) out += ' ';
    out += fields_of(child, true);
  }
  return out;
}

// "newest", "oldest 5"
std::string order_words(const AskedOrder& order) {
  const std::string out = order.oldest_first ? "oldest" : "newest";
  return order.most ? out + " " + std::to_string(*order.most) : out;
}

}  // namespace

bool asks_the_same(const Node& a, const Node& b) {
  const auto same_says = [](const Constraint& one, const Constraint& other) {
    return one.says == other.says;
  };
  return a.kind == b.kind && std::ranges::equal(a.constraint, b.constraint, same_says) &&
         std::ranges::equal(a.children, b.children, asks_the_same);
}

std::string print(const Node& node) {
  if (node.kind == Node::Kind::one) return printed(node.constraint.front().says);
  std::string out(node.kind == Node::Kind::goes
                      ? goes_word(std::get<GoesIs>(node.constraint.front().says).how)
                      : kind_word(node.kind));
  out += '(';
  bool first = true;
  for (const Node& child : node.children) {
    if (!first) out += ", ";
    first = false;
    out += print(child);
  }
  return out + ')';
}

std::string print(const Question& question) {
  switch (question.asks) {
    case Asks::samples:
      return print(question.tree) + (question.order ? ", " + order_words(*question.order) : "");
    default:
      break;
  }
  std::string out(asks_word(question.asks));
  out += '(';
  out += question.subject;
  if (!question.panel_shape.empty()) out += "; shape=" + question.panel_shape;
  if (!question.opening_shape.empty()) out += "; shape=" + question.opening_shape;
  if (!question.result.empty()) out += "; " + question.result;
  if (!question.border.empty()) out += "; border=" + question.border;
  if (!question.panel.empty()) out += "; panel=" + question.panel;
  if (!question.in_set.empty()) out += "; in=" + question.in_set;
  if (question.unit) out += *question.unit == Unit::inch ? "; unit=in" : "; unit=mm";
  return out + ")";
}

std::string print_as_fields(const Question& question) {
  if (question.asks != Asks::samples) return print_other(question);
  const std::string tree = children_as_fields(question.tree, " ", false);
  if (!question.order) return tree;
  return order_words(*question.order) + (tree.empty() ? "" : " " + tree);
}

}  // namespace insetbook
