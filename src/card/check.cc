// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/check.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "measure/write.h"
#include "text/quote.h"

namespace insetbook {
namespace {

constexpr Length agree = Length::nm(1000);

constexpr std::array<std::string_view, 4> edge_names{{"left", "right", "top", "bottom"}};
constexpr std::array<std::string_view, 4> opposite_names{{"right", "left", "bottom", "top"}};

// How far the rectangle reaches past an edge of its face.
Length past_edge(const Rect& rect, const Face& face, EdgeSide side) {
  switch (side) {
    case left_edge:
      return -rect.left;
    case right_edge:
      return rect.right() - face.width;
    case top_edge:
      return -rect.top;
    case bottom_edge:
      break;
  }
  return rect.bottom() - face.height;
}

// The part of it that is past the edge.
Rect part_past(const Rect& rect, const Face& face, EdgeSide side) {
  Rect part = rect;
  const Length past = past_edge(rect, face, side);
  switch (side) {
    case left_edge:
      part.width = past;
      break;
    case right_edge:
      part.left = face.width;
      part.width = past;
      break;
    case top_edge:
      part.height = past;
      break;
    case bottom_edge:
      part.top = face.height;
      part.height = past;
      break;
  }
  return part;
}

bool has_area(const Rect& rect) {
  return rect.width > agree && rect.height > agree;
}

Rect common_part(const Rect& a, const Rect& b) {
  Rect part;
  part.left = std::max(a.left, b.left);
  part.top = std::max(a.top, b.top);
  part.width = std::min(a.right(), b.right()) - part.left;
  part.height = std::min(a.bottom(), b.bottom()) - part.top;
  return part;
}

// Whether some of `rect` is left when the others are taken out of it.
bool something_left(const Rect& rect, const std::vector<Rect>& others) {
  if (!has_area(rect)) return false;
  for (std::size_t i = 0; i < others.size(); ++i) {
    const Rect common = common_part(rect, others[i]);
    if (!has_area(common)) continue;
    const std::vector<Rect> rest(others.begin() + static_cast<std::ptrdiff_t>(i) + 1, others.end());
    const Rect left{rect.left, rect.top, common.left - rect.left, rect.height};
    const Rect right{common.right(), rect.top, rect.right() - common.right(), rect.height};
    const Rect above{common.left, rect.top, common.width, common.top - rect.top};
    const Rect below{common.left, common.bottom(), common.width, rect.bottom() - common.bottom()};
    return something_left(left, rest) || something_left(right, rest) || something_left(above, rest) ||
           something_left(below, rest);
  }
  return true;
}

Rect moved(Rect rect, const Rect& by) {
  rect.left += by.left;
  rect.top += by.top;
  return rect;
}

class Check {
 public:
  Check(const FoldedBase& card, const std::vector<CardPiece>& pieces, bool easel, Unit unit)
      : card_(card), pieces_(pieces), easel_(easel), unit_(unit) {
    checked_.seats.resize(pieces.size());
    state_.resize(pieces.size(), State::open);
  }

  CheckedCard run() {
    for (std::size_t i = 0; i < pieces_.size(); ++i) seat(i);
    for (std::size_t i = 0; i < pieces_.size(); ++i) check(i);
    if (easel_ && !has_stop()) {
      add("no-stop", -1, "an easel without a raised stop on its inside slides flat",
          "put a greeting or a flower on foam inside, where the front's foot comes to rest");
    }
    return std::move(checked_);
  }

 private:
  enum class State { open, under_way, done };

