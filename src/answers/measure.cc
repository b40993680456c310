// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/measure.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/estimated.h"
#include "answers/new_die.h"
#include "answers/opening_said.h"
#include "answers/options.h"
#include "answers/sizes_shown.h"
#include "book/names.h"
#include "book/records.h"
#include "book/settings.h"
#include "language/read_opening.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// What every figure of one call has in common.
struct HowMeasured {
  std::string method = "ruler";
  std::optional<Length> mark;
  std::string date;
};

Result<HowMeasured> how_measured(const Book& book, const MeasureAsked& asked, Unit unit) {
  HowMeasured how;
  how.date = today(book);
  if (asked.method) {
    how.method = measuring_method(fold(*asked.method));
    if (how.method.empty())
      return failure({.what = fmt::format("{} is no way of measuring", in_quotes(*asked.method)),
                      .expected = "ruler, callipers, scan, drawing, maker's figure or estimated"});
  }
  if (asked.read_to) {
    const Result<Length> mark = length_option("read-to", *asked.read_to, unit, false);
    if (!mark) return failure(mark.error());
    how.mark = *mark;
  }
  return how;
}

Measured measured_from(const Size& size, const HowMeasured& how, std::int64_t line_id) {
  Measured measured;
  measured.line_id = line_id;
  measured.width = size.width;
  measured.height = size.height;
  measured.unit = size.unit;
  measured.method = how.method;
  measured.mark = how.mark;
  measured.date = how.date;
  measured.give_or_take = give_or_take(how.method, how.mark, size.unit);
  return measured;
}

// A size said of a line must suit the line's shape: two different figures are no circle.
Result<void> suits_shape(const OpeningRecord& opening, const Size& size) {
  const Result<Shape> shape = make_shape(opening.shape_word, size, opening.figures, size.unit);
  if (!shape) return failure(shape.error());
  return {};
}

// Figures that lie on no mark of a ruler at the mark beside them.
std::string size_text(std::string_view shape, Length width, Length height, Unit unit) {
  return shaped_size_text(shape, nearest_mark(width, unit), nearest_mark(height, unit), unit);
}

// How far two figures are from an estimate, the worse of the two.
Length off(const Size& size, const Estimate& estimate) {
  const auto apart = [](Length a, Length b) { return a < b ? b - a : a - b; };
  return std::max(apart(size.width, estimate.width), apart(size.height, estimate.height));
}

std::string typed_name(const OpeningRecord& line) {
  return fmt::format("{} {}, {}", line.set, line.die, line.line);
}

// The figure is about what the sizes of the set give for another line of the die, and not for this one.
std::string suits_another(const Book& book, const OpeningRecord& line, const Size& size,
                          const std::vector<OpeningRecord>& all) {
  const std::optional<Estimate> own = estimated_size(book, line);
  if (!own || off(size, *own) <= own->spread) return {};
  for (const OpeningRecord& other : all) {
    if (other.line_id == line.line_id || other.measured) continue;
    const std::optional<Estimate> estimate = estimated_size(book, other);
    if (!estimate || off(size, *estimate) > estimate->spread || off(size, *estimate) >= off(size, *own))
      continue;
    return fmt::format(
        "by the sizes of its set the {} line is about {}, and the {} line about {}. If it is that one: "
        "insetbook "
        "undo, then insetbook measure \"{}\" --size \"{}\"",
        line.line, size_text(line.shape_word, own->width, own->height, size.unit), other.line,
        size_text(other.shape_word, estimate->width, estimate->height, size.unit), typed_name(other),
        size_text(other.shape_word, size.width, size.height, size.unit));
  }
  return {};
}

// A line inside that is as large as the edge outside it: one of the two figures is wrong.
std::string not_inside(const OpeningRecord& line, const std::vector<OpeningRecord>& all) {
  for (const OpeningRecord& other : all) {
    const bool one_is_cut = (other.line_kind == "cut") != (line.line_kind == "cut");
    if (!other.measured || !one_is_cut) continue;
    const OpeningRecord& outer = line.line_kind == "cut" ? line : other;
    const OpeningRecord& inner = line.line_kind == "cut" ? other : line;
    const bool inside = std::min(inner.width, inner.height) < std::min(outer.width, outer.height) &&
                        std::max(inner.width, inner.height) < std::max(outer.width, outer.height);
    if (inside) continue;
    return fmt::format(
        "the {} line ({}) lies inside the {} edge ({}) and cannot be as large: one of the two is wrong",
        inner.line, size_text(inner.shape_word, inner.width, inner.height, inner.unit), outer.line,
        size_text(outer.shape_word, outer.width, outer.height, outer.unit));
  }
  return {};
}

std::vector<std::string> warnings_of(const Book& book, const OpeningRecord& line, const Size& size) {
  const std::vector<OpeningRecord> all = openings_of_die(book, line.die_id);
  std::vector<std::string> warnings;
  for (const std::string& warning : {suits_another(book, line, size, all), not_inside(line, all)})
    if (!warning.empty()) warnings.push_back(warning);
  return warnings;
}

