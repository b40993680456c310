// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/changes.h"

#include <fmt/core.h>
#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <set>

#include "book/book_parts.h"
#include "book/row_text.h"

namespace insetbook {

namespace {

LoggedChange read_change(const Statement& row) {
  LoggedChange change;
  change.id = row.integer(0);
  change.made = row.text(1);
  change.what = row.text(2);
  change.undoes = row.maybe_integer(3);
  change.undone_by = row.maybe_integer(4);
  change.rows = row.integer(5);
  return change;
}

std::optional<LoggedChange> change_of(const Book& book, std::optional<std::int64_t> id) {
  Statement& statement =
      id ? book.statement(
               "SELECT c.id, made, what, undoes, undone_by, (SELECT count(*) FROM change_row WHERE change_id "
               "= "
               "c.id) FROM change c WHERE c.id = ?")
         : book.statement(
               "SELECT c.id, made, what, undoes, undone_by, (SELECT count(*) FROM change_row WHERE change_id "
               "= "
               "c.id) FROM change c WHERE undoes IS NULL AND undone_by IS NULL ORDER BY c.id DESC LIMIT 1");
  if (id) statement.bind(1, *id);
  std::optional<LoggedChange> found;
  if (statement.step()) found = read_change(statement);
  statement.reset();
  return found;
}

std::string name_of_change(const LoggedChange& change) {
  return fmt::format("{}: {} ({})", change.id, change.what, change.made.substr(0, 10));
}

Problem no_such_change(const Book& book, std::int64_t id) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = fmt::format("there is no change {}", id);
  problem.expected = fmt::format("a number from 1 to {}", book.last_change());
  if (book.last_change() == 0) problem.expected = "nothing in this book has been changed yet";
  return problem;
}

// It made a change anew that was taken back again since.
Problem nothing_left(const LoggedChange& change) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what =
      fmt::format("of change {} (\"{}\") nothing is left that could be taken back", change.id, change.what);
  problem.expected = "\"insetbook undo\" takes the last change back";
  return problem;
}

Problem already_undone(const LoggedChange& change) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what = fmt::format("change {} (\"{}\") has been taken back already, by change {}", change.id,
                             change.what, *change.undone_by);
  problem.expected = fmt::format("\"insetbook undo {}\" makes it anew", *change.undone_by);
  return problem;
}

Problem others_rest_on(const Book& book, const LoggedChange& change, const std::set<std::int64_t>& later) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what = fmt::format("change {} (\"{}\") cannot be taken back: later changes rest on it", change.id,
                             change.what);
  problem.expected = "take those back first, the newest first";
  for (auto one = later.rbegin(); one != later.rend(); ++one) {
    if (const auto found = change_of(book, *one)) problem.candidates.push_back(name_of_change(*found));
  }
  return problem;
}

// A change that was taken back, and the taking back, are nothing together. From the later rows to the earlier
// ones: what is taken back is mostly among the newest.
constexpr std::string_view later_changes_of_same_rows =
    "SELECT c.id FROM change c WHERE c.id > ?1 AND c.undone_by IS NULL "
    "AND NOT EXISTS (SELECT 1 FROM change o WHERE o.id = c.undoes AND o.undone_by = c.id) "
    "AND EXISTS (SELECT 1 FROM change_row later JOIN change_row mine ON mine.tbl = later.tbl AND mine.row_id "
    "= "
    "later.row_id AND mine.change_id = ?1 WHERE later.change_id = c.id)";

std::set<std::int64_t> changes_of(Statement& statement) {
  std::set<std::int64_t> found;
  while (statement.step()) found.insert(statement.integer(0));
  statement.reset();
  return found;
}

