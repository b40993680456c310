// SPDX-License-Identifier: GPL-3.0-or-later
//
// Every type has a name of its own. Two types of one name in two headers are two definitions of one thing to
// the linker, which keeps one of them wherever a template is made of it: what then goes wrong is found by
// nobody who reads either header.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <string>

namespace {

namespace fs = std::filesystem;

TEST(Names, NoTwoHeadersDefineATypeOfOneName) {
  const fs::path root = INSETBOOK_SOURCE_DIR;
  // "struct Name {", "class Name final : public Other {"; not "struct Outer::Inner {".
  const std::regex type(
      R"(^(?:struct|class|enum class|enum|union)\s+(\w+)(?:\s+final)?(?:\s+:[^;{]*|\s*)\{)");
  std::map<std::string, fs::path> defined;
  int headers = 0;
  for (const char* folder : {"src", "importers", "schema"})
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
      if (entry.path().extension() != ".h") continue;
      ++headers;
      std::ifstream in(entry.path());
      for (std::string line; std::getline(in, line);) {
        std::smatch found;
        if (!std::regex_search(line, found, type)) continue;
        const auto [there, added] = defined.emplace(found[1].str(), entry.path());
        EXPECT_TRUE(added) << found[1] << " is defined in " << there->second << " and in " << entry.path();
      }
    }
  EXPECT_GT(headers, 100);
  EXPECT_GT(defined.size(), 200u);
}

}  // namespace
