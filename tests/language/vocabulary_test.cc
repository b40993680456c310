// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/vocabulary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "colour/words.h"
#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

constexpr VocabularyName every_vocabulary[] = {
    VocabularyName::technique,   VocabularyName::fold,  VocabularyName::feature,  VocabularyName::shape,
    VocabularyName::occasion,    VocabularyName::role,  VocabularyName::material, VocabularyName::adhesive,
    VocabularyName::colour_word, VocabularyName::status};

Term own(VocabularyName vocabulary, std::string label, std::vector<std::string> labels = {},
         std::string broader = {}) {
  Term term;
  term.vocabulary = vocabulary;
  term.label = std::move(label);
  term.labels = std::move(labels);
  term.broader = std::move(broader);
  return term;
}

// The likeliest term.
std::string id_of(const Vocabulary& words, std::string_view label, VocabularyName in) {
  const auto found = words.find(label, in);
  return found.empty() ? "(no term)" : found.front().id;
}

std::vector<std::string> ids_of(const Vocabulary& words, std::string_view label, VocabularyName in) {
  std::vector<std::string> ids;
  for (const TermMatch& match : words.find(label, in)) ids.push_back(match.id);
  return ids;
}

struct Case {
  VocabularyName in;
  const char* label;
  const char* id;
};

class Labels : public ::testing::TestWithParam<Case> {};

TEST_P(Labels, LeadToOneTerm) {
  EXPECT_EQ(id_of(Vocabulary(), GetParam().label, GetParam().in), GetParam().id);
}

using enum VocabularyName;

INSTANTIATE_TEST_SUITE_P(
    Folds, Labels,
    ::testing::Values(Case{fold, "easel", "easel"}, Case{fold, "easel fold", "easel"},
                      Case{fold, "Easel Card", "easel"}, Case{fold, "easels", "easel"},
                      Case{fold, "easel cards", "easel"}, Case{fold, "Z", "z fold"},
                      Case{fold, "z-fold", "z fold"}, Case{fold, "Z fold card", "z fold"},
                      Case{fold, "stand-up fold", "stand up fold"},
                      Case{fold, "stand up fold", "stand up fold"}, Case{fold, "stand-up", "stand up fold"},
                      Case{fold, "stands up", "stand up fold"}, Case{fold, "standing", "stand up fold"},
                      Case{fold, "standing card", "stand up fold"},
                      Case{fold, "standing fold", "stand up fold"}, Case{fold, "tri-fold", "letter tri fold"},
                      Case{fold, "trifold", "letter tri fold"}, Case{fold, "gate-fold", "gate"},
                      Case{fold, "gatefold", "gate"}, Case{fold, "concertina", "accordion"},
                      Case{fold, "book fold", "side fold"}, Case{fold, "side-folded", "side fold"},
                      Case{fold, "flat card", "flat"}, Case{fold, "center step card", "centre step"}));

INSTANTIATE_TEST_SUITE_P(
    Others, Labels,
    ::testing::Values(
        Case{technique, "stenciling", "stencilling"}, Case{technique, "Stencilled", "stencilling"},
        Case{technique, "fussy cut", "hand cutting"}, Case{technique, "fussy-cut", "hand cutting"},
        Case{technique, "hand-cut", "hand cutting"}, Case{technique, "splatter", "speckling"},
        Case{technique, "spattered", "speckling"}, Case{technique, "popped up", "popped up"},
        Case{technique, "on foam", "popped up"}, Case{technique, "water colour", "watercolour"},
        Case{technique, "watercoloring", "watercolour"}, Case{technique, "heat embossed", "heat embossing"},
        Case{technique, "ombré", "ombre"}, Case{shape, "circles", "circle"}, Case{shape, "round", "circle"},
        Case{shape, "ellipse", "oval"}, Case{shape, "heart-shaped", "heart"}, Case{shape, "leaves", "leaf"},
        Case{shape, "butterflies", "butterfly"}, Case{role, "sentiment", "sentiment"},
        Case{role, "greeting", "sentiment"}, Case{role, "saying", "sentiment"}, Case{role, "topper", "layer"},
        Case{role, "insert", "liner"}, Case{role, "mats", "mat"}, Case{feature, "popup", "pop up"},
        Case{feature, "pop-up card", "pop up"}, Case{feature, "magnetic closure", "magnet closure"},
        Case{occasion, "xmas", "christmas"}, Case{occasion, "Mother’s Day", "mothers day"},
        Case{occasion, "mothers day", "mothers day"}, Case{material, "cardstock", "card stock"},
        Case{material, "watercolor paper", "watercolour paper"},
        Case{adhesive, "foam squares", "foam square"},
        Case{adhesive, "double sided tape", "double sided tape"}, Case{status, "retired", "withdrawn"},
        Case{status, "discontinued", "withdrawn"}, Case{colour_word, "gray", "grey"},
        Case{colour_word, "turquoise", "teal"}, Case{shape, "no such thing", "(no term)"},
        Case{shape, "", "(no term)"}));

