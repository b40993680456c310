// SPDX-License-Identifier: GPL-3.0-or-later
//
// Samples by their titles, where a question says "based on" or "like". The longest title that stands there
// counts, its marks with it; else the longest run of words that stands in a title: "based on the dinghy".
#include <algorithm>

#include "language/recognise.h"
#include "language/says.h"
#include "language/small_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_title = 16;  // pieces, marks among them
constexpr std::size_t longest_part = 6;    // words
constexpr std::size_t most_titles_said = 5;

bool stands_in(std::string_view title, const std::string& words) {
  return (" " + fold(title) + " ").find(" " + words + " ") != std::string::npos;
}

}  // namespace

std::optional<Recogniser::TitleSaid> Recogniser::whole_title(std::size_t begins) {
  if (begins >= pieces_.size()) return std::nullopt;
  const bool phrase = pieces_[begins].kind == Piece::Kind::phrase;
  const std::size_t most = phrase ? begins + 1 : std::min(begins + longest_title, pieces_.size());
  for (std::size_t last = most; last > begins; --last) {
    ++steps_;
    for (const NamedRecord& record : exactly(phrase ? pieces_[begins].folded : fold(typed(begins, last))))
      if (record.kind == NameKind::sample) return TitleSaid{last, {record}};
  }
  return std::nullopt;
}

std::optional<Recogniser::TitleSaid> Recogniser::part_of_title(std::size_t begins) {
  constexpr std::size_t looked_at = 8;
  constexpr int most_asked_for = 4;  // in one question: each is looked for among all names
  if (++parts_of_titles_ > most_asked_for) return std::nullopt;
  for (std::size_t count = run_of_words(begins, longest_part); count > 0; --count) {
    ++steps_;
    const std::string said = words(begins, count);
    if (small_word(said)) continue;
    TitleSaid found{begins + count, {}};
    for (const NamedRecord& record : context_.names.like(said, looked_at))
      if (record.kind == NameKind::sample && stands_in(record.name, said)) found.records.push_back(record);
    if (!found.records.empty()) return found;
  }
  return std::nullopt;
}

std::optional<Recogniser::TitleSaid> Recogniser::title_at(std::size_t at) {
  const std::size_t behind = skip(at, {"the", "my", "sample", "card"});
  if (auto found = whole_title(at)) return found;
  if (behind != at)
    if (auto found = whole_title(behind)) return found;
  return part_of_title(behind);
}

void Recogniser::offer_title(std::size_t at, const TitleSaid& title, const auto& says, int priority,
                             std::vector<Seen>& out) {
  Seen it = seen(As::says, at, title.last, priority);
  const NamedRecord& taken = title.records.front();
  it.says = says(taken);
  for (std::size_t i = 1; i < title.records.size() && i < most_titles_said; ++i)
    it.other.push_back({std::string(typed(at, title.last)), taken.name, as_field(says(title.records[i]))});
  out.push_back(std::move(it));
}

// "based on harbour easel", "based on \"harbour easel\"".
void Recogniser::based_on(std::size_t at, std::vector<Seen>& out) {
  if (!is_word(at, "based") || (!is_word(at + 1, "on") && !is_word(at + 1, "upon"))) return;
  const auto says = [](const NamedRecord& record) -> Says { return BasedOn{record.id, record.name}; };
  if (const auto title = title_at(at + 2)) offer_title(at, *title, says, priority_of::field, out);
}

// "more like harbour easel", "similar to the dinghy". "like sage" is a colour: only a whole title counts.
void Recogniser::alike(std::size_t at, std::vector<Seen>& out) {
  std::size_t title = skip(at, {"more", "much", "others", "just"});
  const bool outright = title != at || !is_word(title, "like");
  if (is_word(title, "like"))
    ++title;
  else if ((is_word(title, "similar") || is_word(title, "akin")) && is_word(title + 1, "to"))
    title += 2;
  else
    return;
  const std::size_t behind = skip(title, {"the", "my", "sample", "card"});
  auto found = outright ? title_at(title) : whole_title(title);
  if (!found && behind != title) found = whole_title(behind);
  const auto says = [](const NamedRecord& record) -> Says { return AlikeTo{record.id, record.name}; };
  if (found) offer_title(at, *found, says, priority_of::name, out);
}

}  // namespace insetbook
