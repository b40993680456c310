// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "language/read_record_reader.h"
#include "text/utf8.h"

namespace insetbook {

// Whether the line is one of a piece, and not only of the card.
bool RecordReader::is_of_a_piece(const LineSaid& line) {
  const bool stuff = !line.piece.terms.empty() || !line.piece.supplies.empty();
  const bool put_somewhere = line.goes || !line.glue.empty() || !line.at.empty();
  const bool worked = !line.piece.terms.empty() && !line.piece.supplies.empty();
  return line.piece.says_a_piece() || !line.name.empty() || (line.goes && !line.goes->place_of_card) ||
         (stuff && put_somewhere) || worked;
}

// "8 Nov", "Nov 8": a day, and no eight of anything.
bool RecordReader::only_a_day(const Part& part) const {
  bool figure = false, letter = false;
  for (const char c : fold(part.said)) {
    figure = figure || (c >= '0' && c <= '9');
    letter = letter || (c >= 'a' && c <= 'z');
  }
  return figure && letter && read_day(part.said, &context_).has_value();
}

void RecordReader::plain(const Part& part, std::string name, std::string_view role) {
  if (name.empty() && role.empty() && only_a_day(part)) return made(part.said, part);
  LineSaid line = read_line(part.said, context_);
  if (!role.empty() && line.piece.role.empty()) {
    line.piece.role = role;
    line.piece.head = role;
  }
  if (role == "base" && line.closed && !line.piece.size) {  // "card base 5 x 7 in"
    line.piece.size = std::exchange(line.closed, std::nullopt);
    line.piece.size_text = std::exchange(line.closed_text, "");
  }
  if (line.name.empty()) line.name = std::move(name);
  of_the_sample(line, part);
  const bool base = line.piece.role == "base" && take_base(line);
  if (base || !is_of_a_piece(line)) return of_card_only(line, part);
  if (!line.scores.empty()) line.notes.push_back("scored at " + line.scores);
  put_on_side(line);
  const std::size_t place = record_.pieces.size();
  record_.pieces.push_back({std::move(line), row_, "", std::nullopt, {}});
  const std::vector<NotRead> lost = record_.pieces.back().said.not_read;
  for (const NotRead& each : lost) left_over(each, part.offset, place);
}

// The side of the heading above, where the line says none.
void RecordReader::put_on_side(LineSaid& line) const {
  // "around the front" below "Inside:" is of the front.
  if (line.piece.side.empty())
    line.piece.side = line.goes && !line.goes->side.empty() ? line.goes->side : side_;
  if (line.goes || side_goes_.empty()) return;
  line.goes.emplace();
  line.goes->target = side_goes_;
  line.goes->side = side_;
  line.goes->place_of_card = true;
}

// That a role is met by names too is said of a question only.
static std::string without(std::string said, std::string_view ending) {
  if (said.ends_with(ending)) said.resize(said.size() - ending.size());
  return said;
}

void RecordReader::of_the_sample(LineSaid& line, const Part& part) {
  SampleOfRecord& sample = record_.sample;
  for (TermSaid& term : line.of_sample) add_term(std::move(term));
  line.of_sample.clear();
  for (std::string& words : line.words) sample.words.push_back(std::move(words));
  line.words.clear();
  if (line.closed) close(*line.closed, line.closed_text, part);
  if (!line.envelope.empty()) once(sample.envelope, line.envelope, part);
  if (!line.made.empty()) made(line.made_text, part);
  if (!line.based_on.empty()) once(sample.based_on, line.based_on, part);
  for (std::string& remark : line.remarks)
    if (std::ranges::find(record_.remarks, remark) == record_.remarks.end())
      record_.remarks.push_back(std::move(remark));
  for (const OtherReading& other : line.other_readings) {
    if (other.other.starts_with("text:")) continue;  // what a question could look for; nothing that is kept
    record_.remarks.push_back("line " + std::to_string(row_) + ": \"" + other.text + "\" was read as " +
                              without(other.taken, ", or called so") + "; it could be " + other.other);
  }
  line.remarks.clear();
  line.other_readings.clear();
}

// The base's size and scores are the sample's; true where nothing more is said of it.
bool RecordReader::take_base(LineSaid& line) {
  SampleOfRecord& sample = record_.sample;
  PieceSaid& piece = line.piece;
  const bool whole = piece.size && (!piece.size->one_figure || piece.shape == "square");
  append(sample.scores, std::exchange(line.scores, ""));
  if (!whole || sample.base) return false;
  sample.base = piece.size;
  sample.base_text = piece.size_text;
  return piece.paper.empty() && piece.ink.empty() && piece.terms.empty() && piece.supplies.empty() &&
         !piece.cut_by && !piece.count && line.name.empty() && line.notes.empty() && line.at.empty() &&
         line.glue.empty() && !line.goes && line.not_read.empty();
}

// A line that describes no piece says something of the card.
void RecordReader::of_card_only(LineSaid& line, const Part& part) {
  SampleOfRecord& sample = record_.sample;
  for (TermSaid& term : line.piece.terms) add_term(std::move(term));
  for (std::string& supply : line.piece.supplies) sample.supplies.push_back(std::move(supply));
  for (std::string& note : line.notes) sample.notes.push_back(std::move(note));
  append(sample.scores, line.scores);
  if (!line.glue.empty() && line.glue != "none" && !line.goes && line.at.empty())
    sample.supplies.push_back(std::exchange(line.glue, ""));
  const bool lost = !line.glue.empty() || !line.at.empty() || line.goes || !line.piece.side.empty();
  if (lost && line.piece.role != "base")
    return left_over_line(part, "it says where, and no piece", "a piece: its shape, role, size or name");
  for (const NotRead& each : line.not_read) left_over(each, part.offset, std::nullopt);
}

}  // namespace insetbook
