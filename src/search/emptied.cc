// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/emptied.h"

#include <algorithm>
#include <array>

#include "search/facts.h"
#include "search/hits.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;
using Chosen = std::vector<bool>;  // which of the units stay in the question

// One constraint of the question: a child of the tree, or a child of one of its pieces.
struct Unit {
  std::size_t child = 0;
  std::size_t within = 0;
  const Node* node = nullptr;
};

// Words asked side by side are constraints of their own.
Node words_apart(const Node& all) {
  Node out;
  for (const Node& child : all.children) {
    const auto* words =
        child.kind == Kind::one ? std::get_if<WordsAre>(&child.constraint.front().says) : nullptr;
    if (!words || words->phrase || words->words.size() < 2) {
      out.children.push_back(child);
      continue;
    }
    for (const std::string& word : words->words) {
      Node each = child;
      each.constraint.front().says = WordsAre{{word}, false, words->on_card};
      each.constraint.front().text = word;
      out.children.push_back(std::move(each));
    }
  }
  return out;
}

std::vector<Unit> units_of(const Node& all) {
  std::vector<Unit> units;
  for (std::size_t i = 0; i < all.children.size(); ++i) {
    const Node& child = all.children[i];
    if (child.kind != Kind::piece) {
      units.push_back({i, 0, &child});
      continue;
    }
    for (std::size_t j = 0; j < child.children.size(); ++j) units.push_back({i, j, &child.children[j]});
  }
  return units;
}

Node with_only(const Node& all, const std::vector<Unit>& units, const Chosen& chosen) {
  Node out;
  for (std::size_t i = 0; i < units.size();) {
    const std::size_t child = units[i].child;
    const bool piece = all.children[child].kind == Kind::piece;
    Node part;
    part.kind = Kind::piece;
    for (; i < units.size() && units[i].child == child; ++i) {
      if (chosen[i]) part.children.push_back(*units[i].node);
    }
    if (part.children.empty()) continue;
    out.children.push_back(piece ? std::move(part) : Node(std::move(part.children.front())));
  }
  return out;
}

std::string text_of(const Node& node) {
  std::string text, last;
  for (const Constraint& constraint : node.constraint) {
    text += constraint.text.empty() ? constraint.means : constraint.text;
  }
  for (const Node& child : node.children) {
    const std::string each = text_of(child);
    if (each.empty() || (node.kind == Node::Kind::any && each == last)) continue;
    last = each;
    const char* word = node.kind == Kind::any ? " or " : node.kind == Kind::none ? " and " : " ";
    text += (text.empty() ? "" : word) + each;
  }
  return node.kind == Kind::none ? "no " + text : text;
}

// What is excluded, without the "no".
std::string listed(const Node& none) {
  Node any = none;
  any.kind = Kind::any;
  return text_of(any);
}

bool left_out_alone(const Chosen& left_out) {
  return std::count(left_out.begin(), left_out.end(), true) == 1;
}

// Enough for each by itself and each two together of twenty.
constexpr int most_tries = 210;
// Where each sample has to be looked at by itself.
constexpr int cost_beyond_sql = 20;

class EmptySearch {
 public:
  EmptySearch(const Book& book, Finder& finder, const Node& all)
      : book_(book), finder_(finder), all_(words_apart(all)), units_(units_of(all_)) {}

  Chosen smallest(const Chosen& within);
  std::vector<std::string> texts(const Chosen& chosen) const;
  std::vector<Hit> nearest(Chosen emptied, std::size_t most);
  Chosen everything() const { return Chosen(units_.size(), true); }
  bool asks_anything() const { return !units_.empty(); }

 private:
  bool empty(const Chosen& chosen) { return !finder_.any(with_only(all_, units_, chosen)); }
  bool smallest_of(std::size_t size, const Chosen& within, std::size_t from, Chosen& chosen, int& tries);
  Chosen irreducible(Chosen chosen);
  bool has_it(std::int64_t sample, const Unit& unit);
  std::string instead(Judge& judge, const SampleFacts& sample, const Unit& unit, const Chosen& left_out);
  std::string missing(std::int64_t sample, const Chosen& left_out);
  std::vector<Hit> by_size(const Chosen& kept, const Chosen& emptied, std::size_t most);
  std::vector<Hit> found(const Chosen& kept, const Relaxed& relaxed, std::size_t most);
  void leave_out_one(const Chosen& kept, const Chosen& emptied, std::size_t most, std::vector<Hit>& out);

