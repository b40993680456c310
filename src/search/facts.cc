// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/facts.h"

#include <algorithm>

#include "measure/write.h"
#include "search/sample_text.h"
#include "search/text_asked.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

Unit unit_of(std::string_view word) {
  return word == "mm" ? Unit::mm : Unit::inch;
}

bool among(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}
bool among(const std::vector<std::int64_t>& list, std::optional<std::int64_t> id) {
  return id && std::find(list.begin(), list.end(), *id) != list.end();
}

void read_elements(const Book& book, SampleFacts& sample) {
  Statement& row = book.statement(
      "SELECT id, name, role, side, shape, width_nm, height_nm, placed, unit, set_id, die_id, line_id, "
      "in_line_id, "
      "count FROM element WHERE sample_id = ? ORDER BY position, id");
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
    sample.elements.push_back(std::move(element));
  }
  row.reset();
}

void read_mentions(const Book& book, SampleFacts& sample) {
  Statement& row = book.statement(
      "SELECT m.element_id, m.colour_id, m.supply_id, m.kind, coalesce(m.term, ''), m.written, "
      "coalesce(s.kind, '') FROM mention m LEFT JOIN supply s ON s.id = m.supply_id "
      "WHERE m.sample_id = ? ORDER BY m.id");
  row.bind(1, sample.id);
  while (row.step()) {
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

// The mention that meets it, of one piece or (null) of the sample and any of its pieces.
const MentionFacts* mention_of(const Says& says, const SampleFacts& sample, const ElementFacts* element) {
  for (const MentionFacts& mention : sample.mentions) {
    if (element && mention.element != element->id) continue;
    if (mention_meets(says, mention)) return &mention;
  }
  return nullptr;
}

std::string made_of(const MentionFacts& supply) {
  return "supply " + supply.written + " (" + supply.supply_kind + ")";
}

bool by_supply(const Says& says, const MentionFacts& mention) {
  return std::holds_alternative<MaterialIs>(says) && mention.kind == "supply";
}

std::string said_of(const Says& says, const MentionFacts& mention) {
  if (by_supply(says, mention)) return made_of(mention);
  if (mention.kind == "paper") return mention.written;
  if (mention.kind == "ink") return mention.written + " ink";
  return mention.written;
}

std::string element_name(const Book& book, std::optional<std::int64_t> id) {
  if (!id) return {};
  Statement& row = book.statement("SELECT name FROM element WHERE id = ?");
  row.bind(1, *id);
  const std::string name = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return name;
}

std::string size_text(const SidesOnRecord& sides, Unit unit) {
  if (!sides.width) return {};
  if (!sides.height || *sides.height == *sides.width) return write(Length::nm(*sides.width), unit);
  return write_size(Length::nm(*sides.width), Length::nm(*sides.height), unit);
}

// A round size is one figure; a square says so by its shape; any other has two.
std::string piece_text(const ElementFacts& element) {
  const std::string size = size_text(element.sides, element.unit);
  if (element.shape.empty() || size.empty()) return element.shape + size;
  return element.shape + " " + size;
}

void constraints_of(const Node& node, std::vector<const Constraint*>& out) {
  if (node.kind == Kind::none) return;
  for (const Constraint& constraint : node.constraint) out.push_back(&constraint);
  for (const Node& child : node.children) constraints_of(child, out);
}

std::string asked_text(const Constraint& constraint) {
  return constraint.text.empty() ? constraint.means : constraint.text;
}

// The words of a piece as they were typed, in the order of the question.
std::string asked_text(const Node& node) {
  std::vector<const Constraint*> all;
  constraints_of(node, all);
  std::stable_sort(all.begin(), all.end(),
                   [](const Constraint* a, const Constraint* b) { return a->span.begin < b->span.begin; });
  std::string text;
  std::string last;
  for (const Constraint* each : all) {
    const std::string words = asked_text(*each);
    if (words.empty() || words == last) continue;
    text += (text.empty() ? "" : " ") + words;
    last = words;
  }
  return text;
}

std::string form_text(const SidesOnRecord& closed) {
  const std::int64_t more = *closed.width - *closed.height;
  if (std::abs(more) <= square_within.nm()) return "square";
  return more > 0 ? "landscape" : "portrait";
}

// A stem begins as its word does, so most words need not be stemmed.
bool holds(const std::vector<std::string>& words, const std::vector<std::string>& phrase, Stemmer& stemmer) {
  const auto same = [&](const std::string& word, const std::string& stem) {
    return word.front() == stem.front() && stemmer.stem(word) == stem;
  };
  return std::search(words.begin(), words.end(), phrase.begin(), phrase.end(), same) != words.end();
}

std::string shortened(const std::string& text) {
  constexpr std::size_t longest = 80;
  if (text.size() <= longest) return text;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end) + "…";
}

}  // namespace