// The newest change after `since` that wrote this row as it is.
std::optional<std::int64_t> writer_of_row(const Book& book, std::string_view table, std::int64_t row,
                                          std::int64_t since, std::int64_t until) {
  Statement& statement = book.statement(
      "SELECT max(change_id) FROM change_row WHERE tbl = ? AND row_id = ? AND change_id > ? AND change_id < "
      "?");
  statement.bind_all(table, row, since, until);
  std::optional<std::int64_t> writer;
  if (statement.step()) writer = statement.maybe_integer(0);
  statement.reset();
  return writer;
}

// Puts rows back as the log has them, one table's statements made once from its columns.
class RowWriter {
 public:
  explicit RowWriter(const Database& db) : db_(db) {}

  void remove(std::string_view table, std::int64_t id) { of(table).remove.bind(1, id).run(); }
  void insert(std::string_view table, const std::vector<RowValue>& row) {
    Statement& insert = of(table).insert[row.size()];
    if (insert.handle() == nullptr) insert = db_.prepare(insert_sql(table, row.size()));
    bind(insert, row);
    insert.run();
  }
  void update(std::string_view table, std::int64_t id, const std::vector<RowValue>& row) {
    Statement& update = of(table).update[row.size()];
    if (update.handle() == nullptr) update = db_.prepare(update_sql(table, row.size()));
    bind(update, row);
    update.bind(static_cast<int>(row.size()) + 1, id).run();
  }
  const std::vector<std::string>& columns(std::string_view table) { return of(table).columns; }

 private:
  struct Table {
    std::vector<std::string> columns;
    Statement remove;
    // By the number of columns that the log has of the row: an older program may have known fewer.
    std::map<std::size_t, Statement> insert, update;
  };

  Table& of(std::string_view name) {
    const auto found = tables_.find(name);
    if (found != tables_.end()) return found->second;
    Table& table = tables_[std::string(name)];
    Statement info = db_.prepare("SELECT name FROM pragma_table_info(?) ORDER BY cid");
    info.bind(1, name);
    while (info.step()) table.columns.emplace_back(info.text(0));
    table.remove = db_.prepare(fmt::format("DELETE FROM \"{}\" WHERE id = ?", name));
    return table;
  }

  std::string insert_sql(std::string_view table, std::size_t count) {
    std::string names, marks;
    for (std::size_t i = 0; i < count; ++i) {
      names += fmt::format("{}\"{}\"", i == 0 ? "" : ", ", columns(table).at(i));
      marks += i == 0 ? "?" : ", ?";
    }
    return fmt::format("INSERT INTO \"{}\" ({}) VALUES ({})", table, names, marks);
  }

  std::string update_sql(std::string_view table, std::size_t count) {
    std::string sets;
    for (std::size_t i = 0; i < count; ++i) {
      sets += fmt::format("{}\"{}\" = ?{}", i == 0 ? "" : ", ", columns(table).at(i), i + 1);
    }
    return fmt::format("UPDATE \"{}\" SET {} WHERE id = ?{}", table, sets, count + 1);
  }

  static void bind(Statement& statement, const std::vector<RowValue>& row) {
    int index = 0;
    for (const RowValue& value : row) {
      ++index;
      if (const auto* number = std::get_if<std::int64_t>(&value)) {
        statement.bind(index, *number);
      } else if (const auto* text = std::get_if<std::string>(&value)) {
        statement.bind_kept(index, *text);
      } else {
        statement.bind_null(index);
      }
    }
  }

  const Database& db_;
  std::map<std::string, Table, std::less<>> tables_;
};

struct LoggedRow {
  std::string table;
  std::int64_t id = 0;
  std::optional<std::vector<RowValue>> before;  // empty: the change made the row
  bool deleted = false;                         // the change deleted it
};

LoggedRow read_logged_row(const Statement& statement) {
  LoggedRow row;
  row.table = statement.text(0);
  row.id = statement.integer(1);
  row.deleted = statement.is_null(3);
  if (statement.is_null(2)) return row;
  row.before = read_row_text(statement.text(2));
  if (!row.before) throw StoreError(SQLITE_CORRUPT, "a row of the change log cannot be read");
  return row;
}

