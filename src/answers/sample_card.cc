// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/sample_card.h"

#include <algorithm>
#include <array>

#include "answers/sizes_shown.h"
#include "book/openings.h"
#include "card/paper_weight.h"
#include "fit/fit.h"
#include "language/read_record.h"
#include "measure/read.h"
#include "measure/write.h"
#include "shape/shape_outline.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Common practice, no source: card stock of 80 lb cover, and foam of 2 mm.
constexpr std::int64_t typical_card_mg_m2 = 216'000;
constexpr Length typical_foam = Length::mm(2);

bool is_or_under(const Vocabulary& vocabulary, VocabularyName in, std::string_view wider,
                 const std::string& term) {
  const auto terms = vocabulary.with_narrower(in, wider);
  return std::find(terms.begin(), terms.end(), term) != terms.end();
}

// The term that a word of the trade means, or nothing.
std::string term_of(const Vocabulary& vocabulary, VocabularyName in, std::string_view word) {
  const auto found = vocabulary.find(word, in);
  return found.empty() ? std::string() : found.front().id;
}

CardSide side_of(const std::string& side) {
  return read_card_side(side).value_or(CardSide::front);
}

LiesHow lies_how(const std::string& how) {
  if (how == "in") return LiesHow::in;
  if (how == "behind") return LiesHow::behind;
  if (how == "around") return LiesHow::around;
  return how == "through" ? LiesHow::through : LiesHow::on;
}

class Reader {
 public:
  Reader(const Book& book, const Vocabulary& vocabulary, const Settings& settings)
      : book_(book),
        words_(vocabulary),
        settings_(settings),
        layers_(roles_under({"mat", "panel", "layer"})),
        no_paper_(roles_under({"embellishment", "ribbon", "bow", "string", "twine wrap", "flower"})),
        embellishments_(roles_under({"embellishment"})) {}

  SampleCard read(std::int64_t id) {
    card_.id = id;
    card_.row = sample(book_, id).value_or(SampleRow{});
    for (auto& [element_id, row] : elements_of(book_, id)) {
      card_.element_ids.push_back(element_id);
      card_.elements.push_back(std::move(row));
    }
    card_.unit = settings_.unit;
    read_folds();
    read_base();
    for (std::size_t i = 0; i < card_.elements.size(); ++i) {
      card_.papers.push_back(paper_of(card_.elements[i]));
      card_.pieces.push_back(piece(i));
      if (card_.pieces.back().is_base) card_.base_paper = card_.papers.back();
    }
    if (card_.base_paper.mg_m2 == 0) card_.base_paper = paper_of({});
    return std::move(card_);
  }

 private:
  std::vector<std::string> roles_under(std::initializer_list<std::string_view> wider) const {
    std::vector<std::string> roles;
    for (const std::string_view one : wider)
      for (std::string& role : words_.with_narrower(VocabularyName::role, one))
        roles.push_back(std::move(role));
    return roles;
  }
  static bool among(const std::vector<std::string>& roles, const std::string& role) {
    return std::find(roles.begin(), roles.end(), role) != roles.end();
  }

  void read_folds() {
    std::vector<std::string> terms;
    for (const Mention& mention : card_.row.mentions) {
      if (mention.kind == "feature" && mention.term) card_.moving.push_back(mention.written);
      if (mention.kind != "fold") continue;
      const std::string term = mention.term.value_or(fold(mention.written));
      terms.push_back(term);
      const auto known = words_.term(VocabularyName::fold, term);
      card_.folds.push_back(known ? known->label : mention.written);
      if (!known) continue;
      if (card_.stands == Stands::not_said) card_.stands = known->stands;
      if (is_or_under(words_, VocabularyName::fold, "easel", term)) card_.easel = true;
    }
    card_.written.folds = terms;
    card_.written.entry = fold_entry(words_, terms);
  }

