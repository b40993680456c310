// SPDX-License-Identifier: GPL-3.0-or-later
#include "failing_disk.h"

#include <signal.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cstring>
#include <new>
#include <string>

#include "book/files.h"

namespace insetbook {

namespace {

struct State {
  Failure failure = Failure::none;
  int at = 0;
  int passed = 0;
} state;

enum class Verdict { go_on, full, die };

Verdict next_point() {
  ++state.passed;
  if (state.failure == Failure::none || state.at == 0 || state.passed < state.at) return Verdict::go_on;
  return state.failure == Failure::disk_full ? Verdict::full : Verdict::die;
}

[[noreturn]] void die() {
  ::kill(::getpid(), SIGKILL);
  for (;;) ::pause();
}

// The real file's bytes stand right behind this.
struct File {
  sqlite3_file base;
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

File* file_of(sqlite3_file* file) {
  return reinterpret_cast<File*>(file);
}
sqlite3_file* real(sqlite3_file* file) {
  return file_of(file)->real();
}

int close_file(sqlite3_file* file) {
  return real(file)->pMethods != nullptr ? real(file)->pMethods->xClose(real(file)) : SQLITE_OK;
}

int write_file_part(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
  switch (next_point()) {
    case Verdict::full:
      return SQLITE_FULL;
    case Verdict::die:
      real(file)->pMethods->xWrite(real(file), bytes, count / 2, offset);
      die();
    case Verdict::go_on:
      break;
  }
  return real(file)->pMethods->xWrite(real(file), bytes, count, offset);
}

int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
  if (next_point() == Verdict::die) die();
  return real(file)->pMethods->xTruncate(real(file), size);
}

int sync_file(sqlite3_file* file, int flags) {
  if (next_point() == Verdict::die) die();
  return real(file)->pMethods->xSync(real(file), flags);
}

// The rest is the real file's, as it is.
const sqlite3_io_methods methods{
    3,
    close_file,
    [](sqlite3_file* f, void* to, int n, sqlite3_int64 at) {
      return real(f)->pMethods->xRead(real(f), to, n, at);
    },
    write_file_part,
    truncate_file,
    sync_file,
    [](sqlite3_file* f, sqlite3_int64* size) { return real(f)->pMethods->xFileSize(real(f), size); },
    [](sqlite3_file* f, int lock) { return real(f)->pMethods->xLock(real(f), lock); },
    [](sqlite3_file* f, int lock) { return real(f)->pMethods->xUnlock(real(f), lock); },
    [](sqlite3_file* f, int* out) { return real(f)->pMethods->xCheckReservedLock(real(f), out); },
    [](sqlite3_file* f, int op, void* arg) { return real(f)->pMethods->xFileControl(real(f), op, arg); },
    [](sqlite3_file* f) { return real(f)->pMethods->xSectorSize(real(f)); },
    [](sqlite3_file* f) { return real(f)->pMethods->xDeviceCharacteristics(real(f)); },
    [](sqlite3_file* f, int page, int size, int extend, void volatile** at) {
      return real(f)->pMethods->xShmMap(real(f), page, size, extend, at);
    },
    [](sqlite3_file* f, int offset, int n, int flags) {
      return real(f)->pMethods->xShmLock(real(f), offset, n, flags);
    },
    [](sqlite3_file* f) { real(f)->pMethods->xShmBarrier(real(f)); },
    [](sqlite3_file* f, int remove) { return real(f)->pMethods->xShmUnmap(real(f), remove); },
    [](sqlite3_file* f, sqlite3_int64 at, int n, void** to) {
      return real(f)->pMethods->xFetch(real(f), at, n, to);
    },
    [](sqlite3_file* f, sqlite3_int64 at, void* p) { return real(f)->pMethods->xUnfetch(real(f), at, p); },
};

sqlite3_vfs* below(sqlite3_vfs* vfs) {
  return static_cast<sqlite3_vfs*>(vfs->pAppData);
}

int open_file(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out) {
  file->pMethods = nullptr;
  real(file)->pMethods = nullptr;
  const int code = below(vfs)->xOpen(below(vfs), name, real(file), flags, out);
  if (code == SQLITE_OK) file->pMethods = &methods;
  return code;
}

int delete_file(sqlite3_vfs* vfs, const char* name, int sync_folder) {
  if (next_point() == Verdict::die) die();
  return below(vfs)->xDelete(below(vfs), name, sync_folder);
}

void step_of_file(std::string_view) {
  if (next_point() == Verdict::die) die();
}

}  // namespace

void use_failing_disk() {
  static sqlite3_vfs vfs = [] {
    sqlite3_vfs* system = sqlite3_vfs_find(nullptr);
    sqlite3_vfs made = *system;
    made.szOsFile = static_cast<int>(sizeof(File)) + system->szOsFile;
    made.zName = "failing-disk";
    made.pAppData = system;
    made.xOpen = open_file;
    made.xDelete = delete_file;
    made.xAccess = [](sqlite3_vfs* v, const char* n, int f, int* o) {
      return below(v)->xAccess(below(v), n, f, o);
    };
    made.xFullPathname = [](sqlite3_vfs* v, const char* n, int s, char* o) {
      return below(v)->xFullPathname(below(v), n, s, o);
    };
    return made;
  }();
  if (sqlite3_vfs_find(vfs.zName) == nullptr) sqlite3_vfs_register(&vfs, 1);
  watch_file_steps(step_of_file);
}

void fail_at(Failure failure, int point) {
  state = {failure, point, 0};
}

int points_passed() {
  return state.passed;
}

}  // namespace insetbook
