// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/figure.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace insetbook::measuring {
namespace {

constexpr std::int64_t most_in_fraction = 1'000'000'000;
constexpr std::size_t most_groups = 6;  // of three digits behind commas

struct NumberWord {
  std::string_view word;
  std::int64_t value;
};
constexpr std::array<NumberWord, 20> small_numbers{
    {{"zero", 0},     {"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},
     {"five", 5},     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},
     {"ten", 10},     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14},
     {"fifteen", 15}, {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19}}};
constexpr std::array<NumberWord, 9> tens{{{"twenty", 20},
                                          {"thirty", 30},
                                          {"forty", 40},
                                          {"fourty", 40},
                                          {"fifty", 50},
                                          {"sixty", 60},
                                          {"seventy", 70},
                                          {"eighty", 80},
                                          {"ninety", 90}}};
constexpr std::array<NumberWord, 13> parts{{{"half", 2},
                                            {"third", 3},
                                            {"quarter", 4},
                                            {"fourth", 4},
                                            {"fifth", 5},
                                            {"sixth", 6},
                                            {"seventh", 7},
                                            {"eighth", 8},
                                            {"ninth", 9},
                                            {"tenth", 10},
                                            {"twelfth", 12},
                                            {"sixteenth", 16},
                                            {"hundredth", 100}}};

template <std::size_t N>
const NumberWord* find_word(const std::array<NumberWord, N>& table, std::string_view word) {
  const auto found = std::ranges::find(table, word, &NumberWord::word);
  return found == table.end() ? nullptr : &*found;
}

// Past the space or the single hyphen between two spoken words.
std::size_t next_word(std::string_view text, std::size_t at) {
  const Character c = peek(text, at);
  return is_hyphen(c.code) ? c.end : skip_space(text, at);
}

std::optional<Cardinal> below_hundred(std::string_view text, std::size_t at) {
  const Word word = word_at(text, at);
  if (const auto* small = find_word(small_numbers, word.view())) return Cardinal{small->value, word.end};
  const auto* ten = find_word(tens, word.view());
  if (ten == nullptr) return std::nullopt;
  const Word one = word_at(text, next_word(text, word.end));
  const auto* small = find_word(small_numbers, one.view());
  if (small == nullptr || small->value < 1 || small->value > 9) return Cardinal{ten->value, word.end};
  return Cardinal{ten->value + small->value, one.end};
}

// "eighth", "eighths", "thirty-seconds", "16ths".
struct PartWord {
  std::int64_t denominator = 1;
  bool plural = false;
  bool everyday = false;  // half, quarter: no rank is ever called so
  std::size_t end = 0;
};

std::optional<PartWord> counted_part(std::string_view text, const Digits& digits) {
  const Word ending = word_at(text, digits.end);
  const std::string_view e = ending.view();
  const bool plural = e == "ths" || e == "nds" || e == "rds";
  if (!plural && e != "th" && e != "nd" && e != "rd") return std::nullopt;
  if (digits.value < 3 || digits.value > most_in_fraction) return std::nullopt;
  return PartWord{digits.value, plural, false, ending.end};
}

std::optional<PartWord> part_at(std::string_view text, std::size_t at) {
  if (const auto digits = digits_at(text, at)) return counted_part(text, *digits);
  const Word word = word_at(text, at);
  std::string_view w = word.view();
  if (w == "halves") return PartWord{2, true, true, word.end};
  if (w == "thirty" || w == "sixty") {
    const Word second = word_at(text, next_word(text, word.end));
    std::string_view s = second.view();
    const bool plural = s.ends_with('s');
    if (plural) s.remove_suffix(1);
    if (w == "thirty" && s == "second") return PartWord{32, plural, false, second.end};
    if (w == "sixty" && s == "fourth") return PartWord{64, plural, false, second.end};
    return std::nullopt;
  }
  const bool plural = w.ends_with('s');
  if (plural) w.remove_suffix(1);
  const auto* part = find_word(parts, w);
  if (part == nullptr || (plural && w == "half")) return std::nullopt;
  return PartWord{part->value, plural, w == "half" || w == "quarter", word.end};
}

