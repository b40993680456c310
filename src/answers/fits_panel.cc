// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/fits_panel.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "measure/write.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// The opening as it is measured, else as it is estimated.
std::optional<Opening> opening_of(const FitsAnswer& answer) {
  OpeningRecord record = answer.opening;
  Length give = record.give_or_take;
  if (!record.measured) {
    if (!answer.estimated) return std::nullopt;
    record.measured = true;
    record.width = answer.estimated->width;
    record.height = answer.estimated->height;
    give = answer.estimated->spread;
  }
  const Result<Shape> shape = shape_of(record);
  if (!shape || !has_outline(*shape)) return std::nullopt;
  return Opening{*shape, give};
}

bool same_size(const FittingPanel& panel, const Shape& asked) {
  return (panel.width == asked.width && panel.height == asked.height) ||
         (panel.width == asked.height && panel.height == asked.width);
}

const FittingPanel* tried_of(const FitsAnswer& answer) {
  const Shape& asked = answer.panel_asked->panel;
  for (const FittingPanel& panel : answer.panels)
    if (panel.status == PanelStatus::tried && same_size(panel, asked) &&
        shape_kind(panel.shape) == asked.kind)
      return &panel;
  return nullptr;
}

// By how much its box is too large, laid the better way; empty where only the shape is in the way.
std::string too_large_by(const FitsAnswer& answer) {
  const OpeningRecord& opening = answer.opening;
  Shape panel = answer.panel_asked->panel;
  const bool lies_along = (panel.width < panel.height) == (opening.width < opening.height);
  if (!lies_along) std::swap(panel.width, panel.height);
  std::string text;
  if (panel.width > opening.width)
    text = fmt::format("{} too wide", border_text(panel.width - opening.width, answer.unit));
  if (panel.height > opening.height)
    text += fmt::format("{}{} too high", text.empty() ? "" : " and ",
                        border_text(panel.height - opening.height, answer.unit));
  return text;
}

std::string refused(const FitsAnswer& answer, const std::string& panel) {
  const PanelAsked& asked = *answer.panel_asked;
  if (asked.framing)
    return fmt::format("No, not with {} showing. {} fits, but only {} shows on the narrowest side.",
                       write(answer.border, answer.unit), panel,
                       border_text(asked.framing->greatest_border, answer.unit));
  const std::string by = answer.opening.measured ? too_large_by(answer) : std::string();
  if (by.empty()) return fmt::format("No. {} does not fit.", panel);
  return fmt::format("No. {} is {}.", panel, by);
}

}  // namespace

Result<void> ask_panel(const Book& book, const std::string& panel, FitsAnswer& answer) {
  Result<PanelSaid> said = panel_said(book, panel, std::nullopt);
  if (!said) return failure(said.error());
  answer.panel_asked = PanelAsked{.panel = std::move(said->shape),
                                  .of = std::move(said->of),
                                  .unit = said->unit,
                                  .verdict = Verdict::too_big,
                                  .framing = {},
                                  .computed = false};
  PanelAsked& asked = *answer.panel_asked;
  const std::optional<Opening> opening = opening_of(answer);
  if (!opening) return {};
  const Length border = answer.border_from == BorderFrom::asked ? answer.border : Length();
  const Result<std::optional<Framing>> framed =
      framing(*opening, asked.panel, Length(), answer.cutting_step, said->may_turn);
  if (!framed) return {};
  asked.computed = true;
  asked.framing = *framed;
  if (asked.framing && asked.framing->greatest_border >= border) asked.verdict = asked.framing->verdict;
  return {};
}

std::string panel_sentence(const FitsAnswer& answer) {
  const PanelAsked& asked = *answer.panel_asked;
  const std::string size = shape_text(asked.panel, asked.unit);
  const std::string panel = asked.of.empty() ? "A " + size : fmt::format("{} ({})", asked.of, size);
  if (const FittingPanel* tried = tried_of(answer))
    return fmt::format("Yes. {} fits: tried before, {}.", panel,
                       tried->border_known
                           ? border_text(tried->border, answer.unit) + " showing on the narrowest side"
                           : std::string("border not known"));
  if (!asked.computed)
    return fmt::format("Not known. {}", answer.not_computed.empty()
                                            ? "This shape is not computed yet."
                                            : "Not computed: " + answer.not_computed + ".");
  if (asked.verdict != Verdict::fits && asked.verdict != Verdict::snug) return refused(answer, panel);
  const std::string shows = border_text(asked.framing->greatest_border, answer.unit);
  const std::string turned = asked.framing->turned ? ", turned by a quarter" : "";
  const std::string guess = answer.estimated ? " The opening is estimated: measure it to be sure." : "";
  if (asked.verdict == Verdict::snug)
    return fmt::format("Just. {} is snug{}, {} showing on the narrowest side: cut one and try.{}", panel,
                       turned, shows, guess);
  return fmt::format("Yes. {} fits{}: {} shows on the narrowest side.{}", panel, turned, shows, guess);
}

}  // namespace insetbook
