// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/vocabulary.h"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include "schema/label_key.h"
#include "schema/vocabularies.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

static_assert(vocabulary_words[static_cast<std::size_t>(VocabularyName::colour_word)] == "colour word");
static_assert(vocabulary_count == static_cast<std::size_t>(VocabularyName::status) + 1);
static_assert(stands_words[static_cast<std::size_t>(Stands::no)] == "no");

constexpr int own_likelihood = 100;

// Names of vocabularies and folded texts come here far more often than texts with marks: those need no
// Unicode.
bool is_folded_ascii(std::string_view text) {
  bool space = true;
  for (const char c : text) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (!plain && (c != ' ' || space)) return false;
    space = c == ' ';
  }
  return text.empty() || !space;
}

std::string key_of(std::string_view text) {
  return is_folded_ascii(text) ? label_key(text) : label_key(fold(text));
}

std::size_t number(VocabularyName name) {
  return static_cast<std::size_t>(name);
}

std::span<const CompiledTerm> compiled_terms(VocabularyName in) {
  const CompiledVocabularies& all = compiled_vocabularies();
  const std::size_t first = all.starts[number(in)];
  return all.terms.subspan(first, all.starts[number(in) + 1] - first);
}

const CompiledTerm* compiled_term(VocabularyName in, std::string_view id) {
  const CompiledVocabularies& all = compiled_vocabularies();
  const auto terms = compiled_terms(in);
  const auto found = std::lower_bound(
      terms.begin(), terms.end(), id,
      [&](const CompiledTerm& term, std::string_view wanted) { return all.at(term.id) < wanted; });
  return found != terms.end() && all.at(found->id) == id ? &*found : nullptr;
}

std::span<const CompiledLabel>::iterator compiled_label(std::string_view key) {
  const CompiledVocabularies& all = compiled_vocabularies();
  return std::lower_bound(
      all.labels.begin(), all.labels.end(), key,
      [&](const CompiledLabel& label, std::string_view wanted) { return all.at(label.key) < wanted; });
}

std::span<const CompiledLabel> compiled_labels(std::string_view key) {
  const CompiledVocabularies& all = compiled_vocabularies();
  const auto first = compiled_label(key);
  auto last = first;
  while (last != all.labels.end() && all.at(last->key) == key) ++last;
  return {first, last};
}

std::string_view compiled_broader(const CompiledTerm& compiled) {
  const CompiledVocabularies& all = compiled_vocabularies();
  return compiled.broader == no_term ? std::string_view() : all.at(all.terms[compiled.broader].id);
}

Term unpack(const CompiledTerm& compiled) {
  const CompiledVocabularies& all = compiled_vocabularies();
  Term term;
  term.vocabulary = static_cast<VocabularyName>(compiled.vocabulary);
  term.id = all.at(compiled.id);
  term.label = all.at(compiled.label);
  for (const CompiledText& other : all.others.subspan(compiled.first_other, compiled.others)) {
    term.labels.emplace_back(all.at(other));
  }
  term.broader = compiled_broader(compiled);
  term.stands = static_cast<Stands>(compiled.stands);
  term.caution = all.at(compiled.caution);
  term.caution_source = all.at(compiled.caution_source);
  term.note = all.at(compiled.note);
  if (compiled.creases_known) {
    term.creases.emplace();
    for (const CompiledCrease& crease : all.creases.subspan(compiled.first_crease, compiled.creases)) {
      term.creases->push_back({crease.upright, crease.part, crease.of, crease.mountain});
    }
  }
  return term;
}

// What an own term says on top of the compiled term of the same id.
Term merged(const CompiledTerm& compiled, Term own) {
  Term term = unpack(compiled);
  if (!own.label.empty()) term.label = std::move(own.label);
  for (std::string& label : own.labels) term.labels.push_back(std::move(label));
  if (!own.broader.empty()) term.broader = std::move(own.broader);
  if (own.stands != Stands::not_said) term.stands = own.stands;
  if (!own.caution.empty()) term.caution = std::move(own.caution);
  if (!own.caution_source.empty()) term.caution_source = std::move(own.caution_source);
  if (!own.note.empty()) term.note = std::move(own.note);
  if (own.creases) term.creases = std::move(own.creases);
  return term;
}

