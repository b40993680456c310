// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/base.h"

#include <algorithm>

#include "measure/write.h"

namespace insetbook {
namespace {

using Laid = tl::expected<Base, BaseNotLaid>;
using Why = BaseNotLaid::Why;

tl::unexpected<BaseNotLaid> not_laid(Why why, std::string what, std::string mend) {
  return tl::unexpected(BaseNotLaid{why, std::move(what), std::move(mend)});
}

std::string names(const std::vector<std::string>& folds) {
  std::string said;
  for (const std::string& fold : folds) said += (said.empty() ? "" : " and ") + fold;
  return said;
}

// The places in `scores` of those that run so, by where they are.
std::vector<std::size_t> running(const std::vector<ScoreOnSheet>& scores, bool upright) {
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < scores.size(); ++i)
    if (scores[i].upright == upright) places.push_back(i);
  std::sort(places.begin(), places.end(),
            [&](std::size_t a, std::size_t b) { return scores[a].at < scores[b].at; });
  return places;
}

std::vector<std::size_t> running(const std::vector<EntryCrease>& creases, bool upright) {
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < creases.size(); ++i)
    if (creases[i].upright == upright) places.push_back(i);
  std::sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
    return creases[a].part * creases[b].of < creases[b].part * creases[a].of;
  });
  return places;
}

bool all_one_way(const std::vector<EntryCrease>& creases) {
  return std::all_of(creases.begin(), creases.end(),
                     [&](const EntryCrease& one) { return one.upright == creases.front().upright; });
}

// The entry's creases, each with the score that is made for it, in the entry's order; empty where the scores
// are not as many. An entry whose creases run one way holds for scores that run the other way.
std::vector<std::pair<std::size_t, const EntryCrease*>> by_entry(const FoldEntry& entry,
                                                                 const std::vector<ScoreOnSheet>& scores) {
  std::vector<std::pair<std::size_t, const EntryCrease*>> pairs;
  if (entry.creases.size() != scores.size() || scores.empty()) return pairs;
  std::vector<std::size_t> score_of(scores.size());
  const bool one_way = all_one_way(entry.creases);
  for (const bool upright : {true, false}) {
    const auto own = running(scores, upright);
    auto creases = running(entry.creases, upright);
    if (one_way && !own.empty()) creases = running(entry.creases, entry.creases.front().upright);
    if (own.empty() && one_way) continue;
    if (own.size() != creases.size()) return pairs;
    for (std::size_t i = 0; i < own.size(); ++i) score_of[creases[i]] = own[i];
  }
  for (std::size_t i = 0; i < entry.creases.size(); ++i) pairs.emplace_back(score_of[i], &entry.creases[i]);
  return pairs;
}

SheetCrease crease_of(const ScoreOnSheet& score, bool mountain_unless_said) {
  const bool mountain =
      score.way == FoldWay::not_said ? mountain_unless_said : score.way == FoldWay::mountain;
  return {score.upright, score.at, mountain};
}

bool all_say_their_way(const std::vector<ScoreOnSheet>& scores) {
  return std::all_of(scores.begin(), scores.end(),
                     [](const ScoreOnSheet& score) { return score.way != FoldWay::not_said; });
}

// A half fold with a spine, where the entry has one crease and two near ones were scored for it.
bool makes_one_spine(const std::vector<ScoreOnSheet>& scores, Length width, Length height) {
  if (scores.size() != 2 || scores[0].upright != scores[1].upright) return false;
  const Length a = std::min(scores[0].at, scores[1].at), b = std::max(scores[0].at, scores[1].at);
  return is_spine(b - a, a, (scores[0].upright ? width : height) - b);
}

