// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/facts.h"

#include <algorithm>

#include "book/piece_names.h"
#include "book/settings.h"
#include "search/alike.h"
#include "search/envelopes.h"
#include "search/facts_parts.h"
#include "search/glue.h"
#include "search/sample_text.h"
#include "search/text_asked.h"
#include "text/place_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

Unit unit_of(std::string_view word) {
  return word == "mm" ? Unit::mm : Unit::inch;
}

void read_elements(const Book& book, SampleFacts& sample) {
  Statement& row = book.statement(
      "SELECT id, name, role, side, shape, width_nm, height_nm, placed, unit, set_id, die_id, line_id, "
      "in_line_id, count, goes, goes_how, goes_to, glue, size_text, at FROM element WHERE sample_id = ? "
      "ORDER BY position, id");
  row.bind(1, sample.id);
  while (row.step()) {
    ElementFacts element;
    element.id = row.integer(0);
    element.name = row.text(1);
    element.role = row.text(2);
    element.side = row.text(3);
    element.shape = row.text(4);
    element.sides = {row.maybe_integer(5), row.maybe_integer(6), row.integer(7) != 0};
    element.unit = unit_of(row.text(8));
    element.set = row.maybe_integer(9);
    element.die = row.maybe_integer(10);
    element.line = row.maybe_integer(11);
    element.in_line = row.maybe_integer(12);
    element.count = static_cast<int>(row.integer(13));
    element.goes = row.text(14);
    element.goes_how = row.text(15);
    element.goes_to = row.maybe_integer(16);
    element.glue = row.text(17);
    element.size_written = row.text(18);
    element.at = row.text(19);
    sample.elements.push_back(std::move(element));
  }
  row.reset();
}

// Most of what is said of a sample is of no use to the question: it is passed over before it is copied.
void read_mentions(const Book& book, const std::vector<std::string_view>& kinds, SampleFacts& sample) {
  Statement& row = book.statement(
      "SELECT m.element_id, m.colour_id, m.supply_id, m.kind, coalesce(m.term, ''), m.written, "
      "coalesce(s.kind, '') FROM mention m LEFT JOIN supply s ON s.id = m.supply_id "
      "WHERE m.sample_id = ? ORDER BY m.id");
  row.bind(1, sample.id);
  while (row.step()) {
    if (!kinds.empty() && std::find(kinds.begin(), kinds.end(), row.text(3)) == kinds.end()) continue;
    sample.mentions.push_back({row.maybe_integer(0), row.maybe_integer(1), row.maybe_integer(2),
                               std::string(row.text(3)), std::string(row.text(4)), std::string(row.text(5)),
                               std::string(row.text(6))});
  }
  row.reset();
}

const std::vector<std::string>* terms_of(const Says& says, std::string_view& kind) {
  if (const auto* is = std::get_if<TechniqueIs>(&says)) return kind = "technique", &is->terms;
  if (const auto* is = std::get_if<MaterialIs>(&says)) return kind = "material", &is->terms;
  if (const auto* is = std::get_if<FoldIs>(&says)) return kind = "fold", &is->terms;
  if (const auto* is = std::get_if<FeatureIs>(&says)) return kind = "feature", &is->terms;
  if (const auto* is = std::get_if<OccasionIs>(&says)) return kind = "occasion", &is->terms;
  return nullptr;
}

std::vector<std::string_view> mention_kinds(const Says& says) {
  if (std::holds_alternative<ColourIs>(says)) return {"paper", "ink"};
  if (std::holds_alternative<SupplyIs>(says)) return {"supply"};
  if (std::holds_alternative<MaterialIs>(says)) return {"material", "supply"};
  std::string_view kind;
  if (terms_of(says, kind)) return {kind};
  return {};
}

