// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/import_csv.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/files.h"
#include "importers/csv/encoding.h"
#include "importers/csv/refused.h"
#include "importers/csv/session.h"
#include "text/quote.h"

namespace insetbook {

namespace {

std::optional<Problem> no_text_file(std::string_view bytes) {
  if (bytes.starts_with("PK\x03\x04"))
    return bad_input("the file is a spreadsheet, or another packed file, and no CSV",
                     "the sheet saved as CSV (UTF-8)");
  if (bytes.starts_with("%PDF"))
    return bad_input("the file is a PDF, and no CSV", "a table saved as CSV (UTF-8)");
  if (bytes.empty()) return bad_input("the file is empty", "a table with a row of headings");
  return std::nullopt;
}

Result<TableFile> open_table(TableSource& source, std::optional<TableKind> as, ImportReport& report) {
  if (auto problem = no_text_file(source.bytes)) return failure(std::move(*problem));
  auto decoded = decode_text(std::move(source.bytes));
  if (!decoded) return failure(decoded.error());
  if (decoded->encoding == TextEncoding::windows1252)
    report.notes.push_back(fmt::format("{} was read as Windows-1252, because it is no UTF-8", source.name));
  TableFile file;
  file.name = source.name;
  file.folder = source.folder;
  file.text = std::move(decoded->text);
  file.delimiter = csv_delimiter(file.text);
  file.rows = std::count(file.text.begin(), file.text.end(), '\n');
  CsvReader reader(file.text, file.delimiter);
  CsvRow row;
  if (!reader.next(row)) return failure(bad_input("the file has no rows", "a table with a row of headings"));
  if (row.problem) return failure(*row.problem);
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < row.size(); ++i) {
    cells.emplace_back(row.cell(i));
    if (const auto control = control_character(cells.back(), Lines::several))
      return failure(
          bad_input(fmt::format("the heading {} holds {}", in_quotes(cells.back()), name_of(*control)),
                    "the heading without it"));
  }
  auto header = read_header(cells, as);
  if (!header) return failure(header.error());
  file.header = std::move(*header);
  file.data_begin = reader.place();
  file.data_number = row.number + 1;
  file.counts.file = file.name;
  file.counts.kind = table_word(file.header.kind);
  return file;
}

void refuse_file(const TableSource& source, const Problem& problem, ImportReport& report) {
  report.refused.push_back({source.name, 1, {}, problem.what, problem.expected, false});
  report.files.push_back({source.name, "unknown", 0, 0, 0, 1});
}

void tell_unknown_columns(const TableFile& file, ImportReport& report) {
  std::string names;
  for (const Heading& heading : file.header.headings)
    if (heading.column == nullptr && !heading.written.empty())
      names += fmt::format("{}{}", names.empty() ? "" : ", ", in_quotes(heading.written));
  if (!names.empty()) report.notes.push_back(fmt::format("{}: kept as notes: {}", file.name, names));
}

}  // namespace

Result<void> import_tables(Change& change, std::vector<TableSource> sources, const ImportOptions& options,
                           const Vocabulary& vocabulary, ImportReport& report) {
  std::optional<TableKind> as;
  if (!options.as.empty()) {
    as = table_kind(options.as);
    if (!as)
      return failure(bad_input(fmt::format("{} is no kind of table", in_quotes(options.as)),
                               "dies, supplies, samples, elements or tried"));
  }
  Session session(change, vocabulary, options, report);
  for (TableSource& source : sources) {
    auto file = open_table(source, as, report);
    if (!file) {
      refuse_file(source, file.error(), report);
      continue;
    }
    tell_unknown_columns(*file, report);
    session.files.push_back(std::move(*file));
  }
  import_dies(session);
  import_supplies(session);
  import_samples(session);
  import_elements(session);
  import_tried(session);
  link_openings(session);
  session.report_kept_as_text();
  for (TableFile& file : session.files) report.files.push_back(file.counts);
  if (!options.refused_file.empty()) return write_refused(session, options.refused_file, report);
  return {};
}

}  // namespace insetbook
