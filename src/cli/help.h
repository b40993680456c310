// SPDX-License-Identifier: GPL-3.0-or-later
//
// Everything that is written from the table of commands: `--help`, the man page and the shell completions.
// Nothing about a command is said anywhere else.
#pragma once

#include <string>

#include "cli/commands.h"

namespace insetbook::cli {

extern const char* const program_version;

std::string help_text();                        // `insetbook --help`
std::string help_text(const Command& command);  // `insetbook fits --help`
std::string man_page();                         // roff, section 1
std::string bash_completion();
std::string zsh_completion();
std::string fish_completion();

}  // namespace insetbook::cli
