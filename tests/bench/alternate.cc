// SPDX-License-Identifier: GPL-3.0-or-later
//
// Runs two programs in turn, so that both meet the same machine, and prints what each took:
//   alternate RUNS PROGRAM WORD… -- OTHER WORD…
// prints: median milliseconds of the first, of the second, first / second, peak memory of the first in MB.
// What they print is dropped. An exit status that is not that of the first run ends it.
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

extern char** environ;

namespace {

struct Run {
  double ms = 0;
  double processor_ms = 0;
  long peak_kb = 0;
  int status = 0;
};

Run run(char* const* words) {
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  const auto start = std::chrono::steady_clock::now();
  pid_t child = 0;
  if (const int code = posix_spawnp(&child, words[0], &actions, nullptr, words, environ); code != 0) {
    std::fprintf(stderr, "%s: %s\n", words[0], std::strerror(code));
    std::exit(2);
  }
  Run done;
  rusage used{};
  wait4(child, &done.status, 0, &used);
  done.ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
  const auto ms = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
  };
  done.processor_ms = ms(used.ru_utime) + ms(used.ru_stime);
  done.peak_kb = used.ru_maxrss;
  posix_spawn_file_actions_destroy(&actions);
  return done;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

// One program, run again and again.
class Series {
 public:
  explicit Series(char* const* words) : words_(words) { first_ = run(words_); }
  void once() {
    const Run done = run(words_);
    if (done.status != first_.status) {
      std::fprintf(stderr, "%s ended with %d, before with %d\n", words_[0], done.status, first_.status);
      std::exit(2);
    }
    ms_.push_back(done.ms);
    processor_ms_.push_back(done.processor_ms);
    peak_kb_ = std::max(peak_kb_, done.peak_kb);
  }
  double ms() const { return median(ms_); }
  double processor_ms() const { return median(processor_ms_); }
  double peak_mb() const { return static_cast<double>(peak_kb_) / 1024; }
  int status() const { return first_.status; }
  const char* name() const { return words_[0]; }

 private:
  char* const* words_;
  Run first_;  // warms the caches; not counted
  std::vector<double> ms_, processor_ms_;
  long peak_kb_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
  char** const end = argv + argc;
  char** const parting =
      std::find_if(argv, end, [](const char* word) { return std::strcmp(word, "--") == 0; });
  const int runs = argc > 1 ? std::atoi(argv[1]) : 0;
  if (runs < 1 || parting - argv < 3 || end - parting < 2) {
    std::fprintf(stderr, "usage: alternate RUNS PROGRAM WORD… -- OTHER WORD…\n");
    return 2;
  }
  *parting = nullptr;
  Series first(argv + 2), second(parting + 1);
  for (const Series* each : {&first, &second}) {
    if (each->status() == 0) continue;
    std::fprintf(stderr, "%s ended with %d\n", each->name(), each->status());
    return 2;
  }
  for (int i = 0; i < runs; ++i) {
    first.once();
    second.once();
  }
  std::printf("%.2f %.2f %.2f %.2f %.1f\n", first.ms(), second.ms(), first.ms() / second.ms(),
              first.processor_ms() / second.processor_ms(), first.peak_mb());
  return 0;
}
