// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/problems.h"

#include <fmt/core.h>
#include <sqlite3.h>

#include <cerrno>
#include <cstring>
#include <system_error>

namespace insetbook {

namespace {

namespace fs = std::filesystem;

Problem unusable(const fs::path& file, std::string what, std::string expected) {
  Problem problem;
  problem.kind = ProblemKind::unusable_book;
  problem.what = std::move(what);
  problem.where.file = file.string();
  problem.expected = std::move(expected);
  return problem;
}

Problem bad_file(const fs::path& file, std::string what, std::string expected) {
  Problem problem = unusable(file, std::move(what), std::move(expected));
  problem.kind = ProblemKind::bad_input;
  return problem;
}

std::string restore_advice() {
  return "\"insetbook verify\" lists what is wrong; \"insetbook restore FILE\" with a file from the book's "
         "backups "
         "folder brings back what it holds";
}

std::string reason(int error_number) {
  return std::strerror(error_number);
}

}  // namespace

Problem no_book_here(const fs::path& folder) {
  return unusable(folder, fmt::format("there is no book in \"{}\"", folder.string()),
                  "\"insetbook new\" makes one there; --book DIR or INSETBOOK names another folder");
}

Problem book_is_there(const fs::path& folder) {
  Problem problem = unusable(folder, fmt::format("there is a book in \"{}\" already", folder.string()),
                             "--book DIR names another folder for the new one");
  problem.kind = ProblemKind::refused;
  return problem;
}

Problem not_a_folder(const fs::path& folder) {
  return unusable(folder, fmt::format("\"{}\" is a file; a book is a folder", folder.string()),
                  "name the folder that holds book.db");
}

Problem no_book_file(const fs::path& file) {
  return unusable(file, fmt::format("\"{}\" is not a book", file.string()),
                  "another file has that name, or it was damaged: " + restore_advice());
}

Problem book_too_new(const fs::path& file, std::int64_t its_version, int our_version) {
  return unusable(file,
                  fmt::format("this book has version {}, and this program knows books up to {}", its_version,
                              our_version),
                  "use the newer program that wrote it; the book is as it was");
}

Problem book_too_old_to_read(const fs::path& file, std::int64_t its_version, int our_version) {
  return unusable(
      file,
      fmt::format("this book has version {} and must be brought up to {}, but it cannot be written",
                  its_version, our_version),
      "make the folder writable, or copy it to a place that is");
}

Problem store_problem(const fs::path& file, const StoreError& error) {
  switch (error.code & 0xff) {
    case SQLITE_FULL:
      return unusable(file, "the disk is full; the book is as it was", "make room on the disk and try again");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return unusable(file, "another program is writing to this book; nothing was changed",
                      "wait until it has finished and try again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return unusable(file, "the book may not be written", "make its folder and book.db writable");
    case SQLITE_CANTOPEN:
      return unusable(file, "the book cannot be opened", "look whether its folder may be read and written");
    case SQLITE_NOTADB:
      return no_book_file(file);
    case SQLITE_CORRUPT:
      return unusable(file, "the book is damaged", restore_advice());
    case SQLITE_IOERR:
      return unusable(file, "the disk cannot be read or written; the book is as it was",
                      "look whether the disk is still there and sound, and try again");
    case SQLITE_TOOBIG:
      return unusable(file, "a text is too long for the book; the book is as it was", "shorten it");
    case SQLITE_NOMEM:
      return unusable(file, "there is not enough memory; the book is as it was",
                      "close other programs and try again");
    default:
      break;
  }
  const std::string_view what = error.what();
  if (error.code == SQLITE_ERROR && !what.starts_with("no such "))
    return unusable(file, fmt::format("this could not be asked of the book, which is as it was: {}", what),
                    "ask for less at once; it is a fault of the program");
  return unusable(file, fmt::format("the book cannot be used: {}", what), restore_advice());
}

std::optional<Problem> control_character_in(std::string_view text, Lines lines) {
  const std::optional<ControlCharacter> found = control_character(text, lines);
  if (!found) return std::nullopt;
  Problem problem;
  problem.what = fmt::format("{} holds {}", in_quotes(text), name_of(*found));
  problem.where.text = text;
  problem.where.at = found->at;
  problem.where.length = 1;
  problem.expected = "the text without it";
  return problem;
}

Problem file_not_written(const fs::path& path, int error_number) {
  if (error_number == ENOSPC || error_number == EDQUOT) {
    return unusable(path, fmt::format("the disk is full; \"{}\" was not written", path.string()),
                    "make room on the disk and try again");
  }
  return unusable(path, fmt::format("\"{}\" cannot be written: {}", path.string(), reason(error_number)),
                  "look whether its folder is there and may be written");
}

Problem file_not_read(const fs::path& path, int error_number) {
  return bad_file(path, fmt::format("\"{}\" cannot be read: {}", path.string(), reason(error_number)),
                  "look whether the file is there and may be read");
}

Problem file_is_there(const fs::path& path) {
  Problem problem =
      bad_file(path, fmt::format("there is a file \"{}\" already", path.string()), "name another file");
  problem.kind = ProblemKind::refused;
  return problem;
}

Problem other_kind_is_there(const fs::path& path, const fs::path& there) {
  std::error_code ignored;
  const bool folder = fs::is_directory(there, ignored);
  Problem problem = bad_file(
      there, fmt::format("\"{}\" is a {}; nothing was written", there.string(), folder ? "folder" : "file"),
      path == there ? fmt::format("another folder, or that {} moved away", folder ? "folder" : "file")
                    : fmt::format("another folder: \"{}\" would lie in it", path.string()));
  problem.kind = ProblemKind::refused;
  return problem;
}

Problem file_too_large(const fs::path& path, std::uint64_t limit) {
  return bad_file(path, fmt::format("\"{}\" is larger than {} MB", path.string(), limit / 1'000'000),
                  fmt::format("a file of at most {} MB", limit / 1'000'000));
}

}  // namespace insetbook