void put_back(RowWriter& writer, const LoggedRow& row) {
  if (!row.before) {
    writer.remove(row.table, row.id);
  } else if (row.deleted) {
    writer.insert(row.table, *row.before);
  } else {
    writer.update(row.table, row.id, *row.before);
  }
}

// The rows now there that stand where `row` has to go: the same text or number in a column that admits it
// once.
std::vector<std::int64_t> rows_in_the_way(const Database& db, RowWriter& writer, const LoggedRow& row) {
  std::vector<std::int64_t> found;
  Statement indexes = db.prepare("SELECT name FROM pragma_index_list(?) WHERE \"unique\" = 1");
  indexes.bind(1, row.table);
  while (indexes.step()) {
    std::string where;
    std::vector<RowValue> values;
    Statement parts = db.prepare("SELECT name FROM pragma_index_info(?) ORDER BY seqno");
    parts.bind(1, indexes.text(0));
    while (parts.step()) {
      const auto& columns = writer.columns(row.table);
      const auto at = std::find(columns.begin(), columns.end(), parts.text(0)) - columns.begin();
      where += fmt::format("{}\"{}\" = ?", where.empty() ? "" : " AND ", parts.text(0));
      values.push_back(row.before->at(static_cast<std::size_t>(at)));
    }
    Statement find =
        db.prepare(fmt::format("SELECT id FROM \"{}\" WHERE {} AND id <> {}", row.table, where, row.id));
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (const auto* number = std::get_if<std::int64_t>(&values[i]))
        find.bind(static_cast<int>(i) + 1, *number);
      if (const auto* text = std::get_if<std::string>(&values[i])) find.bind(static_cast<int>(i) + 1, *text);
    }
    while (find.step()) found.push_back(find.integer(0));
  }
  return found;
}

bool references_left_open(const Database& db) {
  int open = 0, highest = 0;
  sqlite3_db_status(db.handle(), SQLITE_DBSTATUS_DEFERRED_FKS, &open, &highest, 0);
  return open != 0;
}

// Later changes whose rows refer to what was just taken away.
std::set<std::int64_t> changes_that_refer(const Change& change, std::int64_t since) {
  std::set<std::int64_t> found;
  Statement check = change.database().prepare("SELECT \"table\", rowid FROM pragma_foreign_key_check");
  while (check.step()) {
    if (const auto writer =
            writer_of_row(change.book(), check.text(0), check.integer(1), since, change.id())) {
      found.insert(*writer);
    }
  }
  return found;
}

Result<void> put_rows_back(Change& change, const LoggedChange& undone) {
  const Book& book = change.book();
  change.database().execute("PRAGMA defer_foreign_keys = ON");
  RowWriter writer(change.database());
  Statement rows = change.database().prepare(
      "SELECT tbl, row_id, before, after FROM change_row WHERE change_id = ? ORDER BY id DESC");
  rows.bind(1, undone.id);
  while (rows.step()) {
    const LoggedRow row = read_logged_row(rows);
    try {
      put_back(writer, row);
    } catch (const StoreError& error) {
      if ((error.code & 0xff) != SQLITE_CONSTRAINT || !row.before) throw;
      std::set<std::int64_t> later;
      for (const std::int64_t other : rows_in_the_way(change.database(), writer, row)) {
        if (const auto by = writer_of_row(book, row.table, other, undone.id, change.id())) later.insert(*by);
      }
      return failure(others_rest_on(book, undone, later));
    }
    book.keep_log_small();
  }
  if (references_left_open(change.database())) {
    return failure(others_rest_on(book, undone, changes_that_refer(change, undone.id)));
  }
  return {};
}

