// SPDX-License-Identifier: GPL-3.0-or-later
#include "mix.h"

#include <cstdint>

namespace {

using Way = BareQuestion::Way;

constexpr std::int64_t sixteenth = 1'587'500;
constexpr std::int64_t within = sixteenth / 2;  // 1/32 in: an exact size
constexpr std::int64_t about = 2 * sixteenth;   // 1/8 in

std::string number(std::int64_t n) {
  return std::to_string(n);
}

// A figure in sixteenths of an inch as a person writes it, without the unit.
std::string figure(int sixteenths) {
  const int whole = sixteenths / 16;
  int part = sixteenths % 16, of = 16;
  if (part == 0) return std::to_string(whole);
  for (; part % 2 == 0; of /= 2) part /= 2;
  const std::string fraction = std::to_string(part) + "/" + std::to_string(of);
  return whole > 0 ? std::to_string(whole) + "-" + fraction : fraction;
}

std::string between(const std::string& column, std::int64_t low, std::int64_t high) {
  return column + " BETWEEN " + number(low) + " AND " + number(high);
}
std::string near_to(const std::string& column, int sixteenths, std::int64_t tolerance) {
  return between(column, sixteenths * sixteenth - tolerance, sixteenths * sixteenth + tolerance);
}
std::string off(const std::string& column, int sixteenths) {
  return "abs(" + column + " - " + number(sixteenths * sixteenth) + ")";
}

// A term and what make_tables.cc has of narrower ones, as the vocabularies tell.
struct Term {
  const char* said;
  const char* terms;
};
constexpr Term easel{"easel", "('easel')"};
constexpr Term tent{"tent", "('tent')"};
constexpr Term z_fold{"z fold", "('z fold')"};
constexpr Term accordion{"accordion", "('accordion')"};
constexpr Term side_fold{"side fold", "('side fold')"};
constexpr Term stand_up{"stand-up fold", "('easel', 'z fold', 'tent', 'accordion')"};
constexpr Term birthday{"birthday", "('birthday')"};
constexpr Term wedding{"wedding", "('wedding')"};
constexpr Term sympathy{"sympathy", "('sympathy')"};
constexpr Term christmas{"christmas", "('christmas')"};
constexpr Term speckling{"speckling", "('speckling')"};
constexpr Term stencilling{"stencilling", "('stencilling')"};
constexpr Term dry_embossing{"dry embossing", "('dry embossing')"};

// What is said of the sample `id`.
std::string said(const std::string& id, const std::string& kind, const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_of_sample WHERE m.sample_id = " + id +
         " AND m.kind = '" + kind + "' AND m.term IN " + terms + ")";
}
// The same, looked for by the term.
std::string said_by_term(const std::string& id, const std::string& kind, const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_term WHERE m.kind = '" + kind +
         "' AND m.term IN " + terms + " AND m.sample_id = " + id + ")";
}
// Of the piece `e`.
std::string done(const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_of_element WHERE m.element_id = e.id AND "
         "m.kind = 'technique' AND m.term IN " +
         terms + ")";
}

// All that a walk finds, put in order; the walk gives ids, each once or more, and how far off their sizes
// are.
std::string ordered(const std::string& walk, const std::string& condition) {
  return "SELECT s.id, s.title, s.made FROM (" + walk + ") c CROSS JOIN sample s ON s.id = c.id WHERE " +
         condition + " GROUP BY s.id ORDER BY min(c.d), s.made DESC, s.key";
}
// Where nothing is near or far: the first twenty in the order of their dates, and how many there are.
void walked_by_date(BareQuestion& question, const std::string& condition, const std::string& walk,
                    const std::string& of_walk) {
  question.other_hits = "SELECT s.id, s.title, s.made FROM sample s INDEXED BY sample_made WHERE " +
                        condition + " ORDER BY s.made DESC, s.key LIMIT 20";
  question.other_total = "SELECT count(*) FROM (SELECT DISTINCT c.id FROM (" + walk +
                         ") c CROSS JOIN sample s ON s.id = c.id WHERE " + of_walk + " LIMIT 10000)";
}

using Quoted = BareQuestion::Quoted;
constexpr Quoted pieces{true, false, false}, mentions{false, true, false},
    pieces_and_mentions{true, true, false};

BareQuestion rows(const std::string& text, Quoted quoted, const std::string& walk,
                  const std::string& condition) {
  return {text, Way::rows, "", ordered(walk, condition), "", "", "", "", quoted};
}
BareQuestion with_words(const std::string& text, Quoted quoted, const std::string& words,
                        const std::string& samples) {
  quoted.text = true;
  return {text,  Way::rows_then_words,
          words, "SELECT DISTINCT id FROM (" + samples + ") ORDER BY id",
          "",    "",
          "",    "",
          quoted};
}

// Walks over the pieces of a shape and a size.
std::string circles(const char* shape, int size, std::int64_t tolerance = within) {
  return "SELECT sample_id AS id, " + off("width_nm", size) + " AS d FROM element WHERE shape = '" + shape +
         "' AND " + near_to("width_nm", size, tolerance);
}
std::string circles(const char* shape, std::int64_t low, std::int64_t high) {
  return std::string("SELECT sample_id AS id, 0 AS d FROM element WHERE shape = '") + shape + "' AND " +
         between("width_nm", low, high);
}
std::string with_term(const std::string& kind, const std::string& terms) {
  return "SELECT sample_id AS id, 0 AS d FROM mention WHERE kind = '" + kind + "' AND term IN " + terms;
}
constexpr std::int64_t far = std::int64_t{1} << 60;

struct Round {
  const char* shape;
  int size;
};
constexpr Round rounds[] = {{"circle", 38}, {"circle", 24}, {"square", 40}, {"circle", 52},
                            {"square", 21}, {"circle", 13}, {"square", 56}};

std::string said_of(const Round& round) {
  return figure(round.size) + " in " + round.shape;
}

MixKind piece_and_fold() {
  MixKind kind{"one piece and one fold", false, {}};
  const Term folds[] = {easel, stand_up, tent};
  for (const Round& round : rounds)
    for (const Term& fold : folds) {
      if (kind.questions.size() == 20) break;
      kind.questions.push_back(rows(said_of(round) + " with a " + fold.said, pieces_and_mentions,
                                    circles(round.shape, round.size), said("c.id", "fold", fold.terms)));
    }
  return kind;
}

MixKind piece() {
  MixKind kind{"one piece", false, {}};
  for (const Round& round : rounds)
    kind.questions.push_back(rows(said_of(round), pieces, circles(round.shape, round.size), "1"));
  for (const int size : {17, 30, 33, 45, 60, 62, 11})
    kind.questions.push_back(
        rows("a " + figure(size) + " inch circle", pieces, circles("circle", size), "1"));
  return kind;
}

// Either side of a piece that has two.
std::string either_side(const std::string& shape, int size) {
  const std::string base = "FROM element WHERE shape = '" + shape + "' AND ";
  const std::string distance = "min(" + off("width_nm", size) + ", " + off("height_nm", size) + ")";
  return "SELECT sample_id AS id, " + distance + " AS d " + base + "(" + near_to("width_nm", size, within) +
         " OR " + near_to("height_nm", size, within) + ")";
}
std::string two_sides(int width, int height) {
  const auto one = [](int w, int h) {
    return "SELECT sample_id AS id, max(" + off("width_nm", w) + ", " + off("height_nm", h) +
           ") AS d FROM element WHERE shape = 'rectangle' AND " + near_to("width_nm", w, about) + " AND " +
           near_to("height_nm", h, about);
  };
  return one(width, height) + " UNION ALL " + one(height, width);
}

MixKind sizes() {
  MixKind kind{"sizes: about, ranges, either side", false, {}};
  for (const int size : {40, 28, 52})
    kind.questions.push_back(rows("about " + figure(size) + " x " + figure(size + 8) + " in rectangle",
                                  pieces, two_sides(size, size + 8), "1"));
  for (const int size : {36, 20})
    kind.questions.push_back(
        rows("about " + figure(size) + " in circle", pieces, circles("circle", size, about), "1"));
  for (const int size : {38, 26, 50})
    kind.questions.push_back(rows(figure(size) + " in oval", pieces, either_side("oval", size), "1"));
  for (const int size : {32, 44}) {
    const std::string walk = circles("square", size * sixteenth, (size + 8) * sixteenth);
    kind.questions.push_back(
        rows("square between " + figure(size) + " and " + figure(size + 8) + " in", pieces, walk, "1"));
  }
  for (const int size : {16, 32}) {
    const std::string walk = circles("circle", 0, size * sixteenth - 1);
    BareQuestion under = rows("circle under " + figure(size) + " in", pieces, walk, "1");
    walked_by_date(under,
                   "EXISTS (SELECT 1 FROM element e WHERE e.sample_id = s.id AND +e.shape = 'circle' AND "
                   "+e.width_nm < " +
                       number(size * sixteenth) + ")",
                   walk, "1");
    kind.questions.push_back(under);
  }
  for (const int size : {48, 60}) {
    const std::string walk = circles("square", size * sixteenth + 1, far);
    BareQuestion over = rows("square over " + figure(size) + " in", pieces, walk, "1");
    walked_by_date(over,
                   "EXISTS (SELECT 1 FROM element e WHERE e.sample_id = s.id AND +e.shape = 'square' AND "
                   "+e.width_nm > " +
                       number(size * sixteenth) + ")",
                   walk, "1");
    kind.questions.push_back(over);
  }
  return kind;
}

MixKind words() {
  MixKind kind{"words", false, {}};
  for (const char* each :
       {"kaletern", "badle", "katern", "rakadedle", "dedevel", "wugofipick", "miwukarow", "katern legoner",
        "badle dedevel", "kaletern badle", "humosh pupick", "vokastam wumosh", "badle katern dedevel",
        "firow golin", "hunostam", "tirow", "gonolin"})
    kind.questions.push_back({each, Way::words, each, "", "", "", "", "", {false, false, true}});
  return kind;
}

MixKind piece_and_words() {
  MixKind kind{"a piece or a fold, and words", false, {}};
  const char* const all[] = {"kaletern", "badle", "katern"};
  for (int i = 0; i < 9; ++i) {
    const Round& round = rounds[i % 4];
    const char* const each = all[i % 3];
    kind.questions.push_back(
        with_words(said_of(round) + " " + each, pieces, each, circles(round.shape, round.size)));
  }
  for (const char* each : all)
    kind.questions.push_back(
        with_words(std::string(each) + " easel", mentions, each, with_term("fold", easel.terms)));
  return kind;
}

// The second piece lies in the way of the first one's walk; the closer they both are, the better.
BareQuestion two(const Round& a, const Round& b) {
  const std::string walk = "SELECT a.sample_id AS id, " + off("a.width_nm", a.size) + " + " +
                           off("b.width_nm", b.size) +
                           " AS d FROM element a CROSS JOIN element b ON b.sample_id = a.sample_id AND "
                           "b.id <> a.id AND +b.shape = '" +
                           b.shape + "' AND " + near_to("+b.width_nm", b.size, within) +
                           " WHERE a.shape = '" + a.shape + "' AND " + near_to("a.width_nm", a.size, within);
  return rows(said_of(a) + " and a " + said_of(b), pieces, walk, "1");
}

MixKind two_pieces() {
  MixKind kind{"two pieces", false, {}};
  for (int i = 0; i < 7; ++i)
    for (int j = i + 1; j < 7 && kind.questions.size() < 12; ++j)
      if (rounds[i].size != rounds[j].size) kind.questions.push_back(two(rounds[i], rounds[j]));
  for (const int size : {38, 24, 52, 30}) {
    kind.questions.push_back(rows("two " + figure(size) + " in circles", pieces,
                                  "SELECT sample_id AS id, min(" + off("width_nm", size) +
                                      ") AS d FROM element WHERE shape = 'circle' AND " +
                                      near_to("width_nm", size, within) +
                                      " GROUP BY sample_id HAVING sum(count) >= 2",
                                  "1"));
  }
  return kind;
}

BareQuestion fold_question(const std::string& text, const Term& fold, const std::string& condition,
                           const std::string& by_date) {
  const std::string walk = with_term("fold", fold.terms);
  BareQuestion question = rows(text, mentions, walk, condition);
  walked_by_date(question, said("s.id", "fold", fold.terms) + " AND " + by_date, walk, condition);
  return question;
}

MixKind negation() {
  MixKind kind{"what must not be", false, {}};
  const Term occasions[] = {birthday, wedding, sympathy};
  for (const Term& fold : {easel, tent, z_fold})
    for (const Term& occasion : occasions) {
      const auto met = [&](const std::string& id) {
        return said(id, "occasion", occasion.terms) + " AND NOT " + said(id, "technique", speckling.terms);
      };
      kind.questions.push_back(
          fold_question(std::string(fold.said) + " " + occasion.said + " without speckling", fold,
                        met("s.id"), met("s.id")));
    }
  for (const Round& round : rounds)
    kind.questions.push_back(rows(said_of(round) + ", not an easel", pieces, circles(round.shape, round.size),
                                  "NOT " + said("c.id", "fold", easel.terms)));
  return kind;
}

MixKind either() {
  MixKind kind{"one or another", false, {}};
  const Term occasions[] = {birthday, wedding, sympathy, christmas};
  const Term both{"", "('easel', 'tent')"};
  for (const Term& occasion : occasions) {
    const std::string met = said("s.id", "occasion", occasion.terms);
    kind.questions.push_back(fold_question(std::string("easel or tent ") + occasion.said, both, met, met));
  }
  for (int i = 0; i < 5; ++i) {
    const Round& round = rounds[i];
    kind.questions.push_back(rows(said_of(round) + " birthday or wedding", pieces_and_mentions,
                                  circles(round.shape, round.size),
                                  said("c.id", "occasion", "('birthday', 'wedding')")));
  }
  for (const int size : {38, 24, 52, 30, 45})
    kind.questions.push_back(rows(figure(size) + " in circle or square", pieces,
                                  circles("circle", size) + " UNION ALL " + circles("square", size), "1"));
  return kind;
}

struct Dates {
  const char* said;
  const char* condition;  // on s.made
};

MixKind dates() {
  MixKind kind{"dates", false, {}};
  const Dates all[] = {{"in 2023", "BETWEEN '2023-01-01' AND '2023-12-31'"},
                       {"since March 2024", ">= '2024-03-01'"},
                       {"before 2017", "BETWEEN '0' AND '2016-12-31'"},
                       {"in June 2020", "BETWEEN '2020-06-01' AND '2020-06-30'"}};
  for (const Dates& date : all)
    for (const Term& occasion : {birthday, wedding, sympathy}) {
      const std::string made = std::string("s.made ") + date.condition;
      const std::string walk =
          std::string("SELECT id, 0 AS d FROM sample s INDEXED BY sample_made WHERE ") + made;
      BareQuestion question = rows(std::string(occasion.said) + " made " + date.said, mentions, walk,
                                   said("c.id", "occasion", occasion.terms));
      walked_by_date(question, made + " AND " + said("s.id", "occasion", occasion.terms), walk,
                     said_by_term("c.id", "occasion", occasion.terms));
      kind.questions.push_back(question);
    }
  for (const Dates& date : {all[0], all[1]})
    kind.questions.push_back(rows(said_of(rounds[0]) + " made " + date.said, pieces, circles("circle", 38),
                                  std::string("s.made ") + date.condition));
  return kind;
}

MixKind colours() {
  MixKind kind{"colours", false, {}};
  const char* const names[] = {"debahuner tone", "gobahulin tone", "hudehupick tone", "radehutern tone"};
  const auto of = [](const std::string& name, const std::string& use) {
    return "EXISTS (SELECT 1 FROM mention p INDEXED BY mention_of_element WHERE p.element_id = e.id AND "
           "p.kind IN " +
           use + " AND p.colour_id = (SELECT id FROM colour WHERE key = '" + name + "'))";
  };
  const std::string any_use = "('paper', 'ink')";
  for (const char* name : names)
    for (const Round& round : {rounds[0], rounds[2], rounds[5]}) {
      const std::string walk = "SELECT e.sample_id AS id, " + off("e.width_nm", round.size) +
                               " AS d FROM element e WHERE e.shape = '" + round.shape + "' AND " +
                               near_to("e.width_nm", round.size, within) + " AND " + of(name, "('paper')");
      kind.questions.push_back(
          rows(std::string(name) + " " + said_of(round), pieces_and_mentions, walk, "1"));
    }
  for (const char* name : {"debahuner tone", "hudehupick tone"}) {
    const std::string walk = std::string("SELECT p.sample_id AS id, 0 AS d FROM mention p WHERE p.kind IN ") +
                             any_use + " AND p.colour_id = (SELECT id FROM colour WHERE key = '" + name +
                             "')";
    BareQuestion question =
        rows(std::string(name) + " easel", mentions, walk, said("c.id", "fold", easel.terms));
    walked_by_date(
        question,
        said("s.id", "fold", easel.terms) +
            " AND EXISTS (SELECT 1 FROM mention p INDEXED BY mention_of_sample WHERE p.sample_id = "
            "s.id AND p.kind IN " +
            any_use + " AND p.colour_id = (SELECT id FROM colour WHERE key = '" + name + "'))",
        walk, said("c.id", "fold", easel.terms));
    kind.questions.push_back(question);
  }
  return kind;
}

MixKind dies() {
  MixKind kind{"dies", false, {}};
  for (const char* set : {"dekadener circles", "bakadedle rectangles"})
    for (int rank = 1; rank <= 6; ++rank) {
      const std::string walk =
          std::string(
              "SELECT sample_id AS id, 0 AS d FROM element WHERE die_id = (SELECT d.id FROM die d JOIN "
              "die_set t ON t.id = d.set_id WHERE t.key = '") +
          set + "' AND d.key = '" + number(rank) + "')";
      kind.questions.push_back(rows(std::string(set) + " " + number(rank), pieces, walk, "1"));
      if (rank > 1) continue;
      kind.questions.push_back(rows(
          std::string(set) + " 2 easel", pieces_and_mentions,
          std::string("SELECT sample_id AS id, 0 AS d FROM element WHERE die_id = (SELECT d.id FROM die d "
                      "JOIN die_set t ON t.id = d.set_id WHERE t.key = '") +
              set + "' AND d.key = '2')",
          said("c.id", "fold", easel.terms)));
    }
  return kind;
}

MixKind goes() {
  MixKind kind{"one piece on another", false, {}};
  for (const Round& round : rounds)
    for (const char* other : {"square", "oval"}) {
      if (std::string(other) == round.shape || kind.questions.size() == 10) continue;
      const std::string walk =
          "SELECT a.sample_id AS id, " + off("a.width_nm", round.size) +
          " AS d FROM element a WHERE a.shape = '" + round.shape + "' AND " +
          near_to("a.width_nm", round.size, within) +
          " AND (EXISTS (SELECT 1 FROM element b WHERE b.id = a.goes_to AND b.shape = '" + other +
          "' AND a.goes_how IN ('on', 'in')) OR EXISTS (SELECT 1 FROM element b WHERE b.goes_to = a.id AND "
          "b.goes_how = 'behind' AND b.shape = '" +
          other + "'))";
      kind.questions.push_back(
          rows("a " + said_of(round) + " on a" + (other[0] == 'o' ? "n " : " ") + other, pieces, walk, "1"));
    }
  return kind;
}

MixKind fold_and_occasion() {
  MixKind kind{"a fold and an occasion", false, {}};
  for (const Term& fold : {easel, tent, z_fold, stand_up})
    for (const Term& occasion : {birthday, wedding, sympathy, christmas}) {
      const std::string met = said("s.id", "occasion", occasion.terms);
      kind.questions.push_back(fold_question(std::string(occasion.said) + " " + fold.said, fold, met, met));
    }
  return kind;
}

MixKind technique_and_role() {
  MixKind kind{"a technique on a piece", false, {}};
  for (const Term& technique : {speckling, stencilling, dry_embossing})
    for (const char* shape : {"heart", "oval", "circle"}) {
      const std::string walk =
          std::string("SELECT e.sample_id AS id, 0 AS d FROM element e WHERE e.shape = '") + shape +
          "' AND " + done(technique.terms);
      BareQuestion question = rows(std::string(shape) + " with " + technique.said + " on a tent card",
                                   pieces_and_mentions, walk, said("c.id", "fold", tent.terms));
      walked_by_date(
          question,
          said("s.id", "fold", tent.terms) +
              " AND EXISTS (SELECT 1 FROM element e WHERE e.sample_id = s.id AND +e.shape = '" + shape +
              "' AND " + done(technique.terms) + ")",
          with_term("fold", tent.terms),
          std::string("EXISTS (SELECT 1 FROM element e WHERE e.sample_id = s.id AND +e.shape = '") + shape +
              "' AND " + done(technique.terms) + ")");
      kind.questions.push_back(question);
    }
  return kind;
}

// Asked besides the two hundred. The hits, and how many of all of them have each fold, occasion, technique,
// colour, year and closed size.
MixKind facets() {
  MixKind kind = piece_and_fold();
  kind.name = "the same with facets";
  kind.facets = true;
  kind.questions.resize(10);
  for (BareQuestion& question : kind.questions) {
    question.facets =
        "WITH hit AS MATERIALIZED (SELECT id, made FROM (" + question.hits +
        ")) SELECT m.kind, m.term, count(DISTINCT m.sample_id) FROM hit CROSS JOIN mention m INDEXED BY "
        "mention_of_sample ON m.sample_id = hit.id WHERE m.kind IN ('fold', 'technique', 'occasion') GROUP "
        "BY "
        "1, 2 UNION ALL SELECT 'colour', m.colour_id, count(DISTINCT m.sample_id) FROM hit CROSS JOIN "
        "mention m "
        "INDEXED BY mention_of_sample ON m.sample_id = hit.id WHERE m.kind IN ('paper', 'ink') GROUP BY 2 "
        "UNION "
        "ALL SELECT 'year', substr(made, 1, 4), count(*) FROM hit GROUP BY 2 UNION ALL SELECT 'closed', "
        "s.closed_width_nm || 'x' || s.closed_height_nm, count(*) FROM hit JOIN sample s ON s.id = hit.id "
        "GROUP "
        "BY 2";
  }
  return kind;
}

}  // namespace

std::vector<MixKind> question_mix() {
  return {piece_and_fold(),
          piece(),
          sizes(),
          words(),
          piece_and_words(),
          two_pieces(),
          negation(),
          either(),
          dates(),
          colours(),
          dies(),
          goes(),
          fold_and_occasion(),
          technique_and_role(),
          facets()};
}
