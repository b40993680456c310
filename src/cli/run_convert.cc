// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <iostream>

#include "answers/convert.h"
#include "cli/json_answers.h"
#include "cli/run.h"

namespace insetbook::cli {
namespace {

// Answers one text; false where it could not be read.
bool convert_one(const std::string& text, Unit unit, Output& out) {
  const Result<Converted> converted = convert(text, unit);
  if (!converted) {
    if (out.json()) out.raw(convert_problem_json(text, converted.error()));
    out.warn(problem_text(converted.error()));
    return false;
  }
  if (out.json()) {
    out.raw(answer_json(*converted));
    return true;
  }
  std::string line = fmt::format("{} = {}", converted->in_inches, converted->in_mm);
  if (!converted->shape.empty()) line = fmt::format("{} {}", converted->shape, line);
  out.headline(line);
  if (!converted->on_ruler.empty())
    out.detail(fmt::format("The nearest sixteenth: {}.", converted->on_ruler));
  if (!converted->means.empty()) out.detail(fmt::format("Read as {}.", converted->means));
  return true;
}

}  // namespace

int run_convert(const Invocation& invocation, Output& out) {
  Unit unit = Unit::inch;
  if (invocation.has("unit")) {
    const std::string said = invocation.value("unit");
    if (said != "in" && said != "mm")
      return out.problem(
          {.what = fmt::format("\"{}\" is no unit", said), .expected = "--unit in or --unit mm"});
    unit = said == "mm" ? Unit::mm : Unit::inch;
  }
  bool all = true;
  if (invocation.words.size() == 1 && invocation.words[0] == "-") {
    for (std::string line; std::getline(std::cin, line);) {
      if (!line.empty() && line.back() == '\r') line.pop_back();
      all = convert_one(line, unit, out) && all;
    }
  } else {
    all = convert_one(invocation.text(), unit, out);
  }
  return all ? 0 : 2;
}

}  // namespace insetbook::cli
