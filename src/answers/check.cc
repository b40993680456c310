// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/check.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "answers/words.h"
#include "book/names.h"
#include "card/paper_weight.h"
#include "card/scoring_marks.h"
#include "measure/write.h"
#include "shape/shape.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Common practice, no source: envelope paper of 90 g/m², and of an envelope's paper two and a third times its
// size, flaps and seams counted.
constexpr std::int64_t envelope_mg_m2 = 90'000;

Length figure_mark(Unit unit) {
  return unit == Unit::mm ? Length::nm(500'000) : Length::inch_fraction(1, 32);
}

class Checker {
 public:
  Checker(const Book& book, CheckAnswer& answer) : book_(book), settings_(settings(book)), answer_(answer) {}

  void run(std::int64_t id) {
    const Vocabulary words = vocabulary_of(book_);
    answer_.card = sample_card(book_, words, settings_, id);
    say_how_read();
    if (answer_.card.folded) {
      answer_.checked = check_card(*answer_.card.folded, answer_.card.pieces, answer_.card.easel, unit());
      answer_.closed_width = answer_.card.folded->width;
      answer_.closed_height = answer_.card.folded->height;
    } else {
      base_not_folded();
    }
    for (const std::string& feature : answer_.card.moving)
      answer_.checked.not_checked.push_back("not checked: " + feature + " (it moves, or stands up inside)");
    weigh();
    standing();
    if (answer_.closed_width) {
      put_in_envelope();
      send();
    }
    quieten();
  }

 private:
  // What the person has answered "meant" of the card as a whole, or of its base; of pieces check_card does
  // it.
  void quieten() {
    std::vector<CardProblem> loud;
    for (CardProblem& problem : answer_.checked.problems) {
      const auto place = static_cast<std::size_t>(std::max(problem.piece, 0));
      const std::vector<std::string> meant =
          problem.piece < 0 ? codes_of(card().row.meant) : card().pieces[place].meant;
      const bool quiet = std::find(meant.begin(), meant.end(), problem.code) != meant.end();
      (quiet ? answer_.checked.meant : loud).push_back(std::move(problem));
    }
    answer_.checked.problems = std::move(loud);
  }

  const SampleCard& card() const { return answer_.card; }
  Unit unit() const { return answer_.card.unit; }

  void say_how_read() {
    const auto& base = card().base;
    if (!base) return;
    if (card().own_base >= 0)
      answer_.said.push_back("the card is its \"" +
                             card().pieces[static_cast<std::size_t>(card().own_base)].name + "\"");
    if (!card().written.width) answer_.said.push_back("a ready-made blank, by its finished size");
    if (base->turned) answer_.said.push_back("the base is turned, so that its scores run as the fold wants");
    if (base->other_side)
      answer_.said.push_back(
          "the scores are read along the short side: only so it closes to the finished size");
    for (const OffTheMark& off : off_the_marks(*base, settings_.scoring_marks)) {
      answer_.said.push_back(
          fmt::format("the score at {} lies on no groove of your scoring board; the nearest is {}",
                      write(off.at, unit()), write(off.nearest, settings_.unit)));
    }
    for (std::size_t i = 0; i < card().pieces.size(); ++i) {
      const auto& seats = answer_.checked.seats;
      if (i < seats.size() && seats[i] && seats[i]->turned)
        answer_.said.push_back(fmt::format("\"{}\" is taken as {} wide and {} high", card().pieces[i].name,
                                           write(seats[i]->on_face.width, unit()),
                                           write(seats[i]->on_face.height, unit())));
    }
  }

  void base_not_folded() {
    answer_.checked.seats.resize(card().pieces.size());
    const BaseNotLaid& why = card().folded.error();
    switch (why.why) {
      case BaseNotLaid::Why::unknown_size:
        answer_.checked.problems.push_back({"unknown-size", base_piece(), why.what, why.mend});
        break;
      case BaseNotLaid::Why::impossible:
        answer_.checked.problems.push_back({"place-impossible", base_piece(), why.what, why.mend});
        break;
      case BaseNotLaid::Why::not_checked:
        answer_.checked.not_checked.push_back("not checked: " + why.what +
                                              (why.mend.empty() ? "" : ": " + why.mend));
        break;
    }
    // What is recorded as the closed size still says what envelope it takes.
    answer_.closed_width = card().row.closed_width;
    answer_.closed_height = card().row.closed_height;
    for (std::size_t i = 0; i < card().pieces.size(); ++i) {
      const CardPiece& piece = card().pieces[i];
      if (!piece.too_large.empty())
        answer_.checked.problems.push_back(
            {"does-not-fit", static_cast<int>(i), piece.too_large, piece.too_large_mend});
    }
  }

  int base_piece() const {
    for (std::size_t i = 0; i < card().pieces.size(); ++i)
      if (card().pieces[i].is_base) return static_cast<int>(i);
    return -1;
  }

  // ---- thickness and mass

  static double area_mm2(const CardPiece& piece, const std::string& shape) {
    const double box =
        static_cast<double>(piece.width->nm()) / 1e6 * static_cast<double>(piece.height->nm()) / 1e6;
    const std::optional<ShapeKind> kind = shape_kind(shape);
    return kind == ShapeKind::circle || kind == ShapeKind::oval ? box * std::numbers::pi / 4 : box;
  }

  void weigh() {
    std::vector<Length> thickness(card().pieces.size());
    Length most_elsewhere;
    std::int64_t mass = 0;
    bool weight = card().base_paper.weight_is_typical, caliper = card().base_paper.thickness_is_typical,
         foam = false, unsized = false;
    for (std::size_t i = 0; i < card().pieces.size(); ++i) {
      const CardPiece& piece = card().pieces[i];
      const PaperOfPiece& paper = card().papers[i];
      if (piece.is_base) continue;
      thickness[i] = paper.thickness + paper.raised_by;
      weight = weight || paper.weight_is_typical;
      caliper = caliper || paper.thickness_is_typical;
      foam = foam || paper.raise_is_typical;
      const bool seated = i < answer_.checked.seats.size() && answer_.checked.seats[i];
      if (!seated && paper.raised_by > Length()) most_elsewhere = std::max(most_elsewhere, thickness[i]);
      if (!piece.width || !piece.height) {
        unsized = true;
        continue;
      }
      mass +=
          piece_mass_mg(area_mm2(piece, card().elements[i].shape), paper.mg_m2) * card().elements[i].count;
    }
    if (card().folded) {
      answer_.thickness =
          thickest(*card().folded, card().base_paper.thickness, answer_.checked.seats, thickness) +
          most_elsewhere;
    } else {
      answer_.thickness = card().base_paper.thickness * 2;
      for (const Length one : thickness) answer_.thickness += one;
    }
    mass += base_mass();
    answer_.card_mg = mass;
    answer_.with_envelope_mg = mass;
    thickness_is_typical_ = caliper || foam;
    if (weight)
      answer_.typical.push_back(
          "paper of unknown weight is taken as 80 lb cover, 216 g/m² (common practice, no source)");
    if (caliper)
      answer_.typical.push_back("paper that nobody measured is taken as thick as is typical of its weight");
    if (foam)
      answer_.typical.push_back("foam is taken as 2 mm a layer (common practice, no source: 1 to 3 mm)");
    if (unsized) answer_.typical.push_back("pieces without a size are not weighed");
    if (!card().folded)
      answer_.typical.push_back(
          "as the base is not worked out, all pieces are taken as lying on one another");
  }

  std::int64_t base_mass() const {
    const auto& written = card().written;
    if (card().base) return sheet_mass_mg(card().base->width, card().base->height, card().base_paper.mg_m2);
    if (written.width && written.height)
      return sheet_mass_mg(*written.width, *written.height, card().base_paper.mg_m2);
    if (!card().row.closed_width || !card().row.closed_height) return 0;
    return 2 * sheet_mass_mg(*card().row.closed_width, *card().row.closed_height, card().base_paper.mg_m2);
  }

  // ---- standing

  // Where the weight of the closed card lies, from its left, as a part of its width; pieces that hang far
  // over one side tip it.
  std::optional<double> middle_of_weight() const {
    if (!card().folded) return std::nullopt;
    double mass = 0, moment = 0;
    const auto add = [&](double mm2, std::int64_t mg_m2, Length left, Length width) {
      const double weight = mm2 * static_cast<double>(mg_m2);
      mass += weight;
      moment += weight * (static_cast<double>(left.nm()) + static_cast<double>(width.nm()) / 2);
    };
    for (const BaseSection& section : card().folded->sections) {
      const double mm2 =
          static_cast<double>(section.width.nm()) / 1e6 * static_cast<double>(section.height.nm()) / 1e6;
      if (!section.spine) add(mm2, card().base_paper.mg_m2, section.closed_left, section.width);
    }
    for (std::size_t i = 0; i < card().pieces.size(); ++i) {
      if (!answer_.checked.seats[i]) continue;
      const Rect& closed = answer_.checked.seats[i]->closed;
      add(area_mm2(card().pieces[i], card().elements[i].shape), card().papers[i].mg_m2, closed.left,
          closed.width);
    }
    return mass > 0 ? std::optional(moment / mass / static_cast<double>(card().folded->width.nm()))
                    : std::nullopt;
  }

  void standing() {
    answer_.stands = card().stands;
    const std::string fold = card().folds.empty() ? "card" : card().folds.front();
    switch (card().stands) {
      case Stands::built_to_stand:
        answer_.stands_why = fold + " is built to stand";
        break;
      case Stands::part_open:
        answer_.stands_why = fold + " stands only when it is set half open";
        break;
      case Stands::no:
        answer_.stands_why = fold + " is not made to stand";
        break;
      case Stands::not_said:
        answer_.stands_why = "its fold is not recorded";
        break;
    }
    const auto middle = middle_of_weight();
    if (!middle || card().stands == Stands::no || card().stands == Stands::not_said) return;
    const Length from_middle =
        Length::nm(std::llround((*middle - 0.5) * static_cast<double>(card().folded->width.nm())));
    const Length off = from_middle < Length() ? -from_middle : from_middle;
    if (off <= figure_mark(unit())) {
      answer_.stands_why += "; its weight lies over the middle of its foot";
      return;
    }
    const bool over_feet = *middle >= 0 && *middle <= 1;
    answer_.stands_why += fmt::format(
        "; its weight lies {} {} of the middle{} (worked out from the papers, no promise)",
        write_at_most(off, figure_mark(unit()), unit()), from_middle < Length() ? "left" : "right",
        over_feet ? "" : ", past its foot: it tips over");
  }

  // ---- envelope and post

  Length slack() const { return settings_.envelope_slack; }

  void put_in_envelope() {
    const ClosedCard closed{*answer_.closed_width, *answer_.closed_height, answer_.thickness};
    if (!card().row.envelope.empty()) {
      if (const auto named = read_envelope(card().row.envelope, settings_.unit)) {
        const EnvelopeFit fit = fit_in_envelope(closed, named->width, named->height, slack());
        answer_.envelope = EnvelopeAnswer{named->means, fit.goes_in, beyond(fit), true, named->source};
        size_ = {named->width, named->height};
        if (!fit.goes_in) too_small(closed, *named, fit);
        weigh_envelope();
        return;
      }
    }
    const auto choices = envelopes_for(closed, slack());
    if (choices.empty()) {
      answer_.envelope = EnvelopeAnswer{};
      return;
    }
    const EnvelopeChoice& best = choices.front();
    answer_.envelope = EnvelopeAnswer{write_envelope(*best.envelope), true, beyond(best.fit), false, {}};
    size_ = {best.envelope->width, best.envelope->height};
    weigh_envelope();
  }

  static Length beyond(const EnvelopeFit& fit) {
    return std::min(fit.left_width, fit.left_height) - fit.wanted;
  }

  // Where only a thickness that nobody measured speaks against it, it is said and no more.
  void too_small(const ClosedCard& closed, const EnvelopeRead& named, const EnvelopeFit& fit) {
    const bool guessed = thickness_is_typical_ && fit_in_envelope({closed.width, closed.height, std::nullopt},
                                                                  named.width, named.height, slack())
                                                      .goes_in;
    const std::string leaves = fmt::format("{} leaves {} where {} is wanted", named.means,
                                           written_gap(std::min(fit.left_width, fit.left_height)),
                                           write_at_most(fit.wanted, figure_mark(unit()), unit()));
    if (guessed) {
      answer_.envelope->fits = true;
      answer_.said.push_back("it may be tight: " + leaves +
                             ", as thick as it is reckoned; try it before the envelope is addressed");
      return;
    }
    const auto choices = envelopes_for(closed, slack());
    const std::string mend = choices.empty()
                                 ? "no envelope of the table takes it: post it in a box"
                                 : "the smallest that takes it: " + write_envelope(*choices.front().envelope);
    answer_.checked.problems.push_back(
        {"too-big-for-envelope", -1,
         fmt::format("closed it is {} and {} thick, and {}", write_size(closed.width, closed.height, unit()),
                     write_at_most(*closed.thickness, figure_mark(unit()), unit()), leaves),
         mend});
  }

  std::string written_gap(Length left) const {
    return left < Length()
               ? "nothing (it is " + write_at_most(-left, figure_mark(unit()), unit()) + " too small)"
               : write_at_most(left, figure_mark(unit()), unit());
  }

  void weigh_envelope() {
    answer_.with_envelope_mg =
        answer_.card_mg + sheet_mass_mg(size_->first, size_->second, envelope_mg_m2) * 7 / 3;
  }

  void send() {
    PostItem item;
    item.width = size_ ? size_->first : *answer_.closed_width;
    item.height = size_ ? size_->second : *answer_.closed_height;
    item.unit = unit();
    // Two sheets of envelope paper go round it.
    item.thickness = answer_.thickness + Length::nm(2 * 110'000);
    item.mass_mg = answer_.with_envelope_mg;
    answer_.post = post(item);
  }

  const Book& book_;
  Settings settings_;
  CheckAnswer& answer_;
  std::optional<std::pair<Length, Length>> size_;  // of the envelope
  bool thickness_is_typical_ = false;
};

}  // namespace

Result<CheckAnswer> check(const Book& book, std::string_view sample) {
  const Result<NameHit> found = find_name(book, sample, RecordKind::sample);
  if (!found) return failure(found.error());
  CheckAnswer answer;
  if (found->how == NameHit::How::like) answer.instead_of = std::string(sample);
  Checker(book, answer).run(found->id);
  return answer;
}

Result<MeantAnswer> answer_meant(Book& book, std::string_view sample, const std::string& piece) {
  const Result<CheckAnswer> checked = check(book, sample);
  if (!checked) return failure(checked.error());
  const SampleCard& card = checked->card;
  MeantAnswer answer{card.row.title, piece, {}};
  int place = -2;
  std::vector<std::string> names{"the card"};
  if (fold(piece) == "the card" || fold(piece) == "card") place = -1;
  for (std::size_t i = 0; i < card.pieces.size(); ++i) {
    names.push_back(card.pieces[i].name);
    if (fold(card.pieces[i].name) == fold(piece)) place = static_cast<int>(i);
  }
  for (const CardProblem& problem : checked->checked.problems)
    if (problem.piece == place) answer.codes.push_back(problem.code);
  if (place == -2 || answer.codes.empty()) {
    return failure(Problem{.kind = place == -2 ? ProblemKind::unknown_name : ProblemKind::bad_input,
                           .what = place == -2
                                       ? "no piece of " + card.row.title + " is called " + in_quotes(piece)
                                       : "the check has nothing to say about " + in_quotes(piece),
                           .where = {},
                           .expected = place == -2 ? "a piece, or \"the card\"" : "",
                           .candidates = place == -2 ? names : std::vector<std::string>{}});
  }
  std::string codes = place < 0 ? card.row.meant : card.elements[static_cast<std::size_t>(place)].meant;
  for (const std::string& code : answer.codes) codes += (codes.empty() ? "" : "; ") + code;
  const Result<void> done =
      book.change(fmt::format("{}: {} is meant", card.row.title, piece), [&](Change& change) -> Result<void> {
        std::optional<std::int64_t> element;
        if (place >= 0) element = card.element_ids[static_cast<std::size_t>(place)];
        set_meant(change, card.id, element, codes);
        return {};
      });
  if (!done) return failure(done.error());
  return answer;
}

}  // namespace insetbook
