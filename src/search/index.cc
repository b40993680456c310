// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/index.h"

#include <signal.h>
#include <unistd.h>
#include <xapian.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <system_error>

#include "search/index_documents.h"
#include "search/index_moved.h"
#include "search/snapshot.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

constexpr const char* uuid_name = "book";
constexpr const char* fingerprint_name = "fingerprint";
constexpr const char* change_name = "change";
constexpr const char* change_made_name = "change made";

// What an index says it holds.
struct Held {
  std::string uuid, fingerprint, change_made;
  std::int64_t change = -1;
};

Held held_by(const Xapian::Database& db) {
  Held held{db.get_metadata(uuid_name), db.get_metadata(fingerprint_name), db.get_metadata(change_made_name),
            -1};
  const std::string change = db.get_metadata(change_name);
  std::from_chars(change.data(), change.data() + change.size(), held.change);
  return held;
}

// When the change was made; "" where there is none. A restored book may count to the same number again: the
// time tells the two apart.
std::string when_made(const Book& book, std::int64_t change) {
  Statement& row = book.statement("SELECT made FROM change WHERE id = ?");
  row.bind(1, change);
  std::string made = row.step() ? std::string(row.text(0)) : std::string();
  row.reset();
  return made;
}

bool holds_this_book(const Held& held, const Book& book, std::int64_t last) {
  return held.uuid == book.uuid() && held.fingerprint == Index::fingerprint() && held.change >= 0 &&
         held.change <= last && held.change_made == when_made(book, held.change);
}

void write_held(Xapian::WritableDatabase& db, const Book& book, std::int64_t change) {
  db.set_metadata(uuid_name, book.uuid());
  db.set_metadata(fingerprint_name, Index::fingerprint());
  db.set_metadata(change_made_name, when_made(book, change));
  db.set_metadata(change_name, std::to_string(change));
}

std::vector<std::int64_t> every_sample(const Book& book) {
  std::vector<std::int64_t> ids;
  Statement& rows = book.statement("SELECT id FROM sample ORDER BY id");
  while (rows.step()) ids.push_back(rows.integer(0));
  rows.reset();
  return ids;
}

Xapian::docid docid_of(std::int64_t sample) {
  return static_cast<Xapian::docid>(sample);
}

void write_sample(Xapian::WritableDatabase& db, const Book& book, std::int64_t sample, Stemmer& stemmer) {
  Xapian::Document document;
  if (fill_document(book, sample, stemmer, document)) {
    db.replace_document(docid_of(sample), document);
    return;
  }
  try {
    db.delete_document(docid_of(sample));
  } catch (const Xapian::DocNotFoundError&) {
    // It was made and deleted since the index was written.
  }
}

std::string aside_name(std::string_view what) {
  return "index." + std::string(what) + "-" + std::to_string(getpid());
}

// Removes what a killed program left beside the index; what a living one is at work on stays.
void remove_left_over(const fs::path& folder) {
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with("index.new-") && !name.starts_with("index.old-")) continue;
    const std::string digits = name.substr(10);
    pid_t owner = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), owner);
    const bool alive = owner > 0 && owner != getpid() && kill(owner, 0) == 0;
    if (!alive) fs::remove_all(entry.path(), ignored);
  }
}

Problem not_writable(const fs::path& folder, const std::string& why) {
  Problem problem;
  problem.kind = ProblemKind::unusable_book;
  problem.what = "the index in \"" + folder.string() + "\" cannot be written: " + why;
  problem.expected =
      "a folder that may be written, with free space; questions are answered without it, but slower";
  return problem;
}

Xapian::Query phrase_query(const std::vector<std::string>& words) {
  if (words.empty()) return Xapian::Query::MatchAll;
  if (words.size() == 1) return Xapian::Query(words.front());
  return Xapian::Query(Xapian::Query::OP_PHRASE, words.begin(), words.end(),
                       static_cast<Xapian::termcount>(words.size()));
}

