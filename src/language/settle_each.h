// SPDX-License-Identifier: GPL-3.0-or-later
//
// "two circles, one navy and one white" is a navy circle and a white circle; "three circles, one navy" a navy
// circle and two more. "one" that parts nothing which was counted says nothing.
#pragma once

#include <string_view>

#include "language/items.h"

namespace insetbook {

void settle_each(std::string_view text, Itemised& out);

}  // namespace insetbook
