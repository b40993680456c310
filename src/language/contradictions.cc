// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/contradictions.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include "language/says.h"

namespace insetbook {
namespace {

constexpr std::size_t most_compared = 64;  // children of one node

// The lengths that one figure leaves: open where a bound is not there.
struct Range {
  std::optional<Length> low, high;
  bool low_open = false, high_open = false;  // the bound itself is not meant
};

Range range_of(const SizeIs& size, Length figure) {
  const Length within = tolerance(size);
  switch (size.relation) {
    case Relation::exact:
    case Relation::about:
      return {figure - within, figure + within};
    case Relation::under:
      return {std::nullopt, figure, false, true};
    case Relation::over:
      return {figure, std::nullopt, true, false};
    case Relation::at_least:
      return {figure, std::nullopt};
    case Relation::at_most:
      return {std::nullopt, figure};
    case Relation::between:
      return {size.low, size.high};
  }
  return {};
}

bool before(const Range& a, const Range& b) {
  if (!a.high || !b.low) return false;
  return *a.high < *b.low || (*a.high == *b.low && (a.high_open || b.low_open));
}
bool apart(const Range& a, const Range& b) {
  return before(a, b) || before(b, a);
}

// One figure is either side where it is exact: two such may be the two sides.
bool exact(const SizeIs& size) {
  return size.relation == Relation::exact || size.relation == Relation::about ||
         size.relation == Relation::between;
}

bool apart(const SizeIs& a, const SizeIs& b) {
  if (a.one_figure != b.one_figure) return false;
  if (a.placed != b.placed || a.height != b.height) return false;
  if (a.one_figure) return !(exact(a) && exact(b)) && apart(range_of(a, a.low), range_of(b, b.low));
  const auto sides_apart = [&](Length first, Length second) {
    return apart(range_of(a, a.low), range_of(b, first)) || apart(range_of(a, a.second), range_of(b, second));
  };
  return sides_apart(b.low, b.second) && (a.placed || sides_apart(b.second, b.low));
}

bool apart(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::ranges::none_of(a,
                              [&](const std::string& term) { return std::ranges::find(b, term) != b.end(); });
}

bool apart(const MadeIn& a, const MadeIn& b) {
  return (!a.to.empty() && !b.from.empty() && a.to < b.from) ||
         (!b.to.empty() && !a.from.empty() && b.to < a.from);
}

bool apart(const ClosedSizeIs& a, const ClosedSizeIs& b) {
  using Form = ClosedSizeIs::Form;
  if (a.size && b.size) return apart(*a.size, *b.size);
  if (!a.size && !b.size) return a.form != b.form && a.form != Form::any && b.form != Form::any;
  const SizeIs& size = a.size ? *a.size : *b.size;
  const Form form = a.size ? b.form : a.form;
  return form == Form::square && !size.one_figure && size.relation == Relation::exact &&
         apart(range_of(size, size.low), range_of(size, size.second));
}

bool apart(const Says& a, const Says& b) {
  if (a.index() != b.index()) return false;
  if (const auto* size = std::get_if<SizeIs>(&a)) return apart(*size, std::get<SizeIs>(b));
  if (const auto* shape = std::get_if<ShapeIs>(&a)) return apart(shape->terms, std::get<ShapeIs>(b).terms);
  // A piece recorded as one may be called the other.
  if (const auto* role = std::get_if<RoleIs>(&a))
    return role->called.empty() && apart(role->terms, std::get<RoleIs>(b).terms);
  if (const auto* side = std::get_if<SideIs>(&a)) return side->side != std::get<SideIs>(b).side;
  if (const auto* made = std::get_if<MadeIn>(&a)) return apart(*made, std::get<MadeIn>(b));
  if (const auto* closed = std::get_if<ClosedSizeIs>(&a)) return apart(*closed, std::get<ClosedSizeIs>(b));
  return false;
}

// As it stands in the sentence: without the word for what it is.
std::string said(const Node& node) {
  if (node.kind != Node::Kind::one) {
    const std::string_view between = node.kind == Node::Kind::any    ? " or "
                                     : node.kind == Node::Kind::none ? " and "
                                                                     : " ";
    std::string words = node.kind == Node::Kind::none   ? "no "
                        : node.kind == Node::Kind::goes ? in_words(node.constraint.front().says)
                                                        : "";
    for (std::size_t i = 0; i < node.children.size(); ++i) {
      if (i > 0 || node.kind == Node::Kind::goes) words += i > 0 ? between : " ";
      words += said(node.children[i]);
    }
    return words;
  }
  std::string words = in_words(node.constraint.front().says);
  for (const std::string_view beginning : {"size ", "closed card ", "shape ", "role "})
    if (words.starts_with(beginning)) return words.substr(beginning.size());
  return words;
}

void note_pair(const Node& a, const Node& b, std::vector<std::string>& notes) {
  const Node::Kind one = Node::Kind::one;
  std::string note;
  if (a.kind == one && b.kind == one && apart(a.constraint.front().says, b.constraint.front().says))
    note = "nothing can be both " + said(a) + " and " + said(b);
  const auto excludes = [](const Node& none, const Node& other) {
    return none.kind == Node::Kind::none && other.kind != Node::Kind::none && none.children.size() == 1 &&
           print(none.children.front()) == print(other);
  };
  if (excludes(b, a)) note = said(a) + " is asked for and excluded at once";
  if (excludes(a, b)) note = said(b) + " is asked for and excluded at once";
  if (!note.empty() && std::ranges::find(notes, note) == notes.end()) notes.push_back(std::move(note));
}

}  // namespace

void add_contradictions(const Node& tree, std::vector<std::string>& notes) {
  const std::size_t count = std::min(tree.children.size(), most_compared);
  if (tree.kind == Node::Kind::all || tree.kind == Node::Kind::piece)
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t j = i + 1; j < count; ++j) note_pair(tree.children[i], tree.children[j], notes);
  if (tree.kind == Node::Kind::none) return;
  for (const Node& child : tree.children) add_contradictions(child, notes);
}

}  // namespace insetbook
