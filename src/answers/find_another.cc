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

Result<void> pieces(const Book& book, const PieceOfSample& said, const ReadingContext& context, bool colour,
                    FindAnswer& answer) {
  Result<PiecesAnswer> found = pieces_of_sample(book, said.piece, said.sample.id, context.vocabulary);
  if (found) found->colour = colour;
  return take(std::move(found), answer);
}

// Of a colour its value, of a piece of a sample its paper and ink.
Result<void> shown(const Book& book, const Question& question, const ReadingContext& context,
                   FindAnswer& answer) {
  if (things_named(question.subject, context.names).empty()) {
    if (const auto said = piece_of_sample(question.subject, context.names))
      return pieces(book, *said, context, true, answer);
  }
  return take(show(book, question.subject), answer);
}

// Samples that use any of the things that answer to the name.
Result<void> used_for(const Book& book, const Question& question, const ReadingContext& context,
                      const FindAsked& asked, FindAnswer& answer) {
  SupplyIs supplies{{}, question.subject};
  DieIs dies{.said = question.subject};
  std::vector<std::string> names;
  for (const NameHit& hit : things_stored(book, question.subject)) {
    if (hit.kind == RecordKind::supply) supplies.supplies.push_back(hit.id);
    if (hit.kind == RecordKind::die) dies.dies.push_back(hit.id);
    if (hit.kind == RecordKind::set) dies.sets.push_back(hit.id);
    names.push_back(hit.name);
  }
  for (const std::int64_t set : dies.sets)
    for (const std::int64_t die : context.names.dies_of(set)) dies.dies.push_back(die);
  Node any{.kind = Node::Kind::any};
  const auto add = [&](Says says) {
    const std::string means = "samples that use it";
    any.children.push_back(
        {.kind = Node::Kind::one, .constraint = {{std::move(says), question.subject, means, {}}}});
  };
  if (!supplies.supplies.empty()) add(std::move(supplies));
  if (!dies.dies.empty() || !dies.sets.empty()) add(std::move(dies));
  if (any.children.empty())
    return failure({.kind = ProblemKind::unknown_name,
                    .what = fmt::format("no die set, die or supply is called \"{}\"", question.subject),
                    .expected = "a name as it is recorded"});
  Question samples;
  samples.text = question.text;
  samples.tree.children.push_back(any.children.size() == 1 ? std::move(any.children.front())
                                                           : std::move(any));
  SearchOptions options;
  options.limit = asked.limit.value_or(options.limit);
  options.order = asked.order.value_or(options.order);
  options.vocabulary = &context.vocabulary;
  options.facets = asked.facets;
  Result<Hits> hits = search(book, samples, options);
  if (!hits) return failure(hits.error());
  constexpr std::size_t most_named = 6;
  std::string named = fmt::format(
      "{}", fmt::join(names.begin(),
                      names.begin() + static_cast<std::ptrdiff_t>(std::min(most_named, names.size())), "; "));
  if (names.size() > most_named) named += fmt::format("; and {} more", names.size() - most_named);
  answer.notes.push_back(fmt::format("Of that name: {}.", named));
  answer.answer = std::move(*hits);
  return {};
}

// "How big is an A6 card": a size with a name, in both units.
Result<void> a_paper(const Question& question, Unit unit, FindAnswer& answer) {
  Result<Converted> converted = convert(bare_name(question.subject), unit);
  if (!converted) return failure(converted.error());
  answer.answer = ConvertedTo{std::move(*converted), unit, false};
  return {};
}

// What is known of the size: of the line that is said, else of every line of the die. A set, a supply and a
// sample are shown whole: their sizes are among what is shown.
Result<void> how_big(const Book& book, const Question& question, const ReadingContext& context,
                     FindAnswer& answer) {
  const Names& names = context.names;
  const OpeningWanted wanted = opening_wanted(question.subject);
  const bool one_said = wanted.rank || wanted.rank_from_smallest || !wanted.line.empty();
  const bool whole = names_only(question.subject, names, {NameKind::set, NameKind::supply, NameKind::sample});
  if (whole && !one_said) return take(show(book, bare_name(question.subject)), answer);
  if (const auto piece = piece_of_sample(question.subject, names))
    return pieces(book, *piece, context, false, answer);
  const Result<OpeningRecord> said = opening_said(book, question.subject);
  if (!said && !names_only(question.subject, names, {NameKind::supply}))
    if (const std::optional<ThingSaid> thing = read_thing(question.subject, context.vocabulary, context.unit);
        thing && !thing->means.empty())
      return a_paper(question, context.unit, answer);
  if (!said) return failure(said.error());
  MeasureAnswer known;
  std::vector<OpeningRecord> lines = openings_of_die(book, said->die_id);
  for (OpeningRecord& line : lines) {
    if (!wanted.line.empty() && line.line_id != said->line_id) continue;
    line.read_as = said->read_as;
    MeasureOutcome outcome;
    outcome.known = measurements_of(book, line.line_id);
    if (!line.measured) add_estimate(book, line, answer);
    known.lines.push_back({std::move(line), std::move(outcome), {}});
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
    case Asks::dies:
      return "the question is for dies of that size and shape";
    case Asks::tried:
      return "the opening; the question is for what was tried in it";
    case Asks::used:
      return "the question is for samples made with it";
    case Asks::pairs:
      return "the die; the question is for what makes an even border in or around it";
    case Asks::samples:
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
  if (!question.opening_shape.empty())
    answer.understood.push_back({question.opening_shape, "the shape of the die's line"});
  if (!question.result.empty()) answer.understood.push_back({question.result, "how it was found"});
  if (!question.in_set.empty()) answer.understood.push_back({question.in_set, "only dies of this set"});
}

}  // namespace

Result<void> answer_another(const Book& book, const Question& question, const ReadingContext& context,
                            const FindAsked& asked, FindAnswer& answer) {
  tell(question, answer);
  const std::size_t most = asked.limit.value_or(SearchOptions().limit);
  switch (question.asks) {
    case Asks::fits:
      return fitting(book, question, answer);
    case Asks::frames:
      return take(what_frames(book, {.size = question.subject,
                                     .shape = {},
                                     .border = if_said(question.border),
                                     .in_set = if_said(question.in_set),
                                     .opening_shape = if_said(question.opening_shape),
                                     .most = most,
                                     .goes_round = question.goes_round}),
                  answer);
    case Asks::pairs:
      return take(pairs_of(book, {.opening = question.subject,
                                  .border = if_said(question.border),
                                  .in_set = if_said(question.in_set)}),
                  answer);
    case Asks::measured:
      return how_big(book, question, context, answer);
    case Asks::unmeasured:
      return take(not_measured_yet(book, question.subject), answer);
    case Asks::kept:
      return take(where_stored(book, question.subject), answer);
    case Asks::nearest:
      return take(nearest_to(book, {.colour = question.subject}), answer);
    case Asks::convert:
      return in_another_unit(question, answer);
    case Asks::show:
      return shown(book, question, context, answer);
    case Asks::dies:
      return take(dies_of_size(book, {question.subject, question.in_set, most}, context), answer);
    case Asks::tried:
      return take(tried_there(book, {question.subject, question.result, most}), answer);
    case Asks::used:
      return used_for(book, question, context, asked, answer);
    case Asks::samples:
      break;
  }
  return {};
}

}  // namespace insetbook
