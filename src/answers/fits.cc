// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/fits.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/estimated.h"
#include "answers/kept_panels.h"
#include "answers/opening_said.h"
#include "answers/options.h"
#include "answers/set_habit.h"
#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "answers/tried_panels.h"
#include "book/evidence.h"
#include "book/settings.h"
#include "fit/contacts.h"
#include "fit/cover.h"
#include "measure/write.h"
#include "search/snapshot.h"
#include "shape/shape_outline.h"
#include "shape/wide.h"

namespace insetbook {
namespace {

// A window is covered from behind with this overlap all round, unless a border is asked.
constexpr Length overlap_behind = Length::inch_fraction(1, 8);

// Whether a tried panel answers what was asked: the shape, the side given, the border within what the opening
// is known to.
bool meets(const FittingPanel& panel, const FitsAsked& asked, const FitQuestion& question,
           Length give_or_take) {
  if (!question.shapes.empty() && shape_kind(panel.shape) != question.shapes.front()) return false;
  if (question.width && panel.width != *question.width) return false;
  if (question.height && panel.height != *question.height) return false;
  if (!asked.border) return true;
  const Length off =
      panel.border < question.border ? question.border - panel.border : panel.border - question.border;
  return panel.border_known && off <= std::max(give_or_take, question.step) / 2;
}

// Sets aside the tried panels that are no answer to what was asked.
void set_aside(FitsAnswer& answer, const FitsAsked& asked, const FitQuestion& question) {
  const auto kept = std::stable_partition(
      answer.panels.begin(), answer.panels.end(),
      [&](const FittingPanel& panel) { return meets(panel, asked, question, answer.opening.give_or_take); });
  for (auto panel = kept; panel != answer.panels.end(); ++panel)
    answer.other_tried.push_back(fmt::format("{} {}", panel->shape,
                                             panel->one_figure
                                                 ? write(panel->width, panel->unit)
                                                 : write_size(panel->width, panel->height, panel->unit)));
  answer.panels.erase(kept, answer.panels.end());
}

Result<FitQuestion> question_of(const FitsAsked& asked, const FitsAnswer& answer) {
  FitQuestion question{
      .border = answer.border, .step = answer.cutting_step, .shapes = {}, .width = {}, .height = {}};
  if (asked.shape) {
    const Result<ShapeKind> kind = shape_option(*asked.shape);
    if (!kind) return failure(kind.error());
    question.shapes = {*kind};
  }
  if (asked.width) {
    const Result<Length> width = length_option("width", *asked.width, answer.unit, false);
    if (!width) return failure(width.error());
    question.width = *width;
  }
  if (asked.height) {
    const Result<Length> height = length_option("height", *asked.height, answer.unit, false);
    if (!height) return failure(height.error());
    question.height = *height;
  }
  return question;
}

// A rectangle with equal sides is called what it is.
std::string word_of(const Shape& shape) {
  if (shape.kind == ShapeKind::rectangle && shape.name.empty() && shape.width == shape.height)
    return std::string(shape_word(ShapeKind::square));
  return shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
}

// What is said of a computed panel. Rounded down each for itself, its sides may be in other proportions than
// the opening's.
std::string note_of(const Panel& panel, const Shape& opening) {
  const Int128 a = static_cast<Int128>(panel.shape.width.nm()) * opening.height.nm();
  const Int128 b = static_cast<Int128>(panel.shape.height.nm()) * opening.width.nm();
  if (panel.kind != PanelKind::proportional || a == b) return panel.note;
  return fmt::format("each side rounded down{}{}", panel.note.empty() ? "" : "; ", panel.note);
}

// "about 1/16 in away at 3/8 in from the left, 1/2 in from the top of the line's box".
std::vector<std::string> what_holds(const Opening& opening, const Panel& panel, Unit unit) {
  std::vector<std::string> touches;
  const Result<std::vector<Contact>> places = contacts(opening, panel);
  if (!places) return touches;
  for (const Contact& place : *places)
    touches.push_back(fmt::format(
        "about {} away at {} from the left, {} from the top", write(nearest_mark(place.distance, unit), unit),
        write(nearest_mark(place.x, unit), unit), write(nearest_mark(place.y, unit), unit)));
  return touches;
}

// Adds the computed (or, with an estimated opening, estimated) panels; what cannot be computed is said.
void add_computed(FitsAnswer& answer, const Book& book, const Opening& opening, const FitQuestion& question,
                  PanelStatus status, bool because) {
  // A kept panel says its size and place, and not its whole outline, which is wanted here.
  const Result<OpeningPanels> computed =
      panels_of_opening(book, because ? 0 : answer.opening.line_id, opening, question);
  if (!computed) {
    answer.not_computed = computed.error().what;
    if (!missing_figure(opening.shape).empty())
      answer.not_computed += "; wanted: " + computed.error().expected;
    return;
  }
  for (const std::string& mended : computed->mended) answer.warnings.push_back(mended);
  for (const Panel& panel : computed->panels)
    answer.panels.push_back(
        {.status = status,
         .kind = panel.kind,
         .shape = word_of(panel.shape),
         .width = panel.shape.width,
         .height = panel.shape.height,
         .unit = answer.unit,
         .one_figure = panel.shape.kind == ShapeKind::circle,
         .border = panel.border,
         .verdict = std::string(verdict_word(panel.verdict)),
         .note = note_of(panel, opening.shape),
         .left = panel.left,
         .top = panel.top,
         .centred = panel.centred,
         .touches = because ? what_holds(opening, panel, answer.unit) : std::vector<std::string>()});
  if (computed->panels.empty())
    answer.not_computed = "nothing fits with this border: the opening is too small for it";
}

// An opening that nobody measured, between two measured ones of its edge.
void add_estimated(FitsAnswer& answer, const Book& book, const FitQuestion& question, bool because) {
  answer.estimated = estimated_size(book, answer.opening);
  if (!answer.estimated) {
    answer.not_computed =
        "this line is not measured yet, and does not stand between two measured ones of its set";
    return;
  }
  OpeningRecord guessed = answer.opening;
  guessed.width = answer.estimated->width;
  guessed.height = answer.estimated->height;
  guessed.measured = true;
  if (const Result<Shape> shape = shape_of(guessed))
    add_computed(answer, book, {*shape, answer.estimated->spread}, question, PanelStatus::estimated, because);
  else
    answer.not_computed = shape.error().what;
}

// What covers a window lies behind the die's own paper: it shows where it is larger than that.
void beside_the_cut_edge(FitsAnswer& answer, const OpeningRecord& cut) {
  const auto larger = [&](Length width, Length height) { return width > cut.width || height > cut.height; };
  const std::string edge = shaped_size_text(cut.shape_word, cut.width, cut.height, cut.unit);
  if (answer.opening.measured && larger(answer.opening.width, answer.opening.height)) {
    answer.warnings.push_back(fmt::format(
        "the window is larger than the cut edge of its die, {}: measure one of them again", edge));
  } else if (answer.behind && larger(answer.behind->width, answer.behind->height)) {
    answer.warnings.push_back(fmt::format(
        "what covers it shows past the cut edge of the die, {}: cut it to the edge, or ask a narrower "
        "overlap with --border",
        edge));
  }
}

void add_window(FitsAnswer& answer, const Book& book, const std::optional<Opening>& opening,
                std::optional<Length> overlap_asked) {
  const Length overlap = overlap_asked.value_or(overlap_behind);
  if (opening) {
    const Shape cover = cover_from_behind(opening->shape, overlap, answer.cutting_step);
    const bool even = cover.width == opening->shape.width + 2 * overlap &&
                      cover.height == opening->shape.height + 2 * overlap;
    const bool own = cover.kind == opening->shape.kind;
    answer.behind = Behind{own ? answer.opening.shape_word : std::string(shape_word(cover.kind)), cover.width,
                           cover.height, overlap, even && own};
  } else if (answer.opening.measured) {
    answer.behind = Behind{answer.opening.shape_word, answer.opening.width + overlap * 2,
                           answer.opening.height + overlap * 2, overlap};
  }
  for (const OpeningRecord& other : openings_of_die(book, answer.opening.die_id)) {
    if (other.line_kind == "cut" && other.measured) beside_the_cut_edge(answer, other);
    if (other.line_kind == "window" && other.line_id != answer.opening.line_id)
      answer.also.push_back(describe(other));
  }
}

// Where no line was named: what the die has besides the one that is meant.
void add_other_lines(FitsAnswer& answer, const Book& book) {
  for (const OpeningRecord& other : openings_of_die(book, answer.opening.die_id)) {
    if (other.line_id == answer.opening.line_id) continue;
    std::string tried_in_it;
    if (const auto tried = fits_by_hand_in(book, other.line_id))
      tried_in_it = fmt::format(" ({} {} was tried in it)", tried->shape,
                                shaped_size_text(tried->shape, tried->width, tried->height, tried->unit));
    if (other.line_kind == "window" || !tried_in_it.empty())
      answer.other_lines.push_back(fmt::format("{} {}, {}{}", other.set, other.die, other.line, tried_in_it));
  }
}

void add_conflicts(FitsAnswer& answer, const Book& book) {
  for (const Measured& measured : measurements_of(book, answer.opening.line_id))
    if (measured.standing == "conflict")
      answer.warnings.push_back(fmt::format("measured {} as {} too: that disagrees, and is not settled yet",
                                            measured.date.empty() ? "without a date" : measured.date,
                                            write_size(measured.width, measured.height, measured.unit)));
}

Result<void> choose_border(FitsAnswer& answer, const Book& book, const FitsAsked& asked,
                           Length default_border) {
  if (asked.border) {
    const Result<Length> border = length_option("border", *asked.border, answer.unit, true);
    if (!border) return failure(border.error());
    answer.border = *border;
    answer.border_from = BorderFrom::asked;
    return {};
  }
  const auto [habit, count] = habit_of_set(book, answer.opening, answer.cutting_step);
  answer.habit_of = count;
  answer.border_from = count > 0 ? BorderFrom::habit : BorderFrom::default_border;
  answer.border = count > 0 ? habit : default_border;
  return {};
}

}  // namespace

std::string_view panel_status_word(PanelStatus status) {
  switch (status) {
    case PanelStatus::tried:
      return "tried";
    case PanelStatus::computed:
      return "computed";
    case PanelStatus::estimated:
      return "estimated";
  }
  return "";
}

std::string_view border_from_word(BorderFrom from) {
  switch (from) {
    case BorderFrom::asked:
      return "asked";
    case BorderFrom::habit:
      return "habit";
    case BorderFrom::default_border:
      return "default";
  }
  return "";
}

Result<FitsAnswer> what_fits(const Book& book, const FitsAsked& asked) {
  const Snapshot snapshot(book);  // one state of the book, and one lock, for all that is looked up
  Result<OpeningSaid> said = opening_or_size_said(book, asked.opening);
  if (!said) return failure(said.error());
  const Settings set = settings(book);
  FitsAnswer answer;
  answer.opening = std::move(said->opening);
  answer.invented = said->invented;
  answer.note = said->note.empty() ? read_as_note(answer.opening) : std::move(said->note);
  answer.unit = set.unit;
  answer.cutting_step = set.cutting_step;
  if (asked.cut_step) {
    const Result<Length> step = length_option("cut-step", *asked.cut_step, answer.unit, false);
    if (!step) return failure(step.error());
    answer.cutting_step = *step;
  }
  if (Result<void> chosen = choose_border(answer, book, asked, set.border); !chosen)
    return failure(chosen.error());
  const Result<FitQuestion> question = question_of(asked, answer);
  if (!question) return failure(question.error());

  std::optional<Opening> opening;
  if (answer.opening.measured) {
    const Result<Shape> shape = shape_of(answer.opening);
    if (shape)
      opening = Opening{*shape, answer.opening.give_or_take};
    else
      answer.not_computed = shape.error().what;
  }
  const KnownOpening known{answer.opening, opening && has_outline(opening->shape) ? opening : std::nullopt,
                           answer.cutting_step};
  const std::vector<TriedPanel> tried = tried_in_opening(book, known);
  answer.panels = tried_panels(known, tried, answer.warnings);
  set_aside(answer, asked, *question);
  if (opening)
    add_computed(answer, book, *opening, *question, PanelStatus::computed, asked.because);
  else if (!answer.opening.measured)
    add_estimated(answer, book, *question, asked.because);
  heed_results(known, tried, answer.panels);
  if (answer.opening.line_kind == "window")
    add_window(answer, book, opening, asked.border ? std::optional(answer.border) : std::nullopt);
  add_conflicts(answer, book);
  if (!answer.invented && opening_wanted(asked.opening).line.empty()) add_other_lines(answer, book);
  return answer;
}

}  // namespace insetbook
