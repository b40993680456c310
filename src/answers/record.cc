// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/record.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/book_names.h"
#include "answers/words.h"
#include "book/openings.h"
#include "book/settings.h"
#include "card/closed_size.h"
#include "importers/csv/lookups.h"
#include "importers/csv/units.h"
#include "language/read_record_text.h"
#include "measure/write.h"
#include "shape/shape.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

struct DieNamed {
  std::int64_t set_id = 0, die_id = 0;
  std::string set, label, set_key, key;
};

std::optional<DieNamed> die_named(const Book& book, std::int64_t id) {
  Statement& row = book.statement(
      "SELECT s.id, s.name, s.key, d.label, d.key FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = "
      "?1");
  row.bind(1, id);
  std::optional<DieNamed> die;
  if (row.step())
    die = DieNamed{.set_id = row.integer(0),
                   .die_id = id,
                   .set = std::string(row.text(1)),
                   .label = std::string(row.text(3)),
                   .set_key = std::string(row.text(2)),
                   .key = std::string(row.text(4))};
  row.reset();
  return die;
}

std::string joined(const std::vector<std::string>& list, std::string_view between) {
  return fmt::format("{}", fmt::join(list, between));
}

// Turns what was said into rows of the book, and tells what the book does not know.
class Rows {
 public:
  Rows(const Book& book, const Vocabulary& vocabulary, RecordSaid said, const RecordAsked& asked)
      : book_(book),
        lookups_(book, vocabulary),
        said_(std::move(said)),
        unit_(settings(book).unit),
        asked_(asked) {}

  RecordAnswer take() {
    answer_.notes = std::move(said_.remarks);
    sample();
    for (std::size_t i = 0; i < said_.pieces.size(); ++i) piece(i);
    for (std::size_t i = 0; i < said_.pieces.size(); ++i) goes(i);
    drop_said_again(answer_.sample.mentions);
    for (RecordedPiece& piece : answer_.pieces) drop_said_again(piece.shown.row.mentions);
    for (LeftOver& lost : said_.not_read) answer_.not_read.push_back(std::move(lost.problem));
    if (asked_.strict)
      for (Problem& problem : said_.doubtful) answer_.not_read.push_back(std::move(problem));
    std::ranges::stable_sort(answer_.not_read, {}, [](const Problem& problem) { return problem.where.row; });
    for (Problem& problem : answer_.not_read) problem.where.file = asked_.file;
    return std::move(answer_);
  }
  const std::vector<std::optional<std::size_t>>& targets() const { return targets_; }

 private:
  // ---- mentions

  void mention_terms(const std::vector<TermSaid>& terms, std::string_view only,
                     std::vector<Mention>& mentions) {
    for (const TermSaid& term : terms) {
      if (!only.empty() && term.kind != only) continue;
      mentions.push_back({term.kind, term.term, std::nullopt, std::nullopt, term.written});
    }
  }
  // "white circle, white": once.
  static void drop_said_again(std::vector<Mention>& mentions) {
    std::vector<Mention> once;
    for (Mention& mention : mentions) {
      const bool again = std::ranges::any_of(once, [&](const Mention& other) {
        return other.kind == mention.kind && other.term == mention.term &&
               other.colour_id == mention.colour_id && other.supply_id == mention.supply_id &&
               fold(other.written) == fold(mention.written);
      });
      if (!again) once.push_back(std::move(mention));
    }
    mentions = std::move(once);
  }
  void mention_colours(const std::vector<std::string>& colours, std::string_view kind,
                       std::vector<Mention>& mentions) {
    for (const std::string& colour : colours) {
      const auto id = lookups_.colour(colour);
      if (!id) note(fmt::format("the book has no colour called \"{}\": it is kept as a word", colour));
      mentions.push_back({std::string(kind), std::nullopt, id, std::nullopt, colour});
    }
  }
  void mention_supplies(const std::vector<std::string>& supplies, std::vector<Mention>& mentions) {
    for (const std::string& supply : supplies) {
      Mention mention{"supply", std::nullopt, std::nullopt, lookups_.supply(supply), supply};
      if (!mention.supply_id) {
        if (const auto& material = lookups_.term(VocabularyName::material, supply)) {
          mention.kind = "material";
          mention.term = material;
        } else {
          note(fmt::format("the book has no one supply called \"{}\": it is kept as a word", supply));
        }
      }
      mentions.push_back(std::move(mention));
    }
  }
  void note(std::string text) {
    if (std::ranges::find(answer_.notes, text) == answer_.notes.end())
      answer_.notes.push_back(std::move(text));
  }
  void not_read(int line, std::string what, std::string expected, std::vector<std::string> candidates = {}) {
    Problem problem{.kind = ProblemKind::bad_input,
                    .what = std::move(what),
                    .where = {},
                    .expected = std::move(expected),
                    .candidates = std::move(candidates)};
    problem.where.row = line;
    answer_.not_read.push_back(std::move(problem));
  }

