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
constexpr std::size_t longest_order = 6;

}  // namespace

// The longest name of a record of this kind that begins at `at`.
std::optional<Recogniser::SetSaid> Recogniser::set_at(std::size_t at, NameKind kind) {
  const std::size_t most = run_of_words(at, longest_set_name);
  std::optional<SetSaid> best;
  std::string said;
  for (std::size_t count = 1; count <= most; ++count) {
    ++steps_;
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    if (!context_.names.begins(said)) break;
    std::vector<NamedRecord> found = exactly(said);
    std::erase_if(found, [&](const NamedRecord& record) { return record.kind != kind; });
    if (!found.empty()) best = SetSaid{at + count, std::move(found)};
  }
  return best;
}

// "the moonrise die", "cut with moonrise": a set by the first words of its name. A colour may be called so as
// well, so "die" stands behind them, unless what stands before speaks of cutting (`cut`).
std::optional<Recogniser::SetSaid> Recogniser::set_begun(std::size_t at, bool cut) {
  constexpr std::size_t most_words = 3;
  for (std::size_t count = run_of_words(at, most_words); count > 0; --count) {
    const std::size_t last = at + count;
    const bool die = is_word(last, "die") || is_word(last, "dies");
    if (!die && !(cut && phrase_ends(last))) continue;
    ++steps_;
    std::vector<NamedRecord> found = context_.names.sets_begun(words(at, count));
    if (!found.empty()) return SetSaid{last, std::move(found)};
  }
  return std::nullopt;
}

// The place of the order's die in the set, counted from the largest or the smallest.
void Recogniser::choose_die(DieSaid& said, const NamedRecord& set, const RankOrder& order) {
  const std::vector<std::int64_t> dies = context_.names.dies_of(set.id);
  const auto place = static_cast<std::size_t>(order.rank);
  said.die.said = set.name + ", " + order_words(order.rank, order.from_smallest);
  if (place == 0 || place > dies.size()) {
    said.note = set.name + " has " + std::to_string(dies.size()) + (dies.size() == 1 ? " die" : " dies");
    return;
  }
  said.die.dies.push_back(order.from_smallest ? dies[dies.size() - place] : dies[place - 1]);
}

// The middle of an even number of dies is the larger of the two.
void Recogniser::choose_middle(DieSaid& said, const NamedRecord& set) {
  const std::size_t count = context_.names.dies_of(set.id).size();
  choose_die(said, set, {.rank = static_cast<int>(std::max<std::size_t>((count + 1) / 2, 1))});
  if (count > 0) said.note = "the middle one of " + std::to_string(count) + " is " + said.die.said;
}

// A line said before the die: "window of the …". It needs "of" behind it, else it is part of a name. Where it
// ends.
std::size_t Recogniser::line_before(std::size_t at, DieIs& die) const {
  if (at >= pieces_.size()) return at;
  const std::string kind = line_kind(pieces_[at].folded);
  if (kind.empty()) return at;
  const std::size_t of = skip(at + 1, {"line", "edge"});
  if (!is_word(of, "of") && !is_word(of, "in")) return at;
  die.line = kind;
  return skip(of + 1, {"the", "my", "a"});
}

// "die 4 of the moonrise circles", "no. 4 moonrise circle": the number, and where it ends.
std::optional<Recogniser::Numbered> Recogniser::number_before(std::size_t at) const {
  const bool of_die = is_word(at, "die");
  std::size_t figure = skip(at, {"die", "no", "nr", "number"});
  if (is_mark(figure, ".") || is_mark(figure, "#")) ++figure;
  if (figure >= pieces_.size()) return std::nullopt;
  std::string_view said = pieces_[figure].folded;
  if (said.starts_with('#'))
    said.remove_prefix(1);
  else if (figure == at)
    return std::nullopt;
  const auto number = plain_number(said);
  if (!number) return std::nullopt;
  std::size_t last = figure + 1;
  if (is_word(last, "of") || is_word(last, "in") || is_word(last, "from"))
    last = skip(last + 1, {"the", "my"});
  else if (of_die)
    return std::nullopt;
  return Numbered{last, *number};
}

// Words that only say that a set is one: "moonrise circle dies".
std::size_t Recogniser::past_set_words(std::size_t at) const {
  std::size_t last = skip(at, {"die", "dies", "set", "nest"});
  if (last > at && last < pieces_.size() && pieces_[last].kind == Piece::Kind::word) {
    // "die 4", "set no. 4" begin a number, which is read behind the name.
    std::string_view next = pieces_[last].folded;
    if (next.starts_with('#')) next.remove_prefix(1);
    if (plain_number(next) || is_order(last)) return at;
  }
  return last;
}