bool mention_meets(const Says& says, const MentionFacts& mention) {
  if (const auto* colour = std::get_if<ColourIs>(&says)) {
    const bool paper = colour->use != ColourUse::ink && mention.kind == "paper";
    const bool ink = colour->use != ColourUse::paper && mention.kind == "ink";
    return (paper || ink) && among(colour->colours, mention.colour);
  }
  if (const auto* supply = std::get_if<SupplyIs>(&says)) {
    return mention.kind == "supply" && among(supply->supplies, mention.supply);
  }
  std::string_view kind;
  const auto* terms = terms_of(says, kind);
  if (kind == "material" && mention.kind == "supply") return among(*terms, fold(mention.supply_kind));
  return terms && mention.kind == kind && among(*terms, mention.term);
}

// A stem begins as its word does, so most words need not be stemmed.
bool holds(const std::vector<std::string>& words, const std::vector<std::string>& phrase, Stemmer& stemmer) {
  const auto same = [&](const std::string& word, const std::string& stem) {
    return word.front() == stem.front() && stemmer.stem(word) == stem;
  };
  return std::search(words.begin(), words.end(), phrase.begin(), phrase.end(), same) != words.end();
}

// A blank side is the front.
bool lies_there(const SideIs& asked, std::string_view side) {
  return asked.side == side || (side.empty() && asked.side == "front");
}

bool has_role(const RoleIs& role, const ElementFacts& element) {
  if (among(role.terms, element.role)) return true;
  return !role.called.empty() && is_called(fold(element.name), called_one_of(role.called));
}

// Whether `a` goes with `b` in one of these ways.
bool linked(const GoesWays& ways, const ElementFacts& a, const ElementFacts& b) {
  const auto on_base = [](const ElementFacts& piece, const ElementFacts& base) {
    return piece.goes_how == "on" && !piece.goes_to && base.role == base_role && piece.id != base.id;
  };
  return (a.goes_to == b.id && among(ways.own, a.goes_how)) ||
         (b.goes_to == a.id && among(ways.other, b.goes_how)) || (ways.first_on_base() && on_base(a, b)) ||
         (ways.second_on_base() && on_base(b, a));
}

}  // namespace

// The mention that meets it, of one piece or (null) of the sample and any of its pieces.
const MentionFacts* mention_of(const Says& says, const SampleFacts& sample, const ElementFacts* element) {
  for (const MentionFacts& mention : sample.mentions) {
    if (element && mention.element != element->id) continue;
    if (mention_meets(says, mention)) return &mention;
  }
  return nullptr;
}

std::vector<const ElementFacts*> others(const GoesWays& ways, const ElementFacts& element,
                                        const SampleFacts& sample) {
  std::vector<const ElementFacts*> out;
  for (const ElementFacts& other : sample.elements) {
    if (linked(ways, element, other)) out.push_back(&other);
  }
  return out;
}

// The pieces of which the other one must be one.
std::vector<const Node*> asked_others(const Node& goes) {
  std::vector<const Node*> out;
  if (goes.children.empty()) return out;
  const Node& child = goes.children.front();
  if (child.kind != Kind::any) return {&child};
  for (const Node& each : child.children) out.push_back(&each);
  return out;
}

GoesHow how_of(const Node& goes) {
  return std::get<GoesIs>(goes.constraint.front().says).how;
}

std::string form_text(const SidesOnRecord& closed) {
  const std::int64_t more = *closed.width - *closed.height;
  if (std::abs(more) <= square_within.nm()) return "square";
  return more > 0 ? "landscape" : "portrait";
}

FactsNeeded facts_needed(const Node& node) {
  FactsNeeded needed{node.kind == Kind::piece, false};
  for (const Constraint& constraint : node.constraint) {
    needed.kinds = mention_kinds(constraint.says);
    {
      const bool alike = std::holds_alternative<AlikeTo>(constraint.says);
      needed.elements = needed.elements || alike;
      needed.mentions = alike || is_mention(constraint.says);
    }
  }
  for (const Node& child : node.children) {
    const FactsNeeded of_child = facts_needed(child);
    needed.elements = needed.elements || of_child.elements;
    needed.mentions = needed.mentions || of_child.mentions;
    needed.kinds.insert(needed.kinds.end(), of_child.kinds.begin(), of_child.kinds.end());
  }
  return needed;
}

