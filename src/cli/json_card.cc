// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/base.h"
#include "answers/check.h"
#include "answers/copy.h"
#include "answers/layers.h"
#include "answers/resize.h"
#include "cli/json_values.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

Json problems_json(const CheckAnswer& answer, const std::vector<CardProblem>& problems) {
  Json list = Json::array();
  for (const CardProblem& problem : problems) {
    const std::string element =
        problem.piece < 0 ? "" : answer.card.pieces[static_cast<std::size_t>(problem.piece)].name;
    list.push_back(
        {{"code", problem.code}, {"element", element}, {"why", problem.why}, {"mend", problem.mend}});
  }
  return list;
}

Json post_json(const PostAnswer& service) {
  std::string source;
  for (const std::string& one : service.sources) source += (source.empty() ? "" : "; ") + one;
  return {{"service", service.service}, {"country", service.country}, {"format", service.format},
          {"verdict", service.verdict}, {"why", service.why},         {"not_checked", service.not_checked},
          {"also", service.also},       {"source", source},           {"advice", post_advice}};
}

Json pieces_json(const CheckAnswer& answer) {
  Json list = Json::array();
  for (std::size_t i = 0; i < answer.checked.seats.size(); ++i) {
    if (!answer.checked.seats[i]) continue;
    const SeatedPiece& seat = *answer.checked.seats[i];
    Json one{{"element", answer.card.pieces[i].name},
             {"section", answer.card.folded->sections[static_cast<std::size_t>(seat.face.section)].number},
             {"left_nm", seat.on_face.left.nm()},
             {"top_nm", seat.on_face.top.nm()},
             {"width_nm", seat.on_face.width.nm()},
             {"height_nm", seat.on_face.height.nm()},
             {"place", seat.figures}};
    if (seat.around) one["around_nm"] = seat.around->nm();
    list.push_back(std::move(one));
  }
  return list;
}

Json check_json(const CheckAnswer& answer) {
  Json json{{"sample", answer.card.row.title}};
  if (answer.closed_width)
    json["closed"] = {{"width_nm", answer.closed_width->nm()}, {"height_nm", answer.closed_height->nm()}};
  json["stands"] = {{"answer", std::string(stands_word(answer.stands))}, {"why", answer.stands_why}};
  json["thickness_nm"] = answer.thickness.nm();
  json["mass_g"] = static_cast<double>((answer.with_envelope_mg + 50) / 100) / 10;
  json["card_mass_g"] = static_cast<double>((answer.card_mg + 50) / 100) / 10;
  if (answer.envelope) {
    json["envelope"] = {{"name", answer.envelope->name},
                        {"fits", answer.envelope->fits},
                        {"slack_nm", answer.envelope->slack.nm()},
                        {"recorded", answer.envelope->recorded},
                        {"source", answer.envelope->source}};
  }
  json["post"] = Json::array();
  for (const PostAnswer& service : answer.post) json["post"].push_back(post_json(service));
  json["problems"] = problems_json(answer, answer.checked.problems);
  json["meant"] = problems_json(answer, answer.checked.meant);
  json["not_checked"] = answer.checked.not_checked;
  json["pieces"] = pieces_json(answer);
  json["typical"] = answer.typical;
  json["notes"] = answer.said;
  return json;
}

}  // namespace

std::string answer_json(const CheckAnswer& answer) {
  return dumped(check_json(answer));
}

std::string answer_json(const BaseAnswer& answer) {
  Json json{{"fold", answer.fold},
            {"cut", {{"width_nm", answer.base.width.nm()}, {"height_nm", answer.base.height.nm()}}},
            {"size", write_size(answer.base.width, answer.base.height, answer.unit)},
            {"closed", {{"width_nm", answer.folded.width.nm()}, {"height_nm", answer.folded.height.nm()}}}};
  json["scores"] = Json::array();
  for (const SheetCrease& crease : answer.base.creases) {
    json["scores"].push_back({{"at_nm", crease.at.nm()},
                              {"at", write(crease.at, answer.unit)},
                              {"from", crease.upright ? "left" : "top"},
                              {"folds", crease.mountain ? "mountain" : "valley"}});
  }
  json["sections"] = Json::array();
  for (const BaseSection& one : answer.folded.sections) {
    json["sections"].push_back({{"number", one.number},
                                {"width_nm", one.width.nm()},
                                {"height_nm", one.height.nm()},
                                {"layer", one.layer + 1},
                                {"shows", one.inside_to_front() ? "inside" : "outer"},
                                {"spine", one.spine}});
  }
  json["papers"] = Json::array();
  for (const BaseFromPaper& paper : answer.papers)
    json["papers"].push_back({{"paper", paper.paper}, {"count", paper.count}});
  json["off_marks"] = Json::array();
  for (const OffTheMark& off : answer.off_marks)
    json["off_marks"].push_back({{"at_nm", off.at.nm()}, {"nearest_nm", off.nearest.nm()}});
  json["grain"] = answer.grain;
  json["notes"] = answer.notes;
  return dumped(json);
}

std::string answer_json(const LayersAnswer& answer) {
  Json json{{"opening", answer.opening}, {"shape", answer.shape}, {"layers", Json::array()}};
  for (const LayerShown& layer : answer.layers) {
    json["layers"].push_back({{"role", layer.role},
                              {"width_nm", layer.size.width.nm()},
                              {"height_nm", layer.size.height.nm()},
                              {"size", write_size(layer.size.width, layer.size.height, answer.unit)},
                              {"border_nm", layer.size.border.nm()},
                              {"dies", layer.dies}});
  }
  return dumped(json);
}

std::string answer_json(const CopyAnswer& answer) {
  Json json{{"sample", answer.title},
            {"based_on", answer.from},
            {"differences", Json::array()},
            {"notes", answer.notes}};
  for (const CopyDifference& one : answer.differences)
    json["differences"].push_back(
        {{"what", one.what}, {"was", one.was}, {"is", one.is}, {"elements", one.pieces}});
  return dumped(json);
}

std::string answer_json(const ResizeAnswer& answer) {
  Json json{{"sample", answer.sample},
            {"base", {{"width_nm", answer.base.width.nm()}, {"height_nm", answer.base.height.nm()}}},
            {"closed", {{"width_nm", answer.folded.width.nm()}, {"height_nm", answer.folded.height.nm()}}},
            {"elements", Json::array()},
            {"problems", Json::array()}};
  for (const ResizedPiece& piece : answer.pieces) {
    if (piece.name.empty()) continue;
    Json one{{"element", piece.name}};
    if (piece.was_width && piece.was_height) {
      one["was_width_nm"] = piece.was_width->nm();
      one["was_height_nm"] = piece.was_height->nm();
    }
    if (piece.width && piece.height) {
      one["width_nm"] = piece.width->nm();
      one["height_nm"] = piece.height->nm();
      one["size"] = write_size(*piece.width, *piece.height, answer.unit);
    }
    one["too_large"] = piece.too_large;
    one["die"] = piece.die;
    one["nearest_die"] = piece.nearest_die;
    json["elements"].push_back(std::move(one));
  }
  for (const CardProblem& problem : answer.checked.problems)
    json["problems"].push_back(
        {{"code", problem.code},
         {"element", problem.piece < 0 ? "" : answer.pieces[static_cast<std::size_t>(problem.piece)].name},
         {"why", problem.why},
         {"mend", problem.mend}});
  return dumped(json);
}

}  // namespace insetbook::cli
