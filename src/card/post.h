// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the letter post of each service makes of an item (schema/papers/postal.json, each limit with its
// source and year). Limits that are just reached are kept. Length is the longer side, width the shorter, so
// an item has no way round here: a service that asks for the address along the longer side says so in `also`.
// These figures change, and only what is in the table is checked: every answer says to check with the local
// post office.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/papers.h"

namespace insetbook {

// The thing as it is posted: the filled envelope, or a card alone.
struct PostItem {
  Length width, height;    // in either order
  Unit unit = Unit::inch;  // in which its figures are written
  std::optional<Length> thickness;
  std::optional<std::int64_t> mass_mg;
};

enum class PostOutcome {
  goes,       // as `format`
  surcharge,  // as `format`, and costs more: `verdict` says as what
  too_small,  // no letter: below what the service takes
  too_large,  // no letter: beyond the largest format
};

struct PostAnswer {
  std::string service, country;
  PostOutcome outcome = PostOutcome::goes;
  std::string format;   // "letter", "Kompaktbrief"; empty where no format takes it
  std::string verdict;  // "goes as a non-machinable letter, which costs more"
  // What decided it, with figures: "letter: thickness 7 mm, at most 5 mm" for each limit that was not kept.
  std::vector<std::string> why;
  std::vector<std::string> kept;         // the limits of `format` that are kept, in the same form
  std::vector<std::string> not_checked;  // "thickness not known: at most 5 mm"
  std::vector<std::string> also;         // what has to be looked at by hand
  std::vector<std::string> sources;      // each once, with its year and how surely it is known
  FigureSource from;                     // of the format, or of the service where no format takes it
  std::string_view advice;               // post_advice
};

inline constexpr std::string_view post_advice = "check with the local post office";

std::vector<PostAnswer> post(const PostItem& item);  // one for each service, in the table's order
PostAnswer post_by(const PostService& service, const PostItem& item);

}  // namespace insetbook
