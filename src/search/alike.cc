// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/alike.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "measure/write.h"
#include "search/facts_parts.h"
#include "search/sample_text.h"
#include "search/sql_text.h"

namespace insetbook {
namespace {

using Ids = std::vector<std::int64_t>;

constexpr std::int64_t near = Length::inch_fraction(1, 8).nm();
constexpr std::size_t enough = 1'000;
constexpr std::size_t followed_to = 5'000;
constexpr std::size_t holders_counted_to = 20'000;

constexpr std::array terms_in_common{"fold", "feature", "technique", "occasion", "material"};

bool sides_near(std::int64_t a, std::int64_t b) {
  return std::abs(a - b) <= near;
}

Thing piece_thing(const ElementFacts& element, const SampleFacts& sample) {
  Thing thing;
  thing.kind = Thing::Kind::piece;
  thing.word = element.shape;
  thing.width = *element.sides.width;
  thing.height = element.sides.height.value_or(thing.width);
  thing.said = element.shape + " " +
               (thing.width == thing.height
                    ? write(Length::nm(thing.width), element.unit)
                    : write_size(Length::nm(thing.width), Length::nm(thing.height), element.unit));
  for (const MentionFacts& mention : sample.mentions) {
    if (mention.element != element.id || mention.kind != "paper" || !mention.colour) continue;
    thing.of_colours.push_back(*mention.colour);
    thing.colour_names.push_back(mention.written);
  }
  return thing;
}

std::optional<Thing> mention_thing(const MentionFacts& mention) {
  Thing thing;
  thing.said = mention.written;
  if (mention.colour && (mention.kind == "paper" || mention.kind == "ink")) {
    thing.kind = Thing::Kind::colour;
    thing.mention = mention.kind == "ink" ? "ink" : "paper";
    thing.id = *mention.colour;
    if (mention.kind == "ink") thing.said += " ink";
    return thing;
  }
  if (mention.supply) {
    thing.kind = Thing::Kind::supply;
    thing.id = *mention.supply;
    return thing;
  }
  if (mention.term.empty()) return std::nullopt;
  for (const char* kind : terms_in_common) {
    if (mention.kind != kind) continue;
    thing.mention = kind;
    thing.word = mention.term;
    return thing;
  }
  return std::nullopt;
}

std::optional<Thing> die_thing(const Book& book, const ElementFacts& element) {
  if (!element.die) return std::nullopt;
  Thing thing;
  thing.kind = Thing::Kind::die;
  thing.id = *element.die;
  Statement& row =
      book.statement("SELECT s.name, d.label FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = ?");
  row.bind(1, thing.id);
  if (row.step()) thing.said = std::string(row.text(0)) + " " + std::string(row.text(1));
  row.reset();
  return thing;
}

bool same(const Thing& a, const Thing& b) {
  if (a.kind != b.kind || a.mention != b.mention || a.word != b.word || a.id != b.id) return false;
  return a.kind != Thing::Kind::piece || (a.width == b.width && a.height == b.height);
}

void add(std::vector<Thing>& things, std::optional<Thing> thing) {
  if (!thing) return;
  for (const Thing& each : things) {
    if (same(each, *thing)) return;
  }
  things.push_back(std::move(*thing));
}

// "SELECT DISTINCT … WHERE …" of the samples that hold it; not for words.
Sql holders(const Thing& thing) {
  Sql sql;
  switch (thing.kind) {
    case Thing::Kind::term:
      sql << "SELECT DISTINCT x.sample_id FROM mention x WHERE x.kind = ";
      sql.value(thing.mention) << " AND x.term = ";
      sql.value(thing.word);
      break;
    case Thing::Kind::colour:
      sql << "SELECT DISTINCT x.sample_id FROM mention x WHERE x.kind = ";
      sql.value(thing.mention) << " AND x.colour_id = ";
      sql.value(thing.id);
      break;
    case Thing::Kind::supply:
      sql << "SELECT DISTINCT x.sample_id FROM mention x WHERE x.kind = 'supply' AND x.supply_id = ";
      sql.value(thing.id);
      break;
    case Thing::Kind::die:
      sql << "SELECT DISTINCT x.sample_id FROM element x WHERE x.die_id = ";
      sql.value(thing.id);
      break;
    case Thing::Kind::piece: {
      const auto between = [&](std::string_view side, std::int64_t nm) {
        sql << side << " BETWEEN ";
        sql.value(nm - near) << " AND ";
        sql.value(nm + near);
      };
      sql << "SELECT DISTINCT x.sample_id FROM element x WHERE x.shape = ";
      sql.value(thing.word) << " AND x.width_nm BETWEEN ";  // for the index
      sql.value(std::min(thing.width, thing.height) - near) << " AND ";
      sql.value(std::max(thing.width, thing.height) + near) << " AND (";
      between("x.width_nm", thing.width);
      sql << " AND ";
      between("coalesce(x.height_nm, x.width_nm)", thing.height);
      sql << " OR ";
      between("x.width_nm", thing.height);
      sql << " AND ";
      between("coalesce(x.height_nm, x.width_nm)", thing.width);
      sql << ")";
      break;
    }
    case Thing::Kind::word:
      break;
  }
  return sql;
}

class Search {
 public:
  Search(const Book& book, Index& index) : book_(book), index_(index) {}