TEST(Vocabulary, NamesItsVocabularies) {
  for (const VocabularyName name : every_vocabulary) {
    EXPECT_EQ(vocabulary_name(vocabulary_word(name)), name);
    EXPECT_EQ(vocabulary_name(std::string(vocabulary_word(name)) + (name == status ? "es" : "s")), name);
  }
  EXPECT_EQ(vocabulary_name("Colours"), colour_word);
  EXPECT_EQ(vocabulary_name("color-word"), colour_word);
  EXPECT_EQ(vocabulary_name("dies"), std::nullopt);
  for (const Stands stands : {Stands::built_to_stand, Stands::part_open, Stands::no}) {
    EXPECT_EQ(stands_named(stands_word(stands)), stands);
  }
  EXPECT_EQ(stands_named("Part open"), Stands::part_open);
  EXPECT_EQ(stands_named(""), std::nullopt);
}

// The three groups are those of the model: built to stand, part-open, no.
TEST(Vocabulary, StandUpFoldFindsEveryFoldThatIsBuiltToStandAndNoOther) {
  const Vocabulary words;
  std::vector<std::string> narrower = words.with_narrower(fold, "stand up fold");
  ASSERT_FALSE(narrower.empty());
  EXPECT_EQ(narrower.front(), "stand up fold");
  for (const char* id :
       {"easel", "z fold", "accordion", "tent", "step", "side step", "shutter", "bridge", "twisted easel"}) {
    EXPECT_THAT(narrower, Contains(id));
  }
  for (const char* id : {"side fold", "top fold", "gate", "letter tri fold", "flat", "tag"}) {
    EXPECT_THAT(narrower, Not(Contains(id)));
  }
  std::sort(narrower.begin(), narrower.end());
  EXPECT_EQ(narrower, words.folds_that(Stands::built_to_stand));
  EXPECT_THAT(words.folds_that(Stands::part_open), Contains("gate"));
  EXPECT_THAT(words.folds_that(Stands::no), Contains("flat"));
  EXPECT_THAT(words.with_narrower(fold, "no such fold"), IsEmpty());
  EXPECT_THAT(words.with_narrower(fold, "tag"), ElementsAre("tag"));
}

TEST(Vocabulary, GivesTheCreasesOfFoldsWithOneUsualForm) {
  const Vocabulary words;
  const auto creases = [&](const char* id) { return words.term(fold, id)->creases; };
  EXPECT_EQ(creases("side fold"), (std::vector<Crease>{{true, 1, 2, false}}));
  EXPECT_EQ(creases("top fold"), (std::vector<Crease>{{false, 1, 2, false}}));
  EXPECT_EQ(creases("tent"), (std::vector<Crease>{{false, 1, 2, false}}));
  EXPECT_EQ(creases("z fold"), (std::vector<Crease>{{true, 1, 4, true}, {true, 1, 2, false}}));
  EXPECT_EQ(creases("gate"), (std::vector<Crease>{{true, 1, 4, false}, {true, 3, 4, false}}));
  EXPECT_EQ(creases("letter tri fold"), (std::vector<Crease>{{true, 2, 3, false}, {true, 1, 3, false}}));
  EXPECT_EQ(creases("accordion")->size(), 3U);
  EXPECT_EQ(creases("flat"), std::vector<Crease>{});
  EXPECT_EQ(creases("shutter"), std::nullopt);
}

TEST(Vocabulary, OneLabelOfSeveralVocabulariesComesLikeliestFirst) {
  const auto tags = Vocabulary().find("tag");
  ASSERT_GE(tags.size(), 3U);
  for (std::size_t i = 1; i < tags.size(); ++i) EXPECT_GE(tags[i - 1].likelihood, tags[i].likelihood);
  EXPECT_EQ(tags.front().vocabulary, shape);
}

