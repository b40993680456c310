// SPDX-License-Identifier: GPL-3.0-or-later
//
// The rows of the published tables: cells by commas, cells in quotes may hold commas. The first row, which
// names the columns, is left out.
#pragma once

#include <gtest/gtest.h>

#include <charconv>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace insetbook {

inline std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out(1);
  bool in_quotes = false;
  for (const char c : line) {
    if (c == '"')
      in_quotes = !in_quotes;
    else if (c == ',' && !in_quotes)
      out.emplace_back();
    else if (c != '\r')
      out.back() += c;
  }
  return out;
}

inline std::vector<std::vector<std::string>> data_rows(const std::filesystem::path& path) {
  std::ifstream in(path);
  std::vector<std::vector<std::string>> rows;
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line))
    if (!line.empty()) rows.push_back(cells(line));
  return rows;
}

// Without the locale, whose decimal mark may be a comma.
inline double number(const std::string& text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  EXPECT_TRUE(error == std::errc() && end == text.data() + text.size()) << text;
  return value;
}

}  // namespace insetbook
