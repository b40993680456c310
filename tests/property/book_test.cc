// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of the store on generated work: undo brings every earlier state back, refused undo changes nothing, a
// taking back taken back is the change again, the look-up by name is always in step, and looking up agrees
// with reading all the names.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "book/backup.h"
#include "book/changes.h"
#include "book/edit.h"
#include "book/invented.h"
#include "book/names.h"
#include "book/plural.h"
#include "book/row_text.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Few words, so that names meet again.
std::string any_name() {
  static const std::vector<std::string> words{"Tidepool", "Rectangles", "Moonrise", "Kelp",   "Ünder",
                                              "Box",      "Boxes",      "2",        "\"odd\""};
  std::string name = *rc::gen::elementOf(words);
  if (*rc::gen::arbitrary<bool>()) name += " " + *rc::gen::elementOf(words);
  return name;
}

Length any_length() {
  return Length::inch_fraction(*rc::gen::inRange(1, 64), 16);
}

std::int64_t row_of(const Book& book, const std::string& table) {
  Statement& rows = book.statement("SELECT id FROM \"" + table + "\" ORDER BY id");
  std::vector<std::int64_t> ids;
  while (rows.step()) ids.push_back(rows.integer(0));
  return ids.empty() ? 0 : *rc::gen::elementOf(ids);
}

void put_any_line(Change& change) {
  LineRow row = line_row(any_name(), *rc::gen::element<std::string>("1", "2", "big label"),
                         *rc::gen::element<std::string>("cut", "stitched", "window"), "rectangle");
  if (*rc::gen::arbitrary<bool>()) row.measured = measured(any_length(), any_length());
  if (*rc::gen::arbitrary<bool>()) row.code = any_name();
  RC_ASSERT(put_line(change, row).has_value());
}

void put_any_supply(Change& change) {
  SupplyRow row;
  row.kind = *rc::gen::element<std::string>("ink", "stamp");
  row.name = any_name();
  if (*rc::gen::arbitrary<bool>()) row.colour = any_name();
  RC_ASSERT(put_supply(change, row).has_value());
}

void put_any_sample(Change& change) {
  SampleRow row;
  row.title = any_name();
  if (*rc::gen::arbitrary<bool>())
    row.mentions.push_back({"fold", "easel", std::nullopt, std::nullopt, "easel"});
  if (const auto colour = row_of(change.book(), "colour"); colour != 0 && *rc::gen::arbitrary<bool>()) {
    row.mentions.push_back({"paper", std::nullopt, colour, std::nullopt, "paper"});
  }
  const auto put = put_sample(change, row);
  RC_ASSERT(put.has_value());
  ElementRow piece;
  piece.sample_id = put->second;
  piece.name = any_name();
  if (const auto line = row_of(change.book(), "line"); line != 0 && *rc::gen::arbitrary<bool>())
    piece.in_line_id = line;
  RC_ASSERT(put_element(change, piece).has_value());
}

void put_any_tried(Change& change) {
  TriedRow row;
  row.line_id = row_of(change.book(), "line");
  if (row.line_id == 0) return;
  row.shape = "circle";
  row.width = row.height = any_length();
  row.result = *rc::gen::element<std::string>("fits", "too tight");
  if (const auto sample = row_of(change.book(), "sample")) row.sample_id = sample;
  RC_ASSERT(put_tried(change, row).has_value());
}

Editable any_record(const Book& book) {
  static const std::vector<std::pair<EditKind, std::string>> tables{
      {EditKind::set, "die_set"},   {EditKind::die, "die"},       {EditKind::line, "line"},
      {EditKind::supply, "supply"}, {EditKind::colour, "colour"}, {EditKind::sample, "sample"},
      {EditKind::piece, "element"}};
  const auto [kind, table] = *rc::gen::elementOf(tables);
  return {kind, row_of(book, table), "it"};
}

// Some pieces of work in one change. What is refused is refused whole.
void do_something(TestBook& test) {
  const Result<void> done = test.book.change("work", [&](Change& change) -> Result<void> {
    const int pieces = *rc::gen::inRange(1, 4);
    for (int i = 0; i < pieces; ++i) {
      const int what = *rc::gen::inRange(0, 7);
      if (what <= 1) put_any_line(change);
      if (what == 2) put_any_supply(change);
      if (what == 3) put_any_sample(change);
      if (what == 4) put_any_tried(change);
      const Editable record = what >= 5 ? any_record(change.book()) : Editable();
      if (record.id == 0) continue;
      if (what == 5) {
        if (const auto put = change_field(change, record, "name", any_name()); !put)
          return failure(put.error());
      } else if (const auto gone = delete_record(change, record); !gone) {
        return gone;
      }
    }
    return {};
  });
  if (!done) RC_ASSERT(done.error().kind != ProblemKind::unusable_book);
}

