// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any bytes as a drawing: read as XML, as outlines, each outline flattened, and written as path data that
// reads back as the same curves.
#include "importers/svg/drawing.h"

#include <cstdlib>

#include "shape/path_data.h"
#include "shape/write_path_data.h"

namespace {

using namespace insetbook;

std::size_t curves_in(const CurvedOutline& outline) {
  std::size_t count = 0;
  for (const Contour& contour : outline.contours) count += contour.curves.size();
  return count;
}

void check(const DrawnGroup& group) {
  for (const DrawnGroup& inner : group.groups) check(inner);
  for (const DrawnOutline& outline : group.outlines) {
    if (curves_in(outline.outline) > 200) continue;
    const std::string text = write_path_data(outline.outline);
    if (const auto again = read_path_data(text, 1e6, outline.outline.rule))
      if (write_path_data(*again) != text) std::abort();
    (void)flatten(outline.outline, 10'000);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto drawing = read_drawing({reinterpret_cast<const char*>(data), size}, 1e6);
  if (drawing) check(drawing->all);
  return 0;
}
