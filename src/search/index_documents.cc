// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/index_documents.h"

#include <xapian.h>

#include "search/sample_text.h"
#include "search/text_asked.h"

namespace insetbook {
namespace {

constexpr Xapian::termpos between_fields = 100;
constexpr std::size_t longest_key = 200;

// Sorts as "made, newest first, then key" does: the bytes of the date turned round, and an end that comes
// after every longer date.
std::string newest_first(std::string_view made, std::string_view key) {
  std::string out;
  for (const char c : made) out += static_cast<char>(0xFF - static_cast<unsigned char>(c));
  out += '\xFF';
  out += key.substr(0, longest_key);
  return out;
}

void add_text(const TextField& field, Stemmer& stemmer, Xapian::termpos& place, Xapian::Document& document) {
  const bool said = field.label == words_of_card;
  for_each_word(field.text, [&](std::string_view word) {
    const std::string& stem = stemmer.stem(word);
    document.add_posting(stem, ++place);
    if (said) document.add_posting(on_card(stem), place);
  });
  place += between_fields;
}

}  // namespace

bool fill_document(const Book& book, std::int64_t sample, Stemmer& stemmer, Xapian::Document& document) {
  Statement& row = book.statement("SELECT made, key FROM sample WHERE id = ?");
  row.bind(1, sample);
  const bool there = row.step();
  if (there) document.add_value(newest_first_slot, newest_first(row.text(0), row.text(1)));
  row.reset();
  Xapian::termpos place = 0;
  for (const TextField& field : text_of_sample(book, sample)) add_text(field, stemmer, place, document);
  return there;
}

}  // namespace insetbook