Xapian::Query query_of(const TextAsked& asked) {
  if (asked.kind == TextAsked::Kind::phrase) return phrase_query(asked.words);
  std::vector<Xapian::Query> met, not_met;
  for (const TextAsked& child : asked.children) {
    if (child.kind == TextAsked::Kind::none && asked.kind == TextAsked::Kind::all) {
      for (const TextAsked& each : child.children) not_met.push_back(query_of(each));
    } else {
      met.push_back(query_of(child));
    }
  }
  if (asked.kind == TextAsked::Kind::any) {
    return met.empty() ? Xapian::Query::MatchNothing
                       : Xapian::Query(Xapian::Query::OP_OR, met.begin(), met.end());
  }
  if (asked.kind == TextAsked::Kind::none) {
    not_met = std::move(met);
    met.clear();
  }
  Xapian::Query query =
      met.empty() ? Xapian::Query::MatchAll : Xapian::Query(Xapian::Query::OP_AND, met.begin(), met.end());
  if (not_met.empty()) return query;
  return Xapian::Query(Xapian::Query::OP_AND_NOT, query,
                       Xapian::Query(Xapian::Query::OP_OR, not_met.begin(), not_met.end()));
}

// Whether the index says of the sample what the book says: its words with all their places, and its place in
// the order.
bool says_the_same(const Xapian::Database& db, std::int64_t sample, const Xapian::Document& made) {
  const Xapian::Document there = db.get_document(docid_of(sample));
  if (there.get_value(newest_first_slot) != made.get_value(newest_first_slot) ||
      there.termlist_count() != made.termlist_count()) {
    return false;
  }
  auto b = made.termlist_begin();
  for (auto a = there.termlist_begin(); a != there.termlist_end(); ++a, ++b) {
    if (*a != *b || a.get_wdf() != b.get_wdf()) return false;
    const auto end = db.positionlist_end(docid_of(sample), *a);
    auto place = b.positionlist_begin();
    for (auto each = db.positionlist_begin(docid_of(sample), *a); each != end; ++each, ++place) {
      if (place == b.positionlist_end() || *each != *place) return false;
    }
    if (place != b.positionlist_end()) return false;
  }
  return true;
}

// Reads everything in the index. (Xapian's own check of a database upsets the address sanitizer, and it does
// not know what the index should say.)
std::vector<std::string> differences(const Xapian::Database& db, const Book& book, Stemmer& stemmer) {
  std::vector<std::string> complaints;
  const std::vector<std::int64_t> samples = every_sample(book);
  if (db.get_doccount() != samples.size())
    complaints.emplace_back("the index holds another number of samples");
  std::map<std::string, Xapian::doccount> holders;
  for (const std::int64_t sample : samples) {
    Xapian::Document made;
    fill_document(book, sample, stemmer, made);
    for (auto term = made.termlist_begin(); term != made.termlist_end(); ++term) ++holders[*term];
    if (!says_the_same(db, sample, made)) {
      complaints.push_back("the index differs from the book for sample " + std::to_string(sample));
    }
  }
  for (const auto& [term, count] : holders) {
    Xapian::doccount listed = 0;
    for (auto each = db.postlist_begin(term); each != db.postlist_end(term); ++each) ++listed;
    if (listed != count)
      complaints.push_back("the index lists another number of samples for \"" + term + "\"");
  }
  return complaints;
}

// Walks a sorted list of samples as Xapian walks the documents of a term.
class AmongSource : public Xapian::PostingSource {
 public:
  explicit AmongSource(const std::vector<std::int64_t>& ids) : ids_(ids) {}
  Xapian::doccount get_termfreq_min() const override { return 0; }
  Xapian::doccount get_termfreq_est() const override { return static_cast<Xapian::doccount>(ids_.size()); }
  Xapian::doccount get_termfreq_max() const override { return static_cast<Xapian::doccount>(ids_.size()); }
  void next(double) override { at_ = started_ ? at_ + 1 : 0, started_ = true; }
  void skip_to(Xapian::docid did, double) override {
    started_ = true;
    const auto from = ids_.begin() + static_cast<std::ptrdiff_t>(at_);
    at_ = static_cast<std::size_t>(std::lower_bound(from, ids_.end(), std::int64_t{did}) - ids_.begin());
  }
  bool at_end() const override { return at_ >= ids_.size(); }
  Xapian::docid get_docid() const override { return docid_of(ids_[at_]); }
  void init(const Xapian::Database&) override { at_ = 0, started_ = false; }

 private:
  const std::vector<std::int64_t>& ids_;
  std::size_t at_ = 0;
  bool started_ = false;
};

}  // namespace

// The samples that the index lacks, for one use.
struct Lacking {
  Xapian::WritableDatabase db;
  std::vector<std::int64_t> samples;  // in the order of their documents
  std::vector<std::int64_t> hidden;   // sorted: what the index may say of these is out of date
  std::int64_t change = -1;
  fs::path folder;  // where it is too much for memory
};

struct Index::Parts {
  ~Parts() { drop_lacking(); }

