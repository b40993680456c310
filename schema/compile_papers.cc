// SPDX-License-Identifier: GPL-3.0-or-later
//
// Run by the build: checks schema/papers and writes the tables that schema/papers.h declares.
//   compile_papers OUT.cc FOLDER
// Stops the build, naming file and entry, where a file says what schema/README.md does not allow.
#include <algorithm>
#include <fstream>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "measure/read.h"
#include "measure/write.h"
#include "schema/label_key.h"
#include "schema/papers.h"
#include "schema/read_json.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using insetbook::stop;  // beside the one below
using Json = nlohmann::json;

// One file: its name below schema/, and what is in it.
struct File {
  std::string name;
  Json json;
};

File read_table(const std::string& folder, const char* base, const std::string& table, const char* list) {
  File file;
  file.name = std::string("papers/") + base;
  file.json = read_json(folder + "/" + base, file.name);
  allow_keys(file.name, file.json, {"SPDX-License-Identifier", "table", "note", list});
  if (text_of(file.name, file.json, "table") != table) stop(file.name, "\"table\" is not \"" + table + "\"");
  const auto found = file.json.find(list);
  if (found == file.json.end() || !found->is_array() || found->empty())
    stop(file.name, std::string("it has no ") + list);
  return file;
}

[[noreturn]] void stop(const File& file, const Json& entry, const std::string& what) {
  stop(file.name, what + ": " + entry.dump());
}

std::string wanted_text(const File& file, const Json& entry, const char* key) {
  std::string text = text_of(file.name, entry, key);
  if (text.empty()) stop(file, entry, std::string("it has no \"") + key + "\"");
  return text;
}

// --- what is written ---

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte == '"' || byte == '\\' || byte == '?' || byte < 0x20 || byte >= 0x7F)
      for (const int shift : {6, 3, 0}) {
        if (shift == 6) out += '\\';
        out += static_cast<char>('0' + ((byte >> shift) & 7));
      }
    else
      out += c;
  }
  return out + "\"";
}

std::string code(Length length) {
  return "Length::nm(" + std::to_string(length.nm()) + ")";
}
std::string code(Unit unit) {
  return unit == Unit::inch ? "Unit::inch" : "Unit::mm";
}

struct Written {
  std::string others, papers, envelopes, card_names, grades, calipers, limits, formats, services;
  std::string paper_names, envelope_names;
  std::size_t lists = 0;
};

// A list of texts under a key, as an array of its own; returns the name of a span of it.
std::string texts(const File& file, const Json& entry, const char* key, Written& out) {
  const auto found = entry.find(key);
  if (found == entry.end()) return "{}";
  if (!found->is_array() || found->empty()) stop(file, entry, std::string("\"") + key + "\" is no list");
  const std::string name = "texts_" + std::to_string(out.lists++);
  out.others += "constexpr std::string_view " + name + "[] = {";
  for (const Json& each : *found) {
    if (!each.is_string() || fold(each.get<std::string>()).empty())
      stop(file, entry, std::string("\"") + key + "\" holds what is no text");
    out.others += quoted(each.get<std::string>()) + ",";
  }
  out.others += "};\n";
  return name;
}

// --- where a figure comes from ---

struct Origin {
  std::string source;
  int year = 0;
  bool year_read = false;
  std::size_t known = std::size(known_words);
};

// What an entry says itself, the rest as its group says it.
Origin read_origin(const File& file, const Json& entry, Origin of_group) {
  Origin origin = std::move(of_group);
  if (const std::string source = text_of(file.name, entry, "source"); !source.empty()) origin.source = source;
  if (const std::string state = text_of(file.name, entry, "state"); !state.empty()) {
    origin.known = static_cast<std::size_t>(std::ranges::find(known_words, state) - std::begin(known_words));
    if (origin.known == std::size(known_words))
      stop(file, entry, "\"state\" is read, second hand, recalled or common practice");
  }
  if (entry.contains("year") && entry.contains("year read")) stop(file, entry, "it has two years");
  for (const char* key : {"year", "year read"}) {
    const auto year = entry.find(key);
    if (year == entry.end()) continue;
    if (!year->is_number_integer() || year->get<int>() < 1800 || year->get<int>() > 2100)
      stop(file, entry, std::string("\"") + key + "\" is no year");
    origin.year = year->get<int>();
    origin.year_read = std::string_view(key) == "year read";
  }
  return origin;
}

