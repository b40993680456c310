// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/book_names.h"

#include <algorithm>

#include "answers/opening_said.h"
#include "answers/supply_status.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/openings.h"
#include "book/plural.h"
#include "book/settings.h"
#include "colour/nearest.h"
#include "colour/shades.h"
#include "colour/words.h"
#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

NameKind name_kind(RecordKind kind) {
  switch (kind) {
    case RecordKind::set:
      return NameKind::set;
    case RecordKind::die:
      return NameKind::die;
    case RecordKind::supply:
      return NameKind::supply;
    case RecordKind::colour:
      return NameKind::colour;
    case RecordKind::sample:
      return NameKind::sample;
  }
  return NameKind::sample;
}

// What tells the record from others of its name: a supply's kind, a die's set.
std::string detail_of(const Book& book, const NameHit& hit) {
  if (hit.kind != RecordKind::supply && hit.kind != RecordKind::die) return {};
  Statement& row =
      hit.kind == RecordKind::supply
          ? book.statement("SELECT kind FROM supply WHERE id = ?1")
          : book.statement("SELECT s.name FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = ?1");
  row.bind(1, hit.id);
  std::string detail = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return detail;
}

// "2" is an order within a set and no name of its own; "large tag" is one.
bool only_digits(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::vector<NamedRecord> named(const Book& book, const std::vector<NameHit>& hits) {
  std::vector<NamedRecord> records;
  for (const NameHit& hit : hits)
    records.push_back({name_kind(hit.kind), hit.id, hit.name, detail_of(book, hit)});
  return records;
}

std::vector<std::int64_t> ids_at(const std::vector<NearColour>& near, const std::vector<std::int64_t>& ids) {
  std::vector<std::int64_t> found;
  for (const NearColour& colour : near) found.push_back(ids[colour.place]);
  return found;
}

}  // namespace

std::vector<NamedRecord> BookNames::exactly(std::string_view folded) const {
  if (only_digits(folded)) return {};
  std::vector<NameHit> found = names_exactly(book_, folded);
  if (found.empty())
    if (const auto other = other_spelling(folded)) found = names_exactly(book_, *other);
  return named(book_, found);
}

bool BookNames::begins(std::string_view folded) const {
  if (names_begin(book_, folded)) return true;
  const auto other = other_spelling(folded);
  return other && names_begin(book_, *other);
}

std::vector<NamedRecord> BookNames::sets_begun(std::string_view folded) const {
  std::vector<NamedRecord> found;
  // The character behind a space is the first that no further word begins with.
  Statement& row = book_.statement("SELECT id, name FROM die_set WHERE key > ?1 || ' ' AND key < ?1 || '!'");
  row.bind(1, folded);
  while (row.step()) found.push_back({NameKind::set, row.integer(0), std::string(row.text(1)), ""});
  row.reset();
  return found;
}

std::vector<NamedRecord> BookNames::sets_of_maker(std::string_view folded) const {
  if (!makers_) {
    makers_.emplace();
    Statement& rows = book_.statement("SELECT id, name, maker FROM die_set WHERE maker <> '' ORDER BY id");
    while (rows.step())
      makers_->emplace(fold(rows.text(2)),
                       NamedRecord{NameKind::set, rows.integer(0), std::string(rows.text(1)), ""});
    rows.reset();
  }
  std::vector<NamedRecord> found;
  const auto [first, last] = makers_->equal_range(folded);
  for (auto at = first; at != last; ++at) found.push_back(at->second);
  return found;
}

std::vector<NamedRecord> BookNames::like(std::string_view folded, std::size_t limit) const {
  return named(book_, find_names(book_, folded, std::nullopt, limit));
}

const BookNames::Values& BookNames::values() const {
  if (!values_) {
    values_.emplace();
    Statement& rows = book_.statement("SELECT id, srgb FROM colour WHERE srgb IS NOT NULL ORDER BY key");
    while (rows.step()) {
      values_->ids.push_back(rows.integer(0));
      values_->srgb.push_back(static_cast<std::uint32_t>(rows.integer(1)));
    }
    rows.reset();
  }
  return *values_;
}

std::vector<std::int64_t> BookNames::colours_of_word(std::string_view basic_word) const {
  std::vector<std::int64_t> found;
  const std::optional<BasicColour> colour = basic_colour_named(basic_word);
  if (!colour) return found;
  const Values& all = values();
  for (std::size_t i = 0; i < all.ids.size(); ++i)
    if (has_basic_colour(all.srgb[i], *colour)) found.push_back(all.ids[i]);
  return found;
}

std::vector<std::int64_t> BookNames::colours_of_shade(std::string_view basic_word, Shade shade) const {
  std::vector<std::int64_t> found;
  const std::optional<BasicColour> colour = basic_colour_named(basic_word);
  if (!colour) return found;
  const auto of_shade = shade == Shade::light ? is_light : is_dark;
  const Values& all = values();
  for (std::size_t i = 0; i < all.ids.size(); ++i)
    if (has_basic_colour(all.srgb[i], *colour) && of_shade(all.srgb[i], *colour)) found.push_back(all.ids[i]);
  return found;
}

std::vector<std::int64_t> BookNames::colours_like(std::int64_t colour, double delta_e) const {
  const Values& all = values();
  for (std::size_t i = 0; i < all.ids.size(); ++i)
    if (all.ids[i] == colour) return colours_like_value(all.srgb[i], delta_e);
  return {colour};  // without a value it is like itself only
}

