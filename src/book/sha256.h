// SPDX-License-Identifier: GPL-3.0-or-later
//
// SHA-256 (FIPS 180-4), by which photographs are named. Own code, because a cryptography library is a
// millisecond of every start, also of the commands that never see a photograph. The tests hold it against
// such a library.
#pragma once

#include <string>
#include <string_view>

namespace insetbook {

// Lower-case hexadecimal, 64 characters.
std::string sha256(std::string_view bytes);

}  // namespace insetbook
