// SPDX-License-Identifier: GPL-3.0-or-later
#include "outside/cranfield_collection.h"

#include <fstream>
#include <sstream>

#include "outside/outside_data.h"

namespace insetbook {
namespace {

// A record: its number, and the text under each letter (".T", ".W"), lines joined with spaces.
struct Record {
  int number = 0;
  std::map<char, std::string> parts;
};

std::vector<Record> records_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::vector<Record> records;
  char part = 0;
  for (std::string line; std::getline(in, line);) {
    if (line.ends_with('\r')) line.pop_back();
    if (line.starts_with(".I ")) {
      records.push_back({std::stoi(line.substr(3)), {}});
      part = 0;
    } else if (line.size() == 2 && line[0] == '.' && line[1] >= 'A' && line[1] <= 'Z') {
      part = line[1];
    } else if (part != 0) {
      std::string& text = records.back().parts[part];
      text += (text.empty() ? "" : " ") + line;
    }
  }
  return records;
}

std::vector<Judged> judgements_of(const std::filesystem::path& file, std::size_t questions) {
  std::ifstream in(file);
  std::vector<Judged> judged(questions);
  std::size_t question = 0;
  int paper = 0, degree = 0;
  while (in >> question >> paper >> degree) judged.at(question - 1)[paper] = degree;
  return judged;
}

}  // namespace

std::optional<Cranfield> cranfield() {
  const auto papers = outside_data("cranfield/cran.all.1400");
  const auto questions = outside_data("cranfield/cran.qry");
  const auto judged = outside_data("cranfield/cranqrel");
  if (!papers || !questions || !judged) return std::nullopt;
  Cranfield all;
  for (Record& each : records_of(*papers))
    all.papers.push_back({each.number, std::move(each.parts['T']), std::move(each.parts['W'])});
  for (Record& each : records_of(*questions)) all.questions.push_back(std::move(each.parts['W']));
  all.judged = judgements_of(*judged, all.questions.size());
  return all;
}

}  // namespace insetbook
