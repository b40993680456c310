// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/tables.h"

#include <fmt/format.h>

#include <algorithm>

#include "importers/report/report.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

using enum TableKind;

constexpr ColumnRow columns[] = {
    // table, column, name, other headings, value, exported
    {dies, Column::set, "set", "die set; set name; name of set; dies", Value::name},
    {dies, Column::die, "die", "rank; order; number; no; die number; die no; die name; label; which",
     Value::name},
    {dies, Column::line, "line", "edge; which edge; which line; line kind; kind of line; kind", Value::name},
    {dies, Column::shape, "shape", "form; outline shape", Value::name},
    {dies, Column::size, "size", "measurement; dimensions; measures; opening; inside; size w x h",
     Value::size},
    {dies, Column::width, "width", "w; wide", Value::length, false},
    {dies, Column::height, "height", "h; high; tall; length", Value::length, false},
    {dies, Column::figures, "figures", "figure; details; more figures", Value::name},
    {dies, Column::outline, "outline", "path; path data; svg path; svg; d", Value::text},
    {dies, Column::unit, "unit", "units; outline unit; unit of outline", Value::name},
    {dies, Column::method, "method", "measured with; measured by; how; how measured; tool", Value::name},
    {dies, Column::read_to, "read to", "step; mark; read to the; precision; nearest", Value::length},
    {dies, Column::measured, "measured", "date measured; measured on; when measured; date", Value::date},
    {dies, Column::maker, "maker", "made by; manufacturer; brand; company", Value::name},
    {dies, Column::code, "code", "item; item number; item no; article; maker's code; stock number; sku",
     Value::name},
    {dies, Column::stored_in, "stored in",
     "kept in; kept; stored; storage; place; where; where kept; location", Value::name},
    {dies, Column::status, "status", "state; current", Value::name},
    {dies, Column::note, "note", "notes; remark; remarks; comment; comments", Value::text},

    {supplies, Column::kind, "kind", "type; kind of supply; category; what", Value::name},
    {supplies, Column::set, "set", "stamp set; set name; collection; pack", Value::name},
    {supplies, Column::name, "name", "supply; item; title; description; image", Value::name},
    {supplies, Column::words, "words", "words on it; wording; text; greeting; sentiment", Value::text},
    {supplies, Column::colour, "colour", "color; colour name; color name", Value::name},
    {supplies, Column::colour_value, "colour value",
     "color value; value; srgb; rgb; hex; hex value; colour code; color code", Value::figure},
    {supplies, Column::size, "size", "dimensions; measures; sheet size", Value::size},
    {supplies, Column::width, "width", "w; wide", Value::length, false},
    {supplies, Column::height, "height", "h; high; tall; length", Value::length, false},
    {supplies, Column::weight, "weight", "paper weight; basis weight; g/m2; gsm; grammage", Value::figure},
    {supplies, Column::thickness, "thickness", "thick; caliper; calliper", Value::length},
    {supplies, Column::from, "from", "available from; since; had from", Value::date},
    {supplies, Column::until, "until", "available until; till; to; had until", Value::date},
    {supplies, Column::status, "status", "state; current", Value::name},
    {supplies, Column::have, "have", "owned; got; in stock; stock; quantity; qty; how many; on hand",
     Value::name},
    {supplies, Column::cut_by, "cut by", "die; cut with; cut with die; matching die; dies", Value::name},
    {supplies, Column::instead, "instead",
     "in place; substitute; stands in; what stands in; replacement; stand in", Value::text},
    {supplies, Column::stored_in, "stored in",
     "kept in; kept; stored; storage; place; where; where kept; location", Value::name},
    {supplies, Column::price, "price", "cost; paid; price each; cost each", Value::name},
    {supplies, Column::note, "note", "notes; remark; remarks; comment; comments", Value::text},

    {samples, Column::sample, "sample", "card; title; sample name; card name; card title; name; sample title",
     Value::name},
    {samples, Column::made, "made", "date made; made on; date; when; when made", Value::date},
    {samples, Column::occasion, "occasion", "occasions; for; event", Value::list},
    {samples, Column::fold, "fold", "folds; card fold; fold type; fold kind; kind of fold; base fold",
     Value::list},
    {samples, Column::base, "base", "card base; base size; sheet; cut size", Value::size},
    {samples, Column::scores, "scores", "score; scored; scored at; score at; score lines", Value::list},
    {samples, Column::finished, "finished", "finished size; closed; closed size; card size; size",
     Value::size},
    {samples, Column::technique, "techniques", "technique; treatment; treatments", Value::list},
    {samples, Column::supply, "supplies", "supply; materials; supplies used; used", Value::list},
    {samples, Column::words, "words", "words on it; wording; greeting; sentiment; text", Value::text},
    {samples, Column::envelope, "envelope", "envelope size", Value::name},
    {samples, Column::steps, "steps", "step; how; instructions; how made", Value::text},
    {samples, Column::photo, "photo", "photos; photograph; photographs; picture; pictures; image; photo file",
     Value::list},
    {samples, Column::based_on, "based on", "after; copy of; from sample", Value::name},
    {samples, Column::note, "note", "notes; remark; remarks; comment; comments", Value::text},

    {elements, Column::sample, "sample",
     "card; which card; title; sample name; card name; card title; sample title", Value::name},
    {elements, Column::element, "element", "piece; layer; element name; piece name; part", Value::name},
    {elements, Column::role, "role", "kind; type; kind of piece; what", Value::name},
    {elements, Column::side, "side", "face; on side; which side", Value::name},
    {elements, Column::shape, "shape", "form", Value::name},
    {elements, Column::size, "size", "dimensions; measures; cut to; cut size", Value::size},
    {elements, Column::width, "width", "w; wide", Value::length, false},
    {elements, Column::height, "height", "h; high; tall; length", Value::length, false},
    {elements, Column::colour, "colour",
     "color; paper; paper colour; paper color; card stock; colours; colors", Value::list},
    {elements, Column::ink, "ink",
     "inks; ink colour; ink color; ink colours; ink colors; inked with; stamped in", Value::list},
    {elements, Column::supply, "supply", "supplies; supplies used; used; stamp; material; materials",
     Value::list},
    {elements, Column::die_set, "die set", "set; dies; set name; cut with set; cut by", Value::name},
    {elements, Column::die, "die", "die number; die name; rank; order; cut with die", Value::name},
    {elements, Column::line, "line", "edge; which edge; die line; line of die", Value::name},
    {elements, Column::goes, "goes", "goes on; goes with; placed on; attached to; on", Value::name},
    {elements, Column::sits_in, "sits in", "lies in; goes in; fits in; in; inset in; set in; inside of",
     Value::name, false},
    {elements, Column::at, "at", "place; position; where; placed; placed at", Value::name},
    {elements, Column::glue, "glue", "glued; adhesive; stuck with; stuck", Value::name},
    {elements, Column::technique, "technique", "techniques; treatment; treatments; treated", Value::list},
    {elements, Column::count, "count", "number; quantity; qty; how many; pieces", Value::figure},
    {elements, Column::note, "note", "notes; remark; remarks; comment; comments", Value::text},

    {tried, Column::set, "set", "die set; set name; name of set; dies", Value::name},
    {tried, Column::die, "die", "rank; order; number; no; die number; die no; die name; label; which",
     Value::name},
    {tried, Column::line, "line", "edge; which edge; which line; line kind; kind of line; in line",
     Value::name},
    {tried, Column::shape, "shape", "panel shape; form", Value::name},
    {tried, Column::size, "size", "panel size; panel; dimensions; measures; tried size; size tried",
     Value::size},
    {tried, Column::width, "width", "w; wide", Value::length, false},
    {tried, Column::height, "height", "h; high; tall; length", Value::length, false},
    {tried, Column::result, "result", "fit; how it fits; fits; outcome; verdict; ok", Value::name},
    {tried, Column::date, "date", "tried; tried on; date tried; when; made", Value::date},
    {tried, Column::sample, "sample", "card; which card; title; sample name; card name; for sample; used in",
     Value::name},
    {tried, Column::note, "note", "notes; remark; remarks; comment; comments", Value::text},
};

