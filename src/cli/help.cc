// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/help.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/run.h"
#include "language/fields.h"

namespace insetbook::cli {
namespace {

// Said once, in the overall help and in the man page.
constexpr std::string_view job =
    "An offline reference book of dies, openings, insets and finished samples of handmade paper cards. It "
    "finds past "
    "samples by size, shape, fold, technique and colour, and works out which panel fits inside a die's line.";
constexpr std::string_view status_lines[] = {
    "0  answered",
    "1  nothing found (find, frames), a conflict not settled (measure), nothing to do (undo)",
    "2  usage, bad input, an unknown or ambiguous name",
    "3  the book cannot be used",
};

std::string folded(std::string_view text, std::size_t width, std::string_view indent) {
  std::string out;
  std::string line(indent);
  std::size_t begin = 0;
  while (begin < text.size()) {
    std::size_t end = text.find(' ', begin);
    if (end == std::string_view::npos) end = text.size();
    const std::string_view word = text.substr(begin, end - begin);
    if (line.size() > indent.size() && line.size() + 1 + word.size() > width) {
      out += line + '\n';
      line = indent;
    }
    if (line.size() > indent.size()) line += ' ';
    line += word;
    begin = end + 1;
  }
  return out + line + '\n';
}

std::string usage(const Command& command) {
  std::string text = fmt::format("insetbook {}", command.name);
  if (!command.arguments.empty()) text += fmt::format(" {}", command.arguments);
  if (!command.options.empty()) text += " [OPTION…]";
  return text;
}

std::string shown(const Option& option) {
  return option.value.empty() ? fmt::format("--{}", option.name)
                              : fmt::format("--{} {}", option.name, option.value);
}

std::string option_lines(std::span<const Option> options) {
  std::size_t width = 0;
  for (const Option& option : options) width = std::max(width, shown(option).size());
  std::string text;
  for (const Option& option : options)
    text += fmt::format("  {:<{}}  {}\n", shown(option), width, option.help);
  return text;
}

// roff: a backslash, a leading dot and a hyphen mean something.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
  }
  if (!out.empty() && (out[0] == '.' || out[0] == '\'')) out.insert(0, "\\&");
  return out;
}

// In single quotes of a shell.
std::string in_single_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

// Whether the command's words are a question, which may be written in fields.
bool reads_fields(const Command& command) {
  return command.run == run_find;
}

std::string names_of(std::span<const Option> options) {
  std::string text;
  for (const Option& option : options) text += fmt::format("{}--{}", text.empty() ? "" : " ", option.name);
  return text;
}

}  // namespace

const char* const program_version = INSETBOOK_VERSION;

std::string help_text() {
  std::string text = folded(job, 78, "") + "\nUsage: insetbook COMMAND …\n\nCommands:\n";
  for (const Command& command : commands())
    text += fmt::format("  {:<9} {}{}\n", command.name, command.help, command.run ? "" : " (not there yet)");
  text += "\nWith every command:\n" + option_lines(options_of_every_command());
  text += "\nExit status:\n";
  for (const std::string_view line : status_lines) text += fmt::format("  {}\n", line);
  text += "\nFor example: insetbook fits second largest tidepool rectangle\n";
  text += "insetbook COMMAND --help says more of one command.\n";
  return text;
}

std::string help_text(const Command& command) {
  std::string text =
      fmt::format("insetbook {}: {}\n\nUsage: {}\n", command.name, command.help, usage(command));
  if (!command.run) text += "\nThis command is not there yet.\n";
  if (!command.about.empty()) text += "\n" + folded(command.about, 78, "");
  if (!command.options.empty()) text += "\nOptions:\n" + option_lines(command.options);
  if (reads_fields(command)) {
    text += "\nFields that say outright what is meant (a minus sign before one excludes):\n";
    for (const Field& field : fields)
      text += fmt::format("  {:<10} {}; {}\n", fmt::format("{}:", field.name), field.help, field.example);
  }
  text += "\nWith every command:\n" + option_lines(options_of_every_command());
  text += fmt::format("\nFor example: insetbook {}\n", command.example);
  return text;
}

