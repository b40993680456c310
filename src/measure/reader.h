// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads one length, size or range at a place of a text. Private to this folder; measure/read.h is what others
// use. The same rules serve a text that is one measurement (`whole`) and a sentence that holds one
// (`within`): within, whatever does not belong to the measurement is left where it is, and what is no length
// is no mistake.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "measure/figure.h"
#include "measure/marks.h"
#include "measure/size.h"

namespace insetbook::measuring {

enum class Setting { whole, within };

class MeasurementReader {
 public:
  MeasurementReader(std::string_view text, Unit no_unit, Setting setting)
      : text_(text), no_unit_(no_unit == Unit::inch ? UnitName::inch : UnitName::mm), setting_(setting) {}

  struct Found {
    Measurement value;
    std::size_t end = 0;
    bool bare = false;
  };
  // The longest measurement at `at`; none where nothing begins, or `trouble` says what is wrong.
  std::optional<Found> read(std::size_t at);

  std::optional<Trouble> trouble;

 private:
  // A length as written: one figure, or feet and inches.
  struct Term {
    Figure figure;
    std::optional<UnitName> unit;
  };
  struct Written {
    std::array<Term, 2> terms;
    std::size_t count = 1;
    std::size_t begin = 0;
    std::size_t end = 0;
    std::optional<UnitName> unit() const { return terms[count - 1].unit; }
    bool plain() const { return count == 1 && terms[0].figure.plain(); }
    bool fractional() const { return count == 1 && terms[0].figure.has_fraction; }
    bool bare() const { return plain() && !terms[0].unit; }
  };
  // A side of a size: a length with its label.
  struct Sided {
    Written length;
    std::optional<Label> label;
    bool before = false;  // the label stands before the figure
    std::size_t begin = 0;
    std::size_t end = 0;
  };

  bool within() const { return setting_ == Setting::within; }
  std::nullopt_t fail(Fault fault, std::size_t begin, std::size_t end, std::string instead = {});
  std::nullopt_t fail(Trouble found);

  std::optional<Written> length_at(std::size_t at, bool join_and);
  std::optional<WrittenUnit> unit_after(const Figure& figure) const;
  std::optional<WrittenUnit> unit_said_of(const Figure& figure) const;
  std::optional<WrittenUnit> mark_after(const Figure& figure, std::size_t at) const;
  bool ends_cleanly(std::size_t end) const;
  void add_inches(Written& written, bool foot_mark);
  void add_fraction_behind_unit(Written& written);
  bool one_unit(const Written& written);

  std::optional<Sided> side_at(std::size_t at);
  std::optional<Found> two_sides(const Sided& first, std::size_t times);
  std::optional<Found> labelled_pair(const Sided& first);
  std::optional<Found> size_of(const Sided& first, const Sided& second);
  std::optional<Found> one_side(const Sided& side);
  std::optional<Found> single(const Written& length);
  bool stands(Size& size, const Sided& first, const Sided& second, std::size_t& end);

  std::optional<Found> range_after(const Written& low);
  std::optional<Found> range_with_dash(const Written& low, const Character& dash);
  std::optional<Found> range_in_words(std::size_t at, std::string_view joining);
  std::optional<Found> range_of(const Written& low, const Written& high, std::size_t begin);

  // The two lengths with the unit that they share filled in, in nanometres.
  struct Pair {
    Length first, second;
    Unit unit = Unit::inch;
  };
  std::optional<Pair> pair_of(Written first, Written second);
  std::optional<Length> length_of(const Written& written);
  bool of_an_inch(const Written& written) const;
  // The unit of a length without one.
  UnitName unsaid(const Written& written) const;

  std::string_view text_;
  UnitName no_unit_;
  Setting setting_;
  bool no_measurement_ = false;  // what stands here looks like one and is not: a date
};

}  // namespace insetbook::measuring
