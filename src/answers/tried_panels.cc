// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/tried_panels.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <tuple>

#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// A layer of a sample is an inset tried when its border is even and at most this (2-model, "What fits").
constexpr Length widest_border_of_a_layer = Length::inch_fraction(1, 2);

Shape shape_of_tried(const TriedPanel& tried) {
  Size size{.width = tried.width, .height = tried.height, .unit = tried.unit};
  size.one_figure = tried.width == tried.height && shape_kind(tried.shape) == ShapeKind::polygon;
  if (Result<Shape> made = make_shape(tried.shape, size, "", tried.unit)) return *made;
  Shape shape;
  shape.kind = ShapeKind::other;
  shape.name = tried.shape;
  shape.width = tried.width;
  shape.height = tried.height;
  return shape;
}

// The even border that a tried panel left, centred; empty where the shapes cannot be compared by computation.
std::optional<Framing> framing_of_tried(const Opening& opening, const TriedPanel& tried, Length step) {
  const Shape shape = shape_of_tried(tried);
  if (!has_outline(shape)) return std::nullopt;
  Result<std::optional<Framing>> framed = framing(opening, shape, Length(), step, true);
  return framed ? *framed : std::nullopt;
}

// The same for many panels: one that was tried a hundred times is looked at once.
class Framings {
 public:
  explicit Framings(const KnownOpening& known) : known_(known) {}

  const std::optional<Framing>& of(const TriedPanel& tried) {
    const auto key = std::tuple(tried.shape, tried.width, tried.height);
    const auto found = known_framings_.find(key);
    if (found != known_framings_.end()) return found->second;
    std::optional<Framing> framed;
    if (known_.opening) framed = framing_of_tried(*known_.opening, tried, known_.step);
    return known_framings_.emplace(key, std::move(framed)).first->second;
  }

 private:
  const KnownOpening& known_;
  std::map<std::tuple<std::string, Length, Length>, std::optional<Framing>> known_framings_;
};

// Whether the panel has the opening's own shape by its word, where no border can be computed.
bool same_shape_word(const OpeningRecord& opening, const TriedPanel& tried) {
  const std::optional<ShapeKind> a = shape_kind(opening.shape_word);
  const std::optional<ShapeKind> b = shape_kind(tried.shape);
  if (a && b && *a != ShapeKind::other && *a != ShapeKind::outline) return *a == *b;
  return opening.shape_word == tried.shape;
}

// What is left beside the panel's box, the lesser of the two directions: exact for shapes that are alike.
Length border_beside_box(const OpeningRecord& opening, const TriedPanel& tried) {
  return std::min(opening.width - tried.width, opening.height - tried.height) / 2;
}

std::string evidence_of(const TriedPanel& tried) {
  if (tried.from_sample)
    return fmt::format("in {}{}", tried.sample,
                       tried.element.empty() ? "" : fmt::format(" ({})", tried.element));
  std::string text = tried.date.empty() ? "tried" : fmt::format("tried {}", tried.date);
  if (!tried.sample.empty()) text += fmt::format(" for {}", tried.sample);
  if (!tried.note.empty()) text += fmt::format(": {}", tried.note);
  return text;
}

// Whether a piece of a sample that lies in the line is an inset (2-model: a small heart on a frame is none).
bool is_inset(const KnownOpening& known, const TriedPanel& tried, const std::optional<Framing>& framed) {
  if (!tried.from_sample) return true;
  if (same_shape_word(known.record, tried)) return true;
  return framed && framed->even_strip && framed->left <= widest_border_of_a_layer;
}

// A panel says no way up of its own, whichever figure was written first: it lies with its long side along the
// opening's.
TriedPanel laid_along(const OpeningRecord& opening, TriedPanel tried) {
  if (tried.width != tried.height && (tried.width < tried.height) != (opening.width < opening.height))
    std::swap(tried.width, tried.height);
  return tried;
}

bool same_panel(const TriedPanel& a, const TriedPanel& b) {
  return a.shape == b.shape && a.width == b.width && a.height == b.height;
}

std::string on_date(const TriedPanel& tried) {
  return tried.date.empty() ? std::string() : fmt::format(", tried {}", tried.date);
}

