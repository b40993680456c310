// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/pieces.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "text/utf8.h"

namespace insetbook {
namespace {

bool is_figure(char32_t c) {
  return (c >= '0' && c <= '9') || (c >= 0xBC && c <= 0xBE) || (c >= 0x2150 && c <= 0x215F);
}
bool opens_quote(char32_t c) {
  return c == 0x201C || c == 0x201E || c == 0xAB;
}
bool closes_quote(char32_t c) {
  return c == 0x201D || c == 0xBB;
}
bool is_double_quote(char32_t c) {
  return c == '"' || opens_quote(c) || closes_quote(c);
}
bool is_apostrophe(char32_t c) {
  return c == '\'' || c == 0x2018 || c == 0x2019;
}
bool is_prime(char32_t c) {
  return c == 0x2032 || c == 0x2033;
}
bool is_slash(char32_t c) {
  return c == '/' || c == 0x2044 || c == 0x2215;
}

// Marks that part words, and the one spelling under which the later stages know them.
std::optional<std::string_view> mark_of(char32_t c) {
  switch (c) {
    case ',':
    case 0x3001:
      return ",";
    case ';':
      return ";";
    case '(':
      return "(";
    case ')':
      return ")";
    case ':':
      return ":";
    case '&':
      return "&";
    case '+':
      return "+";
    case '<':
      return "<";
    case '>':
      return ">";
    case '=':
      return "=";
    case '~':
    case 0x2248:
      return "~";
    case 0x2264:
      return "<=";
    case 0x2265:
      return ">=";
    case 0xB1:
      return "±";
    case '?':
    case '!':
    case '.':
    case '[':
    case ']':
    case '{':
    case '}':
    case '|':
    case '*':
    case '`':
    case '\\':
    case 0x2026:
      return ".";
    default:
      return std::nullopt;
  }
}

class Splitter {
 public:
  Splitter(std::string_view text, Span range) : text_(text), range_(range) {
    chars_ = characters(text.substr(range.begin, range.end - range.begin));
    for (Character& c : chars_) {
      c.begin += range.begin;
      c.end += range.begin;
    }
    find_closing_apostrophes();
  }

  Result<std::vector<Piece>> run() {
    while (at_ < chars_.size()) {
      if (const Result<void> step = next(); !step) return failure(step.error());
    }
    return std::move(pieces_);
  }

  std::vector<Piece> run(std::vector<Problem>& problems) {
    while (at_ < chars_.size()) {
      const Result<void> step = next();
      if (step) continue;
      if (problems.size() < most_problems) problems.push_back(step.error());
      no_quote_ends_ = true;
      ++at_;
    }
    return std::move(pieces_);
  }

 private:
  char32_t code(std::size_t i) const { return i < chars_.size() ? chars_[i].code : 0; }
  bool space_before(std::size_t i) const { return i == 0 || is_space(code(i - 1)) || code(i - 1) == '('; }

  // For each place the next apostrophe that could end a phrase: behind a letter or figure, before no letter.
  void find_closing_apostrophes() {
    closing_.assign(chars_.size() + 1, chars_.size());
    for (std::size_t i = chars_.size(); i-- > 0;) {
      const bool closes = is_apostrophe(code(i)) && i > 0 && !is_space(code(i - 1)) &&
                          (i + 1 == chars_.size() || is_space(code(i + 1)) || mark_of(code(i + 1)));
      closing_[i] = closes ? i : closing_[i + 1];
    }
  }

  void add(Piece::Kind kind, std::size_t first, std::size_t last, std::string folded) {
    Piece piece;
    piece.kind = kind;
    piece.span = {chars_[first].begin, chars_[last - 1].end};
    piece.folded = std::move(folded);
    const bool follows = !pieces_.empty();
    piece.glued = follows && pieces_.back().span.end == piece.span.begin;
    piece.hyphen = std::exchange(hyphen_, false);
    if (piece.hyphen) piece.glued = true;
    pieces_.push_back(std::move(piece));
    at_ = last;
  }
  void add_mark(std::size_t count, std::string_view mark) {
    add(Piece::Kind::mark, at_, at_ + count, std::string(mark));
  }

  void add_phrase(std::size_t open, std::size_t close) {
    add(Piece::Kind::phrase, open, close + 1, "");
    Piece& piece = pieces_.back();
    piece.inner = {chars_[open].end, chars_[close].begin};
    piece.folded = fold(text_.substr(piece.inner.begin, piece.inner.end - piece.inner.begin));
  }

  Result<void> next() {
    const char32_t c = code(at_);
    if (is_space(c)) {
      ++at_;
      return {};
    }
    if (is_double_quote(c)) return double_quote();
    if (is_apostrophe(c)) {
      apostrophe();
      return {};
    }
    if (is_prime(c)) {
      add_mark(1, c == 0x2033 ? "\"" : "'");
      return {};
    }
    if (is_hyphen(c)) {
      hyphen();
      return {};
    }
    if (sign()) return {};
    word();
    return {};
  }

  Result<void> double_quote() {
    const bool behind_figure = at_ > 0 && (is_figure(code(at_ - 1)) || code(at_ - 1) == ' ') &&
                               !pieces_.empty() && pieces_.back().kind == Piece::Kind::word &&
                               is_figure(last_of_last_word());
    const bool touches = at_ > 0 && is_figure(code(at_ - 1));
    // `2 ⅜ "` also has its inch mark behind a space, but only where no word follows it at once.
    const bool stands_free = behind_figure && (at_ + 1 == chars_.size() || is_space(code(at_ + 1)));
    if (!opens_quote(code(at_)) && (touches || stands_free)) {
      add_mark(1, "\"");
      return {};
    }
    for (std::size_t close = at_ + 1; close < chars_.size() && !no_quote_ends_; ++close)
      if (code(close) == '"' || closes_quote(code(close)) || (code(close) == 0x201C && code(at_) == 0x201E)) {
        add_phrase(at_, close);
        return {};
      }
    return failure(problem_at(text_, {chars_[at_].begin, range_.end}, "a quote begins here and does not end",
                              "a second \" where the phrase ends"));
  }

