// SPDX-License-Identifier: GPL-3.0-or-later
#include "question_phrases.h"

#include <algorithm>

#include "language/vocabulary.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

const std::string& one_of(const Pick& pick, const std::vector<std::string>& list) {
  return list[pick(list.size())];
}

std::vector<std::string> labels_of(VocabularyName in, const std::string& id) {
  const Vocabulary vocabulary;
  const Term term = vocabulary.term(in, id).value();
  std::vector<std::string> out{term.label};
  for (const std::string& label : term.labels) {
    const auto found = vocabulary.find(label);
    if (found.size() == 1 && found.front().likelihood >= 40) out.push_back(label);
  }
  return out;
}

// --- figures ---

std::string with_glyphs(const std::string& figure) {
  static const std::vector<std::pair<std::string, std::string>> glyphs{
      {"1/2", "½"}, {"1/4", "¼"}, {"3/4", "¾"}, {"1/8", "⅛"}, {"3/8", "⅜"}, {"5/8", "⅝"}, {"7/8", "⅞"}};
  for (const auto& [plain, glyph] : glyphs) {
    if (figure == plain) return glyph;
    if (figure.ends_with("-" + plain)) return figure.substr(0, figure.size() - plain.size() - 1) + glyph;
  }
  return figure;
}

std::string a_figure(std::int64_t nm, const Pick& pick) {
  std::string out = fraction(nm);
  switch (pick(4)) {
    case 0:
      return with_glyphs(out);
    case 1:
      std::replace(out.begin(), out.end(), '-', ' ');
      return out;
    default:
      return out;
  }
}

std::string a_unit(const Pick& pick) {
  return one_of(pick, {" in", "in", " inch", " inches", "\"", "”"});
}

std::string a_size(const SizeAsked& size, const Pick& pick) {
  if (size.second)
    return (size.relation == Relation::about ? one_of(pick, {"about ", "roughly "}) : std::string()) +
           a_figure(size.low, pick) + one_of(pick, {" x ", " × ", " by ", "x"}) +
           a_figure(*size.second, pick) + a_unit(pick);
  const std::string low = a_figure(size.low, pick), unit = a_unit(pick);
  switch (size.relation) {
    case Relation::exact:
      return low + unit;
    case Relation::about:
      return one_of(pick, {"about ", "roughly "}) + low + unit;
    case Relation::under:
      return one_of(pick, {"under ", "smaller than ", "less than "}) + low + unit;
    case Relation::over:
      return one_of(pick, {"over ", "larger than ", "more than ", "bigger than "}) + low + unit;
    case Relation::at_least:
      return pick(2) ? "at least " + low + unit : low + unit + " or more";
    case Relation::at_most:
      return pick(2) ? "at most " + low + unit : low + unit + " or less";
    case Relation::between: {
      const std::string high = a_figure(size.high, pick);
      return pick(2) ? "between " + low + " and " + high + unit : low + " to " + high + unit;
    }
  }
  return "";
}

// --- pieces ---

// A part of a saying whose words belong together.
using Parts = std::vector<std::string>;

std::string a_die(int die, const Pick& pick) {
  static const std::vector<std::string> orders{"largest", "second largest", "third largest", "smallest"};
  const std::string number = std::to_string(die);
  switch (pick(4)) {
    case 0:
      return orders[static_cast<std::size_t>(die - 1)] + " tidepool oval";
    case 1:
      return "tidepool oval " + number;
    case 2:
      return "Tidepool Ovals no. " + number;
    default:
      return "tidepool ovals " + number;
  }
}

std::string plural(const std::string& noun, bool many) {
  if (!many || noun.ends_with("s")) return noun;
  return noun + (noun.ends_with("ch") || noun.ends_with("sh") || noun.ends_with("x") ? "es" : "s");
}

std::string hyphened(std::string label, const Pick& pick) {
  if (pick(4) == 0) std::replace(label.begin(), label.end(), ' ', '-');
  return label;
}

std::string counted(int count, const Pick& pick) {
  static const std::vector<std::string> words{"", "", "two", "three", "four", "five"};
  return pick(2) ? words[static_cast<std::size_t>(count)] : std::to_string(count);
}

void shuffle(Parts& parts, const Pick& pick) {
  for (std::size_t i = parts.size(); i > 1; --i) std::swap(parts[i - 1], parts[pick(i)]);
}

