// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/not_answered.h"

#include <algorithm>
#include <initializer_list>

namespace insetbook {
namespace {

using Words = std::initializer_list<std::string_view>;

class Asked {
 public:
  explicit Asked(const std::vector<Piece>& pieces) : pieces_(pieces) {}
  bool begins(Words list) const { return is(0, list); }
  bool has(Words list) const {
    for (std::size_t at = 0; at < pieces_.size(); ++at)
      if (is(at, list)) return true;
    return false;
  }
  // One of the first, and at once behind it one of the second.
  bool has(Words first, Words second) const {
    for (std::size_t at = 0; at + 1 < pieces_.size(); ++at)
      if (is(at, first) && is(at + 1, second)) return true;
    return false;
  }

 private:
  bool is(std::size_t at, Words list) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word &&
           std::ranges::find(list, pieces_[at].folded) != list.end();
  }
  const std::vector<Piece>& pieces_;
};

}  // namespace

std::string_view not_answered(const std::vector<Piece>& pieces) {
  const Asked asked(pieces);
  const bool asks = asked.begins({"what", "whats", "which", "how", "list", "show"});
  if (asks && asked.has({"in"}, {"drawer", "tin", "tray", "shelf", "box", "jar", "folder"}))
    return "What lies in one place is not answered; \"where is …\" says where one thing is.";
  if (asks && asked.has({"how"}, {"many", "much"}) && asked.has({"left", "remain", "remaining"}))
    return "What is left of a supply is not answered; \"insetbook show …\" with its name has what was "
           "written "
           "of it.";
  if (asked.has({"scored"}, {"at"}))
    return "Cards are not found by their scores; \"insetbook show …\" has those of one card.";
  if (asks && asked.has({"stamps", "stamp"}) && asked.has({"fit", "fits"}))
    return "Which stamps fit is not answered; \"insetbook frames …\" with a stamp's name says which dies "
           "frame it.";
  if (asks && asked.has({"are", "is"}, {"withdrawn", "discontinued", "retired"}))
    return "These are the cards that have one; \"insetbook show …\" has the status of one supply.";
  const bool dies = asked.has({"die", "dies"});
  const bool compared = asked.has({"bigger", "larger", "smaller", "over", "under"}, {"than"}) ||
                        asked.has({"largest", "smallest", "biggest"}) || asked.has({"never"}, {"used"}) ||
                        asked.has({"unused"});
  if (dies && compared)
    return "Dies are not compared with one another, nor with their use; \"which dies do I have 3 in circle\" "
           "lists those of a size.";
  return {};
}

}  // namespace insetbook
