// SPDX-License-Identifier: GPL-3.0-or-later
//
// The search against a plain scan: the scan below reads every row and holds the question's tree against each
// sample with the simplest code there is, sharing nothing with src/search. Books and questions are generated
// from fixed seeds; sizes lie on, just inside and just outside of the tolerances.
#include "search/search.h"

#include <gtest/gtest.h>
#include <xapian.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <random>
#include <set>

#include "text/utf8.h"

namespace insetbook {
namespace {

// Of what is written of glue in the generated book: what is foam.
const std::vector<std::string> stuck_with_foam{"foam", "Foam, left 2 in", "left 2 in, foam pads"};

// What is written of envelopes in the generated book, by what is in the envelope trade the same: the American
// A2 envelope is 4-3/8 x 5-3/4 in, C6 is 114 x 162 mm.
const std::vector<std::string> written_as_a2{"4-3/8 x 5-3/4 in", "5¾ x 4⅜", "A2", "a2 envelope (kraft)"};
const std::vector<std::string> written_as_c6{"C6, lined", "162 x 114 mm"};
const std::vector<std::string> envelopes{
    "",     written_as_c6[0], written_as_a2[0], written_as_a2[1], "C5",
    "none", written_as_a2[2], written_as_c6[1], written_as_a2[3], "lined, of C6 kind"};

bool stands_in(const std::string& text, const std::vector<std::string>& list) {
  return std::find(list.begin(), list.end(), text) != list.end();
}

// Of what is written of places there: what is high of the centre.
const std::vector<std::string> high_of_centre{"high of centre", "High of the center, left 2 in"};

namespace fs = std::filesystem;
using Ids = std::vector<std::int64_t>;
using Kind = Node::Kind;

// --- the book ---

struct Row {
  std::int64_t id = 0, sample = 0;
  std::map<std::string, std::string> text;
  std::map<std::string, std::optional<std::int64_t>> number;
};

std::vector<Row> rows(const Book& book, const std::string& table, const std::vector<std::string>& texts,
                      const std::vector<std::string>& numbers, const std::string& sample) {
  std::string sql = "SELECT id, " + sample;
  for (const auto& each : texts) sql += ", coalesce(" + each + ", '')";
  for (const auto& each : numbers) sql += ", " + each;
  Statement statement = book.database().prepare(sql + " FROM " + table + " ORDER BY 2, 1");
  std::vector<Row> out;
  while (statement.step()) {
    Row row;
    row.id = statement.integer(0);
    row.sample = statement.integer(1);
    int column = 2;
    for (const auto& each : texts) row.text[each] = statement.text(column++);
    for (const auto& each : numbers) row.number[each] = statement.maybe_integer(column++);
    out.push_back(std::move(row));
  }
  return out;
}

// --- the scan ---

class Scan {
 public:
  explicit Scan(const Book& book)
      : samples_(rows(book, "sample",
                      {"title", "key", "made", "words", "steps", "note", "envelope", "based_on", "base_text"},
                      {"closed_width_nm", "closed_height_nm"}, "id")),
        elements_(
            rows(book, "element",
                 {"name", "role", "side", "shape", "goes", "at", "glue", "note", "size_text", "goes_how"},
                 {"width_nm", "height_nm", "placed", "set_id", "die_id", "line_id", "in_line_id", "count",
                  "goes_to"},
                 "sample_id")),
        mentions_(rows(book, "mention", {"kind", "term", "written"}, {"element_id", "colour_id", "supply_id"},
                       "sample_id")),
        colours_(rows(book, "colour", {"name"}, {}, "0")),
        supplies_(rows(book, "supply", {"kind", "set_name", "name", "words"}, {"colour_id"}, "0")),
        sets_(rows(book, "die_set", {"name"}, {}, "0")),
        dies_(rows(book, "die", {"label"}, {"set_id"}, "0")),
        lines_(rows(book, "line", {"name", "kind"}, {"die_id"}, "0")) {}

  struct Met {
    std::int64_t sample, beyond, distance;
    std::string made, key;
  };

  std::vector<Met> find(const Node& tree) const {
    std::vector<Met> met;
    for (const Row& sample : samples_) {
      if (!meets(tree, sample)) continue;
      const auto [beyond, distance] = closeness(tree, sample);
      met.push_back({sample.id, beyond, distance, sample.text.at("made"), sample.text.at("key")});
    }
    std::sort(met.begin(), met.end(), [](const Met& a, const Met& b) {
      if ((a.beyond > 0) != (b.beyond > 0)) return b.beyond > 0;
      return std::tie(a.distance, b.made, a.key) < std::tie(b.distance, a.made, b.key);
    });
    return met;
  }

  const std::map<std::int64_t, std::int64_t>& like(std::int64_t id) const {
    if (like_.count(id) == 0) like_[id] = likeness(id);
    return like_[id];
  }
  std::map<std::int64_t, std::int64_t> likeness(std::int64_t id) const {
    const Row* mine = by_id(samples_, id);
    std::map<std::int64_t, std::int64_t> scores;
    if (!mine) return scores;
    std::int64_t all = 0;
    const auto weigh = [&](const auto& holds, int part) {
      std::vector<std::int64_t> holders;
      for (const Row& sample : samples_) {
        if (holds(sample)) holders.push_back(sample.id);
      }
      if (holders.size() < 2) return;
      const double rarity =
          std::log2(static_cast<double>(samples_.size() + 1) / static_cast<double>(holders.size()));
      const std::int64_t weight = std::llround(1000 * rarity) / part;
      all += weight;
      for (const std::int64_t holder : holders) scores[holder] += weight;
    };
    for (const std::string& thing : things(*mine))
      weigh([&](const Row& sample) { return things(sample).count(thing) > 0; }, 1);
    for (const Piece& piece : sized(*mine))
      weigh([&](const Row& sample) { return has_near(sample, piece); }, 1);
    std::set<std::string> stems;
    for (const char* field : {"title", "words", "note"}) {
      for (const std::string& stem : words(mine->text.at(field))) stems.insert(stem);
    }
    for (const std::string& stem : stems) weigh([&](const Row& sample) { return has_stem(sample, stem); }, 2);
    std::erase_if(scores, [&](const auto& each) {
      return each.first == id || each.second <= 0 || each.second * 10 < all;
    });
    return scores;
  }

 private:
  static const Row* by_id(const std::vector<Row>& all, std::optional<std::int64_t> id) {
    for (const Row& each : all) {
      if (id && each.id == *id) return &each;
    }
    return nullptr;
  }
  static bool in(const std::vector<std::string>& list, const std::string& word) {
    return std::count(list.begin(), list.end(), word) > 0;
  }
  static bool in(const Ids& list, std::optional<std::int64_t> id) {
    return id && std::count(list.begin(), list.end(), *id) > 0;
  }
  // Both tables are in the order of their samples.
  static std::vector<const Row*> of_sample(const std::vector<Row>& all, const Row& sample) {
    std::vector<const Row*> out;
    auto each = std::lower_bound(all.begin(), all.end(), sample.id,
                                 [](const Row& a, std::int64_t id) { return a.sample < id; });
    for (; each != all.end() && each->sample == sample.id; ++each) out.push_back(&*each);
    return out;
  }
  std::vector<const Row*> elements(const Row& sample) const { return of_sample(elements_, sample); }

