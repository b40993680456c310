// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of the question language from the words to the titles found, on a generated book: a question agrees
// with a plain scan of the records, however it is said; adding a constraint never adds a hit; `or` never
// loses one; every label of a term gives the same; the order of words within a piece does not matter; a
// question printed back as fields gives the same answer.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "answers/book_names.h"
#include "answers/find.h"
#include "language/read_question.h"
#include "language/small_words.h"
#include "question_phrases.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Titles = std::vector<std::string>;

std::size_t picked(std::size_t below) {
  return *rc::gen::inRange<std::size_t>(0, below);
}
template <class T>
const T& one_of(const std::vector<T>& list) {
  return list[picked(list.size())];
}
bool one_in(std::size_t n) {
  return picked(n) == n - 1;
}

Result<FindAnswer> answer(const std::string& question) {
  return find(question_book().book, {.question = question, .limit = 1000});
}

// Sorted. Fails the test where it is no question for samples.
Titles titles(const std::string& question) {
  const Result<FindAnswer> found = answer(question);
  if (!found) RC_FAIL("refused: " + question + ": " + found.error().what);
  const Hits* hits = std::get_if<Hits>(&found->answer);
  if (!hits) RC_FAIL("not read as a question for samples: " + question);
  Titles out;
  for (const Hit& hit : hits->hits) out.push_back(hit.title);
  std::sort(out.begin(), out.end());
  return out;
}

Question read(const std::string& question) {
  static const Vocabulary vocabulary;
  const BookNames names(question_book().book);
  const auto found = read_question(question, {vocabulary, names, Unit::inch, "2026-11-25"});
  if (!found) RC_FAIL("refused: " + question + ": " + found.error().what);
  return *found;
}

bool all_in(const Titles& some, const Titles& all) {
  return std::includes(all.begin(), all.end(), some.begin(), some.end());
}

std::string listed(const Titles& list) {
  std::string out;
  for (const std::string& each : list) out += (out.empty() ? "" : ", ") + each;
  return std::to_string(list.size()) + ": " + out.substr(0, 300);
}

// --- meanings: what some sample has, so that most questions find something ---

std::string broader_at_times(VocabularyName in, const std::string& term) {
  const auto found = Vocabulary().term(in, term);
  return found && !found->broader.empty() && one_in(4) ? found->broader : term;
}

SizeAsked size_of(const PieceRecord& piece) {
  SizeAsked size;
  size.relation = static_cast<Relation>(picked(7));
  size.low = one_in(3) ? one_of(book_figures) : *piece.width;
  size.high = size.low + *rc::gen::element<std::int64_t>(12'700'000, 25'400'000);
  const bool compared = size.relation == Relation::exact || size.relation == Relation::about;
  if (compared && *piece.width != *piece.height && one_in(2)) {
    size.low = *piece.width;
    size.second = *piece.height;
    if (one_in(2)) std::swap(size.low, *size.second);
  }
  return size;
}

const std::vector<std::string> words_by_value{"green", "blue", "yellow", "black"};

// Of the piece, or of any piece where the dice say so.
PieceAsked asked_of(const PieceRecord& piece) {
  PieceAsked asked;
  const bool die = piece.die && one_in(4);
  if (die) asked.die = piece.die;
  if (!die && !piece.shape.empty() && !one_in(4)) asked.shape = piece.shape;
  if (!die && (asked.shape.empty() || one_in(3))) asked.role = piece.role;
  if (piece.width && one_in(2)) asked.size = size_of(piece);
  if (!piece.paper.empty() && one_in(2)) asked.colour = piece.paper;
  if (one_in(12)) {
    asked.colour = one_of(words_by_value);
    asked.by_value = true;
  }
  if (!piece.ink.empty() && one_in(3)) asked.ink = piece.ink;
  if (!piece.techniques.empty() && one_in(3))
    asked.technique = broader_at_times(VocabularyName::technique, piece.techniques.front());
  if (asked.technique.empty() && one_in(6)) asked.not_technique = one_of(book_techniques);
  if (one_in(6)) asked.side = piece.side;
  if (one_in(6)) asked.place = piece.place;
  if (one_in(5)) asked.count = 2 + static_cast<int>(picked(2));
  return asked;
}

// A piece with what it lies on, in, behind …: said with few words each.
PieceAsked asked_together(const SampleRecord& sample, const PieceRecord& piece) {
  PieceAsked asked;
  asked.shape = piece.shape.empty() ? one_of(book_shapes) : piece.shape;
  if (!piece.paper.empty() && one_in(3)) asked.colour = piece.paper;
  asked.goes = one_in(5) ? static_cast<GoesHow>(picked(5)) : *piece.goes;
  const PieceRecord& below = sample.pieces[piece.other];
  PieceAsked other;
  if (below.shape.empty() || one_in(4))
    other.role = below.role;
  else
    other.shape = below.shape;
  if (!below.paper.empty() && one_in(3)) other.colour = below.paper;
  asked.other.push_back(std::move(other));
  return asked;
}

