// SPDX-License-Identifier: GPL-3.0-or-later
//
// The supplies table: one row is one supply; a stamp set has a row for each image.
#include <fmt/format.h>

#include <algorithm>

#include "card/paper_weight.h"
#include "importers/csv/session.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// What the book has of it already; columns that the table does not have stay as they are.
SupplyRow on_record(const Session& session, const std::string& key) {
  Statement& find = session.book.statement("SELECT id FROM supply WHERE key = ?");
  find.bind(1, std::string_view(key));
  const auto id = find.step() ? find.maybe_integer(0) : std::nullopt;
  find.reset();
  SupplyRow known;
  if (id) known = supply(session.book, *id).value_or(SupplyRow{});
  known.colour_value.reset();  // the colour's own, set anew only where the row says one
  return known;
}

// In this column six digits need no # before them. Three do: "246" may be the number of anything.
std::optional<std::uint32_t> colour_value(Cells& cells) {
  std::string text = fold(cells.raw(Column::colour_value));
  if (text.empty()) return std::nullopt;
  const bool hash = text.front() == '#';
  if (hash) text.erase(0, 1);
  if (hash && text.size() == 3) text = {text[0], text[0], text[1], text[1], text[2], text[2]};
  const bool hex = text.size() == 6 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
  if (hex) return static_cast<std::uint32_t>(std::stoul(text, nullptr, 16));
  cells.leave_out(Column::colour_value,
                  fmt::format("{} is no colour value", in_quotes(cells.name(Column::colour_value))),
                  "#rrggbb, such as #8aa37b");
  return std::nullopt;
}

// What is sold by its length: one figure is its width.
bool is_length_goods(std::string_view what) {
  constexpr std::string_view kinds[] = {"ribbon", "tape", "thread", "twine",
                                        "string", "cord", "lace",   "trim"};
  const std::string folded = ' ' + fold(what) + ' ';
  return std::any_of(std::begin(kinds), std::end(kinds), [&](std::string_view one) {
    return folded.find(fmt::format(" {} ", one)) != std::string::npos ||
           folded.find(fmt::format(" {}s ", one)) != std::string::npos;
  });
}

void read_weight(Session& session, const TableFile& file, const CsvRow& row, Cells& cells,
                 SupplyRow& supply) {
  supply.weight_text = cells.name(Column::weight);
  supply.weight_mg_m2 = read_paper_weight(supply.weight_text);
  if (!supply.weight_text.empty() && !supply.weight_mg_m2)
    session.kept_as_text("weight", supply.weight_text, file, row);
}

void read_plain(Cells& cells, SupplyRow& supply) {
  const auto take = [&](Column column, std::string& field) {
    if (cells.has(column)) field = cells.name(column);
  };
  take(Column::status, supply.status);
  take(Column::have, supply.have);
  take(Column::cut_by, supply.cut_by);
  take(Column::stored_in, supply.stored_in);
  take(Column::price, supply.price);
  if (cells.has(Column::words)) supply.words = cells.text(Column::words);
  if (cells.has(Column::instead)) supply.instead = cells.text(Column::instead);
  cells.take_date(Column::from, supply.from_date);
  cells.take_date(Column::until, supply.until_date);
  if (!supply.from_date.empty() && !supply.until_date.empty() && supply.until_date < supply.from_date)
    cells.complain(Column::until,
                   fmt::format("it ends on {}, before it begins on {}", supply.until_date, supply.from_date),
                   "a later day");
}

class SuppliesImport {
 public:
  explicit SuppliesImport(Session& session) : session_(session) {}

  void row(TableFile& file, const CsvRow& row, Cells& cells) {
    SupplyRow supply = identity(cells);
    const std::string key = supply_key(supply.kind, supply.set_name, supply.name, supply.colour);
    check_seen(file, row, cells, key);
    if (cells.complaints().empty()) read_fields(file, row, cells, supply, key);
    if (cells.complaints().empty()) {
      const auto put = put_supply(session_.change, supply);
      if (put) {
        session_.tell_left_out(file, row, cells);
        return session_.count(file, *put);
      }
      cells.complain(Column::name, put.error());
    }
    session_.refuse(file, row, cells);
  }

