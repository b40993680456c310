// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/output.h"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>
#include <utf8proc.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

#include "cli/json_answers.h"
#include "text/utf8.h"

namespace insetbook::cli {
namespace {

constexpr std::string_view bold = "\033[1m";
constexpr std::string_view quiet = "\033[2m";
constexpr std::string_view plain = "\033[0m";
constexpr int narrowest = 20;
constexpr std::int64_t progress_pause_ms = 100;

void put(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
}

std::int64_t now_ms() {
  using namespace std::chrono;
  return duration_cast<milliseconds>(steady_clock::now().time_since_epoch()).count();
}

// Control characters in a record must not drive the terminal.
std::string harmless(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x20 ? byte != 0x7f : c == '\n' || c == '\t') out += c;
  }
  return out;
}

int terminal_width() {
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
    return std::max<int>(size.ws_col, narrowest);
  return 80;
}

// Head and rows without the columns in which no row says anything.
std::vector<std::vector<std::string>> without_blank_columns(const Table& table) {
  std::vector<bool> said;
  for (const auto& row : table.rows) {
    said.resize(std::max(said.size(), row.size()), false);
    for (std::size_t i = 0; i < row.size(); ++i) said[i] = said[i] || !row[i].empty();
  }
  std::vector<std::vector<std::string>> kept;
  const auto keep = [&](const std::vector<std::string>& row) {
    kept.emplace_back();
    for (std::size_t i = 0; i < row.size(); ++i)
      if (i < said.size() && said[i]) kept.back().push_back(row[i]);
  };
  if (!table.head.empty()) keep(table.head);
  for (const auto& row : table.rows) keep(row);
  return kept;
}

// Folded at spaces, every line but the first moved in to `at`.
std::string hanging(std::string_view text, int at, int width) {
  std::string out;
  int column = at;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string_view word = text.substr(begin, end - begin);
    const int wide = columns_of(word);
    if (begin > 0 && column + 1 + wide > width) {
      out += '\n';
      out.append(static_cast<std::size_t>(at), ' ');
      column = at;
    } else if (begin > 0) {
      out += ' ';
      ++column;
    }
    out += word;
    column += wide;
    begin = end + 1;
  }
  return out;
}

// A word that begins at byte `at` of a quiet text, what is marked of it bold.
std::string with_marks(std::string_view word, std::size_t at, const std::vector<Mark>& marks) {
  std::string out;
  std::size_t done = 0;
  for (const Mark& mark : marks) {
    const std::size_t begin = std::clamp(mark.begin, at + done, at + word.size()) - at;
    const std::size_t end = std::clamp(mark.end, at + done, at + word.size()) - at;
    if (begin >= end) continue;
    out += word.substr(done, begin - done);
    out += plain;
    out += bold;
    out += word.substr(begin, end - begin);
    out += plain;
    out += quiet;
    done = end;
  }
  out += word.substr(done);
  return out;
}

}  // namespace

int columns_of(std::string_view text) {
  int width = 0;
  for (const Character& c : characters(text))
    width += utf8proc_charwidth(static_cast<utf8proc_int32_t>(c.code));
  return width;
}

Output Output::of_process(bool json) {
  const bool terminal = isatty(STDOUT_FILENO) != 0;
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  const bool plain_terminal = (no_color && *no_color) || (term && std::string_view(term) == "dumb");
  return Output(json, terminal && !plain_terminal, terminal ? terminal_width() : 0,
                isatty(STDERR_FILENO) != 0);
}

void Output::headline(std::string_view text) {
  if (styled_) put(bold);
  folded(harmless(text), "");
  if (styled_) put(plain);
}

void Output::line(std::string_view text) {
  folded(harmless(text), "");
}

void Output::detail(std::string_view text) {
  if (styled_) put(quiet);
  folded(harmless(text), "  ");
  if (styled_) put(plain);
}

void Output::detail(std::string_view text, const std::vector<Mark>& marks) {
  const std::string shown = harmless(text);
  // Where something was left out, the places are no longer its.
  if (!styled_ || shown != text) return detail(text);
  put(quiet);
  folded(shown, "  ", marks);
  put(plain);
}

void Output::blank() {
  put("\n");
}

void Output::raw(std::string_view text) {
  put(text);
  if (text.empty() || text.back() != '\n') put("\n");
}

void Output::warn(std::string_view text) {
  const std::string line = harmless(text);
  std::fflush(stdout);
  fmt::print(stderr, "{}\n", line);
}

// Breaks at spaces; a word longer than the line stays whole.
void Output::folded(std::string_view text, std::string_view indent, const std::vector<Mark>& marks) {
  std::string out(indent);
  const int room = width_ > 0 ? width_ : 1'000'000;
  int column = columns_of(indent);
  std::size_t begin = 0;
  while (begin <= text.size()) {
    std::size_t end = text.find_first_of(" \n", begin);
    if (end == std::string_view::npos) end = text.size();
    const std::string_view word = text.substr(begin, end - begin);
    const int wide = columns_of(word);
    if (begin > 0 && text[begin - 1] == '\n') {
      out += '\n';
      out += indent;
      column = columns_of(indent);
    } else if (begin > 0 && column + 1 + wide > room) {
      out += "\n  ";
      out += indent;
      column = columns_of(indent) + 2;
    } else if (begin > 0) {
      out += ' ';
      ++column;
    }
    out += with_marks(word, begin, marks);
    column += wide;
    begin = end + 1;
  }
  out += '\n';
  put(out);
}

