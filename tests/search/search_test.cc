// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/search.h"

#include <gmock/gmock.h>
#include <unistd.h>
#include <xapian.h>

#include "book/records.h"
#include "search/trees.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;

constexpr Length in(std::int64_t n, std::int64_t d = 1) {
  return Length::inch_fraction(n, d);
}

Node size(SizeIs said, std::string text) {
  return asks(std::move(said), std::move(text), 10);
}
Node shape(std::string word) {
  return asks(ShapeIs{{word}}, word, 20);
}
Node exactly(Length length, std::string text) {
  return size(figure(Relation::exact, length), std::move(text));
}
Node easel() {
  return asks(FoldIs{{"easel fold", "stand up fold"}, "stand-up fold"}, "stand-up fold", 30);
}
Node words(std::vector<std::string> list, bool phrase = false) {
  std::string text;
  for (const auto& each : list) text += (text.empty() ? "" : " ") + each;
  return asks(WordsAre{std::move(list), phrase}, text, 40);
}

class Search : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = fs::temp_directory_path() / ("insetbook-search-" + std::to_string(getpid()));
    fs::remove_all(folder_);
    auto made = Book::create(folder_);
    ASSERT_TRUE(made) << made.error().what;
    book_.emplace(std::move(*made));
    const auto filled = book_->change("filled", [&](Change& change) -> Result<void> {
      fill(change);
      return {};
    });
    ASSERT_TRUE(filled) << filled.error().what;
  }
  void TearDown() override {
    book_.reset();
    fs::remove_all(folder_);
  }

  static std::int64_t add_sample(Change& change, std::string title, std::string made, std::string fold_term,
                                 std::string note) {
    SampleRow row;
    row.title = std::move(title);
    row.made = std::move(made);
    row.note = std::move(note);
    row.closed_width = in(17, 4);
    row.closed_height = in(11, 2);
    row.mentions.push_back({"fold", fold_term, {}, {}, fold_term});
    return put_sample(change, row)->second;
  }
  static void add_piece(Change& change, std::int64_t sample, std::string name, std::string shape_word,
                        Length width, Length height, int count = 1, std::string technique = "") {
    ElementRow row;
    row.sample_id = sample;
    row.name = std::move(name);
    row.shape = std::move(shape_word);
    row.role = "panel";
    row.size = {width, height, Unit::inch, false, ""};
    row.count = count;
    if (!technique.empty()) row.mentions.push_back({"technique", technique, {}, {}, technique});
    ASSERT_TRUE(put_element(change, row));
  }
  static void fill(Change& change) {
    const auto harbour =
        add_sample(change, "Harbour lights", "2023-05-01", "easel fold", "Glittering water.");
    add_piece(change, harbour, "sun", "circle", in(19, 8), in(19, 8), 1, "speckling");
    add_piece(change, harbour, "strip", "strip", in(1, 2), in(4));
    const auto tide =
        add_sample(change, "Tide chart", "2024-01-01", "side fold", "Glitter on the water line.");
    add_piece(change, tide, "dial", "circle", in(19, 8) + in(1, 64), in(19, 8) + in(1, 64));
    const auto moon = add_sample(change, "Moon gate", "2022-08-09", "easel fold", "");
    add_piece(change, moon, "gate", "circle", in(9, 4), in(9, 4));
    const auto reeds = add_sample(change, "Reed bed", "", "side fold", "A plain café card.");
    add_piece(change, reeds, "reed", "rectangle", in(2), in(3), 3);
    add_piece(change, reeds, "bank", "rectangle", in(2), in(3));
  }

  Hits ask(std::vector<Node> children, SearchOptions options = {}) {
    const auto hits = search(*book_, question(std::move(children)), options);
    EXPECT_TRUE(hits) << hits.error().what;
    return hits.value_or(Hits());
  }
  static std::vector<std::string> titles(const Hits& hits) {
    std::vector<std::string> out;
    for (const Hit& hit : hits.hits) out.push_back(hit.title);
    return out;
  }
  static std::vector<std::string> matched(const Hit& hit) {
    std::vector<std::string> out;
    for (const Matched& each : hit.matched)
      out.push_back(each.text + " | " + each.element + " | " + each.why);
    return out;
  }
  static std::vector<std::string> nearest(const Hits& hits) {
    std::vector<std::string> out;
    for (const Hit& hit : hits.nearest) out.push_back(hit.title + " | " + hit.difference);
    return out;
  }

  // Every mark of what matched, one "[…]" around each.
  static std::vector<std::string> marked(const Hit& hit) {
    std::vector<std::string> out;
    for (const Matched& each : hit.matched) {
      std::string text = each.why;
      for (auto mark = each.marks.rbegin(); mark != each.marks.rend(); ++mark)
        text.insert(mark->end, "]").insert(mark->begin, "[");
      out.push_back(std::move(text));
    }
    return out;
  }
  // Dial on plate in "Tide chart"; gate beside frame, cord around gate in "Moon gate".
  void record_what_goes() {
    const auto done = book_->change("goes", [&](Change& change) -> Result<void> {
      add_piece(change, 2, "plate", "square", in(3), in(3));
      add_piece(change, 3, "frame", "square", in(3), in(3));
      add_piece(change, 3, "cord", "strip", in(1, 8), in(9));
      change.database().execute(
          "UPDATE element SET goes = 'on plate', goes_how = 'on', goes_to = (SELECT id FROM element WHERE "
          "name = "
          "'plate') WHERE name = 'dial';"
          "UPDATE element SET goes = 'around gate', goes_how = 'around', goes_to = (SELECT id FROM element "
          "WHERE "
          "name = 'gate') WHERE name = 'cord';"
          "UPDATE element SET goes = 'on front', goes_how = 'on' WHERE name = 'sun';");
      return {};
    });
    ASSERT_TRUE(done) << done.error().what;
  }

  fs::path folder_;
  std::optional<Book> book_;
};

