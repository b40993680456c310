// SPDX-License-Identifier: GPL-3.0-or-later
//
// A book in the exchange format → records of this one, in one change. Anything in the file that is not the
// format refuses the whole file, with its path. Records are merged by UUID:
//
// - the same UUID: the record becomes what the file says. A sample is one thing: its pieces, mentions and
// photographs become the
//   file's too. The dies and lines of a set and their measurements are only added to: the figure that stands
//   in the book goes on standing, the file's joins it as a confirmation or a conflict.
// - the same name under another UUID (a colour, set, die or supply): one thing in two books. The book's own
// record stays as it is; what
//   it leaves blank is taken from the file; what the file refers to by its own UUID is the book's record.
// - the same title of a sample under another UUID: two cards. The file's is refused, and listed.
// - a setting that the book has set, and an own term that it has, stay.
#pragma once

#include <filesystem>
#include <string>

#include "book/book.h"
#include "importers/report/report.h"

namespace insetbook {

struct JsonSource {
  std::string name;              // as the person named it
  std::filesystem::path folder;  // photographs are in its folder `photos`
  std::string bytes;
};

Result<void> import_json(Change& change, const JsonSource& source, const ImportOptions& options,
                         ImportReport& report);

}  // namespace insetbook
