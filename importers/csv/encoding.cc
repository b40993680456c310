// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/encoding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "importers/report/report.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// The characters of bytes 0x80 to 0x9f; 0 = the byte stands for none. From 0xa0 on a byte is its own code
// point. Source: the WHATWG Encoding Standard's index windows-1252, from memory, less the five control
// characters it adds.
constexpr std::array<char16_t, 32> windows1252 = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

unsigned byte_at(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
}

std::size_t line_of(std::string_view bytes, std::size_t at) {
  return 1 + static_cast<std::size_t>(std::count(bytes.begin(), bytes.begin() + static_cast<long>(at), '\n'));
}

Problem torn_utf16(std::size_t at) {
  return bad_input(fmt::format("the file is UTF-16, but is torn at byte {}", at),
                   "the whole file, or one saved as UTF-8");
}

Problem no_encoding(std::string_view bytes, std::size_t at, std::string_view why) {
  return {.what = fmt::format("line {} of the file: the byte 0x{:02x} {}", line_of(bytes, at),
                              byte_at(bytes, at), why),
          .where = {},
          .expected = "a file saved as UTF-8",
          .candidates = {}};
}

// The number of bytes of the UTF-8 character that begins at `i`, or 0.
std::size_t utf8_length(std::string_view bytes, std::size_t i) {
  const unsigned lead = byte_at(bytes, i);
  const std::size_t length = lead < 0x80                    ? 1
                             : lead >= 0xC2 && lead <= 0xDF ? 2
                             : lead >= 0xE0 && lead <= 0xEF ? 3
                             : lead >= 0xF0 && lead <= 0xF4 ? 4
                                                            : 0;
  if (length == 0 || i + length > bytes.size()) return 0;
  return valid_utf8(bytes.substr(i, length)) ? length : 0;
}

Result<std::string> from_utf16(std::string_view bytes, bool little) {
  if (bytes.size() % 2 != 0) return failure(torn_utf16(bytes.size() - 1));
  std::string text;
  text.reserve(bytes.size() / 2 + bytes.size() / 8);
  const auto unit = [&](std::size_t i) {
    return little ? byte_at(bytes, i) | byte_at(bytes, i + 1) << 8
                  : byte_at(bytes, i) << 8 | byte_at(bytes, i + 1);
  };
  for (std::size_t i = 0; i < bytes.size(); i += 2) {
    const unsigned first = unit(i);
    if (first < 0xD800 || first > 0xDFFF) {
      append_utf8(text, first);
      continue;
    }
    const unsigned second = first < 0xDC00 && i + 2 < bytes.size() ? unit(i + 2) : 0;
    if (second < 0xDC00 || second > 0xDFFF) return failure(torn_utf16(i));
    append_utf8(text, 0x10000 + ((first - 0xD800) << 10) + (second - 0xDC00));
    i += 2;
  }
  return text;
}

Result<std::string> from_windows1252(std::string_view bytes) {
  std::string text;
  text.reserve(bytes.size() + bytes.size() / 16);
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    const unsigned byte = byte_at(bytes, i);
    const char32_t code = byte < 0x80 || byte > 0x9F ? byte : windows1252[byte - 0x80];
    if (code == 0 && byte != 0) return failure(no_encoding(bytes, i, "is neither UTF-8 nor Windows-1252"));
    append_utf8(text, code);
  }
  return text;
}

// UTF-16 without a mark: in a table most characters are ASCII, so every other byte of its beginning is zero.
std::optional<TextEncoding> unmarked_utf16(std::string_view bytes) {
  const std::string_view beginning = bytes.substr(0, 1024);
  std::size_t even = 0, odd = 0;
  for (std::size_t i = 0; i < beginning.size(); ++i)
    if (beginning[i] == '\0') ++(i % 2 == 0 ? even : odd);
  const std::size_t most = beginning.size() / 2 * 3 / 4;
  if (beginning.size() < 4) return std::nullopt;
  if (odd >= most && even == 0) return TextEncoding::utf16le;
  if (even >= most && odd == 0) return TextEncoding::utf16be;
  return std::nullopt;
}

Result<DecodedText> decode_utf16(std::string_view bytes, TextEncoding encoding) {
  return from_utf16(bytes, encoding == TextEncoding::utf16le).map([&](std::string text) {
    return DecodedText{std::move(text), encoding};
  });
}

// Bytes that are not all UTF-8. A single true UTF-8 character of several bytes among them means that the file
// is UTF-8 and damaged: read as Windows-1252 it would turn into nonsense in silence.
Result<DecodedText> decode_single_bytes(std::string_view bytes) {
  std::optional<std::size_t> bad;
  bool several = false;
  for (std::size_t i = 0; i < bytes.size();) {
    const std::size_t length = utf8_length(bytes, i);
    if (length == 0 && !bad) bad = i;
    if (length > 1) several = true;
    i += std::max<std::size_t>(length, 1);
  }
  if (several && bad) return failure(no_encoding(bytes, *bad, "is no UTF-8, the rest of the file is"));
  return from_windows1252(bytes).map([](std::string text) {
    return DecodedText{std::move(text), TextEncoding::windows1252};
  });
}

}  // namespace

std::string_view encoding_word(TextEncoding encoding) {
  switch (encoding) {
    case TextEncoding::utf8:
      return "UTF-8";
    case TextEncoding::utf16le:
    case TextEncoding::utf16be:
      return "UTF-16";
    case TextEncoding::windows1252:
      return "Windows-1252";
  }
  return {};
}

Result<DecodedText> decode_text(std::string bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) {
    bytes.erase(0, 3);
    if (valid_utf8(bytes)) return DecodedText{std::move(bytes), TextEncoding::utf8};
    for (std::size_t i = 0; i < bytes.size();) {
      const std::size_t length = utf8_length(bytes, i);
      if (length == 0) return failure(no_encoding(bytes, i, "is no UTF-8, which the file says it is"));
      i += length;
    }
  }
  const std::string_view view = bytes;
  if (view.starts_with("\xFF\xFE")) return decode_utf16(view.substr(2), TextEncoding::utf16le);
  if (view.starts_with("\xFE\xFF")) return decode_utf16(view.substr(2), TextEncoding::utf16be);
  if (const auto encoding = unmarked_utf16(view)) return decode_utf16(view, *encoding);
  if (valid_utf8(view)) return DecodedText{std::move(bytes), TextEncoding::utf8};
  return decode_single_bytes(view);
}

}  // namespace insetbook
