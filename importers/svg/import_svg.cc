// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/import_svg.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "book/records.h"
#include "importers/svg/drawing.h"
#include "importers/svg/lines_said.h"
#include "language/read_record.h"
#include "measure/write.h"
#include "shape/write_path_data.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// Close enough to tell what lies in what, and exact where there are only lines.
constexpr std::int64_t nesting_error = 1'000;
// How far the rings of an outline that crosses itself may be from its curves, when they are what is kept.
constexpr std::int64_t mended_error = 100;

// An outline of a die, with what groups inside the die around it are called.
struct Member {
  const DrawnOutline* drawn;
  std::vector<std::string> groups;
};

struct DieDrawn {
  std::string name;
  int line = 0;
  std::vector<Member> members;
  bool layers = false;  // not one die: what lies in one another is
};

// One closed line, as it will be recorded.
struct LineDrawn {
  const DrawnOutline* drawn = nullptr;
  CurvedOutline curves;
  Outline rings;
  Box box;
  std::optional<LineCell> said;
  std::optional<PlainShape> plain;
};

// ---- Groups to dies

void add_members(const DrawnGroup& group, std::vector<std::string> groups, DieDrawn& die) {
  for (const DrawnOutline& outline : group.outlines) die.members.push_back({&outline, groups});
  for (const DrawnGroup& inner : group.groups) {
    std::vector<std::string> names = groups;
    if (!inner.name.empty()) names.push_back(inner.name);
    add_members(inner, std::move(names), die);
  }
}

DieDrawn die_of(const DrawnGroup& group) {
  DieDrawn die{group.name, group.line, {}};
  add_members(group, {}, die);
  return die;
}

bool says_a_line(const DrawnGroup& group, const LinesSaid& said) {
  return std::any_of(group.outlines.begin(), group.outlines.end(),
                     [&](const DrawnOutline& outline) { return line_said(outline, {}, said).has_value(); });
}

// Whether the groups are layers, one for each kind of line, and not dies: each is called what a line is.
bool are_layers(const DrawnGroup& group, const LinesSaid& said) {
  return group.outlines.empty() && group.groups.size() > 1 &&
         std::all_of(group.groups.begin(), group.groups.end(), [&](const DrawnGroup& layer) {
           return line_said(DrawnOutline(), {layer.name}, said).has_value();
         });
}

// ---- Outlines to lines

Problem in_file(int line, const Problem& problem) {
  Problem told = problem;
  told.what = fmt::format("line {}: {}", line, problem.what);
  return told;
}

// The contours of an outline, each for itself where it is one of several.
Result<std::vector<LineDrawn>> lines_of(const Member& member, const LinesSaid& said,
                                        std::vector<std::string>& notes) {
  const DrawnOutline& drawn = *member.drawn;
  const std::optional<LineCell> line = line_said(drawn, member.groups, said);
  std::vector<LineDrawn> lines;
  for (const Contour& contour : drawn.outline.contours) {
    LineDrawn one;
    one.drawn = &drawn;
    one.curves = {{contour}, drawn.outline.rule};
    one.curves.contours.front().closed = contour.closed;
    Result<Flattened> flat = flatten(one.curves, nesting_error);
    if (!flat) return failure(in_file(drawn.line, flat.error()));
    for (const std::string& mended : flat->mended)
      notes.push_back(fmt::format("line {}: {}", drawn.line, mended));
    one.rings = flat->outline;
    if (flat->outline.rings.size() > 1 || !flat->mended.empty()) {
      // It crosses itself or was drawn open: what is kept is the region's edge.
      Result<Flattened> close = flatten(one.curves, mended_error);
      if (!close) return failure(in_file(drawn.line, close.error()));
      one.rings = close->outline;
      one.curves.contours.clear();
    }
    one.box = one.curves.contours.empty() ? box_of(one.rings) : box_of(one.curves);
    if (drawn.outline.contours.size() == 1) one.plain = drawn.plain;
    // The name of a compound path says the line of its outermost contour only.
    if (lines.empty()) one.said = line;
    lines.push_back(std::move(one));
  }
  return lines;
}

