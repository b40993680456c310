// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "book/changes.h"
#include "book/openings.h"
#include "book/photos.h"
#include "book/records.h"
#include "book/settings.h"
#include "csv/table_book.h"
#include "importers/csv/export_csv.h"
#include "importers/import.h"
#include "importers/json/export_json.h"
#include "importers/json/import_json.h"

namespace insetbook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

namespace fs = std::filesystem;

void put(const fs::path& path, const std::string& text) {
  fs::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << text;
}

struct Shelf {
  fs::path folder = new_folder();
  Shelf() = default;
  Shelf(const Shelf&) = delete;
  Shelf& operator=(const Shelf&) = delete;
  ~Shelf() { fs::remove_all(folder); }

  Book book(const std::string& name) { return *Book::create(folder / name); }
  ImportReport import(Book& book, const std::vector<fs::path>& paths, const ImportOptions& options = {}) {
    auto report = import_files(book, paths, options, Vocabulary());
    EXPECT_TRUE(report) << report.error().what;
    return report ? *report : ImportReport{};
  }
  // A file book.json in a folder of its own.
  fs::path json(const std::string& name, const std::string& members) {
    const fs::path path = folder / name / "book.json";
    put(path, R"({"format":"insetbook","version":1)" + (members.empty() ? "" : "," + members) + "}");
    return path;
  }
};

// Every file of a folder with its bytes.
std::map<std::string, std::string> files_of(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file()) files[fs::relative(entry.path(), folder).string()] = contents(entry.path());
  return files;
}

// The tables of the demo: a person's own, untidy in every way that real ones are.
std::vector<fs::path> sample_tables() {
  std::vector<fs::path> paths;
  for (const char* name : {"elements.csv", "dies.csv", "supplies.csv", "samples.csv", "tried.csv"})
    paths.push_back(fs::path(INSETBOOK_SOURCE_DIR) / "sample-data" / name);
  return paths;
}

TEST(Exchange, OutInAndOutAgainIsTheSame) {
  Shelf shelf;
  Book book = shelf.book("one");
  const ImportReport tables = shelf.import(book, sample_tables());
  EXPECT_THAT(refused(tables), IsEmpty());
  ASSERT_TRUE(set_setting(book, "border", "1/8 in"));
  ASSERT_TRUE(set_setting(book, "hemisphere", "southern"));
  ASSERT_TRUE(book.change("own word", [](Change& change) -> Result<void> {
    change.database().execute(
        "INSERT INTO own_term (vocabulary, term, labels, broader, stands) VALUES ('fold', 'gull wing', "
        "'gull; wings', 'easel', "
        "'built to stand')");
    return {};
  }));
  ASSERT_TRUE(export_json(book, shelf.folder / "out"));
  Book other = shelf.book("two");
  const ImportReport report = shelf.import(other, {shelf.folder / "out"});
  EXPECT_THAT(refused(report), IsEmpty());
  ASSERT_EQ(report.files.size(), 1u);
  EXPECT_EQ(report.files[0].kind, "book");
  EXPECT_GT(report.files[0].added, 400);
  EXPECT_TRUE(settings(other).southern);
  ASSERT_TRUE(export_json(other, shelf.folder / "again"));
  const auto first = files_of(shelf.folder / "out"), second = files_of(shelf.folder / "again");
  EXPECT_GT(first.size(), 1u) << "photographs are part of it";
  EXPECT_EQ(first, second);

  const ImportReport twice = shelf.import(other, {shelf.folder / "out" / "book.json"});
  EXPECT_EQ(twice.files[0].added + twice.files[0].changed, 0);
  EXPECT_EQ(changes(other, 10).size(), 1u);
}

TEST(Exchange, KeepsToItsSchema) {
  const char* modules = std::getenv("INSETBOOK_NODE_MODULES");
  if (modules == nullptr || !fs::exists(fs::path(modules) / "ajv")) GTEST_SKIP() << "ajv is not here";
  Shelf shelf;
  Book book = shelf.book("one");
  shelf.import(book, sample_tables());
  ASSERT_TRUE(export_json(book, shelf.folder / "out"));
  const std::string program = "node " + std::string(INSETBOOK_SOURCE_DIR) + "/tests/json/validate.mjs " +
                              INSETBOOK_SOURCE_DIR + "/schema/exchange.schema.json ";
  EXPECT_EQ(std::system((program + (shelf.folder / "out/book.json").string()).c_str()), 0);
  Book empty = shelf.book("empty");
  ASSERT_TRUE(export_json(empty, shelf.folder / "none"));
  EXPECT_EQ(std::system((program + (shelf.folder / "none/book.json").string()).c_str()), 0);
  const fs::path wrong = shelf.json("wrong", R"("samples":[{"title":"a","made":3}])");
  EXPECT_NE(std::system((program + wrong.string() + " > /dev/null").c_str()), 0);
}

