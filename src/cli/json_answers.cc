// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/json_answers.h"

#include <fmt/format.h>

#include "answers/fits_panel.h"
#include "answers/sizes_shown.h"
#include "cli/json_values.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

Json measured_json(const Measured& measured) {
  Json json{{"standing", measured.standing},
            {"width_nm", measured.width.nm()},
            {"height_nm", measured.height.nm()},
            {"size", write_size(measured.width, measured.height, measured.unit)},
            {"method", measured.method},
            {"give_or_take_nm", measured.give_or_take.nm()}};
  json["read_to_nm"] = measured.mark ? Json(measured.mark->nm()) : Json();
  json["measured"] = measured.date;
  json["note"] = measured.note;
  return json;
}

Json opening_json(const OpeningRecord& opening) {
  Json json{{"set", opening.set},
            {"die", opening.die},
            {"rank", opening.rank},
            {"line", opening.line},
            {"shape", opening.shape_word}};
  json["width_nm"] = opening.measured ? Json(opening.width.nm()) : Json();
  json["height_nm"] = opening.measured ? Json(opening.height.nm()) : Json();
  if (opening.measured) json["size"] = write_size(opening.width, opening.height, opening.unit);
  json["measured"] = opening.measured;
  json["give_or_take_nm"] = opening.give_or_take.nm();
  if (!opening.read_as.empty()) json["read_as"] = opening.read_as;
  return json;
}

Json panel_json(const FittingPanel& panel) {
  Json json{{"status", panel_status_word(panel.status)}};
  if (panel.kind) json["kind"] = panel_kind_word(*panel.kind);
  json["shape"] = panel.shape;
  json["width_nm"] = panel.width.nm();
  json["height_nm"] = panel.height.nm();
  json["size"] =
      panel.one_figure ? write(panel.width, panel.unit) : write_size(panel.width, panel.height, panel.unit);
  json["border_nm"] = panel.border_known ? Json(panel.border.nm()) : Json(0);
  json["border_known"] = panel.border_known;
  json["verdict"] = panel.verdict;
  json["evidence"] = panel.evidence;
  if (!panel.note.empty()) json["note"] = panel.note;
  if (panel.status != PanelStatus::tried) {
    json["left_nm"] = panel.left.nm();
    json["top_nm"] = panel.top.nm();
    json["centred"] = panel.centred;
    if (!panel.touches.empty()) json["touches"] = panel.touches;
  }
  return json;
}

Json panel_asked_json(const FitsAnswer& answer) {
  const PanelAsked& asked = *answer.panel_asked;
  Json json{
      {"panel", describe(asked.panel, asked.unit)}, {"of", asked.of}, {"answer", panel_sentence(answer)}};
  json["verdict"] = asked.computed ? Json(verdict_word(asked.verdict)) : Json();
  json["border_nm"] = asked.framing ? Json(asked.framing->greatest_border.nm()) : Json();
  return json;
}

Json tried_json(const TriedPanel& tried) {
  Json json{{"shape", tried.shape},
            {"width_nm", tried.width.nm()},
            {"height_nm", tried.height.nm()},
            {"size", write_size(tried.width, tried.height, tried.unit)},
            {"result", tried.result},
            {"date", tried.date},
            {"note", tried.note}};
  if (!tried.sample.empty()) json["sample"] = tried.sample;
  if (!tried.element.empty()) json["element"] = tried.element;
  return json;
}

std::string_view measure_result_word(MeasureResult result) {
  switch (result) {
    case MeasureResult::added:
      return "added";
    case MeasureResult::confirmed:
    case MeasureResult::same:  // the same measurement again confirms what is known
      return "confirmed";
    case MeasureResult::conflict:
      return "conflict";
  }
  return "";
}

Json die_json(const ShownDie& die) {
  Json lines = Json::array();
  for (const ShownLine& line : die.lines) {
    Json json = opening_json(line.opening);
    json["figures"] = line.opening.figures;
    json["measurements"] = Json::array();
    for (const Measured& measured : line.measurements)
      json["measurements"].push_back(measured_json(measured));
    json["tried"] = Json::array();
    for (const TriedPanel& tried : line.tried) json["tried"].push_back(tried_json(tried));
    lines.push_back(std::move(json));
  }
  return {{"set", die.set},
          {"die", die.label},
          {"rank", die.rank},
          {"lines", std::move(lines)},
          {"samples", die.samples}};
}

