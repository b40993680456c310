// SPDX-License-Identifier: GPL-3.0-or-later
//
// The bytes of photographs: one file each under photos/, named by its SHA-256, so that the same photograph is
// kept once. A file is complete and on the disk before `keep_photo` returns: call it before or inside the
// change whose row names it. Photographs whose samples were deleted stay, because the deletion can be taken
// back.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "book/book.h"

namespace insetbook {

inline constexpr std::uint64_t largest_photo = 64'000'000;  // bytes

// Returns the hash. Refused: no bytes, too many, or bytes that are no JPEG, PNG, WebP, GIF, TIFF, HEIF or SVG
// file.
Result<std::string> keep_photo(const Book& book, std::string_view bytes, std::string_view file_name);
// The same, from a file a person named.
Result<std::string> keep_photo_file(const Book& book, const std::filesystem::path& file);

std::filesystem::path photo_path(const Book& book, std::string_view hash);
bool is_photo_hash(std::string_view hash);
// Refused where the file is missing or is not what its name says.
Result<std::string> read_photo(const Book& book, std::string_view hash);
Result<std::string> read_photo(const std::filesystem::path& book_folder, std::string_view hash);

}  // namespace insetbook
