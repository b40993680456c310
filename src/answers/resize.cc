// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/resize.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/sizes_shown.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/openings.h"
#include "card/papers.h"
#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

Length magnitude(Length length) {
  return length < Length() ? -length : length;
}

Problem cannot(const BaseNotLaid& why) {
  return {.what = why.what, .where = {}, .expected = why.mend, .candidates = {}};
}

class Resizing {
 public:
  Resizing(const Book& book, ResizeAnswer& answer)
      : book_(book), settings_(settings(book)), words_(vocabulary_of(book)), answer_(answer) {}

  Result<void> run(std::int64_t sample_id, const std::string& base) {
    card_ = sample_card(book_, words_, settings_, sample_id);
    answer_.sample = card_.row.title;
    if (!card_.base) return failure(cannot(card_.base.error()));
    if (!card_.folded) return failure(cannot(card_.folded.error()));
    answer_.was = *card_.base;
    answer_.was_folded = *card_.folded;
    if (const auto laid = lay_new(base); !laid) return failure(laid.error());
    const auto folded = fold_flat(answer_.base, answer_.unit);
    if (!folded) return failure(cannot(folded.error()));
    answer_.folded = *folded;
    seats_ = check_card(answer_.was_folded, card_.pieces, card_.easel, card_.unit).seats;
    lines_ = measured_openings(book_, std::nullopt);
    grounds_.resize(card_.pieces.size());
    new_sizes_.resize(card_.pieces.size());
    for (std::size_t i = 0; i < card_.pieces.size(); ++i) resize(i);
    check_new();
    return {};
  }

 private:
  Result<void> lay_new(const std::string& text) {
    const auto paper = read_paper(text, settings_.unit);
    if (!paper) return failure(read_size(text, settings_.unit).error());
    answer_.unit = paper->unit;
    Base& base = answer_.base;
    base = answer_.was;
    base.width = paper->width;
    base.height = paper->height;
    // It lies as the old one does: its long side along the long side.
    if ((base.width < base.height) != (answer_.was.width < answer_.was.height))
      std::swap(base.width, base.height);
    for (SheetCrease& crease : base.creases) {
      const Length was = crease.upright ? answer_.was.width : answer_.was.height;
      const Length is = crease.upright ? base.width : base.height;
      const __int128 scaled = static_cast<__int128>(crease.at.nm()) * is.nm() + was.nm() / 2;
      crease.at = Length::nm(static_cast<std::int64_t>(scaled / was.nm()));
    }
    return {};
  }

  // What a piece lies on, before and now.
  struct Ground {
    Length was_width, was_height, width, height;
  };

  const Ground& ground_of(std::size_t i) {
    if (grounds_[i]) return *grounds_[i];
    grounds_[i] = Ground{};
    const SeatedPiece& seat = *seats_[i];
    Ground ground{seat.ground.width, seat.ground.height, seat.ground.width, seat.ground.height};
    const int with = card_.pieces[i].with;
    const bool on_piece = with >= 0 && seats_[static_cast<std::size_t>(with)] &&
                          !card_.pieces[static_cast<std::size_t>(with)].is_base &&
                          seat.ground == seats_[static_cast<std::size_t>(with)]->on_face;
    if (on_piece) {
      resize(static_cast<std::size_t>(with));
      const auto& size = new_sizes_[static_cast<std::size_t>(with)];
      if (size) {
        ground.width = size->first;
        ground.height = size->second;
      }
    } else {
      scale_base_ground(seat, ground);
    }
    grounds_[i] = ground;
    return *grounds_[i];
  }

  // A section, or the closed card.
  void scale_base_ground(const SeatedPiece& seat, Ground& ground) const {
    const auto place = static_cast<std::size_t>(seat.face.section);
    const BaseSection& is = answer_.folded.sections[place];
    ground.width = seat.ground.width == answer_.was_folded.width && seat.ground.width != seat.face.width
                       ? answer_.folded.width
                       : is.width;
    ground.height = seat.ground.height == answer_.was_folded.height && seat.ground.height != seat.face.height
                        ? answer_.folded.height
                        : is.height;
  }

  // A layer's side keeps its border; any other keeps its length.
  Length new_side(Length was, Length was_ground, Length ground) const {
    const Length most = answer_.unit == Unit::mm ? Length::mm(26) : Length::inches(1);
    const Length border = was_ground - was;
    if (border < Length() || border > most) return was;
    if (was_ground == ground) return was;
    return round_down(ground - border, step());
  }