std::string code(const File& file, const Json& entry, const Origin& origin) {
  if (origin.source.empty() || origin.year == 0 || origin.known == std::size(known_words))
    stop(file, entry, "a figure without \"source\", \"year\" (or \"year read\") and \"state\"");
  return "{" + quoted(origin.source) + "," + std::to_string(origin.year) + "," +
         (origin.year_read ? "true" : "false") + ",Known(" + std::to_string(origin.known) + ")}";
}

// Each entry of each group, with what its group says of its source.
void each_entry(const File& file, const std::function<void(const Json&, const Origin&)>& take) {
  for (const Json& group : file.json["groups"]) {
    allow_keys(file.name, group, {"source", "year", "year read", "state", "entries"});
    const Origin origin = read_origin(file, group, {});
    if (!group.contains("entries") || !group["entries"].is_array() || group["entries"].empty())
      stop(file.name, "a group has no entries: " + origin.source);
    for (const Json& entry : group["entries"]) take(entry, origin);
  }
}

// --- sizes and names ---

struct SizeRead {
  std::string written;
  Length width, height;
  Unit unit;
};

// An upright size in its own unit, written as the program writes it.
SizeRead read_upright(const File& file, const Json& entry, const char* key) {
  SizeRead read;
  read.written = wanted_text(file, entry, key);
  const Result<Size> size = read_size(read.written, Unit::inch);
  if (!size) stop(file, entry, std::string("\"") + key + "\": " + size.error().what);
  read.width = size->width;
  read.height = size->height;
  read.unit = size->unit;
  if (size->one_figure || write_size(read.width, read.height, read.unit) != read.written)
    stop(file, entry,
         std::string("\"") + key + "\" is not written as \"" +
             write_size(read.width, read.height, read.unit) + "\"");
  if (read.width > read.height) stop(file, entry, std::string("\"") + key + "\" does not stand upright");
  return read;
}

std::string code(const SizeRead& size) {
  return quoted(size.written) + "," + code(size.width) + "," + code(size.height);
}

// The names of one table: each means one entry.
class NamesOfTable {
 public:
  void add(const File& file, const Json& entry, std::size_t at) {
    add_one(file, entry, wanted_text(file, entry, "name"), at);
    for (const Json& other : entry.value("others", Json::array()))
      if (other.is_string()) add_one(file, entry, other.get<std::string>(), at);
  }
  std::optional<std::size_t> find(const std::string& name) const {
    const auto found = places_.find(label_key(fold(name)));
    return found == places_.end() ? std::nullopt : std::optional(found->second);
  }
  std::string code() const {
    std::string out;
    for (const auto& [key, at] : places_) out += "{" + quoted(key) + "," + std::to_string(at) + "},\n";
    return out;
  }

 private:
  void add_one(const File& file, const Json& entry, const std::string& name, std::size_t at) {
    if (!places_.emplace(label_key(fold(name)), at).second)
      stop(file, entry, "the name \"" + name + "\" is there twice");
  }
  std::map<std::string, std::size_t> places_;
};

// Sizes that other files speak of by a name.
struct NamedSizes {
  NamesOfTable names;
  std::vector<std::optional<SizeRead>> sizes;

  const SizeRead& wanted(const File& file, const Json& entry, const char* key) const {
    const std::string name = wanted_text(file, entry, key);
    const auto at = names.find(name);
    if (!at || !sizes[*at])
      stop(file, entry, std::string("\"") + key + "\": \"" + name + "\" has no such size");
    return *sizes[*at];
  }
};