Result<LineMeasured> record_one(Book& book, Change& change, const OpeningRecord& opening, const Size& size,
                                const HowMeasured& how, bool accept) {
  if (Result<void> suits = suits_shape(opening, size); !suits) return failure(suits.error());
  Result<MeasureOutcome> outcome =
      record_measurement(change, measured_from(size, how, opening.line_id), accept);
  if (!outcome) return failure(outcome.error());
  LineMeasured measured{insetbook::opening(book, opening.line_id).value_or(opening), std::move(*outcome), {}};
  measured.warnings = warnings_of(book, measured.opening, size);
  return measured;
}

std::vector<std::string> split_sizes(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = text.find(';');
    parts.emplace_back(trim(text.substr(0, end)));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return parts;
}

// The line of each die of the set that the sizes are for, largest die first: the line named, else the die's
// innermost.
Result<std::vector<OpeningRecord>> lines_of_set(const Book& book, const OpeningWanted& wanted) {
  const Result<NameHit> set = find_name(book, wanted.name, RecordKind::set);
  if (!set) return failure(set.error());
  std::vector<OpeningRecord> lines;
  for (OpeningRecord& line : openings_of_set(book, set->id)) {
    const bool meant = wanted.line.empty() ? line.line_kind != "window" : line.line == wanted.line;
    if (!meant) continue;
    // Lines come outermost first within a die: the last one met is the innermost.
    if (!lines.empty() && lines.back().die_id == line.die_id)
      lines.back() = std::move(line);
    else
      lines.push_back(std::move(line));
  }
  return lines;
}

Result<MeasureAnswer> measure_set(Book& book, const MeasureAsked& asked) {
  const OpeningWanted wanted = opening_wanted(asked.opening);
  const Result<std::vector<OpeningRecord>> lines = lines_of_set(book, wanted);
  if (!lines) return failure(lines.error());
  if (lines->empty())
    return failure({.kind = ProblemKind::unknown_name,
                    .what = wanted.line.empty()
                                ? fmt::format("{} has no lines to measure", in_quotes(asked.opening))
                                : fmt::format("no die of the set has a line called {}", wanted.line),
                    .expected = "insetbook show SET lists its lines"});
  std::vector<std::string> texts = split_sizes(*asked.sizes);
  // A last semicolon may end the list as well as leave the last die blank.
  while (texts.size() > lines->size() && texts.back().empty()) texts.pop_back();
  if (texts.size() != lines->size())
    return failure(
        {.what = fmt::format("{} sizes are given, and the set has {} dies{}", texts.size(), lines->size(),
                             wanted.line.empty() ? "" : fmt::format(" with a {} line", wanted.line)),
         .expected = "one size for each die, largest first, \"; \" between them; a die that is not measured "
                     "stays empty between two semicolons"});
  const Unit unit = settings(book).unit;
  const Result<HowMeasured> how = how_measured(book, asked, unit);
  if (!how) return failure(how.error());
  std::vector<std::optional<Size>> sizes;
  for (const std::string& text : texts) {
    if (text.empty()) {
      sizes.emplace_back();
      continue;
    }
    const Result<Size> size = size_option("sizes", text, unit);
    if (!size) return failure(size.error());
    sizes.emplace_back(*size);
  }
  MeasureAnswer answer{.recorded = true, .lines = {}};
  const Result<void> done = book.change(
      fmt::format("measured the set {}", lines->front().set), [&](Change& change) -> Result<void> {
        for (std::size_t i = 0; i < sizes.size(); ++i) {
          if (!sizes[i]) continue;
          Result<LineMeasured> one = record_one(book, change, (*lines)[i], *sizes[i], *how, asked.accept);
          if (!one) return failure(one.error());
          answer.lines.push_back(std::move(*one));
        }
        return {};
      });
  if (!done) return failure(done.error());
  return answer;
}

