// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/export_json.h"

#include <fmt/format.h>

#include <fstream>

#include "book/files.h"
#include "book/photos.h"
#include "importers/json/format.h"
#include "importers/json/write.h"
#include "importers/report/report.h"

namespace insetbook {

namespace {

std::string hex_colour(std::int64_t srgb) {
  return fmt::format("#{:06x}", srgb);
}

using Photos = std::vector<std::pair<std::string, std::string>>;  // hash, name

// One record of a section after the other, each on a line of its own.
class BookWriter {
 public:
  BookWriter(const Book& book, std::ofstream& file) : book_(book), file_(file), json_(out_) {}

  void write();
  const Photos& photos() const { return photos_; }

 private:
  template <class Each>
  void section(Section section, std::string_view sql, Each each);
  void flush(bool all);
  void settings();
  void terms();
  void colours();
  void sets();
  void dies(std::int64_t set_id);
  void lines(std::int64_t die_id);
  void measurements(std::int64_t line_id);
  void supplies();
  void samples();
  void elements(std::int64_t sample_id);
  void mentions(std::string_view sql, std::int64_t id);
  void photos(std::int64_t sample_id);
  void tried();
  void line_of(std::string_view name, const Statement& row, int column);

  const Book& book_;
  std::ofstream& file_;
  std::string out_;
  JsonWriter json_;
  Photos photos_;
};

void BookWriter::flush(bool all) {
  constexpr std::size_t enough = 1 << 20;
  if (!all && out_.size() < enough) return;
  file_.write(out_.data(), static_cast<std::streamsize>(out_.size()));
  out_.clear();
}

template <class Each>
void BookWriter::section(Section section, std::string_view sql, Each each) {
  Statement& row = book_.statement(sql);
  json_.new_line();
  json_.name(section_names[static_cast<int>(section)]);
  json_.begin_list();
  while (row.step()) {
    json_.new_line();
    json_.begin_object();
    each(row);
    json_.end_object();
    flush(false);
  }
  row.reset();
  json_.new_line();
  json_.end_list();
}

void BookWriter::write() {
  json_.begin_object();
  json_.new_line();
  json_.member("format", exchange_format);
  json_.new_line();
  json_.member("version", std::int64_t{exchange_version});
  settings();
  terms();
  colours();
  sets();
  supplies();
  samples();
  tried();
  json_.new_line();
  json_.end_object();
  out_ += '\n';
  flush(true);
}

void BookWriter::settings() {
  section(Section::settings, "SELECT name, value FROM setting ORDER BY name", [&](const Statement& row) {
    json_.member("name", row.text(0));
    json_.name("value");
    json_.value(row.text(1));
  });
}

void BookWriter::terms() {
  section(Section::terms,
          "SELECT vocabulary, term, labels, broader, stands FROM own_term ORDER BY vocabulary, term",
          [&](const Statement& row) {
            json_.member("vocabulary", row.text(0));
            json_.member("term", row.text(1));
            json_.member("labels", row.text(2));
            json_.member("broader", row.text(3));
            json_.member("stands", row.text(4));
          });
}

void BookWriter::colours() {
  section(Section::colours, "SELECT uuid, name, srgb, note FROM colour ORDER BY key",
          [&](const Statement& row) {
            json_.member("uuid", row.text(0));
            json_.member("name", row.text(1));
            if (!row.is_null(2)) json_.member("value", hex_colour(row.integer(2)));
            json_.member("note", row.text(3));
          });
}

void BookWriter::sets() {
  section(Section::sets,
          "SELECT id, uuid, name, maker, code, stored_in, status, note FROM die_set ORDER BY key",
          [&](const Statement& row) {
            json_.member("uuid", row.text(1));
            json_.member("name", row.text(2));
            json_.member("maker", row.text(3));
            json_.member("code", row.text(4));
            json_.member("stored_in", row.text(5));
            json_.member("status", row.text(6));
            json_.member("note", row.text(7));
            dies(row.integer(0));
          });
}

void BookWriter::dies(std::int64_t set_id) {
  Statement& row = book_.statement(
      "SELECT id, uuid, label, rank, code, stored_in, status, note FROM die WHERE set_id = ? ORDER BY rank "
      "IS NULL, rank, key");
  row.bind(1, set_id);
  json_.name("dies");
  json_.begin_list();
  while (row.step()) {
    json_.begin_object();
    json_.member("uuid", row.text(1));
    json_.member("label", row.text(2));
    json_.member("rank", row.maybe_integer(3));
    json_.member("code", row.text(4));
    json_.member("stored_in", row.text(5));
    json_.member("status", row.text(6));
    json_.member("note", row.text(7));
    lines(row.integer(0));
    json_.end_object();
  }
  json_.end_list();
  row.reset();
}

void BookWriter::lines(std::int64_t die_id) {
  Statement& row = book_.statement(
      "SELECT id, kind, name, shape, figures, outline, outline_unit, note FROM line WHERE die_id = ? ORDER "
      "BY name");
  row.bind(1, die_id);
  json_.name("lines");
  json_.begin_list();
  while (row.step()) {
    json_.begin_object();
    json_.member("kind", row.text(1));
    json_.member("name", row.text(2));
    json_.member("shape", row.text(3));
    json_.member("figures", row.text(4));
    json_.member("outline", row.text(5));
    json_.member("outline_unit", row.text(6));
    json_.member("note", row.text(7));
    measurements(row.integer(0));
    json_.end_object();
  }
  json_.end_list();
  row.reset();
}

// In the order in which they were made: that is part of what they say.
void BookWriter::measurements(std::int64_t line_id) {
  Statement& row = book_.statement(
      "SELECT standing, width_nm, height_nm, unit, method, mark_nm, give_nm, measured, note FROM measurement "
      "WHERE line_id = ? ORDER BY id");
  row.bind(1, line_id);
  bool any = false;
  while (row.step()) {
    if (!any) json_.name("measurements"), json_.begin_list();
    any = true;
    json_.begin_object();
    json_.member("standing", row.text(0));
    json_.member("width_nm", row.integer(1));
    json_.member("height_nm", row.integer(2));
    json_.member("unit", row.text(3));
    json_.member("method", row.text(4));
    json_.member("mark_nm", row.maybe_integer(5));
    json_.member("give_nm", row.integer(6));
    json_.member("measured", row.text(7));
    json_.member("note", row.text(8));
    json_.end_object();
  }
  if (any) json_.end_list();
  row.reset();
}

void BookWriter::supplies() {
  section(
      Section::supplies,
      "SELECT s.uuid, s.kind, s.set_name, s.name, s.words, c.uuid, s.width_nm, s.height_nm, s.unit, "
      "s.size_text, "
      "s.weight_text, s.weight_mg_m2, s.thickness_nm, s.from_date, s.until_date, s.status, s.have, s.cut_by, "
      "s.instead, "
      "s.stored_in, s.price, s.note FROM supply s LEFT JOIN colour c ON c.id = s.colour_id ORDER BY s.key",
      [&](const Statement& row) {
        json_.member("uuid", row.text(0));
        json_.member("kind", row.text(1));
        json_.member("set", row.text(2));
        json_.member("name", row.text(3));
        json_.member("words", row.text(4));
        json_.member("colour", row.text(5));
        json_.member("width_nm", row.maybe_integer(6));
        json_.member("height_nm", row.maybe_integer(7));
        json_.member("unit", row.text(8));
        json_.member("size", row.text(9));
        json_.member("weight", row.text(10));
        json_.member("weight_mg_m2", row.maybe_integer(11));
        json_.member("thickness_nm", row.maybe_integer(12));
        json_.member("from", row.text(13));
        json_.member("until", row.text(14));
        json_.member("status", row.text(15));
        json_.member("have", row.text(16));
        json_.member("cut_by", row.text(17));
        json_.member("instead", row.text(18));
        json_.member("stored_in", row.text(19));
        json_.member("price", row.text(20));
        json_.member("note", row.text(21));
      });
}

void BookWriter::samples() {
  section(Section::samples,
          "SELECT id, uuid, title, made, base_width_nm, base_height_nm, base_unit, base_text, scores, "
          "finished_text, "
          "closed_width_nm, closed_height_nm, closed_unit, words, envelope, steps, based_on, note, meant "
          "FROM sample ORDER BY key",
          [&](const Statement& row) {
            const std::int64_t id = row.integer(0);
            json_.member("uuid", row.text(1));
            json_.member("title", row.text(2));
            json_.member("made", row.text(3));
            json_.member("base_width_nm", row.maybe_integer(4));
            json_.member("base_height_nm", row.maybe_integer(5));
            json_.member("base_unit", row.text(6));
            json_.member("base", row.text(7));
            json_.member("scores", row.text(8));
            json_.member("finished", row.text(9));
            json_.member("closed_width_nm", row.maybe_integer(10));
            json_.member("closed_height_nm", row.maybe_integer(11));
            json_.member("closed_unit", row.text(12));
            json_.member("words", row.text(13));
            json_.member("envelope", row.text(14));
            json_.member("steps", row.text(15));
            json_.member("based_on", row.text(16));
            json_.member("note", row.text(17));
            json_.member("meant", row.text(18));
            mentions(
                "SELECT m.kind, m.term, c.uuid, s.uuid, m.written FROM mention m LEFT JOIN colour c ON c.id "
                "= m.colour_id "
                "LEFT JOIN supply s ON s.id = m.supply_id WHERE m.sample_id = ? AND m.element_id IS NULL "
                "ORDER BY m.position, m.id",
                id);
            elements(id);
            photos(id);
          });
}

void BookWriter::line_of(std::string_view name, const Statement& row, int column) {
  if (row.is_null(column)) return;
  json_.name(name);
  json_.begin_object();
  json_.member("die", row.text(column));
  json_.member("name", row.text(column + 1));
  json_.end_object();
}

void BookWriter::elements(std::int64_t sample_id) {
  Statement& row = book_.statement(
      "SELECT e.id, e.name, e.role, e.side, e.shape, e.width_nm, e.height_nm, e.placed, e.unit, e.size_text, "
      "t.uuid, d.uuid, "
      "ld.uuid, l.name, id.uuid, il.name, e.goes, e.goes_how, g.name, e.at, e.glue, e.count, e.note, e.meant "
      "FROM "
      "element e "
      "LEFT JOIN die_set t ON t.id = e.set_id LEFT JOIN die d ON d.id = e.die_id "
      "LEFT JOIN line l ON l.id = e.line_id LEFT JOIN die ld ON ld.id = l.die_id "
      "LEFT JOIN line il ON il.id = e.in_line_id LEFT JOIN die id ON id.id = il.die_id "
      "LEFT JOIN element g ON g.id = e.goes_to WHERE e.sample_id = ? ORDER BY e.position, e.key");
  row.bind(1, sample_id);
  json_.name("elements");
  json_.begin_list();
  while (row.step()) {
    json_.begin_object();
    json_.member("name", row.text(1));
    json_.member("role", row.text(2));
    json_.member("side", row.text(3));
    json_.member("shape", row.text(4));
    json_.member("width_nm", row.maybe_integer(5));
    json_.member("height_nm", row.maybe_integer(6));
    if (row.integer(7) != 0) json_.member("placed", std::int64_t{1});
    json_.member("unit", row.text(8));
    json_.member("size", row.text(9));
    json_.member("set", row.text(10));
    json_.member("die", row.text(11));
    line_of("line", row, 12);
    line_of("in_line", row, 14);
    json_.member("goes", row.text(16));
    json_.member("goes_how", row.text(17));
    json_.member("goes_to", row.text(18));
    json_.member("at", row.text(19));
    json_.member("glue", row.text(20));
    if (row.integer(21) != 1) json_.member("count", row.integer(21));
    json_.member("note", row.text(22));
    json_.member("meant", row.text(23));
    mentions(
        "SELECT m.kind, m.term, c.uuid, s.uuid, m.written FROM mention m LEFT JOIN colour c ON c.id = "
        "m.colour_id "
        "LEFT JOIN supply s ON s.id = m.supply_id WHERE m.element_id = ? ORDER BY m.position, m.id",
        row.integer(0));
    json_.end_object();
  }
  json_.end_list();
  row.reset();
}

void BookWriter::mentions(std::string_view sql, std::int64_t id) {
  Statement& row = book_.statement(sql);
  row.bind(1, id);
  bool any = false;
  while (row.step()) {
    if (!any) json_.name("mentions"), json_.begin_list();
    any = true;
    json_.begin_object();
    json_.member("kind", row.text(0));
    json_.member("term", row.text(1));
    json_.member("colour", row.text(2));
    json_.member("supply", row.text(3));
    json_.member("written", row.text(4));
    json_.end_object();
  }
  if (any) json_.end_list();
  row.reset();
}

void BookWriter::photos(std::int64_t sample_id) {
  Statement& row = book_.statement("SELECT file_name, hash FROM photo WHERE sample_id = ? ORDER BY position");
  row.bind(1, sample_id);
  bool any = false;
  while (row.step()) {
    if (!any) json_.name("photos"), json_.begin_list();
    any = true;
    json_.begin_object();
    json_.member("file_name", row.text(0));
    json_.member("hash", row.text(1));
    json_.end_object();
    photos_.emplace_back(row.text(1), row.text(0));
  }
  if (any) json_.end_list();
  row.reset();
}

// Two results of one panel on one day stay in the order in which they were made: the last one counts.
void BookWriter::tried() {
  section(
      Section::tried,
      "SELECT d.uuid, l.name, t.shape, t.width_nm, t.height_nm, t.unit, t.result, t.tried_on, p.uuid, t.note "
      "FROM tried t "
      "JOIN line l ON l.id = t.line_id JOIN die d ON d.id = l.die_id JOIN die_set s ON s.id = d.set_id "
      "LEFT JOIN sample p ON p.id = t.sample_id "
      "ORDER BY s.key, d.key, l.name, t.tried_on, p.key, t.shape, t.width_nm, t.height_nm, t.id",
      [&](const Statement& row) {
        json_.member("die", row.text(0));
        json_.member("line", row.text(1));
        json_.member("shape", row.text(2));
        json_.member("width_nm", row.integer(3));
        json_.member("height_nm", row.integer(4));
        json_.member("unit", row.text(5));
        json_.member("result", row.text(6));
        json_.member("date", row.text(7));
        json_.member("sample", row.text(8));
        json_.member("note", row.text(9));
      });
}

Result<void> check_places(const Book& book, const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files{"book.json", "book.json.part"};
  return book
      .reading([&]() -> Result<void> {
        Statement& photo = book.statement("SELECT DISTINCT hash FROM photo");
        while (photo.step()) files.push_back(std::filesystem::path("photos") / photo.text(0));
        photo.reset();
        return {};
      })
      .and_then([&] { return can_be_files(folder, files); });
}

// The records into `part`, as one state of the book, whoever writes meanwhile.
Result<Photos> write_records(const Book& book, const std::filesystem::path& part) {
  std::ofstream file(part, std::ios::binary | std::ios::trunc);
  BookWriter writer(book, file);
  const Result<void> read = book.reading([&]() -> Result<void> {
    book.database().execute("BEGIN");
    writer.write();
    book.database().execute("COMMIT");
    return {};
  });
  if (book.database().in_transaction()) book.database().execute("ROLLBACK");
  file.close();
  if (!read) return failure(read.error());
  if (!file)
    return failure(bad_input(fmt::format("\"{}\" cannot be written", part.string()),
                             "a folder with room that can be written to"));
  return writer.photos();
}

Result<void> write_photos(const Book& book, const std::filesystem::path& folder, const Photos& photos,
                          ExportReport& report) {
  if (photos.empty()) return {};
  if (auto made = make_folder(folder / "photos"); !made) return made;
  for (const auto& [hash, name] : photos) {
    const auto bytes = read_photo(book, hash);
    if (!bytes) {
      report.notes.push_back(
          fmt::format("the photograph \"{}\" is not in the export: {}", name, bytes.error().what));
      continue;
    }
    const std::filesystem::path path = folder / "photos" / hash;
    if (auto written = write_file(path, *bytes, IfThere::replace); !written) return written;
    report.files.push_back(path.string());
  }
  return {};
}

}  // namespace

Result<ExportReport> export_json(const Book& book, const std::filesystem::path& folder) {
  const std::filesystem::path path = folder / "book.json", part = folder / "book.json.part";
  if (auto free = check_places(book, folder); !free) return failure(free.error());
  if (auto made = make_folder(folder); !made) return failure(made.error());
  ExportReport report;
  const auto written = write_records(book, part).and_then([&](const Photos& photos) {
    return write_photos(book, folder, photos, report);
  });
  if (!written) {
    (void)remove_file(part);
    return failure(written.error());
  }
  // Last, so that a book.json never names photographs that are still to come.
  if (auto placed = put_in_place(part, path, IfThere::replace); !placed) return failure(placed.error());
  report.files.insert(report.files.begin(), path.string());
  return report;
}

}  // namespace insetbook