struct Refusal {
  const char* members;
  const char* what;
};

TEST(Exchange, RefusedWithItsPath) {
  const Refusal cases[] = {
      {R"("samples":[{"title":"a"},{"title":"b","made":3}])", "samples[1].made: a number stands here"},
      {R"("samples":[{"title":"a","made":"3 May"}])", "samples[0].made: \"3 May\" is no date"},
      {R"("samples":[{"title":"a","elements":[{"name":"x","count":0}]}])",
       "samples[0].elements[0].count: 0 is no count"},
      {R"("samples":[{"title":"a","elements":[{"name":"x"},{"name":"X"}]}])",
       "samples[0].elements[1].name: two pieces are called \"X\""},
      {R"("samples":[{"title":"a","elements":[{"name":"x","goes_to":"y"}]}])",
       "samples[0].elements[0].goes_to: no piece of the sample is called \"y\""},
      {R"("samples":[{"title":"a","elements":[{"name":"x","width_nm":1.5}]}])",
       "samples[0].elements[0].width_nm: a number that is not whole, or too large, stands here"},
      {R"("samples":[{"title":"a","elements":[{"name":"x","width_nm":-4}]}])",
       "samples[0].elements[0].width_nm: -4 is no length"},
      {R"("samples":[{"titel":"a"}])", "samples[0].titel: there is no such member in the format"},
      {R"("samples":[{"title":" "}])", "samples[0].title: nothing stands here that is a name"},
      {R"("samples":{})", "samples: an object stands here"},
      {R"("samples":[3])", "samples[0]: a number stands here"},
      {R"("samples":[{"title":"a","mentions":[4]}])", "samples[0].mentions[0]: a number stands here"},
      {R"("samples":[{"title":"a","title":"b"}])", "samples[0]: \"title\" comes twice"},
      {R"("samples":[],"samples":[])", "\"samples\" comes twice"},
      {R"("sample":[])", "\"sample\" is no part of the format"},
      {R"("colours":[{"name":"sage","value":"green"}])", "colours[0].value: \"green\" is no colour value"},
      {R"("colours":[{"name":"sage","uuid":"1"}])", "colours[0].uuid: \"1\" is no UUID"},
      {R"("supplies":[{"name":"pad","colour":"00000000-0000-4000-8000-000000000000"}])",
       "supplies[0].colour: no colour has the UUID \"00000000-0000-4000-8000-000000000000\""},
      {R"("sets":[{"name":"A","dies":[{"label":"1","lines":[{"kind":"dotted","name":"cut","shape":"circle"}]}]}])",
       "sets[0].dies[0].lines[0].kind: \"dotted\" is none of the words that may stand here"},
      {R"("sets":[{"name":"A","dies":[{"label":"1","lines":[{"kind":"cut","name":"cut","shape":"circle","measurements":[
          {"standing":"current","width_nm":5,"height_nm":5,"method":"ruler"},{"standing":"current","width_nm":6,"height_nm":6,"method":"ruler"}]}]}]}])",
       "sets[0].dies[0].lines[0].measurements[1].standing: two figures of one line are current"},
      {R"("tried":[{"line":"cut"}])", "tried[0].die: nothing stands here"},
      {R"("settings":[{"name":"colour of the wall","value":"x"}])",
       "settings[0].name: there is no setting \"colour of the wall\""},
      {R"("settings":[{"name":"unit","value":"furlong"}])",
       "settings[0].value: \"furlong\" is no value for \"unit\""},
      {R"("settings":[{"name":"border","value":"wide"}])", "settings[0].value: \"wide\" is no length"},
      {R"("settings":[{"name":"hemisphere","value":"both"}])",
       "settings[0].value: \"both\" is no value for \"hemisphere\""},
      {R"("settings":[{"name":"today","value":"yesterday"}])",
       "settings[0].value: \"yesterday\" is no value for \"today\""},
      {R"("terms":[{"vocabulary":"fold","term":"gull\u0007 wing"}])",
       "terms[0].term: the text holds the character U+0007, which nothing shows, at 4"},
      {R"("terms":[{"vocabulary":"fold","term":"a; b"}])", "terms[0].term: \"a; b\" has a semicolon in it"},
      {R"("colours":[{"name":"sea\ngreen"}])",
       "colours[0].name: the name holds the character U+000A, which nothing shows, at 3"},
  };
  Shelf shelf;
  Book book = shelf.book("one");
  int n = 0;
  for (const Refusal& c : cases) {
    const fs::path path = shelf.json("f" + std::to_string(n++), c.members);
    const auto report = import_files(book, {path}, {}, Vocabulary());
    ASSERT_FALSE(report) << c.members;
    EXPECT_EQ(report.error().what, c.what) << c.members;
    EXPECT_EQ(report.error().where.file, path.string());
  }
  EXPECT_THAT(changes(book, 1), IsEmpty()) << "the book is as it was";
}