std::string man_page() {
  std::string text =
      ".\\\" SPDX-License-Identifier: GPL-3.0-or-later\n.\\\" Written from the table of commands "
      "(src/cli/commands.cc).\n";
  text += fmt::format(
      ".TH INSETBOOK 1 \"\" \"insetbook {}\"\n.SH NAME\ninsetbook \\- a reference book of dies, openings, "
      "insets and samples\n",
      program_version);
  text += ".SH SYNOPSIS\n.B insetbook\n.I COMMAND\n…\n.SH DESCRIPTION\n" + roff(job) +
          "\n.SH OPTIONS OF EVERY COMMAND\n";
  for (const Option& option : options_of_every_command())
    text += fmt::format(".TP\n.B {}\n{}\n", roff(shown(option)), roff(option.help));
  text += ".SH COMMANDS\n";
  for (const Command& command : commands()) {
    text += fmt::format(".SS {}\n{}{}\n", roff(usage(command)), roff(command.help),
                        command.run ? "." : " (not there yet).");
    if (!command.about.empty()) text += ".PP\n" + roff(command.about) + "\n";
    for (const Option& option : command.options)
      text += fmt::format(".TP\n.B {}\n{}\n", roff(shown(option)), roff(option.help));
    if (reads_fields(command))
      for (const Field& field : fields)
        text += fmt::format(".TP\n.B {}:\n{}; {}\n", field.name, roff(field.help), roff(field.example));
    text += fmt::format(".PP\nFor example:\n.B insetbook {}\n", roff(command.example));
  }
  text += ".SH EXIT STATUS\n";
  for (const std::string_view line : status_lines)
    text += fmt::format(".TP\n.B {}\n{}\n", line.substr(0, 1), roff(line.substr(3)));
  text +=
      ".SH ENVIRONMENT\n.TP\n.B INSETBOOK\nthe book's folder, where \\-\\-book does not say\n.TP\n.B "
      "NO_COLOR\nno weights of type on the terminal\n";
  return text;
}

std::string bash_completion() {
  std::string names;
  std::string cases;
  for (const Command& command : commands()) {
    if (!command.run) continue;
    names += fmt::format("{}{}", names.empty() ? "" : " ", command.name);
    if (!command.options.empty())
      cases += fmt::format("    {}) options=\"$options {}\" ;;\n", command.name, names_of(command.options));
  }
  return fmt::format(
      "# SPDX-License-Identifier: GPL-3.0-or-later\n# Written from the table of commands "
      "(src/cli/commands.cc).\n"
      "_insetbook() {{\n  local word=${{COMP_WORDS[COMP_CWORD]}} command= i options=\"{}\"\n"
      "  for ((i = 1; i < COMP_CWORD; i++)); do\n    case ${{COMP_WORDS[i]}} in\n      --book) ((i++)) ;;\n  "
      "    -*) ;;\n"
      "      *) command=${{COMP_WORDS[i]}}; break ;;\n    esac\n  done\n"
      "  case $command in\n{}  esac\n"
      "  if [[ $word == -* ]]; then\n    COMPREPLY=($(compgen -W \"$options\" -- \"$word\"))\n"
      "  elif [[ -z $command ]]; then\n    COMPREPLY=($(compgen -W \"{}\" -- \"$word\"))\n  fi\n}}\n"
      "complete -o default -F _insetbook insetbook\n",
      names_of(options_of_every_command()), cases, names);
}

std::string zsh_completion() {
  std::string names;
  std::string cases;
  for (const Command& command : commands()) {
    if (!command.run) continue;
    names += fmt::format("    {}\n", in_single_quotes(fmt::format("{}:{}", command.name, command.help)));
    std::string options;
    for (const Option& option : command.options)
      options += fmt::format(" {}", in_single_quotes(fmt::format(
                                        "--{}[{}]{}", option.name, option.help,
                                        option.value.empty() ? "" : fmt::format(":{}:", option.value))));
    cases += fmt::format("    {}) _arguments{} '*:file:_files' ;;\n", command.name, options);
  }
  // Square brackets and colons in help texts would end the description.
  return fmt::format(
      "#compdef insetbook\n# SPDX-License-Identifier: GPL-3.0-or-later\n"
      "# Written from the table of commands (src/cli/commands.cc).\n_insetbook() {{\n  local -a names\n  "
      "names=(\n{}  )\n"
      "  if (( CURRENT == 2 )); then\n    _describe command names\n    return\n  fi\n  local "
      "command=$words[2]\n"
      "  shift words\n  (( CURRENT-- ))\n  case $command in\n{}  esac\n}}\n_insetbook \"$@\"\n",
      names, cases);
}

std::string fish_completion() {
  std::string text =
      "# SPDX-License-Identifier: GPL-3.0-or-later\n# Written from the table of commands "
      "(src/cli/commands.cc).\n";
  for (const Option& option : options_of_every_command())
    text += fmt::format("complete -c insetbook -l {}{} -d {}\n", option.name,
                        option.value.empty() ? "" : " -r", in_single_quotes(option.help));
  for (const Command& command : commands()) {
    if (!command.run) continue;
    text += fmt::format("complete -c insetbook -n __fish_use_subcommand -a {} -d {}\n", command.name,
                        in_single_quotes(command.help));
    for (const Option& option : command.options)
      text += fmt::format("complete -c insetbook -n '__fish_seen_subcommand_from {}' -l {}{} -d {}\n",
                          command.name, option.name, option.value.empty() ? "" : " -r",
                          in_single_quotes(option.help));
  }
  return text;
}

}  // namespace insetbook::cli