  static bool element_only(const Says& says) {
    return says.index() == Says(SizeIs{}).index() || std::get_if<ShapeIs>(&says) ||
           std::get_if<RoleIs>(&says) || std::get_if<DieIs>(&says) || std::get_if<SideIs>(&says) ||
           std::get_if<CountIs>(&says) || std::get_if<GoesIs>(&says);
  }

  // What two samples may have in common, as search/alike.h says: one text for each thing, told by looking at
  // the rows.
  std::set<std::string> things(const Row& sample) const {
    std::set<std::string> out;
    for (const Row* m : of_sample(mentions_, sample)) {
      const std::string& kind = m->text.at("kind");
      if (kind == "paper" || kind == "ink") {
        if (m->number.at("colour_id")) out.insert(kind + " " + std::to_string(*m->number.at("colour_id")));
      } else if (kind == "supply") {
        if (m->number.at("supply_id")) out.insert(kind + " " + std::to_string(*m->number.at("supply_id")));
      } else if (!m->text.at("term").empty()) {
        out.insert(kind + " " + m->text.at("term"));
      }
    }
    for (const Row* e : elements(sample)) {
      if (e->number.at("die_id")) out.insert("die " + std::to_string(*e->number.at("die_id")));
    }
    return out;
  }
  struct Piece {
    std::string shape;
    std::int64_t width, height;
    bool operator<(const Piece& o) const {
      return std::tie(shape, width, height) < std::tie(o.shape, o.width, o.height);
    }
  };
  std::set<Piece> sized(const Row& sample) const {
    std::set<Piece> out;
    for (const Row* e : elements(sample)) {
      const auto w = e->number.at("width_nm");
      if (w && !e->text.at("shape").empty())
        out.insert({e->text.at("shape"), *w, e->number.at("height_nm").value_or(*w)});
    }
    return out;
  }
  bool has_near(const Row& sample, const Piece& piece) const {
    const auto close = [](std::int64_t a, std::int64_t b) { return std::llabs(a - b) <= 3'175'000; };
    for (const Piece& each : sized(sample)) {
      if (each.shape != piece.shape) continue;
      if (close(each.width, piece.width) && close(each.height, piece.height)) return true;
      if (close(each.width, piece.height) && close(each.height, piece.width)) return true;
    }
    return false;
  }
  bool has_stem(const Row& sample, const std::string& stem) const {
    for (const auto& text : said(sample)) {
      if (in(text, stem)) return true;
    }
    return false;
  }
  // What language/goes.h says, word for word.
  static bool linked(GoesHow how, const Row& a, const Row& b) {
    if (a.id == b.id) return false;
    const auto on_base = [](const Row& piece, const Row& base) {
      return piece.text.at("goes_how") == "on" && !piece.number.at("goes_to") &&
             base.text.at("role") == "base";
    };
    if (how == GoesHow::on && on_base(a, b)) return true;
    if (how == GoesHow::behind && on_base(b, a)) return true;
    const std::string of_a = a.number.at("goes_to") == b.id ? a.text.at("goes_how") : "";
    const std::string of_b = b.number.at("goes_to") == a.id ? b.text.at("goes_how") : "";
    switch (how) {
      case GoesHow::on:
        return of_a == "on" || of_a == "in" || of_b == "behind";
      case GoesHow::in:
        return of_a == "in";
      case GoesHow::behind:
        return of_a == "behind" || of_b == "on" || of_b == "in";
      case GoesHow::around:
        return of_a == "around" || of_b == "in";
      case GoesHow::through:
        return of_a == "through";
    }
    return false;
  }
  static bool recorded_so(GoesHow how, const Row& a) {
    const std::string& said = a.text.at("goes_how");
    return said == goes_word(how) || (how == GoesHow::on && said == "in");
  }
  static std::vector<Node> other_pieces(const Node& goes) {
    if (goes.children.empty()) return {};
    return goes.children.front().kind == Kind::any ? goes.children.front().children : goes.children;
  }
  bool goes(const Node& node, const Row& e, const Row& sample) const {
    const GoesHow how = std::get<GoesIs>(node.constraint.front().says).how;
    if (node.children.empty()) {
      bool some = recorded_so(how, e);
      for (const Row* other : elements(sample)) some = some || linked(how, e, *other);
      return some;
    }
    for (const Node& piece : other_pieces(node)) {
      std::int64_t there = 0;
      for (const Row* other : elements(sample)) {
        if (linked(how, e, *other) && element_meets(piece, *other, sample))
          there += *other->number.at("count");
      }
      if (there >= wanted(piece)) return true;
    }
    return false;
  }

  // Sizes, in plain words of 2-model.md.
  static std::int64_t tolerance(const SizeIs& size) {
    if (size.tolerance) return size.tolerance->nm();
    if (size.relation == Relation::about) return size.unit == Unit::inch ? 3'175'000 : 3'000'000;
    return size.unit == Unit::inch ? 793'750 : 800'000;
  }
  static bool side_ok(const SizeIs& size, std::int64_t asked, std::int64_t side) {
    switch (size.relation) {
      case Relation::exact:
      case Relation::about:
        return std::llabs(side - asked) <= tolerance(size);
      case Relation::under:
        return side < asked;
      case Relation::over:
        return side > asked;
      case Relation::at_least:
        return side >= asked;
      case Relation::at_most:
        return side <= asked;
      case Relation::between:
        return side >= size.low.nm() && side <= size.high.nm();
    }
    return false;
  }
  // The distance of the reading that fits best, or nothing.
  static std::optional<std::int64_t> size_ok(const SizeIs& size, std::optional<std::int64_t> w,
                                             std::optional<std::int64_t> h, bool placed) {
    if (!w) return std::nullopt;
    const bool compared = size.relation == Relation::exact || size.relation == Relation::about;
    const std::int64_t asked = size.low.nm();
    const auto far = [&](std::int64_t side, std::int64_t figure) {
      return compared ? std::llabs(side - figure) : std::int64_t{0};
    };
    std::vector<std::int64_t> readings;
    if (!size.one_figure && size.relation != Relation::between) {
      if (!h) return std::nullopt;
      const std::int64_t second = size.second.nm();
      if (side_ok(size, asked, *w) && side_ok(size, second, *h)) {
        readings.push_back(std::max<std::int64_t>(far(*w, asked), far(*h, second)));
      }
      const bool may_turn = !size.placed || !placed;
      if (may_turn && side_ok(size, asked, *h) && side_ok(size, second, *w)) {
        readings.push_back(std::max<std::int64_t>(far(*h, asked), far(*w, second)));
      }
    } else if (size.placed && placed) {
      const auto side = size.height ? h : w;
      if (side && side_ok(size, asked, *side)) readings.push_back(far(*side, asked));
    } else {
      const std::int64_t other = h ? *h : *w;
      const bool wide = side_ok(size, asked, *w);
      const bool high = side_ok(size, asked, other);
      const bool either = compared || size.placed;
      if (either ? (wide || high) : (wide && high)) {
        if (wide) readings.push_back(far(*w, asked));
        if (high) readings.push_back(far(other, asked));
      }
    }
    if (readings.empty()) return std::nullopt;
    return *std::min_element(readings.begin(), readings.end());
  }

