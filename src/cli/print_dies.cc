// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "answers/sizes_shown.h"
#include "cli/print_answers.h"

namespace insetbook::cli {
namespace {

std::string size_text(const OpeningRecord& line) {
  return shaped_size_text(line.shape_word, line.width, line.height, line.unit);
}

std::string line_text(const OpeningRecord& line) {
  return fmt::format("{}: {} {}", describe(line), line.shape_word, size_text(line));
}

std::string with_difference(const DieOfSize& die) {
  return line_text(die.opening) + (die.difference.empty() ? "" : fmt::format(", {}", die.difference));
}

std::string asked_text(const DiesAnswer& answer) {
  std::string asked = answer.size.empty() ? std::string("what was asked") : answer.size;
  if (!answer.in_set.empty()) asked += fmt::format(" in {}", answer.in_set);
  return asked;
}

// The answer: a die that has the size, else the nearest.
std::string headline(const DiesAnswer& answer) {
  if (!answer.size_asked)
    return answer.total == 0   ? fmt::format("No die of the book is {}.", asked_text(answer))
           : answer.total == 1 ? std::string("1 die:")
                               : fmt::format("{} dies:", answer.total);
  if (answer.dies.empty() && !answer.estimated.empty())
    return fmt::format("No measured die is just that, but one that is not measured should be about that: {}.",
                       describe(answer.estimated.front().opening));
  if (answer.dies.empty())
    return answer.nearest.empty() ? fmt::format("No measured die is {}.", asked_text(answer))
                                  : fmt::format("None is just that. The nearest is {}.",
                                                with_difference(answer.nearest.front()));
  const std::string first = with_difference(answer.dies.front());
  if (answer.nearest.empty()) return first + ".";
  return fmt::format("No die cuts just that, but this line is: {}.", first);
}

void add_rows(const std::vector<DieOfSize>& dies, Table& table) {
  for (const DieOfSize& die : dies)
    table.rows.push_back({fmt::format("{} {}", die.opening.set, die.opening.die), die.opening.line,
                          die.opening.shape_word, size_text(die.opening), die.difference});
}

}  // namespace

void print_dies(const DiesAnswer& answer, Output& out) {
  out.headline(headline(answer));
  const Table head{{"die", "line", "shape", "size", "from what was asked"}, {}};
  if (answer.total > 1 || !answer.size_asked) {
    Table table = head;
    add_rows(answer.dies, table);
    out.table(table);
    if (answer.dies.size() < answer.total)
      out.detail(fmt::format("The first {} of {}: --limit {} shows all.", answer.dies.size(), answer.total,
                             answer.total));
  }
  if (!answer.nearest.empty()) {
    if (!answer.dies.empty()) out.line("The nearest that are cut:");
    Table table = head;
    add_rows(answer.nearest, table);
    out.table(table);
  }
  for (const EstimatedDie& die : answer.estimated) {
    const Unit unit = die.opening.unit;
    out.detail(fmt::format("Not measured, but by the sizes of its set about {}, give or take {}: {}.",
                           shaped_size_text(die.opening.shape_word, nearest_mark(die.estimate.width, unit),
                                            nearest_mark(die.estimate.height, unit), unit),
                           give_text(die.estimate.spread, unit), describe(die.opening)));
  }
}

void print_tried_there(const TriedThereAnswer& answer, Output& out) {
  const std::string in = answer.opening.empty() ? "" : " in " + answer.opening;
  const std::string result = answer.result.empty() ? "" : " as " + answer.result;
  if (answer.tried.empty()) {
    out.headline(fmt::format("Nothing is recorded as tried{}{}.", in, result));
    out.detail("When a panel was: insetbook tried OPENING --size SIZE --result fits|too-tight|too-loose");
    return;
  }
  const auto panel = [](const TriedPanel& tried) {
    return fmt::format("{} {}", tried.shape,
                       shaped_size_text(tried.shape, tried.width, tried.height, tried.unit));
  };
  const TriedThere& first = answer.tried.front();
  out.headline(fmt::format("{}: {}{}. {}.", panel(first.tried), first.tried.result,
                           answer.total > 1 ? fmt::format(" (the newest of {})", answer.total) : "",
                           describe(first.opening)));
  Table table{{"panel", "result", "tried", "in", "line", ""}, {}};
  for (const TriedThere& there : answer.tried) {
    std::string remark = there.tried.sample.empty() ? "" : "for " + there.tried.sample;
    if (!there.tried.element.empty())
      remark = fmt::format("in {} ({})", there.tried.sample, there.tried.element);
    if (!there.tried.note.empty()) remark += (remark.empty() ? "" : ": ") + there.tried.note;
    table.rows.push_back({panel(there.tried), there.tried.result, there.tried.date,
                          fmt::format("{} {}", there.opening.set, there.opening.die), there.opening.line,
                          remark});
  }
  out.table(table);
  if (answer.tried.size() < answer.total)
    out.detail(fmt::format("The first {} of {}: --limit {} shows all.", answer.tried.size(), answer.total,
                           answer.total));
}

}  // namespace insetbook::cli
