// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/read_record_reader.h"
#include "text/utf8.h"

namespace insetbook {

Problem RecordReader::problem_of(const NotRead& lost, std::size_t offset) const {
  constexpr std::size_t longest_shown = 400;
  Problem problem;
  problem.what = lost.what;
  problem.expected = lost.expected;
  problem.candidates = lost.candidates;
  problem.where.row = row_;
  const std::size_t begin = std::min(offset + lost.span.begin, line_.size());
  const std::size_t end = std::min(offset + lost.span.end, line_.size());
  problem.where.text = std::string(line_);
  problem.where.at = characters_before(line_, begin);
  problem.where.length = characters_before(line_, end) - *problem.where.at;
  if (line_.size() > longest_shown) {
    // Of a very long line the part that is meant is shown.
    const std::string part(line_.substr(begin, std::min(end - begin, longest_shown)));
    problem.where.text = valid_utf8(part) ? part : std::string();
    problem.where.at = problem.where.text.empty() ? std::nullopt : std::optional<std::size_t>(0);
    problem.where.length = characters(problem.where.text).size();
  }
  return problem;
}

void RecordReader::left_over(const NotRead& lost, std::size_t offset, std::optional<std::size_t> piece) {
  const std::size_t begin = std::min(offset + lost.span.begin, line_.size());
  const std::size_t end = std::min(offset + lost.span.end, line_.size());
  std::string typed(trim(line_.substr(begin, end - begin)));
  Problem problem = problem_of(lost, offset);
  if (!lost.words.empty() && ++suggested_ <= most_suggested) problem.candidates = words_like(lost.words);
  record_.not_read.push_back({std::move(problem), piece});
  auto& list = piece ? record_.pieces[*piece].left_over : record_.sample.left_over;
  if (!typed.empty()) list.push_back(std::move(typed));
}

// Names of the book and words of the trade that are written nearly so.
std::vector<std::string> RecordReader::words_like(const std::string& words) const {
  constexpr std::size_t most = 3;
  if (words.size() < 3) return {};
  const std::size_t slips = words.size() > 5 ? 2 : 1;
  std::vector<std::pair<std::size_t, std::string>> near;
  const auto add = [&](const std::string& name) {
    const std::size_t distance = edit_distance(words, fold(name), slips);
    const bool there =
        std::ranges::find(near, name, &std::pair<std::size_t, std::string>::second) != near.end();
    if (distance <= slips && !there) near.emplace_back(distance, name);
  };
  for (const NamedRecord& record : context_.names.like(words, most)) add(record.name);
  for (const std::string& label : context_.vocabulary.all_labels()) add(label);
  std::ranges::stable_sort(near, {}, &std::pair<std::size_t, std::string>::first);
  std::vector<std::string> names;
  for (std::size_t i = 0; i < std::min(most, near.size()); ++i) names.push_back(near[i].second);
  return names;
}

void RecordReader::left_over_line(const Part& part, std::string what, std::string expected) {
  left_over({{0, part.said.size()}, std::move(what), std::move(expected), {}, {}}, part.offset, std::nullopt);
}

}  // namespace insetbook
