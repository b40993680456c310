// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/photos.h"

#include <fmt/core.h>
#include <sys/stat.h>

#include <array>
#include <cerrno>

#include "book/files.h"
#include "book/problems.h"
#include "book/sha256.h"
#include "text/quote.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

struct Beginning {
  std::size_t at;
  std::string_view bytes;
};

// How files of each kind begin (their own specifications; HEIF and AVIF are ISO base media files).
bool looks_like_picture(std::string_view bytes) {
  static constexpr std::array<Beginning, 10> beginnings{{
      {0, "\xff\xd8\xff"},
      {0, "\x89PNG\r\n\x1a\n"},
      {0, "GIF87a"},
      {0, "GIF89a"},
      {0, std::string_view("II*\0", 4)},
      {0, std::string_view("MM\0*", 4)},
      {8, "WEBP"},
      {4, "ftyp"},
      {0, "<svg"},
      {0, "<?xml"},
  }};
  for (const Beginning& one : beginnings) {
    if (bytes.size() > one.at && bytes.substr(one.at).starts_with(one.bytes)) return true;
  }
  return false;
}

Problem no_picture(std::string_view file_name) {
  Problem problem;
  problem.what = fmt::format("{} is no picture", in_quotes(file_name));
  problem.where.file = file_name;
  problem.expected = "a JPEG, PNG, WebP, GIF, TIFF, HEIF or SVG file";
  return problem;
}

Problem photo_missing(const fs::path& path) {
  Problem problem = file_not_read(path, ENOENT);
  problem.kind = ProblemKind::unusable_book;
  problem.expected =
      "a backup of the book holds its photographs; \"insetbook verify\" lists all that are missing";
  return problem;
}

Problem photo_damaged(const fs::path& path) {
  Problem problem = photo_missing(path);
  problem.what = fmt::format("the photograph \"{}\" is damaged", path.string());
  return problem;
}

}  // namespace

bool is_photo_hash(std::string_view hash) {
  return hash.size() == 64 && hash.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

fs::path photo_path(const Book& book, std::string_view hash) {
  return book.folder() / "photos" / hash;
}

Result<std::string> keep_photo(const Book& book, std::string_view bytes, std::string_view file_name) {
  if (bytes.size() > largest_photo) return failure(file_too_large(fs::path(file_name), largest_photo));
  if (!looks_like_picture(bytes)) return failure(no_picture(file_name));
  std::string hash = sha256(bytes);
  const fs::path path = photo_path(book, hash);
  if (read_photo(book, hash)) return hash;  // kept already, and whole
  if (auto made = make_folder(path.parent_path()); !made) return failure(made.error());
  if (auto written = write_file(path, bytes, IfThere::replace); !written) return failure(written.error());
  return hash;
}

Result<std::string> keep_photo_file(const Book& book, const fs::path& file) {
  const Result<std::string> bytes = read_file(file, largest_photo);
  if (!bytes) return failure(bytes.error());
  return keep_photo(book, *bytes, file.string());
}

Result<std::string> read_photo(const Book& book, std::string_view hash) {
  return read_photo(book.folder(), hash);
}

Result<std::string> read_photo(const fs::path& book_folder, std::string_view hash) {
  const fs::path path = book_folder / "photos" / hash;
  struct stat about {};
  if (!is_photo_hash(hash) || ::stat(path.c_str(), &about) != 0) return failure(photo_missing(path));
  Result<std::string> bytes = read_file(path, largest_photo);
  if (bytes && sha256(*bytes) != hash) return failure(photo_damaged(path));
  return bytes;
}

}  // namespace insetbook
