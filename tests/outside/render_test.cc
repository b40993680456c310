// SPDX-License-Identifier: GPL-3.0-or-later
//
// Our outlines against pictures that librsvg draws of the same path data: a pixel whose middle is farther
// than a pixel's diagonal from the outline's edge is black where the outline goes round it and white where it
// does not. Source: librsvg (general-purpose SVG renderer) and the paths of shared/outside, and shapes of the
// trade as this program writes them.
#include <gtest/gtest.h>
#include <librsvg/rsvg.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>
#include <locale>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "measure/read.h"
#include "outside/outside_data.h"
#include "shape/curves.h"
#include "shape/path_data.h"
#include "shape/shape_outline.h"
#include "shape/write_path_data.h"

namespace insetbook {
namespace {

constexpr int across = 120, edge = 4;  // pixels; the outline's box fills all but the edge

struct Picture {
  std::vector<bool> black;  // row by row
  bool at(int x, int y) const { return black[static_cast<std::size_t>(y * across + x)]; }
};

// Where a pixel's middle lies, in path units, with the box in the middle of the picture.
struct View {
  double left, top, pixel;
  View(const Box& box, double unit_nm) {
    const double width = static_cast<double>(box.width()) / unit_nm,
                 height = static_cast<double>(box.height()) / unit_nm;
    pixel = std::max(width, height) / (across - 2 * edge);
    left = static_cast<double>(box.least.x) / unit_nm - (across * pixel - width) / 2;
    top = static_cast<double>(box.least.y) / unit_nm - (across * pixel - height) / 2;
  }
  double x(int column) const { return left + (column + 0.5) * pixel; }
  double y(int row) const { return top + (row + 0.5) * pixel; }
};

// In the C locale: SVG has a full stop as its decimal mark.
std::string figure(double value) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out.precision(12);
  out << value;
  return out.str();
}

std::optional<Picture> rendered(const std::string& path, FillRule rule, const View& view) {
  const std::string side = figure(across * view.pixel);
  const std::string svg =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + std::to_string(across) + "\" height=\"" +
      std::to_string(across) + "\" viewBox=\"" + figure(view.left) + " " + figure(view.top) + " " + side +
      " " + side + "\"><path fill=\"#000\" fill-rule=\"" +
      (rule == FillRule::even_odd ? "evenodd" : "nonzero") + "\" d=\"" + path + "\"/></svg>";
  GError* error = nullptr;
  RsvgHandle* handle =
      rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(svg.data()), svg.size(), &error);
  if (handle == nullptr) {
    ADD_FAILURE() << path << ": " << error->message;
    g_error_free(error);
    return std::nullopt;
  }
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, across, across);
  cairo_t* drawing = cairo_create(surface);
  const RsvgRectangle whole{0, 0, across, across};
  const bool drawn = rsvg_handle_render_document(handle, drawing, &whole, &error) != 0;
  EXPECT_TRUE(drawn) << path << ": " << (error != nullptr ? error->message : "");
  if (error != nullptr) g_error_free(error);
  cairo_surface_flush(surface);
  Picture picture;
  const unsigned char* pixels = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < across; ++y) {
    for (int x = 0; x < across; ++x) {
      std::uint32_t argb = 0;
      std::memcpy(&argb, pixels + y * stride + 4 * x, 4);
      picture.black.push_back((argb >> 24) >= 128);
    }
  }
  cairo_destroy(drawing);
  cairo_surface_destroy(surface);
  g_object_unref(handle);
  return picture;
}

double distance_to(const Outline& outline, double x, double y) {
  double least = INFINITY;
  for (const Ring& ring : outline.rings) {
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
      const Point a = ring.points[i], b = ring.points[(i + 1) % ring.points.size()];
      const double ax = static_cast<double>(a.x), ay = static_cast<double>(a.y);
      const double dx = static_cast<double>(b.x) - ax, dy = static_cast<double>(b.y) - ay;
      const double part = std::clamp(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
      least = std::min(least, std::hypot(ax + part * dx - x, ay + part * dy - y));
    }
  }
  return least;
}

struct Compared {
  int paths = 0, black = 0, white = 0, near_the_edge = 0;
};