tl::expected<std::vector<SheetCrease>, BaseNotLaid> creases_of(const BaseAsWritten& written,
                                                               const std::vector<ScoreOnSheet>& scores,
                                                               Length width, Length height) {
  std::vector<SheetCrease> creases;
  const FoldEntry& entry = written.entry;
  if (const auto pairs = by_entry(entry, scores); !pairs.empty()) {
    for (const auto& [score, crease] : pairs) creases.push_back(crease_of(scores[score], crease->mountain));
    return creases;
  }
  if (entry.to_and_fro && !running(scores, true).empty() != !running(scores, false).empty()) {
    bool mountain = !entry.creases.empty() && entry.creases.front().mountain;
    for (const std::size_t place : running(scores, scores.front().upright)) {
      creases.push_back(crease_of(scores[place], mountain));
      mountain = !creases.back().mountain;
    }
    return creases;
  }
  const bool one_crease = entry.term.empty() || entry.creases.size() == 1;
  const bool plain = scores.size() == 1 || (one_crease && makes_one_spine(scores, width, height));
  if (!plain && !all_say_their_way(scores)) {
    return not_laid(Why::not_checked,
                    "which way each score folds is not known" +
                        (entry.term.empty() ? std::string() : " of this " + entry.term),
                    "write it with the scores: \"2 in mountain; 4 in valley\", in the order of folding");
  }
  const bool mountain = !entry.creases.empty() && entry.creases.front().mountain;
  for (const ScoreOnSheet& score : scores) creases.push_back(crease_of(score, mountain));
  return creases;
}

void turn(std::vector<ScoreOnSheet>& scores, Base& base) {
  std::swap(base.width, base.height);
  for (ScoreOnSheet& score : scores) score.upright = !score.upright;
  base.turned = !base.turned;
}

bool run_one_way(const std::vector<ScoreOnSheet>& scores) {
  return running(scores, true).empty() || running(scores, false).empty();
}

// Whether the sheet, folded at the scores, is as large as was said, whichever way up.
bool closes_to(const BaseAsWritten& written, const std::vector<ScoreOnSheet>& scores) {
  std::vector<Length> upright, level;
  for (const ScoreOnSheet& score : scores) (score.upright ? upright : level).push_back(score.at);
  const Length width = folded_length(*written.width, upright);
  const Length height = folded_length(*written.height, level);
  const auto same = [&](Length a, Length b) {
    return a == *written.finished_width && b == *written.finished_height;
  };
  return same(width, height) || same(height, width);
}

struct ReadScores {
  std::vector<ScoreOnSheet> scores;
  bool other_side = false;
};
tl::expected<ReadScores, BaseNotLaid> read_on_sheet(const BaseAsWritten& written) {
  const auto read = read_scores(written.scores, written.unit);
  if (!read) {
    return not_laid(Why::not_checked, "the scores \"" + written.scores + "\" are not understood",
                    "write each as a length, with ; between them: \"2-1/8; 4-1/4\"");
  }
  const auto placed = scores_on_sheet(*read, *written.width, *written.height);
  const auto other = scores_on_sheet(*read, *written.width, *written.height, true);
  if (!placed) {
    const Score* off = nullptr;
    for (const Score& score : *read)
      if (!scores_on_sheet({score}, *written.width, *written.height)) off = &score;
    return not_laid(Why::impossible,
                    "the score at " + write(off ? off->at : Length(), written.unit) +
                        " is not on the sheet of " +
                        write_size(*written.width, *written.height, written.unit),
                    "give the score as a distance from the sheet's edge");
  }
  const bool finished = written.finished_width && written.finished_height;
  if (finished && other && *other != *placed && !closes_to(written, *placed) && closes_to(written, *other))
    return ReadScores{*other, true};
  return ReadScores{*placed, false};
}

tl::expected<Base, BaseNotLaid> lay_sheet(const BaseAsWritten& written, FoldLies lies) {
  auto read = read_on_sheet(written);
  if (!read) return tl::unexpected(read.error());
  Base base;
  base.width = *written.width;
  base.height = *written.height;
  base.other_side = read->other_side;
  if (lies == FoldLies::unfolded) {
    if (read->scores.empty()) return base;
    return not_laid(Why::impossible, "a flat card has no scores, and this one has \"" + written.scores + "\"",
                    "change the fold, or take the scores out");
  }
  if (read->scores.empty()) {
    return not_laid(Why::not_checked, "where the base is scored is not recorded",
                    "add the scores: \"4-1/4\"");
  }
  if (lies != FoldLies::as_written && run_one_way(read->scores) &&
      read->scores.front().upright != (lies == FoldLies::upright_creases))
    turn(read->scores, base);
  auto creases = creases_of(written, read->scores, base.width, base.height);
  if (!creases) return tl::unexpected(creases.error());
  base.creases = std::move(*creases);
  return base;
}

