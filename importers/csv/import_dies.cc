// SPDX-License-Identifier: GPL-3.0-or-later
//
// The dies table: one row is one line of one die. Several rows of one line are several measurements of it.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "importers/csv/session.h"
#include "importers/csv/units.h"
#include "language/read_record.h"
#include "measure/write.h"
#include "shape/path_data.h"
#include "shape/shape.h"
#include "shape/shape_outline.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// What a table says of the dies of one set, before any of them is put in.
struct Numbering {
  std::set<int> ranks, from_smallest;
};

struct SeenLine {
  std::string row, shape, figures, outline, note;
};

class DiesImport {
 public:
  explicit DiesImport(Session& session) : session_(session) {}
  void run();

 private:
  void count_dies();
  void read_row(TableFile& file, const CsvRow& row, Cells& cells);
  DieCell die_of(const std::string& set, std::string_view cell) const;
  int largest_rank(const std::string& set_key) const;
  std::string shape_of(const TableFile& file, const CsvRow& row, Cells& cells, const LineRow& line,
                       const SizeCell& size);
  void read_measurement(Cells& cells, const SizeCell& size, LineRow& line);
  void check_shape(Cells& cells, const SizeCell& size, const LineRow& line);
  void check_outline(Cells& cells, LineRow& line);
  void measure_outline(Cells& cells, const SizeCell& size, LineRow& line);
  std::vector<std::string> mended_outline(Cells& cells, const LineRow& line);
  void note_missing(const TableFile& file, const CsvRow& row, const LineRow& line, PutResult result);
  void tell_missing();
  void check_seen(Cells& cells, const TableFile& file, const CsvRow& row, const LineRow& line);
  void tell_conflict(const TableFile& file, const CsvRow& row, const LineRow& line, const PutLine& put);
  void check_numbering(const std::string& set_key);

  struct Missing {
    std::string first;
    int times = 0;
  };

  Session& session_;
  std::map<std::string, Missing> missing_;      // by what is said of it
  std::map<std::string, Numbering> numbering_;  // by set
  std::map<std::string, std::string> shapes_;   // by set and die: the first one said
  std::map<std::string, SeenLine> seen_;        // by set, die and line
};

std::string key_of(std::string_view set, std::string_view die) {
  return fmt::format("{}\x1f{}", fold(set), fold(die));
}

void DiesImport::run() {
  count_dies();
  session_.each_row(TableKind::dies,
                    [&](TableFile& file, const CsvRow& row, Cells& cells) { read_row(file, row, cells); });
  for (const auto& [set, numbering] : numbering_) check_numbering(set);
  tell_missing();
}

void DiesImport::count_dies() {
  for (const TableFile& file : session_.files) {
    if (file.header.kind != TableKind::dies) continue;
    CsvReader reader(file.text, file.delimiter);
    reader.go_to(file.data_begin, file.data_number);
    CsvRow row;
    while (reader.next(row)) {
      const Cells cells(file.header, row, session_.rules);
      const DieCell die = read_die_cell(cells.raw(Column::die));
      Numbering& numbering = numbering_[fold(cells.raw(Column::set))];
      if (die.rank) numbering.ranks.insert(*die.rank);
      if (die.rank_from_smallest) numbering.from_smallest.insert(*die.rank_from_smallest);
    }
  }
}

int DiesImport::largest_rank(const std::string& set_key) const {
  Statement& row = session_.book.statement(
      "SELECT max(rank) FROM die WHERE set_id = (SELECT id FROM die_set WHERE key = ?)");
  row.bind(1, std::string_view(set_key));
  const int on_record = row.step() ? static_cast<int>(row.maybe_integer(0).value_or(0)) : 0;
  row.reset();
  const Numbering& said = numbering_.at(set_key);
  const int last = said.ranks.empty() ? 0 : *said.ranks.rbegin();
  const int counted = static_cast<int>(said.ranks.size() + said.from_smallest.size());
  return std::max({on_record, counted, last});
}

// "smallest" is a number once it is known how many dies the set has.
DieCell DiesImport::die_of(const std::string& set, std::string_view cell) const {
  DieCell die = read_die_cell(cell);
  if (!die.rank_from_smallest) return die;
  die.rank = std::max(1, largest_rank(fold(set)) - *die.rank_from_smallest + 1);
  die.label = std::to_string(*die.rank);
  return die;
}