bool is_article(std::string_view word) {
  return word == "a" || word == "an";
}

// The parts that lengths are measured in: halves to sixteenths, what has no prime factor above 7 as far as
// 128 (32, 64, 100, 128 among them), thousandths. Common practice, no source.
bool is_usual(std::int64_t denominator) {
  constexpr std::int64_t small = 16, most = 128, thousand = 1000;
  if (denominator <= small || denominator == thousand) return true;
  if (denominator > most) return false;
  for (const std::int64_t prime : {2, 3, 5, 7})
    while (denominator % prime == 0) denominator /= prime;
  return denominator == 1;
}

// What was probably meant by a denominator with a figure too many: 88 is 8, 166 is 16. 0: nothing near.
std::int64_t meant_by(std::int64_t denominator) {
  const std::string figures = std::to_string(denominator);
  for (std::size_t i = 1; i < figures.size(); ++i) {
    if (figures[i] != figures[i - 1]) continue;
    std::int64_t rest = 0;
    for (std::size_t k = 0; k < figures.size(); ++k)
      if (k != i) rest = rest * 10 + (figures[k] - '0');
    if (rest > 1 && is_usual(rest)) return rest;
  }
  return 0;
}

std::string slash_between(std::int64_t numerator, std::int64_t denominator) {
  return std::to_string(numerator) + "/" + std::to_string(denominator);
}

std::string mixed(std::int64_t whole, const Fraction& f) {
  const std::int64_t common = std::gcd(f.numerator % f.denominator, f.denominator);
  const std::int64_t n = f.numerator % f.denominator / common, d = f.denominator / common;
  std::string out = std::to_string(whole + f.numerator / f.denominator);
  if (n > 0) out += "-" + std::to_string(n) + "/" + std::to_string(d);
  return out;
}

}  // namespace

std::optional<Cardinal> cardinal_at(std::string_view text, std::size_t at) {
  std::int64_t total = 0;
  std::size_t end = at;
  std::int64_t largest = 1'000'000;
  for (std::size_t from = at;;) {
    auto number = below_hundred(text, from);
    const Word article = word_at(text, from);
    if (!number && end == at && is_article(article.view())) number = Cardinal{1, article.end};
    if (!number) break;
    const Word scale = word_at(text, next_word(text, number->end));
    const std::int64_t factor = scale.view() == "hundred" ? 100 : scale.view() == "thousand" ? 1000 : 1;
    if (factor >= largest) break;
    if (factor == 1 && is_article(article.view())) return std::nullopt;
    total += number->value * factor;
    end = factor == 1 ? number->end : scale.end;
    largest = factor;
    if (factor == 1) break;
    from = next_word(text, end);
    if (const Word word = word_at(text, from); word.view() == "and") from = next_word(text, word.end);
    // "two hundred and three eighths": the three belongs to the fraction.
    const auto rest = below_hundred(text, from);
    if (rest && part_at(text, next_word(text, rest->end))) break;
  }
  if (end == at) return std::nullopt;
  return Cardinal{total, end};
}

bool figure_begins(std::string_view text, std::size_t at) {
  const Character c = peek(text, at);
  if (digit_value(c.code) >= 0 || vulgar_fraction(c.code) || c.code == 0x215F) return true;
  if (c.code == U'.' || c.code == U',') return digit_value(peek(text, c.end).code) >= 0;
  if (small_digits_at(text, at)) return true;
  return cardinal_at(text, at) || part_at(text, at) || is_article(word_at(text, at).view());
}

std::nullopt_t FigureReader::fail(Fault fault, std::size_t begin, std::size_t end, std::string instead) {
  trouble = Trouble{fault, begin, end, std::move(instead)};
  return std::nullopt;
}

