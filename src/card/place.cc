// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/place.h"

#include <algorithm>
#include <array>
#include <vector>

#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using How = PlaceAlong::How;

std::string plain(std::string_view text) {
  std::string out;
  for (const char c : text) out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return out;
}

// Whether the words are there, each whole; they are taken out.
bool take(std::string& text, std::string_view words) {
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
    const std::size_t end = at + words.size();
    const auto letter = [&](std::size_t i) { return i < text.size() && text[i] >= 'a' && text[i] <= 'z'; };
    if ((at > 0 && letter(at - 1)) || letter(end)) continue;
    text.replace(at, words.size(), " ");
    return true;
  }
  return false;
}

bool take_any(std::string& text, std::initializer_list<std::string_view> words) {
  bool found = false;
  for (const std::string_view word : words) found = take(text, word) || found;
  return found;
}

struct SideWords {
  bool left = false, right = false, top = false, bottom = false;
  bool any() const { return left || right || top || bottom; }
};

SideWords take_sides(std::string& text) {
  SideWords sides;
  if (take_any(text, {"all round", "all around", "all sides", "all edges"})) return {true, true, true, true};
  if (take_any(text, {"both sides", "each side", "the sides", "sides"})) sides.left = sides.right = true;
  if (take_any(text, {"left"})) sides.left = true;
  if (take_any(text, {"right"})) sides.right = true;
  if (take_any(text, {"top", "upper"})) sides.top = true;
  if (take_any(text, {"bottom", "lower", "foot"})) sides.bottom = true;
  return sides;
}

bool is_side_word(std::string_view word) {
  constexpr std::array<std::string_view, 5> sides = {"left", "right", "top", "bottom", "sides"};
  return std::find(sides.begin(), sides.end(), word) != sides.end();
}

// "the left and the top" is one phrase.
bool joins_sides(std::string_view before, std::string_view behind) {
  const std::size_t begin = before.rfind(' ');
  if (behind.substr(0, 4) == "the ") behind.remove_prefix(4);
  const std::size_t end = std::min(behind.find_first_of(" ,;"), behind.size());
  return is_side_word(before.substr(begin == std::string_view::npos ? 0 : begin + 1)) &&
         is_side_word(behind.substr(0, end));
}

std::vector<std::string> clauses(std::string_view text) {
  std::vector<std::string> parts(1);
  const std::string words = plain(text);
  for (std::size_t i = 0; i < words.size(); ++i) {
    constexpr std::string_view joins[] = {" and ", " & "};
    std::size_t skip = words[i] == ',' || words[i] == ';' ? 1 : 0;
    // "6,5 cm" is one length.
    if (words[i] == ',' && i > 0 && i + 1 < words.size() && words[i - 1] >= '0' && words[i - 1] <= '9' &&
        words[i + 1] >= '0' && words[i + 1] <= '9')
      skip = 0;
    for (const std::string_view join : joins)
      if (words.compare(i, join.size(), join) == 0 &&
          !joins_sides(parts.back(), std::string_view(words).substr(i + join.size())))
        skip = join.size();
    if (skip == 0) {
      parts.back() += words[i];
      continue;
    }
    parts.emplace_back();
    i += skip - 1;
  }
  std::erase_if(parts, [](const std::string& part) { return trim(part).empty(); });
  return parts;
}

Problem not_understood(std::string_view words) {
  return {.what = "the place " + in_quotes(words) + " is not understood",
          .where = {},
          .expected =
              "\"centred\", \"high of centre\", \"bottom right\", \"flush left\", \"1/4 in from the top\" "
              "or \"hanging off the right edge by 3/8 in\"",
          .candidates = {}};
}

class PlaceReader {
 public:
  PlaceReader(std::string_view words, Unit no_unit) : words_(words), no_unit_(no_unit) {
    place_.unit = no_unit;
  }

  Result<PlaceSaid> read() {
    std::string all = plain(words_);
    if (take_any(all, {"same border at top and sides", "same border at the top and the sides",
                       "same border at top and at the sides", "same border top and sides",
                       "even border at top and sides"})) {
      place_.same_border = true;
      if (!trim(all).empty() && !read_clauses(all)) return failure(problem());
      return place_;
    }
    if (!read_clauses(words_)) return failure(problem());
    return place_;
  }

 private:
  bool read_clauses(std::string_view words) {
    const auto parts = clauses(words);
    return std::all_of(parts.begin(), parts.end(), [&](const std::string& part) { return clause(part); });
  }

  Problem problem() const { return length_problem_ ? *length_problem_ : not_understood(words_); }

