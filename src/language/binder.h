// SPDX-License-Identifier: GPL-3.0-or-later
//
// The inside of bind.h: the items of a question are taken one by one, pieces of a sample are opened, filled
// and finished, and each lands in a slot of its bracket. A piece that another goes with is read while that
// one waits (`Level::waiting`), and is then made a part of it. The files: bind.cc the walk, connectors and
// negation; bind_pieces.cc one piece; bind_goes.cc how pieces go together; bind_card.cc the closed card;
// bind_numbers.cc counts and bare numbers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/bind_tree.h"
#include "language/items.h"

namespace insetbook {

inline constexpr int deepest_bracket = 50;

class Binder {
 public:
  Binder(std::string_view text, Itemised& itemised)
      : text_(text), itemised_(itemised), items_(itemised.items) {}
  Result<Node> run();

 private:
  static constexpr std::size_t none_yet = static_cast<std::size_t>(-1);
  enum class Pending { nothing, joins, comma, goes };
  enum class Excluding { no, term, phrase };

  // A part of a piece.
  struct Part {
    Node node;
    std::vector<Constraint> also;  // the same word read otherwise: as a material, "inside panel" (items.h)
    FieldName of = FieldName::text;
    bool head = false;
    bool field = false;  // said as a field
    bool excluded = false;
    bool same_piece = false;  // as the part before
  };

  // How a piece that is being read hangs on the one that waits for it.
  struct Link {
    Constraint how;
    bool excluded = false;     // "not on …"
    bool alternative = false;  // "… or on a …": beside the one before
  };

  struct OpenPiece {
    std::vector<Part> parts;
    std::size_t slot = none_yet;
    std::size_t head_at = none_yet;  // of the first head among the parts
    bool sample_between = false;     // something was said of the sample since it began
    bool text_between = false;       // free words stood between
    bool excluded = false;           // the whole piece is
    bool outright = false;           // with:( … )
    bool unsure = false;
    std::optional<int> at_most;  // count
    bool exactly = false;        // count: no more than at_most and no fewer
    std::string unsure_word;
    Span unsure_span;
    std::optional<Link> link;
    // "stamped in navy or speckled": what stood behind the head before each `or`. In a bracket, behind all
    // that stood before it: so many parts, which all of them share; `all_offered` once the bracket is closed.
    std::vector<std::vector<Part>> alternatives = {};
    std::size_t shared = none_yet;
    bool all_offered = false;
    // "snail on an arch": how many parts stood before "on". They may as well be a piece that lies on another.
    struct Laid {
      std::size_t parts;
      Link link;
    };
    std::optional<Laid> laid = {};

    bool has(FieldName of) const;
    bool has_head() const { return head_at != none_yet; }
    std::size_t offered_from() const { return shared == none_yet ? head_at + 1 : shared; }
    // Whether a piece is named: else its parts are any piece's.
    bool named() const;
  };

  // What a piece that was read asks for.
  struct Wanted {
    std::optional<Node> there, not_there;
  };

  struct Slot {
    std::vector<Node> nodes;
    bool excluded = false;
    bool or_before = false;
  };

  // What one bracket holds.
  struct Level {
    int depth = 0;
    std::vector<Slot> slots;
    std::optional<OpenPiece> piece;
    std::vector<OpenPiece> waiting;  // each goes with the next one, the last with `piece`
    Pending pending = Pending::nothing;
    std::optional<Link> going;  // pending is `goes`: how the piece before goes with the one that follows
    bool and_before = false;
    bool or_before = false;
    bool not_before = false;  // the way of going that follows is excluded
    Excluding excluding = Excluding::no;
    bool excluded_something = false;  // since the word of negation
    bool joined_on = false;           // "and" or "or" stood behind what was excluded
    bool in_piece = false;            // the exclusion is of the piece that is open
    std::size_t list_end = none_yet;  // the "or" at which a comma list of exclusions ends
    bool with = false;                // with:( … ): one piece, outright
  };

