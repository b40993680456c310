// SPDX-License-Identifier: GPL-3.0-or-later
//
// Run by the build: writes the migrations that schema/migrations.h declares.
//   compile_migrations OUT.cc 0001_catalogue.sql 0002_names.sql …
// Stops the build where a file name is no NUMBER_name.sql, or the numbers have a gap.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace {

struct Source {
  int number;
  std::string name;
  std::string sql;
};

[[noreturn]] void stop(const std::string& what) {
  std::cerr << "schema/migrations: " << what << "\n";
  std::exit(1);
}

Source read(const std::filesystem::path& path) {
  const std::string stem = path.stem().string();
  const std::size_t digits = std::min(stem.find_first_not_of("0123456789"), stem.size());
  if (digits != 4 || stem.size() < 6 || stem[digits] != '_') {
    stop(path.filename().string() + " is not named like 0001_name.sql");
  }
  std::ifstream in(path, std::ios::binary);
  std::string sql{std::istreambuf_iterator<char>(in), {}};
  if (!in || sql.empty()) stop(path.filename().string() + " cannot be read, or is empty");
  if (sql.find('\0') != std::string::npos) stop(path.filename().string() + " holds a zero byte");
  return {std::stoi(stem.substr(0, digits)), stem.substr(digits + 1), std::move(sql)};
}

// One literal for each line, so that the written file can be read; adjacent literals are one text. Octal
// escapes have at most three digits, so that a digit after one is never taken into it.
void write_literal(std::ostream& out, std::string_view text) {
  out << "    \"";
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte == '\n') {
      out << (i + 1 < text.size() ? "\\n\"\n    \"" : "\\n");
    } else if (byte == '"' || byte == '\\' || byte == '?' || byte < 0x20 || byte >= 0x7F) {
      out << '\\' << char('0' + (byte >> 6)) << char('0' + ((byte >> 3) & 7)) << char('0' + (byte & 7));
    } else {
      out << text[i];
    }
  }
  out << "\"";
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) stop("no file is named");
  std::vector<Source> sources;
  for (int i = 2; i < argc; ++i) sources.push_back(read(argv[i]));
  std::sort(sources.begin(), sources.end(),
            [](const Source& a, const Source& b) { return a.number < b.number; });
  for (std::size_t i = 0; i < sources.size(); ++i) {
    if (sources[i].number != static_cast<int>(i) + 1) {
      stop("number " + std::to_string(i + 1) + " is missing or there twice");
    }
  }

  std::ofstream out(argv[1], std::ios::binary);
  out << "// Written by schema/compile_migrations.cc. Change schema/migrations instead.\n"
         "#include \"schema/migrations.h\"\n\nnamespace insetbook {\nnamespace {\n\nusing namespace "
         "std::string_view_literals;\n\n"
         "constexpr Migration every_migration[] = {\n";
  for (const Source& source : sources) {
    out << "  {" << source.number << ", \"" << source.name << "\"sv,\n";
    write_literal(out, source.sql);
    out << "sv},\n";
  }
  out << "};\n\n}  // namespace\n\nstd::span<const Migration> migrations() { return every_migration; }\n\n"
         "}  // namespace insetbook\n";
  out.close();
  if (!out) stop(std::string(argv[1]) + " cannot be written");
}
