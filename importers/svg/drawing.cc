// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "importers/svg/basic_shapes.h"
#include "importers/svg/element.h"
#include "importers/svg/transform.h"
#include "importers/svg/viewport.h"
#include "importers/svg/xml.h"
#include "shape/path_data.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr std::size_t most_outlines = 20'000;
constexpr std::size_t most_elements = 200'000;  // drawn, each as often as it is used
constexpr std::size_t deepest_use = 32;
constexpr double inch_nm = 25'400'000;

Problem no_scale(std::string_view width) {
  Problem problem;
  problem.what = width.empty() ? std::string("the drawing does not say how large it is")
                               : fmt::format("the drawing's width, {}, does not say how large it is on paper",
                                             in_quotes(width));
  problem.expected =
      "a width and height in mm, cm or in, or --scale with the length of one unit, as in --scale \"1 mm\" or "
      "--scale \"1/96 in\"";
  return problem;
}

// What groups hand on to what is in them.
struct Inherited {
  Transform map;
  std::string stroke, classes;
  FillRule rule = FillRule::non_zero;
};

class DrawingReader {
 public:
  Result<Drawing> read(const XmlElement& root, std::optional<double> unit_nm);

 private:
  Result<void> check(const XmlElement& element);
  void collect_ids(const XmlElement& element);
  Result<Transform> page_map(const XmlElement& root, std::optional<double> unit_nm);
  Result<void> draw(const XmlElement& element, const Inherited& around, DrawnGroup& group, std::size_t uses);
  Result<void> draw_children(const XmlElement& element, const Inherited& inherited, const XmlElement& named,
                             DrawnGroup& group, std::size_t uses);
  Result<void> draw_use(const XmlElement& element, Inherited inherited, DrawnGroup& group, std::size_t uses);
  Result<void> draw_nested(const XmlElement& element, Inherited inherited, const XmlElement& sized,
                           DrawnGroup& group, std::size_t uses);
  Result<void> draw_shape(const XmlElement& element, const Inherited& inherited, DrawnGroup& group);
  Result<std::optional<DrawnOutline>> outline_of(const XmlElement& element, const Inherited& inherited);
  Result<double> figure(const XmlElement& element, std::string_view name, double otherwise);
  void leave(const XmlElement& element) { ++left_[element.name]; }

  std::unordered_map<std::string_view, const XmlElement*> by_id_;
  std::map<std::string, int> left_;  // elements that were not used, by name
  Drawing drawing_;
  std::size_t outlines_ = 0, elements_ = 0;
};

// ---- What is refused

bool is_link_out(std::string_view href) {
  const std::string_view link = trim(href);
  return !link.empty() && link.front() != '#' && !link.starts_with("data:");
}

Result<void> DrawingReader::check(const XmlElement& element) {
  if (element.name == "script")
    return failure(refused_at(element.line, "the drawing holds a script", "a drawing without scripts"));
  if (element.name == "a")
    return failure(refused_at(element.line, "the drawing holds a link", "a drawing without links"));
  for (const auto& [name, value] : element.attributes) {
    if (name.starts_with("on"))
      return failure(refused_at(element.line, fmt::format("the drawing holds a script, in \"{}\"", name),
                                "a drawing without scripts"));
    if (name == "href" && is_link_out(value))
      return failure(
          refused_at(element.line, fmt::format("{} leads out of the drawing", in_quotes(value)),
                     element.name == "image"
                         ? "the drawing without this picture: take it out, no outline is lost with it"
                         : "a drawing that is whole in one file"));
  }
  for (const XmlElement& child : element.children)
    if (auto checked = check(child); !checked) return checked;
  return {};
}

void DrawingReader::collect_ids(const XmlElement& element) {
  if (const std::string* id = element.attribute("id")) by_id_.emplace(*id, &element);
  for (const XmlElement& child : element.children) collect_ids(child);
}

// ---- Scale

