// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes the five tables of a synthetic studio, always the same for the same number of samples: five pieces a
// sample, most of them on, behind, in, around or through another, forty die sets of six dies with two lines,
// eighty supplies, notes of words that are as common and as rare as words are.
//   make_tables SAMPLES FOLDER
#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace {

constexpr int die_sets = 40;
constexpr int dies_in_set = 6;
constexpr int colours = 60;
constexpr int note_words = 8000;

// A fixed generator of our own (xorshift*), so that the tables do not depend on a library's version.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next() {
    state_ ^= state_ >> 12;
    state_ ^= state_ << 25;
    state_ ^= state_ >> 27;
    return state_ * 2685821657736338717ULL;
  }
  int below(int n) { return static_cast<int>(next() % static_cast<std::uint64_t>(n)); }
  double fraction() { return static_cast<double>(next() >> 11) / 9007199254740992.0; }
  template <class T>
  const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(below(static_cast<int>(list.size())))];
  }

 private:
  std::uint64_t state_;
};

// A word that can be spoken, the same for the same number.
std::string made_word(int number) {
  static const char* const first[] = {"ba", "de", "fi", "go", "hu", "ka", "le", "mi",
                                      "no", "pu", "ra", "se", "ti", "vo", "wu"};
  static const char* const last[] = {"dle",  "ner", "row",  "lin",  "mosh",
                                     "tern", "vel", "gard", "stam", "pick"};
  std::string word;
  int rest = number;
  do {
    word += first[rest % 15];
    rest /= 15;
  } while (rest > 0);
  return word + last[number % 10];
}

// Zipf: the n-th word is n times rarer than the first.
std::string note_word(Dice& dice) {
  return made_word(static_cast<int>(std::exp(dice.fraction() * std::log(static_cast<double>(note_words)))) -
                   1);
}

std::string inches(int sixteenths) {
  const int whole = sixteenths / 16;
  int part = sixteenths % 16;
  if (part == 0) return fmt::format("{}", whole);
  int of = 16;
  while (part % 2 == 0) {
    part /= 2;
    of /= 2;
  }
  return whole > 0 ? fmt::format("{}-{}/{}", whole, part, of) : fmt::format("{}/{}", part, of);
}

const std::vector<std::string> set_shapes = {"rectangle", "circle", "oval", "square", "hexagon"};
const std::vector<std::string> piece_shapes = {"circle",    "rectangle", "square", "oval",
                                               "rectangle", "circle",    "tag",    "heart"};
const std::vector<std::string> folds = {"easel", "side fold", "top fold", "Z fold",
                                        "tent",  "accordion", "gate",     "flat"};
const std::vector<std::string> occasions = {"birthday", "thank you", "wedding", "sympathy",
                                            "new baby", "christmas", ""};
const std::vector<std::string> techniques = {"heat embossing", "dry embossing", "speckling", "inking",
                                             "stencilling",    "masking",       ""};
const std::vector<std::string> roles = {"mat",           "panel",         "die cut", "strip",
                                        "stamped image", "embellishment", "ribbon"};
const std::vector<std::string> bases = {"8-1/2 x 5-1/2 in,4-1/4", "10 x 7 in,5", "12 x 6 in,6",
                                        "8-1/2 x 5-1/2 in,4-1/4", "8 x 4 in,4"};

// What a piece goes with: the card itself, or one of the pieces before it.
std::string goes(Dice& dice, int piece) {
  const int kind = dice.below(20);
  if (piece == 1 || kind < 6) return "on front";
  const char* const how = kind < 14   ? "on"
                          : kind < 16 ? "behind"
                          : kind < 18 ? "in"
                          : kind < 19 ? "around"
                                      : "through";
  return fmt::format("{} piece {}", how, 1 + dice.below(piece - 1));
}

std::string set_name(int i) {
  return fmt::format("{} {}s", made_word(300 + i), set_shapes[static_cast<std::size_t>(i % 5)]);
}
std::string colour_name(int i) {
  return fmt::format("{} tone", made_word(900 + i));
}

