// SPDX-License-Identifier: GPL-3.0-or-later
//
// The commands that README.md shows, run in order as they stand there, in a folder that holds nothing but a
// person's five tables and a drawing (those of sample-data). Each ends with exit status 0, or with what "#
// exit status N" behind it says; lines under a command are what it prints, and are compared word for word.
#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace insetbook::cli {
namespace {

namespace fs = std::filesystem;

struct Shown {
  int line = 0;  // of README.md
  std::string command;
  int status = 0;
  std::string output;  // empty: none is shown
};

std::string without_indent(const std::string& line, std::size_t indent) {
  const std::size_t begin = line.find_first_not_of(' ');
  return begin == std::string::npos ? std::string() : line.substr(std::min(indent, begin));
}

Shown command_of(std::string text, int line) {
  Shown shown{.line = line, .command = std::move(text), .status = 0, .output = {}};
  constexpr std::string_view mark = "# exit status ";
  if (const std::size_t at = shown.command.find(mark); at != std::string::npos) {
    shown.status = std::stoi(shown.command.substr(at + mark.size()));
    shown.command.erase(at);
  }
  return shown;
}

// The fenced blocks whose first line is a command of the program.
std::vector<Shown> commands_shown(const fs::path& readme) {
  std::ifstream in(readme);
  std::vector<Shown> all;
  std::string line;
  bool inside = false, ours = false;
  std::size_t indent = 0;
  for (int number = 1; std::getline(in, line); ++number) {
    const std::size_t fence = line.find("```");
    if (fence != std::string::npos && line.find_first_not_of(' ') == fence) {
      inside = !inside;
      indent = fence;
      ours = false;
      continue;
    }
    if (!inside) continue;
    const std::string text = without_indent(line, indent);
    if (text.starts_with("insetbook ") || text.starts_with("printf ")) {
      all.push_back(command_of(text, number));
      ours = true;
    } else if (ours) {
      all.back().output += text + "\n";
    }
  }
  return all;
}

struct Ran {
  int status = -1;
  std::string out;
};

Ran run_in(const fs::path& folder, const std::string& command) {
  const std::string program_folder = fs::path(INSETBOOK_PROGRAM).parent_path().string();
  const std::string line = "cd '" + folder.string() + "' && INSETBOOK='" + (folder / "book").string() +
                           "' PATH='" + program_folder + "':\"$PATH\" && export INSETBOOK PATH && " +
                           command + " 2>&1";
  Ran ran;
  FILE* pipe = popen(line.c_str(), "r");
  std::array<char, 4096> buffer{};
  while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe))
    ran.out.append(buffer.data(), n);
  const int status = pclose(pipe);
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

TEST(Readme, ItsCommandsDoWhatItSays) {
  const fs::path source = INSETBOOK_SOURCE_DIR;
  const std::vector<Shown> commands = commands_shown(source / "README.md");
  ASSERT_GT(commands.size(), 9u);
  std::string name = (fs::temp_directory_path() / "insetbook-readme-XXXXXX").string();
  const fs::path folder = mkdtemp(name.data());
  for (const char* table : {"dies.csv", "supplies.csv", "samples.csv", "elements.csv", "tried.csv"})
    fs::copy(source / "sample-data" / table, folder / table);
  fs::copy(source / "sample-data" / "photos", folder / "photos");
  fs::copy(source / "sample-data" / "quayside-shapes.svg", folder / "quayside-shapes.svg");
  int with_output = 0;
  for (const Shown& shown : commands) {
    const Ran ran = run_in(folder, shown.command);
    EXPECT_EQ(ran.status, shown.status) << "line " << shown.line << ": " << shown.command << "\n" << ran.out;
    if (shown.output.empty()) continue;
    ++with_output;
    EXPECT_EQ(ran.out, shown.output) << "line " << shown.line << ": " << shown.command;
  }
  EXPECT_GT(with_output, 1);
  fs::remove_all(folder);
}

}  // namespace
}  // namespace insetbook::cli
