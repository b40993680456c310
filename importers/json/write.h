// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes JSON text member by member, in the order given, so that the same records are always the same bytes.
// Members without a value (an empty text, no number) are left out.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace insetbook {

class JsonWriter {
 public:
  explicit JsonWriter(std::string& out) : out_(out) {}

  void begin_object() { open('{'); }
  void end_object() { close('}'); }
  void begin_list() { open('['); }
  void end_list() { close(']'); }
  // Names the value that follows.
  void name(std::string_view name);
  void value(std::string_view text);
  void value(std::int64_t number);

  void member(std::string_view name, std::string_view text);
  void member(std::string_view name, std::int64_t number);
  void member(std::string_view name, std::optional<std::int64_t> number);
  void new_line();  // before the next item or member

 private:
  void open(char bracket);
  void close(char bracket);
  void before_value();

  std::string& out_;
  bool first_ = true;  // nothing yet in the innermost object or list
  bool named_ = false;
  bool new_line_ = false;
};

}  // namespace insetbook
