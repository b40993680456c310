// SPDX-License-Identifier: GPL-3.0-or-later
//
// The weight of paper, and what follows from it. Grams a square metre, kept as whole milligrams a square
// metre; pounds of a grade ("80 lb cover") are what 500 sheets of the grade's basic size weigh
// (schema/papers/basis_weights.json), so with 1 lb = 453.59237 g and 1 in = 25.4 mm exactly
//   g/m² = lb x 1406.1392… / basic area in square inches.
// All of that is whole-number arithmetic, rounded to the nearest at the end. Thickness does not follow from
// weight: typical_caliper is for where nobody measured, and is to be shown as typical.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "schema/papers.h"

namespace insetbook {

std::span<const PaperGrade> paper_grades();

// By a word for it ("cover", "card stock", "text"); null where none is meant.
const PaperGrade* paper_grade_named(std::string_view text);

// Milligrams a square metre of so many thousandths of a pound, and the other way. Figures up to 10^11.
std::int64_t mg_m2_from_pounds(std::int64_t thousandths, const PaperGrade& grade);
std::int64_t pounds_from_mg_m2(std::int64_t mg_m2, const PaperGrade& grade);  // thousandths of a pound

// "220 g/m²", "80 lb cover", "110# card stock": milligrams a square metre. Empty where the text says no
// weight that can be known: pounds without a grade could be any.
std::optional<std::int64_t> read_paper_weight(std::string_view text);

// What a sheet of paper weighs, in milligrams; sides up to 3 m, weight up to 10^9.
std::int64_t sheet_mass_mg(Length width, Length height, std::int64_t mg_m2);
// The same of any shape, by its area in square millimetres.
std::int64_t piece_mass_mg(double area_mm2, std::int64_t mg_m2);

// Always typical, never measured.
struct TypicalCaliper {
  Length thickness;    // to the nearest thousandth of a millimetre
  std::string source;  // of the entries it was taken between, with "typical"
};
// Between the two entries of schema/papers/calipers.json nearest in weight, in proportion. Empty below the
// lightest and above the heaviest: nothing is guessed there.
std::optional<TypicalCaliper> typical_caliper(std::int64_t mg_m2);

}  // namespace insetbook
