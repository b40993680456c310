// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/write.h"

#include <array>

namespace insetbook {

namespace {

// As RFC 8259 says: quotation mark, backslash and control characters are escaped, all else is UTF-8 as it is.
void append_text(std::string& out, std::string_view text) {
  static constexpr std::array<char, 17> digits = {"0123456789abcdef"};
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (byte < 0x20) {
      out += "\\u00";
      out += digits[byte >> 4];
      out += digits[byte & 0xF];
    } else {
      out += c;
    }
  }
  out += '"';
}

}  // namespace

void JsonWriter::before_value() {
  if (named_) {
    named_ = false;
    return;
  }
  if (!first_) out_ += ',';
  if (new_line_) out_ += '\n';
  new_line_ = false;
  first_ = false;
}

void JsonWriter::open(char bracket) {
  before_value();
  out_ += bracket;
  first_ = true;
}

void JsonWriter::close(char bracket) {
  if (new_line_) out_ += '\n';
  new_line_ = false;
  out_ += bracket;
  first_ = false;
}

void JsonWriter::new_line() {
  new_line_ = true;
}

void JsonWriter::name(std::string_view name) {
  before_value();
  append_text(out_, name);
  out_ += ':';
  named_ = true;
}

void JsonWriter::value(std::string_view text) {
  before_value();
  append_text(out_, text);
}

void JsonWriter::value(std::int64_t number) {
  before_value();
  out_ += std::to_string(number);
}

void JsonWriter::member(std::string_view name_said, std::string_view text) {
  if (text.empty()) return;
  name(name_said);
  value(text);
}

void JsonWriter::member(std::string_view name_said, std::int64_t number) {
  name(name_said);
  value(number);
}

void JsonWriter::member(std::string_view name_said, std::optional<std::int64_t> number) {
  if (number) member(name_said, *number);
}

}  // namespace insetbook