std::string DiesImport::shape_of(const TableFile& file, const CsvRow& row, Cells& cells, const LineRow& line,
                                 const SizeCell& size) {
  std::string said = cells.name(Column::shape);
  const std::string in_size = size.size ? size.size->shape : std::string();
  if (said.empty()) said = in_size;
  if (said.empty() && !cells.raw(Column::outline).empty()) said = "outline";
  const std::string key = key_of(line.set, line.die);
  if (said.empty()) {
    const auto before = shapes_.find(key);
    if (before != shapes_.end()) return before->second;
    std::string on_record = session_.lookups.shape_of_die(fold(line.set), fold(line.die));
    if (on_record.empty())
      cells.complain(Column::shape, "the line has no shape",
                     "circle, rectangle, …, or any other name of a shape");
    return on_record;
  }
  const auto& term = session_.lookups.term(VocabularyName::shape, said);
  const std::string shape = term ? *term : said;
  if (!term && !shape_kind(said)) session_.kept_as_text("unknown shape", said, file, row);
  if (!in_size.empty() && shape_kind(in_size) != shape_kind(shape))
    cells.complain(Column::size,
                   fmt::format("the size says {}, the shape {}", in_quotes(in_size), in_quotes(said)),
                   "the same shape in both");
  shapes_.emplace(key, shape);
  return shape;
}

void DiesImport::read_measurement(Cells& cells, const SizeCell& size, LineRow& line) {
  const std::string method = cells.name(Column::method);
  const std::string known = method.empty() ? std::string("ruler") : measuring_method(method);
  if (known.empty())
    cells.complain(Column::method, fmt::format("{} is no way of measuring that is known", in_quotes(method)),
                   "ruler, callipers, scan, drawing, maker's figure or estimated");
  const auto mark = cells.length(Column::read_to);
  if (mark && mark->length <= Length())
    cells.complain(Column::read_to, "a figure is not read to the nearest nothing", "1/16 in, 0.5 mm …");
  std::string date;
  cells.take_date(Column::measured, date);
  if (!size.size) return;
  Measured measured;
  measured.width = size.size->width;
  measured.height = size.size->height;
  measured.unit = size.size->unit;
  measured.method = known;
  if (mark) measured.mark = mark->length;
  measured.date = date;
  line.measured = std::move(measured);
}

void DiesImport::check_shape(Cells& cells, const SizeCell& size, const LineRow& line) {
  if (!size.size || line.shape.empty()) return;
  const auto shape = make_shape(line.shape, *size.size, line.figures, session_.rules.unit);
  if (shape) return;
  const bool of_size = line.figures.empty() || !make_shape(line.shape, *size.size, "", session_.rules.unit);
  cells.complain(of_size ? size.column : Column::figures, shape.error());
}

void DiesImport::check_outline(Cells& cells, LineRow& line) {
  line.outline = cells.text(Column::outline);
  line.outline_unit = fold(cells.raw(Column::unit));
  constexpr std::string_view units[] = {"", "in", "mm", "cm", "pt", "px"};
  if (line.outline_unit == "inch" || line.outline_unit == "inches") line.outline_unit = "in";
  if (std::find(std::begin(units), std::end(units), line.outline_unit) == std::end(units))
    cells.complain(Column::unit, fmt::format("{} is no unit of an outline", in_quotes(line.outline_unit)),
                   "in, mm, cm, pt or px");
  if (line.outline.empty()) line.outline_unit.clear();
}

// 0: not said, or pixels, which are of no length that is known.
double unit_of_outline(const LineRow& line) {
  return line.outline_unit == "in"   ? 25.4e6
         : line.outline_unit == "cm" ? 1e7
         : line.outline_unit == "pt" ? 25.4e6 / 72
         : line.outline_unit == "mm" ? 1e6
                                     : 0;
}

// Refuses path data that goes round nothing, and gives what had to be mended in it, each with the place in
// the size of the line; of a line without a size in the units it is drawn in.
std::vector<std::string> DiesImport::mended_outline(Cells& cells, const LineRow& line) {
  constexpr std::int64_t close_enough = 1000;  // nm, to find what crosses
  if (line.outline.empty()) return {};
  Size size;
  if (line.measured) size = {.width = line.measured->width, .height = line.measured->height};
  Result<Shape> shape = make_shape(line.shape, size, line.figures, session_.rules.unit);
  if (!shape) return {};  // check_shape says why
  shape->outline = line.outline;
  const double unit = unit_of_outline(line);
  const Result<CurvedOutline> drawn =
      line.measured && has_outline(*shape)
          ? outline_of(*shape)
          : read_path_data(line.outline, unit > 0 ? unit : 1e6,
                           shape->even_odd ? FillRule::even_odd : FillRule::non_zero);
  if (!drawn) {
    cells.complain(Column::outline, drawn.error());
    return {};
  }
  Result<Flattened> flat = flatten(*drawn, close_enough);
  if (flat) return std::move(flat->mended);
  cells.complain(Column::outline, flat.error());
  return {};
}