  fs::path folder;
  std::optional<Xapian::Database> db;
  std::int64_t change = -1;  // the last change that db holds
  bool damaged = false;
  std::optional<Lacking> lacking;
  Stemmer stemmer;

  fs::path path() const { return folder / "index"; }
  void drop_lacking();
  void open(const Book& book, std::int64_t last);
  State write(const Book& book, std::int64_t last);
  void build(const Book& book, const fs::path& where);
  void put_in_place(const fs::path& built) const;
  void fill_lacking(const Book& book, std::int64_t last);
  State opened_again(const Book& book);
  State bring_up(const Book& book);
  Xapian::Database all() const;
  std::size_t holders(const std::string& stem) const;
  std::vector<TextHit> found(const Xapian::MSet& mset) const;
  TextHits find(const Xapian::Query& query, const Wanted& wanted) const;
};

void Index::Parts::drop_lacking() {
  if (lacking && !lacking->folder.empty()) {
    std::error_code ignored;
    const fs::path where = lacking->folder;
    lacking.reset();
    fs::remove_all(where, ignored);
  }
  lacking.reset();
}

// Opens what is there, if it is an index of this book.
void Index::Parts::open(const Book& book, std::int64_t last) {
  db.reset();
  change = -1;
  if (damaged) return;
  try {
    Xapian::Database opened(path().string());
    const Held held = held_by(opened);
    // Another program may have changed the book and the index since `last` was read.
    if (!holds_this_book(held, book, held.change > last ? book.last_change() : last)) return;
    change = held.change;
    db = std::move(opened);
  } catch (const Xapian::Error&) {
    // Missing, torn or of another format: it is built anew.
  }
}

void Index::Parts::build(const Book& book, const fs::path& where) {
  Xapian::WritableDatabase made(where.string(), Xapian::DB_CREATE | Xapian::DB_BACKEND_GLASS);
  const Snapshot snapshot(book);
  const std::int64_t last = book.last_change();
  constexpr int kept_in_memory = 4'000;
  int written = 0;
  for (const std::int64_t sample : every_sample(book)) {
    write_sample(made, book, sample, stemmer);
    if (++written % kept_in_memory == 0) made.commit();
  }
  write_held(made, book, last);
  made.commit();
}

void Index::Parts::put_in_place(const fs::path& built) const {
  const fs::path old = folder / aside_name("old");
  fs::remove_all(old);
  if (fs::exists(path())) fs::rename(path(), old);
  fs::rename(built, path());
  std::error_code ignored;
  fs::remove_all(old, ignored);
}

Index::State Index::Parts::write(const Book& book, std::int64_t last) {
  if (!db) {
    remove_left_over(folder);
    const fs::path aside = folder / aside_name("new");
    build(book, aside);
    put_in_place(aside);
    damaged = false;
    open(book, book.last_change());
    return State::rebuilt;
  }
  Xapian::WritableDatabase writing(path().string(), Xapian::DB_OPEN);
  const Snapshot snapshot(book);
  const std::int64_t now = book.last_change();
  const Held held = held_by(writing);
  if (!holds_this_book(held, book, now)) throw IndexMoved();
  for (const std::int64_t sample : book.samples_changed_since(held.change)) {
    write_sample(writing, book, sample, stemmer);
  }
  write_held(writing, book, now);
  writing.commit();
  writing.close();
  open(book, std::max(now, last));
  return State::caught_up;
}

// A few are kept in memory; many go into a folder of the system's for such things.
void Index::Parts::fill_lacking(const Book& book, std::int64_t last) {
  constexpr std::size_t most_in_memory = 2'000;
  drop_lacking();
  Lacking made;
  made.change = last;
  made.hidden = db ? book.samples_changed_since(change) : every_sample(book);
  if (made.hidden.size() <= most_in_memory) {
    made.db = Xapian::WritableDatabase(std::string(), Xapian::DB_BACKEND_INMEMORY);
  } else {
    static int count = 0;
    made.folder = fs::temp_directory_path() /
                  ("insetbook-index-" + std::to_string(getpid()) + "-" + std::to_string(++count));
    const int flags = Xapian::DB_CREATE_OR_OVERWRITE | Xapian::DB_BACKEND_GLASS | Xapian::DB_NO_SYNC;
    made.db = Xapian::WritableDatabase(made.folder.string(), flags);
  }
  for (const std::int64_t sample : made.hidden) {
    Xapian::Document document;
    if (!fill_document(book, sample, stemmer, document)) continue;
    made.db.add_document(document);
    made.samples.push_back(sample);
  }
  made.db.commit();
  lacking = std::move(made);
}

