// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/viewport.h"

#include <fmt/format.h>

#include <algorithm>

#include "importers/svg/element.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Where the box lies in a viewport that it does not fill, as a part of what is left: "xMidYMax".
double part_left_before(std::string_view align, std::string_view axis) {
  const std::size_t at = align.find(axis);
  if (at == std::string_view::npos) return 0.5;
  const std::string_view where = align.substr(at + axis.size(), 3);
  return where == "Min" ? 0 : where == "Max" ? 1 : 0.5;
}

}  // namespace

Result<std::optional<ViewBox>> view_box(const XmlElement& element) {
  const std::string* text = element.attribute("viewBox");
  if (text == nullptr) return std::optional<ViewBox>();
  const auto numbers = read_numbers(*text);
  if (!numbers || numbers->size() != 4 || (*numbers)[2] <= 0 || (*numbers)[3] <= 0)
    return failure(refused_at(element.line, fmt::format("viewBox {} cannot be", in_quotes(*text)),
                              "four figures: left, top, width and height, both more than 0"));
  return std::optional(ViewBox{(*numbers)[0], (*numbers)[1], (*numbers)[2], (*numbers)[3]});
}

Transform into_viewport(const ViewBox& box, double width, double height, std::string_view aspect) {
  const std::string_view said = trim(aspect);
  double across = width / box.width, down = height / box.height;
  if (!said.starts_with("none"))
    across = down = said.ends_with("slice") ? std::max(across, down) : std::min(across, down);
  const double left = (width - box.width * across) * part_left_before(said, "x");
  const double top = (height - box.height * down) * part_left_before(said, "Y");
  return {across, 0, 0, down, left - box.x * across, top - box.y * down};
}

}  // namespace insetbook