 private:
  SupplyRow identity(Cells& cells) {
    SupplyRow supply;
    supply.kind = cells.name(Column::kind);
    supply.set_name = cells.name(Column::set);
    supply.name = cells.name(Column::name);
    supply.colour = cells.name(Column::colour);
    if (fold(supply.name).empty() && fold(supply.colour).empty() && fold(supply.set_name).empty())
      cells.complain(Column::name, "the supply has neither a name nor a colour", "what it is called");
    return supply;
  }

  void read_fields(const TableFile& file, const CsvRow& row, Cells& cells, SupplyRow& supply,
                   const std::string& key) {
    SupplyRow said = supply;
    supply = on_record(session_, key);
    supply.kind = said.kind;
    supply.set_name = said.set_name;
    supply.name = said.name;
    supply.colour = said.colour;
    supply.colour_value = colour_value(cells);
    if (supply.colour_value && supply.colour.empty())
      cells.complain(Column::colour_value, "a colour value without the name of the colour",
                     "the name in the column colour");
    if (supply.colour_value) check_value(file, row, supply);
    if (cells.has(Column::size) || cells.has(Column::width) || cells.has(Column::height))
      supply.size = size_of(file, row, cells, fmt::format("{} {}", supply.kind, supply.name));
    if (cells.has(Column::weight)) read_weight(session_, file, row, cells, supply);
    if (cells.has(Column::thickness)) {
      const auto thickness = cells.length(Column::thickness);
      supply.thickness = thickness ? std::optional(thickness->length) : std::nullopt;
    }
    read_plain(cells, supply);
    check_cut_by(file, row, supply);
    if (cells.has(Column::note) || !cells.note().empty()) supply.note = cells.note();
  }

  // A ribbon or a roll has one figure; it is kept as written.
  SizeOnRecord size_of(const TableFile& file, const CsvRow& row, Cells& cells, std::string_view what) {
    const SizeCell cell = cells.size_or_sides(Cells::IfNoSize::keep_text);
    if (cell.size && cell.size->one_figure && cell.size->shape.empty() && is_length_goods(what)) {
      SizeOnRecord width;
      width.text = cell.text;
      return width;
    }
    SizeOnRecord size = record_size(session_, file, row, cells, cell,
                                    cell.size ? cell.size->shape : std::string(), OneFigure::kept_as_text);
    if (size.width) size.text.clear();
    return size;
  }

  void check_cut_by(const TableFile& file, const CsvRow& row, const SupplyRow& supply) {
    if (supply.cut_by.empty()) return;
    const auto& opening = session_.lookups.opening(supply.cut_by);
    if (!opening && opening.error().kind != ProblemKind::ambiguous &&
        !set_named(session_.book, fold(supply.cut_by)))
      session_.kept_as_text("unknown die", supply.cut_by, file, row);
  }

  void check_value(const TableFile& file, const CsvRow& row, const SupplyRow& supply) {
    const auto [it, is_new] =
        values_.emplace(fold(supply.colour), Value{*supply.colour_value, place_of(file, row.number)});
    if (is_new || it->second.value == *supply.colour_value) return;
    session_.note(fmt::format("the colour {} is #{:06x} in {} and #{:06x} in {}; the first stands",
                              in_quotes(supply.colour), it->second.value, it->second.row,
                              *supply.colour_value, place_of(file, row.number)));
  }

  void check_seen(const TableFile& file, const CsvRow& row, Cells& cells, const std::string& key) {
    const auto [it, is_new] =
        seen_.emplace(key, Seen{hash_of_row(cells, file.header), place_of(file, row.number)});
    if (!is_new && it->second.hash != hash_of_row(cells, file.header))
      cells.complain(Column::name, fmt::format("{} has the same supply, with other words", it->second.row),
                     "one row for each supply");
  }

  struct Seen {
    std::size_t hash;
    std::string row;
  };
  struct Value {
    std::uint32_t value;
    std::string row;
  };
  Session& session_;
  std::unordered_map<std::string, Seen> seen_;
  std::unordered_map<std::string, Value> values_;
};

}  // namespace

void import_supplies(Session& session) {
  SuppliesImport supplies(session);
  session.each_row(TableKind::supplies,
                   [&](TableFile& file, const CsvRow& row, Cells& cells) { supplies.row(file, row, cells); });
}

}  // namespace insetbook