  bool mentioned(const Says& says, const Row& sample, const Row* element) const {
    for (const Row* mention : of_sample(mentions_, sample)) {
      const Row& m = *mention;
      if (element && m.number.at("element_id") != element->id) continue;
      const std::string& kind = m.text.at("kind");
      const std::string& term = m.text.at("term");
      if (const auto* is = std::get_if<TechniqueIs>(&says); is && kind == "technique" && in(is->terms, term))
        return true;
      if (const auto* is = std::get_if<MaterialIs>(&says); is && kind == "material" && in(is->terms, term))
        return true;
      if (const auto* is = std::get_if<MaterialIs>(&says); is && kind == "supply") {
        const Row* supply = by_id(supplies_, m.number.at("supply_id"));
        if (supply && in(is->terms, fold(supply->text.at("kind")))) return true;
      }
      if (const auto* is = std::get_if<FoldIs>(&says); is && kind == "fold" && in(is->terms, term))
        return true;
      if (const auto* is = std::get_if<FeatureIs>(&says); is && kind == "feature" && in(is->terms, term))
        return true;
      if (const auto* is = std::get_if<OccasionIs>(&says); is && kind == "occasion" && in(is->terms, term))
        return true;
      if (const auto* is = std::get_if<SupplyIs>(&says);
          is && kind == "supply" && in(is->supplies, m.number.at("supply_id"))) {
        return true;
      }
      if (const auto* is = std::get_if<ColourIs>(&says); is && in(is->colours, m.number.at("colour_id"))) {
        if (kind == "paper" && is->use != ColourUse::ink) return true;
        if (kind == "ink" && is->use != ColourUse::paper) return true;
      }
    }
    return false;
  }

  bool die_ok(const DieIs& die, const Row& element) const {
    if (die.any) return element.number.at("die_id") || element.number.at("set_id");
    Ids lines;
    for (const Row& line : lines_) {
      if (!in(die.dies, line.number.at("die_id"))) continue;
      if (die.line.empty() || line.text.at("kind") == die.line || line.text.at("name") == die.line) {
        lines.push_back(line.id);
      }
    }
    if (die.lies_in) return in(lines, element.number.at("in_line_id"));
    if (!die.line.empty()) return in(lines, element.number.at("line_id"));
    if (element.number.at("die_id")) return in(die.dies, element.number.at("die_id"));
    if (!element.number.at("set_id")) return false;
    bool some = false;
    for (const Row& each : dies_) {
      if (each.number.at("set_id") != element.number.at("set_id")) continue;
      some = true;
      if (!in(die.dies, each.id)) return false;
    }
    return some;
  }

  // As it was recorded, or some label stands among the words of its name.
  static bool has_role(const RoleIs& role, const Row& e) {
    if (in(role.terms, e.text.at("role"))) return true;
    const std::string name = " " + e.text.at("name") + " ";
    return std::any_of(role.called.begin(), role.called.end(), [&](const std::string& label) {
      return name.find(" " + label + " ") != std::string::npos;
    });
  }

  bool element_meets(const Node& node, const Row& e, const Row& sample) const {
    if (node.kind == Kind::none) {
      return std::none_of(node.children.begin(), node.children.end(),
                          [&](const Node& c) { return element_meets(c, e, sample); });
    }
    if (node.kind == Kind::any) {
      return std::any_of(node.children.begin(), node.children.end(),
                         [&](const Node& c) { return element_meets(c, e, sample); });
    }
    if (node.kind == Kind::goes) return goes(node, e, sample);
    if (node.kind != Kind::one) {
      return std::all_of(node.children.begin(), node.children.end(),
                         [&](const Node& c) { return element_meets(c, e, sample); });
    }
    const Says& says = node.constraint.front().says;
    if (const auto* is = std::get_if<SizeIs>(&says)) {
      return size_ok(*is, e.number.at("width_nm"), e.number.at("height_nm"), e.number.at("placed") == 1)
          .has_value();
    }
    if (const auto* is = std::get_if<ShapeIs>(&says)) return in(is->terms, e.text.at("shape"));
    if (const auto* is = std::get_if<RoleIs>(&says)) return has_role(*is, e);
    if (const auto* is = std::get_if<SideIs>(&says)) {
      const std::string& side = e.text.at("side");
      return is->side == (side.empty() ? "front" : side);
    }
    if (const auto* is = std::get_if<DieIs>(&says)) return die_ok(*is, e);
    if (std::get_if<GlueIs>(&says)) return in(stuck_with_foam, e.text.at("glue"));
    if (std::get_if<PlaceIs>(&says)) return in(high_of_centre, e.text.at("at"));
    if (std::get_if<CountIs>(&says)) return true;
    if (std::get_if<TechniqueIs>(&says) || std::get_if<MaterialIs>(&says) || std::get_if<ColourIs>(&says) ||
        std::get_if<SupplyIs>(&says)) {
      return mentioned(says, sample, &e);
    }
    return sample_says(says, sample);
  }

  static std::vector<std::string> words(const std::string& text) {
    static const Xapian::Stem stem("english");
    std::vector<std::string> out;
    std::string word;
    for (const char c : text + " ") {
      if (std::isalnum(static_cast<unsigned char>(c))) {
        word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      } else if (!word.empty()) {
        out.push_back(stem(word));
        word.clear();
      }
    }
    return out;
  }

  std::vector<std::string> texts(const Row& sample) const {
    std::vector<std::string> out;
    for (const auto& [name, text] : sample.text) {
      if (name != "key" && name != "made") out.push_back(text);
    }
    for (const Row* e : elements(sample)) {
      for (const auto& [name, text] : e->text) {
        if (name != "side" && name != "goes_how" && (name != "size_text" || !e->number.at("width_nm")))
          out.push_back(text);
      }
      if (const Row* set = by_id(sets_, e->number.at("set_id"))) out.push_back(set->text.at("name"));
      if (const Row* die = by_id(dies_, e->number.at("die_id"))) out.push_back(die->text.at("label"));
    }
    for (const Row* mention : of_sample(mentions_, sample)) {
      const Row& m = *mention;
      out.push_back(m.text.at("written"));
      out.push_back(m.text.at("term"));
      if (const Row* colour = by_id(colours_, m.number.at("colour_id")))
        out.push_back(colour->text.at("name"));
      if (const Row* supply = by_id(supplies_, m.number.at("supply_id"))) {
        for (const char* field : {"set_name", "name", "words"}) out.push_back(supply->text.at(field));
        if (const Row* colour = by_id(colours_, supply->number.at("colour_id")))
          out.push_back(colour->text.at("name"));
      }
    }
    return out;
  }

  // The same for every question, so worked out once.
  const std::vector<std::vector<std::string>>& said(const Row& sample) const {
    auto& out = said_[sample.id];
    if (out.empty()) {
      for (const std::string& text : texts(sample)) out.push_back(words(text));
    }
    return out;
  }

  bool says_words(const WordsAre& asked, const Row& sample) const {
    std::vector<std::vector<std::string>> wanted;
    for (const auto& each : asked.words) {
      if (asked.phrase && !wanted.empty()) {
        for (const auto& more : words(each)) wanted.front().push_back(more);
      } else {
        wanted.push_back(words(each));
      }
    }
    for (const auto& phrase : wanted) {
      bool found = phrase.empty();
      for (const auto& there : said(sample)) {
        for (std::size_t i = 0; !found && i + phrase.size() <= there.size(); ++i) {
          found = std::equal(phrase.begin(), phrase.end(), there.begin() + static_cast<std::ptrdiff_t>(i));
        }
      }
      if (!found) return false;
    }
    return true;
  }

