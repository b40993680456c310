// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the build refuses in schema/papers.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace {

using ::testing::HasSubstr;

std::string quoted(const std::filesystem::path& path) {
  return "'" + path.string() + "'";
}

// Runs the program that compiles the papers on the real files with one of them replaced; what it complains
// of.
std::string complaint(const std::string& file, const std::string& text) {
  const std::filesystem::path folder = std::filesystem::path(::testing::TempDir()) / "insetbook_papers";
  std::filesystem::remove_all(folder);
  std::filesystem::copy(std::filesystem::path(INSETBOOK_SOURCE_DIR) / "schema" / "papers", folder);
  if (!file.empty()) std::ofstream(folder / file) << text;
  const std::string command =
      quoted(INSETBOOK_COMPILE_PAPERS) + " " + quoted(folder / "out.cc") + " " + quoted(folder);
  FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return "cannot run " + command;
  std::string said;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) said += static_cast<char>(c);
  const int status = ::pclose(pipe);
  return (status == 0 ? "accepted" : "") + said;
}

std::string table(const std::string& name, const std::string& entries) {
  return R"({"table": ")" + name +
         R"(", "groups": [{"source": "a book", "year": 2020, "state": "read", "entries": [)" + entries +
         "]}]}";
}
std::string calipers(const std::string& entries) {
  return complaint("calipers.json", table("calipers", entries));
}
std::string grades(const std::string& entries) {
  return complaint("basis_weights.json", table("basis weights", entries));
}
std::string post(const std::string& limits, const std::string& more = "") {
  return complaint(
      "postal.json",
      R"({"table": "postal", "services": [{"service": "Here", "country": "Nowhere", "source": "a page",
          "year": 2020, "state": "read", "beyond": "no", )" +
          more + R"("formats": [{"format": "letter", "verdict": "goes", "limits": [)" + limits + "]}]}]}");
}

TEST(CompilingPapers, AcceptsTheFilesAsTheyAre) {
  EXPECT_EQ(complaint("", ""), "accepted");
}

TEST(CompilingPapers, RefusesAFigureWithoutSourceYearOrState) {
  const auto cut = [](const std::string& what) {
    std::string all = table("calipers", R"({"stock": "card", "weight": "200 g/m2", "thickness": "0.2 mm"})");
    all.erase(all.find(what), what.size());
    return complaint("calipers.json", all);
  };
  EXPECT_EQ(cut(""), "accepted");
  const std::string refused =
      "schema/papers/calipers.json: a figure without \"source\", \"year\" (or \"year "
      "read\") and \"state\": {\"stock\":\"card\",\"thickness\":\"0.2 "
      "mm\",\"weight\":\"200 g/m2\"}\n";
  EXPECT_EQ(cut(R"("source": "a book", )"), refused);
  EXPECT_EQ(cut(R"("year": 2020, )"), refused);
  EXPECT_EQ(cut(R"("state": "read", )"), refused);
  EXPECT_THAT(calipers(R"({"stock": "card", "weight": "200 g/m2", "thickness": "0.2 mm", "state": "sure"})"),
              HasSubstr("\"state\" is read, second hand, recalled or common practice"));
  EXPECT_THAT(calipers(R"({"stock": "card", "weight": "200 g/m2", "thickness": "0.2 mm", "year": 20})"),
              HasSubstr("\"year\" is no year"));
}

TEST(CompilingPapers, RefusesSizesThatAreNotWrittenPlainly) {
  const auto grade = [](const std::string& size) {
    return grades(R"({"name": "cover", "sheets": 500, "size": ")" + size + R"("})");
  };
  EXPECT_EQ(grade("20 x 26 in"), "accepted");
  EXPECT_THAT(grade("26 x 20 in"), HasSubstr("\"size\" does not stand upright"));
  EXPECT_THAT(grade("20 x 26"), HasSubstr("\"size\" is not written as \"20 x 26 in\""));
  EXPECT_THAT(grade("20.5 x 26 in"), HasSubstr("\"size\" is not written as \"20-1/2 x 26 in\""));
  EXPECT_THAT(grade("20 in"), HasSubstr("\"size\" is not written as"));
  EXPECT_THAT(grade("20 by heart"), HasSubstr("schema/papers/basis_weights.json: \"size\": "));
  EXPECT_THAT(grades(R"({"name": "cover", "sheets": 0, "size": "20 x 26 in"})"),
              HasSubstr("\"sheets\" is no number of sheets"));
}