  const Book& book_;
  Finder& finder_;
  Node all_;
  std::vector<Unit> units_;
};

// Tries every set of that size, in the order of the question, until the tries are used up.
bool EmptySearch::smallest_of(std::size_t size, const Chosen& within, std::size_t from, Chosen& chosen,
                              int& tries) {
  if (size == 0) {
    tries -= too_much_for_sql(with_only(all_, units_, chosen)) ? cost_beyond_sql : 1;
    return tries >= 0 && empty(chosen);
  }
  for (std::size_t i = from; i < units_.size() && tries > 0; ++i) {
    if (!within[i]) continue;
    chosen[i] = true;
    if (smallest_of(size - 1, within, i + 1, chosen, tries)) return true;
    chosen[i] = false;
  }
  return false;
}

// Leaves out what can be left out: no constraint of the rest is idle, though a smaller set might exist.
Chosen EmptySearch::irreducible(Chosen chosen) {
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    if (!chosen[i]) continue;
    chosen[i] = false;
    if (!empty(chosen)) chosen[i] = true;
  }
  return chosen;
}

Chosen EmptySearch::smallest(const Chosen& within) {
  const auto size = static_cast<std::size_t>(std::count(within.begin(), within.end(), true));
  int tries = most_tries;
  for (std::size_t count = 1; count < size && tries > 0; ++count) {
    Chosen chosen(units_.size(), false);
    if (smallest_of(count, within, 0, chosen, tries)) return chosen;
  }
  return tries > 0 ? within : irreducible(within);
}

std::vector<std::string> EmptySearch::texts(const Chosen& chosen) const {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < units_.size(); ++i) {
    if (!chosen[i]) continue;
    const std::string text = text_of(*units_[i].node);
    if (std::find(out.begin(), out.end(), text) == out.end()) out.push_back(text);
  }
  return out;
}

// Nothing, where nothing of the question is left: every sample would be as near as any other.
std::vector<Hit> EmptySearch::found(const Chosen& kept, const Relaxed& relaxed, std::size_t most) {
  if (std::none_of(kept.begin(), kept.end(), [](bool each) { return each; })) return {};
  const Node asked = with_only(all_, units_, kept);
  const Found some = finder_.find(asked, relaxed, Order::best, most);
  return hits_of(book_, some.ranked, asked, relaxed);
}

bool EmptySearch::has_it(std::int64_t sample, const Unit& unit) {
  Chosen only(units_.size(), false);
  only[static_cast<std::size_t>(&unit - units_.data())] = true;
  Node asked = with_only(all_, units_, only);
  Node title;
  title.kind = Kind::one;
  title.constraint.push_back({TitleIs{sample, ""}, "", "", {}});
  asked.children.push_back(std::move(title));
  return finder_.any(asked);
}

// What the piece has in place of the unit: the piece that meets what else was asked of it.
std::string EmptySearch::instead(Judge& judge, const SampleFacts& sample, const Unit& unit,
                                 const Chosen& left_out) {
  if (all_.children[unit.child].kind != Kind::piece) return {};
  Node rest;
  rest.kind = Kind::piece;
  for (std::size_t i = 0; i < units_.size(); ++i) {
    if (units_[i].child == unit.child && !left_out[i]) rest.children.push_back(*units_[i].node);
  }
  if (rest.children.empty()) return {};
  const ElementFacts* element = judge.nearest_element(rest, sample);
  return element ? judge.instead_in_piece(*unit.node, *element, sample) : std::string();
}