Result<Transform> DrawingReader::page_map(const XmlElement& root, std::optional<double> unit_nm) {
  const Result<std::optional<ViewBox>> box = view_box(root);
  if (!box) return failure(box.error());
  const std::string_view width_text = trim(root.value("width")), height_text = trim(root.value("height"));
  if (fold(width_text).ends_with("in")) drawing_.unit = Unit::inch;
  if (unit_nm) return Transform{*unit_nm, 0, 0, *unit_nm, 0, 0};
  if (width_text.empty() || height_text.empty()) return failure(no_scale(width_text));
  const Result<DrawnLength> width = read_drawn_length(width_text), height = read_drawn_length(height_text);
  if (!width || !width->is_absolute || width->is_pixels || !height || !height->is_absolute ||
      height->is_pixels || width->value <= 0 || height->value <= 0)
    return failure(no_scale(width_text));
  // Without a viewBox a unit is a CSS pixel.
  const Transform map =
      *box ? into_viewport(**box, width->value, height->value, root.value("preserveAspectRatio"))
           : Transform{inch_nm / 96, 0, 0, inch_nm / 96, 0, 0};
  return map;
}

// A figure of an element, in user units.
Result<double> DrawingReader::figure(const XmlElement& element, std::string_view name, double otherwise) {
  const std::string* text = element.attribute(name);
  if (text == nullptr || trim(*text).empty() || trim(*text) == "auto") return otherwise;
  const Result<DrawnLength> length = read_drawn_length(*text);
  if (!length) {
    Problem problem = length.error();
    problem.what = fmt::format("line {}: {} of {}: {}", element.line, name, element.name, problem.what);
    return failure(std::move(problem));
  }
  return length->is_absolute ? length->value / (inch_nm / 96) : length->value;
}

// ---- Outlines

Result<std::optional<DrawnOutline>> DrawingReader::outline_of(const XmlElement& element,
                                                              const Inherited& inherited) {
  ShapePath shape;
  const auto figures = [&](std::initializer_list<std::string_view> names) -> Result<std::vector<double>> {
    std::vector<double> values;
    for (const std::string_view name : names) {
      const Result<double> value = figure(element, name, 0);
      if (!value) return failure(value.error());
      values.push_back(*value);
    }
    return values;
  };
  if (element.name == "path") {
    shape.path = element.value("d");
  } else if (element.name == "rect") {
    const auto f = figures({"x", "y", "width", "height", "rx", "ry"});
    if (!f) return failure(f.error());
    const double width = (*f)[2], height = (*f)[3];
    if (width <= 0 || height <= 0) return std::optional<DrawnOutline>();
    const bool has_rx = element.attribute("rx") != nullptr, has_ry = element.attribute("ry") != nullptr;
    const double rx = std::min(has_rx ? (*f)[4] : (*f)[5], width / 2);
    const double ry = std::min(has_ry ? (*f)[5] : (*f)[4], height / 2);
    const bool round = rx > 0 && ry > 0;
    shape = {rect_path((*f)[0], (*f)[1], width, height, rx, ry),
             round ? "rounded rectangle" : "rectangle",
             width,
             height,
             rx,
             ry};
  } else if (element.name == "circle" || element.name == "ellipse") {
    const bool circle = element.name == "circle";
    const auto f = circle ? figures({"cx", "cy", "r", "r"}) : figures({"cx", "cy", "rx", "ry"});
    if (!f) return failure(f.error());
    double rx = (*f)[2], ry = (*f)[3];
    if (!circle && element.attribute("rx") == nullptr) rx = ry;
    if (!circle && element.attribute("ry") == nullptr) ry = rx;
    if (rx <= 0 || ry <= 0) return std::optional<DrawnOutline>();
    shape = {ellipse_path((*f)[0], (*f)[1], rx, ry), "oval", 2 * rx, 2 * ry, rx, ry};
  } else {  // polygon, polyline
    const auto numbers = read_numbers(element.value("points"));
    if (!numbers || numbers->size() % 2 != 0)
      return failure(refused_at(element.line, fmt::format("the points of a {} cannot be read", element.name),
                                "pairs of figures"));
    if (numbers->size() < 6) return std::optional<DrawnOutline>();
    for (std::size_t i = 0; i < numbers->size(); i += 2)
      shape.path += fmt::format("{}{} {}", i == 0 ? "M" : " ", (*numbers)[i], (*numbers)[i + 1]);
    if (element.name == "polygon") shape.path += "z";
  }
  if (trim(shape.path).empty()) return std::optional<DrawnOutline>();

  // The path is read at the scale that the map has on the whole, which leaves a map that turns, mirrors and
  // moves, and stretches only where the drawing does: rounding to the nanometre comes in twice, and counts
  // for two nanometres at most.
  const double scale = std::sqrt(std::abs(inherited.map.determinant()));
  if (!(scale > 0) || !std::isfinite(scale))
    return failure(
        refused_at(element.line, "a transform makes the outline vanish", "figures that are not 0"));
  Result<CurvedOutline> read = read_path_data(shape.path, scale, inherited.rule);
  if (!read) {
    Problem problem = read.error();
    problem.what = fmt::format("line {}: {}", element.line, problem.what);
    return failure(std::move(problem));
  }
  const Transform rest = inherited.map * Transform{1 / scale, 0, 0, 1 / scale, 0, 0};
  DrawnOutline outline;
  outline.name = name_of(element);
  outline.classes = inherited.classes;
  outline.stroke = inherited.stroke;
  outline.line = element.line;
  outline.outline = mapped(*read, rest);
  outline.plain = plain_shape(shape, inherited.map);
  return std::optional(std::move(outline));
}