// How large the folded sheet is as a part of the open one, along one side, by the entry: 1 where no crease
// runs so.
std::pair<int, int> folded_part(const std::vector<EntryCrease>& creases, bool upright) {
  constexpr int whole = 5040;  // every part that an entry has is a whole number of these
  std::vector<Length> places;
  for (const EntryCrease& crease : creases)
    if (crease.upright == upright) places.push_back(Length::nm(whole / crease.of * crease.part));
  return {static_cast<int>(folded_length(Length::nm(whole), std::move(places)).nm()), whole};
}

std::vector<EntryCrease> entry_creases(const FoldEntry& entry, int sections) {
  if (!entry.to_and_fro) return entry.creases;
  std::vector<EntryCrease> creases;
  const bool first = !entry.creases.empty() && entry.creases.front().mountain;
  const bool upright = entry.creases.empty() || entry.creases.front().upright;
  for (int i = 1; i < sections; ++i) creases.push_back({upright, (i % 2 == 0) != first, i, sections});
  return creases;
}

Length part_of(Length side, const EntryCrease& crease) {
  return Length::nm((side.nm() * crease.part + crease.of / 2) / crease.of);
}

bool is_gate(const FoldEntry& entry) {
  return entry.term == "gate" || entry.term == "level gate";
}

bool is_letter(const FoldEntry& entry) {
  return entry.term == "letter tri fold";
}

// The doors of a gate leave a gap: the sheet is so much shorter than twice the part between them.
void leave_gap(const Base& base, Length gap, std::vector<SheetCrease>& creases) {
  const Length side = creases.front().upright ? base.width : base.height;
  const Length between = (side + gap) / 2, door = (side - between) / 2;
  creases[0].at = door;
  creases[1].at = door + between;
}

tl::expected<FoldLies, BaseNotLaid> lies_of(const BaseAsWritten& fold) {
  const auto lies = fold_lies(fold.folds);
  if (lies) return *lies;
  return not_laid(Why::not_checked, "not worked out: a " + names(fold.folds) + " has no one form",
                  "give its sheet and its scores, each with mountain or valley");
}

}  // namespace

Laid lay_base(const BaseAsWritten& written) {
  if (!written.width || !written.height) {
    if (!written.finished_width || !written.finished_height) {
      return not_laid(Why::unknown_size, "neither the base nor the finished size has figures",
                      "add the base (\"8-1/2 x 5-1/2 in\") and its scores, or the finished size");
    }
    return base_that_closes_to(written, *written.finished_width, *written.finished_height, {});
  }
  const auto lies = fold_lies(written.folds);
  if (!lies) {
    return not_laid(Why::not_checked,
                    "a " + names(written.folds) + " does not simply lie flat: its folding is not worked out",
                    "");
  }
  return lay_sheet(written, *lies);
}

Laid base_from_sheet(const BaseAsWritten& fold, Length width, Length height, const BaseFigures& figures) {
  const auto lies = lies_of(fold);
  if (!lies) return tl::unexpected(lies.error());
  Base base;
  base.width = width;
  base.height = height;
  if (*lies == FoldLies::unfolded) return base;
  const auto creases = entry_creases(fold.entry, figures.sections);
  if (creases.empty()) {
    return not_laid(Why::not_checked, "a " + names(fold.folds) + " has no one form",
                    "give its sheet and its scores, each with mountain or valley");
  }
  for (const EntryCrease& crease : creases) {
    const Length side = crease.upright ? width : height;
    base.creases.push_back({crease.upright, part_of(side, crease), crease.mountain});
  }
  if (is_letter(fold.entry)) {
    const Length section = Length::nm((width.nm() + figures.tuck.nm()) / 3);
    base.creases = {{true, section * 2, false}, {true, section, false}};
  }
  if (is_gate(fold.entry)) leave_gap(base, figures.gap, base.creases);
  return base;
}

Laid base_that_closes_to(const BaseAsWritten& fold, Length width, Length height, const BaseFigures& figures) {
  const auto creases = entry_creases(fold.entry, figures.sections);
  const auto across = folded_part(creases, true), down = folded_part(creases, false);
  Length sheet_width = Length::nm(width.nm() * across.second / across.first);
  Length sheet_height = Length::nm(height.nm() * down.second / down.first);
  if (is_letter(fold.entry)) sheet_width -= figures.tuck;
  if (is_gate(fold.entry)) (fold.entry.creases.front().upright ? sheet_width : sheet_height) -= figures.gap;
  return base_from_sheet(fold, sheet_width, sheet_height, figures);
}

}  // namespace insetbook
