// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/files.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <cstdio>
#include <system_error>

#include "book/problems.h"

namespace insetbook {

namespace {

namespace fs = std::filesystem;

std::atomic<FileStep> step_watcher = nullptr;

void step(std::string_view what) {
  if (const FileStep watcher = step_watcher.load()) watcher(what);
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  int number() const { return number_; }

 private:
  int number_;
};

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

bool sync_path(const fs::path& path, int flags) {
  step("sync");
  const Descriptor file(::open(path.c_str(), flags | O_CLOEXEC));
  return file.number() >= 0 && ::fsync(file.number()) == 0;
}

// A file system without hard links gives EPERM; there the rename follows a look.
int place(const fs::path& finished, const fs::path& path, IfThere if_there) {
  step("rename");
  if (if_there == IfThere::replace) return ::rename(finished.c_str(), path.c_str()) == 0 ? 0 : errno;
  if (::link(finished.c_str(), path.c_str()) == 0) {
    step("remove");
    ::unlink(finished.c_str());
    return 0;
  }
  if (errno == EEXIST) return EEXIST;
  struct stat there {};
  if (::lstat(path.c_str(), &there) == 0) return EEXIST;
  return ::rename(finished.c_str(), path.c_str()) == 0 ? 0 : errno;
}

}  // namespace

FileStep watch_file_steps(FileStep watcher) {
  return step_watcher.exchange(watcher);
}

Result<void> put_in_place(const fs::path& finished, const fs::path& path, IfThere if_there) {
  if (!sync_path(finished, O_RDWR)) return failure(file_not_written(path, errno));
  if (const int error = place(finished, path, if_there); error != 0) {
    ::unlink(finished.c_str());
    return failure(error == EEXIST ? file_is_there(path) : file_not_written(path, error));
  }
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  if (!sync_path(folder, O_RDONLY | O_DIRECTORY)) return failure(file_not_written(path, errno));
  return {};
}

Result<void> write_file(const fs::path& path, std::string_view bytes, IfThere if_there) {
  const fs::path temporary = path.string() + fmt::format(".{}.part", ::getpid());
  step("write");
  {
    const Descriptor file(::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644));
    if (file.number() < 0 || !write_all(file.number(), bytes)) {
      const int error = errno;
      ::unlink(temporary.c_str());
      return failure(file_not_written(path, error));
    }
  }
  return put_in_place(temporary, path, if_there);
}

Result<std::string> read_file(const fs::path& path, std::uint64_t limit) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  struct stat about {};
  if (file.number() < 0 || ::fstat(file.number(), &about) != 0) return failure(file_not_read(path, errno));
  if (!S_ISREG(about.st_mode)) return failure(file_not_read(path, S_ISDIR(about.st_mode) ? EISDIR : EINVAL));
  if (static_cast<std::uint64_t>(about.st_size) > limit) return failure(file_too_large(path, limit));
  std::string bytes(static_cast<std::size_t>(about.st_size), '\0');
  std::size_t got = 0;
  while (got < bytes.size()) {
    const ssize_t more = ::read(file.number(), bytes.data() + got, bytes.size() - got);
    if (more < 0 && errno == EINTR) continue;
    if (more < 0) return failure(file_not_read(path, errno));
    if (more == 0) break;
    got += static_cast<std::size_t>(more);
  }
  bytes.resize(got);
  return bytes;
}

Result<void> remove_file(const fs::path& path) {
  step("remove");
  if (::unlink(path.c_str()) != 0 && errno != ENOENT) return failure(file_not_written(path, errno));
  return {};
}

Result<void> make_folder(const fs::path& path) {
  std::error_code error;
  fs::create_directories(path, error);
  if (error) return failure(file_not_written(path, error.value()));
  return {};
}

Result<void> can_be_files(const fs::path& folder, const std::vector<fs::path>& below) {
  std::error_code ignored;
  const auto in_the_way = [&](const fs::path& path) {
    return fs::exists(path, ignored) && !fs::is_directory(path, ignored);
  };
  if (in_the_way(folder)) return failure(other_kind_is_there(folder, folder));
  for (const fs::path& file : below) {
    fs::path path = folder;
    for (const fs::path& part : file.parent_path())
      if (in_the_way(path /= part)) return failure(other_kind_is_there(folder / file, path));
    if (fs::is_directory(folder / file, ignored))
      return failure(other_kind_is_there(folder / file, folder / file));
  }
  return {};
}

}  // namespace insetbook