std::vector<std::int64_t> BookNames::colours_like_value(std::uint32_t srgb, double delta_e) const {
  return ids_at(colours_within(srgb, values().srgb, delta_e), values().ids);
}

std::vector<NamedRecord> BookNames::supplies_of_set(std::string_view folded) const {
  std::vector<NamedRecord> found;
  Statement& rows = book_.statement(
      "SELECT id, set_name, kind FROM supply WHERE full_key >= ?1 || ' ' AND full_key < ?1 || '!'");
  rows.bind(1, folded);
  while (rows.step())
    if (fold(rows.text(1)) == folded)
      found.push_back(
          {NameKind::supply, rows.integer(0), std::string(rows.text(1)), std::string(rows.text(2))});
  rows.reset();
  return found;
}

std::string BookNames::supply_kind(std::string_view folded) const {
  if (!kinds_) {
    kinds_.emplace();
    Statement& rows = book_.statement("SELECT DISTINCT kind FROM supply");
    while (rows.step()) kinds_->emplace_back(singular_words(fold(rows.text(0))), std::string(rows.text(0)));
    rows.reset();
  }
  const std::vector<std::string> wanted = singular_words(folded);
  for (const auto& [key, kind] : *kinds_)
    if (key == wanted) return kind;
  return {};
}

std::vector<NamedRecord> BookNames::adhesives() const {
  std::vector<NamedRecord> found;
  Statement& rows = book_.statement("SELECT id, name, kind FROM supply WHERE kind = 'adhesive' ORDER BY key");
  while (rows.step())
    found.push_back(
        {NameKind::supply, rows.integer(0), std::string(rows.text(1)), std::string(rows.text(2))});
  rows.reset();
  return found;
}

std::vector<std::int64_t> BookNames::with_status(Statement& rows, const Statuses& statuses) const {
  const Vocabulary words = vocabulary_of(book_);
  const std::string day = today(book_);
  std::vector<std::int64_t> found;
  while (rows.step()) {
    const std::string is = status_today(words, rows.text(1), rows.text(2), rows.text(3), day);
    if (std::ranges::find(statuses, is) != statuses.end()) found.push_back(rows.integer(0));
  }
  rows.reset();
  return found;
}

std::vector<std::int64_t> BookNames::supplies_with_status(const Statuses& statuses,
                                                          std::string_view kind) const {
  Statement& rows = book_.statement(
      "SELECT id, status, from_date, until_date FROM supply WHERE ?1 = '' OR kind = ?1 ORDER BY id");
  rows.bind(1, kind);
  return with_status(rows, statuses);
}

std::vector<std::int64_t> BookNames::colours_with_status(const Statuses& statuses, ColourUse use) const {
  Statement& rows = book_.statement(
      "SELECT colour_id, status, from_date, until_date FROM supply WHERE colour_id IS NOT NULL AND "
      "(?1 = 0 OR (?1 = 1) = (kind = 'ink')) ORDER BY colour_id");
  rows.bind(1, std::int64_t{use == ColourUse::either ? 0 : use == ColourUse::ink ? 1 : 2});
  const Vocabulary words = vocabulary_of(book_);
  const std::string day = today(book_);
  std::vector<std::int64_t> found, other;
  while (rows.step()) {
    const std::string is = status_today(words, rows.text(1), rows.text(2), rows.text(3), day);
    const bool meant = std::ranges::find(statuses, is) != statuses.end();
    std::vector<std::int64_t>& ids = meant ? found : other;
    if (ids.empty() || ids.back() != rows.integer(0)) ids.push_back(rows.integer(0));
  }
  rows.reset();
  // Where one supply of the colour can be had, the colour is not withdrawn.
  std::erase_if(found, [&](std::int64_t id) { return std::ranges::binary_search(other, id); });
  return found;
}

std::vector<std::int64_t> BookNames::dies_with_status(const Statuses& statuses) const {
  return with_status(book_.statement("SELECT d.id, iif(d.status = '', s.status, d.status), '', '' FROM die d "
                                     "JOIN die_set s ON s.id = d.set_id ORDER BY d.id"),
                     statuses);
}

std::vector<std::int64_t> BookNames::sets_with_status(const Statuses& statuses) const {
  return with_status(book_.statement("SELECT id, status, '', '' FROM die_set ORDER BY id"), statuses);
}

std::vector<std::int64_t> BookNames::dies_said(std::string_view text) const {
  return dies_wanted(book_, opening_wanted(text));
}

std::vector<std::int64_t> BookNames::dies_of(std::int64_t set) const {
  std::vector<std::pair<std::int64_t, int>> ranks = ranks_of_set(book_, set);
  std::stable_sort(ranks.begin(), ranks.end(), [](const auto& a, const auto& b) {
    const bool unknown_a = a.second == 0;
    const bool unknown_b = b.second == 0;
    return unknown_a != unknown_b ? unknown_b : a.second < b.second;
  });
  std::vector<std::int64_t> ids;
  for (const auto& [id, rank] : ranks) ids.push_back(id);
  return ids;
}

std::optional<std::int64_t> BookNames::die_labelled(std::int64_t set, std::string_view folded) const {
  Statement& row = book_.statement("SELECT id FROM die WHERE set_id = ?1 AND key = ?2");
  row.bind(1, set).bind(2, folded);
  std::optional<std::int64_t> id;
  if (row.step()) id = row.integer(0);
  row.reset();
  return id;
}

ReadingContext reading_context(const Book& book, const Vocabulary& vocabulary, const Names& names) {
  const Settings set = settings(book);
  return {vocabulary, names, set.unit, today(book), set.southern};
}

}  // namespace insetbook
