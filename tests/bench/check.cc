// SPDX-License-Identifier: GPL-3.0-or-later
//
// The card check of a card of 40 pieces beside loading it, medians, warm, in one process.
//   bench_check BOOK     the book is made new there
#include "answers/check.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "book/records.h"

namespace {

using namespace insetbook;

constexpr int pieces = 40, turns = 101;

Result<void> make_card(Change& change) {
  SampleRow sample;
  sample.title = "forty pieces";
  sample.made = "2026-01-01";
  sample.base = {Length::inch_fraction(17, 2), Length::inch_fraction(11, 2), Unit::inch, true,
                 "8-1/2 x 5-1/2 in"};
  sample.scores = "2-1/8; 4-1/4";
  sample.envelope = "4-3/8 x 5-3/4 in";
  sample.mentions = {{"fold", "z fold", {}, {}, "Z fold"}};
  const auto put = put_sample(change, sample);
  if (!put) return failure(put.error());
  std::optional<std::int64_t> under;
  for (int i = 0; i < pieces; ++i) {
    ElementRow row;
    row.sample_id = put->second;
    row.name = "piece " + std::to_string(i);
    row.role = i == 0 ? "base" : i % 4 == 0 ? "mat" : "die cut";
    row.shape = i % 3 == 0 ? "circle" : "rectangle";
    const Length side = Length::inch_fraction(8 + i % 20, 16);
    row.size = {side, side * 2, Unit::inch, true, ""};
    row.goes = i % 4 == 0 ? "on inside right" : "on it";
    row.goes_how = "on";
    if (i % 4 != 0) row.goes_to = under;
    row.at = i % 5 == 0 ? "high of centre" : "1/4 in from the left";
    row.glue = i % 2 == 0 ? "left 1 in" : "foam";
    const auto element = put_element(change, row);
    if (!element) return failure(element.error());
    if (i > 0) under = element->second;
  }
  return {};
}

template <class Work>
double median_us(const Work& work) {
  std::vector<double> times;
  for (int turn = 0; turn < turns; ++turn) {
    const auto start = std::chrono::steady_clock::now();
    work();
    times.push_back(
        std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count());
  }
  std::nth_element(times.begin(), times.begin() + turns / 2, times.end());
  return times[turns / 2];
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  std::filesystem::remove_all(argv[1]);
  Result<Book> book = Book::create(argv[1]);
  if (!book || !book->change("a card of 40 pieces", make_card)) return 1;
  const auto id = sample_titled(*book, "forty pieces");
  std::size_t loaded = 0, checked = 0;
  const double loading =
      median_us([&] { loaded = sample(*book, *id)->mentions.size() + elements_of(*book, *id).size(); });
  const double checking = median_us([&] { checked = check(*book, "forty pieces")->checked.seats.size(); });
  if (loaded != pieces + 1 || checked != pieces) return 1;
  std::printf("%.0f %.0f %.2f\n", checking, loading, checking / loading);
  return 0;
}
