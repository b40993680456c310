// SPDX-License-Identifier: GPL-3.0-or-later
//
// The second stage of reading a question: at each piece, all that could begin there. The recognisers are:
// marks and the small words of the language (small_words.h), sizes with relations, counts, dates, dies with
// their order, names of colours and supplies, vocabulary terms, what a piece is stuck with, what can no
// longer be had, where a piece sits, sizes of the closed card, and fields. How far each one looks is bounded,
// so that the whole takes time in proportion to the length of the question.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "language/dates.h"
#include "language/orders.h"
#include "language/pieces.h"
#include "language/read_question.h"
#include "language/seen.h"

namespace insetbook {

class Recogniser {
 public:
  Recogniser(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context);

  // All offers that begin at piece `at`. A field that cannot be read is the only one there, `As::unread`.
  std::vector<Seen> offers(std::size_t at);
  // What is wrong with it.
  Problem problem_of(const Seen& unread);
  // A size that cannot be ("2-9/8"), if one begins at `at`; it counts only where nothing else covers it.
  std::optional<Problem> bad_size(std::size_t at) const;
  // The piece behind it and behind its unit.
  std::size_t past_bad_size(std::size_t at, const Problem& problem) const;

  // How much was looked at so far: words compared with tables, look-ups and measurements. Below a constant
  // times the number of pieces, whatever the question is.
  std::size_t steps() const { return steps_; }

  // Looks up what a chosen offer stands for in the book and in the vocabularies, and finishes its `says`.
  void resolve(Seen& seen);

