// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record_text.h"

#include <algorithm>
#include <utility>

#include "language/read_record_lines.h"
#include "language/read_record_names.h"
#include "language/read_record_reader.h"
#include "language/read_record_targets.h"
#include "language/single_words.h"
#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

template <class List>
bool in_list(const List& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

}  // namespace

RecordReader::RecordReader(std::string_view title, const ReadingContext& context) : context_(context) {
  record_.sample.title = std::string(trim(title));
}

Result<RecordSaid> RecordReader::run(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (auto problem = bad_bytes(text)) return failure(std::move(*problem));
  bool any = false;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find_first_of("\n\r", begin), text.size());
    ++row_;
    line_ = trim(text.substr(begin, end - begin));
    begin = end + 1;
    if (end < text.size() && text[end] == '\r' && begin < text.size() && text[begin] == '\n') ++begin;
    if (line_.empty()) continue;
    any = true;
    if (auto problem = take_line()) return failure(std::move(*problem));
  }
  if (record_.sample.title.empty() || !any) return failure(nothing(any));
  name_pieces(record_.pieces);
  find_targets(record_, context_);
  std::ranges::stable_sort(record_.not_read, {}, [](const LeftOver& each) { return each.problem.where.row; });
  return std::move(record_);
}

Problem RecordReader::nothing(bool any) const {
  Problem problem;
  problem.what = any ? "the sample has no title" : "there is nothing to record";
  problem.expected = any ? "insetbook record \"TITLE\" -, or the title on the first line"
                         : "one line a piece, as: sage circle 2-3/8 in, on the grey panel";
  return problem;
}

std::optional<Problem> RecordReader::take_line() {
  std::string_view line = line_;
  const bool marked = line.starts_with('#') && line.find_first_not_of('#') != std::string_view::npos &&
                      line[line.find_first_not_of('#')] == ' ';
  std::size_t offset = marked ? line.find_first_not_of("# ") : 0;
  const LineLead lead = marked ? LineLead() : lead_of(line);
  offset += lead.bytes;
  const std::string_view said = line.substr(offset);
  const Part part{said, offset};
  if (said.empty()) return std::nullopt;
  if (heading(said, marked)) return std::nullopt;
  if (record_.sample.title.empty()) return first_line(said);
  switch (mode_) {
    case RecordMode::steps:
      add_step(said);
      return std::nullopt;
    case RecordMode::notes:
      record_.sample.notes.emplace_back(said);
      return std::nullopt;
    case RecordMode::supplies:
      add_supplies(said);
      return std::nullopt;
    case RecordMode::pieces:
      break;
  }
  if (keyed(part) || led(part, lead.numbered)) return std::nullopt;
  plain(part, "");
  return std::nullopt;
}

// The title, unless the line says what only a piece or the card has.
std::optional<Problem> RecordReader::first_line(std::string_view said) {
  const std::size_t colon = said.find(':');
  if (colon != std::string_view::npos && fold(said.substr(0, colon)) == "title") {
    record_.sample.title = std::string(trim(said.substr(colon + 1)));
    return std::nullopt;
  }
  const LineSaid line = read_line(said, context_);
  const PieceSaid& piece = line.piece;
  if (piece.size || !piece.size_text.empty() || line.closed || !line.scores.empty() || said.size() > 200) {
    Problem problem = nothing(true);
    problem.where.row = row_;
    return problem;
  }
  record_.sample.title = std::string(said);
  return std::nullopt;
}

// "Inside:", "# Steps", "Supplies"; a heading with something behind it is a keyed line.
bool RecordReader::heading(std::string_view said, bool marked) {
  const bool colon = said.ends_with(':');
  if (colon) said = trim(said.substr(0, said.size() - 1));
  const std::string folded = fold(said);
  for (const RecordHeading& each : record_headings)
    if (each.words == folded && (colon || marked || each.mode != RecordMode::pieces)) {
      mode_ = each.mode;
      side_.clear();
      side_goes_.clear();
      return true;
    }
  for (const RecordKeyWord& each : record_key_words)
    if (each.key == RecordKey::side && each.words == folded) {
      mode_ = RecordMode::pieces;
      set_side(folded);
      return true;
    }
  if (!colon && !marked) return false;
  if (marked && record_.sample.title.empty()) return false;
  if (folded.empty()) return false;
  mode_ = RecordMode::pieces;
  record_.remarks.push_back("the heading \"" + std::string(said) + "\" says no side: it is left out");
  return true;
}

std::string RecordReader::side_of(std::string_view folded) {
  for (const std::string_view side : {std::string_view("inside"), std::string_view("back")})
    if (folded.find(side) != std::string_view::npos) return std::string(side);
  return "front";
}
void RecordReader::set_side(std::string_view folded) {
  side_ = side_of(folded);
  side_goes_ = folded == "inside left" || folded == "inside right" ? std::string(folded) : std::string();
}