std::size_t words_in(std::string_view folded) {
  return folded.empty() ? 0 : static_cast<std::size_t>(std::count(folded.begin(), folded.end(), ' ')) + 1;
}

// FNV-1a, 64 bits. A zero byte ends each text, so that texts cannot run into each other.
void mix(std::uint64_t& hash, std::string_view text) {
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ULL;
  }
  hash *= 1099511628211ULL;
}

}  // namespace

std::string_view vocabulary_word(VocabularyName name) {
  return vocabulary_words[number(name)];
}

std::optional<VocabularyName> vocabulary_name(std::string_view word) {
  const std::string key = key_of(word);
  for (std::size_t v = 0; v < vocabulary_count; ++v) {
    if (key == label_key(vocabulary_words[v])) return static_cast<VocabularyName>(v);
  }
  if (key == label_key("colour")) return VocabularyName::colour_word;
  return std::nullopt;
}

std::string_view stands_word(Stands stands) {
  return stands_words[static_cast<std::size_t>(stands)];
}

std::optional<Stands> stands_named(std::string_view word) {
  const std::string key = key_of(word);
  for (std::size_t s = 1; s < std::size(stands_words); ++s) {
    if (key == key_of(stands_words[s])) return static_cast<Stands>(s);
  }
  return std::nullopt;
}

// Labels are taken from what the person wrote, before the compiled term of the same id is taken in: what was
// compiled keeps its own likelihood.
Vocabulary::Vocabulary(std::vector<Term> own) : own_(std::move(own)) {
  for (Term& term : own_) {
    if (term.id.empty()) term.id = term.label;
    term.id = fold(term.id);
  }
  std::sort(own_.begin(), own_.end(), [](const Term& a, const Term& b) {
    return std::tie(a.vocabulary, a.id, a.label) < std::tie(b.vocabulary, b.id, b.label);
  });
  for (std::size_t t = 0; t < own_.size(); ++t) take_in(t);
  std::sort(labels_.begin(), labels_.end(), [](const OwnLabel& a, const OwnLabel& b) {
    return std::tuple(std::string_view(a.key), a.term, !a.preferred) <
           std::tuple(std::string_view(b.key), b.term, !b.preferred);
  });
  for (Term& term : own_) {
    if (term.broader.empty()) continue;
    const auto matches = find(term.broader, term.vocabulary);
    term.broader = matches.empty() ? std::string() : matches.front().id;
  }
  for (Term& term : own_) stand_as_broader(term);
  for (const Term& term : own_) {
    const CompiledTerm* compiled = compiled_term(term.vocabulary, term.id);
    if (compiled != nullptr && term.broader != compiled_broader(*compiled))
      moved_ |= 1U << static_cast<unsigned>(term.vocabulary);
  }
}

void Vocabulary::take_in(std::size_t place) {
  Term& term = own_[place];
  const auto add = [&](const std::string& label, bool preferred) {
    std::string folded = fold(label);
    std::string key = label_key(folded);
    if (!key.empty()) labels_.push_back({std::move(key), std::move(folded), place, preferred});
  };
  add(term.label.empty() ? term.id : term.label, true);
  for (const std::string& label : term.labels) add(label, false);
  if (const CompiledTerm* compiled = compiled_term(term.vocabulary, term.id)) term = merged(*compiled, term);
  if (term.label.empty()) term.label = term.id;
}

void Vocabulary::stand_as_broader(Term& term) {
  std::string at = term.broader;
  for (std::size_t steps = 0; term.stands == Stands::not_said && !at.empty() && steps <= own_.size();
       ++steps) {
    if (const Term* broader = own_term(term.vocabulary, at)) {
      term.stands = broader->stands;
      at = broader->broader;
    } else {
      const CompiledTerm* compiled = compiled_term(term.vocabulary, at);
      if (compiled != nullptr) term.stands = static_cast<Stands>(compiled->stands);
      return;
    }
  }
}

