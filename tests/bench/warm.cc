// SPDX-License-Identifier: GPL-3.0-or-later
//
// The mix of questions (mix.h) asked again and again in one process, ours and the bare calls in turn; both
// must find the same samples in the same order, and as many. A line for each kind: how many hits a question
// has, and what it takes. With the name of a kind, a line for each of its questions.
//   warm BOOK RUNS [KIND]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "answers/book_names.h"
#include "answers/words.h"
#include "bare.h"
#include "mix.h"
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

  void facets(bool wanted) { facets_ = wanted; }

  Result<Hits> ask(const std::string& text) {
    const ReadingContext context = reading_context(book_, vocabulary_, names_);
    const Result<Question> question = read_question(text, context);
    if (!question) return failure(question.error());
    SearchOptions options;
    options.limit = bare_limit;
    options.index = &index_;
    options.vocabulary = &vocabulary_;
    options.facets = facets_;
    return search(book_, *question, options);
  }

 private:
  const Book& book_;
  Vocabulary vocabulary_;
  BookNames names_;
  Index index_;
  bool facets_ = false;
};

bool same(const Hits& ours, const BareAnswer& bare) {
  return ours.total == bare.total &&
         std::equal(ours.hits.begin(), ours.hits.end(), bare.hits.begin(), bare.hits.end(),
                    [](const Hit& a, const BareHit& b) { return a.sample == b.id; });
}

void print_difference(const std::string& text, const Hits& ours, const BareAnswer& bare) {
  std::fprintf(stderr, "%s\n  ours %zu:", text.c_str(), ours.total);
  for (const Hit& hit : ours.hits) std::fprintf(stderr, " %lld", static_cast<long long>(hit.sample));
  std::fprintf(stderr, "\n  bare %zu:", bare.total);
  for (const BareHit& hit : bare.hits) std::fprintf(stderr, " %lld", static_cast<long long>(hit.id));
  std::fprintf(stderr, "\n");
}

struct Times {
  std::vector<double> ours, bare;
  double hits = 0;  // in all, of all questions
  std::size_t questions = 0;
  void add(const Times& more) {
    ours.insert(ours.end(), more.ours.begin(), more.ours.end());
    bare.insert(bare.end(), more.bare.begin(), more.bare.end());
    hits += more.hits;
    questions += more.questions;
  }
  void sort() {
    std::sort(ours.begin(), ours.end());
    std::sort(bare.begin(), bare.end());
  }
};

void print(const std::string& name, Times& times) {
  times.sort();
  const double ours = at(times.ours, 0.5), bare = at(times.bare, 0.5);
  const double ours_99 = at(times.ours, 0.99), bare_99 = at(times.bare, 0.99);
  std::printf("%-50s %9.0f %9.0f %9.0f %6.2f %9.0f %9.0f %6.2f\n", name.c_str(),
              times.hits / static_cast<double>(times.questions), ours, bare, ours / bare, ours_99, bare_99,
              ours_99 / bare_99);
  std::fflush(stdout);
}

// Where there are two ways into the tables the quicker one stands in for the bare calls.
BareQuestion quicker(Bare& bare, BareQuestion question) {
  if (question.other_hits.empty()) return question;
  BareQuestion other = question;
  other.hits = question.other_hits;
  other.total = question.other_total;
  const auto took = [&](const BareQuestion& each) {
    bare.ask(each);
    const auto start = Clock::now();
    bare.ask(each);
    return Clock::now() - start;
  };
  return took(other) < took(question) ? other : question;
}

class Bench {
 public:
  Bench(const Book& book, const char* folder, int runs) : asker_(book), bare_(folder), runs_(runs) {}

  bool all_same() const { return all_same_; }

  Times kind(const MixKind& kind) {
    asker_.facets(kind.facets);
    Times times;
    for (const BareQuestion& each : kind.questions) times.add(question(each));
    return times;
  }

  Times question(const BareQuestion& asked) {
    Times times;
    times.questions = 1;
    const BareQuestion bare_question = quicker(bare_, asked);
    const auto begin = Clock::now();
    for (int run = -1; run < runs_; ++run) {  // the first warms up
      const auto start = Clock::now();
      const Result<Hits> ours = asker_.ask(asked.text);
      const auto between = Clock::now();
      const bool enough = run > 2 && between - begin > std::chrono::seconds(2);  // of slow bare calls
      const BareAnswer theirs = enough ? BareAnswer() : bare_.ask(bare_question);
      const auto end = Clock::now();
      if (!ours) {
        std::fprintf(stderr, "%s: %s\n", asked.text.c_str(), ours.error().what.c_str());
        std::exit(2);
      }
      if (run >= 0) {
        times.ours.push_back(microseconds(between - start));
        if (!enough) times.bare.push_back(microseconds(end - between));
      } else if (!same(*ours, theirs)) {
        print_difference(asked.text, *ours, theirs);
        all_same_ = false;
      }
    }
    times.hits = static_cast<double>(bare_.count(asked));
    return times;
  }

 private:
  Asker asker_;
  Bare bare_;
  int runs_;
  bool all_same_ = true;
};

}  // namespace

int main(int argc, char** argv) {
  const int runs = argc >= 3 ? std::atoi(argv[2]) : 0;
  const std::string_view only = argc == 4 ? argv[3] : "";
  if (runs < 1) {
    std::fprintf(stderr, "usage: warm BOOK RUNS [KIND]\n");
    return 2;
  }
  const Result<Book> book = Book::open(argv[1], Book::Use::read);
  if (!book) {
    std::fprintf(stderr, "%s\n", book.error().what.c_str());
    return 2;
  }
  Bench bench(*book, argv[1], runs);
  std::printf("%-50s %9s %9s %9s %6s %9s %9s %6s\n", "kind (microseconds)", "hits", "median", "bare", "x",
              "99th", "bare", "x");
  Times mix;
  for (const MixKind& kind : question_mix()) {
    if (!only.empty() && only != kind.name) continue;
    if (only.empty()) {
      Times times = bench.kind(kind);
      print(kind.name, times);
      if (!kind.facets) mix.add(times);
      continue;
    }
    for (const BareQuestion& each : kind.questions) {
      Times times = bench.question(each);
      print("  " + each.text, times);
    }
  }
  if (only.empty()) print(std::to_string(mix.questions) + " questions without facets", mix);
  return bench.all_same() ? 0 : 1;
}