std::optional<Figure> FigureReader::read(std::size_t at, bool join_and) {
  const char32_t code = peek(text_, at).code;
  if (code == 0) return std::nullopt;
  if (code < 0x80 && is_letter(code)) return in_words(at, join_and);
  return in_digits(at, join_and);
}

std::optional<Figure> FigureReader::in_digits(std::size_t at, bool join_and) {
  Figure figure;
  figure.begin = at;
  const auto digits = digits_at(text_, at);
  const Character first = peek(text_, at);
  if (!digits) {
    if (first.code == U'.' || first.code == U',') {
      const auto tail = digits_at(text_, first.end);
      if (!tail) return std::nullopt;
      figure.tail_begin = tail->begin;
      figure.end = figure.tail_end = tail->end;
      return figure;
    }
    const auto part = fraction_at(at);
    if (!part) return std::nullopt;
    figure.fraction = part->fraction;
    figure.has_fraction = true;
    figure.end = part->end;
    return figure;
  }
  figure.end = digits->end;
  figure.whole = digits->value;
  const Character next = peek(text_, digits->end);
  if (digits->count == 1 && digits->value == 0 && (next.code == U'x' || next.code == U'X')) {
    const char32_t hex = peek(text_, next.end).code | 0x20;
    if (digit_value(peek(text_, next.end).code) >= 0 || (hex >= U'a' && hex <= U'f'))
      return fail(Fault::hexadecimal, at, word_at(text_, next.end).end);
  }
  if (!read_decimals(figure, *digits)) return std::nullopt;
  if (figure.has_tail() || figure.end != digits->end) return figure;
  if (const auto part = slashed(*digits)) {
    figure.whole = 0;
    figure.fraction = part->fraction;
    figure.has_fraction = true;
    figure.end = part->end;
    return figure;
  }
  if (trouble) return std::nullopt;
  if (read_parts(figure)) return figure;
  if (!mix(figure, join_and)) return std::nullopt;
  return figure;
}

// "3 eighths", "5 16ths": a plural, so that "3 quarter inch strips" stays a count.
bool FigureReader::read_parts(Figure& figure) {
  const std::size_t at = next_word(text_, figure.end);
  const auto part = part_at(text_, at);
  if (!part || !part->plural || at == figure.end || figure.whole > most_in_fraction) return false;
  figure.fraction = {figure.whole, part->denominator};
  figure.whole = 0;
  figure.has_fraction = true;
  figure.end = part->end;
  return true;
}

bool FigureReader::read_decimals(Figure& figure, const Digits& first) {
  const Character mark = peek(text_, first.end);
  if (digit_value(peek(text_, mark.end).code) < 0) return true;
  if (mark.code == U'.') return read_point(figure, first);
  if (mark.code == U',') return read_comma(figure, first);
  return true;
}

bool FigureReader::read_point(Figure& figure, const Digits& first) {
  auto tail = digits_at(text_, first.end + 1);
  const Character mark = peek(text_, tail->end);
  const auto behind = mark.code == U',' ? digits_at(text_, mark.end) : std::nullopt;
  if (behind && tail->count == 3 && first.count <= 3) {  // 1.234,5
    figure.whole = std::min(most_counted, first.value * 1000 + tail->value);
    tail = behind;
  }
  figure.tail_begin = tail->begin;
  figure.tail_end = figure.end = tail->end;
  // A fraction behind a decimal figure: 2.5-1/2, 2.5/4.
  const Character slash = peek(text_, tail->end);
  if (is_slash(slash.code) && digits_at(text_, slash.end)) {
    fail(Fault::after_decimal, slash.begin, digits_at(text_, slash.end)->end);
    return false;
  }
  const std::optional<Part> part = beside(figure.end);
  if (trouble) return false;
  if (part) fail(Fault::after_decimal, figure.end, part->end);
  return !part;
}