  bool sample_says(const Says& says, const Row& sample) const {
    if (const auto* is = std::get_if<WordsAre>(&says)) return says_words(*is, sample);
    if (const auto* is = std::get_if<TitleIs>(&says)) return is->sample == sample.id;
    if (const auto* is = std::get_if<AlikeTo>(&says)) return like(is->sample).count(sample.id) > 0;
    if (const auto* is = std::get_if<BasedOn>(&says)) {
      const Row* base = by_id(samples_, is->sample);
      return base && base->text.at("title") == sample.text.at("based_on");
    }
    if (const auto* is = std::get_if<MadeIn>(&says)) {
      const std::string& made = sample.text.at("made");
      return !made.empty() && made >= is->from && (is->to.empty() || made <= is->to);
    }
    if (const auto* is = std::get_if<EnvelopeIs>(&says)) {
      const std::string& written = sample.text.at("envelope");
      if (is->size || is->said == "A2") return stands_in(written, written_as_a2);
      if (is->said == "C6") return stands_in(written, written_as_c6) || written == envelopes.back();
      return written == "C6, lined" || written == envelopes.back();  // the word alone
    }
    if (const auto* is = std::get_if<HasNo>(&says)) {
      if (is->field == "made") return sample.text.at("made").empty();
      if (is->field == "note") return sample.text.at("note").empty();
      for (const Row* m : of_sample(mentions_, sample)) {
        if (m->text.at("kind") == is->field) return false;
      }
      return true;
    }
    if (const auto* is = std::get_if<ClosedSizeIs>(&says)) {
      const auto w = sample.number.at("closed_width_nm");
      const auto h = sample.number.at("closed_height_nm");
      if (is->size && !size_ok(*is->size, w, h, true)) return false;
      if (is->form == ClosedSizeIs::Form::any) return true;
      if (!w || !h) return false;
      const bool square = std::llabs(*w - *h) <= 793'750;
      if (is->form == ClosedSizeIs::Form::square) return square;
      return !square && (is->form == ClosedSizeIs::Form::landscape) == (*w > *h);
    }
    return mentioned(says, sample, nullptr);
  }

  static int wanted(const Node& piece) {
    int most = 1;
    for (const Node& c : piece.children) {
      if (c.kind != Kind::one) continue;
      if (const auto* is = std::get_if<CountIs>(&c.constraint.front().says)) most = std::max(most, is->least);
    }
    return most;
  }

  // Nothing but how many: every piece of the card counts, whatever else is asked of it.
  static bool only_counts(const Node& node) {
    return node.kind == Kind::piece && !node.children.empty() &&
           std::all_of(node.children.begin(), node.children.end(), [](const Node& c) {
             return c.kind == Kind::one && std::get_if<CountIs>(&c.constraint.front().says);
           });
  }
  bool has_so_many(const Row& sample, int least) const {
    std::int64_t there = 0;
    for (const Row* e : elements(sample)) there += *e->number.at("count");
    return there >= least;
  }

  // Tries every way of giving pieces to what is asked.
  bool assign(const std::vector<const Node*>& demands, std::size_t next, std::map<std::int64_t, int>& used,
              const Row& sample) const {
    if (next == demands.size()) return true;
    for (const Row* e : elements(sample)) {
      if (used[e->id] >= *e->number.at("count")) continue;
      const Node& demand = *demands[next];
      const bool ok = demand.kind == Kind::piece
                          ? element_meets(demand, *e, sample)
                          : std::any_of(demand.children.begin(), demand.children.end(),
                                        [&](const Node& c) { return element_meets(c, *e, sample); });
      if (!ok) continue;
      ++used[e->id];
      if (assign(demands, next + 1, used, sample)) return true;
      --used[e->id];
    }
    return false;
  }

  bool meets(const Node& node, const Row& sample) const {
    switch (node.kind) {
      case Kind::one: {
        const Says& says = node.constraint.front().says;
        if (!element_only(says)) return sample_says(says, sample);
        Node piece;
        piece.kind = Kind::piece;
        piece.children.push_back(node);
        return meets(piece, sample);
      }
      case Kind::any:
        return std::any_of(node.children.begin(), node.children.end(),
                           [&](const Node& c) { return meets(c, sample); });
      case Kind::none:
        return std::none_of(node.children.begin(), node.children.end(),
                            [&](const Node& c) { return meets(c, sample); });
      case Kind::piece: {
        Node all;
        all.children.push_back(node);
        return meets(all, sample);
      }
      case Kind::all:
      case Kind::goes:  // stands in a piece only
        break;
    }
    std::vector<const Node*> demands;
    for (const Node& child : node.children) {
      const bool choice = child.kind == Kind::any && !child.children.empty() &&
                          std::all_of(child.children.begin(), child.children.end(),
                                      [](const Node& c) { return c.kind == Kind::piece && wanted(c) == 1; });
      if (only_counts(child)) {
        if (!has_so_many(sample, wanted(child))) return false;
      } else if (child.kind == Kind::piece) {
        for (int i = 0; i < wanted(child); ++i) demands.push_back(&child);
      } else if (choice) {
        demands.push_back(&child);
      } else if (!meets(child, sample)) {
        return false;
      }
    }
    std::map<std::int64_t, int> used;
    return assign(demands, 0, used, sample);
  }

  // Added up over what is asked side by side: how far the nearest piece is, and how far beyond what counts as
  // exact. The generated questions ask at most one size within a piece, and none within "or".
  std::pair<std::int64_t, std::int64_t> closeness(const Node& tree, const Row& sample) const {
    std::int64_t beyond = 0, distance = 0;
    const auto add = [&](std::int64_t far, std::int64_t exact) {
      distance += far;
      beyond += std::max<std::int64_t>(0, far - exact);
    };
    for (const Node& child : tree.children) {
      if (child.kind == Kind::one) {
        const auto* closed = std::get_if<ClosedSizeIs>(&child.constraint.front().says);
        if (closed && closed->size) {
          add(*size_ok(*closed->size, sample.number.at("closed_width_nm"),
                       sample.number.at("closed_height_nm"), true),
              counts_as_exact(*closed->size));
        }
      }
      if (child.kind != Kind::piece) continue;
      std::optional<std::int64_t> nearest;
      for (const Row* e : elements(sample)) {
        if (!element_meets(child, *e, sample)) continue;
        const std::int64_t far = far_of_piece(child, *e, sample);
        if (!nearest || far < *nearest) nearest = far;
      }
      add(nearest.value(), exact_of_piece(child));
    }
    return {beyond, distance};
  }