// Pixels that must be as we say.
void compare(const std::string& path, FillRule rule, double unit_nm, Compared& compared) {
  const auto curves = read_path_data(path, unit_nm, rule);
  if (!curves) return;
  const Box box = box_of(*curves);
  const std::int64_t error = std::max<std::int64_t>(1000, std::max(box.width(), box.height()) / 20'000);
  const auto flat = flatten(*curves, error);
  if (!flat) return;  // a line, or drawn open: no region
  const View view(box_of(flat->outline), unit_nm);
  const auto picture = rendered(path, rule, view);
  if (!picture) return;
  ++compared.paths;
  int wrong = 0;
  for (int row = 0; row < across; ++row) {
    for (int column = 0; column < across; ++column) {
      const double x = view.x(column) * unit_nm, y = view.y(row) * unit_nm;
      if (distance_to(flat->outline, x, y) <
          view.pixel * unit_nm * std::sqrt(0.5) + 2 * static_cast<double>(error)) {
        ++compared.near_the_edge;
        continue;
      }
      const bool inside = side_of(flat->outline, {std::llround(x), std::llround(y)}) == PointSide::inside;
      ++(inside ? compared.black : compared.white);
      if (picture->at(column, row) != inside && ++wrong == 1)
        ADD_FAILURE() << path << " at " << view.x(column) << ", " << view.y(row) << ": ours is "
                      << (inside ? "inside" : "outside");
    }
  }
  EXPECT_EQ(wrong, 0) << path;
}

void compare_both_rules(const std::string& path, double unit_nm, Compared& compared) {
  compare(path, FillRule::even_odd, unit_nm, compared);
  compare(path, FillRule::non_zero, unit_nm, compared);
}

TEST(RenderOutside, PathsThatCrossAndCurveAreDrawnAlike) {
  const char* const paths[] = {
      "M0 0H60V40H0Z M10 10H50V30H10Z",                                    // a frame
      "M0 0H60V40H0Z M10 10V30H50V10Z",                                    // its window the other way round
      "M50 0L79 90L2 35H98L21 90Z",                                        // a five-pointed star in one line
      "M0 0L40 40V0L0 40Z",                                                // a bow tie
      "M10 80C40 10 65 10 95 80S150 150 180 80Z",                          // crosses itself between curves
      "M10 50Q50 -40 90 50T170 50Z",                                       // mirrored quadratic curves
      "M0 50A50 50 0 0 1 100 50A50 30 20 1 1 0 50Z",                       // arcs, one turned
      "M20 20a20 10 30 1 0 30 5a20 10 30 1 0-30-5z M25 20h20v10h-20z",     // small arcs, flags apart
      "M0 0c0 60 90-30 90 30s-60 90-90 30Z",                               //
      "M0 30a30 30 0 0 1 60 0a30 30 0 0 1 60 0q0 40-60 80q-60-40-60-80z",  // a heart
      "M5 0h90a5 5 0 0 1 5 5v50a5 5 0 0 1-5 5H5a5 5 0 0 1-5-5V5a5 5 0 0 1 5-5z",
      "M0 0L10 0L20 20L30 0L40 0L25 40L40 80H30L20 50L10 80H0L15 40Z",
  };
  Compared compared;
  for (const char* path : paths) compare_both_rules(path, 1e6, compared);
  EXPECT_EQ(compared.paths, 2 * static_cast<int>(std::size(paths)));
  EXPECT_GT(compared.black, 25'000);
  EXPECT_GT(compared.white, 25'000);
}

TEST(RenderOutside, PublishedPathsAreDrawnAlike) {
  const auto file = outside_data("svg_path_cases.json");
  if (!file) GTEST_SKIP() << "no published path cases here";
  std::ifstream in(*file);
  const nlohmann::json all = nlohmann::json::parse(in);
  Compared compared;
  for (const char* kind : {"tight_bbox", "length", "arc_points", "bezier_points"}) {
    for (const nlohmann::json& one : all.at(kind))
      compare_both_rules(one.at("d").get<std::string>() + "Z", 1e5, compared);
  }
  EXPECT_GT(compared.paths, 30);
  EXPECT_GT(compared.black, 25'000);
}

// What the figures of a shape are drawn as, written as path data.
TEST(RenderOutside, ShapesOfTheTradeAreDrawnAlike) {
  const struct {
    const char *word, *size, *figures;
  } shapes[] = {
      {"heart", "60 x 55 mm", ""},
      {"arch", "50 x 80 mm", ""},
      {"arch", "50 x 80 mm", "rise 15 mm"},
      {"tag", "50 x 90 mm", "corner 10 mm, hole 6 mm, hole down 6 mm"},
      {"banner", "30 x 90 mm", "notch 12 mm at the bottom"},
      {"scalloped square", "29 mm", "scallops 5 mm, depth 2 mm"},
      {"oval", "50 x 80 mm", ""},
      {"hexagon", "60 x 52 mm", ""},
      {"rounded rectangle", "60 x 40 mm", "radius 8 mm"},
  };
  Compared compared;
  for (const auto& one : shapes) {
    const Result<Size> size = read_size(one.size, Unit::mm);
    ASSERT_TRUE(size) << one.size;
    const Result<Shape> shape = make_shape(one.word, *size, one.figures, Unit::mm);
    ASSERT_TRUE(shape) << one.word << ": " << shape.error().what;
    const Result<CurvedOutline> curves = outline_of(*shape);
    ASSERT_TRUE(curves) << one.word << ": " << curves.error().what;
    compare(write_path_data(*curves), curves->rule, 1e6, compared);
  }
  EXPECT_EQ(compared.paths, static_cast<int>(std::size(shapes)));
}

}  // namespace
}  // namespace insetbook
