// SPDX-License-Identifier: GPL-3.0-or-later
//
// How well the ranking of free words finds what answers a question, measured on the Cranfield 1400 collection
// (cranfield_collection.h) beside plain Xapian BM25 with the same stemmer on the same texts. Ours is the
// product's own: a book of 1400 samples whose notes are the abstracts, its index, Index::find. A person's
// free words are all required; to compare rankings any of them will do here. The published figures stand in
// the collection's baselines.csv: mean average precision 0.30 without the lines judged -1, 0.42 with them.
#include <gtest/gtest.h>
#include <unistd.h>
#include <xapian.h>

#include <cmath>
#include <cstdio>
#include <filesystem>
#include <set>

#include "book/records.h"
#include "outside/cranfield_collection.h"
#include "search/index.h"
#include "search/text_asked.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

using Ranking = std::vector<int>;  // numbers of papers, the best first

struct Quality {
  double mean_average_precision = 0, ndcg_at_10 = 0, precision_at_10 = 0;
};

enum class Unexplained { left_out, relevant };  // the lines judged -1

std::set<int> relevant(const Judged& judged, Unexplained unexplained) {
  std::set<int> papers;
  for (const auto& [paper, degree] : judged)
    if (degree > 0 || unexplained == Unexplained::relevant) papers.insert(paper);
  return papers;
}

// Average precision: the mean, over all that is relevant, of the precision where it stands in the ranking.
Quality quality_of(const Ranking& ranking, const std::set<int>& relevant) {
  Quality quality;
  double found = 0, gain = 0, best_gain = 0;
  for (std::size_t i = 0; i < ranking.size(); ++i) {
    if (!relevant.contains(ranking[i])) continue;
    found += 1;
    quality.mean_average_precision += found / static_cast<double>(i + 1);
    if (i >= 10) continue;
    quality.precision_at_10 += 0.1;
    gain += 1 / std::log2(static_cast<double>(i + 2));
  }
  for (std::size_t i = 0; i < std::min<std::size_t>(relevant.size(), 10); ++i)
    best_gain += 1 / std::log2(static_cast<double>(i + 2));
  quality.mean_average_precision /= static_cast<double>(relevant.size());
  quality.ndcg_at_10 = gain / best_gain;
  return quality;
}

Quality mean(const std::vector<Ranking>& rankings, const std::vector<Judged>& judged,
             Unexplained unexplained) {
  Quality sum;
  double questions = 0;
  for (std::size_t i = 0; i < rankings.size(); ++i) {
    const std::set<int> wanted = relevant(judged[i], unexplained);
    if (wanted.empty()) continue;
    const Quality each = quality_of(rankings[i], wanted);
    sum.mean_average_precision += each.mean_average_precision;
    sum.ndcg_at_10 += each.ndcg_at_10;
    sum.precision_at_10 += each.precision_at_10;
    questions += 1;
  }
  return {sum.mean_average_precision / questions, sum.ndcg_at_10 / questions,
          sum.precision_at_10 / questions};
}

// A book of the papers. Two papers of one title, and those without one, are told apart by their number.
class PapersBook {
 public:
  explicit PapersBook(const std::vector<CranfieldPaper>& papers) {
    folder_ = fs::temp_directory_path() / ("insetbook-cranfield-" + std::to_string(getpid()));
    fs::remove_all(folder_);
    book_.emplace(Book::create(folder_).value());
    const Result<void> filled = book_->change("filled", [&](Change& change) -> Result<void> {
      for (const CranfieldPaper& paper : papers) put(change, paper);
      return {};
    });
    if (!filled) ADD_FAILURE() << filled.error().what;
    index_.emplace(folder_);
    EXPECT_EQ(index_->catch_up(*book_), Index::State::rebuilt);
  }
  ~PapersBook() {
    index_.reset();
    book_.reset();
    fs::remove_all(folder_);
  }

  Ranking ask(const std::string& question) {
    TextAsked asked{TextAsked::Kind::any, {}, {}};
    for (std::string& stem : stems_of(question, stemmer_))
      asked.children.push_back({TextAsked::Kind::phrase, {std::move(stem)}, {}});
    Ranking ranking;
    for (const TextHit& hit : index_->find(*book_, asked, {}).hits) ranking.push_back(paper_.at(hit.sample));
    return ranking;
  }

 private:
  void put(Change& change, const CranfieldPaper& paper) {
    SampleRow row;
    row.title = paper.title;
    if (paper.title.empty() || !titles_.insert(fold(paper.title)).second)
      row.title += " " + std::to_string(paper.number);
    row.note = paper.abstract;
    const auto added = put_sample(change, row);
    ASSERT_TRUE(added) << added.error().what;
    ASSERT_EQ(added->first, PutResult::added) << row.title;
    paper_[added->second] = paper.number;
  }

