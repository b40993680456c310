// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recogniser of fields: every field under each of its names, values of each kind, and what is no field or
// no value, which falls away as one span.
#include <gtest/gtest.h>

#include "language/offers.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

bool is_field(const Seen& seen) {
  return seen.field || seen.as == As::unread;
}

TEST(Fields, OfEachKind) {
  const Case cases[] = {
      {"shape:circle", "0-12 shape=circle"},
      {"role:mat", "0-8 role=mat"},
      {"technique:speckling", "0-19 technique=speckling"},
      {"technique:\"dry embossing\"", "0-25 technique=dry embossing"},
      {"material:vellum", "0-15 material=vellum"},
      {"fold:stand-up", "0-13 fold=stand up fold"},
      {"fold:\"z fold\"", "0-13 fold=z fold"},
      {"feature:shaker", "0-14 feature=shaker"},
      {"occasion:birthday", "0-17 occasion=birthday"},
      {"colour:sage", "0-11 colour=Sage"},
      {"paper:white", "0-11 paper=white (by value)"},
      {"ink:navy", "0-8 ink=Navy"},
      {"like:sage", "0-9 colour=like Sage, within 10"},
      {"like:\"sage, within 5\"", "0-21 colour=like Sage, within 5"},
      {"like:#a55030", "0-12 colour=like #a55030, within 10"},
      {"supply:\"garden gate\"", "0-20 supply=Garden Gate"},
      {"supply:kelp", "0-11 supply=Kelp"},
      {"die:\"moonrise circles 3\"", "0-24 die=Moonrise Circles 3"},
      {"in:\"tidepool rectangles 2\"", "0-26 in=Tidepool Rectangles 2"},
      {"side:inside", "0-11 side=inside"},
      {"count:2", "0-7 count=2"},
      {"count:two", "0-9 count=2"},
      {"size:2in", "0-8 size=2in ±1/32in"},
      {"size:2-3/8in", "0-12 size=2-3/8in ±1/32in"},
      {"size:\"2 x 3 in\"", "0-15 size=2in x 3in ±1/32in"},
      {"size:<3in", "0-9 size=under 3in"},
      {"size:2..3", "0-9 size=2in to 3in"},
      {"size:\"about 2 in\"", "0-17 size=about 2in ±1/8in"},
      {"closed:A6", "0-9 closed=105mm x 148mm ±0.8mm"},
      {"closed:\"5 x 7 in\"", "0-17 closed=5in x 7in ±1/32in"},
      {"closed:square", "0-13 closed=square"},
      {"made:2023", "0-9 made=2023"},
      {"made:2023-05..2024", "0-18 made=2023-05-01..2024-12-31"},
      {"made:\"last spring\"", "0-18 made=2026-03-01..2026-05-31"},
      {"text:happy", "0-10 text=happy"},
      {"text:\"happy birthday\"", "0-21 text=\"happy birthday\""},
      {"based:\"harbour easel\"", "0-21 based=Harbour Easel"},
      {"title:\"harbour easel\"", "0-21 title=Harbour Easel"},
      {"alike:\"harbour easel\"", "0-21 alike=Harbour Easel"},
      {"no:photo", "0-8 no=photo"},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_field), each.offered) << each.text;
}

TEST(Fields, HoweverTheyAreWritten) {
  const Case cases[] = {
      {"Shape:Circle", "0-12 shape=circle"},
      {"shape: circle", "0-13 shape=circle"},
      {"shape:circles", "0-13 shape=circle"},
      {"color:sage", "0-10 colour=Sage"},
      {"technique:splatter", "0-18 technique=speckling"},
      {"easel shape:circle sage", "6-18 shape=circle"},
      {"shape:circle size:2in", "0-12 shape=circle; 13-21 size=2in ±1/32in"},
      {"shape:circle,size:2in", "0-12 shape=circle; 13-21 size=2in ±1/32in"},
      {"-shape:circle", "1-13 shape=circle"},
      {"(shape:circle)", "1-13 shape=circle"},
      // no fields
      {"shape :circle", ""},
      {"shape circle", ""},
      {"10:30", ""},
      {"circle", ""},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_field), each.offered) << each.text;
}

// The same value under each other name of the field.
TEST(Fields, UnderEachName) {
  const Offers offers;
  int names = 0;
  for (const Field& field : fields) {
    if (field.kind == FieldKind::group) continue;
    const std::string example(field.example);
    const std::size_t begins = example.find(std::string(field.name) + ":");
    if (begins != 0) continue;
    const std::string value = example.substr(field.name.size());
    const std::string expected = offers.on(example, is_field);
    const std::string meant = expected.substr(expected.find(' '));
    std::string_view others = field.other_names;
    while (!others.empty()) {
      const std::size_t end = std::min(others.find(' '), others.size());
      const std::string said = std::string(others.substr(0, end)) + value;
      others.remove_prefix(std::min(end + 1, others.size()));
      EXPECT_EQ(offers.on(said, is_field), "0-" + std::to_string(said.size()) + meant) << said;
      ++names;
    }
  }
  EXPECT_GT(names, 25);
}

TEST(Fields, Groups) {
  const auto group = [](const Seen& seen) {
    return seen.as == As::group || seen.as == As::opens || seen.as == As::closes ||
           seen.as == As::preposition || is_field(seen);
  };
  const Case cases[] = {
      {"with:(shape:circle)", "0-5 with; 5-6 (; 6-18 shape=circle; 18-19 )"},
      {"on:(shape:square)", "0-3 on; 3-4 (; 4-16 shape=square; 16-17 )"},
      {"behind:(shape:square)", "0-7 behind; 7-8 (; 8-20 shape=square; 20-21 )"},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, group), each.offered) << each.text;
}

// An unknown value of a vocabulary or a name is asked for as it stands; of the other kinds it falls away.
TEST(Fields, WhatIsNoValue) {
  const Case cases[] = {
      {"shape:blobby", "0-12 shape=blobby"},
      {"colour:mauve", "0-12 colour=mauve"},
      {"shape:", "0-6 "},
      {"shap:circle", "0-11 "},
      {"easel shap:circle sage", "6-17 "},
      {"size:foo", "0-8 "},
      {"count:0", "0-7 "},
      {"count:1000", "0-10 "},
      {"side:nowhere", "0-12 "},
      {"closed:foo", "0-10 "},
      {"made:2023-02-29", "0-15 "},
      {"no:shape", "0-8 "},
      {"with:circle", "0-5 "},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_field), each.offered) << each.text;
}

}  // namespace
}  // namespace insetbook