  static std::int64_t counts_as_exact(const SizeIs& size) {
    if (size.relation == Relation::exact) return tolerance(size);
    if (size.relation != Relation::about) return 0;
    return size.unit == Unit::inch ? 793'750 : 800'000;
  }
  // The size of the piece and those of the pieces it goes with, the nearest of each.
  std::int64_t far_of_piece(const Node& piece, const Row& e, const Row& sample) const {
    std::int64_t sum = 0;
    for (const Node& inner : piece.children) {
      const auto* size =
          inner.kind == Kind::one ? std::get_if<SizeIs>(&inner.constraint.front().says) : nullptr;
      if (size) {
        sum += *size_ok(*size, e.number.at("width_nm"), e.number.at("height_nm"), e.number.at("placed") == 1);
      }
      if (inner.kind != Kind::goes || inner.children.empty()) continue;
      const GoesHow how = std::get<GoesIs>(inner.constraint.front().says).how;
      std::optional<std::int64_t> nearest;
      for (const Row* other : elements(sample)) {
        for (const Node& asked : other_pieces(inner)) {
          if (!linked(how, e, *other) || !element_meets(asked, *other, sample)) continue;
          const std::int64_t far = far_of_piece(asked, *other, sample);
          if (!nearest || far < *nearest) nearest = far;
        }
      }
      sum += nearest.value();
    }
    return sum;
  }
  static std::int64_t exact_of_piece(const Node& piece) {
    std::int64_t sum = 0;
    for (const Node& inner : piece.children) {
      if (inner.kind == Kind::one) {
        const auto* size = std::get_if<SizeIs>(&inner.constraint.front().says);
        if (size) sum += counts_as_exact(*size);
      }
      if (inner.kind == Kind::goes && !inner.children.empty() && inner.children.front().kind == Kind::piece)
        sum += exact_of_piece(inner.children.front());
    }
    return sum;
  }

  std::vector<Row> samples_, elements_, mentions_, colours_, supplies_, sets_, dies_, lines_;
  mutable std::map<std::int64_t, std::vector<std::vector<std::string>>> said_;
  mutable std::map<std::int64_t, std::map<std::int64_t, std::int64_t>> like_;
};

// --- what is generated ---

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int upto(int n) { return static_cast<int>(engine_() % static_cast<unsigned>(n)); }
  bool one_in(int n) { return upto(n) == 0; }
  template <class T>
  const T& pick(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(upto(static_cast<int>(list.size())))];
  }

 private:
  std::mt19937 engine_;
};

const std::vector<std::int64_t> figures{60'325'000, 76'200'000, 60'000'000, 50'800'000};
const std::vector<std::int64_t> edges{0,       0,       0,         1,         793'750,   793'751,
                                      800'000, 800'001, 3'175'000, 3'175'001, 3'000'000, 3'000'001};
const std::vector<std::string> shapes{"circle", "square", "rectangle", "oval", "strip"};
const std::vector<std::string> roles{"panel", "mat", "die cut", ""};
const std::vector<std::string> sides{"front", "inside", ""};
const std::vector<std::string> materials{"card stock", "vellum", "paper"};
const std::vector<std::string> techniques{"dry embossing", "speckling", "inking"};
const std::vector<std::string> folds{"easel fold", "z fold", "side fold"};
const std::vector<std::string> ways{"on", "on", "in", "behind", "around", "through"};
const std::vector<std::string> occasions{"birthday", "thanks"};
const std::vector<std::string> places{
    "", "", "high", "left of centre", "high of centre", "High of the center, left 2 in", "centre, high"};
const std::vector<std::string> glues{
    "", "", "wet glue", "none", "foam", "Foam, left 2 in", "left 2 in, foam pads", "foamless", "left 2 in"};
const std::vector<std::string> vocabulary{"glitter", "glittering", "owl",   "owls",  "window",
                                          "snow",    "flake",      "happy", "stamp", "moon"};
const std::vector<std::string> dates{"", "2021-05-01", "2022-12-31", "2023-01-01", "2023-06-15"};

std::int64_t figure(Dice& dice) {
  return dice.pick(figures) + (dice.one_in(2) ? 1 : -1) * dice.pick(edges);
}

std::string sentence(Dice& dice) {
  std::string out;
  for (int i = dice.upto(4); i > 0; --i)
    out += (out.empty() ? "" : dice.one_in(5) ? "-" : " ") + dice.pick(vocabulary);
  return out;
}

void add_mention(const Database& db, Dice& dice, std::int64_t sample, std::optional<std::int64_t> element) {
  Statement row = db.prepare(
      "INSERT INTO mention (sample_id, element_id, kind, term, colour_id, supply_id, written) VALUES "
      "(?,?,?,?,?,?,?)");
  row.bind(1, sample);
  row.bind(2, element);
  row.bind_null(4).bind_null(5).bind_null(6);
  if (dice.one_in(8)) {
    row.bind(3, "material").bind(4, dice.pick(materials)).bind(7, "sheet").run();
    return;
  }
  switch (dice.upto(element ? 4 : 5)) {
    case 0:
      row.bind(3, "technique").bind(4, dice.pick(techniques)).bind(7, dice.pick(vocabulary));
      break;
    case 1:
      row.bind(3, "paper").bind(5, std::int64_t{1 + dice.upto(3)}).bind(7, "sage");
      break;
    case 2:
      row.bind(3, "ink").bind(5, std::int64_t{1 + dice.upto(3)}).bind(7, "kelp");
      break;
    case 3:
      row.bind(3, "supply").bind(6, std::int64_t{1 + dice.upto(2)}).bind(7, "pearls");
      break;
    default:
      if (dice.one_in(2)) {
        row.bind(3, "fold").bind(4, dice.pick(folds)).bind(7, "");
      } else {
        row.bind(3, "occasion").bind(4, dice.pick(occasions)).bind(7, "");
      }
  }
  row.run();
}

void add_element(const Database& db, Dice& dice, std::int64_t sample, int position) {
  Statement row = db.prepare(
      "INSERT INTO element (sample_id, position, name, key, role, side, shape, width_nm, height_nm, placed, "
      "size_text, "
      "set_id, die_id, line_id, in_line_id, count, note, glue, at) VALUES "
      "(?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)");
  static const std::vector<std::string> names{"piece", "oval frame", "mat square", "format", "frames"};
  const std::string name =
      names[static_cast<std::size_t>(sample + position) % names.size()] + " " + std::to_string(position);
  const std::string shape = dice.pick(shapes);
  row.bind(1, sample).bind(2, std::int64_t{position}).bind(3, name).bind(4, name).bind(5, dice.pick(roles));
  row.bind(6, dice.pick(sides)).bind(7, shape);
  row.bind_null(8).bind_null(9).bind_null(12).bind_null(13).bind_null(14).bind_null(15);
  if (!dice.one_in(8)) {
    const std::int64_t width = figure(dice);
    row.bind(8, width);
    if (shape == "circle" || shape == "square") {
      row.bind(9, width);
    } else if (!dice.one_in(8)) {
      row.bind(9, figure(dice));
    }
  }
  row.bind(10, std::int64_t{dice.upto(2)}).bind(11, dice.one_in(4) ? "scrap" : "");
  if (dice.one_in(3)) {
    const int die = 1 + dice.upto(4);
    row.bind(12, std::int64_t{die <= 2 ? 1 : 2});
    if (!dice.one_in(3)) row.bind(13, std::int64_t{die}).bind(14, std::int64_t{die});
  }
  if (dice.one_in(5)) row.bind(15, std::int64_t{1 + dice.upto(5)});
  row.bind(16, std::int64_t{dice.one_in(4) ? 1 + dice.upto(3) : 1})
      .bind(17, dice.one_in(4) ? sentence(dice) : "")
      .bind(18, dice.pick(glues))
      .bind(19, dice.pick(places));
  row.run();
  const std::int64_t element = db.last_row();
  for (int i = dice.upto(3); i > 0; --i) add_mention(db, dice, sample, element);
}