void Output::table(const Table& table) {
  std::vector<std::vector<std::string>> rows = without_blank_columns(table);
  std::vector<int> widths;
  for (auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) {
      row[i] = harmless(row[i]);
      widths[i] = std::max(widths[i], columns_of(row[i]));
    }
  }
  if (widths.empty()) return;
  int before_last = 2;
  for (std::size_t i = 0; i + 1 < widths.size(); ++i) before_last += widths[i] + 2;
  const bool narrow = width_ > 0 && before_last + widths.back() > width_;
  const bool has_head = !table.head.empty();
  if (!narrow)
    columns(rows, widths, Last::beside, has_head);
  else if (width_ - before_last >= width_ / 3)
    columns(rows, widths, Last::folded, has_head);
  else if (before_last - 2 <= width_)
    columns(rows, widths, Last::below, has_head);
  else
    blocks(rows, has_head);
}

void Output::columns(const std::vector<std::vector<std::string>>& rows, const std::vector<int>& widths,
                     Last last, bool has_head) {
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const bool quietly = r == 0 && has_head && styled_;
    std::string line = "  ";
    int column = 2;
    std::string below;
    for (std::size_t i = 0; i < rows[r].size(); ++i) {
      const bool is_last = i + 1 == widths.size();
      if (is_last && last == Last::below)
        below = rows[r][i];
      else
        line += is_last && last == Last::folded ? hanging(rows[r][i], column, width_) : rows[r][i];
      if (is_last) break;
      line.append(static_cast<std::size_t>(widths[i] - columns_of(rows[r][i]) + 2), ' ');
      column += widths[i] + 2;
    }
    line.erase(line.find_last_not_of(' ') + 1);
    if (quietly) put(quiet);
    put(line);
    if (quietly) put(plain);
    put("\n");
    if (below.empty() || (r == 0 && has_head)) continue;
    const std::string head = has_head && rows[0].size() == widths.size() ? rows[0].back() : std::string();
    under(head.empty() ? below : head + ": " + below);
  }
}

// Belongs to the line above.
void Output::under(std::string_view text) {
  if (styled_) put(quiet);
  folded(text, "    ");
  if (styled_) put(plain);
}

// A table too wide for the terminal: each row by itself, its first cell set off, the others behind their
// heads.
void Output::blocks(const std::vector<std::vector<std::string>>& rows, bool has_head) {
  for (std::size_t r = has_head ? 1 : 0; r < rows.size(); ++r) {
    folded(rows[r].front(), "  ");
    std::string rest;
    for (std::size_t i = 1; i < rows[r].size(); ++i) {
      if (rows[r][i].empty()) continue;
      if (!rest.empty()) rest += "; ";
      if (has_head && !rows[0][i].empty()) rest += rows[0][i] + " ";
      rest += rows[r][i];
    }
    if (!rest.empty()) under(rest);
  }
}

void Output::progress(std::string_view what, std::int64_t done, std::int64_t all) {
  if (!progress_) return;
  const std::int64_t now = now_ms();
  if (done < all && now - last_progress_ms_ < progress_pause_ms) return;
  last_progress_ms_ = now;
  fmt::print(stderr, "\r{}: {} of {}{}", what, done, all, done >= all ? "\n" : "");
  std::fflush(stderr);
}

int exit_status(ProblemKind kind) {
  return kind == ProblemKind::unusable_book ? 3 : 2;
}

std::string problem_text(const Problem& problem) {
  std::string text = problem.what;
  const Place& place = problem.where;
  if (!place.file.empty()) {
    std::string where = place.file;
    if (place.row > 0) where += fmt::format(", row {}", place.row);
    if (!place.column.empty()) where += fmt::format(", {}", place.column);
    text = where + ": " + text;
  }
  if (place.at && !place.text.empty() && place.text.find('\n') == std::string::npos) {
    const std::vector<Character> all = characters(place.text);
    const std::size_t at = std::min(*place.at, all.size());
    const std::size_t offset = at < all.size() ? all[at].begin : place.text.size();
    text += fmt::format(
        "\n  {}\n  {}{}", place.text,
        std::string(static_cast<std::size_t>(columns_of(std::string_view(place.text).substr(0, offset))),
                    ' '),
        std::string(std::max<std::size_t>(1, place.length), '^'));
  }
  if (!problem.expected.empty()) text += "\n  " + problem.expected;
  if (!problem.candidates.empty()) {
    text += !problem.expected.empty() && problem.kind == ProblemKind::ambiguous ? ""
            : problem.kind == ProblemKind::ambiguous                            ? "\n  one of:"
            : problem.kind == ProblemKind::refused                              ? "\n  these:"
                                                                                : "\n  did you mean:";
    for (const std::string& candidate : problem.candidates) text += "\n    " + candidate;
  }
  return text;
}

int Output::problem(const Problem& problem) {
  if (json_) raw(problem_json(problem));
  warn(problem_text(problem));
  return exit_status(problem.kind);
}

}  // namespace insetbook::cli
