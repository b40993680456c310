// SPDX-License-Identifier: GPL-3.0-or-later
#include "schema/read_json.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <vector>

#include "text/utf8.h"

namespace insetbook {

using Json = nlohmann::json;

[[noreturn]] void stop(const std::string& file, const std::string& what) {
  std::cerr << "schema/" << file << ": " << what << "\n";
  std::exit(1);
}

Json read_json(const std::string& path, const std::string& file) {
  std::ifstream in(path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  if (!in) stop(file, "cannot be read");
  if (!valid_utf8(text)) stop(file, "is not UTF-8");
  // The library keeps the last of two equal keys and says nothing, so they are looked for here.
  std::vector<std::set<std::string>> open;
  const auto look = [&](int, Json::parse_event_t event, Json& parsed) {
    if (event == Json::parse_event_t::object_start) open.emplace_back();
    if (event == Json::parse_event_t::object_end) open.pop_back();
    if (event == Json::parse_event_t::key && !open.back().insert(parsed.get<std::string>()).second) {
      stop(file, "the key \"" + parsed.get<std::string>() + "\" stands twice in one object");
    }
    return true;
  };
  try {
    return Json::parse(text, look);
  } catch (const Json::exception& e) {
    stop(file, e.what());
  }
}

std::string text_of(const std::string& file, const Json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) return {};
  if (!found->is_string() || found->get<std::string>().empty()) {
    stop(file, std::string("\"") + key + "\" is no text, or an empty one: " + object.dump());
  }
  return found->get<std::string>();
}

void allow_keys(const std::string& file, const Json& object,
                std::initializer_list<std::string_view> allowed) {
  if (!object.is_object()) stop(file, "an object is wanted: " + object.dump());
  for (const auto& [key, value] : object.items()) {
    if (std::find(allowed.begin(), allowed.end(), key) == allowed.end()) {
      stop(file, "the key \"" + key + "\" is not known: " + object.dump());
    }
  }
}

}  // namespace insetbook