 private:
  // recognise.cc
  std::string words(std::size_t first, std::size_t count) const;
  std::size_t run_of_words(std::size_t at, std::size_t most) const;
  bool is_word(std::size_t at, std::string_view word) const;
  bool is_mark(std::size_t at, std::string_view mark) const;
  std::vector<std::string> word_list(std::size_t at, std::size_t most) const;
  Seen seen(As as, std::size_t first, std::size_t last, int priority) const;
  Span span_of(std::size_t first, std::size_t last) const;
  std::string_view typed(std::size_t first, std::size_t last) const;
  bool is_order(std::size_t at) const;
  std::size_t skip(std::size_t at, std::initializer_list<std::string_view> list) const;
  void small_words(std::size_t at, std::vector<Seen>& out) const;
  const std::string& key_of(std::size_t at);
  std::string_view key_part(std::size_t at);
  bool is_apostrophe(std::size_t at) const;
  void days_with_a_name(std::vector<Seen>& out) const;
  void terms(std::size_t at, std::vector<Seen>& out);
  bool article_before_label(std::size_t at, std::size_t last, const TermMatch& match) const;
  bool own_colour_of_card(std::size_t at, std::size_t count, const std::vector<TermMatch>& terms);
  void names(std::size_t at, std::vector<Seen>& out);
  bool counted_supplies(std::size_t at, const std::string& said, std::vector<NamedRecord>& found);
  std::vector<TermMatch> hidden_by_name(std::string_view said) const;
  void with_kind(std::size_t at, std::size_t count, const std::string& said, std::vector<Seen>& out);
  void basic_colours(std::size_t at, std::vector<Seen>& out);
  void own_ink(std::size_t at, std::size_t last, const std::string& colour, std::vector<Seen>& out);
  void closed_sizes(std::size_t at, std::vector<Seen>& out) const;
  void envelopes(std::size_t at, std::vector<Seen>& out) const;
  std::size_t envelope_name(std::size_t at) const;
  // recognise_each.cc
  void each_of_them(std::size_t at, std::vector<Seen>& out);
  bool counts_before(std::size_t at) const;
  void only_so_many(std::size_t at, std::vector<Seen>& out) const;
  // recognise_glue.cc
  static bool asked_of_samples(const TermMatch& match, const TermMatch& likeliest);
  void stuck_with(std::size_t at, std::vector<Seen>& out);
  GlueIs glue_of(const std::string& adhesive);
  std::vector<Says> supplies_of(const GlueIs& glue) const;
  // recognise_status.cc
  struct StatusSaid {
    std::size_t last = 0;
    TermMatch match;
    bool only = true;  // no other vocabulary has the label
  };
  std::optional<StatusSaid> status_at(std::size_t at);
  std::optional<StatusNoun> status_noun(std::size_t at, std::size_t count) const;
  std::vector<Says> says_of_status(const TermMatch& status, const StatusNoun& noun);
  void statuses(std::size_t at, std::vector<Seen>& out);
  void resolve_status(Seen& seen);
  std::optional<Says> status_value(const Field& field, std::size_t first, std::size_t last);
  // recognise_dates.cc
  std::vector<DateWord> season_of_neighbour(std::size_t at) const;
  void dates(std::size_t at, std::vector<Seen>& out, bool outright = false) const;
  // recognise.cc
  void recorded_or_not(std::size_t at, std::vector<Seen>& out) const;
  void words_said(std::size_t at, std::vector<Seen>& out) const;
  void quote_said(std::size_t at, std::size_t quote, std::vector<Seen>& out) const;
  bool date_begins(std::size_t at) const;
  void sides(std::size_t at, std::vector<Seen>& out) const;
  // recognise_places.cc
  std::size_t place_end(std::size_t at) const;
  void places(std::size_t at, std::vector<Seen>& out) const;
  // recognise_order.cc
  void order_by_date(std::size_t at, std::vector<Seen>& out) const;
  void order_by_size(std::size_t at, std::vector<Seen>& out);
  std::optional<std::size_t> ordered_piece(std::size_t at);
  Problem no_order_of_pieces(const Seen& unread);
  bool names_samples(std::size_t at) const;
  // recognise_sizes.cc
  struct Measured {
    std::size_t last = 0;  // piece behind it
    SizeIs size;
    bool bare = false;
    bool figures = false;  // written with figures, not spelled out
  };
  std::optional<Measured> measurement(std::size_t at) const;
  void leave_preposition(std::size_t at, Measured& found) const;
  std::optional<Measured> many_of_a_size(std::size_t at) const;
  void sizes(std::size_t at, std::vector<Seen>& out) const;
  std::size_t relation_at(std::size_t at, Relation& relation) const;
  std::size_t measure_before(std::size_t at, SizeIs& way) const;
  void more_than_bare(Measured& found) const;
  bool names_unit(std::size_t first, std::size_t last) const;
  bool is_way_round(std::size_t first, std::size_t last) const;
  std::size_t past_odd_figure(std::size_t at) const;
  std::size_t part_of_an_inch(std::size_t at, SizeIs& size) const;
  std::size_t way_round_behind(std::size_t at, SizeIs& size) const;
  std::size_t tolerance_behind(std::size_t at, SizeIs& size) const;
  std::size_t relation_behind(std::size_t at, SizeIs& size) const;
  void tolerance_alone(std::size_t at, std::vector<Seen>& out) const;
  void one_number_or_another(std::size_t at, std::vector<Seen>& out) const;
  void spelled_count(std::size_t at, const Measured& found, std::vector<Seen>& out) const;
  std::size_t after_size(std::size_t last, SizeIs& size) const;
  // recognise_dies.cc
  struct DieSaid {
    std::size_t last = 0;
    DieIs die;
    std::string note;
    std::string other;                    // what else the words could mean
    std::optional<NamedRecord> numbered;  // the set, where a number behind its name chose the die
  };
  std::size_t line_before(std::size_t at, DieIs& die) const;
  void label_behind(DieSaid& said, const NamedRecord& set);
  bool names_set(std::size_t at);
  void line_behind(DieSaid& said, bool inside) const;
  std::string colour_and_shape(std::size_t first, std::size_t last);
  std::optional<DieSaid> die_by_name(std::size_t at);
  std::optional<DieSaid> dies_of_maker(std::size_t at, bool cut);
  std::optional<DieSaid> begun_numbered(std::size_t at);
  static DieIs die_whatever();
  std::optional<DieSaid> die_at(std::size_t at, bool inside, bool cut);
  struct SetSaid {
    std::size_t last = 0;
    std::vector<NamedRecord> records;
  };
  std::optional<SetSaid> set_at(std::size_t at, NameKind kind);
  std::optional<SetSaid> set_begun(std::size_t at, bool cut);
  DieSaid whole_begun(std::size_t first, const SetSaid& sets);
  void dies(std::size_t at, std::vector<Seen>& out);
  void choose_die(DieSaid& said, const NamedRecord& set, const RankOrder& order);
  void choose_middle(DieSaid& said, const NamedRecord& set);
  void number_chosen(DieSaid& said, const NamedRecord& set, int number);
  void more_dies(const DieSaid& said, Seen& it);
  bool counts_what_follows(std::size_t at) const;
  void whole_set(DieSaid& said, const SetSaid& sets, std::size_t first);
  struct Numbered {
    std::size_t last = 0;
    int number = 0;
  };
  std::optional<Numbered> number_before(std::size_t at) const;
  std::size_t past_set_words(std::size_t at) const;
  bool phrase_ends(std::size_t at) const;
  // read_field.cc
  Result<void> fields(std::size_t at, std::vector<Seen>& out);
  Seen unread(std::size_t at) const;
  Result<void> not_read(std::size_t last, const auto& why);
  std::size_t glued_run(std::size_t at) const;
  Result<void> field_value(const Field& field, std::size_t at, std::vector<Seen>& out);
  Result<Seen> value_in(const Field& field, std::size_t first, std::size_t last);
  std::optional<Seen> reading(const Field& field, std::size_t first, std::size_t last);
  void readings(const Field& field, std::size_t first, std::size_t glued_last, std::vector<Seen>& out);
  Seen unknown_value(const Field& field, std::size_t first, std::size_t last) const;
  // field_values.cc
  std::optional<SizeIs> whole_size(std::size_t first, std::size_t last) const;
  std::optional<Seen> closed_value(std::size_t first, std::size_t last) const;
  Seen envelope_value(std::size_t first, std::size_t last) const;
  std::optional<Seen> record_value(const Field& field, std::size_t first, std::size_t last);
  std::optional<Seen> die_value(const Field& field, std::size_t first, std::size_t last);
  std::optional<Seen> date_value(std::size_t first, std::size_t last) const;
  std::optional<Says> plain_value(const Field& field, std::size_t first, std::size_t last) const;
  std::optional<Seen> colour_value(const Field& field, std::size_t first, std::size_t last);
  std::optional<Seen> like_value(std::size_t first, std::size_t last);
  // recognise_titles.cc
  struct TitleSaid {
    std::size_t last = 0;
    std::vector<NamedRecord> records;  // the likeliest first
  };
  std::optional<TitleSaid> whole_title(std::size_t begins);
  std::optional<TitleSaid> part_of_title(std::size_t begins);
  std::optional<TitleSaid> title_at(std::size_t at);
  void offer_title(std::size_t at, const TitleSaid& title, const auto& says, int priority,
                   std::vector<Seen>& out);
  void based_on(std::size_t at, std::vector<Seen>& out);
  void alike(std::size_t at, std::vector<Seen>& out);
  // resolve.cc
  const std::vector<std::string>& with_narrower(VocabularyName in, const std::string& id);
  void resolve_term(Seen& seen, const TermMatch& match);
  void offer_terms(Seen& seen) const;
  void offer_other(Seen& seen, const std::vector<TermMatch>& terms, const TermMatch& taken) const;
  Says says_of(const TermMatch& match);
  void offer_with_article(Seen& seen, const TermMatch& taken) const;
  std::vector<Says> on_the_inside(const TermMatch& role);
  std::vector<Says> treated_so(const TermMatch& role);
  void resolve_colour(Seen& seen);
  const std::vector<std::int64_t>& colours_of_word(const std::string& word, std::optional<Shade> shade);

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  const ReadingContext& context_;
  std::size_t longest_label_;
  int parts_of_titles_ = 0;      // looked for so far
  bool telling_ = false;         // problems are wanted with all they say
  std::size_t unread_last_ = 0;  // the piece behind the field that could not be read
  std::map<std::pair<VocabularyName, std::string>, std::vector<std::string>> narrower_;
  std::map<std::string, std::vector<std::int64_t>, std::less<>> colours_;
  std::map<std::string, std::vector<NamedRecord>, std::less<>> exactly_;
  const std::vector<NamedRecord>& exactly(const std::string& folded);
  std::vector<std::optional<std::string>> keys_;  // of the pieces, as they are needed
  mutable std::size_t steps_ = 0;
};

// The Says of a vocabulary's term; the terms are it and its narrower ones.
Says says_of_term(VocabularyName in, std::vector<std::string> terms, std::string label);

}  // namespace insetbook
