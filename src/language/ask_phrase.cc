// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/ask_phrase.h"

#include <algorithm>

namespace insetbook {
namespace {

constexpr int most_steps = 600;
constexpr std::size_t longest_shape = 3;
constexpr std::size_t longest_set = 5;

struct List {
  std::string_view name, words;
};

constexpr List lists[] = {
    {"@what", "what|which|whats"},
    {"@want", "can|could|will|would|should|do|does|must|shall|may|might|need|needs|want|to"},
    {"@i", "i|you|we|one"},
    {"@the", "the|a|an|my|our|this|that|these|those|some|any|of"},
    {"@big", "big|large|wide|tall|high|small|long"},
    {"@panel",
     "panel|panels|mat|mats|layer|layers|piece|pieces|paper|cardstock|image|images|topper|toppers|liner|"
     "insert|inserts|one"},
    {"@in", "in|inside|into|within"},
    {"@well", "well|best|exactly|nicely|snugly|neatly|perfectly|properly|evenly"},
    {"@round", "round|around|outside|over"},
    {"@die", "die|dies|frame|frames|opening|openings|set|sets|cutter|cutters|shape|shapes"},
    {"@box",
     "drawer|drawers|box|boxes|shelf|shelves|tin|tins|folder|jar|tray|bin|place|cupboard|bag|basket|case"},
    {"@colour", "colour|colours|color|colors|shade|shades"},
    {"@near", "near|nearest|nearer|close|closest|closer|similar|resembles|matches|match"},
    {"@unit",
     "in|inch|inches|mm|millimetre|millimetres|millimeter|millimeters|cm|centimetre|centimetres|centimeter|"
     "centimeters"},
};

std::string_view list_named(std::string_view name) {
  for (const List& list : lists)
    if (list.name == name) return list.words;
  return {};
}

// Takes the first of several that are parted by `mark` off the front.
std::string_view take(std::string_view& from, char mark) {
  const std::size_t end = std::min(from.find(mark), from.size());
  const std::string_view first = from.substr(0, end);
  from.remove_prefix(std::min(end + 1, from.size()));
  return first;
}

bool is_word_of(std::string_view folded, std::string_view words) {
  while (!words.empty()) {
    const std::string_view one = take(words, '|');
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
  std::string said;
  std::size_t end = at;
  for (std::size_t i = at; i < std::min(at + longest_set, pieces_.size()); ++i) {
    if (pieces_[i].kind != Piece::Kind::word) break;
    if (!said.empty()) said += ' ';
    said += pieces_[i].folded;
    if (!names_.begins(said)) break;
    for (const NamedRecord& record : names_.exactly(said)) {
      if (record.kind != NameKind::set) continue;
      name = record.name;
      end = i + 1;
      break;
    }
  }
  return end;
}

std::size_t PhraseReader::shape_at(std::size_t at) {
  std::string said;
  std::size_t end = at;
  for (std::size_t i = at; i < std::min(at + longest_shape, pieces_.size()); ++i) {
    if (pieces_[i].kind != Piece::Kind::word) break;
    if (!said.empty()) said += ' ';
    said += pieces_[i].folded;
    const std::vector<TermMatch> found = vocabulary_.find(said, VocabularyName::shape);
    if (found.empty()) continue;
    match_.shape = found.front().id;
    end = i + 1;
  }
  return end;
}

std::size_t PhraseReader::one_of(std::string_view words, std::size_t at) {
  if (at >= pieces_.size()) return at;
  while (!words.empty()) {
    const std::string_view one = take(words, '|');
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
  std::string_view atom = take(rest, ' ');
  const PhraseMatch before = match_;
  if (atom == "+end") return at == pieces_.size();
  if (atom == "+x") {
    for (std::size_t end = rest == "+end" ? pieces_.size() : at + 1; end <= pieces_.size(); ++end) {
      if (end <= at) break;
      match_ = before;
      match_.begin = at;
      match_.end = end;
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
