// SPDX-License-Identifier: GPL-3.0-or-later
//
// Run by the build: checks schema/vocabularies and writes the tables that schema/vocabularies.h declares.
//   compile_vocabularies OUT.cc folds.json shapes.json …
// Stops the build, naming file and term, where a file says what schema/README.md does not allow.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "schema/label_key.h"
#include "schema/read_json.h"
#include "schema/vocabularies.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using insetbook::stop;  // beside the one below
using Json = nlohmann::json;

constexpr int usual_likelihood = 50;

struct Label {
  std::string text;
  int likelihood = usual_likelihood;
  bool shown = true;     // false: made from another label by an ending of the file
  bool weighed = false;  // its likelihood was written for this label
};

struct Crease {
  bool upright = false;
  bool mountain = false;
  int part = 0;
  int of = 1;
};

struct SourceTerm {
  std::size_t vocabulary = 0;
  std::string file;
  std::string id;
  std::vector<Label> labels;  // the preferred one first
  std::string broader;
  std::string note;
  std::string caution;
  std::string caution_source;
  std::size_t stands = 0;
  std::optional<std::vector<Crease>> creases;
};

[[noreturn]] void stop(const SourceTerm& term, const std::string& what) {
  stop(term.file, "term \"" + term.labels.front().text + "\": " + what);
}

// --- reading ---

Label read_label(const std::string& file, const Json& json, int likelihood) {
  Label label;
  label.likelihood = likelihood;
  if (json.is_string()) {
    label.text = json.get<std::string>();
  } else {
    allow_keys(file, json, {"label", "likelihood"});
    label.text = text_of(file, json, "label");
    label.likelihood = json.value("likelihood", likelihood);
    label.weighed = json.contains("likelihood");
  }
  if (fold(label.text).empty()) stop(file, "a label is empty: " + json.dump());
  if (label.likelihood < 1 || label.likelihood > 100) {
    stop(file, "a likelihood is not from 1 to 100: " + json.dump());
  }
  return label;
}

// "1/4" of the sheet
Crease read_crease(const std::string& file, const Json& json) {
  allow_keys(file, json, {"runs", "at", "folds"});
  Crease crease;
  const std::string runs = text_of(file, json, "runs");
  const std::string folds = text_of(file, json, "folds");
  const std::string at = text_of(file, json, "at");
  const std::size_t slash = at.find('/');
  const bool digits = at.find_first_not_of("0123456789/") == std::string::npos && at.size() <= 5;
  if (slash == std::string::npos || slash == 0 || slash + 1 == at.size() || !digits) {
    stop(file, "a crease is not \"at\" a part such as \"1/4\": " + json.dump());
  }
  crease.part = std::stoi(at.substr(0, slash));
  crease.of = std::stoi(at.substr(slash + 1));
  crease.upright = runs == "upright";
  crease.mountain = folds == "mountain";
  if (!(crease.upright || runs == "level") || !(crease.mountain || folds == "valley") || crease.part < 1 ||
      crease.part >= crease.of || crease.of > 99) {
    stop(file,
         "a crease \"runs\" upright or level, is \"at\" a part of the sheet and \"folds\" valley or "
         "mountain: " +
             json.dump());
  }
  return crease;
}

std::size_t place_of(std::span<const std::string_view> words, const std::string& word) {
  return static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
}

SourceTerm read_term(const std::string& file, std::size_t vocabulary, const Json& json) {
  allow_keys(
      file, json,
      {"label", "likelihood", "others", "broader", "note", "stands", "creases", "caution", "caution source"});
  SourceTerm term;
  term.vocabulary = vocabulary;
  term.file = file;
  const int likelihood = json.value("likelihood", usual_likelihood);
  term.labels.push_back(read_label(file, text_of(file, json, "label"), likelihood));
  term.id = fold(term.labels.front().text);
  for (const Json& other : json.value("others", Json::array()))
    term.labels.push_back(read_label(file, other, likelihood));
  term.broader = text_of(file, json, "broader");
  term.note = text_of(file, json, "note");
  term.caution = text_of(file, json, "caution");
  term.caution_source = text_of(file, json, "caution source");
  if (term.caution.empty() != term.caution_source.empty()) stop(term, "a caution and its source go together");
  const bool is_fold = vocabulary_words[vocabulary] == "fold";
  if (!is_fold && (json.contains("stands") || json.contains("creases")))
    stop(term, "only folds stand and have creases");
  term.stands = place_of(stands_words, text_of(file, json, "stands"));
  if (term.stands == std::size(stands_words)) stop(term, "\"stands\" is built to stand, part-open or no");
  if (json.contains("creases")) {
    term.creases.emplace();
    for (const Json& crease : json["creases"]) term.creases->push_back(read_crease(file, crease));
  }
  return term;
}

