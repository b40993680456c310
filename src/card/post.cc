// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/post.h"

#include <fmt/format.h>

#include <algorithm>

#include "measure/write.h"
#include "shape/wide.h"

namespace insetbook {

namespace {

// The item with its sides in order.
struct Posted {
  Length length, width;
  Unit unit;
  std::optional<Length> thickness;
  std::optional<std::int64_t> mass_mg;
};

// A computed length on no mark of a ruler is given to a thousandth of an inch or a hundredth of a millimetre.
std::string write_length(Length length, Unit unit) {
  std::string exact = write(length, unit);
  if (exact.size() <= 10) return exact;
  const std::int64_t step = unit == Unit::inch ? 25'400 : 10'000;
  const std::int64_t steps = (length.nm() + step / 2) / step;
  return unit == Unit::inch ? fmt::format("about {}.{:03} in", steps / 1000, steps % 1000)
                            : fmt::format("about {}.{:02} mm", steps / 100, steps % 100);
}

std::string write_mass(std::int64_t mg) {
  std::string text = fmt::format("{}.{:03}", mg / 1000, mg % 1000);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text + " g";
}

std::string write_limit(const PostLimit& limit) {
  std::string text = std::string(limit.most ? "at most " : "at least ") + std::string(limit.written);
  if (limit.of == LimitOf::mass && !limit.written.ends_with(" g"))
    text += " (" + write_mass(limit.figure) + ")";
  return text;
}

// Aspect as far as thousandths, cut off: 1.2999 is not shown as 1.3.
std::string write_aspect(const Posted& item) {
  const std::int64_t thousandths =
      static_cast<std::int64_t>(Int128(item.length.nm()) * 1000 / item.width.nm());
  std::string text = fmt::format("{}.{:03}", thousandths / 1000, thousandths % 1000);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return "length " + text + " times the width";
}

std::string write_figure_of(const PostLimit& limit, const Posted& item) {
  switch (limit.of) {
    case LimitOf::length:
      return "length " + write_length(item.length, item.unit);
    case LimitOf::width:
      return "width " + write_length(item.width, item.unit);
    case LimitOf::thickness:
      return "thickness " + write_length(*item.thickness, item.unit);
    case LimitOf::mass:
      return "mass " + write_mass(*item.mass_mg);
    case LimitOf::aspect:
      return write_aspect(item);
  }
  return {};
}

bool applies(const PostLimit& limit, const Posted& item) {
  if (limit.if_longer == Length() && limit.if_wider == Length()) return true;
  return (limit.if_longer > Length() && item.length > limit.if_longer) ||
         (limit.if_wider > Length() && item.width > limit.if_wider);
}

bool known(const PostLimit& limit, const Posted& item) {
  if (limit.of == LimitOf::thickness) return item.thickness.has_value();
  return limit.of != LimitOf::mass || item.mass_mg.has_value();
}

bool keeps(const PostLimit& limit, const Posted& item) {
  // Both sides of what is compared; an aspect of n hundredths is length x 100 against width x n.
  Int128 figure = 0, bound = limit.figure;
  switch (limit.of) {
    case LimitOf::length:
      figure = item.length.nm();
      break;
    case LimitOf::width:
      figure = item.width.nm();
      break;
    case LimitOf::thickness:
      figure = item.thickness->nm();
      break;
    case LimitOf::mass:
      figure = *item.mass_mg;
      break;
    case LimitOf::aspect:
      figure = Int128(item.length.nm()) * 100;
      bound *= item.width.nm();
      break;
  }
  return limit.most ? figure <= bound : figure >= bound;
}

// What the limits say, one list for each way it can go.
struct Looked {
  std::vector<std::string> broken, kept, unknown;
  std::vector<std::pair<std::string, std::string_view>> otherwise;  // line, verdict
  std::vector<std::string> sources;
};

void add_once(std::vector<std::string>& list, const std::string& text) {
  if (std::ranges::find(list, text) == list.end()) list.push_back(text);
}

Looked look(std::span<const PostLimit> limits, const Posted& item) {
  Looked looked;
  for (const PostLimit& limit : limits) {
    if (!applies(limit, item)) continue;
    add_once(looked.sources, write_source(limit.from));
    if (!known(limit, item)) {
      looked.unknown.push_back(std::string(limit_words[static_cast<std::size_t>(limit.of)]) +
                               " not known: " + write_limit(limit));
      continue;
    }
    std::string line = write_figure_of(limit, item) + ", " + write_limit(limit);
    if (keeps(limit, item))
      looked.kept.push_back(std::move(line));
    else if (limit.otherwise.empty())
      looked.broken.push_back(std::move(line));
    else
      looked.otherwise.emplace_back(std::move(line), limit.otherwise);
  }
  return looked;
}

void add(std::vector<std::string>& to, const std::vector<std::string>& from) {
  for (const std::string& each : from) add_once(to, each);
}

void take(const PostFormat& format, const Looked& looked, PostAnswer& answer) {
  answer.format = format.name;
  answer.verdict = format.verdict;
  for (const auto& [line, verdict] : looked.otherwise) {
    answer.outcome = PostOutcome::surcharge;
    answer.verdict = verdict;
    answer.why.push_back(answer.format + ": " + line);
  }
  add(answer.kept, looked.kept);
  add(answer.not_checked, looked.unknown);
  answer.also.insert(answer.also.begin(), format.also.begin(), format.also.end());
  answer.from = format.from;
}

}  // namespace

PostAnswer post_by(const PostService& service, const PostItem& item) {
  const auto [width, length] = std::minmax(item.width, item.height);
  const Posted posted{length, width, item.unit, item.thickness, item.mass_mg};
  PostAnswer answer;
  answer.service = service.name;
  answer.country = service.country;
  answer.advice = post_advice;
  answer.from = service.from;
  answer.also.assign(service.also.begin(), service.also.end());
  const Looked least = look(service.least, posted);
  add(answer.sources, least.sources);
  add(answer.not_checked, least.unknown);
  if (!least.broken.empty()) {
    answer.outcome = PostOutcome::too_small;
    answer.verdict = service.below;
    answer.why = least.broken;
    return answer;
  }
  add(answer.kept, least.kept);
  for (const PostFormat& format : service.formats) {
    const Looked looked = look(format.limits, posted);
    add(answer.sources, looked.sources);
    if (looked.broken.empty()) {
      take(format, looked, answer);
      return answer;
    }
    for (const std::string& line : looked.broken)
      answer.why.push_back(std::string(format.name) + ": " + line);
  }
  answer.outcome = PostOutcome::too_large;
  answer.verdict = service.beyond;
  answer.kept.clear();
  return answer;
}

std::vector<PostAnswer> post(const PostItem& item) {
  std::vector<PostAnswer> answers;
  for (const PostService& service : paper_tables().services) answers.push_back(post_by(service, item));
  return answers;
}

}  // namespace insetbook
