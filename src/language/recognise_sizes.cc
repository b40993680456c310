// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <variant>

#include "language/orders.h"
#include "language/recognise.h"
#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

// No measurement is longer than this many pieces.
constexpr std::size_t longest_measurement = 24;

struct RelationWords {
  std::string_view words;
  Relation relation;
};

constexpr RelationWords relations[] = {
    {"about", Relation::about},
    {"around", Relation::about},
    {"almost", Relation::about},
    {"equal to", Relation::exact},
    {"roughly", Relation::about},
    {"approximately", Relation::about},
    {"approx", Relation::about},
    {"circa", Relation::about},
    {"nearly", Relation::about},
    {"near", Relation::about},
    {"close to", Relation::about},
    {"more or less", Relation::about},
    {"~", Relation::about},
    {"under", Relation::under},
    {"just under", Relation::under},
    {"a little under", Relation::under},
    {"slightly under", Relation::under},
    {"slightly less than", Relation::under},
    {"slightly smaller than", Relation::under},
    {"just over", Relation::over},
    {"a little over", Relation::over},
    {"slightly over", Relation::over},
    {"slightly more than", Relation::over},
    {"slightly larger than", Relation::over},
    {"below", Relation::under},
    {"less than", Relation::under},
    {"fewer than", Relation::under},
    {"smaller than", Relation::under},
    {"shorter than", Relation::under},
    {"narrower than", Relation::under},
    {"<", Relation::under},
    {"over", Relation::over},
    {"above", Relation::over},
    {"more than", Relation::over},
    {"larger than", Relation::over},
    {"bigger than", Relation::over},
    {"greater than", Relation::over},
    {"wider than", Relation::over},
    {"taller than", Relation::over},
    {"longer than", Relation::over},
    {">", Relation::over},
    {"at least", Relation::at_least},
    {"no less than", Relation::at_least},
    {"not less than", Relation::at_least},
    {"no smaller than", Relation::at_least},
    {"not smaller than", Relation::at_least},
    {"not under", Relation::at_least},
    {"minimum", Relation::at_least},
    {"a minimum of", Relation::at_least},
    {"minimum of", Relation::at_least},
    {"min", Relation::at_least},
    {"not below", Relation::at_least},
    {"no shorter than", Relation::at_least},
    {"no narrower than", Relation::at_least},
    {"not shorter than", Relation::at_least},
    {"not narrower than", Relation::at_least},
    {"larger or equal to", Relation::at_least},
    {"bigger or equal to", Relation::at_least},
    {"more than or equal to", Relation::at_least},
    {"greater than or equal to", Relation::at_least},
    {">=", Relation::at_least},
    {"at most", Relation::at_most},
    {"up to", Relation::at_most},
    {"no more than", Relation::at_most},
    {"not more than", Relation::at_most},
    {"no larger than", Relation::at_most},
    {"not larger than", Relation::at_most},
    {"no bigger than", Relation::at_most},
    {"not bigger than", Relation::at_most},
    {"not over", Relation::at_most},
    {"maximum", Relation::at_most},
    {"a maximum of", Relation::at_most},
    {"maximum of", Relation::at_most},
    {"max", Relation::at_most},
    {"not above", Relation::at_most},
    {"no wider than", Relation::at_most},
    {"no taller than", Relation::at_most},
    {"no longer than", Relation::at_most},
    {"not wider than", Relation::at_most},
    {"not taller than", Relation::at_most},
    {"not longer than", Relation::at_most},
    {"smaller or equal to", Relation::at_most},
    {"less than or equal to", Relation::at_most},
    {"<=", Relation::at_most},
    {"exactly", Relation::exact},
    {"precisely", Relation::exact},
    {"exact", Relation::exact},
    {"only", Relation::exact},
    {"just", Relation::exact},
    {"=", Relation::exact},
};

constexpr std::string_view unit_words[] = {
    "in",          "inch",        "inches",  "mm",         "millimetre",  "millimetres",
    "millimeter",  "millimeters", "cm",      "centimetre", "centimetres", "centimeter",
    "centimeters", "half",        "quarter", "quarters",   "eighth",      "eighths",
    "sixteenth",   "sixteenths",  "thirds",  "ft",         "\"",          "square"};

bool begins_with_figure(std::string_view folded, std::string_view typed) {
  const unsigned char first = static_cast<unsigned char>(typed.empty() ? ' ' : typed.front());
  const bool vulgar = !folded.empty() && folded.front() >= '0' && folded.front() <= '9';
  return (first >= '0' && first <= '9') || first == '.' || vulgar;
}

