// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record_text.h"

#include <algorithm>
#include <array>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "language/pieces.h"
#include "language/read_record.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

enum class Key {
  title,
  base,
  scores,
  finished,
  made,
  words,
  envelope,
  step,
  note,
  term,
  supply,
  based_on,
  side
};
enum class Mode { pieces, steps, supplies, notes };

struct KeyWord {
  std::string_view words;
  Key key;
};
// What may stand before a colon, folded.
constexpr KeyWord key_words[] = {
    {"title", Key::title},
    {"name of the card", Key::title},
    {"card base", Key::base},
    {"base", Key::base},
    {"scores", Key::scores},
    {"score", Key::scores},
    {"score lines", Key::scores},
    {"scored", Key::scores},
    {"finished", Key::finished},
    {"finished size", Key::finished},
    {"card size", Key::finished},
    {"closed size", Key::finished},
    {"closed", Key::finished},
    {"made", Key::made},
    {"date", Key::made},
    {"date made", Key::made},
    {"words", Key::words},
    {"text", Key::words},
    {"envelope", Key::envelope},
    {"step", Key::step},
    {"note", Key::note},
    {"notes", Key::note},
    {"nb", Key::note},
    {"tip", Key::note},
    {"technique", Key::term},
    {"techniques", Key::term},
    {"occasion", Key::term},
    {"occasions", Key::term},
    {"fold", Key::term},
    {"folds", Key::term},
    {"feature", Key::term},
    {"features", Key::term},
    {"supply", Key::supply},
    {"supplies", Key::supply},
    {"materials", Key::supply},
    {"adhesive", Key::supply},
    {"adhesives", Key::supply},
    {"glue", Key::supply},
    {"based on", Key::based_on},
    {"front", Key::side},
    {"inside", Key::side},
    {"back", Key::side},
    {"on the front", Key::side},
    {"on the inside", Key::side},
    {"on the back", Key::side},
    {"outside", Key::side},
    {"card front", Key::side},
    {"inside left", Key::side},
    {"inside right", Key::side},
    {"inside the card", Key::side},
};

struct Heading {
  std::string_view words;
  Mode mode;
};
constexpr Heading headings[] = {
    {"steps", Mode::steps},         {"instructions", Mode::steps},
    {"directions", Mode::steps},    {"method", Mode::steps},
    {"how to", Mode::steps},        {"to make it", Mode::steps},
    {"making it", Mode::steps},     {"supplies", Mode::supplies},
    {"materials", Mode::supplies},  {"stamps", Mode::supplies},
    {"inks", Mode::supplies},       {"ink", Mode::supplies},
    {"tools", Mode::supplies},      {"adhesive", Mode::supplies},
    {"adhesives", Mode::supplies},  {"supplies used", Mode::supplies},
    {"notes", Mode::notes},         {"note", Mode::notes},
    {"tips", Mode::notes},          {"pieces", Mode::pieces},
    {"parts", Mode::pieces},        {"layers", Mode::pieces},
    {"elements", Mode::pieces},     {"cut", Mode::pieces},
    {"cutting list", Mode::pieces}, {"cut list", Mode::pieces},
    {"measurements", Mode::pieces}, {"dimensions", Mode::pieces},
    {"sizes", Mode::pieces},        {"you will need", Mode::pieces},
    {"you need", Mode::pieces},     {"card stock", Mode::pieces},
    {"cardstock", Mode::pieces},    {"paper", Mode::pieces},
    {"card", Mode::pieces},
};

// What a step begins with, when its line is numbered, or the next word shows that it is no name ("glue the").
constexpr auto doing_words = std::to_array<std::string_view>(
    {"add",    "adhere",  "apply",    "arrange",  "assemble", "attach", "blend",   "bring",  "burnish",
     "choose", "close",   "colour",   "color",    "cover",    "crease", "cut",     "dab",    "decorate",
     "die",    "draw",    "dry",      "emboss",   "fasten",   "finish", "fit",     "flip",   "fold",
     "glue",   "heat",    "hold",     "ink",      "insert",   "join",   "layer",   "lay",    "leave",
     "let",    "line",    "make",     "mark",     "mask",     "mat",    "measure", "mount",  "open",
     "paint",  "peel",    "place",    "position", "press",    "print",  "pull",    "punch",  "push",
     "put",    "remove",  "repeat",   "rub",      "run",      "score",  "secure",  "set",    "slide",
     "snip",   "speckle", "splatter", "spray",    "sprinkle", "stamp",  "stick",   "stitch", "take",
     "tape",   "tear",    "thread",   "tie",      "trim",     "tuck",   "turn",    "use",    "wipe",
     "wrap",   "write"});
constexpr auto then_words = std::to_array<std::string_view>(
    {"the", "a", "an", "it", "them", "your", "both", "each", "all", "every", "this", "down", "together"});

