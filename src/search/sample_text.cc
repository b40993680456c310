// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/sample_text.h"

#include <array>

namespace insetbook {
namespace {

constexpr std::array sample_labels{"title",    words_of_card.data(), "steps", "note",
                                   "envelope", "based on",           "base"};
constexpr std::array element_labels{"name", "role", "shape",   "goes",  "place", "glue",
                                    "note", "size", "die set", "maker", "die"};

void add(std::vector<TextField>& fields, std::string_view label, std::string_view element,
         std::string_view text) {
  if (!text.empty()) fields.push_back({std::string(label), std::string(element), std::string(text)});
}

void add_own(const Book& book, std::int64_t sample, std::vector<TextField>& fields) {
  Statement& row = book.statement(
      "SELECT title, words, steps, note, envelope, based_on, base_text FROM sample WHERE id = ?");
  row.bind(1, sample);
  if (row.step()) {
    for (std::size_t i = 0; i < sample_labels.size(); ++i) {
      add(fields, sample_labels[i], "", row.text(static_cast<int>(i)));
    }
  }
  row.reset();
}

void add_elements(const Book& book, std::int64_t sample, std::vector<TextField>& fields) {
  Statement& rows = book.statement(
      "SELECT e.name, e.role, e.shape, e.goes, e.at, e.glue, e.note, "
      "CASE WHEN e.width_nm IS NULL THEN e.size_text ELSE '' END, d.name, d.maker, i.label "
      "FROM element e LEFT JOIN die_set d ON d.id = e.set_id LEFT JOIN die i ON i.id = e.die_id WHERE "
      "e.sample_id = ? ORDER BY e.position, e.id");
  rows.bind(1, sample);
  while (rows.step()) {
    for (std::size_t i = 0; i < element_labels.size(); ++i) {
      add(fields, element_labels[i], rows.text(0), rows.text(static_cast<int>(i)));
    }
  }
  rows.reset();
}

void add_mentions(const Book& book, std::int64_t sample, std::vector<TextField>& fields) {
  Statement& rows = book.statement(
      "SELECT m.kind, coalesce(e.name, ''), m.written, coalesce(m.term, ''), coalesce(c.name, ''), "
      "coalesce(p.set_name, ''), coalesce(p.name, ''), coalesce(p.words, ''), coalesce(k.name, '') "
      "FROM mention m LEFT JOIN element e ON e.id = m.element_id LEFT JOIN colour c ON c.id = m.colour_id "
      "LEFT JOIN supply p ON p.id = m.supply_id LEFT JOIN colour k ON k.id = p.colour_id WHERE m.sample_id = "
      "? ORDER BY m.id");
  rows.bind(1, sample);
  while (rows.step()) {
    const std::string written(rows.text(2));
    add(fields, rows.text(0), rows.text(1), written);
    for (int i = 3; i < rows.columns(); ++i) {
      if (rows.text(i) != written) add(fields, rows.text(0), rows.text(1), rows.text(i));
    }
  }
  rows.reset();
}

}  // namespace

std::vector<TextField> text_of_sample(const Book& book, std::int64_t sample, TextPart part) {
  std::vector<TextField> fields;
  switch (part) {
    case TextPart::sample:
      add_own(book, sample, fields);
      break;
    case TextPart::elements:
      add_elements(book, sample, fields);
      break;
    case TextPart::mentions:
      add_mentions(book, sample, fields);
      break;
  }
  return fields;
}

std::vector<TextField> text_of_sample(const Book& book, std::int64_t sample) {
  std::vector<TextField> fields;
  add_own(book, sample, fields);
  add_elements(book, sample, fields);
  add_mentions(book, sample, fields);
  return fields;
}

}  // namespace insetbook