// Written into the table of refused rows, so that it can be mended and imported as it is.
constexpr ColumnRow refused_column{dies, Column::refused, "refused because", "", Value::mark, false};

struct TableRow {
  TableKind kind;
  std::string_view word, one;
  std::array<Column, 3> needs;  // what tells its rows apart: it cannot be read without them
};
constexpr std::array<TableRow, table_kinds> tables{{
    {dies, "dies", "die", {Column::set, Column::die, Column::die}},
    {supplies, "supplies", "supply", {Column::kind, Column::kind, Column::kind}},  // and a name or a colour
    {samples, "samples", "sample", {Column::sample, Column::sample, Column::sample}},
    {elements, "elements", "element", {Column::sample, Column::element, Column::element}},
    {tried, "tried", "tried", {Column::set, Column::die, Column::result}},
}};

const TableRow& table_row(TableKind kind) {
  return tables[static_cast<std::size_t>(kind)];
}

template <class Each>
void each_other_name(std::string_view others, Each each) {
  while (!others.empty()) {
    const std::size_t end = std::min(others.find(';'), others.size());
    each(others.substr(0, end));
    others.remove_prefix(std::min(end + 1, others.size()));
  }
}

const ColumnRow* find_column(TableKind kind, std::string_view key) {
  if (key.empty()) return nullptr;
  if (key == heading_key(refused_column.name)) return &refused_column;
  const ColumnRow* found = nullptr;
  for (const ColumnRow& row : table_columns(kind)) {
    if (heading_key(row.name) == key) return &row;
    each_other_name(row.others, [&](std::string_view other) {
      if (found == nullptr && heading_key(other) == key) found = &row;
    });
  }
  return found;
}

