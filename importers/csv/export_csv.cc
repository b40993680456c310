// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/export_csv.h"

#include <fmt/format.h>

#include <array>
#include <functional>

#include "book/files.h"
#include "book/photos.h"
#include "book/records.h"
#include "book/settings.h"
#include "book/units.h"
#include "importers/csv/cells.h"
#include "importers/csv/not_in_tables.h"
#include "importers/csv/tables.h"
#include "importers/csv/units.h"
#include "importers/csv/writer.h"
#include "importers/report/report.h"
#include "measure/write.h"
#include "shape/shape.h"

namespace insetbook {

namespace {

// One row being written: cells by column, in the order of the table of columns.
class RowOut {
 public:
  explicit RowOut(TableKind kind) {
    for (const ColumnRow& row : table_columns(kind))
      if (row.exported) columns_.push_back(row.column);
    cells_.resize(columns_.size());
  }
  std::string& operator[](Column column) {
    for (std::size_t i = 0; i < columns_.size(); ++i)
      if (columns_[i] == column) return cells_[i];
    return nowhere_;
  }
  void write(std::string& out) {
    append_csv_row(out, cells_);
    for (std::string& cell : cells_) cell.clear();
  }

 private:
  std::vector<Column> columns_;
  std::vector<std::string> cells_;
  std::string nowhere_;
};

// A size of three columns (width, height, unit): one figure where there is no height, and with its
// orientation, where it has one, so that it is read back the same.
std::string size_text(const Statement& row, int first, bool placed = false) {
  Size size;
  size.width = Length::nm(row.integer(first));
  size.one_figure = row.is_null(first + 1);
  size.height = size.one_figure ? size.width : Length::nm(row.integer(first + 1));
  size.unit = unit_of(row.text(first + 2));
  if (placed && !size.one_figure) size.orientation = Orientation::said;
  if (placed || size.one_figure) return write_said(size);
  return write_size(size.width, size.height, size.unit);
}

// A polygon of one figure is kept with two alike (make_shape.cc).
std::string size_of_line(const Statement& row, int first, std::string_view shape) {
  if (shape_kind(shape) != ShapeKind::polygon || row.integer(first) != row.integer(first + 1))
    return size_text(row, first);
  return write(Length::nm(row.integer(first)), unit_of(row.text(first + 2)));
}

std::string header_row(TableKind kind) {
  std::vector<std::string> names;
  for (const ColumnRow& row : table_columns(kind))
    if (row.exported) names.emplace_back(row.name);
  std::string out;
  append_csv_row(out, names);
  return out;
}

class TablesWriter {
 public:
  TablesWriter(const Book& book, std::filesystem::path folder)
      : book_(book), unit_(settings(book).unit), folder_(std::move(folder)) {}

  Result<TablesExported> write();

 private:
  Result<void> check_places() const;
  Result<void> write_parts();
  void append_rows(TableKind kind, std::string& out) {
    switch (kind) {
      case TableKind::dies:
        return dies(out);
      case TableKind::supplies:
        return supplies(out);
      case TableKind::samples:
        return samples(out);
      case TableKind::elements:
        return elements(out);
      case TableKind::tried:
        return tried(out);
    }
  }
  void dies(std::string& out);
  void supplies(std::string& out);
  void samples(std::string& out);
  void elements(std::string& out);
  void tried(std::string& out);
  struct MentionCells {
    std::string fold, occasion, colour, ink, technique, supply;
  };
  MentionCells mentions(std::int64_t sample_id, std::optional<std::int64_t> element_id);
  std::string photos(std::int64_t sample_id);

  // A text that was read as a size says its unit; any other stays as it is.
  std::string sized_text(std::string_view text, bool is_size) const {
    return is_size ? size_with_unit(text, unit_word(unit_)) : std::string(text);
  }