// What of the constraints left out the sample fails, and what it has instead; where each of them alone is
// met, they are not met together.
std::string EmptySearch::missing(std::int64_t sample, const Chosen& left_out) {
  std::string lacks, has, excluded, other, all;
  const auto add = [](std::string& list, const std::string& text, const char* between) {
    if (!text.empty()) list += (list.empty() ? "" : between) + text;
  };
  const Relaxed as_asked;
  Judge judge(book_, all_, as_asked);
  const auto facts = facts_of(book_, sample, {true, true});
  for (std::size_t i = 0; i < units_.size() && facts; ++i) {
    if (!left_out[i]) continue;
    const Node& node = *units_[i].node;
    add(all, text_of(node), ", ");
    if (!left_out_alone(left_out) && has_it(sample, units_[i])) continue;
    if (node.kind == Kind::none) {
      add(excluded, listed(node), ", ");
    } else if (const std::string said = instead(judge, *facts, units_[i], left_out); !said.empty()) {
      add(other, said, "; ");
    } else {
      add(lacks, text_of(node), ", ");
      add(has, judge.has_instead(node, *facts), ", ");
    }
  }
  if (all.empty()) return {};
  if (lacks.empty() && excluded.empty() && other.empty()) return "does not have together: " + all;
  std::string said = other;
  if (!lacks.empty()) add(said, "does not have: " + lacks, "; ");
  if (!has.empty()) add(said, "has: " + has, "; ");
  if (!excluded.empty()) add(said, "has " + excluded, "; ");
  return said;
}

// The sizes of the emptied set, loosened step by step until enough is found.
std::vector<Hit> EmptySearch::by_size(const Chosen& kept, const Chosen& emptied, std::size_t most) {
  Relaxed relaxed;
  for (std::size_t i = 0; i < units_.size(); ++i) {
    const Node& node = *units_[i].node;
    if (!emptied[i] || (node.kind != Kind::one && node.kind != Kind::goes)) continue;
    for (const SizeIs* size : sizes_in(node)) relaxed.sizes.push_back(*size);
  }
  if (relaxed.sizes.empty()) return {};
  const std::array slacks{Length::inch_fraction(1, 8), Length::inch_fraction(1, 2), Length::inches(2),
                          longest_length};
  std::vector<Hit> hits;
  for (const Length slack : slacks) {
    relaxed.slack = slack;
    hits = found(kept, relaxed, most);
    if (hits.size() >= most) break;
  }
  return hits;
}

void EmptySearch::leave_out_one(const Chosen& kept, const Chosen& emptied, std::size_t most,
                                std::vector<Hit>& out) {
  for (std::size_t i = 0; i < units_.size() && out.size() < most; ++i) {
    if (!emptied[i]) continue;
    Chosen fewer = kept;
    fewer[i] = false;
    for (Hit& hit : found(fewer, {}, most)) {
      const bool there =
          std::any_of(out.begin(), out.end(), [&](const Hit& each) { return each.sample == hit.sample; });
      if (there || out.size() >= most) continue;
      Chosen left_out(units_.size(), false);
      left_out[i] = true;
      hit.difference = missing(hit.sample, left_out);
      out.push_back(std::move(hit));
    }
  }
}

std::vector<Hit> EmptySearch::nearest(Chosen emptied, std::size_t most) {
  Chosen kept = everything();
  Chosen left_out(units_.size(), false);
  const auto add_missing = [&](Hit& hit) {
    const std::string said = missing(hit.sample, left_out);
    if (!said.empty()) hit.difference += (hit.difference.empty() ? "" : "; ") + said;
  };
  for (std::size_t round = 0; round < units_.size(); ++round) {
    std::vector<Hit> hits = by_size(kept, emptied, most);
    if (hits.empty()) leave_out_one(kept, emptied, most, hits);
    if (!hits.empty()) {
      for (Hit& hit : hits) add_missing(hit);
      return hits;
    }
    // Another set empties it too: this one is left out whole.
    for (std::size_t i = 0; i < units_.size(); ++i) {
      if (!emptied[i]) continue;
      left_out[i] = true;
      kept[i] = false;
    }
    if (!empty(kept)) {
      hits = found(kept, {}, most);
      for (Hit& hit : hits) add_missing(hit);
      return hits;
    }
    if (std::none_of(kept.begin(), kept.end(), [](bool each) { return each; })) return {};
    emptied = smallest(kept);
  }
  return {};
}

}  // namespace

Emptied why_empty(const Book& book, Finder& finder, const Node& all, std::size_t nearest) {
  EmptySearch search(book, finder, all);
  if (!search.asks_anything()) return {};
  if (!finder.any(Node())) return {};  // an empty book empties every question
  const Chosen emptied = search.smallest(search.everything());
  return {search.texts(emptied), nearest > 0 ? search.nearest(emptied, nearest) : std::vector<Hit>()};
}

}  // namespace insetbook