  std::size_t count(const Thing& thing) {
    if (thing.kind == Thing::Kind::word)
      return std::min(index_.samples_with(book_, thing.word), holders_counted_to);
    Sql sql("SELECT COUNT(*) FROM (");
    sql << holders(thing) << " LIMIT ";
    sql.value(static_cast<std::int64_t>(holders_counted_to)) << ")";
    Statement& row = bound(book_, sql);
    const auto many = static_cast<std::size_t>(row.step() ? row.integer(0) : 0);
    row.reset();
    return many;
  }

  // The holders, sorted: of `among`, or (null) the first that the index leads to.
  Ids of(const Thing& thing, const Ids* among) {
    Ids ids;
    if (thing.kind == Thing::Kind::word) {
      Index::Wanted wanted;
      wanted.among = among;
      if (!among) wanted.limit = followed_to;
      for (const TextHit& hit :
           index_.find(book_, TextAsked{TextAsked::Kind::phrase, {thing.word}, {}}, wanted).hits)
        ids.push_back(hit.sample);
    } else {
      Sql sql = holders(thing);
      if (among) {
        sql << " AND x.sample_id";
        sql.any_of(*among);
      } else {
        sql << " LIMIT ";
        sql.value(static_cast<std::int64_t>(followed_to));
      }
      Statement& rows = bound(book_, sql);
      while (rows.step()) ids.push_back(rows.integer(0));
      rows.reset();
    }
    std::sort(ids.begin(), ids.end());
    return ids;
  }

  std::size_t samples() {
    Statement& row = book_.statement("SELECT COUNT(*) FROM sample");
    const auto many = static_cast<std::size_t>(row.step() ? row.integer(0) : 0);
    row.reset();
    return many;
  }

