// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "language/recognise.h"
#include "language/says.h"
#include "text/utf8.h"

namespace insetbook {

Says says_of_term(VocabularyName in, std::vector<std::string> terms, std::string label) {
  switch (in) {
    case VocabularyName::technique:
      return TechniqueIs{std::move(terms)};
    case VocabularyName::fold:
      return FoldIs{std::move(terms), std::move(label)};
    case VocabularyName::feature:
      return FeatureIs{std::move(terms)};
    case VocabularyName::shape:
      return ShapeIs{std::move(terms)};
    case VocabularyName::occasion:
      return OccasionIs{std::move(terms)};
    case VocabularyName::role:
      return RoleIs{std::move(terms)};
    case VocabularyName::material:
      return MaterialIs{std::move(terms)};
    case VocabularyName::adhesive:
      return GlueIs{std::move(terms)};
    case VocabularyName::status:
    case VocabularyName::colour_word:
      break;
  }
  return WordsAre{{std::move(label)}, false};
}

const std::vector<std::string>& Recogniser::with_narrower(VocabularyName in, const std::string& id) {
  const auto key = std::make_pair(in, id);
  const auto known = narrower_.find(key);
  if (known != narrower_.end()) return known->second;
  std::vector<std::string> terms = context_.vocabulary.with_narrower(in, id);
  if (terms.empty()) terms.push_back(id);
  return narrower_.emplace(key, std::move(terms)).first->second;
}

namespace {

// "frame", "frames": as the words of a name may be.
void add_forms(const std::string& label, std::vector<std::string>& out) {
  out.push_back(label);
  const auto ends = [&](std::string_view with) { return label.ends_with(with); };
  if (ends("y") && !ends("ey") && !ends("ay") && !ends("oy"))
    out.push_back(label.substr(0, label.size() - 1) + "ies");
  else
    out.push_back(label + (ends("s") || ends("x") || ends("ch") || ends("sh") ? "es" : "s"));
}

// A name that holds "front panel" holds "panel": the shorter one is enough. Sorted, each once.
std::vector<std::string> without_longer(std::vector<std::string> labels) {
  std::ranges::sort(labels);
  labels.erase(std::ranges::unique(labels).begin(), labels.end());
  std::vector<std::string> kept;
  for (const std::string& label : labels) {
    const std::string words = " " + label + " ";
    const bool longer = std::ranges::any_of(labels, [&](const std::string& other) {
      return other != label && words.find(" " + other + " ") != std::string::npos;
    });
    if (!longer) kept.push_back(label);
  }
  return kept;
}

}  // namespace

// The term with its narrower ones. A role may be said by a piece's name alone, under any label of the term;
// the labels of narrower terms are not looked for there: no butterfly of a name need be an embellishment.
Says Recogniser::says_of(const TermMatch& match) {
  Says says = says_of_term(match.vocabulary, with_narrower(match.vocabulary, match.id), match.label);
  // A scallop of which no more was recorded is round more often than not (common practice, no source).
  if (auto* shape = std::get_if<ShapeIs>(&says); shape && match.id == "scalloped circle")
    shape->terms.emplace_back("scalloped");
  auto* role = std::get_if<RoleIs>(&says);
  // The base is the card itself, whatever a piece is called.
  const bool may_be_called = role && match.id != "base";
  const auto term = may_be_called ? context_.vocabulary.term(match.vocabulary, match.id) : std::nullopt;
  if (!term) return says;
  add_forms(term->id, role->called);
  for (const std::string& label : term->labels) add_forms(fold(label), role->called);
  role->called = without_longer(std::move(role->called));
  return says;
}

const std::vector<std::int64_t>& Recogniser::colours_of_word(const std::string& word,
                                                             std::optional<Shade> shade) {
  const std::string key = shade ? std::string(shade_word(*shade)) + " " + word : word;
  const auto known = colours_.find(key);
  if (known != colours_.end()) return known->second;
  return colours_
      .emplace(key,
               shade ? context_.names.colours_of_shade(word, *shade) : context_.names.colours_of_word(word))
      .first->second;
}

void Recogniser::resolve_term(Seen& it, const TermMatch& match) {
  if (match.vocabulary == VocabularyName::colour_word) {
    ColourIs colour;
    const std::string said = it.shade ? std::string(shade_word(*it.shade)) + " " + match.id : match.id;
    colour.colours = colours_of_word(match.id, it.shade);
    colour.said = said + " (by value)";
    // A colour that the owner called just so is meant as well, also where it has no value.
    bool by_name = false;
    for (const NamedRecord& record : exactly(it.word))
      if (record.kind == NameKind::colour) {
        by_name = true;
        if (std::ranges::find(colour.colours, record.id) == colour.colours.end())
          colour.colours.push_back(record.id);
      }
    if (by_name && colour.colours.size() == 1) colour.said = said;
    if (colour.colours.empty() && it.shade) {
      it.notes.push_back("no colour of the book is " + said + " by value");
    } else if (colour.colours.empty()) {
      it.says.reset();
      it.as = As::text;
      it.notes.push_back("no colour of the book is " + match.id + " by value: \"" + it.word +
                         "\" is looked for as a word");
      return;
    }
    std::ranges::sort(colour.colours);
    it.says = std::move(colour);
    return;
  }
  if (match.vocabulary == VocabularyName::adhesive)
    it.says = glue_of(match.id);
  else
    it.says = says_of(match);
  const std::string vocabulary(vocabulary_word(match.vocabulary));
  it.means = vocabulary + " " + match.label;
  if (const auto* role = std::get_if<RoleIs>(&*it.says); role && !role->called.empty())
    it.means += ", or called so";
  if (const auto* fold = std::get_if<FoldIs>(&*it.says); fold && fold->terms.size() > 1)
    it.means += " or any kind of it";
}

void Recogniser::resolve_colour(Seen& it) {
  const NamedRecord& first = it.named.front();
  if (first.kind == NameKind::colour) {
    ColourIs colour;
    colour.said = first.name;
    for (const NamedRecord& record : it.named)
      if (record.kind == NameKind::colour) colour.colours.push_back(record.id);
    it.says = std::move(colour);
    return;
  }
  // A supply's name in full ("stamp, Hedge and Ditch, wren") is longer than what it is asked by.
  SupplyIs supply;
  const std::string asked = it.counted ? it.word.substr(0, it.word.size() - 1) : it.word;
  supply.said = fold(first.name) == asked ? first.name : asked;
  for (const NamedRecord& record : it.named) supply.supplies.push_back(record.id);
  it.says = std::move(supply);
}

// What a name of the book means in the trade.
void Recogniser::offer_terms(Seen& it) const {
  if (it.terms.empty() || !it.says) return;
  const TermMatch& term = it.terms.front();
  it.other.push_back({std::string(text_.substr(it.span.begin, it.span.end - it.span.begin)),
                      in_words(*it.says),
                      std::string(vocabulary_word(term.vocabulary)) + ":" + quoted(term.label)});
}

// The likeliest other meaning of the words, as a question that asks for it.
void Recogniser::offer_other(Seen& it, const std::vector<TermMatch>& terms, const TermMatch& taken) const {
  for (const TermMatch& other : terms) {
    const bool same = other.vocabulary == taken.vocabulary && other.id == taken.id;
    if (same || other.vocabulary == VocabularyName::colour_word ||
        other.vocabulary == VocabularyName::status || other.vocabulary == VocabularyName::adhesive)
      continue;
    it.other.push_back({std::string(text_.substr(it.span.begin, it.span.end - it.span.begin)),
                        std::string(vocabulary_word(taken.vocabulary)) + " " + taken.label,
                        std::string(vocabulary_word(other.vocabulary)) + ":" + quoted(other.label)});
    return;
  }
}

// "a frame" could have been "A-frame".
void Recogniser::offer_with_article(Seen& it, const TermMatch& taken) const {
  if (it.first == 0 || !is_word(it.first - 1, "a")) return;
  const auto folds = context_.vocabulary.find("a " + it.word, VocabularyName::fold);
  if (folds.empty()) return;
  it.other.push_back({std::string(typed(it.first - 1, it.last)),
                      std::string(vocabulary_word(taken.vocabulary)) + " " + taken.label,
                      "fold:" + quoted(folds.front().label)});
}

// "inside panel": a panel on the inside is one too.
std::vector<Says> Recogniser::on_the_inside(const TermMatch& role) {
  constexpr std::string_view inside = "inside ";
  if (!role.id.starts_with(inside)) return {};
  const std::string rest = role.id.substr(inside.size());
  if (!context_.vocabulary.term(VocabularyName::role, rest)) return {};
  return {says_of({VocabularyName::role, rest, rest, true, 0}), SideIs{"inside"}};
}

// "hand-cut image": an image of which hand cutting is recorded is one too.
std::vector<Says> Recogniser::treated_so(const TermMatch& role) {
  for (std::size_t end = role.id.find(' '); end != std::string::npos; end = role.id.find(' ', end + 1)) {
    const auto technique = context_.vocabulary.find(role.id.substr(0, end), VocabularyName::technique);
    const auto rest = context_.vocabulary.find(role.id.substr(end + 1), VocabularyName::role);
    if (!technique.empty() && !rest.empty() && rest.front().id != role.id)
      return {says_of(rest.front()), says_of(technique.front())};
  }
  return {};
}

void Recogniser::resolve(Seen& it) {
  if (it.as == As::named) {
    resolve_colour(it);
    return offer_terms(it);
  }
  if (it.as == As::paper || it.as == As::ink) {
    const auto material = std::ranges::find(it.terms, VocabularyName::material, &TermMatch::vocabulary);
    if (material != it.terms.end()) resolve_term(it, TermMatch(*material));
    return;
  }
  if (it.as != As::term || it.terms.empty()) return;
  if (it.of_status) return resolve_status(it);
  const TermMatch taken = it.terms.front();
  resolve_term(it, taken);
  if (!it.says) return;
  offer_with_article(it, taken);
  const bool role = taken.vocabulary == VocabularyName::role;
  if (role && std::ranges::any_of(it.terms, [&](const TermMatch& match) {
        return match.vocabulary == VocabularyName::shape && match.likelihood < taken.likelihood;
      })) {
    it.also = {says_of(*std::ranges::find(it.terms, VocabularyName::shape, &TermMatch::vocabulary))};
  } else if (role || taken.vocabulary == VocabularyName::material) {
    const auto second = std::ranges::find(it.terms, role ? VocabularyName::material : VocabularyName::role,
                                          &TermMatch::vocabulary);
    if (second != it.terms.end()) {
      it.also = {says_of(*second)};
      it.also_means = std::string(vocabulary_word(second->vocabulary)) + " " + second->label;
    }
  }
  if (role && it.also.empty()) it.also = on_the_inside(taken);
  if (role && it.also.empty()) it.also = treated_so(taken);
  if (const auto* glue = std::get_if<GlueIs>(&*it.says); glue && !it.field) it.besides = supplies_of(*glue);
  // What a die cut was cut so, whether or not that was recorded as a technique.
  if (taken.vocabulary == VocabularyName::technique && taken.id == "die cutting" &&
      it.word.starts_with("cut with")) {
    it.besides.push_back(die_whatever());
    it.besides.push_back(says_of({VocabularyName::role, "die cut", "die cut", true, 0}));
  }
  // What stands on foam is popped up, whether or not that was recorded as a technique.
  if (taken.vocabulary == VocabularyName::technique && taken.id == "popped up")
    it.besides.push_back(glue_of("foam"));
  if (it.also.empty()) offer_other(it, it.terms, taken);
}

}  // namespace insetbook