TEST(Exchange, NoBookAtAll) {
  using namespace std::string_literals;
  const std::pair<std::string, std::string> cases[] = {
      {"{}", "the file is JSON, but no book"},
      {R"({"format":"insetbook"})", "the file says no version of the format"},
      {R"({"format":"insetbook","version":2})", "the file has version 2 of the format"},
      {R"({"format":"insetbook","version":0})", "the file has no version of the format that ever was"},
      {R"({"format":"insetbook","version":1)", "the file is no JSON at byte "},
      {R"({"format":"insetbook","version":1,"samples":[{"title":")"
       "\xC3"
       R"("}]})",
       "the file is no JSON at byte "},
      {R"({"format":"insetbook","version":1}})", "the file is no JSON at byte "},
      {R"({"format":"insetbook","version":1,"samples":)" + std::string(100'000, '['),
       "the file is nested deeper than 24"},
      {R"({"format":"insetbook","version":1,"samples":[{"title":"a\u0000b"}]})",
       "samples[0].title: the text holds the character U+0000, which nothing shows, at 1"},
      {R"([{"format":"insetbook","version":1}])", "the file is JSON, but no book"},
      {"set,die,shape\n", "the file is no JSON at byte 1"},
      {R"({"format":"insetbook","version":1,")" + std::string(3000, 'x') + R"(":[]})",
       ('"' + std::string(60, 'x') + "…\" is no part of the format")},
  };
  Shelf shelf;
  Book book = shelf.book("one");
  for (const auto& [text, what] : cases) {
    put(shelf.folder / "f.json", text);
    const auto report = import_files(book, {shelf.folder / "f.json"}, {}, Vocabulary());
    ASSERT_FALSE(report) << what;
    EXPECT_THAT(report.error().what, HasSubstr(what));
  }
}

constexpr const char* sage_a = "11111111-0000-4000-8000-000000000000";
constexpr const char* sage_b = "22222222-0000-4000-8000-000000000000";

