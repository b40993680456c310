// SPDX-License-Identifier: GPL-3.0-or-later
//
// The elements table: one row is one piece of a sample. The rows of one sample are taken together, wherever
// they stand, because a piece may lie in one that comes later. Only where each row begins is remembered.
#include <fmt/format.h>

#include <algorithm>

#include "importers/csv/session.h"
#include "importers/csv/units.h"
#include "language/read_record.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr TermKind technique_kinds[] = {{VocabularyName::technique, "technique"},
                                        {VocabularyName::feature, "feature"},
                                        {VocabularyName::material, "material"}};

struct RowPlace {
  std::uint32_t file;
  std::size_t begin;
  std::int64_t number;
};

struct Group {
  std::string title;
  std::vector<RowPlace> rows;
};

// One row of the sample being taken.
struct Piece {
  RowPlace place;
  CsvRow csv;
  ElementRow row;
  std::string key;
  Goes goes;
  std::vector<Complaint> complaints;
  enum class State { open, going, put, refused } state = State::open;
  std::int64_t id = 0;
};

// A piece that the sample has, in this import or in the book.
struct Known {
  std::int64_t id = 0;
  std::optional<std::int64_t> die_id;
};

class ElementsImport {
 public:
  explicit ElementsImport(Session& session) : session_(session) {}
  void run();

 private:
  void find_groups();
  void take(const Group& group);
  void refuse_all(const Group& group, const std::string& what, const std::string& expected);
  void read(Piece& piece, const Session::SampleState& sample);
  void read_words(const TableFile& file, Cells& cells, Piece& piece);
  void read_size(const TableFile& file, Cells& cells, Piece& piece);
  void read_die(Cells& cells, Piece& piece);
  void read_goes_cells(Cells& cells, Piece& piece);
  void read_mentions(const TableFile& file, Cells& cells, Piece& piece);
  bool seen_before(Piece& piece);
  void put(Piece& piece);
  bool resolve(Piece& piece);
  bool among_pieces(Piece& piece);
  void link_earlier_pieces();
  bool resolve_piece(Piece& piece, const std::string& name, const std::string& line);
  bool lie_in(Piece& piece, const Known& other, const std::string& line);
  void refuse(Piece& piece);
  void complain(Piece& piece, Column column, std::string what, std::string expected);
  TableFile& file_of(const Piece& piece) const { return session_.files[piece.place.file]; }

  Session& session_;
  std::unordered_map<std::string, std::size_t> group_of_;  // by title as written
  std::vector<Group> groups_;
  // of the sample being taken
  std::vector<std::unique_ptr<Piece>> pieces_;
  std::unordered_map<std::string, Piece*> by_key_;
  std::unordered_map<std::string, std::pair<std::int64_t, ElementRow>> on_record_;
};

void ElementsImport::run() {
  find_groups();
  for (const Group& group : groups_) take(group);
}

void ElementsImport::find_groups() {
  std::string last_title;
  std::size_t last = 0;
  std::unordered_map<std::string, std::size_t> by_key;
  session_.each_row(TableKind::elements, [&](TableFile& file, const CsvRow& row, Cells& cells) {
    const std::string title = cells.name(Column::sample);
    if (title.empty() || title != last_title) {
      auto known = group_of_.find(title);
      if (known == group_of_.end()) {
        const auto [it, is_new] = by_key.emplace(fold(title), groups_.size());
        if (is_new) groups_.push_back({title, {}});
        known = group_of_.emplace(title, it->second).first;
      }
      last = known->second;
      last_title = title;
    }
    const auto place = static_cast<std::uint32_t>(&file - session_.files.data());
    groups_[last].rows.push_back({place, row.begin, row.number});
  });
}

void ElementsImport::refuse_all(const Group& group, const std::string& what, const std::string& expected) {
  for (const RowPlace& place : group.rows) {
    TableFile& file = session_.files[place.file];
    CsvReader reader(file.text, file.delimiter);
    reader.go_to(place.begin, place.number);
    CsvRow row;
    reader.next(row);
    const Heading* heading = file.header.heading(Column::sample);
    session_.refuse(file, row, {{heading->written, what, expected}});
  }
}

