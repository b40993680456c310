// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/row_text.h"

#include <charconv>

namespace insetbook {

namespace {

bool needs_escape(char c) {
  return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20;
}

void append_escape(std::string& out, char c) {
  static constexpr char digits[] = "0123456789abcdef";
  if (c == '"' || c == '\\') {
    out += '\\';
    out += c;
    return;
  }
  out += "\\u00";
  out += digits[static_cast<unsigned char>(c) >> 4];
  out += digits[static_cast<unsigned char>(c) & 15];
}

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  std::optional<std::vector<RowValue>> row() {
    std::vector<RowValue> values;
    if (!take('[')) return std::nullopt;
    do {
      std::optional<RowValue> one = value();
      if (!one) return std::nullopt;
      values.push_back(std::move(*one));
    } while (take(','));
    if (!take(']') || at_ != text_.size()) return std::nullopt;
    return values;
  }

 private:
  bool take(char c) {
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }

  std::optional<RowValue> value() {
    if (text_.substr(at_, 4) == "null") {
      at_ += 4;
      return RowValue();
    }
    if (take('"')) return text();
    std::int64_t number = 0;
    const char* begin = text_.data() + at_;
    const auto [end, error] = std::from_chars(begin, text_.data() + text_.size(), number);
    if (error != std::errc()) return std::nullopt;
    at_ += static_cast<std::size_t>(end - begin);
    return RowValue(number);
  }

  std::optional<RowValue> text() {
    std::string out;
    while (at_ < text_.size()) {
      const char c = text_[at_++];
      if (c == '"') return RowValue(std::move(out));
      if (c != '\\') {
        out += c;
        continue;
      }
      if (at_ >= text_.size()) return std::nullopt;
      const char escaped = text_[at_++];
      if (escaped == '"' || escaped == '\\') {
        out += escaped;
        continue;
      }
      unsigned code = 0;
      if (escaped != 'u' || at_ + 4 > text_.size()) return std::nullopt;
      const char* digits = text_.data() + at_;
      const auto [end, error] = std::from_chars(digits, digits + 4, code, 16);
      if (error != std::errc() || end != digits + 4 || code >= 0x20) return std::nullopt;
      out += static_cast<char>(code);
      at_ += 4;
    }
    return std::nullopt;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace

void append_row_integer(std::string& out, std::int64_t value) {
  char digits[24];
  const auto [end, error] = std::to_chars(digits, digits + sizeof digits, value);
  static_cast<void>(error);  // 24 characters hold every 64-bit number
  out.append(digits, end);
}

void append_row_text(std::string& out, std::string_view value) {
  out += '"';
  std::size_t from = 0;
  for (std::size_t i = 0; i < value.size(); ++i) {
    if (!needs_escape(value[i])) continue;
    out.append(value, from, i - from);
    append_escape(out, value[i]);
    from = i + 1;
  }
  out.append(value, from);
  out += '"';
}

std::optional<std::vector<RowValue>> read_row_text(std::string_view text) {
  return Reader(text).row();
}

}  // namespace insetbook
