// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/fits.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>

#include "answers/estimated.h"
#include "answers/kept_panels.h"
#include "answers/opening_said.h"
#include "answers/options.h"
#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "book/evidence.h"
#include "book/settings.h"
#include "fit/contacts.h"
#include "fit/cover.h"
#include "measure/write.h"
#include "search/snapshot.h"

namespace insetbook {
namespace {

// A layer of a sample is an inset tried when its border is even and at most this (2-model, "What fits").
constexpr Length widest_border_of_a_layer = Length::inch_fraction(1, 2);
// A window is covered from behind with this overlap all round, unless a border is asked.
constexpr Length overlap_behind = Length::inch_fraction(1, 8);

Shape shape_of_tried(const TriedPanel& tried) {
  Size size{.width = tried.width, .height = tried.height, .unit = tried.unit};
  size.one_figure = tried.width == tried.height && shape_kind(tried.shape) == ShapeKind::polygon;
  if (Result<Shape> made = make_shape(tried.shape, size, "", tried.unit)) return *made;
  Shape shape;
  shape.kind = ShapeKind::other;
  shape.name = tried.shape;
  shape.width = tried.width;
  shape.height = tried.height;
  return shape;
}

// The even border that a tried panel left, centred; empty where the shapes cannot be compared by computation.
std::optional<Framing> framing_of_tried(const Opening& opening, const TriedPanel& tried, Length step) {
  const Shape shape = shape_of_tried(tried);
  if (!computable(shape)) return std::nullopt;
  Result<std::optional<Framing>> framed = framing(opening, shape, Length(), step, true);
  return framed ? *framed : std::nullopt;
}

// Whether the panel has the opening's own shape by its word, where no border can be computed.
bool same_shape_word(const OpeningRecord& opening, const TriedPanel& tried) {
  const std::optional<ShapeKind> a = shape_kind(opening.shape_word);
  const std::optional<ShapeKind> b = shape_kind(tried.shape);
  if (a && b && *a != ShapeKind::other && *a != ShapeKind::outline) return *a == *b;
  return opening.shape_word == tried.shape;
}

// What is left beside the panel's box, the lesser of the two directions: exact for shapes that are alike.
Length border_beside_box(const OpeningRecord& opening, const TriedPanel& tried) {
  return std::min(opening.width - tried.width, opening.height - tried.height) / 2;
}

std::string evidence_of(const TriedPanel& tried) {
  if (tried.from_sample)
    return fmt::format("in {}{}", tried.sample,
                       tried.element.empty() ? "" : fmt::format(" ({})", tried.element));
  std::string text = tried.date.empty() ? "tried" : fmt::format("tried {}", tried.date);
  if (!tried.sample.empty()) text += fmt::format(" for {}", tried.sample);
  if (!tried.note.empty()) text += fmt::format(": {}", tried.note);
  return text;
}

struct Known {
  const OpeningRecord& record;
  std::optional<Opening> opening;  // empty: not measured, or not computable
  Length step;
};

// Whether a piece of a sample that lies in the line is an inset (2-model: a small heart on a frame is none).
bool is_inset(const Known& known, const TriedPanel& tried, const std::optional<Framing>& framed) {
  if (!tried.from_sample) return true;
  if (same_shape_word(known.record, tried)) return true;
  return framed && framed->even_strip && framed->left <= widest_border_of_a_layer;
}

// A panel says no way up of its own, whichever figure was written first: it lies with its long side along the
// opening's.
TriedPanel laid_along(const OpeningRecord& opening, TriedPanel tried) {
  if (tried.width != tried.height && (tried.width < tried.height) != (opening.width < opening.height))
    std::swap(tried.width, tried.height);
  return tried;
}

bool same_panel(const TriedPanel& a, const TriedPanel& b) {
  return a.shape == b.shape && a.width == b.width && a.height == b.height;
}

std::string on_date(const TriedPanel& tried) {
  return tried.date.empty() ? std::string() : fmt::format(", tried {}", tried.date);
}

// What a tried panel left, and whether that can be so.
FittingPanel panel_of(const Known& known, const TriedPanel& tried, const std::optional<Framing>& framed) {
  FittingPanel panel{.status = PanelStatus::tried,
                     .shape = tried.shape,
                     .width = tried.width,
                     .height = tried.height,
                     .unit = tried.unit,
                     .one_figure = shape_of_tried(tried).kind == ShapeKind::circle,
                     .verdict = "fits",
                     .evidence = {evidence_of(tried)}};
  if (framed) {
    panel.border = framed->greatest_border;
  } else if (known.record.measured && same_shape_word(known.record, tried)) {
    panel.border = border_beside_box(known.record, tried);
  } else {
    panel.border_known = false;
  }
  if (known.record.measured && panel.border_known && panel.border < Length())
    panel.note = "a little larger than the line as measured";
  return panel;
}

// Larger than the line can be, however it was measured: one of the two figures is wrong.
bool cannot_be(const Known& known, const FittingPanel& panel) {
  return known.record.measured && panel.border_known && panel.border * 2 < -known.record.give_or_take;
}

// What was tried in the opening: results by hand, and the pieces of samples that are insets.
std::vector<TriedPanel> tried_in_opening(const Book& book, const Known& known) {
  return tried_in(book, known.record.line_id, [&](const TriedPanel& piece) {
    const TriedPanel tried = laid_along(known.record, piece);
    const std::optional<Framing> framed =
        known.opening ? framing_of_tried(*known.opening, tried, known.step) : std::nullopt;
    return is_inset(known, tried, framed);
  });
}

// Panels that fitted, the most often tried first. Of one panel tried by hand several times the newest result
// counts; what did not fit, or cannot have, becomes a warning.
std::vector<FittingPanel> tried_panels(const Known& known, const std::vector<TriedPanel>& all,
                                       std::vector<std::string>& warnings) {
  std::vector<FittingPanel> panels;
  std::vector<TriedPanel> not_fitting;
  for (const TriedPanel& recorded : all) {
    const TriedPanel tried = laid_along(known.record, recorded);
    const std::optional<Framing> framed =
        known.opening ? framing_of_tried(*known.opening, tried, known.step) : std::nullopt;
    const bool refuted =
        !tried.from_sample && std::any_of(not_fitting.begin(), not_fitting.end(),
                                          [&](const TriedPanel& newer) { return same_panel(newer, tried); });
    const std::string name = describe(shape_of_tried(tried), tried.unit);
    if (tried.result != "fits" || refuted) {
      warnings.push_back(fmt::format("{} {}{}{}", name,
                                     tried.result == "fits" ? "fitted" : "was " + tried.result,
                                     on_date(tried), refuted ? ", before the newer result" : ""));
      if (tried.result != "fits") not_fitting.push_back(tried);
      continue;
    }
    const auto same = std::find_if(panels.begin(), panels.end(), [&](const FittingPanel& panel) {
      return panel.shape == tried.shape && panel.width == tried.width && panel.height == tried.height;
    });
    if (same != panels.end()) {
      same->evidence.push_back(evidence_of(tried));
      continue;
    }
    FittingPanel panel = panel_of(known, tried, framed);
    if (cannot_be(known, panel))
      warnings.push_back(
          fmt::format("{} is recorded as fitting{}, and is larger than the line as measured: measure "
                      "one of them again",
                      name, on_date(tried)));
    else
      panels.push_back(std::move(panel));
  }
  std::stable_sort(panels.begin(), panels.end(), [](const FittingPanel& a, const FittingPanel& b) {
    return a.evidence.size() > b.evidence.size();
  });
  return panels;
}

// What the hand found goes before what the figures say: a computed panel whose newest result by hand is that
// it did not fit says so, and comes after the others.
void heed_results(const Known& known, const std::vector<TriedPanel>& all, std::vector<FittingPanel>& panels) {
  std::vector<FittingPanel> refused;
  for (auto panel = panels.begin(); panel != panels.end();) {
    const auto newest = std::find_if(all.begin(), all.end(), [&](const TriedPanel& tried) {
      const TriedPanel laid = laid_along(known.record, tried);
      return !tried.from_sample && laid.shape == panel->shape && laid.width == panel->width &&
             laid.height == panel->height;
    });
    if (panel->status == PanelStatus::tried || newest == all.end() || newest->result == "fits") {
      ++panel;
      continue;
    }
    panel->note = fmt::format("by its figures; it was {}{}", newest->result, on_date(*newest));
    refused.push_back(std::move(*panel));
    panel = panels.erase(panel);
  }
  std::move(refused.begin(), refused.end(), std::back_inserter(panels));
}

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

// A border, and how many panels left it.
struct BorderCount {
  Length border;
  std::int64_t panels = 0;
};

// The border that a panel of this size left in an opening of the set; empty where it is no inset or its
// border is not known.
std::optional<Length> border_left(const OpeningRecord& opening, const Result<Shape>& shape, TriedPanel tried,
                                  Length step) {
  tried = laid_along(opening, std::move(tried));
  std::optional<Framing> framed;
  if (shape && computable(*shape)) framed = framing_of_tried({*shape, opening.give_or_take}, tried, step);
  if (!is_inset({opening, std::nullopt, step}, tried, framed)) return std::nullopt;
  if (framed) return framed->greatest_border;
  if (same_shape_word(opening, tried)) return border_beside_box(opening, tried);
  return std::nullopt;
}

// The border of the middle panel, the lesser of two.
Length middle(std::vector<BorderCount> borders, std::int64_t panels) {
  std::sort(borders.begin(), borders.end(),
            [](const BorderCount& a, const BorderCount& b) { return a.border < b.border; });
  std::int64_t before = 0;
  for (const BorderCount& border : borders) {
    before += border.panels;
    if (before > (panels - 1) / 2) return border.border;
  }
  return Length();
}

// The habit of the set: the middle border of the panels tried in its other dies, and how many they are.
std::pair<Length, int> habit_of_set(const Book& book, const OpeningRecord& opening, Length step) {
  std::map<std::int64_t, std::pair<OpeningRecord, Result<Shape>>> others;
  for (OpeningRecord& other : openings_of_set(book, opening.set_id)) {
    if (other.die_id == opening.die_id || !other.measured) continue;
    Result<Shape> shape = shape_of(other);
    others.emplace(other.line_id, std::pair(std::move(other), std::move(shape)));
  }
  std::vector<BorderCount> borders;
  std::int64_t panels = 0;
  for (const TriedCount& count : tried_counts_in_set(book, opening.set_id)) {
    const auto other = others.find(count.line_id);
    if (other == others.end() || count.result != "fits") continue;
    for (const bool from_sample : {false, true}) {
      TriedPanel tried{.shape = count.shape,
                       .width = count.width,
                       .height = count.height,
                       .unit = count.unit,
                       .from_sample = from_sample};
      const std::int64_t many = from_sample ? count.pieces : count.by_hand;
      if (many == 0) continue;
      if (const std::optional<Length> border =
              border_left(other->second.first, other->second.second, std::move(tried), step)) {
        borders.push_back({*border, many});
        panels += many;
      }
    }
  }
  return {std::max(middle(std::move(borders), panels), Length()), static_cast<int>(panels)};
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

std::string word_of(const Shape& shape) {
  return shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
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
  const Result<std::vector<Panel>> computed =
      because ? panels_inside(opening, question)
              : panels_of_opening(book, answer.opening.line_id, opening, question);
  if (!computed) {
    answer.not_computed = computed.error().what;
    return;
  }
  for (const Panel& panel : *computed)
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
         .note = panel.note,
         .left = panel.left,
         .top = panel.top,
         .centred = panel.centred,
         .touches = because ? what_holds(opening, panel, answer.unit) : std::vector<std::string>()});
  if (computed->empty())
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
  for (const OpeningRecord& other : openings_of_die(book, answer.opening.die_id))
    if (other.line_kind == "window" && other.line_id != answer.opening.line_id)
      answer.also.push_back(describe(other));
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
  const Known known{answer.opening, opening && computable(opening->shape) ? opening : std::nullopt,
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
