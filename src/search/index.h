// SPDX-License-Identifier: GPL-3.0-or-later
//
// The index of free words: `index/` in the book's folder, derived from the book and never the only place of
// anything. It may be deleted at any time. One document is one sample; its number is the sample's id. In the
// index's own metadata, written in the same commit as the documents, stand the book's UUID, the fingerprint
// of what is indexed how, and the last change that it holds:
//   behind                       → it catches up from the change log
//   another fingerprint or book, damaged, missing → built anew beside the old one, then put in its place
//   locked or not to be written  → the samples it lacks are indexed in memory for this one use, so that no
//   committed
//                                  record is ever missed
// An Index costs nothing until it is asked something. One thread uses it at a time; it may be kept open while
// other programs change the book.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace insetbook {

// Free words that are asked, joined.
struct TextAsked {
  enum class Kind { phrase, all, any, none } kind = Kind::all;
  std::vector<std::string> words;  // phrase: stems that must follow each other; one word is a phrase too
  std::vector<TextAsked> children;
};

struct TextHit {
  std::int64_t sample = 0;
  double weight = 0;
};

struct TextHits {
  std::vector<TextHit> hits;  // the best first, then the newest
  std::size_t total = 0;
  bool exact = true;  // false: there are at least `total`
};

class Index {
 public:
  enum class State { in_step, caught_up, rebuilt, not_written };

  explicit Index(const std::filesystem::path& book_folder);
  Index(Index&&) noexcept;
  Index& operator=(Index&&) noexcept;
  ~Index();

  // Brings the index up to the book's last change. `not_written`: it is locked or may not be written;
  // questions are answered all the same. Called after each change, and by the first question that needs the
  // index.
  State catch_up(const Book& book);
  // Builds it anew whatever it holds. A Problem where the folder cannot be written.
  Result<void> rebuild(const Book& book);
  // What is wrong with the index, one line each; empty: it is whole and says what the book says.
  std::vector<std::string> verify(const Book& book);

  // The samples that meet what is asked. `among`: only these, sorted. `limit`: so many hits, the total being
  // counted to `count`; without it all of them.
  struct Wanted {
    const std::vector<std::int64_t>* among = nullptr;
    std::optional<std::size_t> limit;
    std::size_t count = 10'000;
  };
  TextHits find(const Book& book, const TextAsked& asked, const Wanted& wanted);

  // How many samples hold the stem.
  std::size_t samples_with(const Book& book, const std::string& stem);
  // Stems in the index that are spelled like this one, nearest first, with one sample that holds each.
  struct LikeStem {
    std::string stem;
    std::size_t edits = 0;
    std::size_t samples = 0;
    std::int64_t sample = 0;
  };
  std::vector<LikeStem> stems_like(const Book& book, const std::string& stem, std::size_t limit);

  // "1 / english": what the index's content depends on besides the book.
  static std::string fingerprint();

 private:
  void make_ready(const Book& book);
  template <class Work>
  auto guarded(Work work) -> decltype(work());

  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace insetbook