  bool clause(std::string text) {
    take_any(text, {"edge", "edges", "corner", "of the card", "of the piece"});
    if (take_any(text, {"one in each", "in each", "each"})) {
      place_.each_corner = true;
      return true;
    }
    if (centred(text)) return true;
    const bool hangs = take_any(text, {"hanging off", "hangs off", "hanging over", "hangs over", "over",
                                       "off", "past", "sticking out at"});
    const bool flush = take_any(text, {"flush with", "flush to", "flush at", "flush", "against"});
    const SideWords sides = take_sides(text);
    const bool from = take_any(text, {"from", "in from", "up from", "down from", "inside"});
    take_any(text, {"the", "at", "by", "of", "in the", "and"});
    while (take(text, "the")) {
    }
    const std::string_view rest = trim(text);
    Length length = length_;
    if (!rest.empty()) {
      const auto read = read_length(rest, no_unit_);
      if (!read) {
        if (rest.find_first_of("0123456789") != std::string_view::npos) length_problem_ = read.error();
        return false;
      }
      length = length_ = read->length;
      place_.unit = read->unit;
      have_length_ = true;
      hanging_ = hangs;
      flush_ = false;
    } else if (have_length_ && !flush && !hangs && !from && sides.any()) {
      return set_sides(sides, hanging_ ? -length : length);
    }
    if (!sides.any()) return false;
    // "flush left and right"
    if (flush || (flush_ && rest.empty() && !hangs && !from)) {
      flush_ = true;
      have_length_ = false;
      return set_sides(sides, Length());
    }
    if (rest.empty() && !hangs) return !from && set_by_edge(sides);
    if (!hangs && !from) return false;
    return have_length_ && set_sides(sides, hangs ? -length : length);
  }

  bool centred(std::string& text) {
    const bool centre = take_any(text, {"centred", "centered", "in the middle", "middle", "in the centre",
                                        "in the center", "of centre", "of center", "centre", "center"});
    const bool high = take_any(text, {"high", "above", "a little high", "higher"});
    const bool low = take_any(text, {"low", "below", "lower than", "lower"});
    if (!centre && !high && !low) return false;
    if (take_any(text, {"on the opening", "on the card", "on the front"}))
      place_.centred_on = PlaceSaid::CentredOn::card;
    if (take_any(text, {"on the fold", "on the crease", "on the score"}))
      place_.centred_on = PlaceSaid::CentredOn::crease;
    if (take_any(text, {"left to right", "across", "sideways"}))
      return set(place_.across, {How::centred, {}, {}});
    if (take_any(text, {"top to bottom", "up and down", "down"}))
      return set(place_.down, {How::centred, {}, {}});
    const SideWords sides = take_sides(text);
    take_any(text, {"the", "of", "a", "little", "just", "slightly", "to", "in", "on"});
    if (!trim(text).empty()) return false;
    bool right = true;
    if (high || sides.top) right = set(place_.down, {How::toward_near, {}, {}}) && right;
    if (low || sides.bottom) right = set(place_.down, {How::toward_far, {}, {}}) && right;
    if (sides.left) right = set(place_.across, {How::toward_near, {}, {}}) && right;
    if (sides.right) right = set(place_.across, {How::toward_far, {}, {}}) && right;
    if (high || low || sides.any()) return right;
    if (place_.across.how == How::not_said) place_.across.how = How::centred;
    if (place_.down.how == How::not_said) place_.down.how = How::centred;
    return true;
  }

  bool set(PlaceAlong& along, PlaceAlong place) {
    if (along.how != How::not_said && along.how != How::centred) {
      const bool near_then_far = along.how == How::from_near && place.how == How::from_far;
      const bool far_then_near = along.how == How::from_far && place.how == How::from_near;
      if (!near_then_far && !far_then_near) return false;
      along = near_then_far ? PlaceAlong{How::from_both, along.from, place.from}
                            : PlaceAlong{How::from_both, place.from, along.from};
      return true;
    }
    along = place;
    return true;
  }

  bool set_sides(const SideWords& sides, Length from) {
    bool right = true;
    if (sides.left) right = set(place_.across, {How::from_near, from, {}}) && right;
    if (sides.right) right = set(place_.across, {How::from_far, from, {}}) && right;
    if (sides.top) right = set(place_.down, {How::from_near, from, {}}) && right;
    if (sides.bottom) right = set(place_.down, {How::from_far, from, {}}) && right;
    return right;
  }

  bool set_by_edge(const SideWords& sides) {
    bool right = true;
    if (sides.left) right = set(place_.across, {How::by_near_edge, {}, {}}) && right;
    if (sides.right) right = set(place_.across, {How::by_far_edge, {}, {}}) && right;
    if (sides.top) right = set(place_.down, {How::by_near_edge, {}, {}}) && right;
    if (sides.bottom) right = set(place_.down, {How::by_far_edge, {}, {}}) && right;
    return right;
  }

  std::string_view words_;
  Unit no_unit_;
  PlaceSaid place_;
  Length length_;
  bool have_length_ = false, hanging_ = false, flush_ = false;
  std::optional<Problem> length_problem_;
};

