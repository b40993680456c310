// SPDX-License-Identifier: GPL-3.0-or-later
//
// The reader of questions on any bytes: nothing but a tree or a Problem with a place inside the text; a tree
// of reasonable size that is printed as fields can be read again.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "language/read_opening.h"
#include "language/read_question.h"
#include "language/read_record.h"
#include "tests/language/table_names.h"
#include "text/utf8.h"

using namespace insetbook;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Vocabulary vocabulary;
  static const TableNames names;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};
  const auto question = read_question(text, context);
  if (!question) {
    require(!question.error().what.empty());
    if (question.error().where.at)
      require(*question.error().where.at + question.error().where.length <= characters(text).size());
  } else {
    for (const Ignored& each : question->ignored)
      require(each.span.begin < each.span.end && each.span.end <= text.size());
    const std::string fields = print_as_fields(*question);
    if (question->asks == Asks::samples && fields.size() < 60'000 && valid_utf8(text)) {
      const auto again = read_question(fields, context);
      require(again.has_value() || again.error().what.starts_with("brackets"));
    }
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
