// SPDX-License-Identifier: GPL-3.0-or-later
//
// SHA-256 (FIPS 180-4), by which photographs are named.
#pragma once

#include <string>
#include <string_view>

namespace insetbook {

// Lower-case hexadecimal, 64 characters.
std::string sha256(std::string_view bytes);

}  // namespace insetbook