Index::State Index::Parts::opened_again(const Book& book) {
  const std::int64_t last = book.last_change();
  open(book, last);
  return db && change == last ? State::in_step : State::not_written;
}

Index::State Index::Parts::bring_up(const Book& book) {
  const std::int64_t last = book.last_change();
  if (db && change == last && !damaged) return State::in_step;
  if (lacking && lacking->change == last && !damaged) return State::not_written;
  drop_lacking();
  open(book, last);
  if (db && change == last) return State::in_step;
  try {
    return write(book, last);
  } catch (const Xapian::DatabaseLockError&) {
    return opened_again(book);
  } catch (const Xapian::DatabaseModifiedError&) {
    throw IndexMoved();
  } catch (const Xapian::Error&) {
    if (!db) return opened_again(book);
  } catch (const fs::filesystem_error&) {
    return opened_again(book);
  }
  // It could be read but not brought up: perhaps it is damaged where it was not read.
  db.reset();
  try {
    return write(book, last);
  } catch (const Xapian::Error&) {
    return opened_again(book);
  } catch (const fs::filesystem_error&) {
    return opened_again(book);
  }
}

Xapian::Database Index::Parts::all() const {
  if (!lacking) return *db;
  Xapian::Database together;
  if (db) together.add_database(*db);
  together.add_database(lacking->db);
  return together;
}

// What the index says of samples that were changed since does not count.
std::size_t Index::Parts::holders(const std::string& stem) const {
  std::size_t many = all().get_termfreq(stem);
  if (!lacking || !db) return many;
  auto holder = db->postlist_begin(stem);
  for (const std::int64_t sample : lacking->hidden) {
    if (holder == db->postlist_end(stem)) break;
    holder.skip_to(docid_of(sample));
    if (holder != db->postlist_end(stem) && *holder == docid_of(sample)) --many;
  }
  return many;
}

std::vector<TextHit> Index::Parts::found(const Xapian::MSet& mset) const {
  std::vector<TextHit> hits;
  hits.reserve(mset.size());
  const unsigned databases = lacking && db ? 2 : 1;
  for (auto each = mset.begin(); each != mset.end(); ++each) {
    const unsigned place = *each - 1;
    const bool of_lacking = lacking && place % databases == databases - 1;
    const std::int64_t document = std::int64_t{place / databases} + 1;
    const std::int64_t sample =
        of_lacking ? lacking->samples[static_cast<std::size_t>(document - 1)] : document;
    const bool out_of_date =
        lacking && !of_lacking && std::binary_search(lacking->hidden.begin(), lacking->hidden.end(), sample);
    if (!out_of_date) hits.push_back({sample, each.get_weight()});
  }
  return hits;
}

// How much a word's repetition and a long text count in BM25: the figures in general use (Xapian's own rank
// the collection of tests/outside/cranfield_test.cc worse).
constexpr double repeated = 1.2, by_length = 0.75;

TextHits Index::Parts::find(const Xapian::Query& query, const Wanted& wanted) const {
  const Xapian::Database together = all();
  Xapian::Enquire enquire(together);
  const std::vector<std::int64_t> nobody;
  AmongSource source(wanted.among ? *wanted.among : nobody);
  const bool filtered = wanted.among && !lacking;
  enquire.set_query(filtered ? Xapian::Query(Xapian::Query::OP_FILTER, query, Xapian::Query(&source))
                             : query);
  enquire.set_weighting_scheme(Xapian::BM25Weight(repeated, 0, 1, by_length, 0.5));
  enquire.set_sort_by_relevance_then_value(newest_first_slot, false);
  const bool limited = wanted.limit && !lacking;
  const Xapian::doccount most =
      limited ? static_cast<Xapian::doccount>(*wanted.limit) : together.get_doccount();
  const Xapian::MSet mset =
      enquire.get_mset(0, most, limited ? static_cast<Xapian::doccount>(wanted.count + 1) : 0);
  TextHits hits;
  hits.hits = found(mset);
  if (wanted.among && !filtered) {
    std::erase_if(hits.hits, [&](const TextHit& hit) {
      return !std::binary_search(wanted.among->begin(), wanted.among->end(), hit.sample);
    });
  }
  hits.total = limited ? mset.get_matches_lower_bound() : hits.hits.size();
  hits.exact = !limited || (mset.get_matches_upper_bound() == hits.total && hits.total <= wanted.count);
  if (!hits.exact || hits.total > wanted.count) {
    hits.exact = !wanted.limit;
    if (wanted.limit) hits.total = wanted.count;
  }
  if (wanted.limit && hits.hits.size() > *wanted.limit) hits.hits.resize(*wanted.limit);
  return hits;
}