  const Book& book_;
  Unit unit_;  // of figures that say none: the book's own
  std::filesystem::path folder_;
  TablesExported exported_;
  std::optional<Problem> problem_;
};

constexpr TableKind every_table[] = {TableKind::dies, TableKind::supplies, TableKind::samples,
                                     TableKind::elements, TableKind::tried};

std::string table_file(TableKind kind) {
  return fmt::format("{}.csv", table_word(kind));
}

std::string part_file(TableKind kind) {
  return table_file(kind) + ".part";
}

// Under its hash, so that two of one name do not meet, with the name that the person gave. A book in JSON may
// lie in the same folder: it has its photographs beside these.
std::filesystem::path photo_place(std::string_view hash, std::string_view file_name) {
  std::filesystem::path name = std::filesystem::path(file_name).filename();
  if (name.empty() || name == "." || name == "..") name = "photograph";
  return std::filesystem::path("photos") / "by-name" / hash / name;
}

Result<void> TablesWriter::check_places() const {
  std::vector<std::filesystem::path> files;
  for (const TableKind kind : every_table) {
    files.emplace_back(table_file(kind));
    files.emplace_back(part_file(kind));
  }
  Statement& photo = book_.statement("SELECT DISTINCT hash, file_name FROM photo");
  while (photo.step()) files.push_back(photo_place(photo.text(0), photo.text(1)));
  photo.reset();
  return can_be_files(folder_, files);
}

// The tables under names of their own: they take their places when all of them are written.
Result<void> TablesWriter::write_parts() {
  for (const TableKind kind : every_table) {
    std::string out = header_row(kind);
    append_rows(kind, out);
    if (problem_) return failure(std::move(*problem_));
    if (auto written = write_file(folder_ / part_file(kind), out, IfThere::replace); !written) return written;
  }
  return {};
}

Result<TablesExported> TablesWriter::write() {
  if (auto free = check_places(); !free) return failure(free.error());
  if (auto made = make_folder(folder_); !made) return failure(made.error());
  if (auto written = write_parts(); !written) {
    for (const TableKind kind : every_table) (void)remove_file(folder_ / part_file(kind));
    return failure(written.error());
  }
  for (const TableKind kind : every_table) {
    const std::filesystem::path path = folder_ / table_file(kind);
    if (auto placed = put_in_place(folder_ / part_file(kind), path, IfThere::replace); !placed)
      return failure(placed.error());
    exported_.files.push_back(path.string());
  }
  if (const std::string left_out = not_in_tables(book_); !left_out.empty())
    exported_.notes.push_back(left_out);
  return std::move(exported_);
}

// What is said of a set stands in its first row, what is said of a die in the die's first row: import reads
// it so. A line that was measured several times has a row for each, the figure that stands first. Figures
// that another one took the place of are left out: they would come back as figures to settle once more.
void TablesWriter::dies(std::string& out) {
  RowOut row(TableKind::dies);
  Statement& line = book_.statement(
      "SELECT s.id, s.name, s.maker, s.code, s.stored_in, s.status, d.id, d.label, d.code, d.stored_in, "
      "d.status, l.name, l.shape, "
      "l.figures, l.outline, l.outline_unit, l.note, m.width_nm, m.height_nm, m.unit, m.method, m.mark_nm, "
      "m.measured "
      "FROM die_set s JOIN die d ON d.set_id = s.id JOIN line l ON l.die_id = d.id "
      "LEFT JOIN measurement m ON m.line_id = l.id AND m.standing <> 'earlier' "
      // A die with a place or code of its own does not lead its set: the first row's are the set's.
      "ORDER BY s.key, d.code || d.stored_in || d.status <> '', d.rank IS NULL, d.rank, d.key, l.id, "
      "m.standing <> 'current', m.id");
  std::int64_t set_before = 0, die_before = 0;
  while (line.step()) {
    const bool first_of_set = line.integer(0) != set_before, first_of_die = line.integer(6) != die_before;
    set_before = line.integer(0);
    die_before = line.integer(6);
    row[Column::set] = line.text(1);
    row[Column::die] = line.text(7);
    row[Column::line] = line.text(11);
    row[Column::shape] = line.text(12);
    row[Column::figures] = with_units(line.text(13), unit_, Numbers::are_lengths);
    row[Column::outline] = line.text(14);
    row[Column::unit] = line.text(15);
    row[Column::note] = line.text(16);
    if (first_of_set) row[Column::maker] = line.text(2);
    const auto own_or_set = [&](Column column, int of_set, int of_die) {
      if (first_of_die && !line.text(of_die).empty())
        row[column] = line.text(of_die);
      else if (first_of_set)
        row[column] = line.text(of_set);
    };
    own_or_set(Column::code, 3, 8);
    own_or_set(Column::stored_in, 4, 9);
    own_or_set(Column::status, 5, 10);
    if (!line.is_null(17)) {
      row[Column::size] = size_of_line(line, 17, row[Column::shape]);
      row[Column::method] = line.text(20);
      if (!line.is_null(21))
        row[Column::read_to] = insetbook::write(Length::nm(line.integer(21)), unit_of(line.text(19)));
      row[Column::measured] = line.text(22);
    }
    row.write(out);
  }
  line.reset();
}

void TablesWriter::supplies(std::string& out) {
  RowOut row(TableKind::supplies);
  Statement& one = book_.statement(
      "SELECT s.kind, s.set_name, s.name, s.words, c.name, c.srgb, s.width_nm, s.height_nm, s.unit, "
      "s.size_text, s.weight_text, "
      "s.weight_mg_m2, s.thickness_nm, s.from_date, s.until_date, s.status, s.have, s.cut_by, s.instead, "
      "s.stored_in, s.price, "
      "s.note FROM supply s LEFT JOIN colour c ON c.id = s.colour_id ORDER BY s.key");
  while (one.step()) {
    row[Column::kind] = one.text(0);
    row[Column::set] = one.text(1);
    row[Column::name] = one.text(2);
    row[Column::words] = one.text(3);
    row[Column::colour] = one.text(4);
    if (!one.is_null(5)) row[Column::colour_value] = fmt::format("#{:06x}", one.integer(5));
    row[Column::size] = one.text(9).empty() && !one.is_null(6) ? size_text(one, 6) : std::string(one.text(9));
    row[Column::weight] = one.text(10);
    if (one.text(10).empty() && !one.is_null(11))
      row[Column::weight] = fmt::format("{} g/m²", static_cast<double>(one.integer(11)) / 1000);
    if (!one.is_null(12)) row[Column::thickness] = insetbook::write(Length::nm(one.integer(12)), Unit::mm);
    row[Column::from] = one.text(13);
    row[Column::until] = one.text(14);
    row[Column::status] = one.text(15);
    row[Column::have] = one.text(16);
    row[Column::cut_by] = one.text(17);
    row[Column::instead] = one.text(18);
    row[Column::stored_in] = one.text(19);
    row[Column::price] = one.text(20);
    row[Column::note] = one.text(21);
    row.write(out);
  }
  one.reset();
}

// A feature may have been said as a fold or as a technique, a material as a technique or as a supply. What
// matters is the order in which import puts them together again: folds, techniques, supplies.
TablesWriter::MentionCells TablesWriter::mentions(std::int64_t sample_id,
                                                  std::optional<std::int64_t> element_id) {
  Statement& one =
      element_id
          ? book_.statement("SELECT kind, written FROM mention WHERE element_id = ? ORDER BY position, id")
          : book_.statement(
                "SELECT kind, written FROM mention WHERE sample_id = ? AND element_id IS NULL "
                "ORDER BY position, id");
  one.bind(1, element_id ? *element_id : sample_id);
  std::vector<std::pair<std::string, std::string>> all;
  std::size_t last_technique = 0;
  while (one.step()) {
    all.emplace_back(one.text(0), one.text(1));
    if (all.back().first == "technique" || all.back().first == "feature") last_technique = all.size();
  }
  one.reset();
  MentionCells cells;
  bool only_folds = !element_id;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto& [kind, written] = all[i];
    only_folds = only_folds && (kind == "fold" || kind == "feature");
    std::string& cell = kind == "fold" || (kind == "feature" && only_folds)               ? cells.fold
                        : kind == "occasion"                                              ? cells.occasion
                        : kind == "paper"                                                 ? cells.colour
                        : kind == "ink"                                                   ? cells.ink
                        : kind == "supply" || (kind == "material" && i >= last_technique) ? cells.supply
                                                                                          : cells.technique;
    cell += (cell.empty() ? "" : "; ") + written;
  }
  return cells;
}

// The bytes go beside the tables.
std::string TablesWriter::photos(std::int64_t sample_id) {
  Statement& one = book_.statement("SELECT file_name, hash FROM photo WHERE sample_id = ? ORDER BY position");
  one.bind(1, sample_id);
  std::vector<PhotoOnRecord> photos;
  while (one.step()) photos.push_back({std::string(one.text(0)), std::string(one.text(1))});
  one.reset();
  std::string cell;
  for (const PhotoOnRecord& photo : photos) {
    const std::filesystem::path place = photo_place(photo.hash, photo.file_name);
    const auto bytes = read_photo(book_, photo.hash);
    if (!bytes) {
      exported_.notes.push_back(
          fmt::format("the photograph \"{}\" is not in the export: {}", photo.file_name, bytes.error().what));
      continue;
    }
    auto done = make_folder(folder_ / place.parent_path());
    if (done) done = write_file(folder_ / place, *bytes, IfThere::replace);
    if (!done && !problem_) problem_ = done.error();
    exported_.files.push_back((folder_ / place).string());
    cell += fmt::format("{}{}", cell.empty() ? "" : "; ", place.generic_string());
  }
  return cell;
}

void TablesWriter::samples(std::string& out) {
  RowOut row(TableKind::samples);
  Statement& one = book_.statement(
      "SELECT id, title, made, base_width_nm, base_height_nm, base_unit, base_text, scores, finished_text, "
      "words, envelope, steps, "
      "based_on, note, closed_width_nm FROM sample ORDER BY key");
  while (one.step()) {
    const std::int64_t id = one.integer(0);
    row[Column::sample] = one.text(1);
    row[Column::made] = one.text(2);
    const MentionCells said = mentions(id, std::nullopt);
    row[Column::occasion] = said.occasion;
    row[Column::fold] = said.fold;
    row[Column::base] = one.text(6).empty() && !one.is_null(3) ? size_text(one, 3) : std::string(one.text(6));
    row[Column::scores] = with_units(one.text(7), unit_, Numbers::are_lengths);
    row[Column::finished] = sized_text(one.text(8), !one.is_null(14));
    row[Column::technique] = said.technique;
    row[Column::supply] = said.supply;
    row[Column::words] = one.text(9);
    row[Column::envelope] = one.text(10);
    row[Column::steps] = one.text(11);
    row[Column::photo] = photos(id);
    row[Column::based_on] = one.text(12);
    row[Column::note] = one.text(13);
    row.write(out);
  }
  one.reset();
}

void TablesWriter::elements(std::string& out) {
  RowOut row(TableKind::elements);
  Statement& one = book_.statement(
      "SELECT p.title, e.name, e.role, e.side, e.shape, e.width_nm, e.height_nm, e.unit, e.placed, "
      "e.size_text, s.name, d.label, "
      "l.name, e.goes, e.at, e.glue, e.count, e.note, e.id, e.sample_id FROM sample p JOIN element e ON "
      "e.sample_id = p.id "
      "LEFT JOIN die_set s ON s.id = e.set_id LEFT JOIN die d ON d.id = e.die_id LEFT JOIN line l ON l.id = "
      "e.line_id "
      "ORDER BY p.key, e.position, e.key");
  while (one.step()) {
    const std::int64_t id = one.integer(18), sample_id = one.integer(19);
    row[Column::sample] = one.text(0);
    row[Column::element] = one.text(1);
    row[Column::role] = one.text(2);
    row[Column::side] = one.text(3);
    row[Column::shape] = one.text(4);
    row[Column::size] = sized_text(one.text(9), !one.is_null(5));
    if (one.text(9).empty() && !one.is_null(5)) row[Column::size] = size_text(one, 5, one.integer(8) != 0);
    const MentionCells said = mentions(sample_id, id);
    row[Column::colour] = said.colour;
    row[Column::ink] = said.ink;
    row[Column::supply] = said.supply;
    row[Column::die_set] = one.text(10);
    row[Column::die] = one.text(11);
    row[Column::line] = one.text(12);
    row[Column::goes] = one.text(13);
    row[Column::at] = with_units(one.text(14), unit_, Numbers::are_counts);
    row[Column::glue] = with_units(one.text(15), unit_, Numbers::are_lengths);
    row[Column::technique] = said.technique;
    if (one.integer(16) != 1) row[Column::count] = std::to_string(one.integer(16));
    row[Column::note] = one.text(17);
    row.write(out);
  }
  one.reset();
}

void TablesWriter::tried(std::string& out) {
  RowOut row(TableKind::tried);
  Statement& one = book_.statement(
      "SELECT s.name, d.label, l.name, t.shape, t.width_nm, t.height_nm, t.unit, t.result, t.tried_on, "
      "p.title, t.note FROM tried t "
      "JOIN line l ON l.id = t.line_id JOIN die d ON d.id = l.die_id JOIN die_set s ON s.id = d.set_id "
      "LEFT JOIN sample p ON p.id = t.sample_id ORDER BY s.key, d.key, l.name, t.tried_on, t.id");
  while (one.step()) {
    row[Column::set] = one.text(0);
    row[Column::die] = one.text(1);
    row[Column::line] = one.text(2);
    row[Column::shape] = one.text(3);
    row[Column::size] = size_text(one, 4);
    row[Column::result] = one.text(7);
    row[Column::date] = one.text(8);
    row[Column::sample] = one.text(9);
    row[Column::note] = one.text(10);
    row.write(out);
  }
  one.reset();
}

}  // namespace

Result<TablesExported> export_csv(const Book& book, const std::filesystem::path& folder) {
  Result<TablesExported> exported;
  const Result<void> read = book.reading([&]() -> Result<void> {
    book.database().execute("BEGIN");  // one state of the book, whoever writes meanwhile
    exported = TablesWriter(book, folder).write();
    book.database().execute("COMMIT");
    return {};
  });
  if (book.database().in_transaction()) book.database().execute("ROLLBACK");
  if (!read) return failure(read.error());
  return exported;
}

}  // namespace insetbook
