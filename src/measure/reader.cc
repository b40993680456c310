// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/reader.h"

#include <algorithm>

#include "measure/write.h"

namespace insetbook::measuring {
namespace {

bool is_article(std::string_view word) {
  return word == "a" || word == "an";
}

std::string_view metric_name(UnitName unit) {
  return unit == UnitName::mm ? "mm" : unit == UnitName::cm ? "cm" : "m";
}

bool digit_or_fraction_begins(std::string_view text, std::size_t at) {
  const char32_t code = peek(text, at).code;
  if (code < 0x80 && is_letter(code)) return false;
  return figure_begins(text, at);
}

// Past "and", "&" or a comma between the labelled sides of a size, with the space around it.
std::size_t skip_joiner(std::string_view text, std::size_t at) {
  at = skip_space(text, at);
  const Character c = peek(text, at);
  if (c.code == U',' || c.code == U';' || c.code == U'&') at = skip_space(text, c.end);
  if (const Word word = word_at(text, at); word.view() == "and") at = skip_space(text, word.end);
  return at;
}

}  // namespace

std::nullopt_t MeasurementReader::fail(Fault fault, std::size_t begin, std::size_t end, std::string instead) {
  trouble = Trouble{fault, begin, end, std::move(instead)};
  return std::nullopt;
}

std::nullopt_t MeasurementReader::fail(Trouble found) {
  if (found.fault == Fault::two_readings) {
    // Both readings are said with the unit that follows.
    const std::size_t at = skip_space(text_, found.end);
    if (const auto unit = unit_word_at(text_, at)) {
      const std::string name = " " + std::string(text_.substr(at, unit->end - at));
      found.instead.insert(found.instead.find('\n'), name);
      found.instead += name;
      found.end = unit->end;
    }
  }
  trouble = std::move(found);
  return std::nullopt;
}

// --- one length ---

std::optional<WrittenUnit> MeasurementReader::mark_after(const Figure& figure, std::size_t at) const {
  const auto mark = unit_mark_at(text_, at);
  if (!mark || figure.in_words || !within()) return figure.in_words ? std::nullopt : mark;
  const char32_t next = peek(text_, mark->end).code;
  const bool joined = is_letter(next) || digit_value(next) >= 0;
  // 2 "low tide": the mark opens a phrase.
  if (at > figure.end) {
    const char32_t code = peek(text_, at).code;
    return joined || code == 0x201C || code == 0x2018 || code == 0x201E ? std::nullopt : mark;
  }
  // 2's
  if (mark->name == UnitName::foot && is_letter(next) && !times_at(text_, mark->end)) return std::nullopt;
  return mark;
}

// "3/8 of an inch", "half an inch".
std::optional<WrittenUnit> MeasurementReader::unit_said_of(const Figure& figure) const {
  if (!figure.has_fraction || figure.whole != 0) return std::nullopt;
  Word word = word_at(text_, skip_space(text_, figure.end));
  const bool of = word.view() == "of";
  if (of) word = word_at(text_, skip_space(text_, word.end));
  const bool one = is_article(word.view()) || (of && word.view() == "one");
  if (!one || (!of && !figure.in_words)) return std::nullopt;
  return unit_word_at(text_, skip_space(text_, word.end));
}

std::optional<WrittenUnit> MeasurementReader::unit_after(const Figure& figure) const {
  if (auto unit = unit_said_of(figure)) return unit;
  if (const Character c = peek(text_, figure.end); is_hyphen(c.code))
    return unit_word_at(text_, c.end);  // 2-inch
  const std::size_t at = skip_space(text_, figure.end);
  const auto unit = unit_word_at(text_, at);
  if (unit) return figure.unit_decides && !unit->full ? std::nullopt : unit;
  return mark_after(figure, at);
}

// Whether a figure without a unit may end here: not in the middle of "2nd", "8-Mar", "3/8/2026", "10:30",
// "2's".
bool MeasurementReader::ends_cleanly(std::size_t end) const {
  const Character c = peek(text_, end);
  if (times_at(text_, end) || label_after_at(text_, end)) return true;
  if (is_letter(c.code)) return word_at(text_, end).view() == "to";
  if (c.code == U'_' || c.code == U'%' || is_slash(c.code) || small_digits_at(text_, end)) return false;
  const char32_t next = peek(text_, c.end).code;
  if (is_hyphen(c.code) || is_quote(c.code)) return !is_letter(next);
  if (c.code == U'.' || c.code == U':') return digit_value(next) < 0;
  return true;
}

void MeasurementReader::add_inches(Written& written, bool foot_mark) {
  std::size_t at = skip_space(text_, written.end);
  if (!within() && peek(text_, at).code == U',') at = skip_space(text_, at + 1);
  if (const Word word = word_at(text_, at); word.view() == "and") at = skip_space(text_, word.end);
  FigureReader figures(text_);
  const auto figure = figures.read(at, false);
  if (!figure) {
    if (figures.trouble) fail(*figures.trouble);
    return;
  }
  const auto unit = unit_after(*figure);
  const bool unsaid = !unit && foot_mark && !figure->in_words && ends_cleanly(figure->end);
  if (unit ? unit->name != UnitName::inch : !unsaid) return;
  written.terms[1] = {*figure, UnitName::inch};
  written.count = 2;
  written.end = unit ? unit->end : figure->end;
}

// "an inch and a half", unless the half has a unit of its own.
void MeasurementReader::add_fraction_behind_unit(Written& written) {
  FigureReader figures(text_);
  Figure joined = written.terms[0].figure;
  if (!figures.add_and_fraction(joined, written.end) || unit_after(joined)) return;
  written.terms[0].figure = joined;
  written.end = joined.end;
}

// "2 in 3 cm" is no length.
bool MeasurementReader::one_unit(const Written& written) {
  const std::size_t at = skip_space(text_, written.end);
  if (!digit_or_fraction_begins(text_, at)) return true;
  FigureReader figures(text_);
  const auto figure = figures.read(at, false);
  const auto unit = figure ? unit_after(*figure) : std::nullopt;
  if (!unit || unit->name == *written.unit()) return true;
  fail(Fault::mixed_units, at, unit->end);
  return false;
}

std::optional<MeasurementReader::Written> MeasurementReader::length_at(std::size_t at, bool join_and) {
  FigureReader figures(text_);
  const auto figure = figures.read(at, join_and);
  if (!figure) {
    if (figures.trouble) fail(*figures.trouble);
    return std::nullopt;
  }
  Written written;
  written.terms[0].figure = *figure;
  written.begin = at;
  written.end = figure->end;
  const auto unit = unit_after(*figure);
  if (!unit) {
    if (figure->unit_decides || (within() && (figure->needs_unit || !ends_cleanly(figure->end))))
      return std::nullopt;
    return written;
  }
  written.terms[0].unit = unit->name;
  written.end = unit->end;
  if (unit->name == UnitName::foot) add_inches(written, unit->mark);
  if (!trouble && join_and && written.count == 1) add_fraction_behind_unit(written);
  if (trouble || !one_unit(written)) return std::nullopt;
  return written;
}

// "2-3/8" among metric figures: no metric ruler has eighths, only halves.
bool MeasurementReader::of_an_inch(const Written& written) const {
  const Figure& figure = written.terms[0].figure;
  constexpr std::int64_t half = 2;
  return no_unit_ == UnitName::mm && written.fractional() && !figure.in_words &&
         figure.fraction.numerator * half % figure.fraction.denominator != 0;
}

UnitName MeasurementReader::unsaid(const Written& written) const {
  return of_an_inch(written) ? UnitName::inch : no_unit_;
}

std::optional<Length> MeasurementReader::length_of(const Written& written) {
  std::int64_t total = 0;
  for (std::size_t i = 0; i < written.count; ++i) {
    const Term& term = written.terms[i];
    const auto nm = figure_nm(text_, term.figure, nanometres(term.unit.value_or(unsaid(written))));
    if (!nm) return fail(Fault::too_long, written.begin, written.end);
    total += *nm;
  }
  if (total > longest_length.nm()) return fail(Fault::too_long, written.begin, written.end);
  return Length::nm(total);
}

std::optional<MeasurementReader::Pair> MeasurementReader::pair_of(Written first, Written second) {
  const auto share = [this](Written& without, const Written& with) {
    // The inches of 1 ft 6 in, and feet or metres that do not stand at the end, say nothing of the other
    // figure.
    const bool at_end = with.begin > without.begin;
    const bool clear =
        with.count == 1 && (at_end || (with.unit() != UnitName::foot && with.unit() != UnitName::m));
    if (!clear) fail(Fault::unit_unsaid, without.begin, without.end);
    // Fractions are of an inch, so that a metric unit elsewhere does not say it of this one.
    const bool of_an_inch = without.fractional() && !without.terms[0].figure.in_words;
    const bool metric = shown_as(*with.unit()) == Unit::mm;
    if (clear && of_an_inch && metric)
      fail(Fault::shared_metric, without.begin, without.end, std::string(metric_name(*with.unit())));
    without.terms[0].unit = with.unit();
    return !trouble;
  };
  if (!first.unit() && second.unit() && !share(first, second)) return std::nullopt;
  if (!second.unit() && first.unit() && !share(second, first)) return std::nullopt;
  // "2-3/8 x 60" of a metric book, as "2-3/8 x 60 mm" is.
  if (!first.unit() && !second.unit() && of_an_inch(first) != of_an_inch(second)) {
    const Written& odd = of_an_inch(first) ? first : second;
    return fail(Fault::shared_metric, odd.begin, odd.end, "mm");
  }
  const Unit unit = shown_as(first.unit().value_or(unsaid(first)));
  if (unit != shown_as(second.unit().value_or(unsaid(second))))
    return fail(Fault::mixed_sides, second.begin, second.end);
  const auto a = length_of(first);
  const auto b = a ? length_of(second) : std::nullopt;
  if (!b) return std::nullopt;
  return Pair{*a, *b, unit};
}

// --- sizes ---

std::optional<MeasurementReader::Sided> MeasurementReader::side_at(std::size_t at) {
  Sided side;
  side.begin = at;
  if (const auto label = label_before_at(text_, at)) {
    const auto length = length_at(label->end, true);
    if (!length) return std::nullopt;
    side.length = *length;
    side.label = label;
    side.before = true;
    side.end = length->end;
    return side;
  }
  const auto length = length_at(at, true);
  if (!length) return std::nullopt;
  side.length = *length;
  side.end = length->end;
  if (const auto label = label_after_at(text_, skip_space(text_, length->end))) {
    side.label = label;
    side.end = label->end;
  }
  return side;
}

// Sets which way round the figures are. False: the words of the text disagree.
bool MeasurementReader::stands(Size& size, const Sided& first, const Sided& second, std::size_t& end) {
  const auto turn = [&](Side side_of_first) {
    if (side_of_first == Side::height) std::swap(size.width, size.height);
    size.orientation = Orientation::said;
  };
  if (!first.label && !second.label) return true;
  if ((first.label && first.label->side == Side::across) ||
      (second.label && second.label->side == Side::across))
    return false;
  if (first.label && second.label) {
    if (first.label->side == second.label->side) return false;
    turn(first.label->side);
    return true;
  }
  if (first.label) {
    turn(first.label->side);
    return true;
  }
  const Side side = second.label->side, other = side == Side::width ? Side::height : Side::width;
  // "6 x 4 in tall": tall may be said of the 4 or of the whole.
  if (second.label->loose && !second.before && size.width > size.height) {
    if (within()) {
      end = second.length.end;
      return true;
    }
    const std::string a = write_figure(size.width, size.unit), b = write_figure(size.height, size.unit);
    const bool tall = side == Side::height;
    const std::string as_label = tall ? a + " wide and " + b + " tall" : b + " wide and " + a + " tall";
    const std::string as_whole = tall ? b + " wide and " + a + " tall" : a + " wide and " + b + " tall";
    fail(Fault::tall_or_height, second.length.end, second.end, as_label + "\n" + as_whole);
    return false;
  }
  turn(other);
  return true;
}

std::optional<MeasurementReader::Found> MeasurementReader::size_of(const Sided& first, const Sided& second) {
  const auto pair = pair_of(first.length, second.length);
  if (!pair) return std::nullopt;
  Size size;
  size.width = pair->first;
  size.height = pair->second;
  size.unit = pair->unit;
  if (size.width == Length() || size.height == Length()) {
    const Written& zero = size.width == Length() ? first.length : second.length;
    return fail(Fault::zero_side, zero.begin, zero.end);
  }
  std::size_t end = second.end;
  if (!stands(size, first, second, end)) {
    if (!trouble) fail(Fault::same_side, second.begin, second.end);
    return std::nullopt;
  }
  return Found{size, end, false};
}

std::optional<MeasurementReader::Found> MeasurementReader::two_sides(const Sided& first, std::size_t times) {
  const auto second = side_at(skip_space(text_, times));
  const bool counts = first.length.bare() && !first.length.terms[0].figure.in_words && !first.label &&
                      peek(text_, first.end).begin < times && !is_space(peek(text_, first.end).code);
  const auto counted = [&]() -> std::optional<Found> {  // "12x 2-7/8 x 4-1/8 in": the 12 with its x
    auto count = single(first.length);
    if (count) count->end = times;
    return count;
  };
  if (!second) {
    if (trouble) return std::nullopt;
    if (within()) return counts ? counted() : one_side(first);
    return fail(Fault::unfinished, skip_space(text_, first.end), times);
  }
  const std::size_t after = skip_space(text_, second->end);
  const auto again = times_at(text_, after);
  if (again && figure_begins(text_, skip_space(text_, *again))) {
    if (within() && counts) return counted();
    return fail(Fault::three_figures, after, *again);
  }
  return size_of(first, *second);
}

// "2 in wide, 3 in tall", "W 2 H 3": labels stand for the x.
std::optional<MeasurementReader::Found> MeasurementReader::labelled_pair(const Sided& first) {
  const auto second = side_at(skip_joiner(text_, first.end));
  if (!second || !second->label || second->label->side == Side::across) {
    if (within()) trouble.reset();
    return std::nullopt;
  }
  if (second->label->side != first.label->side) return size_of(first, *second);
  if (!within()) fail(Fault::same_side, second->begin, second->end);
  return std::nullopt;
}

std::optional<MeasurementReader::Found> MeasurementReader::single(const Written& length) {
  const auto read = length_of(length);
  if (!read) {
    // A long number in a sentence is some other number.
    if (within() && length.bare()) trouble.reset();
    return std::nullopt;
  }
  return Found{ReadLength{*read, shown_as(length.unit().value_or(unsaid(length)))}, length.end,
               length.bare()};
}

std::optional<MeasurementReader::Found> MeasurementReader::one_side(const Sided& side) {
  if (!side.label) return single(side.length);
  if (side.label->side != Side::across) {
    if (!within()) return fail(Fault::one_side, side.begin, side.end);
    // "2 in wide strip": the length here, the word for the caller.
    return side.before ? std::nullopt : single(side.length);
  }
  const auto read = length_of(side.length);
  if (!read) return std::nullopt;
  if (*read == Length()) return fail(Fault::zero_side, side.length.begin, side.length.end);
  Size size;
  size.width = size.height = *read;
  size.unit = shown_as(side.length.unit().value_or(unsaid(side.length)));
  size.one_figure = true;
  return Found{size, side.end, false};
}

// --- ranges ---

std::optional<MeasurementReader::Found> MeasurementReader::range_of(const Written& low, const Written& high,
                                                                    std::size_t begin) {
  const std::size_t after = skip_space(text_, high.end);
  const auto times = times_at(text_, after);
  if (times && figure_begins(text_, skip_space(text_, *times)))
    return fail(Fault::range_of_sides, begin, high.end);
  const bool bare = low.bare() && high.bare();
  const auto pair = pair_of(low, high);
  if (!pair) {
    if (within() && bare) trouble.reset();
    return std::nullopt;
  }
  Range range{std::min(pair->first, pair->second), std::max(pair->first, pair->second), pair->unit};
  return Found{range, high.end, bare};
}

std::optional<MeasurementReader::Found> MeasurementReader::range_with_dash(const Written& low,
                                                                           const Character& dash) {
  const std::size_t at = skip_space(text_, dash.end);
  if (!digit_or_fraction_begins(text_, at)) return std::nullopt;
  // "2 in -3": in a question the minus excludes what follows.
  const bool even = (dash.begin > low.end) == (at > dash.end);
  if (within() && !even && dash.code == U'-') return std::nullopt;
  const auto high = length_at(at, true);
  if (!high) {
    // 2026-11-25 and the like.
    if (within() && low.bare() && !trouble) no_measurement_ = true;
    return std::nullopt;
  }
  const Character next = peek(text_, high->end);
  const bool third = is_hyphen(next.code) && digit_value(peek(text_, next.end).code) >= 0;
  if (third && within() && low.bare() && high->bare()) {
    no_measurement_ = true;
    return std::nullopt;
  }
  if (third || low.fractional() || high->fractional() || low.terms[0].figure.in_words)
    return fail(Fault::dash, third ? next.begin : dash.begin, third ? next.end : dash.end);
  return range_of(low, *high, low.begin);
}

std::optional<MeasurementReader::Found> MeasurementReader::range_after(const Written& low) {
  const std::size_t at = skip_space(text_, low.end);
  const Character c = peek(text_, at);
  if (is_hyphen(c.code)) return range_with_dash(low, c);
  std::optional<std::size_t> joined = dots_at(text_, at);
  if (const Word word = word_at(text_, at); word.view() == "to") joined = word.end;
  if (!joined) return std::nullopt;
  const auto high = length_at(skip_space(text_, *joined), true);
  if (high) return range_of(low, *high, low.begin);
  if (!trouble && !within() && skip_space(text_, *joined) == text_.size())
    fail(Fault::unfinished, at, *joined);
  return std::nullopt;
}

// "between 2 and 3 in", "from 2 to 3 in", `at` behind the first word.
std::optional<MeasurementReader::Found> MeasurementReader::range_in_words(std::size_t at,
                                                                          std::string_view joining) {
  at = skip_space(text_, at);
  // "between an inch and a half and two inches", else "between 2 and 3/8 in" where the "and" joins nothing.
  for (const bool join_and : {true, false}) {
    trouble.reset();
    const auto low = length_at(at, join_and);
    if (!low) continue;
    const Word word = word_at(text_, skip_space(text_, low->end));
    if (word.view() != joining) continue;
    const auto high = length_at(skip_space(text_, word.end), true);
    if (high) return range_of(*low, *high, at);
  }
  if (within()) trouble.reset();
  return std::nullopt;
}

std::optional<MeasurementReader::Found> MeasurementReader::read(std::size_t at) {
  const Word word = word_at(text_, at);
  if (word.view() == "between") return range_in_words(word.end, "and");
  if (word.view() == "from") return range_in_words(word.end, "to");
  const auto first = side_at(at);
  if (!first) return std::nullopt;
  if (!first->label) {
    if (auto range = range_after(first->length); range || trouble || no_measurement_) return range;
  }
  if (const auto times = times_at(text_, skip_space(text_, first->end))) return two_sides(*first, *times);
  if (first->label && first->label->side != Side::across) {
    if (auto pair = labelled_pair(*first); pair || trouble) return pair;
  }
  return one_side(*first);
}

}  // namespace insetbook::measuring