TEST(Exchange, MergesByUuidAndName) {
  Shelf shelf;
  Book book = shelf.book("one");
  const std::string a = sage_a, b = sage_b;
  shelf.import(
      book,
      {shelf.json(
          "a", R"("colours":[{"uuid":")" + a + R"(","name":"sage","note":"mine"}],"samples":[{"uuid":")" + a +
                   R"(","title":"low tide","elements":[{"name":"x"},{"name":"y","goes_to":"x"}]}])")});
  // The same UUID: the record becomes what the file says.
  const ImportReport same = shelf.import(
      book,
      {shelf.json("same",
                  R"("samples":[{"uuid":")" + a +
                      R"(","title":"Low Tide II","elements":[{"name":"y","goes_to":"z"},{"name":"z"}]}])")});
  EXPECT_THAT(counts(same), ElementsAre(HasSubstr(" book +1 ~3 =0 !0")));
  const auto id = sample_titled(book, "low tide ii");
  ASSERT_TRUE(id);
  EXPECT_FALSE(sample_titled(book, "low tide"));
  const auto pieces = elements_of(book, *id);
  ASSERT_EQ(pieces.size(), 2u);
  EXPECT_EQ(pieces[0].second.name, "y");
  EXPECT_EQ(pieces[0].second.goes_to, pieces[1].first);
  // The same name under another UUID: the book's record stays, and is what the file refers to.
  const ImportReport other = shelf.import(
      book,
      {shelf.json("other", R"("supplies":[{"kind":"ink","name":"pad","colour":")" + b +
                               R"("}],"colours":[{"uuid":")" + b +
                               R"(","name":"Sage","value":"#8aa37b","note":"theirs"}],"samples":[{"uuid":")" +
                               b + R"(","title":"low tide ii"}])")});
  EXPECT_THAT(refused(other), ElementsAre("0 samples[0]: another sample of the book is called \"low tide "
                                          "ii\" / another title in one of the two"));
  ASSERT_TRUE(export_json(book, shelf.folder / "out"));
  const std::string out = contents(shelf.folder / "out/book.json");
  EXPECT_THAT(out, HasSubstr(R"({"uuid":")" + a + R"(","name":"sage","value":"#8aa37b","note":"mine"})"));
  EXPECT_THAT(out, HasSubstr(R"("kind":"ink","name":"pad","colour":")" + a + R"("})"));
}

TEST(Exchange, MeasurementsJoinThoseOfTheBook) {
  Shelf shelf;
  Book book = shelf.book("one");
  const auto set = [](const std::string& measurements) {
    return R"("sets":[{"name":"A","dies":[{"label":"1","rank":1,"lines":[{"kind":"cut","name":"cut","shape":"circle","measurements":[)" +
           measurements + "]}]}]}]";
  };
  const std::string two_inches =
      R"({"standing":"current","width_nm":50800000,"height_nm":50800000,"method":"ruler"})";
  const std::string three_inches =
      R"({"standing":"current","width_nm":76200000,"height_nm":76200000,"method":"ruler"})";
  shelf.import(book, {shelf.json("a", set(two_inches))});
  const ImportReport report = shelf.import(book, {shelf.json("b", set(three_inches))});
  EXPECT_THAT(report.notes, ElementsAre("sets[0].dies[0].lines[0].measurements[0]: another figure stands in "
                                        "the book; both are kept until you settle it"));
  ASSERT_TRUE(export_json(book, shelf.folder / "out"));
  const std::string out = contents(shelf.folder / "out/book.json");
  EXPECT_THAT(out, HasSubstr(R"({"standing":"current","width_nm":50800000)"));
  EXPECT_THAT(out, HasSubstr(R"({"standing":"conflict","width_nm":76200000)"));
}

TEST(Exchange, SettingsAreCalledAsTheBookCallsThem) {
  Shelf shelf;
  Book book = shelf.book("one");
  const ImportReport report =
      shelf.import(book, {shelf.json("a", R"("settings":[{"name":"Cutting-Step","value":"1/32"},)"
                                          R"({"name":"Hemisphere","value":"South"}])")});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_EQ(settings(book).cutting_step, Length::inch_fraction(1, 32));
  EXPECT_TRUE(settings(book).southern);
}

TEST(Exchange, MissingPhotographIsToldBesideTheSample) {
  Shelf shelf;
  Book book = shelf.book("one");
  const std::string hash(64, 'a');
  const ImportReport report = shelf.import(
      book, {shelf.json("a", R"("samples":[{"title":"low tide","photos":[{"file_name":"x.png","hash":")" +
                                 hash + R"("}]}])")});
  ASSERT_EQ(report.refused.size(), 1u);
  EXPECT_TRUE(report.refused[0].row_kept);
  EXPECT_EQ(report.refused[0].column, "samples[0].photos[0]");
  EXPECT_TRUE(sample_titled(book, "low tide"));
}

std::string any_photo() {
  for (const auto& entry : fs::directory_iterator(fs::path(INSETBOOK_SOURCE_DIR) / "sample-data" / "photos"))
    return entry.path().string();
  return {};
}

struct BookWithPhoto : Shelf {
  Book book = Shelf::book("one");
  BookWithPhoto() {
    put(folder / "s.csv", "sample,photo\nlow tide," + any_photo() + "\n");
    import(book, {folder / "s.csv"});
  }
};

