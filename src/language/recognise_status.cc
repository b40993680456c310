// SPDX-License-Identifier: GPL-3.0-or-later
//
// "retired colours", "ink that is no longer made", "withdrawn supplies": what can be had or not, said of what
// was used. It becomes the colours, supplies and dies of the book that are so today.
#include <algorithm>
#include <iterator>

#include "language/recognise.h"
#include "language/says.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Of = StatusOf;

constexpr std::size_t longest_noun = 3;  // words

struct Noun {
  std::string_view word;
  Of of;
};
constexpr Noun nouns[] = {{"colour", Of::colours},     {"colours", Of::colours},   {"color", Of::colours},
                          {"colors", Of::colours},     {"ink", Of::inks},          {"inks", Of::inks},
                          {"ink pad", Of::inks},       {"ink pads", Of::inks},     {"paper", Of::papers},
                          {"papers", Of::papers},      {"card stock", Of::papers}, {"cardstock", Of::papers},
                          {"die", Of::dies},           {"dies", Of::dies},         {"die set", Of::dies},
                          {"die sets", Of::dies},      {"supply", Of::supplies},   {"supplies", Of::supplies},
                          {"product", Of::supplies},   {"products", Of::supplies}, {"material", Of::supplies},
                          {"materials", Of::supplies}, {"thing", Of::supplies},    {"things", Of::supplies},
                          {"anything", Of::supplies},  {"something", Of::supplies}};

}  // namespace

// "withdrawn", "no longer made": the longest label of a status that begins at `at`.
std::optional<Recogniser::StatusSaid> Recogniser::status_at(std::size_t at) {
  std::optional<StatusSaid> best;
  std::string key;
  for (std::size_t count = 1, most = run_of_words(at, longest_label_); count <= most; ++count) {
    ++steps_;
    key += key_of(at + count - 1);
    if (!context_.vocabulary.key_begins(key)) break;
    const std::vector<TermMatch> found = context_.vocabulary.find_key(key);
    const auto status = std::ranges::find(found, VocabularyName::status, &TermMatch::vocabulary);
    if (status != found.end()) best = StatusSaid{at + count, *status, found.size() == 1};
  }
  return best;
}

// "inks", "stamps", "patterned paper": what the status is said of, `count` words at `at`.
std::optional<StatusNoun> Recogniser::status_noun(std::size_t at, std::size_t count) const {
  if (run_of_words(at, count) < count) return std::nullopt;
  const std::string said = words(at, count);
  const auto noun = std::ranges::find(nouns, said, &Noun::word);
  if (noun != std::end(nouns)) return StatusNoun{at + count, noun->of, ""};
  const std::string kind = context_.names.supply_kind(said);
  if (kind.empty()) return std::nullopt;
  return StatusNoun{at + count, Of::kind, kind};
}

std::vector<Says> Recogniser::says_of_status(const TermMatch& status, const StatusNoun& noun) {
  const std::vector<std::string>& terms = with_narrower(VocabularyName::status, status.id);
  const std::string said = status.id + std::string(by_status_note);
  const auto colours = [&](ColourUse use) -> Says {
    return ColourIs{use, context_.names.colours_with_status(terms, use), said};
  };
  switch (noun.of) {
    case Of::colours:
      return {colours(ColourUse::either)};
    case Of::papers:
      return {colours(ColourUse::paper)};
    case Of::inks:
      return {colours(ColourUse::ink)};
    case Of::dies: {
      DieIs die;
      die.said = said;
      die.dies = context_.names.dies_with_status(terms);
      die.sets = context_.names.sets_with_status(terms);
      return {die};
    }
    case Of::kind:
      return {SupplyIs{context_.names.supplies_with_status(terms, noun.kind),
                       status.id + " " + noun.kind + std::string(by_status_note)}};
    case Of::supplies:
      break;
  }
  return {SupplyIs{context_.names.supplies_with_status(terms, ""), said}, colours(ColourUse::paper),
          colours(ColourUse::ink)};
}

// "retired colours", "colours that are retired", "discontinued"
void Recogniser::statuses(std::size_t at, std::vector<Seen>& out) {
  const auto offer = [&](const TermMatch& status, std::size_t last, const StatusNoun& noun) {
    Seen it = seen(As::term, at, last, priority_of::side);
    it.word = words(at, last - at);
    it.terms = {status};
    it.terms.front().likelihood = 100;
    it.of_status = noun;
    out.push_back(std::move(it));
  };
  if (const auto status = status_at(at)) {
    for (std::size_t count = longest_noun; count > 0; --count)
      if (const auto noun = status_noun(status->last, count)) return offer(status->match, noun->last, *noun);
    // A word that says so little, or something else besides ("retiring"), is meant so only of something.
    if (status->match.likelihood < 30 || !status->only) return;
    return offer(status->match, status->last, StatusNoun{status->last, Of::supplies, ""});
  }
  // The status is looked for first: few questions have one.
  for (std::size_t count = std::min(longest_noun, run_of_words(at, longest_noun)); count > 0; --count) {
    const std::size_t is = skip(at + count, {"that", "which", "is", "are", "was", "were", "now"});
    const auto status = status_at(is);
    if (!status || (is == at + count && status->match.likelihood < 50)) continue;
    if (const auto noun = status_noun(at, count)) return offer(status->match, status->last, *noun);
  }
}

void Recogniser::resolve_status(Seen& it) {
  std::vector<Says> all = says_of_status(it.terms.front(), *it.of_status);
  it.says = std::move(all.front());
  it.besides.assign(std::make_move_iterator(all.begin() + 1), std::make_move_iterator(all.end()));
}

// "withdrawn", "withdrawn stamp" as the value of a field of colours, supplies or dies.
std::optional<Says> Recogniser::status_value(const Field& field, std::size_t first, std::size_t last) {
  const auto status = status_at(first);
  if (!status) return std::nullopt;
  StatusNoun noun{status->last, Of::colours, ""};
  if (field.id == FieldName::paper) noun.of = Of::papers;
  if (field.id == FieldName::ink) noun.of = Of::inks;
  if (field.id == FieldName::die) noun.of = Of::dies;
  if (field.id == FieldName::supply) {
    const auto kind = status->last < last ? status_noun(status->last, last - status->last) : std::nullopt;
    noun.of = kind && !kind->kind.empty() ? Of::kind : Of::supplies;
    if (kind) noun.last = kind->last, noun.kind = kind->kind;
  }
  if (noun.last != last) return std::nullopt;
  return std::move(says_of_status(status->match, noun).front());
}

}  // namespace insetbook
