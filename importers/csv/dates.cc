// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/dates.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <vector>

#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr std::string_view wanted = "a date like 2026-03-02";

tl::unexpected<Problem> no_date(std::string_view text, std::string_view why,
                                std::string_view expected = wanted) {
  return failure(bad_input(fmt::format("{} {}", in_quotes(text), why), std::string(expected)));
}

bool is_date(int year, int month, int day) {
  if (year < 1000 || year > 9999 || month < 1 || month > 12 || day < 1) return false;
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

std::string iso(int year, int month, int day) {
  return fmt::format("{:04}-{:02}-{:02}", year, month, day);
}

// "january" … and at least three letters of it; 0 = no month.
int month_word(std::string_view word) {
  constexpr std::array<std::string_view, 12> months = {"january",   "february", "march",    "april",
                                                       "may",       "june",     "july",     "august",
                                                       "september", "october",  "november", "december"};
  if (word == "sept") return 9;
  if (word.size() < 3) return 0;
  for (std::size_t i = 0; i < months.size(); ++i)
    if (months[i].starts_with(word)) return static_cast<int>(i) + 1;
  return 0;
}

struct Part {
  std::string text;
  int number = -1;  // -1: no number
  int month = 0;    // named by its word
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Runs of digits and of letters; "2nd" is 2.
std::vector<Part> parts_of(std::string_view text) {
  std::vector<Part> parts;
  const std::string folded = fold(text);
  for (std::size_t i = 0; i < folded.size();) {
    const bool digit = is_digit(folded[i]);
    const bool letter = folded[i] >= 'a' && folded[i] <= 'z';
    const std::size_t begin = i++;
    if (!digit && !letter) continue;
    while (i < folded.size() && (digit ? is_digit(folded[i]) : folded[i] >= 'a' && folded[i] <= 'z')) ++i;
    Part part{.text = folded.substr(begin, i - begin)};
    if (digit && part.text.size() <= 4) part.number = std::stoi(part.text);
    if (letter) part.month = month_word(part.text);
    const bool ending = part.text == "st" || part.text == "nd" || part.text == "rd" || part.text == "th";
    if (!(letter && ending && !parts.empty() && parts.back().number >= 0)) parts.push_back(std::move(part));
  }
  return parts;
}

Result<std::string> checked(std::string_view text, int year, int month, int day) {
  if (!is_date(year, month, day)) return no_date(text, "is no day of the calendar");
  return iso(year, month, day);
}

Result<std::string> from_two_ways(std::string_view text, int first, int second, int year, DateOrder order) {
  const bool day_first = is_date(year, second, first), month_first = is_date(year, first, second);
  if (order == DateOrder::day_month_year) {
    if (day_first) return iso(year, second, first);
    return no_date(text, "is no date when the day comes first, as --dates dmy says");
  }
  if (order == DateOrder::month_day_year) {
    if (month_first) return iso(year, first, second);
    return no_date(text, "is no date when the month comes first, as --dates mdy says");
  }
  if (day_first && month_first && first != second) {
    return no_date(text, "can be read two ways",
                   fmt::format("{} or {}; --dates dmy or --dates mdy says it for all",
                               iso(year, second, first), iso(year, first, second)));
  }
  if (day_first) return iso(year, second, first);
  if (month_first) return iso(year, first, second);
  return no_date(text, "is no day of the calendar");
}

// "2026-03-02T10:15:00", "2026-03-02 00:00": the time falls away.
bool is_iso(std::string_view text) {
  if (text.size() < 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U})
    if (!is_digit(text[i])) return false;
  return text.size() == 10 ||
         ((text[10] == 'T' || text[10] == ' ') && text.find(':') != std::string_view::npos);
}

}  // namespace

Result<std::string> read_date(std::string_view text, DateOrder order) {
  text = trim(text);
  if (text.empty()) return std::string();
  if (is_iso(text))
    return checked(text, std::stoi(std::string(text.substr(0, 4))), std::stoi(std::string(text.substr(5, 2))),
                   std::stoi(std::string(text.substr(8, 2))));
  const std::vector<Part> parts = parts_of(text);
  if (parts.size() != 3) return no_date(text, "is no whole date");
  const auto four = [](const Part& part) { return part.number >= 0 && part.text.size() == 4; };
  const auto short_number = [](const Part& part) { return part.number >= 0 && part.text.size() <= 2; };
  if (four(parts[0]) && short_number(parts[1]) && short_number(parts[2]))
    return checked(text, parts[0].number, parts[1].number, parts[2].number);
  if (!four(parts[2])) return no_date(text, "is no date with a year of four digits");
  if (short_number(parts[0]) && parts[1].month > 0)
    return checked(text, parts[2].number, parts[1].month, parts[0].number);
  if (parts[0].month > 0 && short_number(parts[1]))
    return checked(text, parts[2].number, parts[0].month, parts[1].number);
  if (short_number(parts[0]) && short_number(parts[1]))
    return from_two_ways(text, parts[0].number, parts[1].number, parts[2].number, order);
  return no_date(text, "is no date");
}

std::optional<std::string> incomplete_date(std::string_view text) {
  const std::vector<Part> parts = parts_of(trim(text));
  const auto year = [](const Part& part) { return part.text.size() == 4 && part.number >= 1000; };
  const auto month = [](const Part& part) {
    return part.month > 0 ? part.month : part.text.size() <= 2 && part.number <= 12 ? part.number : 0;
  };
  if (parts.size() == 1 && year(parts[0])) return fmt::format("{}-MM-DD", parts[0].number);
  if (parts.size() != 2 || year(parts[0]) == year(parts[1])) return std::nullopt;
  const Part &of_year = year(parts[0]) ? parts[0] : parts[1], &other = year(parts[0]) ? parts[1] : parts[0];
  if (month(other) < 1) return std::nullopt;
  return fmt::format("{}-{:02}-DD", of_year.number, month(other));
}

}  // namespace insetbook
