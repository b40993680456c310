// SPDX-License-Identifier: GPL-3.0-or-later
//
// The index built by Xapian alone, from the file that `bench_index dump` writes: for each sample a line "id,
// tab, sort key", a line for each of its texts, a blank line. Xapian's own term generator with English stems
// and positions, the same gap between texts as src/search/index_documents.cc.
//   bare_index TEXTS FOLDER
#include <xapian.h>

#include <cstdio>
#include <fstream>
#include <string>

namespace {

constexpr Xapian::termpos between_fields = 100;

void build(std::ifstream& texts, const std::string& folder) {
  Xapian::WritableDatabase db(folder, Xapian::DB_CREATE_OR_OVERWRITE | Xapian::DB_BACKEND_GLASS);
  Xapian::TermGenerator generator;
  generator.set_stemmer(Xapian::Stem("english"));
  generator.set_stemming_strategy(Xapian::TermGenerator::STEM_ALL);
  std::string line;
  while (std::getline(texts, line)) {
    const std::size_t tab = line.find('\t');
    const auto id = static_cast<Xapian::docid>(std::stoul(line));
    Xapian::Document document;
    document.add_value(0, line.substr(tab + 1));
    generator.set_document(document);
    generator.set_termpos(0);
    while (std::getline(texts, line) && !line.empty()) {
      generator.index_text(line);
      generator.increase_termpos(between_fields);
    }
    db.replace_document(id, document);
  }
  db.commit();
  std::printf("%u samples, %.1f words each\n", db.get_doccount(), db.get_average_length());
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fprintf(stderr, "usage: bare_index TEXTS FOLDER\n");
    return 2;
  }
  std::ifstream texts(argv[1]);
  if (!texts) {
    std::fprintf(stderr, "%s cannot be read\n", argv[1]);
    return 2;
  }
  try {
    build(texts, argv[2]);
  } catch (const Xapian::Error& error) {
    std::fprintf(stderr, "%s\n", error.get_description().c_str());
    return 2;
  }
  return 0;
}
