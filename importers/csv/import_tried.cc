// SPDX-License-Identifier: GPL-3.0-or-later
//
// The table of what was tried: one row is one panel tried in one opening.
#include <fmt/format.h>

#include "importers/csv/session.h"
#include "shape/shape.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

struct ResultWord {
  std::string_view said, result;
};
constexpr ResultWord result_words[] = {
    {"fits", "fits"},
    {"fit", "fits"},
    {"fitted", "fits"},
    {"fits well", "fits"},
    {"good", "fits"},
    {"yes", "fits"},
    {"ok", "fits"},
    {"too tight", "too tight"},
    {"tight", "too tight"},
    {"too big", "too tight"},
    {"too large", "too tight"},
    {"too loose", "too loose"},
    {"loose", "too loose"},
    {"too small", "too loose"},
};

std::string result_of(Cells& cells) {
  const std::string said = fold(cells.raw(Column::result));
  for (const ResultWord& word : result_words)
    if (said == word.said) return std::string(word.result);
  cells.complain(Column::result,
                 said.empty() ? std::string("the row has no result")
                              : fmt::format("{} is no result", in_quotes(cells.name(Column::result))),
                 "fits, too tight or too loose");
  return {};
}

void read_opening_cells(Session& session, Cells& cells, TriedRow& tried) {
  const std::string set = cells.name(Column::set);
  if (fold(set).empty())
    return cells.complain(Column::set, "the row names no set", "the name of the die set");
  const auto& opening =
      session.lookups.opening(set, cells.name(Column::die), cells.name(Column::line), BlankLine::innermost);
  if (opening)
    tried.line_id = *opening->line_id;
  else
    cells.complain(cells.raw(Column::die).empty() ? Column::set : Column::die, opening.error());
}

void read_panel(Session& session, const TableFile& file, const CsvRow& row, Cells& cells, TriedRow& tried) {
  const std::size_t before = cells.complaints().size();
  const SizeCell size = cells.size_or_sides(Cells::IfNoSize::refuse);
  const bool unreadable = cells.complaints().size() > before;
  std::string said = cells.name(Column::shape);
  if (said.empty() && size.size) said = size.size->shape;
  if (said.empty()) cells.complain(Column::shape, "the panel has no shape", "rectangle, circle, …");
  const auto& term = session.lookups.term(VocabularyName::shape, said);
  tried.shape = term ? *term : said;
  if (!term && !said.empty()) session.kept_as_text("unknown shape", said, file, row);
  if (!size.size) {
    if (!unreadable) cells.complain(Column::size, "the panel has no size", "3-1/8 x 4-1/8 in");
    return;
  }
  const auto shape = make_shape(tried.shape, *size.size, "", session.rules.unit);
  if (!shape) return cells.complain(size.column, shape.error());
  tried.width = size.size->width;
  tried.height = size.size->height;
  tried.unit = size.size->unit;
}

void read_sample(Session& session, Cells& cells, TriedRow& tried) {
  const std::string title = cells.name(Column::sample);
  if (title.empty()) return;
  const auto sample = session.sample_titled_so(title);
  if (!sample)
    cells.complain(Column::sample, fmt::format("no sample is called {}", in_quotes(title)),
                   "a sample in the book or in a table of this import");
  else if (!sample->refused.empty())
    cells.complain(Column::sample, fmt::format("the sample was refused: {}", sample->refused),
                   "that row first");
  else
    tried.sample_id = sample->id;
}

}  // namespace

void import_tried(Session& session) {
  struct Seen {
    std::string row, note;
  };
  std::unordered_map<std::string, Seen> seen;
  session.each_row(TableKind::tried, [&](TableFile& file, const CsvRow& row, Cells& cells) {
    TriedRow tried;
    read_opening_cells(session, cells, tried);
    read_panel(session, file, row, cells, tried);
    tried.result = result_of(cells);
    tried.date = cells.date(Column::date);
    read_sample(session, cells, tried);
    tried.note = cells.note();
    if (cells.complaints().empty()) {
      const std::string key =
          fmt::format("{} {} {} {} {} {} {}", tried.line_id, tried.shape, tried.width.nm(), tried.height.nm(),
                      tried.date, tried.sample_id.value_or(0), tried.result);
      const auto [it, is_new] = seen.emplace(key, Seen{place_of(file, row.number), tried.note});
      if (!is_new && it->second.note == tried.note) return session.count(file, PutResult::same);
      if (!is_new)
        cells.complain(
            Column::note,
            fmt::format("{} has the same panel with the same result, and another note", it->second.row),
            "one row with both notes, or another date");
    }
    if (cells.complaints().empty()) {
      const auto put = put_tried_of_table(session.change, tried);
      if (put) return session.count(file, *put);
      cells.complain(Column::size, put.error());
    }
    session.refuse(file, row, cells.complaints());
  });
}

}  // namespace insetbook
