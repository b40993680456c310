// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/session.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/settings.h"
#include "shape/shape.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

Session::Session(Change& the_change, const Vocabulary& vocabulary, const ImportOptions& the_options,
                 ImportReport& the_report)
    : change(the_change),
      book(the_change.book()),
      options(the_options),
      report(the_report),
      lookups(the_change.book(), vocabulary) {
  rules.unit = settings(book).unit;
  rules.dates = options.dates;
}

std::string place_of(const TableFile& file, std::int64_t row) {
  return fmt::format("row {} of {}", row, file.name);
}

std::size_t hash_of_row(const Cells& cells, const Header& header) {
  const auto hash_of = [](std::string_view text) { return std::hash<std::string_view>()(text); };
  std::size_t hash = hash_of(cells.note());
  for (const Heading& heading : header.headings) {
    if (heading.column == nullptr) continue;
    const std::string_view text = cells.raw(heading.column->column);
    // Added up, because another file may have its columns in another order.
    if (!text.empty())
      hash += (hash_of(text) + static_cast<std::size_t>(heading.column->column)) * 0x9E3779B97F4A7C15u;
  }
  return hash;
}

std::optional<Session::SampleState> Session::sample_titled_so(const std::string& title) {
  const std::string key = fold(title);
  const auto it = samples.find(key);
  if (it != samples.end()) return it->second;
  const auto id = sample_titled(book, key);
  if (!id) return std::nullopt;
  SampleState state;
  state.id = *id;
  return samples.emplace(key, state).first->second;
}

void Session::progress() {
  constexpr std::int64_t every = 1024;
  ++done_;
  if (!options.progress || done_ % every != 0) return;
  if (in_all_ == 0)
    for (const TableFile& file : files) in_all_ += file.rows;
  options.progress(std::min(done_, in_all_), in_all_);
}

namespace {

// Lines of a cell may end; other characters that nothing shows would make a name that nobody can type.
std::optional<Complaint> control_character_in(const TableFile& file, const CsvRow& row) {
  for (std::size_t i = 0; i < row.size(); ++i) {
    const auto found = control_character(row.cell(i), Lines::several);
    if (!found) continue;
    const bool known = i < file.header.headings.size();
    return Complaint{known ? file.header.headings[i].written : std::string(),
                     fmt::format("the cell holds {}, at {}", name_of(*found), found->at),
                     "the cell without it"};
  }
  return std::nullopt;
}

}  // namespace

void Session::each_row(TableKind kind, const std::function<void(TableFile&, const CsvRow&, Cells&)>& work) {
  for (TableFile& file : files) {
    if (file.header.kind != kind) continue;
    CsvReader reader(file.text, file.delimiter);
    reader.go_to(file.data_begin, file.data_number);
    CsvRow row;
    while (reader.next(row)) {
      progress();
      Cells cells(file.header, row, rules);
      if (row.problem) {
        const bool known = row.problem_cell < file.header.headings.size();
        refuse(file, row,
               {{known ? file.header.headings[row.problem_cell].written : std::string(), row.problem->what,
                 row.problem->expected}});
      } else if (const auto control = control_character_in(file, row)) {
        refuse(file, row, {*control});
      } else if (!cells.blank()) {
        work(file, row, cells);
      }
    }
  }
}

void Session::refuse(TableFile& file, const CsvRow& row, const std::vector<Complaint>& complaints) {
  ++file.counts.refused;
  std::string why;
  for (const Complaint& complaint : complaints) {
    report.refused.push_back(
        {file.name, row.number, complaint.column, complaint.what, complaint.expected, false});
    why += fmt::format("{}{}{}{}{}{}", why.empty() ? "" : " | ", complaint.column,
                       complaint.column.empty() ? "" : ": ", complaint.what,
                       complaint.expected.empty() ? "" : "; wanted: ", complaint.expected);
  }
  file.refused.push_back({row.begin, row.number, std::move(why)});
}

void Session::refuse(TableFile& file, const CsvRow& row, const Cells& cells) {
  std::vector<Complaint> all = cells.complaints();
  all.insert(all.end(), cells.left_out().begin(), cells.left_out().end());
  refuse(file, row, all);
}

void Session::tell_left_out(const TableFile& file, const CsvRow& row, const Cells& cells) {
  for (const Complaint& one : cells.left_out())
    report.refused.push_back({file.name, row.number, one.column, one.what, one.expected, true});
}

void Session::count(TableFile& file, PutResult result) {
  switch (result) {
    case PutResult::added:
      ++file.counts.added;
      break;
    case PutResult::changed:
      ++file.counts.changed;
      break;
    case PutResult::same:
      ++file.counts.same;
      break;
  }
}

