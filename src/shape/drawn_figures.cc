// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/drawn_figures.h"

#include <algorithm>
#include <array>

#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::array drawn_tags = {"tag", "luggage tag", "gift tag", "tag with a hole"};
constexpr std::array drawn_banners = {"banner",          "flag",          "swallowtail", "fishtail",
                                      "fishtail banner", "ribbon banner", "banner end"};
constexpr std::array pointed_arches = {"cathedral", "gothic arch", "pointed arch", "church window"};

bool one_of(const auto& words, std::string_view folded) {
  return std::find(words.begin(), words.end(), folded) != words.end();
}

std::string word_of(const Shape& shape) {
  return shape.name.empty() ? std::string(shape_word(shape.kind)) : fold(shape.name);
}

Result<bool> take_length(std::string_view value, Unit no_unit, std::optional<Length>& figure) {
  const Result<ReadLength> length = read_length(value, no_unit);
  if (!length) return failure(length.error());
  figure = length->length;
  return true;
}

// ---- Each kind's figures ----

Result<bool> take_of_scallops(std::string_view part, Unit no_unit, Shape& shape) {
  if (const auto named = named_figure(part, {"scallops", "scallop"}))
    return take_length(named->value, no_unit, shape.scallop_width);
  if (const auto named = named_figure(part, {"depth", "deep"}))
    return take_length(named->value, no_unit, shape.scallop_depth);
  const std::string folded = fold(part);
  const std::string_view base = folded.starts_with("round a ")    ? std::string_view(folded).substr(8)
                                : folded.starts_with("round an ") ? std::string_view(folded).substr(9)
                                                                  : std::string_view();
  if (const auto kind = base_of_scallops("scalloped " + std::string(base))) {
    shape.scallops_round = kind;
    return true;
  }
  return false;
}

Result<bool> take_of_tag(std::string_view part, Unit no_unit, Shape& shape) {
  if (const auto named = named_figure(part, {"hole down"}))
    return take_length(named->value, no_unit, shape.hole_down);
  if (const auto named = named_figure(part, {"hole"})) return take_length(named->value, no_unit, shape.hole);
  if (const auto named = named_figure(part, {"corner radius", "radius"}))
    return take_length(named->value, no_unit, shape.corner_radius);
  if (const auto named = named_figure(part, {"cut corners", "cut corner", "corners", "corner"}))
    return take_length(named->value, no_unit, shape.corner);
  return false;
}

std::optional<NotchEnd> end_said(std::string_view folded) {
  struct Said {
    std::string_view word;
    NotchEnd end;
  };
  constexpr std::array ends = {
      Said{"at the left", NotchEnd::left},     Said{"left end", NotchEnd::left},
      Said{"at the right", NotchEnd::right},   Said{"right end", NotchEnd::right},
      Said{"at the top", NotchEnd::top},       Said{"top end", NotchEnd::top},
      Said{"at the bottom", NotchEnd::bottom}, Said{"bottom end", NotchEnd::bottom},
      Said{"at both ends", NotchEnd::both},    Said{"both ends", NotchEnd::both},
  };
  const auto* found =
      std::find_if(ends.begin(), ends.end(), [&](const Said& each) { return folded == each.word; });
  if (found == ends.end()) return std::nullopt;
  return found->end;
}

// "notch 1/2 in", "at the right", and both in one: "notch 1/2 in at the right".
Result<bool> take_of_banner(std::string_view part, Unit no_unit, Shape& shape) {
  std::string_view rest = part;
  for (std::size_t word = 0; word < part.size(); word = part.find(' ', word) + 1) {
    if (const auto end = end_said(fold(part.substr(word)))) {
      shape.notch_end = end;
      rest = trim(part.substr(0, word));
      break;
    }
    if (part.find(' ', word) == std::string_view::npos) break;
  }
  if (rest.empty() || (rest != part && fold(rest) == "notch")) return true;
  const auto named = named_figure(rest, {"notch"});
  if (!named) return false;
  return take_length(named->value, no_unit, shape.notch);
}

std::string missing_of_tag(const Shape& shape) {
  if (!shape.corner && !shape.corner_radius) return "the cut of the top corners";
  if (word_of(shape) == "tag with a hole" && !shape.hole) return "the hole";
  if (shape.hole && !shape.hole_down) return "how far down the hole is";
  return "";
}