 private:
  const Book& book_;
  Index& index_;
};

struct Weighed {
  const Thing* thing;
  std::size_t holders;
  std::int64_t weight;
};

std::int64_t weight_of(const Thing& thing, std::size_t holders, std::size_t samples) {
  constexpr double thousandths = 1000;
  const double rarity = std::log2((static_cast<double>(samples) + 1) / static_cast<double>(holders));
  const auto weight = static_cast<std::int64_t>(std::llround(thousandths * rarity));
  return thing.kind == Thing::Kind::word ? weight / 2 : weight;
}

Ids candidates(Search& search, const std::vector<Weighed>& weighed) {
  Ids met;
  for (const Weighed& each : weighed) {
    if (met.size() >= enough) break;
    const Ids more = search.of(*each.thing, nullptr);
    Ids together;
    std::set_union(met.begin(), met.end(), more.begin(), more.end(), std::back_inserter(together));
    met = std::move(together);
  }
  return met;
}

}  // namespace

std::vector<Thing> things_of(const Book& book, std::int64_t id, Stemmer& stemmer) {
  std::vector<Thing> things;
  const auto sample = facts_of(book, id, {true, true});
  if (!sample) return things;
  const auto add_mentions = [&](const auto& wanted) {
    for (const MentionFacts& mention : sample->mentions) {
      if (wanted(mention.kind)) add(things, mention_thing(mention));
    }
  };
  add_mentions([](const std::string& kind) { return kind == "fold" || kind == "feature"; });
  for (const ElementFacts& element : sample->elements) {
    if (!element.shape.empty() && element.sides.width) add(things, piece_thing(element, *sample));
  }
  for (const ElementFacts& element : sample->elements) add(things, die_thing(book, element));
  add_mentions([](const std::string& kind) { return kind == "technique" || kind == "occasion"; });
  add_mentions([](const std::string& kind) {
    return kind == "paper" || kind == "ink" || kind == "material" || kind == "supply";
  });
  for (const TextField& field : text_of_sample(book, id, TextPart::sample)) {
    if (field.label != "title" && field.label != "words" && field.label != "note") continue;
    for_each_word(field.text, [&](std::string_view word) {
      Thing thing;
      thing.kind = Thing::Kind::word;
      thing.word = stemmer.stem(word);
      thing.said = "\"" + std::string(word) + "\"";
      add(things, std::move(thing));
    });
  }
  return things;
}

bool holds(const Thing& piece, const ElementFacts& element) {
  if (element.shape != piece.word || !element.sides.width) return false;
  const std::int64_t width = *element.sides.width;
  const std::int64_t height = element.sides.height.value_or(width);
  return (sides_near(width, piece.width) && sides_near(height, piece.height)) ||
         (sides_near(width, piece.height) && sides_near(height, piece.width));
}

std::int64_t off_by(const Thing& piece, const ElementFacts& element) {
  const std::int64_t width = *element.sides.width;
  const std::int64_t height = element.sides.height.value_or(width);
  const auto off = [](std::int64_t a, std::int64_t b) { return a > b ? a - b : b - a; };
  return std::min(std::max(off(width, piece.width), off(height, piece.height)),
                  std::max(off(width, piece.height), off(height, piece.width)));
}

bool holds(const Thing& thing, const SampleFacts& sample) {
  const auto mentioned = [&](const auto& is) {
    return std::any_of(sample.mentions.begin(), sample.mentions.end(), is);
  };
  const auto of_piece = [&](const auto& is) {
    return std::any_of(sample.elements.begin(), sample.elements.end(), is);
  };
  switch (thing.kind) {
    case Thing::Kind::term:
      return mentioned(
          [&](const MentionFacts& each) { return each.kind == thing.mention && each.term == thing.word; });
    case Thing::Kind::colour:
      return mentioned(
          [&](const MentionFacts& each) { return each.kind == thing.mention && each.colour == thing.id; });
    case Thing::Kind::supply:
      return mentioned([&](const MentionFacts& each) { return each.supply == thing.id; });
    case Thing::Kind::die:
      return of_piece([&](const ElementFacts& each) { return each.die == thing.id; });
    case Thing::Kind::piece:
      return of_piece([&](const ElementFacts& each) { return holds(thing, each); });
    case Thing::Kind::word:
      return false;
  }
  return false;
}

std::vector<Alike> alike(const Book& book, Index& index, Stemmer& stemmer, std::int64_t sample) {
  const std::vector<Thing> things = things_of(book, sample, stemmer);
  Search search(book, index);
  const std::size_t samples = search.samples();
  std::vector<Weighed> weighed;
  std::int64_t all = 0;
  for (const Thing& thing : things) {
    const std::size_t many = search.count(thing);
    if (many < 2) continue;
    weighed.push_back({&thing, many, weight_of(thing, many, samples)});
    all += weighed.back().weight;
  }
  std::stable_sort(weighed.begin(), weighed.end(),
                   [](const Weighed& a, const Weighed& b) { return a.holders < b.holders; });
  const Ids met = candidates(search, weighed);
  std::map<std::int64_t, std::int64_t> scores;
  for (const Weighed& each : weighed) {
    for (const std::int64_t holder : search.of(*each.thing, &met)) scores[holder] += each.weight;
  }
  constexpr std::int64_t tenth = 10;
  std::vector<Alike> found;
  for (const auto& [id, score] : scores) {
    if (id != sample && score > 0 && score * tenth >= all) found.push_back({id, score});
  }
  return found;
}

}  // namespace insetbook
