// SPDX-License-Identifier: GPL-3.0-or-later
//
// Short ways to put invented records into a book, for the tests.
#pragma once

#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <string_view>

#include "book/book.h"
#include "book/records.h"
#include "book/temporary_folder.h"

namespace insetbook {

// A book in a folder of its own.
struct TestBook {
  TestBook() : book(make(folder)) {}

  static Book make(const TemporaryFolder& folder) {
    Result<Book> made = Book::create(folder.path());
    if (!made) throw std::runtime_error(made.error().what);
    return std::move(*made);
  }

  void change(std::string_view what, const std::function<void(Change&)>& work) {
    const Result<void> done = book.change(what, [&](Change& change) -> Result<void> {
      work(change);
      return {};
    });
    ASSERT_TRUE(done) << done.error().what;
  }

  TemporaryFolder folder;
  Book book;
};

inline Measured measured(Length width, Length height, std::string_view method = "ruler") {
  Measured one;
  one.width = width;
  one.height = height;
  one.method = method;
  return one;
}

inline LineRow line_row(std::string_view set, std::string_view die, std::string_view kind,
                        std::string_view shape) {
  LineRow row;
  row.set = set;
  row.die = die;
  row.line = kind;
  row.line_kind = kind;
  row.shape = shape;
  return row;
}

// A numbered nested set of `count` rectangles, each a quarter inch smaller than the one before, cut and
// stitched.
inline void put_nested_set(Change& change, std::string_view name, int count) {
  for (int i = 1; i <= count; ++i) {
    const Length width = Length::inches(4) - Length::inch_fraction(i, 4), height = width + Length::inches(1);
    for (const std::string_view kind : {"cut", "stitched"}) {
      LineRow row = line_row(name, std::to_string(i), kind, "rectangle");
      row.rank = i;
      const Length in = kind == "cut" ? Length() : Length::inch_fraction(1, 8);
      row.measured = measured(width - in, height - in);
      ASSERT_TRUE(put_line(change, row));
    }
  }
}

inline std::int64_t put_titled(Change& change, std::string_view title) {
  SampleRow row;
  row.title = title;
  return put_sample(change, row)->second;
}

// Every table but the log and what is derived, row by row: what undo must bring back.
inline std::string dump(const Book& book) {
  const Database& db = book.database();
  std::string all;
  Statement tables = db.prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'name\\_%' ESCAPE '\\' AND name "
      "NOT IN "
      "('change', 'change_row') ORDER BY name");
  while (tables.step()) {
    Statement rows = db.prepare("SELECT * FROM \"" + std::string(tables.text(0)) + "\" ORDER BY id");
    while (rows.step()) {
      all += tables.text(0);
      for (int i = 0; i < rows.columns(); ++i) {
        all += '|';
        all += rows.is_null(i) ? std::string("null") : std::string(rows.text(i));
      }
      all += '\n';
    }
  }
  return all;
}

}  // namespace insetbook