// --- the tables ---

NamedSizes compile_papers(const std::string& folder, Written& out) {
  const File file = read_table(folder, "papers.json", "papers", "groups");
  NamedSizes all;
  each_entry(file, [&](const Json& entry, const Origin& group) {
    allow_keys(file.name, entry, {"name", "others", "size", "source", "year", "year read", "state"});
    all.names.add(file, entry, all.sizes.size());
    const SizeRead size = read_upright(file, entry, "size");
    all.sizes.emplace_back(size);
    out.papers += "{" + quoted(wanted_text(file, entry, "name")) + "," + texts(file, entry, "others", out) +
                  "," + code(size) + "," + code(size.unit) + "," +
                  code(file, entry, read_origin(file, entry, group)) + "},\n";
  });
  out.paper_names = all.names.code();
  return all;
}

// The card an envelope takes: it goes in.
std::optional<SizeRead> read_taken(const File& file, const Json& entry, const SizeRead& envelope) {
  if (!entry.contains("takes")) return std::nullopt;
  const SizeRead card = read_upright(file, entry, "takes");
  if (card.width >= envelope.width || card.height >= envelope.height)
    stop(file, entry, "what it takes does not go in");
  if (card.unit != envelope.unit) stop(file, entry, "what it takes is in another unit");
  return card;
}

// Returns the cards that the envelopes take.
NamedSizes compile_envelopes(const std::string& folder, Written& out) {
  const File file = read_table(folder, "envelopes.json", "envelopes", "groups");
  NamedSizes cards;
  each_entry(file, [&](const Json& entry, const Origin&) {
    cards.names.add(file, entry, cards.sizes.size());
    cards.sizes.push_back(read_taken(file, entry, read_upright(file, entry, "size")));
  });
  std::size_t at = 0;
  each_entry(file, [&](const Json& entry, const Origin& group) {
    allow_keys(file.name, entry,
               {"name", "others", "size", "takes", "or", "source", "year", "year read", "state"});
    const SizeRead size = read_upright(file, entry, "size");
    const std::optional<SizeRead>& card = cards.sizes[at++];
    std::string also = "no_envelope";
    if (entry.contains("or")) {
      const auto meant = cards.names.find(wanted_text(file, entry, "or"));
      if (!meant || *meant == at - 1) stop(file, entry, "\"or\" names no other envelope");
      also = std::to_string(*meant);
    }
    out.envelopes += "{" + quoted(wanted_text(file, entry, "name")) + "," +
                     texts(file, entry, "others", out) + "," + code(size) + "," + code(size.unit) + "," +
                     (card ? code(*card) : "\"\",Length(),Length()") + "," + also + "," +
                     code(file, entry, read_origin(file, entry, group)) + "},\n";
  });
  out.envelope_names = cards.names.code();
  return cards;
}

// The one size that an object names: a paper, the card of an envelope, or a size of its own.
SizeRead size_meant(const File& file, const Json& object, const NamedSizes& papers, const NamedSizes& cards) {
  if (object.contains("paper") + object.contains("card of") + object.contains("size") != 1)
    stop(file, object, "one of \"paper\", \"card of\" and \"size\" is wanted");
  if (object.contains("paper")) return papers.wanted(file, object, "paper");
  if (object.contains("card of")) return cards.wanted(file, object, "card of");
  return read_upright(file, object, "size");
}

std::string meaning(const File& file, const Json& object, const SizeRead& size) {
  std::string means = wanted_text(file, object, "means");
  const std::size_t place = means.find("SIZE");
  if (place == std::string::npos) stop(file, object, "\"means\" has no place for the SIZE");
  return means.replace(place, 4, size.written);
}

