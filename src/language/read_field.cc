// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "language/empty_fields.h"
#include "language/near_label.h"
#include "language/recognise.h"
#include "language/single_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_value = 10;
constexpr std::size_t longest_glued = 64;

std::optional<VocabularyName> vocabulary_of(FieldName id) {
  switch (id) {
    case FieldName::shape:
      return VocabularyName::shape;
    case FieldName::role:
      return VocabularyName::role;
    case FieldName::technique:
      return VocabularyName::technique;
    case FieldName::material:
      return VocabularyName::material;
    case FieldName::fold:
      return VocabularyName::fold;
    case FieldName::feature:
      return VocabularyName::feature;
    case FieldName::occasion:
      return VocabularyName::occasion;
    case FieldName::glue:
      return VocabularyName::adhesive;
    default:
      return std::nullopt;
  }
}

// What a value of the field is the name of.
std::string_view what_is_named(const Field& field) {
  switch (field.id) {
    case FieldName::paper:
    case FieldName::ink:
    case FieldName::like:
      return "colour";
    case FieldName::die:
    case FieldName::in:
      return "die or die set";
    case FieldName::based:
    case FieldName::title:
    case FieldName::alike:
      return "sample";
    default:
      return field.name;
  }
}

Problem unknown_field(std::string_view text, Span span, const std::string& name) {
  Problem problem = problem_at(text, span, "\"" + name + "\" is no field", "");
  problem.kind = ProblemKind::unknown_name;
  problem.candidates = fields_like(name);
  std::string names;
  for (const Field& each : fields) names += (names.empty() ? "" : ", ") + std::string(each.name);
  problem.expected = "one of: " + names;
  return problem;
}

Problem no_value(std::string_view text, Span span, const Field& field) {
  return problem_at(text, span, "the field \"" + std::string(field.name) + "\" has no value",
                    "a value at once behind the colon, as in " + std::string(field.example));
}

}  // namespace

// The pieces that stand at `at` without a space between them.
std::size_t Recogniser::glued_run(std::size_t at) const {
  std::size_t last = at + 1;
  const auto ends = [&](const Piece& piece) {
    return piece.kind == Piece::Kind::mark &&
           (piece.folded == ")" || piece.folded == "," || piece.folded == ";");
  };
  const std::size_t limit = std::min(at + longest_glued, pieces_.size());
  while (last < limit && pieces_[last].glued && !ends(pieces_[last])) ++last;
  steps_ += last - at;
  return last;
}

Seen Recogniser::unread(std::size_t at) const {
  return seen(As::unread, at, unread_last_, priority_of::field);
}

// Saying what is wrong takes time in proportion to the question, so it is done for those that are told only.
Result<void> Recogniser::not_read(std::size_t last, const auto& why) {
  unread_last_ = last;
  return failure(telling_ ? why() : Problem());
}

Problem Recogniser::problem_of(const Seen& unread) {
  if (unread.word == no_such_day)
    return problem_at(text_, unread.span,
                      "\"" + std::string(typed(unread.first, unread.last)) + "\" is no day of the calendar",
                      "a day that there is, as in 2023-02-28");
  if (unread.word == no_such_order)
    return problem_at(text_, unread.span,
                      "\"" + std::string(typed(unread.first, unread.last)) +
                          "\" asks for an order by size, which samples are not put into",
                      "a size, as in \"cards under 4 in\", or newest or oldest");
  if (unread.word == no_such_order_of_pieces) return no_order_of_pieces(unread);
  telling_ = true;
  std::vector<Seen> out;
  const Result<void> read = fields(unread.first, out);
  telling_ = false;
  return read ? Problem() : read.error();
}

std::size_t Recogniser::past_bad_size(std::size_t at, const Problem& problem) const {
  const std::size_t end = problem.where.at.value_or(0) + std::max<std::size_t>(problem.where.length, 1);
  std::size_t last = at + 1;
  while (last < pieces_.size() && characters_before(text_, pieces_[last].span.begin) < end) ++last;
  static constexpr std::string_view units[] = {"in", "inch", "inches", "mm", "cm", "\"", "'"};
  if (last < pieces_.size() && std::ranges::find(units, pieces_[last].folded) != std::end(units)) ++last;
  return last;
}

