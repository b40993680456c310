// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/glue.h"

#include <algorithm>

#include "schema/label_key.h"
#include "search/written_values.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_label = 6;  // words

// The words of one part of the text: what commas part is said of different things.
bool part_says(std::string_view part, const GlueIs& glue) {
  const std::string folded = fold(part);
  std::vector<std::string> keys;
  for (std::string_view rest = folded; !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    keys.push_back(label_key(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  for (std::size_t first = 0; first < keys.size(); ++first) {
    std::string key;
    for (std::size_t last = first; last < std::min(first + longest_label, keys.size()); ++last) {
      key += keys[last];
      if (std::binary_search(glue.keys.begin(), glue.keys.end(), key)) return true;
    }
  }
  return false;
}

}  // namespace

bool glue_says(std::string_view written, const GlueIs& glue) {
  while (!written.empty()) {
    const std::size_t end = std::min(written.find_first_of(",;"), written.size());
    if (part_says(written.substr(0, end), glue)) return true;
    written.remove_prefix(std::min(end + 1, written.size()));
  }
  return false;
}

std::vector<std::string> written_glues(const Book& book, const GlueIs& glue) {
  // From each to the next in the index.
  return written_values(book.statement("SELECT min(glue) FROM element WHERE glue > ?1 AND glue <> ''"),
                        [&](const std::string& written) { return glue_says(written, glue); });
}

}  // namespace insetbook
