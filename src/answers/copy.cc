// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/copy.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/words.h"
#include "book/names.h"
#include "card/closed_size.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

Problem no_change(const std::string& words) {
  return {.what = fmt::format("{} is no change that is understood", in_quotes(words)),
          .where = {},
          .expected = "\"plum for sage\" (a colour or a supply of the card), a fold, or an occasion",
          .candidates = {}};
}

Problem not_there(const std::string& words) {
  return {.what = fmt::format("nothing of the card is {}", in_quotes(words)),
          .where = {},
          .expected = "a colour or a supply that the card uses",
          .candidates = {}};
}

Problem title_taken(const std::string& title) {
  return {.kind = ProblemKind::refused,
          .what = fmt::format("the book has a sample called {} already", in_quotes(title)),
          .where = {},
          .expected = "another title",
          .candidates = {}};
}

class Copying {
 public:
  Copying(Book& book, const CopyAsked& asked) : book_(book), asked_(asked), words_(vocabulary_of(book)) {}

  Result<CopyAnswer> run() {
    const Result<std::size_t> named = find_sample();
    if (!named) return failure(named.error());
    if (trim(asked_.title).empty()) {
      return failure(Problem{.what = "a copy needs a title of its own",
                             .where = {},
                             .expected = "--as \"high tide\"",
                             .candidates = {}});
    }
    if (sample_titled(book_, fold(asked_.title))) return failure(title_taken(asked_.title));
    for (const std::string& change : changes_after(*named))
      if (const Result<void> done = apply(change); !done) return failure(done.error());
    close_again();
    const Result<void> kept = book_.change(
        fmt::format("copied {} as {}", answer_.from, answer_.title), [&](Change& change) -> Result<void> {
          std::vector<ElementRow> rows;
          for (const auto& [id, row] : elements_) rows.push_back(row);
          return put_whole_sample(change, sample_, std::move(rows), places_of_targets(elements_));
        });
    if (!kept) return failure(kept.error());
    return std::move(answer_);
  }

 private:
  // How many words name the sample: as many as do; where none do, all are its name.
  Result<std::size_t> find_sample() {
    for (std::size_t count = asked_.words.size(); count > 0; --count) {
      const Result<NameHit> hit = find_name(
          book_,
          fmt::format("{}", fmt::join(asked_.words.begin(),
                                      asked_.words.begin() + static_cast<std::ptrdiff_t>(count), " ")),
          RecordKind::sample);
      if (!hit || hit->how == NameHit::How::like) continue;
      take(hit->id);
      return count;
    }
    const Result<NameHit> all =
        find_name(book_, fmt::format("{}", fmt::join(asked_.words, " ")), RecordKind::sample);
    if (!all) return failure(all.error());
    take(all->id);
    return asked_.words.size();
  }

  void take(std::int64_t id) {
    sample_ = *sample(book_, id);
    elements_ = elements_of(book_, id);
    answer_.from = sample_.title;
    answer_.title = std::string(trim(asked_.title));
    sample_.based_on = sample_.title;
    sample_.title = answer_.title;
    sample_.made = today(book_);
    sample_.uuid.clear();
    sample_.photos.clear();
  }

  // Each argument that was quoted is a change; words given one by one are changes between "and"s.
  std::vector<std::string> changes_after(std::size_t named) const {
    std::vector<std::string> changes;
    std::string open;
    const auto close = [&] {
      if (!open.empty()) changes.push_back(open);
      open.clear();
    };
    for (std::size_t i = named; i < asked_.words.size(); ++i) {
      const std::string& word = asked_.words[i];
      if (word.find(' ') != std::string::npos) {
        close();
        changes.push_back(word);
      } else if (word == "and" || word == "with") {
        close();
      } else {
        open += (open.empty() ? "" : " ") + word;
      }
    }
    close();
    return changes;
  }

  Result<void> apply(const std::string& change) {
    const std::size_t at = change.find(" for ");
    if (at != std::string::npos)
      return replace(std::string(trim(change.substr(0, at))), std::string(trim(change.substr(at + 5))));
    if (const auto folds = words_.find(change, VocabularyName::fold); !folds.empty())
      return set_term("fold", folds.front().id, folds.front().label);
    if (const auto occasions = words_.find(change, VocabularyName::occasion); !occasions.empty())
      return set_term("occasion", occasions.front().id, occasions.front().label);
    return failure(no_change(change));
  }