  void read_base() {
    SizeOnRecord size = card_.row.base;
    for (const ElementRow& element : card_.elements)
      if (!size.width && element.role == "base") size = element.size;
    // A tag or a bookmark is its own base.
    const auto lies = fold_lies(card_.written.folds);
    if (!size.width && !card_.row.closed_width && !card_.written.folds.empty() &&
        lies == FoldLies::unfolded) {
      const auto sheet =
          std::find_if(card_.elements.begin(), card_.elements.end(), [](const ElementRow& element) {
            return element.size.width && element.size.height && element.goes.empty();
          });
      if (sheet != card_.elements.end()) {
        size = sheet->size;
        card_.own_base = static_cast<int>(sheet - card_.elements.begin());
      }
    }
    card_.written.width = size.width;
    card_.written.height = size.height;
    card_.written.unit = size.width ? size.unit : settings_.unit;
    card_.written.scores = card_.row.scores;
    if (!card_.row.finished_text.empty()) {
      card_.written.finished_width = card_.row.closed_width;
      card_.written.finished_height = card_.row.closed_height;
      if (!size.width) card_.written.unit = card_.row.closed_unit;
    }
    if (card_.written.width) card_.unit = card_.written.unit;
    card_.base = lay_base(card_.written);
    card_.folded = card_.base ? fold_flat(*card_.base, card_.unit)
                              : tl::expected<FoldedBase, BaseNotLaid>(tl::unexpected(card_.base.error()));
  }

  // As it was written: which figure came first is which way it lies.
  static void set_size(const SizeOnRecord& size, CardPiece& piece) {
    piece.unit = size.unit;
    if (!size.width || !size.height) return;
    piece.width = size.width;
    piece.height = size.height;
    piece.may_turn = !size.placed;
    const auto written = read_size(size.text, size.unit);
    if (!size.placed && written && written->width == *size.height && written->height == *size.width)
      std::swap(piece.width, piece.height);
  }

  CardPiece piece(std::size_t i) {
    const ElementRow& row = card_.elements[i];
    CardPiece piece;
    piece.name = row.name;
    set_size(row.size, piece);
    if (!row.side.empty()) piece.side = side_of(row.side);
    piece.how = lies_how(row.goes_how);
    piece.is_base = row.role == "base" || card_.own_base == static_cast<int>(i);
    if (row.goes_to) {
      const auto at = std::find(card_.element_ids.begin(), card_.element_ids.end(), *row.goes_to);
      if (at != card_.element_ids.end()) piece.with = static_cast<int>(at - card_.element_ids.begin());
    } else if (!row.goes.empty()) {
      piece.target = read_goes(row.goes).target;
    }
    piece.at = row.at;
    piece.glue = glue_of(row);
    piece.meant = codes_of(row.meant);
    const bool foam = card_.papers[i].raised_by > Length();
    piece.raised = foam || among(embellishments_, row.role);
    piece.needs_size = is_layer(row) || (foam && is_flat(row));
    hold_against_line(row, piece);
    return piece;
  }

  bool is_layer(const ElementRow& row) const { return among(layers_, row.role); }
  // Cut from paper; bows, gems and twine are not.
  bool is_flat(const ElementRow& row) const { return !among(no_paper_, row.role); }

  GlueSaid glue_of(const ElementRow& row) const {
    using Where = GlueSaid::Where;
    const auto read = read_glue(row.glue, settings_.unit);
    if (!read) return {Where::somewhere, {}};
    switch (read->where) {
      case Glue::Where::not_said:
        return {};
      case Glue::Where::whole:
        return {Where::whole, {}};
      case Glue::Where::none:
        return {Where::none, {}};
      case Glue::Where::part:
        break;
    }
    constexpr std::array<std::pair<std::string_view, EdgeSide>, 4> edges{
        {{"left", left_edge}, {"right", right_edge}, {"top", top_edge}, {"bottom", bottom_edge}}};
    for (const auto& [word, side] : edges)
      if (read->edge == word && read->length) return {Where::strips, {{side, *read->length}}};
    return {Where::somewhere, {}};
  }

  // Foam under it: an adhesive of that kind in its glue or among its supplies.
  Length foam_under(const ElementRow& row, bool& typical) const {
    std::vector<std::string> adhesives;
    const auto read = read_glue(row.glue, settings_.unit);
    if (read && !read->with.empty()) adhesives.push_back(read->with);
    for (const Mention& mention : row.mentions)
      if (mention.kind == "supply") adhesives.push_back(mention.written);
    for (const std::string& with : adhesives) {
      const std::string term = term_of(words_, VocabularyName::adhesive, with);
      if (term.empty() || !is_or_under(words_, VocabularyName::adhesive, "foam", term)) continue;
      typical = true;
      return typical_foam;
    }
    return {};
  }

