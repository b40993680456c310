// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/ask_phrase.h"

#include <algorithm>

#include "language/ask_phrase_lists.h"

namespace insetbook {
namespace {

constexpr int most_steps = 600;
constexpr std::size_t longest_shape = 3;
constexpr std::size_t longest_set = 5;

bool is_word_of(std::string_view folded, std::string_view words) {
  while (!words.empty()) {
    const std::string_view one = take_part(words, '|');
    if (one.starts_with('@') ? is_word_of(folded, list_named(one)) : one == folded) return true;
  }
  return false;
}

}  // namespace

bool PhraseReader::is_any(std::size_t at, std::string_view words) const {
  return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word &&
         is_word_of(pieces_[at].folded, words);
}

std::size_t PhraseReader::set_at(std::size_t at, std::string& name) const {
  Seen& seen = sets_[at];
  if (!seen.looked) seen = look_for_set(at);
  if (seen.end > at) name = seen.name;
  return seen.end;
}

PhraseReader::Seen PhraseReader::look_for_set(std::size_t at) const {
  std::string said;
  Seen seen{true, at, {}};
  for (std::size_t i = at; i < std::min(at + longest_set, pieces_.size()); ++i) {
    if (pieces_[i].kind != Piece::Kind::word) break;
    if (!said.empty()) said += ' ';
    said += pieces_[i].folded;
    if (!names_.begins(said)) break;
    for (const NamedRecord& record : names_.exactly(said)) {
      if (record.kind != NameKind::set) continue;
      seen.name = record.name;
      seen.end = i + 1;
      break;
    }
  }
  return seen;
}

std::size_t PhraseReader::shape_at(std::size_t at) {
  Seen& seen = shapes_[at];
  if (!seen.looked) seen = look_for_shape(at);
  if (seen.end > at) match_.shape = seen.name;
  return seen.end;
}

PhraseReader::Seen PhraseReader::look_for_shape(std::size_t at) const {
  std::string said;
  Seen seen{true, at, {}};
  for (std::size_t i = at; i < std::min(at + longest_shape, pieces_.size()); ++i) {
    if (pieces_[i].kind != Piece::Kind::word) break;
    if (!said.empty()) said += ' ';
    said += pieces_[i].folded;
    const std::vector<TermMatch> found = vocabulary_.find(said, VocabularyName::shape);
    if (found.empty()) continue;
    seen.name = found.front().id;
    seen.end = i + 1;
  }
  return seen;
}

std::size_t PhraseReader::one_of(std::string_view words, std::size_t at) {
  if (at >= pieces_.size()) return at;
  while (!words.empty()) {
    const std::string_view one = take_part(words, '|');
    std::size_t end = at;
    if (one == "+shape")
      end = shape_at(at);
    else if (one == "+set")
      end = set_at(at, match_.set);
    else if (is_any(at, one))
      end = at + 1;
    if (end > at) return end;
  }
  return at;
}

bool PhraseReader::match(std::string_view phrase, std::size_t at) {
  if (++steps_ > most_steps) return false;
  if (phrase.empty()) return true;
  std::string_view rest = phrase;
  std::string_view atom = take_part(rest, ' ');
  const PhraseMatch before = match_;
  if (atom == "+end") return at == pieces_.size();
  if (atom == "+x") {
    for (std::size_t end = rest == "+end" ? pieces_.size() : at + 1; end > at && end <= pieces_.size();
         ++end) {
      match_ = before;
      match_.begin = at;
      match_.end = end;
      if (match(rest, end)) return true;
    }
    return false;
  }
  if (atom == "+y") {
    for (std::size_t end = pieces_.size(); end > at; --end) {
      match_ = before;
      match_.beside_begin = at;
      match_.beside_end = end;
      if (match(rest, end)) return true;
    }
    return false;
  }
  if (atom.starts_with('!')) return !is_any(at, atom.substr(1)) && match(rest, at);
  if (!atom.starts_with('[')) {
    const std::size_t end = one_of(atom, at);
    return end > at && match(rest, end);
  }
  const bool again = atom.ends_with('*');
  const std::size_t end = one_of(atom.substr(1, atom.find(']') - 1), at);
  if (end > at && match(again ? phrase : rest, end)) return true;
  match_ = before;
  return match(rest, at);
}

bool PhraseReader::matches(std::string_view phrase, std::size_t at, PhraseMatch& found) {
  match_ = {};
  steps_ = 0;
  if (!match(phrase, at)) return false;
  found = match_;
  return true;
}

}  // namespace insetbook