SizeIs size_of(const Measurement& measured) {
  SizeIs size;
  if (const auto* length = std::get_if<ReadLength>(&measured)) {
    size.low = length->length;
    size.unit = length->unit;
  } else if (const auto* range = std::get_if<Range>(&measured)) {
    size.relation = Relation::between;
    size.low = range->low;
    size.high = range->high;
    size.unit = range->unit;
  } else {
    const Size& two = std::get<Size>(measured);
    size.one_figure = two.one_figure;
    size.low = two.width;
    if (!two.one_figure) size.second = two.height;
    size.placed = two.orientation == Orientation::said && !two.one_figure;
    size.unit = two.unit;
  }
  return size;
}

}  // namespace

namespace {

// "23/8" may be a slip for "2-3/8": that; empty where the figure is no improper fraction by itself.
std::string mixed_meant(std::string_view typed) {
  const auto figures = [&](std::size_t from) {
    std::size_t end = from;
    while (end < typed.size() && typed[end] >= '0' && typed[end] <= '9') ++end;
    return end;
  };
  const std::size_t slash = figures(0);
  if (slash < 2 || slash > 3 || slash >= typed.size() || typed[slash] != '/') return {};
  const std::size_t end = figures(slash + 1);
  const auto below = plain_number(typed.substr(slash + 1, end - slash - 1));
  const auto above = plain_number(typed.substr(1, slash - 1));
  if (!below || !above || *above >= *below || typed[0] == '0' || typed[1] == '0') return {};
  return std::string(typed.substr(0, 1)) + "-" + std::string(typed.substr(1, end - 1));
}

}  // namespace

// The measurement that begins at `at`, without a shape behind it: shapes are for the vocabulary.
std::optional<Recogniser::Measured> Recogniser::measurement(std::size_t at) const {
  if (at >= pieces_.size() || pieces_[at].kind == Piece::Kind::phrase) return std::nullopt;
  ++steps_;
  Measured found;
  const std::size_t last = std::min(at + longest_measurement, pieces_.size());
  const std::size_t begin = pieces_[at].span.begin;
  const std::string_view window = text_.substr(begin, pieces_[last - 1].span.end - begin);
  const auto scanned = scan_measurement(window, 0, context_.unit);
  if (!scanned || !*scanned) return std::nullopt;
  const ScannedMeasurement& value = **scanned;
  found.size = size_of(value.found.value);
  found.bare = value.bare;
  const std::size_t end = begin + value.found.end;
  found.last = at;
  while (found.last < pieces_.size() && pieces_[found.last].span.end <= end) ++found.last;
  if (found.last == at || pieces_[found.last - 1].span.end != end) return std::nullopt;
  // "between 1 and 2in": not only at its beginning.
  for (std::size_t i = at; i < found.last && !found.figures; ++i)
    found.figures = begins_with_figure(pieces_[i].folded, typed(i, i + 1));
  leave_preposition(at, found);
  return found;
}

// "oval 3-1/4 x 4-1/4 in an oval frame": before an article "in" is no unit.
void Recogniser::leave_preposition(std::size_t at, Measured& found) const {
  const std::size_t in = found.last - 1;
  const bool article = is_word(found.last, "a") || is_word(found.last, "an") || is_word(found.last, "the") ||
                       is_word(found.last, "another");
  if (in <= at || !article || !is_word(in, "in") || pieces_[in].glued || !found.figures) return;
  const std::size_t begin = pieces_[at].span.begin;
  const std::size_t end = pieces_[in - 1].span.end;
  const auto without = scan_measurement(text_.substr(begin, end - begin), 0, context_.unit);
  if (!without || !*without || begin + (*without)->found.end != end) return;
  found.size = size_of((*without)->found.value);
  found.bare = (*without)->bare;
  found.last = in;
}