// A house is more often a picture than the outline of a panel, unless it is said to be the shape.
TEST(Vocabulary, MarksWordsThatMostlyMeanSomethingElse) {
  const Vocabulary words;
  for (const char* word : {"house", "card", "lantern", "christmas tree", "hello"}) {
    EXPECT_LT(words.find(word).front().likelihood, 30) << word;
  }
  for (const char* word : {"house shape", "lantern card", "circle", "easel", "speckled", "sentiment"}) {
    EXPECT_GE(words.find(word).front().likelihood, 50) << word;
  }
}

// People call two folds so: the likelier one comes first, the other is there to be offered.
TEST(Vocabulary, GivesBothTermsOfALabelThatMeansTwo) {
  const Vocabulary words;
  EXPECT_THAT(ids_of(words, "tri-fold", fold), ElementsAre("letter tri fold", "z fold"));
  EXPECT_THAT(ids_of(words, "trifold card", fold), ElementsAre("letter tri fold", "z fold"));
  EXPECT_THAT(ids_of(words, "Z", fold), ElementsAre("z fold", "accordion"));
}

TEST(Vocabulary, TellsThePreferredLabelFromOthers) {
  const Vocabulary words;
  EXPECT_TRUE(words.find("Speckling", technique).front().preferred);
  EXPECT_FALSE(words.find("splatter", technique).front().preferred);
  EXPECT_EQ(words.find("splatter", technique).front().label, "speckling");
  EXPECT_EQ(words.find("easel card", fold).front().label, "easel");
}

// Every label leads to its term; every id is the folded label; whatever can hurt says so with a source.
TEST(Vocabulary, HoldsTogether) {
  const Vocabulary words;
  std::size_t labels = 0;
  std::size_t longest = 0;
  for (const VocabularyName in : every_vocabulary) {
    const std::vector<Term> terms = words.terms(in);
    EXPECT_GE(terms.size(), in == status ? 4U : 14U) << vocabulary_word(in);
    for (const Term& term : terms) {
      EXPECT_EQ(term.id, insetbook::fold(term.label));
      EXPECT_EQ(words.term(in, term.id)->label, term.label);
      std::vector<std::string> all = term.labels;
      all.push_back(term.label);
      for (const std::string& label : all) {
        EXPECT_THAT(ids_of(words, label, in), Contains(term.id)) << label;
        const std::string folded = insetbook::fold(label);
        longest =
            std::max(longest, static_cast<std::size_t>(std::count(folded.begin(), folded.end(), ' ')) + 1);
        ++labels;
      }
      EXPECT_EQ(term.caution.empty(), term.caution_source.empty()) << term.id;
      if (!term.broader.empty()) {
        EXPECT_THAT(words.with_narrower(in, term.broader), Contains(term.id));
      }
      EXPECT_EQ(term.stands == Stands::not_said, in != fold) << term.id;
    }
  }
  EXPECT_GT(labels, 1000U);
  EXPECT_GE(words.longest_label_words(), longest);
  const auto all = words.all_labels();
  EXPECT_TRUE(std::is_sorted(all.begin(), all.end()));
  EXPECT_EQ(std::set<std::string>(all.begin(), all.end()).size(), all.size());
  EXPECT_THAT(all, Contains("stand up fold"));
}

// What a question names is what a value is told to be (colour/words.h).
TEST(Vocabulary, HasTheColourWordsThatValuesHave) {
  std::vector<std::string> ids;
  for (const Term& term : Vocabulary().terms(colour_word)) ids.push_back(term.id);
  EXPECT_EQ(ids.size(), basic_colour_count);
  for (const std::string& id : ids) EXPECT_TRUE(basic_colour_named(id)) << id;
}

TEST(Vocabulary, WarnsOfWhatCanHurt) {
  const Vocabulary words;
  for (const char* id : {"hand cutting", "heat embossing", "alcohol ink", "foiling"}) {
    EXPECT_NE(words.term(technique, id)->caution, "") << id;
  }
  EXPECT_THAT(words.term(feature, "magnet closure")->caution, HasSubstr("magnets"));
  EXPECT_EQ(words.term(material, "beads")->caution_source, "16 CFR 1501.4");
}

TEST(OwnTerms, AreFoundAndHaveTheirPlaceAmongTheOthers) {
  const Vocabulary words({own(fold, "Hilltop", {"hill top stand"}, "Easel card")});
  EXPECT_EQ(id_of(words, "hilltops", fold), "hilltop");
  EXPECT_EQ(id_of(words, "Hill-top stand", fold), "hilltop");
  EXPECT_EQ(words.term(fold, "hilltop")->broader, "easel");
  EXPECT_EQ(words.term(fold, "hilltop")->stands, Stands::built_to_stand);
  EXPECT_THAT(words.with_narrower(fold, "stand up fold"), Contains("hilltop"));
  EXPECT_THAT(words.with_narrower(fold, "easel"), Contains("hilltop"));
  EXPECT_THAT(words.folds_that(Stands::built_to_stand), Contains("hilltop"));
  EXPECT_THAT(words.all_labels(), Contains("hilltop"));
  EXPECT_EQ(words.terms(fold).size(), Vocabulary().terms(fold).size() + 1);
}