  fs::path folder_;
  std::optional<Book> book_;
  std::optional<Index> index_;
  Stemmer stemmer_;
  std::set<std::string> titles_;
  std::map<std::int64_t, int> paper_;
};

// Xapian alone: its own term generator, English stems, BM25 with Xapian's figures or those that ours has.
class PlainXapian {
 public:
  struct Figures {
    double repeated = 1, by_length = 0.5;  // k1, b
  };
  PlainXapian(const std::vector<CranfieldPaper>& papers, Figures figures) : figures_(figures) {
    generator_.set_stemmer(Xapian::Stem("english"));
    generator_.set_stemming_strategy(Xapian::TermGenerator::STEM_ALL);
    for (const CranfieldPaper& paper : papers)
      db_.replace_document(static_cast<Xapian::docid>(paper.number),
                           document(paper.title + "\n" + paper.abstract));
  }

  Ranking ask(const std::string& question) {
    const Xapian::Document words = document(question);
    std::vector<Xapian::Query> terms;
    for (auto term = words.termlist_begin(); term != words.termlist_end(); ++term)
      terms.emplace_back(*term, term.get_wdf());
    Xapian::Enquire enquire(db_);
    enquire.set_query(Xapian::Query(Xapian::Query::OP_OR, terms.begin(), terms.end()));
    enquire.set_weighting_scheme(Xapian::BM25Weight(figures_.repeated, 0, 1, figures_.by_length, 0.5));
    const Xapian::MSet found = enquire.get_mset(0, db_.get_doccount());
    Ranking ranking;
    for (auto each = found.begin(); each != found.end(); ++each) ranking.push_back(static_cast<int>(*each));
    return ranking;
  }

 private:
  Xapian::Document document(const std::string& text) {
    Xapian::Document document;
    generator_.set_document(document);
    generator_.index_text_without_positions(text);
    return document;
  }

  Figures figures_;
  Xapian::TermGenerator generator_;
  Xapian::WritableDatabase db_{std::string(), Xapian::DB_BACKEND_INMEMORY};
};

template <class Asker>
std::vector<Ranking> ask_all(Asker& asker, const std::vector<std::string>& questions) {
  std::vector<Ranking> rankings;
  for (const std::string& question : questions) rankings.push_back(asker.ask(question));
  return rankings;
}

void print(const char* who, const char* lines, const Quality& quality) {
  std::printf("%-14s %-20s MAP %.4f  nDCG@10 %.4f  P@10 %.4f\n", who, lines, quality.mean_average_precision,
              quality.ndcg_at_10, quality.precision_at_10);
}

TEST(Cranfield, IsReadWhole) {
  const auto collection = cranfield();
  if (!collection) GTEST_SKIP() << "the Cranfield collection is not there";
  EXPECT_EQ(collection->papers.size(), 1400U);
  EXPECT_EQ(collection->questions.size(), 225U);
  EXPECT_EQ(collection->papers[1].title,
            "simple shear flow past a flat plate in an incompressible fluid of small viscosity .");
  EXPECT_EQ(
      collection->questions[1],
      "what are the structural and aeroelastic problems associated with flight of high speed aircraft .");
  std::size_t positive = 0, unexplained = 0;  // 1612 and 225 by SOURCE.txt
  for (const Judged& judged : collection->judged)
    for (const auto& [paper, degree] : judged) ++(degree > 0 ? positive : unexplained);
  EXPECT_EQ(positive, 1612U);
  EXPECT_EQ(unexplained, 225U);
}

TEST(Cranfield, RanksAtLeastAsWellAsPlainXapian) {
  const auto collection = cranfield();
  if (!collection) GTEST_SKIP() << "the Cranfield collection is not there";
  PapersBook book(collection->papers);
  PlainXapian xapian(collection->papers, {});
  const std::vector<Ranking> ours = ask_all(book, collection->questions);
  const std::vector<Ranking> plain = ask_all(xapian, collection->questions);
  PlainXapian same_figures(collection->papers, {1.2, 0.75});
  const std::vector<Ranking> plain_same = ask_all(same_figures, collection->questions);
  for (const auto& [unexplained, lines] : {std::pair{Unexplained::left_out, "without the -1 lines"},
                                           std::pair{Unexplained::relevant, "-1 as relevant"}}) {
    const Quality our = mean(ours, collection->judged, unexplained);
    const Quality other = mean(plain, collection->judged, unexplained);
    print("ours", lines, our);
    print("plain Xapian", lines, other);
    const Quality same = mean(plain_same, collection->judged, unexplained);
    print("the same k1, b", lines, same);
    EXPECT_GE(our.mean_average_precision, other.mean_average_precision) << lines;
    EXPECT_NEAR(our.mean_average_precision, same.mean_average_precision, 0.005) << lines;
  }
}

}  // namespace
}  // namespace insetbook