std::int64_t piece_at(const Database& db, std::int64_t sample, int position) {
  Statement row = db.prepare("SELECT id FROM element WHERE sample_id = ? AND position = ?");
  row.bind(1, sample).bind(2, std::int64_t{position});
  return row.step() ? row.integer(0) : 0;
}

// The last of the pieces goes with one before it, or with something that is none.
void record_goes(const Database& db, Dice& dice, const std::vector<std::int64_t>& pieces) {
  Statement row = db.prepare("UPDATE element SET goes_how = ?, goes_to = ? WHERE id = ?");
  row.bind(1, dice.pick(ways)).bind_null(2).bind(3, pieces.back());
  if (pieces.size() > 1 && !dice.one_in(6))
    row.bind(2, pieces[static_cast<std::size_t>(dice.upto(static_cast<int>(pieces.size()) - 1))]);
  row.run();
}

void add_sample(const Database& db, Dice& dice, const std::string& title) {
  Statement row = db.prepare(
      "INSERT INTO sample (uuid, title, key, made, closed_width_nm, closed_height_nm, words, steps, note, "
      "based_on) "
      "VALUES (?,?,?,?,?,?,?,?,?,?)");
  row.bind(1, title).bind(2, title).bind(3, title).bind(4, dice.pick(dates)).bind_null(5).bind_null(6);
  if (!dice.one_in(4)) row.bind(5, figure(dice)).bind(6, figure(dice));
  row.bind(7, sentence(dice)).bind(8, sentence(dice)).bind(9, sentence(dice));
  row.bind(10, dice.one_in(6) ? "card 003" : "");
  row.run();
  const std::int64_t sample = db.last_row();
  Statement envelope = db.prepare("UPDATE sample SET envelope = ? WHERE id = ?");
  envelope.bind(1, envelopes[static_cast<std::size_t>(sample) % envelopes.size()]).bind(2, sample);
  envelope.run();
  std::vector<std::int64_t> pieces;
  for (int i = 1, n = dice.upto(6); i <= n; ++i) {
    add_element(db, dice, sample, i);
    pieces.push_back(piece_at(db, sample, i));
    if (dice.one_in(2)) record_goes(db, dice, pieces);
  }
  for (int i = dice.upto(4); i > 0; --i) add_mention(db, dice, sample, std::nullopt);
}

std::string card(int number) {
  const std::string digits = std::to_string(number);
  return "card " + std::string(3 - std::min<std::size_t>(3, digits.size()), '0') + digits;
}

void fill(const Database& db, Dice& dice, int samples) {
  db.execute(
      "INSERT INTO colour (id, uuid, name, key) VALUES "
      "(1,'a','sage','sage'),(2,'b','kelp','kelp'),(3,'c','moon','moon');"
      "INSERT INTO supply (id, uuid, key, kind, set_name, name, words, colour_id) VALUES "
      "(1,'a','a','Card-Stock','harbour','pearls','happy owl',1),(2,'b','b','vellum','','snow','',NULL);"
      "INSERT INTO die_set (id, uuid, name, key) VALUES (1,'a','tidepool circles','tidepool "
      "circles'),(2,'b','moonrise','moonrise');"
      "INSERT INTO die (id, uuid, set_id, label, key) VALUES "
      "(1,'a',1,'1','1'),(2,'b',1,'2','2'),(3,'c',2,'large','large'),(4,'d',2,'small','small');"
      "INSERT INTO line (id, die_id, kind, name, shape) VALUES "
      "(1,1,'cut','cut','circle'),(2,2,'stitched','stitched','circle'),"
      "(3,3,'cut','cut','oval'),(4,4,'window','window','oval'),(5,4,'window','window 2','oval');");
  for (int i = 1; i <= samples; ++i) add_sample(db, dice, card(i));
}

Node one(Says says) {
  Node node;
  node.kind = Kind::one;
  node.constraint.push_back({std::move(says), "asked", "asked", {}});
  return node;
}

SizeIs a_size(Dice& dice) {
  SizeIs size;
  size.relation = static_cast<Relation>(dice.upto(7));
  size.one_figure = dice.one_in(2);
  size.low = Length::nm(dice.pick(figures));
  size.high = size.low + Length::nm(16'000'000);
  size.second = Length::nm(dice.pick(figures));
  size.unit = dice.one_in(3) ? Unit::mm : Unit::inch;
  size.placed = dice.one_in(4);
  size.height = size.one_figure && size.placed && dice.one_in(2);
  if (dice.one_in(5)) size.tolerance = Length::nm(dice.pick(edges));
  return size;
}

Says of_piece(Dice& dice) {
  switch (dice.upto(8)) {
    case 0:
      return ShapeIs{dice.one_in(3) ? std::vector<std::string>{"circle", "oval"}
                                    : std::vector{dice.pick(shapes)}};
    case 1:
      if (dice.one_in(3)) return RoleIs{{"mat"}, {"mat", "mats"}};
      if (dice.one_in(3)) return RoleIs{{"panel"}, {"frame", "frames"}};
      return RoleIs{{roles[static_cast<std::size_t>(dice.upto(3))]}};
    case 2:
      return SideIs{sides[static_cast<std::size_t>(dice.upto(2))]};
    case 3:
      return ColourIs{static_cast<ColourUse>(dice.upto(3)), {1 + dice.upto(3)}, "sage"};
    case 4:
      if (dice.one_in(2)) return MaterialIs{{dice.pick(materials)}};
      return TechniqueIs{{dice.pick(techniques)}};
    case 5:
      if (dice.one_in(2)) return GlueIs{{"foam"}, {"foam", "foampad"}};
      return SupplyIs{{1 + dice.upto(2)}, "pearls"};
    case 6: {
      if (dice.one_in(4)) return PlaceIs{{"high", "centre"}};
      DieIs die{{1, 2}, "", dice.one_in(2), "tidepool circles"};
      if (dice.one_in(4)) {
        die = DieIs();
        die.any = true;
        die.said = "any die";
        return die;
      }
      if (dice.one_in(2)) die.dies = {1 + dice.upto(4)};
      if (dice.one_in(3)) die.line = "window";
      return die;
    }
    default:
      return CountIs{1 + dice.upto(3)};
  }
}

Node piece(Dice& dice, int depth = 0);

Node a_goes(Dice& dice, int depth) {
  Node node = one(GoesIs{static_cast<GoesHow>(dice.one_in(2) ? 0 : dice.upto(5))});
  node.kind = Kind::goes;
  if (dice.one_in(6)) return node;
  Node other = piece(dice, depth + 1);
  if (dice.one_in(6)) {
    Node any;
    any.kind = Kind::any;
    for (const char* shape : {"circle", "oval"}) {
      any.children.emplace_back();
      any.children.back().kind = Kind::piece;
      any.children.back().children.push_back(one(ShapeIs{{shape}}));
    }
    other = std::move(any);
  }
  node.children.push_back(std::move(other));
  return node;
}