void assert_names_in_step(const Book& book) {
  book.database().execute("INSERT INTO name_word (name_word, rank) VALUES ('integrity-check', 1)");
  book.database().execute("INSERT INTO name_trigram (name_trigram, rank) VALUES ('integrity-check', 1)");
}

RC_GTEST_PROP(BookUndo, NewestFirstBringsBackEveryState, ()) {
  TestBook test;
  std::vector<std::string> states{dump(test.book)};
  const int steps = *rc::gen::inRange(1, 12);
  for (int i = 0; i < steps; ++i) {
    const std::int64_t last = test.book.last_change();
    do_something(test);
    assert_names_in_step(test.book);
    const std::string now = dump(test.book);
    if (test.book.last_change() == last) {
      RC_ASSERT(now == states.back());
    } else {
      states.push_back(now);
    }
  }
  while (states.size() > 1) {
    states.pop_back();
    const auto undone = undo(test.book, std::nullopt);
    RC_ASSERT(undone && *undone);
    RC_ASSERT(dump(test.book) == states.back());
    assert_names_in_step(test.book);
  }
  RC_ASSERT(undo(test.book, std::nullopt).has_value());
  const auto verified = verify(test.folder.path());
  RC_ASSERT(verified && verified->faults.empty());
}

RC_GTEST_PROP(BookUndo, OfAnyChangeIsDoneWholeOrRefused, ()) {
  TestBook test;
  const int steps = *rc::gen::inRange(1, 12);
  for (int i = 0; i < steps; ++i) {
    do_something(test);
    if (test.book.last_change() == 0 || !*rc::gen::arbitrary<bool>()) continue;
    const std::string before = dump(test.book);
    const std::int64_t which = *rc::gen::inRange<std::int64_t>(1, test.book.last_change() + 1);
    const auto undone = undo(test.book, which);
    assert_names_in_step(test.book);
    if (!undone) {
      RC_ASSERT(undone.error().kind == ProblemKind::refused);
      RC_ASSERT(dump(test.book) == before);
      continue;
    }
    // Taken back itself, everything is as it was.
    if (*rc::gen::arbitrary<bool>()) {
      RC_ASSERT(undo(test.book, test.book.last_change()).has_value());
      RC_ASSERT(dump(test.book) == before);
    }
  }
  const auto verified = verify(test.folder.path());
  RC_ASSERT(verified.has_value());
  RC_ASSERT(verified->faults == std::vector<std::string>());
}

// The slow twin: every name read, every word compared.
std::vector<std::string> names_with_words(const Book& book, const std::vector<std::string>& words) {
  std::vector<std::string> names;
  Statement& rows = book.statement("SELECT name FROM name_of");
  while (rows.step()) {
    const std::vector<std::string> have = singular_words(fold(rows.text(0)));
    const bool all = std::all_of(words.begin(), words.end(), [&](const std::string& word) {
      return std::any_of(have.begin(), have.end(),
                         [&](const std::string& one) { return one.starts_with(word); });
    });
    if (all) names.emplace_back(rows.text(0));
  }
  return names;
}

RC_GTEST_PROP(BookNames, AreFoundAsReadingAllOfThemFindsThem, ()) {
  TestBook test;
  const int steps = *rc::gen::inRange(1, 6);
  for (int i = 0; i < steps; ++i) do_something(test);
  const std::string asked = any_name();
  const auto hits = find_names(test.book, asked, std::nullopt, 1000);
  const auto all = names_with_words(test.book, singular_words(fold(asked)));
  const bool some = !hits.empty() && hits.front().how != NameHit::How::like;
  RC_ASSERT(some == !all.empty());
  if (some && hits.front().how == NameHit::How::words) RC_ASSERT(hits.size() == all.size());
}

RC_GTEST_PROP(BookRowText, IsReadAsItWasWritten, ()) {
  std::vector<RowValue> row;
  const int columns = *rc::gen::inRange(1, 6);
  std::string text;
  for (int i = 0; i < columns; ++i) {
    text += i == 0 ? "[" : ",";
    switch (*rc::gen::inRange(0, 3)) {
      case 0:
        row.emplace_back();
        text += "null";
        break;
      case 1:
        row.emplace_back(*rc::gen::arbitrary<std::int64_t>());
        append_row_integer(text, std::get<std::int64_t>(row.back()));
        break;
      default:
        row.emplace_back(*rc::gen::arbitrary<std::string>());
        append_row_text(text, std::get<std::string>(row.back()));
    }
  }
  text += "]";
  const auto back = read_row_text(text);
  RC_ASSERT(back.has_value());
  RC_ASSERT(*back == row);
}

}  // namespace
}  // namespace insetbook