TEST_F(Search, circle_with_a_stand_up_fold) {
  const Hits hits = ask({piece({exactly(in(19, 8), "2-3/8 in"), shape("circle")}), easel()});
  ASSERT_THAT(titles(hits), ElementsAre("Harbour lights"));
  EXPECT_EQ(hits.total, 1U);
  EXPECT_TRUE(hits.total_is_exact);
  EXPECT_THAT(matched(hits.hits[0]),
              ElementsAre("2-3/8 in circle | sun | circle 2-3/8 in", "stand-up fold |  | fold: easel fold"));
}

TEST_F(Search, one_piece_meets_all_that_is_said_of_it) {
  EXPECT_THAT(titles(ask({piece({exactly(in(4), "4 in"), shape("circle")})})), ElementsAre());
  EXPECT_THAT(
      titles(ask({piece({exactly(in(19, 8), "2-3/8 in"), asks(TechniqueIs{{"speckling"}}, "speckled")})})),
      ElementsAre("Harbour lights"));
  EXPECT_THAT(titles(ask({piece({shape("strip"), asks(TechniqueIs{{"speckling"}}, "speckled")})})),
              ElementsAre());
  EXPECT_THAT(titles(ask({piece({shape("strip")}), asks(TechniqueIs{{"speckling"}}, "speckled")})),
              ElementsAre("Harbour lights"));
}

TEST_F(Search, exact_before_near_and_the_closest_first) {
  const Hits hits =
      ask({piece({size(figure(Relation::about, in(19, 8)), "about 2-3/8 in"), shape("circle")})});
  EXPECT_THAT(titles(hits), ElementsAre("Harbour lights", "Tide chart", "Moon gate"));
  EXPECT_THAT(matched(hits.hits[1]),
              ElementsAre("about 2-3/8 in circle | dial | circle 2-25/64 in, 1/64 in larger"));
  // Of those that are near, what the text says comes before how near they are.
  const Node near_circle =
      piece({size(figure(Relation::about, in(37, 16)), "about 2-5/16 in"), shape("circle")});
  EXPECT_THAT(titles(ask({near_circle})), ElementsAre("Harbour lights", "Moon gate", "Tide chart"));
  EXPECT_THAT(titles(ask({near_circle, any({words({"tide"}), words({"chart"}), words({"harbour"})})})),
              ElementsAre("Tide chart", "Harbour lights"));
  SearchOptions newest;
  newest.order = Order::newest;
  EXPECT_THAT(titles(ask({piece({shape("circle")})}, newest)),
              ElementsAre("Tide chart", "Harbour lights", "Moon gate"));
  newest.order = Order::oldest;
  EXPECT_THAT(titles(ask({}, newest)), ElementsAre("Moon gate", "Harbour lights", "Tide chart", "Reed bed"));
  newest.order = Order::title;
  EXPECT_THAT(titles(ask({}, newest)), ElementsAre("Harbour lights", "Moon gate", "Reed bed", "Tide chart"));
  newest.order = Order::best;
  newest.limit = 2;
  const Hits two = ask({}, newest);
  EXPECT_THAT(titles(two), ElementsAre("Tide chart", "Harbour lights"));
  EXPECT_EQ(two.total, 4U);
}

