// SPDX-License-Identifier: GPL-3.0-or-later
#include "question_meaning.h"

#include <algorithm>
#include <cstdlib>

#include "colour/words.h"
#include "language/vocabulary.h"

namespace insetbook {
namespace {

bool is_or_narrower(VocabularyName in, const std::string& term, const std::string& asked) {
  if (term.empty()) return false;
  const Vocabulary vocabulary;
  for (std::string at = term; !at.empty();) {
    if (at == asked) return true;
    const auto found = vocabulary.term(in, at);
    at = found ? found->broader : "";
  }
  return false;
}

constexpr std::int64_t exact_within = 793'750;    // 1/32 in
constexpr std::int64_t about_within = 3'175'000;  // 1/8 in

bool one_side(const SizeAsked& size, std::int64_t asked, std::int64_t side) {
  switch (size.relation) {
    case Relation::exact:
      return std::llabs(side - asked) <= exact_within;
    case Relation::about:
      return std::llabs(side - asked) <= about_within;
    case Relation::under:
      return side < asked;
    case Relation::over:
      return side > asked;
    case Relation::at_least:
      return side >= asked;
    case Relation::at_most:
      return side <= asked;
    case Relation::between:
      return side >= size.low && side <= size.high;
  }
  return false;
}

bool size_meets(const SizeAsked& size, const PieceRecord& piece) {
  if (!piece.width) return false;
  const std::int64_t w = *piece.width, h = *piece.height;
  if (size.second) {
    return (one_side(size, size.low, w) && one_side(size, *size.second, h)) ||
           (one_side(size, size.low, h) && one_side(size, *size.second, w));
  }
  const bool either = size.relation == Relation::exact || size.relation == Relation::about;
  return either ? one_side(size, size.low, w) || one_side(size, size.low, h)
                : one_side(size, size.low, w) && one_side(size, size.low, h);
}

bool colour_meets(const std::string& colour, bool by_value, const std::string& recorded) {
  if (recorded.empty()) return false;
  if (!by_value) return recorded == colour;
  return std::any_of(book_colours.begin(), book_colours.end(), [&](const ColourRecord& each) {
    return each.name == recorded && has_basic_colour(each.srgb, *basic_colour_named(colour));
  });
}

// As it was recorded, or as a word of its name.
bool has_role(const PieceRecord& piece, const std::string& asked) {
  return is_or_narrower(VocabularyName::role, piece.role, asked) ||
         (" " + piece.name + " ").find(" " + asked + " ") != std::string::npos;
}

bool treated(const std::vector<std::string>& techniques, const std::string& asked) {
  return std::any_of(techniques.begin(), techniques.end(), [&](const auto& each) {
    return is_or_narrower(VocabularyName::technique, each, asked);
  });
}

// "a goes b", by what was recorded of either.
bool go_together(const SampleRecord& sample, std::size_t a, GoesHow how, std::size_t b) {
  const auto recorded = [&](std::size_t one, std::size_t other) -> std::optional<GoesHow> {
    const PieceRecord& piece = sample.pieces[one];
    return piece.goes && piece.other == other ? piece.goes : std::nullopt;
  };
  const auto ab = recorded(a, b), ba = recorded(b, a);
  switch (how) {
    case GoesHow::on:
      return ab == GoesHow::on || ab == GoesHow::in || ba == GoesHow::behind;
    case GoesHow::in:
      return ab == GoesHow::in;
    case GoesHow::behind:
      return ab == GoesHow::behind || ba == GoesHow::on || ba == GoesHow::in;
    case GoesHow::around:
      return ab == GoesHow::around || ba == GoesHow::in;
    case GoesHow::through:
      return ab == GoesHow::through;
  }
  return false;
}

bool piece_meets(const SampleRecord& sample, std::size_t at, const PieceAsked& asked) {
  const PieceRecord& piece = sample.pieces[at];
  if (!asked.shape.empty() && !is_or_narrower(VocabularyName::shape, piece.shape, asked.shape)) return false;
  const bool inside = asked.on_the_inside && piece.side == "inside" && has_role(piece, "panel");
  if (!asked.role.empty() && !inside && !has_role(piece, asked.role)) return false;
  if (!asked.technique.empty() && !treated(piece.techniques, asked.technique)) return false;
  if (!asked.not_technique.empty() && treated(piece.techniques, asked.not_technique)) return false;
  if (!asked.colour.empty() && !colour_meets(asked.colour, asked.by_value, piece.paper)) return false;
  if (!asked.ink.empty() && piece.ink != asked.ink) return false;
  if (!asked.side.empty() && asked.side != (piece.side.empty() ? "front" : piece.side)) return false;
  if (!asked.place.empty() && piece.place != asked.place) return false;
  if (asked.size && !size_meets(*asked.size, piece)) return false;
  if (asked.die && piece.die != asked.die) return false;
  if (!asked.goes) return true;
  for (std::size_t b = 0; b < sample.pieces.size(); ++b) {
    if (b != at && go_together(sample, at, *asked.goes, b) && piece_meets(sample, b, asked.other.front()))
      return true;
  }
  return false;
}

// Gives each piece that is asked so many of the recorded ones, trying every way.
bool all_there(const SampleRecord& sample, const std::vector<const PieceAsked*>& wanted, std::size_t next,
               std::vector<int>& left) {
  if (next == wanted.size()) return true;
  for (std::size_t i = 0; i < sample.pieces.size(); ++i) {
    if (left[i] == 0 || !piece_meets(sample, i, *wanted[next])) continue;
    --left[i];
    if (all_there(sample, wanted, next + 1, left)) return true;
    ++left[i];
  }
  return false;
}

bool pieces_meet(const SampleRecord& sample, const std::vector<PieceAsked>& asked) {
  std::vector<const PieceAsked*> wanted;
  for (const PieceAsked& piece : asked)
    wanted.insert(wanted.end(), static_cast<std::size_t>(piece.count), &piece);
  std::vector<int> left;
  for (const PieceRecord& piece : sample.pieces) left.push_back(piece.count);
  return all_there(sample, wanted, 0, left);
}

bool same_envelope(const std::string& a, const std::string& b) {
  return std::any_of(book_envelopes.begin(), book_envelopes.end() - 1, [&](const auto& ways) {
    return std::count(ways.begin(), ways.end(), a) > 0 && std::count(ways.begin(), ways.end(), b) > 0;
  });
}

}  // namespace

bool meets(const SampleRecord& sample, const Asked& asked) {
  if (!asked.fold.empty() && !is_or_narrower(VocabularyName::fold, sample.fold, asked.fold)) return false;
  if (!asked.not_fold.empty() && is_or_narrower(VocabularyName::fold, sample.fold, asked.not_fold))
    return false;
  if (!asked.occasion.empty() && !is_or_narrower(VocabularyName::occasion, sample.occasion, asked.occasion))
    return false;
  if (!asked.word.empty() && sample.word != asked.word) return false;
  if (!asked.envelope.empty() && !same_envelope(asked.envelope, sample.envelope)) return false;
  const std::string year = sample.made.substr(0, 4);
  if (!asked.made_from.empty() && year < asked.made_from) return false;
  if (!asked.made_to.empty() && year > asked.made_to) return false;
  const auto some_piece = [&](const auto& holds) {
    return std::any_of(sample.pieces.begin(), sample.pieces.end(), holds);
  };
  if (!asked.technique.empty() && !treated(sample.techniques, asked.technique) &&
      !some_piece([&](const PieceRecord& piece) { return treated(piece.techniques, asked.technique); }))
    return false;
  if (!asked.supply.empty() &&
      !some_piece([&](const PieceRecord& piece) { return piece.supply == asked.supply; }))
    return false;
  int in_all = 0;
  for (const PieceRecord& piece : sample.pieces) in_all += piece.count;
  if (in_all < asked.pieces_in_all) return false;
  for (const PieceAsked& piece : asked.no_pieces)
    if (pieces_meet(sample, {piece})) return false;
  return pieces_meet(sample, asked.pieces);
}

std::vector<std::string> plain_scan(const std::vector<SampleRecord>& samples, const Asked& asked) {
  std::vector<std::string> titles;
  for (const SampleRecord& sample : samples)
    if (meets(sample, asked)) titles.push_back(sample.title);
  std::sort(titles.begin(), titles.end());
  return titles;
}

namespace {

void tell(std::string& out, const std::string& name, const std::string& value) {
  if (!value.empty()) out += (out.empty() || out.back() == '(' ? "" : ", ") + name + "=" + value;
}

std::string told(const PieceAsked& piece) {
  std::string out = "(";
  if (piece.count > 1) tell(out, "count", std::to_string(piece.count));
  if (piece.size) {
    tell(out, "size",
         std::to_string(static_cast<int>(piece.size->relation)) + ":" + fraction(piece.size->low) +
             (piece.size->second ? " x " + fraction(*piece.size->second) : "") +
             (piece.size->relation == Relation::between ? " to " + fraction(piece.size->high) : ""));
  }
  tell(out, "shape", piece.shape);
  tell(out, "role", piece.role);
  tell(out, "technique", piece.technique);
  tell(out, "no technique", piece.not_technique);
  tell(out, piece.by_value ? "paper by value" : "paper", piece.colour);
  tell(out, "ink", piece.ink);
  tell(out, "side", piece.side);
  tell(out, "place", piece.place);
  if (piece.die) tell(out, "die", std::to_string(piece.die));
  if (piece.goes) tell(out, std::string(goes_word(*piece.goes)), told(piece.other.front()));
  return out + ")";
}

}  // namespace

std::string told(const Asked& asked) {
  std::string out;
  for (const PieceAsked& piece : asked.pieces) tell(out, "piece", told(piece));
  for (const PieceAsked& piece : asked.no_pieces) tell(out, "no piece", told(piece));
  tell(out, "fold", asked.fold);
  tell(out, "no fold", asked.not_fold);
  tell(out, "occasion", asked.occasion);
  tell(out, "technique", asked.technique);
  tell(out, "word", asked.word);
  tell(out, "supply", asked.supply);
  if (asked.pieces_in_all) tell(out, "pieces in all", std::to_string(asked.pieces_in_all));
  tell(out, "envelope", asked.envelope);
  tell(out, "from", asked.made_from);
  tell(out, "to", asked.made_to);
  return out;
}

}  // namespace insetbook
