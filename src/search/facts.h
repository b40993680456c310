// SPDX-License-Identifier: GPL-3.0-or-later
//
// One sample in memory, and what of a question it meets: which piece fills which slot (facts.cc), and why
// (reasons.cc). This explains the hits that are shown; it decides only what SQL does not (more pieces side by
// side, or deeper brackets, than conditions.cc can say).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "search/conditions.h"
#include "search/normal_form.h"
#include "search/said.h"
#include "search/sample_text.h"
#include "search/search.h"
#include "search/words.h"

namespace insetbook {

struct MentionFacts {
  std::optional<std::int64_t> element, colour, supply;
  std::string kind, term, written;
  std::string supply_kind;  // of a supply, as written
};

struct ElementFacts {
  std::int64_t id = 0;
  std::string name, role, side, shape;
  SidesOnRecord sides;
  Unit unit = Unit::inch;
  std::string size_written;  // as it stands in the record: which figure came first is the person's own
  std::optional<std::int64_t> set, die, line, in_line;
  int count = 1;
  std::string goes, goes_how;  // as written ("on the grey panel"); the way ("on")
  std::optional<std::int64_t> goes_to;
  std::string glue;  // as written
  std::string at;    // the place, as written
};

struct SampleFacts {
  std::int64_t id = 0;
  std::string uuid, title, made;
  SidesOnRecord closed;
  Unit closed_unit = Unit::inch;
  std::vector<ElementFacts> elements;
  std::vector<MentionFacts> mentions;
};

// What a question needs to know of a sample; the rest is left out.
struct FactsNeeded {
  bool elements = false;
  bool mentions = false;
  std::vector<std::string_view> kinds;  // of mentions; empty: of every kind
};
FactsNeeded facts_needed(const Node& all);

std::optional<SampleFacts> facts_of(const Book& book, std::int64_t sample, const FactsNeeded& needed);

struct Thing;  // alike.h

// A question held against samples one by one.
class Judge {
 public:
  Judge(const Book& book, const Node& all, const Relaxed& relaxed);
  ~Judge();
  Judge(const Judge&) = delete;
  Judge& operator=(const Judge&) = delete;

  // How what is like a sample is told; without it, whatever it is asked of is taken to be.
  void ids_of(Conditions::TextIds ids) { ids_of_ = std::move(ids); }
  bool meets(const SampleFacts& sample);
  std::vector<Matched> explain(const SampleFacts& sample);
  // What of the relaxed sizes the sample misses: "circle 2-1/4 in: 1/8 in smaller".
  std::string differences(const SampleFacts& sample);

  // For what the nearest lack. The element that meets the piece best, or null.
  const ElementFacts* nearest_element(const Node& piece, const SampleFacts& sample);
  // What the element has in place of a child of its piece that it misses: "sage instead of navy", "circle
  // 2-1/4 in: 1/8 in smaller"; empty where it has nothing of that kind.
  std::string instead_in_piece(const Node& missed, const ElementFacts& element, const SampleFacts& sample);
  // What the sample has where it misses what is said of samples: "side fold"; empty likewise.
  std::string has_instead(const Node& missed, const SampleFacts& sample);

 private:
  struct Filled {
    std::vector<std::vector<const ElementFacts*>> slots;  // as many elements as it took
    bool all = true;
  };

  bool sample_meets(const Node& node, const SampleFacts& sample);
  bool piece_meets(const Node& node, const ElementFacts& element, const SampleFacts& sample);
  bool children_meet(const Node& all, const SampleFacts& sample);
  bool sample_says(const Says& says, const SampleFacts& sample);
  bool piece_says(const Says& says, const ElementFacts& element, const SampleFacts& sample);
  bool cut_or_lies(const DieIs& die, const ElementFacts& element);
  bool goes(const Node& node, const ElementFacts& element, const SampleFacts& sample);
  bool words_there(const WordsAre& words, const SampleFacts& sample);
  Filled fill(const std::vector<Slot>& slots, const SampleFacts& sample);
  std::int64_t distance_of(const Node& piece, const ElementFacts& element, const SampleFacts& sample);

  void explain_slot(const Slot& slot, const std::vector<const ElementFacts*>& elements,
                    const SampleFacts& sample, std::vector<Matched>& out);
  void explain_other(const Node& node, const SampleFacts& sample, std::vector<Matched>& out);
  void explain_says(const Constraint& asked, const SampleFacts& sample, std::vector<Matched>& out);
  Said why(const Node& piece, const ElementFacts& element, const SampleFacts& sample);
  Said with_what(const Node& goes, const ElementFacts& element, const SampleFacts& sample);
  void said_of_piece(const Says& says, const ElementFacts& element, const SampleFacts& sample, Said& said);
  void sizes_missed(const Node& node, const ElementFacts& element, const SampleFacts& sample, Said& said);
  void explain_words(const WordsAre& words, const std::string& text, const SampleFacts& sample,
                     std::vector<Matched>& out);

  bool is_like(const Node& node, const SampleFacts& sample);
  Said in_common(const AlikeTo& alike, const SampleFacts& sample);
  const DieMeaning& meaning_of(const DieIs& die);
  const std::vector<std::int64_t>& based_on_it(const BasedOn& base);
  // The first field of the sample's text that holds these stems one after another, or null. `on_card`: only
  // what the card says.
  const TextField* field_with(const std::vector<std::string>& phrase, const SampleFacts& sample,
                              bool on_card = false);

  const Book& book_;
  const Node& all_;
  const Relaxed& relaxed_;
  Stemmer stemmer_;
  Conditions::TextIds ids_of_;
  std::map<const Node*, std::vector<std::int64_t>> alike_ids_;
  std::map<const AlikeTo*, std::vector<Thing>> things_;
  // By their place in the tree.
  std::map<const DieIs*, DieMeaning> meanings_;
  std::map<const BasedOn*, std::vector<std::int64_t>> based_on_;
  // The text of the sample last asked about, as far as it was fetched, and its words.
  struct SaidText {
    TextField field;
    std::optional<std::vector<std::string>> words;
  };
  std::int64_t text_sample_ = 0;
  std::size_t text_parts_ = 0;
  std::vector<SaidText> text_;
};

}  // namespace insetbook