Json size_json(const SizeOnRecord& size) {
  if (!size.width) return size.text.empty() ? Json() : Json{{"text", size.text}};
  const Length height = size.height.value_or(*size.width);
  return {{"width_nm", size.width->nm()},
          {"height_nm", height.nm()},
          {"size", write_size(*size.width, height, size.unit)},
          {"text", size.text}};
}

Json mentions_json(const std::vector<Mention>& mentions) {
  Json list = Json::array();
  for (const Mention& mention : mentions) {
    Json json{{"kind", mention.kind}, {"written", mention.written}};
    if (mention.term) json["term"] = *mention.term;
    list.push_back(std::move(json));
  }
  return list;
}

Json element_json(const ShownElement& element) {
  const ElementRow& row = element.row;
  return {{"element", row.name},
          {"role", row.role},
          {"side", row.side},
          {"shape", row.shape},
          {"size", size_json(row.size)},
          {"cut_by", element.cut_by},
          {"lies_in", element.lies_in},
          {"goes", row.goes},
          {"at", row.at},
          {"glue", row.glue},
          {"count", row.count},
          {"mentions", mentions_json(row.mentions)},
          {"note", row.note}};
}

Json shown_json(const ShownSet& set) {
  Json dies = Json::array();
  for (const ShownDie& die : set.dies) dies.push_back(die_json(die));
  return {{"kind", "set"},           {"maker", set.maker},
          {"code", set.code},        {"stored_in", set.stored_in},
          {"status", set.status},    {"note", set.note},
          {"dies", std::move(dies)}, {"samples_using", set.samples}};
}

Json shown_json(const ShownDie& die) {
  Json json{{"kind", "die"}};
  json.update(die_json(die));
  return json;
}

Json shown_json(const ShownSupply& supply) {
  const SupplyRow& row = supply.row;
  Json json{{"kind", "supply"},          {"supply_kind", row.kind},    {"set", row.set_name},
            {"words", row.words},        {"colour", row.colour},       {"size", size_json(row.size)},
            {"weight", row.weight_text}, {"from", row.from_date},      {"until", row.until_date},
            {"status", row.status},      {"have", row.have},           {"cut_by", row.cut_by},
            {"instead", row.instead},    {"stored_in", row.stored_in}, {"price", row.price},
            {"note", row.note},          {"samples", supply.samples}};
  if (row.thickness) json["thickness_nm"] = row.thickness->nm();
  return json;
}

Json shown_json(const ShownColour& colour) {
  Json json{
      {"kind", "colour"}, {"supplies", colour.supplies}, {"samples", colour.samples}, {"note", colour.note}};
  json["srgb"] = colour.srgb ? Json(fmt::format("#{:06x}", *colour.srgb)) : Json();
  return json;
}

