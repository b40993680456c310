// SPDX-License-Identifier: GPL-3.0-or-later
//
// The mix of questions asked again and again in one process, ours and the bare calls in turn; both must find
// the same samples in the same order, and as many.
//   warm BOOK RUNS
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "answers/book_names.h"
#include "answers/words.h"
#include "bare.h"
#include "book/settings.h"
#include "language/read_question.h"
#include "search/search.h"

namespace {

using namespace insetbook;

// Processor time of this process: nothing here waits for a disk, and other programs on the machine do not
// count.
struct Clock {
  using duration = std::chrono::nanoseconds;
  using rep = duration::rep;
  using period = duration::period;
  using time_point = std::chrono::time_point<Clock>;
  static constexpr bool is_steady = true;
  static time_point now() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return time_point(std::chrono::seconds(time.tv_sec) + std::chrono::nanoseconds(time.tv_nsec));
  }
};

double microseconds(Clock::duration time) {
  return std::chrono::duration<double, std::micro>(time).count();
}

double at(std::vector<double>& sorted, double part) {
  return sorted[static_cast<std::size_t>(part * static_cast<double>(sorted.size() - 1) + 0.5)];
}

// What stays open between questions: the vocabulary, the index.
class Asker {
 public:
  explicit Asker(const Book& book)
      : book_(book), vocabulary_(vocabulary_of(book)), names_(book), index_(book.folder()) {}

  Result<Hits> ask(const char* text) {
    const ReadingContext context{vocabulary_, names_, settings(book_).unit, today(book_)};
    const Result<Question> question = read_question(text, context);
    if (!question) return failure(question.error());
    SearchOptions options;
    options.limit = bare_limit;
    options.index = &index_;
    options.vocabulary = &vocabulary_;
    return search(book_, *question, options);
  }

 private:
  const Book& book_;
  Vocabulary vocabulary_;
  BookNames names_;
  Index index_;
};

bool same(const Hits& ours, const BareAnswer& bare) {
  return ours.total == bare.total &&
         std::equal(ours.hits.begin(), ours.hits.end(), bare.hits.begin(), bare.hits.end(),
                    [](const Hit& a, const BareHit& b) { return a.sample == b.id; });
}

void print_difference(const char* text, const Hits& ours, const BareAnswer& bare) {
  std::fprintf(stderr, "%s\n  ours %zu:", text, ours.total);
  for (const Hit& hit : ours.hits) std::fprintf(stderr, " %lld", static_cast<long long>(hit.sample));
  std::fprintf(stderr, "\n  bare %zu:", bare.total);
  for (const BareHit& hit : bare.hits) std::fprintf(stderr, " %lld", static_cast<long long>(hit.id));
  std::fprintf(stderr, "\n");
}

struct Times {
  std::vector<double> ours, bare;
  void add(const Times& more) {
    ours.insert(ours.end(), more.ours.begin(), more.ours.end());
    bare.insert(bare.end(), more.bare.begin(), more.bare.end());
  }
  void sort() {
    std::sort(ours.begin(), ours.end());
    std::sort(bare.begin(), bare.end());
  }
};

void print(const char* name, std::size_t hits, Times& times) {
  times.sort();
  const double ours = at(times.ours, 0.5), bare = at(times.bare, 0.5);
  const double ours_99 = at(times.ours, 0.99), bare_99 = at(times.bare, 0.99);
  std::printf("%-55s %6zu %9.0f %9.0f %6.2f %9.0f %9.0f %6.2f\n", name, hits, ours, bare, ours / bare,
              ours_99, bare_99, ours_99 / bare_99);
}

}  // namespace

int main(int argc, char** argv) {
  const int runs = argc == 3 ? std::atoi(argv[2]) : 0;
  if (runs < 1) {
    std::fprintf(stderr, "usage: warm BOOK RUNS\n");
    return 2;
  }
  const Result<Book> book = Book::open(argv[1], Book::Use::read);
  if (!book) {
    std::fprintf(stderr, "%s\n", book.error().what.c_str());
    return 2;
  }
  Asker asker(*book);
  Bare bare(argv[1]);
  std::printf("%-55s %6s %9s %9s %6s %9s %9s %6s\n", "question (microseconds)", "hits", "median", "bare", "x",
              "99th", "bare", "x");
  bool all_same = true;
  Times mix;
  for (const BareQuestion& question : bare_questions()) {
    Times times;
    std::size_t found = 0;
    for (int run = -1; run < runs; ++run) {  // the first warms up
      const auto start = Clock::now();
      const Result<Hits> ours = asker.ask(question.text);
      const auto between = Clock::now();
      const BareAnswer theirs = bare.ask(question);
      const auto end = Clock::now();
      if (!ours) {
        std::fprintf(stderr, "%s: %s\n", question.text, ours.error().what.c_str());
        return 2;
      }
      if (run < 0) {
        found = theirs.total;
        if (same(*ours, theirs)) continue;
        print_difference(question.text, *ours, theirs);
        all_same = false;
        continue;
      }
      times.ours.push_back(microseconds(between - start));
      times.bare.push_back(microseconds(end - between));
    }
    mix.add(times);
    print(question.text, found, times);
  }
  print("all of the mix", bare_questions().size(), mix);
  return all_same ? 0 : 1;
}
