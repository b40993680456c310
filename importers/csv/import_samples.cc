// SPDX-License-Identifier: GPL-3.0-or-later
//
// The samples table: one row is one finished card. Rows that are based on another sample wait until the
// others are in, so that a row based on a refused one is refused with it whatever their order.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <system_error>

#include "book/files.h"
#include "book/photos.h"
#include "book/sha256.h"
#include "importers/csv/session.h"
#include "importers/csv/units.h"
#include "measure/read.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr TermKind fold_kinds[] = {{VocabularyName::fold, "fold"}, {VocabularyName::feature, "feature"}};
constexpr TermKind occasion_kinds[] = {{VocabularyName::occasion, "occasion"}};
constexpr TermKind technique_kinds[] = {{VocabularyName::technique, "technique"},
                                        {VocabularyName::feature, "feature"},
                                        {VocabularyName::material, "material"}};

// Steps on lines of their own are steps as well as those with ';' between them.
std::string steps_of(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ';');
  return join_list(cut_list(text));
}

class SamplesImport {
 public:
  explicit SamplesImport(Session& session) : session_(session) {}
  void run();

 private:
  struct Waiting {
    std::size_t file;
    std::size_t begin;
    std::int64_t number;
    std::string key, based_on;
    bool done = false;
  };
  void take(TableFile& file, const CsvRow& row, Cells& cells);
  void take_waiting();
  void put_waiting(Waiting& waiting);
  void read_fields(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample);
  void read_base(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample);
  void read_scores(Cells& cells, SampleRow& sample);
  void read_mentions(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample);
  void read_photos(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample);
  std::optional<PhotoOnRecord> photo(const TableFile& file, const CsvRow& row, const std::string& said,
                                     const std::vector<PhotoOnRecord>& known);
  void close(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample);
  void put(TableFile& file, const CsvRow& row, Cells& cells, const std::string& key);
  void refuse(TableFile& file, const CsvRow& row, Cells& cells, const std::string& key);

  struct Seen {
    std::size_t hash;
    std::string row;
  };
  Session& session_;
  std::unordered_map<std::string, Seen> seen_;
  std::vector<Waiting> waiting_;
  std::unordered_map<std::string, std::size_t> waiting_by_key_;
};

void SamplesImport::run() {
  session_.each_row(TableKind::samples,
                    [&](TableFile& file, const CsvRow& row, Cells& cells) { take(file, row, cells); });
  take_waiting();
}

void SamplesImport::take(TableFile& file, const CsvRow& row, Cells& cells) {
  const std::string title = cells.name(Column::sample);
  const std::string key = fold(title);
  if (key.empty()) {
    cells.complain(Column::sample, "the row names no sample", "what the card is called");
    return session_.refuse(file, row, cells);
  }
  const auto [it, is_new] =
      seen_.emplace(key, Seen{hash_of_row(cells, file.header), place_of(file, row.number)});
  if (!is_new) {
    if (it->second.hash == hash_of_row(cells, file.header)) return session_.count(file, PutResult::same);
    cells.complain(Column::sample,
                   fmt::format("{} has a sample of the same name, with other words", it->second.row),
                   "another name for one of them");
    return session_.refuse(file, row, cells);
  }
  const std::string based_on = fold(cells.raw(Column::based_on));
  if (based_on.empty()) return put(file, row, cells, key);
  const auto place = static_cast<std::size_t>(&file - session_.files.data());
  waiting_by_key_.emplace(key, waiting_.size());
  waiting_.push_back({place, row.begin, row.number, key, based_on, false});
}

// What a row is based on comes first. A ring of rows is broken where it was entered: titles, not records, are
// written down.
void SamplesImport::take_waiting() {
  for (std::size_t first = 0; first < waiting_.size(); ++first) {
    std::vector<std::size_t> chain;
    for (std::size_t next = first;;) {
      if (waiting_[next].done || std::find(chain.begin(), chain.end(), next) != chain.end()) break;
      chain.push_back(next);
      const auto based_on = waiting_by_key_.find(waiting_[next].based_on);
      if (based_on == waiting_by_key_.end()) break;
      next = based_on->second;
    }
    for (auto it = chain.rbegin(); it != chain.rend(); ++it) put_waiting(waiting_[*it]);
  }
}

