// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "cli/json_values.h"
#include "colour/value.h"
#include "text/utf8.h"

namespace insetbook::cli {
namespace {

Json matched_json(const Matched& matched) {
  Json json{{"text", matched.text}, {"element", matched.element}, {"why", matched.why}};
  json["marks"] = Json::array();
  for (const Span& mark : matched.marks) {
    const std::size_t at = characters_before(matched.why, mark.begin);
    json["marks"].push_back({{"at", at}, {"length", characters_before(matched.why, mark.end) - at}});
  }
  return json;
}

Json hit_json(const Hit& hit) {
  Json json{{"id", hit.uuid}, {"title", hit.title}, {"made", hit.made}};
  json["matched"] = Json::array();
  for (const Matched& matched : hit.matched) json["matched"].push_back(matched_json(matched));
  if (!hit.difference.empty()) json["difference"] = hit.difference;
  return json;
}

Json facets_json(const std::vector<Facet>& facets) {
  Json list = Json::array();
  for (const Facet& facet : facets) {
    Json values = Json::array();
    for (const FacetValue& value : facet.values)
      values.push_back({{"label", value.label}, {"count", value.count}, {"asks", value.asks}});
    list.push_back({{"name", facet.name}, {"values", std::move(values)}});
  }
  return list;
}

void add_hits(Json& json, const Hits& hits) {
  json["hits"] = Json::array();
  for (const Hit& hit : hits.hits) json["hits"].push_back(hit_json(hit));
  json[hits.total_is_exact ? "total" : "total_at_least"] = hits.total;
  if (hits.hits.empty()) {
    json["emptied_by"] = hits.emptied_by;
    json["nearest"] = Json::array();
    for (const Hit& hit : hits.nearest) json["nearest"].push_back(hit_json(hit));
  }
  json["suggest"] = Json::array();
  for (const Suggestion& suggestion : hits.suggest)
    json["suggest"].push_back({{"word", suggestion.word}, {"suggestion", suggestion.suggestion}});
  if (!hits.facets.empty()) json["facets"] = facets_json(hits.facets);
}

Json nearest_json(const NearestAnswer& answer) {
  Json colours = Json::array();
  for (const NearestColour& colour : answer.colours)
    colours.push_back({{"name", colour.name},
                       {"srgb", write_colour_value(colour.srgb)},
                       {"status", colour.status},
                       {"delta_e", colour.delta_e}});
  return {{"asked",
           {{"name", answer.name}, {"srgb", write_colour_value(answer.srgb)}, {"status", answer.status}}},
          {"colours", std::move(colours)},
          {"stand_ins", answer.stand_ins},
          {"without_value", answer.without_value}};
}

Json unmeasured_json(const UnmeasuredAnswer& answer) {
  Json dies = Json::array();
  for (const NotMeasured& die : answer.dies)
    dies.push_back({{"set", die.set}, {"die", die.die}, {"rank", die.rank}, {"lines", die.lines}});
  return {{"set", answer.set}, {"lines", answer.lines}, {"of", answer.all_lines}, {"dies", std::move(dies)}};
}

Json stored_json(const StoredAnswer& answer) {
  Json things = Json::array();
  for (const StoredThing& thing : answer.things)
    things.push_back({{"kind", thing.kind}, {"name", thing.name}, {"stored_in", thing.place}});
  return {{"things", std::move(things)}, {"more", answer.more}};
}

struct AnswerAdder {
  Json& json;
  void operator()(const Hits& hits) const { add_hits(json, hits); }
  void operator()(const FitsAnswer& answer) const { json["fits"] = fits_json(answer); }
  void operator()(const FramesAnswer& answer) const { json["frames"] = frames_json(answer); }
  void operator()(const PairsAnswer& answer) const { json["pairs"] = pairs_json(answer); }
  void operator()(const MeasureAnswer& answer) const { json["measure"] = measure_json(answer); }
  void operator()(const ShowAnswer& answer) const { json["show"] = show_json(answer); }
  void operator()(const UnmeasuredAnswer& answer) const { json["unmeasured"] = unmeasured_json(answer); }
  void operator()(const StoredAnswer& answer) const { json["kept"] = stored_json(answer); }
  void operator()(const NearestAnswer& answer) const { json["nearest"] = nearest_json(answer); }
  void operator()(const ConvertedTo& answer) const { json["convert"] = convert_json(answer.converted); }
  void operator()(const DiesAnswer& answer) const { json["dies"] = dies_json(answer); }
  void operator()(const TriedThereAnswer& answer) const { json["tried"] = tried_there_json(answer); }
  void operator()(const PiecesAnswer& answer) const { json["pieces"] = pieces_json(answer); }
};

void add_reading(Json& json, const FindAnswer& answer) {
  json["understood"] = Json::array();
  for (const Understood& part : answer.understood)
    json["understood"].push_back({{"text", part.text}, {"means", part.means}});
  json["ignored"] = Json::array();
  for (const Ignored& word : answer.ignored) json["ignored"].push_back(word.word);
  json["other_readings"] = Json::array();
  for (const OtherReading& other : answer.other_readings)
    json["other_readings"].push_back({{"text", other.text}, {"taken", other.taken}, {"other", other.other}});
  json["notes"] = answer.notes;
}

}  // namespace

std::string answer_json(const NearestAnswer& answer) {
  return dumped(nearest_json(answer));
}

std::string answer_json(const FindAnswer& answer) {
  Json json;
  if (!answer.problems.empty()) {
    json["error"] = problem_object(answer.problems.front());
    json["problems"] = Json::array();
    for (const Problem& problem : answer.problems) json["problems"].push_back(problem_object(problem));
    add_reading(json, answer);
    return dumped(json);
  }
  add_reading(json, answer);
  json["as_fields"] = answer.as_fields;
  if (!answer.explained.empty()) json["explained"] = answer.explained;
  std::visit(AnswerAdder{json}, answer.answer);
  return dumped(json);
}

}  // namespace insetbook::cli