Node piece(Dice& dice, int depth) {
  Node node;
  node.kind = Kind::piece;
  if (depth > 0 && dice.one_in(2)) {
    node.children.push_back(one(RoleIs{{"panel", "mat", "die cut"}}));
    return node;
  }
  if (dice.one_in(2)) node.children.push_back(one(a_size(dice)));
  if (dice.one_in(2)) node.children.push_back(one(ShapeIs{{dice.pick(shapes)}}));
  if (node.children.empty() || dice.one_in(2)) node.children.push_back(one(of_piece(dice)));
  if (depth < 3 && dice.one_in(4)) node.children.push_back(a_goes(dice, depth));
  if (dice.one_in(5)) {
    Node inner;
    inner.kind = dice.one_in(2) ? Kind::any : Kind::none;
    if (inner.kind == Kind::none && dice.one_in(2)) inner.children.push_back(a_goes(dice, 2));
    for (int i = 0; i < 2; ++i) {
      Says says = of_piece(dice);
      if (std::get_if<CountIs>(&says)) says = ShapeIs{{"oval"}};
      inner.children.push_back(one(std::move(says)));
    }
    node.children.push_back(std::move(inner));
  }
  return node;
}

Says of_sample(Dice& dice) {
  switch (dice.upto(10)) {
    case 0:
      return FoldIs{{dice.pick(folds)}, "fold"};
    case 1:
      return OccasionIs{{dice.pick(occasions)}};
    case 2:
      if (dice.one_in(2)) return MaterialIs{{dice.pick(materials), dice.pick(materials)}};
      return TechniqueIs{{dice.pick(techniques)}};
    case 3:
      return ColourIs{ColourUse::either, {1 + dice.upto(3)}, "sage"};
    case 4:
      return MadeIn{dice.pick(dates), dice.pick(dates)};
    case 5: {
      ClosedSizeIs closed;
      closed.form = static_cast<ClosedSizeIs::Form>(dice.upto(4));
      if (dice.one_in(2) || closed.form == ClosedSizeIs::Form::any) closed.size = a_size(dice);
      return closed;
    }
    case 6:
      return BasedOn{3, "card 003"};
    case 7:
      return HasNo{dice.pick(std::vector<std::string>{"made", "note", "fold", "technique"})};
    case 8: {
      EnvelopeIs envelope;
      if (dice.one_in(3))
        envelope.words = {"lined"};
      else if (dice.one_in(3))
        envelope.size = SizeIs{
            .one_figure = false, .low = Length::inch_fraction(35, 8), .second = Length::inch_fraction(23, 4)};
      else if (dice.one_in(2))
        envelope = {.words = {"c6"}, .said = "C6", .named = true};
      else
        envelope = {.words = {"a2"}, .said = "A2", .named = true};
      return envelope;
    }
    default:
      return TitleIs{1 + dice.upto(40), "a card"};
  }
}

Node some_words(Dice& dice) {
  WordsAre words{{dice.pick(vocabulary)}, dice.one_in(3)};
  if (dice.one_in(2)) words.words.push_back(dice.pick(vocabulary));
  return one(std::move(words));
}

// Of the piece, or of one that it goes with.
bool asks_a_size(const Node& node) {
  if (node.kind == Kind::one) return std::holds_alternative<SizeIs>(node.constraint.front().says);
  return node.kind != Kind::none && std::any_of(node.children.begin(), node.children.end(), asks_a_size);
}

Node part(Dice& dice) {
  const int kind = dice.upto(12);
  if (kind < 6 && dice.one_in(8)) {
    Node pieces;
    pieces.kind = Kind::piece;
    pieces.children.push_back(one(CountIs{1 + dice.upto(9)}));
    return pieces;
  }
  if (kind < 6) return piece(dice);
  if (kind < 8) return one(of_sample(dice));
  if (kind < 10) return some_words(dice);
  Node node;
  node.kind = kind == 10 ? Kind::any : Kind::none;
  for (int i = 0; i < 2; ++i) {
    if (dice.one_in(9)) {
      node.children.push_back(one(AlikeTo{1 + dice.upto(40), "a card"}));
    } else if (dice.one_in(3)) {
      node.children.push_back(some_words(dice));
    } else if (dice.one_in(2)) {
      // Sizes within "or" count for closeness by a rule of their own; the set is what is compared here.
      Node child = piece(dice);
      if (node.kind == Kind::any) std::erase_if(child.children, asks_a_size);
      if (child.children.empty()) child.children.push_back(one(ShapeIs{{"oval"}}));
      node.children.push_back(std::move(child));
    } else {
      Says says = of_sample(dice);
      if (std::get_if<ClosedSizeIs>(&says)) says = FoldIs{{"z fold"}, "z fold"};
      node.children.push_back(one(std::move(says)));
    }
  }
  return node;
}

Question a_question(Dice& dice) {
  Question question;
  question.tree.kind = Kind::all;
  for (int i = 1 + dice.upto(3); i > 0; --i) question.tree.children.push_back(part(dice));
  return question;
}

bool asks_words(const Node& node) {
  if (node.kind == Kind::one) return std::holds_alternative<WordsAre>(node.constraint.front().says);
  return std::any_of(node.children.begin(), node.children.end(), asks_words);
}

// --- the tests ---

class SearchProperty : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("insetbook-search-property-" + std::to_string(getpid()));
    fs::remove_all(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }

  Book make(Dice& dice, int samples) {
    fs::remove_all(folder_);
    auto book = Book::create(folder_);
    EXPECT_TRUE(book) << book.error().what;
    const auto done = book->change("made a book", [&](Change& change) -> Result<void> {
      fill(change.database(), dice, samples);
      return {};
    });
    EXPECT_TRUE(done) << done.error().what;
    return std::move(*book);
  }

  fs::path folder_;
};

Ids ids(const Hits& hits) {
  Ids out;
  for (const Hit& hit : hits.hits) out.push_back(hit.sample);
  return out;
}

Ids asked(const Book& book, const Question& question, Index* index = nullptr, std::size_t limit = 1'000) {
  SearchOptions options;
  options.limit = limit;
  options.index = index;
  options.nearest = 0;
  const auto hits = search(book, question, options);
  EXPECT_TRUE(hits) << hits.error().what;
  return hits ? ids(*hits) : Ids{-1};
}

TEST_F(SearchProperty, agrees_with_a_plain_scan) {
  int found = 0, empty = 0;
  for (unsigned seed = 1; seed <= 6; ++seed) {
    Dice dice(seed);
    const Book book = make(dice, 200);
    const Scan scan(book);
    Index index(folder_);
    for (int i = 0; i < 250; ++i) {
      const Question question = a_question(dice);
      const auto met = scan.find(question.tree);
      Ids expected;
      for (const auto& each : met) expected.push_back(each.sample);
      Ids got = asked(book, question, &index);
      met.empty() ? ++empty : ++found;
      if (asks_words(question.tree)) {
        std::map<std::int64_t, std::int64_t> beyond;
        for (const auto& each : met) beyond[each.sample] = each.beyond;
        for (std::size_t k = 1; k < got.size(); ++k) {
          EXPECT_LE(beyond[got[k - 1]] > 0, beyond[got[k]] > 0) << "seed " << seed << " question " << i;
        }
        std::sort(got.begin(), got.end());
        std::sort(expected.begin(), expected.end());
      } else {
        const Ids first = asked(book, question, &index, 7);
        const Ids of_expected(expected.begin(),
                              expected.begin() + std::min<std::ptrdiff_t>(7, std::ssize(expected)));
        EXPECT_EQ(first, of_expected) << "seed " << seed << " question " << i;
      }
      ASSERT_EQ(got, expected) << "seed " << seed << " question " << i << "\n"
                               << explain_search(book, question);
    }
  }
  EXPECT_GT(found, 300);
  EXPECT_GT(empty, 100);
}