void SamplesImport::put_waiting(Waiting& waiting) {
  waiting.done = true;
  TableFile& file = session_.files[waiting.file];
  CsvReader reader(file.text, file.delimiter);
  reader.go_to(waiting.begin, waiting.number);
  CsvRow row;
  reader.next(row);
  Cells cells(file.header, row, session_.rules);
  const bool in_import = waiting_by_key_.contains(waiting.based_on);
  const std::string based_on = cells.name(Column::based_on);
  if (waiting.based_on == waiting.key) {
    cells.complain(Column::based_on, "the sample is based on itself", "another sample, or nothing");
  } else if (const auto known = session_.sample_titled_so(based_on); known && !known->refused.empty()) {
    cells.complain(Column::based_on, fmt::format("the sample it is based on was refused: {}", known->refused),
                   "that row first");
  } else if (!known && !in_import) {
    cells.complain(Column::based_on, fmt::format("no sample is called {}", in_quotes(based_on)),
                   "a sample in the book or in a table of this import; anything else goes into the note");
  }
  put(file, row, cells, waiting.key);
}

void SamplesImport::refuse(TableFile& file, const CsvRow& row, Cells& cells, const std::string& key) {
  session_.samples[key].refused = place_of(file, row.number);
  session_.refuse(file, row, cells);
}

void SamplesImport::put(TableFile& file, const CsvRow& row, Cells& cells, const std::string& key) {
  if (!cells.complaints().empty()) return refuse(file, row, cells, key);
  SampleRow sample;
  if (const auto known = sample_titled(session_.book, key))
    sample = insetbook::sample(session_.book, *known).value_or(sample);
  sample.title = cells.name(Column::sample);
  read_fields(file, row, cells, sample);
  if (!cells.complaints().empty()) return refuse(file, row, cells, key);
  const auto put = put_sample(session_.change, sample);
  if (!put) {
    cells.complain(Column::sample, put.error());
    return refuse(file, row, cells, key);
  }
  Session::SampleState& state = session_.samples[key];
  state.id = put->second;
  state.is_new = put->first == PutResult::added;
  session_.tell_left_out(file, row, cells);
  session_.count(file, put->first);
}

void SamplesImport::read_fields(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample) {
  cells.take_date(Column::made, sample.made);
  read_base(file, row, cells, sample);
  read_scores(cells, sample);
  read_mentions(file, row, cells, sample);
  if (cells.has(Column::words)) sample.words = cells.text(Column::words);
  if (cells.has(Column::envelope)) sample.envelope = cells.name(Column::envelope);
  if (cells.has(Column::steps)) sample.steps = steps_of(cells.text(Column::steps));
  if (cells.has(Column::based_on)) sample.based_on = cells.name(Column::based_on);
  const std::string note = cells.note();
  if (cells.has(Column::note) || !note.empty()) sample.note = note;
  close(file, row, cells, sample);
  if (cells.has(Column::photo) && cells.complaints().empty()) read_photos(file, row, cells, sample);
}

void SamplesImport::read_base(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample) {
  if (!cells.has(Column::base)) return;
  const SizeCell cell = cells.size(Column::base, Cells::IfNoSize::keep_text);
  sample.base = record_size(session_, file, row, cells, cell, cell.size ? cell.size->shape : std::string(),
                            OneFigure::kept_as_text);
  sample.base.placed = sample.base.width.has_value();
  if (sample.base.width) sample.base.text.clear();
}

void SamplesImport::read_scores(Cells& cells, SampleRow& sample) {
  if (!cells.has(Column::scores)) return;
  for (const std::string& score : cells.list(Column::scores)) {
    const auto fraction =
        read_length(score, session_.rules.unit) ? std::nullopt : fraction_made_a_date(score);
    if (fraction)
      cells.complain(Column::scores,
                     fmt::format("{} is a date; it was probably typed as {}", in_quotes(score), *fraction),
                     fmt::format("{} in, in a cell that the spreadsheet keeps as text", *fraction));
  }
  sample.scores = with_units(cells.joined(Column::scores), session_.rules.unit, Numbers::are_lengths);
}

