// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/path_data.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <optional>
#include <string>

#include "shape/shape.h"
#include "text/quote.h"

namespace insetbook {

namespace {

constexpr std::size_t longest_path = 64 << 10;
constexpr std::size_t most_curves = 20'000;

// In nanometres, not rounded: relative commands go on from where the pen really is.
struct Pen {
  double x = 0, y = 0;
};

std::size_t characters_in(std::string_view text) {
  std::size_t count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  return count;
}

// The whole character that begins there.
std::string_view character_at(std::string_view text, std::size_t at) {
  std::size_t end = at + 1;
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
  return text.substr(at, end - at);
}

class PathReader {
 public:
  PathReader(std::string_view text, double unit_nm, FillRule rule) : text_(text), unit_(unit_nm) {
    outline_.rule = rule;
  }
  Result<CurvedOutline> read();

 private:
  // Each returns false where the path cannot go on; `problem_` then says why.
  bool command(char letter);
  bool move(bool relative);
  bool line(bool relative);
  bool level(bool relative);
  bool upright(bool relative);
  bool cubic(bool relative, bool smooth);
  bool quadratic(bool relative, bool smooth);
  bool arc(bool relative);
  bool close();

  bool number(double& value);
  bool pair(double& x, double& y) { return number(x) && number(y); }
  bool point(bool relative, Pen& pen);
  bool flag(bool& value);
  bool round(Pen pen, Point& point);
  bool add(Curve curve, Pen to);
  bool add_cubic(Pen first, Pen second, Pen to);
  bool add_quadratic(Pen control, Pen to);
  void begin_if_needed();
  void end_contour(bool closed);
  void skip_spaces();
  bool skip_separator();
  bool fail(std::size_t at, std::string what, std::string expected);

