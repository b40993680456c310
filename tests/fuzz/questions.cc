// SPDX-License-Identifier: GPL-3.0-or-later
//
// The reader of questions on any bytes: nothing but a tree or a Problem; every place it names lies inside the
// text; its look-ups stay under a constant times the length; a tree of reasonable size that is printed as
// fields can be read again (to the same tree: tests/property).
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "language/read_opening.h"
#include "language/read_question.h"
#include "language/read_record.h"
#include "language/reading_steps.h"
#include "tests/language/table_names.h"
#include "text/utf8.h"

using namespace insetbook;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

void require_inside(const Problem& problem, std::string_view text) {
  require(!problem.what.empty());
  if (problem.where.at) require(*problem.where.at + problem.where.length <= characters(text).size());
}

void require_read_back(const Question& question, const ReadingContext& context) {
  const std::string fields = print_as_fields(question);
  if (fields.size() >= 60'000) return;
  const auto again = read_question(fields, context);
  require(again || again.error().what.starts_with("brackets"));  // printing adds some of its own
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Vocabulary vocabulary;
  static const CountedNames names;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};
  names.calls = 0;
  const auto question = read_question(text, context);
  require(names.calls <= 64 * (text.size() + 16));
  require(reading_steps(text, context) <= most_steps_a_byte * text.size() + steps_allowed_at_once);
  if (!question) {
    require_inside(question.error(), text);
  } else {
    for (const Ignored& each : question->ignored)
      require(each.span.begin < each.span.end && each.span.end <= text.size());
    for (const Problem& each : question->problems) require_inside(each, text);
    if (question->asks == Asks::samples && valid_utf8(text)) require_read_back(*question, context);
  }
  (void)explain_reading(text.substr(0, 512), context);
  (void)readings_of_opening(text);
  (void)read_goes(text);
  (void)read_glue(text, Unit::mm);
  (void)read_die_cell(text);
  (void)read_line_cell(text);
  (void)read_count(text);
  return 0;
}
