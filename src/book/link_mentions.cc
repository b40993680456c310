// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/link_mentions.h"

#include <algorithm>
#include <functional>
#include <string>
#include <unordered_map>
#include <vector>

#include "book/book_parts.h"
#include "book/records.h"
#include "book/supply_names.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

using Find = std::function<std::optional<std::int64_t>(const std::string& written)>;

struct Unlinked {
  std::int64_t mention;
  std::string written;
};

std::vector<Unlinked> unlinked(Change& change, std::string_view first_kind, std::string_view second_kind) {
  Statement& row = change.book().statement(
      "SELECT id, written FROM mention WHERE colour_id IS NULL AND supply_id IS NULL AND term IS NULL "
      "AND kind IN (?1, ?2) AND id <= ?3");
  row.bind_all(first_kind, second_kind, change.memory().last_to_link);
  std::vector<Unlinked> found;
  while (row.step()) found.push_back({row.integer(0), std::string(row.text(1))});
  row.reset();
  return found;
}

// The same few words stand at many pieces: each is looked up once.
void link(const Book& book, const std::vector<Unlinked>& words, std::string_view update, const Find& find) {
  std::unordered_map<std::string, std::optional<std::int64_t>> known;
  for (const Unlinked& one : words) {
    const auto [it, is_new] = known.try_emplace(one.written);
    if (is_new) it->second = find(one.written);
    if (it->second) book.statement(update).bind_all(*it->second, one.mention).run();
  }
}

}  // namespace

void colour_is_new(Change& change) {
  change.memory().new_colours = true;
}

void supply_is_new(Change& change) {
  change.memory().new_supplies = true;
}

void keep_later_mentions(Change& change) {
  Statement& last = change.book().statement("SELECT coalesce(max(id), 0) FROM mention");
  if (last.step()) change.memory().last_to_link = std::min(change.memory().last_to_link, last.integer(0));
  last.reset();
}

void link_mentions(Change& change) {
  const Book& book = change.book();
  if (change.memory().new_colours)
    link(book, unlinked(change, "paper", "ink"), "UPDATE mention SET colour_id = ? WHERE id = ?",
         [&](const std::string& written) { return colour_named(book, fold(written)); });
  if (!change.memory().new_supplies) return;
  const std::vector<Unlinked> words = unlinked(change, "supply", "supply");
  if (words.empty()) return;
  const SupplyNames names(book);
  link(book, words, "UPDATE mention SET supply_id = ? WHERE id = ?",
       [&](const std::string& written) { return names.find(written); });
}

}  // namespace insetbook