bool FigureReader::read_comma(Figure& figure, const Digits& first) {
  std::int64_t value = first.value;
  std::size_t end = first.end, groups = 0;
  bool thousands = first.count <= 3;
  std::optional<Digits> last;
  while (peek(text_, end).code == U',') {
    const auto group = digits_at(text_, end + 1);
    if (!group) break;
    thousands = thousands && group->count == 3;
    value = std::min(most_counted, value * 1000 + std::min<std::int64_t>(group->value, 999));
    end = group->end;
    last = group;
    ++groups;
    if (groups > 1 && (!thousands || groups > most_groups)) return true;  // a list
  }
  if (is_slash(peek(text_, end).code)) return true;  // 2,3/8: a list
  const Character point = peek(text_, end);
  const auto tail = point.code == U'.' ? digits_at(text_, point.end) : std::nullopt;
  if (thousands && (groups > 1 || tail)) {  // 1,000,000 and 1,234.5
    figure.whole = value;
    figure.end = end;
    if (tail) {
      figure.tail_begin = tail->begin;
      figure.tail_end = figure.end = tail->end;
    }
    return true;
  }
  if (groups > 1 || tail) return true;  // 2,3,4: a list
  if (thousands && first.value > 0 && digit_value(peek(text_, first.begin).code) > 0) {
    std::string small{text_.substr(first.begin, first.end - first.begin)};
    std::string digits{text_.substr(last->begin, last->end - last->begin)};
    const std::string large = small + digits;
    while (!digits.empty() && digits.back() == '0') digits.pop_back();
    if (!digits.empty()) small += "." + digits;
    fail(Fault::two_readings, first.begin, end, small + "\n" + large);
    return false;
  }
  figure.tail_begin = last->begin;
  figure.tail_end = figure.end = last->end;
  return true;
}

// 3/8/2026 is a date. "2/1/8" and "2 /1/16" are none: no year has one digit, and nobody sets a date so.
std::nullopt_t FigureReader::refuse_three(const Digits& first, const Digits& second, const Digits& third) {
  const bool uneven = peek(text_, first.end).begin != skip_space(text_, first.end);
  const bool below_one = second.value > 0 && second.value < third.value;
  if (!below_one || (third.count > 1 && !uneven)) return fail(Fault::looks_like_date, first.begin, third.end);
  return fail(Fault::three_numbers, first.begin, third.end,
              mixed(first.value, Fraction{second.value, third.value}));
}

// numerator/denominator in digits, with or without space about the slash.
std::optional<FigureReader::Part> FigureReader::slashed(const Digits& numerator) {
  const Character slash = peek(text_, skip_space(text_, numerator.end));
  if (!is_slash(slash.code)) return std::nullopt;
  std::size_t at = skip_space(text_, slash.end);
  auto denominator = digits_at(text_, at);
  if (!denominator) denominator = small_digits_at(text_, at);
  if (!denominator) return std::nullopt;
  const Character next = peek(text_, denominator->end);
  if (const auto third = is_slash(next.code) ? digits_at(text_, next.end) : std::nullopt)
    return refuse_three(numerator, *denominator, *third);
  if (denominator->value == 0) return fail(Fault::zero_denominator, numerator.begin, denominator->end);
  if (denominator->value > most_in_fraction || numerator.value > most_in_fraction)
    return fail(Fault::long_fraction, numerator.begin, denominator->end);
  if (!is_usual(denominator->value)) {
    const std::int64_t meant = meant_by(denominator->value);
    return fail(Fault::odd_fraction, numerator.begin, denominator->end,
                meant > numerator.value ? slash_between(numerator.value, meant) : std::string());
  }
  const auto ending = counted_part(text_, *denominator);  // 3/8ths
  return Part{{numerator.value, denominator->value}, ending ? ending->end : denominator->end, false, false};
}