FactsNeeded facts_needed(const Node& node) {
  FactsNeeded needed{node.kind == Kind::piece, false};
  for (const Constraint& constraint : node.constraint) needed.mentions = is_mention(constraint.says);
  for (const Node& child : node.children) {
    const FactsNeeded of_child = facts_needed(child);
    needed.elements = needed.elements || of_child.elements;
    needed.mentions = needed.mentions || of_child.mentions;
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
  if (needed.mentions) read_mentions(book, sample);
  return sample;
}

Judge::Judge(const Book& book, const Node& all, const Relaxed& relaxed)
    : book_(book), all_(all), relaxed_(relaxed) {}

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
  if (node.kind == Kind::one) return piece_says(node.constraint.front().says, element, sample);
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
const TextField* Judge::field_with(const std::vector<std::string>& phrase, const SampleFacts& sample) {
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
    if (!said.words) said.words = words_of(said.field.text);
    if (holds(*said.words, phrase, stemmer_)) return &said.field;
  }
}

bool Judge::cut_or_lies(const DieIs& die, const ElementFacts& element) {
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
  if (const auto* role = std::get_if<RoleIs>(&says)) return among(role->terms, element.role);
  if (const auto* side = std::get_if<SideIs>(&says)) return side->side == element.side;
  if (const auto* die = std::get_if<DieIs>(&says)) return cut_or_lies(*die, element);
  if (std::holds_alternative<CountIs>(says)) return true;
  const bool of_piece = is_mention(says) && !std::holds_alternative<FoldIs>(says) &&
                        !std::holds_alternative<FeatureIs>(says) && !std::holds_alternative<OccasionIs>(says);
  if (of_piece) return mention_of(says, sample, &element) != nullptr;
  return sample_says(says, sample);
}

