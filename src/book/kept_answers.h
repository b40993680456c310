// SPDX-License-Identifier: GPL-3.0-or-later
//
// Answers that take long to compute, kept in `derived.db` beside the book: outside the change log, backups
// and exports, and thrown away whenever that is easier than keeping it. An answer is kept under what it rests
// on, written out: the opening as it is now, and what was asked of it with the version of the method. Where
// anything of that is another, nothing is found; the opening's older answers go when a newer one is kept, so
// that a new measurement lets them go.
// Nothing here fails: where the file cannot be opened, read or written (a read-only folder, a full disk, a
// damaged file), nothing is found or kept, and a damaged file is made anew.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace insetbook {

class Database;
class Statement;

struct KeptKey {
  std::string opening;   // shape, figures, outline, sizes, give-or-take
  std::string question;  // border, step, shapes, sides, version of the method
};

struct AnswerToKeep {
  std::int64_t line_id = 0;
  KeptKey key;
  std::string answer;
};

class KeptAnswers {
 public:
  // Opens nothing yet.
  explicit KeptAnswers(const std::filesystem::path& book_folder);
  ~KeptAnswers();
  KeptAnswers(const KeptAnswers&) = delete;
  KeptAnswers& operator=(const KeptAnswers&) = delete;

  std::optional<std::string> find(std::int64_t line_id, const KeptKey& key);
  void keep(std::int64_t line_id, const KeptKey& key, std::string_view answer);
  void keep(std::span<const AnswerToKeep> answers);  // all at once, or none

 private:
  bool open(bool make);
  void close();
  void make_anew();
  void write(std::span<const AnswerToKeep> answers);

  std::filesystem::path path_;
  std::unique_ptr<Database> db_;
  std::unique_ptr<Statement> find_;  // after db_: it goes first
};

}  // namespace insetbook