// A fraction in figures, nothing whole before it: 3/8, ⅜, ³⁄₈, ⅟16.
std::optional<FigureReader::Part> FigureReader::fraction_at(std::size_t at) {
  const Character c = peek(text_, at);
  if (const auto value = vulgar_fraction(c.code)) return Part{*value, c.end, false, false};
  if (c.code == 0x215F) {
    auto denominator = digits_at(text_, c.end);
    if (!denominator) denominator = small_digits_at(text_, c.end);
    if (!denominator) return std::nullopt;
    if (denominator->value == 0) return fail(Fault::zero_denominator, at, denominator->end);
    if (denominator->value > most_in_fraction) return fail(Fault::long_fraction, at, denominator->end);
    return Part{{1, denominator->value}, denominator->end, false, false};
  }
  auto numerator = digits_at(text_, at);
  if (!numerator) numerator = small_digits_at(text_, at);
  if (!numerator) return std::nullopt;
  return slashed(*numerator);
}

// The fraction of a mixed number behind its whole one: 2⅜, 2 3/8, 2-3/8, 2 - 3/8.
std::optional<FigureReader::Part> FigureReader::beside(std::size_t at) {
  const std::size_t after_space = skip_space(text_, at);
  const Character c = peek(text_, after_space);
  if (is_hyphen(c.code)) {
    const std::size_t after_dash = skip_space(text_, c.end);
    // "2 -3/8": a minus sign, or what a question excludes.
    if ((after_space == at) != (after_dash == c.end)) return std::nullopt;
    return fraction_at(after_dash);
  }
  // "23/8" was read as a fraction before this; "2" and "3/8" need a gap, fraction characters none.
  if (after_space == at && digit_value(c.code) >= 0) return std::nullopt;
  auto part = fraction_at(after_space);
  // 2 3/8/2026: the 2 stands alone.
  if (trouble && trouble->fault == Fault::looks_like_date && after_space > at) trouble.reset();
  return part;
}

bool FigureReader::add(Figure& figure, const Part& part) {
  if (part.fraction.numerator >= part.fraction.denominator) {
    fail(Fault::improper, figure.begin, part.end,
         figure.whole < most_counted ? mixed(figure.whole, part.fraction) : std::string());
    return false;
  }
  figure.fraction = part.fraction;
  figure.has_fraction = true;
  figure.end = part.end;
  return true;
}

bool FigureReader::mix(Figure& figure, bool join_and) {
  if (!figure.in_words) {
    if (const auto part = beside(figure.end)) return add(figure, *part);
    if (trouble && trouble->fault == Fault::odd_fraction) {
      trouble->begin = figure.begin;
      if (!trouble->instead.empty()) trouble->instead = std::to_string(figure.whole) + "-" + trouble->instead;
    }
    if (trouble) return false;
  }
  if (!join_and) return true;
  add_and_fraction(figure, figure.end);
  return !trouble;
}

std::optional<std::size_t> FigureReader::and_at(std::size_t at) const {
  const std::size_t begin = next_word(text_, at);
  if (const Character c = peek(text_, begin); c.code == U'&') return skip_space(text_, c.end);
  const Word word = word_at(text_, begin);
  if (word.view() != "and" || begin == at) return std::nullopt;
  return next_word(text_, word.end);
}

bool FigureReader::add_and_fraction(Figure& figure, std::size_t at) {
  if (!figure.plain()) return false;
  const auto begin = and_at(at);
  if (!begin) return false;
  const char32_t code = peek(text_, *begin).code;
  const auto part = code < 0x80 && is_letter(code) ? spoken_fraction(*begin) : fraction_at(*begin);
  if (trouble && trouble->fault == Fault::looks_like_date) trouble.reset();
  if (!part || part->rank) return false;
  return add(figure, *part);
}