Result<void> Recogniser::fields(std::size_t at, std::vector<Seen>& out) {
  // "based on:" is the one field of two words.
  const bool based_on = is_word(at, "based") && is_word(at + 1, "on");
  const std::size_t colon = at + (based_on ? 2 : 1);
  if (!is_mark(colon, ":") || !pieces_[colon].glued || pieces_[at].hyphen) return {};
  if (at > 0 && is_word(at, "on") && is_word(at - 1, "based")) return {};
  const std::string name =
      based_on || pieces_[at].folded == "based on" ? std::string("based") : pieces_[at].folded;
  if (name.front() >= '0' && name.front() <= '9') return {};
  const std::size_t value = colon + 1;
  const Field* named = field_named(name);
  if (!named) {
    if (value < pieces_.size() && pieces_[value].glued)
      return not_read(is_mark(value, "(") ? value : glued_run(value),
                      [&] { return unknown_field(text_, pieces_[at].span, name); });
    return {};
  }
  const bool missing =
      value >= pieces_.size() ||
      (pieces_[value].kind == Piece::Kind::mark && !is_mark(value, "(") && !is_mark(value, "<") &&
       !is_mark(value, ">") && !is_mark(value, "<=") && !is_mark(value, ">=") && !is_mark(value, "~") &&
       !is_mark(value, "=") && !is_mark(value, "."));
  const auto valueless = [&] { return no_value(text_, span_of(at, value), *named); };
  if (missing) return not_read(value, valueless);
  if (is_mark(value, "(")) {
    const bool groups = named->kind == FieldKind::group || named->id == FieldName::in;
    Seen group = seen(groups ? As::group : As::filler, at, value, priority_of::field);
    group.word = named->name;
    group.field = true;
    out.push_back(std::move(group));
    return {};
  }
  if (named->kind == FieldKind::group) return not_read(value, valueless);
  // "inside: white greeting" says on which side, where no die follows.
  if (name == "inside" && !pieces_[value].glued && pieces_[value].kind == Piece::Kind::word &&
      !die_at(skip(value, {"the", "a"}), true, true))
    return {};
  const std::size_t before = out.size();
  if (const Result<void> read = field_value(*named, value, out); !read) {
    unread_last_ = pieces_[value].kind == Piece::Kind::phrase ? value + 1 : glued_run(value);
    return read;
  }
  for (std::size_t i = before; i < out.size(); ++i) {
    out[i].first = at;
    out[i].span = {pieces_[at].span.begin, out[i].span.end};
    out[i].weight = 2 * static_cast<int>(out[i].last - at);
    out[i].priority = priority_of::field;
    out[i].field = true;
  }
  return {};
}

Result<void> Recogniser::field_value(const Field& field, std::size_t at, std::vector<Seen>& out) {
  const Piece& piece = pieces_[at];
  if (piece.kind == Piece::Kind::phrase) {
    if (trim(text_.substr(piece.inner.begin, piece.inner.end - piece.inner.begin)).empty())
      return failure(telling_ ? no_value(text_, piece.span, field) : Problem());
    const Result<std::vector<Piece>> inside = split(text_, piece.inner);
    if (!inside) return failure(inside.error());
    Recogniser within(text_, *inside, context_);
    within.telling_ = telling_;
    Result<Seen> read = within.value_in(field, 0, inside->size());
    steps_ += within.steps_;
    if (!read) return failure(read.error());
    read->last = at + 1;
    read->span = piece.span;
    out.push_back(std::move(*read));
    return {};
  }
  const std::size_t glued = glued_run(at);
  const std::size_t before = out.size();
  readings(field, at, glued, out);
  if (out.size() > before) return {};
  Result<Seen> read = value_in(field, at, glued);
  if (!read) return failure(read.error());
  out.push_back(std::move(*read));
  return {};
}

// Every value that can be read from `first`, if it takes at least the pieces up to `glued_last`.
void Recogniser::readings(const Field& field, std::size_t first, std::size_t glued_last,
                          std::vector<Seen>& out) {
  std::vector<Seen> offered;
  if (field.id == FieldName::size || field.id == FieldName::closed) sizes(first, offered);
  if (field.id == FieldName::made) dates(first, offered);
  std::vector<std::size_t> ends;
  for (const Seen& each : offered)
    if (each.last >= glued_last && each.says) ends.push_back(each.last);
  if (field.kind == FieldKind::term || field.kind == FieldKind::name) {
    const std::size_t most = std::max(first + run_of_words(first, longest_value), glued_last);
    for (std::size_t last = glued_last; last <= most; ++last) ends.push_back(last);
  }
  for (const std::size_t last : ends)
    if (auto read = reading(field, first, last)) out.push_back(std::move(*read));
}