const Term* Vocabulary::own_term(VocabularyName in, std::string_view id) const {
  const auto found =
      std::lower_bound(own_.begin(), own_.end(), std::pair(in, id), [](const Term& term, const auto& wanted) {
        return std::pair(term.vocabulary, std::string_view(term.id)) < wanted;
      });
  return found != own_.end() && found->vocabulary == in && found->id == id ? &*found : nullptr;
}

std::vector<Vocabulary::OwnLabel>::const_iterator Vocabulary::own_label(std::string_view key) const {
  return std::lower_bound(labels_.begin(), labels_.end(), key,
                          [](const OwnLabel& own, std::string_view wanted) { return own.key < wanted; });
}

bool Vocabulary::key_begins(std::string_view key) const {
  const auto own = own_label(key);
  if (own != labels_.end() && own->key.starts_with(key)) return true;
  const CompiledVocabularies& all = compiled_vocabularies();
  const auto compiled = compiled_label(key);
  return compiled != all.labels.end() && all.at(compiled->key).starts_with(key);
}

std::vector<TermMatch> Vocabulary::find(std::string_view label) const {
  return find_key(key_of(label));
}

std::vector<TermMatch> Vocabulary::find_key(std::string_view key) const {
  std::vector<TermMatch> matches;
  const auto first = own_label(key);
  for (auto own = first; own != labels_.end() && own->key == key; ++own) {
    const Term& term = own_[own->term];
    const bool there = std::any_of(matches.begin(), matches.end(), [&](const TermMatch& match) {
      return match.vocabulary == term.vocabulary && match.id == term.id;
    });
    if (!there) matches.push_back({term.vocabulary, term.id, term.label, own->preferred, own_likelihood});
  }
  const std::size_t own_matches = matches.size();
  const CompiledVocabularies& all = compiled_vocabularies();
  for (const CompiledLabel& compiled : compiled_labels(key)) {
    const CompiledTerm& term = all.terms[compiled.term];
    const auto in = static_cast<VocabularyName>(term.vocabulary);
    const bool won = std::any_of(matches.begin(), matches.begin() + static_cast<std::ptrdiff_t>(own_matches),
                                 [&](const TermMatch& match) { return match.vocabulary == in; });
    if (won) continue;
    const std::string_view id = all.at(term.id);
    const Term* own = own_term(in, id);
    matches.push_back({in, std::string(id), own != nullptr ? own->label : std::string(all.at(term.label)),
                       compiled.preferred, compiled.likelihood});
  }
  return matches;
}

std::vector<TermMatch> Vocabulary::find(std::string_view label, VocabularyName in) const {
  std::vector<TermMatch> matches = find(label);
  std::erase_if(matches, [&](const TermMatch& match) { return match.vocabulary != in; });
  return matches;
}

std::optional<Term> Vocabulary::term(VocabularyName in, std::string_view id) const {
  if (const Term* own = own_term(in, id)) return *own;
  if (const CompiledTerm* compiled = compiled_term(in, id)) return unpack(*compiled);
  return std::nullopt;
}

std::vector<std::string> Vocabulary::ids(VocabularyName in) const {
  const CompiledVocabularies& all = compiled_vocabularies();
  std::vector<std::string> ids;
  for (const CompiledTerm& term : compiled_terms(in)) ids.emplace_back(all.at(term.id));
  for (const Term& term : own_) {
    if (term.vocabulary == in) ids.push_back(term.id);
  }
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  return ids;
}

std::string Vocabulary::broader_of(VocabularyName in, std::string_view id) const {
  if (const Term* own = own_term(in, id)) return own->broader;
  const CompiledTerm* compiled = compiled_term(in, id);
  return compiled == nullptr ? std::string() : std::string(compiled_broader(*compiled));
}

// Whether the broader terms of an own term lead to `id`. They may lead round in a circle; `steps` ends that.
bool Vocabulary::leads_to(const Term& own, std::string_view id) const {
  std::string at = own.broader;
  for (std::size_t steps = 0; !at.empty() && steps <= own_.size(); ++steps) {
    if (at == id) return true;
    if (compiled_term(own.vocabulary, at) != nullptr && own_term(own.vocabulary, at) == nullptr) {
      const CompiledVocabularies& all = compiled_vocabularies();
      for (const CompiledTerm* up = compiled_term(own.vocabulary, at); up->broader != no_term;) {
        up = &all.terms[up->broader];
        if (all.at(up->id) == id) return true;
      }
      return false;
    }
    at = broader_of(own.vocabulary, at);
  }
  return false;
}

