// SPDX-License-Identifier: GPL-3.0-or-later
//
// The value of a field, a reader for each kind of them: what stands behind the colon, or in quotes there.
#include <algorithm>
#include <charconv>
#include <utility>

#include "language/dates.h"
#include "language/empty_fields.h"
#include "language/envelope_names.h"
#include "language/orders.h"
#include "language/read_record.h"
#include "language/recognise.h"
#include "language/single_words.h"
#include "text/place_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_colour = 10;  // words
constexpr double near_colour = 10;          // CIEDE2000, where nothing else is said

std::optional<double> number_in(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !(value >= 0 && value <= 1000))
    return std::nullopt;
  return value;
}

std::optional<std::uint32_t> colour_value_of(std::string_view text) {
  if (!text.starts_with('#') || (text.size() != 7 && text.size() != 4)) return std::nullopt;
  std::string figures(text.substr(1));
  if (figures.size() == 3) figures = {figures[0], figures[0], figures[1], figures[1], figures[2], figures[2]};
  std::uint32_t value = 0;
  const auto [end, error] = std::from_chars(figures.data(), figures.data() + figures.size(), value, 16);
  if (error != std::errc() || end != figures.data() + figures.size()) return std::nullopt;
  return value;
}

}  // namespace

std::optional<Seen> Recogniser::colour_value(const Field& field, std::size_t first, std::size_t last) {
  if (field.id != FieldName::like && exactly(fold(typed(first, last))).empty())
    if (auto status = status_value(field, first, last)) {
      Seen by_status = seen(As::says, first, last, priority_of::field);
      by_status.says = std::move(status);
      return by_status;
    }
  std::optional<Seen> it;
  if (field.id == FieldName::like || is_word(first, "like") || pieces_[first].folded.starts_with('#')) {
    const std::size_t value = is_word(first, "like") ? first + 1 : first;
    it = like_value(value, last);
    if (!it && (value >= last || pieces_[value].folded.starts_with('#'))) return std::nullopt;
    // A basic colour word is like all that are so by value.
    if (!it) return colour_value(insetbook::field(FieldName::colour), value, last);
    if (it->last != last) return std::nullopt;
  } else {
    if (run_of_words(first, last - first) != last - first) return std::nullopt;
    Seen named = seen(As::says, first, last, priority_of::field);
    named.word = words(first, last - first);
    const bool two = last == first + 2;
    if (two && exactly(named.word).empty()) named.shade = shade_named(pieces_[first].folded);
    const auto basic = context_.vocabulary.find(named.shade ? pieces_[first + 1].folded : named.word,
                                                VocabularyName::colour_word);
    for (const NamedRecord& record : exactly(named.word))
      if (record.kind == NameKind::colour) named.named.push_back(record);
    if (!basic.empty()) {
      resolve_term(named, basic.front());
      if (!named.says) {
        named.as = As::says;
        named.says = ColourIs{ColourUse::either, {}, named.word};
      }
    } else if (!named.named.empty()) {
      resolve_colour(named);
    } else {
      return std::nullopt;
    }
    it = std::move(named);
  }
  auto& colour = std::get<ColourIs>(*it->says);
  if (field.id == FieldName::paper) colour.use = ColourUse::paper;
  if (field.id == FieldName::ink) colour.use = ColourUse::ink;
  return it;
}

// "sage", "sage, within 5", "#a55030": a colour near that one, from `first` and no further than `limit`.
std::optional<Seen> Recogniser::like_value(std::size_t first, std::size_t limit) {
  if (first >= limit || first >= pieces_.size() || pieces_[first].kind != Piece::Kind::word)
    return std::nullopt;
  const auto value = colour_value_of(pieces_[first].folded);
  std::size_t last = first;
  std::string name;
  std::int64_t id = 0;
  if (value) {
    last = first + 1;
    name = pieces_[first].folded;
  } else {
    const std::size_t most = run_of_words(first, std::min(longest_colour, limit - first));
    std::string said;
    for (std::size_t count = 1; count <= most; ++count) {
      if (count > 1) said += ' ';
      said += pieces_[first + count - 1].folded;
      if (!context_.names.begins(said)) break;
      for (const NamedRecord& record : exactly(said))
        if (record.kind == NameKind::colour) {
          last = first + count;
          name = record.name;
          id = record.id;
          break;
        }
    }
  }
  if (last == first) return std::nullopt;
  double within = near_colour;
  std::string within_said = "10";
  const std::size_t word = is_mark(last, ",") ? last + 1 : last;
  if (is_word(word, "within") && word + 1 < limit && word + 1 < pieces_.size())
    if (const auto number = number_in(pieces_[word + 1].folded)) {
      within = *number;
      within_said = pieces_[word + 1].folded;
      last = word + 2;
    }
  Seen it = seen(As::says, first, last, priority_of::field);
  ColourIs colour;
  colour.colours =
      value ? context_.names.colours_like_value(*value, within) : context_.names.colours_like(id, within);
  std::ranges::sort(colour.colours);
  colour.said = "like " + name + ", within " + within_said;
  it.says = std::move(colour);
  return it;
}