// How much two figures may differ and still be the same.
Length near_enough(Unit unit) {
  return unit == Unit::mm ? Length::nm(800'000) : Length::inch_fraction(1, 32);
}

Length magnitude(Length length) {
  return length < Length() ? -length : length;
}

struct Along {
  Length ground, piece;
  std::string_view near_word, far_word, whole;  // left, right, width
  Length rest() const { return ground - piece; }
};

Problem disagree(const Along& along, Length from, Length other, Unit unit) {
  const Length sum = from + along.piece + other;
  return {.what = write(from, unit) + " from the " + std::string(along.near_word) + ", the piece of " +
                  write(along.piece, unit) + " and " + write(other, unit) + " from the " +
                  std::string(along.far_word) + " come to " + write(sum, unit) + ", and what it lies on is " +
                  write(along.ground, unit) + " " + std::string(along.whole),
          .where = {},
          .expected = "say one of the two distances, or " + write(along.rest() / 2, unit) + " from both",
          .candidates = {}};
}

Problem hangs_free(const Along& along, Length by, Unit unit) {
  return {.what = "it would hang off by " + write(by, unit) + ", and the piece is only " +
                  write(along.piece, unit) + " " + std::string(along.whole),
          .where = {},
          .expected = "a piece holds by what lies on its ground",
          .candidates = {}};
}

Problem beyond(const Along& along, Length from, std::string_view edge, Unit unit) {
  return {.what = write(from, unit) + " from the " + std::string(edge) +
                  " is past what it lies on, which is " + write(along.ground, unit) + " " +
                  std::string(along.whole),
          .where = {},
          .expected = "a distance less than " + write(along.ground, unit),
          .candidates = {}};
}

// `least`: the border that is kept towards the nearer edge: the one of the other way.
Length shifted(Length space, Length least) {
  if (space <= Length()) return space;
  return std::max(space / 2, std::min(std::max(least, Length()), space));
}

Result<Length> found_along(const PlaceAlong& said, const Along& along, Length other_border, Unit unit) {
  const Length rest = along.rest(), space = rest / 2;
  const Length by_edge = unit == Unit::mm ? Length::mm(3) : Length::inch_fraction(1, 8);
  const Length edge = rest > Length() ? std::min(by_edge, space) : space;
  switch (said.how) {
    case How::not_said:
    case How::centred:
      return space;
    case How::by_near_edge:
      return edge;
    case How::by_far_edge:
      return rest - edge;
    case How::toward_near:
      return shifted(space, other_border);
    case How::toward_far:
      return rest - shifted(space, other_border);
    case How::from_near:
    case How::from_far: {
      const bool near = said.how == How::from_near;
      if (-said.from >= along.piece) return failure(hangs_free(along, -said.from, unit));
      if (said.from >= along.ground)
        return failure(beyond(along, said.from, near ? along.near_word : along.far_word, unit));
      return near ? said.from : rest - said.from;
    }
    case How::from_both:
      break;
  }
  const Length missing = rest - said.from - said.other;
  if (magnitude(missing) > near_enough(unit)) return failure(disagree(along, said.from, said.other, unit));
  return said.from + missing / 2;
}

std::string figures_along(Length at, const Along& along, std::string_view both, Unit unit) {
  const Length far = along.rest() - at;
  const bool near_edge = at <= far;
  const Length from = near_edge ? at : far;
  const std::string edge(near_edge ? along.near_word : along.far_word);
  // Half a nanometre cannot be said.
  if (magnitude(at - far) <= Length::nm(1) && at >= Length()) {
    if (at == Length())
      return "flush " + std::string(along.near_word) + " and " + std::string(along.far_word);
    return write(from, unit) + " from " + std::string(both);
  }
  if (from == Length()) return "flush " + edge;
  if (from < Length()) {
    const bool centred = magnitude(at - far) <= Length::nm(1);
    if (centred) return "hanging off " + std::string(both) + " by " + write(-from, unit);
    return "hanging off the " + edge + " edge by " + write(-from, unit);
  }
  return write(from, unit) + " from the " + edge;
}

}  // namespace

Result<PlaceSaid> read_place(std::string_view words, Unit no_unit) {
  return PlaceReader(words, no_unit).read();
}

Result<PlaceFound> find_place(const PlaceSaid& said, const GroundAndPiece& sizes, Unit unit) {
  const Along across{sizes.ground_width, sizes.width, "left", "right", "wide"};
  const Along down{sizes.ground_height, sizes.height, "top", "bottom", "high"};
  const auto left = found_along(said.across, across, down.rest() / 2, unit);
  if (!left) return failure(left.error());
  PlaceAlong vertical = said.down;
  const Length side_border = std::min(*left, across.rest() - *left);
  if (said.same_border) vertical = {How::from_near, side_border, {}};
  const auto top = found_along(vertical, down, side_border, unit);
  if (!top) return failure(top.error());
  return PlaceFound{*left, *top};
}

std::string place_in_figures(const PlaceFound& place, const GroundAndPiece& sizes, Unit unit) {
  const Along across{sizes.ground_width, sizes.width, "left", "right", "wide"};
  const Along down{sizes.ground_height, sizes.height, "top", "bottom", "high"};
  return figures_along(place.left, across, "both sides", unit) + ", " +
         figures_along(place.top, down, "the top and the bottom", unit);
}

}  // namespace insetbook
