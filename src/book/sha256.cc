// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/sha256.h"

#include <sys/types.h>

// The library's header wants the types of the one above.
#include <sha2.h>

#include <array>

namespace insetbook {

std::string sha256(std::string_view bytes) {
  std::array<char, SHA256_DIGEST_STRING_LENGTH> text{};
  SHA256Data(reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(), text.data());
  return text.data();
}

}  // namespace insetbook