TEST_F(Search, pieces_side_by_side_are_different_pieces_and_counts_add_up) {
  const Node rectangle = piece({shape("rectangle")});
  EXPECT_THAT(titles(ask({piece({shape("circle")}), piece({exactly(in(19, 8), "2-3/8 in")})})),
              ElementsAre());
  EXPECT_THAT(titles(ask({rectangle, rectangle, rectangle, rectangle})), ElementsAre("Reed bed"));
  EXPECT_THAT(titles(ask({rectangle, rectangle, rectangle, rectangle, rectangle})), ElementsAre());
  // More than are told apart in SQL.
  const Node panel = piece({asks(RoleIs{{"panel"}}, "panel")});
  EXPECT_THAT(titles(ask({rectangle, rectangle, panel, panel, rectangle, rectangle, panel})), ElementsAre());
  Node many;  // the same in a bracket, as well as excluded
  many.kind = Node::Kind::all;
  many.children = {rectangle, rectangle, panel, panel, rectangle, rectangle, panel};
  EXPECT_THAT(titles(ask({any({words({"glitters"}), many})})), ElementsAre("Tide chart", "Harbour lights"));
  EXPECT_EQ(ask({none({many})}).total, 4U);
  const auto four = piece({shape("rectangle"), asks(CountIs{4}, "four")});
  EXPECT_THAT(titles(ask({four})), ElementsAre("Reed bed"));
  EXPECT_THAT(titles(ask({piece({shape("rectangle"), asks(CountIs{5}, "five")})})), ElementsAre());
  EXPECT_THAT(titles(ask({any({piece({shape("oval")}), piece({shape("strip")})}), piece({shape("circle")})})),
              ElementsAre("Harbour lights"));
}

TEST_F(Search, what_is_excluded) {
  EXPECT_THAT(titles(ask({none({piece({shape("circle")})})})), ElementsAre("Reed bed"));
  EXPECT_THAT(titles(ask({none({easel(), piece({shape("rectangle")})})})), ElementsAre("Tide chart"));
  EXPECT_THAT(
      titles(ask({piece({shape("circle"), none({asks(TechniqueIs{{"speckling"}}, "speckled")})}), easel()})),
      ElementsAre("Moon gate"));
}

TEST_F(Search, words_by_stem_without_accents_and_as_phrases) {
  EXPECT_THAT(titles(ask({words({"glitters"})})),
              testing::UnorderedElementsAre("Harbour lights", "Tide chart"));
  EXPECT_THAT(titles(ask({words({"cafe"})})), ElementsAre("Reed bed"));
  EXPECT_THAT(titles(ask({words({"café"})})), ElementsAre("Reed bed"));
  EXPECT_THAT(titles(ask({words({"water", "line"}, true)})), ElementsAre("Tide chart"));
  EXPECT_THAT(titles(ask({words({"line", "water"}, true)})), ElementsAre());
  EXPECT_THAT(titles(ask({words({"line", "water"})})), ElementsAre("Tide chart"));
  const Hits hits = ask({words({"glitter"}), easel()});
  ASSERT_THAT(titles(hits), ElementsAre("Harbour lights"));
  EXPECT_THAT(matched(hits.hits[0]),
              ElementsAre("glitter |  | note: Glittering water.", "stand-up fold |  | fold: easel fold"));
  EXPECT_THAT(titles(ask({none({words({"water"})}), piece({shape("circle")})})), ElementsAre("Moon gate"));
  EXPECT_THAT(titles(ask({any({words({"plain"}), piece({exactly(in(9, 4), "2-1/4 in")})})})),
              ElementsAre("Moon gate", "Reed bed"));
  EXPECT_THAT(titles(ask({words({"!!"})})),
              ElementsAre("Tide chart", "Harbour lights", "Moon gate", "Reed bed"));
}

