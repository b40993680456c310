// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_line.h"

#include <gtest/gtest.h>

#include "cli/help.h"
#include "cli/output.h"

namespace insetbook::cli {
namespace {

Result<Invocation> read(std::vector<std::string> words) {
  words.insert(words.begin(), "insetbook");
  std::vector<char*> argv;
  for (std::string& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  return read_command_line(static_cast<int>(words.size()), argv.data());
}

TEST(CommandLine, OptionsStandBeforeOrAfterTheName) {
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"--book", "b", "--json", "fits", "tidepool", "2", "--border", "1/8"},
        {"fits", "tidepool", "2", "--border=1/8", "--json", "--book=b"},
        {"fits", "--border", "1/8", "tidepool", "--json", "2", "--book", "b"}}) {
    const Result<Invocation> invocation = read(words);
    ASSERT_TRUE(invocation) << invocation.error().what;
    EXPECT_EQ(invocation->command->name, "fits");
    EXPECT_EQ(invocation->text(), "tidepool 2");
    EXPECT_EQ(invocation->value("border"), "1/8");
    EXPECT_EQ(invocation->book, "b");
    EXPECT_TRUE(invocation->json);
  }
}

TEST(CommandLine, AfterTwoDashesEverythingIsAnArgument) {
  const Result<Invocation> invocation = read({"find", "--limit", "1", "--", "sage", "-white", "--json"});
  ASSERT_TRUE(invocation);
  EXPECT_EQ(invocation->text(), "sage -white --json");
  EXPECT_EQ(invocation->value("limit"), "1");
  EXPECT_FALSE(invocation->json);
}

TEST(CommandLine, ALoneDashIsAnArgument) {
  const Result<Invocation> invocation = read({"convert", "-"});
  ASSERT_TRUE(invocation);
  EXPECT_EQ(invocation->text(), "-");
}

struct Wrong {
  std::vector<std::string> words;
  std::string what, expected;
  std::vector<std::string> candidates;
};

TEST(CommandLine, SaysWhatIsWrong) {
  const Wrong table[] = {
      {{"nonsense"}, "there is no command \"nonsense\"", "insetbook --help lists the commands", {}},
      {{"fit", "x"},
       "there is no command \"fit\"",
       "insetbook --help lists the commands",
       {"find", "fits", "cut", "kit"}},
      {{"fits", "x", "--bordr", "1"},
       "there is no option \"--bordr\" of fits",
       "insetbook fits --help lists its options",
       {"--border"}},
      {{"fits", "x", "--border"}, "--border needs a value", "--border LENGTH", {}},
      {{"fits", "x", "--json=yes"}, "--json takes no value", "--json", {}},
      {{"find", "sage", "-white"},
       "there is no option \"-white\" of find",
       "a word that starts with - inside a question goes after --",
       {}},
      {{"fits"},
       "fits needs OPENING…",
       "for example: insetbook fits second largest tidepool rectangle --border 1/8",
       {}},
  };
  for (const Wrong& row : table) {
    const Result<Invocation> invocation = read(row.words);
    ASSERT_FALSE(invocation) << row.what;
    EXPECT_EQ(invocation.error().what, row.what);
    EXPECT_EQ(invocation.error().expected, row.expected);
    EXPECT_EQ(invocation.error().candidates, row.candidates);
  }
}

TEST(Help, NamesEveryCommandWithAnExample) {
  for (const Command& command : commands()) {
    EXPECT_NE(help_text().find("  " + std::string(command.name)), std::string::npos);
    EXPECT_NE(man_page().find(".SS insetbook " + std::string(command.name)), std::string::npos);
    EXPECT_EQ(command.example.substr(0, command.name.size()), command.name);
    EXPECT_NE(help_text(command).find("For example: insetbook " + std::string(command.example)),
              std::string::npos);
    for (const Option& option : command.options)
      EXPECT_NE(help_text(command).find("--" + std::string(option.name)), std::string::npos);
  }
}

std::string detail_of(bool styled, int width, std::string_view text, const std::vector<Mark>& marks) {
  testing::internal::CaptureStdout();
  Output(false, styled, width, false).detail(text, marks);
  std::fflush(stdout);
  return testing::internal::GetCapturedStdout();
}

TEST(Output, SetsOffWhatMatchedOnATerminalOnly) {
  EXPECT_EQ(detail_of(false, 0, "moon (circle 2-3/8 in)", {{6, 12}}), "  moon (circle 2-3/8 in)\n");
  EXPECT_EQ(detail_of(true, 80, "moon (circle 2-3/8 in)", {{6, 12}}),
            "\033[2m  moon (\033[0m\033[1mcircle\033[0m\033[2m 2-3/8 in)\n\033[0m");
  // A mark over a space is set off word by word, so that a line may break in it.
  EXPECT_EQ(detail_of(true, 80, "a b c", {{2, 5}}),
            "\033[2m  a \033[0m\033[1mb\033[0m\033[2m \033[0m\033[1mc\033[0m\033[2m\n\033[0m");
  // Where a control character was left out, the places are no longer those of the text.
  EXPECT_EQ(detail_of(true, 80, "a\033 b", {{3, 4}}), "\033[2m  a b\n\033[0m");
}

std::string table_of(int width) {
  testing::internal::CaptureStdout();
  Output(false, false, width, false)
      .table({{"die", "line", "", "tried"},
              {{"1", "cut", "", "a panel of 3 x 4 in"}, {"2", "stitched", "", ""}}});
  std::fflush(stdout);
  return testing::internal::GetCapturedStdout();
}

TEST(Output, FitsATableToTheTerminal) {
  EXPECT_EQ(table_of(0),
            "  die  line      tried\n"
            "  1    cut       a panel of 3 x 4 in\n"
            "  2    stitched\n");
  EXPECT_EQ(table_of(80), table_of(0));
  EXPECT_EQ(table_of(34),
            "  die  line      tried\n"
            "  1    cut       a panel of 3 x 4\n"
            "                 in\n"
            "  2    stitched\n");
  EXPECT_EQ(table_of(22),
            "  die  line\n"
            "  1    cut\n"
            "    tried: a panel of\n"
            "      3 x 4 in\n"
            "  2    stitched\n");
  EXPECT_EQ(table_of(14),
            "  1\n"
            "    line cut;\n"
            "      tried a\n"
            "      panel of\n"
            "      3 x 4 in\n"
            "  2\n"
            "    line\n"
            "      stitched\n");
}

TEST(Output, PointsAtThePlaceInTheText) {
  const Problem problem{.what = "\"2-9/8\" has an improper fraction after a whole number",
                        .where = {.text = "½ x 2-9/8 in", .at = 4, .length = 5},
                        .expected = "3-1/8"};
  EXPECT_EQ(problem_text(problem),
            "\"2-9/8\" has an improper fraction after a whole number\n  ½ x 2-9/8 in\n      ^^^^^\n  3-1/8");
}

}  // namespace
}  // namespace insetbook::cli
