// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record_targets.h"

#include <algorithm>
#include <unordered_map>

#include "language/read_record_lines.h"
#include "language/single_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

class TargetFinder {
 public:
  TargetFinder(RecordSaid& record, const ReadingContext& context) : record_(record), context_(context) {}

  void run() {
    index_pieces();
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      PieceOfRecord& piece = record_.pieces[i];
      if (piece.said.goes && !piece.said.goes->place_of_card) find_target(i);
      if (!piece.said.goes && piece.said.piece.lies_in) find_frame(i);
    }
    break_circles();
  }

 private:
  void add_words(std::string_view text, std::vector<std::string>& keys) const {
    for (std::string& word : single_words(fold(text))) keys.push_back(std::move(word));
  }
  void add_terms(VocabularyName in, const std::string& term, bool broader,
                 std::vector<std::string>& keys) const {
    std::string id = term;
    for (int turn = 0; turn < 8 && !id.empty(); ++turn) {
      keys.push_back(std::string(vocabulary_word(in)) + ":" + id);
      const auto found = broader ? context_.vocabulary.term(in, id) : std::nullopt;
      id = found ? found->broader : std::string();
    }
  }

  void index_pieces() {
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      const PieceOfRecord& piece = record_.pieces[i];
      std::vector<std::string> keys;
      add_words(piece.name, keys);
      add_words(piece.said.piece.head, keys);
      for (const std::string& colour : piece.said.piece.paper) add_words(colour, keys);
      for (const std::string& supply : piece.said.piece.supplies) add_words(supply, keys);
      for (const TermSaid& term : piece.said.piece.terms) {
        add_words(term.written, keys);
        keys.push_back("term:" + term.term);
      }
      add_terms(VocabularyName::role, piece.said.piece.role, true, keys);
      add_terms(VocabularyName::shape, piece.said.piece.shape, true, keys);
      std::ranges::sort(keys);
      keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
      for (std::string& key : keys) with_key_[std::move(key)].push_back(i);
      by_name_.emplace(fold(piece.name), i);
    }
  }

  // The pieces with each of some keys; empty where one of them no piece has.
  using Lists = std::vector<const std::vector<std::size_t>*>;
  Lists lists_of(const std::vector<std::string>& keys) const {
    Lists lists;
    for (const std::string& key : keys) {
      const auto at = with_key_.find(key);
      if (at == with_key_.end()) return {};
      lists.push_back(&at->second);
    }
    std::ranges::sort(lists, {}, [](const auto* list) { return list->size(); });
    return lists;
  }

  bool looks_so(const PieceSaid& wanted, std::size_t place) const {
    const PieceSaid& other = record_.pieces[place].said.piece;
    const bool size = !wanted.size || (other.size && other.size->width == wanted.size->width &&
                                       other.size->height == wanted.size->height);
    const bool die = !wanted.cut_by || (other.cut_by && other.cut_by->dies == wanted.cut_by->dies);
    return size && die;
  }

  // The nearest piece before `place` that is in all lists, else the first one behind it.
  struct Nearest {
    std::optional<std::size_t> before, behind;
    bool several = false;
  };
  Nearest nearest(const Lists& lists, const PieceSaid& wanted, std::size_t place) const {
    constexpr std::size_t looked_further = 64;
    Nearest found;
    if (lists.empty()) return found;
    const std::vector<std::size_t>& shortest = *lists.front();
    const auto meets = [&](std::size_t i) {
      return i != place && looks_so(wanted, i) && std::ranges::all_of(lists, [&](const auto* list) {
               return std::ranges::binary_search(*list, i);
             });
    };
    const auto middle = std::ranges::lower_bound(shortest, place);
    std::size_t further = 0;
    for (auto at = middle; at != shortest.begin() && further < looked_further;) {
      --at;
      if (found.before) ++further;
      if (!meets(*at)) continue;
      if (found.before) {
        found.several = true;
        break;
      }
      found.before = *at;
    }
    for (auto at = middle; at != shortest.end() && further < looked_further; ++at) {
      if (found.before || found.behind) ++further;
      if (!meets(*at)) continue;
      found.several = found.several || found.before || found.behind;
      if (!found.behind) found.behind = *at;
      if (found.several) break;
    }
    return found;
  }

  // By the words it is called with, and by what those words mean.
  Nearest nearest(const GoesSaid& goes, std::size_t place) const {
    std::vector<std::string> by_words, by_terms;
    add_words(goes.target, by_words);
    const PieceSaid& piece = goes.piece;
    for (const std::string& colour : piece.paper) add_words(colour, by_terms);
    for (const std::string& supply : piece.supplies) add_words(supply, by_terms);
    for (const TermSaid& term : piece.terms)
      if (term.kind != "material" || piece.role.empty()) by_terms.push_back("term:" + term.term);
    if (!piece.role.empty()) add_terms(VocabularyName::role, piece.role, false, by_terms);
    if (!piece.shape.empty()) add_terms(VocabularyName::shape, piece.shape, false, by_terms);
    Nearest found = nearest(lists_of(by_words), piece, place);
    if (piece.role.empty() && piece.shape.empty()) return found;
    const Nearest meant = nearest(lists_of(by_terms), piece, place);
    const auto other = [](const auto& a, const auto& b) { return a && b && *a != *b; };
    found.several = found.several || meant.several || other(found.before, meant.before) ||
                    other(found.behind, meant.behind);
    if (meant.before) found.before = std::max(found.before.value_or(0), *meant.before);
    if (meant.behind) found.behind = std::min(found.behind.value_or(*meant.behind), *meant.behind);
    return found;
  }

  void find_target(std::size_t place) {
    PieceOfRecord& piece = record_.pieces[place];
    const GoesSaid& goes = *piece.said.goes;
    // A name that was given; a made one only says what the piece looks like.
    const auto named = by_name_.find(fold(goes.target));
    if (named != by_name_.end() && named->second != place &&
        (named->second < place || !record_.pieces[named->second].said.name.empty())) {
      piece.goes_to = named->second;
      return;
    }
    const Nearest found = nearest(goes, place);
    piece.goes_to = found.before ? found.before : found.behind;
    if (!piece.goes_to) return no_target(place);
    if (found.several && ++unsure_ <= most_unsure)
      record_.remarks.push_back("line " + std::to_string(piece.line) + ": several pieces could be \"" +
                                goes.target + "\"; it is taken to be " + record_.pieces[*piece.goes_to].name);
  }

  void no_target(std::size_t place) {
    PieceOfRecord& piece = record_.pieces[place];
    const std::string folded = fold(piece.said.goes->target);
    // The base and its parts need no line of their own.
    for (const std::string_view word :
         {"base", "card", "card base", "flap", "front", "back", "inside", "envelope"})
      if (folded == word) return;
    LeftOver lost;
    lost.piece = place;
    lost.problem.what = "no piece of this sample is \"" + piece.said.goes->target + "\"";
    lost.problem.where.row = piece.line;
    lost.problem.expected = "the name, or the role, shape and colour, of a piece that has a line of its own";
    for (std::size_t i = 0; i < record_.pieces.size() && lost.problem.candidates.size() < 6; ++i)
      if (i != place) lost.problem.candidates.push_back(record_.pieces[i].name);
    record_.not_read.push_back(std::move(lost));
    piece.left_over.push_back(std::string(goes_word(piece.said.goes->how)) + " " + piece.said.goes->target);
  }

  // "in tidepool rectangles 2": the piece that this die cut, where the sample has one.
  void find_frame(std::size_t place) {
    PieceOfRecord& piece = record_.pieces[place];
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < record_.pieces.size(); ++i) {
      const auto& cut_by = record_.pieces[i].said.piece.cut_by;
      if (i == place || !cut_by || cut_by->dies != piece.said.piece.lies_in->dies) continue;
      if (found) return;
      found = i;
    }
    piece.goes_to = found;
  }

  void break_circles() {
    enum class State : char { fresh, going, done };
    std::vector<State> states(record_.pieces.size(), State::fresh);
    for (std::size_t start = 0; start < record_.pieces.size(); ++start) {
      std::vector<std::size_t> path;
      std::size_t at = start;
      while (states[at] == State::fresh) {
        states[at] = State::going;
        path.push_back(at);
        if (!record_.pieces[at].goes_to) break;
        const std::size_t next = *record_.pieces[at].goes_to;
        if (states[next] == State::going) {
          circle(at, next);
          break;
        }
        at = next;
      }
      for (const std::size_t each : path) states[each] = State::done;
    }
  }
  void circle(std::size_t place, std::size_t other) {
    LeftOver lost;
    lost.piece = place;
    lost.problem.what =
        "the pieces go round in a circle: \"" + record_.pieces[other].name + "\" goes with this one";
    lost.problem.where.row = record_.pieces[place].line;
    lost.problem.expected = "one piece that lies under the others";
    record_.not_read.push_back(std::move(lost));
    record_.pieces[place].goes_to.reset();
  }

  RecordSaid& record_;
  const ReadingContext& context_;
  std::unordered_map<std::string, std::vector<std::size_t>> with_key_;
  std::unordered_map<std::string, std::size_t> by_name_;
  static constexpr int most_unsure = 20;  // of which a person is told
  int unsure_ = 0;
};

}  // namespace

void find_targets(RecordSaid& record, const ReadingContext& context) {
  TargetFinder(record, context).run();
}

}  // namespace insetbook
