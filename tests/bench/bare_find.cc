// SPDX-License-Identifier: GPL-3.0-or-later
//
// One question of the mix as a whole program of bare calls.
//   bare_find BOOK NUMBER    prints the titles
//   bare_find                prints the questions, a line each
#include <cstdio>
#include <cstdlib>

#include "bare.h"

int main(int argc, char** argv) {
  const auto questions = bare_questions();
  if (argc == 1) {
    for (const BareQuestion& each : questions) std::printf("%s\n", each.text.c_str());
    return 0;
  }
  const std::size_t number = argc == 3 ? std::strtoul(argv[2], nullptr, 10) : 0;
  if (number < 1 || number > questions.size()) {
    std::fprintf(stderr, "usage: bare_find [BOOK NUMBER]\n");
    return 2;
  }
  Bare bare(argv[1]);
  const BareAnswer answer = bare.ask(questions[number - 1]);
  std::printf("%zu\n", answer.total);
  for (const BareHit& hit : answer.hits) std::printf("%s  %s\n", hit.made.c_str(), hit.title.c_str());
  return 0;
}
