// SPDX-License-Identifier: GPL-3.0-or-later
//
// For the programs of the build that compile schema/: reading a JSON file strictly, and stopping the build
// with a message that names the file and the entry.
#pragma once

#include <initializer_list>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace insetbook {

// Ends the program. `file` as it stands below schema/: "vocabularies/folds.json".
[[noreturn]] void stop(const std::string& file, const std::string& what);

// What a file holds. Stops where it cannot be read, is no UTF-8 or no JSON, or where an object has a key
// twice.
nlohmann::json read_json(const std::string& path, const std::string& file);

// The text under a key; empty where the key is missing. Stops where it is no text, or an empty one.
std::string text_of(const std::string& file, const nlohmann::json& object, const char* key);

// Stops where the value is no object or has another key than these.
void allow_keys(const std::string& file, const nlohmann::json& object,
                std::initializer_list<std::string_view> allowed);

}  // namespace insetbook