// What a tried panel left, and whether that can be so.
FittingPanel panel_of(const KnownOpening& known, const TriedPanel& tried,
                      const std::optional<Framing>& framed) {
  FittingPanel panel{.status = PanelStatus::tried,
                     .shape = tried.shape,
                     .width = tried.width,
                     .height = tried.height,
                     .unit = tried.unit,
                     .one_figure = shape_of_tried(tried).kind == ShapeKind::circle,
                     .verdict = "fits",
                     .evidence = {evidence_of(tried)}};
  if (framed) {
    panel.border = framed->greatest_border;
  } else if (known.record.measured && same_shape_word(known.record, tried)) {
    panel.border = border_beside_box(known.record, tried);
  } else {
    panel.border_known = false;
  }
  if (known.record.measured && panel.border_known && panel.border < Length())
    panel.note = "a little larger than the line as measured";
  return panel;
}

// Larger than the line can be, however it was measured: one of the two figures is wrong.
bool cannot_be(const KnownOpening& known, const FittingPanel& panel) {
  return known.record.measured && panel.border_known && panel.border * 2 < -known.record.give_or_take;
}

}  // namespace

std::vector<TriedPanel> tried_in_opening(const Book& book, const KnownOpening& known) {
  Framings framings(known);
  return tried_in(book, known.record.line_id, [&](const TriedPanel& piece) {
    const TriedPanel tried = laid_along(known.record, piece);
    return is_inset(known, tried, framings.of(tried));
  });
}

std::vector<FittingPanel> tried_panels(const KnownOpening& known, const std::vector<TriedPanel>& all,
                                       std::vector<std::string>& warnings) {
  std::vector<FittingPanel> panels;
  std::vector<TriedPanel> not_fitting;
  Framings framings(known);
  for (const TriedPanel& recorded : all) {
    const TriedPanel tried = laid_along(known.record, recorded);
    const std::optional<Framing>& framed = framings.of(tried);
    const bool refuted =
        !tried.from_sample && std::any_of(not_fitting.begin(), not_fitting.end(),
                                          [&](const TriedPanel& newer) { return same_panel(newer, tried); });
    const std::string name = describe(shape_of_tried(tried), tried.unit);
    if (tried.result != "fits" || refuted) {
      warnings.push_back(fmt::format("{} {}{}{}", name,
                                     tried.result == "fits" ? "fitted" : "was " + tried.result,
                                     on_date(tried), refuted ? ", before the newer result" : ""));
      if (tried.result != "fits") not_fitting.push_back(tried);
      continue;
    }
    const auto same = std::find_if(panels.begin(), panels.end(), [&](const FittingPanel& panel) {
      return panel.shape == tried.shape && panel.width == tried.width && panel.height == tried.height;
    });
    if (same != panels.end()) {
      same->evidence.push_back(evidence_of(tried));
      continue;
    }
    FittingPanel panel = panel_of(known, tried, framed);
    if (cannot_be(known, panel))
      warnings.push_back(
          fmt::format("{} is recorded as fitting{}, and is larger than the line as measured: measure "
                      "one of them again",
                      name, on_date(tried)));
    else
      panels.push_back(std::move(panel));
  }
  std::stable_sort(panels.begin(), panels.end(), [](const FittingPanel& a, const FittingPanel& b) {
    return a.evidence.size() > b.evidence.size();
  });
  return panels;
}

void heed_results(const KnownOpening& known, const std::vector<TriedPanel>& all,
                  std::vector<FittingPanel>& panels) {
  std::vector<FittingPanel> refused;
  for (auto panel = panels.begin(); panel != panels.end();) {
    const auto newest = std::find_if(all.begin(), all.end(), [&](const TriedPanel& tried) {
      const TriedPanel laid = laid_along(known.record, tried);
      return !tried.from_sample && laid.shape == panel->shape && laid.width == panel->width &&
             laid.height == panel->height;
    });
    if (panel->status == PanelStatus::tried || newest == all.end() || newest->result == "fits") {
      ++panel;
      continue;
    }
    panel->note = fmt::format("by its figures; it was {}{}", newest->result, on_date(*newest));
    refused.push_back(std::move(*panel));
    panel = panels.erase(panel);
  }
  std::move(refused.begin(), refused.end(), std::back_inserter(panels));
}

std::optional<Length> border_left(const OpeningRecord& opening, const Result<Shape>& shape, TriedPanel tried,
                                  Length step) {
  tried = laid_along(opening, std::move(tried));
  std::optional<Framing> framed;
  if (shape && has_outline(*shape)) framed = framing_of_tried({*shape, opening.give_or_take}, tried, step);
  if (!is_inset({opening, std::nullopt, step}, tried, framed)) return std::nullopt;
  if (framed) return framed->greatest_border;
  if (same_shape_word(opening, tried)) return border_beside_box(opening, tried);
  return std::nullopt;
}

}  // namespace insetbook
