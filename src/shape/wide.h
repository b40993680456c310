// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whole numbers of a fixed width of N times 64 bits, with a sign, for products that leave 128 bits. Every
// operation is exact: a product is as wide as its factors together, and a sum that would leave its width is a
// programming mistake (an assertion). Nothing here rounds except `root`, which says so.
#pragma once

#include <array>
#include <cassert>
#include <cstddef>
#include <cstdint>

namespace insetbook {

__extension__ typedef __int128 Int128;
__extension__ typedef unsigned __int128 UInt128;

template <std::size_t N>
struct Wide {
  std::array<std::uint64_t, N> limb{};  // the magnitude, least first
  bool negative = false;                // never set for zero

  constexpr Wide() = default;
  constexpr Wide(Int128 value) {  // NOLINT: a plain number is meant wherever one is written
    const UInt128 magnitude = value < 0 ? -static_cast<UInt128>(value) : static_cast<UInt128>(value);
    limb[0] = static_cast<std::uint64_t>(magnitude);
    if constexpr (N > 1) limb[1] = static_cast<std::uint64_t>(magnitude >> 64);
    if constexpr (N == 1) assert(magnitude >> 64 == 0);
    negative = value < 0;
  }

  template <std::size_t M>
  constexpr explicit Wide(const Wide<M>& other) : negative(other.negative) {
    for (std::size_t i = 0; i < M; ++i) {
      if (i < N) {
        limb[i] = other.limb[i];
      } else {
        assert(other.limb[i] == 0);
      }
    }
  }

  constexpr bool is_zero() const {
    for (const std::uint64_t part : limb) {
      if (part != 0) return false;
    }
    return true;
  }
  constexpr int sign() const { return is_zero() ? 0 : negative ? -1 : 1; }
};

namespace wide_detail {

template <std::size_t N>
constexpr int compare_magnitude(const Wide<N>& a, const Wide<N>& b) {
  for (std::size_t i = N; i-- > 0;) {
    if (a.limb[i] != b.limb[i]) return a.limb[i] < b.limb[i] ? -1 : 1;
  }
  return 0;
}

template <std::size_t N>
constexpr Wide<N> add_magnitude(const Wide<N>& a, const Wide<N>& b) {
  Wide<N> sum;
  UInt128 carry = 0;
  for (std::size_t i = 0; i < N; ++i) {
    carry += static_cast<UInt128>(a.limb[i]) + b.limb[i];
    sum.limb[i] = static_cast<std::uint64_t>(carry);
    carry >>= 64;
  }
  assert(carry == 0);
  return sum;
}

// The magnitude of a is at least that of b.
template <std::size_t N>
constexpr Wide<N> subtract_magnitude(const Wide<N>& a, const Wide<N>& b) {
  Wide<N> rest;
  std::uint64_t borrow = 0;
  for (std::size_t i = 0; i < N; ++i) {
    const UInt128 taken = static_cast<UInt128>(b.limb[i]) + borrow;
    borrow = taken > a.limb[i] ? 1 : 0;
    rest.limb[i] = static_cast<std::uint64_t>(a.limb[i] - taken);
  }
  return rest;
}

}  // namespace wide_detail

template <std::size_t N>
constexpr Wide<N> operator-(Wide<N> a) {
  a.negative = !a.negative && !a.is_zero();
  return a;
}

template <std::size_t N>
constexpr Wide<N> operator+(const Wide<N>& a, const Wide<N>& b) {
  if (a.negative == b.negative) {
    Wide<N> sum = wide_detail::add_magnitude(a, b);
    sum.negative = a.negative && !sum.is_zero();
    return sum;
  }
  const int order = wide_detail::compare_magnitude(a, b);
  if (order == 0) return {};
  Wide<N> rest = order > 0 ? wide_detail::subtract_magnitude(a, b) : wide_detail::subtract_magnitude(b, a);
  rest.negative = order > 0 ? a.negative : b.negative;
  return rest;
}

template <std::size_t N>
constexpr Wide<N> operator-(const Wide<N>& a, const Wide<N>& b) {
  return a + (-b);
}

template <std::size_t N, std::size_t M>
constexpr Wide<N + M> operator*(const Wide<N>& a, const Wide<M>& b) {
  Wide<N + M> product;
  for (std::size_t i = 0; i < N; ++i) {
    UInt128 carry = 0;
    for (std::size_t j = 0; j < M; ++j) {
      carry += static_cast<UInt128>(a.limb[i]) * b.limb[j] + product.limb[i + j];
      product.limb[i + j] = static_cast<std::uint64_t>(carry);
      carry >>= 64;
    }
    product.limb[i + M] = static_cast<std::uint64_t>(carry);
  }
  product.negative = a.negative != b.negative && !product.is_zero();
  return product;
}

template <std::size_t N, std::size_t M>
constexpr int compare(const Wide<N>& a, const Wide<M>& b) {
  if (a.negative != b.negative) return a.negative ? -1 : 1;
  constexpr std::size_t width = N > M ? N : M;
  const int order = wide_detail::compare_magnitude(Wide<width>(a), Wide<width>(b));
  return a.negative ? -order : order;
}

inline constexpr Wide<4> product(Int128 a, Int128 b) {
  return Wide<2>(a) * Wide<2>(b);
}

constexpr int sign_of(Int128 value) {
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}

// The one exact sign that every decision with a square root comes down to: the sign of a - √square, square ≥
// 0.
template <std::size_t N, std::size_t M>
constexpr int sign_minus_root(const Wide<N>& a, const Wide<M>& square) {
  if (a.sign() < 0) return -1;
  return compare(a * a, square);
}

// The sign of a - √first - √second. a ≥ √first + √second comes down to a² - first - second ≥ 2
// √(first·second).
template <std::size_t N, std::size_t M>
constexpr int sign_minus_roots(const Wide<N>& a, const Wide<M>& first, const Wide<M>& second) {
  if (a.sign() < 0) return -1;
  constexpr std::size_t width = (2 * N > M ? 2 * N : M) + 1;
  const Wide<width> rest = Wide<width>(a * a) - Wide<width>(first) - Wide<width>(second);
  return sign_minus_root(rest, first * second * Wide<1>(4));
}

// The whole part of √square (rounded down), and whether that is the root itself. square ≥ 0.
struct Root {
  UInt128 floor = 0;
  bool exact = false;
};
Root root(const Wide<4>& square);

}  // namespace insetbook
