// SPDX-License-Identifier: GPL-3.0-or-later
//
// Answers as JSON objects, by the fields of the command line's contract: lengths are whole nanometres in
// fields ending
// `_nm`, with a label beside them where a person would read one. The only place of the command line that
// knows the JSON library.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "answers/base.h"
#include "answers/check.h"
#include "answers/convert.h"
#include "answers/copy.h"
#include "answers/find.h"
#include "answers/fits.h"
#include "answers/frames.h"
#include "answers/layers.h"
#include "answers/measure.h"
#include "answers/record.h"
#include "answers/resize.h"
#include "answers/show.h"
#include "importers/report/report.h"
#include "measure/size.h"
#include "text/problem.h"

namespace insetbook::cli {

std::string problem_json(const Problem& problem);

// A flat object of plain values, in order.
using PlainValue = std::variant<std::string, std::int64_t, bool, std::vector<std::string>>;
std::string plain_json(std::initializer_list<std::pair<std::string_view, PlainValue>> fields);
// {"NAME": [ {column: value, …}, … ]}
std::string rows_json(std::string_view name, const std::vector<std::string>& columns,
                      const std::vector<std::vector<std::string>>& rows);

std::string answer_json(const FitsAnswer& answer);
std::string answer_json(const FramesAnswer& answer);
std::string answer_json(const PairsAnswer& answer);
std::string answer_json(const MeasureAnswer& answer);
std::string answer_json(const TriedAnswer& answer);
std::string answer_json(const ShowAnswer& answer);
std::string answer_json(const RecordAnswer& answer);

std::string answer_json(const NearestAnswer& answer);
std::string answer_json(const CheckAnswer& answer);
std::string answer_json(const BaseAnswer& answer);
std::string answer_json(const LayersAnswer& answer);
std::string answer_json(const CopyAnswer& answer);
std::string answer_json(const ResizeAnswer& answer);

std::string answer_json(const FindAnswer& answer);
std::string answer_json(const ImportReport& report);
std::string answer_json(const Converted& converted);
// A line of `convert` that could not be read.
std::string convert_problem_json(std::string_view text, const Problem& problem);

}  // namespace insetbook::cli