// The build knows which compiled terms are narrower. A person's own are followed upwards, one by one.
std::vector<std::string> Vocabulary::with_narrower(VocabularyName in, std::string_view id) const {
  if (!in_place(in)) return searched_narrower(in, id);
  std::vector<std::string> found;
  const CompiledTerm* compiled = compiled_term(in, id);
  if (compiled == nullptr && own_term(in, id) == nullptr) return found;
  found.emplace_back(id);
  const CompiledVocabularies& all = compiled_vocabularies();
  if (compiled != nullptr) {
    found.reserve(compiled->narrower + 1U);
    for (const std::uint16_t place : all.narrower.subspan(compiled->first_narrower, compiled->narrower))
      found.emplace_back(all.at(all.terms[place].id));
  }
  const std::size_t from_compiled = found.size();
  for (const Term& own : own_)
    if (own.vocabulary == in && own.id != id && compiled_term(in, own.id) == nullptr && leads_to(own, id))
      found.push_back(own.id);
  if (found.size() > from_compiled) std::sort(found.begin() + 1, found.end());
  return found;
}

// The same where a person gave compiled terms other broader ones: every term is followed upwards.
std::vector<std::string> Vocabulary::searched_narrower(VocabularyName in, std::string_view id) const {
  std::vector<std::string> found;
  const std::vector<std::string> every = ids(in);
  if (!std::binary_search(every.begin(), every.end(), id)) return found;
  found.emplace_back(id);
  for (const std::string& candidate : every) {
    if (candidate == id) continue;
    std::string at = broader_of(in, candidate);
    for (std::size_t steps = 0; !at.empty() && at != id && steps < every.size(); ++steps)
      at = broader_of(in, at);
    if (at == id) found.push_back(candidate);
  }
  return found;
}

std::vector<std::string> Vocabulary::folds_that(Stands stands) const {
  std::vector<std::string> found;
  for (const std::string& id : ids(VocabularyName::fold)) {
    const Term* own = own_term(VocabularyName::fold, id);
    const CompiledTerm* compiled = compiled_term(VocabularyName::fold, id);
    if ((own != nullptr ? own->stands : static_cast<Stands>(compiled->stands)) == stands) found.push_back(id);
  }
  return found;
}

std::vector<Term> Vocabulary::terms(VocabularyName in) const {
  std::vector<Term> terms;
  for (const std::string& id : ids(in)) terms.push_back(*term(in, id));
  return terms;
}

std::size_t Vocabulary::longest_label_words() const {
  std::size_t longest = compiled_vocabularies().longest_label_words;
  for (const OwnLabel& label : labels_) longest = std::max(longest, words_in(label.folded));
  return longest;
}

std::vector<std::string> Vocabulary::all_labels() const {
  const CompiledVocabularies& all = compiled_vocabularies();
  std::vector<std::string> labels;
  labels.reserve(all.labels.size() + labels_.size());
  for (const CompiledLabel& label : all.labels) labels.emplace_back(all.at(label.folded));
  for (const OwnLabel& label : labels_) labels.push_back(label.folded);
  std::sort(labels.begin(), labels.end());
  labels.erase(std::unique(labels.begin(), labels.end()), labels.end());
  return labels;
}

std::uint64_t Vocabulary::fingerprint() const {
  std::uint64_t hash = compiled_vocabularies().fingerprint;
  for (const Term& term : own_) {
    mix(hash, vocabulary_word(term.vocabulary));
    mix(hash, term.id);
    mix(hash, term.label);
    for (const std::string& label : term.labels) mix(hash, label);
    mix(hash, "broader");
    mix(hash, term.broader);
    mix(hash, stands_word(term.stands));
  }
  return hash;
}

}  // namespace insetbook