// Questions about words, with what they find when the index is in step.
struct Answered {
  Question question;
  Ids ids;
};

std::vector<Answered> answered(const Book& book, Dice& dice, int count) {
  std::vector<Answered> out;
  Index index(book.folder());
  while (std::ssize(out) < count) {
    Question question = a_question(dice);
    if (!asks_words(question.tree)) continue;
    Ids found = asked(book, question, &index);
    if (!found.empty()) out.push_back({std::move(question), std::move(found)});
  }
  return out;
}

void expect_same(const Book& book, const std::vector<Answered>& all, const std::string& when) {
  Index index(book.folder());
  for (const Answered& each : all) {
    EXPECT_EQ(asked(book, each.question, &index), each.ids) << when << "\n"
                                                            << explain_search(book, each.question);
  }
}

// Changes, deletes and adds samples, and renames what many of them mention.
void change_much(Book& book, Dice& dice, int round) {
  const auto done = book.change("changed much", [&](Change& change) -> Result<void> {
    const Database& db = change.database();
    for (int i = 0; i < 10; ++i) {
      Statement row = db.prepare("UPDATE sample SET words = ?, made = ? WHERE id = ?");
      row.bind(1, sentence(dice)).bind(2, dice.pick(dates)).bind(3, std::int64_t{1 + dice.upto(200)});
      row.run();
      const std::string gone = std::to_string(1 + dice.upto(200));
      db.execute("DELETE FROM mention WHERE sample_id = " + gone +
                 "; DELETE FROM element WHERE sample_id = " + gone +
                 "; DELETE FROM sample WHERE id = " + gone);
      add_sample(db, dice, "new card " + std::to_string(round) + " " + std::to_string(i));
    }
    db.execute("UPDATE colour SET name = 'glittering " + std::to_string(round) +
               "', key = name WHERE id = " + std::to_string(1 + round % 2));
    db.execute("UPDATE die_set SET name = 'owl ovals " + std::to_string(round) + "' WHERE id = 2");
    return {};
  });
  ASSERT_TRUE(done) << done.error().what;
}

TEST_F(SearchProperty, what_is_alike_agrees_with_a_plain_scan) {
  std::size_t found = 0;
  for (unsigned seed = 21; seed <= 23; ++seed) {
    Dice dice(seed);
    const Book book = make(dice, 120);
    const Scan scan(book);
    Index index(folder_);
    for (int i = 0; i < 40; ++i) {
      Question question;
      const std::int64_t asked_for = 1 + dice.upto(122);
      question.tree.children.push_back(one(AlikeTo{asked_for, "a card"}));
      const auto scores = scan.like(asked_for);
      const bool and_more = dice.one_in(2);
      if (and_more) question.tree.children.push_back(part(dice));
      const Ids got = asked(book, question, &index);
      Ids expected;
      for (const auto& each : scan.find(question.tree)) expected.push_back(each.sample);
      if (!and_more) {
        std::stable_sort(expected.begin(), expected.end(),
                         [&](std::int64_t a, std::int64_t b) { return scores.at(a) > scores.at(b); });
        EXPECT_EQ(got, expected) << "seed " << seed << " question " << i;
        continue;
      }
      found += got.size();
      EXPECT_EQ(std::set(got.begin(), got.end()), std::set(expected.begin(), expected.end()))
          << "seed " << seed << " question " << i;
    }
  }
  EXPECT_GT(found, 100U);
}

TEST_F(SearchProperty, index_behind_deleted_or_damaged_gives_the_same_answers) {
  Dice dice(77);
  Book book = make(dice, 200);
  Index(folder_).catch_up(book);
  for (int round = 0; round < 3; ++round) {
    change_much(book, dice, round);
    // The first question brings the index up; a new one built from nothing must say the same.
    const std::vector<Answered> caught_up = answered(book, dice, 30);
    EXPECT_EQ(Index(folder_).catch_up(book), Index::State::in_step);
    EXPECT_EQ(Index(folder_).verify(book), std::vector<std::string>());
    fs::remove_all(folder_ / "index");
    expect_same(book, caught_up, "index deleted");
    EXPECT_TRUE(fs::exists(folder_ / "index"));
  }
  const std::vector<Answered> whole = answered(book, dice, 30);
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder_ / "index")) files.push_back(entry.path());
  ASSERT_GE(files.size(), 4U);
  int damaged = 0;
  for (const fs::path& file : files) {
    for (const std::uintmax_t part : {0U, 1U, 2U, 3U}) {
      Index(folder_).catch_up(book);
      if (!fs::exists(file)) continue;
      const std::uintmax_t size = fs::file_size(file);
      if (part == 3) {
        std::ofstream(file, std::ios::binary | std::ios::trunc) << std::string(size, 'x');
      } else {
        fs::resize_file(file, size * part / 3);
      }
      ++damaged;
      expect_same(book, whole, "damaged " + file.filename().string() + " " + std::to_string(part));
    }
  }
  EXPECT_GT(damaged, 10);
}

TEST_F(SearchProperty, locked_index_gives_the_same_answers) {
  Dice dice(78);
  Book book = make(dice, 200);
  Index(folder_).catch_up(book);
  change_much(book, dice, 1);
  std::vector<Answered> locked;
  {
    const Xapian::WritableDatabase lock((folder_ / "index").string(), Xapian::DB_OPEN);
    EXPECT_EQ(Index(folder_).catch_up(book), Index::State::not_written);
    locked = answered(book, dice, 40);
    EXPECT_EQ(Index(folder_).catch_up(book), Index::State::not_written);
  }
  EXPECT_EQ(Index(folder_).catch_up(book), Index::State::caught_up);
  for (Answered& each : locked) {
    // Relevance is reckoned over what the locked index still holds, so near ties may fall otherwise: the set
    // counts.
    Ids now = asked(book, each.question);
    std::sort(now.begin(), now.end());
    std::sort(each.ids.begin(), each.ids.end());
    EXPECT_EQ(now, each.ids) << explain_search(book, each.question);
  }
}

TEST_F(SearchProperty, open_reader_sees_what_others_commit) {
  Dice dice(79);
  Book book = make(dice, 200);
  Index mine(folder_);
  Question question;
  question.tree.children.push_back(one(WordsAre{{"kingfisher"}, false}));
  EXPECT_EQ(asked(book, question, &mine), Ids());
  auto other = Book::open(folder_, Book::Use::write);
  ASSERT_TRUE(other);
  Ids expected;
  for (int i = 0; i < 8; ++i) {
    const auto done = other->change("a kingfisher", [&](Change& change) -> Result<void> {
      const std::string id = std::to_string(100 - i);
      change.database().execute("UPDATE sample SET made = '2024-01-0" + std::to_string(i + 1) +
                                "', words = 'kingfisher', steps = '', note = '' WHERE id = " + id +
                                "; DELETE FROM mention WHERE sample_id = " + id +
                                "; DELETE FROM element WHERE sample_id = " + id);
      expected.insert(expected.begin(), 100 - i);
      return {};
    });
    ASSERT_TRUE(done);
    if (i % 2 == 0) Index(folder_).catch_up(*other);
    Ids got = asked(book, question, &mine);
    std::sort(got.begin(), got.end());
    std::sort(expected.begin(), expected.end());
    EXPECT_EQ(got, expected);
  }
}

}  // namespace
}  // namespace insetbook
