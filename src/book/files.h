// SPDX-License-Identifier: GPL-3.0-or-later
//
// Files beside the database: written whole under another name, synced, and renamed into place, so that a file
// under its own name is always complete. Each such step can be watched, which is how the crash tests stop at
// every one.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

// Called before each step with its name ("write", "sync", "rename", "remove"). For tests; null = nobody
// watches.
using FileStep = void (*)(std::string_view step);
FileStep watch_file_steps(FileStep watcher);  // returns the one before

enum class IfThere { replace, refuse };

// Makes `path` hold `bytes`, or leaves what was there.
Result<void> write_file(const std::filesystem::path& path, std::string_view bytes, IfThere if_there);
Result<std::string> read_file(const std::filesystem::path& path, std::uint64_t limit);

// Puts a finished file in its place: syncs it, renames it, syncs the folder.
Result<void> put_in_place(const std::filesystem::path& finished, const std::filesystem::path& path,
                          IfThere if_there);
Result<void> remove_file(const std::filesystem::path& path);  // one that is not there is no problem
Result<void> make_folder(const std::filesystem::path& path);
// Whether these could all be written as files below `folder`: a Problem names the first that is a folder
// already, or that would lie in something that is none. Whoever writes several asks this before the first.
Result<void> can_be_files(const std::filesystem::path& folder,
                          const std::vector<std::filesystem::path>& below);

}  // namespace insetbook
