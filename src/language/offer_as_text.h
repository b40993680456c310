// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is understood is not looked for as text, so that every label of a term finds the same; of a term
// that stands alone the word is offered. But a word that more often is no term may as well be a plain word
// wherever it is said of the sample, or stands alone; and a feature, material or role beside nothing but
// words that are no terms may be one word of a title or a note with them ("kitchen window").
#pragma once

#include <string_view>

#include "language/items.h"

namespace insetbook {

void offer_as_text(std::string_view text, Itemised& out);

}  // namespace insetbook