std::string missing_of_scallops(const Shape& shape) {
  if (!shape.scallops_round) return "what the scallops run round";
  if (!shape.scallop_width) return "the width of a scallop";
  if (!shape.scallop_depth) return "the depth of the scallops";
  return "";
}

// Half a circle where the height allows.
std::string missing_of_arch(const Shape& shape) {
  if (shape.rise) return "";
  if (is_pointed(shape)) return "the rise of the point";
  return shape.width > shape.height * 2 ? "the rise" : "";
}

}  // namespace

std::optional<NamedFigure> named_figure(std::string_view part, const std::vector<std::string_view>& names) {
  for (const std::string_view name : names) {
    if (part.size() <= name.size() + 1) continue;
    const std::string_view head = part.substr(0, name.size());
    if (fold(head) == name && (part[name.size()] == ' ' || part[name.size()] == ':')) {
      return NamedFigure{name, trim(part.substr(name.size() + 1))};
    }
    const std::size_t tail = part.size() - name.size();
    if (fold(part.substr(tail)) == name && (part[tail - 1] == ' ' || part[tail - 1] == '-'))
      return NamedFigure{name, trim(part.substr(0, tail))};
  }
  return std::nullopt;
}

bool is_drawn(const Shape& shape) {
  switch (shape.kind) {
    case ShapeKind::scalloped:
    case ShapeKind::arch:
    case ShapeKind::heart:
      return true;
    case ShapeKind::tag:
      return one_of(drawn_tags, word_of(shape));
    case ShapeKind::banner:
      return one_of(drawn_banners, word_of(shape));
    default:
      return false;
  }
}

std::optional<ShapeKind> base_of_scallops(std::string_view word) {
  const std::string folded = fold(word);
  std::string_view base = folded;
  for (const std::string_view head : {"scalloped ", "scallop "}) {
    if (base.starts_with(head)) base.remove_prefix(head.size());
  }
  if (base.ends_with(" scallop")) base.remove_suffix(8);
  if (base == folded || base == "edge") return std::nullopt;
  const std::optional<ShapeKind> kind = shape_kind(base);
  return kind && *kind <= ShapeKind::rectangle ? kind : std::nullopt;
}

bool is_pointed(const Shape& arch) {
  return arch.kind == ShapeKind::arch && one_of(pointed_arches, word_of(arch));
}

std::string_view drawn_figures_known(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::scalloped:
      return "\"scallops 3/8 in\", \"depth 1/8 in\", \"round a circle\"";
    case ShapeKind::arch:
      return "\"rise 1 in\"";
    case ShapeKind::tag:
      return "\"corner 1/2 in\", \"radius 1/4 in\", \"hole 1/4 in\", \"hole down 1/8 in\"";
    case ShapeKind::banner:
      return "\"notch 1/2 in\", \"at the right\", \"both ends\"";
    default:
      return "";
  }
}

Result<bool> take_drawn_figure(std::string_view part, Unit no_unit, Shape& shape) {
  switch (shape.kind) {
    case ShapeKind::scalloped:
      return take_of_scallops(part, no_unit, shape);
    case ShapeKind::arch:
      if (const auto named = named_figure(part, {"rise"}))
        return take_length(named->value, no_unit, shape.rise);
      return false;
    case ShapeKind::tag:
      return take_of_tag(part, no_unit, shape);
    case ShapeKind::banner:
      return take_of_banner(part, no_unit, shape);
    default:
      return false;
  }
}

std::string missing_drawn_figure(const Shape& shape) {
  if (!shape.outline.empty() || !is_drawn(shape)) return "";
  switch (shape.kind) {
    case ShapeKind::scalloped:
      return missing_of_scallops(shape);
    case ShapeKind::arch:
      return missing_of_arch(shape);
    case ShapeKind::tag:
      return missing_of_tag(shape);
    case ShapeKind::banner:
      if (!shape.notch) return "the depth of the notch";
      return shape.notch_end ? "" : "the end at which the notch is";
    default:
      return "";
  }
}

}  // namespace insetbook
