// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/write.h"

#include <array>
#include <numeric>
#include <string_view>

namespace insetbook {
namespace {

constexpr std::int64_t inch = 25'400'000;

std::string_view unit_name(Unit unit) {
  return unit == Unit::inch ? "in" : "mm";
}

std::string decimal(std::uint64_t whole, std::uint64_t part, int digits) {
  std::string tail = std::to_string(part);
  tail.insert(0, static_cast<std::size_t>(digits) - tail.size(), '0');
  while (!tail.empty() && tail.back() == '0') tail.pop_back();
  return tail.empty() ? std::to_string(whole) : std::to_string(whole) + "." + tail;
}

// numerator/denominator of an inch that reads as `rest`, below one inch; denominator 0: there is none.
struct Fraction {
  std::int64_t numerator = 0;
  std::int64_t denominator = 0;
};

Fraction fraction_of_inch(std::int64_t rest) {
  if (rest * 64 % inch == 0) {
    const std::int64_t n = rest * 64 / inch, common = std::gcd(n, std::int64_t{64});
    return {n / common, 64 / common};
  }
  for (const std::int64_t d : {3, 5, 6, 7, 9, 10, 12}) {
    const std::int64_t n = (rest * d + inch / 2) / inch;
    if (n > 0 && n < d && Length::inch_fraction(n, d).nm() == rest) return {n, d};
  }
  return {};
}

std::string decimal_inches(std::uint64_t whole, std::int64_t rest) {
  // Eight digits always read back: they are finer than half a nanometre.
  std::int64_t scale = 1;
  for (int digits = 1;; ++digits) {
    scale *= 10;
    const std::int64_t part = (rest * scale + inch / 2) / inch;
    if (digits == 8 || (part < scale && Length::inch_fraction(part, scale).nm() == rest))
      return decimal(whole, static_cast<std::uint64_t>(part), digits);
  }
}

std::string inches(std::uint64_t nm) {
  const std::uint64_t whole = nm / inch;
  const auto rest = static_cast<std::int64_t>(nm % inch);
  if (rest == 0) return std::to_string(whole);
  const Fraction fraction = fraction_of_inch(rest);
  if (fraction.denominator == 0) return decimal_inches(whole, rest);
  const std::string written = std::to_string(fraction.numerator) + "/" + std::to_string(fraction.denominator);
  return whole == 0 ? written : std::to_string(whole) + "-" + written;
}

std::string with_unit(std::string figure, Unit unit) {
  figure += ' ';
  figure += unit_name(unit);
  return figure;
}

}  // namespace

std::string write_figure(Length length, Unit unit) {
  const bool below_zero = length.nm() < 0;
  const std::uint64_t nm =
      below_zero ? 0 - static_cast<std::uint64_t>(length.nm()) : static_cast<std::uint64_t>(length.nm());
  std::string figure = unit == Unit::inch ? inches(nm) : decimal(nm / 1'000'000, nm % 1'000'000, 6);
  return below_zero ? "-" + figure : figure;
}

std::string write(Length length, Unit unit) {
  return with_unit(write_figure(length, unit), unit);
}

std::string write_size(Length width, Length height, Unit unit) {
  return with_unit(write_figure(width, unit) + " x " + write_figure(height, unit), unit);
}

std::string write(const Size& size, Unit unit) {
  return size.one_figure ? write(size.width, unit) : write_size(size.width, size.height, unit);
}

std::string write(const Range& range, Unit unit) {
  return with_unit(write_figure(range.low, unit) + " to " + write_figure(range.high, unit), unit);
}

std::string write(const Size& size) {
  return write(size, size.unit);
}
std::string write(const Range& range) {
  return write(range, range.unit);
}

std::string write(const Measurement& measurement, Unit unit) {
  if (const auto* size = std::get_if<Size>(&measurement)) return write(*size, unit);
  if (const auto* range = std::get_if<Range>(&measurement)) return write(*range, unit);
  return write(std::get<ReadLength>(measurement).length, unit);
}

std::string write(const Measurement& measurement) {
  return write(measurement, std::visit([](const auto& value) { return value.unit; }, measurement));
}

std::string write_said(const Size& size) {
  std::string out;
  if (size.one_figure || (size.shape == "square" && size.width == size.height)) {
    out = write(size.width, size.unit);
  } else if (size.orientation == Orientation::said) {
    out = "W " + write_figure(size.width, size.unit) + " x H " + write(size.height, size.unit);
  } else {
    out = write(size);
  }
  if (!size.shape.empty()) return out + " " + size.shape;
  return out;
}

std::string write_at_most(Length length, Length mark, Unit unit) {
  return write(round_down(length, mark), unit);
}

}  // namespace insetbook
