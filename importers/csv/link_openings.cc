// SPDX-License-Identifier: GPL-3.0-or-later
//
// A piece may lie "in tidepool rectangles 2" before that die is in the book: the words are kept. When dies
// come in, they are looked at once more.
#include <algorithm>

#include "importers/csv/session.h"
#include "language/read_record.h"

namespace insetbook {

namespace {

struct Waiting {
  std::int64_t element;
  std::string goes;
};

std::vector<Waiting> waiting_pieces(const Book& book) {
  Statement& row = book.statement(
      "SELECT id, goes FROM element WHERE goes_how = 'in' AND goes_to IS NULL AND in_line_id IS NULL");
  std::vector<Waiting> found;
  while (row.step()) found.push_back({row.integer(0), std::string(row.text(1))});
  row.reset();
  return found;
}

}  // namespace

void link_openings(Session& session) {
  const bool dies_came = std::any_of(session.files.begin(), session.files.end(), [](const TableFile& file) {
    return file.header.kind == TableKind::dies && file.counts.added > 0;
  });
  if (!dies_came) return;
  for (const Waiting& one : waiting_pieces(session.book)) {
    const Goes goes = read_goes(one.goes);
    if (goes.target.empty() || goes.section || !goes.side.empty()) continue;
    const auto& opening = session.lookups.opening(goes.target);
    if (!opening || !opening->line_id) continue;
    session.book.statement("UPDATE element SET in_line_id = ? WHERE id = ?")
        .bind_all(*opening->line_id, one.element)
        .run();
  }
}

}  // namespace insetbook
