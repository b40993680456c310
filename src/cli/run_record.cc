// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>
#include <iostream>
#include <iterator>

#include "answers/record.h"
#include "book/files.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

constexpr std::uint64_t largest_record = 64u << 20;

// Up to an empty line or the end of the input.
std::string typed_lines(bool title_given) {
  fmt::print(stderr, "{} An empty line ends it.\n",
             title_given ? "One line a piece." : "The title, then one line a piece.");
  std::string text;
  bool any = false;
  for (std::string line;;) {
    fmt::print(stderr, "> ");
    std::fflush(stderr);
    if (!std::getline(std::cin, line)) {
      fmt::print(stderr, "\n");
      break;
    }
    const bool blank = line.find_first_not_of(" \t\r") == std::string::npos;
    if (blank && any) break;
    any = any || !blank;
    text += line + "\n";
  }
  return text;
}

bool looks_like_a_file(const std::string& word) {
  std::error_code none;
  if (std::filesystem::is_regular_file(word, none)) return true;
  return word.find('/') != std::string::npos || word.ends_with(".txt") || word.ends_with(".md");
}

// The words that are the title, and the text itself.
Result<RecordAsked> what_is_asked(const Invocation& invocation) {
  RecordAsked asked;
  asked.strict = invocation.has("strict");
  asked.dry_run = invocation.has("dry-run");
  std::vector<std::string> words = invocation.words;
  const bool dash = !words.empty() && words.back() == "-";
  const bool file = !dash && !words.empty() && looks_like_a_file(words.back());
  if (dash || file) {
    if (file) asked.file = words.back();
    words.pop_back();
  }
  asked.title = fmt::format("{}", fmt::join(words, " "));
  if (file) {
    Result<std::string> bytes = read_file(asked.file, largest_record);
    if (!bytes) return failure(bytes.error());
    asked.text = std::move(*bytes);
  } else if (!dash && isatty(STDIN_FILENO) != 0) {
    asked.text = typed_lines(!asked.title.empty());
  } else {
    asked.text.assign(std::istreambuf_iterator<char>(std::cin), {});
  }
  return asked;
}

std::string written(const std::vector<Mention>& mentions, std::initializer_list<std::string_view> kinds) {
  std::string text;
  for (const Mention& mention : mentions)
    for (const std::string_view kind : kinds)
      if (mention.kind == kind) text += (text.empty() ? "" : "; ") + mention.written;
  return text;
}

std::string size_text(const SizeOnRecord& size) {
  if (!size.text.empty() || !size.width) return size.text;
  return write_size(*size.width, size.height.value_or(*size.width), size.unit);
}

void say(std::string_view what, const std::string& value, std::vector<std::string>& said) {
  if (!value.empty()) said.push_back(fmt::format("{}: {}", what, value));
}

void print_sample(const SampleRow& row, Output& out) {
  std::vector<std::string> said;
  say("Fold", written(row.mentions, {"fold"}), said);
  say("Occasion", written(row.mentions, {"occasion"}), said);
  say("Base", size_text(row.base), said);
  say("Scores", row.scores, said);
  say("Finished", row.finished_text, said);
  if (row.finished_text.empty() && row.closed_width && row.closed_height)
    say("Closes to", write_size(*row.closed_width, *row.closed_height, row.closed_unit), said);
  say("Made", row.made, said);
  say("Techniques", written(row.mentions, {"technique", "feature"}), said);
  say("Supplies", written(row.mentions, {"supply", "material"}), said);
  say("Words", row.words, said);
  say("Envelope", row.envelope, said);
  say("Based on", row.based_on, said);
  say("Steps", row.steps, said);
  say("Note", row.note, said);
  for (const std::string& one : said) out.line(one);
}

void print_pieces(const RecordAnswer& answer, Output& out) {
  if (answer.pieces.empty()) return;
  Table table{{"piece", "count", "role", "side", "shape", "size", "paper", "ink", "technique", "supply",
               "cut by", "goes", "in the line", "at", "glue", "note"},
              {}};
  for (const RecordedPiece& piece : answer.pieces) {
    const ElementRow& row = piece.shown.row;
    table.rows.push_back({row.name, row.count > 1 ? fmt::format("{}", row.count) : std::string(), row.role,
                          row.side, row.shape, size_text(row.size), written(row.mentions, {"paper"}),
                          written(row.mentions, {"ink"}), written(row.mentions, {"technique", "feature"}),
                          written(row.mentions, {"supply", "material"}), piece.shown.cut_by, row.goes,
                          piece.shown.lies_in, row.at, row.glue, row.note});
  }
  out.table(table);
}

std::string headline(const RecordAnswer& answer, const RecordAsked& asked) {
  const std::string pieces =
      answer.pieces.size() == 1 ? std::string("1 piece") : fmt::format("{} pieces", answer.pieces.size());
  const std::string& title = answer.sample.title;
  if (answer.same) return fmt::format("Nothing new: the book has {} just so.", title);
  if (answer.kept) return fmt::format("Recorded {}: {}.", title, pieces);
  if (asked.strict && !answer.not_read.empty())
    return fmt::format("Nothing is kept of {}: {} not read.", title,
                       answer.not_read.size() == 1 ? std::string("1 thing was")
                                                   : fmt::format("{} things were", answer.not_read.size()));
  return fmt::format("Only told, nothing kept. {}: {}.", title, pieces);
}

// Places are lines here, not rows.
void print_not_read(const Problem& problem, bool kept, Output& out) {
  Problem shown = problem;
  shown.where.file.clear();
  std::string where;
  if (problem.where.row > 0) where = fmt::format("line {}: ", problem.where.row);
  if (!problem.where.file.empty()) where = problem.where.file + ", " + where;
  out.warn((kept ? "not read, kept in the note: " : "not read: ") + where + problem_text(shown));
}

}  // namespace

int run_record(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  const Result<RecordAsked> asked = what_is_asked(invocation);
  if (!asked) return out.problem(asked.error());
  const Result<RecordAnswer> answer = record(*book, *asked);
  if (!answer) return out.problem(answer.error());
  const bool refused = asked->strict && !answer->not_read.empty();
  if (out.json()) {
    out.raw(answer_json(*answer));
  } else {
    out.headline(headline(*answer, *asked));
    print_sample(answer->sample, out);
    print_pieces(*answer, out);
    for (const std::string& note : answer->notes) out.detail(note + ".");
  }
  for (const Problem& problem : answer->not_read) print_not_read(problem, answer->kept, out);
  return refused ? 2 : 0;
}

}  // namespace insetbook::cli