// "1e3 mm", "0x10 in", "1e-3 in": a figure that no length is written with, where a unit shows that one was
// meant. The piece behind it and its unit; `at` where there is none.
std::size_t Recogniser::past_odd_figure(std::size_t at) const {
  static constexpr std::string_view units[] = {"in",          "inch",        "inches",      "mm",
                                               "millimetres", "cm",          "centimetres", "ft",
                                               "millimeters", "centimeters", "\""};
  std::string_view rest = pieces_[at].folded;
  const auto take = [&](std::string_view of) {
    const std::size_t end = std::min(rest.find_first_not_of(of), rest.size());
    rest.remove_prefix(end);
    return end > 0;
  };
  std::size_t last = at + 1;
  if (rest.starts_with("0x")) {
    rest.remove_prefix(2);
    if (!take("0123456789abcdef")) return at;
  } else {
    if (!take("0123456789.") || !rest.starts_with('e')) return at;
    rest.remove_prefix(1);
    const bool below = rest.empty() && last < pieces_.size() && pieces_[last].hyphen;
    if (below) rest = pieces_[last++].folded;
    if (!take("0123456789")) return at;
  }
  if (rest.empty() && last < pieces_.size()) rest = pieces_[last++].folded;
  return std::ranges::find(units, rest) != std::end(units) ? last : at;
}

std::optional<Problem> Recogniser::bad_size(std::size_t at) const {
  if (pieces_[at].kind != Piece::Kind::word || !begins_with_figure(pieces_[at].folded, typed(at, at + 1)))
    return std::nullopt;
  if (pieces_[at].hyphen) return std::nullopt;
  if (const std::size_t odd = past_odd_figure(at); odd > at) {
    const auto length = read_length(typed(at, odd), context_.unit);
    if (length) return std::nullopt;
    return problem_at(text_, span_of(at, odd), length.error().what, length.error().expected);
  }
  const std::size_t last = std::min(at + longest_measurement, pieces_.size());
  const std::size_t begin = pieces_[at].span.begin;
  const auto scanned =
      scan_measurement(text_.substr(begin, pieces_[last - 1].span.end - begin), 0, context_.unit);
  if (!scanned || *scanned) return std::nullopt;
  const Problem& inside = scanned->error();
  Problem problem = problem_at(text_, {begin, begin}, inside.what, inside.expected);
  problem.where.at = *problem.where.at + inside.where.at.value_or(0);
  problem.where.length = inside.where.length;
  problem.candidates = inside.candidates;
  return problem;
}

// "5x7s", "5 x 7s": cards of that size.
std::optional<Recogniser::Measured> Recogniser::many_of_a_size(std::size_t at) const {
  constexpr std::size_t longest = 3;
  const std::size_t most = run_of_words(at, longest);
  for (std::size_t last = at + 1; last <= at + most; ++last) {
    if (!pieces_[last - 1].folded.ends_with('s')) continue;
    ++steps_;
    const std::string_view said = typed(at, last);
    const auto scanned = scan_measurement(said.substr(0, said.size() - 1), 0, context_.unit);
    if (!scanned || !*scanned || (*scanned)->found.end + 1 != said.size()) continue;
    Measured found;
    found.size = size_of((*scanned)->found.value);
    found.last = last;
    if (!found.size.one_figure && found.size.relation == Relation::exact) return found;
  }
  return std::nullopt;
}

// Where a relation that begins at `at` ends; `at` when there is none.
std::size_t Recogniser::relation_at(std::size_t at, Relation& relation) const {
  std::size_t best = 0;
  if (at >= pieces_.size() || pieces_[at].folded.empty()) return at;
  ++steps_;
  const char first = pieces_[at].folded.front();
  for (const RelationWords& each : relations) {
    if (each.words.front() != first) continue;
    std::size_t count = 0;
    std::string_view rest = each.words;
    bool same = true;
    while (same && !rest.empty()) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      same = at + count < pieces_.size() && pieces_[at + count].kind != Piece::Kind::phrase &&
             pieces_[at + count].folded == rest.substr(0, end);
      rest.remove_prefix(std::min(end + 1, rest.size()));
      ++count;
    }
    if (same && count > best) {
      best = count;
      relation = each.relation;
    }
  }
  // "min. 2 in", "approx. 2 in"
  if (best == 1 && is_mark(at + 1, ".") && pieces_[at + 1].glued && pieces_[at].folded.size() < 7) ++best;
  return at + best;
}

// "with a diameter of", "whose width is", "diameter": what is measured, before the size; where that ends.
std::size_t Recogniser::measure_before(std::size_t at, SizeIs& way) const {
  std::size_t next = at;
  if (is_word(next, "with") || is_word(next, "having") || is_word(next, "of") || is_word(next, "whose") ||
      is_word(next, "has") || is_word(next, "in"))
    ++next;
  next = skip(next, {"a", "an", "the", "its"});
  const bool wide = is_word(next, "width");
  const bool tall = is_word(next, "height");
  static constexpr std::string_view plain[] = {"diameter", "diam", "dia", "length", "side", "sides"};
  const bool other =
      next < pieces_.size() && std::ranges::find(plain, pieces_[next].folded) != std::end(plain);
  if (!wide && !tall && !other) return at;
  ++next;
  if (is_mark(next, ".") && pieces_[next].glued) ++next;
  way.placed = wide || tall;
  way.height = tall;
  return skip(next, {"of", "is", "are", "being", "measuring", "measures"});
}