Parts the_nouns(const PieceAsked& piece, const Pick& pick) {
  if (piece.die) return {a_die(piece.die, pick)};
  Parts out;
  if (!piece.shape.empty()) out.push_back(a_label(VocabularyName::shape, piece.shape, pick));
  if (!piece.role.empty()) out.push_back(a_label(VocabularyName::role, piece.role, pick));
  if (!out.empty()) out.back() = plural(out.back(), piece.count > 1);
  return out;
}

Parts a_piece(const PieceAsked& piece, const Pick& pick) {
  Parts before, behind;
  const auto put = [&](const std::string& adjective, const std::string& addition) {
    if (pick(3) > 0)
      before.push_back(adjective);
    else
      behind.push_back(addition);
  };
  if (piece.size) {
    const std::string size = a_size(*piece.size, pick);
    put(size, one_of(pick, {"", "of ", "measuring "}) + size);
  }
  // A plain colour is the paper's where a shape is said and no role; of a role it may be the ink's as well.
  if (!piece.colour.empty()) {
    const std::string paper = piece.shape.empty() || !piece.role.empty() ? " paper" : "";
    put(hyphened(piece.colour, pick) + paper, "in " + piece.colour + paper);
  }
  if (!piece.technique.empty()) {
    const std::string technique = a_label(VocabularyName::technique, piece.technique, pick);
    put(hyphened(technique, pick), "with " + technique);
  }
  if (!piece.ink.empty()) behind.push_back(one_of(pick, {"with ", "in "}) + piece.ink + " ink");
  if (!piece.side.empty()) behind.push_back(one_of(pick, {"on the ", "at the "}) + piece.side);
  if (piece.place == "high of centre")
    behind.push_back(one_of(pick, {"high of centre", "high of the center"}));
  if (piece.place == "bottom right")
    behind.push_back(one_of(pick, {"bottom right", "in the bottom right corner", "at the lower right"}));
  if (piece.place == "centred on the fold")
    behind.push_back(one_of(pick, {"centred", "centered"}) + " on the fold");
  if (!piece.not_technique.empty())
    behind.push_back("without " + a_label(VocabularyName::technique, piece.not_technique, pick));
  shuffle(before, pick);
  shuffle(behind, pick);
  // "Speckling in soot" is of the ink: the colour of the paper stands before the technique.
  std::stable_partition(behind.begin(), behind.end(),
                        [](const std::string& part) { return part.starts_with("in "); });
  // The technique that is excluded ends the phrase: what follows it would be excluded too.
  std::stable_partition(behind.begin(), behind.end(),
                        [](const std::string& part) { return !part.starts_with("without"); });
  Parts out;
  out.push_back(piece.count > 1 ? counted(piece.count, pick) : one_of(pick, {"a", "a", "", "the"}));
  out.insert(out.end(), before.begin(), before.end());
  for (std::string& noun : the_nouns(piece, pick)) out.push_back(std::move(noun));
  out.insert(out.end(), behind.begin(), behind.end());
  if (piece.goes) {
    static const std::vector<std::vector<std::string>> ways{
        {"on", "lying on", "on top of"}, {"in", "inside"}, {"behind"}, {"around", "round"}, {"through"}};
    std::string way = one_of(pick, ways[static_cast<std::size_t>(*piece.goes)]);
    Parts other = a_piece(piece.other.front(), pick);
    // Without an article "inside" is the side of the card, and "round" a shape, unless a shape stands before
    // it.
    if (other.front().empty() && way == "inside") way = "in";
    if (other.front().empty() && way == "round" && !behind.empty()) way = "around";
    out.push_back(way);
    for (std::string& part : other) out.push_back(std::move(part));
  }
  return out;
}

// --- the whole ---

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> out;
  std::string word;
  for (const char c : fold(text) + " ") {
    if (std::isalnum(static_cast<unsigned char>(c)) || static_cast<unsigned char>(c) > 127) {
      word += c;
    } else if (!word.empty()) {
      out.push_back(word);
      word.clear();
    }
  }
  return out;
}

// Whether words of two neighbouring parts make a label that neither of them has, or a die's number a size
// ("tidepool oval 4", "in sage").
bool an_accident(const Parts& parts) {
  for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
    const bool figure = !parts[i].empty() && std::isdigit(static_cast<unsigned char>(parts[i].back()));
    if (figure && parts[i + 1].starts_with("in")) return true;
  }
  struct At {
    std::string word;
    std::size_t part;
  };
  static const Vocabulary vocabulary;
  std::vector<At> all;
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (const std::string& word : words_of(parts[i])) all.push_back({word, i});
  for (std::size_t first = 0; first < all.size(); ++first) {
    std::string label;
    for (std::size_t last = first; last < std::min(first + 5, all.size()); ++last) {
      label += (label.empty() ? "" : " ") + all[last].word;
      if (all[first].part != all[last].part && !vocabulary.find(label).empty()) return true;
    }
  }
  return false;
}

