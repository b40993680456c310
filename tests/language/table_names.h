// SPDX-License-Identifier: GPL-3.0-or-later
//
// A book's names for the tests of the reader: an invented drawer of sets, colours and supplies, told apart by
// ids that the printed trees do not show. Sets answer to singular and plural.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "language/names.h"
#include "text/utf8.h"

namespace insetbook {

class TableNames : public Names {
 public:
  TableNames() {
    add(NameKind::set, 1, "Tidepool Rectangles");
    add(NameKind::set, 2, "Moonrise Circles");
    add(NameKind::set, 3, "Big Labels");
    add(NameKind::set, 4, "Kelp Circles");
    add(NameKind::colour, 11, "Sage");
    add(NameKind::colour, 12, "Navy");
    add(NameKind::colour, 13, "Kelp");
    add(NameKind::colour, 14, "Lichen Grey");
    add(NameKind::colour, 15, "Fern");
    add(NameKind::colour, 16, "Chalk White");
    add(NameKind::supply, 21, "Garden Gate", "stamp");
    add(NameKind::supply, 22, "Kelp", "ink");
    add(NameKind::supply, 23, "Harbour Dots", "folder");
    add(NameKind::colour, 17, "Silver");
    add(NameKind::supply, 24, "Pearls", "embellishment");
    add(NameKind::supply, 25, "Baker's Twine", "ribbon");
    add(NameKind::sample, 31, "Harbour Easel");
    for (int rank = 1; rank <= 5; ++rank) dies_[1].push_back(100 + rank);
    for (int rank = 1; rank <= 8; ++rank) dies_[2].push_back(200 + rank);
    dies_[3] = {301, 302};
    labels_[{3, "large tag"}] = 301;
    labels_[{3, "small tag"}] = 302;
  }

  std::vector<NamedRecord> exactly(std::string_view folded) const override {
    const auto [first, last] = records_.equal_range(std::string(folded));
    std::vector<NamedRecord> found;
    for (auto at = first; at != last; ++at) found.push_back(at->second);
    return found;
  }
  bool begins(std::string_view folded) const override {
    const auto at = records_.lower_bound(std::string(folded));
    return (at != records_.end() && at->first.starts_with(folded)) ||
           std::string_view("boats at rest").starts_with(folded);
  }
  std::vector<NamedRecord> like(std::string_view folded, std::size_t limit) const override {
    std::vector<NamedRecord> found;
    for (const auto& [key, record] : records_)
      if (found.size() < limit && (edit_distance(folded, key, 2) <= 2 || key.starts_with(folded)))
        found.push_back(record);
    return found;
  }
  std::vector<NamedRecord> sets_begun(std::string_view folded) const override {
    std::vector<NamedRecord> found;
    for (const auto& [key, record] : records_)
      if (record.kind == NameKind::set && key == fold(record.name) &&
          key.starts_with(std::string(folded) + " "))
        found.push_back(record);
    return found;
  }
  std::vector<std::int64_t> colours_of_word(std::string_view word) const override {
    if (word == "green") return {11, 13, 15};
    if (word == "white") return {16};
    if (word == "blue") return {12};
    if (word == "grey") return {14};
    return {};
  }
  std::vector<std::int64_t> colours_like(std::int64_t colour, double delta_e) const override {
    if (colour == 11 && delta_e >= 10) return {11, 15};
    return {colour};
  }
  std::vector<std::int64_t> colours_like_value(std::uint32_t srgb, double) const override {
    if (srgb == 0xa55030) return {13};
    return {};
  }
  // Kelp ink, Lichen Grey paper, the stamp Garden Gate and the set Big Labels are no longer made.
  std::vector<NamedRecord> supplies_of_set(std::string_view folded) const override {
    if (folded != "boats at rest") return {};
    return {{NameKind::supply, 26, "Boats at Rest", "stamp"},
            {NameKind::supply, 27, "Boats at Rest", "stamp"}};
  }
  std::vector<NamedRecord> adhesives() const override {
    return {{NameKind::supply, 28, "Glue Dots", "adhesive"}};
  }
  std::vector<NamedRecord> sets_of_maker(std::string_view folded) const override {
    if (folded != "otterby steel") return {};
    return {{NameKind::set, 1, "Tidepool Rectangles", ""}, {NameKind::set, 2, "Moonrise Circles", ""}};
  }
  std::string supply_kind(std::string_view folded) const override {
    if (folded == "stamp" || folded == "stamps") return "stamp";
    return folded == "folder" || folded == "folders" ? "folder" : "";
  }
  std::vector<std::int64_t> colours_with_status(const Statuses& statuses, ColourUse use) const override {
    if (statuses.front() != "withdrawn") return {};
    return use == ColourUse::paper ? std::vector<std::int64_t>{14} : std::vector<std::int64_t>{13};
  }
  std::vector<std::int64_t> supplies_with_status(const Statuses& statuses,
                                                 std::string_view kind) const override {
    if (statuses.front() != "withdrawn" || kind == "folder") return {};
    return {21};
  }
  std::vector<std::int64_t> dies_with_status(const Statuses& statuses) const override {
    return statuses.front() == "withdrawn" ? dies_of(3) : std::vector<std::int64_t>();
  }
  std::vector<std::int64_t> sets_with_status(const Statuses& statuses) const override {
    return statuses.front() == "withdrawn" ? std::vector<std::int64_t>{3} : std::vector<std::int64_t>();
  }
  std::vector<std::int64_t> dies_of(std::int64_t set) const override {
    const auto at = dies_.find(set);
    return at == dies_.end() ? std::vector<std::int64_t>() : at->second;
  }
  std::optional<std::int64_t> die_labelled(std::int64_t set, std::string_view folded) const override {
    const auto at = labels_.find({set, std::string(folded)});
    if (at == labels_.end()) return std::nullopt;
    return at->second;
  }

 private:
  void add(NameKind kind, std::int64_t id, std::string name, std::string detail = "") {
    const std::string key = fold(name);
    records_.emplace(key, NamedRecord{kind, id, name, detail});
    if (kind == NameKind::set && key.ends_with('s'))
      records_.emplace(key.substr(0, key.size() - 1), NamedRecord{kind, id, name, detail});
  }

  std::multimap<std::string, NamedRecord> records_;
  std::map<std::int64_t, std::vector<std::int64_t>> dies_;
  std::map<std::pair<std::int64_t, std::string>, std::int64_t> labels_;
};

// Counts the look-ups, which grow with every way of reading that is tried.
class CountedNames : public TableNames {
 public:
  std::vector<NamedRecord> exactly(std::string_view folded) const override {
    ++calls;
    return TableNames::exactly(folded);
  }
  bool begins(std::string_view folded) const override {
    ++calls;
    return TableNames::begins(folded);
  }
  std::vector<std::int64_t> colours_of_word(std::string_view word) const override {
    ++calls;
    return TableNames::colours_of_word(word);
  }
  std::optional<std::int64_t> die_labelled(std::int64_t set, std::string_view folded) const override {
    ++calls;
    return TableNames::die_labelled(set, folded);
  }
  mutable std::size_t calls = 0;
};

}  // namespace insetbook
