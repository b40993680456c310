// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any bytes as a question to the book of the sample studio: an answer or a Problem, in the time that run.sh
// allows for one input; as many hits as are counted, each once; what emptied an answer was asked.
#include "answers/find.h"

#include <stdlib.h>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <set>
#include <string>

#include "answers/import_tables.h"
#include "book/settings.h"

using namespace insetbook;
namespace fs = std::filesystem;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

class SampleBook {
 public:
  SampleBook() {
    std::string name = (fs::temp_directory_path() / "insetbook-fuzz-XXXXXX").string();
    require(mkdtemp(name.data()) != nullptr);
    folder_ = name;
    const fs::path data = fs::path(INSETBOOK_SOURCE_DIR) / "sample-data";
    std::vector<fs::path> files;
    for (const char* table : {"dies", "supplies", "samples", "elements", "tried"})
      files.push_back(data / (std::string(table) + ".csv"));
    require(import_into(folder_ / "book", files, {}).has_value());
    Result<Book> book = Book::open(folder_ / "book", Book::Use::write);
    require(book.has_value() && set_setting(*book, "today", "2026-11-25").has_value());
    book_ = std::move(*book);
  }
  ~SampleBook() {
    book_.reset();
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  const Book& book() const { return *book_; }

 private:
  fs::path folder_;
  std::optional<Book> book_;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const SampleBook sample;
  const std::string text(reinterpret_cast<const char*>(data), size);
  const auto answer =
      find(sample.book(), {.question = text, .limit = 5, .explain = size % 8 == 0, .facets = size % 4 == 0});
  if (!answer) {
    require(!answer.error().what.empty() && answer.error().kind != ProblemKind::unusable_book);
    return 0;
  }
  const auto* hits = std::get_if<Hits>(&answer->answer);
  if (!hits) return 0;
  std::set<std::int64_t> samples;
  for (const Hit& hit : hits->hits) require(samples.insert(hit.sample).second && !hit.title.empty());
  require(hits->hits.size() <= std::min<std::size_t>(hits->total, 5) || !hits->total_is_exact);
  require(hits->total == 0 || (hits->emptied_by.empty() && hits->nearest.empty()));
  return 0;
}