void SamplesImport::read_mentions(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample) {
  const std::vector<Mention> known = std::move(sample.mentions);
  sample.mentions.clear();
  mention_terms(session_, file, row, cells.list(Column::fold), fold_kinds, "fold", "fold", sample.mentions);
  mention_terms(session_, file, row, cells.list(Column::occasion), occasion_kinds, "occasion", "occasion",
                sample.mentions);
  mention_terms(session_, file, row, cells.list(Column::technique), technique_kinds, "technique", "technique",
                sample.mentions);
  mention_supplies(session_, file, row, cells.list(Column::supply), sample.mentions);
  keep_mentions(
      known,
      [&](std::string_view kind) {
        const bool fold = cells.has(Column::fold), technique = cells.has(Column::technique),
                   supply = cells.has(Column::supply);
        if (kind == "fold") return !fold;
        if (kind == "occasion") return !cells.has(Column::occasion);
        if (kind == "technique") return !technique;
        if (kind == "feature") return !fold || !technique;
        if (kind == "material") return !technique || !supply;
        return kind == "supply" && !supply;
      },
      sample.mentions);
}

void SamplesImport::close(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample) {
  if (cells.has(Column::finished)) {
    const SizeCell cell = cells.size(Column::finished, Cells::IfNoSize::keep_text);
    const SizeOnRecord size =
        record_size(session_, file, row, cells, cell, cell.size ? cell.size->shape : std::string(),
                    OneFigure::kept_as_text);
    sample.finished_text = size.text;
    sample.closed_width = size.width;
    sample.closed_height = size.height;
    sample.closed_unit = size.unit;
  }
  if (!sample.finished_text.empty()) return;
  sample.closed_width.reset();
  sample.closed_height.reset();
  if (!session_.options.closed_size || !sample.base.width || !sample.base.height) return;
  std::vector<std::string> folds;
  for (const Mention& mention : sample.mentions)
    if (mention.kind == "fold") folds.push_back(mention.term.value_or(mention.written));
  const auto closed = session_.options.closed_size(folds, *sample.base.width, *sample.base.height,
                                                   sample.scores, sample.base.unit);
  if (!closed) return;
  sample.closed_width = closed->width;
  sample.closed_height = closed->height;
  sample.closed_unit = sample.base.unit;
}

// A photograph that is not there does not keep the row out: it is told beside it.
std::optional<PhotoOnRecord> SamplesImport::photo(const TableFile& file, const CsvRow& row,
                                                  const std::string& said,
                                                  const std::vector<PhotoOnRecord>& known) {
  const std::filesystem::path path = file.folder / std::filesystem::path(said);
  const std::string name = path.filename().string();
  Result<std::string> hash;
  if (session_.options.dry_run) {
    hash = read_file(path, largest_photo).map([](const std::string& bytes) { return sha256(bytes); });
  } else {
    hash = keep_photo_file(session_.book, path);
  }
  if (hash) return PhotoOnRecord{name, *hash};
  std::error_code ignored;
  const auto before =
      std::find_if(known.begin(), known.end(), [&](const auto& one) { return one.file_name == name; });
  if (before != known.end() && !std::filesystem::exists(path, ignored)) return *before;
  const Heading* heading = file.header.heading(Column::photo);
  session_.report.refused.push_back(
      {file.name, row.number, heading->written, hash.error().what, hash.error().expected, true});
  return std::nullopt;
}

void SamplesImport::read_photos(const TableFile& file, const CsvRow& row, Cells& cells, SampleRow& sample) {
  const std::vector<PhotoOnRecord> known = std::move(sample.photos);
  sample.photos.clear();
  for (const std::string& said : cells.list(Column::photo))
    if (auto one = photo(file, row, said, known)) sample.photos.push_back(std::move(*one));
}

}  // namespace

void import_samples(Session& session) {
  SamplesImport(session).run();
}

}  // namespace insetbook
