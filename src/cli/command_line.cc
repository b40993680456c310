// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_line.h"

#include <fmt/format.h>
#include <getopt.h>

#include <algorithm>

#include "text/utf8.h"

namespace insetbook::cli {
namespace {

constexpr int first_option = 1000;  // above every character that getopt can return

Problem unknown_command(std::string_view name) {
  Problem problem{.what = fmt::format("there is no command \"{}\"", name),
                  .expected = "insetbook --help lists the commands",
                  .candidates = commands_like(name)};
  return problem;
}

Problem unknown_option(const Command* command, std::string_view word,
                       const std::vector<const Option*>& known) {
  Problem problem{.what = fmt::format("there is no option \"{}\"{}", word,
                                      command ? fmt::format(" of {}", command->name) : std::string())};
  if (word.size() > 1 && word[1] != '-') {
    problem.expected = "a word that starts with - inside a question goes after --";
    return problem;
  }
  std::string name(word.substr(std::min<std::size_t>(2, word.size())));
  name = name.substr(0, name.find('='));
  for (const Option* option : known)
    if (edit_distance(name, option->name, 2) <= 2)
      problem.candidates.push_back(fmt::format("--{}", option->name));
  problem.expected = command ? fmt::format("insetbook {} --help lists its options", command->name)
                             : "insetbook --help lists them";
  return problem;
}

Problem value_missing(const Option& option) {
  return {.what = fmt::format("--{} needs a value", option.name),
          .expected = fmt::format("--{} {}", option.name, option.value)};
}

Problem value_not_wanted(const Option& option) {
  return {.what = fmt::format("--{} takes no value", option.name),
          .expected = fmt::format("--{}", option.name)};
}

// Where the command's name stands in argv: the first word that is no option and no option's value. 0:
// nowhere.
int command_position(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    const std::string_view word = argv[i];
    if (word == "--") return i + 1 < argc ? i + 1 : 0;
    if (word == "--book") {
      ++i;
    } else if (word.size() < 2 || word[0] != '-') {
      return i;
    }
  }
  return 0;
}

std::vector<const Option*> known_options(const Command* command) {
  std::vector<const Option*> known;
  for (const Option& option : options_of_every_command()) known.push_back(&option);
  if (command)
    for (const Option& option : command->options) known.push_back(&option);
  return known;
}

std::vector<option> for_getopt(const std::vector<const Option*>& known) {
  std::vector<option> list;
  for (std::size_t i = 0; i < known.size(); ++i)
    list.push_back({known[i]->name.data(), known[i]->value.empty() ? no_argument : required_argument, nullptr,
                    first_option + static_cast<int>(i)});
  list.push_back({nullptr, 0, nullptr, 0});
  return list;
}

void take(Invocation& invocation, const Option& option, const char* value) {
  if (option.name == "book") {
    invocation.book = value;
  } else if (option.name == "json") {
    invocation.json = true;
  } else if (option.name == "help") {
    invocation.help = true;
  } else if (option.name == "version") {
    invocation.version = true;
  } else {
    invocation.options.push_back({option.name, value ? value : ""});
  }
}

// What getopt complains of: an option that takes no value, one that wants one, or one that there is not.
Problem complaint(int found, int number, const std::string& word, const Command* command,
                  const std::vector<const Option*>& known) {
  if (found == ':') return value_missing(*known[static_cast<std::size_t>(number - first_option)]);
  if (number >= first_option)
    return value_not_wanted(*known[static_cast<std::size_t>(number - first_option)]);
  return unknown_option(command, word, known);
}

// The word that getopt stopped at: one whose letters it has not all read ("-white"), else the one before.
std::string refused_word(const std::vector<char*>& rest) {
  const auto next = static_cast<std::size_t>(optind);
  const char* word = rest[next];
  const bool unfinished =
      optopt > 0 && optopt < 256 && word && word[0] == '-' && word[1] == optopt && word[2] != '\0';
  return unfinished ? word : rest[next - 1];
}

}  // namespace

Result<Invocation> read_command_line(int argc, char** argv) {
  Invocation invocation;
  const int position = command_position(argc, argv);
  if (position > 0) {
    invocation.command = find_command(argv[position]);
    if (!invocation.command) return failure(unknown_command(argv[position]));
  }
  if (invocation.command && !invocation.command->run) {
    // Its options are not there yet either; only what the answer needs is looked for.
    for (int i = 1; i < argc; ++i) {
      invocation.json = invocation.json || std::string_view(argv[i]) == "--json";
      invocation.help = invocation.help || std::string_view(argv[i]) == "--help";
    }
    return invocation;
  }
  std::vector<char*> rest;
  for (int i = 0; i < argc; ++i)
    if (i == 0 || i != position) rest.push_back(argv[i]);
  rest.push_back(nullptr);

  const std::vector<const Option*> known = known_options(invocation.command);
  const std::vector<option> list = for_getopt(known);
  optind = 0;  // start anew: tests read several command lines in one process
  opterr = 0;
  for (;;) {
    const int found = getopt_long(static_cast<int>(rest.size()) - 1, rest.data(), ":", list.data(), nullptr);
    if (found == -1) break;
    if (found == ':' || found == '?') {
      return failure(complaint(found, optopt, refused_word(rest), invocation.command, known));
    }
    take(invocation, *known[static_cast<std::size_t>(found - first_option)], optarg);
  }
  for (std::size_t i = static_cast<std::size_t>(optind); i + 1 < rest.size(); ++i)
    invocation.words.emplace_back(rest[i]);

  const Command* command = invocation.command;
  if (command && command->run && !invocation.help &&
      static_cast<int>(invocation.words.size()) < command->least_words)
    return failure({.what = fmt::format("{} needs {}", command->name, command->arguments),
                    .expected = fmt::format("for example: insetbook {}", command->example)});
  return invocation;
}

bool Invocation::has(std::string_view name) const {
  return std::any_of(options.begin(), options.end(), [&](const Given& given) { return given.name == name; });
}

std::string Invocation::value(std::string_view name) const {
  std::string last;
  for (const Given& given : options)
    if (given.name == name) last = given.value;
  return last;
}

std::vector<std::string> Invocation::values(std::string_view name) const {
  std::vector<std::string> all;
  for (const Given& given : options)
    if (given.name == name) all.push_back(given.value);
  return all;
}

std::string Invocation::text() const {
  std::string joined;
  for (const std::string& word : words) {
    if (!joined.empty()) joined += ' ';
    joined += word;
  }
  return joined;
}

}  // namespace insetbook::cli
