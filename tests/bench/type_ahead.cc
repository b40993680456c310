// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is offered at each keystroke (book/names.h, complete), against a bare prefix query of FTS5 with the
// names of its hits. The keystrokes are those of some names of make_tables.cc.
//   type_ahead BOOK RUNS
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "bare.h"
#include "book/names.h"

namespace {

using namespace insetbook;

// Processor time of this process: nothing here waits for a disk, and other programs on the machine do not
// count.
struct Clock {
  using duration = std::chrono::nanoseconds;
  using rep = duration::rep;
  using period = duration::period;
  using time_point = std::chrono::time_point<Clock>;
  static constexpr bool is_steady = true;
  static time_point now() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return time_point(std::chrono::seconds(time.tv_sec) + std::chrono::nanoseconds(time.tv_nsec));
  }
};

constexpr std::size_t offered = 10;

double microseconds(Clock::duration time) {
  return std::chrono::duration<double, std::micro>(time).count();
}

double at(std::vector<double>& values, double part) {
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(part * static_cast<double>(values.size() - 1) + 0.5)];
}

const char* name_of(std::int64_t kind) {
  static const char* const sql[] = {
      "",
      "SELECT name FROM die_set WHERE id = ?1",
      "SELECT s.name || ' ' || d.label FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = ?1",
      "SELECT kind || ', ' || u.name || ', ' || c.name FROM supply u LEFT JOIN colour c ON c.id = "
      "u.colour_id "
      "WHERE u.id = ?1",
      "SELECT name FROM colour WHERE id = ?1",
      "SELECT title FROM sample WHERE id = ?1"};
  return sql[kind];
}

// Every word typed so far, the last one as a beginning.
std::string match_of(const std::string& typed) {
  std::string match;
  std::size_t begin = 0;
  while (begin < typed.size()) {
    const std::size_t end = std::min(typed.find(' ', begin), typed.size());
    const bool last = end >= typed.size();
    if (end > begin) {
      match += (match.empty() ? "\"" : " AND \"") + typed.substr(begin, end - begin) + (last ? "\"*" : "\"");
    }
    begin = end + 1;
  }
  return match;
}

std::size_t bare_complete(Bare& bare, const std::string& typed) {
  const std::string match = match_of(typed);
  sqlite3_stmt* rows = bare.statement("SELECT rowid FROM name_word WHERE name_word MATCH ?1 LIMIT 10");
  sqlite3_bind_text(rows, 1, match.c_str(), -1, SQLITE_STATIC);
  std::vector<std::string> names;
  while (sqlite3_step(rows) == SQLITE_ROW) {
    const std::int64_t id = sqlite3_column_int64(rows, 0);
    sqlite3_stmt* name = bare.statement(name_of(id % 8));
    sqlite3_bind_int64(name, 1, id / 8);
    if (sqlite3_step(name) == SQLITE_ROW && sqlite3_column_bytes(name, 0) > 0) {
      names.emplace_back(reinterpret_cast<const char*>(sqlite3_column_text(name, 0)));
    }
    sqlite3_reset(name);
  }
  sqlite3_reset(rows);
  return names.size();
}

}  // namespace

int main(int argc, char** argv) {
  const int runs = argc == 3 ? std::atoi(argv[2]) : 0;
  if (runs < 1) {
    std::fprintf(stderr, "usage: type_ahead BOOK RUNS\n");
    return 2;
  }
  const Result<Book> book = Book::open(argv[1], Book::Use::read);
  if (!book) {
    std::fprintf(stderr, "%s\n", book.error().what.c_str());
    return 2;
  }
  Bare bare(argv[1]);
  std::vector<double> ours, theirs;
  double slowest = 0;
  std::string slowest_typed;
  for (const std::string name :
       {"dekadener circles 3", "debahuner tone", "badle katern", "rakadedle rect", "kaletern"}) {
    for (std::size_t length = 1; length <= name.size(); ++length) {
      const std::string typed = name.substr(0, length);
      std::vector<double> here;
      for (int run = -1; run < runs; ++run) {
        const auto start = Clock::now();
        const std::size_t found = complete(*book, typed, offered).size();
        const auto between = Clock::now();
        const std::size_t bare_found = bare_complete(bare, typed);
        const auto end = Clock::now();
        if (found == 0 || bare_found == 0) {
          std::fprintf(stderr, "\"%s\": %zu offered, bare %zu\n", typed.c_str(), found, bare_found);
          return 1;
        }
        if (run < 0) continue;
        ours.push_back(microseconds(between - start));
        theirs.push_back(microseconds(end - between));
        here.push_back(ours.back());
      }
      if (const double median = at(here, 0.5); median > slowest) {
        slowest = median;
        slowest_typed = typed;
      }
    }
  }
  std::printf("%.0f %.0f %.2f %.0f %.0f %.2f\n", at(ours, 0.5), at(theirs, 0.5),
              at(ours, 0.5) / at(theirs, 0.5), at(ours, 0.99), at(theirs, 0.99),
              at(ours, 0.99) / at(theirs, 0.99));
  std::fprintf(stderr, "slowest keystroke: \"%s\", %.0f microseconds\n", slowest_typed.c_str(), slowest);
  return 0;
}