TEST_F(Search, words_found_where_there_is_no_index_for_a_structured_question) {
  ask({piece({shape("circle")}), easel()});
  EXPECT_FALSE(fs::exists(folder_ / "index")) << "a question without words must not touch the index";
  ask({words({"water"})});
  EXPECT_TRUE(fs::exists(folder_ / "index"));
}

TEST_F(Search, closed_size_form_and_date) {
  const auto closed = [&](ClosedSizeIs is) { return asks(std::move(is), "card", 1); };
  const Hits hits =
      ask({closed({figures(Relation::exact, in(11, 2), in(17, 4)), ClosedSizeIs::Form::any, ""}), easel()});
  ASSERT_THAT(titles(hits), ElementsAre("Harbour lights", "Moon gate"));
  EXPECT_EQ(matched(hits.hits[0])[0], "card |  | closed 4-1/4 x 5-1/2 in");
  EXPECT_EQ(ask({closed({{}, ClosedSizeIs::Form::portrait, ""})}).total, 4U);
  EXPECT_EQ(ask({closed({{}, ClosedSizeIs::Form::landscape, ""})}).total, 0U);
  EXPECT_EQ(ask({closed({{}, ClosedSizeIs::Form::square, ""})}).total, 0U);
  EXPECT_THAT(titles(ask({asks(MadeIn{"2022-08-09", "2023-05-01"}, "")})),
              ElementsAre("Harbour lights", "Moon gate"));
  EXPECT_THAT(titles(ask({asks(MadeIn{"", "2022-12-31"}, "")})), ElementsAre("Moon gate"));
  EXPECT_THAT(titles(ask({asks(HasNo{"made"}, "undated")})), ElementsAre("Reed bed"));
}

Node goes(GoesHow how, std::string text, std::vector<Node> children = {}) {
  Node node = asks(GoesIs{how}, std::move(text), 50);
  node.kind = Node::Kind::goes;
  for (Node& child : children)
    for (Node& inner : child.children) inner.constraint.front().span.begin += 100;
  node.children = std::move(children);
  return node;
}

TEST_F(Search, pieces_that_go_with_others) {
  record_what_goes();
  const Node square = piece({exactly(in(3), "3 in"), shape("square")});
  const Hits on = ask({piece({shape("circle"), goes(GoesHow::on, "on", {square})})});
  ASSERT_THAT(titles(on), ElementsAre("Tide chart"));
  EXPECT_THAT(matched(on.hits[0]),
              ElementsAre("circle on 3 in square | dial | circle, on plate (square 3 in)"));
  EXPECT_THAT(marked(on.hits[0]), ElementsAre("[circle], [on plate] ([square] [3 in])"));
  const Hits behind =
      ask({piece({shape("square"), goes(GoesHow::behind, "behind", {piece({shape("circle")})})})});
  ASSERT_THAT(titles(behind), ElementsAre("Tide chart"));
  EXPECT_THAT(matched(behind.hits[0]),
              ElementsAre("square behind circle | plate | square, behind dial (circle)"));
  const Hits front = ask({piece({shape("circle"), goes(GoesHow::on, "on")})});
  ASSERT_THAT(titles(front), ElementsAre("Tide chart", "Harbour lights"));
  EXPECT_THAT(marked(front.hits[1]), ElementsAre("[circle], [on front]"));
  EXPECT_THAT(titles(ask({piece({goes(GoesHow::around, "around", {piece({shape("circle")})})})})),
              ElementsAre("Moon gate"));
  EXPECT_THAT(titles(ask({piece({shape("circle"), none({goes(GoesHow::on, "on", {square})})})})),
              ElementsAre("Harbour lights", "Moon gate"));
  const Node two = piece({shape("square"), asks(CountIs{2}, "two")});
  EXPECT_THAT(titles(ask({piece({shape("circle"), goes(GoesHow::on, "on", {two})})})), ElementsAre());
}

