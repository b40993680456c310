// SPDX-License-Identifier: GPL-3.0-or-later
//
// The mix: what a person asks, and the calls that answer it. The names and words are those of make_tables.cc.
// Ways into the tables were chosen by trying them on 100 000 samples.
#include "bare.h"

namespace {

using Way = BareQuestion::Way;

// A term of the vocabularies with its narrower ones.
const std::string stand_up =
    "('stand-up fold', 'easel', 'side easel', 'twisted easel', 'diagonal easel', 'double easel', "
    "'triple easel', 'circle easel', 'shaped easel', 'gatefold easel', 'easel box', 'z fold', "
    "'double z fold', 'level z fold', 'reverse z fold', 'gated z fold', 'fancy z fold', 'split z fold', "
    "'shaped z fold', 'accordion', 'accordion with panels', 'fan fold', 'panorama', 'tunnel', 'diorama', "
    "'tent', 'a-frame', 'triangle stand', 'step', 'side step', 'centre step', 'double step', 'cascade', "
    "'shutter', 'double shutter', 'bridge', 'double bridge', 'pop-up bridge', 'arch fold', "
    "'box in a card', 'cube', 'shadow box card', 'lantern', 'carousel', 'four-panel display', 'w fold', "
    "'m fold', 'x stand', 'corner pop-up stand', 'swing stand', 'desk calendar stand')";
const std::string easel =
    "('easel', 'side easel', 'twisted easel', 'diagonal easel', 'double easel', 'triple easel', "
    "'circle easel', 'shaped easel', 'gatefold easel', 'easel box')";
const std::string birthday =
    "('birthday', 'child''s birthday', 'milestone birthday', 'belated birthday', 'first birthday')";
const std::string wedding = "('wedding', 'bridal shower')";
const std::string heat_embossing = "('heat embossing', 'emboss resist', 'thick embossing enamel')";
const std::string rectangle = "('rectangle', 'long rectangle')";

// That something is said of the sample `id`, or of any piece of it: a look for each of a few terms, or at all
// that is said of the sample where the terms are many.
std::string said(const std::string& id, const std::string& kind, const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_term WHERE m.sample_id = " + id +
         " AND m.kind = '" + kind + "' AND m.term IN " + terms + ")";
}
std::string said_one_of_many(const std::string& id, const std::string& kind, const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_of_sample WHERE m.sample_id = " + id +
         " AND m.kind = '" + kind + "' AND m.term IN " + terms + ")";
}
// That the piece `e` has the technique.
std::string done(const std::string& terms) {
  return "EXISTS (SELECT 1 FROM mention m INDEXED BY mention_term WHERE m.sample_id = e.sample_id AND "
         "m.element_id = e.id "
         "AND m.kind = 'technique' AND m.term IN " +
         terms + ")";
}
// The hits of a walk that gives ids (each once or more) and how far their sizes are: the closest, then the
// newest.
std::string ordered(const std::string& walk, const std::string& condition) {
  return "SELECT s.id, s.title, s.made FROM (" + walk + ") c CROSS JOIN sample s ON s.id = c.id WHERE " +
         condition + " GROUP BY s.id ORDER BY min(c.d), s.made DESC, s.key";
}

// 2-3/8 in and 1/32 in either way.
const std::string circle_2_3_8 =
    "SELECT sample_id AS id, abs(width_nm - 60325000) AS d FROM element WHERE shape = 'circle' "
    "AND width_nm BETWEEN 59531250 AND 61118750";
// 2-1/2 x 3 in and 1/8 in either way, both ways round.
const std::string rectangle_about =
    "SELECT e.sample_id AS id, max(abs(e.width_nm - 63500000), abs(e.height_nm - 76200000)) AS d "
    "FROM element e WHERE e.shape IN " +
    rectangle +
    " AND e.width_nm BETWEEN 60325000 AND 66675000 AND e.height_nm BETWEEN 73025000 AND 79375000 "
    "UNION ALL "
    "SELECT e.sample_id, max(abs(e.width_nm - 76200000), abs(e.height_nm - 63500000)) "
    "FROM element e WHERE e.shape IN " +
    rectangle + " AND e.width_nm BETWEEN 73025000 AND 79375000 AND e.height_nm BETWEEN 60325000 AND 66675000";

using Quoted = BareQuestion::Quoted;
constexpr Quoted pieces{true, false, false}, mentions{false, true, false},
    pieces_and_mentions{true, true, false};

BareQuestion rows(const std::string& text, Quoted quoted, const std::string& hits) {
  return {text, Way::rows, "", hits, "", "", "", "", quoted};
}
BareQuestion words(const std::string& text) {
  return {text, Way::words, text, "", "", "", "", "", {false, false, true}};
}
BareQuestion with_words(const std::string& text, Quoted quoted, const std::string& words,
                        const std::string& hits) {
  quoted.text = true;
  return {text, Way::rows_then_words, words, hits, "", "", "", "", quoted};
}

const std::vector<BareQuestion>& questions() {
  static const std::vector<BareQuestion> all = {
      rows("designs using a 2-3/8 in circle with a stand-up fold", pieces_and_mentions,
           ordered(circle_2_3_8, said_one_of_many("c.id", "fold", stand_up))),
      rows("2-3/8 in circle", pieces, ordered(circle_2_3_8, "1")),
      rows("about 2-1/2 x 3 in rectangle", pieces, ordered(rectangle_about, "1")),
      rows("wedding easel", mentions,
           "SELECT s.id, s.title, s.made FROM mention f CROSS JOIN sample s ON s.id = f.sample_id "
           "WHERE f.kind = 'fold' AND f.term IN " +
               easel + " AND " + said("f.sample_id", "occasion", wedding) +
               " GROUP BY s.id ORDER BY s.made DESC, s.key"),
      rows("easel birthday without speckling", mentions,
           "SELECT s.id, s.title, s.made FROM mention f CROSS JOIN sample s ON s.id = f.sample_id "
           "WHERE f.kind = 'fold' AND f.term IN " +
               easel + " AND " + said("f.sample_id", "occasion", birthday) + " AND NOT " +
               said("f.sample_id", "technique", "('speckling')") +
               " GROUP BY s.id ORDER BY s.made DESC, s.key"),
      rows("debahuner tone circle under 2 in", pieces_and_mentions,
           "SELECT s.id, s.title, s.made FROM mention p CROSS JOIN element e ON e.id = p.element_id "
           "CROSS JOIN sample s ON s.id = e.sample_id "
           "WHERE p.colour_id = (SELECT id FROM colour WHERE key = 'debahuner tone') AND p.kind IN ('paper', "
           "'ink') "
           "AND +e.shape = 'circle' AND +e.width_nm < 50800000 AND +e.height_nm < 50800000 "
           "GROUP BY s.id ORDER BY s.made DESC, s.key"),
      rows("heat embossed rectangle over 3 in on a tent card", pieces_and_mentions,
           "SELECT s.id, s.title, s.made FROM mention f CROSS JOIN element e ON e.sample_id = f.sample_id "
           "CROSS JOIN sample s ON s.id = f.sample_id "
           "WHERE f.kind = 'fold' AND f.term = 'tent' AND +e.shape IN " +
               rectangle + " AND +e.width_nm > 76200000 AND +e.height_nm > 76200000 AND " +
               done(heat_embossing) + " GROUP BY s.id ORDER BY s.made DESC, s.key"),
      rows("dekadener circles 3", pieces,
           "SELECT s.id, s.title, s.made FROM element e CROSS JOIN sample s ON s.id = e.sample_id "
           "WHERE e.die_id = (SELECT d.id FROM die d JOIN die_set t ON t.id = d.set_id "
           "WHERE t.key = 'dekadener circles' AND d.key = '3') GROUP BY s.id ORDER BY s.made DESC, s.key"),
      words("kaletern"),
      words("badle"),
      words("katern legoner"),
      with_words(
          "2-3/8 in circle kaletern", pieces, "kaletern",
          "SELECT DISTINCT sample_id FROM element WHERE shape = 'circle' AND width_nm BETWEEN 59531250 AND "
          "61118750 ORDER BY sample_id"),
      with_words("kaletern easel", mentions, "kaletern",
                 "SELECT DISTINCT sample_id FROM mention WHERE kind = 'fold' AND term IN " + easel +
                     " ORDER BY sample_id"),
      with_words(
          "2-3/8 in circle badle", pieces, "badle",
          "SELECT DISTINCT sample_id FROM element WHERE shape = 'circle' AND width_nm BETWEEN 59531250 AND "
          "61118750 ORDER BY sample_id"),
  };
  return all;
}

}  // namespace

std::span<const BareQuestion> bare_questions() {
  return questions();
}