TEST(CompilingPapers, RefusesNamesThatAreThereTwiceOrLeadNowhere) {
  EXPECT_EQ(
      complaint("papers.json", table("papers", R"({"name": "note", "size": "3 x 5 in"},
                                                        {"name": "Notes", "size": "4 x 6 in"})")),
      "schema/papers/papers.json: the name \"Notes\" is there twice: {\"name\":\"Notes\",\"size\":\"4 x 6 "
      "in\"}\n");
  const auto cards = [](const std::string& what) {
    return complaint("card_names.json", table("card names", R"({"name": "big", )" + what + "}"));
  };
  EXPECT_EQ(cards(R"("paper": "ISO A5", "means": "ISO A5, SIZE")"), "accepted");
  EXPECT_THAT(cards(R"("paper": "ISO A55", "means": "SIZE")"), HasSubstr("\"ISO A55\" has no such size"));
  EXPECT_THAT(cards(R"("card of": "No. 10", "means": "SIZE")"), HasSubstr("\"No. 10\" has no such size"));
  EXPECT_THAT(cards(R"("paper": "ISO A5", "means": "large")"), HasSubstr("no place for the SIZE"));
  EXPECT_THAT(cards(R"("means": "SIZE")"), HasSubstr("one of \"paper\", \"card of\" and \"size\" is wanted"));
}

TEST(CompilingPapers, RefusesEnvelopesThatCannotBe) {
  const auto envelope = [](const std::string& what) {
    return complaint("envelopes.json",
                     table("envelopes", R"({"name": "small", "size": "4 x 6 in", )" + what + "}"));
  };
  EXPECT_THAT(envelope(R"("takes": "4 x 5-3/4 in")"), HasSubstr("what it takes does not go in"));
  EXPECT_THAT(envelope(R"("takes": "95 x 140 mm")"), HasSubstr("what it takes is in another unit"));
  EXPECT_THAT(envelope(R"("or": "small")"), HasSubstr("\"or\" names no other envelope"));
  EXPECT_THAT(envelope(R"("colour": "red")"), HasSubstr("the key \"colour\" is not known"));
}

TEST(CompilingPapers, RefusesCalipersOutOfOrder) {
  EXPECT_THAT(calipers(R"({"stock": "a", "weight": "200 g/m2", "thickness": "0.2 mm"},
                          {"stock": "b", "weight": "250 g/m2", "thickness": "0.2 mm"})"),
              HasSubstr("it is not heavier and thicker than the one before: {\"stock\":\"b\""));
  EXPECT_THAT(calipers(R"({"stock": "a", "weight": "200 gsm", "thickness": "0.2 mm"})"),
              HasSubstr("\"weight\" is not in g/m2"));
  EXPECT_THAT(calipers(R"({"stock": "a", "weight": "200 g/m2", "thickness": "0.2"})"),
              HasSubstr("\"thickness\" has no unit, in or mm: 0.2"));
}

TEST(CompilingPapers, RefusesPostalLimitsThatLimitNothing) {
  EXPECT_EQ(post(R"({"of": "mass", "most": "3.5 oz"}, {"of": "aspect", "least": "1.3", "most": "2.5"})"),
            "accepted");
  EXPECT_THAT(post(R"({"of": "mass"})"), HasSubstr("it limits nothing"));
  EXPECT_THAT(post(R"({"of": "depth", "most": "5 mm"})"),
              HasSubstr("\"of\" is length, width, thickness, mass or aspect"));
  EXPECT_THAT(post(R"({"of": "mass", "most": "3.5 lb"})"), HasSubstr("is not in g or oz"));
  EXPECT_THAT(post(R"({"of": "mass", "most": "3.5.1 oz"})"), HasSubstr("is no figure"));
  EXPECT_THAT(post(R"({"of": "aspect", "most": "2.555"})"), HasSubstr("in hundredths"));
  EXPECT_THAT(post(R"({"of": "length", "most": "heavy"})"), HasSubstr("is no length"));
  EXPECT_THAT(post(R"({"of": "length", "least": "9 in", "most": "9 in"})"),
              HasSubstr("\"most\" is not more than \"least\""));
  EXPECT_THAT(post(R"({"of": "length", "most": "9 in"})", R"("below": "too small", )"),
              HasSubstr("\"least\" and \"below\" go together"));
  EXPECT_THAT(complaint("postal.json", R"({"table": "postal", "services": []})"),
              HasSubstr("it has no services"));
  EXPECT_THAT(complaint("postal.json", R"({"table": "post", "services": []})"),
              HasSubstr("\"table\" is not \"postal\""));
}

}  // namespace
