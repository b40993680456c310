// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads the exchange format as JSON text (RFC 8259), one record at a time: nothing but the record in hand is
// kept. Refused, with where: bytes that are no UTF-8, a name twice in one object, nesting deeper than
// `deepest`, a member that is not known, a value of another type. Places are paths: samples[3].made.
#pragma once

#include <cstdint>
#include <functional>
#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "text/problem.h"

namespace insetbook {

inline constexpr int deepest = 24;

// An object of the text being read, with its path. The first thing that is wrong with it or anything in it is
// kept where the reading of the file began; values that could not be read are empty.
class JsonObject {
 public:
  class Parts;  // the library's value and where problems go
  explicit JsonObject(const Parts& parts, std::string path) : parts_(parts), path_(std::move(path)) {}

  const std::string& path() const { return path_; }
  // Says which members there may be; any other is a problem.
  void only(std::initializer_list<std::string_view> names) const;
  bool has(std::string_view name) const;
  std::string text(std::string_view name) const;  // empty where it is not there
  std::string needed_text(std::string_view name) const;
  std::string one_of(std::string_view name,
                     std::initializer_list<std::string_view> words) const;  // empty: not there
  std::optional<std::int64_t> number(std::string_view name) const;
  std::optional<std::int64_t> nm(std::string_view name) const;  // a length above zero, at most 1 km
  std::string date(std::string_view name) const;                // ISO, or empty
  void each(std::string_view name,
            const std::function<void(const JsonObject&)>& work) const;  // a list of objects
  void inside(std::string_view name, const std::function<void(const JsonObject&)>& work) const;  // an object

  bool fine() const;  // nothing was wrong so far: only then may it be written
  void wrong(std::string_view member, std::string what, std::string expected) const;

 private:
  const Parts& parts_;
  std::string path_;
};

// Calls `record` for each record of the file: section by section in the order of Section, whatever their
// order in the text. Stops at the first problem, `record`'s own included.
Result<void> read_exchange(std::string_view text,
                           const std::function<Result<void>(int section, const JsonObject& record)>& record);

}  // namespace insetbook