TEST_F(Search, nested_deeper_than_a_statement_can_be) {
  record_what_goes();
  Node on = piece({shape("circle")});
  for (int i = 0; i < 40; ++i)
    on = piece({goes(i % 2 == 0 ? GoesHow::behind : GoesHow::on, "", {std::move(on)})});
  EXPECT_THAT(titles(ask({on})), ElementsAre("Tide chart"));
  Node not_not = easel();
  for (int i = 0; i < 40; ++i) not_not = none({std::move(not_not), shape("banner")});
  EXPECT_THAT(titles(ask({not_not})), ElementsAre("Harbour lights", "Moon gate"));
  std::vector<Node> many;
  for (int i = 0; i < 3000; ++i) many.push_back(piece({shape("shape " + std::to_string(i))}));
  many.push_back(piece({shape("strip")}));
  EXPECT_THAT(titles(ask({any(std::move(many)), easel()})), ElementsAre("Harbour lights", "Moon gate"));
}

TEST_F(Search, the_nearest_say_what_they_have_instead) {
  record_what_goes();
  const Hits beside = ask({piece({exactly(in(9, 4), "2-1/4 in"), shape("circle"),
                                  goes(GoesHow::on, "on", {piece({shape("square")})})})});
  EXPECT_THAT(beside.emptied_by, ElementsAre("2-1/4 in", "on square"));
  EXPECT_THAT(nearest(beside), ElementsAre("Tide chart | circle 2-25/64 in: 9/64 in larger"));
  const Hits fold_asked = ask({piece({exactly(in(2), "2 in"), shape("rectangle")}), easel()});
  EXPECT_THAT(fold_asked.emptied_by, ElementsAre("2 in", "stand-up fold"));
  const Hits oval = ask({piece({exactly(in(9, 4), "2-1/4 in"), shape("oval")}), words({"moon"})});
  EXPECT_THAT(oval.emptied_by, ElementsAre("oval"));
  EXPECT_THAT(nearest(oval), ElementsAre("Moon gate | circle instead of oval"));
  const Hits apart =
      ask({piece({shape("circle"), goes(GoesHow::on, "on", {piece({shape("square")})})}), easel()});
  EXPECT_THAT(apart.emptied_by, ElementsAre("on square", "stand-up fold"));
  EXPECT_THAT(nearest(apart), ElementsAre("Harbour lights | does not have: on square",
                                          "Moon gate | gate lies beside, not on, square",
                                          "Tide chart | does not have: stand-up fold; has: side fold"));
}

TEST_F(Search, more_like_a_sample) {
  record_what_goes();
  const Node like = asks(AlikeTo{1, "Harbour lights"}, "like harbour lights");
  const Hits hits = ask({like});
  EXPECT_THAT(titles(hits), ElementsAre("Tide chart", "Moon gate"));
  EXPECT_THAT(matched(hits.hits[0]),
              ElementsAre("like harbour lights |  | both: circle 2-3/8 in, \"glittering\", \"water\""));
  EXPECT_THAT(
      matched(hits.hits[1]),
      ElementsAre("like harbour lights |  | both: easel fold; near: circle 2-1/4 in for circle 2-3/8 in"));
  EXPECT_THAT(titles(ask({like, easel()})), ElementsAre("Moon gate"));
  EXPECT_THAT(titles(ask({none({like})})), ElementsAre("Harbour lights", "Reed bed"));
  EXPECT_THAT(titles(ask({like, words({"line"})})), ElementsAre("Tide chart"));
  EXPECT_THAT(titles(ask({asks(AlikeTo{99, "gone"}, "like gone")})), ElementsAre());
}

TEST_F(Search, what_was_asked_is_marked) {
  const Hits hits =
      ask({piece({exactly(in(19, 8), "2-3/8 in"), shape("circle")}), words({"glittering", "water"})});
  ASSERT_FALSE(hits.hits.empty());
  EXPECT_THAT(marked(hits.hits[0]),
              ElementsAre("[circle] [2-25/64 in], 1/64 in larger", "note: [Glitter] on the [water] line."));
}

TEST_F(Search, nothing_found_says_why_and_what_is_nearest) {
  const Hits hits = ask({piece({exactly(in(5, 2), "2-1/2 in"), shape("circle")}), easel()});
  EXPECT_THAT(hits.emptied_by, ElementsAre("2-1/2 in"));
  EXPECT_THAT(nearest(hits), ElementsAre("Harbour lights | circle 2-3/8 in: 1/8 in smaller",
                                         "Moon gate | circle 2-1/4 in: 1/4 in smaller"));
}