bool Judge::words_there(const WordsAre& words, const SampleFacts& sample) {
  const auto phrases = wanted_phrases(words, stemmer_);
  return std::all_of(phrases.begin(), phrases.end(), [&](const auto& phrase) {
    return phrase.empty() || field_with(phrase, sample) != nullptr;
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
  const auto* none = std::get_if<HasNo>(&says);
  if (!none) return false;
  Sql sql("SELECT 1 FROM sample s WHERE s.id = ");
  sql.value(sample.id) << " AND (" << empty_field_condition(none->field) << ")";
  Statement& row = bound(book_, sql);
  const bool empty = row.step();
  row.reset();
  return empty;
}

std::int64_t Judge::distance_of(const Node& piece, const ElementFacts& element) const {
  std::int64_t sum = 0;
  for (const SizeIs* size : sizes_in(piece)) sum += distance(relaxed_.rule(*size), element.sides).value_or(0);
  return sum;
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
        choices[i].push_back({e, distance_of(*piece, sample.elements[e])});
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

std::string Judge::why(const Node& piece, const ElementFacts& element, const SampleFacts& sample) {
  std::vector<const Constraint*> asked;
  constraints_of(piece, asked);
  std::string said;
  const auto add = [&](const std::string& text) {
    if (!text.empty()) said += (said.empty() ? "" : ", ") + text;
  };
  const auto of = [&](auto is) {
    return std::any_of(asked.begin(), asked.end(), [&](const Constraint* each) { return is(each->says); });
  };
  const bool sized = of([](const Says& says) { return std::holds_alternative<SizeIs>(says); });
  const bool shaped = of([](const Says& says) { return std::holds_alternative<ShapeIs>(says); });
  if (sized) add(piece_text(element));
  if (!sized && shaped) add(element.shape);
  for (const Constraint* each : asked) {
    const Says& says = each->says;
    if (!piece_says(says, element, sample)) continue;
    if (const auto* size = std::get_if<SizeIs>(&says)) {
      const bool compared = size->relation == Relation::exact || size->relation == Relation::about;
      const std::string off = difference(*size, element.sides);
      if (compared && off != "exactly that size") add(off);
    } else if (std::holds_alternative<RoleIs>(says)) {
      add(element.role);
    } else if (const auto* side = std::get_if<SideIs>(&says)) {
      add(side->side);
    } else if (const auto* die = std::get_if<DieIs>(&says)) {
      add((die->lies_in ? "lies in " : "cut by ") + die->said);
    } else if (std::holds_alternative<CountIs>(says)) {
      if (element.count > 1) add(std::to_string(element.count) + " of them");
    } else if (const MentionFacts* mention = mention_of(says, sample, &element)) {
      add(said_of(says, *mention));
    }
  }
  return said;
}

void Judge::explain_slot(const Slot& slot, const std::vector<const ElementFacts*>& elements,
                         const SampleFacts& sample, std::vector<Matched>& out) {
  for (const ElementFacts* element : elements) {
    for (const Node* piece : slot.pieces) {
      if (!piece_meets(*piece, *element, sample)) continue;
      out.push_back({asked_text(*piece), element->name, why(*piece, *element, sample)});
      break;
    }
  }
}

void Judge::explain_words(const WordsAre& words, const std::string& text, const SampleFacts& sample,
                          std::vector<Matched>& out) {
  std::vector<std::string> seen;
  for (const auto& phrase : wanted_phrases(words, stemmer_)) {
    const TextField* field = phrase.empty() ? nullptr : field_with(phrase, sample);
    if (!field) continue;
    const std::string said = field->label + ": " + shortened(field->text);
    if (!among(seen, said)) out.push_back({text, field->element, said});
    seen.push_back(said);
  }
}

void Judge::explain_other(const Node& node, const SampleFacts& sample, std::vector<Matched>& out) {
  if (node.kind == Kind::none || !sample_meets(node, sample)) return;
  if (node.kind == Kind::piece) {
    const Filled filled = fill({slot_of(node)}, sample);
    explain_slot(slot_of(node), filled.slots.front(), sample, out);
    return;
  }
  for (const Node& child : node.children) explain_other(child, sample, out);
  if (node.kind != Kind::one) return;
  const Constraint& asked = node.constraint.front();
  const std::string text = asked_text(asked);
  if (const auto* words = std::get_if<WordsAre>(&asked.says)) {
    explain_words(*words, text, sample, out);
  } else if (const MentionFacts* mention = mention_of(asked.says, sample, nullptr)) {
    const std::string said =
        by_supply(asked.says, *mention) ? made_of(*mention) : mention->kind + ": " + mention->written;
    out.push_back({text, element_name(book_, mention->element), said});
  } else if (std::holds_alternative<MadeIn>(asked.says)) {
    out.push_back({text, "", "made " + sample.made});
  } else if (const auto* closed = std::get_if<ClosedSizeIs>(&asked.says)) {
    std::string said = "closed " + write_size(Length::nm(*sample.closed.width),
                                              Length::nm(sample.closed.height.value_or(*sample.closed.width)),
                                              sample.closed_unit);
    if (closed->form != ClosedSizeIs::Form::any) said += ", " + form_text(sample.closed);
    out.push_back({text, "", said});
  } else if (std::holds_alternative<BasedOn>(asked.says)) {
    out.push_back({text, "", "based on it"});
  } else if (std::holds_alternative<TitleIs>(asked.says)) {
    out.push_back({text, "", "title: " + sample.title});
  } else if (const auto* none = std::get_if<HasNo>(&asked.says)) {
    out.push_back({text, "", "no " + none->field});
  }
}

std::vector<Matched> Judge::explain(const SampleFacts& sample) {
  std::vector<Matched> out;
  const Parts parts = parts_of(all_);
  const Filled filled = fill(parts.slots, sample);
  for (std::size_t i = 0; i < parts.slots.size(); ++i)
    explain_slot(parts.slots[i], filled.slots[i], sample, out);
  for (const Node* other : parts.others) explain_other(*other, sample, out);
  return out;
}

std::string Judge::differences(const SampleFacts& sample) {
  std::string said;
  const auto add = [&](const std::string& what, const SizeIs& size, const SidesOnRecord& sides) {
    if (distance(size_rule(size), sides)) return;  // it meets the size as it was asked
    said += (said.empty() ? "" : "; ") + what + ": " + difference(size, sides);
  };
  const Parts parts = parts_of(all_);
  const Filled filled = fill(parts.slots, sample);
  for (std::size_t i = 0; i < parts.slots.size(); ++i) {
    if (filled.slots[i].empty()) continue;
    for (const SizeIs* size : sizes_in(*parts.slots[i].pieces.front())) {
      const ElementFacts& element = *filled.slots[i].front();
      if (relaxed_.holds(*size)) add(piece_text(element), *size, element.sides);
    }
  }
  for (const Node* other : parts.others) {
    for (const SizeIs* size : sizes_in(*other)) {
      if (relaxed_.holds(*size))
        add("closed " + size_text(sample.closed, sample.closed_unit), *size, sample.closed);
    }
  }
  return said;
}

}  // namespace insetbook