// A size, all of [first, last).
std::optional<SizeIs> Recogniser::whole_size(std::size_t first, std::size_t last) const {
  std::vector<Seen> offered;
  sizes(first, offered);
  for (const Seen& each : offered)
    if (each.last == last && each.as != As::within && each.says && std::holds_alternative<SizeIs>(*each.says))
      return std::get<SizeIs>(*each.says);
  return std::nullopt;
}

std::optional<Seen> Recogniser::closed_value(std::size_t first, std::size_t last) const {
  std::vector<Seen> offered;
  closed_sizes(first, offered);
  for (Seen& each : offered)
    if (each.last == last) return std::move(each);
  Seen it = seen(As::says, first, last, priority_of::field);
  ClosedSizeIs closed;
  closed.said = typed(first, last);
  if (last == first + 1 && is_word(first, "square"))
    closed.form = ClosedSizeIs::Form::square;
  else if (const auto size = whole_size(first, last))
    closed.size = *size;
  else
    return std::nullopt;
  it.says = std::move(closed);
  return it;
}

// A size, a name, else words of what was written.
Seen Recogniser::envelope_value(std::size_t first, std::size_t last) const {
  Seen it = seen(As::says, first, last, priority_of::field);
  EnvelopeIs envelope;
  envelope.said = typed(first, last);
  if (const auto size = whole_size(first, last); size && !size->one_figure) {
    envelope.size = *size;
  } else if (const EnvelopeSize* named = envelope_named(envelope.said)) {
    say_envelope(*named, envelope.said, it);
    return it;
  } else {
    envelope.words = single_words(fold(envelope.said));
  }
  it.says = std::move(envelope);
  return it;
}

// A supply or a sample by its name.
std::optional<Seen> Recogniser::record_value(const Field& field, std::size_t first, std::size_t last) {
  const NameKind kind = field.id == FieldName::supply ? NameKind::supply : NameKind::sample;
  std::vector<NamedRecord> found = exactly(fold(typed(first, last)));
  std::erase_if(found, [&](const NamedRecord& record) { return record.kind != kind; });
  if (found.empty() && kind == NameKind::supply)
    found = context_.names.supplies_of_set(fold(typed(first, last)));
  Seen it = seen(As::says, first, last, priority_of::field);
  if (found.empty() && field.id == FieldName::supply) it.says = status_value(field, first, last);
  if (it.says) return it;
  if (found.empty()) return std::nullopt;
  const NamedRecord named = found.front();
  if (field.id == FieldName::based) {
    it.says = BasedOn{named.id, named.name};
  } else if (field.id == FieldName::title) {
    it.says = TitleIs{named.id, named.name};
  } else if (field.id == FieldName::alike) {
    it.says = AlikeTo{named.id, named.name};
  } else {
    it.word = fold(typed(first, last));
    it.named = std::move(found);
    resolve_colour(it);
  }
  return it;
}

std::optional<Seen> Recogniser::die_value(const Field& field, std::size_t first, std::size_t last) {
  const bool inside = field.id == FieldName::in;
  if (!inside && words(first, run_of_words(first, last - first)) == any_die) {
    Seen any = seen(As::says, first, last, priority_of::field);
    any.says = die_whatever();
    return any;
  }
  auto die = die_at(skip(first, {"the", "a"}), inside, true);
  Seen it = seen(As::says, first, last, priority_of::field);
  if (!die && !inside) {
    it.says = status_value(field, first, last);
    if (it.says) return it;
  }
  if (!die || die->last != last) return std::nullopt;
  die->die.lies_in = inside;
  if (!die->note.empty()) it.notes.push_back(die->note);
  it.says = std::move(die->die);
  return it;
}

std::optional<Seen> Recogniser::date_value(std::size_t first, std::size_t last) const {
  if (const auto period = read_period(typed(first, last))) {
    Seen it = seen(As::says, first, last, priority_of::field);
    it.says = MadeIn{period->from, period->to};
    return it;
  }
  std::vector<Seen> offered;
  dates(first, offered, true);
  for (Seen& each : offered)
    if (each.last == last && each.says) return std::move(each);
  return std::nullopt;
}

// Values that are one of a few words, a number, or any text.
std::optional<Says> Recogniser::plain_value(const Field& field, std::size_t first, std::size_t last) const {
  const std::string said = fold(typed(first, last));
  switch (field.id) {
    case FieldName::size:
      if (const auto size = whole_size(first, last)) return *size;
      return std::nullopt;
    case FieldName::side:
      if (std::string side = side_word(said); !side.empty()) return SideIs{std::move(side)};
      return std::nullopt;
    case FieldName::count:
      if (const auto count = small_number(said)) return CountIs{*count};
      return std::nullopt;
    case FieldName::no:
      if (const EmptyField* named = empty_field(said)) return HasNo{std::string(named->name)};
      return std::nullopt;
    case FieldName::at: {
      PlaceIs place{place_words(typed(first, last))};
      if (place.words.empty()) return std::nullopt;
      return place;
    }
    case FieldName::text:
    case FieldName::words: {
      std::vector<std::string> list = single_words(said);
      if (list.empty()) return std::nullopt;
      const bool phrase = list.size() > 1;
      return WordsAre{std::move(list), phrase, field.id == FieldName::words};
    }
    default:
      return std::nullopt;
  }
}

}  // namespace insetbook