std::optional<SampleFacts> facts_of(const Book& book, std::int64_t id, const FactsNeeded& needed) {
  Statement& row = book.statement(
      "SELECT uuid, title, made, closed_width_nm, closed_height_nm, closed_unit FROM sample WHERE id = ?");
  row.bind(1, id);
  SampleFacts sample;
  const bool there = row.step();
  if (there) {
    sample.id = id;
    sample.uuid = row.text(0);
    sample.title = row.text(1);
    sample.made = row.text(2);
    sample.closed = {row.maybe_integer(3), row.maybe_integer(4), true};
    sample.closed_unit = unit_of(row.text(5));
  }
  row.reset();
  if (!there) return std::nullopt;
  if (needed.elements) read_elements(book, sample);
  if (needed.mentions) read_mentions(book, needed.kinds, sample);
  return sample;
}

Judge::Judge(const Book& book, const Node& all, const Relaxed& relaxed)
    : book_(book), all_(all), relaxed_(relaxed) {}
Judge::~Judge() = default;

bool Judge::meets(const SampleFacts& sample) {
  return children_meet(all_, sample);
}

bool Judge::children_meet(const Node& all, const SampleFacts& sample) {
  const Parts parts = parts_of(all);
  for (const Node* other : parts.others) {
    if (!sample_meets(*other, sample)) return false;
  }
  return fill(parts.slots, sample).all;
}

bool Judge::sample_meets(const Node& node, const SampleFacts& sample) {
  const auto met = [&](const Node& child) { return sample_meets(child, sample); };
  switch (node.kind) {
    case Kind::one:
      if (is_alike(node)) return is_like(node, sample);
      return sample_says(node.constraint.front().says, sample);
    case Kind::piece:
      return fill({slot_of(node)}, sample).all;
    case Kind::all:
      return children_meet(node, sample);
    case Kind::any:
      return std::any_of(node.children.begin(), node.children.end(), met);
    case Kind::none:
      return std::none_of(node.children.begin(), node.children.end(), met);
    case Kind::goes:
      break;  // stands in a piece only
  }
  return false;
}

bool Judge::piece_meets(const Node& node, const ElementFacts& element, const SampleFacts& sample) {
  const auto met = [&](const Node& child) { return piece_meets(child, element, sample); };
  if (is_alike(node)) return is_like(node, sample);
  if (node.kind == Kind::one) return piece_says(node.constraint.front().says, element, sample);
  if (node.kind == Kind::goes) return goes(node, element, sample);
  if (node.kind == Kind::any) return std::any_of(node.children.begin(), node.children.end(), met);
  if (node.kind == Kind::none) return std::none_of(node.children.begin(), node.children.end(), met);
  return std::all_of(node.children.begin(), node.children.end(), met);
}

const DieMeaning& Judge::meaning_of(const DieIs& die) {
  const auto [place, added] = meanings_.try_emplace(&die);
  if (added) place->second = die_meaning(book_, die);
  return place->second;
}

const std::vector<std::int64_t>& Judge::based_on_it(const BasedOn& base) {
  const auto [place, added] = based_on_.try_emplace(&base);
  if (added) place->second = based_on(book_, base.sample);
  return place->second;
}

// Fields are fetched and cut into stems as far as they are looked at.
const TextField* Judge::field_with(const std::vector<std::string>& phrase, const SampleFacts& sample,
                                   bool on_card) {
  if (text_sample_ != sample.id) {
    text_.clear();
    text_parts_ = 0;
    text_sample_ = sample.id;
  }
  for (std::size_t i = 0;; ++i) {
    while (i == text_.size() && text_parts_ < all_text_parts.size()) {
      for (TextField& field : text_of_sample(book_, sample.id, all_text_parts[text_parts_])) {
        text_.push_back({std::move(field), std::nullopt});
      }
      ++text_parts_;
    }
    if (i == text_.size()) return nullptr;
    SaidText& said = text_[i];
    if (on_card && said.field.label != words_of_card) continue;
    if (!said.words) said.words = words_of(said.field.text);
    if (holds(*said.words, phrase, stemmer_)) return &said.field;
  }
}