// Rings may stand off the curves by the nesting error, and a line may lie on the one around it.
bool lies_in(const LineDrawn& inner, const LineDrawn& outer) {
  const Box &a = inner.box, &b = outer.box;
  if (a.least.x < b.least.x || a.least.y < b.least.y || a.most.x > b.most.x || a.most.y > b.most.y)
    return false;
  for (const Ring& ring : inner.rings.rings)
    for (const Point& point : ring.points)
      if (side_of(outer.rings, point) == PointSide::outside) return false;
  return true;
}

double area(const LineDrawn& line) {
  return static_cast<double>(line.box.width()) * static_cast<double>(line.box.height());
}

Problem beside_each_other(const DieDrawn& die, const LineDrawn& other) {
  return bad_input(
      fmt::format("the outline of line {} does not lie in the largest one of {}", other.drawn->line,
                  die.name.empty() ? fmt::format("the group of line {}", die.line) : in_quotes(die.name)),
      "a group of its own for each die");
}

// All lines of a die, the cut edge first.
Result<std::vector<LineDrawn>> lines_of(const DieDrawn& die, const LinesSaid& said,
                                        std::vector<std::string>& notes) {
  std::vector<LineDrawn> lines;
  for (const Member& member : die.members) {
    Result<std::vector<LineDrawn>> more = lines_of(member, said, notes);
    if (!more) return failure(more.error());
    std::move(more->begin(), more->end(), std::back_inserter(lines));
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const LineDrawn& a, const LineDrawn& b) { return area(a) > area(b); });
  for (std::size_t i = 1; i < lines.size() && !die.layers; ++i)
    if (!lies_in(lines[i], lines.front())) return failure(beside_each_other(die, lines[i]));
  return lines;
}

// Whether a person named the group and not its outlines, and in one of these all others lie side by side: a
// frame with its windows. What lies in one another like rings is a set of dies.
bool holds_windows(const DrawnGroup& group, const LinesSaid& said) {
  if (trim(group.name).empty() || !group.groups.empty()) return false;
  for (const DrawnOutline& outline : group.outlines)
    if (!trim(outline.name).empty()) return false;
  std::vector<std::string> told_later;
  const Result<std::vector<LineDrawn>> lines = lines_of(die_of(group), said, told_later);
  if (!lines) return false;
  for (std::size_t outer = 1; outer < lines->size(); ++outer)
    for (std::size_t inner = outer + 1; inner < lines->size(); ++inner)
      if (lies_in((*lines)[inner], (*lines)[outer])) return false;
  return true;
}

std::vector<DieDrawn> dies_of(const DrawnGroup& all, const LinesSaid& said) {
  const DrawnGroup* group = &all;
  while (group->outlines.empty() && group->groups.size() == 1) group = &group->groups.front();
  if (are_layers(*group, said)) {
    DieDrawn layers = die_of(*group);
    layers.layers = true;
    return {layers};
  }
  if (group != &all && group->outlines.size() + group->groups.size() > 1 &&
      (says_a_line(*group, said) || holds_windows(*group, said)))
    return {die_of(*group)};
  std::vector<DieDrawn> dies;
  for (const DrawnGroup& inner : group->groups) dies.push_back(die_of(inner));
  for (const DrawnOutline& outline : group->outlines) {
    const bool is_line = line_said(outline, {}, said).has_value();
    dies.push_back({is_line ? std::string() : outline.name, outline.line, {{&outline, {}}}});
  }
  // A group with one outline and no name is called what the outline is.
  for (DieDrawn& die : dies)
    if (die.name.empty() && die.members.size() == 1 && !line_said(*die.members.front().drawn, {}, said))
      die.name = die.members.front().drawn->name;
  return dies;
}

// Of layers: each outline goes to the first one, from the largest down, that it lies in.
std::vector<std::vector<LineDrawn>> by_nesting(std::vector<LineDrawn> lines) {
  std::vector<std::vector<LineDrawn>> dies;
  for (LineDrawn& line : lines) {
    const auto outer = std::find_if(dies.begin(), dies.end(), [&](const std::vector<LineDrawn>& die) {
      return lies_in(line, die.front());
    });
    if (outer == dies.end())
      dies.push_back({std::move(line)});
    else
      outer->push_back(std::move(line));
  }
  return dies;
}

// ---- Lines to records

class DrawingImport {
 public:
  DrawingImport(Change& change, const DrawingSource& source, ImportReport& report)
      : change_(change), source_(source), report_(report) {}
  Result<void> run(const Drawing& drawing, const LinesSaid& said, std::string_view set_said);