Json shown_json(const ShownSample& sample) {
  const SampleRow& row = sample.row;
  Json json{{"kind", "sample"},
            {"made", row.made},
            {"base", size_json(row.base)},
            {"scores", row.scores},
            {"finished", row.finished_text},
            {"words", row.words},
            {"envelope", row.envelope},
            {"steps", row.steps},
            {"based_on", row.based_on},
            {"note", row.note},
            {"mentions", mentions_json(row.mentions)}};
  if (row.closed_width && row.closed_height)
    json["closed"] = {{"width_nm", row.closed_width->nm()},
                      {"height_nm", row.closed_height->nm()},
                      {"size", write_size(*row.closed_width, *row.closed_height, row.closed_unit)}};
  json["elements"] = Json::array();
  for (const ShownElement& element : sample.elements) json["elements"].push_back(element_json(element));
  json["photos"] = Json::array();
  for (const PhotoOnRecord& photo : row.photos) json["photos"].push_back(photo.file_name);
  return json;
}

}  // namespace

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json fits_json(const FitsAnswer& answer) {
  Json json{{"opening", opening_json(answer.opening)},
            {"border_from", border_from_word(answer.border_from)},
            {"border_nm", answer.border.nm()},
            {"border", write(answer.border, answer.unit)},
            {"habit_of", answer.habit_of},
            {"cutting_step_nm", answer.cutting_step.nm()}};
  if (answer.invented) json["invented"] = true;
  if (!answer.note.empty()) json["note"] = answer.note;
  if (answer.estimated)
    json["estimated"] = {{"width_nm", answer.estimated->width.nm()},
                         {"height_nm", answer.estimated->height.nm()},
                         {"spread_nm", answer.estimated->spread.nm()}};
  if (answer.panel_asked) json["panel_asked"] = panel_asked_json(answer);
  json["panels"] = Json::array();
  for (const FittingPanel& panel : answer.panels) json["panels"].push_back(panel_json(panel));
  if (answer.behind)
    json["behind"] = {
        {"shape", answer.behind->shape},
        {"width_nm", answer.behind->width.nm()},
        {"height_nm", answer.behind->height.nm()},
        {"overlap_nm", answer.behind->overlap.nm()},
        {"size", shaped_size_text(answer.behind->shape, mark_above(answer.behind->width, answer.unit),
                                  mark_above(answer.behind->height, answer.unit), answer.unit)}};
  json["other_lines"] = answer.other_lines;
  json["also"] = answer.also;
  json["other_tried"] = answer.other_tried;
  json["warnings"] = answer.warnings;
  if (!answer.not_computed.empty()) json["not_computed"] = answer.not_computed;
  return json;
}

Json frames_json(const FramesAnswer& answer) {
  Json json{{"panel", describe(answer.panel, answer.unit)}, {"border_nm", answer.border.nm()}};
  if (!answer.panel_of.empty()) json["panel_of"] = answer.panel_of;
  if (!answer.note.empty()) json["note"] = answer.note;
  json["total"] = answer.total;
  if (!answer.opening_shape.empty()) {
    json["opening_shape"] = answer.opening_shape;
    json["other_shapes"] = answer.other_shapes;
  }
  json["openings"] = Json::array();
  for (const FramingOpening& found : answer.openings) {
    Json opening = opening_json(found.opening);
    opening["border_nm"] = {{"left", found.framing.left.nm()},
                            {"right", found.framing.right.nm()},
                            {"top", found.framing.top.nm()},
                            {"bottom", found.framing.bottom.nm()}};
    opening["greatest_border_nm"] = found.framing.greatest_border.nm();
    opening["even"] = found.framing.even;
    opening["turned"] = found.framing.turned;
    if (!found.tried.empty()) opening["tried"] = found.tried;
    opening["verdict"] = verdict_word(found.framing.verdict);
    json["openings"].push_back(std::move(opening));
  }
  json["not_computed"] = answer.not_computed;
  return json;
}

Json pairs_json(const PairsAnswer& answer) {
  const auto listed = [](const std::vector<DiePair>& pairs) {
    Json list = Json::array();
    for (const DiePair& pair : pairs)
      list.push_back({{"outer", opening_json(pair.outer)},
                      {"inner", opening_json(pair.inner)},
                      {"least_nm", pair.least.nm()},
                      {"greatest_nm", pair.greatest.nm()},
                      {"give_or_take_nm", pair.give_or_take.nm()},
                      {"even", pair.even},
                      {"turned", pair.turned}});
    return list;
  };
  Json json = Json::object();
  if (answer.border) json["border_nm"] = answer.border->nm();
  if (answer.opening) {
    json["opening"] = opening_json(*answer.opening);
    if (answer.cut_edge) json["cut_edge"] = opening_json(*answer.cut_edge);
    if (!answer.note.empty()) json["note"] = answer.note;
    json["around"] = listed(answer.around);
    json["in"] = listed(answer.in);
  } else {
    json["pairs"] = listed(answer.any);
  }
  json["not_computed"] = answer.not_computed;
  return json;
}