struct UnitEnding {
  std::string_view ending, unit;
};
constexpr UnitEnding unit_endings[] = {{"ininches", "in"},
                                       {"inmillimetres", "mm"},
                                       {"inmillimeters", "mm"},
                                       {"inmm", "mm"},
                                       {"incm", "cm"},
                                       {"inches", "in"},
                                       {"inch", "in"},
                                       {"millimetres", "mm"},
                                       {"millimeters", "mm"},
                                       {"mm", "mm"},
                                       {"centimetres", "cm"},
                                       {"centimeters", "cm"},
                                       {"cm", "cm"},
                                       {"in", "in"}};

Heading match_heading(TableKind kind, std::string_view written) {
  Heading heading{.written = std::string(trim(written)), .column = nullptr, .unit = {}};
  const std::string key = heading_key(written);
  heading.column = find_column(kind, key);
  if (heading.column != nullptr) return heading;
  for (const UnitEnding& unit : unit_endings) {
    if (!key.ends_with(unit.ending)) continue;
    const ColumnRow* column = find_column(kind, key.substr(0, key.size() - unit.ending.size()));
    if (column == nullptr || (column->value != Value::size && column->value != Value::length)) continue;
    heading.column = column;
    heading.unit = unit.unit;
    break;
  }
  return heading;
}

bool any_is(const std::vector<std::string>& cells, TableKind kind, Column column) {
  return std::any_of(cells.begin(), cells.end(), [&](const std::string& cell) {
    const Heading heading = match_heading(kind, cell);
    return heading.column != nullptr && heading.column->column == column;
  });
}

std::optional<TableKind> recognise(const std::vector<std::string>& cells) {
  const auto has = [&](TableKind kind, Column column) { return any_is(cells, kind, column); };
  const bool set_and_die = has(dies, Column::set) && has(dies, Column::die);
  if (has(tried, Column::result) && has(tried, Column::set)) return tried;
  if (has(elements, Column::element) && has(elements, Column::sample)) return elements;
  if (set_and_die && (has(dies, Column::shape) || has(dies, Column::method))) return dies;
  if (has(supplies, Column::kind) && (has(supplies, Column::name) || has(supplies, Column::colour)))
    return supplies;
  if (has(supplies, Column::name) && has(supplies, Column::colour)) return supplies;
  if (set_and_die) return dies;
  if (has(samples, Column::sample)) return samples;
  return std::nullopt;
}