  std::string_view text_;
  double unit_;
  std::size_t at_ = 0;
  CurvedOutline outline_;
  std::size_t curves_ = 0;
  Contour contour_;
  bool drawing_ = false;  // contour_ has begun
  Pen start_, pen_;
  char before_ = 0;             // the command before this one, in upper case
  std::optional<Pen> control_;  // the last control point of the command before, for smooth ones
  std::optional<Problem> problem_;
};

// ---- Characters

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

void PathReader::skip_spaces() {
  while (at_ < text_.size() && is_space(text_[at_])) ++at_;
}

// Spaces with one comma among them at most. Whether there was a comma.
bool PathReader::skip_separator() {
  skip_spaces();
  if (at_ >= text_.size() || text_[at_] != ',') return false;
  ++at_;
  skip_spaces();
  return true;
}

bool PathReader::fail(std::size_t at, std::string what, std::string expected) {
  if (problem_) return false;
  Problem problem;
  problem.what = std::move(what);
  problem.expected = std::move(expected);
  problem.where.text = std::string(text_);
  problem.where.at = characters_in(text_.substr(0, at));
  problem.where.length = at < text_.size() ? 1 : 0;
  problem_ = std::move(problem);
  return false;
}

bool PathReader::number(double& value) {
  skip_separator();
  const std::size_t begin = at_;
  std::size_t end = at_;
  if (end < text_.size() && (text_[end] == '+' || text_[end] == '-')) ++end;
  const std::size_t digits = end;
  while (end < text_.size() && is_digit(text_[end])) ++end;
  std::size_t figures = end - digits;
  if (end < text_.size() && text_[end] == '.') {
    const std::size_t point = end++;
    while (end < text_.size() && is_digit(text_[end])) ++end;
    figures += end - point - 1;
  }
  if (figures == 0)
    return fail(begin,
                begin < text_.size()
                    ? fmt::format("{} is no number of a path", in_quotes(character_at(text_, begin)))
                    : std::string("the path ends where a number should stand"),
                "a number");
  if (end < text_.size() && (text_[end] == 'e' || text_[end] == 'E')) {
    std::size_t exponent = end + 1;
    if (exponent < text_.size() && (text_[exponent] == '+' || text_[exponent] == '-')) ++exponent;
    if (exponent < text_.size() && is_digit(text_[exponent])) {
      while (exponent < text_.size() && is_digit(text_[exponent])) ++exponent;
      end = exponent;
    }
  }
  std::string_view said = text_.substr(begin, end - begin);
  if (said.front() == '+') said.remove_prefix(1);
  const auto [stop, error] = std::from_chars(said.data(), said.data() + said.size(), value);
  if (error != std::errc() || stop != said.data() + said.size())
    return fail(begin, fmt::format("{} is too large or too small", in_quotes(said)),
                "a number of the drawing's size");
  value *= unit_;
  at_ = end;
  return true;
}

// One digit; the next figure may follow without a space.
bool PathReader::flag(bool& value) {
  skip_separator();
  if (at_ >= text_.size() || (text_[at_] != '0' && text_[at_] != '1'))
    return fail(at_, "an arc's flag is neither 0 nor 1", "0 or 1");
  value = text_[at_++] == '1';
  return true;
}

bool PathReader::point(bool relative, Pen& pen) {
  if (!pair(pen.x, pen.y)) return false;
  if (relative) pen = {pen_.x + pen.x, pen_.y + pen.y};
  return true;
}

bool PathReader::round(Pen pen, Point& point) {
  const double reach = static_cast<double>(largest_figure.nm());
  if (!(std::abs(pen.x) <= reach && std::abs(pen.y) <= reach))
    return fail(at_ > 0 ? at_ - 1 : 0, "the path goes farther out than can be computed with",
                "coordinates within 1073 mm (42 in) of the origin");
  point = {std::llround(pen.x), std::llround(pen.y)};
  return true;
}

// ---- Contours

void PathReader::end_contour(bool closed) {
  if (drawing_ && !contour_.curves.empty()) {
    contour_.closed = closed;
    outline_.contours.push_back(std::move(contour_));
  }
  contour_ = {};
  drawing_ = false;
}

// After a close, drawing goes on from where that contour began.
void PathReader::begin_if_needed() {
  if (drawing_) return;
  drawing_ = true;
  contour_.start = {std::llround(start_.x), std::llround(start_.y)};
}

bool PathReader::add(Curve curve, Pen to) {
  begin_if_needed();
  if (++curves_ > most_curves)
    return fail(at_ > 0 ? at_ - 1 : 0, "the path has too many curves",
                fmt::format("at most {}", most_curves));
  contour_.curves.push_back(std::move(curve));
  pen_ = to;
  return true;
}

bool PathReader::add_cubic(Pen first, Pen second, Pen to) {
  CubicTo curve;
  return round(first, curve.first) && round(second, curve.second) && round(to, curve.to) && add(curve, to);
}

// A quadratic curve is the cubic one whose control points lie two thirds of the way to its own.
bool PathReader::add_quadratic(Pen control, Pen to) {
  const auto towards = [&](Pen end) {
    return Pen{end.x + (control.x - end.x) * 2 / 3, end.y + (control.y - end.y) * 2 / 3};
  };
  Point unused;
  return round(control, unused) && add_cubic(towards(pen_), towards(to), to);
}

// ---- Commands (SVG 2, 9.3)

bool PathReader::move(bool relative) {
  Pen to;
  if (!point(relative, to)) return false;
  end_contour(false);
  Point start;
  if (!round(to, start)) return false;
  pen_ = start_ = to;
  drawing_ = true;
  contour_.start = start;
  return true;
}

bool PathReader::line(bool relative) {
  Pen to;
  LineTo curve;
  return point(relative, to) && round(to, curve.to) && add(curve, to);
}

bool PathReader::level(bool relative) {
  Pen to = pen_;
  LineTo curve;
  if (!number(to.x)) return false;
  if (relative) to.x += pen_.x;
  return round(to, curve.to) && add(curve, to);
}

bool PathReader::upright(bool relative) {
  Pen to = pen_;
  LineTo curve;
  if (!number(to.y)) return false;
  if (relative) to.y += pen_.y;
  return round(to, curve.to) && add(curve, to);
}

bool PathReader::cubic(bool relative, bool smooth) {
  Pen first = pen_, second, to;
  if (smooth && (before_ == 'C' || before_ == 'S') && control_)
    first = {2 * pen_.x - control_->x, 2 * pen_.y - control_->y};
  if (!smooth && !point(relative, first)) return false;
  if (!point(relative, second) || !point(relative, to) || !add_cubic(first, second, to)) return false;
  control_ = second;
  return true;
}

bool PathReader::quadratic(bool relative, bool smooth) {
  Pen control = pen_, to;
  if (smooth && (before_ == 'Q' || before_ == 'T') && control_)
    control = {2 * pen_.x - control_->x, 2 * pen_.y - control_->y};
  if (!smooth && !point(relative, control)) return false;
  if (!point(relative, to) || !add_quadratic(control, to)) return false;
  control_ = control;
  return true;
}

bool PathReader::arc(bool relative) {
  double radius_x = 0, radius_y = 0, turned = 0;
  ArcTo curve;
  Pen to;
  if (!pair(radius_x, radius_y) || !number(turned)) return false;
  curve.turned = turned / unit_;
  if (!flag(curve.large) || !flag(curve.clockwise) || !point(relative, to) || !round(to, curve.to))
    return false;
  Point radii;
  if (!round({std::abs(radius_x), std::abs(radius_y)}, radii)) return false;
  curve.radius_x = radii.x;
  curve.radius_y = radii.y;
  if (radii.x == 0 || radii.y == 0) return add(LineTo{curve.to}, to);
  // An arc to where it begins is nothing at all.
  if (to.x == pen_.x && to.y == pen_.y) return true;
  return add(curve, to);
}

bool PathReader::close() {
  end_contour(true);
  pen_ = start_;
  return true;
}

bool PathReader::command(char letter) {
  const bool relative = letter >= 'a';
  const char kind = relative ? static_cast<char>(letter - 'a' + 'A') : letter;
  const auto one = [&](bool first) {
    switch (kind) {
      case 'M':
        return first ? move(relative) : line(relative);
      case 'L':
        return line(relative);
      case 'H':
        return level(relative);
      case 'V':
        return upright(relative);
      case 'C':
        return cubic(relative, false);
      case 'S':
        return cubic(relative, true);
      case 'Q':
        return quadratic(relative, false);
      case 'T':
        return quadratic(relative, true);
      default:
        return arc(relative);
    }
  };
  if (kind == 'Z') {
    before_ = kind;
    return close();
  }
  skip_spaces();
  if (at_ < text_.size() && text_[at_] == ',')
    return fail(at_, "a comma stands before the first number of a command", "a number");
  for (bool first = true;; first = false) {
    if (!one(first)) return false;
    before_ = kind;
    if (kind != 'C' && kind != 'S' && kind != 'Q' && kind != 'T') control_.reset();
    // More figures without a letter: the same command again.
    const std::size_t end = at_;
    const bool comma = skip_separator();
    const bool more = at_ < text_.size() &&
                      (is_digit(text_[at_]) || text_[at_] == '.' || text_[at_] == '-' || text_[at_] == '+');
    if (!more && comma) return fail(end, "a comma stands where no number follows", "a number, or no comma");
    if (!more) return true;
  }
}

Result<CurvedOutline> PathReader::read() {
  if (text_.size() > longest_path) {
    Problem problem;
    problem.what = fmt::format("the path is longer than {} KB", longest_path >> 10);
    problem.expected = "a shorter one, or several";
    return failure(std::move(problem));
  }
  for (skip_spaces(); at_ < text_.size(); skip_spaces()) {
    const char letter = text_[at_];
    constexpr std::string_view letters = "MmZzLlHhVvCcSsQqTtAa";
    if (letters.find(letter) == std::string_view::npos) {
      fail(at_, fmt::format("{} is no command of a path", in_quotes(character_at(text_, at_))),
           "one of M L H V C S Q T A Z");
      break;
    }
    if (before_ == 0 && letter != 'M' && letter != 'm') {
      fail(at_, "the path does not begin with a move", "M and the point where it begins");
      break;
    }
    ++at_;
    if (!command(letter)) break;
  }
  if (problem_) return failure(std::move(*problem_));
  end_contour(false);
  return std::move(outline_);
}

}  // namespace

Result<CurvedOutline> read_path_data(std::string_view text, double unit_nm, FillRule rule) {
  return PathReader(text, unit_nm, rule).read();
}

}  // namespace insetbook