  const CardPiece& piece(std::size_t i) const { return pieces_[i]; }
  std::string length(Length value) const { return write_at_most(value, mark(), unit_); }
  Length mark() const { return unit_ == Unit::mm ? Length::nm(500'000) : Length::inch_fraction(1, 32); }

  void add(std::string code, int at, std::string why, std::string mend) {
    CardProblem problem{std::move(code), at, std::move(why), std::move(mend)};
    const bool quiet = at >= 0 && among(pieces_[static_cast<std::size_t>(at)].meant, problem.code);
    (quiet ? checked_.meant : checked_.problems).push_back(std::move(problem));
  }
  void add(std::string code, std::size_t at, std::string why, std::string mend) {
    add(std::move(code), static_cast<int>(at), std::move(why), std::move(mend));
  }
  static bool among(const std::vector<std::string>& words, const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
  }
  void not_checked(std::size_t i, const std::string& why) {
    checked_.not_checked.push_back(in_quotes(piece(i).name) + ": " + why);
  }

  // Its face and what it lies on there.
  struct Ground {
    Face face;
    Rect rect;
  };
  std::optional<Ground> ground_of(std::size_t i) {
    const CardPiece& one = piece(i);
    if (one.with >= 0) {
      const auto other = static_cast<std::size_t>(one.with);
      if (!pieces_[other].is_base) {
        seat(other);
        if (!checked_.seats[other]) return std::nullopt;
        return Ground{checked_.seats[other]->face, checked_.seats[other]->on_face};
      }
    }
    const auto face = named_face(card_, one.with >= 0 ? std::string() : one.target, one.side);
    if (!face) {
      not_checked(i, "where it lies (" + in_quotes(one.target) + ") is no part of this card");
      return std::nullopt;
    }
    return Ground{*face, {Length(), Length(), face->width, face->height}};
  }

  void seat(std::size_t i) {
    if (state_[i] != State::open) return;
    state_[i] = State::under_way;
    const CardPiece& one = piece(i);
    if (!one.is_base) {
      if (const auto ground = ground_of(i)) place(i, *ground);
    }
    state_[i] = State::done;
  }

  void place(std::size_t i, const Ground& ground) {
    const CardPiece& one = piece(i);
    if (one.how == LiesHow::through) return;
    if (!one.width || !one.height) {
      if (one.needs_size) {
        add("unknown-size", i, "its size is not recorded, so that it cannot be checked",
            "measure it and record its size");
      }
      return;
    }
    auto said = read_place(one.at, one.unit);
    if (!said) {
      not_checked(i, said.error().what + "; it is taken as centred");
      said = PlaceSaid{};
    }
    if (said->each_corner) {
      said->across.how = PlaceAlong::How::by_near_edge;
      said->down.how = PlaceAlong::How::by_near_edge;
    }
    SeatedPiece seat;
    Length width = *one.width, height = *one.height;
    seat.turned = one.may_turn && (width > ground.rect.width || height > ground.rect.height) &&
                  width <= ground.rect.height && height <= ground.rect.width;
    if (seat.turned) std::swap(width, height);
    const bool goes_across = width >= height;
    Rect base = ground.rect;
    if (one.how == LiesHow::around) {
      // Round the whole card, unless a piece or a section is named.
      if (one.with < 0 && one.target.rfind("section", 0) != 0) base = card_on(ground.face);
      // Only what is seen of a band lies on the face.
      seat.around = (goes_across ? base.width : base.height) * 2;
      (goes_across ? width : height) = goes_across ? base.width : base.height;
    }
    widen_to_card(ground.face, width, height, *said, base);
    const GroundAndPiece sizes{base.width, base.height, width, height};
    const auto found = find_place(*said, sizes, unit_);
    if (!found) {
      add("place-impossible", i, found.error().what, found.error().expected);
      return;
    }
    seat.face = ground.face;
    seat.ground = base;
    seat.on_face = {base.left + found->left, base.top + found->top, width, height};
    if (said->centred_on == PlaceSaid::CentredOn::crease) centre_on_crease(seat);
    seat.closed = in_closed_card(seat.face, seat.on_face);
    seat.figures = place_in_figures(*found, sizes, one.unit);
    if (base != ground.rect && base == card_on(seat.face)) seat.figures += ", of the card";
    checked_.seats[i] = std::move(seat);
  }

  // The closed card as it lies on the face.
  Rect card_on(const Face& face) const {
    return {face.mirrored_across ? face.closed.right() - card_.width : -face.closed.left,
            face.mirrored_down ? face.closed.bottom() - card_.height : -face.closed.top, card_.width,
            card_.height};
  }

  // What would pass the edge of the closed card where no place is said, and has room on it, lies in the
  // middle of the card; so does what is said to.
  void widen_to_card(const Face& face, Length width, Length height, const PlaceSaid& said, Rect& base) const {
    if (face.side == CardSide::inside) return;
    const bool on_card = said.centred_on == PlaceSaid::CentredOn::card;
    const auto open = [](const PlaceAlong& along) {
      return along.how == PlaceAlong::How::not_said || along.how == PlaceAlong::How::centred;
    };
    const Rect centred{base.left + (base.width - width) / 2, base.top + (base.height - height) / 2, width,
                       height};
    const Rect closed = in_closed_card(face, centred);
    const bool off_across = closed.left < -agree || closed.right() > card_.width + agree;
    const bool off_down = closed.top < -agree || closed.bottom() > card_.height + agree;
    if (open(said.across) && (on_card || (off_across && width <= card_.width + agree))) {
      base.left = card_on(face).left;
      base.width = card_.width;
    }
    if (open(said.down) && (on_card || (off_down && height <= card_.height + agree))) {
      base.top = card_on(face).top;
      base.height = card_.height;
    }
  }

  void centre_on_crease(SeatedPiece& seat) const {
    for (const EdgeSide side : {right_edge, left_edge, bottom_edge, top_edge}) {
      if (seat.face.edges[side] == EdgeKind::free) continue;
      Rect& rect = seat.on_face;
      if (side == left_edge) rect.left = -(rect.width / 2);
      if (side == right_edge) rect.left = seat.face.width - rect.width / 2;
      if (side == top_edge) rect.top = -(rect.height / 2);
      if (side == bottom_edge) rect.top = seat.face.height - rect.height / 2;
      return;
    }
  }

  void check(std::size_t i) {
    const CardPiece& one = piece(i);
    if (!one.too_large.empty()) add("does-not-fit", i, one.too_large, one.too_large_mend);
    if (!checked_.seats[i] || one.how == LiesHow::around) return;
    const SeatedPiece& seat = *checked_.seats[i];
    bool unknown_glue = false;
    for (const EdgeSide side : {left_edge, right_edge, top_edge, bottom_edge}) {
      const Length past = past_edge(seat.on_face, seat.face, side);
      if (past <= agree) continue;
      if (seat.face.edges[side] == EdgeKind::valley) {
        over_a_crease(i, side, past);
      } else {
        check_glue(i, side, past, unknown_glue);
      }
    }
    off_the_card(i);
    if (unknown_glue) {
      add("unknown-glue", i, "it reaches past its section, and where it is glued is not recorded",
          "say where the glue is: \"" + glue_that_holds(seat) + "\", \"whole\" or \"none\"");
    }
  }

  void over_a_crease(std::size_t i, EdgeSide side, Length past) {
    add("over-a-crease", i,
        "it lies " + length(past) + " past the crease on its " + std::string(edge_names[side]) +
            ", where the paper folds onto it",
        "make it " + length(past) + " smaller there, or move it so far to the " +
            std::string(opposite_names[side]));
  }

  // Glue past a mountain, or past a free edge with another section behind it.
  void check_glue(std::size_t i, EdgeSide side, Length past, bool& unknown) {
    const CardPiece& one = piece(i);
    const SeatedPiece& seat = *checked_.seats[i];
    const bool crease = seat.face.edges[side] == EdgeKind::mountain;
    const std::vector<Rect> under = pieces_under(i);
    bool glued = false;
    for (const Rect& part : glued_parts(one.glue, seat.on_face.width, seat.on_face.height)) {
      const Rect on_face = moved(part, seat.on_face);
      if (past_edge(on_face, seat.face, side) <= agree) continue;
      const Rect beyond = part_past(on_face, seat.face, side);
      if (something_left(beyond, under) && (crease || lies_over_another(seat.face, beyond))) glued = true;
    }
    if (!glued) return;
    if (one.glue.where == GlueSaid::Where::not_said || one.glue.where == GlueSaid::Where::somewhere) {
      unknown = true;
      return;
    }
    add("glued-shut", i,
        "it reaches " + length(past) + " past the " + std::string(crease ? "fold" : "edge") + " on the " +
            std::string(edge_names[side]) +
            " of its section and is glued there: the card would be shut for good",
        "glue it only where it lies on its section: \"" + glue_that_holds(seat) + "\"");
  }

  // The pieces that it lies on, down to the section.
  std::vector<Rect> pieces_under(std::size_t i) const {
    std::vector<Rect> under;
    int at = piece(i).with;
    for (std::size_t steps = 0; at >= 0 && steps < pieces_.size(); ++steps) {
      const auto place = static_cast<std::size_t>(at);
      if (checked_.seats[place]) under.push_back(checked_.seats[place]->on_face);
      at = pieces_[place].with;
    }
    return under;
  }

  // Whether a section lies on the side of the face to which glue looks, where the part is.
  bool lies_over_another(const Face& face, const Rect& part) const {
    const Rect closed = in_closed_card(face, part);
    const int layer = card_.sections[static_cast<std::size_t>(face.section)].layer;
    for (const BaseSection& other : card_.sections) {
      if (other.spine || (face.faces_front ? other.layer <= layer : other.layer >= layer)) continue;
      if (has_area(common_part(closed, {other.closed_left, other.closed_top, other.width, other.height})))
        return true;
    }
    return false;
  }

  // "left 2 in": the side of the piece that lies on the section, to the mark below.
  std::string glue_that_holds(const SeatedPiece& seat) const {
    Length most;
    EdgeSide where = left_edge;
    for (const EdgeSide side : {left_edge, right_edge, top_edge, bottom_edge}) {
      const Length past = past_edge(seat.on_face, seat.face, side);
      if (past <= most) continue;
      most = past;
      where = side;
    }
    const bool across = where == left_edge || where == right_edge;
    const Length on = (across ? seat.on_face.width : seat.on_face.height) - most;
    const Length eighth = unit_ == Unit::mm ? Length::mm(1) : Length::inch_fraction(1, 8);
    return std::string(opposite_names[where]) + " " + write(round_down(on, eighth), unit_);
  }

  void off_the_card(std::size_t i) {
    const SeatedPiece& seat = *checked_.seats[i];
    const std::array<Length, 4> past{{-seat.closed.left, seat.closed.right() - card_.width, -seat.closed.top,
                                      seat.closed.bottom() - card_.height}};
    for (const EdgeSide side : {left_edge, right_edge, top_edge, bottom_edge}) {
      if (past[side] <= agree || is_own_crease(seat.face, side)) continue;
      // Looked at from behind or lying open, the sides of the card may be the other ones.
      EdgeSide seen = side;
      const bool across = side == left_edge || side == right_edge;
      if (across && seat.face.mirrored_across) seen = side == left_edge ? right_edge : left_edge;
      if (!across && seat.face.mirrored_down) seen = side == top_edge ? bottom_edge : top_edge;
      add("off-the-card", i,
          "it reaches " + length(past[side]) + " past the " + std::string(edge_names[seen]) +
              " edge of the closed card",
          "make it " + length(past[side]) + " smaller, or move it so far to the " +
              std::string(opposite_names[seen]));
    }
  }

  // Whether that edge of the closed card is a crease of the face.
  bool is_own_crease(const Face& face, EdgeSide card_side) const {
    const bool across = card_side == left_edge || card_side == right_edge;
    const bool meets = card_side == left_edge    ? face.closed.left <= agree
                       : card_side == right_edge ? face.closed.right() >= card_.width - agree
                       : card_side == top_edge   ? face.closed.top <= agree
                                                 : face.closed.bottom() >= card_.height - agree;
    if (!meets) return false;
    EdgeSide own = card_side;
    if (across && face.mirrored_across) own = card_side == left_edge ? right_edge : left_edge;
    if (!across && face.mirrored_down) own = card_side == top_edge ? bottom_edge : top_edge;
    return face.edges[own] != EdgeKind::free;
  }

  bool lies_inside(std::size_t i) const {
    for (std::size_t steps = 0; steps <= pieces_.size(); ++steps) {
      const CardPiece& one = piece(i);
      if (one.with >= 0 && !pieces_[static_cast<std::size_t>(one.with)].is_base &&
          one.side != CardSide::inside) {
        i = static_cast<std::size_t>(one.with);
        continue;
      }
      if (one.side == CardSide::inside) return true;
      const auto face = named_face(card_, one.with >= 0 ? std::string() : one.target, one.side);
      return face && face->side == CardSide::inside;
    }
    return false;
  }

  bool has_stop() const {
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (!pieces_[i].is_base && pieces_[i].raised && lies_inside(i)) return true;
    return false;
  }

  const FoldedBase& card_;
  const std::vector<CardPiece>& pieces_;
  bool easel_;
  Unit unit_;
  CheckedCard checked_;
  std::vector<State> state_;
};

}  // namespace

CheckedCard check_card(const FoldedBase& card, const std::vector<CardPiece>& pieces, bool easel, Unit unit) {
  return Check(card, pieces, easel, unit).run();
}

Length thickest(const FoldedBase& card, Length layer, const std::vector<std::optional<SeatedPiece>>& seats,
                const std::vector<Length>& thickness) {
  struct Sheet {
    Rect rect;
    Length thick;
  };
  std::vector<Sheet> sheets;
  for (const BaseSection& one : card.sections)
    if (!one.spine) sheets.push_back({{one.closed_left, one.closed_top, one.width, one.height}, layer});
  for (std::size_t i = 0; i < seats.size(); ++i)
    if (seats[i]) sheets.push_back({seats[i]->closed, thickness[i]});
  // The most lies where the left edge of one begins and the top edge of one begins.
  Length most;
  std::vector<const Sheet*> there;
  for (const Sheet& a : sheets) {
    there.clear();
    for (const Sheet& one : sheets)
      if (one.rect.left <= a.rect.left && one.rect.right() > a.rect.left) there.push_back(&one);
    for (const Sheet* b : there) {
      Length here;
      for (const Sheet* one : there)
        if (one->rect.top <= b->rect.top && one->rect.bottom() > b->rect.top) here += one->thick;
      most = std::max(most, here);
    }
  }
  return most;
}

}  // namespace insetbook
