// SPDX-License-Identifier: GPL-3.0-or-later
//
// The reader behind read_record (read_record_text.h): line after line into one record. Its parts:
//   read_record_text.cc       what kind of line it is: heading, "words: …", a step, a piece
//   read_record_sample.cc     what lines of the sample say: date, finished size, scores, terms
//   read_record_pieces.cc     lines of pieces, and what they say of the sample besides
//   read_record_left_over.cc  what is not read, with its place
// Names and the pieces that go together are settled when all lines are read (read_record_names.h,
// read_record_targets.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "language/read_record_text.h"
#include "language/read_record_words.h"

namespace insetbook {

class RecordReader {
 public:
  RecordReader(std::string_view title, const ReadingContext& context);

  Result<RecordSaid> run(std::string_view text);

 private:
  // Part of the line that is read: its text, and where in the line it begins.
  struct Part {
    std::string_view said;
    std::size_t offset = 0;
    Part from(std::size_t begin) const { return {said.substr(begin), offset + begin}; }
  };

  // read_record_text.cc
  Problem nothing(bool any) const;
  std::optional<Problem> take_line();
  std::optional<Problem> first_line(std::string_view said);
  bool heading(std::string_view said, bool marked);
  static std::string side_of(std::string_view folded);
  void set_side(std::string_view folded);
  bool keyed(const Part& part);
  void take_key(RecordKey key, std::string_view folded, const Part& value, const Part& part);
  bool led(const Part& part, bool numbered);
  // read_record_sample.cc
  void once(std::string& field, std::string_view value, const Part& part);
  void made(std::string_view value, const Part& part);
  void two_days(std::string_view value, const DaySaid& day, const Part& part);
  void finished(std::string_view value, const Part& part);
  void close(const Size& size, const std::string& text, const Part& part);
  void add_scores(std::string_view value, const Part& part);
  static void append(std::string& list, std::string_view more);
  void add_step(std::string_view said);
  void add_supplies(std::string_view value);
  void add_term(TermSaid term);
  void terms(std::string_view folded, const Part& value);
  // read_record_pieces.cc
  static bool is_of_a_piece(const LineSaid& line);
  bool only_a_day(const Part& part) const;
  void plain(const Part& part, std::string name, std::string_view role = {});
  void put_on_side(LineSaid& line) const;
  void of_the_sample(LineSaid& line, const Part& part);
  bool take_base(LineSaid& line);
  void of_card_only(LineSaid& line, const Part& part);
  // read_record_left_over.cc
  Problem problem_of(const NotRead& lost, std::size_t offset) const;
  void left_over(const NotRead& lost, std::size_t offset, std::optional<std::size_t> piece);
  std::vector<std::string> words_like(const std::string& words) const;
  void left_over_line(const Part& part, std::string what, std::string expected);

  const ReadingContext& context_;
  RecordSaid record_;
  std::string_view line_;  // trimmed
  int row_ = 0;
  RecordMode mode_ = RecordMode::pieces;
  std::string side_, side_goes_;
  static constexpr int most_suggested = 30;
  int suggested_ = 0;
};

}  // namespace insetbook