void compile_card_names(const std::string& folder, const NamedSizes& papers, const NamedSizes& cards,
                        Written& out) {
  const File file = read_table(folder, "card_names.json", "card names", "groups");
  std::map<std::string, bool> seen;
  each_entry(file, [&](const Json& entry, const Origin& group) {
    allow_keys(file.name, entry,
               {"name", "paper", "card of", "size", "means", "or", "source", "year", "year read", "state"});
    (void)code(file, entry, read_origin(file, entry, group));
    const std::string name = fold(wanted_text(file, entry, "name"));
    if (!seen.emplace(name, true).second) stop(file, entry, "the name is there twice");
    const SizeRead size = size_meant(file, entry, papers, cards);
    out.card_names += "{" + quoted(name) + "," + code(size.width) + "," + code(size.height) + "," +
                      code(size.unit) + "," + quoted(meaning(file, entry, size)) + ",";
    if (!entry.contains("or")) {
      out.card_names += "\"\",\"\"},\n";
      return;
    }
    const Json& other = entry["or"];
    allow_keys(file.name, other, {"paper", "card of", "size", "means"});
    const SizeRead its = size_meant(file, other, papers, cards);
    out.card_names +=
        quoted(meaning(file, other, its)) + "," + quoted("closed:\"" + its.written + "\"") + "},\n";
  });
}

void compile_grades(const std::string& folder, Written& out) {
  const File file = read_table(folder, "basis_weights.json", "basis weights", "groups");
  NamesOfTable names;
  std::size_t at = 0;
  each_entry(file, [&](const Json& entry, const Origin& group) {
    allow_keys(file.name, entry,
               {"name", "others", "size", "sheets", "source", "year", "year read", "state"});
    names.add(file, entry, at++);
    const auto sheets = entry.find("sheets");
    if (sheets == entry.end() || !sheets->is_number_integer() || sheets->get<int>() < 1 ||
        sheets->get<int>() > 10000)
      stop(file, entry, "\"sheets\" is no number of sheets");
    out.grades += "{" + quoted(wanted_text(file, entry, "name")) + "," + texts(file, entry, "others", out) +
                  "," + code(read_upright(file, entry, "size")) + "," + std::to_string(sheets->get<int>()) +
                  "," + code(file, entry, read_origin(file, entry, group)) + "},\n";
  });
}

// --- figures that are no lengths ---

struct Decimal {
  std::int64_t thousandths;
  std::string unit;  // behind the space, or empty
};

// "75.2 g/m2", "1.3"
Decimal read_decimal(const File& file, const Json& entry, const std::string& text) {
  Decimal read{0, {}};
  std::size_t i = 0;
  int decimals = -1;
  for (; i < text.size() && (text[i] == '.' || (text[i] >= '0' && text[i] <= '9')); ++i) {
    if (text[i] == '.') {
      if (i == 0 || decimals >= 0) stop(file, entry, "\"" + text + "\" is no figure");
      decimals = 0;
    } else {
      if (decimals >= 0) ++decimals;
      read.thousandths = read.thousandths * 10 + (text[i] - '0');
    }
  }
  if (i == 0 || i > 8 || decimals == 0 || decimals > 3) stop(file, entry, "\"" + text + "\" is no figure");
  for (int places = std::max(decimals, 0); places < 3; ++places) read.thousandths *= 10;
  if (i < text.size() && text[i] == ' ') read.unit = text.substr(i + 1);
  if (i < text.size() && read.unit.empty()) stop(file, entry, "\"" + text + "\" is no figure");
  return read;
}

Length read_one_length(const File& file, const Json& entry, const char* key) {
  const std::string text = wanted_text(file, entry, key);
  const Result<ReadLength> length = read_length(text, Unit::inch);
  if (!length || length->length <= Length())
    stop(file, entry, std::string("\"") + key + "\" is no length: " + text);
  if (!text.ends_with(" in") && !text.ends_with(" mm"))
    stop(file, entry, std::string("\"") + key + "\" has no unit, in or mm: " + text);
  return length->length;
}