// An outline in a unit of length is its own drawing: where the row says no size, that is what was drawn.
void DiesImport::measure_outline(Cells& cells, const SizeCell& size, LineRow& line) {
  const std::string method = cells.name(Column::method);
  if (line.outline.empty() || size.size || !(method.empty() || measuring_method(method) == "drawing")) return;
  const double unit_nm = unit_of_outline(line);
  if (unit_nm == 0) return;
  const Result<CurvedOutline> drawn = read_path_data(line.outline, unit_nm, FillRule::non_zero);
  if (!drawn) return;  // mended_outline refuses it
  const Box box = box_of(*drawn);
  if (box.width() <= 0 || box.height() <= 0) return;
  Measured measured;
  measured.width = Length::nm(box.width());
  measured.height = Length::nm(box.height());
  measured.unit = line.outline_unit == "in" ? Unit::inch : Unit::mm;
  measured.method = "drawing";
  cells.take_date(Column::measured, measured.date);
  line.measured = std::move(measured);
}

// A shape that is not computed until a figure is known: not a fault of the row, and told once for all of
// them.
void DiesImport::note_missing(const TableFile& file, const CsvRow& row, const LineRow& line,
                              PutResult result) {
  if (!line.measured || (result != PutResult::added && line.figures.empty())) return;
  const Size size{
      .width = line.measured->width, .height = line.measured->height, .unit = line.measured->unit};
  Result<Shape> shape = make_shape(line.shape, size, line.figures, session_.rules.unit);
  if (!shape) return;
  shape->outline = line.outline;
  if (missing_figure(*shape).empty()) return;
  Missing& missing =
      missing_[fmt::format("{} of a {} is missing, and what fits is not computed without it; its "
                           "figures are written {}",
                           missing_figure(*shape), line.shape, figures_known(shape->kind))];
  if (missing.times++ == 0) missing.first = place_of(file, row.number);
}

void DiesImport::tell_missing() {
  for (const auto& [what, missing] : missing_)
    session_.note(missing.times == 1
                      ? fmt::format("{}: {}", missing.first, what)
                      : fmt::format("{} lines, the first in {}: {}", missing.times, missing.first, what));
}

// A later row of the same line may bring another measurement, and nothing that contradicts the first.
void DiesImport::check_seen(Cells& cells, const TableFile& file, const CsvRow& row, const LineRow& line) {
  const std::string key = fmt::format("{}\x1f{}", key_of(line.set, line.die), line.line);
  const auto [it, is_new] = seen_.emplace(
      key, SeenLine{place_of(file, row.number), line.shape, line.figures, line.outline, line.note});
  if (is_new) return;
  const auto check = [&](Column column, std::string& first, const std::string& now) {
    if (first.empty()) first = now;
    if (!now.empty() && now != first)
      cells.complain(
          column, fmt::format("{} contradicts {}, which has the same line", in_quotes(now), it->second.row),
          fmt::format("{} in both, or another line", in_quotes(first)));
  };
  check(Column::shape, it->second.shape, line.shape);
  check(Column::figures, it->second.figures, line.figures);
  check(Column::outline, it->second.outline, line.outline);
  check(Column::note, it->second.note, line.note);
}

void DiesImport::tell_conflict(const TableFile& file, const CsvRow& row, const LineRow& line,
                               const PutLine& put) {
  if (!put.measurement || put.measurement->result != MeasureResult::conflict) return;
  const Measured& known = put.measurement->known.front();
  const auto figure = [](const Measured& one) {
    return fmt::format("{} ({}{}{})", write_size(one.width, one.height, one.unit), one.method,
                       one.date.empty() ? "" : ", ", one.date);
  };
  std::string text = fmt::format(
      "{}: {} {}, {} is {} here, and {} is recorded: both are kept, and the recorded one counts until you "
      "settle it",
      place_of(file, row.number), line.set, line.die, line.line, figure(*line.measured), figure(known));
  if (!put.measurement->used_by.empty())
    text += fmt::format("; used by {}", join_list(put.measurement->used_by));
  session_.note(std::move(text));
}