// Whether an order that names no size may stand behind a name: "…, fourth" at the end of a phrase.
bool Recogniser::phrase_ends(std::size_t at) const {
  if (at >= pieces_.size() || pieces_[at].kind == Piece::Kind::mark) return true;
  static constexpr std::string_view goes_on[] = {"and",  "with", "or",  "in", "on",
                                                 "from", "for",  "one", "die"};
  return std::ranges::find(goes_on, pieces_[at].folded) != std::end(goes_on);
}

// A label or an order behind the name of the set: "tidepool rectangles 2", "…, second largest", "…' third".
void Recogniser::label_behind(DieSaid& said, const NamedRecord& set) {
  std::size_t label = said.last;
  const bool after_comma = is_mark(label, ",");
  const bool possessive = is_mark(label, ".") && pieces_[label].glued;
  const bool bracket = is_mark(label, "(");
  if (after_comma || possessive || bracket || is_mark(label, "#")) ++label;
  label = skip(label, {"die", "no", "nr", "number", "the"});
  if (label > said.last && is_mark(label, ".")) ++label;
  if (const auto order = order_at(word_list(label, longest_order))) {
    std::size_t last = label + order->words;
    const bool closes = !bracket || is_mark(last, ")");
    if (closes && (order->by_size || phrase_ends(last))) {
      if (bracket) ++last;
      choose_die(said, set, *order);
      said.last = skip(last, {"one", "die", "of", "them"});
      return;
    }
  }
  const auto measured = measurement(label);
  // "tidepool rectangles 2 in" is a size, but not where a die follows: "… 3 in tidepool rectangles 2".
  const bool inch = measured && !measured->bare && !(is_word(label + 1, "in") && names_set(label + 2));
  if (after_comma || bracket || inch) return;
  const std::size_t most = run_of_words(label, longest_die_label);
  for (std::size_t count = most; count > 0; --count) {
    ++steps_;
    const std::string text = words(label, count);
    if (const auto die = context_.names.die_labelled(set.id, text)) {
      said.die.dies = {*die};
      said.die.said = set.name + " " + text;
      said.last = label + count;
      if (plain_number(text)) said.numbered = set;
      return;
    }
  }
  if (most == 0) return;
  std::string_view figure = pieces_[label].folded;
  if (figure.starts_with('#')) figure.remove_prefix(1);
  if (const auto number = plain_number(figure)) {
    choose_die(said, set, {.rank = *number});
    said.die.said = set.name + " " + std::to_string(*number);
    said.last = label + 1;
    said.numbered = set;
  }
}

bool Recogniser::names_set(std::size_t at) {
  const auto order = order_at(word_list(at, longest_order));
  return set_at(at + (order ? order->words : 0), NameKind::set).has_value();
}

// A line behind the die: "line" must follow it, or the phrase must end there.
void Recogniser::line_behind(DieSaid& said, bool inside) const {
  const bool comma = is_mark(said.last, ",");
  const std::size_t line = skip(said.last + (comma ? 1 : 0), {"the", "its"});
  if (!said.die.line.empty() || line >= pieces_.size() || pieces_[line].kind != Piece::Kind::word) return;
  const std::string kind = line_kind(pieces_[line].folded);
  if (kind.empty()) return;
  if (is_word(line + 1, "line") || is_word(line + 1, "edge")) {
    said.die.line = kind;
    said.last = line + 2;
    return;
  }
  const bool often_a_technique = kind == "embossed" || kind == "scored" || kind == "cut";
  const bool ends =
      line + 1 == pieces_.size() || (inside && (pieces_[line + 1].kind == Piece::Kind::mark ||
                                                is_word(line + 1, "with") || is_word(line + 1, "and")));
  if (!comma || often_a_technique || !ends) return;
  said.die.line = kind;
  said.last = line + 1;
}

// A die that has a name of its own, where no set's name begins.
std::optional<Recogniser::DieSaid> Recogniser::die_by_name(std::size_t at) {
  const auto dies = set_at(at, NameKind::die);
  if (!dies) return std::nullopt;
  DieSaid said;
  for (const NamedRecord& die : dies->records) said.die.dies.push_back(die.id);
  said.die.said = dies->records.front().name;
  said.last = dies->last;
  return said;
}

