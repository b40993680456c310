// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/snapshot.h"

namespace insetbook {

Snapshot::Snapshot(const Book& book) : book_(book) {
  book_.statement("SAVEPOINT searching").run();
}

Snapshot::~Snapshot() {
  try {
    book_.statement("RELEASE searching").run();
  } catch (const StoreError&) {
    // Nothing was written; the connection gives the snapshot up when it is closed.
  }
}

}  // namespace insetbook
