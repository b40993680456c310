// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/layers.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/opening_said.h"
#include "book/settings.h"
#include "card/papers.h"
#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

constexpr int most_layers = 50;

bool nearly(Length a, Length b, Unit unit) {
  const Length most = unit == Unit::mm ? Length::nm(800'000) : Length::inch_fraction(1, 32);
  return a - b <= most && b - a <= most;
}

class Asked {
 public:
  Asked(const Book& book, const LayersQuestion& question)
      : book_(book), question_(question), settings_(settings(book)) {}

  Result<LayersAnswer> run() {
    if (question_.count < 1 || question_.count > most_layers) {
      return failure(Problem{.what = fmt::format("{} layers cannot be", question_.count),
                             .where = {},
                             .expected = fmt::format("1 to {} layers", most_layers),
                             .candidates = {}});
    }
    if (auto given = read_given(); !given) return failure(given.error());
    const Result<std::vector<Length>> borders = read_borders();
    if (!borders) return failure(borders.error());
    const auto sizes = question_.outwards
                           ? layers_outwards(width_, height_, *borders, question_.count)
                           : layers_inwards(width_, height_, *borders, question_.count, answer_.unit);
    if (!sizes) return failure(sizes.error());
    name_layers(*sizes);
    return std::move(answer_);
  }

 private:
  Result<void> read_given() {
    const Result<Size> size = read_size(question_.from, settings_.unit);
    if (size) {
      width_ = size->width;
      height_ = size->height;
      answer_.unit = size->unit;
      answer_.shape = size->shape;
      return {};
    }
    if (const auto paper = read_paper(question_.from, settings_.unit)) {
      width_ = paper->width;
      height_ = paper->height;
      answer_.unit = paper->unit;
      return {};
    }
    const Result<OpeningRecord> opening = opening_said(book_, question_.from);
    // Figures at its beginning: a size that cannot be, no die of that name.
    const bool begins_with_figure =
        !question_.from.empty() && question_.from[0] >= '0' && question_.from[0] <= '9';
    if (!opening && begins_with_figure) return failure(size.error());
    if (!opening) return failure(opening.error());
    if (!opening->measured) {
      return failure(Problem{.kind = ProblemKind::bad_input,
                             .what = describe(*opening) + " is not measured yet",
                             .where = {},
                             .expected = "measure it, or say the size",
                             .candidates = {}});
    }
    answer_.opening = describe(*opening);
    answer_.shape = opening->shape_word;
    answer_.unit = opening->unit;
    width_ = opening->width;
    height_ = opening->height;
    return {};
  }

  Result<std::vector<Length>> read_borders() {
    std::vector<Length> borders;
    for (const std::string& text : question_.borders) {
      const auto read = read_length(text, answer_.unit);
      if (!read) return failure(read.error());
      borders.push_back(read->length);
    }
    if (borders.empty()) {
      borders.push_back(settings_.border);
      answer_.border_is_setting = true;
    }
    return borders;
  }

  void name_layers(const std::vector<LayerSize>& sizes) {
    const std::vector<OpeningRecord> lines = measured_openings(book_, std::nullopt);
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      LayerShown shown;
      shown.size = sizes[i];
      const bool given = question_.outwards ? i + 1 == sizes.size() : i == 0;
      const std::size_t number = question_.outwards ? sizes.size() - 1 - i : i;
      shown.role =
          given ? (answer_.opening.empty() ? "given" : "the opening") : fmt::format("layer {}", number);
      for (const OpeningRecord& line : lines)
        if (cuts(line, sizes[i])) shown.dies.push_back(line.set + " " + line.die);
      answer_.layers.push_back(std::move(shown));
    }
  }

  bool cuts(const OpeningRecord& line, const LayerSize& size) const {
    if (line.line_kind != "cut") return false;
    const bool square = size.width == size.height;
    const bool same_shape = answer_.shape.empty()
                                ? line.shape_word == "rectangle" || (square && line.shape_word == "square")
                                : line.shape_word == answer_.shape;
    if (!same_shape) return false;
    const auto is = [&](Length width, Length height) {
      return nearly(line.width, width, answer_.unit) && nearly(line.height, height, answer_.unit);
    };
    return is(size.width, size.height) || is(size.height, size.width);
  }

  const Book& book_;
  const LayersQuestion& question_;
  Settings settings_;
  LayersAnswer answer_;
  Length width_, height_;
};

}  // namespace

Result<LayersAnswer> layer_sizes(const Book& book, const LayersQuestion& question) {
  return Asked(book, question).run();
}

}  // namespace insetbook