  // ---- the sample

  void sample() {
    const SampleOfRecord& said = said_.sample;
    SampleRow& row = answer_.sample;
    row.title = said.title;
    row.made = said.made;
    if (said.base) {
      row.base.width = said.base->width;
      row.base.height = said.base->height;
      row.base.unit = said.base->unit;
      row.base.placed = true;
    }
    row.scores = with_units(said.scores, unit_, Numbers::are_lengths);
    row.words = joined(said.words, "; ");
    row.envelope = said.envelope;
    row.steps = joined(said.steps, "; ");
    for (const std::string_view kind : {"fold", "occasion"}) mention_terms(said.terms, kind, row.mentions);
    for (const TermSaid& term : said.terms)
      if (term.kind != "fold" && term.kind != "occasion") mention_terms({term}, "", row.mentions);
    mention_supplies(said.supplies, row.mentions);
    close();
    std::vector<std::string> left_over = said.left_over;
    based_on(left_over);
    row.note = note_with(said.notes, left_over, "\n");
  }

  static std::string note_with(const std::vector<std::string>& notes,
                               const std::vector<std::string>& left_over, std::string_view between) {
    std::string note = joined(notes, between);
    if (left_over.empty()) return note;
    if (!note.empty()) note += between;
    return note + "not read: " + joined(left_over, "; ");
  }

  void based_on(std::vector<std::string>& left_over) {
    const std::string& said = said_.sample.based_on;
    if (said.empty()) return;
    if (const auto id = sample_titled(book_, fold(said))) {
      answer_.sample.based_on = insetbook::sample(book_, *id)->title;
      return;
    }
    std::vector<std::string> near;
    for (const NameHit& hit : find_names(book_, said, RecordKind::sample, 3)) near.push_back(hit.name);
    not_read(0, fmt::format("no sample is called \"{}\"", said), "the title of a sample in the book", near);
    left_over.push_back("based on " + said);
  }

  void close() {
    const SampleOfRecord& said = said_.sample;
    SampleRow& row = answer_.sample;
    if (said.closed) {
      row.finished_text = said.closed_text;
      row.closed_width = said.closed->width;
      row.closed_height = said.closed->height;
      row.closed_unit = said.closed->unit;
      return;
    }
    if (!row.base.width || !row.base.height) return;
    std::vector<std::string> folds;
    for (const Mention& mention : row.mentions)
      if (mention.kind == "fold") folds.push_back(mention.term.value_or(mention.written));
    const auto closed = closed_size(folds, *row.base.width, *row.base.height, row.scores, row.base.unit);
    if (!closed) return;
    row.closed_width = closed->width;
    row.closed_height = closed->height;
    row.closed_unit = row.base.unit;
  }

  // ---- pieces

  void piece(std::size_t place) {
    const PieceOfRecord& said = said_.pieces[place];
    const PieceSaid& what = said.said.piece;
    RecordedPiece& recorded = answer_.pieces.emplace_back();
    recorded.line = said.line;
    ElementRow& row = recorded.shown.row;
    row.position = static_cast<int>(place) + 1;
    row.name = said.name;
    row.role = what.role;
    row.side = what.side;
    row.shape = what.shape;
    row.count = what.count.value_or(1);
    row.at = with_units(said.said.at, unit_, Numbers::are_counts);
    row.glue = with_units(said.said.glue, unit_, Numbers::are_lengths);
    std::vector<std::string> left_over = said.left_over;
    cut_by(what, recorded, left_over);
    size(what, recorded, left_over);
    mention_colours(what.paper, "paper", row.mentions);
    mention_colours(what.ink, "ink", row.mentions);
    mention_terms(what.terms, "", row.mentions);
    mention_supplies(what.supplies, row.mentions);
    row.note = note_with(said.said.notes, left_over, "; ");
  }