void add_made(Parts& parts, const Asked& asked, const Pick& pick) {
  if (asked.made_from.empty() && asked.made_to.empty()) return;
  if (asked.made_from == asked.made_to) {
    parts.push_back("made in " + asked.made_from);
  } else if (asked.made_to.empty()) {
    parts.push_back(one_of(pick, {"made since ", "since "}) + asked.made_from);
  } else if (asked.made_from.empty()) {
    parts.push_back(one_of(pick, {"made before ", "before "}) + std::to_string(std::stoi(asked.made_to) + 1));
  } else {
    parts.push_back("made between " + asked.made_from + " and " + asked.made_to);
  }
}

// What is said of the card comes before its pieces, or behind them after a connector.
Parts the_card(const Asked& asked, const Pick& pick) {
  Parts parts;
  if (!asked.fold.empty()) parts.push_back(a_label(VocabularyName::fold, asked.fold, pick));
  if (!asked.occasion.empty()) parts.push_back(a_label(VocabularyName::occasion, asked.occasion, pick));
  if (!asked.word.empty()) parts.push_back(asked.word);
  shuffle(parts, pick);
  parts.push_back(one_of(pick, {"card", "cards", "designs"}));
  if (!asked.envelope.empty())
    parts.push_back(one_of(pick, {"in a ", "with a ", "in an ", "for "}) + asked.envelope +
                    one_of(pick, {" envelope", " envelopes"}));
  add_made(parts, asked, pick);
  return parts;
}

Parts how_many_pieces(int least, const Pick& pick) {
  const std::string number = std::to_string(least), below = std::to_string(least - 1);
  return {one_of(pick, {"of " + number + " pieces", "with at least " + number + " pieces",
                        "with " + number + " or more pieces", "with more than " + below + " pieces",
                        "with " + number + " pieces in all"})};
}

Parts the_pieces(const Asked& asked, const Pick& pick) {
  Parts parts;
  bool excluded_before = false;
  for (const PieceAsked& piece : asked.pieces) {
    // "without a and b" forbids both.
    if (!parts.empty())
      parts.push_back(one_of(pick, {excluded_before ? "with" : "and", "with", "plus", ","}));
    excluded_before = !piece.not_technique.empty();
    for (std::string& part : a_piece(piece, pick)) parts.push_back(std::move(part));
  }
  return parts;
}

Parts the_exclusions(const Asked& asked, const Pick& pick) {
  Parts parts;
  for (const PieceAsked& piece : asked.no_pieces) {
    // "no larger than 2 in" is a size.
    const bool bound = piece.size && piece.size->relation != Relation::exact;
    parts.push_back(
        one_of(pick, {", without", bound ? ", without" : ", no", bound ? ", without any" : ", but no"}));
    for (std::string& part : a_piece(piece, pick)) parts.push_back(std::move(part));
  }
  if (!asked.not_fold.empty()) {
    parts.push_back(one_of(pick, {", not", ", no", ", but not"}));
    parts.push_back(a_label(VocabularyName::fold, asked.not_fold, pick));
  }
  return parts;
}

std::string in_some_case(std::string text, const Pick& pick) {
  if (pick(8) == 0)
    for (char& c : text) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return text;
}

std::string together(const Parts& parts) {
  std::string out;
  for (const std::string& part : parts) {
    if (part.empty()) continue;
    out += (out.empty() || part.starts_with(',') ? "" : " ") + part;
  }
  return out;
}

}  // namespace

std::string a_label(VocabularyName in, const std::string& term, const Pick& pick) {
  const auto labels = labels_of(in, term);
  return labels[pick(labels.size())];
}

std::optional<std::string> said(const Asked& asked, const Pick& pick) {
  for (int tries = 0; tries < 20; ++tries) {
    Parts parts;
    const auto add = [&](const Parts& more) { parts.insert(parts.end(), more.begin(), more.end()); };
    if (pick(6) == 0) parts.push_back(one_of(pick, {"show me", "find", "all the", "any"}));
    add(the_card(asked, pick));
    if (asked.pieces_in_all) add(how_many_pieces(asked.pieces_in_all, pick));
    if (!asked.technique.empty()) add({"with", a_label(VocabularyName::technique, asked.technique, pick)});
    if (!asked.supply.empty()) add({one_of(pick, {"using", "with"}), asked.supply});
    if (!asked.pieces.empty()) {
      // "Two pieces using a tidepool oval" may be two of these.
      parts.push_back(asked.pieces_in_all ? one_of(pick, {"with", "and"})
                                          : one_of(pick, {"with", "using", "and"}));
      add(the_pieces(asked, pick));
    }
    add(the_exclusions(asked, pick));
    if (!an_accident(parts)) return in_some_case(together(parts), pick);
  }
  return std::nullopt;
}