Result<void> DrawingReader::draw_shape(const XmlElement& element, const Inherited& inherited,
                                       DrawnGroup& group) {
  if (++outlines_ > most_outlines)
    return failure(refused_at(element.line, "the drawing has too many outlines",
                              fmt::format("at most {}", most_outlines)));
  Result<std::optional<DrawnOutline>> outline = outline_of(element, inherited);
  if (!outline) return failure(outline.error());
  if (*outline)
    group.outlines.push_back(std::move(**outline));
  else
    leave(element);
  return {};
}

// ---- The tree

Result<void> DrawingReader::draw_children(const XmlElement& element, const Inherited& inherited,
                                          const XmlElement& named, DrawnGroup& group, std::size_t uses) {
  DrawnGroup inner;
  inner.name = name_of(named);
  if (inner.name.empty()) inner.name = name_of(element);
  inner.line = named.line;
  for (const XmlElement& child : element.children)
    if (auto drawn = draw(child, inherited, inner, uses); !drawn) return drawn;
  if (!inner.groups.empty() || !inner.outlines.empty()) group.groups.push_back(std::move(inner));
  return {};
}

Result<void> DrawingReader::draw_nested(const XmlElement& element, Inherited inherited,
                                        const XmlElement& sized, DrawnGroup& group, std::size_t uses) {
  const Result<std::optional<ViewBox>> box = view_box(element);
  if (!box) return failure(box.error());
  const Result<double> width = figure(sized, "width", *box ? (*box)->width : 0);
  const Result<double> height = figure(sized, "height", *box ? (*box)->height : 0);
  if (!width) return failure(width.error());
  if (!height) return failure(height.error());
  if (*box && *width > 0 && *height > 0)
    inherited.map =
        inherited.map * into_viewport(**box, *width, *height, element.value("preserveAspectRatio"));
  return draw_children(element, inherited, sized, group, uses);
}

Result<void> DrawingReader::draw_use(const XmlElement& element, Inherited inherited, DrawnGroup& group,
                                     std::size_t uses) {
  const std::string_view href = trim(element.value("href"));
  const auto meant = href.empty() ? by_id_.end() : by_id_.find(href.substr(1));
  if (meant == by_id_.end())
    return failure(refused_at(element.line, fmt::format("use of {}, which is not there", in_quotes(href)),
                              "the id of an element of this drawing"));
  if (uses >= deepest_use)
    return failure(refused_at(element.line,
                              fmt::format("use of {} goes round in a circle or too deep", in_quotes(href)),
                              fmt::format("at most {} in one another", deepest_use)));
  const Result<double> x = figure(element, "x", 0), y = figure(element, "y", 0);
  if (!x) return failure(x.error());
  if (!y) return failure(y.error());
  inherited.map = inherited.map * Transform{1, 0, 0, 1, *x, *y};
  const XmlElement& used = *meant->second;
  if (used.name == "symbol") return draw_nested(used, inherited, element, group, uses + 1);
  DrawnGroup inner;
  inner.name = name_of(element);
  inner.line = element.line;
  if (auto drawn = draw(used, inherited, inner, uses + 1); !drawn) return drawn;
  // What is used is one thing: a path stays a path, a group a group, under the name it is given here.
  for (DrawnOutline& outline : inner.outlines) {
    if (!inner.name.empty()) outline.name = inner.name;
    group.outlines.push_back(std::move(outline));
  }
  for (DrawnGroup& each : inner.groups) {
    if (!inner.name.empty()) each.name = inner.name;
    group.groups.push_back(std::move(each));
  }
  return {};
}

