// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/face.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <vector>

#include "text/utf8.h"

namespace insetbook {
namespace {

EdgeKind from_outer_face(EdgeKind kind) {
  if (kind == EdgeKind::free) return kind;
  return kind == EdgeKind::valley ? EdgeKind::mountain : EdgeKind::valley;
}

std::size_t place(int section) {
  return static_cast<std::size_t>(section);
}

int section_at(const FoldedBase& card, CardSide side) {
  return side == CardSide::front ? card.front_to_back.front() : card.front_to_back.back();
}

// The foremost of those that nothing covers: of two doors the first.
int first_uncovered(const FoldedBase& card) {
  const auto overlap = [&](const BaseSection& a, const BaseSection& b) {
    return a.closed_left < b.closed_right() && b.closed_left < a.closed_right() &&
           a.closed_top < b.closed_bottom() && b.closed_top < a.closed_bottom();
  };
  int first = section_at(card, CardSide::front);
  for (std::size_t i = 0; i < card.front_to_back.size(); ++i) {
    const BaseSection& one = card.sections[place(card.front_to_back[i])];
    const bool covered =
        std::any_of(card.front_to_back.begin(), card.front_to_back.begin() + static_cast<std::ptrdiff_t>(i),
                    [&](int over) { return overlap(one, card.sections[place(over)]); });
    if (!covered && one.number < card.sections[place(first)].number) first = card.front_to_back[i];
  }
  return first;
}

struct PartWords {
  std::string_view words;
  std::optional<CardSide> side;
  enum class Which { foremost, leftmost, rightmost, topmost, lowest, hindmost } which;
};
using Which = PartWords::Which;
constexpr std::array<PartWords, 20> part_words{{
    {"front", CardSide::front, Which::foremost},
    {"front of card", CardSide::front, Which::foremost},
    {"card front", CardSide::front, Which::foremost},
    {"card", {}, Which::foremost},
    {"base", {}, Which::foremost},
    {"card base", {}, Which::foremost},
    {"flap", {}, Which::foremost},
    {"front flap", CardSide::front, Which::foremost},
    {"back", CardSide::back, Which::hindmost},
    {"back of card", CardSide::back, Which::hindmost},
    {"inside", CardSide::inside, Which::hindmost},
    {"inside left", CardSide::inside, Which::leftmost},
    {"inside right", CardSide::inside, Which::rightmost},
    {"inside top", CardSide::inside, Which::topmost},
    {"inside bottom", CardSide::inside, Which::lowest},
    {"left inside", CardSide::inside, Which::leftmost},
    {"right inside", CardSide::inside, Which::rightmost},
    {"inside back", CardSide::inside, Which::hindmost},
    {"left door", CardSide::front, Which::leftmost},
    {"right door", CardSide::front, Which::rightmost},
}};

int section_of(const FoldedBase& card, Which which) {
  if (which == Which::foremost) return first_uncovered(card);
  if (which == Which::hindmost) return section_at(card, CardSide::back);
  int best = -1;
  const auto key = [&](int i) {
    const BaseSection& one = card.sections[place(i)];
    switch (which) {
      case Which::leftmost:
        return one.left;
      case Which::rightmost:
        return -one.left;
      case Which::topmost:
        return one.top;
      default:
        return -one.top;
    }
  };
  for (std::size_t i = 0; i < card.sections.size(); ++i) {
    const int candidate = static_cast<int>(i);
    if (card.sections[i].spine) continue;
    if (best < 0 || key(candidate) < key(best)) best = candidate;
  }
  return best;
}

std::optional<int> section_numbered(const FoldedBase& card, std::string_view words) {
  for (const std::string_view before : {"section ", "panel "}) {
    if (words.substr(0, before.size()) != before) continue;
    const std::string_view figure = words.substr(before.size());
    int number = 0;
    const auto read = std::from_chars(figure.data(), figure.data() + figure.size(), number);
    if (read.ec != std::errc() || read.ptr != figure.data() + figure.size()) return std::nullopt;
    for (std::size_t i = 0; i < card.sections.size(); ++i)
      if (card.sections[i].number == number && !card.sections[i].spine) return static_cast<int>(i);
  }
  return std::nullopt;
}

}  // namespace

std::optional<CardSide> read_card_side(std::string_view word) {
  const std::string folded = fold(word);
  if (folded.empty() || folded == "front") return CardSide::front;
  if (folded == "inside") return CardSide::inside;
  if (folded == "back") return CardSide::back;
  return std::nullopt;
}

Face face_of(const FoldedBase& card, int section, CardSide side) {
  const BaseSection& one = card.sections[place(section)];
  Face face;
  face.section = section;
  face.side = side;
  face.width = one.width;
  face.height = one.height;
  face.closed = {one.closed_left, one.closed_top, one.width, one.height};
  const bool inside_face = side == CardSide::inside || (side == CardSide::front) == one.inside_to_front();
  face.faces_front = inside_face == one.inside_to_front();
  // How what is looked at lies against the open sheet.
  bool across = false, down = false;
  if (side == CardSide::inside) {
    face.mirrored_across = one.mirrored_across;
    face.mirrored_down = one.mirrored_down;
  } else {
    face.mirrored_across = side == CardSide::back;
    across = one.mirrored_across != face.mirrored_across;
    down = one.mirrored_down;
  }
  face.edges = one.edges;
  if (across) std::swap(face.edges[left_edge], face.edges[right_edge]);
  if (down) std::swap(face.edges[top_edge], face.edges[bottom_edge]);
  if (!inside_face)
    for (EdgeKind& edge : face.edges) edge = from_outer_face(edge);
  return face;
}

Rect in_closed_card(const Face& face, const Rect& on_face) {
  Rect closed = on_face;
  closed.left =
      face.mirrored_across ? face.closed.right() - on_face.right() : face.closed.left + on_face.left;
  closed.top = face.mirrored_down ? face.closed.bottom() - on_face.bottom() : face.closed.top + on_face.top;
  return closed;
}

std::optional<Face> named_face(const FoldedBase& card, std::string_view words, std::optional<CardSide> side) {
  std::string folded = fold(words);
  if (folded.substr(0, 4) == "the ") folded.erase(0, 4);
  if (folded.empty()) {
    const CardSide own = side.value_or(CardSide::front);
    return face_of(card, own == CardSide::front ? first_uncovered(card) : section_at(card, CardSide::back),
                   own);
  }
  if (const auto section = section_numbered(card, folded))
    return face_of(card, *section, side.value_or(CardSide::front));
  for (const PartWords& part : part_words) {
    if (part.words != folded) continue;
    const CardSide own = part.side.value_or(side.value_or(CardSide::front));
    const bool any = !part.side && own != CardSide::front;
    return face_of(card, section_of(card, any ? Which::hindmost : part.which), own);
  }
  return std::nullopt;
}

}  // namespace insetbook