// "easel" is also said "easel fold" and "easel card": the file names the endings, and every label that does
// not already end in the last word of one is looked for with it too.
void add_endings(SourceTerm& term, const std::vector<std::string>& endings) {
  const std::size_t written = term.labels.size();
  for (std::size_t i = 0; i < written; ++i) {
    const std::string folded = fold(term.labels[i].text);
    for (const std::string& ending : endings) {
      const std::string first = ending.substr(0, ending.find(' '));
      const bool has_it =
          folded == first || (" " + folded).ends_with(" " + first) || folded.ends_with(" card");
      if (!has_it) {
        term.labels.push_back({folded + " " + ending, std::max(term.labels[i].likelihood, usual_likelihood),
                               false, term.labels[i].weighed});
      }
    }
  }
}

void read_file(const std::filesystem::path& path, std::vector<SourceTerm>& terms,
               std::set<std::size_t>& seen) {
  const std::string file = "vocabularies/" + path.filename().string();
  const Json json = read_json(path.string(), file);
  allow_keys(file, json, {"SPDX-License-Identifier", "vocabulary", "note", "endings", "terms"});
  const std::size_t vocabulary = place_of(vocabulary_words, text_of(file, json, "vocabulary"));
  if (vocabulary == vocabulary_count) stop(file, "\"vocabulary\" names none that vocabularies.h lists");
  if (!seen.insert(vocabulary).second) stop(file, "another file has this vocabulary");
  if (!json.contains("terms") || !json["terms"].is_array() || json["terms"].empty())
    stop(file, "it has no terms");
  const std::vector<std::string> endings = json.value("endings", std::vector<std::string>{});
  for (const Json& term : json["terms"]) {
    terms.push_back(read_term(file, vocabulary, term));
    add_endings(terms.back(), endings);
  }
}

// --- checking ---

using TermPlaces = std::map<std::pair<std::size_t, std::string>, std::size_t>;

// The chain of broader terms ends, and says how a fold stands where the fold itself does not.
void check_broader(std::vector<SourceTerm>& terms, const TermPlaces& places) {
  for (SourceTerm& term : terms) {
    const SourceTerm* at = &term;
    for (std::size_t steps = 0; !at->broader.empty(); ++steps) {
      const auto found = places.find({term.vocabulary, fold(at->broader)});
      if (found == places.end())
        stop(*at, "its broader term \"" + at->broader + "\" is not in the same vocabulary");
      if (steps > terms.size()) stop(term, "its broader terms lead back to itself");
      at = &terms[found->second];
      if (term.stands == 0) term.stands = at->stands;
      if (at->stands != 0 && at->stands != term.stands) {
        stop(term, "it does not stand as its broader term \"" + at->labels.front().text + "\" does");
      }
    }
    if (vocabulary_words[term.vocabulary] == "fold" && term.stands == 0)
      stop(term, "it does not say how it stands");
  }
}

// A label means one term of a vocabulary, unless each of its terms says how likely it is meant. Labels made
// by endings give way to those that are written.
void check_labels(std::vector<SourceTerm>& terms) {
  struct Owner {
    const SourceTerm* term;
    int likelihood;
    bool weighed;
  };
  std::map<std::pair<std::size_t, std::string>, std::vector<Owner>> owners;
  enum class Pass { written, made, made_of_a_weighed_one };
  for (const Pass pass : {Pass::written, Pass::made, Pass::made_of_a_weighed_one}) {
    const bool written = pass == Pass::written;
    for (SourceTerm& term : terms) {
      std::erase_if(term.labels, [&](const Label& label) {
        const Pass its = label.shown     ? Pass::written
                         : label.weighed ? Pass::made_of_a_weighed_one
                                         : Pass::made;
        if (its != pass) return false;
        std::vector<Owner>& others = owners[{term.vocabulary, label_key(fold(label.text))}];
        for (const Owner& other : others) {
          const bool told_apart = label.weighed && other.weighed && label.likelihood != other.likelihood;
          if (told_apart && other.term != &term) continue;
          if (!written) return true;
          stop(term, "the label \"" + label.text + "\" is there twice: in \"" +
                         other.term->labels.front().text + "\" too");
        }
        others.push_back({&term, label.likelihood, label.weighed});
        return false;
      });
    }
  }
}