TEST(Export, BothFormatsShareAFolder) {
  for (const bool json_first : {true, false}) {
    BookWithPhoto of;
    const fs::path out = of.folder / "out";
    if (json_first) {
      ASSERT_TRUE(export_json(of.book, out));
    }
    ASSERT_TRUE(export_csv(of.book, out));
    if (!json_first) {
      ASSERT_TRUE(export_json(of.book, out));
    }
    Book from_json = of.Shelf::book("two"), from_csv = of.Shelf::book("three");
    EXPECT_THAT(refused(of.import(from_json, {out / "book.json"})), IsEmpty());
    EXPECT_THAT(refused(of.import(from_csv, {out / "samples.csv"})), IsEmpty());
    EXPECT_EQ(sample(from_json, 1)->photos, sample(of.book, 1)->photos);
    EXPECT_EQ(sample(from_csv, 1)->photos, sample(of.book, 1)->photos);
  }
}

TEST(Export, WhereAPlaceIsTakenNothingIsWritten) {
  BookWithPhoto of;
  const std::string hash = sample(of.book, 1)->photos.front().hash;
  const struct {
    fs::path folder, file;  // what is in the way
    bool csv, json;         // which export it stops
  } cases[] = {
      {"tried.csv", {}, true, false},      {"", "photos", true, true},
      {"photos/" + hash, {}, false, true}, {"", "photos/by-name", true, false},
      {"book.json", {}, false, true},
  };
  int n = 0;
  for (const auto& one : cases) {
    const fs::path out = of.folder / ("out" + std::to_string(n++));
    fs::create_directories(out / one.folder);
    if (!one.file.empty()) put(out / one.file, "mine");
    const auto before = files_of(out);
    const auto csv = export_csv(of.book, out);
    EXPECT_EQ(csv.has_value(), !one.csv) << out;
    if (one.csv) {
      EXPECT_THAT(csv.error().what, testing::EndsWith("; nothing was written"));
    }
    if (one.csv) {
      EXPECT_EQ(files_of(out), before);
    }
    const auto before_json = files_of(out);
    const auto json = export_json(of.book, out);
    EXPECT_EQ(json.has_value(), !one.json) << out;
    if (one.json) {
      EXPECT_EQ(files_of(out), before_json);
    }
  }
}

TEST(Export, TwoResultsOfOneDayComeBackInBothFormats) {
  Shelf shelf;
  Book book = shelf.book("one");
  put(shelf.folder / "dies.csv", "set,die,shape,size\nA,1,rectangle,3 x 4 in\n");
  put(shelf.folder / "tried.csv",
      "set,die,shape,size,result,date\nA,1,rectangle,2 x 3 in,too tight,2026-03-02\n"
      "A,1,rectangle,2 x 3 in,fits,2026-03-02\n");
  EXPECT_THAT(refused(shelf.import(book, {shelf.folder / "dies.csv", shelf.folder / "tried.csv"})),
              IsEmpty());
  const auto results = [](const Book& one) {
    std::vector<std::string> all;
    for (const TriedPanel& panel : tried_in(one, 1)) all.push_back(panel.result);
    return all;
  };
  ASSERT_THAT(results(book), ElementsAre("fits", "too tight")) << "the last one first";
  ASSERT_TRUE(export_json(book, shelf.folder / "json"));
  ASSERT_TRUE(export_csv(book, shelf.folder / "csv"));
  Book from_json = shelf.book("two"), from_csv = shelf.book("three");
  shelf.import(from_json, {shelf.folder / "json"});
  shelf.import(from_csv, {shelf.folder / "csv/dies.csv", shelf.folder / "csv/tried.csv"});
  EXPECT_EQ(results(from_json), results(book));
  EXPECT_EQ(results(from_csv), results(book));
  const ImportReport twice = shelf.import(from_csv, {shelf.folder / "csv/tried.csv"});
  EXPECT_EQ(twice.files[0].same, 2);
}

TEST(Export, TheTablesSayWhatTheyLeaveOut) {
  Shelf shelf;
  Book book = shelf.book("one");
  const auto notes = [&] { return export_csv(book, shelf.folder / "out")->notes; };
  EXPECT_THAT(notes(), IsEmpty());
  ASSERT_TRUE(set_setting(book, "border", "1/8 in"));
  EXPECT_THAT(notes(),
              ElementsAre("the tables have no place for 1 setting; an export as JSON holds all of it"));
  ASSERT_TRUE(set_setting(book, "today", "2026-03-02"));
  put(shelf.folder / "dies.csv", "set,die,shape,size\nA,1,circle,3 in\n");
  shelf.import(book, {shelf.folder / "dies.csv"});
  ASSERT_TRUE(book.change("note", [](Change& change) -> Result<void> {
    change.database().execute("UPDATE die_set SET note = 'a gift'");
    return {};
  }));
  EXPECT_THAT(notes(),
              ElementsAre("the tables have no place for 2 settings and 1 note of a set; an export as "
                          "JSON holds all of it"));
}