const SampleRecord& a_sample() {
  return one_of(question_book().samples);
}

void ask_of_the_card(Asked& asked, const SampleRecord& sample) {
  if (one_in(3)) asked.fold = broader_at_times(VocabularyName::fold, sample.fold);
  if (asked.fold.empty() && one_in(5)) asked.not_fold = one_of(book_folds);
  if (one_in(6)) asked.pieces_in_all = 2 + static_cast<int>(picked(6));
  if (!sample.occasion.empty() && one_in(3))
    asked.occasion = broader_at_times(VocabularyName::occasion, sample.occasion);
  if (!sample.word.empty() && one_in(4)) asked.word = sample.word;
  if (one_in(5)) asked.envelope = one_of(book_envelopes[picked(3)]);
  if (one_in(3)) {
    if (!one_in(3)) asked.made_from = sample.made.substr(0, 4);
    if (asked.made_from.empty() || one_in(2)) asked.made_to = sample.made.substr(0, 4);
  }
}

// `together`: no pieces that go with another. Counts, and what goes with what, are said in questions of their
// own: a sentence of everything is nobody's.
Asked a_meaning(bool together) {
  Asked asked;
  const SampleRecord& sample = a_sample();
  if (!one_in(3)) ask_of_the_card(asked, sample);
  for (const PieceRecord& piece : sample.pieces) {
    if (asked.pieces.size() == 2 || one_in(2)) continue;
    if (together && piece.goes)
      asked.pieces.push_back(asked_together(sample, piece));
    else
      asked.pieces.push_back(asked_of(piece));
  }
  if (one_in(6)) {
    PieceAsked none = asked_of(one_of(a_sample().pieces));
    none.count = 1;
    none.not_technique.clear();
    asked.no_pieces.push_back(std::move(none));
  }
  if (asked.pieces.empty() && one_in(2)) asked.technique = one_of(book_techniques);
  if (asked.pieces.empty() && asked.technique.empty() && one_in(3)) asked.supply = one_of(book_supplies);
  return asked;
}

std::vector<PieceAsked*> pieces_of(Asked& asked) {
  std::vector<PieceAsked*> out;
  for (std::vector<PieceAsked>* list : {&asked.pieces, &asked.no_pieces})
    for (PieceAsked& piece : *list) {
      out.push_back(&piece);
      for (PieceAsked& other : piece.other) out.push_back(&other);
    }
  return out;
}

// In words an inside panel is any panel on the inside as well; the field asks for that role alone. Two of
// them are two of one of these, which is for nobody to say.
Asked in_words(Asked asked) {
  for (PieceAsked* piece : pieces_of(asked)) {
    piece->on_the_inside = piece->role == "inside panel";
    if (piece->on_the_inside) piece->count = 1;
  }
  return asked;
}

void expect_scan(const Asked& asked, const std::string& question) {
  const Titles expected = plain_scan(question_book().samples, asked);
  const Titles got = titles(question);
  if (got != expected)
    RC_FAIL("asked: " + question + "\nmeans: " + told(asked) + "\nread as: " + print(read(question)) +
            "\nexpected " + listed(expected) + "\ngot      " + listed(got));
}

RC_GTEST_PROP(QuestionLaws, FieldsAgreeWithAPlainScan, ()) {
  for (int i = 0; i < 3; ++i) {
    const Asked asked = a_meaning(i == 2);
    const std::string question = said_in_fields(asked, picked);
    if (!question.empty()) expect_scan(asked, question);
  }
}

RC_GTEST_PROP(QuestionLaws, EveryWayOfSayingItAgreesWithAPlainScan, ()) {
  for (int i = 0; i < 3; ++i) {
    const Asked asked = in_words(a_meaning(i == 2));
    for (int way = 0; way < 2; ++way)
      if (const auto question = said(asked, picked)) expect_scan(asked, *question);
  }
}

// --- questions of any words ---

