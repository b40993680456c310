// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a person is told when the store cannot do something: one function for each mistake, so that it reads
// the same everywhere.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/sqlite.h"
#include "text/problem.h"
#include "text/quote.h"

namespace insetbook {

// The book's folder and file.
Problem no_book_here(const std::filesystem::path& folder);
Problem book_is_there(const std::filesystem::path& folder);
Problem not_a_folder(const std::filesystem::path& folder);
Problem no_book_file(const std::filesystem::path& file);
Problem book_too_new(const std::filesystem::path& file, std::int64_t its_version, int our_version);
Problem book_too_old_to_read(const std::filesystem::path& file, std::int64_t its_version, int our_version);
Problem store_problem(const std::filesystem::path& file, const StoreError& error);

// Texts. A name, a word, a note that holds a control character, or nothing where it holds none.
std::optional<Problem> control_character_in(std::string_view text, Lines lines);

// Other files.
Problem file_not_written(const std::filesystem::path& path, int error_number);
Problem file_not_read(const std::filesystem::path& path, int error_number);
Problem file_is_there(const std::filesystem::path& path);
// `there` is a folder where `path` would be a file, or no folder where it would lie in one.
Problem other_kind_is_there(const std::filesystem::path& path, const std::filesystem::path& there);
Problem file_too_large(const std::filesystem::path& path, std::uint64_t limit);

}  // namespace insetbook
