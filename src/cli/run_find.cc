// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <charconv>

#include "answers/find.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "cli/run_fits.h"

namespace insetbook::cli {
namespace {

Result<FindAsked> find_asked(const Invocation& invocation) {
  FindAsked asked;
  asked.question = invocation.text();
  asked.explain = invocation.has("explain");
  if (invocation.has("limit")) {
    const std::string text = invocation.value("limit");
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), asked.limit);
    if (error != std::errc() || end != text.data() + text.size() || asked.limit < 1)
      return failure({.what = fmt::format("\"{}\" is no number of samples", text), .expected = "--limit 20"});
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

void print_reading(const FindAnswer& answer, Output& out) {
  std::string read;
  for (const Understood& part : answer.understood) {
    if (!read.empty()) read += "; ";
    read += part.text == part.means ? part.means : fmt::format("{} = {}", part.text, part.means);
  }
  if (!read.empty()) out.detail(fmt::format("Read as: {}", read));
  std::string ignored;
  for (const Ignored& word : answer.ignored) ignored += (ignored.empty() ? "" : " ") + word.word;
  if (!ignored.empty()) out.detail(fmt::format("Passed over: {}", ignored));
  for (const OtherReading& other : answer.other_readings)
    out.detail(
        fmt::format("\"{}\" was read as {}; it can also mean {}.", other.text, other.taken, other.other));
  for (const std::string& note : answer.notes) out.detail(note);
}

void print_hit(const Hit& hit, Output& out) {
  out.line(fmt::format("{}{}", hit.title, hit.made.empty() ? "" : fmt::format("  ({})", hit.made)));
  if (!hit.difference.empty()) out.detail(hit.difference);
  for (const Matched& matched : hit.matched)
    out.detail(matched.element.empty()
                   ? fmt::format("{}: {}", matched.text, matched.why)
                   : fmt::format("{}: {} ({})", matched.text, matched.element, matched.why));
}

void print_hits(const FindAnswer& answer, const Hits& hits, Output& out) {
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
  }
  for (const Suggestion& suggestion : hits.suggest)
    out.line(fmt::format("\"{}\" is not in the book. Did you mean \"{}\"?", suggestion.word,
                         suggestion.suggestion));
  if (!hits.nearest.empty()) {
    out.blank();
    out.line("Nearest:");
    for (const Hit& hit : hits.nearest) print_hit(hit, out);
  }
}

}  // namespace

int run_find(const Invocation& invocation, Output& out) {
  const Result<FindAsked> asked = find_asked(invocation);
  if (!asked) return out.problem(asked.error());
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<FindAnswer> answer = find(*book, *asked);
  if (!answer) return out.problem(answer.error());
  const Hits* hits = std::get_if<Hits>(&answer->answer);
  const FramesAnswer* frames = std::get_if<FramesAnswer>(&answer->answer);
  if (out.json()) {
    out.raw(answer_json(*answer));
  } else {
    if (!answer->explained.empty()) out.raw(answer->explained);
    if (hits) {
      print_hits(*answer, *hits, out);
    } else if (frames) {
      print_frames(*frames, out);
      print_reading(*answer, out);
    } else {
      print_fits(std::get<FitsAnswer>(answer->answer), out);
      print_reading(*answer, out);
    }
  }
  return (hits && hits->hits.empty()) || (frames && frames->openings.empty()) ? 1 : 0;
}

}  // namespace insetbook::cli
