// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "answers/base.h"
#include "answers/layers.h"
#include "answers/sizes_shown.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

std::optional<std::string> option_text(const Invocation& invocation, std::string_view name) {
  return invocation.has(name) ? std::optional(invocation.value(name)) : std::nullopt;
}

std::string scores_text(const BaseAnswer& answer) {
  if (answer.base.creases.empty()) return "no scores";
  std::string text;
  bool upright = answer.base.creases.front().upright;
  for (const SheetCrease& crease : answer.base.creases) {
    text += text.empty() ? "" : ", ";
    text += write(crease.at, answer.unit);
    if (crease.upright != upright || &crease == &answer.base.creases.back())
      text += crease.upright ? " from the left" : " from the top";
    upright = crease.upright;
  }
  return "score at " + text;
}

void print_scores(const BaseAnswer& answer, Output& out) {
  if (answer.base.creases.empty()) return;
  Table table{{"fold", "score at", "from", "inside up, it folds"}, {}};
  int number = 0;
  for (const SheetCrease& crease : answer.base.creases)
    table.rows.push_back({fmt::format("{}", ++number), write(crease.at, answer.unit),
                          crease.upright ? "the left" : "the top",
                          crease.mountain ? "back (mountain)" : "forward (valley)"});
  out.table(table);
}

void print_sections(const BaseAnswer& answer, Output& out) {
  Table table{{"from the front", "section", "size", "shows"}, {}};
  for (std::size_t i = 0; i < answer.folded.front_to_back.size(); ++i) {
    const BaseSection& one = answer.folded.sections[static_cast<std::size_t>(answer.folded.front_to_back[i])];
    table.rows.push_back({fmt::format("{}", i + 1), fmt::format("{}", one.number),
                          write_size(one.width, one.height, answer.unit),
                          one.inside_to_front() ? "its inside face" : "its outer face"});
  }
  out.table(table);
}

void print_base(const BaseAnswer& answer, Output& out) {
  out.headline(fmt::format("{}: cut {}, {}.", answer.fold,
                           write_size(answer.base.width, answer.base.height, answer.unit),
                           scores_text(answer)));
  out.line(
      fmt::format("It closes to {}.", write_size(answer.folded.width, answer.folded.height, answer.unit)));
  if (!answer.grain.empty()) out.line(fmt::format("Grain: {} (common practice, no source).", answer.grain));
  for (const BaseFromPaper& paper : answer.papers)
    out.line(fmt::format("{}: {}.", paper.paper,
                         paper.count == 0 ? std::string("none comes out of a sheet")
                                          : fmt::format("{} from a sheet, in rows", paper.count)));
  for (const OffTheMark& off : answer.off_marks)
    out.line(fmt::format("{} lies on no groove of your scoring board; the nearest is {}.",
                         write(off.at, answer.unit), write(off.nearest, answer.marks_unit)));
  for (const std::string& note : answer.notes) out.detail(note + ".");
  if (answer.base.creases.empty()) return;
  out.blank();
  print_scores(answer, out);
  out.blank();
  print_sections(answer, out);
}

std::string layers_headline(const LayersAnswer& answer) {
  std::string text;
  for (const LayerShown& layer : answer.layers) {
    if (layer.role == "given" || layer.role == "the opening") continue;
    text += (text.empty() ? "" : ", ") +
            shaped_size_text(answer.shape, layer.size.width, layer.size.height, answer.unit);
  }
  return text;
}

void print_layers(const LayersAnswer& answer, Output& out) {
  out.headline(layers_headline(answer) + ".");
  if (!answer.opening.empty()) out.detail(fmt::format("From {}.", answer.opening));
  if (answer.border_is_setting) out.detail("The border is the one of the settings; --border says another.");
  out.blank();
  Table table{{"layer", "size", "shows on each side", "cut by"}, {}};
  for (const LayerShown& layer : answer.layers)
    table.rows.push_back({layer.role,
                          shaped_size_text(answer.shape, layer.size.width, layer.size.height, answer.unit),
                          layer.size.border > Length() ? write(layer.size.border, answer.unit) : "",
                          fmt::format("{}", fmt::join(layer.dies, "; "))});
  out.table(table);
}

}  // namespace

int run_base(const Invocation& invocation, Output& out) {
  BaseQuestion question;
  question.fold = invocation.text();
  question.finished = invocation.value("finished");
  question.from = invocation.value("from");
  question.gap = option_text(invocation, "gap");
  question.tuck = option_text(invocation, "tuck");
  if (invocation.has("sections")) {
    const Result<std::size_t> sections = number_given(invocation, "sections", 4);
    if (!sections) return out.problem(sections.error());
    question.sections = static_cast<int>(std::min<std::size_t>(*sections, 1000));
  }
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<BaseAnswer> answer = base_figures(*book, question);
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_base(*answer, out);
  return 0;
}

int run_layers(const Invocation& invocation, Output& out) {
  LayersQuestion question;
  question.from = invocation.text();
  question.borders = invocation.values("border");
  question.outwards = invocation.has("outwards");
  const Result<std::size_t> count = number_given(invocation, "count", 1);
  if (!count) return out.problem(count.error());
  question.count = static_cast<int>(std::min<std::size_t>(*count, 1000));
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<LayersAnswer> answer = layer_sizes(*book, question);
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_layers(*answer, out);
  return 0;
}

}  // namespace insetbook::cli
