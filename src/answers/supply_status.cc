// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/supply_status.h"

namespace insetbook {

std::string status_today(const Vocabulary& words, std::string_view recorded, std::string_view from,
                         std::string_view until, std::string_view today) {
  if (!recorded.empty())
    for (const TermMatch& match : words.find(recorded, VocabularyName::status)) return match.id;
  if (!until.empty() && until < today) return "withdrawn";
  if (!from.empty() && from > today) return "announced";
  return "current";
}

}  // namespace insetbook
