// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads the command line by the table of commands. Options stand before or after the command's name; after
// `--` every word is an argument. The parsing itself is getopt_long's.
#pragma once

#include "cli/commands.h"
#include "text/problem.h"

namespace insetbook::cli {

// A Problem: no such command or option (with the nearest), a value missing, too few arguments.
Result<Invocation> read_command_line(int argc, char** argv);

}  // namespace insetbook::cli
