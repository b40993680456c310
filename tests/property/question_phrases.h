// SPDX-License-Identifier: GPL-3.0-or-later
//
// A meaning said as a person might say it: any label of a term, any way of writing a figure, any order that
// the rules of 2-model allow, articles, connectors, hyphens, case and filler. A saying in which words of two
// neighbours happen to make a label of their own ("circle scallop") means something else and is not made.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "question_meaning.h"

namespace insetbook {

using Pick = std::function<std::size_t(std::size_t)>;  // a number under the one given

// Nothing: no saying without such an accident was found.
std::optional<std::string> said(const Asked& asked, const Pick& pick);
// The same with every field named: with:(shape:circle size:2in) fold:easel.
std::string said_in_fields(const Asked& asked, const Pick& pick);

// A label of the term that means nothing else in any vocabulary; the preferred one where there is no other.
std::string a_label(VocabularyName in, const std::string& term, const Pick& pick);

}  // namespace insetbook
