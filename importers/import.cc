// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/import.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "book/files.h"
#include "importers/csv/import_csv.h"
#include "importers/json/import_json.h"
#include "importers/svg/import_svg.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr std::uint64_t largest_file = 2'000'000'000;

// A file that is called so is read as such, whatever is in it: what is wrong with it is then said as of JSON.
bool is_json(const std::filesystem::path& path, std::string_view bytes) {
  if (fold(path.extension().string()) == ".json") return true;
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && bytes[first] == '{';
}

struct Sources {
  std::vector<JsonSource> books;
  std::vector<TableSource> tables;
  std::vector<DrawingSource> drawings;
};

Result<Sources> read_sources(const std::vector<std::filesystem::path>& paths) {
  Sources sources;
  for (const std::filesystem::path& named : paths) {
    std::error_code ignored;
    const bool folder = std::filesystem::is_directory(named, ignored);
    const std::filesystem::path path = folder ? named / "book.json" : named;
    Result<std::string> bytes = read_file(path, largest_file);
    if (!bytes) return failure(bytes.error());
    if (is_json(path, *bytes))
      sources.books.push_back({path.string(), path.parent_path(), std::move(*bytes)});
    else if (is_drawing(*bytes))
      sources.drawings.push_back({path.string(), path.stem().string(), std::move(*bytes)});
    else
      sources.tables.push_back({path.string(), path.parent_path(), std::move(*bytes)});
  }
  return sources;
}

// The table of refused rows must not take the place of a table that is being read.
std::optional<Problem> overwrites(const std::vector<std::filesystem::path>& paths,
                                  const std::filesystem::path& refused) {
  if (refused.empty()) return std::nullopt;
  std::error_code ignored;
  for (const std::filesystem::path& path : paths)
    if (std::filesystem::equivalent(path, refused, ignored))
      return bad_input(
          fmt::format("\"{}\" is to be read; the refused rows cannot be written over it", refused.string()),
          "another name for the table of refused rows");
  return std::nullopt;
}

std::string describe(const ImportReport& report) {
  std::int64_t added = 0, changed = 0;
  for (const ImportedFile& file : report.files) {
    added += file.added;
    changed += file.changed;
  }
  const std::string what =
      report.files.size() == 1 ? report.files.front().file : fmt::format("{} files", report.files.size());
  return fmt::format("imported {}: {} added, {} changed", what, added, changed);
}

}  // namespace

Result<ImportReport> import_files(Book& book, const std::vector<std::filesystem::path>& paths,
                                  const ImportOptions& options, const Vocabulary& vocabulary) {
  if (auto problem = overwrites(paths, options.refused_file)) return failure(std::move(*problem));
  Result<Sources> sources = read_sources(paths);
  if (!sources) return failure(sources.error());
  ImportReport report;
  bool taken_back = false;
  const Result<void> done = book.change("imported files", [&](Change& change) -> Result<void> {
    for (const JsonSource& source : sources->books)
      if (auto read = import_json(change, source, options, report); !read) return read;
    for (const DrawingSource& source : sources->drawings)
      if (auto read = import_drawing(change, source, options, report); !read) return read;
    if (!sources->tables.empty())
      if (auto read = import_tables(change, std::move(sources->tables), options, vocabulary, report); !read)
        return read;
    change.describe(describe(report));
    const bool refused = std::any_of(report.refused.begin(), report.refused.end(),
                                     [](const auto& row) { return !row.row_kept; });
    taken_back = options.dry_run || (options.all_or_nothing && refused);
    if (taken_back) return failure(bad_input("taken back", ""));
    return {};
  });
  if (!done && !taken_back) return failure(done.error());
  report.kept = !taken_back;
  return report;
}

}  // namespace insetbook
