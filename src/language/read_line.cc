// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line.h"

#include <algorithm>
#include <utility>

#include "language/orders.h"
#include "language/pieces.h"
#include "language/read_line_cells.h"
#include "language/read_line_items.h"
#include "language/read_line_phrases.h"
#include "language/read_line_stages.h"
#include "language/read_line_text.h"
#include "language/read_record.h"
#include "text/utf8.h"

namespace insetbook {

bool PieceSaid::says_a_piece() const {
  return !role.empty() || !shape.empty() || size || !size_text.empty() || cut_by || lies_in ||
         !paper.empty() || !ink.empty() || count;
}

namespace {

constexpr int most_repairs = 16;       // places of one line that are taken out one by one
constexpr std::size_t most_unset = 4;  // names of sets that are not in the book, in one line

class LineReader {
 public:
  LineReader(std::string_view text, const ReadingContext& context)
      : text_(text), work_(text), context_(context) {}

  LineSaid run() {
    for (char& c : work_)
      if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
    if (pieces_of_line()) {
      for (const LinePhrase& phrase : line_phrases(work_, pieces_, context_)) phrases_.push_back(phrase);
      for (const LinePhrase& phrase : phrases_) take(phrase);
      for (const LinePhrase& phrase : phrases_) blank(work_, phrase.span, ',');
      for (char& c : work_)
        if (c == ':') c = ',';
      read_rest();
    }
    finish();
    return std::move(line_);
  }

 private:
  std::string typed(Span span) const {
    return single_spaced(text_.substr(span.begin, span.end - span.begin));
  }
  void not_read(Span span, std::string what, std::string expected, std::vector<std::string> candidates = {}) {
    line_.not_read.push_back({span, std::move(what), std::move(expected), std::move(candidates), {}});
  }

  // A quote that does not end is taken for a mark.
  bool pieces_of_line() {
    for (int turn = 0; turn <= most_repairs; ++turn) {
      Result<std::vector<Piece>> pieces = split(work_, {0, work_.size()});
      if (pieces) {
        pieces_ = std::move(*pieces);
        return true;
      }
      const std::size_t begin = byte_at(work_, pieces.error().where.at.value_or(0));
      const Span quote{begin, character_at(work_, begin).end};
      not_read(quote, pieces.error().what, pieces.error().expected);
      blank(work_, quote);
    }
    not_read({0, text_.size()}, "the line has more quotes than can be read", "one quoted text a piece");
    return false;
  }

  void take(const LinePhrase& phrase) {
    switch (phrase.kind) {
      case LinePhrase::Kind::goes:
        return goes(phrase);
      case LinePhrase::Kind::glue:
        return glue(phrase);
      case LinePhrase::Kind::place:
        if (!line_.at.empty()) line_.at += ", ";
        line_.at += typed(phrase.inner);
        return;
      case LinePhrase::Kind::name:
        if (!line_.name.empty())
          return not_read(phrase.span, "a second name, \"" + typed(phrase.inner) + "\"", "one name");
        line_.name = typed(phrase.inner);
        return;
      case LinePhrase::Kind::note:
        line_.notes.push_back(typed(phrase.inner));
        return;
      case LinePhrase::Kind::count:
        line_.piece.count = phrase.number;
        return;
      case LinePhrase::Kind::scores:
        return scores(phrase);
      case LinePhrase::Kind::filler:
        line_.fillers.push_back({typed(phrase.span), "filler", phrase.span});
        return;
    }
  }

  void goes(const LinePhrase& phrase) {
    GoesSaid goes;
    goes.how = phrase.how;
    goes.span = phrase.span;
    goes.target = typed(phrase.inner);
    goes.place_of_card = phrase.place_of_card;
    if (goes.place_of_card) {
      const std::string folded = fold(goes.target);
      goes.side = side_word(folded.substr(0, folded.find(' ')));
      if (phrase.how == GoesHow::on && !goes.side.empty() && line_.piece.side.empty())
        line_.piece.side = goes.side;
    }
    if (line_.goes) {
      // "on the front, on the mat": the side was said first.
      const bool side_first =
          line_.goes->place_of_card && line_.goes->how == GoesHow::on && !goes.place_of_card;
      const bool side_second = goes.place_of_card && goes.how == GoesHow::on && !goes.side.empty();
      if (side_second) return;
      if (!side_first)
        return not_read(phrase.span, "the piece goes with a second one: \"" + typed(phrase.span) + "\"",
                        "the piece that it lies on or in");
    }
    if (!goes.place_of_card) describe(goes);
    line_.goes = std::move(goes);
  }