// "words: happy birthday", "Inside: white panel 4 x 5-1/4 in", "boat round: circle 3 in".
bool RecordReader::keyed(const Part& part) {
  const std::string_view said = part.said;
  const std::size_t colon = said.find(':');
  if (colon == std::string_view::npos || colon == 0) return false;
  const std::string folded = fold(said.substr(0, colon));
  std::size_t begins = colon + 1;
  while (begins < said.size() && is_space(character_at(said, begins).code))
    begins = character_at(said, begins).end;
  const std::string_view value = said.substr(begins);
  if (const RecordKeyWord* key = record_key(folded)) {
    take_key(key->key, folded, part.from(begins), part);
    return true;
  }
  if (value.empty() || single_words(folded).size() > 4 ||
      said.substr(0, colon).find(',') != std::string_view::npos)
    return false;
  // A name; where all of it is understood, it says what the piece is as well.
  const LineSaid name = read_line(said.substr(0, colon), context_);
  if (name.piece.size || name.goes || !name.glue.empty() || !name.at.empty()) return false;
  const bool understood = name.not_read.empty() && (!name.piece.role.empty() || !name.piece.shape.empty());
  if (understood)
    plain(part, std::string(trim(said.substr(0, colon))));
  else
    plain(part.from(begins), std::string(trim(said.substr(0, colon))));
  return true;
}

void RecordReader::take_key(RecordKey key, std::string_view folded, const Part& value, const Part& part) {
  SampleOfRecord& sample = record_.sample;
  switch (key) {
    case RecordKey::title:
      return left_over_line(part, "the sample has a title already", "one title");
    case RecordKey::base:
      return plain(value, "", "base");
    case RecordKey::scores:
      add_scores(value.said, part);
      return;
    case RecordKey::finished:
      return finished(value.said, part);
    case RecordKey::made:
      return made(value.said, part);
    case RecordKey::words:
      sample.words.push_back(without_quotes(value.said));
      return;
    case RecordKey::envelope:
      return once(sample.envelope, value.said, part);
    case RecordKey::step:
      return add_step(value.said);
    case RecordKey::note:
      sample.notes.emplace_back(value.said);
      return;
    case RecordKey::term:
      return terms(folded, value);
    case RecordKey::supply:
      return add_supplies(value.said);
    case RecordKey::based_on:
      return once(sample.based_on, without_quotes(value.said), part);
    case RecordKey::side: {
      const std::string side = std::exchange(side_, ""), goes = std::exchange(side_goes_, "");
      set_side(folded);
      if (!value.said.empty()) {
        plain(value, "");
        side_ = side;
        side_goes_ = goes;
      }
      return;
    }
  }
}

// What begins with a word that no piece begins with.
bool RecordReader::led(const Part& part, bool numbered) {
  const std::string_view said = part.said;
  const std::string folded = fold(said);
  const std::string_view first = nth_word(folded, 0), second = nth_word(folded, 1);
  const auto behind = [&](std::string_view words) { return behind_words(said, single_words(words).size()); };
  const bool doing = in_list(doing_words, first);
  if (numbered && doing) return add_step(said), true;
  if (folded == "today" || folded == "yesterday" || read_day(said, nullptr)) return made(said, part), true;
  if (first == "made" || first == "dated" || (first == "date" && !second.empty())) {
    std::string_view value = behind(first);
    if (nth_word(fold(value), 0) == "on") value = value.substr(std::min(value.size(), std::size_t{3}));
    if (read_day(value, &context_)) return made(value, part), true;
  }
  for (const std::string_view words : {"card base", "card blank", "base card"})
    if (folded.starts_with(words) && folded.size() > words.size()) {
      const std::string_view value = behind(words);
      return plain(part.from(said.size() - value.size()), "", "base"), true;
    }
  if (folded.starts_with("based on "))
    return once(record_.sample.based_on, without_quotes(behind("based on")), part), true;
  for (const std::string_view words :
       {"finished size", "finished", "closed size", "closes to", "folds to", "closed"})
    if (folded.starts_with(words) && folded.size() > words.size()) {
      const std::string_view value = behind(words);
      if (read_size(value, context_.unit)) return finished(value, part), true;
    }
  if (doing && in_list(then_words, second) && single_words(folded).size() > 3 &&
      !read_line(said, context_).piece.size)
    return add_step(said), true;
  return false;
}

Result<RecordSaid> read_record(std::string_view title, std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_record)
    return failure({.what = "the text is " + std::to_string(text.size()) + " bytes long",
                    .expected = "at most " + std::to_string(longest_record) + " bytes"});
  return RecordReader(title, context).run(text);
}

}  // namespace insetbook
