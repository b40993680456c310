// SPDX-License-Identifier: GPL-3.0-or-later
#include "question_book.h"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <fstream>
#include <numeric>
#include <random>

#include "answers/import_tables.h"
#include "book/settings.h"

namespace insetbook {

namespace fs = std::filesystem;

const std::vector<ColourRecord> book_colours{{"sage", 0x9caf88},         {"navy", 0x1f2f5c},
                                             {"wet slate", 0x5b6770},    {"gorse hedge", 0xf2c230},
                                             {"rhubarb skin", 0xd8667a}, {"soot", 0x26262a}};
const std::vector<std::string> book_shapes{"circle", "oval",      "square", "rectangle",
                                           "heart",  "scalloped", "arch",   "hexagon"};
const std::vector<std::string> book_roles{"panel", "mat", "strip", "embellishment", "liner", "inside panel"};
const std::vector<std::string> book_techniques{"speckling", "dry embossing", "deep embossing", "tearing",
                                               "marbling",  "weaving",       "quilling"};
const std::vector<std::string> book_folds{"easel", "side easel", "accordion", "side fold", "shutter"};
const std::vector<std::string> book_occasions{"birthday", "belated birthday", "sympathy", "retirement"};
const std::vector<std::string> book_words{"heron", "kestrel", "quince", "thimble"};
const std::vector<std::string> book_supplies{"garden gate", "otter row"};
// Sources: the sizes as tests/outside/papers_test.cc holds them against published tables.
const std::vector<std::vector<std::string>> book_envelopes{{"C6", "114 x 162 mm", "162 x 114 mm"},
                                                           {"A2", "4-3/8 x 5-3/4 in", "5-3/4 x 4-3/8"},
                                                           {"A7", "5-1/4 x 7-1/4 in", "7-1/4 x 5-1/4 in"},
                                                           {"", "none", "with the book"}};
const std::string book_set = "Tidepool Ovals";

namespace {

constexpr std::int64_t sixty_fourth = 396'875;
constexpr std::int64_t inches(std::int64_t sixty_fourths) {
  return sixty_fourths * sixty_fourth;
}

}  // namespace

// 1, 1-3/8, 2, 2-3/8, 3 and 4-1/8 in; a 32nd beside 2-3/8, and a 64th more; an eighth, and a 64th more.
const std::vector<std::int64_t> book_figures{inches(64),  inches(88),  inches(128), inches(152), inches(192),
                                             inches(264), inches(154), inches(155), inches(144), inches(143)};

std::string fraction(std::int64_t nm) {
  const std::int64_t all = nm / sixty_fourth;
  const std::int64_t whole = all / 64, part = all % 64;
  if (part == 0) return std::to_string(whole);
  const std::int64_t shared = std::gcd(part, std::int64_t{64});
  const std::string of = std::to_string(part / shared) + "/" + std::to_string(64 / shared);
  return whole == 0 ? of : std::to_string(whole) + "-" + of;
}

namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  std::size_t upto(std::size_t n) { return engine_() % n; }
  bool one_in(std::size_t n) { return upto(n) == 0; }
  template <class T>
  const T& pick(const std::vector<T>& list) {
    return list[upto(list.size())];
  }

 private:
  std::mt19937 engine_;
};

const std::vector<std::string> sides{"front", "", "inside", "back"};

PieceRecord a_piece(Dice& dice, std::size_t number) {
  PieceRecord piece;
  // What a piece is for may stand in its name alone.
  static const std::vector<std::string> called{"piece", "mat piece", "piece", "strip piece", "panel piece"};
  piece.name = called[static_cast<std::size_t>(number) % called.size()] + " " + std::to_string(number + 1);
  piece.role = dice.pick(book_roles);
  piece.side = dice.pick(sides);
  if (!dice.one_in(6)) piece.shape = dice.pick(book_shapes);
  if (!dice.one_in(8)) {
    piece.width = piece.height = dice.pick(book_figures);
    if (piece.shape != "circle" && piece.shape != "square") piece.height = dice.pick(book_figures);
  }
  if (!dice.one_in(4)) piece.paper = dice.pick(book_colours).name;
  if (dice.one_in(3)) piece.ink = dice.pick(book_colours).name;
  if (dice.one_in(2)) piece.techniques.push_back(dice.pick(book_techniques));
  if (dice.one_in(4)) piece.supply = dice.pick(book_supplies);
  if (dice.one_in(4)) piece.die = 1 + static_cast<int>(dice.upto(4));
  if (dice.one_in(4)) piece.count = 2 + static_cast<int>(dice.upto(2));
  if (number > 0 && dice.one_in(2)) {
    piece.goes = static_cast<GoesHow>(dice.upto(5));
    piece.other = dice.upto(number);
  }
  static const std::vector<std::string> places{"", "", "high of centre", "centred on the fold",
                                               "bottom right"};
  piece.place = dice.pick(places);
  return piece;
}