std::string_view word_at(std::string_view folded, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t space = folded.find(' ');
    if (space == std::string_view::npos) return {};
    folded.remove_prefix(space + 1);
  }
  return folded.substr(0, folded.find(' '));
}

template <class List>
bool in_list(const List& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

std::vector<std::string> words_of(std::string_view folded) {
  std::vector<std::string> words;
  while (!folded.empty()) {
    const std::size_t end = std::min(folded.find(' '), folded.size());
    if (end > 0) words.emplace_back(folded.substr(0, end));
    folded.remove_prefix(std::min(end + 1, folded.size()));
  }
  return words;
}

// How many bytes of bullet or number stand before what is said.
struct Lead {
  std::size_t bytes = 0;
  bool numbered = false;
};
Lead lead_of(std::string_view line) {
  static constexpr std::string_view bullets[] = {"-", "*", "•", "–", "—", "·", "▪", "◦", "‣",
                                                 "●", "○", "■", "□", "☐", "☑", "✓", "+"};
  Lead lead;
  for (const std::string_view bullet : bullets)
    if (line.starts_with(bullet) && line.size() > bullet.size() &&
        is_space(character_at(line, bullet.size()).code)) {
      lead.bytes = bullet.size();
      break;
    }
  while (lead.bytes < line.size() && (line[lead.bytes] == ' ' || line[lead.bytes] == '\t')) ++lead.bytes;
  for (const std::string_view box :
       {std::string_view("[ ]"), std::string_view("[x]"), std::string_view("[X]")})
    if (line.substr(lead.bytes).starts_with(box)) lead.bytes += box.size();
  std::string_view rest = line.substr(lead.bytes);
  const bool bracket = rest.starts_with('(');
  if (bracket) rest.remove_prefix(1);
  std::size_t digits = 0;
  while (digits < rest.size() && digits < 3 && rest[digits] >= '0' && rest[digits] <= '9') ++digits;
  const bool closes =
      digits > 0 && digits < rest.size() && (rest[digits] == ')' || (rest[digits] == '.' && !bracket));
  if (closes && digits + 1 < rest.size() && is_space(character_at(rest, digits + 1).code)) {
    lead.bytes += digits + 1 + (bracket ? 1 : 0);
    lead.numbered = true;
  }
  while (lead.bytes < line.size() && is_space(character_at(line, lead.bytes).code))
    lead.bytes = character_at(line, lead.bytes).end;
  return lead;
}

std::optional<Problem> bad_bytes(std::string_view text) {
  if (valid_utf8(text)) return std::nullopt;
  int row = 1;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = text.substr(begin, end - begin);
    if (!valid_utf8(line)) {
      Problem problem;
      std::string shown;
      std::size_t at = 0, count = 0;
      bool found = false;
      for (const Character& c : characters(line)) {
        // U+FFFD of one byte stands for a byte that is no UTF-8.
        if (!found && c.code == 0xFFFD && c.end == c.begin + 1) at = count, found = true;
        if (c.code >= 0x20)
          append_utf8(shown, c.code);
        else
          shown += ' ';
        ++count;
      }
      problem.what = "line " + std::to_string(row) + " has a byte that is no UTF-8";
      if (shown.size() <= 400) {
        problem.where.text = shown;
        problem.where.at = at;
        problem.where.length = 1;
      }
      problem.where.row = row;
      problem.expected = "a text saved as UTF-8";
      return problem;
    }
    ++row;
    begin = end + 1;
  }
  return std::nullopt;
}

class RecordReader {
 public:
  RecordReader(std::string_view title, const ReadingContext& context) : context_(context) {
    record_.sample.title = std::string(trim(title));
  }

  Result<RecordSaid> run(std::string_view text) {
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
    name_pieces();
    find_targets();
    std::ranges::stable_sort(record_.not_read, {},
                             [](const LeftOver& each) { return each.problem.where.row; });
    return std::move(record_);
  }

 private:
  Problem nothing(bool any) const {
    Problem problem;
    problem.what = any ? "the sample has no title" : "there is nothing to record";
    problem.expected = any ? "insetbook record \"TITLE\" -, or the title on the first line"
                           : "one line a piece, as: sage circle 2-3/8 in, on the grey panel";
    return problem;
  }

  // ---- lines

