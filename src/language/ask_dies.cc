// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/ask_dies.h"

#include <algorithm>
#include <variant>

#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::string_view dies_words = "die|dies|cutter|cutters";
constexpr std::string_view asking =
    "@what|do|does|did|have|has|had|is|are|any|find|list|show|how|closest|nearest";
// What says nothing beside the size, the shape and the set.
constexpr std::string_view passed_over =
    "@what|@i|@the|do|does|did|have|has|had|got|own|is|are|was|were|be|there|all|many|how|ones|it|can|"
    "could|will|would|measure|measures|measured|cut|cuts|cutting|make|makes|give|gives|find|list|show|me|us|"
    "please|comes|come|just|exactly|right|already|size|sized|then|now";
constexpr std::string_view near_words = "near|nearest|nearer|close|closest|closer";

bool only_size_and_shape(const Node& node) {
  for (const Constraint& constraint : node.constraint)
    if (!std::holds_alternative<SizeIs>(constraint.says) && !std::holds_alternative<ShapeIs>(constraint.says))
      return false;
  return node.kind != Node::Kind::goes && std::ranges::all_of(node.children, only_size_and_shape);
}

bool has_size(const Node& node) {
  return std::ranges::any_of(
             node.constraint,
             [](const Constraint& constraint) { return std::holds_alternative<SizeIs>(constraint.says); }) ||
         std::ranges::any_of(node.children, has_size);
}

// The words that are left, as they were typed.
class Left {
 public:
  explicit Left(std::string_view text) : text_(text) {}
  void add(const Piece& piece) {
    if (!said_.empty())
      said_ += between_ ? std::string_view(" ") : text_.substr(last_end_, piece.span.begin - last_end_);
    said_ += text_.substr(piece.span.begin, piece.span.end - piece.span.begin);
    last_end_ = piece.span.end;
    between_ = false;
  }
  void pass_over() { between_ = true; }
  const std::string& said() const { return said_; }

 private:
  std::string_view text_;
  std::string said_;
  std::size_t last_end_ = 0;
  bool between_ = false;
};

}  // namespace

std::optional<Node> size_and_shape_asked(std::string_view text, const ReadingContext& context) {
  if (trim(text).empty()) return Node();
  const Result<Question> read = read_question(text, context);
  if (!read || read->asks != Asks::samples || !read->problems.empty() || !read->ignored.empty())
    return std::nullopt;
  if (!only_size_and_shape(read->tree)) return std::nullopt;
  return read->tree;
}

std::optional<Question> dies_by_size_asked(std::string_view text, const std::vector<Piece>& pieces,
                                           const PhraseReader& reader, const ReadingContext& context) {
  Question question;
  question.text = std::string(text);
  question.asks = Asks::dies;
  Left left(text);
  bool dies = false, asked = false, near = false, have = false;
  for (std::size_t at = 0; at < pieces.size(); ++at) {
    asked = asked || reader.is_any(at, asking);
    have = have || reader.is_any(at, "have|got|own|there");
    std::string set;
    const std::size_t end = question.in_set.empty() ? reader.set_at(at, set) : at;
    if (end > at) {
      question.in_set = set;
      at = end - 1;
      left.pass_over();
    } else if (reader.is_any(at, dies_words)) {
      dies = true;
      left.pass_over();
    } else if (reader.is_any(at, near_words)) {
      near = true;
      left.pass_over();
    } else if (reader.is_any(at, passed_over) || (near && left.said().empty() && reader.is_any(at, "to")) ||
               (at + 1 < pieces.size() && reader.is_any(at, "in|from|among") &&
                reader.set_at(at + 1, set) > at + 1)) {
      left.pass_over();
    } else {
      left.add(pieces[at]);
    }
  }
  if (!asked || (!dies && question.in_set.empty())) return std::nullopt;
  question.subject = (near && !left.said().empty() ? "about " : "") + left.said();
  const std::optional<Node> tree = size_and_shape_asked(question.subject, context);
  if (!tree) return std::nullopt;
  // "Which tidepool rectangles" alone asks for samples that were made with them; "what dies do I have" for
  // every die.
  if (left.said().empty() ? !(dies && have) : !dies && !has_size(*tree)) return std::nullopt;
  return question;
}

std::optional<Question> unmeasured_asked(std::string_view text, const std::vector<Piece>& pieces,
                                         const PhraseReader& reader) {
  bool negated = false, measured = false, wanted = false, without = false, size = false, dies = false;
  bool alone = false;
  std::string set;
  for (std::size_t at = 0; at < pieces.size(); ++at) {
    if (const std::size_t end = reader.set_at(at, set); end > at) {
      dies = true;
      at = end - 1;
    } else if (reader.is_any(at, "not|havent|hasnt|arent|isnt|never|werent|wasnt")) {
      negated = true;
    } else if (reader.is_any(at, "measured|measure|measuring")) {
      measured = true;
    } else if (reader.is_any(at, "need|needs|still|left|remain|remains|must|remaining")) {
      wanted = true;
    } else if (reader.is_any(at, "without|no|missing|lack|lacks|lacking")) {
      without = true;
    } else if (reader.is_any(at, "size|sizes|measurement|measurements|figures")) {
      size = true;
    } else if (reader.is_any(at, "die|dies|sets|set|lines|line|openings|cutters")) {
      dies = true;
    } else if (reader.is_any(at, "unmeasured")) {
      alone = true;
    } else if (!reader.is_any(at,
                              "@what|is|are|was|were|has|have|had|i|we|the|all|my|any|there|that|been|be|to|"
                              "do|should|list|show|me|find|a|an|yet|so|far|in|of|from|ones|one|for|and|with|"
                              "which|remain|it|got|tell|please|out|current|anything|something|recorded|known|"
                              "given")) {
      return std::nullopt;
    }
  }
  const bool asked = alone || (negated && measured) || (wanted && measured) || (without && size && dies);
  if (!asked) return std::nullopt;
  Question question;
  question.text = std::string(text);
  question.asks = Asks::unmeasured;
  question.subject = set;
  return question;
}

}  // namespace insetbook