  // bind.cc
  Result<std::vector<Node>> level(int depth, bool with);
  void take(Level& level, std::size_t place);
  std::size_t new_slot(Level& level);
  void add_node(Level& level, Node node, bool excluded);
  std::vector<Node> flatten(Level& level);
  void joins(Level& level, const Item& item);
  bool excludes_more(const Level& level) const;
  void comma(Level& level, std::size_t place);
  void either(Level& level, std::size_t place);
  void go_on_excluding(Level& level);
  std::size_t list_end(std::size_t place) const;
  void end_exclusion(Level& level);
  void excludes(Level& level, std::size_t place);
  bool goes_ahead() const;
  void exclude_next_of_piece(Level& level);
  void sample_item(Level& level, Item& item);
  void text_item(Level& level, std::size_t place);
  void flush_keeping_exclusion(Level& level);
  void after_excluded_unit(Level& level);
  Result<void> bracket(Level& level, const Item& item, bool with);
  static bool of_one_piece(const Node& node);
  bool open_properties(Level& level);
  void close_properties(Level& level);
  bool or_follows() const { return at_ < items_.size() && items_[at_].kind == Item::Kind::either; }

  // bind_pieces.cc
  void flush(Level& level);
  void finish(Level& level);
  Wanted wanted(OpenPiece piece, bool other) const;
  static Node piece_of(std::vector<Part> parts);
  static Node offered_piece(OpenPiece& piece);
  static Node treated_or_laid(OpenPiece piece);
  bool or_within_piece(Level& level);
  static std::vector<Part> parts_of(const std::vector<Constraint>& said);
  static std::optional<Node> read_the_other_way(const OpenPiece& piece);
  static void tell_paper_from_ink(OpenPiece& piece);
  static void tell_ink_by_its_technique(OpenPiece& piece);
  static void count_roles(OpenPiece& piece);
  void start(Level& level);
  void add_part(Level& level, Item& item);
  bool begins_piece(const Level& level, std::size_t place) const;
  static bool lies_besides(const OpenPiece& piece, const Item& item);
  bool other_bound(const Level& level, std::size_t place) const;
  bool joins_like_words(const Level& level, std::size_t place) const;
  void piece_item(Level& level, std::size_t place);
  static bool said_again(const Level& level, const Item& item);
  bool ends_term(bool head, bool field) const;
  std::vector<Part> taken_from_before(Level& level, std::size_t place);

  // bind_goes.cc
  Result<void> goes(Level& level, std::size_t place);
  Result<void> goes_group(Level& level, Link link);
  bool pieces_in_bracket() const;
  void goes_with_anything(Level& level, std::size_t place);
  void goes_back(Level& level, std::size_t place);
  std::size_t piece_before(const Level& level) const;
  bool subject_open(Level& level, std::size_t place);
  bool stands_first(const Level& level, std::size_t place) const;
  void start_other(Level& level);
  void close_others(Level& level);
  static void close_other(Level& level, Wanted wanted);
  static void add_going(OpenPiece& subject, const Link& link, std::vector<Node> other, bool excluded);
  bool or_another(Level& level);
  Link link_of(const Item& item, bool excluded) const;
  static bool only_treatment(const OpenPiece& piece);
  bool may_be_laid(const OpenPiece& piece, std::size_t place) const;

  // bind_card.cc
  void card(Level& level);
  bool close_piece(Level& level);
  bool only_a_square(const Level& level) const;
  std::vector<Constraint> side_behind();
  static void remove(OpenPiece& piece, FieldName of);
  static std::vector<Constraint> closed_sizes(std::vector<Constraint> sizes, bool square);
  void add_closed(Level& level, std::vector<Constraint> closed);
  void way_round(Level& level, std::size_t place);

  // bind_numbers.cc
  void number(Level& level, std::size_t place);
  std::size_t head_after(std::size_t place) const;
  bool is_plural(std::size_t head) const;
  void count(Level& level, std::size_t place);

  std::string_view typed(Span span) const { return text_.substr(span.begin, span.end - span.begin); }
  void ignore(const Item& item, std::string why) {
    itemised_.ignored.push_back({std::string(typed(item.span)), std::move(why), item.span});
  }

  std::string_view text_;
  Itemised& itemised_;
  std::vector<Item>& items_;
  std::size_t at_ = 0;
  std::size_t properties_end_ = none_yet;  // the closing bracket behind the properties of the open piece
  std::optional<Problem> too_deep_;
};

// Bare properties: alone they may be any piece's or the sample's.
bool is_property(FieldName of);

}  // namespace insetbook
