// SPDX-License-Identifier: GPL-3.0-or-later
//
// Source: csv-spectrum 2.0.0 (npm, BSD-2-Clause): tables in CSV with the rows that a reader must find, in
// JSON. `location_coordinates` is left out: its JSON is not what its CSV holds (another number, characters
// lost).
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "importers/csv/encoding.h"
#include "importers/csv/reader.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

std::string contents(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

// The rows as objects by the header row, as the JSON of the collection has them.
nlohmann::json read_table(const std::string& bytes) {
  const auto decoded = decode_text(bytes);
  if (!decoded) return decoded.error().what;
  CsvReader reader(decoded->text, csv_delimiter(decoded->text));
  CsvRow row;
  std::vector<std::string> header;
  nlohmann::json rows = nlohmann::json::array();
  while (reader.next(row)) {
    if (row.problem) return row.problem->what;
    if (row.number == 1) {
      for (std::size_t i = 0; i < row.size(); ++i) header.emplace_back(row.cell(i));
      continue;
    }
    nlohmann::json object = nlohmann::json::object();
    for (std::size_t i = 0; i < header.size(); ++i) object[header[i]] = std::string(row.cell(i));
    rows.push_back(std::move(object));
  }
  return rows;
}

TEST(CsvSpectrum, EveryTable) {
  const auto folder = outside_data("csv_spectrum");
  if (!folder) GTEST_SKIP() << "the collection is not here";
  const char* names[] = {"comma_in_quotes",
                         "empty",
                         "empty_crlf",
                         "escaped_quotes",
                         "json",
                         "newlines",
                         "newlines_crlf",
                         "quotes_and_newlines",
                         "simple",
                         "simple_crlf",
                         "utf8"};
  for (const char* name : names) {
    const auto expected = nlohmann::json::parse(contents(*folder / "json" / (std::string(name) + ".json")));
    ASSERT_FALSE(expected.empty()) << name;
    EXPECT_EQ(read_table(contents(*folder / "csvs" / (std::string(name) + ".csv"))), expected) << name;
  }
}

}  // namespace
}  // namespace insetbook