Json dies_json(const DiesAnswer& answer) {
  const auto listed = [](const std::vector<DieOfSize>& dies) {
    Json list = Json::array();
    for (const DieOfSize& die : dies) {
      Json json = opening_json(die.opening);
      json["difference"] = die.difference;
      list.push_back(std::move(json));
    }
    return list;
  };
  Json json{{"size", answer.size},
            {"in", answer.in_set},
            {"dies", listed(answer.dies)},
            {"total", answer.total},
            {"nearest", listed(answer.nearest)}};
  json["estimated"] = Json::array();
  for (const EstimatedDie& die : answer.estimated) {
    Json one = opening_json(die.opening);
    one["estimated"] = {{"width_nm", die.estimate.width.nm()},
                        {"height_nm", die.estimate.height.nm()},
                        {"spread_nm", die.estimate.spread.nm()}};
    json["estimated"].push_back(std::move(one));
  }
  return json;
}

Json tried_there_json(const TriedThereAnswer& answer) {
  Json json{{"opening", answer.opening}, {"result", answer.result}, {"total", answer.total}};
  json["tried"] = Json::array();
  for (const TriedThere& there : answer.tried) {
    Json one = tried_json(there.tried);
    one["opening"] = opening_json(there.opening);
    json["tried"].push_back(std::move(one));
  }
  return json;
}

Json pieces_json(const PiecesAnswer& answer) {
  Json json{{"sample", answer.sample}, {"piece", answer.piece}, {"all", answer.all}};
  json["elements"] = Json::array();
  for (const ShownElement& element : answer.pieces) json["elements"].push_back(element_json(element));
  return json;
}

Json problem_object(const Problem& problem) {
  Json where;
  if (!problem.where.file.empty()) where["file"] = problem.where.file;
  if (problem.where.row > 0) where["row"] = problem.where.row;
  if (!problem.where.column.empty()) where["column"] = problem.where.column;
  if (!problem.where.text.empty()) where["text"] = problem.where.text;
  if (problem.where.at) where["at"] = *problem.where.at;
  Json error{
      {"what", problem.what}, {"where", where.is_null() ? Json("") : where}, {"expected", problem.expected}};
  if (!problem.candidates.empty()) {
    error["candidates"] = problem.candidates;
    if (problem.expected.empty())
      error["expected"] = fmt::format("one of: {}", fmt::join(problem.candidates, "; "));
  }
  return error;
}

std::string problem_json(const Problem& problem) {
  return dumped({{"error", problem_object(problem)}});
}

std::string plain_json(std::initializer_list<std::pair<std::string_view, PlainValue>> fields) {
  Json json = Json::object();
  for (const auto& [name, value] : fields)
    std::visit([&, key = std::string(name)](const auto& v) { json[key] = v; }, value);
  return dumped(json);
}

std::string rows_json(std::string_view name, const std::vector<std::string>& columns,
                      const std::vector<std::vector<std::string>>& rows) {
  Json list = Json::array();
  for (const auto& row : rows) {
    Json json = Json::object();
    for (std::size_t i = 0; i < columns.size() && i < row.size(); ++i) json[columns[i]] = row[i];
    list.push_back(std::move(json));
  }
  return dumped({{std::string(name), std::move(list)}});
}

std::string answer_json(const FitsAnswer& answer) {
  return dumped(fits_json(answer));
}

std::string answer_json(const FramesAnswer& answer) {
  return dumped(frames_json(answer));
}

std::string answer_json(const PairsAnswer& answer) {
  return dumped(pairs_json(answer));
}

Json measure_json(const MeasureAnswer& answer) {
  Json json;
  Json lines = Json::array();
  Json known = Json::array();
  std::string_view worst = answer.recorded ? "confirmed" : "known";
  for (const LineMeasured& line : answer.lines) {
    Json one{{"opening", opening_json(line.opening)}};
    if (answer.recorded) {
      const std::string_view result = measure_result_word(line.outcome.result);
      one["result"] = result;
      if (result == "conflict" || (result == "added" && worst != "conflict")) worst = result;
    }
    if (!line.warnings.empty()) one["warnings"] = line.warnings;
    one["known"] = Json::array();
    for (const Measured& measured : line.outcome.known) {
      one["known"].push_back(measured_json(measured));
      known.push_back(measured_json(measured));
    }
    one["used_by"] = line.outcome.used_by;
    lines.push_back(std::move(one));
  }
  if (answer.recorded) json["result"] = worst;
  json["known"] = std::move(known);
  json["lines"] = std::move(lines);
  return json;
}

