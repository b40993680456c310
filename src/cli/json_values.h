// SPDX-License-Identifier: GPL-3.0-or-later
//
// The JSON objects of answers, for the files of this folder that put them together (json_answers.cc,
// json_find.cc): an answer has the same fields whether its own command gives it or `find`.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "cli/json_answers.h"

namespace insetbook::cli {

using Json = nlohmann::ordered_json;

// Texts in the book are valid UTF-8; what comes from a file name or an argument may not be.
std::string dumped(const Json& json);

Json problem_object(const Problem& problem);
Json fits_json(const FitsAnswer& answer);
Json frames_json(const FramesAnswer& answer);
Json pairs_json(const PairsAnswer& answer);
Json measure_json(const MeasureAnswer& answer);
Json show_json(const ShowAnswer& answer);
Json dies_json(const DiesAnswer& answer);
Json tried_there_json(const TriedThereAnswer& answer);
Json pieces_json(const PiecesAnswer& answer);
Json convert_json(const Converted& converted);

}  // namespace insetbook::cli