 private:
  struct Die {
    DieDrawn drawn;
    std::vector<LineDrawn> lines;
    std::string label;
    std::optional<int> rank;
  };
  void name_dies(std::vector<Die>& dies) const;
  Result<void> put(const Die& die, const Drawing& drawing, const std::string& set);
  LineRow row_of(const LineDrawn& line, const LineDrawn& cut, Unit unit) const;
  void refuse(const Problem& problem);

  Change& change_;
  const DrawingSource& source_;
  ImportReport& report_;
  ImportedFile counts_;
};

void DrawingImport::refuse(const Problem& problem) {
  ++counts_.refused;
  report_.refused.push_back({source_.name, 0, "", problem.what, problem.expected, false});
}

// A label that is an order is one; two of one name are told apart by a number.
void DrawingImport::name_dies(std::vector<Die>& dies) const {
  std::stable_sort(dies.begin(), dies.end(),
                   [](const Die& a, const Die& b) { return area(a.lines.front()) > area(b.lines.front()); });
  const bool any_named =
      std::any_of(dies.begin(), dies.end(), [](const Die& die) { return !trim(die.drawn.name).empty(); });
  std::set<std::string> taken;
  for (const Die& die : dies) taken.insert(fold(die.drawn.name));
  std::set<std::string> given;
  int number = 0;
  for (Die& die : dies) {
    ++number;
    if (trim(die.drawn.name).empty()) {
      while (any_named && taken.count(std::to_string(number)) > 0) ++number;
      die.label = std::to_string(number);
      if (!any_named) die.rank = number;
    } else {
      const DieCell cell = read_die_cell(die.drawn.name);
      die.label = cell.label.empty() ? die.drawn.name : cell.label;
      die.rank = cell.rank;
    }
    for (int again = 2; !given.insert(fold(die.label)).second; ++again)
      die.label = fmt::format("{} ({})", die.drawn.name.empty() ? die.label : die.drawn.name, again);
  }
}

CurvedOutline moved(CurvedOutline outline, Point by) {
  const auto move = [&](Point& point) {
    point.x -= by.x;
    point.y -= by.y;
  };
  for (Contour& contour : outline.contours) {
    move(contour.start);
    for (Curve& curve : contour.curves)
      std::visit(
          [&](auto& each) {
            move(each.to);
            if constexpr (std::is_same_v<std::decay_t<decltype(each)>, CubicTo>) {
              move(each.first);
              move(each.second);
            }
          },
          curve);
  }
  return outline;
}

Outline moved(Outline outline, Point by) {
  for (Ring& ring : outline.rings)
    for (Point& point : ring.points) {
      point.x -= by.x;
      point.y -= by.y;
    }
  return outline;
}

LineRow DrawingImport::row_of(const LineDrawn& line, const LineDrawn& cut, Unit unit) const {
  LineRow row;
  Measured measured;
  measured.unit = unit;
  measured.method = "drawing";
  measured.width = Length::nm(line.box.width());
  measured.height = Length::nm(line.box.height());
  if (line.plain) {
    row.shape = line.plain->word;
    measured.width = line.plain->width;
    measured.height = line.plain->height;
    if (line.plain->corner_radius) row.figures = "radius " + write(*line.plain->corner_radius, unit);
  } else {
    row.shape = "outline";
    row.outline = line.curves.contours.empty() ? write_path_data(moved(line.rings, cut.box.least))
                                               : write_path_data(moved(line.curves, cut.box.least));
    row.outline_unit = "mm";
    // Rings of what was mended do not lie on each other and run either way.
    if (line.curves.contours.empty() && line.rings.rings.size() > 1) row.figures = "even-odd";
  }
  row.measured = std::move(measured);
  return row;
}