std::string answer_json(const MeasureAnswer& answer) {
  return dumped(measure_json(answer));
}

std::string answer_json(const TriedAnswer& answer) {
  return dumped({{"opening", opening_json(answer.opening)},
                 {"tried", tried_json(answer.tried)},
                 {"same", answer.same}});
}

Json show_json(const ShowAnswer& answer) {
  Json json{{"name", answer.name}, {"id", answer.uuid}};
  if (!answer.instead_of.empty()) json["instead_of"] = answer.instead_of;
  json.update(std::visit([](const auto& shown) { return shown_json(shown); }, answer.shown));
  return json;
}

std::string answer_json(const ShowAnswer& answer) {
  return dumped(show_json(answer));
}

std::string answer_json(const RecordAnswer& answer) {
  Json sample{{"title", answer.sample.title}};
  sample.update(shown_json(ShownSample{answer.sample, {}}));
  for (const char* of_a_kept_one : {"kind", "elements", "photos"}) sample.erase(of_a_kept_one);
  Json json{{"kept", answer.kept}, {"same", answer.same}, {"sample", std::move(sample)}};
  json["pieces"] = Json::array();
  for (const RecordedPiece& piece : answer.pieces) {
    Json one{{"line", piece.line}};
    one.update(element_json(piece.shown));
    one["goes_to"] = piece.goes_to;
    json["pieces"].push_back(std::move(one));
  }
  json["notes"] = answer.notes;
  json["not_read"] = Json::array();
  for (const Problem& problem : answer.not_read) {
    Json one{{"line", problem.where.row}, {"text", problem.where.text}};
    if (problem.where.at) one["at"] = *problem.where.at, one["length"] = problem.where.length;
    one["what"] = problem.what;
    one["expected"] = problem.expected;
    one["candidates"] = problem.candidates;
    json["not_read"].push_back(std::move(one));
  }
  return dumped(json);
}

std::string answer_json(const ImportReport& report) {
  Json json{{"kept", report.kept}};
  json["files"] = Json::array();
  for (const ImportedFile& file : report.files)
    json["files"].push_back({{"file", file.file},
                             {"kind", file.kind},
                             {"added", file.added},
                             {"changed", file.changed},
                             {"same", file.same},
                             {"refused", file.refused}});
  json["refused"] = Json::array();
  for (const RefusedRow& row : report.refused) {
    Json one{{"file", row.file},
             {"row", row.row},
             {"column", row.column},
             {"what", row.what},
             {"expected", row.expected}};
    if (row.row_kept) one["row_kept"] = true;
    json["refused"].push_back(std::move(one));
  }
  json["notes"] = report.notes;
  if (!report.refused_written.empty()) json["refused_written"] = report.refused_written;
  return dumped(json);
}

Json convert_json(const Converted& converted) {
  Json lengths = Json::array();
  for (const Length length : converted.lengths) lengths.push_back(length.nm());
  Json labels{{"in", converted.in_inches}, {"mm", converted.in_mm}};
  if (!converted.on_ruler.empty()) labels["nearest_sixteenth"] = converted.on_ruler;
  return {{"text", converted.text},
          {"kind", converted.kind},
          {"shape", converted.shape},
          {"nm", std::move(lengths)},
          {"labels", std::move(labels)}};
}

std::string answer_json(const Converted& converted) {
  return dumped(convert_json(converted));
}

std::string convert_problem_json(std::string_view text, const Problem& problem) {
  return dumped({{"text", text},
                 {"error", problem.what},
                 {"at", problem.where.at.value_or(0)},
                 {"expected", problem.expected}});
}

}  // namespace insetbook::cli
