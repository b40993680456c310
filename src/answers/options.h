// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reading the lengths, sizes and shape words that come with a question as texts ("--border 1/8"), with the
// name of the option in the complaint.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/size.h"
#include "shape/shape.h"
#include "text/problem.h"

namespace insetbook {

// `what` names the option: "border".
Result<Length> length_option(std::string_view what, std::string_view text, Unit unit, bool may_be_zero);
Result<Size> size_option(std::string_view what, std::string_view text, Unit unit);
Result<ShapeKind> shape_option(std::string_view text);

}  // namespace insetbook
