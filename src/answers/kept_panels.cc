// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/kept_panels.h"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>

#include "answers/kept_text.h"
#include "book/kept_answers.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// Of the search in src/fit: a better one is another, and what the older one found is computed again.
constexpr int method = 2;

KeptKey key_of(const Opening& opening, const FitQuestion& question) {
  KeptKey key;
  key.opening = kept_opening(opening);
  key.question = fmt::format("{} {} {}", method, question.border.nm(), question.step.nm());
  for (const ShapeKind kind : question.shapes)
    key.question += fmt::format(" shape {}", static_cast<int>(kind));
  if (question.width) key.question += fmt::format(" width {}", question.width->nm());
  if (question.height) key.question += fmt::format(" height {}", question.height->nm());
  return key;
}

// One line behind a tab for each thing mended; then one line a panel: its figures, then its name and its
// note, each behind a tab.
std::string written(const OpeningPanels& answer) {
  std::string text;
  const auto one_line = [](std::string said) {
    for (char& c : said)
      if (c == '\t' || c == '\n') c = ' ';
    return said;
  };
  for (const std::string& one : answer.mended) text += fmt::format("\t{}\n", one_line(one));
  for (const Panel& panel : answer.panels)
    text += fmt::format("{} {} {} {} {} {} {} {} {}\t{}\t{}\n", static_cast<int>(panel.kind),
                        static_cast<int>(panel.shape.kind), panel.shape.width.nm(), panel.shape.height.nm(),
                        panel.border.nm(), static_cast<int>(panel.verdict), panel.left.nm(), panel.top.nm(),
                        panel.centred ? 1 : 0, one_line(panel.shape.name), one_line(panel.note));
  return text;
}

// Empty: not what `written` writes.
std::optional<OpeningPanels> read(std::string_view text) {
  OpeningPanels answer;
  while (!text.empty()) {
    std::string_view line = take(text, '\n');
    if (line.starts_with('\t')) {
      answer.mended.emplace_back(line.substr(1));
      continue;
    }
    std::int64_t n[9];
    if (!read_figures(take(line, '\t'), n)) return std::nullopt;
    if (n[0] < 0 || n[0] > static_cast<int>(PanelKind::given_side) || n[1] < 0 ||
        n[1] > static_cast<int>(ShapeKind::other) || n[5] < 0 || n[5] > static_cast<int>(Verdict::undecided))
      return std::nullopt;
    Panel& panel = answer.panels.emplace_back();
    panel.kind = static_cast<PanelKind>(n[0]);
    panel.shape.kind = static_cast<ShapeKind>(n[1]);
    panel.shape.width = Length::nm(n[2]);
    panel.shape.height = Length::nm(n[3]);
    panel.border = Length::nm(n[4]);
    panel.verdict = static_cast<Verdict>(n[5]);
    panel.left = Length::nm(n[6]);
    panel.top = Length::nm(n[7]);
    panel.centred = n[8] != 0;
    panel.shape.name = take(line, '\t');
    panel.note = line;
  }
  return answer;
}

Result<OpeningPanels> computed(const Opening& opening, const FitQuestion& question) {
  Result<std::vector<Panel>> panels = panels_inside(opening, question);
  if (!panels) return failure(panels.error());
  return OpeningPanels{std::move(*panels), mended_in(opening.shape)};
}

}  // namespace

Result<OpeningPanels> panels_of_opening(const Book& book, std::int64_t line_id, const Opening& opening,
                                        const FitQuestion& question) {
  if (line_id == 0 || opening.shape.kind <= ShapeKind::polygon) return computed(opening, question);
  KeptAnswers kept(book.folder());
  const KeptKey key = key_of(opening, question);
  if (const std::optional<std::string> found = kept.find(line_id, key))
    if (std::optional<OpeningPanels> answer = read(*found)) return std::move(*answer);
  Result<OpeningPanels> answer = computed(opening, question);
  if (answer) kept.keep(line_id, key, written(*answer));
  return answer;
}

}  // namespace insetbook
