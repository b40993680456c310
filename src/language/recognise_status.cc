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
std::optional<Recogniser::StatusSaid> Recogniser::status_at(std::size_t at) const {
  std::optional<StatusSaid> best;
  std::string said;
  for (std::size_t count = 1, most = run_of_words(at, longest_label_); count <= most; ++count) {
    ++steps_;
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    const auto found = context_.vocabulary.find(said, VocabularyName::status);
    if (!found.empty()) best = StatusSaid{at + count, found.front()};
  }
  return best;
}

// "inks", "stamps", "patterned paper": what the status is said of, the longest that begins at `at`.
std::optional<StatusNoun> Recogniser::status_noun(std::size_t at) const {
  std::optional<StatusNoun> best;
  for (std::size_t count = 1, most = run_of_words(at, 3); count <= most; ++count) {
    ++steps_;
    const std::string said = words(at, count);
    const auto noun = std::ranges::find(nouns, said, &Noun::word);
    if (noun != std::end(nouns)) {
      best = StatusNoun{at + count, noun->of, ""};
      continue;
    }
    if (const std::string kind = context_.names.supply_kind(said); !kind.empty())
      best = StatusNoun{at + count, Of::kind, kind};
  }
  return best;
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
  std::size_t last = at;
  std::optional<StatusNoun> noun;
  std::optional<StatusSaid> status = status_at(at);
  if (status) {
    noun = status_noun(status->last);
    last = noun ? noun->last : status->last;
    // A word that says so little is meant so only of something.
    if (!noun && status->match.likelihood < 30) return;
    if (!noun) noun = StatusNoun{last, Of::supplies, ""};
  } else {
    noun = status_noun(at);
    if (!noun) return;
    const std::size_t is = skip(noun->last, {"that", "which", "is", "are", "was", "were", "now"});
    status = status_at(is);
    if (!status || (is == noun->last && status->match.likelihood < 50)) return;
    last = status->last;
  }
  Seen it = seen(As::term, at, last, priority_of::side);
  it.word = words(at, last - at);
  it.terms = {status->match};
  it.terms.front().likelihood = 100;
  it.of_status = *noun;
  out.push_back(std::move(it));
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
    const auto kind = status->last < last ? status_noun(status->last) : std::nullopt;
    noun.of = kind && !kind->kind.empty() ? Of::kind : Of::supplies;
    if (kind) noun.last = kind->last, noun.kind = kind->kind;
  }
  if (noun.last != last) return std::nullopt;
  return std::move(says_of_status(status->match, noun).front());
}

}  // namespace insetbook
