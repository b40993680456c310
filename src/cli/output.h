// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where a command's answer goes: standard output, as text or as one JSON object. On a terminal the answer is
// set off by weight, unless NO_COLOR is set; in a pipe it is plain text. Complaints and progress go to
// standard error, progress only where that is a terminal.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook::cli {

// A table printed in columns: widths follow the contents. On a terminal that is too narrow the last column is
// folded or goes below its row, or, where that does not help, each row is printed by itself. Columns without
// a word are left out.
struct Table {
  std::vector<std::string> head;  // may be empty
  std::vector<std::vector<std::string>> rows;
};

struct Mark {
  std::size_t begin = 0, end = 0;
};

class Output {
 public:
  Output(bool json, bool styled, int width, bool progress)
      : json_(json), styled_(styled), width_(width), progress_(progress) {}
  // As the process's standard output and error are.
  static Output of_process(bool json);

  bool json() const { return json_; }

  void headline(std::string_view text);  // the answer: first and set off
  void line(std::string_view text);      // folded to the width on a terminal
  void detail(std::string_view text);    // how and why: quieter
  // The same, with some places of it (bytes, half-open, in order) set off on a terminal.
  void detail(std::string_view text, const std::vector<Mark>& marks);
  void blank();
  void table(const Table& table);
  void raw(std::string_view text);   // as it is, a line end added where it has none
  void warn(std::string_view text);  // to standard error
  // Long work: `done` of `all`. Shown at most some times a second.
  void progress(std::string_view what, std::int64_t done, std::int64_t all);
  // The Problem as text on standard error, and as {"error":…} on standard output with --json. Returns its
  // exit status.
  int problem(const Problem& problem);

 private:
  void folded(std::string_view text, std::string_view indent, const std::vector<Mark>& marks = {});
  enum class Last { beside, folded, below };  // where the last column is put
  void columns(const std::vector<std::vector<std::string>>& rows, const std::vector<int>& widths, Last last,
               bool has_head);
  void under(std::string_view text);
  void blocks(const std::vector<std::vector<std::string>>& rows, bool has_head);
  bool json_;
  bool styled_;
  int width_;  // 0: not a terminal, nothing is folded
  bool progress_;
  std::int64_t last_progress_ms_ = 0;
};

// The width of a text in a terminal's columns.
int columns_of(std::string_view text);

// The lines that a Problem is shown as.
std::string problem_text(const Problem& problem);
int exit_status(ProblemKind kind);

}  // namespace insetbook::cli