  // The line of the other piece's die, and what the piece looks like.
  void describe(GoesSaid& goes) const {
    goes.line = line_taken_off(goes.target);
    Result<Itemised> items = read_stages(goes.target, context_);
    if (!items) return;
    LineSaid other;
    take_items(goes.target, context_, *items, other);
    goes.piece = std::move(other.piece);
  }

  void glue(const LinePhrase& phrase) {
    const std::string said = glue_of(typed(phrase.inner));
    if (const Result<Glue> glue = read_glue(said, context_.unit); !glue)
      return not_read(phrase.span, glue.error().what, glue.error().expected);
    if (!line_.glue.empty()) line_.glue += ", ";
    line_.glue += said;
  }

  void scores(const LinePhrase& phrase) {
    if (!line_.scores.empty()) line_.scores += "; ";
    line_.scores += scores_of(typed(phrase.inner));
  }

  // The rest of the line through the stages; what they refuse is taken out and the rest read again.
  void read_rest() {
    int repairs = 0;
    std::size_t unset = 0;
    for (;;) {
      Result<Itemised> items = read_stages(work_, context_);
      if (!items) {
        if (++repairs > most_repairs)
          return not_read(rest_of_line(), items.error().what, items.error().expected);
        take_out(items.error());
        continue;
      }
      if (unset < most_unset && unknown_set(*items)) {
        ++unset;
        continue;
      }
      take_items(text_, context_, *items, line_);
      return;
    }
  }
  Span rest_of_line() const {
    const std::size_t begin = work_.find_first_not_of(" ,");
    const std::size_t end = work_.find_last_not_of(" ,");
    if (begin == std::string::npos) return {0, 0};
    return {begin, end + 1};
  }

  // All of the figure in which the mistake is, with its unit.
  void take_out(const Problem& problem) {
    const std::size_t at = byte_at(work_, problem.where.at.value_or(0));
    std::size_t place = 0;
    while (place + 1 < pieces_.size() && pieces_[place].span.end <= at) ++place;
    const auto of_figure = [&](std::size_t i) {
      const Piece& piece = pieces_[i];
      if (piece.kind == Piece::Kind::phrase || work_[piece.span.begin] == ' ') return false;
      static constexpr std::string_view units[] = {"in", "inch", "inches", "mm", "cm",
                                                   "x",  "by",   "\"",     "/",  "."};
      return std::ranges::find(units, piece.folded) != std::end(units) ||
             piece.folded.find_first_of("0123456789") != std::string::npos;
    };
    std::size_t first = place, last = place + 1;
    while (first > 0 && of_figure(first - 1)) --first;
    while (last < pieces_.size() && of_figure(last)) ++last;
    Span span{pieces_[first].span.begin, pieces_[last - 1].span.end};
    span.begin = std::min(span.begin, at);
    // Nothing taken out would be the same mistake again.
    if (span.end <= at) span.end = std::min(work_.size(), at + 1);
    not_read(span, problem.what, problem.expected, problem.candidates);
    blank(work_, span, ',');
  }

  bool in_items(const Itemised& items, Span span) const {
    return std::ranges::any_of(items.items, [&](const Item& item) {
      return item.span.begin <= span.begin && span.end <= item.span.end;
    });
  }

