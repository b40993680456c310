// SPDX-License-Identifier: GPL-3.0-or-later
//
// A length: a whole number of nanometres, at most 1 km either way. Start here: every other file rests on it.
// 1 in = 25 400 000 nm exactly (the international inch of 25.4 mm), so every 64th and every fifth of an inch
// is whole. Nothing that is stored or compared is a floating-point number. A length does not convert from or
// to a bare number: `Length::nm(n)` and `.nm()` say the unit where the border is crossed.
#pragma once

#include <compare>
#include <cstdint>

namespace insetbook {

class Length {
 public:
  constexpr Length() = default;
  static constexpr Length nm(std::int64_t n) { return Length(n); }
  static constexpr Length mm(std::int64_t n) { return Length(n * 1'000'000); }
  static constexpr Length inches(std::int64_t whole) { return Length(whole * 25'400'000); }
  // numerator/denominator of an inch, rounded to the nearest nanometre (half away from zero). denominator >
  // 0.
  static constexpr Length inch_fraction(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t product = numerator * 25'400'000;
    const std::int64_t half = denominator / 2;
    return Length(product >= 0 ? (product + half) / denominator : -((-product + half) / denominator));
  }

  constexpr std::int64_t nm() const { return nm_; }

  constexpr auto operator<=>(const Length&) const = default;
  constexpr Length operator-() const { return Length(-nm_); }
  constexpr Length& operator+=(Length b) {
    nm_ += b.nm_;
    return *this;
  }
  constexpr Length& operator-=(Length b) {
    nm_ -= b.nm_;
    return *this;
  }
  friend constexpr Length operator+(Length a, Length b) { return Length(a.nm_ + b.nm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.nm_ - b.nm_); }
  friend constexpr Length operator*(Length a, std::int64_t n) { return Length(a.nm_ * n); }
  friend constexpr Length operator*(std::int64_t n, Length a) { return Length(a.nm_ * n); }
  // Division rounds towards zero.
  friend constexpr Length operator/(Length a, std::int64_t n) { return Length(a.nm_ / n); }
  // How many whole times `b` goes into `a`, towards zero.
  friend constexpr std::int64_t operator/(Length a, Length b) { return a.nm_ / b.nm_; }

 private:
  explicit constexpr Length(std::int64_t n) : nm_(n) {}
  std::int64_t nm_ = 0;
};

// The largest length that can be read or stored.
inline constexpr Length longest_length = Length::mm(1'000'000);

// The largest multiple of `step` that is not above `a` (towards minus infinity). step > 0.
constexpr Length round_down(Length a, Length step) {
  const std::int64_t rest = a.nm() % step.nm();
  return Length::nm(a.nm() - (rest < 0 ? rest + step.nm() : rest));
}

}  // namespace insetbook
