// SPDX-License-Identifier: GPL-3.0-or-later
//
// The bare calls: what SQLite and Xapian must be asked at least for the hits of a question, written by hand
// for each of a fixed mix (questions.cc, mix.h), on the book's own file and index. The first twenty hits with
// title and date, in the same order, the rows that the answer quotes of each to say why it is one, and how
// many there are in all, counted to 10 000 as `find` does. No reading of the question, nothing decided or
// compared, no check that the index is in step.
#pragma once

#include <sqlite3.h>

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace Xapian {
class Database;
class MSet;
}  // namespace Xapian

struct BareQuestion {
  enum class Way {
    rows,             // SQLite alone
    words,            // Xapian alone, titles from SQLite
    words_then_rows,  // Xapian's hits, each looked at by SQLite
    rows_then_words,  // the samples of SQLite, put in order by Xapian
  };
  std::string text;  // as a person asks it
  Way way;
  std::string words;  // all of them are required
  // rows: id, title, made of the hits in order. words_then_rows: title, made of sample ?1 if it is a hit.
  // rows_then_words: ids, sorted.
  std::string hits;
  // rows: how many, where counting the rows of `hits` would take longer; else empty.
  std::string total;
  // rows: the same by another way into the tables, or empty.
  std::string other_hits, other_total;
  // Counts of what narrows the answer, asked besides.
  std::string facets;
  // What the answer quotes of each hit: its pieces with their sizes, what is said of it and of them, and the
  // first of its texts that holds the words.
  struct Quoted {
    bool pieces = false, said = false, text = false;
  };
  Quoted quoted = {};
};

std::span<const BareQuestion> bare_questions();

struct BareHit {
  std::int64_t id = 0;
  std::string title, made;
  std::vector<std::string> quoted;
};

struct BareAnswer {
  std::vector<BareHit> hits;
  std::size_t total = 0;
};

inline constexpr int bare_limit = 20;
inline constexpr int bare_counted_to = 10'000;

class Bare {
 public:
  explicit Bare(const std::string& book_folder);
  ~Bare();
  BareAnswer ask(const BareQuestion& question);
  BareAnswer ask_without_quoting(const BareQuestion& question);
  // How many there are in all, not only to 10 000.
  std::size_t count(const BareQuestion& question);
  sqlite3_stmt* statement(const std::string& sql);  // prepared once, reset

 private:
  BareAnswer ask_rows(const BareQuestion& question);
  BareAnswer ask_words(const BareQuestion& question);
  BareAnswer ask_words_then_rows(const BareQuestion& question);
  BareAnswer ask_rows_then_words(const BareQuestion& question);
  const Xapian::Database& index();
  void quote_rows(const char* sql, BareHit& hit);
  void quote_text(const Xapian::MSet& marks, BareHit& hit);

  std::string folder_;
  sqlite3* db_ = nullptr;
  std::map<std::string, sqlite3_stmt*, std::less<>> statements_;
  std::unique_ptr<Xapian::Database> index_;
};
