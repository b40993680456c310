// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/kept_room.h"

#include <fmt/format.h>

#include <string>
#include <string_view>

#include "answers/kept_text.h"

namespace insetbook {
namespace {

// Of room_in: where it finds another room, the number is another, and older ones are found again.
constexpr std::string_view question = "room 2";

// The circles, then the rectangles, a line each.
std::string written(const Room& room) {
  std::string text = fmt::format("{} {} {}\n", room.circle_in_middle, room.circle, room.too_large_a_circle);
  for (const Room::Rectangles& one : room.rectangles)
    text += fmt::format("{} {} {} {}\n", one.wide, one.high_in_middle, one.high, one.too_high);
  return text;
}

// Empty: not what `written` writes.
std::optional<Room> read(std::string_view text) {
  std::int64_t circles[3];
  if (!read_figures(take(text, '\n'), circles)) return std::nullopt;
  Room room{{}, circles[0], circles[1], circles[2]};
  while (!text.empty()) {
    std::int64_t n[4];
    if (!read_figures(take(text, '\n'), n)) return std::nullopt;
    room.rectangles.push_back({n[0], n[1], n[2], n[3]});
  }
  return room;
}

}  // namespace

void KeptRooms::keep() {
  kept_.keep(found_);
  found_.clear();
}

std::optional<Room> KeptRooms::room(std::int64_t line_id, const Opening& opening) {
  KeptKey key{kept_opening(opening), std::string(question)};
  if (const std::optional<std::string> kept = kept_.find(line_id, key))
    if (std::optional<Room> room = read(*kept)) return room;
  Result<Room> room = room_in(opening.shape);
  if (!room) return std::nullopt;
  found_.push_back({line_id, std::move(key), written(*room)});
  return std::move(*room);
}

}  // namespace insetbook
