// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/element.h"

#include <fmt/format.h>

#include <algorithm>

#include "text/utf8.h"

namespace insetbook {
namespace {

// Names that a drawing program numbers by itself say nothing to a person.
bool is_made_up(std::string_view id) {
  std::string letters;
  std::size_t i = 0;
  while (i < id.size() && (id[i] < '0' || id[i] > '9')) letters += id[i++];
  if (i == 0) return false;
  while (i < id.size() && ((id[i] >= '0' && id[i] <= '9') || id[i] == '-' || id[i] == '_')) ++i;
  if (i < id.size()) return false;
  static constexpr std::string_view kinds[] = {
      "path", "g",     "rect",  "circle", "ellipse", "polygon",  "polyline", "use",
      "svg",  "layer", "group", "shape",  "line",    "compound", "tspan",    "image"};
  letters = fold(letters);
  while (!letters.empty() && (letters.back() == '-' || letters.back() == '_' || letters.back() == ' '))
    letters.pop_back();
  return std::find(std::begin(kinds), std::end(kinds), letters) != std::end(kinds);
}

}  // namespace

std::string name_of(const XmlElement& element) {
  for (const std::string_view attribute : {"label", "aria-label"})
    if (const auto said = trim(element.value(attribute)); !said.empty()) return std::string(said);
  for (const XmlElement& child : element.children)
    if (child.name == "title" && !trim(child.text).empty()) return std::string(trim(child.text));
  const std::string_view id = trim(element.value("id"));
  return is_made_up(id) ? std::string() : std::string(id);
}

std::string_view property(const XmlElement& element, std::string_view name) {
  std::string_view style = element.value("style");
  while (!style.empty()) {
    const std::size_t end = std::min(style.find(';'), style.size());
    const std::string_view one = style.substr(0, end);
    const std::size_t colon = one.find(':');
    if (colon != std::string_view::npos && trim(one.substr(0, colon)) == name)
      return trim(one.substr(colon + 1));
    style.remove_prefix(std::min(end + 1, style.size()));
  }
  return trim(element.value(name));
}

Problem refused_at(int line, std::string what, std::string expected) {
  Problem problem;
  problem.what = fmt::format("line {}: {}", line, what);
  problem.expected = std::move(expected);
  return problem;
}

}  // namespace insetbook