bool Judge::cut_or_lies(const DieIs& die, const ElementFacts& element) {
  if (die.any) return element.die || element.set;
  const DieMeaning& meaning = meaning_of(die);
  if (die.lies_in) return among(meaning.lines, element.in_line);
  if (meaning.by_line) return among(meaning.lines, element.line);
  return among(meaning.dies, element.die) || (!element.die && among(meaning.sets, element.set));
}

bool Judge::piece_says(const Says& says, const ElementFacts& element, const SampleFacts& sample) {
  if (const auto* size = std::get_if<SizeIs>(&says)) {
    return distance(relaxed_.rule(*size), element.sides).has_value();
  }
  if (const auto* shape = std::get_if<ShapeIs>(&says)) return among(shape->terms, element.shape);
  if (const auto* role = std::get_if<RoleIs>(&says)) return has_role(*role, element);
  if (const auto* side = std::get_if<SideIs>(&says)) return lies_there(*side, element.side);
  if (const auto* die = std::get_if<DieIs>(&says)) return cut_or_lies(*die, element);
  if (const auto* glue = std::get_if<GlueIs>(&says)) return glue_says(element.glue, *glue);
  if (const auto* place = std::get_if<PlaceIs>(&says)) return says_place(element.at, place->words);
  if (std::holds_alternative<CountIs>(says)) return true;
  const bool of_piece = is_mention(says) && !std::holds_alternative<FoldIs>(says) &&
                        !std::holds_alternative<FeatureIs>(says) && !std::holds_alternative<OccasionIs>(says);
  if (of_piece) return mention_of(says, sample, &element) != nullptr;
  return sample_says(says, sample);
}

bool Judge::is_like(const Node& node, const SampleFacts& sample) {
  if (!ids_of_) return true;
  const auto [place, added] = alike_ids_.try_emplace(&node);
  if (added) place->second = ids_of_(node);
  return std::binary_search(place->second.begin(), place->second.end(), sample.id);
}

bool Judge::goes(const Node& node, const ElementFacts& element, const SampleFacts& sample) {
  const GoesWays ways = goes_ways(how_of(node));
  const std::vector<const ElementFacts*> with = others(ways, element, sample);
  if (node.children.empty()) return among(ways.own, element.goes_how) || !with.empty();
  const auto asked = asked_others(node);
  return std::any_of(asked.begin(), asked.end(), [&](const Node* piece) {
    int there = 0;
    for (const ElementFacts* other : with) {
      if (piece_meets(*piece, *other, sample)) there += other->count;
    }
    return there >= slot_of(*piece).wanted;
  });
}

bool Judge::words_there(const WordsAre& words, const SampleFacts& sample) {
  const auto phrases = wanted_phrases(words, stemmer_);
  return std::all_of(phrases.begin(), phrases.end(), [&](const auto& phrase) {
    return phrase.empty() || field_with(phrase, sample, words.on_card) != nullptr;
  });
}

bool Judge::sample_says(const Says& says, const SampleFacts& sample) {
  if (is_mention(says)) return mention_of(says, sample, nullptr) != nullptr;
  if (const auto* words = std::get_if<WordsAre>(&says)) return words_there(*words, sample);
  if (const auto* title = std::get_if<TitleIs>(&says)) return title->sample == sample.id;
  if (const auto* base = std::get_if<BasedOn>(&says)) return among(based_on_it(*base), sample.id);
  if (const auto* made = std::get_if<MadeIn>(&says)) {
    return !sample.made.empty() && sample.made >= made->from && (made->to.empty() || sample.made <= made->to);
  }
  if (const auto* closed = std::get_if<ClosedSizeIs>(&says)) {
    if (closed->size && !distance(relaxed_.rule(*closed->size), sample.closed)) return false;
    if (closed->form == ClosedSizeIs::Form::any) return true;
    if (!sample.closed.width || !sample.closed.height) return false;
    const std::string form = form_text(sample.closed);
    return form == (closed->form == ClosedSizeIs::Form::square      ? "square"
                    : closed->form == ClosedSizeIs::Form::landscape ? "landscape"
                                                                    : "portrait");
  }
  if (const auto* envelope = std::get_if<EnvelopeIs>(&says))
    return envelope_says(envelope_of(book_, sample.id), *envelope, settings(book_).unit);
  const auto* none = std::get_if<HasNo>(&says);
  if (!none) return false;
  Sql sql("SELECT 1 FROM sample s WHERE s.id = ");
  sql.value(sample.id) << " AND (" << empty_field_condition(none->field) << ")";
  Statement& row = bound(book_, sql);
  const bool empty = row.step();
  row.reset();
  return empty;
}

