// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/options.h"

#include <fmt/format.h>

#include "measure/read.h"
#include "text/quote.h"

namespace insetbook {

Result<Length> length_option(std::string_view what, std::string_view text, Unit unit, bool may_be_zero) {
  Result<ReadLength> read = read_length(text, unit);
  if (!read) {
    Problem problem = read.error();
    problem.what = fmt::format("{}: {}", what, problem.what);
    return failure(std::move(problem));
  }
  if (read->length <= Length() && !may_be_zero)
    return failure({.what = fmt::format("{}: {} is no length above zero", what, in_quotes(text)),
                    .expected = "a length such as 1/8 in or 3 mm"});
  return read->length;
}

Result<Size> size_option(std::string_view what, std::string_view text, Unit unit) {
  Result<Size> read = read_size(text, unit);
  if (!read) {
    Problem problem = read.error();
    problem.what = fmt::format("{}: {}", what, problem.what);
    return failure(std::move(problem));
  }
  return read;
}

Result<ShapeKind> shape_option(std::string_view text) {
  if (const std::optional<ShapeKind> kind = shape_kind(text)) return *kind;
  return failure({.what = fmt::format("{} is no shape that can be asked for", in_quotes(text)),
                  .expected = "circle, oval, square, rectangle, rounded rectangle or polygon"});
}

}  // namespace insetbook