  char32_t last_of_last_word() const {
    std::size_t i = at_;
    while (i > 0 && code(i - 1) == ' ') --i;
    return i > 0 ? code(i - 1) : 0;
  }

  void apostrophe() {
    if (at_ > 0 && is_figure(code(at_ - 1))) return add_mark(1, "'");
    const std::size_t close = closing_[at_ + 1];
    if (space_before(at_) && at_ + 1 < chars_.size() && !is_space(code(at_ + 1)) && close < chars_.size())
      return add_phrase(at_, close);
    add_mark(1, ".");
  }

  void hyphen() {
    const char32_t c = code(at_);
    const bool word_before = !pieces_.empty() && pieces_.back().kind == Piece::Kind::word &&
                             pieces_.back().span.end == chars_[at_].begin;
    const char32_t after = code(at_ + 1);
    const bool word_after =
        at_ + 1 < chars_.size() && !is_space(after) && !mark_of(after) && !is_hyphen(after);
    if (word_before && word_after && !is_double_quote(after)) {
      hyphen_ = true;
      ++at_;
      return;
    }
    const bool excludes = (c == '-' || c == 0x2212) && space_before(at_) && (word_after || after == '(');
    add_mark(1, excludes ? "-" : ".");
  }

  // Marks of one or two characters, and `#a55030`, which is a word.
  bool sign() {
    const char32_t c = code(at_);
    const char32_t after = code(at_ + 1);
    if (c == '+' && (is_hyphen(after) || (is_slash(after) && is_hyphen(code(at_ + 2))))) {
      add_mark(is_slash(after) ? 3 : 2, "±");
      return true;
    }
    if ((c == '<' || c == '>') && after == '=') {
      add_mark(2, c == '<' ? "<=" : ">=");
      return true;
    }
    if (c == '.' && is_figure(after)) return false;
    if (is_slash(c) || c == '#') {
      if (c == '#' && is_word_character(at_ + 1)) return false;
      add_mark(1, c == '#' ? "#" : "/");
      return true;
    }
    if (const auto mark = mark_of(c)) {
      add_mark(1, *mark);
      return true;
    }
    return false;
  }

  // Whether the character continues a word. Points, commas and slashes do between figures ("2.375", "6,5",
  // "3/8").
  bool is_word_character(std::size_t i) const {
    if (i >= chars_.size()) return false;
    const char32_t c = code(i);
    if (is_space(c) || is_hyphen(c) || is_double_quote(c) || is_prime(c)) return false;
    const bool between_figures = i > 0 && is_figure(code(i - 1)) && is_figure(code(i + 1));
    if (c == '.' || c == ',') return between_figures;
    if (is_slash(c)) return between_figures;
    if (is_apostrophe(c)) return i > 0 && is_letter(code(i - 1)) && is_letter(code(i + 1));
    return !mark_of(c);
  }

  void word() {
    std::size_t last = at_ + 1;
    while (is_word_character(last)) ++last;
    const Span span{chars_[at_].begin, chars_[last - 1].end};
    std::string folded = fold(text_.substr(span.begin, span.end - span.begin));
    if (folded.empty())
      add(Piece::Kind::mark, at_, last, ".");
    else
      add(Piece::Kind::word, at_, last, std::move(folded));
  }

  std::string_view text_;
  Span range_;
  std::vector<Character> chars_;
  std::vector<std::size_t> closing_;
  std::vector<Piece> pieces_;
  std::size_t at_ = 0;
  bool hyphen_ = false;
  bool no_quote_ends_ = false;  // one before this place did not
};

}  // namespace

Result<std::vector<Piece>> split(std::string_view text, Span range) {
  return Splitter(text, range).run();
}

std::vector<Piece> split(std::string_view text, Span range, std::vector<Problem>& problems) {
  return Splitter(text, range).run(problems);
}

std::string print(const std::vector<Piece>& pieces) {
  std::string out;
  for (const Piece& piece : pieces) {
    if (!out.empty()) out += piece.hyphen ? "-" : " | ";
    if (piece.kind == Piece::Kind::phrase)
      out += '"' + piece.folded + '"';
    else
      out += piece.folded;
  }
  return out;
}

namespace {

// Of a long question what stands round the place.
std::string_view around(std::string_view text, Span span) {
  constexpr std::size_t quoted_whole = 1000;
  constexpr std::size_t beside = 200;
  if (text.size() <= quoted_whole) return text;
  const auto whole_character = [&](std::size_t at) {
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) ++at;
    return at;
  };
  const std::size_t begin = whole_character(span.begin > beside ? span.begin - beside : 0);
  const std::size_t end =
      whole_character(std::min(std::min(span.end, span.begin + beside) + beside, text.size()));
  return text.substr(begin, end - begin);
}

}  // namespace

Problem problem_at(std::string_view all, Span span, std::string what, std::string expected) {
  const std::string_view text = around(all, span);
  const auto before = static_cast<std::size_t>(text.data() - all.data());
  span = {span.begin - before, std::min(span.end - before, text.size())};
  Problem problem;
  problem.kind = ProblemKind::bad_input;
  problem.what = std::move(what);
  problem.where.text = std::string(text);
  problem.where.at = characters_before(text, span.begin);
  problem.where.length = characters_before(text, span.end) - *problem.where.at;
  problem.expected = std::move(expected);
  return problem;
}

}  // namespace insetbook