TEST(ImportFiles, AFileCalledJsonIsReadAsThat) {
  Shelf shelf;
  Book book = shelf.book("one");
  put(shelf.folder / "rows.JSON", "[{\"set\": \"A\", \"die\": 1}]");
  const auto report = import_files(book, {shelf.folder / "rows.JSON"}, {}, Vocabulary());
  ASSERT_FALSE(report);
  EXPECT_EQ(report.error().what, "the file is JSON, but no book");
  EXPECT_EQ(report.error().expected,
            "a book as export writes it, an object with \"format\": \"insetbook\"; a table as CSV");
}

TEST(Exchange, ASizeOfOneFigureComesBack) {
  Shelf shelf;
  Book book = shelf.book("one");
  put(shelf.folder / "s.csv", "sample\nlow tide\n");
  put(shelf.folder / "e.csv", "sample,element,role,size\nlow tide,bow,ribbon,3/8 in\n");
  EXPECT_THAT(shelf.import(book, {shelf.folder / "s.csv", shelf.folder / "e.csv"}).notes, IsEmpty());
  ASSERT_TRUE(export_json(book, shelf.folder / "out"));
  Book other = shelf.book("two");
  shelf.import(other, {shelf.folder / "out"});
  const auto size = [](const Book& one) { return elements_of(one, 1)[0].second.size; };
  EXPECT_EQ(size(book).width, Length::inch_fraction(3, 8));
  EXPECT_FALSE(size(book).height);
  EXPECT_EQ(size(other), size(book));
  ASSERT_TRUE(export_json(other, shelf.folder / "again"));
  EXPECT_EQ(files_of(shelf.folder / "out"), files_of(shelf.folder / "again"));
}

TEST(ImportFiles, DryRunAndAllOrNothingKeepNothing) {
  Shelf shelf;
  Book book = shelf.book("one");
  put(shelf.folder / "s.csv", "sample,made\nlow tide,2026-01-01\nhigh tide,nonsense\n");
  ImportOptions options;
  options.dry_run = true;
  const ImportReport dry = shelf.import(book, {shelf.folder / "s.csv"}, options);
  EXPECT_FALSE(dry.kept);
  EXPECT_EQ(dry.files[0].added, 1);
  EXPECT_FALSE(sample_titled(book, "low tide"));
  options.dry_run = false;
  options.all_or_nothing = true;
  EXPECT_FALSE(shelf.import(book, {shelf.folder / "s.csv"}, options).kept);
  EXPECT_FALSE(sample_titled(book, "low tide"));
  EXPECT_THAT(changes(book, 1), IsEmpty());
  options.all_or_nothing = false;
  EXPECT_TRUE(shelf.import(book, {shelf.folder / "s.csv"}, options).kept);
  ASSERT_EQ(changes(book, 10).size(), 1u);
  EXPECT_EQ(changes(book, 1)[0].what,
            "imported " + (shelf.folder / "s.csv").string() + ": 1 added, 0 changed");
}

TEST(ImportFiles, ProblemsOfTheWholeCall) {
  Shelf shelf;
  Book book = shelf.book("one");
  put(shelf.folder / "s.csv", "sample\nlow tide\n");
  EXPECT_FALSE(
      import_files(book, {shelf.folder / "s.csv", shelf.folder / "not there.csv"}, {}, Vocabulary()));
  ImportOptions options;
  options.as = "cards";
  const auto report = import_files(book, {shelf.folder / "s.csv"}, options, Vocabulary());
  ASSERT_FALSE(report);
  EXPECT_EQ(report.error().what, "\"cards\" is no kind of table");
  options.as = "";
  options.refused_file = shelf.folder / "s.csv";
  EXPECT_FALSE(import_files(book, {shelf.folder / "s.csv"}, options, Vocabulary()));
  EXPECT_THAT(changes(book, 1), IsEmpty());
}

}  // namespace
}  // namespace insetbook