const std::vector<std::string> odd_words{"circle",
                                         "square",
                                         "oval",
                                         "panel",
                                         "mat",
                                         "strips",
                                         "sage",
                                         "navy",
                                         "green",
                                         "wet slate",
                                         "speckled",
                                         "dry embossing",
                                         "torn",
                                         "garden gate",
                                         "2 in",
                                         "2-3/8 in",
                                         "60 mm",
                                         "2 x 3 in",
                                         "about 2 in",
                                         "under 3 in",
                                         "1 to 2 in",
                                         "tall",
                                         "a",
                                         "the",
                                         "with",
                                         "and",
                                         "or",
                                         "not",
                                         "no",
                                         "without",
                                         "plus",
                                         ",",
                                         "on",
                                         "in",
                                         "behind",
                                         "around",
                                         "on the front",
                                         "inside",
                                         "on it",
                                         "easel",
                                         "stand-up fold",
                                         "side fold",
                                         "shaker",
                                         "birthday",
                                         "sympathy",
                                         "card",
                                         "landscape",
                                         "square cards",
                                         "3 x 4 cards",
                                         "made in 2023",
                                         "last spring",
                                         "since March",
                                         "two",
                                         "3",
                                         "ink",
                                         "paper",
                                         "tidepool oval",
                                         "tidepool ovals 2",
                                         "heron",
                                         "quinces",
                                         "in the largest tidepool oval",
                                         "like sage",
                                         "\"heron\"",
                                         "zorblax",
                                         "shape:circle",
                                         "size:2in",
                                         "paper:sage",
                                         "ink:navy",
                                         "fold:easel",
                                         "technique:speckling",
                                         "-easel",
                                         "-shape:square",
                                         "with:(shape:circle side:front)",
                                         "on:(shape:square)",
                                         "(circle or square)",
                                         "(easel birthday)",
                                         "-(circle easel)",
                                         "text:heron",
                                         "no:occasion",
                                         "but not",
                                         "more like Nr 1003",
                                         "exactly two circles",
                                         "in navy ink",
                                         "stamped in navy",
                                         "all",
                                         "2.5",
                                         "bigger than 2 in"};

std::string odd_question() {
  std::string out;
  for (std::size_t i = 0, n = 1 + picked(9); i < n; ++i) out += (i > 0 ? " " : "") + one_of(odd_words);
  return out;
}

// A question for samples that was read whole, as fields; else nothing.
std::string odd_fields() {
  const Result<FindAnswer> found = answer(odd_question());
  if (!found || !std::holds_alternative<Hits>(found->answer)) return "";
  return found->as_fields;
}

// Of questions that were read whole.
RC_GTEST_PROP(QuestionLaws, PrintedAsFieldsItGivesTheSameAnswer, ()) {
  for (int i = 0; i < 4; ++i) {
    const std::string question = odd_question();
    const Result<FindAnswer> found = answer(question);
    if (!found || !std::holds_alternative<Hits>(found->answer) || !read(question).problems.empty()) continue;
    const std::string fields = found->as_fields;
    const std::string tree = print(read(question).tree), again = print(read(fields).tree);
    if (again != tree)
      RC_FAIL(question + "\nas fields: " + fields + "\nread as " + tree + "\nthen as " + again);
    if (titles(fields) != titles(question)) RC_FAIL(question + "\nas fields: " + fields);
  }
}

const std::vector<std::string> constraints{"fold:easel",
                                           "-fold:easel",
                                           "occasion:birthday",
                                           "with:(shape:circle)",
                                           "made:2023",
                                           "text:heron",
                                           "with:(shape:square count:2)",
                                           "-with:(paper:sage)",
                                           "no:occasion",
                                           "with:(role:panel ink:navy)",
                                           "technique:speckling",
                                           "closed:landscape",
                                           "with:(shape:circle on:(shape:square))",
                                           "(fold:easel or with:(shape:oval))"};

RC_GTEST_PROP(QuestionLaws, AddingAConstraintNeverAddsAHit, ()) {
  for (int i = 0; i < 3; ++i) {
    const std::string fields = odd_fields();
    if (fields.empty()) continue;
    const std::string more = "(" + fields + ") " + one_of(constraints);
    if (!all_in(titles(more), titles(fields))) RC_FAIL(fields + "\nwith more: " + more);
  }
}

RC_GTEST_PROP(QuestionLaws, OrNeverLosesAHit, ()) {
  for (int i = 0; i < 3; ++i) {
    const std::string one = one_in(2) ? one_of(constraints) : odd_fields();
    const std::string other = one_in(2) ? one_of(constraints) : odd_fields();
    if (one.empty() || other.empty()) continue;
    const std::string either = "(" + one + ") or (" + other + ")";
    Titles both, found_one = titles(one), found_other = titles(other);
    std::set_union(found_one.begin(), found_one.end(), found_other.begin(), found_other.end(),
                   std::back_inserter(both));
    const Titles found = titles(either);
    if (found != both)
      RC_FAIL(either + "\nread as " + print(read(either)) + "\nexpected " + listed(both) + "\ngot " +
              listed(found));
  }
}

// --- labels ---

