// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "answers/find.h"
#include "cli/json_answers.h"
#include "cli/print_answers.h"
#include "cli/run.h"
#include "cli/run_fits.h"

namespace insetbook::cli {
namespace {

Result<FindAsked> find_asked(const Invocation& invocation) {
  FindAsked asked;
  asked.question = invocation.text();
  asked.explain = invocation.has("explain");
  asked.facets = invocation.has("facets");
  if (invocation.has("limit")) {
    const Result<std::size_t> limit = limit_given(invocation, 0);
    if (!limit) return failure(limit.error());
    asked.limit = *limit;
  }
  if (invocation.has("sort")) {
    const std::string text = invocation.value("sort");
    const std::optional<Order> order = order_named(text);
    if (!order)
      return failure({.what = fmt::format("\"{}\" is no order", text),
                      .expected = "--sort best, newest, oldest or title"});
    asked.order = *order;
  }
  return asked;
}

std::string read_as(const FindAnswer& answer) {
  std::string read;
  for (const Understood& part : answer.understood) {
    if (!read.empty()) read += "; ";
    read += part.text == part.means ? part.means : fmt::format("{} = {}", part.text, part.means);
  }
  return read;
}

// Notes and other readings are said once, however often the question gives cause for them.
void print_remarks(const FindAnswer& answer, Output& out) {
  std::vector<std::string> said;
  const auto say = [&](std::string text) {
    if (std::ranges::find(said, text) != said.end()) return;
    out.detail(text);
    said.push_back(std::move(text));
  };
  for (const OtherReading& other : answer.other_readings)
    say(fmt::format("\"{}\" was read as {}; it can also mean {}.", other.text, other.taken, other.other));
  for (const std::string& note : answer.notes) say(note);
}

void print_reading(const FindAnswer& answer, Output& out) {
  if (const std::string read = read_as(answer); !read.empty()) out.detail(fmt::format("Read as: {}", read));
  std::string ignored;
  for (const Ignored& word : answer.ignored) ignored += (ignored.empty() ? "" : " ") + word.word;
  if (!ignored.empty()) out.detail(fmt::format("Passed over: {}", ignored));
  print_remarks(answer, out);
}

// "2-3/8 in circle: moon (circle 2-3/8 in)": the marks of the reason, where it stands in the line. A piece
// that is only told for what it lacks has no words of the question, or no reason.
void print_matched(const Matched& matched, Output& out) {
  std::string line = matched.text;
  const auto add = [&](std::string_view part) {
    if (!line.empty() && !part.empty()) line += ": ";
    line += part;
  };
  add(matched.element);
  if (matched.why.empty()) {
    if (!matched.element.empty()) out.detail(line);
    return;
  }
  line += matched.element.empty() ? (line.empty() ? "" : ": ") : " (";
  std::vector<Mark> marks;
  for (const Span& mark : matched.marks) marks.push_back({line.size() + mark.begin, line.size() + mark.end});
  line += matched.why;
  if (!matched.element.empty()) line += ")";
  out.detail(line, marks);
}

void print_hit(const Hit& hit, Output& out) {
  out.line(fmt::format("{}{}", hit.title, hit.made.empty() ? "" : fmt::format("  ({})", hit.made)));
  if (!hit.difference.empty()) out.detail(hit.difference);
  for (const Matched& matched : hit.matched) print_matched(matched, out);
}

void print_facets(const std::vector<Facet>& facets, Output& out) {
  constexpr std::size_t most = 8;
  Table table{{"among these", ""}, {}};
  std::string example;
  for (const Facet& facet : facets) {
    std::string values;
    for (std::size_t i = 0; i < facet.values.size() && i < most; ++i)
      values += fmt::format("{}{} ({})", i > 0 ? ", " : "", facet.values[i].label, facet.values[i].count);
    if (facet.values.size() > most) values += fmt::format(", and {} more", facet.values.size() - most);
    if (values.empty()) continue;
    if (example.empty()) example = facet.values.front().asks;
    table.rows.push_back({facet.name, values});
  }
  if (table.rows.empty()) return;
  out.blank();
  out.table(table);
  out.detail(fmt::format("To have only some of them, add it to the question: {}", example));
}

void print_hits(const FindAnswer& answer, const Hits& hits, std::size_t most, Output& out) {
  if (hits.hits.empty()) {
    out.headline("No sample has all of that.");
    print_reading(answer, out);
    if (!hits.emptied_by.empty())
      out.line(fmt::format("What leaves nothing: {}", fmt::join(hits.emptied_by, " together with ")));
  } else {
    out.headline(hits.total == 1
                     ? "1 sample:"
                     : fmt::format("{}{} samples{}:", hits.total_is_exact ? "" : "at least ", hits.total,
                                   hits.hits.size() < hits.total
                                       ? fmt::format(", the first {}", hits.hits.size())
                                       : ""));
    print_reading(answer, out);
    out.blank();
    for (const Hit& hit : hits.hits) print_hit(hit, out);
    // Where the question says how many ("the newest three"), they are all that was asked for.
    const bool cut_off = hits.hits.size() >= most && hits.hits.size() < hits.total;
    if (cut_off && hits.total_is_exact)
      out.detail(fmt::format("{} more: --limit {} shows all.", hits.total - hits.hits.size(), hits.total));
    else if (cut_off)
      out.detail(fmt::format("There are more: --limit {} shows as many again.", 2 * hits.hits.size()));
  }
  for (const Suggestion& suggestion : hits.suggest)
    out.line(fmt::format("\"{}\" is not in the book. Did you mean \"{}\"?", suggestion.word,
                         suggestion.suggestion));
  if (!hits.nearest.empty()) {
    out.blank();
    out.line("Nearest:");
    for (const Hit& hit : hits.nearest) print_hit(hit, out);
  }
  print_facets(hits.facets, out);
}

// "pieces: sage | circle", one stage a line, as a table of two columns.
void print_stages(std::string_view explained, Output& out) {
  Table table{{}, {}};
  while (!explained.empty()) {
    const std::size_t end = std::min(explained.find('\n'), explained.size());
    const std::string_view line = explained.substr(0, end);
    const std::size_t colon = std::min(line.find(": "), line.size());
    table.rows.push_back(
        {std::string(line.substr(0, colon)), std::string(line.substr(std::min(colon + 2, line.size())))});
    explained.remove_prefix(std::min(end + 1, explained.size()));
  }
  if (table.rows.empty()) return;
  out.blank();
  out.line("Stage by stage:");
  out.table(table);
}

struct AnswerPrinter {
  const FindAnswer& whole;
  std::size_t most;  // hits that are shown, where the question does not say
  Output& out;
  void operator()(const Hits& hits) const { print_hits(whole, hits, most, out); }
  void operator()(const FitsAnswer& answer) const { print_fits(answer, out); }
  void operator()(const FramesAnswer& answer) const { print_frames(answer, out); }
  void operator()(const PairsAnswer& answer) const { print_pairs(answer, most, out); }
  void operator()(const MeasureAnswer& answer) const { print_measured(answer, out); }
  void operator()(const ShowAnswer& answer) const { print_shown(answer, out); }
  void operator()(const UnmeasuredAnswer& answer) const { print_unmeasured(answer, out); }
  void operator()(const StoredAnswer& answer) const { print_stored(answer, out); }
  void operator()(const NearestAnswer& answer) const { print_nearest(answer, out); }
  void operator()(const ConvertedTo& answer) const { print_converted(answer, out); }
  void operator()(const DiesAnswer& answer) const { print_dies(answer, out); }
  void operator()(const TriedThereAnswer& answer) const { print_tried_there(answer, out); }
  void operator()(const PiecesAnswer& answer) const { print_pieces(answer, out); }
};

// What could not be read, all of it, and what was.
int print_problems(const FindAnswer& answer, Output& out) {
  if (out.json()) out.raw(answer_json(answer));
  for (const Problem& problem : answer.problems) out.warn(problem_text(problem));
  if (const std::string read = read_as(answer); !read.empty())
    out.warn(fmt::format("The rest was read as: {}", read));
  return exit_status(answer.problems.front().kind);
}

bool found_nothing(const FindAnswer& answer) {
  if (const auto* hits = std::get_if<Hits>(&answer.answer)) return hits->hits.empty();
  if (const auto* frames = std::get_if<FramesAnswer>(&answer.answer)) return frames->openings.empty();
  if (const auto* pairs = std::get_if<PairsAnswer>(&answer.answer)) return is_empty(*pairs);
  if (const auto* dies = std::get_if<DiesAnswer>(&answer.answer)) return dies->dies.empty();
  if (const auto* tried = std::get_if<TriedThereAnswer>(&answer.answer)) return tried->tried.empty();
  return false;
}

}  // namespace

Result<std::size_t> number_given(const Invocation& invocation, std::string_view name, std::size_t otherwise) {
  if (!invocation.has(name)) return otherwise;
  const std::string text = invocation.value(name);
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc() || end != text.data() + text.size() || number < 1)
    return failure({.what = fmt::format("--{}: \"{}\" is no number above zero", name, text),
                    .expected = fmt::format("--{} {}", name, otherwise > 0 ? otherwise : 20)});
  return number;
}

Result<std::size_t> limit_given(const Invocation& invocation, std::size_t otherwise) {
  return number_given(invocation, "limit", otherwise);
}

int run_find(const Invocation& invocation, Output& out) {
  const Result<FindAsked> asked = find_asked(invocation);
  if (!asked) return out.problem(asked.error());
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<FindAnswer> answer = find(*book, *asked);
  if (!answer) return out.problem(answer.error());
  if (!answer->problems.empty()) return print_problems(*answer, out);
  const Hits* hits = std::get_if<Hits>(&answer->answer);
  const std::size_t most = asked->limit.value_or(SearchOptions().limit);
  if (out.json()) {
    out.raw(answer_json(*answer));
  } else {
    std::visit(AnswerPrinter{*answer, most, out}, answer->answer);
    if (!hits) print_remarks(*answer, out);
    print_stages(answer->explained, out);
  }
  return found_nothing(*answer) ? 1 : 0;
}

}  // namespace insetbook::cli