void DiesImport::read_row(TableFile& file, const CsvRow& row, Cells& cells) {
  LineRow line;
  line.set = cells.name(Column::set);
  if (fold(line.set).empty()) cells.complain(Column::set, "the row names no set", "the name of the die set");
  const std::string die_cell = cells.name(Column::die);
  if (fold(die_cell).empty())
    cells.complain(Column::die, "the row names no die", "its number, 1 = the largest, or what it is called");
  const DieCell die = die_of(line.set, die_cell);
  line.die = die.label;
  line.rank = die.rank;
  const auto line_cell = read_line_cell(cells.raw(Column::line));
  if (line_cell) {
    line.line = line_cell->name;
    line.line_kind = line_cell->kind;
  } else {
    cells.complain(Column::line, line_cell.error());
  }
  const SizeCell size = cells.size_or_sides(Cells::IfNoSize::refuse);
  line.shape = shape_of(file, row, cells, line, size);
  line.figures = with_units(cells.name(Column::figures), session_.rules.unit, Numbers::are_lengths);
  read_measurement(cells, size, line);
  check_outline(cells, line);
  measure_outline(cells, size, line);
  check_shape(cells, size, line);
  const std::vector<std::string> mended = mended_outline(cells, line);
  line.maker = cells.name(Column::maker);
  line.code = cells.name(Column::code);
  line.stored_in = cells.name(Column::stored_in);
  line.status = cells.name(Column::status);
  line.note = cells.note();
  if (cells.complaints().empty()) check_seen(cells, file, row, line);
  if (cells.complaints().empty()) {
    const auto put = put_line(session_.change, line);
    if (put) {
      session_.tell_left_out(file, row, cells);
      session_.count(file, put->result);
      tell_conflict(file, row, line, *put);
      note_missing(file, row, line, put->result);
      for (const std::string& one : mended)
        session_.note(fmt::format("{}: {}", place_of(file, row.number), one));
      return;
    }
    cells.complain(Column::size, put.error());
  }
  session_.lookups.refuse_line(fold(line.set), fold(line.die), line.line, place_of(file, row.number));
  session_.refuse(file, row, cells);
}

// A set whose dies are numbered has 1 = the largest. Measured sizes that say otherwise are told, with their
// order.
void DiesImport::check_numbering(const std::string& set_key) {
  struct Die {
    std::string label, line;
    int number;
    Length width, height;
  };
  const auto set_id = set_named(session_.book, set_key);
  if (!set_id) return;
  Statement& row = session_.book.statement(
      "SELECT d.id, d.label, d.rank, l.name, m.width_nm, m.height_nm, s.name FROM die d JOIN die_set s ON "
      "s.id = d.set_id "
      "JOIN line l ON l.die_id = d.id JOIN measurement m ON m.line_id = l.id AND m.standing = 'current' "
      "WHERE d.set_id = ? AND d.rank IS NOT NULL AND l.kind <> 'window' ORDER BY d.rank, l.kind = 'cut' "
      "DESC, m.width_nm DESC");
  row.bind(1, *set_id);
  std::vector<Die> dies;
  std::set<std::int64_t> seen;
  std::string set_name;
  while (row.step()) {
    if (!seen.insert(row.integer(0)).second) continue;
    dies.push_back({std::string(row.text(1)), std::string(row.text(3)), static_cast<int>(row.integer(2)),
                    Length::nm(row.integer(4)), Length::nm(row.integer(5))});
    set_name = row.text(6);
  }
  row.reset();
  const auto larger = [](const Die& a, const Die& b) {
    // Nested dies grow on both sides; areas tell it for all of them. A metre squared still fits in a double's
    // order.
    return static_cast<double>(a.width.nm()) * static_cast<double>(a.height.nm()) >
           static_cast<double>(b.width.nm()) * static_cast<double>(b.height.nm());
  };
  const bool contradicts = std::adjacent_find(dies.begin(), dies.end(), [&](const Die& a, const Die& b) {
                             return a.line == b.line && a.number < b.number && larger(b, a);
                           }) != dies.end();
  if (!contradicts) return;
  std::stable_sort(dies.begin(), dies.end(), larger);
  std::string order;
  for (const Die& die : dies)
    order += fmt::format("{}{} ({})", order.empty() ? "" : ", ", die.label,
                         write_size(die.width, die.height, Unit::inch));
  session_.note(fmt::format(
      "{}: the numbers contradict the measured sizes, 1 being the largest; by size, from the largest: {}",
      set_name, order));
}

}  // namespace

void import_dies(Session& session) {
  DiesImport(session).run();
}

}  // namespace insetbook
