// SPDX-License-Identifier: GPL-3.0-or-later
//
//   index build BOOK         builds the index of a book anew
//   index dump BOOK TEXTS    writes the texts that it is built from, for bare_index.cc
#include "search/index.h"

#include <cstdio>
#include <fstream>
#include <string>

#include "search/sample_text.h"

namespace {

using namespace insetbook;

std::string one_line(std::string_view text) {
  std::string line(text);
  for (char& c : line) {
    if (c == '\n' || c == '\r') c = ' ';
  }
  return line;
}

void dump(const Book& book, const char* path) {
  std::ofstream out(path);
  Statement samples = book.database().prepare("SELECT id, made, key FROM sample ORDER BY id");
  while (samples.step()) {
    out << samples.integer(0) << '\t' << samples.text(1) << samples.text(2) << '\n';
    for (const TextField& field : text_of_sample(book, samples.integer(0)))
      out << one_line(field.text) << '\n';
    out << '\n';
  }
}

}  // namespace

int main(int argc, char** argv) {
  const std::string_view what = argc > 1 ? argv[1] : "";
  if (!(what == "build" && argc == 3) && !(what == "dump" && argc == 4)) {
    std::fprintf(stderr, "usage: index build BOOK | index dump BOOK TEXTS\n");
    return 2;
  }
  const Result<Book> book = Book::open(argv[2], Book::Use::read);
  if (!book) {
    std::fprintf(stderr, "%s\n", book.error().what.c_str());
    return 2;
  }
  if (what == "dump") {
    dump(*book, argv[3]);
    return 0;
  }
  if (const Result<void> built = Index(argv[2]).rebuild(*book); !built) {
    std::fprintf(stderr, "%s\n", built.error().what.c_str());
    return 2;
  }
  return 0;
}
