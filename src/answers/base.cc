// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/base.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/sample_card.h"
#include "answers/words.h"
#include "book/settings.h"
#include "card/papers.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"

namespace insetbook {
namespace {

Problem no_fold(const Vocabulary& words, const std::string& typed) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = in_quotes(typed) + " is no fold";
  problem.expected = "side fold, top fold, tent, Z, easel, gate, letter tri-fold, accordion or flat";
  for (const TermMatch& near : words.find(typed)) problem.candidates.push_back(near.label);
  return problem;
}

Result<Length> length_option(const std::optional<std::string>& text, Unit unit, Length otherwise) {
  if (!text) return otherwise;
  const auto read = read_length(*text, unit);
  if (!read) return failure(read.error());
  return read->length;
}

Problem not_worked_out(const BaseNotLaid& why) {
  return {.what = why.what, .where = {}, .expected = why.mend, .candidates = {}};
}

// How many w x h pieces come from a sheet, in rows, all one way round.
int in_rows(Length sheet_width, Length sheet_height, Length width, Length height) {
  return static_cast<int>((sheet_width / width) * (sheet_height / height));
}

class Asked {
 public:
  Asked(const Book& book, const BaseQuestion& question)
      : question_(question), settings_(settings(book)), words_(vocabulary_of(book)) {}

  Result<BaseAnswer> run() {
    const auto terms = words_.find(question_.fold, VocabularyName::fold);
    if (terms.empty()) return failure(no_fold(words_, question_.fold));
    answer_.fold = terms.front().label;
    written_.folds = {terms.front().id};
    written_.entry = fold_entry(words_, written_.folds);
    const Result<BaseFigures> figures = read_figures();
    if (!figures) return failure(figures.error());
    const auto base = question_.finished.empty() ? from_sheet(*figures) : to_finished(*figures);
    if (!base) return failure(base.error());
    answer_.base = *base;
    const auto folded = fold_flat(answer_.base, answer_.unit);
    if (!folded) return failure(not_worked_out(folded.error()));
    answer_.folded = *folded;
    answer_.marks_unit = settings_.unit;
    answer_.off_marks = off_the_marks(answer_.base, settings_.scoring_marks);
    add_papers();
    add_grain();
    return std::move(answer_);
  }

 private:
  Result<BaseFigures> read_figures() {
    BaseFigures figures;
    const bool metric = settings_.unit == Unit::mm;
    const auto gap = length_option(question_.gap, settings_.unit, Length());
    if (!gap) return failure(gap.error());
    // A tucked flap as long as the others would buckle: common practice, no source.
    const auto tuck = length_option(question_.tuck, settings_.unit,
                                    metric ? Length::nm(1'500'000) : Length::inch_fraction(1, 16));
    if (!tuck) return failure(tuck.error());
    figures.gap = *gap;
    figures.tuck = *tuck;
    figures.sections = question_.sections.value_or(4);
    if (figures.sections < 2 || figures.sections > 40) {
      return failure(Problem{.what = fmt::format("an accordion of {} sections cannot be", figures.sections),
                             .where = {},
                             .expected = "2 to 40 sections",
                             .candidates = {}});
    }
    return figures;
  }

  Result<Base> to_finished(const BaseFigures& figures) {
    const auto size = read_size(question_.finished, settings_.unit);
    PaperRead paper;
    if (size) {
      paper.width = size->width;
      paper.height = size->height;
      paper.unit = size->unit;
    } else if (const auto named = read_paper(question_.finished, settings_.unit)) {
      paper = *named;
    } else {
      return failure(size.error());
    }
    answer_.unit = paper.unit;
    const auto base = base_that_closes_to(written_, paper.width, paper.height, figures);
    if (!base) return failure(not_worked_out(base.error()));
    return *base;
  }

  Result<Base> from_sheet(const BaseFigures& figures) {
    const auto paper = read_paper(question_.from, settings_.unit);
    if (!paper) return failure(read_size(question_.from, settings_.unit).error());
    answer_.unit = paper->unit;
    Length width = paper->width, height = paper->height;
    const auto& creases = written_.entry.creases;
    const bool one_way =
        !creases.empty() && std::all_of(creases.begin(), creases.end(), [&](const EntryCrease& one) {
          return one.upright == creases.front().upright;
        });
    if (one_way && creases.front().upright != (width >= height) && width != height) {
      std::swap(width, height);
      answer_.notes.push_back("the sheet lies so that its long side is folded");
    }
    const auto base = base_from_sheet(written_, width, height, figures);
    if (!base) return failure(not_worked_out(base.error()));
    return *base;
  }

  void add_papers() {
    std::string_view rest = settings_.paper;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(';'), rest.size());
      const std::string_view one = rest.substr(0, end);
      rest.remove_prefix(std::min(end + 1, rest.size()));
      const auto paper = read_paper(one, settings_.unit);
      if (!paper) continue;
      const int count =
          std::max(in_rows(paper->width, paper->height, answer_.base.width, answer_.base.height),
                   in_rows(paper->height, paper->width, answer_.base.width, answer_.base.height));
      const std::string name =
          paper->name.empty() ? write_size(paper->width, paper->height, paper->unit) : paper->name;
      answer_.papers.push_back({name, count});
    }
  }

  void add_grain() {
    if (answer_.base.creases.empty()) return;
    answer_.grain =
        answer_.base.creases.back().upright ? "upright, along the creases" : "level, along the creases";
    for (const SheetCrease& crease : answer_.base.creases)
      if (crease.upright != answer_.base.creases.back().upright)
        answer_.grain = "along the last crease; the other is scored well";
  }

  const BaseQuestion& question_;
  Settings settings_;
  Vocabulary words_;
  BaseAsWritten written_;
  BaseAnswer answer_;
};

}  // namespace

Result<BaseAnswer> base_figures(const Book& book, const BaseQuestion& question) {
  if (question.finished.empty() == question.from.empty()) {
    return failure(Problem{.what = "a base is worked out from its finished size or from a sheet",
                           .where = {},
                           .expected = "one of --finished SIZE and --from SIZE",
                           .candidates = {}});
  }
  return Asked(book, question).run();
}

}  // namespace insetbook