// "nettlewing 1", "moonrise 4": the first word of a set's name, and the number of one of its dies.
std::optional<Recogniser::DieSaid> Recogniser::begun_numbered(std::size_t at) {
  const std::size_t figure = at + 1;
  if (run_of_words(at, 2) < 2 || !plain_number(pieces_[figure].folded) || counts_what_follows(figure + 1))
    return std::nullopt;
  const auto measured = measurement(figure);
  if (measured && (!measured->bare || measured->last != figure + 1 || !measured->size.one_figure))
    return std::nullopt;
  const std::vector<NamedRecord> sets = context_.names.sets_begun(pieces_[at].folded);
  if (sets.size() != 1) return std::nullopt;
  DieSaid said;
  said.last = figure + 1;
  number_chosen(said, sets.front(), *plain_number(pieces_[figure].folded));
  if (said.die.dies.empty()) return std::nullopt;
  said.note = "\"" + words(at, 2) + "\" is read as the die " + said.die.said;
  return said;
}

DieIs Recogniser::die_whatever() {
  DieIs die;
  die.any = true;
  die.said = any_die;
  return die;
}

// "Otterby Steel dies", "cut with Otterby Steel": every set of that maker.
std::optional<Recogniser::DieSaid> Recogniser::dies_of_maker(std::size_t at, bool cut) {
  constexpr std::size_t longest_maker = 4;
  for (std::size_t count = run_of_words(at, longest_maker); count > 0; --count) {
    const std::size_t last = at + count;
    const bool dies = is_word(last, "die") || is_word(last, "dies");
    if (!dies && !(cut && phrase_ends(last))) continue;
    ++steps_;
    SetSaid sets{last, context_.names.sets_of_maker(words(at, count))};
    if (sets.records.empty()) continue;
    DieSaid said;
    whole_set(said, sets, last);
    said.die.said = typed(at, last);
    said.other.clear();
    return said;
  }
  return std::nullopt;
}

// "[window of the] [second largest] tidepool rectangle [2] [, stitched line]"
std::optional<Recogniser::DieSaid> Recogniser::die_at(std::size_t at, bool inside, bool cut) {
  DieSaid said;
  const std::size_t begins = line_before(at, said.die);
  auto order = order_at(word_list(begins, longest_order));
  // "the last moonrise circle" is the smallest: the set is counted from its largest.
  if (!order && is_word(begins, "last")) order = RankOrder{.words = 1, .rank = 1, .from_smallest = true};
  const auto number = number_before(begins);
  const bool middle = is_word(begins, "middle");
  std::size_t name_at = begins;
  if (number) name_at = number->last;
  if (order || middle) {
    name_at = begins + (order ? order->words : 1);
    if (is_word(name_at, "one")) ++name_at;
    if (is_word(name_at, "die") && (is_word(name_at + 1, "of") || is_word(name_at + 1, "in"))) ++name_at;
    name_at = skip(name_at, {"of", "in", "the", "my"});
  }
  auto sets = set_at(name_at, NameKind::set);
  if (!sets && begins == at && !order && !number && !middle) {
    if (const auto begun = set_begun(at, cut)) return whole_begun(at, *begun);
    if (auto made = dies_of_maker(at, cut)) return made;
    if (auto numbered = begun_numbered(at)) return numbered;
  }
  // "the second largest bogmyrtle"
  if (!sets && (middle || (order && order->by_size))) {
    sets = set_begun(name_at, true);
    if (sets && sets->records.size() > 1) sets.reset();
  }
  if (!sets) return order || number || middle || begins > at ? std::nullopt : die_by_name(at);
  const NamedRecord& set = sets->records.front();
  said.last = sets->last;
  if (order)
    choose_die(said, set, *order);
  else if (middle)
    choose_middle(said, set);
  else if (number)
    number_chosen(said, set, number->number);
  else
    label_behind(said, set);
  if (order || number || middle) said.last = past_set_words(said.last);
  if (said.die.said.empty()) whole_set(said, *sets, begins == at ? at : sets->last);
  line_behind(said, inside);
  return said;
}

// A number is a label first, then a place counted from the largest.
void Recogniser::number_chosen(DieSaid& said, const NamedRecord& set, int number) {
  const std::string label = std::to_string(number);
  if (const auto die = context_.names.die_labelled(set.id, label))
    said.die.dies = {*die};
  else
    choose_die(said, set, {.rank = number});
  said.die.said = set.name + " " + label;
}

// "moonrise circles 3 and 2 small ovals": the number counts what stands behind it.
bool Recogniser::counts_what_follows(std::size_t at) const {
  constexpr std::size_t longest_phrase = 5;
  for (std::size_t i = at; i < at + longest_phrase && !phrase_ends(i); ++i) {
    const std::string& word = pieces_[i].folded;
    if (names_samples(i)) return false;
    if (word.size() > 2 && word.ends_with('s') && !word.ends_with("ss")) return true;
  }
  return false;
}