void ElementsImport::take(const Group& group) {
  if (fold(group.title).empty())
    return refuse_all(group, "the row names no sample", "the card that the piece is part of");
  const auto sample = session_.sample_titled_so(group.title);
  if (!sample)
    return refuse_all(group, fmt::format("no sample is called {}", in_quotes(group.title)),
                      "a sample in the book or in a table of this import");
  if (!sample->refused.empty())
    return refuse_all(group, fmt::format("the sample was refused: {}", sample->refused), "that row first");
  pieces_.clear();
  by_key_.clear();
  on_record_.clear();
  int last_position = 0;
  if (!sample->is_new) {
    for (auto& [id, row] : elements_of(session_.book, *sample->id)) {
      last_position = std::max(last_position, row.position);
      const std::string key = fold(row.name);
      on_record_.emplace(key, std::pair(id, std::move(row)));
    }
  }
  for (const RowPlace& place : group.rows) {
    session_.progress();
    Piece& piece = *pieces_.emplace_back(std::make_unique<Piece>());
    piece.place = place;
    read(piece, *sample);
    if (seen_before(piece)) {
      session_.count(file_of(piece), PutResult::same);
      pieces_.pop_back();
      continue;
    }
    if (piece.row.position == 0 && piece.complaints.empty()) piece.row.position = ++last_position;
  }
  for (const auto& piece : pieces_)
    if (piece->state == Piece::State::open) put(*piece);
  if (!pieces_.empty()) link_earlier_pieces();
}

void ElementsImport::read(Piece& piece, const Session::SampleState& sample) {
  TableFile& file = file_of(piece);
  CsvReader reader(file.text, file.delimiter);
  reader.go_to(piece.place.begin, piece.place.number);
  reader.next(piece.csv);
  Cells cells(file.header, piece.csv, session_.rules);
  const std::string name = cells.name(Column::element);
  piece.key = fold(name);
  if (piece.key.empty())
    cells.complain(Column::element, "the row names no piece", "what the piece is called");
  if (const auto known = on_record_.find(piece.key); known != on_record_.end())
    piece.row = known->second.second;
  piece.row.sample_id = *sample.id;
  piece.row.name = name;
  read_words(file, cells, piece);
  read_size(file, cells, piece);
  read_die(cells, piece);
  read_goes_cells(cells, piece);
  read_mentions(file, cells, piece);
  const std::string note = cells.note();
  if (cells.has(Column::note) || !note.empty()) piece.row.note = note;
  piece.complaints = cells.complaints();
}

void ElementsImport::read_words(const TableFile& file, Cells& cells, Piece& piece) {
  const auto term_or_text = [&](Column column, VocabularyName in, std::string_view what, std::string& field) {
    if (!cells.has(column)) return;
    const std::string said = cells.name(column);
    const auto& term = session_.lookups.term(in, said);
    if (!term && !said.empty()) session_.kept_as_text(fmt::format("unknown {}", what), said, file, piece.csv);
    field = term ? *term : said;
  };
  term_or_text(Column::role, VocabularyName::role, "role", piece.row.role);
  term_or_text(Column::shape, VocabularyName::shape, "shape", piece.row.shape);
  if (cells.has(Column::side)) {
    const std::string said = cells.name(Column::side);
    piece.row.side = said.empty() ? std::string() : side_word(fold(said));
    if (piece.row.side.empty() && !said.empty()) piece.row.side = read_goes(said).side;
    if (piece.row.side.empty() && !said.empty())
      cells.complain(Column::side, fmt::format("{} is no side of a card", in_quotes(said)),
                     "front, inside or back");
  }
  if (cells.has(Column::at))
    piece.row.at = with_units(cells.name(Column::at), session_.rules.unit, Numbers::are_counts);
  if (cells.has(Column::glue)) {
    piece.row.glue = with_units(cells.name(Column::glue), session_.rules.unit, Numbers::are_lengths);
    if (const auto glue = read_glue(piece.row.glue, session_.rules.unit); !glue)
      cells.complain(Column::glue, glue.error());
  }
  if (cells.has(Column::count)) {
    const auto count = read_count(cells.name(Column::count));
    if (count)
      piece.row.count = *count;
    else
      cells.complain(Column::count, count.error());
  }
}

void ElementsImport::read_size(const TableFile& file, Cells& cells, Piece& piece) {
  if (!cells.has(Column::size) && !cells.has(Column::width) && !cells.has(Column::height)) return;
  const SizeCell cell = cells.size_or_sides(Cells::IfNoSize::keep_words);
  const std::string in_size = cell.size ? cell.size->shape : std::string();
  if (piece.row.shape.empty() && !in_size.empty()) {
    const auto& term = session_.lookups.term(VocabularyName::shape, in_size);
    piece.row.shape = term ? *term : in_size;
  }
  piece.row.size =
      record_size(session_, file, piece.csv, cells, cell, piece.row.shape, OneFigure::is_a_width);
  if (piece.row.size.width && !piece.row.at.empty()) piece.row.size.placed = true;
}