TEST_F(Search, the_smallest_set_that_empties_the_answer) {
  const Hits hits =
      ask({piece({exactly(in(2), "2 in"), shape("rectangle")}), easel(), words({"plain", "card"})});
  EXPECT_EQ(hits.total, 0U);
  EXPECT_THAT(hits.emptied_by, ElementsAre("2 in", "stand-up fold"));
  const Hits both = ask({words({"plain"}), easel()});
  EXPECT_THAT(both.emptied_by, ElementsAre("plain", "stand-up fold"));
  EXPECT_THAT(nearest(both),
              ElementsAre("Harbour lights | does not have: plain", "Moon gate | does not have: plain",
                          "Reed bed | does not have: stand-up fold; has: side fold"));
}

TEST_F(Search, misspelt_words_get_a_suggestion) {
  const Hits hits = ask({words({"gliter"})});
  EXPECT_EQ(hits.total, 0U);
  EXPECT_THAT(hits.emptied_by, ElementsAre("gliter"));
  EXPECT_THAT(hits.nearest, ElementsAre()) << "nothing is left of the question to be near to";
  EXPECT_THAT(hits.suggest, ElementsAre(Suggestion{"gliter", "glitter"}));
  EXPECT_THAT(ask({words({"harbor"})}).suggest, ElementsAre(Suggestion{"harbor", "harbour"}));
  EXPECT_THAT(ask({words({"glitter", "zebra"})}).suggest, ElementsAre());
  EXPECT_THAT(ask({words({"water", "moon"})}).suggest, ElementsAre())
      << "both words are there, if not together";
  const Vocabulary vocabulary;
  SearchOptions options;
  options.vocabulary = &vocabulary;
  EXPECT_THAT(ask({words({"embosing"})}, options).suggest, ElementsAre())
      << "nothing of this book is embossed: the word would find nothing either";
  EXPECT_THAT(ask({words({"rectangel"})}, options).suggest,
              ElementsAre(Suggestion{"rectangel", "rectangle"}));
  EXPECT_THAT(ask({words({"har", "bour"})}, options).suggest, ElementsAre(Suggestion{"har bour", "harbour"}));
  for (const char* far : {"how", "help", "pond", "bigger"})
    EXPECT_THAT(ask({words({far})}, options).suggest, ElementsAre()) << far;
}

TEST_F(Search, an_empty_book_is_not_the_question_s_fault) {
  const auto emptied = book_->change("emptied", [](Change& change) -> Result<void> {
    change.database().execute("DELETE FROM mention; DELETE FROM element; DELETE FROM sample;");
    return {};
  });
  ASSERT_TRUE(emptied);
  const Hits hits = ask({piece({shape("circle")}), words({"water"})});
  EXPECT_EQ(hits.total, 0U);
  EXPECT_THAT(hits.emptied_by, ElementsAre());
  EXPECT_THAT(hits.nearest, ElementsAre());
}

TEST_F(Search, unknown_field_is_refused) {
  const auto hits = search(*book_, question({asks(HasNo{"colour of the moon"}, "")}), {});
  ASSERT_FALSE(hits);
  EXPECT_EQ(hits.error().what, "no sample can be looked for by having no \"colour of the moon\"");
  EXPECT_EQ(hits.error().kind, ProblemKind::bad_input);
}

TEST_F(Search, verify_says_what_is_wrong_with_the_index) {
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre(testing::StartsWith("the index cannot be read: ")));
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::rebuilt);
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre());
  const auto note = [](const char* said) {
    return [said](Change& change) -> Result<void> {
      change.database().execute(std::string("UPDATE sample SET note = '") + said + "' WHERE id = 2");
      return {};
    };
  };
  ASSERT_TRUE(book_->change("a note", note("Kelp.")));
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre("the index is behind the book"));
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::caught_up);
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre());
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::in_step);
  {
    Xapian::WritableDatabase db((folder_ / "index").string(), Xapian::DB_OPEN);
    db.delete_document(3);
    Xapian::Document wrong = db.get_document(2);
    wrong.add_posting("heron", 1);
    db.replace_document(2, wrong);
    db.commit();
  }
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre(testing::StartsWith("the index cannot be read: ")));
  EXPECT_TRUE(Index(folder_).rebuild(*book_));
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre());
  {
    Xapian::WritableDatabase db((folder_ / "index").string(), Xapian::DB_OPEN);
    Xapian::Document wrong = db.get_document(2);
    wrong.add_posting("heron", 1);
    db.replace_document(2, wrong);
    db.commit();
  }
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre("the index differs from the book for sample 2"));
}