  // The mark of the unit that the new base is in.
  Length step() const {
    if (answer_.unit == settings_.unit) return settings_.cutting_step;
    return answer_.unit == Unit::mm ? Length::mm(1) : Length::inch_fraction(1, 16);
  }

  void resize(std::size_t i) {
    if (done(i)) return;
    answer_.pieces.resize(card_.pieces.size());
    const CardPiece& piece = card_.pieces[i];
    ResizedPiece& resized = answer_.pieces[i];
    resized.name = piece.name;
    resized.unit = piece.unit;
    if (piece.is_base) {
      resized.was_width = answer_.was.width;
      resized.was_height = answer_.was.height;
      resized.width = answer_.base.width;
      resized.height = answer_.base.height;
      return;
    }
    if (!seats_[i]) {
      resized.was_width = resized.width = piece.width;
      resized.was_height = resized.height = piece.height;
      return;
    }
    const SeatedPiece& seat = *seats_[i];
    const Ground& ground = ground_of(i);
    resized.was_width = seat.on_face.width;
    resized.was_height = seat.on_face.height;
    Length width = new_side(seat.on_face.width, ground.was_width, ground.width);
    Length height = new_side(seat.on_face.height, ground.was_height, ground.height);
    // Round and regular shapes stay so.
    if (seat.on_face.width == seat.on_face.height && card_.elements[i].shape != "rectangle")
      width = height = std::min(width, height);
    resized.width = width;
    resized.height = height;
    // What overhangs was meant to; what lay on it and no longer does is said.
    const bool across = width > ground.width && seat.on_face.width <= ground.was_width;
    const bool down = height > ground.height && seat.on_face.height <= ground.was_height;
    resized.too_large = piece.how != LiesHow::around && (across || down);
    resized.border = {(ground.width - width) / 2, (ground.height - height) / 2};
    new_sizes_[i] = {width, height};
    if (width != seat.on_face.width || height != seat.on_face.height) name_dies(i, resized);
  }

  bool done(std::size_t i) const { return i < answer_.pieces.size() && !answer_.pieces[i].name.empty(); }

  void name_dies(std::size_t i, ResizedPiece& resized) const {
    const ElementRow& row = card_.elements[i];
    if (!row.die_id) return;
    const OpeningRecord* nearest = nullptr;
    Length least;
    for (const OpeningRecord& line : lines_) {
      if (line.die_id == *row.die_id && line.line_kind == "cut") resized.die = line.set + " " + line.die;
      if (line.line_kind != "cut" || line.shape_word != row.shape) continue;
      const Length off = std::min(apart(line, *resized.width, *resized.height),
                                  apart(line, *resized.height, *resized.width));
      if (nearest != nullptr && off >= least) continue;
      nearest = &line;
      least = off;
    }
    if (resized.die.empty()) resized.die = "its die";
    if (nearest == nullptr) return;
    resized.nearest_die =
        nearest->set + " " + nearest->die + ", " +
        shaped_size_text(nearest->shape_word, nearest->width, nearest->height, nearest->unit);
    if (nearest->die_id == *row.die_id) resized.die.clear();
  }

  static Length apart(const OpeningRecord& line, Length width, Length height) {
    return std::max(magnitude(line.width - width), magnitude(line.height - height));
  }

  void check_new() {
    std::vector<CardPiece> pieces = card_.pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      pieces[i].too_large.clear();
      if (!new_sizes_[i]) continue;
      pieces[i].width = new_sizes_[i]->first;
      pieces[i].height = new_sizes_[i]->second;
      pieces[i].may_turn = false;
    }
    answer_.checked = check_card(answer_.folded, pieces, card_.easel, answer_.unit);
  }

  const Book& book_;
  Settings settings_;
  Vocabulary words_;
  ResizeAnswer& answer_;
  SampleCard card_;
  std::vector<std::optional<SeatedPiece>> seats_;
  std::vector<OpeningRecord> lines_;
  std::vector<std::optional<Ground>> grounds_;
  std::vector<std::optional<std::pair<Length, Length>>> new_sizes_;
};

}  // namespace

Result<ResizeAnswer> resize_sample(const Book& book, std::string_view sample, const std::string& base) {
  const Result<NameHit> found = find_name(book, sample, RecordKind::sample);
  if (!found) return failure(found.error());
  ResizeAnswer answer;
  if (found->how == NameHit::How::like) answer.instead_of = std::string(sample);
  if (const Result<void> done = Resizing(book, answer).run(found->id, base); !done)
    return failure(done.error());
  return answer;
}

}  // namespace insetbook
