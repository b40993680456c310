// SPDX-License-Identifier: GPL-3.0-or-later
//
// "What fits inside this frame?" What was tried before comes first, then what is computed, then what is
// estimated, each marked as what it is. The rules are those of "What fits" (2-model): which border, which
// samples count as tried, when an opening that nobody measured is estimated, what covers a window from
// behind.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/openings.h"
#include "fit/fit.h"

namespace insetbook {

struct FitsAsked {
  std::string opening;                // as people say it: a die of the book, or a size and shape
  std::optional<std::string> border;  // lengths and words as typed; empty: not asked
  std::optional<std::string> shape, width, height, cut_step;
  bool because = false;  // what holds each computed panel is wanted too
};

enum class PanelStatus { tried, computed, estimated };
std::string_view panel_status_word(PanelStatus status);

struct FittingPanel {
  PanelStatus status = PanelStatus::computed;
  std::optional<PanelKind> kind;  // computed and estimated ones
  std::string shape;              // the word for it
  Length width, height;
  Unit unit = Unit::inch;    // tried ones in the unit they were recorded in, the others in the book's
  bool one_figure = false;   // a circle or a square of one figure
  Length border;             // the least, where it lies
  bool border_known = true;  // a tried panel whose border cannot be worked out has none
  std::string verdict;       // fits, snug
  std::vector<std::string> evidence;  // "tried 2026-03-02", "in low tide (moon)"
  std::string note;
  Length left, top;     // computed ones: from the left and the top of the opening's box to the panel's
  bool centred = true;  // it fits in the middle; else just there
  std::vector<std::string> touches;  // asked why: the places of the line that hold it, the nearest first
};

// The panel that covers a window from behind, its overlap all round included.
struct Behind {
  std::string shape;
  Length width, height, overlap;
  bool even = true;  // the overlap is alike all round; else that is the least
};

enum class BorderFrom { asked, habit, default_border };
std::string_view border_from_word(BorderFrom from);  // asked, habit, default

// Whether one panel fits, where that was asked.
struct PanelAsked {
  Shape panel;
  std::string of;  // the record that has this size, or empty
  Unit unit = Unit::inch;
  Verdict verdict = Verdict::too_big;
  std::optional<Framing> framing;  // how it lies, where it fits without a border
  bool computed = true;            // false: see FitsAnswer::not_computed
};

struct FitsAnswer {
  OpeningRecord opening;
  bool invented = false;   // a size was said, no die of the book: `opening` has no line
  std::string note;        // how the opening was read, where that must be said
  Unit unit = Unit::inch;  // the unit to answer in: the book's own
  Length border;
  BorderFrom border_from = BorderFrom::default_border;
  int habit_of = 0;  // habit: how many tried panels it is the middle of
  Length cutting_step;
  std::optional<PanelAsked> panel_asked;
  std::optional<Estimate> estimated;  // where the opening was not measured
  std::vector<FittingPanel> panels;   // tried, computed, estimated
  std::string not_computed;           // why nothing was computed, or empty
  std::optional<Behind> behind;
  // No line was named: windows of the die, and lines that something was tried in, as they can be asked for:
  // "Kelpwick Frames 2, window (rectangle 56 x 99 mm was tried in it)".
  std::vector<std::string> other_lines;
  std::vector<std::string> also;  // other windows of the die, as they can be asked for
  std::vector<std::string>
      other_tried;  // tried panels that do not meet what was asked: another border, shape or side
  std::vector<std::string> warnings;  // "too tight: …", conflicts between measurements
};

Result<FitsAnswer> what_fits(const Book& book, const FitsAsked& asked);

}  // namespace insetbook