void ElementsImport::read_die(Cells& cells, Piece& piece) {
  if (!cells.has(Column::die_set) && !cells.has(Column::die)) return;
  piece.row.set_id.reset();
  piece.row.die_id.reset();
  piece.row.line_id.reset();
  const std::string set = cells.name(Column::die_set), die = cells.name(Column::die),
                    line = cells.name(Column::line);
  if (set.empty() && die.empty()) return;
  const auto& opening = set.empty()
                            ? session_.lookups.opening(line.empty() ? die : fmt::format("{}, {}", die, line))
                            : session_.lookups.opening(set, die, line, BlankLine::none);
  if (!opening)
    return cells.complain(set.empty() || !die.empty() ? Column::die : Column::die_set, opening.error());
  piece.row.set_id = opening->set_id;
  piece.row.die_id = opening->die_id;
  if (!line.empty()) piece.row.line_id = opening->line_id;
}

void ElementsImport::read_goes_cells(Cells& cells, Piece& piece) {
  const std::string goes = cells.name(Column::goes), sits_in = cells.name(Column::sits_in);
  if (!cells.has(Column::goes) && !cells.has(Column::sits_in)) return;
  std::string said = goes;
  if (!sits_in.empty()) said = read_goes(sits_in).how == GoesHow::in ? sits_in : "in " + sits_in;
  if (!goes.empty() && !sits_in.empty() && fold(goes) != fold(said))
    cells.complain(Column::goes, fmt::format("{} and {} are two places", in_quotes(goes), in_quotes(said)),
                   "one of them");
  piece.goes = read_goes(said);
  piece.row.goes = said;
  piece.row.goes_how = said.empty() ? std::string() : std::string(goes_word(piece.goes.how));
  piece.row.goes_to.reset();
  piece.row.in_line_id.reset();
}

void ElementsImport::read_mentions(const TableFile& file, Cells& cells, Piece& piece) {
  const std::vector<Mention> known = std::move(piece.row.mentions);
  std::vector<Mention>& mentions = piece.row.mentions;
  mentions.clear();
  mention_colours(session_, file, piece.csv, cells.list(Column::colour), "paper", mentions);
  mention_colours(session_, file, piece.csv, cells.list(Column::ink), "ink", mentions);
  mention_terms(session_, file, piece.csv, cells.list(Column::technique), technique_kinds, "technique",
                "technique", mentions);
  mention_supplies(session_, file, piece.csv, cells.list(Column::supply), mentions);
  if (known.empty()) return;
  keep_mentions(
      known,
      [&](std::string_view kind) {
        const bool technique = cells.has(Column::technique), supply = cells.has(Column::supply);
        if (kind == "paper") return !cells.has(Column::colour);
        if (kind == "ink") return !cells.has(Column::ink);
        if (kind == "technique" || kind == "feature") return !technique;
        if (kind == "material") return !technique || !supply;
        return kind == "supply" && !supply;
      },
      mentions);
}

// Whether an earlier row says exactly the same. One that says something else of the same piece is a
// complaint.
bool ElementsImport::seen_before(Piece& piece) {
  if (piece.key.empty()) return false;
  const auto [it, is_new] = by_key_.emplace(piece.key, &piece);
  if (is_new) return false;
  const Piece& first = *it->second;
  const Cells now(file_of(piece).header, piece.csv, session_.rules);
  const Cells before(file_of(first).header, first.csv, session_.rules);
  if (hash_of_row(now, file_of(piece).header) == hash_of_row(before, file_of(first).header)) return true;
  complain(piece, Column::element,
           fmt::format("{} has a piece of the same name, with other words",
                       place_of(file_of(first), first.place.number)),
           "another name for one of them, or one row with its count");
  return false;
}

void ElementsImport::complain(Piece& piece, Column column, std::string what, std::string expected) {
  const Heading* heading = file_of(piece).header.heading(column);
  piece.complaints.push_back(
      {heading == nullptr ? std::string() : heading->written, std::move(what), std::move(expected)});
}

void ElementsImport::refuse(Piece& piece) {
  piece.state = Piece::State::refused;
  session_.refuse(file_of(piece), piece.csv, piece.complaints);
}

