// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/envelopes.h"

#include <algorithm>

#include "book/settings.h"
#include "measure/read.h"
#include "search/size_rules.h"
#include "search/words.h"
#include "search/written_values.h"

namespace insetbook {

bool envelope_says(std::string_view written, const EnvelopeIs& envelope, Unit unit) {
  if (envelope.size) {
    const Result<Size> size = read_size(written, unit);
    if (!size) return false;
    const SidesOnRecord sides{size->width.nm(), size->height.nm(), false};
    return distance(size_rule(*envelope.size), sides).has_value();
  }
  const std::vector<std::string> words = words_of(written);
  return !envelope.words.empty() && std::ranges::all_of(envelope.words, [&](const std::string& word) {
    return std::ranges::find(words, word) != words.end();
  });
}

std::vector<std::string> written_envelopes(const Book& book, const EnvelopeIs& envelope) {
  const Unit unit = settings(book).unit;
  // From each to the next in the index.
  return written_values(
      book.statement("SELECT min(envelope) FROM sample WHERE envelope > ?1 AND envelope <> ''"),
      [&](const std::string& written) { return envelope_says(written, envelope, unit); });
}

std::string envelope_of(const Book& book, std::int64_t sample) {
  Statement& row = book.statement("SELECT envelope FROM sample WHERE id = ?");
  row.bind(1, sample);
  const std::string written = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return written;
}

}  // namespace insetbook