TEST(OwnTerms, AddLabelsToACompiledTerm) {
  const Vocabulary words({own(technique, "speckling", {"freckled"})});
  EXPECT_EQ(id_of(words, "freckled", technique), "speckling");
  EXPECT_EQ(id_of(words, "splatter", technique), "speckling");
  EXPECT_THAT(words.term(technique, "speckling")->labels, Contains("freckled"));
  EXPECT_THAT(words.term(technique, "speckling")->labels, Contains("splatter"));
  EXPECT_EQ(words.terms(technique).size(), Vocabulary().terms(technique).size());
}

TEST(OwnTerms, WinOverCompiledTermsWithTheSameLabel) {
  const Vocabulary words({own(technique, "inkwash", {"wash"})});
  EXPECT_EQ(id_of(Vocabulary(), "wash", technique), "watercolour wash");
  EXPECT_EQ(id_of(words, "wash", technique), "inkwash");
  EXPECT_EQ(words.find("wash").front().id, "inkwash");
}

TEST(OwnTerms, MayLeadRoundInACircleWithoutHarm) {
  const Vocabulary words(
      {own(role, "lid", {}, "rim"), own(role, "rim", {}, "lid"), own(role, "self", {}, "self")});
  EXPECT_THAT(words.with_narrower(role, "lid"), ElementsAre("lid", "rim"));
  EXPECT_THAT(words.with_narrower(role, "self"), ElementsAre("self"));
}

TEST(OwnTerms, WithALongLabelMakeAReaderLookFurther) {
  const Vocabulary words({own(occasion, "the day the first cherry tree in our street is in bloom")});
  EXPECT_EQ(words.longest_label_words(), 12U);
}

TEST(OwnTerms, ChangeTheFingerprint) {
  EXPECT_EQ(Vocabulary().fingerprint(), Vocabulary().fingerprint());
  const auto with = [](const char* label) { return Vocabulary({own(role, label)}).fingerprint(); };
  EXPECT_NE(with("lid"), Vocabulary().fingerprint());
  EXPECT_NE(with("lid"), with("rim"));
}

TEST(LabelKey, IsTheSameForEveryWayOfWriting) {
  const std::vector<std::vector<const char*>> same = {{"box", "boxes"},
                                                      {"berry", "berries"},
                                                      {"cookie", "cookies"},
                                                      {"die", "dies"},
                                                      {"pop up", "popup"},
                                                      {"glass", "glasses"},
                                                      {"stitch", "stitches"},
                                                      {"colour", "color", "colours"},
                                                      {"stencilling", "stenciling"},
                                                      {"grey", "gray", "greys"},
                                                      {"knife", "knives"},
                                                      {"centre", "center"},
                                                      {"personalised", "personalized"}};
  for (const auto& words : same) {
    for (const char* word : words) EXPECT_EQ(label_key(word), label_key(words.front())) << word;
  }
  EXPECT_NE(label_key("mat"), label_key("mats of"));
  EXPECT_NE(label_key("circle"), label_key("oval"));
  EXPECT_EQ(label_key(""), "");
}

// --- what the build refuses ---

std::string quoted(const std::filesystem::path& path) {
  return "'" + path.string() + "'";
}

// Runs the program that compiles the vocabularies on the real files with one of them replaced; what it
// complains of.
std::string complaint(const std::string& file, const std::string& text) {
  const std::filesystem::path folder = std::filesystem::path(::testing::TempDir()) / "insetbook_vocabularies";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  const std::filesystem::path real = std::filesystem::path(INSETBOOK_SOURCE_DIR) / "schema" / "vocabularies";
  std::string command = quoted(INSETBOOK_COMPILE_VOCABULARIES) + " " + quoted(folder / "out.cc");
  for (const auto& entry : std::filesystem::directory_iterator(real)) {
    const std::filesystem::path copy = folder / entry.path().filename();
    std::filesystem::copy_file(entry.path(), copy);
    command += " " + quoted(copy);
  }
  if (!file.empty()) std::ofstream(folder / file) << text;
  FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return "cannot run " + command;
  std::string said;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) said += static_cast<char>(c);
  const int status = ::pclose(pipe);
  return (status == 0 ? "accepted" : "") + said;
}

