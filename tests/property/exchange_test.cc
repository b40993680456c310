// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of import and export, on generated tables: importing twice changes nothing; JSON out, in and out again
// is the same bytes; the five tables out and into an empty book make the same records; rows written as CSV
// are read the same.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>
#include <set>

#include "csv/table_book.h"
#include "importers/csv/export_csv.h"
#include "importers/csv/reader.h"
#include "importers/csv/writer.h"
#include "importers/import.h"
#include "importers/json/export_json.h"

namespace insetbook {
namespace {

using Row = std::vector<std::string>;

std::string table_text(const std::vector<Row>& rows) {
  std::string out;
  for (const Row& row : rows) append_csv_row(out, row);
  return out;
}

std::string pick(std::initializer_list<const char*> words) {
  return *rc::gen::elementOf(std::vector<std::string>(words.begin(), words.end()));
}

std::string figure() {
  return pick({"2-3/8", "3", "1 1/2", "2⅜", "0.75", "4 1/16"});
}
std::string size_cell() {
  // Fractions do not share a metric unit.
  if (*rc::gen::inRange(0, 4) == 0) return pick({"3 x 60 mm", "0.75 x 3 mm", "2-3/8 mm x 60 mm"});
  return pick({"", " in", "\""}).insert(0, figure() + " x " + figure());
}
std::string text_cell() {
  return pick({"", "", "plain", "with, comma", "two\nlines", "a \"word\"", "; ;", "½ of it", "shop: corner"});
}

// Tables in which names are told apart and references are right, and everything else is any which way.
std::vector<Table> any_tables() {
  std::vector<Row> dies = {
      {"set", "die", "line", "shape", "size", "read to", "measured", "maker", "stored in", "note", "Shop"}};
  const int sets = *rc::gen::inRange(1, 4);
  for (int s = 0; s < sets; ++s) {
    const int count = *rc::gen::inRange(1, 4);
    const std::string maker = text_cell(), place = pick({"", "drawer 2"});
    for (int d = 1; d <= count; ++d) {
      dies.push_back({fmt::format("Set {}", s), std::to_string(d), "cut", pick({"rectangle", "oval", "leaf"}),
                      size_cell(), pick({"", "1/16 in"}), pick({"", "2026-01-02"}), d == 1 ? maker : "",
                      d == 1 ? place : "", text_cell(), pick({"", "corner"})});
      if (*rc::gen::arbitrary<bool>())
        dies.push_back({fmt::format("Set {}", s), std::to_string(d), "stitched", "circle",
                        pick({"", "2 in", "40 mm"}), "", "", "", "", "", ""});
    }
  }
  std::vector<Row> supplies = {
      {"kind", "name", "colour", "colour value", "size", "weight", "from", "until", "instead", "note"}};
  std::vector<Row> samples = {{"sample", "made", "occasion", "fold", "base", "scores", "finished",
                               "techniques", "supplies", "words", "steps", "based on", "note"}};
  std::vector<Row> elements = {{"sample", "element", "role", "side", "shape", "size", "colour", "ink",
                                "supply", "die set", "die", "goes", "at", "glue", "technique", "count",
                                "note"}};
  std::vector<Row> tried = {{"set", "die", "line", "shape", "size", "result", "date", "sample", "note"}};
  for (const char* colour : {"sage", "kelp", "slate"})
    supplies.push_back({pick({"ink", "card stock"}), pick({"", "heavy"}), colour, pick({"", "#8aa37b"}),
                        pick({"", "3 rolls", "12 x 12"}), pick({"", "80 lb cover", "220 g/m2", "heavy"}),
                        pick({"", "2020-01-01"}), pick({"", "2024-05-06"}), text_cell(), text_cell()});
  const int cards = *rc::gen::inRange(0, 5);
  for (int c = 0; c < cards; ++c) {
    const std::string title = fmt::format("Card {}", c);
    samples.push_back({title, pick({"", "2025-12-31"}), pick({"", "birthday", "thank you; wedding"}),
                       pick({"", "easel", "Z-fold; shaker", "odd fold"}), pick({"", "8-1/2 x 5-1/2", "A4"}),
                       pick({"", "2-1/8; 4-1/4", "4 1/4 in mountain"}), pick({"", "5 x 7", "A6"}),
                       pick({"", "heat embossing; odd way"}), pick({"", "kelp ink; unheard of"}), text_cell(),
                       pick({"", "cut; glue", "one\ntwo"}),
                       c > 0 && *rc::gen::arbitrary<bool>() ? "Card 0" : "", text_cell()});
    const int pieces = *rc::gen::inRange(0, 4);
    for (int p = 0; p < pieces; ++p) {
      const bool cut = *rc::gen::arbitrary<bool>();
      elements.push_back(
          {title, fmt::format("piece {}", p), pick({"", "panel", "odd role"}), pick({"", "front", "inside"}),
           pick({"", "rectangle", "odd shape"}), pick({"", "scrap"}), pick({"", "sage; kelp", "unheard of"}),
           pick({"", "kelp"}), pick({"", "vellum", "unheard of"}), cut ? "Set 0" : "", cut ? "1" : "",
           pick({"", "on front", "in piece 0", "behind piece 1", "on section 2"}),
           pick({"", "centred", "1/8 from the top"}), pick({"", "whole", "foam, left 2", "none"}),
           pick({"", "speckling; odd way"}), pick({"", "2", "a pair"}), text_cell()});
      if (elements.back()[11].ends_with(fmt::format("piece {}", p))) elements.back()[11].clear();
      if (elements.back()[5].empty() && *rc::gen::arbitrary<bool>()) elements.back()[5] = size_cell();
      if (p == 0) elements.back()[11] = "on front";  // no ring
    }
    tried.push_back({"Set 0", "1", "cut", "rectangle", fmt::format("{} x 3 in", c + 1),
                     pick({"fits", "too tight", "too loose"}), pick({"", "2026-02-02"}),
                     pick({"", title.c_str()}), text_cell()});
  }
  std::vector<Table> tables = {{"tried.csv", table_text(tried)},
                               {"elements.csv", table_text(elements)},
                               {"samples.csv", table_text(samples)},
                               {"supplies.csv", table_text(supplies)},
                               {"dies.csv", table_text(dies)}};
  return tables;
}

// The exported text with each UUID named by the order in which it first comes: two books with the same
// records are then the same.
std::string without_uuids(std::string text) {
  std::map<std::string, std::string> names;
  std::string out;
  const auto is_uuid = [&](std::size_t at) {
    return at + 36 < text.size() && text[at - 1] == '"' && text[at + 8] == '-' && text[at + 13] == '-' &&
           text[at + 18] == '-' && text[at + 23] == '-' && text[at + 36] == '"';
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i == 0 || !is_uuid(i)) {
      out += text[i];
      continue;
    }
    out += names.emplace(text.substr(i, 36), fmt::format("#{}", names.size())).first->second;
    i += 35;
  }
  return out;
}

std::string exported(const Book& book, const std::filesystem::path& folder) {
  RC_ASSERT(export_json(book, folder).has_value());
  return contents(folder / "book.json");
}

RC_GTEST_PROP(Exchange, ImportTwiceChangesNothing, ()) {
  TableBook book;
  const auto tables = any_tables();
  const ImportReport first = book.import(tables);
  RC_LOG() << (first.refused.empty() ? "" : first.refused[0].what);
  RC_ASSERT(first.refused.empty());
  const std::string before = exported(book.book, book.folder / "before");
  for (const ImportedFile& file : book.import(tables).files)
    RC_ASSERT(file.added + file.changed + file.refused == 0);
  RC_ASSERT(exported(book.book, book.folder / "after") == before);
}

RC_GTEST_PROP(Exchange, JsonOutInAndOutAgainIsTheSame, ()) {
  TableBook book, other;
  book.import(any_tables());
  const std::string first = exported(book.book, book.folder / "out");
  RC_ASSERT(import_files(other.book, {book.folder / "out"}, {}, Vocabulary()).has_value());
  RC_ASSERT(exported(other.book, other.folder / "out") == first);
}

RC_GTEST_PROP(Exchange, TablesOutAndInMakeTheSameRecords, ()) {
  TableBook book, other;
  book.import(any_tables());
  RC_ASSERT(export_csv(book.book, book.folder / "tables").has_value());
  std::vector<std::filesystem::path> paths;
  for (const char* name : {"dies.csv", "supplies.csv", "samples.csv", "elements.csv", "tried.csv"})
    paths.push_back(book.folder / "tables" / name);
  const auto report = import_files(other.book, paths, {}, Vocabulary());
  RC_ASSERT(report.has_value());
  RC_LOG() << (report->refused.empty() ? "" : report->refused[0].what);
  RC_ASSERT(report->refused.empty());
  RC_ASSERT(without_uuids(exported(other.book, other.folder / "out")) ==
            without_uuids(exported(book.book, book.folder / "out")));
}

RC_GTEST_PROP(Csv, RowsWrittenAreReadTheSame, ()) {
  const auto cell =
      rc::gen::container<std::string>(rc::gen::element('a', ',', ';', '\t', '"', '\n', '\r', ' ', '\''));
  const auto rows = *rc::gen::nonEmpty(
      rc::gen::container<std::vector<Row>>(rc::gen::nonEmpty(rc::gen::container<Row>(cell))));
  const std::string text = table_text(rows);
  CsvReader reader(text, ',');
  CsvRow row;
  std::vector<Row> read;
  while (reader.next(row)) {
    RC_ASSERT(!row.problem);
    Row cells;
    for (std::size_t i = 0; i < row.size(); ++i) cells.emplace_back(row.cell(i));
    read.push_back(std::move(cells));
  }
  RC_ASSERT(read == rows);
}

}  // namespace
}  // namespace insetbook