namespace {

constexpr std::string_view more_words[] = {"more",  "larger", "bigger", "over",
                                           "above", "wider",  "taller", "longer"};
constexpr std::string_view less_words[] = {"less", "smaller", "under", "below", "narrower", "shorter"};

}  // namespace

// "wide", "in height": which way round the size is; where that ends.
std::size_t Recogniser::way_round_behind(std::size_t at, SizeIs& size) const {
  // "13 in long": the longer side, whichever that is.
  const bool of_card = is_word(at + 1, "card") || is_word(at + 1, "cards");
  if (is_word(at, "long") && !of_card) return at + 1;
  if (is_word(at, "in") && is_word(at + 1, "length")) return at + 2;
  const bool wide = is_word(at, "wide") || (is_word(at, "in") && is_word(at + 1, "width"));
  const bool tall =
      is_word(at, "tall") || is_word(at, "high") || (is_word(at, "in") && is_word(at + 1, "height"));
  // "2 x 3 in tall card": the card is.
  if ((!wide && !tall) || of_card) return at;
  if (size.one_figure)
    size.height = tall;
  else if ((tall && size.low > size.second) || (wide && size.low < size.second))
    std::swap(size.low, size.second);
  size.placed = true;
  return at + (is_word(at, "in") ? 2 : 1);
}

// "± 1/16 in", "give or take a sixteenth of an inch"; where that ends.
std::size_t Recogniser::tolerance_behind(std::size_t at, SizeIs& size) const {
  std::size_t figure = at;
  if (is_mark(at, "±"))
    figure = at + 1;
  else if (is_word(at, "give") && is_word(at + 1, "or") && is_word(at + 2, "take"))
    figure = at + 3;
  else if (is_word(at, "plus") && is_word(at + 1, "or") && is_word(at + 2, "minus"))
    figure = at + 3;
  if (figure == at || (size.relation != Relation::exact && size.relation != Relation::about)) return at;
  if (const std::size_t last = part_of_an_inch(figure, size); last > figure) return last;
  const auto said = measurement(figure);
  if (!said || !said->size.one_figure || said->size.relation != Relation::exact) return at;
  size.tolerance = said->bare ? in_unit(said->size.low, said->size.unit, size.unit) : said->size.low;
  return said->last;
}

// "± 1/8 in" on its own: of a size that stands some words before.
void Recogniser::tolerance_alone(std::size_t at, std::vector<Seen>& out) const {
  if (!is_mark(at, "±") && !is_word(at, "give") && !is_word(at, "plus")) return;
  SizeIs within;
  within.unit = context_.unit;
  const std::size_t last = tolerance_behind(at, within);
  if (last == at || !within.tolerance) return;
  Seen it = seen(As::within, at, last, priority_of::size);
  it.bare = !names_unit(at, last);
  within.low = *within.tolerance;
  it.says = within;
  out.push_back(std::move(it));
}

// "a sixteenth" without a unit, as a tolerance; where it ends.
std::size_t Recogniser::part_of_an_inch(std::size_t at, SizeIs& size) const {
  static constexpr std::pair<std::string_view, int> parts[] = {
      {"half", 2}, {"quarter", 4}, {"eighth", 8}, {"sixteenth", 16}};
  if (!is_word(at, "a") && !is_word(at, "an") && !is_word(at, "half")) return at;
  if (is_word(at + 2, "of") || is_word(at + 2, "inch") || size.unit != Unit::inch) return at;
  for (const auto& [word, of] : parts)
    if (is_word(at + 1, word)) {
      size.tolerance = Length::inch_fraction(1, of);
      return at + 2;
    }
  return at;
}