  // "from moonbeam circles 3" where no set has that name: what follows "from" is not read as another piece.
  bool unknown_set(const Itemised& items) {
    for (std::size_t i = 0; i + 1 < pieces_.size(); ++i) {
      const Piece& from = pieces_[i];
      if (from.kind != Piece::Kind::word || from.folded != "from" || work_[from.span.begin] == ' ' ||
          work_[from.span.begin] == ',' || in_items(items, from.span))
        continue;
      std::size_t last = i + 1;
      while (last < pieces_.size() && pieces_[last].kind == Piece::Kind::word &&
             work_[pieces_[last].span.begin] != ' ' && work_[pieces_[last].span.begin] != ',')
        ++last;
      const Span said{from.span.begin, pieces_[last - 1].span.end};
      const bool about_paper = std::ranges::none_of(items.items, [&](const Item& item) {
        return item.span.begin >= said.begin && item.span.end <= said.end && names_no_stuff(item);
      });
      if (last == i + 1 || about_paper) continue;
      const Span name{pieces_[i + 1].span.begin, said.end};
      tell_unknown_set(said, typed(name));
      blank(work_, said, ',');
      return true;
    }
    return false;
  }
  static bool names_no_stuff(const Item& item) {
    if (item.kind == Item::Kind::number) return true;
    if (item.kind != Item::Kind::says) return false;
    return item.of == FieldName::text || item.of == FieldName::shape || item.of == FieldName::role;
  }
  void tell_unknown_set(Span said, std::string name) {
    std::string key = fold(name);
    if (const std::size_t space = key.rfind(' ');
        space != std::string::npos && plain_number(key.substr(space + 1)))
      key.resize(space);
    std::vector<std::string> candidates;
    for (const NamedRecord& record : context_.names.like(key, 6))
      if (record.kind == NameKind::set && candidates.size() < 3 &&
          std::ranges::find(candidates, record.name) == candidates.end())
        candidates.push_back(record.name);
    not_read(said, "no die set is called \"" + name + "\"",
             "a set of the book, with the order or label of the die", std::move(candidates));
  }

  // Words that nothing understood stand together where only small words part them.
  void finish() {
    std::ranges::stable_sort(line_.not_read, {}, [](const NotRead& each) { return each.span.begin; });
    std::ranges::stable_sort(line_.fillers, {}, [](const Ignored& each) { return each.span.begin; });
    std::vector<NotRead> joined;
    for (NotRead& each : line_.not_read) {
      const bool plain = each.what.empty();
      if (plain && !joined.empty() && joined.back().what.empty() && close(joined.back().span, each.span))
        joined.back().span.end = each.span.end;
      else
        joined.push_back(std::move(each));
    }
    for (NotRead& each : joined)
      if (each.what.empty()) {
        take_fillers(each.span);
        each.what = "\"" + typed(each.span) + "\" is not understood";
        each.expected = "a word of the vocabularies or a name in the book";
        each.words = fold(typed(each.span));
      }
    line_.not_read = std::move(joined);
  }
  // "must find the other glue": small words that end what is not understood, and those before it where it is
  // all that stands between two commas, are of what they stand with.
  void take_fillers(Span& span) {
    std::size_t begin = span.begin, end = span.end;
    for (const Ignored& each : line_.fillers)
      if (each.span.begin >= end && only_space(end, each.span.begin)) end = each.span.end;
    if (!ends_clause(end)) return;
    for (auto each = line_.fillers.rbegin(); each != line_.fillers.rend(); ++each)
      if (each->span.end <= begin && only_space(each->span.end, begin)) begin = each->span.begin;
    span.end = end;
    const std::size_t before = std::string_view(work_).substr(0, begin).find_last_not_of(' ');
    if (before == std::string::npos || is_clause_mark(work_[before])) span.begin = begin;
    std::erase_if(line_.fillers, [&](const Ignored& each) {
      return each.span.begin >= span.begin && each.span.end <= span.end;
    });
  }
  static bool is_clause_mark(char c) { return c == ',' || c == ';' || c == '.'; }
  bool ends_clause(std::size_t at) const {
    const std::size_t next = work_.find_first_not_of(' ', at);
    return next == std::string::npos || is_clause_mark(work_[next]);
  }
  bool close(Span a, Span b) const {
    if (b.begin < a.end) return true;
    std::size_t at = a.end;
    for (const Ignored& each : line_.fillers)
      if (each.span.begin >= at && each.span.end <= b.begin && only_space(at, each.span.begin))
        at = each.span.end;
    return only_space(at, b.begin);
  }
  bool only_space(std::size_t begin, std::size_t end) const {
    return std::string_view(work_).substr(begin, end - begin).find_first_not_of(" -'") ==
           std::string_view::npos;
  }

  std::string_view text_;
  std::string work_;
  const ReadingContext& context_;
  std::vector<Piece> pieces_;
  std::vector<LinePhrase> phrases_;
  LineSaid line_;
};

}  // namespace

LineSaid read_line(std::string_view text, const ReadingContext& context) {
  if (text.size() <= longest_line) return LineReader(text, context).run();
  LineSaid line;
  line.not_read.push_back({{0, text.size()},
                           "the line is " + std::to_string(text.size()) + " bytes long",
                           "at most " + std::to_string(longest_line) + " bytes",
                           {},
                           {}});
  return line;
}

}  // namespace insetbook
