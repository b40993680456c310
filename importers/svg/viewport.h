// SPDX-License-Identifier: GPL-3.0-or-later
//
// A viewBox, and how it is laid into a viewport (SVG 2, chapter 8).
#pragma once

#include <optional>
#include <string_view>

#include "importers/svg/transform.h"
#include "importers/svg/xml.h"
#include "text/problem.h"

namespace insetbook {

struct ViewBox {
  double x = 0, y = 0, width = 0, height = 0;
};

// Empty where the element has none; a Problem where it cannot be.
Result<std::optional<ViewBox>> view_box(const XmlElement& element);

// The box into width × height (SVG 2, 8.2): both ways alike and in the middle, unless `preserveAspectRatio`
// says otherwise. What "slice" puts outside the viewport is a die as well: nothing is cut off.
Transform into_viewport(const ViewBox& box, double width, double height, std::string_view aspect);

}  // namespace insetbook
