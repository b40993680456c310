// SPDX-License-Identifier: GPL-3.0-or-later
//
// The table of folders in DEVELOPERS.md is the rule: every #include and every CMake target is compared with
// it.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = INSETBOOK_SOURCE_DIR;

std::string contents(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

std::vector<std::string> lines(const fs::path& path) {
  std::vector<std::string> all;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) all.push_back(line);
  return all;
}

std::string trimmed(std::string text) {
  text.erase(0, text.find_first_not_of(" `"));
  text.erase(text.find_last_not_of(" `") + 1);
  return text;
}

// Rows "| `src/shape` | what it is | measure |" of DEVELOPERS.md: folder → the folders it names.
std::map<std::string, std::set<std::string>> named_in_table() {
  std::map<std::string, std::set<std::string>> table;
  for (const std::string& line : lines(root / "DEVELOPERS.md")) {
    if (line.rfind("| `src/", 0) != 0 && line.rfind("| `importers", 0) != 0 &&
        line.rfind("| `schema", 0) != 0)
      continue;
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, '|');) cells.push_back(trimmed(cell));
    if (cells.size() < 4) continue;
    std::string folder = cells[1];
    if (folder.rfind("src/", 0) == 0) folder = folder.substr(4);
    std::set<std::string>& needs = table[folder];
    std::istringstream list(cells[3]);
    for (std::string name; std::getline(list, name, ',');)
      if (name = trimmed(name); !name.empty() && name != "-") needs.insert(name);
  }
  return table;
}

// A folder may use what it names, and what those name in turn.
std::set<std::string> may_use(const std::map<std::string, std::set<std::string>>& table,
                              const std::string& folder) {
  std::set<std::string> reached = {folder};
  std::vector<std::string> open = {folder};
  while (!open.empty()) {
    const std::string next = open.back();
    open.pop_back();
    const auto row = table.find(next);
    if (row == table.end()) continue;
    for (const std::string& name : row->second)
      if (reached.insert(name).second) open.push_back(name);
  }
  return reached;
}

std::string folder_of_include(const std::string& path) {
  if (path.rfind("importers/", 0) == 0) {
    const std::size_t slash = path.find('/', 10);
    return slash == std::string::npos ? "importers" : path.substr(0, slash);
  }
  return path.substr(0, path.find('/'));
}

std::vector<fs::path> sources(const fs::path& folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".cc" || entry.path().extension() == ".h") found.push_back(entry.path());
  std::sort(found.begin(), found.end());
  return found;
}

TEST(Folders, IncludesKeepToTheTable) {
  const auto table = named_in_table();
  ASSERT_GE(table.size(), 11u) << "the table of folders was not found in DEVELOPERS.md";
  std::size_t compared = 0;
  for (const auto& [folder, needs] : table) {
    if (folder == "schema") continue;
    const fs::path place = folder.rfind("importers", 0) == 0 ? root / folder : root / "src" / folder;
    ASSERT_TRUE(fs::is_directory(place)) << folder;
    const std::set<std::string> allowed = may_use(table, folder);
    for (const fs::path& source : sources(place)) {
      for (const std::string& line : lines(source)) {
        if (line.rfind("#include \"", 0) != 0) continue;
        const std::string path = line.substr(10, line.find('"', 10) - 10);
        ++compared;
        EXPECT_TRUE(allowed.contains(folder_of_include(path)))
            << fs::relative(source, root) << " includes " << path << ", which " << folder << " does not name";
      }
    }
  }
  EXPECT_GT(compared, 100u);
}

TEST(Folders, EveryFolderStandsInTheTable) {
  const auto table = named_in_table();
  for (const auto& entry : fs::directory_iterator(root / "src")) {
    if (!entry.is_directory()) continue;
    EXPECT_TRUE(table.contains(entry.path().filename().string())) << entry.path();
  }
  for (const auto& entry : fs::directory_iterator(root / "importers")) {
    if (!entry.is_directory()) continue;
    EXPECT_TRUE(table.contains("importers/" + entry.path().filename().string())) << entry.path();
  }
}

TEST(Folders, TargetsLinkWhatTheTableNames) {
  const auto table = named_in_table();
  for (const auto& [folder, needs] : table) {
    const bool importer = folder.rfind("importers/", 0) == 0;
    if (folder == "schema" || folder == "importers") continue;
    const std::string text = contents((importer ? root / folder : root / "src" / folder) / "CMakeLists.txt");
    const std::size_t at = text.find("insetbook_folder(");
    ASSERT_NE(at, std::string::npos) << folder;
    std::string call = text.substr(at, text.find(')', at) - at);
    std::set<std::string> linked;
    if (const std::size_t begin = call.find("NEEDS"); begin != std::string::npos) {
      std::istringstream words(call.substr(begin + 5, call.find("LIBRARIES") - begin - 5));
      for (std::string word; words >> word;)
        linked.insert(word.rfind("importers_", 0) == 0 ? "importers/" + word.substr(10) : word);
    }
    EXPECT_EQ(linked, needs) << folder;
  }
}

TEST(Sources, EveryFileNamesItsLicence) {
  std::size_t seen = 0;
  for (const char* folder : {"src", "importers", "schema", "tests"})
    for (const fs::path& source : sources(root / folder)) {
      const std::vector<std::string> all = lines(source);
      ASSERT_FALSE(all.empty()) << source;
      EXPECT_EQ(all[0], "// SPDX-License-Identifier: GPL-3.0-or-later") << source;
      ++seen;
    }
  EXPECT_GT(seen, 50u);
}

TEST(Sources, EveryTestFileIsBuilt) {
  const std::string listed = contents(root / "tests" / "CMakeLists.txt");
  for (const auto& entry : fs::directory_iterator(root / "tests")) {
    if (!entry.is_directory()) continue;
    const std::string name = entry.path().filename().string();
    if (sources(entry.path()).empty()) continue;
    EXPECT_TRUE(fs::exists(entry.path() / "CMakeLists.txt")) << name;
    EXPECT_NE(listed.find(name), std::string::npos) << name << " is not in tests/CMakeLists.txt";
  }
}

TEST(TopLevel, HoldsOnlyWhatBelongsThere) {
  const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE",    "src",
                                         "schema",         "importers", "tests",         "sample-data"};
  for (const auto& entry : fs::directory_iterator(root)) {
    const std::string name = entry.path().filename().string();
    if (name[0] == '.' || name.rfind("build", 0) == 0) continue;
    EXPECT_TRUE(allowed.contains(name)) << name;
  }
}

}  // namespace