// "three eighths", "a quarter", "half". A lone word other than half and quarter may be a rank ("third
// largest"), and "two quarter inch strips" are two strips: in the singular the fraction must be in its lowest
// terms.
std::optional<FigureReader::Part> FigureReader::spoken_fraction(std::size_t at) {
  if (const auto lone = part_at(text_, at)) {
    if (lone->plural) return std::nullopt;
    return Part{{1, lone->denominator}, lone->end, true, !lone->everyday};
  }
  const Word article = word_at(text_, at);
  auto count = cardinal_at(text_, at);
  if (!count && is_article(article.view())) count = Cardinal{1, article.end};
  if (!count) return std::nullopt;
  const std::size_t next = next_word(text_, count->end);
  const auto part = part_at(text_, next);
  if (!part || next == count->end || count->value > most_in_fraction) return std::nullopt;
  if (part->plural) return Part{{count->value, part->denominator}, part->end, false, false};
  if (count->value >= part->denominator || std::gcd(count->value, part->denominator) != 1)
    return std::nullopt;
  return Part{{count->value, part->denominator}, part->end, true, false};
}

void FigureReader::read_spoken_decimals(Figure& figure) {
  const Word point = word_at(text_, next_word(text_, figure.end));
  if (point.view() != "point") return;
  Fraction fraction{0, 1};
  std::size_t end = point.end;
  while (fraction.denominator < most_in_fraction) {
    const Word word = word_at(text_, next_word(text_, end));
    const auto* digit = find_word(small_numbers, word.view());
    if (digit == nullptr || digit->value > 9) break;
    fraction = {fraction.numerator * 10 + digit->value, fraction.denominator * 10};
    end = word.end;
  }
  if (fraction.denominator == 1) return;
  figure.fraction = fraction;
  figure.has_fraction = true;
  figure.end = end;
}

std::optional<Figure> FigureReader::in_words(std::size_t at, bool join_and) {
  Figure figure;
  figure.begin = at;
  figure.in_words = true;
  if (const auto part = spoken_fraction(at)) {
    figure.fraction = part->fraction;
    figure.has_fraction = true;
    figure.needs_unit = part->needs_unit;
    figure.unit_decides = part->rank;
    figure.end = part->end;
    return figure;
  }
  if (const auto count = cardinal_at(text_, at)) {
    figure.whole = count->value;
    figure.end = count->end;
    read_spoken_decimals(figure);
    if (figure.plain() && !mix(figure, join_and)) return std::nullopt;
    return figure;
  }
  const Word word = word_at(text_, at);
  if (!is_article(word.view())) return std::nullopt;
  figure.whole = 1;
  figure.needs_unit = figure.unit_decides = true;
  figure.end = word.end;
  return figure;
}

std::optional<std::int64_t> figure_nm(std::string_view text, const Figure& figure, std::int64_t unit) {
  constexpr __int128 longest = 1'000'000'000'000;
  __int128 total = static_cast<__int128>(figure.whole) * unit;
  if (figure.has_fraction) {
    const __int128 d = figure.fraction.denominator;
    total += (static_cast<__int128>(figure.fraction.numerator) * unit + d / 2) / d;
  }
  // 0.d1 d2 … times the unit, from the last digit: the carry out of d1 is the whole part, and the digit left
  // in its place says which way to round. Exact for any number of digits.
  std::int64_t carry = 0, left = 0;
  for (std::size_t at = figure.tail_end; at > figure.tail_begin;) {
    std::size_t begin = at - 1;
    while (begin > figure.tail_begin && (static_cast<unsigned char>(text[begin]) & 0xC0) == 0x80) --begin;
    const std::int64_t product = digit_value(character_at(text, begin).code) * unit + carry;
    left = product % 10;
    carry = product / 10;
    at = begin;
  }
  total += carry + (left >= 5 ? 1 : 0);
  if (total > longest) return std::nullopt;
  return static_cast<std::int64_t>(total);
}

}  // namespace insetbook::measuring
