// SPDX-License-Identifier: GPL-3.0-or-later
//
// Names of sizes that a card can have, upright ("A6", "half letter", "slimline"):
// schema/papers/card_names.json says what each is read as and what else it could be. A question asks with
// them for the closed card.
#pragma once

#include <string_view>

#include "schema/papers.h"

namespace insetbook {

using PaperName = CardName;

// Null where no card is called so.
inline const PaperName* paper_named(std::string_view folded) {
  return card_named(folded);
}

}  // namespace insetbook
