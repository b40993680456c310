// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is asked of any element of a drawing: its name, a property, and how it is refused with its line.
#pragma once

#include <string>
#include <string_view>

#include "importers/svg/xml.h"
#include "text/problem.h"

namespace insetbook {

// As a person gave it; empty where a drawing program numbered it by itself.
std::string name_of(const XmlElement& element);

// One property, from `style` before the attribute of its name (CSS: the style comes first).
std::string_view property(const XmlElement& element, std::string_view name);

// "line 12: …"
Problem refused_at(int line, std::string what, std::string expected);

}  // namespace insetbook
