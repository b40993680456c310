// SPDX-License-Identifier: GPL-3.0-or-later
//
// The bytes of an XML file as a tree of elements, read by expat with nothing fetched and nothing expanded: a
// file that declares entities of its own is refused, and so is one that is larger, deeper or richer in
// elements than a drawing of dies has a reason to be. Names are local ones: a prefix and its colon are
// dropped, in elements and in attributes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "text/problem.h"

namespace insetbook {

inline constexpr std::size_t largest_drawing = 16 << 20;  // bytes
inline constexpr std::size_t deepest_element = 64;
inline constexpr std::size_t most_elements = 50'000;

struct XmlElement {
  std::string name;
  std::vector<std::pair<std::string, std::string>> attributes;  // in order
  std::vector<XmlElement> children;                             // in order
  std::string text;                                             // of its own, all pieces of it together
  int line = 0;                                                 // where it begins, from 1

  // nullptr: it has no such attribute. Of two of one local name the first counts.
  const std::string* attribute(std::string_view local_name) const;
  std::string_view value(std::string_view local_name) const;  // blank where there is none
};

// The root element. A Problem names the line.
Result<XmlElement> read_xml(std::string_view bytes);

}  // namespace insetbook
