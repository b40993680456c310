// SPDX-License-Identifier: GPL-3.0-or-later
//
// The lists of words that phrases name (ask_phrase.h), and how a phrase is taken apart.
#pragma once

#include <algorithm>
#include <string_view>

namespace insetbook {

struct PhraseList {
  std::string_view name, words;
};

inline constexpr PhraseList phrase_lists[] = {
    {"@what", "what|which|whats"},
    {"@want", "can|could|will|would|should|do|does|must|shall|may|might|need|needs|want|to"},
    {"@i", "i|you|we|one"},
    {"@the", "the|a|an|my|our|this|that|these|those|some|any|of"},
    {"@big", "big|large|wide|tall|high|small|long"},
    {"@panel",
     "panel|panels|mat|mats|layer|layers|piece|pieces|paper|cardstock|image|images|topper|toppers|liner|"
     "insert|inserts|strip|strips|one"},
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

constexpr std::string_view list_named(std::string_view name) {
  for (const PhraseList& list : phrase_lists)
    if (list.name == name) return list.words;
  return {};
}

// Takes the first of several that are parted by `mark` off the front.
constexpr std::string_view take_part(std::string_view& from, char mark) {
  const std::size_t end = std::min(from.find(mark), from.size());
  const std::string_view first = from.substr(0, end);
  from.remove_prefix(std::min(end + 1, from.size()));
  return first;
}

}  // namespace insetbook
