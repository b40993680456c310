// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/xml.h"

#include <expat.h>
#include <fmt/format.h>

#include <memory>
#include <optional>

namespace insetbook {

namespace {

std::string local_name(std::string_view name) {
  const std::size_t colon = name.rfind(':');
  return std::string(colon == std::string_view::npos ? name : name.substr(colon + 1));
}

Problem at_line(int line, std::string what, std::string expected) {
  Problem problem;
  problem.what = fmt::format("line {}: {}", line, what);
  problem.expected = std::move(expected);
  return problem;
}

Problem too_large() {
  Problem problem;
  problem.what = fmt::format("the drawing is larger than {} MB", largest_drawing >> 20);
  problem.expected = "a drawing of the dies alone, without pictures in it";
  return problem;
}

// What expat's handlers fill. No exception may pass through expat, which is C: a handler that finds a problem
// keeps it and stops the parser.
struct Reading {
  XML_Parser parser = nullptr;
  XmlElement root;
  std::vector<XmlElement*> open;  // from the root down to the element that is being read
  std::size_t elements = 0;
  std::optional<Problem> problem;

  int line() const { return static_cast<int>(XML_GetCurrentLineNumber(parser)); }
  void stop(Problem what) {
    if (!problem) problem = std::move(what);
    XML_StopParser(parser, XML_FALSE);
  }
};

void begin_element(void* data, const XML_Char* name, const XML_Char** attributes) {
  Reading& reading = *static_cast<Reading*>(data);
  if (reading.problem) return;
  if (reading.open.size() >= deepest_element)
    return reading.stop(at_line(reading.line(), "elements lie in one another too deeply",
                                fmt::format("at most {} of them", deepest_element)));
  if (++reading.elements > most_elements)
    return reading.stop(at_line(reading.line(), "the drawing has too many elements",
                                fmt::format("at most {}", most_elements)));
  // Children of an open element do not move while it is open: only the innermost one's list grows.
  XmlElement& element = reading.open.empty() ? reading.root : reading.open.back()->children.emplace_back();
  element.name = local_name(name);
  element.line = reading.line();
  for (; attributes[0] != nullptr; attributes += 2)
    element.attributes.emplace_back(local_name(attributes[0]), attributes[1]);
  reading.open.push_back(&element);
}

void end_element(void* data, const XML_Char*) {
  Reading& reading = *static_cast<Reading*>(data);
  if (!reading.problem && !reading.open.empty()) reading.open.pop_back();
}

void add_text(void* data, const XML_Char* text, int length) {
  Reading& reading = *static_cast<Reading*>(data);
  if (!reading.problem && !reading.open.empty())
    reading.open.back()->text.append(text, static_cast<std::size_t>(length));
}

void declare_entity(void* data, const XML_Char* name, int, const XML_Char*, int, const XML_Char*,
                    const XML_Char*, const XML_Char*, const XML_Char*) {
  Reading& reading = *static_cast<Reading*>(data);
  reading.stop(at_line(reading.line(), fmt::format("the drawing declares an entity, \"{}\"", name),
                       "a drawing without entities of its own"));
}

}  // namespace

const std::string* XmlElement::attribute(std::string_view wanted) const {
  for (const auto& [each, value] : attributes)
    if (each == wanted) return &value;
  return nullptr;
}

std::string_view XmlElement::value(std::string_view wanted) const {
  const std::string* found = attribute(wanted);
  return found == nullptr ? std::string_view() : std::string_view(*found);
}

Result<XmlElement> read_xml(std::string_view bytes) {
  if (bytes.size() > largest_drawing) return failure(too_large());
  const std::unique_ptr<std::remove_pointer_t<XML_Parser>, decltype(&XML_ParserFree)> parser(
      XML_ParserCreate(nullptr), &XML_ParserFree);
  Reading reading;
  reading.parser = parser.get();
  XML_SetUserData(parser.get(), &reading);
  XML_SetElementHandler(parser.get(), begin_element, end_element);
  XML_SetCharacterDataHandler(parser.get(), add_text);
  XML_SetEntityDeclHandler(parser.get(), declare_entity);
  const XML_Status status = XML_Parse(parser.get(), bytes.data(), static_cast<int>(bytes.size()), XML_TRUE);
  if (reading.problem) return failure(std::move(*reading.problem));
  if (status != XML_STATUS_OK)
    return failure(at_line(reading.line(),
                           fmt::format("this is no XML: {}", XML_ErrorString(XML_GetErrorCode(parser.get()))),
                           "a drawing in SVG, whole"));
  return std::move(reading.root);
}

}  // namespace insetbook