Result<void> DrawingImport::put(const Die& die, const Drawing& drawing, const std::string& set) {
  std::set<std::string> names;
  int windows = 0;
  for (const LineDrawn& line : die.lines) {
    const bool is_cut_edge = &line == &die.lines.front();
    LineRow row = row_of(line, die.lines.front(), drawing.unit);
    row.set = set;
    row.die = die.label;
    row.rank = die.rank;
    row.line_kind = is_cut_edge ? "cut" : "window";
    row.line = row.line_kind;
    if (line.said) {
      row.line_kind = line.said->kind;
      row.line = line.said->name;
    }
    if (row.line_kind == "window" && row.line == "window" && ++windows > 1)
      row.line = fmt::format("window {}", windows);
    for (int again = 2; !names.insert(fold(row.line)).second; ++again)
      row.line = fmt::format("{} {}", row.line_kind, again);
    const Result<PutLine> done = put_line(change_, row);
    if (!done) return failure(in_file(line.drawn->line, done.error()));
    (done->result == PutResult::added     ? counts_.added
     : done->result == PutResult::changed ? counts_.changed
                                          : counts_.same) += 1;
    if (done->measurement && done->measurement->result == MeasureResult::conflict)
      report_.notes.push_back(fmt::format(
          "{} {}, {}: {} in the drawing disagrees with what is recorded; both are kept, and the recorded "
          "figure counts until you settle it",
          set, die.label, row.line,
          write_size(row.measured->width, row.measured->height, row.measured->unit)));
  }
  return {};
}

Result<void> DrawingImport::run(const Drawing& drawing, const LinesSaid& said, std::string_view set_said) {
  counts_.file = source_.name;
  counts_.kind = "drawing";
  const std::string set = !trim(set_said).empty()  ? std::string(trim(set_said))
                          : !drawing.title.empty() ? drawing.title
                                                   : source_.stem;
  std::vector<Die> dies;
  std::vector<std::string> notes;
  for (DieDrawn& drawn : dies_of(drawing.all, said)) {
    Result<std::vector<LineDrawn>> lines = lines_of(drawn, said, notes);
    if (!lines) {
      refuse(lines.error());
    } else if (drawn.layers) {
      for (std::vector<LineDrawn>& die : by_nesting(std::move(*lines))) {
        const DrawnOutline& cut = *die.front().drawn;
        dies.push_back({{line_said(cut, {}, said) ? "" : cut.name, cut.line, {}, false},
                        std::move(die),
                        "",
                        std::nullopt});
      }
    } else if (!lines->empty()) {
      dies.push_back({std::move(drawn), std::move(*lines), "", std::nullopt});
    }
  }
  name_dies(dies);
  bool guessed_windows = false;
  for (const Die& die : dies) {
    if (auto done = put(die, drawing, set); !done) return done;
    guessed_windows |=
        std::any_of(die.lines.begin() + 1, die.lines.end(), [](const LineDrawn& line) { return !line.said; });
  }
  for (std::string& note : notes) report_.notes.push_back(fmt::format("{}, {}", source_.name, note));
  for (const std::string& left : drawing.not_used)
    report_.notes.push_back(fmt::format("{}: not used: {}", source_.name, left));
  if (guessed_windows)
    report_.notes.push_back(fmt::format(
        "{}: lines inside a cut edge that say nothing of themselves are taken for windows; --lines \"red = "
        "stitched\" says what a stroke, a class or a name is",
        source_.name));
  if (dies.empty() && counts_.refused == 0)
    return failure(bad_input(fmt::format("{} holds no closed outline", in_quotes(source_.name)),
                             "paths, rectangles, circles, ellipses or polygons"));
  report_.files.push_back(counts_);
  return {};
}

}  // namespace

bool is_drawing(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos || bytes[first] != '<') return false;
  const std::string_view head = bytes.substr(first, 4096);
  return head.starts_with("<?xml") || head.starts_with("<!--") ||
         head.find("<svg") != std::string_view::npos || head.find(":svg") != std::string_view::npos;
}

Result<void> import_drawing(Change& change, const DrawingSource& source, const ImportOptions& options,
                            ImportReport& report) {
  const auto in_source = [&](Problem problem) {
    if (problem.where.file.empty()) problem.where.file = source.name;
    return failure(std::move(problem));
  };
  const Result<LinesSaid> said = read_lines_said(options.drawing_lines);
  if (!said) return failure(said.error());
  std::optional<double> unit;
  if (!options.drawing_scale.empty()) {
    const Result<double> scale = read_scale(options.drawing_scale);
    if (!scale) return failure(scale.error());
    unit = *scale;
  }
  const Result<Drawing> drawing = read_drawing(source.bytes, unit);
  if (!drawing) return in_source(drawing.error());
  if (auto done = DrawingImport(change, source, report).run(*drawing, *said, options.drawing_set); !done)
    return in_source(done.error());
  return {};
}

}  // namespace insetbook
