// SPDX-License-Identifier: GPL-3.0-or-later
#include "bare.h"

#include <xapian.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace {

[[noreturn]] void give_up(const std::string& what) {
  std::fprintf(stderr, "%s\n", what.c_str());
  std::exit(2);
}

std::string text(sqlite3_stmt* row, int column) {
  const auto* const begin = reinterpret_cast<const char*>(sqlite3_column_text(row, column));
  return begin ? std::string(begin, static_cast<std::size_t>(sqlite3_column_bytes(row, column))) : "";
}

BareHit hit(sqlite3_stmt* row) {
  return {sqlite3_column_int64(row, 0), text(row, 1), text(row, 2), {}};
}

constexpr auto pieces_of_hit =
    "SELECT name, role, shape, width_nm, height_nm, unit, count, goes, goes_to FROM element WHERE sample_id "
    "= "
    "?1 ORDER BY position, id";
constexpr auto said_of_hit =
    "SELECT m.kind, m.written, m.term, m.colour_id, m.element_id FROM mention m WHERE m.sample_id = ?1 ORDER "
    "BY m.id";
// The texts of a sample, from the likeliest to hold a word.
constexpr const char* texts_of_hit[] = {
    "SELECT title, words, steps, note, envelope, based_on, base_text FROM sample WHERE id = ?1",
    "SELECT name, role, shape, goes, at, glue, note FROM element WHERE sample_id = ?1 ORDER BY position, id",
    "SELECT m.written, c.name, p.name, p.words FROM mention m LEFT JOIN colour c ON c.id = m.colour_id LEFT "
    "JOIN supply p ON p.id = m.supply_id WHERE m.sample_id = ?1 ORDER BY m.id",
};

Xapian::Query all_words(std::string_view words, const char* prefix = "") {
  const Xapian::Stem stem("english");
  std::vector<Xapian::Query> terms;
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(' '), words.size());
    terms.emplace_back(prefix + stem(std::string(words.substr(0, end))));
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return {Xapian::Query::OP_AND, terms.begin(), terms.end()};
}

class Among : public Xapian::PostingSource {
 public:
  explicit Among(std::vector<Xapian::docid> ids) : ids_(std::move(ids)) {}
  Xapian::doccount get_termfreq_min() const override { return 0; }
  Xapian::doccount get_termfreq_est() const override { return static_cast<Xapian::doccount>(ids_.size()); }
  Xapian::doccount get_termfreq_max() const override { return static_cast<Xapian::doccount>(ids_.size()); }
  void init(const Xapian::Database&) override { at_ = -1; }
  void next(double) override { ++at_; }
  void skip_to(Xapian::docid id, double) override {
    at_ = std::lower_bound(ids_.begin() + std::max<std::ptrdiff_t>(at_, 0), ids_.end(), id) - ids_.begin();
  }
  bool at_end() const override { return at_ >= static_cast<std::ptrdiff_t>(ids_.size()); }
  Xapian::docid get_docid() const override { return ids_[static_cast<std::size_t>(at_)]; }

 private:
  std::vector<Xapian::docid> ids_;
  std::ptrdiff_t at_ = -1;
};

Xapian::MSet best(const Xapian::Database& index, const Xapian::Query& query, Xapian::doccount most) {
  Xapian::Enquire enquire(index);
  enquire.set_query(query);
  enquire.set_weighting_scheme(Xapian::BM25Weight(1.2, 0, 1, 0.75, 0.5));  // as src/search/index.cc has it
  enquire.set_sort_by_relevance_then_value(0, false);
  return enquire.get_mset(0, most, bare_counted_to + 1);
}

std::size_t counted(std::size_t found) {
  return std::min(found, static_cast<std::size_t>(bare_counted_to));
}

}  // namespace