// "or more", "or so", "and up", "at most", "max"; where it ends.
std::size_t Recogniser::relation_behind(std::size_t at, SizeIs& size) const {
  if (size.relation != Relation::exact || at >= pieces_.size()) return at;
  // "2 in+ circle"
  if (is_mark(at, "+") && pieces_[at].glued && !measurement(at + 1)) {
    size.relation = Relation::at_least;
    return at + 1;
  }
  struct Behind {
    std::string_view first, second;
    Relation relation;
  };
  static constexpr Behind behind[] = {
      {"and", "up", Relation::at_least},      {"and", "over", Relation::at_least},
      {"and", "above", Relation::at_least},   {"and", "larger", Relation::at_least},
      {"and", "bigger", Relation::at_least},  {"and", "upwards", Relation::at_least},
      {"at", "least", Relation::at_least},    {"and", "under", Relation::at_most},
      {"and", "below", Relation::at_most},    {"and", "smaller", Relation::at_most},
      {"at", "most", Relation::at_most},      {"or", "so", Relation::about},
      {"or", "thereabouts", Relation::about}, {"upwards", "", Relation::at_least},
      {"min", "", Relation::at_least},        {"minimum", "", Relation::at_least},
      {"max", "", Relation::at_most},         {"maximum", "", Relation::at_most},
      {"exactly", "", Relation::exact},       {"precisely", "", Relation::exact},
      {"approximately", "", Relation::about}, {"approx", "", Relation::about},
      {"roughly", "", Relation::about}};
  for (const Behind& each : behind) {
    if (!is_word(at, each.first) || (!each.second.empty() && !is_word(at + 1, each.second))) continue;
    const std::size_t last = at + (each.second.empty() ? 1 : 2);
    // "2 in and over 3 in": a word before the next figure is said of that one.
    if (measurement(last) || is_word(last, "than")) return at;
    size.relation = each.relation;
    return last + (is_mark(last, ".") && pieces_[last].glued && each.first.size() < 7 ? 1 : 0);
  }
  if (!is_word(at, "or") || at + 1 >= pieces_.size() || is_word(at + 2, "than")) return at;
  const std::string& word = pieces_[at + 1].folded;
  if (std::ranges::find(more_words, word) != std::end(more_words))
    size.relation = Relation::at_least;
  else if (std::ranges::find(less_words, word) != std::end(less_words))
    size.relation = Relation::at_most;
  else
    return at;
  return at + 2;
}

// What may stand behind a size, in this order.
std::size_t Recogniser::after_size(std::size_t last, SizeIs& size) const {
  std::size_t at = last;
  if (is_word(at, "across") || is_word(at, "diameter")) ++at;
  if ((is_word(at, "in") || is_word(at, "of")) && is_word(at + 1, "diameter")) at += 2;
  if (is_word(at, "each") && is_word(at + 1, "way")) at += 2;
  at = way_round_behind(at, size);
  at = tolerance_behind(at, size);
  return relation_behind(at, size);
}

// A number that is spelled out and has no unit: a count, or nothing.
void Recogniser::spelled_count(std::size_t at, const Measured& found, std::vector<Seen>& out) const {
  const auto number = small_number(pieces_[at].folded);
  if (!number || found.last != at + 1) return;
  Seen count = seen(As::number, at, at + 1, priority_of::number);
  count.weight = 1;
  count.number = *number;
  count.bare = true;
  count.word = pieces_[at].folded;
  SizeIs size = found.size;
  if (const std::size_t last = relation_behind(at + 1, size); last > at + 1) {
    count.last = last;
    count.span = span_of(at, last);
    count.weight = 2 * static_cast<int>(last - at);
  }
  count.says = size;
  out.push_back(std::move(count));
}

// "one or two circles", "2 or 3 circles": from so many to so many.
void Recogniser::one_number_or_another(std::size_t at, std::vector<Seen>& out) const {
  if (at + 3 >= pieces_.size() || !is_word(at + 1, "or")) return;
  const auto least = small_number(pieces_[at].folded);
  const auto most = small_number(pieces_[at + 2].folded);
  const Piece& counted = pieces_[at + 3];
  const bool plural = counted.kind == Piece::Kind::word && counted.folded.ends_with('s') &&
                      std::ranges::find(unit_words, counted.folded) == std::end(unit_words);
  if (!least || !most || *most <= *least || !plural) return;
  Seen range = seen(As::number, at, at + 3, priority_of::number);
  range.number = *least;
  range.most = *most;
  range.word = std::string(typed(at, at + 3));
  out.push_back(std::move(range));
}

