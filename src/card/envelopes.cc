// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/envelopes.h"

#include <algorithm>

#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

EnvelopeRead read_named(const EnvelopeSize& named) {
  EnvelopeRead read{named.width, named.height, named.unit, &named, write_envelope(named), {}, {}};
  if (named.also_meant != no_envelope) read.other = write_envelope(envelopes()[named.also_meant]);
  read.source = write_source(named.from);
  return read;
}

std::optional<EnvelopeRead> read_whole(std::string_view text, Unit no_unit) {
  if (const EnvelopeSize* named = envelope_named(text)) return read_named(*named);
  for (const std::string_view word : {" envelope", " envelopes"})
    if (fold(text).ends_with(word)) text = trim(text.substr(0, text.size() - word.size()));
  const Result<Size> size = read_size(text, no_unit);
  if (!size || size->one_figure) return std::nullopt;
  return EnvelopeRead{
      size->width, size->height, size->unit, nullptr, write_size(size->width, size->height, size->unit), {},
      {}};
}

// One way round.
EnvelopeFit lay(const ClosedCard& card, Length along_width, Length along_height, Length slack) {
  EnvelopeFit fit;
  fit.left_width = along_width - card.width;
  fit.left_height = along_height - card.height;
  fit.wanted = std::max(slack, card.thickness.value_or(Length()));
  fit.goes_in = std::min(fit.left_width, fit.left_height) >= fit.wanted;
  return fit;
}

}  // namespace

std::span<const EnvelopeSize> envelopes() {
  return paper_tables().envelopes;
}

std::string write_envelope(const EnvelopeSize& envelope) {
  return std::string(envelope.name) + " envelope, " + std::string(envelope.written);
}

std::optional<EnvelopeRead> read_envelope(std::string_view text, Unit no_unit) {
  text = trim(text);
  if (const auto whole = read_whole(text, no_unit)) return whole;
  const std::string_view before = trim(text.substr(0, std::min(text.find_first_of(",;("), text.size())));
  return before.size() < text.size() ? read_whole(before, no_unit) : std::nullopt;
}

EnvelopeFit fit_in_envelope(const ClosedCard& card, Length envelope_width, Length envelope_height,
                            Length slack) {
  const EnvelopeFit as_it_is = lay(card, envelope_width, envelope_height, slack);
  EnvelopeFit turned = lay(card, envelope_height, envelope_width, slack);
  turned.turned = true;
  if (as_it_is.goes_in) return as_it_is;
  if (turned.goes_in) return turned;
  const auto lacks = [](const EnvelopeFit& fit) { return std::min(fit.left_width, fit.left_height); };
  return lacks(turned) > lacks(as_it_is) ? turned : as_it_is;
}

std::vector<EnvelopeChoice> envelopes_for(const ClosedCard& card, Length slack) {
  std::vector<EnvelopeChoice> found;
  for (const EnvelopeSize& envelope : envelopes()) {
    const EnvelopeFit fit = fit_in_envelope(card, envelope.width, envelope.height, slack);
    if (fit.goes_in) found.push_back({&envelope, fit});
  }
  // Sides are below 2 m, so that an area in square nanometres is below 2^62.
  const auto area = [](const EnvelopeChoice& choice) {
    return choice.envelope->width.nm() * choice.envelope->height.nm();
  };
  std::ranges::stable_sort(found, {}, area);
  return found;
}

}  // namespace insetbook