Bare::Bare(const std::string& book_folder) : folder_(book_folder) {
  const std::string file = folder_ + "/book.db";
  if (sqlite3_open_v2(file.c_str(), &db_, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) {
    give_up(file + ": " + sqlite3_errmsg(db_));
  }
}

Bare::~Bare() {
  for (auto& [sql, statement] : statements_) sqlite3_finalize(statement);
  sqlite3_close(db_);
}

sqlite3_stmt* Bare::statement(const std::string& sql) {
  const auto [place, added] = statements_.try_emplace(sql, nullptr);
  if (!added) {
    sqlite3_reset(place->second);
  } else if (sqlite3_prepare_v3(db_, sql.c_str(), -1, SQLITE_PREPARE_PERSISTENT, &place->second, nullptr) !=
             SQLITE_OK) {
    give_up(sql + ": " + sqlite3_errmsg(db_));
  }
  return place->second;
}

const Xapian::Database& Bare::index() {
  if (!index_) index_ = std::make_unique<Xapian::Database>(folder_ + "/index");
  return *index_;
}

void Bare::quote_rows(const char* sql, BareHit& hit) {
  sqlite3_stmt* rows = statement(sql);
  sqlite3_bind_int64(rows, 1, hit.id);
  while (sqlite3_step(rows) == SQLITE_ROW) {
    for (int i = 0; i < sqlite3_column_count(rows); ++i) hit.quoted.push_back(text(rows, i));
  }
  sqlite3_reset(rows);
}

// Xapian's own cutting and marking, which knows a stem by the Z before it.
void Bare::quote_text(const Xapian::MSet& marks, BareHit& hit) {
  const Xapian::Stem stem("english");
  for (const char* sql : texts_of_hit) {
    BareHit fields;
    fields.id = hit.id;
    quote_rows(sql, fields);
    for (const std::string& field : fields.quoted) {
      std::string shown =
          marks.snippet(field, 80, stem, Xapian::MSet::SNIPPET_EMPTY_WITHOUT_MATCH, "<", ">", "…");
      if (shown.empty()) continue;
      hit.quoted.push_back(std::move(shown));
      return;
    }
  }
}

BareAnswer Bare::ask(const BareQuestion& question) {
  BareAnswer answer = ask_without_quoting(question);
  for (BareHit& each : answer.hits) {
    if (question.quoted.pieces) quote_rows(pieces_of_hit, each);
    if (question.quoted.said) quote_rows(said_of_hit, each);
  }
  if (!question.quoted.text) return answer;
  Xapian::Enquire enquire(index());
  enquire.set_query(all_words(question.words, "Z"));
  const Xapian::MSet marks = enquire.get_mset(0, 0);
  for (BareHit& each : answer.hits) quote_text(marks, each);
  return answer;
}

BareAnswer Bare::ask_without_quoting(const BareQuestion& question) {
  try {
    switch (question.way) {
      case BareQuestion::Way::rows:
        return ask_rows(question);
      case BareQuestion::Way::words:
        return ask_words(question);
      case BareQuestion::Way::words_then_rows:
        return ask_words_then_rows(question);
      case BareQuestion::Way::rows_then_words:
        return ask_rows_then_words(question);
    }
  } catch (const Xapian::Error& error) {
    give_up(error.get_description());
  }
  return {};
}

BareAnswer Bare::ask_rows(const BareQuestion& question) {
  BareAnswer answer;
  sqlite3_stmt* rows = statement(question.hits);
  while (sqlite3_step(rows) == SQLITE_ROW) {
    if (answer.hits.size() < bare_limit) answer.hits.push_back(hit(rows));
    ++answer.total;
  }
  sqlite3_reset(rows);
  if (!question.total.empty()) {
    sqlite3_stmt* count = statement(question.total);
    sqlite3_step(count);
    answer.total = static_cast<std::size_t>(sqlite3_column_int64(count, 0));
    sqlite3_reset(count);
  }
  answer.total = counted(answer.total);
  if (!question.facets.empty()) {
    sqlite3_stmt* counts = statement(question.facets);
    while (sqlite3_step(counts) == SQLITE_ROW) sqlite3_column_int64(counts, 2);
    sqlite3_reset(counts);
  }
  return answer;
}

std::size_t Bare::count(const BareQuestion& question) {
  std::string sql;
  if (question.way == BareQuestion::Way::rows) {
    sql = "SELECT count(*) FROM (" + question.hits + ")";
  } else if (question.way == BareQuestion::Way::words) {
    return best(index(), all_words(question.words), index().get_doccount()).size();
  } else {
    return ask_without_quoting(question).total;
  }
  sqlite3_stmt* rows = statement(sql);
  sqlite3_step(rows);
  const auto found = static_cast<std::size_t>(sqlite3_column_int64(rows, 0));
  sqlite3_reset(rows);
  return found;
}

BareAnswer Bare::ask_words(const BareQuestion& question) {
  BareAnswer answer;
  const Xapian::MSet found = best(index(), all_words(question.words), bare_limit);
  answer.total = counted(found.get_matches_lower_bound());
  sqlite3_stmt* row = statement("SELECT id, title, made FROM sample WHERE id = ?1");
  for (auto each = found.begin(); each != found.end(); ++each) {
    sqlite3_bind_int64(row, 1, *each);
    if (sqlite3_step(row) == SQLITE_ROW) answer.hits.push_back(hit(row));
    sqlite3_reset(row);
  }
  return answer;
}

BareAnswer Bare::ask_words_then_rows(const BareQuestion& question) {
  BareAnswer answer;
  const Xapian::MSet found = best(index(), all_words(question.words), index().get_doccount());
  sqlite3_stmt* row = statement(question.hits);
  for (auto each = found.begin(); each != found.end(); ++each) {
    sqlite3_bind_int64(row, 1, *each);
    if (sqlite3_step(row) == SQLITE_ROW) {
      if (answer.hits.size() < bare_limit) answer.hits.push_back(hit(row));
      ++answer.total;
    }
    sqlite3_reset(row);
  }
  answer.total = counted(answer.total);
  return answer;
}

BareAnswer Bare::ask_rows_then_words(const BareQuestion& question) {
  std::vector<Xapian::docid> ids;
  sqlite3_stmt* rows = statement(question.hits);
  while (sqlite3_step(rows) == SQLITE_ROW) {
    ids.push_back(static_cast<Xapian::docid>(sqlite3_column_int64(rows, 0)));
  }
  sqlite3_reset(rows);
  Among among(std::move(ids));
  const Xapian::MSet found =
      best(index(), Xapian::Query(Xapian::Query::OP_FILTER, all_words(question.words), Xapian::Query(&among)),
           bare_limit);
  BareAnswer answer;
  answer.total = counted(found.get_matches_lower_bound());
  sqlite3_stmt* row = statement("SELECT id, title, made FROM sample WHERE id = ?1");
  for (auto each = found.begin(); each != found.end(); ++each) {
    sqlite3_bind_int64(row, 1, *each);
    if (sqlite3_step(row) == SQLITE_ROW) answer.hits.push_back(hit(row));
    sqlite3_reset(row);
  }
  return answer;
}
