// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line.h"

namespace insetbook {
namespace {

std::string listed(const std::vector<std::string>& list) {
  std::string out;
  for (const std::string& each : list) out += (out.empty() ? "" : "+") + each;
  return out;
}

class Printer {
 public:
  void add(std::string_view name, std::string_view value) {
    if (value.empty()) return;
    if (!out_.empty()) out_ += ", ";
    out_ += std::string(name) + "=" + std::string(value);
  }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

void print_piece(const PieceSaid& piece, Printer& out) {
  if (piece.count) out.add("count", std::to_string(*piece.count));
  out.add("role", piece.role);
  out.add("shape", piece.shape);
  out.add("size", piece.size_text);
  out.add("paper", listed(piece.paper));
  out.add("ink", listed(piece.ink));
  for (const TermSaid& term : piece.terms) out.add(term.kind, term.term);
  out.add("supply", listed(piece.supplies));
  const auto die = [&](std::string_view name, const std::optional<DieSaidOfPiece>& said) {
    if (said) out.add(name, said->said + (said->line.empty() ? "" : " " + said->line));
  };
  die("from", piece.cut_by);
  die("in", piece.lies_in);
  out.add("side", piece.side);
}

}  // namespace

std::string print(const LineSaid& line) {
  Printer out;
  out.add("name", line.name);
  print_piece(line.piece, out);
  if (line.goes) {
    std::string goes = std::string(goes_word(line.goes->how)) + " " + line.goes->target;
    if (!line.goes->line.empty()) goes += " (" + line.goes->line + ")";
    out.add("goes", goes);
  }
  out.add("at", line.at);
  out.add("glue", line.glue);
  out.add("scores", line.scores);
  for (const TermSaid& term : line.of_sample) out.add(term.kind, term.term);
  out.add("closed", line.closed_text);
  out.add("envelope", line.envelope);
  out.add("made", line.made);
  out.add("based", line.based_on);
  for (const std::string& words : line.words) out.add("words", words);
  for (const std::string& note : line.notes) out.add("note", note);
  for (const NotRead& each : line.not_read) out.add("not read", each.what);
  return out.take();
}

}  // namespace insetbook