Result<MeasureAnswer> measure_new(Book& book, const MeasureAsked& asked) {
  if (!asked.size || !asked.shape)
    return failure({.what = "a new die needs its shape and a size",
                    .expected = "--new --shape circle --size \"2-3/8 in\""});
  const Unit unit = settings(book).unit;
  const Result<Size> size = size_option("size", *asked.size, unit);
  if (!size) return failure(size.error());
  const Result<Shape> shape = make_shape(*asked.shape, *size, "", unit);
  if (!shape) return failure(shape.error());
  const Result<HowMeasured> how = how_measured(book, asked, size->unit);
  if (!how) return failure(how.error());
  const Result<NewDie> die = new_die_said(book, asked.opening);
  if (!die) return failure(die.error());
  if (const Result<OpeningRecord> there = opening_said(book, asked.opening);
      there && fold(there->set) == fold(die->set) && fold(there->die) == fold(die->die) &&
      there->line == die->line)
    return failure({.kind = ProblemKind::refused,
                    .what = fmt::format("{} is in the book already", describe(*there)),
                    .expected = "the same without --new and --shape"});
  LineRow row;
  row.set = die->set;
  row.die = die->die;
  row.rank = read_rank(fold(die->die));
  row.line = die->line;
  row.line_kind = die->line_kind;
  row.shape = fold(*asked.shape);
  row.measured = measured_from(*size, *how, 0);
  MeasureAnswer answer{.recorded = true, .lines = {}};
  const Result<void> done = book.change(fmt::format("measured {} {}, {} (new)", row.set, row.die, row.line),
                                        [&](Change& change) -> Result<void> {
                                          Result<PutLine> put = put_line(change, row);
                                          if (!put) return failure(put.error());
                                          LineMeasured one;
                                          one.opening = insetbook::opening(book, put->line_id).value();
                                          one.outcome = put->measurement.value_or(MeasureOutcome{});
                                          answer.lines.push_back(std::move(one));
                                          return {};
                                        });
  if (!done) return failure(done.error());
  return answer;
}

// Whether the panel's box is larger than the line can be, whichever way round it lies.
bool larger(const TriedRow& row, const OpeningRecord& line) {
  const Length give = line.give_or_take;
  return std::min(row.width, row.height) > std::min(line.width, line.height) + give ||
         std::max(row.width, row.height) > std::max(line.width, line.height) + give;
}

}  // namespace

Result<MeasureAnswer> measure(Book& book, const MeasureAsked& asked) {
  if (asked.sizes) return measure_set(book, asked);
  if (asked.make_new) return measure_new(book, asked);
  const Result<OpeningRecord> said = opening_said(book, asked.opening);
  if (!said) return failure(said.error());
  if (!asked.size) {
    MeasureAnswer known;
    known.lines.push_back({*said, {MeasureResult::same, measurements_of(book, said->line_id), {}}, {}});
    return known;
  }
  const Unit unit = settings(book).unit;
  const Result<Size> size = size_option("size", *asked.size, unit);
  if (!size) return failure(size.error());
  const Result<HowMeasured> how = how_measured(book, asked, size->unit);
  if (!how) return failure(how.error());
  MeasureAnswer answer{.recorded = true, .lines = {}};
  if (opening_wanted(asked.opening).line.empty() && openings_of_die(book, said->die_id).size() > 1)
    answer.line_meant = said->line;
  const Result<void> done =
      book.change(fmt::format("measured {}", describe(*said)), [&](Change& change) -> Result<void> {
        Result<LineMeasured> one = record_one(book, change, *said, *size, *how, asked.accept);
        if (!one) return failure(one.error());
        answer.lines.push_back(std::move(*one));
        return {};
      });
  if (!done) return failure(done.error());
  return answer;
}

Result<TriedAnswer> record_tried(Book& book, const TriedAsked& asked) {
  const Result<OpeningRecord> said = opening_said(book, asked.opening);
  if (!said) return failure(said.error());
  const Result<Size> size = size_option("size", asked.size, settings(book).unit);
  if (!size) return failure(size.error());
  TriedRow row;
  row.line_id = said->line_id;
  row.width = size->width;
  row.height = size->height;
  row.unit = size->unit;
  const std::string said_shape = asked.shape.value_or(size->shape);
  row.shape = said_shape.empty() ? said->shape_word : fold(said_shape);
  const Result<Shape> shape = make_shape(row.shape, *size, said_shape.empty() ? said->figures : "", row.unit);
  if (!shape) return failure(shape.error());
  row.result = fold(asked.result.value_or("fits"));
  if (row.result != "fits" && row.result != "too tight" && row.result != "too loose")
    return failure({.what = fmt::format("{} is no result", in_quotes(*asked.result)),
                    .expected = "fits, too-tight or too-loose"});
  row.date = asked.date.value_or(today(book));
  row.note = asked.note.value_or("");
  TriedAnswer answer{.opening = *said, .tried = {}, .same = false};
  const Result<void> done =
      book.change(fmt::format("tried a panel in {}", describe(*said)), [&](Change& change) -> Result<void> {
        const Result<PutResult> put = put_tried(change, row);
        if (!put) return failure(put.error());
        answer.same = *put == PutResult::same;
        return {};
      });
  if (!done) return failure(done.error());
  if (said->measured && row.result == "fits" && larger(row, *said))
    answer.warning = fmt::format(
        "the line is measured as {}: a panel of {} cannot lie in it. If it is a slip, insetbook undo",
        write_size(said->width, said->height, said->unit), write_size(row.width, row.height, row.unit));
  answer.tried.shape = row.shape;
  answer.tried.width = row.width;
  answer.tried.height = row.height;
  answer.tried.unit = row.unit;
  answer.tried.result = row.result;
  answer.tried.date = row.date;
  answer.tried.note = row.note;
  return answer;
}

}  // namespace insetbook