// "moonrise circles 3, 4 and 5": numbers that `and` or `or` joins to that of the die, and a list that ends
// so.
void Recogniser::more_dies(const DieSaid& said, Seen& it) {
  constexpr std::size_t most_dies = 12;
  std::vector<Seen> more;
  std::size_t joined = 0, last = said.last, joined_last = said.last;
  while (more.size() < 2 * most_dies) {
    std::size_t at = last + (is_mark(last, ",") ? 1 : 0);
    const bool either = is_word(at, "or");
    const bool both = is_word(at, "and") || is_mark(at, "&");
    if (either || both) ++at;
    if (at == last || at >= pieces_.size()) break;
    std::string_view figure = pieces_[at].folded;
    if (figure.starts_with('#')) figure.remove_prefix(1);
    const auto number = plain_number(figure);
    const auto measured = measurement(at);
    if (!number || (measured && (!measured->bare || measured->last != at + 1)) || counts_what_follows(at + 1))
      break;
    DieSaid other;
    number_chosen(other, *said.numbered, *number);
    other.die.lies_in = said.die.lies_in;
    more.push_back(seen(either ? As::either : both ? As::joins : As::comma, last, at, 0));
    more.back().word = either ? "or" : both ? "and" : ",";
    more.push_back(seen(As::says, at, at + 1, 0));
    more.back().by = it.by;
    more.back().word = words(at, 1);
    if (!other.note.empty()) more.back().notes.push_back(other.note);
    more.back().says = std::move(other.die);
    last = at + 1;
    if (!either && !both) continue;
    joined = more.size();
    joined_last = last;
  }
  more.resize(joined);
  it.more = std::move(more);
  it.last = joined_last;
  it.weight = 2 * static_cast<int>(it.last - it.first);
}

// No die was singled out: every set of that name, with all its dies.
void Recogniser::whole_set(DieSaid& said, const SetSaid& sets, std::size_t first) {
  said.die.said = sets.records.front().name;
  for (const NamedRecord& each : sets.records) {
    said.die.sets.push_back(each.id);
    for (const std::int64_t die : context_.names.dies_of(each.id)) said.die.dies.push_back(die);
  }
  said.other = colour_and_shape(first, sets.last);
  said.last = past_set_words(sets.last);
  if (said.last > sets.last) said.other.clear();
}

// Every set whose name begins so; the words are offered as the colour that is called so.
Recogniser::DieSaid Recogniser::whole_begun(std::size_t first, const SetSaid& sets) {
  DieSaid said;
  whole_set(said, sets, sets.last);
  const std::string begun = words(first, sets.last - first);
  for (const NamedRecord& record : exactly(begun))
    if (record.kind == NameKind::colour) said.other = as_field(ColourIs{ColourUse::either, {}, record.name});
  // Where the words mean a colour as well, what was read is said with that.
  if (!said.other.empty() && sets.records.size() == 1) return said;
  said.note = "\"" + begun + "\" is read as the die set " + said.die.said;
  for (std::size_t i = 1; i < sets.records.size(); ++i) said.note += ", " + sets.records[i].name;
  if (sets.records.size() > 1) said.die.said = begun;
  return said;
}

// A set's name that is also a colour and a shape, as a question: "moonrise circle".
std::string Recogniser::colour_and_shape(std::size_t first, std::size_t last) {
  for (std::size_t middle = first + 1; middle < last; ++middle) {
    const auto shapes = context_.vocabulary.find(words(middle, last - middle), VocabularyName::shape);
    if (shapes.empty()) continue;
    for (const NamedRecord& record : exactly(words(first, middle - first)))
      if (record.kind == NameKind::colour)
        return "with:(" + as_field(ColourIs{ColourUse::either, {}, record.name}) + " " +
               as_field(ShapeIs{{shapes.front().id}}) + ")";
  }
  return {};
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
  const bool cut = word == "cut" && by && !is_word(at + 1, "from");
  auto said = die_at(die, inside, cut);
  if (!said) return;
  said->die.lies_in = inside;
  Seen it = seen(As::says, at, said->last, priority_of::side);
  it.by = by || inside;
  if (!said->note.empty()) it.notes.push_back(said->note);
  if (!said->other.empty())
    it.other.push_back({std::string(typed(die, said->last)), "the die set " + said->die.said, said->other});
  it.word = words(die, said->last - die);
  if (said->numbered && said->die.line.empty()) more_dies(*said, it);
  it.says = std::move(said->die);
  out.push_back(std::move(it));
}

}  // namespace insetbook