// Of what was offered with "or" the nearest that is met; of the pieces it goes with likewise.
std::int64_t Judge::distance_of(const Node& node, const ElementFacts& element, const SampleFacts& sample) {
  if (node.kind == Kind::none) return 0;
  if (node.kind == Kind::one) {
    const auto* size = std::get_if<SizeIs>(&node.constraint.front().says);
    return size ? distance(relaxed_.rule(*size), element.sides).value_or(0) : 0;
  }
  std::optional<std::int64_t> nearest;
  const auto offer = [&](std::int64_t far) { nearest = nearest ? std::min(*nearest, far) : far; };
  if (node.kind == Kind::goes) {
    for (const ElementFacts* other : others(goes_ways(how_of(node)), element, sample)) {
      for (const Node* piece : asked_others(node)) {
        if (piece_meets(*piece, *other, sample)) offer(distance_of(*piece, *other, sample));
      }
    }
    return nearest.value_or(0);
  }
  std::int64_t sum = 0;
  for (const Node& child : node.children) {
    const std::int64_t far = distance_of(child, element, sample);
    sum += far;
    if (node.kind == Kind::any && piece_meets(child, element, sample)) offer(far);
  }
  return node.kind == Kind::any ? nearest.value_or(0) : sum;
}

// Gives elements to slots one unit at a time, moving earlier ones along where that makes room.
Judge::Filled Judge::fill(const std::vector<Slot>& slots, const SampleFacts& sample) {
  struct Choice {
    std::size_t element;
    std::int64_t distance;
  };
  std::vector<std::vector<Choice>> choices(slots.size());
  for (std::size_t i = 0; i < slots.size(); ++i) {
    for (std::size_t e = 0; e < sample.elements.size(); ++e) {
      for (const Node* piece : slots[i].pieces) {
        if (!piece_meets(*piece, sample.elements[e], sample)) continue;
        choices[i].push_back({e, distance_of(*piece, sample.elements[e], sample)});
        break;
      }
    }
    std::stable_sort(choices[i].begin(), choices[i].end(),
                     [](const Choice& a, const Choice& b) { return a.distance < b.distance; });
  }
  std::vector<std::vector<int>> given(slots.size(), std::vector<int>(sample.elements.size(), 0));
  std::vector<int> left;
  for (const ElementFacts& element : sample.elements) left.push_back(element.count);
  std::vector<bool> seen;
  const auto give = [&](const auto& self, std::size_t slot) -> bool {
    seen[slot] = true;
    for (const Choice& choice : choices[slot]) {
      if (left[choice.element] > 0) {
        --left[choice.element];
        ++given[slot][choice.element];
        return true;
      }
    }
    for (const Choice& choice : choices[slot]) {
      for (std::size_t other = 0; other < slots.size(); ++other) {
        if (seen[other] || given[other][choice.element] == 0 || !self(self, other)) continue;
        --given[other][choice.element];
        ++given[slot][choice.element];
        return true;
      }
    }
    return false;
  };
  Filled filled;
  for (std::size_t i = 0; i < slots.size(); ++i) {
    for (int unit = 0; unit < slots[i].wanted && filled.all; ++unit) {
      seen.assign(slots.size(), false);
      filled.all = give(give, i);
    }
  }
  for (std::size_t i = 0; i < slots.size(); ++i) {
    filled.slots.emplace_back();
    for (const Choice& choice : choices[i]) {
      if (given[i][choice.element] > 0) filled.slots.back().push_back(&sample.elements[choice.element]);
    }
  }
  return filled;
}

}  // namespace insetbook