std::string known_tables() {
  std::string text = "a table with one of these: ";
  for (const TableRow& table : tables) {
    if (text.back() != ' ') text += "; ";
    text += fmt::format("{} (", table.word);
    for (const ColumnRow& row : table_columns(table.kind))
      if (row.exported) text += fmt::format("{}{}", text.back() == '(' ? "" : ", ", row.name);
    text += ')';
  }
  return text;
}

// A pasted page has many headings: enough of them to know the row by.
std::string quoted_list(const std::vector<std::string_view>& names) {
  constexpr std::size_t most = 12;
  std::string text;
  for (std::size_t i = 0; i < std::min(names.size(), most); ++i)
    text += fmt::format("{}{}", text.empty() ? "" : ", ", in_quotes(names[i]));
  return names.size() > most ? fmt::format("{} and {} more", text, names.size() - most) : text;
}

Problem no_table(const std::vector<std::string>& cells) {
  return bad_input(
      fmt::format("the headings {} are those of no table", quoted_list({cells.begin(), cells.end()})),
      known_tables());
}

// A heading "panel" of a table of what was tried is the panel's size, or its shape beside another size.
void place_panel(Header& header) {
  const auto panel = std::find_if(header.headings.begin(), header.headings.end(), [](const Heading& one) {
    return one.column != nullptr && one.column->table == tried && heading_key(one.written) == "panel";
  });
  if (panel == header.headings.end()) return;
  const bool sized = std::any_of(header.headings.begin(), header.headings.end(), [&](const Heading& one) {
    const Column column = one.column == nullptr ? Column::note : one.column->column;
    return &one != &*panel && (column == Column::size || column == Column::width || column == Column::height);
  });
  if (sized) panel->column = find_column(tried, "shape");
}

// The headings as those of a table of that kind.
Header match_headings(const std::vector<std::string>& cells, TableKind kind) {
  Header header;
  header.kind = kind;
  header.place.fill(-1);
  for (const std::string& cell : cells) header.headings.push_back(match_heading(kind, cell));
  place_panel(header);
  for (std::size_t i = 0; i < header.headings.size(); ++i) {
    const ColumnRow* column = header.headings[i].column;
    if (column == nullptr) continue;
    std::int16_t& place = header.place[static_cast<std::size_t>(column->column)];
    if (place < 0) place = static_cast<std::int16_t>(i);
  }
  return header;
}

std::optional<Problem> said_twice(const Header& header) {
  for (const Heading& heading : header.headings) {
    if (heading.column == nullptr) continue;
    const Heading* first = header.heading(heading.column->column);
    if (first != &heading)
      return bad_input(fmt::format("the headings {} and {} are both the column {}", in_quotes(first->written),
                                   in_quotes(heading.written), in_quotes(heading.column->name)),
                       "one of them, or another heading for the other");
  }
  return std::nullopt;
}

// The columns that tell the rows of the table apart and are not there.
std::vector<std::string_view> missing_columns(const Header& header) {
  std::vector<std::string_view> missing;
  for (const Column column : table_row(header.kind).needs) {
    const std::string_view name = column_name(header.kind, column);
    const bool said = std::find(missing.begin(), missing.end(), name) != missing.end();
    if (!header.has(column) && !said) missing.push_back(name);
  }
  if (header.kind == supplies && !header.has(Column::name) && !header.has(Column::colour))
    missing.push_back(column_name(supplies, Column::name));
  return missing;
}

Problem missing_column(const Header& header, const std::vector<std::string_view>& missing) {
  const std::string names = quoted_list(missing);
  const bool one = missing.size() == 1;
  return bad_input(
      fmt::format("the table of {} has no column{} {}", table_word(header.kind), one ? "" : "s", names),
      fmt::format("{} {}", one ? "a heading" : "the headings", names));
}

