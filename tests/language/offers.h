// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the recognisers offer on a text, for the table tests: each offer as "begin-end value", the places in
// bytes. An offer that lies within a longer one of the kinds asked for is left out.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "language/pieces.h"
#include "language/recognise.h"
#include "language/says.h"
#include "language/table_names.h"

namespace insetbook {

struct Offer {
  Seen seen;
  std::string value;
};

class Offers {
 public:
  explicit Offers(Unit unit = Unit::inch, bool southern = false)
      : context_{vocabulary_, names_, unit, "2026-11-25", southern} {}
  Offers(const Offers&) = delete;
  Offers& operator=(const Offers&) = delete;

  // The offers that `wanted` is true of, in the order of the text: "0-6 shape=circle; 7-11 size=2in ±1/32in".
  template <class Wanted>
  std::string on(std::string_view text, Wanted wanted) const {
    std::vector<Offer> all;
    for (Offer& offer : every(text))
      if (wanted(offer.seen)) all.push_back(std::move(offer));
    std::string out;
    for (const Offer& offer : all) {
      const bool within = std::ranges::any_of(all, [&](const Offer& other) {
        const Span &a = offer.seen.span, &b = other.seen.span;
        return b.begin <= a.begin && a.end <= b.end && b.end - b.begin > a.end - a.begin;
      });
      if (within) continue;
      if (!out.empty()) out += "; ";
      out += std::to_string(offer.seen.span.begin) + "-" + std::to_string(offer.seen.span.end) + " " +
             offer.value;
    }
    return out;
  }

  std::vector<Offer> every(std::string_view text) const {
    std::vector<Offer> all;
    const auto pieces = split(text, {0, text.size()});
    if (!pieces) return all;
    Recogniser recogniser(text, *pieces, context_);
    for (std::size_t at = 0; at < pieces->size(); ++at)
      for (Seen& seen : recogniser.offers(at)) {
        std::string value = meanings(seen);
        recogniser.resolve(seen);
        if (value.empty()) value = seen.says ? printed(*seen.says) : seen.word;
        all.push_back({std::move(seen), std::move(value)});
      }
    return all;
  }

  const ReadingContext& context() const { return context_; }

 private:
  // Of a term, a name or a plain number all that it may mean.
  static std::string meanings(const Seen& seen) {
    std::string out;
    const auto add = [&](std::string meaning) { out += (out.empty() ? "" : " | ") + std::move(meaning); };
    if (seen.as == As::term)
      for (const TermMatch& term : seen.terms)
        add(std::string(vocabulary_word(term.vocabulary)) + " " + term.id);
    if (seen.as == As::named)
      for (const NamedRecord& record : seen.named)
        add((record.kind == NameKind::colour ? "colour " : "supply ") + record.name);
    if (seen.as == As::number) {
      if (seen.whole) add("count " + std::to_string(seen.number));
      if (seen.says) add(printed(*seen.says));
    }
    return out;
  }

  Vocabulary vocabulary_;
  TableNames names_;
  ReadingContext context_;
};

template <class... Kinds>
bool says_any(const Seen& seen) {
  return seen.says && (std::holds_alternative<Kinds>(*seen.says) || ...);
}

}  // namespace insetbook
