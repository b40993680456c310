// SPDX-License-Identifier: GPL-3.0-or-later
//
// Question → printed tree, one case for each rule of language/bind.h and of the recognisers, and every
// question printed back as fields reads to the same tree.
#include "language/read_question.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "language/fields.h"
#include "language/reading_steps.h"
#include "language/table_names.h"

namespace insetbook {
namespace {

struct Case {
  const char* question;
  const char* tree;
};

class ReadQuestion : public testing::Test {
 protected:
  Result<Question> read(std::string_view text) const { return read_question(text, context()); }
  ReadingContext context() const { return {vocabulary_, names_, Unit::inch, "2026-11-25"}; }
  std::string tree(std::string_view text) const {
    const auto question = read(text);
    return question ? print(*question) : "Problem: " + question.error().what;
  }
  // Each question reads to its tree, and so does what it is printed as.
  void expect_trees(const std::vector<Case>& cases) const;
  Vocabulary vocabulary_;
  TableNames names_;
};

void ReadQuestion::expect_trees(const std::vector<Case>& cases) const {
  for (const Case& each : cases) {
    EXPECT_EQ(tree(each.question), each.tree) << each.question;
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    const std::string fields = print_as_fields(*question);
    EXPECT_EQ(tree(fields), each.tree) << each.question << " as fields: " << fields;
  }
}

TEST_F(ReadQuestion, Trees) {
  const Case cases[] = {
      {"designs using a 2-3/8 in circle with a stand-up fold",
       "all(piece(size=2-3/8in ±1/32in, shape=circle), fold=stand up fold)"},
      {"shape:circle size:2-3/8in fold:stand-up",
       "all(piece(shape=circle, size=2-3/8in ±1/32in), fold=stand up fold)"},
      {"with:(shape:circle size:2-3/8in) fold:stand-up",
       "all(piece(shape=circle, size=2-3/8in ±1/32in), fold=stand up fold)"},
      {"what fits inside this frame?", "fits(this frame)"},
      {"what fits inside the second largest tidepool rectangle", "fits(second largest tidepool rectangle)"},
      {"what goes in tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"what panel fits in the second largest tidepool rectangle, 1/8 in border",
       "fits(second largest tidepool rectangle; border=1/8 in)"},
      {"what frames a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which die goes round a 2-3/8 in circle", "frames(2-3/8 in circle)"},
      {"which circle fits inside the largest tidepool rectangle",
       "fits(largest tidepool rectangle; shape=circle)"},
      {"what size do I cut for the second largest tidepool rectangle so an eighth shows all round",
       "fits(second largest tidepool rectangle; border=1/8 in)"},
      {"frame for a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which designs fit in an A6 envelope", "all(envelope=a6)"},
      {"a 3 in circle beside a 2-3/8 in strip",
       "all(piece(size=3in ±1/32in, shape=circle), piece(size=2-3/8in ±1/32in, role=strip))"},
      {"2-3/8\" circle, speckled", "all(piece(size=2-3/8in ±1/32in, shape=circle, technique=speckling))"},
      {"2⅜ in circle with speckling", "all(piece(size=2-3/8in ±1/32in, shape=circle, technique=speckling))"},
      {"circle about 2 in", "all(piece(shape=circle, size=about 2in ±1/8in))"},
      {"circle under 3 in", "all(piece(shape=circle, size=under 3in))"},
      {"circle over 60 mm", "all(piece(shape=circle, size=over 60mm))"},
      {"circle at least 2 in", "all(piece(shape=circle, size=at least 2in))"},
      {"circle up to 2 in", "all(piece(shape=circle, size=at most 2in))"},
      {"circle 2 to 3 in", "all(piece(shape=circle, size=2in to 3in))"},
      {"circle between 2 and 3 in", "all(piece(shape=circle, size=2in to 3in))"},
      {"2 in ± 1/16 in circle", "all(piece(size=2in ±1/16in, shape=circle))"},
      {"2 in +- 1/16 in circle", "all(piece(size=2in ±1/16in, shape=circle))"},
      {"2 x 3 in panel", "all(piece(size=2in x 3in ±1/32in, role=panel))"},
      {"2 x 3 in tall panel", "all(piece(size=2in wide x 3in tall ±1/32in, role=panel))"},
      {"tall 3 x 2 in panel", "all(piece(size=2in wide x 3in tall ±1/32in, role=panel))"},
      {"2 in wide strip", "all(piece(size=2in wide ±1/32in, role=strip))"},
      {"panel 3 in tall", "all(piece(role=panel, size=3in tall ±1/32in))"},
      {"panel W 2 x H 3 in", "all(piece(role=panel, size=2in wide x 3in tall ±1/32in))"},
      {"white circle stamped in navy",
       "all(piece(paper=white (by value), shape=circle, technique=stamping, ink=Navy))"},
      {"circle stamped in navy ink", "all(piece(shape=circle, technique=stamping, ink=Navy))"},
      {"navy ink", "all(ink=Navy)"},
      {"navy paper circle", "all(piece(paper=Navy, shape=circle))"},
      {"navy cardstock", "all(paper=Navy)"},
      {"sage circle", "all(piece(paper=Sage, shape=circle))"},
      {"green circle", "all(piece(paper=green (by value), shape=circle))"},
      {"red circle", "all(text=red, piece(shape=circle))"},
      {"like:sage", "all(colour=like Sage, within 10)"},
      {"like sage within 5", "all(colour=like Sage, within 5)"},
      {"colour like:#a55030", "all(colour=like #a55030, within 10)"},
      {"#a55030", "all(colour=like #a55030, within 10)"},
      {"second largest tidepool rectangle", "all(piece(die=Tidepool Rectangles, second largest))"},
      {"circle in the second largest tidepool rectangle",
       "all(piece(shape=circle, in=Tidepool Rectangles, second largest))"},
      {"sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, high of centre",
       "all(piece(paper=Sage, shape=circle, size=2-3/8in ±1/32in, technique=speckling, die=Moonrise Circles "
       "3, on(piece(colour=grey (by value), role=panel)), at=high centre))"},
      {"two 2 in circles", "all(piece(count=2, size=2in ±1/32in, shape=circle))"},
      {"at least three circles", "all(piece(count=3, shape=circle))"},
      {"at most two circles", "all(none(piece(count=3, shape=circle)))"},
      {"5 x 7 cards", "all(closed=5in x 7in ±1/32in)"},
      {"A6 card", "all(closed=105mm x 148mm ±0.8mm)"},
      {"A2 card", "all(closed=4-1/4in x 5-1/2in ±1/32in)"},
      {"a2", "all(closed=4-1/4in x 5-1/2in ±1/32in)"},
      {"square cards", "all(closed=square)"},
      {"4 in square card", "all(closed=4in x 4in ±1/32in)"},
      {"landscape", "all(closed=landscape)"},
      {"landscape cards", "all(closed=landscape)"},
      {"card 5 x 7", "all(closed=5in x 7in ±1/32in)"},
      {"tall card", "all(closed=portrait)"},
      {"made in 2023", "all(made=2023)"},
      {"since March", "all(made=2026-03-01..)"},
      {"before 2021", "all(made=..2020-12-31)"},
      {"last spring", "all(made=2026-03-01..2026-05-31)"},
      {"in 2024", "all(made=2024)"},
      {"this year", "all(made=2026)"},
      {"in the last two years", "all(made=2024-11-25..2026-11-25)"},
      {"between 2020 and 2022", "all(made=2020-01-01..2022-12-31)"},
      {"easel made in 2023", "all(fold=easel, made=2023)"},
      {"\"happy birthday\" circle", "all(text=\"happy birthday\", piece(shape=circle))"},
      {"happy birthday", "all(occasion=birthday)"},
      {"2\" circle \"happy birthday\"",
       "all(piece(size=2in ±1/32in, shape=circle), text=\"happy birthday\")"},
      {"not easel", "all(none(fold=easel))"},
      {"circle without speckling", "all(piece(shape=circle, none(technique=speckling)))"},
      {"without a speckled circle", "all(none(piece(technique=speckling, shape=circle)))"},
      {"no vellum and ribbon", "all(none(material=vellum), none(material=ribbon), none(piece(role=ribbon)))"},
      {"no vellum, ribbon or lace", "all(none(material=vellum), none(material=ribbon), none(material=lace))"},
      {"circle -speckled", "all(piece(shape=circle), none(technique=speckling))"},
      {"-easel", "all(none(fold=easel))"},
      {"circle or square", "all(piece(any(shape=circle, shape=square)))"},
      {"2 in circle or square", "all(piece(size=2in ±1/32in, any(shape=circle, shape=square)))"},
      {"2 in circle or 3 in square",
       "all(any(piece(size=2in ±1/32in, shape=circle), piece(size=3in ±1/32in, shape=square)))"},
      {"sage or navy circle", "all(piece(any(paper=Sage, paper=Navy), shape=circle))"},
      {"easel or gate fold", "all(any(fold=easel, fold=gate))"},
      {"sage circle or navy square",
       "all(any(piece(paper=Sage, shape=circle), piece(paper=Navy, shape=square)))"},
      {"circle, square or oval", "all(piece(any(shape=circle, shape=square, shape=oval)))"},
      {"shape:circle size:2in shape:square",
       "all(piece(shape=circle, size=2in ±1/32in), piece(shape=square))"},
      {"frobnitz circle", "all(text=frobnitz, piece(shape=circle))"},
      {"sage circle navy square", "all(piece(paper=Sage, shape=circle), piece(paper=Navy, shape=square))"},
      {"circle 2 in square 3 in",
       "all(piece(shape=circle, size=2in ±1/32in), piece(shape=square, size=3in ±1/32in))"},
      {"circle on a square", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"a lichen grey mat behind a circle",
       "all(piece(colour=Lichen Grey, role=mat, behind(piece(shape=circle))))"},
      {"sage and navy circle", "all(piece(colour=Sage, colour=Navy, shape=circle))"},
      {"circle and speckled square", "all(piece(shape=circle), piece(technique=speckling, shape=square))"},
      {"speckled", "all(technique=speckling)"},
      {"speckled sage", "all(piece(technique=speckling, colour=Sage))"},
      {"sage, speckled", "all(colour=Sage, technique=speckling)"},
      {"no photo", "all(no=photo)"},
      {"without envelope", "all(no=envelope)"},
      {"birthday cards with a circle", "all(occasion=birthday, piece(shape=circle))"},
      {"circle easel", "all(fold=circle easel)"},
      {"cards", "all()"},
      {"sage, speckled", "all(colour=Sage, technique=speckling)"},
      {"no vellum and ribbon", "all(none(material=vellum), none(material=ribbon), none(piece(role=ribbon)))"},
      {"what size do I cut for the second largest tidepool rectangle so an eighth shows all round",
       "fits(second largest tidepool rectangle; border=1/8 in)"},
      {"what fits in a 3 in circle with a 1/4 in border", "fits(3 in circle; border=1/4 in)"},
      {"what fits in tidepool rectangles 2 with an eighth showing",
       "fits(tidepool rectangles 2; border=1/8 in)"},
      {"which dies fit around a 2 in circle", "frames(2 in circle)"},
      {"what can I put round a 2-3/8 in circle", "frames(2-3/8 in circle)"},
      {"what fits behind the window of the big label", "fits(window of the big label)"},
      {"colour like:#a55030", "all(colour=like #a55030, within 10)"},
      {"from moonrise circles 3", "all(piece(die=Moonrise Circles 3))"},
      {"tidepool rectangles 2, stitched", "all(piece(die=Tidepool Rectangles 2, stitched))"},
      {"the stitched line of tidepool rectangles 2", "all(piece(die=Tidepool Rectangles 2, stitched))"},
      {"large tag", "all(text=large, piece(shape=tag))"},
      {"big labels large tag", "all(piece(die=Big Labels large tag))"},
      {"the smallest moonrise circle", "all(piece(die=Moonrise Circles, smallest))"},
      {"moonrise circles 99", "all(piece(die=Moonrise Circles 99))"},
      {"garden gate stamps", "all(supply=Garden Gate)"},
      {"circle with garden gate", "all(piece(shape=circle, supply=Garden Gate))"},
      {"kelp", "all(colour=Kelp)"},
      {"kelp ink", "all(ink=Kelp)"},
      {"birthday card with a stitched strip and a sentiment on vellum",
       "all(occasion=birthday, piece(technique=stitching, role=strip), piece(role=sentiment, "
       "material=vellum))"},
      {"stand-up fold with dry embossing", "all(fold=stand up fold, technique=dry embossing)"},
      {"2-3/8 in circle with a stand-up fold and dry embossing",
       "all(piece(size=2-3/8in ±1/32in, shape=circle), fold=stand up fold, technique=dry embossing)"},
      {"fold:easel, technique:\"dry embossing\"", "all(fold=easel, technique=dry embossing)"},
      {"fold:(easel or gate)", "all(any(fold=easel, fold=gate))"},
      {"-fold:easel shape:circle", "all(none(fold=easel), piece(shape=circle))"},
      {"(circle or easel) birthday", "all(any(piece(shape=circle), fold=easel), occasion=birthday)"},
      {"(sage circle) or (navy square easel)",
       "all(any(piece(paper=Sage, shape=circle), all(piece(paper=Navy, shape=square), fold=easel)))"},
      {"circle and not sage", "all(piece(shape=circle, none(paper=Sage)))"},
      {"circle not sage or navy", "all(piece(shape=circle, none(paper=Sage), none(paper=Navy)))"},
      {"cards without a circle and a square", "all(none(piece(shape=circle)), none(piece(shape=square)))"},
      {"with:(shape:circle -technique:speckling)", "all(piece(shape=circle, none(technique=speckling)))"},
      {"with:(shape:circle (colour:sage or colour:navy) count:2)",
       "all(piece(shape=circle, any(colour=Sage, colour=Navy), count=2))"},
      {"shape: circle", "all(piece(shape=circle))"},
      {"made:2023-05..2024", "all(made=2023-05-01..2024-12-31)"},
      {"circle inside", "all(piece(shape=circle, side=inside))"},
      {"circle on the front", "all(piece(shape=circle, side=front))"},
      {"on the inside", "all(piece(side=inside))"},
      {"inside panel", "all(any(piece(role=inside panel), piece(role=panel, side=inside)))"},
      {"2 circles", "all(piece(count=2, shape=circle))"},
      {"2 circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"circle 2", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"2x circle", "all(piece(count=2, shape=circle))"},
      {"three sage circles", "all(piece(count=3, paper=Sage, shape=circle))"},
      {"a circle and two strips", "all(piece(shape=circle), piece(count=2, role=strip))"},
      {"under 5 x 7 cards", "all(closed=under 5in x 7in)"},
      {"5 x 7 in easel cards", "all(closed=5in x 7in ±1/32in, fold=easel)"},
      {"5 x 7 sage easel card with a circle",
       "all(colour=Sage, fold=easel, closed=5in x 7in ±1/32in, piece(shape=circle))"},
      {"5 x 7 or 4 x 6 cards", "all(any(closed=5in x 7in ±1/32in, closed=4in x 6in ±1/32in))"},
      {"cards closing to 5 x 7", "all(closed=5in x 7in ±1/32in)"},
      {"A6 easel", "all(closed=105mm x 148mm ±0.8mm, fold=easel)"},
      {"2-3/8 in card", "all(closed=2-3/8in ±1/32in)"},
      {"landscape easel not square cards", "all(closed=landscape, fold=easel, none(closed=square))"},
      {"thank you", "all(occasion=thank you)"},
      {"Thinking of you with flowers",
       "all(occasion=thinking of you, any(piece(shape=flower), text=flowers))"},
      {"fussy cut flowers", "all(piece(technique=hand cutting, shape=flower))"},
      {"popped up circle", "all(piece(any(technique=popped up, glue=foam), shape=circle))"},
      {"house", "all(any(piece(shape=house), text=house))"},
      {"house 2 in", "all(piece(shape=house, size=2in ±1/32in))"},
      {"retired dies", "all(piece(die=withdrawn))"},
      {"no foo bar", "all(none(all(text=foo, text=bar)))"},
      {"-foo bar", "all(none(text=foo), text=bar)"},
      {"pop-corn", "all(text=\"pop corn\")"},
      {"foo or bar", "all(any(text=foo, text=bar))"},
      {"circle or foo", "all(any(piece(shape=circle), text=foo))"},
      {"or circle", "all(piece(shape=circle))"},
      {"circle or", "all(piece(shape=circle))"},
      {"(((circle)))", "all(piece(shape=circle))"},
      {"circle (sage)", "all(piece(shape=circle, paper=Sage))"},
      {"text:happy", "all(text=happy)"},
      {"text:\"happy birthday\"", "all(text=\"happy birthday\")"},
      {"in:\"tidepool rectangles 2\"", "all(piece(in=Tidepool Rectangles 2))"},
      {"die:\"moonrise circles\"", "all(piece(die=Moonrise Circles))"},
      {"based:\"harbour easel\"", "all(based=Harbour Easel)"},
      {"title:\"harbour easel\"", "all(title=Harbour Easel)"},
      {"harbour easel", "all(any(title=Harbour Easel, all(text=harbour, fold=easel)))"},
      {"the harbour easel", "all(text=harbour, fold=easel)"},
      {"supply:\"garden gate\"", "all(supply=Garden Gate)"},
      {"paper:white ink:navy", "all(paper=white (by value), ink=Navy)"},
      {"closed:\"5 x 7 in\"", "all(closed=5in x 7in ±1/32in)"},
      {"closed:square", "all(closed=square)"},
      {"closed:A6", "all(closed=105mm x 148mm ±0.8mm)"},
      {"no:photo", "all(no=photo)"},
      {"like:sage", "all(colour=like Sage, within 10)"},
      {"colour:mauveine", "all(colour=mauveine)"},
      {"shape:blobby", "all(piece(shape=blobby))"},
      {"12 cards", "all(text=12)"},
      {"what", "all()"},
      {"circle < 3 in", "all(piece(shape=circle, size=under 3in))"},
      {"circle >= 2 in", "all(piece(shape=circle, size=at least 2in))"},
      {"~2 in circle", "all(piece(size=about 2in ±1/8in, shape=circle))"},
      {"2 in or larger circle", "all(piece(size=at least 2in, shape=circle))"},
      {"2 in square", "all(piece(size=2in ±1/32in, shape=square))"},
      {"2-1/2 by 3-1/4 inch rectangle", "all(piece(size=2-1/2in x 3-1/4in ±1/32in, shape=rectangle))"},
      {"a circle of 2 inches", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"circle 2 inches across", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"2 in diameter circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"an inch and a half circle", "all(piece(size=1-1/2in ±1/32in, shape=circle))"},
      {"quarter inch strip", "all(piece(size=1/4in ±1/32in, role=strip))"},
      {"two 1/4 in strips", "all(piece(count=2, size=1/4in ±1/32in, role=strip))"},
      {"3 by 4", "all(piece(size=3in x 4in ±1/32in))"},
      {"square", "all(piece(shape=square))"},
      {"square card with a square panel", "all(closed=square, piece(shape=square, role=panel))"},
      {"navy card with a white circle", "all(colour=Navy, piece(paper=white (by value), shape=circle))"},
      {"dry embossed in navy", "all(piece(technique=dry embossing, paper=Navy))"},
      {"heat embossed in navy", "all(piece(technique=heat embossing, ink=Navy))"},
      {"image stamped in navy on white",
       "all(piece(role=stamped image, technique=stamping, ink=Navy, paper=white (by value)))"},
      {"image on sage", "all(piece(role=stamped image, paper=Sage))"},
      {"circle stamped with navy", "all(piece(shape=circle, technique=stamping, ink=Navy))"},
      {"circle with a navy strip", "all(piece(shape=circle), piece(colour=Navy, role=strip))"},
      {"circle with navy", "all(piece(shape=circle, paper=Navy))"},
      {"which cards have a circle in the second largest tidepool rectangle",
       "all(piece(shape=circle, in=Tidepool Rectangles, second largest))"},
      {"show me everything with a heart", "all(piece(shape=heart))"},
      {"cards I made last month", "all(made=2026-10-01..2026-10-31)"},
      {"cards made in March 2023", "all(made=2023-03-01..2023-03-31)"},
      {"birthday cards from 2022 with a circle under 3 in",
       "all(occasion=birthday, made=2022, piece(shape=circle, size=under 3in))"},
      {"shaker cards with a scalloped circle", "all(feature=shaker, piece(shape=scalloped circle))"},
      {"designs with a 2-3/8 in circle and a 3 x 4 in panel",
       "all(piece(size=2-3/8in ±1/32in, shape=circle), piece(size=3in x 4in ±1/32in, role=panel))"},
      {"designs with a 2-3/8 in circle, a stand-up fold and dry embossing",
       "all(piece(size=2-3/8in ±1/32in, shape=circle), fold=stand up fold, technique=dry embossing)"},
      {"a 4 1/4 x 5 1/2 card with a z fold", "all(closed=4-1/4in x 5-1/2in ±1/32in, fold=z fold)"},
      {"easel card, 2 in circle", "all(fold=easel, piece(size=2in ±1/32in, shape=circle))"},
      {"2 in circles", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"circles 2 in", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"no circle", "all(none(piece(shape=circle)))"},
      {"cards without ribbon birthday",
       "all(none(material=ribbon), none(piece(role=ribbon)), occasion=birthday)"},
      {"without ribbon, with a circle",
       "all(none(material=ribbon), none(piece(role=ribbon)), piece(shape=circle))"},
      {"circle or square without ribbon",
       "all(piece(any(shape=circle, shape=square), none(material=ribbon)))"},
      {"circle with no ribbon", "all(piece(shape=circle), none(material=ribbon), none(piece(role=ribbon)))"},
      {"anything but circles", "all(none(piece(shape=circle)))"},
      {"not made in 2023", "all(none(made=2023))"},
      {"circle not made in 2023", "all(piece(shape=circle), none(made=2023))"},
      {"sage or green circle", "all(piece(any(paper=Sage, paper=green (by value)), shape=circle))"},
      {"sage or navy", "all(any(colour=Sage, colour=Navy))"},
      {"any circle", "all(piece(shape=circle))"},
      {"a circle but not a square", "all(piece(shape=circle), none(piece(shape=square)))"},
      {"stitched circle", "all(piece(technique=stitching, shape=circle))"},
      {"the largest moonrise circle with a stand-up fold",
       "all(piece(die=Moonrise Circles, largest), fold=stand up fold)"},
      {"in the largest tidepool rectangle", "all(piece(in=Tidepool Rectangles, largest))"},
      {"a panel in the stitched line of the second largest tidepool rectangle",
       "all(piece(role=panel, in=Tidepool Rectangles, second largest, stitched))"},
      {"speckled panel in tidepool rectangles 2",
       "all(piece(technique=speckling, role=panel, in=Tidepool Rectangles 2))"},
      {"panel inside the second largest tidepool rectangle, stitched",
       "all(piece(role=panel, in=Tidepool Rectangles, second largest, stitched))"},
      {"panel in the second largest tidepool rectangle, stitched, with a circle",
       "all(piece(role=panel, in=Tidepool Rectangles, second largest, stitched), piece(shape=circle))"},
      {"circle cut with moonrise circles 3", "all(piece(shape=circle, die=Moonrise Circles 3))"},
      {"two tidepool rectangles", "all(piece(count=2, die=Tidepool Rectangles))"},
      {"tidepool rectangle 2 x 3 in", "all(piece(die=Tidepool Rectangles, size=2in x 3in ±1/32in))"},
      {"tidepool rectangles 2 in", "all(piece(die=Tidepool Rectangles, size=2in ±1/32in))"},
      {"5 x 7", "all(piece(size=5in x 7in ±1/32in))"},
      {"5 x 7 in panel on a card", "all(piece(size=5in x 7in ±1/32in, role=panel))"},
      {"panel 3 x 4 in on a 5 x 7 card",
       "all(piece(role=panel, size=3in x 4in ±1/32in), closed=5in x 7in ±1/32in)"},
      {"3 x 4 panel on a 4-1/4 x 5-1/2 card with a gate fold",
       "all(piece(size=3in x 4in ±1/32in, role=panel), closed=4-1/4in x 5-1/2in ±1/32in, fold=gate)"},
      {"2 in", "all(piece(size=2in ±1/32in))"},
      {"about 2 in", "all(piece(size=about 2in ±1/8in))"},
      {"2 in or 3 in circle", "all(piece(any(size=2in ±1/32in, size=3in ±1/32in), shape=circle))"},
      {"2 or 3 in circle", "all(piece(any(size=2in ±1/32in, size=3in ±1/32in), shape=circle))"},
      {"between two and three inches", "all(piece(size=2in to 3in))"},
      {"circle between 2 in and 3 in", "all(piece(shape=circle, size=2in to 3in))"},
      {"at least 2 circles", "all(piece(count=2, shape=circle))"},
      {"more than two circles", "all(piece(count=3, shape=circle))"},
      {"fewer than three circles", "all(none(piece(count=3, shape=circle)))"},
      {"less than 3 circles", "all(none(piece(count=3, shape=circle)))"},
      {"exactly two circles", "all(piece(count=2, shape=circle), none(piece(count=3, shape=circle)))"},
      {"circle exactly 2 in", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"1/8 in border", "all(piece(size=1/8in ±1/32in, role=border))"},
      {"mat with 1/8 in border", "all(piece(role=mat), piece(size=1/8in ±1/32in, role=border))"},
      {"layered mats", "all(piece(technique=layering, role=mat))"},
      {"grey panel high of centre", "all(piece(colour=grey (by value), role=panel, at=high centre))"},
      {"says happy birthday", "all(occasion=birthday)"},
      {"with the words \"thank you\"", "all(words=\"thank you\")"},
      {"sentiment saying thank you", "all(words=\"thank you\")"},
      {"sentiment in navy", "all(piece(role=sentiment, colour=Navy))"},
      {"sentiment stamped in navy ink on a white strip",
       "all(piece(role=sentiment, technique=stamping, ink=Navy, on(piece(colour=white (by value), "
       "role=strip))))"},
      {"white strip with a navy sentiment",
       "all(piece(colour=white (by value), role=strip), piece(colour=Navy, role=sentiment))"},
      {"heat embossed white sentiment",
       "all(piece(technique=heat embossing, colour=white (by value), role=sentiment))"},
      {"gold ink", "all(material=metallic ink)"},
      {"gold foil", "all(text=gold, any(material=foil, text=foil))"},
      {"navy or sage ink", "all(any(ink=Navy, ink=Sage))"},
      {"circle in navy or sage", "all(piece(shape=circle, any(paper=Navy, paper=Sage)))"},
      {"circle in sage", "all(piece(shape=circle, paper=Sage))"},
      {"circle of sage paper", "all(piece(shape=circle, paper=Sage))"},
      {"sage paper and navy ink", "all(paper=Sage, ink=Navy)"},
      {"front panel speckled", "all(piece(role=panel, technique=speckling))"},
      {"liner inside", "all(piece(role=liner, side=inside))"},
      {"something speckled on the inside", "all(piece(technique=speckling, side=inside))"},
      {"card with photo", "all(none(no=photo))"},
      {"cards with photos of hens", "all(any(piece(role=photograph), text=photos), text=hens)"},
      {"easel that has an envelope", "all(fold=easel, none(no=envelope))"},
      {"cards saying happy birthday on a circle", "all(words=\"happy birthday\", piece(shape=circle))"},
      {"with the words thank you, easel", "all(words=\"thank you\", fold=easel)"},
      {"circle w/ speckling", "all(piece(shape=circle, technique=speckling))"},
      {"circle w/o speckling", "all(piece(shape=circle, none(technique=speckling)))"},
      {"easels only", "all(fold=easel)"},
      {"something that's not an easel", "all(none(fold=easel))"},
      {"more than one circle", "all(piece(count=2, shape=circle))"},
      {"at least one circle", "all(piece(count=1, shape=circle))"},
      {"no more than one circle", "all(none(piece(count=2, shape=circle)))"},
      {"2 or more circles", "all(piece(count=2, shape=circle))"},
      {"three or more circles", "all(piece(count=3, shape=circle))"},
      {"2 circles or more", "all(piece(count=2, shape=circle))"},
      {"2 to 3 circles", "all(piece(count=2, shape=circle), none(piece(count=4, shape=circle)))"},
      {"one or two circles", "all(piece(count=1, shape=circle), none(piece(count=3, shape=circle)))"},
      {"white circle with navy stamping",
       "all(piece(paper=white (by value), shape=circle, ink=Navy, technique=stamping))"},
      {"white circle, stamped navy",
       "all(piece(paper=white (by value), shape=circle, technique=stamping, ink=Navy))"},
      {"navy stamped white circle",
       "all(piece(ink=Navy, technique=stamping, paper=white (by value), shape=circle))"},
      {"circle stamped in navy and sage", "all(piece(shape=circle, technique=stamping, ink=Navy, ink=Sage))"},
      {"newest easel", "all(fold=easel), newest"},
      {"the last five cards", "all(), newest 5"},
      {"the three newest cards", "all(), newest 3"},
      {"two newest easels", "all(fold=easel), newest 2"},
      {"the 5 oldest", "all(), oldest 5"},
      {"my first card with a circle", "all(piece(shape=circle)), oldest 1"},
      {"oldest 3 easels", "all(fold=easel), oldest 3"},
      {"most recent 2 in circle", "all(piece(size=2in ±1/32in, shape=circle)), newest"},
      {"based on the harbour", "all(based=Harbour Easel)"},
      {"more like the harbour", "all(alike=Harbour Easel)"},
      {"A5 base", "all(piece(size=148mm x 210mm ±0.8mm, role=base))"},
      {"half letter base", "all(piece(size=5-1/2in x 8-1/2in ±1/32in, role=base))"},
      {"not a z fold", "all(none(fold=z fold))"},
      {"Z", "all(fold=z fold)"},
      {"tri-fold", "all(fold=letter tri fold)"},
      {"tag", "all(piece(shape=tag))"},
      {"a tag with a bow", "all(piece(shape=tag), piece(role=bow))"},
      {"christmas cards from last year", "all(occasion=christmas, made=2025)"},
      {"christmas cards 2024", "all(occasion=christmas, made=2024)"},
      {"2023", "all(made=2023)"},
      {"cards 2023-05-12", "all(made=2023-05-12)"},
      {"May 2023", "all(made=2023-05-01..2023-05-31)"},
      {"may", "all(text=may)"},
      {"march", "all(text=march)"},
      {"in may", "all(made=2026-05-01..2026-05-31)"},
      {"last winter", "all(made=2025-12-01..2026-02-28)"},
      {"this spring", "all(made=2026-03-01..2026-05-31)"},
      {"today", "all(made=2026-11-25)"},
      {"last two weeks", "all(made=2026-11-11..2026-11-25)"},
      {"older than 2020", "all(made=..2019-12-31)"},
      {"newer than 2024", "all(made=2025-01-01..)"},
      {"since 2020-05-01", "all(made=2020-05-01..)"},
      {"made by hand", "all(text=hand)"},
      {"2020-2022", "all(made=2020-01-01..2022-12-31)"},
      {"made 2020..2022", "all(made=2020-01-01..2022-12-31)"},
      {"from 2020 to 2022", "all(made=2020-01-01..2022-12-31)"},
      {"1990 circle", "all(made=1990, piece(shape=circle))"},
      {"50 mm circle", "all(piece(size=50mm ±0.8mm, shape=circle))"},
      {"5cm circle", "all(piece(size=50mm ±0.8mm, shape=circle))"},
      {"6,5 cm circle", "all(piece(size=65mm ±0.8mm, shape=circle))"},
      {"60 x 80 mm panel", "all(piece(size=60mm x 80mm ±0.8mm, role=panel))"},
      {"circle of about 60mm", "all(piece(shape=circle, size=about 60mm ±3mm))"},
      {"circle ø 60 mm", "all(piece(shape=circle, size=60mm ±0.8mm))"},
      {"2 in circle 3 in square",
       "all(piece(size=2in ±1/32in, shape=circle), piece(size=3in ±1/32in, shape=square))"},
      {"2 in sage circle, 3 in navy square, speckled",
       "all(piece(size=2in ±1/32in, paper=Sage, shape=circle), piece(size=3in ±1/32in, paper=Navy, "
       "shape=square, technique=speckling))"},
      {"circle: 2 in", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"note: circle", "all(text=note, piece(shape=circle))"},
      {"10:30", "all(text=10, text=30)"},
      {"a/b", "all(text=b)"},
      {"circle/square", "all(piece(any(shape=circle, shape=square)))"},
      {"circle & square", "all(piece(shape=circle), piece(shape=square))"},
      {"circle + square", "all(piece(shape=circle), piece(shape=square))"},
      {"-\"happy birthday\"", "all(none(text=\"happy birthday\"))"},
      {"-(circle square)", "all(none(all(piece(shape=circle), piece(shape=square))))"},
      {"-shape:circle size:2in", "all(none(piece(shape=circle)), piece(size=2in ±1/32in))"},
      {"-2 in circle easel", "all(none(piece(size=2in ±1/32in)), fold=circle easel)"},
      {"-speckled circle", "all(none(piece(technique=speckling, shape=circle)))"},
      {"-sage easel", "all(none(colour=Sage), fold=easel)"},
      {"--foo", "all(text=foo)"},
      {"- circle", "all(piece(shape=circle))"},
      {"not", "all()"},
      {"not not circle", "all(none(piece(shape=circle)))"},
      {"no no circle", "all(none(piece(shape=circle)))"},
      {"with", "all()"},
      {"and and circle", "all(piece(shape=circle))"},
      {"or or or", "all()"},
      {"\"\" circle", "all(piece(shape=circle))"},
      {"\" \" circle", "all(piece(shape=circle))"},
      {"'happy birthday' circle", "all(text=\"happy birthday\", piece(shape=circle))"},
      {"valentine's circle", "all(occasion=valentines day, piece(shape=circle))"},
      {"mother's day", "all(occasion=mothers day)"},
      {"2' circle", "all(piece(size=24in ±1/32in, shape=circle))"},
      {"color:sage", "all(colour=Sage)"},
      {"Colour:Sage", "all(colour=Sage)"},
      {"size:\"under 3 in\"", "all(piece(size=under 3in))"},
      {"size:under 3 in shape:circle", "all(piece(size=under 3in, shape=circle))"},
      {"size:<3in", "all(piece(size=under 3in))"},
      {"size:2x3in", "all(piece(size=2in x 3in ±1/32in))"},
      {"size:2-3", "all(piece(size=2in to 3in))"},
      {"size:2..3in", "all(piece(size=2in to 3in))"},
      {"made:..2020", "all(made=..2020-12-31)"},
      {"made:\"last spring\"", "all(made=2026-03-01..2026-05-31)"},
      {"side:inside shape:circle", "all(piece(side=inside, shape=circle))"},
      {"count:2 shape:circle", "all(piece(count=2, shape=circle))"},
      {"like:\"sage, within 5\"", "all(colour=like Sage, within 5)"},
      {"like:#a55030", "all(colour=like #a55030, within 10)"},
      {"ink:blue", "all(ink=blue (by value))"},
      {"in:\"tidepool rectangles 2, stitched\"", "all(piece(in=Tidepool Rectangles 2, stitched))"},
      {"die:\"second largest tidepool rectangle\"", "all(piece(die=Tidepool Rectangles, second largest))"},
      {"with:(shape:circle with:(shape:square))", "all(piece(shape=circle), piece(shape=square))"},
      {"with:(fold:easel shape:circle)", "all(piece(shape=circle), fold=easel)"},
      {"with:(happy shape:circle)", "all(piece(shape=circle), text=happy)"},
      {"with:()", "all()"},
      {"with:(a circle that is speckled) easel", "all(piece(shape=circle, technique=speckling), fold=easel)"},
      {"(circle or square) and (sage or navy)",
       "all(piece(any(shape=circle, shape=square), any(paper=Sage, paper=Navy)))"},
      {"(fold:easel or with:(shape:circle)) made:2023",
       "all(any(fold=easel, piece(shape=circle)), made=2023)"},
      {"circle easel or square gate", "all(any(fold=circle easel, piece(shape=square)), fold=gate)"},
      {"easel or gate or z fold", "all(any(fold=easel, fold=gate, fold=z fold))"},
      {"birthday or christmas or easter", "all(any(occasion=birthday, occasion=christmas, occasion=easter))"},
      {"not (circle or square)", "all(none(piece(any(shape=circle, shape=square))))"},
      {"not circle or square", "all(none(piece(any(shape=circle, shape=square))))"},
      {"anything but circles", "all(none(piece(shape=circle)))"},
      {"2 or 3 in circle", "all(piece(any(size=2in ±1/32in, size=3in ±1/32in), shape=circle))"},
      {"fewer than three circles", "all(none(piece(count=3, shape=circle)))"},
      {"card that says \"happy birthday\"", "all(words=\"happy birthday\")"},
      {"sage paper and navy ink", "all(paper=Sage, ink=Navy)"},
      {"panel in the second largest tidepool rectangle, stitched, with a circle",
       "all(piece(role=panel, in=Tidepool Rectangles, second largest, stitched), piece(shape=circle))"},
      {"in the second largest tidepool rectangle a circle",
       "all(piece(in=Tidepool Rectangles, second largest, shape=circle))"},
      {"cut edge of tidepool rectangles 2", "all(piece(die=Tidepool Rectangles 2, cut))"},
  };
  for (const Case& each : cases) {
    EXPECT_EQ(tree(each.question), each.tree) << each.question;
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    const std::string fields = print_as_fields(*question);
    EXPECT_EQ(tree(fields), each.tree) << each.question << " as fields: " << fields;
  }
}

TEST_F(ReadQuestion, PiecesThatGoTogether) {
  const Case cases[] = {
      {"circle on a square on a rectangle",
       "all(piece(shape=circle, on(piece(shape=square, on(piece(shape=rectangle))))))"},
      {"circle with a square behind it", "all(piece(shape=square, behind(piece(shape=circle))))"},
      {"square with a circle on it", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"circle with a square behind it, speckled",
       "all(piece(shape=square, behind(piece(shape=circle)), technique=speckling))"},
      {"easel with a circle on it", "all(fold=easel, piece(shape=circle))"},
      {"ribbon around the front",
       "all(any(piece(material=ribbon, around(), side=front), piece(role=ribbon, around(), side=front)))"},
      {"strip around the card", "all(piece(role=strip, around()))"},
      {"circle with a square behind", "all(piece(shape=circle), piece(shape=square, behind()))"},
      {"strip around a panel", "all(piece(role=strip, around(piece(role=panel))))"},
      {"ribbon through a tag",
       "all(any(piece(material=ribbon, through(piece(shape=tag))), piece(role=ribbon, "
       "through(piece(shape=tag)))))"},
      {"circle mounted on a square", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"circle layered on a square", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"circle matted on a navy square", "all(piece(shape=circle, on(piece(paper=Navy, shape=square))))"},
      {"image matted on white", "all(piece(role=stamped image, technique=layering, paper=white (by value)))"},
      {"circle on top of a strip", "all(piece(shape=circle, on(piece(role=strip))))"},
      {"square under a circle", "all(piece(shape=square, behind(piece(shape=circle))))"},
      {"square underneath a circle", "all(piece(shape=square, behind(piece(shape=circle))))"},
      {"square beneath a circle", "all(piece(shape=square, behind(piece(shape=circle))))"},
      {"square below a circle", "all(piece(shape=square, behind(piece(shape=circle))))"},
      {"square under 2 in", "all(piece(shape=square, size=under 2in))"},
      {"square under a 3 in circle",
       "all(piece(shape=square, behind(piece(size=3in ±1/32in, shape=circle))))"},
      {"circle under 2 in on a square over 3 in",
       "all(piece(shape=circle, size=under 2in, on(piece(shape=square, size=over 3in))))"},
      {"circle in a square", "all(piece(shape=circle, in(piece(shape=square))))"},
      {"oval inside another oval", "all(piece(shape=oval, in(piece(shape=oval))))"},
      {"circle framed by a square", "all(piece(shape=circle, in(piece(shape=square))))"},
      {"circle in navy on a square in sage",
       "all(piece(shape=circle, paper=Navy, on(piece(shape=square, paper=Sage))))"},
      {"sentiment stamped in navy on a circle",
       "all(piece(role=sentiment, technique=stamping, ink=Navy, on(piece(shape=circle))))"},
      {"circle beside a square", "all(piece(shape=circle), piece(shape=square))"},
      {"circle not on a square", "all(piece(shape=circle, none(on(piece(shape=square)))))"},
      {"circle but not on a square", "all(piece(shape=circle, none(on(piece(shape=square)))))"},
      {"without a circle on a square", "all(none(piece(shape=circle, on(piece(shape=square)))))"},
      {"easel without a circle on a square",
       "all(fold=easel, none(piece(shape=circle, on(piece(shape=square)))))"},
      {"no circle on a square and rectangle",
       "all(none(piece(shape=circle, on(piece(shape=square)))), none(piece(shape=rectangle)))"},
      {"circle without a square behind it", "all(piece(shape=circle, none(on(piece(shape=square)))))"},
      {"circle without a ribbon around it",
       "all(piece(shape=circle), none(piece(material=ribbon, around(piece(shape=circle)))), "
       "none(piece(role=ribbon, around(piece(shape=circle)))))"},
      {"-circle on a square", "all(none(piece(shape=circle, on(piece(shape=square)))))"},
      {"not on a square", "all(none(piece(on(piece(shape=square)))))"},
      {"something on a square", "all(piece(on(piece(shape=square))))"},
      {"on a square", "all(piece(on(piece(shape=square))))"},
      {"circle on a square or a rectangle",
       "all(piece(shape=circle, on(piece(any(shape=square, shape=rectangle)))))"},
      {"circle on a 3 in square or a 4 in rectangle",
       "all(piece(shape=circle, on(any(piece(size=3in ±1/32in, shape=square), piece(size=4in ±1/32in, "
       "shape=rectangle)))))"},
      {"circle on a square or on a rectangle",
       "all(piece(shape=circle, on(any(piece(shape=square), piece(shape=rectangle)))))"},
      {"circle on a square or behind a heart",
       "all(any(piece(shape=circle, on(piece(shape=square))), piece(shape=circle, "
       "behind(piece(shape=heart)))))"},
      {"circle on a square or an easel",
       "all(any(piece(shape=circle, on(piece(shape=square))), fold=easel))"},
      {"circle or oval on a square", "all(piece(any(shape=circle, shape=oval), on(piece(shape=square))))"},
      {"2 in circle or 3 in oval on a square",
       "all(any(piece(size=2in ±1/32in, shape=circle), piece(size=3in ±1/32in, shape=oval, "
       "on(piece(shape=square)))))"},
      {"circle on (a square or a heart)",
       "all(piece(shape=circle, on(piece(any(shape=square, shape=heart)))))"},
      {"circle on (sage square or navy heart)",
       "all(piece(shape=circle, on(any(piece(paper=Sage, shape=square), piece(paper=Navy, shape=heart)))))"},
      {"(sage circle) on a square", "all(piece(paper=Sage, shape=circle, on(piece(shape=square))))"},
      {"circle on a square and behind a heart",
       "all(piece(shape=circle, on(piece(shape=square)), behind(piece(shape=heart))))"},
      {"circle on a square, and a heart",
       "all(piece(shape=circle, on(piece(shape=square))), piece(shape=heart))"},
      {"circle on a square with a stand-up fold",
       "all(piece(shape=circle, on(piece(shape=square))), fold=stand up fold)"},
      {"circle on a square, speckled",
       "all(piece(shape=circle, on(piece(shape=square, technique=speckling))))"},
      {"two circles on three squares", "all(piece(count=2, shape=circle, on(piece(count=3, shape=square))))"},
      {"exactly two circles on a square",
       "all(piece(count=2, shape=circle, on(piece(shape=square))), none(piece(count=3, shape=circle, "
       "on(piece(shape=square)))))"},
      {"circle on exactly two squares",
       "all(piece(shape=circle, on(piece(count=2, shape=square)), none(on(piece(count=3, shape=square)))))"},
      {"circle on a tidepool rectangle", "all(piece(shape=circle, on(piece(die=Tidepool Rectangles))))"},
      {"circle in the second largest tidepool rectangle on a square",
       "all(piece(shape=circle, in=Tidepool Rectangles, second largest, on(piece(shape=square))))"},
      {"circle on a square easel", "all(piece(shape=circle, on(piece(shape=square))), fold=easel)"},
      {"circle on a square card", "all(piece(shape=circle), closed=square)"},
      {"circle on a 3 x 4 in", "all(piece(shape=circle, on(piece(size=3in x 4in ±1/32in))))"},
      {"navy ink on a sage circle", "all(piece(ink=Navy, paper=Sage, shape=circle))"},
      {"garden gate on a circle",
       "all(any(piece(supply=Garden Gate, shape=circle), piece(supply=Garden Gate, "
       "on(piece(shape=circle)))))"},
      {"garden gate stamp on a circle", "all(piece(supply=Garden Gate, shape=circle))"},
      {"speckling on a circle", "all(piece(technique=speckling, shape=circle))"},
      {"circle on vellum", "all(piece(shape=circle, material=vellum))"},
      {"vellum on a circle", "all(piece(material=vellum, on(piece(shape=circle))))"},
      {"white on a navy circle", "all(piece(colour=white (by value), on(piece(paper=Navy, shape=circle))))"},
      {"birthday on a circle", "all(occasion=birthday, piece(shape=circle))"},
      {"panel inside the card", "all(piece(role=panel, side=inside))"},
      {"with:(shape:circle on:(shape:square))", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"shape:circle on:(shape:square)", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"shape:circle -on:(shape:square)", "all(piece(shape=circle, none(on(piece(shape=square)))))"},
      {"with:(shape:circle in:(shape:square size:3in))",
       "all(piece(shape=circle, in(piece(shape=square, size=3in ±1/32in))))"},
      {"with:(role:ribbon around:())", "all(piece(role=ribbon, around()))"},
      {"with:(role:ribbon around:()) fold:easel", "all(piece(role=ribbon, around()), fold=easel)"},
      {"on:(shape:square)", "all(piece(on(piece(shape=square))))"},
      {"-on:(shape:square)", "all(none(piece(on(piece(shape=square)))))"},
      {"under:(shape:square)", "all(piece(behind(piece(shape=square))))"},
      {"with:(shape:circle on:(shape:square behind:(shape:heart)))",
       "all(piece(shape=circle, on(piece(shape=square, behind(piece(shape=heart))))))"},
      {"with:(shape:circle on:(with:(shape:square) or with:(shape:heart)))",
       "all(piece(shape=circle, on(any(piece(shape=square), piece(shape=heart)))))"},
      {"with:(circle on a square)", "all(piece(shape=circle, on(piece(shape=square))))"},
      {"with:(shape:circle on:(fold:easel))", "all(piece(shape=circle), fold=easel)"},
      {"circle over 2 in and under 3 in", "all(piece(shape=circle, size=over 2in, size=under 3in))"},
      {"over 2 in and under 3 in circle", "all(piece(size=over 2in, size=under 3in, shape=circle))"},
      {"circle over 2 in and a square under 3 in",
       "all(piece(shape=circle, size=over 2in), piece(shape=square, size=under 3in))"},
      {"alike:\"harbour easel\"", "all(alike=Harbour Easel)"},
      {"more like harbour easel", "all(alike=Harbour Easel)"},
      {"similar to the harbour easel", "all(alike=Harbour Easel)"},
      {"like harbour easel but with a circle", "all(alike=Harbour Easel, piece(shape=circle))"},
      {"cards like \"harbour easel\"", "all(alike=Harbour Easel)"},
      {"not like harbour easel", "all(none(alike=Harbour Easel))"},
      {"like sage", "all(colour=like Sage, within 10)"},
  };
  for (const Case& each : cases) {
    EXPECT_EQ(tree(each.question), each.tree) << each.question;
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    const std::string fields = print_as_fields(*question);
    EXPECT_EQ(tree(fields), tree(each.question)) << each.question << " as fields: " << fields;
  }
}

TEST_F(ReadQuestion, WordsThatHaveTwoMeanings) {
  const Case cases[] = {
      {"cards based on Harbour Easel", "all(based=Harbour Easel)"},
      {"based on the harbour easel", "all(based=Harbour Easel)"},
      {"based on \"harbour easel\"", "all(based=Harbour Easel)"},
      {"\"based on\":\"harbour easel\"", "all(based=Harbour Easel)"},
      {"based on:\"harbour easel\"", "all(based=Harbour Easel)"},
      {"find stitching", "all(technique=stitching)"},
      {"find window", "all(feature=window)"},
      {"kitchen window", "all(text=kitchen, any(feature=window, text=window))"},
      {"not stitching", "all(none(technique=stitching))"},
      {"envelope c6", "all(envelope=c6)"},
      {"sage ribbon", "all(any(piece(colour=Sage, material=ribbon), piece(colour=Sage, role=ribbon)))"},
      {"circle with ribbon", "all(piece(shape=circle), any(material=ribbon, piece(role=ribbon)))"},
      {"circle and a ribbon and a bow",
       "all(piece(shape=circle), any(material=ribbon, piece(role=ribbon)), piece(role=bow))"},
      {"tidepool rectangles no. 2", "all(piece(die=Tidepool Rectangles 2))"},
      {"with tidepool rectangles nr 2", "all(piece(die=Tidepool Rectangles 2))"},
      {"tidepool rectangles #2", "all(piece(die=Tidepool Rectangles 2))"},
      {"tidepool rectangles number 2", "all(piece(die=Tidepool Rectangles 2))"},
      {"last year's easel", "all(made=2025, fold=easel)"},
      {"last year\u2019s cards", "all(made=2025)"},
      {"exactly 2 circles", "all(piece(count=2, shape=circle), none(piece(count=3, shape=circle)))"},
      {"only two circles", "all(piece(count=2, shape=circle), none(piece(count=3, shape=circle)))"},
      {"just one circle", "all(piece(count=1, shape=circle), none(piece(count=2, shape=circle)))"},
      {"exactly 1 circle", "all(piece(count=1, shape=circle), none(piece(count=2, shape=circle)))"},
      {"exactly 2 in circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"strip 13 in long", "all(piece(role=strip, size=13in ±1/32in))"},
      {"13 in long strip", "all(piece(size=13in ±1/32in, role=strip))"},
  };
  for (const Case& each : cases) {
    EXPECT_EQ(tree(each.question), each.tree) << each.question;
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    const std::string fields = print_as_fields(*question);
    EXPECT_EQ(tree(fields), each.tree) << each.question << " as fields: " << fields;
  }
}

TEST_F(ReadQuestion, WhatCannotBeAsked) {
  const auto problem = [&](std::string_view text) {
    const auto question = read(text);
    if (!question || question->problems.empty()) return std::string("none");
    const Problem& found = question->problems.front();
    return std::to_string(found.where.at.value_or(99)) + ": " + found.what + "; " + found.expected;
  };
  EXPECT_EQ(problem("circle (sage"), "7: a bracket begins here and does not end; a ) where the group ends");
  EXPECT_EQ(problem("circle) sage"), "6: a bracket ends here and does not begin; a ( where the group begins");
  const std::string nothing = "0: nothing is asked; words, a size or a field, as in shape:circle";
  EXPECT_EQ(problem("%"), nothing);
  EXPECT_EQ(problem("()"), nothing);
  EXPECT_EQ(problem(""), "none");
}

// What cannot be read falls away; the rest is read, and each problem is told with its place.
TEST_F(ReadQuestion, ProblemsStandBesideTheRest) {
  struct Beside {
    const char* question;
    const char* tree;
    std::vector<std::string> problems;
  };
  const Beside cases[] = {
      {"shap:circle 2 in sage square",
       "all(piece(size=2in ±1/32in, paper=Sage, shape=square))",
       {"0: \"shap\" is no field"}},
      {"circle size:foo speckled",
       "all(piece(shape=circle, technique=speckling))",
       {"12: \"foo\" is no size"}},
      {"easel shape: circle", "all(fold=easel, piece(shape=circle))", {}},
      {"easel shape:", "all(fold=easel)", {"6: the field \"shape\" has no value"}},
      {"easel with:circle", "all(fold=easel, piece(shape=circle))", {"6: the field \"with\" has no value"}},
      {"easel on:circle", "all(fold=easel, piece(shape=circle))", {"6: the field \"on\" has no value"}},
      {"circle \"happy birthday",
       "all(piece(shape=circle), occasion=birthday)",
       {"7: a quote begins here and does not end"}},
      {"circle 2-9/8 in speckled",
       "all(piece(shape=circle, technique=speckling))",
       {"7: \"2-9/8\" has a whole number and a fraction that is not below one"}},
      {"circle 2-3/88 in speckled",
       "all(piece(shape=circle, technique=speckling))",
       {"7: \"2-3/88\" has a fraction that no ruler has"}},
      {"circle (sage",
       "all(piece(shape=circle), colour=Sage)",
       {"7: a bracket begins here and does not end"}},
      {"sage) circle", "all(piece(paper=Sage, shape=circle))", {"4: a bracket ends here and does not begin"}},
      {"with:(shape:circle paper:sage",
       "all(piece(shape=circle, paper=Sage))",
       {"5: a bracket begins here and does not end"}},
      {"shap:(circle or easel)", "all(any(piece(shape=circle), fold=easel))", {"0: \"shap\" is no field"}},
      {"count:lots circle made:\"some time\" easel foo:bar \"happy",
       "all(piece(shape=circle), fold=easel, text=happy)",
       {"6: \"lots\" is no count", "24: \"some time\" is no date", "41: \"foo\" is no field",
        "49: a quote begins here and does not end"}},
  };
  for (const Beside& each : cases) {
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    EXPECT_EQ(print(*question), each.tree) << each.question;
    std::vector<std::string> problems;
    for (const Problem& problem : question->problems)
      problems.push_back(std::to_string(problem.where.at.value_or(99)) + ": " + problem.what);
    EXPECT_EQ(problems, each.problems) << each.question;
  }
}

TEST_F(ReadQuestion, ItsStepsStayBelowAConstantTimesItsLength) {
  for (const std::string_view each : {"circle and ",
                                      "2 in or ",
                                      "circle with a square behind it ",
                                      "2 in ",
                                      "1/2 ",
                                      "2-3/8 x ",
                                      "no ribbon, ",
                                      "circle on it ",
                                      "a:b ",
                                      "\"",
                                      "(",
                                      "based on the harbour ",
                                      "moonrise circles second largest ",
                                      "like sage ",
                                      "in the last two years ",
                                      "saying a ",
                                      "w/o ",
                                      "- ",
                                      "\xe2\x85\x9c ",
                                      "two and three eighths "})
    for (const std::size_t size : {200u, 5000u, 60'000u}) {
      std::string text;
      while (text.size() < size) text += each;
      EXPECT_LE(reading_steps(text, context()), most_steps_a_byte * text.size() + steps_allowed_at_once)
          << each << " to " << size;
    }
}

// Pasted by mistake: told at once, whatever it would cost to look for.
TEST_F(ReadQuestion, TooMuchAtOnceIsRefused) {
  const auto repeated = [](std::string_view text, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) all += text;
    return all;
  };
  EXPECT_TRUE(read(repeated("circle and ", 20)));
  EXPECT_TRUE(read(repeated("kaletern ", 200)));
  for (const char* each : {"circle and ", "2 in or ", "circle with a square behind it ", "no ribbon, ",
                           "1/2 ", "circle on it ", "with a photo ", "saying word "}) {
    const auto question = read(repeated(each, 300));
    ASSERT_FALSE(question) << each;
    EXPECT_TRUE(question.error().what.starts_with("the question asks for ")) << question.error().what;
    EXPECT_EQ(question.error().expected, "at most 40 sizes, shapes, colours and the like, and 200 words");
  }
  const auto words = read(repeated("kaletern ", 201));
  ASSERT_FALSE(words);
  EXPECT_EQ(words.error().what, "the question looks for 201 words at once");
}

TEST_F(ReadQuestion, ProblemsAreToldToALimit) {
  std::string text;
  for (int i = 0; i < 8000; ++i) text += "foo:bar ";
  const auto fields = read(text + "easel");
  ASSERT_TRUE(fields);
  EXPECT_EQ(print(*fields), "all(fold=easel)");
  ASSERT_EQ(fields->problems.size(), 32u);
  EXPECT_EQ(fields->problems.front().where.at, 0u);
  // Of a long question only what stands round the place is quoted.
  const Place& last = fields->problems.back().where;
  ASSERT_EQ(last.at, 200u);
  EXPECT_LE(last.text.size(), 407u);
  EXPECT_EQ(last.text.substr(*last.at, last.length), "foo");
  const auto quotes = read(std::string(60000, '"') + "\xe2\x80\x9c easel");
  ASSERT_TRUE(quotes);
  EXPECT_EQ(quotes->problems.size(), 1u);
}

// What contradicts itself is said; the tree stays.
TEST_F(ReadQuestion, Contradictions) {
  struct Both {
    const char* question;
    const char* tree;
    const char* note;
  };
  const Both cases[] = {
      {"circle under 1 in over 3 in", "all(piece(shape=circle, size=under 1in, size=over 3in))",
       "nothing can be both under 1 in and over 3 in"},
      {"under 1 in and over 3 in", "all(piece(size=under 1in, size=over 3in))",
       "nothing can be both under 1 in and over 3 in"},
      {"circle under 2 in and at least 2 in", "all(piece(shape=circle, size=under 2in, size=at least 2in))",
       "nothing can be both under 2 in and at least 2 in"},
      {"circle at most 2 in and at least 2 in",
       "all(piece(shape=circle, size=at most 2in, size=at least 2in))", ""},
      {"circle over 1 in and under 3 in", "all(piece(shape=circle, size=over 1in, size=under 3in))", ""},
      {"60mm circle not 2 3/8", "all(piece(size=60mm ±0.8mm, shape=circle, none(size=2-3/8in ±1/32in)))", ""},
      {"made before 2020 since 2022", "all(made=..2019-12-31, made=2022-01-01..)",
       "nothing can be both made up to 2019-12-31 and made since 2022-01-01"},
      {"made before 2022 since 2020", "all(made=..2021-12-31, made=2020-01-01..)", ""},
      {"square landscape cards", "all(closed=square, closed=landscape)",
       "nothing can be both square card and landscape card"},
      {"square cards landscape", "all(closed=square, closed=landscape)",
       "nothing can be both square card and landscape card"},
      {"5 x 7 cards A6", "all(closed=5in x 7in ±1/32in, closed=105mm x 148mm ±0.8mm)",
       "nothing can be both 5 in x 7 in, within 1/32 in and 105 mm x 148 mm, within 0.8 mm"},
      {"with:(shape:circle shape:square)", "all(piece(shape=circle, shape=square))",
       "nothing can be both circle and square"},
      {"with:(shape:circle side:front side:back)", "all(piece(shape=circle, side=front, side=back))",
       "nothing can be both on the front and on the back"},
      {"easel not easel", "all(fold=easel, none(fold=easel))",
       "fold easel or any kind of it is asked for and excluded at once"},
      {"circle without a circle", "all(piece(shape=circle), none(piece(shape=circle)))",
       "circle is asked for and excluded at once"},
      {"circle or square", "all(piece(any(shape=circle, shape=square)))", ""},
  };
  for (const Both& each : cases) {
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    EXPECT_EQ(print(*question), each.tree) << each.question;
    EXPECT_EQ(question->notes.empty() ? "" : question->notes.front(), each.note) << each.question;
  }
}

TEST_F(ReadQuestion, FieldsAndWordsMeanTheSame) {
  const auto said = read("designs using a 2-3/8 in circle with a stand-up fold");
  ASSERT_TRUE(said);
  EXPECT_EQ(print_as_fields(*said), "with:(size:2-3/8in shape:circle) fold:\"stand up fold\"");
  ASSERT_EQ(said->ignored.size(), 5u);
  EXPECT_EQ(said->ignored[0].word, "designs");
  EXPECT_EQ(said->ignored[1].word, "using");
  EXPECT_EQ(said->ignored[2].word, "a");
  EXPECT_EQ(said->ignored[3].word, "with");
  EXPECT_EQ(said->ignored[4].word, "a");
  for (const Ignored& each : said->ignored) EXPECT_EQ(each.why, "filler");
}

TEST_F(ReadQuestion, WhatPiecesAreStuckWith) {
  expect_trees({
      {"circle on foam", "all(piece(shape=circle, any(technique=popped up, glue=foam)))"},
      {"foam-mounted circle", "all(piece(any(technique=popped up, glue=foam), shape=circle))"},
      {"popped up", "all(any(technique=popped up, glue=foam))"},
      {"circle not popped up", "all(piece(shape=circle, none(technique=popped up), none(glue=foam)))"},
      {"circle stuck with foam", "all(piece(shape=circle, glue=foam))"},
      {"circle glued with glue dots", "all(piece(shape=circle, any(glue=adhesive dot, supply=Glue Dots)))"},
      {"foam", "all(glue=foam)"},
      {"panel with double-sided tape", "all(piece(role=panel, glue=double sided tape))"},
      {"unglued strip", "all(piece(glue=no glue, role=strip))"},
      {"glue:\"foam tape\" shape:circle", "all(piece(glue=foam tape, shape=circle))"},
      {"circle glued behind a panel", "all(piece(shape=circle, behind(piece(role=panel))), text=glued)"},
      {"technique:\"popped up\"", "all(technique=popped up)"},
  });
}

TEST_F(ReadQuestion, WhatCanNoLongerBeHad) {
  expect_trees({
      {"retired colours", "all(colour=withdrawn (by status))"},
      {"colours that are no longer made", "all(colour=withdrawn (by status))"},
      {"discontinued ink", "all(ink=withdrawn (by status))"},
      {"circle in a retired colour", "all(piece(shape=circle, paper=withdrawn (by status)))"},
      {"withdrawn supplies' designs",
       "all(any(supply=withdrawn, paper=withdrawn (by status), ink=withdrawn (by status)))"},
      {"designs using discontinued supplies",
       "all(any(supply=withdrawn, paper=withdrawn (by status), ink=withdrawn (by status)))"},
      {"circle from withdrawn supplies",
       "all(piece(shape=circle, any(supply=withdrawn, paper=withdrawn (by status), ink=withdrawn (by "
       "status))))"},
      {"discontinued", "all(any(supply=withdrawn, paper=withdrawn (by status), ink=withdrawn (by status)))"},
      {"retired stamps", "all(supply=withdrawn stamp)"},
      {"stamps that are no longer available", "all(supply=withdrawn stamp)"},
      {"no retired colours", "all(none(colour=withdrawn (by status)))"},
      {"ink:discontinued", "all(ink=withdrawn (by status))"},
      {"supply:\"withdrawn stamp\"", "all(supply=withdrawn stamp)"},
      {"die:withdrawn", "all(piece(die=withdrawn))"},
      {"current", "all(text=current)"},
      {"retiring", "all(occasion=retirement)"},
      {"retiring colours", "all(colour=last chance (by status))"},
  });
}

TEST_F(ReadQuestion, NamesOfTheBookBeforeWordsOfTheTrade) {
  expect_trees({
      {"pearls", "all(supply=Pearls)"},
      {"three pearls", "all(piece(count=3, supply=Pearls))"},
      {"pearl", "all(any(piece(role=pearl), material=pearls))"},
      {"baker's twine", "all(supply=Baker's Twine)"},
      {"silver ink", "all(ink=Silver)"},
      {"panel in silver ink", "all(piece(role=panel, ink=Silver))"},
      {"gold ink", "all(material=metallic ink)"},
      {"boats at rest", "all(supply=Boats at Rest)"},
      {"supply:\"boats at rest\"", "all(supply=Boats at Rest)"},
      {"circle with boats at rest", "all(piece(shape=circle, supply=Boats at Rest))"},
  });
  const auto pearls = read("pearls");
  ASSERT_EQ(pearls->other_readings.size(), 1u);
  EXPECT_EQ(pearls->other_readings.front().other, "role:pearl");
  EXPECT_EQ(read("silver ink")->other_readings.front().other, "material:\"metallic ink\"");
}

TEST_F(ReadQuestion, WordsInOtherPlaces) {
  expect_trees({
      {"inside sentiment", "all(any(piece(role=inside sentiment), piece(role=sentiment, side=inside)))"},
      {"sage inside panel",
       "all(any(piece(colour=Sage, role=inside panel), piece(colour=Sage, role=panel, side=inside)))"},
      {"no inside panel", "all(none(piece(role=inside panel)), none(piece(role=panel, side=inside)))"},
      {"2 in circle ±1/8 in", "all(piece(size=2in ±1/8in, shape=circle))"},
      {"2 in sage circle give or take 1/4 in", "all(piece(size=2in ±1/4in, paper=Sage, shape=circle))"},
      {"circle 2 in ± 1/8", "all(piece(shape=circle, size=2in ±1/8in))"},
      {"60 mm circle ± 2", "all(piece(size=60mm ±2mm, shape=circle))"},
      {"60 mm ± 2 circle", "all(piece(size=60mm ±2mm, shape=circle))"},
      {"circle ± 1/8 in", "all(piece(shape=circle))"},
      {"hand-cut coloured stamped image",
       "all(piece(technique=hand cutting, technique=colouring, role=stamped image))"},
      {"stamped image, hand cut and coloured",
       "all(piece(role=stamped image, technique=hand cutting, technique=colouring))"},
      {"sage coloured circle", "all(piece(paper=Sage, shape=circle))"},
      {"sage-coloured circle", "all(piece(paper=Sage, shape=circle))"},
      {"two ribbons", "all(piece(count=2, role=ribbon))"},
      {"without a liner with marbling", "all(none(piece(role=liner, technique=marbling)))"},
      {"no circle with sage ink, speckled", "all(none(piece(shape=circle, ink=Sage)), technique=speckling)"},
      {"no circle and speckling", "all(none(piece(shape=circle)), none(technique=speckling))"},
      {"no circle with a square", "all(none(piece(shape=circle)), piece(shape=square))"},
      {"heart round arch", "all(piece(shape=heart, around(piece(shape=arch))))"},
      {"a round panel", "all(piece(shape=circle, role=panel))"},
      {"mat round a circle", "all(piece(role=mat, around(piece(shape=circle))))"},
      {"clean & simple", "all(technique=clean and simple)"},
      {"St. Patrick's Day cards", "all(occasion=st patricks day)"},
      {"square card 5 in", "all(closed=5in x 5in ±1/32in)"},
      {"card 5 in square", "all(closed=5in x 5in ±1/32in)"},
      {"easel cards 5 in square", "all(fold=easel, closed=5in x 5in ±1/32in)"},
      {"card with a 5 in square", "all(piece(size=5in ±1/32in, shape=square))"},
      {"card 5 in square panel", "all(piece(size=5in ±1/32in, shape=square, role=panel))"},
      {"square cards with a 2 in circle", "all(closed=square, piece(size=2in ±1/32in, shape=circle))"},
      {"square landscape cards", "all(closed=square, closed=landscape)"},
      {"on navy", "all(paper=Navy)"},
      {"ink navy", "all(ink=Navy)"},
      {"paper in navy", "all(paper=Navy)"},
      {"card stock navy", "all(paper=Navy)"},
      {"circle, ink navy or sage", "all(piece(shape=circle, any(ink=Navy, ink=Sage)))"},
      {"circle between 1 and 2in", "all(piece(shape=circle, size=1in to 2in))"},
      {"strip 1 to 2 in tall", "all(piece(role=strip, size=1in to 2in tall))"},
      {"circle on the front panel", "all(piece(shape=circle, on(piece(role=panel))))"},
      {"2 second largest tidepool rectangles",
       "all(piece(count=2, die=Tidepool Rectangles, second largest))"},
      {"using a moonrise circle under 2 in and a heart over 1 in",
       "all(piece(die=Moonrise Circles, size=under 2in), piece(shape=heart, size=over 1in))"},
      {"heart 2 in and smaller than 3 in circle",
       "all(piece(shape=heart, size=2in ±1/32in), piece(size=under 3in, shape=circle))"},
      {"2 hexagon strips", "all(piece(count=2, shape=hexagon, role=strip))"},
      {"2+ in circle", "all(piece(size=at least 2in, shape=circle))"},
      {"6+ cm circle", "all(piece(size=at least 60mm, shape=circle))"},
      {"2 in+ circle", "all(piece(size=at least 2in, shape=circle))"},
      {"2+ circles", "all(piece(count=2, shape=circle))"},
      {"2 inch wide circle", "all(piece(size=2in wide ±1/32in, shape=circle))"},
      {"the last moonrise circle", "all(piece(die=Moonrise Circles, smallest))"},
      {"sewn", "all(technique=stitching)"},
      {"stitching", "all(technique=stitching)"},
      {"with:((supply:\"garden gate\" or paper:sage) shape:circle)",
       "all(piece(any(supply=Garden Gate, paper=Sage), shape=circle))"},
  });
}

TEST_F(ReadQuestion, ExamplesOfTheFields) {
  for (const Field& each : fields) {
    const auto question = read(each.example);
    ASSERT_TRUE(question) << each.example;
    ASSERT_FALSE(question->tree.children.empty()) << each.example;
    EXPECT_TRUE(question->ignored.empty()) << each.example;
    EXPECT_TRUE(question->notes.empty()) << each.example << ": " << question->notes.front();
    EXPECT_EQ(tree(print_as_fields(*question)), print(*question)) << each.example;
    EXPECT_EQ(field_named(each.name), &each);
  }
}

TEST_F(ReadQuestion, PiecesOfWhateverKindAreCounted) {
  expect_trees({
      {"cards with more than 5 pieces", "all(piece(count=6))"},
      {"at least four layers in all", "all(piece(count=4))"},
      {"four layers altogether", "all(piece(count=4))"},
      {"at least four layers", "all(piece(count=4, role=layer))"},
      {"cards with six pieces", "all(piece(count=6))"},
      {"a card of three pieces", "all(piece(count=3))"},
      {"6 pieces in all", "all(piece(count=6))"},
      {"5 or more pieces", "all(piece(count=5))"},
      {"no more than 3 pieces", "all(none(piece(count=4)))"},
      {"fewer than 4 elements", "all(none(piece(count=4)))"},
      {"exactly six pieces", "all(piece(count=6), none(piece(count=7)))"},
      {"at least six circles", "all(piece(count=6, shape=circle))"},
      {"3 to 5 pieces", "all(piece(count=3), none(piece(count=6)))"},
      {"without six pieces", "all(none(piece(count=6)))"},
      {"easel with six pieces", "all(fold=easel, piece(count=6))"},
      {"six pieces and a circle", "all(piece(count=6), piece(shape=circle))"},
      {"more than 5 pieces, speckled", "all(piece(count=6), technique=speckling)"},
      {"three white pieces", "all(piece(count=3, colour=white (by value)))"},
      {"three pieces of vellum", "all(piece(count=3, material=vellum))"},
      {"three pieces of ribbon", "all(piece(count=3, role=ribbon))"},
      {"three pieces under 2 in", "all(piece(count=3, size=under 2in))"},
      {"one piece", "all()"},
      {"just one piece", "all(piece(count=1), none(piece(count=2)))"},
      {"2 in pieces", "all(piece(size=2in ±1/32in))"},
      {"a piece of vellum", "all(material=vellum)"},
      {"three circles in all", "all(piece(count=3, shape=circle))"},
      {"0 circles", "all(none(piece(count=1, shape=circle)))"},
      {"0x cards", "all()"},
      {"without (not tent)", "all(none(none(fold=tent)))"},
  });
}

TEST_F(ReadQuestion, NumbersBehindADieAreDiesOfItsSet) {
  expect_trees({
      {"moonrise circles 3 and 4", "all(piece(die=Moonrise Circles 3), piece(die=Moonrise Circles 4))"},
      {"moonrise circle 3 & 4", "all(piece(die=Moonrise Circles 3), piece(die=Moonrise Circles 4))"},
      {"tidepool rectangles 2 or 3", "all(piece(any(die=Tidepool Rectangles 2, die=Tidepool Rectangles 3)))"},
      {"moonrise circles 3, 4 and 5",
       "all(piece(die=Moonrise Circles 3), piece(die=Moonrise Circles 4), piece(die=Moonrise Circles 5))"},
      {"moonrise circles 3, 4 or 5",
       "all(piece(any(die=Moonrise Circles 3, die=Moonrise Circles 4, die=Moonrise Circles 5)))"},
      {"circle from moonrise circles 3 or 4",
       "all(piece(shape=circle, any(die=Moonrise Circles 3, die=Moonrise Circles 4)))"},
      {"panel in tidepool rectangles 2 or 3",
       "all(piece(role=panel, any(in=Tidepool Rectangles 2, in=Tidepool Rectangles 3)))"},
      {"moonrise circles 3 and 4 with a z fold",
       "all(piece(die=Moonrise Circles 3), piece(die=Moonrise Circles 4), fold=z fold)"},
      {"moonrise circles 3 and 4 on an easel",
       "all(piece(die=Moonrise Circles 3), piece(die=Moonrise Circles 4), fold=easel)"},
      {"moonrise circles 3 and 2 strips", "all(piece(die=Moonrise Circles 3), piece(count=2, role=strip))"},
      {"moonrise circles 3 and 2 sage ovals",
       "all(piece(die=Moonrise Circles 3), piece(count=2, paper=Sage, shape=oval))"},
      {"moonrise circles 3 and 2 in square",
       "all(piece(die=Moonrise Circles 3), piece(size=2in ±1/32in, shape=square))"},
      {"moonrise circles 3, 2 in", "all(piece(die=Moonrise Circles 3, size=2in ±1/32in))"},
  });
}

TEST_F(ReadQuestion, ThePaperOfTheCardIsNoneOfThePieceOnIt) {
  expect_trees({
      {"sage circle on a white card",
       "all(piece(paper=Sage, shape=circle), piece(paper=white (by value), role=base))"},
      {"circle on a navy card", "all(piece(shape=circle), piece(paper=Navy, role=base))"},
      {"without a sage circle on a navy card",
       "all(none(piece(paper=Sage, shape=circle)), piece(paper=Navy, role=base))"},
      {"a heart on a sage card and a circle on a navy card",
       "all(piece(shape=heart), piece(paper=Sage, role=base), piece(shape=circle), piece(paper=Navy, "
       "role=base))"},
      {"sage circle on navy cards", "all(piece(paper=Sage, shape=circle), piece(paper=Navy, role=base))"},
      {"sage circle on navy card", "all(piece(paper=Sage, shape=circle, on(piece(paper=Navy))))"},
      {"sage circle on a white easel card",
       "all(piece(paper=Sage, shape=circle), piece(paper=white (by value), role=base), fold=easel)"},
      {"sage circle on a white z fold",
       "all(piece(paper=Sage, shape=circle), piece(paper=white (by value), role=base), fold=z fold)"},
      {"sage circle on a white 5 x 7 card",
       "all(piece(paper=Sage, shape=circle), paper=white (by value), closed=5in x 7in ±1/32in)"},
      {"circle stamped in navy on a white card",
       "all(piece(shape=circle, technique=stamping, ink=Navy), piece(paper=white (by value), role=base))"},
      {"sage circle on a white panel",
       "all(piece(paper=Sage, shape=circle, on(piece(colour=white (by value), role=panel))))"},
      {"white easel or kraft tent",
       "all(any(all(colour=white (by value), fold=easel), all(material=kraft card stock, fold=tent)))"},
      {"kraft easel or navy tent, 2 in circle",
       "all(any(all(material=kraft card stock, fold=easel), all(colour=Navy, fold=tent)), "
       "piece(size=2in ±1/32in, shape=circle))"},
  });
}

TEST_F(ReadQuestion, ConstraintsKeepTheirWords) {
  const auto question = read("speckled 2-3/8 in circle");
  ASSERT_TRUE(question);
  const Node& piece = question->tree.children.at(0);
  ASSERT_EQ(piece.children.size(), 3u);
  const Constraint& technique = piece.children[0].constraint.front();
  EXPECT_EQ(technique.text, "speckled");
  EXPECT_EQ(technique.means, "technique speckling");
  EXPECT_EQ(technique.span, (Span{0, 8}));
  const Constraint& size = piece.children[1].constraint.front();
  EXPECT_EQ(size.text, "2-3/8 in");
  EXPECT_EQ(size.means, "size 2-3/8 in, within 1/32 in");
  EXPECT_EQ(size.span, (Span{9, 17}));
}

TEST_F(ReadQuestion, StandUpFoldIsEveryFoldBuiltToStand) {
  const auto question = read("stand-up fold");
  ASSERT_TRUE(question);
  const auto& fold = std::get<FoldIs>(question->tree.children.at(0).constraint.front().says);
  EXPECT_EQ(fold.said, "stand-up fold");
  for (const char* each : {"easel", "z fold", "accordion", "tent", "step", "shutter", "bridge"})
    EXPECT_TRUE(std::ranges::find(fold.terms, each) != fold.terms.end()) << each;
  EXPECT_TRUE(std::ranges::find(fold.terms, "gate") == fold.terms.end());
}

TEST_F(ReadQuestion, DiesAreThoseMeant) {
  const auto dies = [&](std::string_view text) {
    const auto question = read(text);
    return std::get<DieIs>(question->tree.children.at(0).children.at(0).constraint.front().says).dies;
  };
  EXPECT_EQ(dies("second largest tidepool rectangle"), (std::vector<std::int64_t>{102}));
  EXPECT_EQ(dies("smallest tidepool rectangle"), (std::vector<std::int64_t>{105}));
  EXPECT_EQ(dies("tidepool rectangles 3"), (std::vector<std::int64_t>{103}));
  EXPECT_EQ(dies("tidepool rectangles, second smallest"), (std::vector<std::int64_t>{104}));
  EXPECT_EQ(dies("big label small tag"), (std::vector<std::int64_t>{302}));
  EXPECT_EQ(dies("tidepool rectangles"), (std::vector<std::int64_t>{101, 102, 103, 104, 105}));
}

TEST_F(ReadQuestion, SizesInMetricBooks) {
  const auto eighths = read_question("circle 2-3/8", {vocabulary_, names_, Unit::mm, "2026-11-25"});
  ASSERT_TRUE(eighths);
  EXPECT_EQ(print(*eighths), "all(piece(shape=circle, size=2-3/8in ±1/32in))");
  EXPECT_EQ(eighths->notes,
            (std::vector<std::string>{"\"2-3/8\" is read in inches: no metric ruler has such a part"}));
  const auto question = read_question("circle 60", {vocabulary_, names_, Unit::mm, "2026-11-25"});
  ASSERT_TRUE(question);
  EXPECT_EQ(print(*question), "all(piece(shape=circle, size=60mm ±0.8mm))");
  EXPECT_EQ(question->notes.front(), "\"60\" is read as 60 mm");
}

TEST_F(ReadQuestion, OtherReadingsAreSaid) {
  const auto question = read("A2 card");
  ASSERT_TRUE(question);
  ASSERT_EQ(question->other_readings.size(), 1u);
  EXPECT_EQ(question->other_readings[0].text, "A2");
  EXPECT_EQ(question->other_readings[0].taken, "a card for the American A2 envelope, 4-1/4 x 5-1/2 in");
  EXPECT_EQ(question->other_readings[0].other, "closed:\"420 x 594 mm\"");
}

TEST_F(ReadQuestion, AnEnvelopeIsSaidWithItsSize) {
  const auto means = [&](const char* text) {
    const auto question = read(text);
    return question && question->tree.children.size() == 1
               ? question->tree.children.front().constraint.front().means
               : std::string("not read");
  };
  EXPECT_EQ(means("a2 envelope"), "envelope A2, 4-3/8 x 5-3/4 in (size second hand)");
  EXPECT_EQ(means("envelope:C6"), "envelope C6, 114 x 162 mm (size second hand)");
  EXPECT_EQ(means("4 bar envelope"), "envelope 4 bar, 3-5/8 x 5-1/8 in (size recalled)");
  EXPECT_EQ(means("5-3/4 x 4-3/8 in envelope"), "envelope 5-3/4 in x 4-3/8 in, within 1/32 in, or called A2");
  EXPECT_EQ(means("4 x 5 in envelope"), "envelope 4 in x 5 in, within 1/32 in");
  const auto question = read("A6 envelope");
  ASSERT_TRUE(question);
  ASSERT_EQ(question->other_readings.size(), 1u);
  EXPECT_EQ(question->other_readings[0].text, "A6");
  EXPECT_EQ(question->other_readings[0].taken, "the envelope A6, 4-3/4 x 6-1/2 in (size second hand)");
  EXPECT_EQ(question->other_readings[0].other, "envelope:c6");
}

TEST_F(ReadQuestion, ASetNamedLikeAColourAndAShape) {
  const auto question = read("kelp circle");
  ASSERT_TRUE(question);
  EXPECT_EQ(print(*question), "all(piece(die=Kelp Circles))");
  ASSERT_EQ(question->other_readings.size(), 1u);
  EXPECT_EQ(question->other_readings[0].taken, "the die set Kelp Circles");
  EXPECT_EQ(question->other_readings[0].other, "with:(colour:Kelp shape:circle)");
}

TEST_F(ReadQuestion, Problems) {
  struct Wrong {
    const char* question;
    const char* what;
    std::size_t at, length;
    const char* expected;
  };
  const Wrong cases[] = {
      {"circle \"unfinished", "a quote begins here and does not end", 7, 11,
       "a second \" where the phrase ends"},
      {"size:foo", "\"foo\" is no size", 5, 3, "a size such as 2-3/8in, \"under 3 in\", \"2 x 3 in\""},
      {"shape:", "the field \"shape\" has no value", 0, 6,
       "a value at once behind the colon, as in shape:circle"},
      {"with:circle", "the field \"with\" has no value", 0, 5,
       "a value at once behind the colon, as in with:(shape:circle size:2-3/8in)"},
      {"count:lots", "\"lots\" is no count", 6, 4, "a whole number from 1 to 999"},
      {"made:sometime", "\"sometime\" is no date", 5, 8,
       "a year, a month or a day such as 2023, 2023-05, 2023-05-12, or two with .. between"},
      {"smallest circle", "\"smallest\" asks for an order by size, which pieces are not put into", 0, 8,
       "a size, as in \"circle under 2 in\""},
      {"easel with the second largest sage panel",
       "\"second largest\" asks for an order by size, which pieces are not put into", 15, 14,
       "a size, as in \"panel over 2 in\""},
      {"biggest oval I have used", "\"biggest\" asks for an order by size, which pieces are not put into", 0,
       7, "a size, as in \"oval over 2 in\""},
      {"smallest birthday card", "\"smallest\" asks for an order by size, which samples are not put into", 0,
       8, "a size, as in \"cards under 4 in\", or newest or oldest"},
      {"side:nowhere", "\"nowhere\" is no side of a card", 5, 7, "front, inside or back"},
      {"closed:foo", "\"foo\" is no size of a closed card", 7, 3,
       "a size such as \"5 x 7 in\", a name such as A6, square, landscape or portrait"},
      {"no:shape", "\"shape\" is nothing that can be missing", 3, 5,
       "photo, made, words, steps, note, envelope, based on, scores, base, closed, fold, technique, "
       "feature, occasion, material, supply, colour, ink or element"},
  };
  for (const Wrong& each : cases) {
    const auto question = read(each.question);
    ASSERT_TRUE(question) << each.question;
    ASSERT_EQ(question->problems.size(), 1u) << each.question;
    const Problem& problem = question->problems.front();
    EXPECT_EQ(problem.what, each.what);
    EXPECT_EQ(problem.where.at, each.at) << each.question;
    EXPECT_EQ(problem.where.length, each.length) << each.question;
    EXPECT_EQ(problem.expected, each.expected);
    EXPECT_EQ(problem.where.text, each.question);
  }
}

TEST_F(ReadQuestion, PlacesAreCountedInCharacters) {
  const auto question = read("⅜ in circle 2-9/8 in");
  ASSERT_TRUE(question);
  ASSERT_EQ(question->problems.size(), 1u);
  EXPECT_EQ(question->problems.front().where.at, 12u);
  EXPECT_EQ(question->problems.front().where.length, 5u);
}

TEST_F(ReadQuestion, UnknownFieldNamesTheNearest) {
  const auto question = read("shap:circle");
  ASSERT_TRUE(question);
  ASSERT_EQ(question->problems.size(), 1u);
  const Problem& problem = question->problems.front();
  EXPECT_EQ(problem.what, "\"shap\" is no field");
  EXPECT_EQ(problem.kind, ProblemKind::unknown_name);
  ASSERT_FALSE(problem.candidates.empty());
  EXPECT_EQ(problem.candidates.front(), "shape");
}

TEST_F(ReadQuestion, LimitsOfLengthAndNesting) {
  EXPECT_TRUE(read(std::string(64 * 1024, 'a')));
  const auto question = read(std::string(64 * 1024 + 1, 'a'));
  ASSERT_FALSE(question);
  EXPECT_EQ(question.error().what, "the question is 65537 bytes long");
  EXPECT_TRUE(read(std::string(50, '(') + "circle easel" + std::string(50, ')')));
  const auto deep = read(std::string(51, '(') + "circle birthday" + std::string(51, ')'));
  ASSERT_FALSE(deep);
  EXPECT_EQ(deep.error().what, "brackets stand in more than 50 brackets");
  EXPECT_EQ(deep.error().where.at, 50u);
}

TEST_F(ReadQuestion, ExplainsEachStage) {
  EXPECT_EQ(explain_reading("a sage circle", {vocabulary_, names_, Unit::inch, ""}),
            "pieces: a | sage | circle\n"
            "cover: article \"a\" | name \"sage\" | term \"circle\"\n"
            "tree: all(piece(paper=Sage, shape=circle))");
}

}  // namespace
}  // namespace insetbook
