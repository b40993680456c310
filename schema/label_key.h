// SPDX-License-Identifier: GPL-3.0-or-later
//
// The form under which a label of a vocabulary is kept and looked for. Two ways of writing one label have the
// same key whether they are plural or singular ("circles", "boxes", "leaves"), British or American
// ("stencilling", "grey", "centre"), written as one word or several ("popup", "pop-up", "pop up"). A key is
// only ever compared with another key and never shown: it need not be a word.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace insetbook {

// `folded` has been through fold (text/utf8.h). Any text has a key; the key of "" is "".
std::string label_key(std::string_view folded);

// The same words in the other spelling, for names that people gave: "lichen grey" and "lichen gray". British
// words become American, else American ones British; none where no word of them is spelt two ways.
std::optional<std::string> other_spelling(std::string_view folded);

}  // namespace insetbook