  PaperOfPiece paper_of(const ElementRow& row) const {
    PaperOfPiece paper;
    for (const Mention& mention : row.mentions) {
      if (mention.kind != "paper" || !mention.colour_id || paper.mg_m2 > 0) continue;
      Statement& stock = book_.statement(
          "SELECT weight_mg_m2, thickness_nm FROM supply WHERE colour_id = ?1 AND weight_mg_m2 IS NOT NULL "
          "ORDER BY kind = 'card stock' DESC, id LIMIT 1");
      stock.bind(1, *mention.colour_id);
      if (stock.step()) {
        paper.mg_m2 = stock.integer(0);
        if (const auto thick = stock.maybe_integer(1)) paper.thickness = Length::nm(*thick);
      }
      stock.reset();
    }
    if (paper.mg_m2 == 0) {
      paper.mg_m2 = typical_card_mg_m2;
      paper.weight_is_typical = true;
    }
    if (paper.thickness == Length()) {
      const auto caliper = typical_caliper(paper.mg_m2);
      paper.thickness = caliper ? caliper->thickness : Length::nm(300'000);
      paper.thickness_is_typical = true;
    }
    paper.raised_by = foam_under(row, paper.raise_is_typical);
    return paper;
  }

  // Whether it is larger than the line that it lies in. What was tried by hand is not held against it.
  void hold_against_line(const ElementRow& row, CardPiece& piece) const {
    if (!row.in_line_id || !piece.width || row.goes_how != "in") return;
    const auto line = opening(book_, *row.in_line_id);
    if (!line || !line->measured || line->line_kind == "window") return;
    const Result<Shape> shape = shape_of(*line);
    Size size;
    size.width = *piece.width;
    size.height = *piece.height;
    size.unit = piece.unit;
    size.orientation = Orientation::said;
    size.one_figure = size.width == size.height;
    if (!shape || !has_outline(*shape)) return;
    bool too_large = true;
    for (int turns = 0; turns < 2 && too_large; ++turns) {
      const Result<Shape> panel =
          make_shape(row.shape.empty() ? "rectangle" : row.shape, size, "", piece.unit);
      if (!panel || !has_outline(*panel)) return;
      const Result<Verdict> verdict = verdict_of({*shape, line->give_or_take}, *panel, Length());
      if (!verdict) return;
      too_large = *verdict == Verdict::too_big;
      std::swap(size.width, size.height);
    }
    if (!too_large) return;
    for (const TriedCount& tried : tried_counts_in(book_, *row.in_line_id))
      if (tried.by_hand > 0 && tried.result == "fits" && tried.width == *piece.width &&
          tried.height == *piece.height)
        return;
    const std::string own = shaped_size_text(row.shape, *piece.width, *piece.height, piece.unit);
    piece.too_large = own + " does not fit into " + describe(*line) + ", which is " +
                      shaped_size_text(line->shape_word, line->width, line->height, line->unit);
    piece.too_large_mend = "ask what fits there: insetbook fits " + line->set + " " + line->die;
  }

  const Book& book_;
  const Vocabulary& words_;
  const Settings& settings_;
  std::vector<std::string> layers_, no_paper_, embellishments_;
  SampleCard card_{};
};

}  // namespace

std::vector<std::string> codes_of(const std::string& meant) {
  std::vector<std::string> codes;
  std::string_view rest = meant;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    codes.emplace_back(trim(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return codes;
}

FoldEntry fold_entry(const Vocabulary& vocabulary, const std::vector<std::string>& terms) {
  FoldEntry entry;
  if (terms.size() != 1) return entry;
  entry.term = terms.front();
  const auto term = vocabulary.term(VocabularyName::fold, entry.term);
  entry.to_and_fro = is_or_under(vocabulary, VocabularyName::fold, "accordion", entry.term);
  if (!term || !term->creases) return entry;
  for (const Crease& crease : *term->creases)
    entry.creases.push_back({crease.upright, crease.mountain, crease.part, crease.of});
  return entry;
}

SampleCard sample_card(const Book& book, const Vocabulary& vocabulary, const Settings& settings,
                       std::int64_t sample_id) {
  return Reader(book, vocabulary, settings).read(sample_id);
}

}  // namespace insetbook
