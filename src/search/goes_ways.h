// SPDX-License-Identifier: GPL-3.0-or-later
//
// What must be recorded of two pieces so that the first goes with the second as was asked: language/goes.h in
// the form that the search compares.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "language/goes.h"

namespace insetbook {

struct GoesWays {
  std::vector<std::string> own;    // the first is recorded so with the second
  std::vector<std::string> other;  // or the second so with the first
  // A piece that is recorded on no other piece ("on front") lies on the base.
  bool first_on_base() const { return says_on(own); }
  bool second_on_base() const { return says_on(other); }

 private:
  static bool says_on(const std::vector<std::string>& ways) {
    return std::find(ways.begin(), ways.end(), "on") != ways.end();
  }
};

inline constexpr std::string_view base_role = "base";  // a term of schema/vocabularies/roles.json

inline GoesWays goes_ways(GoesHow how) {
  switch (how) {
    case GoesHow::on:
      return {{"on", "in"}, {"behind"}};
    case GoesHow::in:
      return {{"in"}, {}};
    case GoesHow::behind:
      return {{"behind"}, {"on", "in"}};
    case GoesHow::around:
      return {{"around"}, {"in"}};
    case GoesHow::through:
      return {{"through"}, {}};
  }
  return {};
}

}  // namespace insetbook
