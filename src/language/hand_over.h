// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions that are not about samples, told by how they begin: "what fits inside …", "what size do I cut for
// …", "which die goes round …". Only phrases that cannot mean a sample are taken: "which designs fit in an A6
// envelope" asks for samples.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "language/pieces.h"
#include "language/question.h"
#include "language/vocabulary.h"

namespace insetbook {

// The question with `asks`, `subject`, `border` and `panel_shape` set, if it is for another answer.
std::optional<Question> hand_over(std::string_view text, const std::vector<Piece>& pieces,
                                  const Vocabulary& vocabulary, Unit no_unit);

}  // namespace insetbook
