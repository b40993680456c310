// SPDX-License-Identifier: GPL-3.0-or-later
//
// `frames` over 10 000 openings beside reading them, and a kept answer beside the SQL that fetches it.
//   bench_openings tables FILE    writes the table of dies: nine in ten plain shapes, the rest of 200 corners
//   bench_openings times BOOK     medians, warm, in one process, of the book made from it
// The first question computes what is known of each outline and keeps it; that one is timed apart.
#include "book/openings.h"

#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <numbers>
#include <random>
#include <string_view>
#include <vector>

#include "answers/frames.h"
#include "answers/kept_panels.h"

namespace {

using namespace insetbook;

constexpr int sets = 500, dies_in_set = 20, corners = 200;
constexpr int turns = 21;

std::string sixteenths(int count) {
  return std::to_string(count / 16) + " " + std::to_string(count % 16) + "/16 in";
}

std::string size_of(int sixteenth) {
  if (sixteenth % 16 == 0) return std::to_string(sixteenth / 16) + " in";
  return sixteenth < 16 ? std::to_string(sixteenth) + "/16 in" : sixteenths(sixteenth);
}

std::string millimetres(long long micrometres) {
  const std::string digits = std::to_string(1000 + micrometres % 1000);
  return std::to_string(micrometres / 1000) + "." + digits.substr(1);
}

// The size, figures, outline and unit of a waved outline of 200 corners.
void write_outline(std::ostream& out, std::mt19937& random, int width) {
  std::uniform_real_distribution<double> part(0, 1);
  const double waves = 2 + std::floor(4 * part(random)), turned = part(random), deep = 0.25 * part(random);
  std::vector<long long> x, y;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners;
    const double radius = width * 25.4 / 32 * 1000 *
                          (0.75 + deep * std::sin(waves * (angle + turned)) + 0.5 / corners * part(random));
    x.push_back(std::llround(200'000 + radius * std::cos(angle)));
    y.push_back(std::llround(200'000 + 0.8 * radius * std::sin(angle)));
  }
  const auto [left, right] = std::ranges::minmax(x);
  const auto [top, bottom] = std::ranges::minmax(y);
  out << millimetres(right - left) << " x " << millimetres(bottom - top) << " mm,,\"";
  for (std::size_t i = 0; i < x.size(); ++i)
    out << (i == 0 ? "M" : "L") << millimetres(x[i]) << ' ' << millimetres(y[i]);
  out << "Z\",mm\n";
}

int write_tables(const char* file) {
  std::mt19937 random(20);
  std::uniform_int_distribution<int> side(12, 96);
  std::ofstream out(file);
  out << "set,die,line,shape,size,figures,outline,unit\n";
  for (int set = 0; set < sets; ++set) {
    for (int die = 0; die < dies_in_set; ++die) {
      const int width = side(random), height = side(random);
      out << "Bench " << set << ",no " << die << ",cut,";
      const std::string both = size_of(width) + " x " + size_of(height);
      if (die % 10 == 9) {
        out << "outline,";
        write_outline(out, random, width);
      } else if (die % 5 == 0) {
        out << "circle," << size_of(width) << ",,,\n";
      } else if (die % 5 == 1) {
        out << "oval," << both << ",,,\n";
      } else if (die % 5 == 2) {
        out << "rounded rectangle," << both << ",radius 1/8 in,,\n";
      } else if (die % 5 == 3) {
        out << "rectangle," << both << ",,,\n";
      } else {
        out << "square," << size_of(width) << ",,,\n";
      }
    }
  }
  return out ? 0 : 1;
}

double ms_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

template <class Work>
double median_ms(const Work& work) {
  std::vector<double> times;
  for (int turn = 0; turn < turns; ++turn) {
    const auto start = std::chrono::steady_clock::now();
    work();
    times.push_back(ms_since(start));
  }
  std::nth_element(times.begin(), times.begin() + turns / 2, times.end());
  return times[turns / 2];
}

void time_frames(const Book& book) {
  std::size_t read = 0;
  const double reading = median_ms([&] { read = measured_openings(book, std::nullopt).size(); });
  std::printf("%-52s %10s %10s %8s   target\n", "", "frames", "reading", "ratio");
  for (const char* size : {"2-3/8 in circle", "2 x 3 in", "1 in square", "4-1/4 x 5-1/2 in"}) {
    const FramesAsked asked{.size = size, .most = 20};
    std::size_t total = 0;
    const auto ask = [&] {
      const Result<FramesAnswer> answer = what_frames(book, asked);
      total = answer ? answer->total : 0;
    };
    auto start = std::chrono::steady_clock::now();
    ask();
    const double first = ms_since(start);
    const double again = median_ms(ask);
    std::printf("frames %-16s of %zu: %5zu, first time %6.1f ms %8.2f ms %7.2f ms %8.2f   <= 3\n", size, read,
                total, first, again, reading, again / reading);
  }
}

// The row that holds a kept answer, fetched by bare calls.
double bare_ms(const Book& book, std::int64_t line_id) {
  sqlite3* db = nullptr;
  sqlite3_open_v2((book.folder() / "derived.db").c_str(), &db, SQLITE_OPEN_READONLY, nullptr);
  sqlite3_stmt* all = nullptr;
  sqlite3_prepare_v2(db, "SELECT opening, question FROM kept WHERE line_id = ? AND question LIKE '%shape%'",
                     -1, &all, nullptr);
  sqlite3_bind_int64(all, 1, line_id);
  std::string opening, question;
  if (sqlite3_step(all) == SQLITE_ROW) {
    opening = reinterpret_cast<const char*>(sqlite3_column_text(all, 0));
    question = reinterpret_cast<const char*>(sqlite3_column_text(all, 1));
  }
  sqlite3_finalize(all);
  sqlite3_close(db);
  std::size_t bytes = 0;
  const double took = median_ms([&] {
    for (int i = 0; i < 20; ++i) {
      sqlite3* again = nullptr;
      sqlite3_open_v2((book.folder() / "derived.db").c_str(), &again, SQLITE_OPEN_READONLY, nullptr);
      sqlite3_stmt* row = nullptr;
      sqlite3_prepare_v2(again, "SELECT answer FROM kept WHERE line_id = ? AND opening = ? AND question = ?",
                         -1, &row, nullptr);
      sqlite3_bind_int64(row, 1, line_id);
      sqlite3_bind_text(row, 2, opening.c_str(), -1, SQLITE_STATIC);
      sqlite3_bind_text(row, 3, question.c_str(), -1, SQLITE_STATIC);
      if (sqlite3_step(row) == SQLITE_ROW)
        bytes += std::string(reinterpret_cast<const char*>(sqlite3_column_text(row, 0))).size();
      sqlite3_finalize(row);
      sqlite3_close(again);
    }
  });
  return bytes == 0 ? 0 : took / 20;
}

void time_kept(const Book& book) {
  std::vector<OpeningRecord> all = measured_openings(book, std::nullopt);
  const auto outline =
      std::ranges::find_if(all, [](const OpeningRecord& one) { return !one.outline.empty(); });
  if (outline == all.end()) return;
  const Result<Shape> shape = shape_of(*outline);
  if (!shape) return;
  const Opening opening{*shape, outline->give_or_take};
  const FitQuestion question{Length::inch_fraction(1, 16),
                             Length::inch_fraction(1, 16),
                             {ShapeKind::outline, ShapeKind::rectangle, ShapeKind::square, ShapeKind::circle},
                             {},
                             {}};
  const auto ask = [&] { return panels_of_opening(book, outline->line_id, opening, question).has_value(); };
  const auto start = std::chrono::steady_clock::now();
  ask();
  const double first = ms_since(start);
  const double kept = median_ms([&] {
                        for (int i = 0; i < 20; ++i) ask();
                      }) /
                      20;
  const double bare = bare_ms(book, outline->line_id);
  std::printf("%-52s %10s %10s %8s   target\n", "", "ours", "bare SQL", "ratio");
  std::printf("a kept answer, first time %8.1f ms %16s %7.3f ms %7.3f ms %8.2f   <= 2\n", first, "", kept,
              bare, kept / bare);
}

}  // namespace

int main(int argc, char** argv) {
  const std::string_view what = argc == 3 ? argv[1] : "";
  if (what == "tables") return write_tables(argv[2]);
  if (what != "times") {
    std::fputs("usage: bench_openings tables FILE | times BOOK\n", stderr);
    return 2;
  }
  const Result<Book> book = Book::open(argv[2], Book::Use::read);
  if (!book) return 1;
  time_frames(*book);
  time_kept(*book);
  return 0;
}