  void cut_by(const PieceSaid& what, RecordedPiece& recorded, std::vector<std::string>& left_over) {
    if (!what.cut_by) return;
    const auto die = die_named(book_, what.cut_by->dies.front());
    if (!die) return;
    ElementRow& row = recorded.shown.row;
    row.set_id = die->set_id;
    recorded.shown.cut_by = die->set;
    if (what.cut_by->dies.size() > 1) return;
    row.die_id = die->die_id;
    recorded.shown.cut_by += " " + die->label;
    // What a circle die cuts is a circle.
    if (row.shape.empty()) {
      const std::string shape = lookups_.shape_of_die(die->set_key, die->key);
      const auto& term = lookups_.term(VocabularyName::shape, shape);
      row.shape = term ? *term : shape;
    }
    if (what.cut_by->line.empty()) return;
    row.line_id = lookups_.line_of(die->die_id, what.cut_by->line);
    if (row.line_id) {
      recorded.shown.cut_by += ", " + what.cut_by->line;
      return;
    }
    not_read(recorded.line, fmt::format("{} {} has no line \"{}\"", die->set, die->label, what.cut_by->line),
             lines_of(*die));
    left_over.push_back(what.cut_by->line + " line");
  }
  std::string lines_of(const DieNamed& die) const {
    std::vector<std::string> names;
    for (const OpeningRecord& line : openings_of_die(book_, die.die_id)) names.push_back(line.line);
    return joined(names, ", ");
  }

  // As a table's size cell is kept: one figure is a circle's or a square's.
  void size(const PieceSaid& what, RecordedPiece& recorded, std::vector<std::string>& left_over) {
    ElementRow& row = recorded.shown.row;
    if (!what.size) return;
    const auto kind = shape_kind(row.shape);
    row.size.text = what.size_text;
    const bool round = kind == ShapeKind::circle || kind == ShapeKind::square || row.shape == "ring";
    if (what.size->one_figure && !round) {
      const bool needs_two =
          kind == ShapeKind::rectangle || kind == ShapeKind::rounded_rectangle || kind == ShapeKind::oval;
      if (!needs_two) {
        note(fmt::format("line {}: \"{}\" is one figure: it is kept as a word", recorded.line,
                         what.size_text));
        return;
      }
      not_read(recorded.line,
               fmt::format("\"{}\" is one figure; the shape {} has two", what.size_text, row.shape),
               "a width and a height: 2 x 3 in");
      left_over.push_back(what.size_text);
      row.size = SizeOnRecord();
      return;
    }
    row.size.width = what.size->width;
    row.size.height = what.size->height;
    row.size.unit = what.size->unit;
    row.size.placed = what.size->orientation == Orientation::said || !row.at.empty();
  }

  // ---- how pieces go together

  void goes(std::size_t place) {
    const PieceOfRecord& said = said_.pieces[place];
    RecordedPiece& recorded = answer_.pieces[place];
    ElementRow& row = recorded.shown.row;
    std::optional<std::size_t> target = said.goes_to;
    targets_.push_back(target);
    if (target) recorded.goes_to = said_.pieces[*target].name;
    if (!said.said.goes) return lies_in(said, recorded);
    const GoesSaid& goes = *said.said.goes;
    row.goes_how = goes_word(goes.how);
    row.goes = row.goes_how + " " + (target ? recorded.goes_to : goes.target);
    if (!goes.line.empty()) row.goes += ", " + goes.line;
    if (row.side.empty()) row.side = goes.side;
    if (goes.how != GoesHow::in) return;
    if (target) {
      const ElementRow& other = answer_.pieces[*target].shown.row;
      if (other.die_id) lie_in(*other.die_id, goes.line, recorded);
      return;
    }
    if (const auto& opening = lookups_.opening(goes.target); opening && opening->line_id)
      in_line(*opening->line_id, recorded);
  }

  // "in tidepool rectangles 2": the line of that die, whether or not a piece here was cut by it.
  void lies_in(const PieceOfRecord& said, RecordedPiece& recorded) {
    if (!said.said.piece.lies_in) return;
    const DieSaidOfPiece& in = *said.said.piece.lies_in;
    const auto die = die_named(book_, in.dies.front());
    if (!die) return;
    ElementRow& row = recorded.shown.row;
    row.goes_how = "in";
    std::string name = recorded.goes_to;
    if (name.empty()) name = in.dies.size() > 1 ? die->set : die->set + " " + die->label;
    row.goes = "in " + name + (in.line.empty() ? "" : ", " + in.line);
    if (in.dies.size() == 1) return lie_in(die->die_id, in.line, recorded);
    keep_in_note("in " + in.said, row);
    not_read(recorded.line, fmt::format("{} has {} dies, and none is named", die->set, in.dies.size()),
             "the order or label of the die in whose line the piece lies");
  }

  static void keep_in_note(const std::string& words, ElementRow& row) {
    const bool marked = row.note.find("not read: ") != std::string::npos;
    if (!row.note.empty()) row.note += "; ";
    row.note += (marked ? "" : "not read: ") + words;
  }

