// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/import_tables.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "importers/csv/export_csv.h"
#include "importers/json/export_json.h"

namespace insetbook::cli {
namespace {

Result<ImportOptions> import_options(const Invocation& invocation, Output& out) {
  ImportOptions options;
  options.as = invocation.value("as");
  options.all_or_nothing = invocation.has("all-or-nothing");
  options.dry_run = invocation.has("dry-run");
  options.refused_file = invocation.value("refused");
  options.drawing_set = invocation.value("set");
  options.drawing_scale = invocation.value("scale");
  options.drawing_lines = invocation.value("lines");
  if (invocation.has("dates")) {
    const std::string order = invocation.value("dates");
    if (order != "dmy" && order != "mdy")
      return failure({.what = fmt::format("\"{}\" is no order of day, month and year", order),
                      .expected = "--dates dmy (day first) or --dates mdy (month first)"});
    options.dates = order == "dmy" ? DateOrder::day_month_year : DateOrder::month_day_year;
  }
  options.progress = [&out](std::int64_t done, std::int64_t all) { out.progress("rows", done, all); };
  return options;
}

std::string refused_text(const RefusedRow& row) {
  std::string text = row.file;
  if (row.row > 0) text += fmt::format(", row {}", row.row);
  if (!row.column.empty()) text += fmt::format(", {}", row.column);
  text += ": " + row.what;
  if (!row.expected.empty()) text += fmt::format(" ({})", row.expected);
  return text;
}

void print_report(const ImportReport& report, bool dry_run, Output& out) {
  std::int64_t added = 0, changed = 0, refused = 0;
  for (const ImportedFile& file : report.files) {
    added += file.added;
    changed += file.changed;
    refused += file.refused;
  }
  if (report.kept)
    out.headline(added + changed == 0 && refused == 0
                     ? std::string("Nothing new: the book has all of it.")
                     : fmt::format("{} rows added, {} changed, {} refused.", added, changed, refused));
  else
    out.headline(dry_run
                     ? fmt::format("Only told, nothing kept: {} rows would be added, {} changed, {} refused.",
                                   added, changed, refused)
                     : fmt::format("Nothing is kept: {} rows are refused.", refused));
  Table table{{"file", "table", "added", "changed", "the same", "refused"}, {}};
  for (const ImportedFile& file : report.files)
    table.rows.push_back({file.file, file.kind, fmt::format("{}", file.added),
                          fmt::format("{}", file.changed), fmt::format("{}", file.same),
                          fmt::format("{}", file.refused)});
  out.table(table);
  for (const std::string& note : report.notes) out.line(note);
  for (const RefusedRow& row : report.refused)
    out.warn((row.row_kept ? "left out of its row: " : "refused: ") + refused_text(row));
  for (const std::string& file : report.refused_written)
    out.line(fmt::format("The refused rows are in {}, to be mended.", file));
}

}  // namespace

int run_import(const Invocation& invocation, Output& out) {
  Result<ImportOptions> options = import_options(invocation, out);
  if (!options) return out.problem(options.error());
  const std::vector<std::filesystem::path> files(invocation.words.begin(), invocation.words.end());
  const bool dry_run = options->dry_run;
  const Result<ImportReport> report = import_into(book_folder(invocation), files, std::move(*options));
  if (!report) return out.problem(report.error());
  if (out.json())
    out.raw(answer_json(*report));
  else
    print_report(*report, dry_run, out);
  std::int64_t refused = 0;
  for (const ImportedFile& file : report->files) refused += file.refused;
  return refused > 0 ? 2 : 0;
}

namespace {

// Both exporters tell the same two lists.
template <class Report>
int print_export(const Result<Report>& report, const std::filesystem::path& folder, Output& out) {
  if (!report) return out.problem(report.error());
  if (out.json()) {
    out.raw(plain_json({{"folder", folder.string()}, {"files", report->files}, {"notes", report->notes}}));
    return 0;
  }
  out.headline(fmt::format("Written into {}: {} files.", folder.string(), report->files.size()));
  for (const std::string& note : report->notes) out.line(note);
  return 0;
}

}  // namespace

int run_export(const Invocation& invocation, Output& out) {
  if (!invocation.has("to"))
    return out.problem({.what = "export needs the folder to write into", .expected = "--to DIR"});
  const std::string format = invocation.has("format") ? invocation.value("format") : "json";
  if (format != "json" && format != "csv")
    return out.problem({.what = fmt::format("\"{}\" is no format to export", format),
                        .expected = "--format json or --format csv"});
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const std::filesystem::path folder = invocation.value("to");
  if (format == "json") return print_export(export_json(*book, folder), folder, out);
  return print_export(export_csv(*book, folder), folder, out);
}

}  // namespace insetbook::cli
