// SPDX-License-Identifier: GPL-3.0-or-later
//
// How a piece of a card goes with another, as a table records it and as a question asks it. Asked, `a goes b`
// is met by what was recorded of either:
//   on       a is recorded on or in b, or b is recorded behind a
//   in       a is recorded in b
//   behind   a is recorded behind b, or b is recorded on or in a
//   around   a is recorded around b, or b is recorded in a (a frame around a panel)
//   through  a is recorded through b
// What is recorded on a face or a section of the card ("on front") lies on its base: on the piece whose role
// is the base.
#pragma once

#include <string_view>

namespace insetbook {

enum class GoesHow { on, in, behind, around, through };
std::string_view goes_word(GoesHow how);  // "on", …: what the book stores

}  // namespace insetbook