void Session::kept_as_text(std::string_view what, std::string_view written, const TableFile& file,
                           const CsvRow& row) {
  const auto [it, is_new] = unknown_places_.emplace(fmt::format("{}\x1f{}", what, written), unknown_.size());
  if (is_new) unknown_.push_back({std::string(what), std::string(written), place_of(file, row.number), 0});
  ++unknown_[it->second].times;
}

void Session::report_kept_as_text() {
  for (const Unknown& one : unknown_) {
    constexpr std::string_view unknown = "unknown ";
    const std::string perhaps =
        one.what.starts_with(unknown) ? lookups.perhaps(one.what.substr(unknown.size()), one.written) : "";
    note(
        fmt::format("{} {} kept as text ({}{}){}", one.what, in_quotes(one.written),
                    one.times == 1 ? std::string() : fmt::format("{} times, first in ", one.times), one.first,
                    perhaps.empty() ? std::string() : fmt::format("; did you mean {}?", in_quotes(perhaps))));
  }
}

void mention_terms(Session& session, const TableFile& file, const CsvRow& row,
                   const std::vector<std::string>& words, std::span<const TermKind> kinds,
                   std::string_view otherwise, std::string_view what, std::vector<Mention>& mentions) {
  for (const std::string& word : words) {
    Mention mention;
    mention.kind = otherwise;
    mention.written = word;
    for (const TermKind& kind : kinds) {
      const auto& term = session.lookups.term(kind.vocabulary, word);
      if (!term) continue;
      mention.kind = kind.mention;
      mention.term = term;
      break;
    }
    if (!mention.term) session.kept_as_text(fmt::format("unknown {}", what), word, file, row);
    mentions.push_back(std::move(mention));
  }
}

void mention_supplies(Session& session, const TableFile& file, const CsvRow& row,
                      const std::vector<std::string>& names, std::vector<Mention>& mentions) {
  for (const std::string& name : names) {
    Mention mention;
    mention.kind = "supply";
    mention.written = name;
    mention.supply_id = session.lookups.supply(name);
    if (!mention.supply_id) {
      if (const auto& material = session.lookups.term(VocabularyName::material, name)) {
        mention.kind = "material";
        mention.term = material;
      } else {
        session.kept_as_text("unknown supply", name, file, row);
      }
    }
    mentions.push_back(std::move(mention));
  }
}

void mention_colours(Session& session, const TableFile& file, const CsvRow& row,
                     const std::vector<std::string>& names, std::string_view kind,
                     std::vector<Mention>& mentions) {
  for (const std::string& name : names) {
    Mention mention;
    mention.kind = kind;
    mention.written = name;
    mention.colour_id = session.lookups.colour(name);
    if (!mention.colour_id) session.kept_as_text("unknown colour", name, file, row);
    mentions.push_back(std::move(mention));
  }
}

void keep_mentions(const std::vector<Mention>& known, const std::function<bool(std::string_view kind)>& kept,
                   std::vector<Mention>& mentions) {
  for (const Mention& mention : known) {
    const bool there = std::find(mentions.begin(), mentions.end(), mention) != mentions.end();
    if (kept(mention.kind) && !there) mentions.push_back(mention);
  }
}

SizeOnRecord record_size(Session& session, const TableFile& file, const CsvRow& row, Cells& cells,
                         const SizeCell& cell, std::string_view shape, OneFigure one_figure) {
  SizeOnRecord as_text;
  as_text.text = cell.text;
  if (!cell.size) {
    if (cell.kept_as_text) session.kept_as_text("size", cell.text, file, row);
    return as_text;
  }
  const std::string_view said = shape.empty() ? std::string_view(cell.size->shape) : shape;
  if (cell.size->one_figure && !one_figure_is_both(said)) {
    const auto kind = shape_kind(said);
    const bool needs_two =
        kind == ShapeKind::rectangle || kind == ShapeKind::rounded_rectangle || kind == ShapeKind::oval;
    if (needs_two) {
      cells.complain(cell.column,
                     fmt::format("{} is one figure; the shape {} has two", in_quotes(cell.text), shape),
                     "a width and a height: 2 x 3 in");
      return as_text;
    }
    if (one_figure == OneFigure::kept_as_text) {
      session.kept_as_text("size of one figure", cell.text, file, row);
      return as_text;
    }
  }
  return size_of_piece(*cell.size, said, cell.text);
}

}  // namespace insetbook
