// SPDX-License-Identifier: GPL-3.0-or-later
//
// A folder that lives as long as a test; in memory where the system has such a place, because a book syncs a
// lot.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace insetbook {

class TemporaryFolder {
 public:
  TemporaryFolder() {
    const std::filesystem::path memory = "/dev/shm";
    std::string name = (memory / "insetbook-XXXXXX").string();
    if (::mkdtemp(name.data()) != nullptr) {
      path_ = name;
      return;
    }
    name = (std::filesystem::temp_directory_path() / "insetbook-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder() {
    std::error_code ignored;  // what is left in the temporary folder is no failure of the test
    std::filesystem::remove_all(path_, ignored);
  }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace insetbook