// Headings with something in them that the kind of table knows, and those that it does not.
struct Understood {
  std::vector<std::string_view> known, unknown;
};
Understood understood(const Header& header) {
  Understood headings;
  for (const Heading& heading : header.headings) {
    const bool mark = heading.column != nullptr && heading.column->value == Value::mark;
    if (heading_key(heading.written).empty() || mark) continue;
    (heading.column == nullptr ? headings.unknown : headings.known).push_back(heading.written);
  }
  return headings;
}

// The kind that understands most of the headings.
Header best_match(const std::vector<std::string>& cells, const Header& guessed) {
  Header best = guessed;
  for (const TableRow& table : tables) {
    Header header = match_headings(cells, table.kind);
    if (understood(header).known.size() > understood(best).known.size()) best = std::move(header);
  }
  return best;
}

// Whether the kind that was recognised is too little sure to read the rows as that.
bool doubtful(const Header& header, const Header& best) {
  const Understood headings = understood(header);
  return headings.known.size() < headings.unknown.size() || !missing_columns(header).empty() ||
         understood(best).known.size() >= headings.known.size() + 2;
}

Problem not_sure(const Header& best) {
  const Understood headings = understood(best);
  const std::string_view word = table_word(best.kind);
  std::string what = fmt::format("the kind of table is not certain; as {}, {} {} understood", word,
                                 quoted_list(headings.known), headings.known.size() == 1 ? "is" : "are");
  if (!headings.unknown.empty())
    what += fmt::format(", {} {} not", quoted_list(headings.unknown),
                        headings.unknown.size() == 1 ? "is" : "are");
  const auto missing = missing_columns(best);
  if (!missing.empty()) what += fmt::format("; there is no {}", quoted_list(missing));
  return bad_input(
      std::move(what),
      fmt::format("{}--as {} if it is that, or --as with another kind: dies, supplies, samples, "
                  "elements, tried",
                  missing.empty() ? std::string() : fmt::format("a heading {}; ", quoted_list(missing)),
                  word));
}

}  // namespace

std::string_view table_word(TableKind kind) {
  return table_row(kind).word;
}

std::optional<TableKind> table_kind(std::string_view word) {
  const std::string folded = fold(word);
  for (const TableRow& table : tables)
    if (folded == table.word || folded == table.one) return table.kind;
  return std::nullopt;
}

std::span<const ColumnRow> table_columns() {
  return columns;
}

std::span<const ColumnRow> table_columns(TableKind kind) {
  const auto first = std::find_if(std::begin(columns), std::end(columns),
                                  [&](const ColumnRow& row) { return row.table == kind; });
  const auto last =
      std::find_if(first, std::end(columns), [&](const ColumnRow& row) { return row.table != kind; });
  return {first, last};
}

std::string_view column_name(TableKind kind, Column column) {
  for (const ColumnRow& row : table_columns(kind))
    if (row.column == column) return row.name;
  return {};
}

std::string heading_key(std::string_view heading) {
  std::string key = fold(heading);
  std::erase_if(key, [](char c) {
    const bool ascii = static_cast<unsigned char>(c) < 0x80;
    const bool kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '#';
    return ascii && !kept;
  });
  return key;
}

const Heading* Header::heading(Column column) const {
  const std::int16_t i = place[static_cast<std::size_t>(column)];
  return i < 0 ? nullptr : &headings[static_cast<std::size_t>(i)];
}

Result<Header> read_header(const std::vector<std::string>& cells, std::optional<TableKind> as) {
  const std::optional<TableKind> kind = as ? as : recognise(cells);
  if (!kind) return failure(no_table(cells));
  Header header = match_headings(cells, *kind);
  if (auto missing = missing_columns(header); as && !missing.empty())
    return failure(missing_column(header, missing));
  if (!as)
    if (const Header best = best_match(cells, header); doubtful(header, best)) return failure(not_sure(best));
  if (auto twice = said_twice(header)) return failure(std::move(*twice));
  return header;
}

}  // namespace insetbook