// Ways of writing a label that are the same label.
std::vector<std::string> written(const std::string& label) {
  std::vector<std::string> out{label, fold(label)};
  std::string upper = label, hyphens = label, spaces = label;
  std::transform(upper.begin(), upper.end(), upper.begin(), [](unsigned char c) { return std::toupper(c); });
  std::replace(hyphens.begin(), hyphens.end(), ' ', '-');
  std::replace(spaces.begin(), spaces.end(), '-', ' ');
  out.insert(out.end(), {upper, hyphens, spaces});
  return out;
}

struct NamedVocabulary {
  VocabularyName name;
  std::string field;
};
const std::vector<NamedVocabulary> asked_vocabularies{
    {VocabularyName::shape, "shape"},         {VocabularyName::role, "role"},
    {VocabularyName::technique, "technique"}, {VocabularyName::fold, "fold"},
    {VocabularyName::feature, "feature"},     {VocabularyName::occasion, "occasion"},
    {VocabularyName::material, "material"}};

std::string tree_of(const std::string& question) {
  static const Vocabulary vocabulary;
  static const BookNames names(question_book().book);
  const auto found = read_question(question, {vocabulary, names, Unit::inch, "2026-11-25"});
  return found ? print(found->tree) : "refused: " + found.error().what;
}

// Every label of every term, in each way of writing it, says in its field what the preferred one says; a
// label that several terms of the vocabulary have says the likeliest, which the vocabulary's tests hold.
TEST(QuestionLaws, EveryLabelOfATermSaysTheSameInItsField) {
  const Vocabulary vocabulary;
  std::size_t labels = 0;
  for (const NamedVocabulary& each : asked_vocabularies) {
    for (const Term& term : vocabulary.terms(each.name)) {
      const std::string preferred = tree_of(each.field + ":\"" + term.label + "\"");
      for (const std::string& label : term.labels) {
        if (vocabulary.find(label, each.name).size() != 1) continue;
        for (const std::string& way : written(label)) {
          EXPECT_EQ(tree_of(each.field + ":\"" + way + "\""), preferred) << each.field << ": " << way;
          ++labels;
        }
      }
    }
  }
  EXPECT_GT(labels, 4'000u);
}

// The same said without a field, where no other vocabulary has the label and it is no unlikely one: what is
// understood is not looked for as text, so that every label
// finds the same. Left out is what the language says itself: small words ("card base" is the card) and what
// is not recorded ("no occasion").
TEST(QuestionLaws, EveryLabelThatMeansOneThingSaysItWithoutAField) {
  const Vocabulary vocabulary;
  std::size_t labels = 0;
  for (const NamedVocabulary& each : asked_vocabularies) {
    for (const Term& term : vocabulary.terms(each.name)) {
      if (vocabulary.find(term.label).size() != 1 || vocabulary.find(term.label).front().likelihood < 50)
        continue;
      const std::string preferred = tree_of(term.label);
      for (const std::string& label : term.labels) {
        const auto found = vocabulary.find(label);
        if (found.size() != 1 || found.front().likelihood < 50) continue;
        if (small_word(label) || label == "no fold" || label == "no occasion") continue;
        EXPECT_EQ(tree_of(label), preferred) << each.field << ": " << label;
        ++labels;
      }
    }
  }
  EXPECT_GT(labels, 500u);
}

// --- order ---

RC_GTEST_PROP(QuestionLaws, OrderOfWordsWithinAPieceDoesNotMatter, ()) {
  for (int i = 0; i < 4; ++i) {
    std::vector<std::string> parts{one_of(std::vector<std::string>{"circle", "square", "heart"})};
    if (!one_in(4)) parts.push_back(fraction(one_of(book_figures)) + " in");
    if (!one_in(3)) parts.push_back(one_of(book_colours).name);
    if (!one_in(3))
      parts.push_back(one_of(std::vector<std::string>{"speckled", "torn", "dry embossed", "woven"}));
    const auto joined = [&] {
      std::string out;
      for (const std::string& part : parts) out += (out.empty() ? "" : " ") + part;
      return out;
    };
    const std::string one_way = joined();
    for (std::size_t at = parts.size(); at > 1; --at) std::swap(parts[at - 1], parts[picked(at)]);
    const std::string other_way = joined();
    if (titles(one_way) != titles(other_way)) RC_FAIL(one_way + " / " + other_way);
  }
}

// --- that the laws were held against something ---

TEST(QuestionLaws, TheGeneratedBookIsAsItsRecordsSay) {
  const Titles all = [] {
    Titles out;
    for (const SampleRecord& sample : question_book().samples) out.push_back(sample.title);
    std::sort(out.begin(), out.end());
    return out;
  }();
  EXPECT_EQ(all.size(), 150u);
  EXPECT_EQ(titles("-fold:flat"), all);
}

}  // namespace
}  // namespace insetbook
