// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "answers/show.h"
#include "answers/sizes_shown.h"
#include "cli/json_answers.h"
#include "cli/print_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

constexpr std::size_t most_titles = 20;

void field(Output& out, std::string_view name, const std::string& value) {
  if (!value.empty()) out.line(fmt::format("{}: {}", name, value));
}

// As it was written: which figure came first is the person's own.
std::string size_text(const SizeOnRecord& size) {
  if (!size.width || !size.text.empty()) return size.text;
  if (!size.height || *size.height == *size.width) return write(*size.width, size.unit);
  return write_size(*size.width, *size.height, size.unit);
}

std::string titles_text(const std::vector<std::string>& titles) {
  std::string text;
  for (std::size_t i = 0; i < titles.size() && i < most_titles; ++i) {
    if (i > 0) text += "; ";
    text += titles[i];
  }
  if (titles.size() > most_titles) text += fmt::format("; and {} more", titles.size() - most_titles);
  return text;
}

std::string written(const std::vector<Mention>& mentions, std::string_view kind) {
  std::string text;
  for (const Mention& mention : mentions) {
    if (mention.kind != kind) continue;
    if (!text.empty()) text += "; ";
    text += mention.written;
  }
  return text;
}

std::string order_text(const ShownDie& die) {
  return die.rank > 0 ? fmt::format("{}", die.rank) : std::string();
}

// Each panel and result once, with how often.
std::string tried_text(const std::vector<TriedPanel>& panels) {
  std::vector<std::pair<std::string, int>> counts;
  for (const TriedPanel& panel : panels) {
    const std::string text =
        fmt::format("{} {} {}", panel.shape,
                    shaped_size_text(panel.shape, panel.width, panel.height, panel.unit), panel.result);
    const auto same = std::ranges::find(counts, text, &std::pair<std::string, int>::first);
    if (same == counts.end())
      counts.emplace_back(text, 1);
    else
      ++same->second;
  }
  std::string all;
  for (const auto& [text, count] : counts)
    all += fmt::format("{}{}{}", all.empty() ? "" : "; ", text,
                       count > 1 ? fmt::format(" ({} times)", count) : "");
  return all;
}

void line_rows(const ShownDie& die, Table& table) {
  for (const ShownLine& line : die.lines) {
    const OpeningRecord& opening = line.opening;
    std::string size =
        opening.measured ? recorded_size_text(opening.shape_word, opening.width, opening.height, opening.unit)
                         : "not measured yet";
    if (opening.measured && opening.give_or_take > Length())
      size += fmt::format(" ± {}", give_text(opening.give_or_take, opening.unit));
    std::string tried = tried_text(line.tried);
    table.rows.push_back(
        {order_text(die), die.label, opening.line, opening.shape_word, size, opening.figures, tried});
  }
}

void print(const ShownSet& set, Output& out) {
  field(out, "Maker", set.maker);
  field(out, "Code", set.code);
  field(out, "Kept in", set.stored_in);
  field(out, "Status", set.status);
  field(out, "Note", set.note);
  Table table{{"order", "die", "line", "shape", "size", "figures", "tried"}, {}};
  for (const ShownDie& die : set.dies) line_rows(die, table);
  out.table(table);
  out.detail(set.samples == 1 ? std::string("1 sample uses this set.")
                              : fmt::format("{} samples use this set.", set.samples));
}

void print(const ShownDie& die, Output& out) {
  Table table{{"order", "die", "line", "shape", "size", "figures", "tried"}, {}};
  line_rows(die, table);
  out.table(table);
  for (const ShownLine& line : die.lines)
    for (const Measured& measured : line.measurements)
      out.detail(fmt::format(
          "{}: {} by {}{}, {}", line.opening.line,
          shaped_size_text(line.opening.shape_word, measured.width, measured.height, measured.unit),
          measured.method, measured.date.empty() ? "" : " on " + measured.date, measured.standing));
  field(out, "Samples", titles_text(die.samples));
}

void print(const ShownSupply& supply, Output& out) {
  const SupplyRow& row = supply.row;
  field(out, "Kind", row.kind);
  field(out, "Set", row.set_name);
  field(out, "Words", row.words);
  field(out, "Colour", row.colour);
  field(out, "Size", size_text(row.size));
  field(out, "Weight", row.weight_text);
  if (row.thickness) field(out, "Thickness", write(*row.thickness, Unit::mm));
  field(out, "From", row.from_date);
  field(out, "Until", row.until_date);
  field(out, "Status", row.status);
  field(out, "Have", row.have);
  field(out, "Cut by", row.cut_by);
  field(out, "In its place", row.instead);
  field(out, "Kept in", row.stored_in);
  field(out, "Price", row.price);
  field(out, "Note", row.note);
  field(out, "Samples", titles_text(supply.samples));
}

