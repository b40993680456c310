// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cstdio>
#include <exception>

#include "book/sqlite.h"
#include "cli/command_line.h"
#include "cli/help.h"

namespace {

using namespace insetbook;
using namespace insetbook::cli;

int answer(const Invocation& invocation, Output& out) {
  if (invocation.version) {
    out.raw(fmt::format("insetbook {}", program_version));
    return 0;
  }
  const Command* command = invocation.command;
  if (!command || invocation.help) {
    out.raw(command ? help_text(*command) : help_text());
    return invocation.help ? 0 : 2;
  }
  if (!command->run)
    return out.problem({.what = fmt::format("{} is not there yet", command->name),
                        .expected = "insetbook --help lists what is there"});
  return command->run(invocation, out);
}

// Whether the person asked for JSON, known before the command line is understood.
bool wants_json(int argc, char** argv) {
  for (int i = 1; i < argc; ++i)
    if (std::string_view(argv[i]) == "--json") return true;
  return false;
}

}  // namespace

int main(int argc, char** argv) {
  const bool json = wants_json(argc, argv);
  Output out = Output::of_process(json);
  try {
    const Result<Invocation> invocation = read_command_line(argc, argv);
    const int status = invocation ? answer(*invocation, out) : out.problem(invocation.error());
    if (std::fflush(stdout) != 0) {
      std::fprintf(stderr, "the answer could not be written: the disk may be full\n");
      return 3;
    }
    return status;
  } catch (const StoreError& error) {
    return out.problem(
        {.kind = ProblemKind::unusable_book,
         .what = fmt::format("the book cannot be read: {}", error.what()),
         .expected =
             "insetbook verify tells what is damaged; insetbook restore FILE puts a backup in its place"});
  } catch (const std::exception& error) {
    return out.problem({.kind = ProblemKind::unusable_book,
                        .what = fmt::format("something unexpected: {}", error.what()),
                        .expected = "insetbook verify tells whether the book is whole"});
  }
}
