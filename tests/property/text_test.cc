// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of text: folding, trimming, decoding, and a slow twin of the edit distance.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "text/utf8.h"

namespace insetbook {
namespace {

std::string any_text() {
  static const std::vector<std::string> pieces{"a",  "b",      "c",    "A",  "é",      "e\u0301", "ß",
                                               "½",  " ",      "-",    "_",  "\u2014", "\u2019",  "'",
                                               "\"", "\u00A0", "\xFF", "Ｚ", "\u00AD", "ﬁ",       "x"};
  std::string out;
  for (int n = *rc::gen::inRange(0, 12); n > 0; --n) out += *rc::gen::elementOf(pieces);
  return out;
}

RC_GTEST_PROP(Text, FoldingIsDoneOnce, ()) {
  const std::string a = any_text(), b = any_text();
  RC_ASSERT(fold(fold(a)) == fold(a));
  RC_ASSERT(valid_utf8(fold(a)));
  RC_ASSERT(fold(a + " " + b) == fold(fold(a) + " " + fold(b)));
}

RC_GTEST_PROP(Text, CharactersCoverEveryByteOnce, (const std::string& bytes)) {
  std::size_t at = 0;
  for (const Character& c : characters(bytes)) {
    RC_ASSERT(c.begin == at && c.end > at);
    at = c.end;
  }
  RC_ASSERT(at == bytes.size());
  RC_ASSERT(characters_before(bytes, bytes.size()) == characters(bytes).size());
}

RC_GTEST_PROP(Text, TrimmingTakesOnlySpaceFromTheEnds, ()) {
  const std::string text = any_text();
  const std::string_view inner = trim(text);
  RC_ASSERT(trim(inner) == inner);
  for (const Character& c : characters(text)) {
    const bool before = text.data() + c.end <= inner.data();
    const bool after = text.data() + c.begin >= inner.data() + inner.size();
    if (!inner.empty() && (before || after)) RC_ASSERT(is_space(c.code));
  }
}

// The whole table, without limit or band.
std::size_t slow_distance(const std::string& first, const std::string& second) {
  const auto a = characters(first), b = characters(second);
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i)
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        d[i][j] = i + j;
        continue;
      }
      d[i][j] =
          std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1].code != b[j - 1].code)});
      if (i > 1 && j > 1 && a[i - 1].code == b[j - 2].code && a[i - 2].code == b[j - 1].code)
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

RC_GTEST_PROP(Text, EditDistanceIsThatOfTheWholeTable, ()) {
  const std::string a = any_text();
  std::string b = any_text();
  if (*rc::gen::inRange(0, 3) > 0) {  // often a few edits away
    b = a;
    for (int n = *rc::gen::inRange(0, 4); n > 0 && !b.empty(); --n) {
      const auto at = *rc::gen::inRange<std::size_t>(0, b.size());
      if (*rc::gen::inRange(0, 2) == 0)
        b.erase(at, 1);
      else
        b.insert(at, "q");
    }
  }
  const auto limit = *rc::gen::inRange<std::size_t>(0, 16);
  RC_ASSERT(edit_distance(a, b, limit) == std::min(slow_distance(a, b), limit + 1));
}

}  // namespace
}  // namespace insetbook