// `undone` may itself be a taking back: then what it took back is live again.
void note_undone(const Change& change, const LoggedChange& undone) {
  const Book& book = change.book();
  book.statement("UPDATE change SET undone_by = ? WHERE id = ?").bind_all(change.id(), undone.id).run();
  book.statement("UPDATE change SET undoes = ? WHERE id = ?").bind_all(undone.id, change.id()).run();
  if (!undone.undoes) return;
  book.statement("UPDATE change SET undone_by = NULL WHERE id = ? AND undone_by = ?")
      .bind_all(*undone.undoes, undone.id)
      .run();
}

}  // namespace

std::vector<LoggedChange> changes(const Book& book, int limit) {
  Statement& statement = book.statement(
      "SELECT c.id, made, what, undoes, undone_by, (SELECT count(*) FROM change_row WHERE change_id = c.id) "
      "FROM change c ORDER BY c.id DESC LIMIT ?");
  statement.bind(1, std::int64_t{limit});
  std::vector<LoggedChange> all;
  while (statement.step()) all.push_back(read_change(statement));
  return all;
}

Result<std::optional<LoggedChange>> undo(Book& book, std::optional<std::int64_t> id) {
  std::optional<LoggedChange> undone;
  const auto choose = [&]() -> Result<void> {
    undone = change_of(book, id);
    if (id && !undone) return failure(no_such_change(book, *id));
    if (undone && undone->undone_by) return failure(already_undone(*undone));
    return {};
  };
  if (const auto chosen = book.reading(choose); !chosen) return failure(chosen.error());
  if (!undone) return std::optional<LoggedChange>();
  const std::int64_t last = book.last_change();
  const Result<void> done = book.change(fmt::format("took back {}: {}", undone->id, undone->what),
                                        [&](Change& change) -> Result<void> {
                                          Statement& later = book.statement(later_changes_of_same_rows);
                                          later.bind(1, undone->id);
                                          std::set<std::int64_t> found = changes_of(later);
                                          found.erase(change.id());
                                          if (!found.empty())
                                            return failure(others_rest_on(book, *undone, found));
                                          if (auto back = put_rows_back(change, *undone); !back) return back;
                                          note_undone(change, *undone);
                                          return {};
                                        });
  if (!done) return failure(done.error());
  if (book.last_change() == last) return failure(nothing_left(*undone));
  return undone;
}

std::vector<std::int64_t> Book::samples_changed_since(std::int64_t change) const {
  // A new colour, supply or set is only known to samples that were touched themselves.
  Statement& statement = this->statement(
      "SELECT sample_id FROM change_row WHERE change_id > ?1 AND sample_id IS NOT NULL "
      "UNION SELECT m.sample_id FROM change_row r JOIN mention m ON m.colour_id = r.row_id "
      "  WHERE r.change_id > ?1 AND r.tbl = 'colour' AND r.before IS NOT NULL "
      "UNION SELECT m.sample_id FROM change_row r JOIN mention m ON m.supply_id = r.row_id "
      "  WHERE r.change_id > ?1 AND r.tbl = 'supply' AND r.before IS NOT NULL "
      "UNION SELECT m.sample_id FROM change_row r JOIN supply s ON s.colour_id = r.row_id "
      "  JOIN mention m ON m.supply_id = s.id WHERE r.change_id > ?1 AND r.tbl = 'colour' AND r.before IS "
      "NOT NULL "
      "UNION SELECT e.sample_id FROM change_row r JOIN element e ON e.set_id = r.row_id "
      "  WHERE r.change_id > ?1 AND r.tbl = 'die_set' AND r.before IS NOT NULL "
      "UNION SELECT e.sample_id FROM change_row r JOIN element e ON e.die_id = r.row_id "
      "  WHERE r.change_id > ?1 AND r.tbl = 'die' AND r.before IS NOT NULL "
      "ORDER BY 1");
  statement.bind(1, change);
  std::vector<std::int64_t> samples;
  while (statement.step()) samples.push_back(statement.integer(0));
  return samples;
}

}  // namespace insetbook
