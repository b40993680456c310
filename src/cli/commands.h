// SPDX-License-Identifier: GPL-3.0-or-later
//
// The table of commands: the one place where a command's name, arguments, options, help and example stand.
// Parsing,
// `--help`, the man page and the shell completions read it; the tests run every example. A command whose
// `run` is null is known but not there yet, and says so.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cli/output.h"

namespace insetbook::cli {

struct Option {
  std::string_view name;   // without the dashes: "border"
  std::string_view value;  // what follows it: "LENGTH"; empty: it takes nothing
  std::string_view help;   // one line
};

// One command as the person called it.
struct Invocation;

struct Command {
  std::string_view name;
  std::string_view arguments;  // "OPENING…"
  std::string_view help;       // one line
  std::string_view about;      // a few lines more, or empty
  std::string_view example;    // after the program's name: `fits "second largest tidepool rectangle"`
  std::span<const Option> options;
  int least_words = 0;                               // how many arguments it needs
  int (*run)(const Invocation&, Output&) = nullptr;  // returns the exit status
};

std::span<const Command> commands();
std::span<const Option> options_of_every_command();  // --book, --json, --help
const Command* find_command(std::string_view name);
// The commands whose names are nearest to a mistyped one.
std::vector<std::string> commands_like(std::string_view name);

struct Given {
  std::string_view name;
  std::string value;
};

struct Invocation {
  const Command* command = nullptr;
  std::vector<std::string> words;  // the arguments, in order
  std::vector<Given> options;      // in order; an option may come several times
  std::string book;                // --book, or empty
  bool json = false;
  bool help = false;
  bool version = false;

  bool has(std::string_view name) const;
  // The last value given, or empty.
  std::string value(std::string_view name) const;
  std::vector<std::string> values(std::string_view name) const;
  // The words joined by spaces: how a question or a name is said.
  std::string text() const;
};

}  // namespace insetbook::cli
