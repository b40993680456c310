// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/print_answers.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "colour/value.h"

namespace insetbook::cli {
namespace {

std::string die_name(const NotMeasured& die) {
  return die.die.empty() ? die.set : die.set + " " + die.die;
}

std::string lines_text(const NotMeasured& die) {
  if (die.die.empty()) return "no die is recorded yet";
  if (die.lines.empty()) return "no line is recorded yet";
  return fmt::format("{}", fmt::join(die.lines, ", "));
}

// How far apart two colours are, in words; colour/difference.h has the figures.
std::string_view apart(double delta_e) {
  return delta_e < 1     ? "not to be told apart"
         : delta_e <= 5  ? "very near"
         : delta_e <= 10 ? "much the same on a card"
         : delta_e <= 20 ? "a different colour"
                         : "far off";
}

std::string status_text(const std::string& status) {
  return status.empty() ? "no supply of it" : status;
}

// What the person has recorded comes before what was computed.
bool print_stand_ins(const NearestAnswer& answer, Output& out) {
  bool first = true;
  for (const std::string& stand_in : answer.stand_ins) {
    const std::string said = fmt::format("Recorded to stand in for {}: {}.", answer.name, stand_in);
    std::exchange(first, false) ? out.headline(said) : out.detail(said);
  }
  return !first;
}

}  // namespace

void print_unmeasured(const UnmeasuredAnswer& answer, Output& out) {
  const std::string where = answer.set.empty() ? "the book" : answer.set;
  if (answer.dies.empty()) {
    out.headline(answer.all_lines == 0
                     ? fmt::format("No line of a die is recorded in {} yet.", where)
                     : fmt::format("All {} lines in {} are measured.", answer.all_lines, where));
    return;
  }
  out.headline(fmt::format("{} of {} lines in {} {} not measured yet, of {} {}.", answer.lines,
                           answer.all_lines, where, answer.lines == 1 ? "is" : "are", answer.dies.size(),
                           answer.dies.size() == 1 ? "die" : "dies"));
  out.blank();
  Table table{{"die", "lines"}, {}};
  for (const NotMeasured& die : answer.dies) table.rows.push_back({die_name(die), lines_text(die)});
  out.table(table);
  const auto first =
      std::ranges::find_if(answer.dies, [](const NotMeasured& die) { return !die.lines.empty(); });
  if (first != answer.dies.end())
    out.detail(fmt::format("When one is measured: insetbook measure \"{}, {}\" --size SIZE", die_name(*first),
                           first->lines.front()));
}

void print_stored(const StoredAnswer& answer, Output& out) {
  const StoredThing& first = answer.things.front();
  const bool one_place = std::ranges::all_of(
      answer.things, [&](const StoredThing& thing) { return thing.place == first.place; });
  if (first.place.empty()) {
    out.headline(answer.things.size() == 1
                     ? fmt::format("{}: no place is recorded.", first.name)
                     : fmt::format("No place is recorded for any of these {}.", answer.things.size()));
    out.detail(fmt::format("When it has one: insetbook change \"{}\" \"stored in=PLACE\"", first.name));
  } else {
    out.headline(answer.things.size() == 1 ? fmt::format("{}. {}", first.place, first.name)
                 : one_place ? fmt::format("{}. All {} of that name.", first.place, answer.things.size())
                             : fmt::format("{}. {}", first.place, first.name));
  }
  if (!answer.read_as.empty()) out.detail(fmt::format("The nearest to \"{}\".", answer.read_as));
  if (answer.things.size() > 1) {
    out.blank();
    Table table{{"what", "", "place"}, {}};
    for (const StoredThing& thing : answer.things)
      table.rows.push_back({thing.name, thing.kind, thing.place.empty() ? "not recorded" : thing.place});
    out.table(table);
  }
  if (answer.more > 0) out.detail(fmt::format("And {} more.", answer.more));
}

void print_nearest(const NearestAnswer& answer, Output& out) {
  const std::string asked = answer.name.empty()
                                ? write_colour_value(answer.srgb)
                                : fmt::format("{} ({}{})", answer.name, write_colour_value(answer.srgb),
                                              answer.status == "withdrawn" ? ", withdrawn" : "");
  if (answer.colours.empty()) {
    print_stand_ins(answer, out);
    out.headline("No other colour of the book has a value.");
  } else {
    const NearestColour& first = answer.colours.front();
    const std::string nearest =
        fmt::format("{}: {}, {:.1f} away.", first.name, apart(first.delta_e), first.delta_e);
    print_stand_ins(answer, out) ? out.detail(nearest) : out.headline(nearest);
    out.detail(fmt::format("Nearest to {}, those that can still be had first.", asked));
    if (!answer.read_as.empty()) out.detail(fmt::format("The nearest name to \"{}\".", answer.read_as));
    out.blank();
    Table table{{"colour", "value", "away", "", "status"}, {}};
    for (const NearestColour& colour : answer.colours)
      table.rows.push_back({colour.name, write_colour_value(colour.srgb),
                            fmt::format("{:.1f}", colour.delta_e), std::string(apart(colour.delta_e)),
                            status_text(colour.status)});
    out.table(table);
  }
  if (!answer.without_value.empty())
    out.detail(fmt::format("Without a value, so not compared: {}.", fmt::join(answer.without_value, ", ")));
}

void print_converted(const ConvertedTo& answer, Output& out) {
  const Converted& converted = answer.converted;
  const std::string metric = answer.centimetres ? in_centimetres(converted) : converted.in_mm;
  const bool inches = answer.unit == Unit::inch;
  const std::string shape = converted.shape.empty() ? "" : converted.shape + " ";
  if (inches && !converted.on_ruler.empty())
    out.headline(fmt::format("{}about {} to the nearest sixteenth.", shape, converted.on_ruler));
  else
    out.headline(fmt::format("{}{}", shape, inches ? converted.in_inches : metric));
  out.detail(fmt::format("{} = {}", converted.in_inches, metric));
  if (!converted.means.empty()) out.detail(fmt::format("Read as {}.", converted.means));
}

}  // namespace insetbook::cli