  std::optional<Problem> take_line() {
    std::string_view line = line_;
    const bool marked = line.starts_with('#') && line.find_first_not_of('#') != std::string_view::npos &&
                        line[line.find_first_not_of('#')] == ' ';
    std::size_t offset = marked ? line.find_first_not_of("# ") : 0;
    const Lead lead = marked ? Lead() : lead_of(line);
    offset += lead.bytes;
    const std::string_view said = line.substr(offset);
    if (said.empty()) return std::nullopt;
    if (heading(said, marked)) return std::nullopt;
    if (record_.sample.title.empty()) return first_line(said);
    switch (mode_) {
      case Mode::steps:
        add_step(said);
        return std::nullopt;
      case Mode::notes:
        record_.sample.notes.emplace_back(said);
        return std::nullopt;
      case Mode::supplies:
        add_supplies(said);
        return std::nullopt;
      case Mode::pieces:
        break;
    }
    if (keyed(said, offset) || led(said, offset, lead.numbered)) return std::nullopt;
    plain(said, offset, "");
    return std::nullopt;
  }

  // The title, unless the line says what only a piece or the card has.
  std::optional<Problem> first_line(std::string_view said) {
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
  bool heading(std::string_view said, bool marked) {
    const bool colon = said.ends_with(':');
    if (colon) said = trim(said.substr(0, said.size() - 1));
    const std::string folded = fold(said);
    for (const Heading& each : headings)
      if (each.words == folded && (colon || marked || each.mode != Mode::pieces)) {
        mode_ = each.mode;
        side_.clear();
        side_goes_.clear();
        return true;
      }
    for (const KeyWord& each : key_words)
      if (each.key == Key::side && each.words == folded) {
        mode_ = Mode::pieces;
        set_side(folded);
        return true;
      }
    if (!colon && !marked) return false;
    if (marked && record_.sample.title.empty()) return false;
    if (folded.empty()) return false;
    mode_ = Mode::pieces;
    record_.remarks.push_back("the heading \"" + std::string(said) + "\" says no side: it is left out");
    return true;
  }

  static std::string side_of(std::string_view folded) {
    for (const std::string_view side : {std::string_view("inside"), std::string_view("back")})
      if (folded.find(side) != std::string_view::npos) return std::string(side);
    return "front";
  }
  void set_side(std::string_view folded) {
    side_ = side_of(folded);
    side_goes_ = folded == "inside left" || folded == "inside right" ? std::string(folded) : std::string();
  }

  static const KeyWord* key_of(std::string_view folded) {
    for (const KeyWord& each : key_words)
      if (each.words == folded) return &each;
    if (folded.starts_with("step ") && folded.find_first_not_of("0123456789", 5) == std::string_view::npos)
      return key_of("step");
    return nullptr;
  }

  // "words: happy birthday", "Inside: white panel 4 x 5-1/4 in", "boat round: circle 3 in".
  bool keyed(std::string_view said, std::size_t offset) {
    const std::size_t colon = said.find(':');
    if (colon == std::string_view::npos || colon == 0) return false;
    const std::string folded = fold(said.substr(0, colon));
    std::size_t begins = colon + 1;
    while (begins < said.size() && is_space(character_at(said, begins).code))
      begins = character_at(said, begins).end;
    const std::string_view value = said.substr(begins);
    if (const KeyWord* key = key_of(folded)) {
      take_key(key->key, folded, value, said, offset, begins);
      return true;
    }
    if (value.empty() || words_of(folded).size() > 4 ||
        said.substr(0, colon).find(',') != std::string_view::npos)
      return false;
    // A name; where all of it is understood, it says what the piece is as well.
    const LineSaid name = read_line(said.substr(0, colon), context_);
    if (name.piece.size || name.goes || !name.glue.empty() || !name.at.empty()) return false;
    const bool understood = name.not_read.empty() && (!name.piece.role.empty() || !name.piece.shape.empty());
    if (understood)
      plain(said, offset, std::string(trim(said.substr(0, colon))));
    else
      plain(value, offset + begins, std::string(trim(said.substr(0, colon))));
    return true;
  }

  void take_key(Key key, std::string_view folded, std::string_view value, std::string_view said,
                std::size_t offset, std::size_t begins) {
    SampleOfRecord& sample = record_.sample;
    switch (key) {
      case Key::title:
        return left_over_line(said, offset, "the sample has a title already", "one title");
      case Key::base:
        return plain(value, offset + begins, "", "base");
      case Key::scores:
        add_scores(value, said, offset);
        return;
      case Key::finished:
        return finished(value, said, offset);
      case Key::made:
        return made(value, said, offset);
      case Key::words:
        sample.words.push_back(unquoted(value));
        return;
      case Key::envelope:
        return once(sample.envelope, value, said, offset);
      case Key::step:
        return add_step(value);
      case Key::note:
        sample.notes.emplace_back(value);
        return;
      case Key::term:
        return terms(folded, value, offset + begins);
      case Key::supply:
        return add_supplies(value);
      case Key::based_on:
        return once(sample.based_on, unquoted(value), said, offset);
      case Key::side: {
        const std::string side = std::exchange(side_, ""), goes = std::exchange(side_goes_, "");
        set_side(folded);
        if (!value.empty()) {
          plain(value, offset + begins, "");
          side_ = side;
          side_goes_ = goes;
        }
        return;
      }
    }
  }

  static std::string unquoted(std::string_view value) {
    value = trim(value);
    const std::vector<Character> all = characters(value);
    if (all.size() > 2 && is_quote(all.front().code) && is_quote(all.back().code))
      value = value.substr(all.front().end, all.back().begin - all.front().end);
    return std::string(trim(value));
  }

  void once(std::string& field, std::string_view value, std::string_view said, std::size_t offset) {
    if (value.empty()) return left_over_line(said, offset, "nothing stands behind the colon", "what it is");
    if (!field.empty() && fold(field) != fold(value))
      return left_over_line(said, offset, "it was said already: \"" + field + "\"", "one of them");
    field = std::string(value);
  }

  // What begins with a word that no piece begins with.
  bool led(std::string_view said, std::size_t offset, bool numbered) {
    const std::string folded = fold(said);
    const std::string_view first = word_at(folded, 0), second = word_at(folded, 1);
    const auto behind = [&](std::string_view words) {
      std::size_t at = 0;
      for (std::size_t count = words_of(words).size(); count > 0; --count) {
        at = std::min(said.find_first_of(" \t", at), said.size());
        at = std::min(said.find_first_not_of(" \t", at), said.size());
      }
      return said.substr(at);
    };
    const bool doing = in_list(doing_words, first);
    if (numbered && doing) return add_step(said), true;
    if (folded == "today" || folded == "yesterday" || read_day(said, nullptr))
      return made(said, said, offset), true;
    if (first == "made" || first == "dated" || (first == "date" && !second.empty())) {
      std::string_view value = behind(first);
      if (word_at(fold(value), 0) == "on") value = value.substr(std::min(value.size(), std::size_t{3}));
      if (read_day(value, &context_)) return made(value, said, offset), true;
    }
    for (const std::string_view words : {"card base", "card blank", "base card"})
      if (folded.starts_with(words) && folded.size() > words.size()) {
        const std::string_view value = behind(words);
        return plain(value, offset + static_cast<std::size_t>(value.data() - said.data()), "", "base"), true;
      }
    if (folded.starts_with("based on "))
      return once(record_.sample.based_on, unquoted(behind("based on")), said, offset), true;
    for (const std::string_view words :
         {"finished size", "finished", "closed size", "closes to", "folds to", "closed"})
      if (folded.starts_with(words) && folded.size() > words.size()) {
        const std::string_view value = behind(words);
        if (read_size(value, context_.unit)) return finished(value, said, offset), true;
      }
    if (doing && in_list(then_words, second) && words_of(folded).size() > 3 &&
        !read_line(said, context_).piece.size)
      return add_step(said), true;
    return false;
  }

  void made(std::string_view value, std::string_view said, std::size_t offset) {
    const Result<std::string> day = read_day(value, &context_);
    if (!day) return left_over_line(said, offset, day.error().what, day.error().expected);
    if (fold(value) == "today" || fold(value) == "yesterday")
      record_.remarks.push_back("today is " + context_.today);
    once(record_.sample.made, *day, said, offset);
  }

  void finished(std::string_view value, std::string_view said, std::size_t offset) {
    const Result<Size> size = read_size(value, context_.unit);
    if (!size) {
      const LineSaid line = read_line("card " + std::string(value), context_);
      if (line.closed) return close(*line.closed, line.closed_text, said, offset);
      return left_over_line(said, offset, size.error().what, size.error().expected);
    }
    const LineSaid line = read_line(value, context_);
    close(*size, line.piece.size_text.empty() ? write_said(*size) : line.piece.size_text, said, offset);
  }
  void close(const Size& size, const std::string& text, std::string_view said, std::size_t offset) {
    SampleOfRecord& sample = record_.sample;
    if (sample.closed && (sample.closed->width != size.width || sample.closed->height != size.height))
      return left_over_line(said, offset, "the finished size was said already: " + sample.closed_text,
                            "one of them");
    sample.closed = size;
    sample.closed_text = text;
  }

  void add_scores(std::string_view value, std::string_view said, std::size_t offset) {
    const LineSaid line = read_line("scored at " + std::string(value), context_);
    if (line.scores.empty()) return left_over_line(said, offset, "no figure is said", "scores: 2-1/8; 4-1/4");
    append(record_.sample.scores, line.scores);
  }
  static void append(std::string& list, std::string_view more) {
    if (more.empty()) return;
    if (!list.empty()) list += "; ";
    list += more;
  }

  // A ';' parts the steps in the book.
  void add_step(std::string_view said) {
    std::string step(trim(said));
    std::ranges::replace(step, ';', ',');
    if (!step.empty()) record_.sample.steps.push_back(std::move(step));
  }

  static std::vector<std::string> list_of(std::string_view value) {
    std::vector<std::string> list;
    while (!value.empty()) {
      std::size_t end = std::min(value.find(';'), value.size());
      const std::size_t comma = value.find(", ");
      end = std::min(end, comma);
      const std::string_view one = trim(value.substr(0, end));
      if (!one.empty()) list.emplace_back(one);
      value.remove_prefix(std::min(end + 1, value.size()));
    }
    return list;
  }
  void add_supplies(std::string_view value) {
    for (std::string& one : list_of(value)) record_.sample.supplies.push_back(std::move(one));
  }

  void add_term(TermSaid term) {
    auto& terms = record_.sample.terms;
    const bool there = std::ranges::any_of(
        terms, [&](const TermSaid& each) { return each.kind == term.kind && each.term == term.term; });
    if (!there) terms.push_back(std::move(term));
  }

  // "technique: dry embossing, speckling": each of a list, in the vocabularies that a table's column tries.
  void terms(std::string_view folded, std::string_view value, std::size_t offset) {
    static constexpr std::pair<VocabularyName, std::string_view> of_fold[] = {
        {VocabularyName::fold, "fold"}, {VocabularyName::feature, "feature"}};
    static constexpr std::pair<VocabularyName, std::string_view> of_occasion[] = {
        {VocabularyName::occasion, "occasion"}};
    static constexpr std::pair<VocabularyName, std::string_view> of_technique[] = {
        {VocabularyName::technique, "technique"},
        {VocabularyName::feature, "feature"},
        {VocabularyName::material, "material"}};
    const bool fold_key = folded.starts_with("fold"), occasion_key = folded.starts_with("occasion");
    const std::span<const std::pair<VocabularyName, std::string_view>> kinds =
        fold_key       ? std::span(of_fold)
        : occasion_key ? std::span<const std::pair<VocabularyName, std::string_view>>(of_occasion)
                       : std::span<const std::pair<VocabularyName, std::string_view>>(of_technique);
    for (const std::string& one : list_of(value)) {
      bool found = false;
      for (const auto& [vocabulary, kind] : kinds) {
        const auto matches = context_.vocabulary.find(one, vocabulary);
        if (matches.empty()) continue;
        add_term({std::string(kind), matches.front().id, one});
        found = true;
        break;
      }
      if (found) continue;
      const std::size_t at = value.find(one);
      NotRead lost{{at, at + one.size()},
                   "\"" + one + "\" is no " +
                       (fold_key       ? "fold"
                        : occasion_key ? "occasion"
                                       : "technique") +
                       " that the vocabularies know",
                   "insetbook words list shows them; insetbook words add adds one",
                   {},
                   {}};
      left_over(lost, offset, std::nullopt);
    }
  }

  // ---- what is not read

  Problem problem_of(const NotRead& lost, std::size_t offset) const {
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
  void left_over(const NotRead& lost, std::size_t offset, std::optional<std::size_t> piece) {
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
  std::vector<std::string> words_like(const std::string& words) const {
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
  void left_over_line(std::string_view said, std::size_t offset, std::string what, std::string expected) {
    left_over({{0, said.size()}, std::move(what), std::move(expected), {}, {}}, offset, std::nullopt);
  }

  // ---- pieces and what is said of the card

  void plain(std::string_view said, std::size_t offset, std::string name, std::string_view role = {}) {
    LineSaid line = read_line(said, context_);
    if (!role.empty() && line.piece.role.empty()) {
      line.piece.role = role;
      line.piece.head = role;
    }
    if (role == "base" && line.closed && !line.piece.size) {  // "card base 5 x 7 in"
      line.piece.size = std::exchange(line.closed, std::nullopt);
      line.piece.size_text = std::exchange(line.closed_text, "");
    }
    if (line.name.empty()) line.name = std::move(name);
    of_the_sample(line, said, offset);
    const bool base = line.piece.role == "base" && take_base(line);
    const bool stuff = !line.piece.terms.empty() || !line.piece.supplies.empty();
    const bool put_somewhere = line.goes || !line.glue.empty() || !line.at.empty();
    const bool worked = !line.piece.terms.empty() && !line.piece.supplies.empty();
    const bool is_piece = line.piece.says_a_piece() || !line.name.empty() ||
                          (line.goes && !line.goes->place_of_card) || (stuff && put_somewhere) || worked;
    if (base || !is_piece) return of_card_only(line, said, offset);
    if (!line.scores.empty()) line.notes.push_back("scored at " + line.scores);
    // "around the front" below "Inside:" is of the front.
    if (line.piece.side.empty())
      line.piece.side = line.goes && !line.goes->side.empty() ? line.goes->side : side_;
    if (!line.goes && !side_goes_.empty()) {
      line.goes.emplace();
      line.goes->target = side_goes_;
      line.goes->side = side_;
      line.goes->place_of_card = true;
    }
    const std::size_t place = record_.pieces.size();
    record_.pieces.push_back({std::move(line), row_, "", std::nullopt, {}});
    const std::vector<NotRead> lost = record_.pieces.back().said.not_read;
    for (const NotRead& each : lost) left_over(each, offset, place);
  }

  void of_the_sample(LineSaid& line, std::string_view said, std::size_t offset) {
    SampleOfRecord& sample = record_.sample;
    for (TermSaid& term : line.of_sample) add_term(std::move(term));
    line.of_sample.clear();
    for (std::string& words : line.words) sample.words.push_back(std::move(words));
    line.words.clear();
    if (line.closed) close(*line.closed, line.closed_text, said, offset);
    if (!line.made.empty()) once(sample.made, line.made, said, offset);
    if (!line.based_on.empty()) once(sample.based_on, line.based_on, said, offset);
    for (std::string& remark : line.remarks)
      if (std::ranges::find(record_.remarks, remark) == record_.remarks.end())
        record_.remarks.push_back(std::move(remark));
    for (const OtherReading& other : line.other_readings)
      record_.remarks.push_back("line " + std::to_string(row_) + ": \"" + other.text + "\" was read as " +
                                other.taken + "; it could be " + other.other);
    line.remarks.clear();
    line.other_readings.clear();
  }

  // The base's size and scores are the sample's; true where nothing more is said of it.
  bool take_base(LineSaid& line) {
    SampleOfRecord& sample = record_.sample;
    PieceSaid& piece = line.piece;
    const bool whole = piece.size && (!piece.size->one_figure || piece.shape == "square");
    append(sample.scores, std::exchange(line.scores, ""));
    if (!whole || sample.base) return false;
    sample.base = piece.size;
    sample.base_text = piece.size_text;
    return piece.paper.empty() && piece.ink.empty() && piece.terms.empty() && piece.supplies.empty() &&
           !piece.cut_by && !piece.count && line.name.empty() && line.notes.empty() && line.at.empty() &&
           line.glue.empty() && !line.goes && line.not_read.empty();
  }

  // A line that describes no piece says something of the card.
  void of_card_only(LineSaid& line, std::string_view said, std::size_t offset) {
    SampleOfRecord& sample = record_.sample;
    for (TermSaid& term : line.piece.terms) add_term(std::move(term));
    for (std::string& supply : line.piece.supplies) sample.supplies.push_back(std::move(supply));
    for (std::string& note : line.notes) sample.notes.push_back(std::move(note));
    append(sample.scores, line.scores);
    if (!line.glue.empty() && line.glue != "none" && !line.goes && line.at.empty())
      sample.supplies.push_back(std::exchange(line.glue, ""));
    const bool lost = !line.glue.empty() || !line.at.empty() || line.goes || !line.piece.side.empty();
    if (lost && line.piece.role != "base")
      return left_over_line(said, offset, "it says where, and no piece",
                            "a piece: its shape, role, size or name");
    for (const NotRead& each : line.not_read) left_over(each, offset, std::nullopt);
  }

  // ---- names

  static std::string described(const LineSaid& line) {
    const PieceSaid& piece = line.piece;
    std::string name = piece.paper.empty() ? std::string() : fold(piece.paper.front());
    const auto add = [&](std::string_view more) {
      if (more.empty()) return;
      if (!name.empty()) name += ' ';
      name += more;
    };
    if (!piece.head.empty())
      add(piece.head);
    else if (!piece.terms.empty() && piece.terms.back().kind == "material")
      add(fold(piece.terms.back().written));
    else if (!piece.supplies.empty())
      add(fold(piece.supplies.front()));
    else if (piece.cut_by)
      add(fold(piece.cut_by->said));
    else
      add("piece");
    constexpr std::size_t longest = 60;
    if (name.size() > longest) name = "piece";
    return name;
  }

  void name_pieces() {
    std::unordered_set<std::string> taken;
    std::unordered_map<std::string, int> numbers;
    const auto unique = [&](const std::string& wanted) {
      if (taken.insert(fold(wanted)).second) return wanted;
      int& number = numbers.try_emplace(fold(wanted), 1).first->second;
      for (;;) {
        std::string name = wanted + " " + std::to_string(++number);
        if (taken.insert(fold(name)).second) return name;
      }
    };
    // Names that were given come first, so that a made one gives way.
    for (PieceOfRecord& piece : record_.pieces)
      if (!fold(piece.said.name).empty()) piece.name = unique(piece.said.name);
    for (PieceOfRecord& piece : record_.pieces)
      if (piece.name.empty()) piece.name = unique(described(piece.said));
  }

  // ---- which piece another goes with

  void add_words(std::string_view text, std::vector<std::string>& keys) const {
    for (std::string& word : words_of(fold(text))) keys.push_back(std::move(word));
  }
  void add_terms(VocabularyName in, const std::string& term, bool broader,
                 std::vector<std::string>& keys) const {
    std::string id = term;
    for (int turn = 0; turn < 8 && !id.empty(); ++turn) {
      keys.push_back(std::string(vocabulary_word(in)) + ":" + id);
      const auto found = broader ? context_.vocabulary.term(in, id) : std::nullopt;
      id = found ? found->broader : std::string();
    }
  }

  void index_pieces() {
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      const PieceOfRecord& piece = record_.pieces[i];
      std::vector<std::string> keys;
      add_words(piece.name, keys);
      add_words(piece.said.piece.head, keys);
      for (const std::string& colour : piece.said.piece.paper) add_words(colour, keys);
      for (const std::string& supply : piece.said.piece.supplies) add_words(supply, keys);
      for (const TermSaid& term : piece.said.piece.terms) {
        add_words(term.written, keys);
        keys.push_back("term:" + term.term);
      }
      add_terms(VocabularyName::role, piece.said.piece.role, true, keys);
      add_terms(VocabularyName::shape, piece.said.piece.shape, true, keys);
      std::ranges::sort(keys);
      keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
      for (std::string& key : keys) with_key_[std::move(key)].push_back(i);
      by_name_.emplace(fold(piece.name), i);
    }
  }

  // The pieces with each of some keys; empty where one of them no piece has.
  using Lists = std::vector<const std::vector<std::size_t>*>;
  Lists lists_of(const std::vector<std::string>& keys) const {
    Lists lists;
    for (const std::string& key : keys) {
      const auto at = with_key_.find(key);
      if (at == with_key_.end()) return {};
      lists.push_back(&at->second);
    }
    std::ranges::sort(lists, {}, [](const auto* list) { return list->size(); });
    return lists;
  }

  bool looks_so(const PieceSaid& wanted, std::size_t place) const {
    const PieceSaid& other = record_.pieces[place].said.piece;
    const bool size = !wanted.size || (other.size && other.size->width == wanted.size->width &&
                                       other.size->height == wanted.size->height);
    const bool die = !wanted.cut_by || (other.cut_by && other.cut_by->dies == wanted.cut_by->dies);
    return size && die;
  }

  // The nearest piece before `place` that is in all lists, else the first one behind it.
  struct Nearest {
    std::optional<std::size_t> before, behind;
    bool several = false;
  };
  Nearest nearest(const Lists& lists, const PieceSaid& wanted, std::size_t place) const {
    constexpr std::size_t looked_further = 64;
    Nearest found;
    if (lists.empty()) return found;
    const std::vector<std::size_t>& shortest = *lists.front();
    const auto meets = [&](std::size_t i) {
      return i != place && looks_so(wanted, i) && std::ranges::all_of(lists, [&](const auto* list) {
               return std::ranges::binary_search(*list, i);
             });
    };
    const auto middle = std::ranges::lower_bound(shortest, place);
    std::size_t further = 0;
    for (auto at = middle; at != shortest.begin() && further < looked_further;) {
      --at;
      if (found.before) ++further;
      if (!meets(*at)) continue;
      if (found.before) {
        found.several = true;
        break;
      }
      found.before = *at;
    }
    for (auto at = middle; at != shortest.end() && further < looked_further; ++at) {
      if (found.before || found.behind) ++further;
      if (!meets(*at)) continue;
      found.several = found.several || found.before || found.behind;
      if (!found.behind) found.behind = *at;
      if (found.several) break;
    }
    return found;
  }

  // By the words it is called with, and by what those words mean.
  Nearest nearest(const GoesSaid& goes, std::size_t place) const {
    std::vector<std::string> by_words, by_terms;
    add_words(goes.target, by_words);
    const PieceSaid& piece = goes.piece;
    for (const std::string& colour : piece.paper) add_words(colour, by_terms);
    for (const std::string& supply : piece.supplies) add_words(supply, by_terms);
    for (const TermSaid& term : piece.terms)
      if (term.kind != "material" || piece.role.empty()) by_terms.push_back("term:" + term.term);
    if (!piece.role.empty()) add_terms(VocabularyName::role, piece.role, false, by_terms);
    if (!piece.shape.empty()) add_terms(VocabularyName::shape, piece.shape, false, by_terms);
    Nearest found = nearest(lists_of(by_words), piece, place);
    if (piece.role.empty() && piece.shape.empty()) return found;
    const Nearest meant = nearest(lists_of(by_terms), piece, place);
    const auto other = [](const auto& a, const auto& b) { return a && b && *a != *b; };
    found.several = found.several || meant.several || other(found.before, meant.before) ||
                    other(found.behind, meant.behind);
    if (meant.before) found.before = std::max(found.before.value_or(0), *meant.before);
    if (meant.behind) found.behind = std::min(found.behind.value_or(*meant.behind), *meant.behind);
    return found;
  }

  void find_targets() {
    index_pieces();
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      PieceOfRecord& piece = record_.pieces[i];
      if (piece.said.goes && !piece.said.goes->place_of_card) find_target(i);
      if (!piece.said.goes && piece.said.piece.lies_in) find_frame(i);
    }
    break_circles();
  }

  void find_target(std::size_t place) {
    PieceOfRecord& piece = record_.pieces[place];
    const GoesSaid& goes = *piece.said.goes;
    // A name that was given; a made one only says what the piece looks like.
    const auto named = by_name_.find(fold(goes.target));
    if (named != by_name_.end() && named->second != place &&
        (named->second < place || !record_.pieces[named->second].said.name.empty())) {
      piece.goes_to = named->second;
      return;
    }
    const Nearest found = nearest(goes, place);
    piece.goes_to = found.before ? found.before : found.behind;
    if (!piece.goes_to) return no_target(place);
    if (found.several && ++unsure_ <= most_unsure)
      record_.remarks.push_back("line " + std::to_string(piece.line) + ": several pieces could be \"" +
                                goes.target + "\"; it is taken to be " + record_.pieces[*piece.goes_to].name);
  }

  void no_target(std::size_t place) {
    const PieceOfRecord& piece = record_.pieces[place];
    const std::string folded = fold(piece.said.goes->target);
    // The base and its parts need no line of their own.
    for (const std::string_view word :
         {"base", "card", "card base", "flap", "front", "back", "inside", "envelope"})
      if (folded == word) return;
    LeftOver lost;
    lost.piece = place;
    lost.problem.what = "no piece of this sample is \"" + piece.said.goes->target + "\"";
    lost.problem.where.row = piece.line;
    lost.problem.expected = "the name, or the role, shape and colour, of a piece that has a line of its own";
    for (std::size_t i = 0; i < record_.pieces.size() && lost.problem.candidates.size() < 6; ++i)
      if (i != place) lost.problem.candidates.push_back(record_.pieces[i].name);
    record_.not_read.push_back(std::move(lost));
  }

  // "in tidepool rectangles 2": the piece that this die cut, where the sample has one.
  void find_frame(std::size_t place) {
    PieceOfRecord& piece = record_.pieces[place];
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      const auto& cut_by = record_.pieces[i].said.piece.cut_by;
      if (i == place || !cut_by || cut_by->dies != piece.said.piece.lies_in->dies) continue;
      if (found) return;
      found = i;
    }
    piece.goes_to = found;
  }

  void break_circles() {
    enum class State : char { fresh, going, done };
    std::vector<State> states(record_.pieces.size(), State::fresh);
    for (std::size_t start = 0; start < record_.pieces.size(); ++start) {
      std::vector<std::size_t> path;
      std::size_t at = start;
      while (states[at] == State::fresh) {
        states[at] = State::going;
        path.push_back(at);
        if (!record_.pieces[at].goes_to) break;
        const std::size_t next = *record_.pieces[at].goes_to;
        if (states[next] == State::going) {
          circle(at, next);
          break;
        }
        at = next;
      }
      for (const std::size_t each : path) states[each] = State::done;
    }
  }
  void circle(std::size_t place, std::size_t other) {
    LeftOver lost;
    lost.piece = place;
    lost.problem.what =
        "the pieces go round in a circle: \"" + record_.pieces[other].name + "\" goes with this one";
    lost.problem.where.row = record_.pieces[place].line;
    lost.problem.expected = "one piece that lies under the others";
    record_.not_read.push_back(std::move(lost));
    record_.pieces[place].goes_to.reset();
  }

  const ReadingContext& context_;
  RecordSaid record_;
  std::string_view line_;  // trimmed
  int row_ = 0;
  Mode mode_ = Mode::pieces;
  std::string side_, side_goes_;
  std::unordered_map<std::string, std::vector<std::size_t>> with_key_;
  std::unordered_map<std::string, std::size_t> by_name_;
  static constexpr int most_unsure = 20;  // of which a person is told
  int unsure_ = 0;
  static constexpr int most_suggested = 30;
  int suggested_ = 0;
};

}  // namespace

Result<RecordSaid> read_record(std::string_view title, std::string_view text, const ReadingContext& context) {
  if (text.size() > longest_record)
    return failure({.what = "the text is " + std::to_string(text.size()) + " bytes long",
                    .expected = "at most " + std::to_string(longest_record) + " bytes"});
  return RecordReader(title, context).run(text);
}

}  // namespace insetbook
