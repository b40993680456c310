// SPDX-License-Identifier: GPL-3.0-or-later
//
// The one error type for what a person can mend: what was wrong, where, and what would be right.
// Every function that reads something a person wrote, or that can be refused by the book, returns Result<T>.
// A Problem is complete in itself: the command line and the page print it without adding words.
// Wording lives in named functions beside the code that finds the mistake, so that the same mistake reads the
// same everywhere. Programming mistakes are assertions, never Problems.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace insetbook {

// What went wrong, as far as the exit status of a command needs to know it.
enum class ProblemKind {
  bad_input,      // a text, a figure or an option that cannot be read or cannot be            (exit 2)
  unknown_name,   // nothing of that name is in the book                                       (exit 2)
  ambiguous,      // several records answer to the name; Problem::candidates lists them        (exit 2)
  refused,        // the book would lose something, or later changes rest on it                (exit 2)
  unusable_book,  // the folder, the file or its version cannot be used                        (exit 3)
};

// Where it went wrong. Only what is known is set.
struct Place {
  std::string file;               // as the person named it
  int row = 0;                    // 1 = the first row of the file (the header row), 0 = not a row
  std::string column;             // the header of the cell
  std::string text;               // the text that could not be read, whole
  std::optional<std::size_t> at;  // in `text`, counted in characters (code points) from 0
  std::size_t length = 0;         // how many characters are meant, 0 = only the point

  bool operator==(const Place&) const = default;
};

struct Problem {
  ProblemKind kind = ProblemKind::bad_input;
  std::string what;  // one sentence without a full stop; quotes the text it is about
  Place where;
  std::string expected;  // what would be right, or what to do; may be empty
  std::vector<std::string>
      candidates;  // names that would be accepted in place of an ambiguous or unknown one

  bool operator==(const Problem&) const = default;
};

template <class T>
using Result = tl::expected<T, Problem>;

inline tl::unexpected<Problem> failure(Problem problem) {
  return tl::unexpected<Problem>(std::move(problem));
}

}  // namespace insetbook