// --- writing ---

class Text {
 public:
  std::string add(std::string_view text) {
    if (text.size() > 0xFFFF) stop("vocabularies", "a text is longer than 65535 bytes");
    auto found = all_.find(text);
    if (found == std::string::npos) {
      found = all_.size();
      all_ += text;
    }
    return "{" + std::to_string(found) + "," + std::to_string(text.size()) + "}";
  }
  const std::string& all() const { return all_; }

 private:
  std::string all_;
};

struct TableLabel {
  std::string key;
  std::string folded;
  std::size_t term;
  int likelihood;
  bool preferred;
};

struct Tables {
  Text text;
  std::string terms, labels, others, creases, narrower, starts;
  std::size_t longest = 0;
};

// For each term the places of all that are narrower, by whatever steps.
std::vector<std::vector<std::size_t>> narrower_terms(const std::vector<SourceTerm>& terms,
                                                     const TermPlaces& places) {
  std::vector<std::vector<std::size_t>> narrower(terms.size());
  for (std::size_t t = 0; t < terms.size(); ++t)
    for (std::size_t at = t; !terms[at].broader.empty();) {
      at = places.at({terms[at].vocabulary, fold(terms[at].broader)});
      narrower[at].push_back(t);
    }
  return narrower;
}

void write_terms(Tables& tables, const std::vector<SourceTerm>& terms, const TermPlaces& places) {
  const std::vector<std::vector<std::size_t>> narrower = narrower_terms(terms, places);
  std::size_t narrower_count = 0;
  std::size_t place = 0;
  std::size_t other_count = 0;
  std::size_t crease_count = 0;
  for (const SourceTerm& term : terms) {
    const std::size_t first_other = other_count;
    const std::size_t first_crease = crease_count;
    for (std::size_t i = 1; i < term.labels.size(); ++i) {
      if (!term.labels[i].shown) continue;
      tables.others += tables.text.add(term.labels[i].text) + ",\n";
      ++other_count;
    }
    for (const Crease& crease : term.creases.value_or(std::vector<Crease>{})) {
      tables.creases += std::string("{") + (crease.upright ? "true" : "false") + "," +
                        (crease.mountain ? "true" : "false") + "," + std::to_string(crease.part) + "," +
                        std::to_string(crease.of) + "},\n";
      ++crease_count;
    }
    const std::string broader =
        term.broader.empty() ? "no_term" : std::to_string(places.at({term.vocabulary, fold(term.broader)}));
    std::string row = "{";
    for (const std::string& text :
         {term.id, term.labels.front().text, term.note, term.caution, term.caution_source}) {
      row += tables.text.add(text) + ",";
    }
    row += broader;
    const std::vector<std::size_t>& below = narrower[place++];
    for (const std::size_t each : below) tables.narrower += std::to_string(each) + ",";
    for (const std::size_t number : {first_other, other_count - first_other, narrower_count, below.size(),
                                     first_crease, crease_count - first_crease}) {
      row += "," + std::to_string(number);
    }
    narrower_count += below.size();
    row += term.creases ? ",true," : ",false,";
    tables.terms += row + std::to_string(term.stands) + "," + std::to_string(term.vocabulary) + "},\n";
  }
}

void write_labels(Tables& tables, const std::vector<SourceTerm>& terms) {
  std::vector<TableLabel> labels;
  for (std::size_t t = 0; t < terms.size(); ++t) {
    for (std::size_t i = 0; i < terms[t].labels.size(); ++i) {
      const Label& label = terms[t].labels[i];
      const std::string folded = fold(label.text);
      labels.push_back({label_key(folded), folded, t, label.likelihood, i == 0});
      const auto words = static_cast<std::size_t>(std::count(folded.begin(), folded.end(), ' ')) + 1;
      tables.longest = std::max(tables.longest, words);
    }
  }
  std::sort(labels.begin(), labels.end(), [](const TableLabel& a, const TableLabel& b) {
    return std::tuple(std::string_view(a.key), -a.likelihood, a.term) <
           std::tuple(std::string_view(b.key), -b.likelihood, b.term);
  });
  for (const TableLabel& label : labels) {
    tables.labels += "{" + tables.text.add(label.key) + "," + tables.text.add(label.folded) + "," +
                     std::to_string(label.term) + "," + std::to_string(label.likelihood) + "," +
                     (label.preferred ? "true" : "false") + "},\n";
  }
}