  void lie_in(std::int64_t die_id, const std::string& line, RecordedPiece& recorded) {
    if (const auto id = lookups_.line_of(die_id, line)) return in_line(*id, recorded);
    if (line.empty()) return;
    keep_in_note(line + " line", recorded.shown.row);
    const auto die = die_named(book_, die_id);
    not_read(recorded.line, fmt::format("the die of that piece has no line \"{}\"", line),
             die ? lines_of(*die) : std::string());
  }

  void in_line(std::int64_t line_id, RecordedPiece& recorded) {
    ElementRow& row = recorded.shown.row;
    row.in_line_id = line_id;
    const auto opening = insetbook::opening(book_, line_id);
    if (!opening) return;
    recorded.shown.lies_in = fmt::format("{} {}, {}", opening->set, opening->die, opening->line);
    if (!opening->measured || !row.size.width || !row.size.height) return;
    const auto [small, large] = std::minmax(*row.size.width, *row.size.height);
    const auto [narrow, wide] = std::minmax(opening->width, opening->height);
    if (small > narrow + opening->give_or_take || large > wide + opening->give_or_take)
      note(fmt::format("line {}: {} is measured as {}; a piece of {} cannot lie in it", recorded.line,
                       recorded.shown.lies_in, write_size(opening->width, opening->height, opening->unit),
                       row.size.text));
  }

  const Book& book_;
  Lookups lookups_;
  RecordSaid said_;
  Unit unit_;
  const RecordAsked& asked_;
  RecordAnswer answer_;
  std::vector<std::optional<std::size_t>> targets_;
};

Problem title_taken(std::string_view title) {
  return {.kind = ProblemKind::refused,
          .what = fmt::format("there is a sample called \"{}\" already, and it is not the same", title),
          .where = {},
          .expected = "another title; insetbook change changes a field of the one that is there",
          .candidates = {}};
}

// Puts the piece that another goes with first; true where all of it was in the book already.
Result<bool> put(Change& change, RecordAnswer& answer,
                 const std::vector<std::optional<std::size_t>>& targets) {
  const auto known = sample_titled(change.book(), fold(answer.sample.title));
  const std::size_t pieces_there = known ? elements_of(change.book(), *known).size() : 0;
  const auto sample = put_sample(change, answer.sample);
  if (!sample) return failure(sample.error());
  bool same = sample->first == PutResult::same && pieces_there == answer.pieces.size();
  if (known && !same) return failure(title_taken(answer.sample.title));
  std::vector<std::int64_t> ids(answer.pieces.size(), 0);
  for (std::size_t start = 0; start < answer.pieces.size(); ++start) {
    std::vector<std::size_t> chain;
    for (std::optional<std::size_t> at = start; at && ids[*at] == 0; at = targets[*at]) chain.push_back(*at);
    for (auto at = chain.rbegin(); at != chain.rend(); ++at) {
      ElementRow& row = answer.pieces[*at].shown.row;
      row.sample_id = sample->second;
      if (targets[*at]) row.goes_to = ids[*targets[*at]];
      const auto piece = put_element(change, row);
      if (!piece) return failure(piece.error());
      ids[*at] = piece->second;
      same = same && piece->first == PutResult::same;
      if (known && !same) return failure(title_taken(answer.sample.title));
    }
  }
  return same;
}

}  // namespace

Result<RecordAnswer> record(Book& book, const RecordAsked& asked) {
  const Vocabulary vocabulary = vocabulary_of(book);
  const BookNames names(book);
  const ReadingContext context = reading_context(book, vocabulary, names);
  Result<RecordSaid> said = read_record(asked.title, asked.text, context);
  if (!said) {
    said.error().where.file = asked.file;
    return failure(said.error());
  }
  Rows rows(book, vocabulary, std::move(*said), asked);
  RecordAnswer answer = rows.take();
  if (asked.strict && !answer.not_read.empty()) return answer;
  const Result<void> done = book.change(fmt::format("recorded the sample {}", answer.sample.title),
                                        [&](Change& change) -> Result<void> {
                                          const Result<bool> same = put(change, answer, rows.targets());
                                          if (!same) return failure(same.error());
                                          answer.same = *same;
                                          answer.kept = !asked.dry_run;
                                          // Nothing of a dry run stays.
                                          if (asked.dry_run) return failure({});
                                          return {};
                                        });
  const bool only_told = asked.dry_run && !done && done.error() == Problem();
  if (!done && !only_told) return failure(done.error());
  return answer;
}

}  // namespace insetbook