std::string roles(const std::string& terms) {
  return complaint("roles.json", R"({"vocabulary": "role", "terms": [)" + terms + "]}");
}
std::string folds(const std::string& terms) {
  return complaint("folds.json", R"({"vocabulary": "fold", "terms": [)" + terms + "]}");
}

TEST(Compiling, AcceptsTheFilesAsTheyAre) {
  EXPECT_EQ(complaint("", ""), "accepted");
}

TEST(Compiling, RefusesWhatCannotBe) {
  const std::string in_roles = "schema/vocabularies/roles.json: ";
  const std::string in_folds = "schema/vocabularies/folds.json: ";
  EXPECT_EQ(roles(R"({"label": "lid"})"), "accepted");
  EXPECT_EQ(roles(R"({"label": "lid", "broader": "cover"})"),
            in_roles + "term \"lid\": its broader term \"cover\" is not in the same vocabulary\n");
  EXPECT_EQ(roles(R"({"label": "lid", "broader": "rim"}, {"label": "rim", "broader": "lid"})"),
            in_roles + "term \"lid\": its broader terms lead back to itself\n");
  EXPECT_EQ(roles(R"({"label": "lid"}, {"label": "rim", "others": ["Lids"]})"),
            in_roles + "term \"rim\": the label \"Lids\" is there twice: in \"lid\" too\n");
  EXPECT_EQ(roles(R"({"label": "lid", "others": ["lids"]})"),
            in_roles + "term \"lid\": the label \"lids\" is there twice: in \"lid\" too\n");
  const std::string two = R"({"label": "lid", "others": [{"label": "cap", "likelihood": 40}]}, )"
                          R"({"label": "rim", "others": [{"label": "cap", "likelihood": )";
  EXPECT_EQ(roles(two + "60}]}"), "accepted");
  EXPECT_EQ(roles(two + "40}]}"),
            in_roles + "term \"rim\": the label \"cap\" is there twice: in \"lid\" too\n");
  EXPECT_EQ(roles(R"({"label": "lid", "others": [" - "]})"), in_roles + "a label is empty: \" - \"\n");
  EXPECT_EQ(roles(R"({"label": "lid", "stands": "no"})"),
            in_roles + "term \"lid\": only folds stand and have creases\n");
  EXPECT_EQ(roles(R"({"label": "lid", "caution": "Hot."})"),
            in_roles + "term \"lid\": a caution and its source go together\n");
  EXPECT_EQ(roles(R"({"label": "lid", "label": "rim"})"),
            in_roles + "the key \"label\" stands twice in one object\n");
  EXPECT_EQ(roles(R"({"label": "lid", "labels": []})"),
            in_roles + "the key \"labels\" is not known: {\"label\":\"lid\",\"labels\":[]}\n");
  EXPECT_EQ(roles(R"({"label": "lid", "likelihood": 0})"),
            in_roles + "a likelihood is not from 1 to 100: \"lid\"\n");
  EXPECT_THAT(roles(R"({"label": "lid", "likelihood": "much"})"), HasSubstr("a value is of the wrong kind"));
  EXPECT_EQ(roles(""), in_roles + "it has no terms\n");
  EXPECT_EQ(folds(R"({"label": "lid"})"), in_folds + "term \"lid\": it does not say how it stands\n");
  EXPECT_EQ(folds(R"({"label": "lid", "stands": "maybe"})"),
            in_folds + "term \"lid\": \"stands\" is built to stand, part-open or no\n");
  EXPECT_EQ(
      folds(R"({"label": "lid", "stands": "no"}, {"label": "rim", "broader": "lid", "stands": "part-open"})"),
      in_folds + "term \"rim\": it does not stand as its broader term \"lid\" does\n");
  EXPECT_THAT(
      folds(
          R"({"label": "lid", "stands": "no", "creases": [{"runs": "upright", "at": "4/4", "folds": "valley"}]})"),
      HasSubstr("a crease \"runs\" upright or level"));
  EXPECT_THAT(complaint("roles.json", R"({"vocabulary": "role", "terms": [)"), HasSubstr("parse error"));
  EXPECT_EQ(complaint("roles.json", R"({"vocabulary": "fold", "terms": [{"label": "lid"}]})"),
            in_roles + "another file has this vocabulary\n");
}

}  // namespace
}  // namespace insetbook
