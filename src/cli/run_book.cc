// SPDX-License-Identifier: GPL-3.0-or-later
//
// The book as a whole: making one, opening it, copies, whether it is whole.
#include <fmt/format.h>

#include <cstdlib>

#include "book/backup.h"
#include "cli/json_answers.h"
#include "cli/run.h"

namespace insetbook::cli {

std::filesystem::path book_folder(const Invocation& invocation) {
  return invocation.book.empty() ? default_book_folder() : std::filesystem::path(invocation.book);
}

Result<Book> open_book(const Invocation& invocation, Book::Use use, Output& out) {
  Result<Book> book = Book::open(book_folder(invocation), use);
  if (book && use == Book::Use::write)
    if (const std::string warning = book->warning(); !warning.empty()) out.warn(warning);
  return book;
}

int run_new(const Invocation& invocation, Output& out) {
  const std::filesystem::path folder = book_folder(invocation);
  const Result<Book> book = Book::create(folder);
  if (!book) return out.problem(book.error());
  if (out.json()) {
    out.raw(plain_json({{"folder", folder.string()}, {"id", book->uuid()}}));
    return 0;
  }
  out.headline(fmt::format("An empty book is in {}.", folder.string()));
  out.detail(
      "Next: insetbook import dies.csv, or insetbook measure \"SET 1\" --new --shape circle --size \"2-3/8 "
      "in\".");
  return 0;
}

int run_backup(const Invocation& invocation, Output& out) {
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  std::optional<std::filesystem::path> file;
  if (!invocation.words.empty()) file = invocation.words[0];
  const Result<BackupMade> made = backup(*book, file);
  if (!made) return out.problem(made.error());
  if (out.json()) {
    out.raw(plain_json(
        {{"file", made->file.string()}, {"photographs", made->photographs}, {"missing", made->missing}}));
    return made->missing.empty() ? 0 : 3;
  }
  out.headline(fmt::format("The book is copied into {}.", made->file.string()));
  out.detail(fmt::format("{} photographs are in it.", made->photographs));
  for (const std::string& missing : made->missing) out.warn(fmt::format("not in the copy: {}", missing));
  return made->missing.empty() ? 0 : 3;
}

int run_restore(const Invocation& invocation, Output& out) {
  const Result<Restored> restored = restore(book_folder(invocation), invocation.words[0]);
  if (!restored) return out.problem(restored.error());
  if (out.json()) {
    out.raw(plain_json({{"from", restored->from.string()},
                        {"present", restored->present.string()},
                        {"samples", restored->samples},
                        {"photographs", restored->photographs},
                        {"version", restored->version}}));
    return 0;
  }
  out.headline(fmt::format("The book is as {} holds it: {} samples, {} photographs.", restored->from.string(),
                           restored->samples, restored->photographs));
  if (!restored->present.empty())
    out.detail(fmt::format("What was there before is kept in {}.", restored->present.string()));
  return 0;
}

int run_verify(const Invocation& invocation, Output& out) {
  const Result<Verified> verified = verify(book_folder(invocation));
  if (!verified) return out.problem(verified.error());
  if (out.json()) {
    out.raw(plain_json({{"whole", verified->faults.empty()},
                        {"faults", verified->faults},
                        {"samples", verified->samples},
                        {"pieces", verified->pieces},
                        {"dies", verified->dies},
                        {"supplies", verified->supplies},
                        {"photographs", verified->photographs},
                        {"changes", verified->changes}}));
  } else {
    out.headline(verified->faults.empty() ? std::string("The book is whole.")
                                          : fmt::format("The book has {} faults.", verified->faults.size()));
    for (const std::string& fault : verified->faults) out.line(fault);
    out.detail(fmt::format("{} samples with {} pieces, {} dies, {} supplies, {} photographs, {} changes.",
                           verified->samples, verified->pieces, verified->dies, verified->supplies,
                           verified->photographs, verified->changes));
    if (!verified->faults.empty()) out.line("insetbook restore FILE puts a backup in its place.");
  }
  return verified->faults.empty() ? 0 : 3;
}

}  // namespace insetbook::cli
