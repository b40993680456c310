// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/envelopes.h"

#include <algorithm>

#include "book/settings.h"
#include "card/envelopes.h"
#include "search/size_rules.h"
#include "search/words.h"
#include "search/written_values.h"

namespace insetbook {

namespace {

// What is asked for as a size, where it is one or the name of one.
std::optional<SizeIs> size_asked(const EnvelopeIs& envelope) {
  const EnvelopeSize* named = envelope.named ? envelope_named(envelope.said) : nullptr;
  if (!named) return envelope.size;
  return SizeIs{.one_figure = false, .low = named->width, .second = named->height, .unit = named->unit};
}

}  // namespace

bool envelope_says(std::string_view written, const EnvelopeIs& envelope, Unit unit) {
  const auto asked = size_asked(envelope);
  const auto read = asked ? read_envelope(written, unit) : std::nullopt;
  if (read) {
    const SidesOnRecord sides{read->width.nm(), read->height.nm(), false};
    return distance(size_rule(*asked), sides).has_value();
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
