// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/find_another.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/fits_panel.h"
#include "answers/opening_said.h"
#include "answers/sizes_shown.h"
#include "book/settings.h"
#include "language/ask_thing.h"
#include "measure/read.h"

namespace insetbook {
namespace {

std::optional<std::string> if_said(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(text);
}

template <class Found>
Result<void> take(Result<Found> found, FindAnswer& answer) {
  if (!found) return failure(found.error());
  answer.answer = std::move(*found);
  return {};
}

Result<void> fitting(const Book& book, const Question& question, FindAnswer& answer) {
  Result<FitsAnswer> found = what_fits(book, {.opening = question.subject,
                                              .border = if_said(question.border),
                                              .shape = if_said(question.panel_shape),
                                              .width = {},
                                              .height = {},
                                              .cut_step = {}});
  if (found && !question.panel.empty())
    if (Result<void> asked = ask_panel(book, question.panel, *found); !asked) return asked;
  return take(std::move(found), answer);
}

// One kind among the records of that name, and no other.
bool names_only(const std::string& text, const Names& names, std::initializer_list<NameKind> kinds) {
  const std::vector<NamedRecord> found = things_named(text, names);
  return !found.empty() && std::ranges::all_of(found, [&](const NamedRecord& record) {
    return std::ranges::find(kinds, record.kind) != kinds.end();
  });
}

// A line that nobody measured, between two of its set: about how big it should be.
void add_estimate(const Book& book, const OpeningRecord& line, FindAnswer& answer) {
  const Result<FitsAnswer> fits =
      what_fits(book, {.opening = fmt::format("{} {}, {}", line.set, line.die, line.line)});
  if (!fits || !fits->estimated) return;
  answer.notes.push_back(fmt::format(
      "By the sizes of its set the {} line is about {}, give or take {}: an estimate, measure it to be sure.",
      line.line,
      shaped_size_text(line.shape_word, nearest_mark(fits->estimated->width, fits->unit),
                       nearest_mark(fits->estimated->height, fits->unit), fits->unit),
      give_text(fits->estimated->spread, fits->unit)));
}

// What is known of the size: of the line that is said, else of every line of the die. A set, a supply and a
// sample are shown whole: their sizes are among what is shown.
Result<void> how_big(const Book& book, const Question& question, const Names& names, FindAnswer& answer) {
  const OpeningWanted wanted = opening_wanted(question.subject);
  const bool one_said = wanted.rank || wanted.rank_from_smallest || !wanted.line.empty();
  const bool whole = names_only(question.subject, names, {NameKind::set, NameKind::supply, NameKind::sample});
  if (whole && !one_said) return take(show(book, bare_name(question.subject)), answer);
  const Result<OpeningRecord> said = opening_said(book, question.subject);
  if (!said) return failure(said.error());
  MeasureAnswer known;
  std::vector<OpeningRecord> lines = openings_of_die(book, said->die_id);
  for (OpeningRecord& line : lines) {
    if (!wanted.line.empty() && line.line_id != said->line_id) continue;
    line.read_as = said->read_as;
    MeasureOutcome outcome;
    outcome.known = measurements_of(book, line.line_id);
    if (!line.measured) add_estimate(book, line, answer);
    known.lines.push_back({std::move(line), std::move(outcome)});
  }
  // The line that is meant where none is named comes first.
  std::ranges::stable_partition(
      known.lines, [&](const LineMeasured& line) { return line.opening.line_id == said->line_id; });
  answer.answer = std::move(known);
  return {};
}

// A figure without a unit is in the other one: "60 in inches" is 60 mm.
Result<void> in_another_unit(const Question& question, FindAnswer& answer) {
  const Unit unit = question.unit.value_or(Unit::mm);
  Result<Converted> converted = convert(question.subject, unit == Unit::mm ? Unit::inch : Unit::mm);
  if (!converted) return failure(converted.error());
  answer.answer = ConvertedTo{std::move(*converted), unit, question.centimetres};
  return {};
}

Problem pairs_not_there(const Question& question) {
  return {.what = fmt::format("which two dies make a frame{} is not there yet (pairs)",
                              question.border.empty() ? "" : " " + question.border + " wide"),
          .expected = "insetbook frames and insetbook fits answer for one die at a time"};
}

std::string_view said_of(Asks asks) {
  switch (asks) {
    case Asks::fits:
      return "the opening; the question is for what fits in it";
    case Asks::frames:
      return "the panel; the question is for what frames it";
    case Asks::measured:
      return "the question is for its size";
    case Asks::unmeasured:
      return "the question is for what is not measured in it";
    case Asks::kept:
      return "the question is for where it is kept";
    case Asks::nearest:
      return "the colour; the question is for what is near it";
    case Asks::convert:
      return "the question is for another unit";
    case Asks::show:
      return "the question is for what is recorded of it";
    case Asks::samples:
    case Asks::pairs:
      break;
  }
  return "";
}

void tell(const Question& question, FindAnswer& answer) {
  if (!question.subject.empty())
    answer.understood.push_back({question.subject, std::string(said_of(question.asks))});
  if (!question.panel_shape.empty())
    answer.understood.push_back({question.panel_shape, "the shape of the panel"});
  if (!question.panel.empty()) answer.understood.push_back({question.panel, "the panel: does it fit"});
  if (!question.border.empty()) answer.understood.push_back({question.border, "the border on each side"});
  if (!question.in_set.empty()) answer.understood.push_back({question.in_set, "only dies of this set"});
}

}  // namespace

Result<void> answer_another(const Book& book, const Question& question, const Names& names,
                            FindAnswer& answer) {
  tell(question, answer);
  switch (question.asks) {
    case Asks::fits:
      return fitting(book, question, answer);
    case Asks::frames:
      return take(what_frames(book, {.size = question.subject,
                                     .shape = {},
                                     .border = if_said(question.border),
                                     .in_set = if_said(question.in_set)}),
                  answer);
    case Asks::pairs:
      return failure(pairs_not_there(question));
    case Asks::measured:
      return how_big(book, question, names, answer);
    case Asks::unmeasured:
      return take(not_measured_yet(book, question.subject), answer);
    case Asks::kept:
      return take(where_kept(book, question.subject), answer);
    case Asks::nearest:
      return take(nearest_to(book, {.colour = question.subject}), answer);
    case Asks::convert:
      return in_another_unit(question, answer);
    case Asks::show:
      return take(show(book, question.subject), answer);
    case Asks::samples:
      break;
  }
  return {};
}

}  // namespace insetbook
