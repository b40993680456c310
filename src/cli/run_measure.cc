// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/measure.h"
#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "cli/json_answers.h"
#include "cli/print_answers.h"
#include "cli/run.h"

namespace insetbook::cli {
namespace {

std::optional<std::string> option_text(const Invocation& invocation, std::string_view name) {
  return invocation.has(name) ? std::optional(invocation.value(name)) : std::nullopt;
}

std::string measured_text(const Measured& measured, std::string_view shape_word) {
  std::string text = shaped_size_text(shape_word, measured.width, measured.height, measured.unit);
  if (measured.give_or_take > Length())
    text += fmt::format(" ± {}", give_text(measured.give_or_take, measured.unit));
  return text;
}

void print_known(const std::vector<Measured>& known, std::string_view shape_word, Output& out) {
  if (known.empty()) return;
  Table table{{"figure", "counts as", "by", "on", ""}, {}};
  for (const Measured& measured : known)
    table.rows.push_back({measured_text(measured, shape_word), measured.standing, measured.method,
                          measured.date, measured.note});
  out.table(table);
}

void print_line(const LineMeasured& line, bool recorded, Output& out) {
  const std::string opening = describe(line.opening);
  const std::string read_as = read_as_note(line.opening);
  const std::vector<Measured>& known = line.outcome.known;
  if (!recorded) {
    out.headline(known.empty()
                     ? fmt::format("{}: not measured yet.", opening)
                     : fmt::format("{}. {}", measured_text(known.front(), line.opening.shape_word), opening));
  } else {
    switch (line.outcome.result) {
      case MeasureResult::added:
        out.headline(fmt::format("{}. {}: recorded.",
                                 known.empty() ? "" : measured_text(known.front(), line.opening.shape_word),
                                 opening));
        break;
      case MeasureResult::confirmed:
        out.headline(fmt::format("{} stands. {}: the new figure confirms it.",
                                 measured_text(known.front(), line.opening.shape_word), opening));
        break;
      case MeasureResult::same:
        out.headline(fmt::format("{} stands. {}: the same measurement was recorded already.",
                                 measured_text(known.front(), line.opening.shape_word), opening));
        break;
      case MeasureResult::conflict:
        out.headline(fmt::format("{} stands. {}: the new figure disagrees and is kept beside it.",
                                 measured_text(known.front(), line.opening.shape_word), opening));
        out.line("Measure the cut paper once more; --accept makes the new figure count.");
        break;
    }
  }
  if (!read_as.empty()) out.detail(read_as);
  print_known(known, line.opening.shape_word, out);
  if (!line.outcome.used_by.empty()) {
    std::string used =
        fmt::format("Samples that used the figure that stands: {}", fmt::join(line.outcome.used_by, "; "));
    out.detail(used);
  }
  for (const std::string& warning : line.warnings) out.line(fmt::format("Note: {}.", warning));
}

}  // namespace

void print_measured(const MeasureAnswer& answer, Output& out) {
  for (const LineMeasured& line : answer.lines) print_line(line, answer.recorded, out);
  if (!answer.line_meant.empty())
    out.detail(
        fmt::format("No line was named: the innermost that is no window is meant, {}.", answer.line_meant));
}

int run_measure(const Invocation& invocation, Output& out) {
  const bool writes = invocation.has("size") || invocation.has("sizes") || invocation.has("new");
  Result<Book> book = open_book(invocation, writes ? Book::Use::write : Book::Use::read, out);
  if (!book) return out.problem(book.error());
  MeasureAsked asked{.opening = invocation.text(),
                     .size = option_text(invocation, "size"),
                     .method = option_text(invocation, "method"),
                     .read_to = option_text(invocation, "read-to"),
                     .sizes = option_text(invocation, "sizes"),
                     .accept = invocation.has("accept"),
                     .make_new = invocation.has("new"),
                     .shape = option_text(invocation, "shape")};
  const Result<MeasureAnswer> answer = measure(*book, asked);
  if (!answer) return out.problem(answer.error());
  bool conflict = false;
  for (const LineMeasured& line : answer->lines)
    conflict |= answer->recorded && line.outcome.result == MeasureResult::conflict;
  if (out.json()) {
    out.raw(answer_json(*answer));
  } else {
    print_measured(*answer, out);
  }
  return conflict ? 1 : 0;
}

int run_tried(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  if (!invocation.has("size"))
    return out.problem(
        {.what = "tried needs the size of the panel", .expected = "--size \"3-5/8 x 4-5/8 in\""});
  const TriedAsked asked{.opening = invocation.text(),
                         .size = invocation.value("size"),
                         .shape = option_text(invocation, "shape"),
                         .result = option_text(invocation, "result"),
                         .date = {},
                         .note = {}};
  const Result<TriedAnswer> answer = record_tried(*book, asked);
  if (!answer) return out.problem(answer.error());
  if (out.json()) {
    out.raw(answer_json(*answer));
    return 0;
  }
  out.headline(fmt::format(
      "{} {} in {}: {}.{}", answer->tried.shape,
      shaped_size_text(answer->tried.shape, answer->tried.width, answer->tried.height, answer->tried.unit),
      describe(answer->opening), answer->tried.result,
      answer->same ? " It was recorded already." : " Recorded."));
  if (const std::string read_as = read_as_note(answer->opening); !read_as.empty()) out.detail(read_as);
  if (!answer->warning.empty()) out.line(fmt::format("Note: {}.", answer->warning));
  return 0;
}

}  // namespace insetbook::cli
