// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where two rules of the reader could both take the same words: question → printed tree, a row or more for
// each such pair. Each question printed back as fields reads to the same tree.
#include <gtest/gtest.h>

#include "language/tree_rows.h"

namespace insetbook {
namespace {

// A number is a count before a plural and no unit, a size before a unit, a year of four figures, a label
// behind the name of a set.
TEST(RulesThatMeet, NumbersThatAreCountsSizesOrLabels) {
  compare_trees({
      // count, size
      {"two 2 in circles", "all(piece(count=2, size=2in ±1/32in, shape=circle))"},
      {"2 circles", "all(piece(count=2, shape=circle))"},
      {"2 in circles", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"2 circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"circle 2", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"2 2 in circles", "all(piece(count=2, size=2in ±1/32in, shape=circle))"},
      {"three 2 x 3 in panels", "all(piece(count=3, size=2in x 3in ±1/32in, role=panel))"},
      {"2 x 3 in panel", "all(piece(size=2in x 3in ±1/32in, role=panel))"},
      {"1/2 circle", "all(piece(size=1/2in ±1/32in, shape=circle))"},
      // count, relation of a size
      {"at least 2 circles", "all(piece(count=2, shape=circle))"},
      {"at least 2 in circles", "all(piece(size=at least 2in, shape=circle))"},
      {"under 3 circles", "all(none(piece(count=3, shape=circle)))"},
      {"under 3 in circles", "all(piece(size=under 3in, shape=circle))"},
      // count, year
      {"2023 circles", "all(made=2023, piece(shape=circle))"},
      {"circle 2023", "all(piece(shape=circle), made=2023)"},
      {"circle 2023 in", "all(piece(shape=circle, size=2023in ±1/32in))"},
      {"size:2023", "all(piece(size=2023in ±1/32in))"},
      // count, the card
      {"12 cards", "all(text=12)"},
      // number of a die, size, count
      {"tidepool rectangles 2", "all(piece(die=Tidepool Rectangles 2))"},
      {"tidepool rectangles 2 in", "all(piece(die=Tidepool Rectangles, size=2in ±1/32in))"},
      {"tidepool rectangles 2 x 3 in", "all(piece(die=Tidepool Rectangles, size=2in x 3in ±1/32in))"},
      {"two tidepool rectangles", "all(piece(count=2, die=Tidepool Rectangles))"},
      {"second largest tidepool rectangle 2 in",
       "all(piece(die=Tidepool Rectangles, second largest, size=2in ±1/32in))"},
      {"no. 2 tidepool rectangle", "all(piece(die=Tidepool Rectangles 2))"},
      // range of sizes, of years
      {"2020-2022", "all(made=2020-01-01..2022-12-31)"},
      {"2-3 in", "all(piece(size=2in to 3in))"},
      {"from 2 to 3 in", "all(piece(size=2in to 3in))"},
      {"from 2020 to 2022", "all(made=2020-01-01..2022-12-31)"},
      {"between 2 and 3 in", "all(piece(size=2in to 3in))"},
      {"between 2020 and 2022", "all(made=2020-01-01..2022-12-31)"},
      {"circle between 2 in and 3 in", "all(piece(shape=circle, size=2in to 3in))"},
      // number, choice
      {"2 or 3 in circle", "all(piece(any(size=2in ±1/32in, size=3in ±1/32in), shape=circle))"},
      {"2 in or 3 in circle", "all(piece(any(size=2in ±1/32in, size=3in ±1/32in), shape=circle))"},
      {"2 in or more circle", "all(piece(size=at least 2in, shape=circle))"},
      {"made 2023 or 2024", "all(any(made=2023, made=2024))"},
      // number, order, exclusion
      {"no. 2 circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"no 2 in circle", "all(none(piece(size=2in ±1/32in, shape=circle)))"},
      {"not 2 in circle", "all(none(piece(size=2in ±1/32in, shape=circle)))"},
      {"circle not 2 in", "all(piece(shape=circle, none(size=2in ±1/32in)))"},
      {"circle -2 in", "all(piece(shape=circle), none(piece(size=2in ±1/32in)))"},
  });
}

// "in" is inches behind a figure, else a line, a colour, a side, a time or another piece; "over", "under" and
// "around" are relations before a size and ways of lying before a piece.
TEST(RulesThatMeet, InAndOtherWordsBetweenPieces) {
  compare_trees({
      // in: unit, piece, colour, die, date, side
      {"circle in 2 in", "all(piece(shape=circle, size=2in ±1/32in))"},
      {"circle in a 2 in square", "all(piece(shape=circle, in(piece(size=2in ±1/32in, shape=square))))"},
      {"circle in sage", "all(piece(shape=circle, paper=Sage))"},
      {"circle in 2 in sage", "all(piece(shape=circle, size=2in ±1/32in, paper=Sage))"},
      {"circle in tidepool rectangles 2", "all(piece(shape=circle, in=Tidepool Rectangles 2))"},
      {"circle in 2023", "all(piece(shape=circle), made=2023)"},
      {"circle in may", "all(piece(shape=circle), made=2026-05-01..2026-05-31)"},
      {"circle in the front", "all(piece(shape=circle, side=front))"},
      // over, under, around: relation, way of lying
      {"circle over 2 in", "all(piece(shape=circle, size=over 2in))"},
      {"strip over a circle", "all(piece(role=strip, on(piece(shape=circle))))"},
      {"strip over a 2 in circle", "all(piece(role=strip, on(piece(size=2in ±1/32in, shape=circle))))"},
      {"mat under a circle", "all(piece(role=mat, behind(piece(shape=circle))))"},
      {"mat under 3 in", "all(piece(role=mat, size=under 3in))"},
      {"ribbon around 2 in",
       "all(any(piece(material=ribbon, size=about 2in ±1/8in), piece(role=ribbon, size=about 2in ±1/8in)))"},
      {"strip around a 2 in circle", "all(piece(role=strip, around(piece(size=2in ±1/32in, shape=circle))))"},
      {"strip around the card", "all(piece(role=strip, around()))"},
      // within: size, tolerance of a colour
      {"like sage within 5 circle", "all(piece(colour=like Sage, within 5, shape=circle))"},
      // from: date, colour, set
      {"from 2023", "all(made=2023)"},
      {"circle from 2023", "all(piece(shape=circle), made=2023)"},
      {"from sage", "all(colour=Sage)"},
      {"from moonrise circles", "all(piece(die=Moonrise Circles))"},
      {"circle cut from sage", "all(piece(shape=circle, paper=Sage))"},
      {"circle cut with tidepool rectangles", "all(piece(shape=circle, die=Tidepool Rectangles))"},
      // between: dates, sizes, pieces
      {"between a circle and a square", "all(text=between, piece(shape=circle), piece(shape=square))"},
  });
}

// A size, a form or a way round is the card's beside the word for it.
TEST(RulesThatMeet, SizesOfPiecesAndOfTheCard) {
  compare_trees({
      // size, card
      {"5 x 7 card", "all(closed=5in x 7in ±1/32in)"},
      {"5 x 7 panel", "all(piece(size=5in x 7in ±1/32in, role=panel))"},
      {"5 x 7", "all(piece(size=5in x 7in ±1/32in))"},
      {"5 x 7 in card with a panel", "all(closed=5in x 7in ±1/32in, piece(role=panel))"},
      {"5 x 7 card or a6", "all(any(closed=5in x 7in ±1/32in, closed=105mm x 148mm ±0.8mm))"},
      {"4 in square card", "all(closed=4in x 4in ±1/32in)"},
      // shape, form of the card
      {"square card", "all(closed=square)"},
      {"square panel", "all(piece(shape=square, role=panel))"},
      {"square", "all(piece(shape=square))"},
      {"2 in square", "all(piece(size=2in ±1/32in, shape=square))"},
      {"square 5 x 7 card", "all(closed=5in x 7in ±1/32in)"},
      {"card with a square", "all(piece(shape=square))"},
      // tall: card, size, side of a size
      {"tall card", "all(closed=portrait)"},
      {"3 in tall panel", "all(piece(size=3in tall ±1/32in, role=panel))"},
      {"panel 3 in tall", "all(piece(role=panel, size=3in tall ±1/32in))"},
      {"tall 3 x 2 in panel", "all(piece(size=2in wide x 3in tall ±1/32in, role=panel))"},
      // way round, shape
      {"landscape card", "all(closed=landscape)"},
      {"landscape circle", "all(closed=landscape, piece(shape=circle))"},
      {"portrait cards", "all(closed=portrait)"},
      // paper size, envelope, what is missing
      {"a6 card", "all(closed=105mm x 148mm ±0.8mm)"},
      {"a6", "all(closed=105mm x 148mm ±0.8mm)"},
      {"no envelope a6", "all(none(envelope=a6))"},
      // part of an inch: size, fold, paper
      {"quarter inch strip", "all(piece(size=1/4in ±1/32in, role=strip))"},
      {"quarter fold", "all(fold=french fold)"},
      {"half inch strip", "all(piece(size=1/2in ±1/32in, role=strip))"},
      {"half letter card", "all(closed=4-1/4in x 5-1/2in ±1/32in)"},
      {"a quarter inch border", "all(piece(size=1/4in ±1/32in, role=border))"},
      // inches, quotes
      {"2\" circle", "all(piece(size=2in ±1/32in, shape=circle))"},
      {"2\" circle \"happy\"", "all(piece(size=2in ±1/32in, shape=circle), text=\"happy\")"},
      {"\"2 in\" circle", "all(text=\"2 in\", piece(shape=circle))"},
  });
}

// The longest label or name wins; of equal ones the owner's name, then the likelier meaning.
TEST(RulesThatMeet, FoldsShapesAndNames) {
  compare_trees({
      // shape, fold
      {"circle easel", "all(fold=circle easel)"},
      {"circle, easel", "all(piece(shape=circle), fold=easel)"},
      {"circle with an easel", "all(piece(shape=circle), fold=easel)"},
      {"easel with a circle", "all(fold=easel, piece(shape=circle))"},
      {"circle or easel", "all(any(piece(shape=circle), fold=easel))"},
      // fold, letter
      {"Z", "all(fold=z fold)"},
      {"Z fold", "all(fold=z fold)"},
      {"\"Z\"", "all(text=\"z\")"},
      {"fold:Z", "all(fold=z fold)"},
      {"letter fold", "all(fold=letter tri fold)"},
      // fold, supply
      {"garden gate", "all(supply=Garden Gate)"},
      {"garden gate fold", "all(text=garden, fold=gate)"},
      {"gate", "all(fold=gate)"},
      // fold, title
      {"harbour easel", "all(any(title=Harbour Easel, all(text=harbour, fold=easel)))"},
      {"based on harbour easel", "all(based=Harbour Easel)"},
      {"like harbour easel", "all(alike=Harbour Easel)"},
      {"\"harbour easel\"", "all(text=\"harbour easel\")"},
      {"harbour easel 2 in", "all(text=harbour, fold=easel, piece(size=2in ±1/32in))"},
      // fold, feature, technique
      {"pop up card", "all(feature=pop up)"},
      {"pop up circle", "all(feature=pop up, piece(shape=circle))"},
      {"popped up circle", "all(piece(any(technique=popped up, glue=foam), shape=circle))"},
      {"stand-up circle", "all(fold=stand up fold, piece(shape=circle))"},
      // set, shape, colour
      {"kelp circle", "all(piece(die=Kelp Circles))"},
      {"kelp square", "all(piece(paper=Kelp, shape=square))"},
      {"from kelp circles", "all(piece(die=Kelp Circles))"},
      {"kelp circles 2 in", "all(piece(die=Kelp Circles, size=2in ±1/32in))"},
      // colour, supply
      {"kelp", "all(colour=Kelp)"},
      {"circle in kelp", "all(piece(shape=circle, paper=Kelp))"},
      {"supply:kelp", "all(supply=Kelp)"},
      // colour by name, by basic word
      {"lichen grey circle", "all(piece(paper=Lichen Grey, shape=circle))"},
      {"grey circle", "all(piece(paper=grey (by value), shape=circle))"},
      {"white circle", "all(piece(paper=white (by value), shape=circle))"},
      // colour, paper, ink, technique
      {"kelp ink", "all(ink=Kelp)"},
      {"navy ink", "all(ink=Navy)"},
      {"navy circle stamped in sage", "all(piece(paper=Navy, shape=circle, technique=stamping, ink=Sage))"},
      {"dry embossed navy circle", "all(piece(technique=dry embossing, paper=Navy, shape=circle))"},
      // technique, line of a die
      {"stitched circle", "all(piece(technique=stitching, shape=circle))"},
      {"stitched tidepool rectangle", "all(piece(technique=stitching, die=Tidepool Rectangles))"},
      {"tidepool rectangles 2, stitched", "all(piece(die=Tidepool Rectangles 2, stitched))"},
      {"tidepool rectangles 2, stitched circle",
       "all(piece(die=Tidepool Rectangles 2), piece(technique=stitching, shape=circle))"},
      {"tidepool rectangles 2, embossed", "all(piece(die=Tidepool Rectangles 2, technique=embossing))"},
      // material, shape
      {"ribbon square", "all(piece(material=ribbon, shape=square))"},
      {"ribbon circle on a square", "all(piece(material=ribbon, shape=circle, on(piece(shape=square))))"},
      // filler, term
      {"find stitching", "all(technique=stitching)"},
      {"one circle", "all(piece(shape=circle))"},
      {"the one with a circle", "all(piece(shape=circle))"},
  });
}

// "inside" alone and of the card is a side; before a piece or a die, what the piece lies in.
TEST(RulesThatMeet, SidesAndWhereAPieceLies) {
  compare_trees({
      // inside: side, piece, die, role
      {"inside", "all(piece(side=inside))"},
      {"circle inside", "all(piece(shape=circle, side=inside))"},
      {"circle inside the card", "all(piece(shape=circle, side=inside))"},
      {"circle on the inside", "all(piece(shape=circle, side=inside))"},
      {"circle inside a square", "all(piece(shape=circle, in(piece(shape=square))))"},
      {"circle inside the tidepool rectangle", "all(piece(shape=circle, in=Tidepool Rectangles))"},
      {"inside panel", "all(any(piece(role=inside panel), piece(role=panel, side=inside)))"},
      {"panel inside", "all(piece(role=panel, side=inside))"},
      {"inside sentiment", "all(any(piece(role=inside sentiment), piece(role=sentiment, side=inside)))"},
      {"side:inside panel", "all(piece(side=inside, role=panel))"},
      // front: side, connector
      {"circle on the front", "all(piece(shape=circle, side=front))"},
      {"circle on the front and a square", "all(piece(shape=circle, side=front), piece(shape=square))"},
      {"front circle", "all(piece(side=front, shape=circle))"},
  });
}

TEST(RulesThatMeet, DatesAndWhatTheyResemble) {
  compare_trees({
      // month, word
      {"may", "all(text=may)"},
      {"may card", "all(text=may)"},
      {"may 2023", "all(made=2023-05-01..2023-05-31)"},
      {"in march", "all(made=2026-03-01..2026-03-31)"},
      {"march 2 in", "all(text=march, piece(size=2in ±1/32in))"},
      {"on march 5 circles", "all(made=2026-03-05, piece(shape=circle))"},
      {"march 5 circles", "all(text=march, piece(count=5, shape=circle))"},
      // season, occasion
      {"spring", "all(occasion=spring)"},
      {"last spring", "all(made=2026-03-01..2026-05-31)"},
      {"spring 2023", "all(made=2023-03-01..2023-05-31)"},
      {"spring circle", "all(occasion=spring, piece(shape=circle))"},
      {"fall", "all(occasion=autumn)"},
      {"fall 2023", "all(made=2023-09-01..2023-11-30)"},
      // feast, occasion
      {"christmas", "all(occasion=christmas)"},
      {"last christmas", "all(made=2024-12-26..2025-12-25, occasion=christmas)"},
      {"christmas 2023", "all(occasion=christmas, made=2023)"},
      {"since christmas", "all(made=2025-12-25..)"},
      {"easter 2023", "all(occasion=easter, made=2023)"},
      {"before easter 2023", "all(made=..2023-04-08)"},
      // occasion, date, colour
      {"birthday in may", "all(occasion=birthday, made=2026-05-01..2026-05-31)"},
      {"birthday in navy", "all(occasion=birthday, colour=Navy)"},
      {"valentine heart", "all(occasion=valentines day, piece(shape=heart))"},
      // date, what is missing
      {"no date", "all(no=made)"},
      {"no date 2023", "all(no=made, made=2023)"},
      {"not made in 2023", "all(none(made=2023))"},
      // date, choice
      {"2023 or circle", "all(any(made=2023, piece(shape=circle)))"},
      {"made 2023 or 2024", "all(any(made=2023, made=2024))"},
      // date, size
      {"about 2023", "all(made=2022-01-01..2024-12-31)"},
      {"about 2 in", "all(piece(size=about 2in ±1/8in))"},
      {"since 2020", "all(made=2020-01-01..)"},
      {"over 2 in", "all(piece(size=over 2in))"},
  });
}

// "last" and "newest" put cards in order before the word for them, and are a time before a length of it.
TEST(RulesThatMeet, OrdersStatusesAndDays) {
  compare_trees({
      // order of the cards, period, order of dies
      {"newest circle", "all(piece(shape=circle)), newest"},
      {"the last five cards", "all(), newest 5"},
      {"last five years", "all(made=2021-11-25..2026-11-25)"},
      {"last year", "all(made=2025)"},
      {"second largest tidepool rectangle", "all(piece(die=Tidepool Rectangles, second largest))"},
      // day of the year, occasion
      {"4th of July", "all(occasion=independence day)"},
      {"4 July 2026", "all(made=2026-07-04)"},
      {"made:\"4 July\"", "all(made=2026-07-04)"},
      // status, word
      {"retired dies", "all(piece(die=withdrawn))"},
      {"retired", "all(any(supply=withdrawn, paper=withdrawn (by status), ink=withdrawn (by status)))"},
  });
}

// `-` takes the phrase up to its shape, a word the whole phrase and what `and` or `or` joins to it; behind a
// piece a bare quality is excluded from that piece.
TEST(RulesThatMeet, Negation) {
  compare_trees({
      // not, colour
      {"circle not sage", "all(piece(shape=circle, none(paper=Sage)))"},
      {"not sage circle", "all(none(piece(paper=Sage, shape=circle)))"},
      {"-sage circle", "all(none(piece(paper=Sage, shape=circle)))"},
      {"-circle sage", "all(none(piece(shape=circle)), colour=Sage)"},
      {"circle -sage", "all(piece(shape=circle), none(colour=Sage))"},
      {"circle - sage", "all(piece(shape=circle, paper=Sage))"},
      // not, technique
      {"circle without stitching", "all(piece(shape=circle, none(technique=stitching)))"},
      {"without a stitched circle", "all(none(piece(technique=stitching, shape=circle)))"},
      // not, lists
      {"no circle and square", "all(none(piece(shape=circle)), none(piece(shape=square)))"},
      {"no circle or square", "all(none(piece(any(shape=circle, shape=square))))"},
      {"no circle, square or oval", "all(none(piece(any(shape=circle, shape=square, shape=oval))))"},
      {"no circle, square", "all(none(piece(shape=circle)), piece(shape=square))"},
      {"not easel or gate", "all(none(fold=easel), none(fold=gate))"},
      {"not (easel or gate)", "all(none(fold=easel), none(fold=gate))"},
      {"no sage or navy circle", "all(none(piece(any(paper=Sage, paper=Navy), shape=circle)))"},
      // not, field
      {"-shape:circle sage", "all(none(piece(shape=circle)), colour=Sage)"},
      {"shape:circle -paper:sage", "all(piece(shape=circle), none(paper=Sage))"},
      // not, phrase
      {"-\"happy birthday\"", "all(none(text=\"happy birthday\"))"},
      {"not \"circle\"", "all(none(text=\"circle\"))"},
      // not, what is missing
      {"no photo", "all(no=photo)"},
      {"no photo circle", "all(no=photo, piece(shape=circle))"},
      {"circle without a photo", "all(piece(shape=circle), no=photo)"},
      {"no fold", "all(no=fold)"},
      {"no easel", "all(none(fold=easel))"},
      // not, fold
      {"easel not gate", "all(fold=easel, none(fold=gate))"},
  });
}

// A connector begins a piece before a shape, role, count or shaped size only. Fields and phrases are taken as
// they stand.
TEST(RulesThatMeet, ConnectorsFieldsAndQuotes) {
  compare_trees({
      // with, and, comma before a quality, a piece
      {"circle with speckling", "all(piece(shape=circle, technique=speckling))"},
      {"circle with a speckled square", "all(piece(shape=circle), piece(technique=speckling, shape=square))"},
      {"circle and speckled", "all(piece(shape=circle, technique=speckling))"},
      {"circle and speckled square", "all(piece(shape=circle), piece(technique=speckling, shape=square))"},
      {"circle, speckled", "all(piece(shape=circle, technique=speckling))"},
      {"circle, speckled square", "all(piece(shape=circle), piece(technique=speckling, shape=square))"},
      {"circle/square", "all(piece(any(shape=circle, shape=square)))"},
      // and, or between like ones
      {"sage and navy circle", "all(piece(colour=Sage, colour=Navy, shape=circle))"},
      {"sage or navy circle and square",
       "all(piece(any(paper=Sage, paper=Navy), shape=circle), piece(shape=square))"},
      {"2 in circle or square", "all(piece(size=2in ±1/32in, any(shape=circle, shape=square)))"},
      // field, words
      {"shape:circle sage", "all(piece(shape=circle, paper=Sage))"},
      {"shape:circle, sage", "all(piece(shape=circle, paper=Sage))"},
      {"shape:circle or shape:square", "all(piece(any(shape=circle, shape=square)))"},
      {"with:(shape:circle) sage", "all(piece(shape=circle), colour=Sage)"},
      {"text:birthday", "all(text=birthday)"},
      {"birthday", "all(occasion=birthday)"},
      // field, what only looks like one
      {"note: circle", "all(text=note, piece(shape=circle))"},
      {"circle: 2 in", "all(piece(shape=circle, size=2in ±1/32in))"},
      // phrase, term
      {"\"happy birthday\" circle", "all(text=\"happy birthday\", piece(shape=circle))"},
      {"\"circle\" square", "all(text=\"circle\", piece(shape=square))"},
      {"with \"circle\"", "all(text=\"circle\")"},
      {"text:\"circle\" circle", "all(text=circle, piece(shape=circle))"},
      {"\"birthday\"", "all(text=\"birthday\")"},
      // unknown word, piece
      {"sage frobnitz circle", "all(piece(paper=Sage, shape=circle), text=frobnitz)"},
      {"frobnitz", "all(text=frobnitz)"},
      // article
      {"the circle", "all(piece(shape=circle))"},
      {"circle the square", "all(piece(shape=circle), piece(shape=square))"},
  });
}

// Phrases beside "or" that say the same kinds of things in the same order are whole.
TEST(RulesThatMeet, OrBetweenNeighboursAndBetweenPhrases) {
  compare_trees({
      {"birthday easel or christmas tent",
       "all(any(all(occasion=birthday, fold=easel), all(occasion=christmas, fold=tent)))"},
      {"birthday made in 2023 or christmas made in 2024",
       "all(any(all(occasion=birthday, made=2023), all(occasion=christmas, made=2024)))"},
      {"easel with a circle or tent with a square",
       "all(any(all(fold=easel, piece(shape=circle)), all(fold=tent, piece(shape=square))))"},
      {"birthday easel or christmas tent or halloween gate",
       "all(any(all(occasion=birthday, fold=easel), all(occasion=christmas, fold=tent), "
       "all(occasion=halloween, fold=gate)))"},
      {"2 in circle, birthday easel or christmas tent",
       "all(piece(size=2in ±1/32in, shape=circle), any(all(occasion=birthday, fold=easel), "
       "all(occasion=christmas, fold=tent)))"},
      {"circle on a square or heart on a rectangle",
       "all(any(piece(shape=circle, on(piece(shape=square))), piece(shape=heart, "
       "on(piece(shape=rectangle)))))"},
      {"birthday easel, christmas tent or halloween gate",
       "all(any(all(occasion=birthday, fold=easel), all(occasion=christmas, fold=tent), "
       "all(occasion=halloween, fold=gate)))"},
      {"cards with a birthday easel or a christmas tent",
       "all(any(all(occasion=birthday, fold=easel), all(occasion=christmas, fold=tent)))"},
      {"birthday 5 x 7 cards or christmas a6 cards",
       "all(any(all(occasion=birthday, closed=5in x 7in ±1/32in), all(occasion=christmas, "
       "closed=105mm x 148mm ±0.8mm)))"},
      // neighbours
      {"circle or square with a birthday", "all(piece(any(shape=circle, shape=square)), occasion=birthday)"},
      {"birthday or christmas easel", "all(any(occasion=birthday, occasion=christmas), fold=easel)"},
      {"sage or navy circle", "all(piece(any(paper=Sage, paper=Navy), shape=circle))"},
      {"sage circle or navy square",
       "all(any(piece(paper=Sage, shape=circle), piece(paper=Navy, shape=square)))"},
      {"easel with a sage circle or navy square",
       "all(fold=easel, any(piece(paper=Sage, shape=circle), piece(paper=Navy, shape=square)))"},
      // fields, exclusion
      {"occasion:birthday fold:easel or occasion:christmas fold:tent",
       "all(occasion=birthday, any(fold=easel, occasion=christmas), fold=tent)"},
      {"not a birthday easel or christmas tent",
       "all(none(all(occasion=birthday, fold=easel)), none(all(occasion=christmas, fold=tent)))"},
      {"no navy circle or sage square",
       "all(none(piece(paper=Navy, shape=circle)), none(piece(paper=Sage, shape=square)))"},
  });
}

// A season is an occasion, and a time of the year it stands with, or that its neighbour stands with.
TEST(RulesThatMeet, SeasonsThatAreDates) {
  compare_trees({
      {"spring", "all(occasion=spring)"},
      {"spring or summer", "all(any(occasion=spring, occasion=summer))"},
      {"spring or summer 2024", "all(any(made=2024-03-01..2024-05-31, made=2024-06-01..2024-08-31))"},
      {"summer 2024 or spring", "all(any(made=2024-06-01..2024-08-31, made=2024-03-01..2024-05-31))"},
      {"summer of 2024 or spring", "all(any(made=2024-06-01..2024-08-31, made=2024-03-01..2024-05-31))"},
      {"spring, summer or autumn 2024",
       "all(any(made=2024-03-01..2024-05-31, made=2024-06-01..2024-08-31, made=2024-09-01..2024-11-30))"},
      {"last spring or summer", "all(any(made=2026-03-01..2026-05-31, made=2026-06-01..2026-08-31))"},
      {"spring easel or summer 2024", "all(occasion=spring, any(fold=easel, made=2024-06-01..2024-08-31))"},
      // four figures
      {"made in 1823", "all(made=1823)"},
      {"circle made before 1850", "all(piece(shape=circle), made=..1849-12-31)"},
      {"circle 1823 in", "all(piece(shape=circle, size=1823in ±1/32in))"},
  });
}

// Sizes of the card and of what lies on it; colours of a piece and of what lies below.
TEST(RulesThatMeet, WhatIsSaidOfTheCardBehindAPiece) {
  compare_trees({
      {"panel on a 5 x 7 card", "all(piece(role=panel), closed=5in x 7in ±1/32in)"},
      {"panel on a 5 x 7 landscape card",
       "all(piece(role=panel), closed=5in x 7in ±1/32in, closed=landscape)"},
      {"circles on 5 x 7 cards", "all(piece(shape=circle), closed=5in x 7in ±1/32in)"},
      {"circle for a 5 x 7 card", "all(piece(shape=circle), closed=5in x 7in ±1/32in)"},
      {"five by seven cards", "all(closed=5in x 7in ±1/32in)"},
      {"5x7s", "all(closed=5in x 7in ±1/32in)"},
      {"birthday 5 x 7s", "all(occasion=birthday, closed=5in x 7in ±1/32in)"},
      {"five by seven panel", "all(piece(size=5in x 7in ±1/32in, role=panel))"},
      {"6 inch square card", "all(closed=6in x 6in ±1/32in)"},
      {"tall 2 x 3 in panel", "all(piece(size=2in wide x 3in tall ±1/32in, role=panel))"},
      {"sage circle on white", "all(piece(paper=Sage, shape=circle, on(piece(paper=white (by value)))))"},
      {"circle on white", "all(piece(shape=circle, paper=white (by value)))"},
      {"navy image on white", "all(piece(colour=Navy, role=stamped image, paper=white (by value)))"},
      {"like grey", "all(colour=grey (by value))"},
      {"like:grey", "all(colour=grey (by value))"},
      {"like:#zzz", "all(colour=#zzz)"},
      {"like:like", "all(colour=like)"},
      {"light blue circle", "all(piece(paper=light blue (by value), shape=circle))"},
      {"dark green", "all(colour=dark green (by value))"},
      {"light sage", "all(any(feature=light up, text=light), colour=Sage)"},
  });
}

// What a piece is stuck with may be said of the card's supplies.
TEST(RulesThatMeet, SuppliesAndTermsOfOneName) {
  compare_trees({
      {"glue dots", "all(any(glue=adhesive dot, supply=Glue Dots))"},
      {"without glue dots", "all(none(glue=adhesive dot), none(supply=Glue Dots))"},
      {"harbour dots folder on a square", "all(piece(supply=Harbour Dots, shape=square))"},
      {"pearls on a scallop",
       "all(any(piece(supply=Pearls, shape=scalloped), piece(supply=Pearls, on(piece(shape=scalloped)))))"},
      {"pearls on a scallop, on a panel",
       "all(any(piece(supply=Pearls, shape=scalloped, on(piece(role=panel))), piece(supply=Pearls, "
       "on(piece(shape=scalloped, on(piece(role=panel)))))))"},
      {"baker's twine round the front", "all(piece(supply=Baker's Twine, around(), side=front))"},
      {"bow on a ribbon", "all(piece(role=bow, on(any(piece(material=ribbon), piece(role=ribbon)))))"},
      {"bow on vellum", "all(piece(role=bow, material=vellum))"},
      {"two garden gates", "all(piece(count=2, supply=Garden Gate))"},
      {"cut with a die", "all(any(technique=die cutting, piece(die=any die), piece(role=die cut)))"},
      {"circles not cut with a die",
       "all(piece(shape=circle, none(technique=die cutting), none(die=any die), none(role=die cut)))"},
      {"cards using Otterby Steel dies", "all(piece(die=Otterby Steel))"},
      {"the second largest tidepool", "all(piece(die=Tidepool Rectangles, second largest))"},
      {"moonrise 4", "all(piece(die=Moonrise Circles 4))"},
      {"moonrise 4 circles", "all(text=moonrise, piece(count=4, shape=circle))"},
      {"hand cut images",
       "all(any(piece(role=hand cut image), piece(role=stamped image, technique=hand cutting)))"},
      {"rounded rectangle label", "all(piece(shape=rounded rectangle, role=label))"},
      {"torn edge strips", "all(piece(technique=tearing, role=strip))"},
  });
}

// A bracket behind a piece says what it is, where it names no other.
TEST(RulesThatMeet, BracketsBehindAPiece) {
  compare_trees({
      {"white circle (stamped in navy or speckled)",
       "all(any(piece(paper=white (by value), shape=circle, technique=stamping, ink=Navy), "
       "piece(paper=white (by value), shape=circle, technique=speckling)))"},
      {"circle (stamped or speckled) 2 in",
       "all(piece(shape=circle, any(technique=stamping, technique=speckling), size=2in ±1/32in))"},
      {"circle (stamped in navy or speckled) 2 in",
       "all(any(piece(shape=circle, technique=stamping, ink=Navy, size=2in ±1/32in), piece(shape=circle, "
       "technique=speckling, size=2in ±1/32in)))"},
      {"white circle (stamped in navy)",
       "all(piece(paper=white (by value), shape=circle, technique=stamping, ink=Navy))"},
      {"circle (a square or a heart)", "all(piece(shape=circle), piece(any(shape=square, shape=heart)))"},
      {"navy ink on white paper", "all(piece(ink=Navy, paper=white (by value)))"},
      {"white circle speckled navy and sage",
       "all(piece(paper=white (by value), shape=circle, technique=speckling, ink=Navy, ink=Sage))"},
  });
}

// Where a piece sits is said of that piece.
TEST(RulesThatMeet, PlacesOfPieces) {
  compare_trees({
      {"circle high of centre", "all(piece(shape=circle, at=high centre))"},
      {"circle on a square, high of center",
       "all(piece(shape=circle, on(piece(shape=square)), at=high centre))"},
      {"circle centred on the fold", "all(piece(shape=circle, at=centred fold))"},
      {"circle centred on a square", "all(piece(shape=circle, at=centred, on(piece(shape=square))))"},
      {"greeting in the bottom right corner", "all(piece(role=sentiment, at=bottom right))"},
      {"strip hanging off the left edge", "all(piece(role=strip, at=hanging off left))"},
      {"panel flush with the bottom", "all(piece(role=panel, at=flush bottom))"},
      {"circle not high of centre", "all(piece(shape=circle, none(at=high centre)))"},
      {"shape:circle at:\"right of the centre\"", "all(piece(shape=circle, at=right centre))"},
      {"top layer", "all(piece(role=layer))"},
  });
}

// Where "in" is no unit, and where words on the card end.
TEST(RulesThatMeet, SmallWordsBesideOthers) {
  compare_trees({
      {"oval 3-1/4 x 4-1/4 in an oval frame",
       "all(piece(shape=oval, size=3-1/4in x 4-1/4in ±1/32in, in(piece(shape=oval, role=frame))))"},
      {"circle 3 in in a square", "all(piece(shape=circle, size=3in ±1/32in, in(piece(shape=square))))"},
      {"tidepool rectangles 3 in tidepool rectangles 2",
       "all(piece(die=Tidepool Rectangles 3, in=Tidepool Rectangles 2))"},
      {"saying get well soon from 2024", "all(words=\"get well soon\", made=2024)"},
      {"saying \"warm wishes\"", "all(words=\"warm wishes\")"},
      {"that go in a C6 envelope", "all(envelope=c6)"},
      {"cards without an envelope recorded", "all(no=envelope)"},
      {"both a heart and a circle", "all(piece(shape=heart), piece(shape=circle))"},
      {"about hens", "all(text=hens)"},
      {"about 2 in circle", "all(piece(size=about 2in ±1/8in, shape=circle))"},
      {"inside: white greeting", "all(piece(side=inside, colour=white (by value), role=sentiment))"},
      {"made in spring", "all(made=2026-03-01..2026-05-31)"},
      {"cards of 2023 and 2024", "all(any(made=2023, made=2024))"},
      {"made since 2022 and before 2024", "all(made=2022-01-01.., made=..2023-12-31)"},
      {"ribbon thru a tag",
       "all(any(piece(material=ribbon, through(piece(shape=tag))), piece(role=ribbon, "
       "through(piece(shape=tag)))))"},
  });
}

// "23/8" may be a slip for "2-3/8"; it is read as it stands, and asked.
TEST(RulesThatMeet, AFractionAboveOneIsAskedAbout) {
  const Offers offers;
  const auto notes = [&](std::string_view text) { return read_question(text, offers.context())->notes; };
  ASSERT_EQ(notes("23/8 circle").size(), 1u);
  EXPECT_EQ(notes("23/8 circle").front(), "\"23/8\" is read as 2-7/8 in; was 2-3/8 meant?");
  for (const char* plain : {"2-3/8 circle", "3/8 circle", "9/8 circle", "29/8 circle", "circle 2 3/8 in"})
    EXPECT_TRUE(notes(plain).empty()) << plain << ": " << notes(plain).front();
}

// Questions of things, not of cards, which have no answer yet.
TEST(RulesThatMeet, WhatIsNotAnsweredIsSaid) {
  const Offers offers;
  const auto notes = [&](std::string_view text) {
    const auto question = read_question(text, offers.context());
    return question ? question->notes : std::vector<std::string>();
  };
  const auto told = [&](std::string_view text, std::string_view begins) {
    for (const std::string& note : notes(text))
      if (note.starts_with(begins)) return true;
    return false;
  };
  EXPECT_TRUE(told("what is in drawer 2", "What lies in one place"));
  EXPECT_TRUE(told("how many sheets of navy are left", "What is left"));
  EXPECT_TRUE(told("scored at 2-1/8", "Cards are not found by their scores"));
  EXPECT_TRUE(told("which stamps fit in a circle", "Which stamps fit"));
  EXPECT_TRUE(told("which papers are withdrawn", "These are the cards"));
  EXPECT_TRUE(told("dies never used", "Dies are not compared"));
  EXPECT_TRUE(told("largest circle die", "Dies are not compared"));
  EXPECT_TRUE(told("dies bigger than 4 inches", "Dies are not compared"));
  for (const char* card : {"circle in a folder", "left flap", "withdrawn papers", "circle bigger than 2 in",
                           "cards cut with a die", "circle at the left", "stamped in navy"})
    EXPECT_TRUE(notes(card).empty()) << card << ": " << notes(card).front();
}

// What cannot be is told at its place, and the rest is read.
TEST(RulesThatMeet, FiguresAndOrdersThatCannotBe) {
  struct Told {
    const char* question;
    const char* tree;
    std::size_t at, length;
    const char* what;
  };
  const Offers offers;
  for (const Told& row : std::initializer_list<Told>{
           {"circle 1e3 mm", "all(piece(shape=circle))", 7, 6, "\"1e3 mm\" is written with an exponent"},
           {"1e-3 in circle", "all(piece(shape=circle))", 0, 7, "\"1e-3 in\" is written with an exponent"},
           {"circle 0x10 in", "all(piece(shape=circle))", 7, 7, "\"0x10 in\" is hexadecimal"},
           {"smallest card", "all()", 0, 13,
            "\"smallest card\" asks for an order by size, which samples are not put into"},
           {"easel, biggest cards", "all(fold=easel)", 7, 13,
            "\"biggest cards\" asks for an order by size, which samples are not put into"},
       }) {
    const auto question = read_question(row.question, offers.context());
    ASSERT_TRUE(question) << row.question;
    EXPECT_EQ(print(*question), row.tree) << row.question;
    ASSERT_EQ(question->problems.size(), 1u) << row.question;
    EXPECT_EQ(question->problems.front().where.at, row.at) << row.question;
    EXPECT_EQ(question->problems.front().where.length, row.length) << row.question;
    EXPECT_EQ(question->problems.front().what, row.what);
  }
}

}  // namespace
}  // namespace insetbook
