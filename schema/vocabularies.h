// SPDX-License-Identifier: GPL-3.0-or-later
//
// The terms of schema/vocabularies as the build compiles them: constant tables, searched in place. Nothing is
// read, built or copied when the program starts; texts are places in one long text, so that the loader has no
// pointers to mend. Only language/vocabulary.cc reads these tables; everybody else asks its Vocabulary.
// schema/README.md describes the files.
#pragma once

#include <cstddef>
#include <cstdint>
#include <iterator>
#include <span>
#include <string_view>

namespace insetbook {

// What a file says after "vocabulary", in the order of VocabularyName (language/vocabulary.h).
inline constexpr std::string_view vocabulary_words[] = {"technique",   "fold",  "feature",  "shape",
                                                        "occasion",    "role",  "material", "adhesive",
                                                        "colour word", "status"};
inline constexpr std::size_t vocabulary_count = std::size(vocabulary_words);

// What a fold says after "stands", in the order of Stands; the first is what a term says that is no fold.
inline constexpr std::string_view stands_words[] = {"", "built to stand", "part-open", "no"};

struct CompiledText {
  std::uint32_t at;
  std::uint16_t length;
};

struct CompiledCrease {
  bool upright;
  bool mountain;
  std::uint8_t part;  // part/of of the sheet, from its left or its top
  std::uint8_t of;
};

inline constexpr std::uint16_t no_term = 0xFFFF;

struct CompiledTerm {
  CompiledText id;     // the folded preferred label
  CompiledText label;  // the preferred label
  CompiledText note;
  CompiledText caution;
  CompiledText caution_source;
  std::uint16_t broader;  // a place in CompiledVocabularies::terms, or no_term
  std::uint16_t first_other;
  std::uint16_t others;
  std::uint16_t first_narrower;
  std::uint16_t narrower;  // how many terms are narrower, by whatever steps
  std::uint16_t first_crease;
  std::uint8_t creases;
  bool creases_known;
  std::uint8_t stands;
  std::uint8_t vocabulary;
};

struct CompiledLabel {
  CompiledText key;     // label_key of `folded`
  CompiledText folded;  // as people write it, folded
  std::uint16_t term;
  std::uint8_t likelihood;
  bool preferred;
};

struct CompiledVocabularies {
  std::string_view text;
  std::span<const CompiledTerm> terms;    // by vocabulary, then by id
  std::span<const CompiledLabel> labels;  // by key, the likeliest first, then by term
  std::span<const CompiledText> others;   // the other labels of all terms, as they are shown
  std::span<const CompiledCrease> creases;
  std::span<const std::uint16_t> narrower;  // places in `terms`: for each term the narrower ones, in order
  std::span<const std::uint16_t> starts;    // starts[v] ≤ place of a term of vocabulary v < starts[v + 1]
  std::size_t longest_label_words;
  std::uint64_t fingerprint;  // changes whenever anything above does

  std::string_view at(CompiledText place) const { return text.substr(place.at, place.length); }
};

const CompiledVocabularies& compiled_vocabularies();

}  // namespace insetbook