void write_starts(Tables& tables, const std::vector<SourceTerm>& terms) {
  for (std::size_t v = 0; v <= vocabulary_count; ++v) {
    const auto first =
        std::find_if(terms.begin(), terms.end(), [&](const SourceTerm& t) { return t.vocabulary >= v; });
    tables.starts += std::to_string(first - terms.begin()) + ",";
  }
}

// FNV-1a, 64 bits: enough to tell one state of these files from another.
std::uint64_t fingerprint(const Tables& tables) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const std::string& part : {tables.text.all(), tables.terms, tables.labels, tables.others,
                                  tables.creases, tables.narrower, tables.starts}) {
    for (const char c : part) {
      hash ^= static_cast<unsigned char>(c);
      hash *= 1099511628211ULL;
    }
  }
  return hash;
}

void write_text(std::ostream& out, const std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i % 100 == 0) out << (i == 0 ? "    \"" : "\"\n    \"");
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte == '"' || byte == '\\' || byte == '?' || byte < 0x20 || byte >= 0x7F) {
      out << '\\' << char('0' + (byte >> 6)) << char('0' + ((byte >> 3) & 7)) << char('0' + (byte & 7));
    } else {
      out << text[i];
    }
  }
  out << "\"";
}

void write(const char* path, const Tables& tables) {
  std::ofstream out(path, std::ios::binary);
  out << "// Written by schema/compile_vocabularies.cc. Change schema/vocabularies instead.\n"
         "#include \"schema/vocabularies.h\"\n\nnamespace insetbook {\nnamespace {\n\n"
         "constexpr char text[] =\n";
  write_text(out, tables.text.all());
  out << ";\n\nconstexpr CompiledTerm terms[] = {\n"
      << tables.terms << "};\n\nconstexpr CompiledLabel labels[] = {\n"
      << tables.labels << "};\n\nconstexpr CompiledText others[] = {\n"
      << tables.others << "};\n\nconstexpr CompiledCrease creases[] = {\n"
      << tables.creases << "};\n\nconstexpr std::uint16_t narrower[] = {" << tables.narrower
      << "};\n\nconstexpr std::uint16_t starts[] = {" << tables.starts
      << "};\n\nconstexpr CompiledVocabularies vocabularies{{text, sizeof text - 1}, terms, labels, others, "
         "creases, narrower, "
         "starts, "
      << tables.longest << ", " << fingerprint(tables)
      << "ULL};\n\n}  // namespace\n\nconst CompiledVocabularies& compiled_vocabularies() { return "
         "vocabularies; }\n\n"
         "}  // namespace insetbook\n";
  out.close();
  if (!out) stop("vocabularies", std::string(path) + " cannot be written");
}

void compile(const char* out, std::span<char* const> files) {
  std::vector<SourceTerm> terms;
  std::set<std::size_t> seen;
  for (const char* file : files) read_file(file, terms, seen);
  for (std::size_t v = 0; v < vocabulary_count; ++v) {
    if (!seen.contains(v))
      stop("vocabularies", "no file has the vocabulary \"" + std::string(vocabulary_words[v]) + "\"");
  }
  if (terms.size() >= no_term) stop("vocabularies", "there are too many terms");
  std::sort(terms.begin(), terms.end(), [](const SourceTerm& a, const SourceTerm& b) {
    return std::tie(a.vocabulary, a.id) < std::tie(b.vocabulary, b.id);
  });
  check_labels(terms);
  TermPlaces places;
  for (std::size_t t = 0; t < terms.size(); ++t) places[{terms[t].vocabulary, terms[t].id}] = t;
  check_broader(terms, places);
  Tables tables;
  write_terms(tables, terms, places);
  write_labels(tables, terms);
  write_starts(tables, terms);
  write(out, tables);
}

}  // namespace
}  // namespace insetbook

int main(int argc, char** argv) {
  if (argc < 3) insetbook::stop("vocabularies", "no file is named");
  try {
    insetbook::compile(argv[1], std::span(argv + 2, argv + argc));
  } catch (const nlohmann::json::exception& e) {
    insetbook::stop("vocabularies", std::string("a value is of the wrong kind: ") + e.what());
  }
}
