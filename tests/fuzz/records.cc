// SPDX-License-Identifier: GPL-3.0-or-later
//
// The reader of records on any bytes: a record whose pieces have names of their own and go round in no
// circle, or a Problem with a place inside the text.
#include <cstdint>
#include <cstdlib>
#include <set>
#include <string>
#include <string_view>

#include "language/read_record_text.h"
#include "tests/language/table_names.h"
#include "text/utf8.h"

using namespace insetbook;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

void require_place(const Problem& problem) {
  require(!problem.what.empty());
  if (problem.where.at)
    require(*problem.where.at + problem.where.length <= characters(problem.where.text).size());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Vocabulary vocabulary;
  static const TableNames names;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};
  for (const char* title : {"Low Tide", ""}) {
    const Result<RecordSaid> record = read_record(title, text, context);
    if (!record) {
      require_place(record.error());
      continue;
    }
    std::set<std::string> taken;
    for (const PieceOfRecord& piece : record->pieces) {
      require(!fold(piece.name).empty() && taken.insert(fold(piece.name)).second);
      for (const NotRead& lost : piece.said.not_read) require(lost.span.begin <= lost.span.end);
      std::size_t steps = 0;
      for (auto at = piece.goes_to; at; at = record->pieces[*at].goes_to)
        require(++steps <= record->pieces.size());
    }
    for (const LeftOver& lost : record->not_read) require_place(lost.problem);
  }
  return 0;
}
