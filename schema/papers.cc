// SPDX-License-Identifier: GPL-3.0-or-later
#include "schema/papers.h"

#include <algorithm>
#include <initializer_list>

#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

std::string_view without(std::string_view folded, std::initializer_list<std::string_view> words) {
  for (const std::string_view word : words) {
    if (folded.ends_with(word) && folded.size() > word.size() + 1 &&
        folded[folded.size() - word.size() - 1] == ' ')
      return folded.substr(0, folded.size() - word.size() - 1);
    if (folded.starts_with(word) && folded.size() > word.size() + 1 && folded[word.size()] == ' ')
      return folded.substr(word.size() + 1);
  }
  return folded;
}

std::uint16_t place(std::span<const NameAt> names, std::string_view folded) {
  const std::string key = label_key(folded);
  const auto found = std::ranges::lower_bound(names, std::string_view(key), {}, &NameAt::key);
  return found == names.end() || found->key != key ? no_envelope : found->at;
}

}  // namespace

std::string write_source(const FigureSource& source) {
  std::string text(source.source);
  if (source.known == Known::common_practice) return text;
  text += source.year_read ? " (undated, read " + std::to_string(source.year) + ")"
                           : " (" + std::to_string(source.year) + ")";
  if (source.known == Known::second_hand) text += ", second hand";
  if (source.known == Known::recalled) text += ", not found in a document";
  return text;
}

const PaperSize* paper_size_named(std::string_view text) {
  const PaperTables& tables = paper_tables();
  const std::string folded = fold(text);
  std::uint16_t at = place(tables.paper_names, folded);
  if (at == no_envelope)
    at = place(tables.paper_names, without(folded, {"paper", "papers", "sheet", "sheets"}));
  return at == no_envelope ? nullptr : &tables.papers[at];
}

const EnvelopeSize* envelope_named(std::string_view text) {
  const PaperTables& tables = paper_tables();
  const std::uint16_t at = place(tables.envelope_names, without(fold(text), {"envelope", "envelopes"}));
  return at == no_envelope ? nullptr : &tables.envelopes[at];
}

const CardName* card_named(std::string_view folded) {
  const auto names = paper_tables().card_names;
  const auto found = std::ranges::find(names, folded, &CardName::name);
  return found == names.end() ? nullptr : &*found;
}

}  // namespace insetbook
