// SPDX-License-Identifier: GPL-3.0-or-later
//
// Why a sample is a hit, and what the nearest lack: the second half of Judge (facts.h).
#include <algorithm>

#include "measure/read.h"
#include "measure/write.h"
#include "search/alike.h"
#include "search/envelopes.h"
#include "search/facts_parts.h"
#include "search/said.h"
#include "search/snippet.h"
#include "search/text_asked.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

std::string made_of(const MentionFacts& supply) {
  return "supply " + supply.written + " (" + supply.supply_kind + ")";
}

bool by_supply(const Says& says, const MentionFacts& mention) {
  return std::holds_alternative<MaterialIs>(says) && mention.kind == "supply";
}

std::string said_of(const Says& says, const MentionFacts& mention) {
  if (by_supply(says, mention)) return made_of(mention);
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

// A round size is one figure; a square says so by its shape; any other has two.
std::string size_text(const ElementFacts& element) {
  const SidesOnRecord& sides = element.sides;
  if (!sides.width) return {};
  const Length width = Length::nm(*sides.width);
  if (!sides.height || *sides.height == *sides.width) return write(width, element.unit);
  const Length height = Length::nm(*sides.height);
  // A size without a way round is kept with its lesser side first, whichever was written first.
  const Result<Size> written =
      sides.placed ? failure(Problem()) : read_size(element.size_written, element.unit);
  if (written && written->width == height && written->height == width)
    return write_size(height, width, element.unit);
  return write_size(width, height, element.unit);
}

std::string piece_text(const ElementFacts& element) {
  const std::string size = size_text(element);
  if (element.shape.empty() || size.empty()) return element.shape + size;
  return element.shape + " " + size;
}

std::string closed_text(const SampleFacts& sample) {
  return write_size(Length::nm(*sample.closed.width),
                    Length::nm(sample.closed.height.value_or(*sample.closed.width)), sample.closed_unit);
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

// What is asked of the piece itself, and what it goes with; nothing that is excluded.
void asked_of_piece(const Node& node, std::vector<const Node*>& out) {
  if (node.kind == Kind::one || node.kind == Kind::goes) {
    out.push_back(&node);
  } else if (node.kind != Kind::none) {
    for (const Node& child : node.children) asked_of_piece(child, out);
  }
}

template <class T>
bool asks(const std::vector<const Node*>& asked) {
  return std::any_of(asked.begin(), asked.end(), [](const Node* node) {
    return node->kind == Kind::one && std::holds_alternative<T>(node->constraint.front().says);
  });
}

}  // namespace

Said Judge::with_what(const Node& goes, const ElementFacts& element, const SampleFacts& sample) {
  const GoesWays ways = goes_ways(how_of(goes));
  const std::string word(goes_word(how_of(goes)));
  Said said;
  for (const ElementFacts* other : others(ways, element, sample)) {
    const auto asked = asked_others(goes);
    const auto met = std::find_if(asked.begin(), asked.end(),
                                  [&](const Node* piece) { return piece_meets(*piece, *other, sample); });
    if (met == asked.end() && !asked.empty()) continue;
    said.add(word + " " + other->name, true);
    if (met == asked.end()) continue;
    const Said more = why(**met, *other, sample);
    if (!more.text.empty()) said.add_in_brackets(more);
  }
  if (!said.text.empty()) return said;
  const bool with_word = element.goes.rfind(element.goes_how, 0) == 0;
  said.add(with_word ? element.goes : element.goes_how + " " + element.goes, true);
  return said;
}

Said Judge::why(const Node& piece, const ElementFacts& element, const SampleFacts& sample) {
  std::vector<const Node*> asked;
  asked_of_piece(piece, asked);
  const bool sized = asks<SizeIs>(asked);
  const bool shaped = asks<ShapeIs>(asked);
  Said said;
  if (sized || shaped) said.add(element.shape, shaped);
  if (sized) said.add(size_text(element), true, " ");
  for (const Node* each : asked) {
    if (!piece_meets(*each, element, sample)) continue;
    if (each->kind == Kind::goes) {
      said.add(with_what(*each, element, sample));
    } else {
      said_of_piece(each->constraint.front().says, element, sample, said);
    }
  }
  return said;
}

void Judge::said_of_piece(const Says& says, const ElementFacts& element, const SampleFacts& sample,
                          Said& said) {
  if (const auto* size = std::get_if<SizeIs>(&says)) {
    const bool compared = size->relation == Relation::exact || size->relation == Relation::about;
    const std::string off = difference(*size, element.sides);
    if (compared && off != "exactly that size") said.add(off, false);
  } else if (const auto* role = std::get_if<RoleIs>(&says)) {
    // Where only its name says so, the name is shown.
    said.add(among(role->terms, element.role) ? element.role : "called " + element.name, true);
  } else if (std::holds_alternative<GlueIs>(says)) {
    said.add("stuck:", false);
    said.add(element.glue, true, " ");
  } else if (std::holds_alternative<PlaceIs>(says)) {
    said.add(element.at, true);
  } else if (const auto* side = std::get_if<SideIs>(&says)) {
    said.add(side->side, true);
  } else if (const auto* die = std::get_if<DieIs>(&says)) {
    said.add((die->lies_in ? "lies in " : "cut by ") + die->said, true);
  } else if (std::holds_alternative<CountIs>(says)) {
    if (element.count > 1) said.add(std::to_string(element.count) + " of them", true);
  } else if (const MentionFacts* mention = mention_of(says, sample, &element)) {
    said.add(said_of(says, *mention), true);
  }
}

void Judge::explain_slot(const Slot& slot, const std::vector<const ElementFacts*>& elements,
                         const SampleFacts& sample, std::vector<Matched>& out) {
  for (const ElementFacts* element : elements) {
    for (const Node* piece : slot.pieces) {
      if (!piece_meets(*piece, *element, sample)) continue;
      Said said = why(*piece, *element, sample);
      out.push_back({asked_text(*piece), element->name, std::move(said.text), std::move(said.marks)});
      break;
    }
  }
}

// A field that holds several of the words is shown once, with all of them marked.
void Judge::explain_words(const WordsAre& words, const std::string& text, const SampleFacts& sample,
                          std::vector<Matched>& out) {
  std::vector<const TextField*> shown;
  const auto phrases = wanted_phrases(words, stemmer_);
  for (const auto& phrase : phrases) {
    const TextField* field = phrase.empty() ? nullptr : field_with(phrase, sample, words.on_card);
    if (!field || std::find(shown.begin(), shown.end(), field) != shown.end()) continue;
    shown.push_back(field);
    Said said;
    said.add(field->label + ":", false);
    const Snippet snippet = snippet_of(field->text, phrases, stemmer_);
    said.add({snippet.text, snippet.marks}, " ");
    out.push_back({text, field->element, std::move(said.text), std::move(said.marks)});
  }
}

void Judge::explain_other(const Node& node, const SampleFacts& sample, std::vector<Matched>& out) {
  if (node.kind == Kind::none) return;
  // One word or one phrase is looked for in the texts only once: where it is not there, nothing is shown.
  const auto* words = node.kind == Kind::one ? std::get_if<WordsAre>(&node.constraint.front().says) : nullptr;
  const bool shown_where_met = words && (words->phrase || words->words.size() == 1);
  if (!shown_where_met && !sample_meets(node, sample)) return;
  if (node.kind == Kind::piece) {
    const Filled filled = fill({slot_of(node)}, sample);
    explain_slot(slot_of(node), filled.slots.front(), sample, out);
    return;
  }
  for (const Node& child : node.children) explain_other(child, sample, out);
  if (node.kind == Kind::one) explain_says(node.constraint.front(), sample, out);
}

// "both: easel fold, navy circle 2-3/8 in; near: circle 2-1/4 in for circle 2 in". A colour is not said again
// where a piece was said with it.
Said Judge::in_common(const AlikeTo& alike, const SampleFacts& sample) {
  constexpr std::size_t most_said = 8;
  const auto [place, added] = things_.try_emplace(&alike);
  if (added) place->second = things_of(book_, alike.sample, stemmer_);
  std::vector<std::int64_t> coloured;
  std::vector<std::string> parts, near;
  for (const Thing& thing : place->second) {
    const bool word = thing.kind == Thing::Kind::word;
    if (word ? field_with({thing.word}, sample) == nullptr : !holds(thing, sample)) continue;
    const bool said_with_piece =
        thing.kind == Thing::Kind::colour && thing.mention == "paper" && among(coloured, thing.id);
    if (said_with_piece) continue;
    std::string colour;
    const ElementFacts* nearest = nullptr;
    for (const ElementFacts& element : sample.elements) {
      if (thing.kind != Thing::Kind::piece || !holds(thing, element)) continue;
      if (!nearest || off_by(thing, element) < off_by(thing, *nearest)) nearest = &element;
      for (std::size_t i = 0; i < thing.of_colours.size() && colour.empty(); ++i) {
        const ColourIs paper{ColourUse::paper, {thing.of_colours[i]}, ""};
        if (!mention_of(paper, sample, &element)) continue;
        colour = thing.colour_names[i] + " ";
        coloured.push_back(thing.of_colours[i]);
      }
    }
    // A size that is only near is no size that both have.
    const bool same = !nearest || off_by(thing, *nearest) <= tolerance(SizeIs{}).nm();
    const std::string part =
        same ? colour + thing.said : colour + piece_text(*nearest) + " for " + thing.said;
    std::vector<std::string>& list = same ? parts : near;
    if (!among(list, part)) list.push_back(part);
  }
  Said said;
  // Some of the room is for what is near.
  constexpr std::size_t most_near = 2;
  std::size_t left = most_said - std::min(near.size(), most_near);
  const auto add = [&](std::string_view what, const std::vector<std::string>& list) {
    if (list.empty() || left == 0) return;
    said.add(std::string(what), false, "; ");
    for (std::size_t i = 0; i < list.size() && left > 0; ++i, --left)
      said.add(list[i], true, i == 0 ? " " : ", ");
  };
  add("both:", parts);
  left = most_said - std::min(parts.size(), most_said - std::min(near.size(), most_near));
  add("near:", near);
  const std::size_t all = parts.size() + near.size();
  if (all > most_said) said.add("and " + std::to_string(all - most_said) + " more", false);
  return said;
}

void Judge::explain_says(const Constraint& asked, const SampleFacts& sample, std::vector<Matched>& out) {
  const std::string text = asked_text(asked);
  Said said;
  std::string element;
  if (const auto* words = std::get_if<WordsAre>(&asked.says)) return explain_words(*words, text, sample, out);
  if (const MentionFacts* mention = mention_of(asked.says, sample, nullptr)) {
    if (!by_supply(asked.says, *mention)) said.add(mention->kind + ":", false);
    said.add(by_supply(asked.says, *mention) ? made_of(*mention) : mention->written, true, " ");
    element = element_name(book_, mention->element);
  } else if (std::holds_alternative<MadeIn>(asked.says)) {
    said.add("made", false);
    said.add(sample.made, true, " ");
  } else if (const auto* closed = std::get_if<ClosedSizeIs>(&asked.says)) {
    said.add("closed", false);
    said.add(closed_text(sample), closed->size.has_value(), " ");
    if (closed->form != ClosedSizeIs::Form::any) said.add(form_text(sample.closed), true);
  } else if (std::holds_alternative<BasedOn>(asked.says)) {
    said.add("based on it", true);
  } else if (std::holds_alternative<TitleIs>(asked.says)) {
    said.add("title:", false);
    said.add(sample.title, true, " ");
  } else if (const auto* alike = std::get_if<AlikeTo>(&asked.says)) {
    said = in_common(*alike, sample);
    if (said.text.empty()) return;
  } else if (std::holds_alternative<EnvelopeIs>(asked.says)) {
    said.add("envelope:", false);
    said.add(envelope_of(book_, sample.id), true, " ");
  } else if (const auto* none = std::get_if<HasNo>(&asked.says)) {
    said.add("no " + none->field, true);
  } else {
    return;
  }
  out.push_back({text, element, std::move(said.text), std::move(said.marks)});
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

// The sizes of the piece, and of those it goes with, that it meets only as they were relaxed.
void Judge::sizes_missed(const Node& node, const ElementFacts& element, const SampleFacts& sample,
                         Said& said) {
  if (node.kind == Kind::none) return;
  if (node.kind == Kind::goes) {
    const Node* nearest_piece = nullptr;
    const ElementFacts* nearest = nullptr;
    for (const ElementFacts* other : others(goes_ways(how_of(node)), element, sample)) {
      for (const Node* piece : asked_others(node)) {
        if (!piece_meets(*piece, *other, sample)) continue;
        if (nearest && distance_of(*piece, *other, sample) >= distance_of(*nearest_piece, *nearest, sample))
          continue;
        nearest = other;
        nearest_piece = piece;
      }
    }
    if (nearest) sizes_missed(*nearest_piece, *nearest, sample, said);
    return;
  }
  for (const Node& child : node.children) {
    if (node.kind != Kind::any || piece_meets(child, element, sample))
      sizes_missed(child, element, sample, said);
  }
  if (node.kind != Kind::one) return;
  const auto* size = std::get_if<SizeIs>(&node.constraint.front().says);
  if (!size || !relaxed_.holds(*size) || distance(size_rule(*size), element.sides)) return;
  said.add(piece_text(element) + ": " + difference(*size, element.sides), false, "; ");
}

std::string Judge::differences(const SampleFacts& sample) {
  Said said;
  const Parts parts = parts_of(all_);
  const Filled filled = fill(parts.slots, sample);
  for (std::size_t i = 0; i < parts.slots.size(); ++i) {
    if (filled.slots[i].empty()) continue;
    const ElementFacts& element = *filled.slots[i].front();
    for (const Node* piece : parts.slots[i].pieces) {
      if (!piece_meets(*piece, element, sample)) continue;
      sizes_missed(*piece, element, sample, said);
      break;
    }
  }
  for (const Node* other : parts.others) {
    for (const SizeIs* size : sizes_in(*other)) {
      if (!relaxed_.holds(*size) || !sample.closed.width || distance(size_rule(*size), sample.closed))
        continue;
      said.add("closed " + closed_text(sample) + ": " + difference(*size, sample.closed), false, "; ");
    }
  }
  return said.text;
}

// --- what it has instead ---

namespace {

// "sage" of a piece's papers or inks, "sage and kelp".
std::string colours_of(ColourUse use, const ElementFacts& element, const SampleFacts& sample) {
  std::string said;
  for (const MentionFacts& mention : sample.mentions) {
    const bool paper = mention.kind == "paper" && use != ColourUse::ink;
    const bool ink = mention.kind == "ink" && use != ColourUse::paper;
    if (mention.element != element.id || !(paper || ink)) continue;
    said += (said.empty() ? "" : " and ") + mention.written + (use == ColourUse::ink ? " ink" : "");
  }
  return said;
}

std::string written_of(std::string_view kind, const SampleFacts& sample) {
  std::string said;
  for (const MentionFacts& mention : sample.mentions) {
    if (mention.kind == kind && !mention.element) said += (said.empty() ? "" : ", ") + mention.written;
  }
  return said;
}

std::string instead(const std::string& has, const Constraint& asked) {
  return has.empty() ? std::string() : has + " instead of " + asked_text(asked);
}

}  // namespace

const ElementFacts* Judge::nearest_element(const Node& piece, const SampleFacts& sample) {
  Slot slot = slot_of(piece);
  slot.wanted = 1;
  const Filled filled = fill({slot}, sample);
  return filled.slots.front().empty() ? nullptr : filled.slots.front().front();
}

std::string Judge::instead_in_piece(const Node& missed, const ElementFacts& element,
                                    const SampleFacts& sample) {
  if (missed.kind == Kind::goes) {
    for (const Node* piece : asked_others(missed)) {
      for (const ElementFacts& other : sample.elements) {
        if (other.id == element.id || !piece_meets(*piece, other, sample)) continue;
        const std::string how(goes_word(how_of(missed)));
        return element.name + " lies beside, not " + how + ", " + asked_text(*piece);
      }
    }
    return {};
  }
  if (missed.kind != Kind::one) return {};
  const Constraint& asked = missed.constraint.front();
  if (const auto* colour = std::get_if<ColourIs>(&asked.says))
    return instead(colours_of(colour->use, element, sample), asked);
  if (std::holds_alternative<ShapeIs>(asked.says)) return instead(element.shape, asked);
  if (std::holds_alternative<RoleIs>(asked.says)) return instead(element.role, asked);
  if (std::holds_alternative<SideIs>(asked.says)) return instead(element.side, asked);
  const auto* size = std::get_if<SizeIs>(&asked.says);
  if (!size || !element.sides.width) return {};
  return piece_text(element) + ": " + difference(*size, element.sides);
}

std::string Judge::has_instead(const Node& missed, const SampleFacts& sample) {
  if (missed.kind != Kind::one) return {};
  const Says& says = missed.constraint.front().says;
  if (std::holds_alternative<FoldIs>(says)) return written_of("fold", sample);
  if (std::holds_alternative<OccasionIs>(says)) return written_of("occasion", sample);
  if (std::holds_alternative<MadeIn>(says)) return sample.made.empty() ? "" : "made " + sample.made;
  if (std::holds_alternative<ClosedSizeIs>(says) && sample.closed.width)
    return "closed " + closed_text(sample);
  return {};
}

}  // namespace insetbook