void print(const ShownColour& colour, Output& out) {
  if (colour.srgb) field(out, "Value", fmt::format("#{:06x}", *colour.srgb));
  field(out, "Supplies", fmt::format("{}", fmt::join(colour.supplies, "; ")));
  field(out, "Note", colour.note);
  field(out, "Samples", titles_text(colour.samples));
}

Table pieces_table(const std::vector<ShownElement>& elements) {
  Table table{{"piece", "role", "side", "shape", "size", "paper", "ink", "goes", "at", "glue", "cut by",
               "technique", "supplies", "count", "note"},
              {}};
  for (const ShownElement& element : elements)
    table.rows.push_back(
        {element.row.name, element.row.role, element.row.side, element.row.shape, size_text(element.row.size),
         written(element.row.mentions, "paper"), written(element.row.mentions, "ink"), element.row.goes,
         element.row.at, element.row.glue, element.cut_by, written(element.row.mentions, "technique"),
         written(element.row.mentions, "supply"),
         element.row.count > 1 ? fmt::format("{}", element.row.count) : "", element.row.note});
  return table;
}

// "circle 2-3/8 in", or its paper and ink.
std::string asked_of(const ShownElement& element, bool colour) {
  const std::string paper = written(element.row.mentions, "paper");
  const std::string ink = written(element.row.mentions, "ink");
  if (colour) {
    const std::string both = paper.empty() || ink.empty() ? paper : paper + ", ";
    return paper.empty() && ink.empty() ? "no colour is recorded" : both + (ink.empty() ? "" : ink + " ink");
  }
  const std::string size = size_text(element.row.size);
  if (size.empty()) return "no size is recorded";
  return element.row.shape.empty() ? size : element.row.shape + " " + size;
}

void print(const ShownSample& sample, Output& out) {
  const SampleRow& row = sample.row;
  field(out, "Made", row.made);
  field(out, "Occasion", written(row.mentions, "occasion"));
  field(out, "Fold", written(row.mentions, "fold"));
  field(out, "Features", written(row.mentions, "feature"));
  field(out, "Base", size_text(row.base));
  field(out, "Scores", row.scores);
  field(out, "Finished", row.finished_text);
  if (row.closed_width && row.closed_height)
    field(out, "Closed", write_size(*row.closed_width, *row.closed_height, row.closed_unit));
  field(out, "Techniques", written(row.mentions, "technique"));
  field(out, "Supplies", written(row.mentions, "supply"));
  field(out, "Words on it", row.words);
  field(out, "Envelope", row.envelope);
  field(out, "Based on", row.based_on);
  if (!sample.elements.empty()) out.table(pieces_table(sample.elements));
  field(out, "Steps", row.steps);
  field(out, "Note", row.note);
  for (const PhotoOnRecord& photo : row.photos) out.detail(fmt::format("Photograph: {}", photo.file_name));
}

}  // namespace

void print_shown(const ShowAnswer& answer, Output& out) {
  out.headline(answer.name);
  if (!answer.instead_of.empty()) out.detail(fmt::format("The nearest to \"{}\".", answer.instead_of));
  std::visit([&](const auto& shown) { print(shown, out); }, answer.shown);
}

void print_pieces(const PiecesAnswer& answer, Output& out) {
  if (answer.pieces.empty()) {
    out.headline(fmt::format("{} has no pieces on record.", answer.sample));
    return;
  }
  if (answer.all) {
    out.headline(fmt::format("{} has no piece called \"{}\". Its pieces:", answer.sample, answer.piece));
  } else {
    const ShownElement& first = answer.pieces.front();
    out.headline(fmt::format("{}: {}{}.", asked_of(first, answer.colour), first.row.name,
                             answer.pieces.size() > 1
                                 ? fmt::format(", the first of {} on {}", answer.pieces.size(), answer.sample)
                                 : " on " + answer.sample));
  }
  out.table(pieces_table(answer.pieces));
}

int run_show(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<ShowAnswer> answer = show(*book, invocation.text());
  if (!answer) return out.problem(answer.error());
  if (out.json()) {
    out.raw(answer_json(*answer));
    return 0;
  }
  print_shown(*answer, out);
  return 0;
}

}  // namespace insetbook::cli
