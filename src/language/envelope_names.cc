// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/envelope_names.h"

#include <algorithm>

#include "language/says.h"
#include "language/single_words.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

EnvelopeIs called(const EnvelopeSize& envelope) {
  return {.words = single_words(fold(envelope.name)), .said = std::string(envelope.name), .named = true};
}

}  // namespace

std::string means(const EnvelopeSize& envelope) {
  std::string text = std::string(envelope.name) + ", " + std::string(envelope.written);
  if (envelope.from.known != Known::read)
    text += " (size " + std::string(known_words[static_cast<std::size_t>(envelope.from.known)]) + ")";
  return text;
}

void say_envelope(const EnvelopeSize& envelope, std::string_view said, Seen& it) {
  it.says = called(envelope);
  if (envelope.also_meant == no_envelope) return;
  const EnvelopeSize& other = paper_tables().envelopes[envelope.also_meant];
  it.other.push_back({std::string(said), "the envelope " + means(envelope), as_field(called(other))});
}

std::vector<std::string_view> names_of_envelope(Length one, Length other, Length within) {
  const auto near = [&](Length a, Length b) { return a - b <= within && b - a <= within; };
  const auto [shorter, longer] = std::minmax(one, other);
  std::vector<std::string_view> names;
  for (const EnvelopeSize& envelope : paper_tables().envelopes)
    if (near(envelope.width, shorter) && near(envelope.height, longer)) names.push_back(envelope.name);
  return names;
}

}  // namespace insetbook
