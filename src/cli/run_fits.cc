// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/run_fits.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/fits_panel.h"
#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

std::optional<std::string> option_text(const Invocation& invocation, std::string_view name) {
  return invocation.has(name) ? std::optional(invocation.value(name)) : std::nullopt;
}

std::string size_text(const FittingPanel& panel) {
  return shaped_size_text(panel.shape, panel.width, panel.height, panel.unit);
}

std::string size_text(const OpeningRecord& opening) {
  return recorded_size_text(opening.shape_word, opening.width, opening.height, opening.unit);
}

// A border is known as well as the opening is: half of the give or take shows on each side.
std::string shows_text(const FittingPanel& panel, Length give_or_take, Unit unit) {
  if (!panel.border_known) return "not known";
  std::string text = border_text(panel.border, unit);
  if (give_or_take > Length()) text += fmt::format(" ± {}", give_text(give_or_take / 2, unit));
  return text;
}

void print_opening(const FitsAnswer& answer, Output& out) {
  const OpeningRecord& opening = answer.opening;
  if (!answer.note.empty()) out.detail(answer.note);
  if (answer.invented) {
    out.detail(fmt::format("{}.", opening_name(opening)));
  } else if (opening.measured) {
    out.detail(
        fmt::format("{}: {} {}{}", describe(opening), opening.shape_word, size_text(opening),
                    opening.give_or_take > Length()
                        ? fmt::format(", give or take {}", give_text(opening.give_or_take, opening.unit))
                        : ", as the maker or the drawing says"));
  } else if (answer.estimated) {
    out.detail(fmt::format(
        "{}: not measured. By the sizes of its set about {}, give or take {}. Measure it to be sure.",
        describe(opening),
        shaped_size_text(opening.shape_word, nearest_mark(answer.estimated->width, answer.unit),
                         nearest_mark(answer.estimated->height, answer.unit), answer.unit),
        give_text(answer.estimated->spread, answer.unit)));
  } else {
    out.detail(fmt::format("{}: not measured yet", describe(opening)));
  }
}

void print_border(const FitsAnswer& answer, Output& out) {
  const std::string border = write(answer.border, answer.unit);
  switch (answer.border_from) {
    case BorderFrom::asked:
      out.detail(fmt::format("Border {}, as asked.", border));
      break;
    case BorderFrom::habit:
      out.detail(fmt::format("Border {}: the habit of this set ({} in its other dies).",
                             border_text(answer.border, answer.unit),
                             answer.habit_of == 1 ? std::string("of the one panel tried")
                                                  : fmt::format("the middle of {} tried", answer.habit_of)));
      break;
    case BorderFrom::default_border:
      out.detail(fmt::format("Border {}: the setting (none was asked{}).", border,
                             answer.invented ? "" : ", and nothing is tried in the other dies of the set"));
      break;
  }
}

// Where it was tried: the first few of many.
std::string evidence_text(const std::vector<std::string>& evidence) {
  constexpr std::size_t most = 4;
  const auto shown = static_cast<std::ptrdiff_t>(std::min(most, evidence.size()));
  std::string text = fmt::format("{}", fmt::join(evidence.begin(), evidence.begin() + shown, "; "));
  if (evidence.size() > most) text += fmt::format("; and {} more", evidence.size() - most);
  return text;
}

// Where a panel lies that does not fit in the middle; what is known of it.
std::string remark(const FittingPanel& panel, Unit unit) {
  std::string text = panel.note.empty() ? evidence_text(panel.evidence) : panel.note;
  if (panel.centred) return text;
  return fmt::format("{} from the left, {} from the top{}{}", border_text(panel.left, unit),
                     border_text(panel.top, unit), text.empty() ? "" : "; ", text);
}

// The first line: the answer in the reader's own unit.
std::string headline(const FitsAnswer& answer) {
  if (answer.panels.empty())
    return answer.not_computed.empty() ? "Nothing is known to fit."
                                       : fmt::format("No answer: {}.", answer.not_computed);
  const FittingPanel& first = answer.panels.front();
  std::string text = fmt::format("{} {}", first.shape, size_text(first));
  if (first.border_known)
    text += fmt::format(", {} showing {}", border_text(first.border, answer.unit),
                        first.centred ? "on each side" : "where it is narrowest");
  text += first.status == PanelStatus::tried      ? ". Tried before."
          : first.status == PanelStatus::computed ? ". Computed."
                                                  : ". Estimated.";
  if (first.verdict == "snug") text += " Snug: cut one and try.";
  return text;
}

}  // namespace

