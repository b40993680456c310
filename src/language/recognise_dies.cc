// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/orders.h"
#include "language/read_opening.h"
#include "language/recognise.h"
#include "language/says.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_set_name = 8;
constexpr std::size_t longest_die_label = 4;

}  // namespace

// The longest name of a record of this kind that begins at `at`.
std::optional<Recogniser::SetSaid> Recogniser::set_at(std::size_t at, NameKind kind) {
  const std::size_t most = run_of_words(at, longest_set_name);
  std::optional<SetSaid> best;
  std::string said;
  for (std::size_t count = 1; count <= most; ++count) {
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    if (!context_.names.begins(said)) break;
    std::vector<NamedRecord> found = exactly(said);
    std::erase_if(found, [&](const NamedRecord& record) { return record.kind != kind; });
    if (!found.empty()) best = SetSaid{at + count, std::move(found)};
  }
  return best;
}

void Recogniser::choose_die(DieSaid& said, const NamedRecord& set, int rank, bool from_smallest) {
  const std::vector<std::int64_t> dies = context_.names.dies_of(set.id);
  const auto place = static_cast<std::size_t>(rank);
  said.die.said = set.name + ", " + order_words(rank, from_smallest);
  if (place == 0 || place > dies.size()) {
    said.note = set.name + " has " + std::to_string(dies.size()) + (dies.size() == 1 ? " die" : " dies");
    return;
  }
  said.die.dies.push_back(from_smallest ? dies[dies.size() - place] : dies[place - 1]);
}

// "[window of the] [second largest] tidepool rectangle [2] [, stitched line]"
std::optional<Recogniser::DieSaid> Recogniser::die_at(std::size_t at, bool inside) {
  DieSaid said;
  std::size_t begins = at;
  // A line before: it needs "of" behind it, else it is part of a name.
  if (const std::string kind = begins < pieces_.size() ? line_kind(pieces_[begins].folded) : std::string();
      !kind.empty()) {
    const std::size_t of = skip(begins + 1, {"line", "edge"});
    if (is_word(of, "of") || is_word(of, "in")) {
      said.die.line = kind;
      begins = skip(of + 1, {"the", "my", "a"});
    }
  }
  const std::vector<std::string> ahead = word_list(begins, 5);
  const auto order = order_at(ahead);
  std::size_t name_at = begins;
  if (order) {
    name_at = begins + order->words;
    if (is_word(name_at, "die") && (is_word(name_at + 1, "of") || is_word(name_at + 1, "in"))) ++name_at;
    name_at = skip(name_at, {"of", "in", "the", "my"});
  }
  const auto sets = set_at(name_at, NameKind::set);
  if (!sets) {
    const auto dies = set_at(name_at, NameKind::die);
    if (!dies || order) return std::nullopt;
    for (const NamedRecord& die : dies->records) said.die.dies.push_back(die.id);
    said.die.said = dies->records.front().name;
    said.last = dies->last;
    return said;
  }
  const NamedRecord& set = sets->records.front();
  said.last = sets->last;
  if (order) {
    choose_die(said, set, order->rank, order->from_smallest);
  } else {
    // A label or an order behind the set: "tidepool rectangles 2", "…, second largest".
    std::size_t label = said.last;
    if (is_mark(label, "#") || is_mark(label, ",")) ++label;
    label = skip(label, {"die", "no", "number"});
    if (is_mark(label, ".")) ++label;
    const auto measured = measurement(label);
    const bool is_size = measured && !measured->bare;
    const std::size_t most = is_size ? 0 : run_of_words(label, longest_die_label);
    const bool after_comma = is_mark(said.last, ",");
    const std::vector<std::string> behind = word_list(label, 5);
    const auto order_behind = order_at(behind);
    if (order_behind && order_behind->by_size) {
      choose_die(said, set, order_behind->rank, order_behind->from_smallest);
      said.last = label + order_behind->words;
    } else if (!after_comma) {
      for (std::size_t count = most; count > 0; --count) {
        const std::string text = words(label, count);
        if (const auto die = context_.names.die_labelled(set.id, text)) {
          said.die.dies = {*die};
          said.die.said = set.name + " " + text;
          said.last = label + count;
          break;
        }
      }
      if (said.die.said.empty() && most > 0)
        if (const auto number = plain_number(pieces_[label].folded)) {
          choose_die(said, set, *number, false);
          said.die.said = set.name + " " + std::to_string(*number);
          said.last = label + 1;
        }
    }
  }
  if (said.die.said.empty()) {
    said.die.said = set.name;
    for (const NamedRecord& each : sets->records)
      for (const std::int64_t die : context_.names.dies_of(each.id)) said.die.dies.push_back(die);
  }
  // A line behind: "line" must follow, or the question or its value end there.
  std::size_t line = said.last;
  if (is_mark(line, ",")) ++line;
  line = skip(line, {"the", "its"});
  if (said.die.line.empty() && line < pieces_.size() && pieces_[line].kind == Piece::Kind::word) {
    const std::string kind = line_kind(pieces_[line].folded);
    const bool line_word = is_word(line + 1, "line") || is_word(line + 1, "edge");
    const bool often_a_technique = kind == "embossed" || kind == "scored" || kind == "cut";
    const bool phrase_ends =
        line + 1 == pieces_.size() || (inside && (pieces_[line + 1].kind == Piece::Kind::mark ||
                                                  is_word(line + 1, "with") || is_word(line + 1, "and")));
    const bool ends = phrase_ends && is_mark(said.last, ",") && !often_a_technique;
    if (!kind.empty() && (line_word || ends)) {
      said.die.line = kind;
      said.last = line + (line_word ? 2 : 1);
    }
  }
  return said;
}

void Recogniser::dies(std::size_t at, std::vector<Seen>& out) {
  static constexpr std::string_view in_words[] = {"in", "inside", "into", "within"};
  const std::string& word = pieces_[at].folded;
  const bool inside = std::ranges::find(in_words, word) != std::end(in_words);
  std::size_t begins = at;
  bool by = false;
  if (inside) {
    begins = at + 1;
  } else if (word == "from" || word == "using") {
    begins = at + 1;
    by = true;
  } else if (word == "cut" || word == "made") {
    begins = skip(at + 1, {"by", "with", "from", "using"});
    by = begins > at + 1;
    if (!by) begins = at;
  }
  const std::size_t die = begins > at ? skip(begins, {"the", "a", "an", "my", "one", "of"}) : at;
  auto said = die_at(die, inside);
  if (!said) return;
  said->die.lies_in = inside;
  Seen it = seen(As::says, at, said->last, priority_of::side);
  it.by = by || inside;
  if (!said->note.empty()) it.notes.push_back(said->note);
  it.says = std::move(said->die);
  it.word = words(die, said->last - die);
  out.push_back(std::move(it));
}

}  // namespace insetbook
