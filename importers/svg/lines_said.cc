// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/lines_said.h"

#include <fmt/format.h>

#include <charconv>

#include "importers/report/report.h"
#include "measure/read.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

Problem no_scale_said(std::string_view text) {
  return bad_input(
      fmt::format("{} is no scale of a drawing", in_quotes(text)),
      "the length of one unit, as in \"1 mm\", or how many units are a length, as in \"96 = 1 in\"");
}

Problem no_lines_said(std::string_view text) {
  return bad_input(fmt::format("{} does not say a line", in_quotes(text)),
                   "a stroke, class or name, \"=\" and the line: \"red = stitched; guide = pierced\"");
}

std::optional<LineCell> line_named(std::string_view name) {
  if (trim(name).empty()) return std::nullopt;
  const Result<LineCell> line = read_line_cell(name);
  return line ? std::optional(*line) : std::nullopt;
}

bool has_class(std::string_view classes, std::string_view key) {
  for (std::string_view rest = classes; !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (fold(rest.substr(0, end)) == key) return true;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return false;
}

}  // namespace

Result<double> read_scale(std::string_view text) {
  std::string_view length = trim(text);
  double units = 1;
  if (const std::size_t equals = length.find('='); equals != std::string_view::npos) {
    const std::string_view count = trim(length.substr(0, equals));
    const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), units);
    if (error != std::errc() || end != count.data() + count.size() || !(units > 0) || units > 1e9)
      return failure(no_scale_said(text));
    length = trim(length.substr(equals + 1));
  }
  const Result<ReadLength> read = read_length(length, Unit::mm);
  if (!read || read->length <= Length()) return failure(no_scale_said(text));
  return static_cast<double>(read->length.nm()) / units;
}

Result<LinesSaid> read_lines_said(std::string_view text) {
  LinesSaid said;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    const std::string_view part = trim(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (part.empty()) continue;
    const std::size_t equals = part.find('=');
    if (equals == std::string_view::npos) return failure(no_lines_said(part));
    std::string_view key = trim(part.substr(0, equals));
    if (key.starts_with('.')) key.remove_prefix(1);
    const std::string_view name = trim(part.substr(equals + 1));
    if (key.empty() || name.empty()) return failure(no_lines_said(part));
    const Result<LineCell> line = read_line_cell(name);
    if (!line) return failure(line.error());
    said.emplace_back(fold(key), *line);
  }
  return said;
}

std::optional<LineCell> line_said(const DrawnOutline& outline, const std::vector<std::string>& groups,
                                  const LinesSaid& said) {
  const auto find = [&](const auto& matches) -> std::optional<LineCell> {
    for (const auto& [key, line] : said)
      if (matches(key)) return line;
    return std::nullopt;
  };
  if (auto line = find([&](const std::string& key) { return key == outline.stroke; })) return line;
  if (auto line = find([&](const std::string& key) { return has_class(outline.classes, key); })) return line;
  std::vector<std::string> names = groups;
  names.push_back(outline.name);
  for (auto name = names.rbegin(); name != names.rend(); ++name)
    if (auto line = find([&](const std::string& key) { return key == fold(*name); })) return line;
  for (auto name = names.rbegin(); name != names.rend(); ++name)
    if (auto line = line_named(*name)) return line;
  return std::nullopt;
}

}  // namespace insetbook
