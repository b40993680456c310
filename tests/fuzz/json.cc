// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any bytes as a book in the exchange format: every member of every record is read as every type.
#include <cstdint>
#include <string>

#include "importers/json/read.h"

namespace {

using namespace insetbook;

void read_all(const JsonObject& object, int depth) {
  for (const char* name : {"uuid", "name", "title", "kind", "value", "written", "label"}) {
    (void)object.text(name);
    (void)object.number(name);
  }
  (void)object.nm("width_nm");
  (void)object.date("made");
  (void)object.one_of("unit", {"in", "mm"});
  if (depth > 8) return;
  for (const char* name : {"dies", "lines", "measurements", "elements", "mentions", "photos"})
    object.each(name, [&](const JsonObject& inner) { read_all(inner, depth + 1); });
  object.inside("line", [&](const JsonObject& inner) { read_all(inner, depth + 1); });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  (void)insetbook::read_exchange(text,
                                 [](int, const insetbook::JsonObject& record) -> insetbook::Result<void> {
                                   read_all(record, 0);
                                   return {};
                                 });
  return 0;
}