void write_dies(const std::filesystem::path& path) {
  std::ofstream out(path);
  out << "set,die,line,shape,size,method,read to\n";
  for (int s = 0; s < die_sets; ++s)
    for (int d = 1; d <= dies_in_set; ++d)
      for (int inner = 0; inner < 2; ++inner) {
        const int width = (8 + s % 3) * 8 - d * 6 - inner * 4;
        const bool one_figure = s % 5 == 1 || s % 5 == 3;
        out << fmt::format("{},{},{},{},{} in,ruler,1/16 in\n", set_name(s), d, inner ? "stitched" : "cut",
                           set_shapes[static_cast<std::size_t>(s % 5)],
                           one_figure ? inches(width) : inches(width) + " x " + inches(width + 16));
      }
}

void write_supplies(const std::filesystem::path& path) {
  std::ofstream out(path);
  out << "kind,name,colour,colour value,size\n";
  for (int i = 0; i < colours; ++i)
    out << fmt::format("{},{},{},#{:06x},8-1/2 x 11 in\n", i % 3 == 0 ? "ink" : "card stock", colour_name(i),
                       colour_name(i), (i * 2654435761U) & 0xffffffU);
  for (int i = 0; i < 20; ++i) out << fmt::format("stamp,{} verses,,,\n", made_word(1200 + i));
}

void write_samples(const std::filesystem::path& folder, int samples) {
  std::ofstream cards(folder / "samples.csv");
  std::ofstream pieces(folder / "elements.csv");
  std::ofstream tried(folder / "tried.csv");
  cards << "sample,made,occasion,fold,base,scores,techniques,note\n";
  pieces << "sample,element,role,side,shape,size,colour,ink,die set,die,goes,technique,count,note\n";
  tried << "set,die,line,shape,size,result,date\n";
  Dice dice(20260101);
  for (int i = 0; i < samples; ++i) {
    const std::string title = fmt::format("{} {} {}", note_word(dice), note_word(dice), i);
    std::string note;
    for (int w = 0; w < 25; ++w) note += (w ? " " : "") + note_word(dice);
    cards << fmt::format("{},{:04}-{:02}-{:02},{},{},{},{},{}\n", title, 2015 + dice.below(11),
                         1 + dice.below(12), 1 + dice.below(28), dice.one_of(occasions), dice.one_of(folds),
                         dice.one_of(bases), dice.one_of(techniques), note);
    for (int e = 1; e <= 5; ++e) {
      const std::string& shape = dice.one_of(piece_shapes);
      const int width = 8 + dice.below(56);
      const std::string size = shape == "circle" || shape == "square"
                                   ? inches(width)
                                   : inches(width) + " x " + inches(8 + dice.below(72));
      const bool cut = dice.below(3) == 0;
      pieces << fmt::format(
          "{},piece {},{},{},{},{} in,{},{},{},{},{},{},{},{} {}\n", title, e, dice.one_of(roles),
          dice.below(10) == 0 ? "inside" : "front", shape, size, colour_name(1 + 3 * dice.below(19)),
          dice.below(2) ? colour_name(3 * dice.below(19)) : std::string(),
          cut ? set_name(dice.below(die_sets)) : std::string(),
          cut ? fmt::format("{}", 1 + dice.below(dies_in_set)) : std::string(), goes(dice, e),
          dice.one_of(techniques), dice.below(6) == 0 ? 2 : 1, note_word(dice), note_word(dice));
    }
  }
  for (int s = 0; s < die_sets; s += 5)
    for (int d = 1; d <= dies_in_set; ++d) {
      const int width = (8 + s % 3) * 8 - d * 6 - 4 - 2;
      tried << fmt::format("{},{},stitched,rectangle,{} x {} in,fits,2026-03-{:02}\n", set_name(s), d,
                           inches(width), inches(width + 16), d);
    }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fprintf(stderr, "usage: make_tables SAMPLES FOLDER\n");
    return 2;
  }
  const std::filesystem::path folder = argv[2];
  std::filesystem::create_directories(folder);
  write_dies(folder / "dies.csv");
  write_supplies(folder / "supplies.csv");
  write_samples(folder, std::atoi(argv[1]));
  return 0;
}
