// SPDX-License-Identifier: GPL-3.0-or-later
//
// One import of tables while it goes on: the files, what was counted and refused, and what the rows' names
// mean. The functions at the end each read one kind of table; they are called in the order of TableKind.
#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "book/records.h"
#include "importers/csv/cells.h"
#include "importers/csv/lookups.h"
#include "importers/csv/reader.h"
#include "importers/csv/tables.h"
#include "importers/report/report.h"

namespace insetbook {

struct TableFile {
  std::string name;              // as the person named it
  std::filesystem::path folder;  // photographs are looked for from here
  std::string text;
  char delimiter = ',';
  Header header;
  std::size_t data_begin = 0;  // where the row under the header begins
  std::int64_t data_number = 2;
  std::int64_t rows = 0;  // about how many there are, for progress
  ImportedFile counts;
  struct RefusedPlace {
    std::size_t begin;
    std::int64_t number;
    std::string why;
  };
  std::vector<RefusedPlace> refused;  // in the order of the file
};

// Text hashed once, to tell whether two rows of one record say the same.
std::size_t hash_of_row(const Cells& cells, const Header& header);

class Session {
 public:
  Session(Change& change, const Vocabulary& vocabulary, const ImportOptions& options, ImportReport& report);

  Change& change;
  const Book& book;
  const ImportOptions& options;
  ImportReport& report;
  CellRules rules;
  Lookups lookups;
  std::vector<TableFile> files;

  // A sample that rows of this import may refer to.
  struct SampleState {
    std::optional<std::int64_t> id;
    bool is_new = false;  // made by this import: it has no pieces yet
    std::string refused;  // "row 3 of samples.csv", or empty
  };
  std::unordered_map<std::string, SampleState> samples;  // by folded title
  // Empty optional: no such sample. Looks into the book where the import itself has none of the name.
  std::optional<SampleState> sample_titled_so(const std::string& title);

  // Calls `work` for each row of each file of the kind that could be read as CSV and is not blank; the others
  // are refused.
  void each_row(TableKind kind, const std::function<void(TableFile&, const CsvRow&, Cells&)>& work);
  void refuse(TableFile& file, const CsvRow& row, const std::vector<Complaint>& complaints);
  // With what would have been left out of it too, so that all of it can be mended at once.
  void refuse(TableFile& file, const CsvRow& row, const Cells& cells);
  void count(TableFile& file, PutResult result);
  // Tells which cells the row was taken without.
  void tell_left_out(const TableFile& file, const CsvRow& row, const Cells& cells);
  void note(std::string text) { report.notes.push_back(std::move(text)); }
  void progress();

  // A word that is kept as text: `what` is "unknown colour", "size" … Reported once for each word, with where
  // it stood first.
  void kept_as_text(std::string_view what, std::string_view written, const TableFile& file,
                    const CsvRow& row);
  void report_kept_as_text();

 private:
  struct Unknown {
    std::string what, written, first;
    std::int64_t times = 0;
  };
  std::unordered_map<std::string, std::size_t> unknown_places_;
  std::vector<Unknown> unknown_;
  std::int64_t done_ = 0, in_all_ = 0;
};

std::string place_of(const TableFile& file, std::int64_t row);  // "row 3 of dies.csv"

// Mentions of the words of a list cell that are terms of one of the vocabularies, tried in their order; a
// word that is none becomes a mention of kind `otherwise` without a term, and is reported as an unknown
// `what`.
struct TermKind {
  VocabularyName vocabulary;
  std::string_view mention;
};
void mention_terms(Session& session, const TableFile& file, const CsvRow& row,
                   const std::vector<std::string>& words, std::span<const TermKind> kinds,
                   std::string_view otherwise, std::string_view what, std::vector<Mention>& mentions);
void mention_supplies(Session& session, const TableFile& file, const CsvRow& row,
                      const std::vector<std::string>& names, std::vector<Mention>& mentions);
void mention_colours(Session& session, const TableFile& file, const CsvRow& row,
                     const std::vector<std::string>& names, std::string_view kind,
                     std::vector<Mention>& mentions);
// Mentions on record whose kinds come from columns that this table does not have stay as they are.
void keep_mentions(const std::vector<Mention>& known, const std::function<bool(std::string_view kind)>& kept,
                   std::vector<Mention>& mentions);

// A size as the book keeps it. One figure is a circle's or a square's (book/records.h); it is refused where
// the shape has two. Of anything else it is the width of a piece, and text elsewhere: a base has two.
enum class OneFigure { is_a_width, kept_as_text };
SizeOnRecord record_size(Session& session, const TableFile& file, const CsvRow& row, Cells& cells,
                         const SizeCell& cell, std::string_view shape, OneFigure one_figure);

void import_dies(Session& session);
void import_supplies(Session& session);
void import_samples(Session& session);
void import_elements(Session& session);
void import_tried(Session& session);
// After them: pieces that were in the book before the die they lie in.
void link_openings(Session& session);

}  // namespace insetbook