Result<Seen> Recogniser::value_in(const Field& field, std::size_t first, std::size_t last) {
  if (auto read = reading(field, first, last)) return std::move(*read);
  const bool may_be_unknown =
      vocabulary_of(field.id) || field.kind == FieldKind::name || field.kind == FieldKind::text;
  if (!telling_ && !may_be_unknown) return failure(Problem());
  if (field.id == FieldName::size || field.id == FieldName::closed)
    for (std::size_t i = first; i < last; ++i)
      if (auto problem = bad_size(i)) return failure(std::move(*problem));
  const std::string value(typed(first, last));
  const Span span = span_of(first, last);
  switch (field.id) {
    case FieldName::size:
      return failure(problem_at(text_, span, "\"" + value + "\" is no size",
                                "a size such as 2-3/8in, \"under 3 in\", \"2 x 3 in\""));
    case FieldName::closed:
      return failure(
          problem_at(text_, span, "\"" + value + "\" is no size of a closed card",
                     "a size such as \"5 x 7 in\", a name such as A6, square, landscape or portrait"));
    case FieldName::made:
      return failure(
          problem_at(text_, span, "\"" + value + "\" is no date",
                     "a year, a month or a day such as 2023, 2023-05, 2023-05-12, or two with .. between"));
    case FieldName::count:
      return failure(
          problem_at(text_, span, "\"" + value + "\" is no count", "a whole number from 1 to 999"));
    case FieldName::side:
      return failure(
          problem_at(text_, span, "\"" + value + "\" is no side of a card", "front, inside or back"));
    case FieldName::no:
      return failure(problem_at(text_, span, "\"" + value + "\" is nothing that can be missing",
                                names_of_empty_fields()));
    default:
      return unknown_value(field, first, last);
  }
}

// A value that names nothing known: kept, so that the answer is empty and says why.
Seen Recogniser::unknown_value(const Field& field, std::size_t first, std::size_t last) const {
  Seen it = seen(As::says, first, last, priority_of::field);
  const std::string value(typed(first, last));
  if (const auto vocabulary = vocabulary_of(field.id)) {
    it.says = says_of_term(*vocabulary, {fold(value)}, value);
    const std::optional<std::string> meant = near_label(context_.vocabulary, *vocabulary, value);
    it.notes.push_back("\"" + value + "\" is no " + std::string(field.name) + " of the vocabulary" +
                       (meant ? "; did you mean \"" + *meant + "\"?" : ""));
    return it;
  }
  switch (field.id) {
    case FieldName::paper:
      it.says = ColourIs{ColourUse::paper, {}, value};
      break;
    case FieldName::ink:
      it.says = ColourIs{ColourUse::ink, {}, value};
      break;
    case FieldName::like:
    case FieldName::colour:
      it.says = ColourIs{ColourUse::either, {}, value};
      break;
    case FieldName::supply:
      it.says = SupplyIs{{}, value};
      break;
    case FieldName::die:
    case FieldName::in:
      it.says = DieIs{{}, "", field.id == FieldName::in, value};
      break;
    case FieldName::based:
      it.says = BasedOn{0, value};
      break;
    case FieldName::title:
      it.says = TitleIs{0, value};
      break;
    case FieldName::alike:
      it.says = AlikeTo{0, value};
      break;
    default:
      it.says = WordsAre{single_words(fold(value)), false, field.id == FieldName::words};
      break;
  }
  it.notes.push_back("the book has no " + std::string(what_is_named(field)) + " \"" + value + "\"");
  return it;
}

// The pieces [first, last) as a value of the field, all of them.
std::optional<Seen> Recogniser::reading(const Field& field, std::size_t first, std::size_t last) {
  if (first >= last || last > pieces_.size()) return std::nullopt;
  Seen it = seen(As::says, first, last, priority_of::field);
  if (const auto vocabulary = vocabulary_of(field.id)) {
    // Marks are part of some labels: "clean & simple", "St. Patrick's Day".
    const std::string label = fold(typed(first, last));
    const auto found = context_.vocabulary.find(label, *vocabulary);
    if (found.empty()) return std::nullopt;
    resolve_term(it, found.front());
    offer_other(it, found, found.front());
    return it;
  }
  switch (field.id) {
    case FieldName::closed:
      return closed_value(first, last);
    case FieldName::envelope:
      return envelope_value(first, last);
    case FieldName::colour:
    case FieldName::paper:
    case FieldName::ink:
    case FieldName::like:
      return colour_value(field, first, last);
    case FieldName::supply:
    case FieldName::based:
    case FieldName::title:
    case FieldName::alike:
      return record_value(field, first, last);
    case FieldName::die:
    case FieldName::in:
      return die_value(field, first, last);
    case FieldName::made:
      return date_value(first, last);
    default:
      break;
  }
  it.says = plain_value(field, first, last);
  if (!it.says) return std::nullopt;
  return it;
}

}  // namespace insetbook
