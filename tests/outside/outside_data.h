// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where the published data is that whole-file checks read: the folder that INSETBOOK_OUTSIDE names, else
// ../shared/outside beside the project. Empty where it is not there: the test then reports itself as skipped,
// never as passed.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string>

namespace insetbook {

inline std::optional<std::filesystem::path> outside_data(const std::string& name) {
  const char* named = std::getenv("INSETBOOK_OUTSIDE");
  const std::filesystem::path folder =
      named != nullptr ? std::filesystem::path(named)
                       : std::filesystem::path(INSETBOOK_SOURCE_DIR).parent_path() / "shared" / "outside";
  const std::filesystem::path file = folder / name;
  if (!std::filesystem::exists(file)) return std::nullopt;
  return file;
}

}  // namespace insetbook