Result<void> DrawingReader::draw(const XmlElement& element, const Inherited& around, DrawnGroup& group,
                                 std::size_t uses) {
  static constexpr std::string_view silent[] = {"title", "desc", "metadata", "defs", "symbol", "namedview"};
  static constexpr std::string_view shapes[] = {"path", "rect", "circle", "ellipse", "polygon", "polyline"};
  const auto is_one_of = [&](const auto& names) {
    return std::find(std::begin(names), std::end(names), element.name) != std::end(names);
  };
  if (++elements_ > most_elements)
    return failure(refused_at(element.line, "the drawing has too many elements",
                              fmt::format("at most {}, each as often as it is used", most_elements)));
  if (is_one_of(silent)) return {};
  if (property(element, "display") == "none" || property(element, "visibility") == "hidden") {
    leave(element);
    return {};
  }
  Inherited inherited = around;
  const Result<Transform> map = read_transform(element.value("transform"));
  if (!map) return failure(refused_at(element.line, map.error().what, map.error().expected));
  inherited.map = around.map * *map;
  if (const auto stroke = property(element, "stroke"); !stroke.empty()) inherited.stroke = fold(stroke);
  if (const auto rule = property(element, "fill-rule"); !rule.empty())
    inherited.rule = rule == "evenodd" ? FillRule::even_odd : FillRule::non_zero;
  if (const auto classes = trim(element.value("class")); !classes.empty())
    inherited.classes += (inherited.classes.empty() ? "" : " ") + std::string(classes);
  if (is_one_of(shapes)) return draw_shape(element, inherited, group);
  if (element.name == "g" || element.name == "switch")
    return draw_children(element, inherited, element, group, uses);
  if (element.name == "use") return draw_use(element, std::move(inherited), group, uses);
  if (element.name == "svg") {
    const Result<double> x = figure(element, "x", 0), y = figure(element, "y", 0);
    if (!x) return failure(x.error());
    if (!y) return failure(y.error());
    inherited.map = inherited.map * Transform{1, 0, 0, 1, *x, *y};
    return draw_nested(element, std::move(inherited), element, group, uses);
  }
  leave(element);
  return {};
}

Result<Drawing> DrawingReader::read(const XmlElement& root, std::optional<double> unit_nm) {
  if (root.name != "svg") {
    Problem problem;
    problem.what = fmt::format("the file holds {}, not a drawing", in_quotes(root.name));
    problem.expected = "a drawing in SVG";
    return failure(std::move(problem));
  }
  if (auto checked = check(root); !checked) return failure(checked.error());
  collect_ids(root);
  Inherited page;
  const Result<Transform> map = page_map(root, unit_nm);
  if (!map) return failure(map.error());
  page.map = *map;
  page.stroke = fold(property(root, "stroke"));
  if (property(root, "fill-rule") == "evenodd") page.rule = FillRule::even_odd;
  for (const XmlElement& child : root.children) {
    if (child.name == "title" && drawing_.title.empty()) drawing_.title = std::string(trim(child.text));
    if (auto drawn = draw(child, page, drawing_.all, 0); !drawn) return failure(drawn.error());
  }
  for (const auto& [name, count] : left_) drawing_.not_used.push_back(fmt::format("{} of {}", count, name));
  return std::move(drawing_);
}

}  // namespace

Result<Drawing> read_drawing(std::string_view bytes, std::optional<double> unit_nm) {
  const Result<XmlElement> root = read_xml(bytes);
  if (!root) return failure(root.error());
  return DrawingReader().read(*root, unit_nm);
}

}  // namespace insetbook