TEST_F(Search, index_of_another_book_or_of_a_restored_one_is_built_anew) {
  Index(folder_).catch_up(*book_);
  {
    Xapian::WritableDatabase db((folder_ / "index").string(), Xapian::DB_OPEN);
    db.set_metadata("book", "another");
    db.commit();
  }
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre("the index is of another book or format"));
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::rebuilt);
  {
    Xapian::WritableDatabase db((folder_ / "index").string(), Xapian::DB_OPEN);
    db.set_metadata("change made", "1999-01-01T00:00:00Z");
    db.commit();
  }
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::rebuilt);
  {
    Xapian::WritableDatabase db((folder_ / "index").string(), Xapian::DB_OPEN);
    db.set_metadata("fingerprint", "0");
    db.commit();
  }
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::rebuilt);
  EXPECT_EQ(Index(folder_).catch_up(*book_), Index::State::in_step);
  EXPECT_THAT(Index(folder_).verify(*book_), ElementsAre());
}

TEST_F(Search, deleted_and_undone_samples_come_and_go) {
  Index index(folder_);
  SearchOptions options;
  options.index = &index;
  EXPECT_EQ(ask({words({"water"})}, options).total, 2U);
  const auto gone = book_->change("deleted", [](Change& change) -> Result<void> {
    change.database().execute(
        "DELETE FROM mention WHERE sample_id = 1; DELETE FROM element WHERE sample_id = 1; "
        "DELETE FROM sample WHERE id = 1;");
    return {};
  });
  ASSERT_TRUE(gone);
  EXPECT_THAT(titles(ask({words({"water"})}, options)), ElementsAre("Tide chart"));
}

// A set whose dies are not in the book yet is asked for by its name; a line of it is nowhere.
TEST_F(Search, a_set_without_dies_finds_the_pieces_that_name_it) {
  ASSERT_TRUE(book_->change("a set", [](Change& change) -> Result<void> {
    change.database().execute(
        "INSERT INTO die_set (id, uuid, name, key) VALUES (7, 'seven', 'Kelp Tags', 'kelp tags');"
        "UPDATE element SET set_id = 7 WHERE name = 'reed'");
    return {};
  }));
  const DieIs set{{}, "", false, "Kelp Tags", {7}};
  EXPECT_THAT(titles(ask({piece({asks(set, "kelp tags")})})), ElementsAre("Reed bed"));
  EXPECT_EQ(ask({none({piece({asks(set, "kelp tags")})})}).total, 3U);
  DieIs stitched = set;
  stitched.line = "stitched";
  EXPECT_EQ(ask({piece({asks(stitched, "kelp tags, stitched")})}).total, 0U);
  DieIs inside = set;
  inside.lies_in = true;
  EXPECT_EQ(ask({piece({asks(inside, "in kelp tags")})}).total, 0U);
}

TEST_F(Search, what_a_piece_is_stuck_with_is_read_word_by_word) {
  ASSERT_TRUE(book_->change("glue", [](Change& change) -> Result<void> {
    change.database().execute(
        "UPDATE element SET glue = 'left 2 in, Foam squares' WHERE name = 'sun';"
        "UPDATE element SET glue = 'foam' WHERE name = 'gate';"
        "UPDATE element SET glue = 'wet glue' WHERE name = 'dial';"
        "UPDATE element SET glue = 'foamless' WHERE name = 'reed'");
    return {};
  }));
  const GlueIs foam{{"foam", "foam square"}, {"foam", "foamsquare"}};
  const Hits hits = ask({piece({asks(foam, "foam")})});
  EXPECT_THAT(titles(hits), ElementsAre("Harbour lights", "Moon gate"));
  EXPECT_THAT(matched(hits.hits.front()), ElementsAre("foam | sun | stuck: left 2 in, Foam squares"));
  EXPECT_THAT(titles(ask({piece({asks(GlueIs{{"foam square"}, {"foamsquare"}}, "foam squares")})})),
              ElementsAre("Harbour lights"));
  EXPECT_EQ(ask({none({asks(foam, "foam")})}).total, 2U);
}

}  // namespace
}  // namespace insetbook