// "2+ in circle": the unit stands behind the mark.
void Recogniser::more_than_bare(Measured& found) const {
  const std::size_t unit = found.last + 1;
  if (!found.bare || !found.size.one_figure || !is_mark(found.last, "+") || !pieces_[found.last].glued)
    return;
  const bool inch =
      is_word(unit, "in") || is_word(unit, "inch") || is_word(unit, "inches") || is_mark(unit, "\"");
  if (!inch && !is_word(unit, "mm") && !is_word(unit, "cm")) return;
  const Unit said = inch ? Unit::inch : Unit::mm;
  found.size.low = in_unit(found.size.low, found.size.unit, said);
  if (is_word(unit, "cm")) found.size.low = found.size.low * 10;
  found.size.unit = said;
  found.size.relation = Relation::at_least;
  found.bare = false;
  found.last = unit + 1;
}

// Whether a unit was written in it: behind the figures, before "across" and the like.
bool Recogniser::names_unit(std::size_t first, std::size_t last) const {
  for (std::size_t i = first; i < last; ++i)
    if (std::ranges::find(unit_words, pieces_[i].folded) != std::end(unit_words)) return true;
  return false;
}

// "tall 2 x 3 in": the word is said of the whole size, and is no label of its first figure.
bool Recogniser::is_way_round(std::size_t first, std::size_t last) const {
  const auto way = [&](std::size_t i) {
    static constexpr std::string_view words[] = {"tall", "high", "wide", "height", "width", "w", "h"};
    return std::ranges::find(words, pieces_[i].folded) != std::end(words);
  };
  if (!is_word(first, "tall") && !is_word(first, "wide")) return false;
  for (std::size_t i = first + 1; i < last; ++i)
    if (way(i)) return false;
  return true;
}

void Recogniser::sizes(std::size_t at, std::vector<Seen>& out) const {
  tolerance_alone(at, out);
  one_number_or_another(at, out);
  Relation relation = Relation::exact;
  SizeIs way;
  const std::size_t measured_at = measure_before(at, way);
  const std::size_t begins = relation_at(measured_at, relation);
  auto found = measurement(begins);
  if (found && !found->size.one_figure && is_way_round(begins, found->last)) return;
  if (!found && begins == at && is_word(at, "dozen")) {
    Seen count = seen(As::number, at, at + 1, priority_of::number);
    count.weight = 1;
    count.number = 12;
    count.whole = true;
    count.word = pieces_[at].folded;
    out.push_back(std::move(count));
  }
  if (!found) return;
  if (measured_at > at && found->size.one_figure) {
    found->size.placed = way.placed;
    found->size.height = way.height;
  }
  const bool related = begins > at;
  const bool has_unit = names_unit(begins, found->last);
  // "five by seven cards" has both its figures without a unit.
  if (!related && !found->figures && !has_unit && found->size.one_figure)
    return spelled_count(at, *found, out);
  if (related && found->size.relation != Relation::between) found->size.relation = relation;
  if (!related) more_than_bare(*found);
  const std::size_t last = after_size(found->last, found->size);
  const bool plus = last == found->last + 1 && is_mark(found->last, "+");      // "2+ circles"
  const bool or_more = last == found->last + 2 && is_word(found->last, "or");  // "2 or more circles"
  const bool number = found->bare && (last == found->last || plus || or_more) && found->size.one_figure;
  Seen size =
      seen(number ? As::number : As::says, at, last, number ? priority_of::number : priority_of::size);
  size.bare = found->bare;
  size.word = std::string(typed(begins, last));
  size.says = found->size;
  if (const std::string mixed = mixed_meant(typed(begins, found->last)); !mixed.empty())
    size.notes.push_back("\"" + size.word + "\" is read as " + write(found->size.low, found->size.unit) +
                         "; was " + mixed + " meant?");
  if (!has_unit && context_.unit == Unit::mm && found->size.unit == Unit::inch)
    size.notes.push_back("\"" + size.word + "\" is read in inches: no metric ruler has such a part");
  if (number) {
    const std::string_view word = pieces_[begins].folded;
    const bool times = found->figures && word.ends_with("x");  // "2x"; "six" is no such
    const auto value = small_number(times ? word.substr(0, word.size() - 1) : word);
    const bool range = found->size.relation == Relation::between;
    const auto most = range ? small_number(pieces_[found->last - 1].folded) : std::nullopt;
    const bool none = word == "0" || word == "0x";  // "0 circles"
    size.whole = (value.has_value() || none) && (!range || most.has_value());
    size.number = value.value_or(0);
    size.most = most.value_or(0);
    size.exactly = related && relation == Relation::exact;
    if (!related && !plus && !or_more && !range)
      size.weight = word.size() == 4 && !value ? 0 : 1;  // "2023" is no size
  }
  out.push_back(std::move(size));
}

}  // namespace insetbook
