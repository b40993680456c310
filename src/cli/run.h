// SPDX-License-Identifier: GPL-3.0-or-later
//
// What each command does: reads its words and options, asks `answers`, prints. No rule of the trade stands
// here. Each returns the exit status of the command line's contract.
#pragma once

#include "book/book.h"
#include "cli/commands.h"

namespace insetbook::cli {

int run_new(const Invocation&, Output&);
int run_import(const Invocation&, Output&);
int run_find(const Invocation&, Output&);
int run_fits(const Invocation&, Output&);
int run_frames(const Invocation&, Output&);
int run_pairs(const Invocation&, Output&);
int run_measure(const Invocation&, Output&);
int run_tried(const Invocation&, Output&);
int run_record(const Invocation&, Output&);
int run_show(const Invocation&, Output&);
int run_change(const Invocation&, Output&);
int run_delete(const Invocation&, Output&);
int run_undo(const Invocation&, Output&);
int run_words(const Invocation&, Output&);
int run_settings(const Invocation&, Output&);
int run_export(const Invocation&, Output&);
int run_backup(const Invocation&, Output&);
int run_restore(const Invocation&, Output&);
int run_verify(const Invocation&, Output&);
int run_convert(const Invocation&, Output&);
int run_nearest(const Invocation&, Output&);
int run_check(const Invocation&, Output&);
int run_base(const Invocation&, Output&);
int run_layers(const Invocation&, Output&);
int run_resize(const Invocation&, Output&);
int run_copy(const Invocation&, Output&);

// The value of an option that is a number above zero, `otherwise` where it was not given; of --limit.
Result<std::size_t> number_given(const Invocation& invocation, std::string_view name, std::size_t otherwise);
Result<std::size_t> limit_given(const Invocation& invocation, std::size_t otherwise);

// The book that the invocation means: --book, else INSETBOOK, else the default place.
std::filesystem::path book_folder(const Invocation& invocation);
Result<Book> open_book(const Invocation& invocation, Book::Use use, Output& out);

}  // namespace insetbook::cli