void compile_calipers(const std::string& folder, Written& out) {
  const File file = read_table(folder, "calipers.json", "calipers", "groups");
  std::int64_t weight = 0;
  Length thickness;
  each_entry(file, [&](const Json& entry, const Origin& group) {
    allow_keys(file.name, entry, {"stock", "weight", "thickness", "source", "year", "year read", "state"});
    const Decimal mg = read_decimal(file, entry, wanted_text(file, entry, "weight"));
    const Length thick = read_one_length(file, entry, "thickness");
    if (mg.unit != "g/m2") stop(file, entry, "\"weight\" is not in g/m2");
    if (mg.thousandths <= weight || thick <= thickness)
      stop(file, entry, "it is not heavier and thicker than the one before");
    weight = mg.thousandths;
    thickness = thick;
    out.calipers += "{" + quoted(wanted_text(file, entry, "stock")) + "," + std::to_string(weight) + "," +
                    code(thickness) + "," + code(file, entry, read_origin(file, entry, group)) + "},\n";
  });
}

// --- post ---

// Whole milligrams; an ounce is 28349.523125 mg.
std::int64_t read_mass(const File& file, const Json& entry, const std::string& text) {
  const Decimal mass = read_decimal(file, entry, text);
  if (mass.unit == "g") return mass.thousandths;
  if (mass.unit == "oz") return (mass.thousandths * 28'349'523'125 + 500'000'000) / 1'000'000'000;
  stop(file, entry, "\"" + text + "\" is not in g or oz");
}

std::int64_t read_limit(const File& file, const Json& entry, LimitOf of, const char* key) {
  const std::string text = wanted_text(file, entry, key);
  if (of == LimitOf::mass) return read_mass(file, entry, text);
  if (of != LimitOf::aspect) return read_one_length(file, entry, key).nm();
  const Decimal aspect = read_decimal(file, entry, text);
  if (!aspect.unit.empty() || aspect.thousandths % 10 != 0 || aspect.thousandths < 1000)
    stop(file, entry, std::string("\"") + key + "\" is no aspect, length by width, in hundredths");
  return aspect.thousandths / 10;
}

// One line of the file: at least, at most or both.
std::string limit_rows(const File& file, const Json& entry, const Origin& above) {
  allow_keys(
      file.name, entry,
      {"of", "least", "most", "if longer", "if wider", "else", "source", "year", "year read", "state"});
  const std::string word = wanted_text(file, entry, "of");
  const auto of = std::ranges::find(limit_words, word) - std::begin(limit_words);
  if (of == std::ssize(limit_words)) stop(file, entry, "\"of\" is length, width, thickness, mass or aspect");
  if (!entry.contains("least") && !entry.contains("most")) stop(file, entry, "it limits nothing");
  std::string rows;
  std::int64_t least = 0;
  for (const char* key : {"least", "most"}) {
    if (!entry.contains(key)) continue;
    const std::int64_t figure = read_limit(file, entry, static_cast<LimitOf>(of), key);
    if (figure <= least) stop(file, entry, "\"most\" is not more than \"least\"");
    least = figure;
    const auto only_if = [&](const char* when) {
      return entry.contains(when) ? code(read_one_length(file, entry, when)) : std::string("Length()");
    };
    rows += "{LimitOf(" + std::to_string(of) + ")," + (std::string_view(key) == "most" ? "true" : "false") +
            "," + std::to_string(figure) + "," + quoted(wanted_text(file, entry, key)) + "," +
            only_if("if longer") + "," + only_if("if wider") + "," +
            quoted(text_of(file.name, entry, "else")) + "," +
            code(file, entry, read_origin(file, entry, above)) + "},";
  }
  return rows;
}

// The limits under a key, as an array of their own.
std::string limits(const File& file, const Json& object, const char* key, const Origin& origin,
                   Written& out) {
  if (!object.contains(key)) return "{}";
  const std::string name = "limits_" + std::to_string(out.lists++);
  out.limits += "constexpr PostLimit " + name + "[] = {";
  for (const Json& limit : object[key]) out.limits += limit_rows(file, limit, origin);
  out.limits += "};\n";
  return name;
}

std::string format_row(const File& file, const Json& format, const Origin& service, Written& out) {
  allow_keys(file.name, format,
             {"format", "verdict", "limits", "also", "source", "year", "year read", "state"});
  if (!format.contains("limits")) stop(file, format, "a format without limits");
  const Origin origin = read_origin(file, format, service);
  return "{" + quoted(wanted_text(file, format, "format")) + "," +
         quoted(wanted_text(file, format, "verdict")) + "," + limits(file, format, "limits", origin, out) +
         "," + texts(file, format, "also", out) + "," + code(file, format, origin) + "},";
}

void compile_post(const std::string& folder, Written& out) {
  const File file = read_table(folder, "postal.json", "postal", "services");
  for (const Json& service : file.json["services"]) {
    allow_keys(file.name, service,
               {"service", "country", "least", "below", "formats", "beyond", "also", "source", "year",
                "year read", "state"});
    const Origin origin = read_origin(file, service, {});
    if (service.contains("least") != service.contains("below"))
      stop(file, service, "\"least\" and \"below\" go together");
    if (!service.contains("formats") || service["formats"].empty()) stop(file, service, "it has no formats");
    std::string rows;
    for (const Json& format : service["formats"]) rows += format_row(file, format, origin, out);
    const std::string name = "formats_" + std::to_string(out.lists++);
    out.formats += "constexpr PostFormat " + name + "[] = {" + rows + "};\n";
    out.services += "{" + quoted(wanted_text(file, service, "service")) + "," +
                    quoted(wanted_text(file, service, "country")) + "," +
                    limits(file, service, "least", origin, out) + "," +
                    quoted(text_of(file.name, service, "below")) + "," + name + "," +
                    quoted(wanted_text(file, service, "beyond")) + "," + texts(file, service, "also", out) +
                    "," + code(file, service, origin) + "},\n";
  }
}

void write(const char* path, const Written& all) {
  std::ofstream out(path, std::ios::binary);
  out << "// Written by schema/compile_papers.cc. Change schema/papers instead.\n"
         "#include \"schema/papers.h\"\n\nnamespace insetbook {\nnamespace {\n\n"
      << all.others << all.limits << all.formats << "\nconstexpr PaperSize papers[] = {\n"
      << all.papers << "};\nconstexpr NameAt paper_names[] = {\n"
      << all.paper_names << "};\nconstexpr EnvelopeSize envelopes[] = {\n"
      << all.envelopes << "};\nconstexpr NameAt envelope_names[] = {\n"
      << all.envelope_names << "};\nconstexpr CardName card_names[] = {\n"
      << all.card_names << "};\nconstexpr PaperGrade grades[] = {\n"
      << all.grades << "};\nconstexpr CaliperEntry calipers[] = {\n"
      << all.calipers << "};\nconstexpr PostService services[] = {\n"
      << all.services
      << "};\n\nconstexpr PaperTables tables{papers, paper_names, envelopes, envelope_names, card_names,\n"
         "                             grades, calipers, services};\n\n}  // namespace\n\n"
         "const PaperTables& paper_tables() { return tables; }\n\n}  // namespace insetbook\n";
  out.close();
  if (!out) stop("papers", std::string(path) + " cannot be written");
}

void compile(const char* out, const std::string& folder) {
  Written all;
  const NamedSizes papers = compile_papers(folder, all);
  const NamedSizes cards = compile_envelopes(folder, all);
  compile_card_names(folder, papers, cards, all);
  compile_grades(folder, all);
  compile_calipers(folder, all);
  compile_post(folder, all);
  write(out, all);
}

}  // namespace
}  // namespace insetbook

int main(int argc, char** argv) {
  if (argc != 3) insetbook::stop("papers", "compile_papers OUT.cc FOLDER");
  try {
    insetbook::compile(argv[1], argv[2]);
  } catch (const nlohmann::json::exception& e) {
    insetbook::stop("papers", std::string("a value is of the wrong kind: ") + e.what());
  }
}