// --- in fields ---

namespace {

std::string quoted(const std::string& value, const Pick& pick) {
  if (value.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789") == std::string::npos && pick(2))
    return value;
  return "\"" + value + "\"";
}

std::string size_field(const SizeAsked& size) {
  const std::string low = fraction(size.low);
  if (size.second)
    return std::string("size:\"") + (size.relation == Relation::about ? "about " : "") + low + " x " +
           fraction(*size.second) + " in\"";
  switch (size.relation) {
    case Relation::exact:
      return "size:" + low + "in";
    case Relation::about:
      return "size:\"about " + low + " in\"";
    case Relation::under:
      return "size:<" + low + "in";
    case Relation::over:
      return "size:>" + low + "in";
    case Relation::at_least:
      return "size:>=" + low + "in";
    case Relation::at_most:
      return "size:<=" + low + "in";
    case Relation::between:
      return "size:\"" + low + " to " + fraction(size.high) + " in\"";
  }
  return "";
}

std::string piece_fields(const PieceAsked& piece, const Pick& pick) {
  Parts parts;
  const auto term = [&](const std::string& field, VocabularyName in, const std::string& id) {
    if (!id.empty()) parts.push_back(field + ":" + quoted(a_label(in, id, pick), pick));
  };
  term("shape", VocabularyName::shape, piece.shape);
  term("role", VocabularyName::role, piece.role);
  term("technique", VocabularyName::technique, piece.technique);
  term("-technique", VocabularyName::technique, piece.not_technique);
  if (!piece.colour.empty()) parts.push_back("paper:" + quoted(piece.colour, pick));
  if (!piece.ink.empty()) parts.push_back("ink:" + quoted(piece.ink, pick));
  if (!piece.side.empty()) parts.push_back("side:" + piece.side);
  if (!piece.place.empty()) parts.push_back("at:\"" + piece.place + "\"");
  if (piece.size) parts.push_back(size_field(*piece.size));
  if (piece.die) parts.push_back("die:\"tidepool ovals " + std::to_string(piece.die) + "\"");
  if (piece.count > 1) parts.push_back("count:" + std::to_string(piece.count));
  if (piece.goes)
    parts.push_back(std::string(goes_word(*piece.goes)) + ":(" + piece_fields(piece.other.front(), pick) +
                    ")");
  shuffle(parts, pick);
  return together(parts);
}

}  // namespace

std::string said_in_fields(const Asked& asked, const Pick& pick) {
  Parts parts;
  for (const PieceAsked& piece : asked.pieces) parts.push_back("with:(" + piece_fields(piece, pick) + ")");
  for (const PieceAsked& piece : asked.no_pieces)
    parts.push_back("-with:(" + piece_fields(piece, pick) + ")");
  const auto term = [&](const std::string& field, VocabularyName in, const std::string& id) {
    if (!id.empty()) parts.push_back(field + ":" + quoted(a_label(in, id, pick), pick));
  };
  term("fold", VocabularyName::fold, asked.fold);
  term("-fold", VocabularyName::fold, asked.not_fold);
  term("occasion", VocabularyName::occasion, asked.occasion);
  term("technique", VocabularyName::technique, asked.technique);
  if (asked.pieces_in_all) parts.push_back("with:(count:" + std::to_string(asked.pieces_in_all) + ")");
  if (!asked.envelope.empty()) parts.push_back("envelope:" + quoted(asked.envelope, pick));
  if (!asked.word.empty()) parts.push_back("text:" + asked.word);
  if (!asked.supply.empty()) parts.push_back("supply:" + quoted(asked.supply, pick));
  if (!asked.made_from.empty() && asked.made_from == asked.made_to) {
    parts.push_back("made:" + asked.made_from);
  } else {
    add_made(parts, asked, pick);
  }
  // A technique field of the card beside a piece's fields would be that piece's: fields side by side are one
  // piece.
  shuffle(parts, pick);
  return together(parts);
}

}  // namespace insetbook
