// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/where_stored.h"

#include <algorithm>

#include "answers/opening_said.h"
#include "book/names.h"
#include "language/ask_thing.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t most_things = 20;

std::string place_of(const Book& book, const NameHit& hit) {
  Statement& row =
      book.statement(hit.kind == RecordKind::set ? "SELECT stored_in FROM die_set WHERE id = ?1"
                     : hit.kind == RecordKind::supply
                         ? "SELECT stored_in FROM supply WHERE id = ?1"
                         : "SELECT CASE d.stored_in WHEN '' THEN s.stored_in ELSE d.stored_in END "
                           "FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = ?1");
  row.bind(1, hit.id);
  std::string place = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return place;
}

std::vector<NameHit> supplies_of_colour(const Book& book, std::int64_t colour) {
  std::vector<NameHit> hits;
  Statement& rows = book.statement("SELECT id FROM supply WHERE colour_id = ?1 ORDER BY key");
  rows.bind(1, colour);
  while (rows.step()) hits.push_back({RecordKind::supply, rows.integer(0), {}});
  rows.reset();
  for (NameHit& hit : hits) hit.name = record_name(book, hit.kind, hit.id);
  return hits;
}

// Sets, dies and supplies of that name; a colour stands for its supplies. Samples are kept nowhere.
std::vector<NameHit> things_of_name(const Book& book, std::string_view name) {
  std::vector<NameHit> things;
  const auto add = [&](NameHit hit) {
    const auto same = [&](const NameHit& other) { return other.kind == hit.kind && other.id == hit.id; };
    if (std::ranges::none_of(things, same)) things.push_back(std::move(hit));
  };
  for (NameHit& hit : find_names(book, name, std::nullopt, 200)) {
    if (hit.kind == RecordKind::sample) continue;
    if (hit.kind != RecordKind::colour) {
      add(std::move(hit));
      continue;
    }
    for (NameHit& supply : supplies_of_colour(book, hit.id)) {
      supply.how = hit.how;
      add(std::move(supply));
    }
  }
  return things;
}

// A set that is named takes its dies along.
void drop_dies_of_named_sets(std::vector<NameHit>& things) {
  if (std::ranges::none_of(things, [](const NameHit& hit) { return hit.kind == RecordKind::set; })) return;
  std::erase_if(things, [](const NameHit& hit) { return hit.kind == RecordKind::die; });
}

}  // namespace

std::vector<NameHit> things_stored(const Book& book, const std::string& name) {
  // "The second largest tidepool rectangle" is a die, and no word of its name says which.
  const OpeningWanted wanted = opening_wanted(name);
  if (wanted.rank || wanted.rank_from_smallest)
    if (const Result<OpeningRecord> opening = find_opening(book, wanted))
      return {{RecordKind::die, opening->die_id, record_name(book, RecordKind::die, opening->die_id)}};
  std::vector<NameHit> things = things_of_name(book, name);
  if (things.empty() || things.front().how == NameHit::How::like)
    if (std::vector<NameHit> bare = things_of_name(book, bare_name(name));
        !bare.empty() && (things.empty() || bare.front().how != NameHit::How::like))
      things = std::move(bare);
  drop_dies_of_named_sets(things);
  return things;
}

Result<StoredAnswer> where_stored(const Book& book, const std::string& name) {
  std::vector<NameHit> things = things_stored(book, name);
  if (things.empty())
    return failure({.kind = ProblemKind::unknown_name,
                    .what = "no die set, die or supply is called \"" + std::string(trim(name)) + "\"",
                    .expected = "a name as it is recorded"});
  StoredAnswer answer;
  if (things.front().how == NameHit::How::like) answer.read_as = std::string(trim(name));
  if (things.size() > most_things) {
    answer.more = things.size() - most_things;
    things.resize(most_things);
  }
  for (const NameHit& hit : things)
    answer.things.push_back({std::string(record_kind_word(hit.kind)), hit.name, place_of(book, hit)});
  std::stable_partition(answer.things.begin(), answer.things.end(),
                        [](const StoredThing& thing) { return !thing.place.empty(); });
  return answer;
}

}  // namespace insetbook