SampleRecord a_sample(Dice& dice, std::size_t number) {
  SampleRecord sample;
  sample.title = "Nr " + std::to_string(1000 + number);
  sample.made = std::to_string(2022 + dice.upto(4)) + "-0" + std::to_string(1 + dice.upto(9)) + "-1" +
                std::to_string(dice.upto(10));
  sample.fold = dice.pick(book_folds);
  if (!dice.one_in(3)) sample.occasion = dice.pick(book_occasions);
  if (dice.one_in(2)) sample.word = dice.pick(book_words);
  if (dice.one_in(4)) sample.techniques.push_back(dice.pick(book_techniques));
  sample.width = dice.pick(book_figures);
  sample.height = dice.one_in(3) ? sample.width : dice.pick(book_figures);
  sample.envelope = book_envelopes[number % 4][number / 4 % 3];
  for (std::size_t i = 0, n = 1 + dice.upto(5); i < n; ++i) sample.pieces.push_back(a_piece(dice, i));
  return sample;
}

// Removes the folder when the program ends.
struct Folder {
  fs::path path;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
};

std::string size_cell(std::optional<std::int64_t> width, std::optional<std::int64_t> height, bool one) {
  if (!width) return "";
  return one ? fraction(*width) + " in" : fraction(*width) + " x " + fraction(*height) + " in";
}

std::string joined(const std::vector<std::string>& list) {
  std::string out;
  for (const std::string& each : list) out += (out.empty() ? "" : "; ") + each;
  return out;
}

void write_tables(const fs::path& folder, const std::vector<SampleRecord>& samples) {
  std::ofstream dies(folder / "dies.csv");
  dies << "set,die,line,shape,size\n";
  for (const char* die :
       {"1,cut,oval,5 x 6 in", "2,cut,oval,4 x 5 in", "3,cut,oval,3 x 4 in", "4,cut,oval,2 x 3 in"})
    dies << book_set << "," << die << "\n";
  std::ofstream supplies(folder / "supplies.csv");
  supplies << "kind,name,colour,colour value\n";
  for (const std::string& supply : book_supplies) supplies << "stamp," << supply << ",,\n";
  char value[16];
  for (const ColourRecord& colour : book_colours) {
    std::snprintf(value, sizeof value, "#%06x", colour.srgb);
    supplies << "card stock,heavy card," << colour.name << "," << value << "\n"
             << "ink,ink pad," << colour.name << "," << value << "\n";
  }
  std::ofstream cards(folder / "samples.csv");
  cards << "sample,made,occasion,fold,finished,techniques,words,envelope\n";
  std::ofstream elements(folder / "elements.csv");
  elements << "sample,element,role,side,shape,size,colour,ink,supply,die set,die,goes,at,technique,count\n";
  for (const SampleRecord& s : samples) {
    cards << s.title << "," << s.made << "," << s.occasion << "," << s.fold << ","
          << size_cell(s.width, s.height, false) << "," << joined(s.techniques) << "," << s.word << ","
          << s.envelope << "\n";
    for (const PieceRecord& p : s.pieces) {
      elements << s.title << "," << p.name << "," << p.role << "," << p.side << "," << p.shape << ","
               << size_cell(p.width, p.height, p.shape == "circle" || p.shape == "square") << "," << p.paper
               << "," << p.ink << "," << p.supply << "," << (p.die ? book_set : "") << ","
               << (p.die ? std::to_string(p.die) : "") << ","
               << (p.goes ? std::string(goes_word(*p.goes)) + " " + s.pieces[p.other].name : "") << ","
               << p.place << "," << joined(p.techniques) << "," << p.count << "\n";
    }
  }
}

QuestionBook made(const fs::path& folder) {
  Dice dice(20261125);
  std::vector<SampleRecord> samples;
  for (std::size_t i = 0; i < 150; ++i) samples.push_back(a_sample(dice, i));
  write_tables(folder, samples);
  const Result<ImportReport> report = import_into(
      folder / "book",
      {folder / "dies.csv", folder / "supplies.csv", folder / "samples.csv", folder / "elements.csv"}, {});
  EXPECT_TRUE(report) << (report ? "" : report.error().what);
  if (report)
    for (const RefusedRow& row : report->refused)
      ADD_FAILURE() << row.file << ", row " << row.row << ", " << row.column << ": " << row.what;
  Result<Book> book = Book::open(folder / "book", Book::Use::write);
  EXPECT_TRUE(book) << (book ? "" : book.error().what);
  EXPECT_TRUE(set_setting(*book, "today", "2026-11-25"));
  return {std::move(*book), std::move(samples)};
}

}  // namespace

const QuestionBook& question_book() {
  static Folder folder;
  static std::optional<QuestionBook> book;
  if (!book) {
    std::string name = (fs::temp_directory_path() / "insetbook-test-XXXXXX").string();
    folder.path = mkdtemp(name.data());
    book.emplace(made(folder.path));
  }
  return *book;
}

}  // namespace insetbook
