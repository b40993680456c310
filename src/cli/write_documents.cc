// SPDX-License-Identifier: GPL-3.0-or-later
//
// Run while building: writes the man page and the shell completions from the table of commands into a folder.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

#include "cli/help.h"

namespace {

bool write(const std::filesystem::path& path, const std::string& text) {
  std::ofstream out(path, std::ios::binary);
  out << text;
  out.close();
  if (!out) std::fprintf(stderr, "cannot write %s\n", path.c_str());
  return static_cast<bool>(out);
}

}  // namespace

int main(int argc, char** argv) {
  using namespace insetbook::cli;
  if (argc != 2) {
    std::fprintf(stderr, "usage: write_documents FOLDER\n");
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  const bool all =
      write(folder / "insetbook.1", man_page()) && write(folder / "insetbook.bash", bash_completion()) &&
      write(folder / "_insetbook", zsh_completion()) && write(folder / "insetbook.fish", fish_completion());
  return all ? 0 : 1;
}