  Result<void> set_term(const std::string& kind, const std::string& term, const std::string& label) {
    std::string was;
    for (const Mention& mention : sample_.mentions)
      if (mention.kind == kind) was += (was.empty() ? "" : "; ") + mention.written;
    std::erase_if(sample_.mentions, [&](const Mention& mention) { return mention.kind == kind; });
    sample_.mentions.push_back({kind, term, {}, {}, label});
    answer_.differences.push_back({kind, was, label, {}});
    return {};
  }

  std::optional<Mention> in_place_of(const Mention& old, const std::string& is) {
    Mention next{old.kind, {}, {}, {}, is};
    if (old.kind == "paper" || old.kind == "ink") {
      next.colour_id = colour_named(book_, fold(is));
      if (!next.colour_id)
        note(fmt::format("the book has no colour called {}: it is kept as a word", in_quotes(is)));
      return next;
    }
    if (old.kind == "supply") {
      const Result<NameHit> supply = find_name(book_, is, RecordKind::supply);
      if (supply && supply->how != NameHit::How::like) next.supply_id = supply->id;
      if (!next.supply_id)
        note(fmt::format("the book has no one supply called {}: it is kept as a word", in_quotes(is)));
      return next;
    }
    return std::nullopt;
  }

  void note(std::string text) {
    if (std::find(answer_.notes.begin(), answer_.notes.end(), text) == answer_.notes.end())
      answer_.notes.push_back(std::move(text));
  }

  Result<void> replace(const std::string& is, const std::string& was) {
    const std::size_t before = answer_.differences.size();
    const auto each = [&](std::vector<Mention>& mentions, const std::string& piece) {
      for (Mention& mention : mentions) {
        if (fold(mention.written) != fold(was)) continue;
        const auto next = in_place_of(mention, is);
        if (!next) continue;
        mention = *next;
        add_difference(before, mention.kind, was, is, piece);
      }
    };
    each(sample_.mentions, "");
    for (auto& [id, element] : elements_) each(element.mentions, element.name);
    if (answer_.differences.size() == before) return failure(not_there(was));
    return {};
  }

  void add_difference(std::size_t from, const std::string& kind, const std::string& was,
                      const std::string& is, const std::string& piece) {
    for (std::size_t i = from; i < answer_.differences.size(); ++i) {
      CopyDifference& one = answer_.differences[i];
      if (one.what != kind) continue;
      if (!piece.empty()) one.pieces.push_back(piece);
      return;
    }
    answer_.differences.push_back(
        {kind, was, is, piece.empty() ? std::vector<std::string>{} : std::vector{piece}});
  }

  void close_again() {
    if (!sample_.finished_text.empty() || !sample_.base.width || !sample_.base.height) return;
    std::vector<std::string> folds;
    for (const Mention& mention : sample_.mentions)
      if (mention.kind == "fold") folds.push_back(mention.term.value_or(mention.written));
    const auto closed =
        closed_size(folds, *sample_.base.width, *sample_.base.height, sample_.scores, sample_.base.unit);
    sample_.closed_width = closed ? std::optional(closed->width) : std::nullopt;
    sample_.closed_height = closed ? std::optional(closed->height) : std::nullopt;
    sample_.closed_unit = sample_.base.unit;
  }

  Book& book_;
  const CopyAsked& asked_;
  Vocabulary words_;
  SampleRow sample_;
  std::vector<std::pair<std::int64_t, ElementRow>> elements_;
  CopyAnswer answer_;
};

}  // namespace

Result<void> put_whole_sample(Change& change, const SampleRow& sample, std::vector<ElementRow> elements,
                              const std::vector<int>& goes_with) {
  const auto put = put_sample(change, sample);
  if (!put) return failure(put.error());
  std::vector<std::int64_t> ids;
  for (ElementRow& row : elements) {
    row.sample_id = put->second;
    row.goes_to.reset();
    const auto element = put_element(change, row);
    if (!element) return failure(element.error());
    ids.push_back(element->second);
  }
  for (std::size_t i = 0; i < elements.size(); ++i) {
    if (goes_with[i] < 0) continue;
    elements[i].goes_to = ids[static_cast<std::size_t>(goes_with[i])];
    if (const auto element = put_element(change, elements[i]); !element) return failure(element.error());
  }
  return {};
}

std::vector<int> places_of_targets(const std::vector<std::pair<std::int64_t, ElementRow>>& elements) {
  std::vector<int> places;
  for (const auto& [id, row] : elements) {
    int place = -1;
    for (std::size_t i = 0; i < elements.size(); ++i)
      if (row.goes_to == elements[i].first) place = static_cast<int>(i);
    places.push_back(place);
  }
  return places;
}

Result<CopyAnswer> copy_sample(Book& book, const CopyAsked& asked) {
  return Copying(book, asked).run();
}

}  // namespace insetbook