void print_fits(const FitsAnswer& answer, Output& out) {
  out.headline(answer.panel_asked ? panel_sentence(answer) : headline(answer));
  print_opening(answer, out);
  print_border(answer, out);
  if (!answer.panels.empty()) {
    out.blank();
    Table table{{"how", "kind", "shape", "size", "shows", "verdict", ""}, {}};
    const Length give = answer.estimated ? answer.estimated->spread : answer.opening.give_or_take;
    for (const FittingPanel& panel : answer.panels)
      table.rows.push_back({std::string(panel_status_word(panel.status)),
                            panel.kind ? std::string(panel_kind_word(*panel.kind)) : "", panel.shape,
                            size_text(panel), shows_text(panel, give, answer.unit), panel.verdict,
                            remark(panel, answer.unit)});
    out.table(table);
    for (const FittingPanel& panel : answer.panels)
      if (!panel.touches.empty())
        out.detail(fmt::format("What holds the {} {}, in the line's box: {}.", panel.shape, size_text(panel),
                               fmt::join(panel.touches, "; ")));
  }
  if (!answer.not_computed.empty() && !answer.panels.empty())
    out.detail(fmt::format("Not computed: {}.", answer.not_computed));
  if (answer.behind)
    out.line(fmt::format("Covers the window from behind: {} {} ({}{} overlap all round).",
                         answer.behind->shape,
                         shaped_size_text(answer.behind->shape, mark_above(answer.behind->width, answer.unit),
                                          mark_above(answer.behind->height, answer.unit), answer.unit),
                         answer.behind->even ? "" : "at least ", write(answer.behind->overlap, answer.unit)));
  if (!answer.other_lines.empty())
    out.detail(
        fmt::format("No line was named: the innermost that is no window is meant, {}. There {} too: {}.",
                    answer.opening.line, answer.other_lines.size() == 1 ? "is" : "are",
                    fmt::join(answer.other_lines, "; ")));
  for (const std::string& other : answer.also)
    out.detail(fmt::format("Another window of this die: {}", other));
  if (!answer.other_tried.empty())
    out.detail(
        fmt::format("Tried there too, but not what was asked: {}.", fmt::join(answer.other_tried, "; ")));
  for (const std::string& warning : answer.warnings) out.line(fmt::format("Note: {}.", warning));
}

namespace {

// What shows where least does: on a side, or where the line comes nearer between them, as notches do.
std::string least_text(const Framing& framing, Unit unit) {
  const Length least = unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
  const Length on_a_side = std::min({framing.left, framing.right, framing.top, framing.bottom});
  const std::string_view where =
      on_a_side > framing.greatest_border + least ? "where it is narrowest" : "on the narrowest side";
  return fmt::format(
      ": {} shows {}.",
      framing.greatest_border < least ? "hardly anything" : border_text(framing.greatest_border, unit),
      where);
}

std::string remark(const FramingOpening& found) {
  std::string text = found.framing.turned ? "turned by a quarter" : "";
  if (!found.tried.empty()) text += (text.empty() ? "" : "; ") + found.tried;
  if (found.refuted) text += "; by its figures it should fit";
  return text;
}

// What the hand found goes before what the figures say.
std::string verdict_text(const FramingOpening& found) {
  return found.refuted ? found.tried.substr(0, found.tried.find(','))
                       : std::string(verdict_word(found.framing.verdict));
}

}  // namespace

void print_frames(const FramesAnswer& answer, Output& out) {
  const std::string size = shape_text(answer.panel, answer.unit);
  const bool is_vowel = std::string_view("aeiou").find(size.front()) != std::string_view::npos;
  const std::string panel = answer.panel_of.empty() ? (is_vowel ? "an " : "a ") + size
                                                    : fmt::format("{} ({})", answer.panel_of, size);
  if (answer.openings.empty()) {
    out.headline(fmt::format("No measured die frames {}{}.", panel,
                             answer.border > Length()
                                 ? fmt::format(" with a border of {}", write(answer.border, answer.unit))
                                 : ""));
    if (!answer.note.empty()) out.detail(answer.note);
  } else {
    const FramingOpening& first = answer.openings.front();
    out.headline(fmt::format("{}{}{}", describe(first.opening), least_text(first.framing, answer.unit),
                             first.framing.verdict == Verdict::snug ? " Snug: cut one and try." : ""));
    out.detail(fmt::format("The closest of {} that frame {}.", answer.total, panel));
    if (!answer.note.empty()) out.detail(answer.note);
    out.blank();
    Table table{{"opening", "size", "left and right", "top and bottom", "even", "verdict", ""}, {}};
    for (const FramingOpening& found : answer.openings)
      table.rows.push_back({describe(found.opening), size_text(found.opening),
                            border_text(std::min(found.framing.left, found.framing.right), answer.unit),
                            border_text(std::min(found.framing.top, found.framing.bottom), answer.unit),
                            found.framing.even ? "yes" : "no", verdict_text(found), remark(found)});
    out.table(table);
    if (answer.openings.size() < answer.total)
      out.detail(fmt::format("The first {} of {}: --limit {} shows all.", answer.openings.size(),
                             answer.total, answer.total));
    if (answer.other_shapes > 0)
      out.detail(fmt::format("Only lines of the shape {}; {} of other shapes frame it too.",
                             answer.opening_shape, answer.other_shapes));
  }
  if (answer.not_computed > 0)
    out.detail(
        fmt::format("{} measured openings have shapes that are not computed yet.", answer.not_computed));
}

int run_fits(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  FitsAsked asked{.opening = invocation.text(),
                  .border = option_text(invocation, "border"),
                  .shape = option_text(invocation, "shape"),
                  .width = option_text(invocation, "width"),
                  .height = option_text(invocation, "height"),
                  .cut_step = option_text(invocation, "cut-step"),
                  .because = invocation.has("because")};
  const Result<FitsAnswer> answer = what_fits(*book, asked);
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_fits(*answer, out);
  return 0;
}

constexpr std::size_t frames_shown = 40;  // unless asked

int run_frames(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<std::size_t> limit = limit_given(invocation, frames_shown);
  if (!limit) return out.problem(limit.error());
  FramesAsked asked{.size = invocation.text(),
                    .shape = option_text(invocation, "shape"),
                    .border = option_text(invocation, "border"),
                    .in_set = option_text(invocation, "in"),
                    .most = *limit};
  const Result<FramesAnswer> answer = what_frames(*book, asked);
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_frames(*answer, out);
  return answer->openings.empty() ? 1 : 0;
}

}  // namespace insetbook::cli