Index::Index(const fs::path& book_folder) : parts_(std::make_unique<Parts>()) {
  parts_->folder = book_folder;
}
Index::Index(Index&&) noexcept = default;
Index& Index::operator=(Index&&) noexcept = default;
Index::~Index() = default;

std::string Index::fingerprint() {
  return "2, english stems";
}

Index::State Index::catch_up(const Book& book) {
  constexpr int tries = 3;
  for (int i = 0; i < tries; ++i) {
    try {
      return parts_->bring_up(book);
    } catch (const IndexMoved&) {
      parts_->db.reset();  // another program was quicker; look again
    }
  }
  return State::not_written;
}

Result<void> Index::rebuild(const Book& book) {
  Parts& parts = *parts_;
  parts.drop_lacking();
  parts.db.reset();
  try {
    parts.write(book, book.last_change());
    return {};
  } catch (const Xapian::Error& error) {
    return failure(not_writable(parts.folder, error.get_msg()));
  } catch (const fs::filesystem_error& error) {
    return failure(not_writable(parts.folder, error.code().message()));
  }
}

void Index::make_ready(const Book& book) {
  Parts& parts = *parts_;
  const std::int64_t last = book.last_change();
  if (parts.db && parts.change == last && !parts.damaged && !parts.lacking) return;
  if (parts.lacking && parts.lacking->change == last) return;
  // The book has moved on since catch_up, or the index cannot be written.
  parts.fill_lacking(book, last);
}

// Runs a piece of reading; an index that changed under it or turns out damaged sends the caller back to
// catch_up.
template <class Work>
auto Index::guarded(Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const Xapian::DatabaseModifiedError&) {
    parts_->db.reset();
    throw IndexMoved();
  } catch (const Xapian::Error&) {
    parts_->damaged = true;
    parts_->db.reset();
    parts_->drop_lacking();
    throw IndexMoved();
  }
}

TextHits Index::find(const Book& book, const TextAsked& asked, const Wanted& wanted) {
  return guarded([&] {
    make_ready(book);
    return parts_->find(query_of(asked), wanted);
  });
}

std::size_t Index::samples_with(const Book& book, const std::string& stem) {
  return guarded([&] {
    make_ready(book);
    return parts_->holders(stem);
  });
}

std::vector<Index::LikeStem> Index::stems_like(const Book& book, const std::string& stem, std::size_t limit) {
  return guarded([&] {
    make_ready(book);
    const Xapian::Database together = parts_->all();
    const std::size_t most_edits = stem.size() < 5 ? 1 : 2;
    std::vector<LikeStem> like;
    auto term = together.allterms_begin();
    // Numbers stand before all words, and there may be as many of them as samples.
    const bool number = !stem.empty() && stem.front() <= '9';
    if (!number) term.skip_to("a");
    for (; term != together.allterms_end(); ++term) {
      const std::string& word = *term;
      const std::size_t longer = std::max(word.size(), stem.size()) - std::min(word.size(), stem.size());
      if (longer > 4 * most_edits || word.size() < 2) continue;
      const std::size_t edits = edit_distance(word, stem, most_edits);
      if (edits <= most_edits) like.push_back({word, edits, term.get_termfreq(), 0});
    }
    std::sort(like.begin(), like.end(), [](const LikeStem& a, const LikeStem& b) {
      if (a.edits != b.edits) return a.edits < b.edits;
      if (a.samples != b.samples) return a.samples > b.samples;
      return a.stem < b.stem;
    });
    if (like.size() > limit) like.resize(limit);
    for (LikeStem& each : like) {
      const TextHits hits = parts_->find(Xapian::Query(each.stem), Wanted{nullptr, 1, 1});
      if (!hits.hits.empty()) each.sample = hits.hits.front().sample;
    }
    return like;
  });
}

std::vector<std::string> Index::verify(const Book& book) {
  try {
    const Snapshot snapshot(book);
    const Xapian::Database db(parts_->path().string());
    const Held held = held_by(db);
    const std::int64_t last = book.last_change();
    if (!holds_this_book(held, book, last)) return {"the index is of another book or format"};
    if (held.change != last) return {"the index is behind the book"};
    return differences(db, book, parts_->stemmer);
  } catch (const Xapian::Error& error) {
    return {"the index cannot be read: " + error.get_msg()};
  }
}

}  // namespace insetbook