// The piece that it goes with is put first.
void ElementsImport::put(Piece& piece) {
  piece.state = Piece::State::going;
  if (!piece.complaints.empty() || !resolve(piece)) return refuse(piece);
  const auto put = put_element(session_.change, piece.row);
  if (!put) {
    complain(piece, Column::element, put.error().what, put.error().expected);
    return refuse(piece);
  }
  piece.state = Piece::State::put;
  piece.id = put->second;
  session_.count(file_of(piece), put->first);
}

bool ElementsImport::among_pieces(Piece& piece) {
  const std::string& target = piece.goes.target;
  if (resolve_piece(piece, target, "")) return true;
  // "in frame, stitched": a piece and the line of its die.
  const std::size_t comma = target.rfind(',');
  if (comma == std::string::npos) return false;
  const std::string line(trim(std::string_view(target).substr(comma + 1)));
  return read_line_cell(line) &&
         resolve_piece(piece, std::string(trim(std::string_view(target).substr(0, comma))), line);
}

// A piece of the book may go with one that comes only now.
void ElementsImport::link_earlier_pieces() {
  for (auto& [key, known] : on_record_) {
    const ElementRow& row = known.second;
    if (by_key_.contains(key) || row.goes.empty() || row.goes_to || row.in_line_id) continue;
    Piece piece;
    piece.place = pieces_.front()->place;
    piece.key = key;
    piece.row = row;
    piece.goes = read_goes(row.goes);
    if (piece.goes.target.empty() || !among_pieces(piece) || !piece.complaints.empty()) continue;
    (void)put_element(session_.change, piece.row);  // it was in the book: nothing in it can be refused
  }
}

bool ElementsImport::resolve(Piece& piece) {
  const std::string& target = piece.goes.target;
  if (target.empty()) return true;
  if (among_pieces(piece)) return piece.complaints.empty();
  // "on back" says the side; "on back panel" names a piece, found above.
  if (piece.row.side.empty()) piece.row.side = piece.goes.side;
  if (piece.goes.section || !piece.goes.side.empty()) return true;
  if (piece.goes.how == GoesHow::in) {
    if (const auto& opening = session_.lookups.opening(target)) {
      piece.row.in_line_id = opening->line_id;
      return true;
    }
  }
  if (fold(target) != "base" && fold(target) != "card" && fold(target) != "flap")
    session_.kept_as_text("unknown piece", target, file_of(piece), piece.csv);
  return true;
}

// Whether there is such a piece. What is wrong with it becomes a complaint.
bool ElementsImport::resolve_piece(Piece& piece, const std::string& name, const std::string& line) {
  const std::string key = fold(name);
  if (const auto it = by_key_.find(key); it != by_key_.end()) {
    Piece& other = *it->second;
    const Column column = piece.row.goes.empty() ? Column::sits_in : Column::goes;
    if (&other == &piece) {
      complain(piece, column, "the piece goes with itself", "another piece");
      return true;
    }
    if (other.state == Piece::State::open) put(other);
    if (other.state == Piece::State::going) {
      complain(
          piece, column,
          fmt::format("the pieces go round in a circle: {} goes with this one", in_quotes(other.row.name)),
          "one piece that lies under the others");
      return true;
    }
    if (other.state == Piece::State::refused) {
      complain(piece, column,
               fmt::format("the piece {} was refused: {}", in_quotes(other.row.name),
                           place_of(file_of(other), other.place.number)),
               "that row first");
      return true;
    }
    piece.row.goes_to = other.id;
    return lie_in(piece, {other.id, other.row.die_id}, line);
  }
  const auto known = on_record_.find(key);
  if (known == on_record_.end()) return false;
  piece.row.goes_to = known->second.first;
  return lie_in(piece, {known->second.first, known->second.second.die_id}, line);
}

bool ElementsImport::lie_in(Piece& piece, const Known& other, const std::string& line) {
  if (piece.goes.how != GoesHow::in || !other.die_id) return true;
  piece.row.in_line_id = session_.lookups.line_of(*other.die_id, line);
  if (!piece.row.in_line_id && !line.empty())
    complain(piece, Column::goes, fmt::format("the die of that piece has no line {}", in_quotes(line)),
             "a line of that die");
  return true;
}

}  // namespace

void import_elements(Session& session) {
  ElementsImport(session).run();
}

}  // namespace insetbook
