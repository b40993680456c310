// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/says.h"

#include <algorithm>
#include <array>
#include <type_traits>

#include "language/dates.h"
#include "language/envelope_names.h"
#include "measure/write.h"

namespace insetbook {
namespace {

template <class T>
constexpr FieldName simple_field() {
  if constexpr (std::is_same_v<T, SizeIs>)
    return FieldName::size;
  else if constexpr (std::is_same_v<T, ShapeIs>)
    return FieldName::shape;
  else if constexpr (std::is_same_v<T, RoleIs>)
    return FieldName::role;
  else if constexpr (std::is_same_v<T, TechniqueIs>)
    return FieldName::technique;
  else if constexpr (std::is_same_v<T, MaterialIs>)
    return FieldName::material;
  else if constexpr (std::is_same_v<T, SupplyIs>)
    return FieldName::supply;
  else if constexpr (std::is_same_v<T, SideIs>)
    return FieldName::side;
  else if constexpr (std::is_same_v<T, CountIs>)
    return FieldName::count;
  else if constexpr (std::is_same_v<T, FoldIs>)
    return FieldName::fold;
  else if constexpr (std::is_same_v<T, FeatureIs>)
    return FieldName::feature;
  else if constexpr (std::is_same_v<T, OccasionIs>)
    return FieldName::occasion;
  else if constexpr (std::is_same_v<T, ClosedSizeIs>)
    return FieldName::closed;
  else if constexpr (std::is_same_v<T, MadeIn>)
    return FieldName::made;
  else if constexpr (std::is_same_v<T, WordsAre>)
    return FieldName::text;
  else if constexpr (std::is_same_v<T, BasedOn>)
    return FieldName::based;
  else if constexpr (std::is_same_v<T, TitleIs>)
    return FieldName::title;
  else if constexpr (std::is_same_v<T, AlikeTo>)
    return FieldName::alike;
  else if constexpr (std::is_same_v<T, GlueIs>)
    return FieldName::glue;
  else if constexpr (std::is_same_v<T, EnvelopeIs>)
    return FieldName::envelope;
  else if constexpr (std::is_same_v<T, PlaceIs>)
    return FieldName::at;
  else
    return FieldName::no;
}

std::string relation_word(Relation relation) {
  switch (relation) {
    case Relation::about:
      return "about ";
    case Relation::under:
      return "under ";
    case Relation::over:
      return "over ";
    case Relation::at_least:
      return "at least ";
    case Relation::at_most:
      return "at most ";
    case Relation::exact:
    case Relation::between:
      return "";
  }
  return "";
}

// The figures of a size: each with its unit, so that nothing has to be guessed when they are read again.
std::string figures(const SizeIs& size) {
  const std::string first = write(size.low, size.unit);
  const std::string way = size.placed ? (size.height ? " tall" : " wide") : "";
  if (size.relation == Relation::between) return first + " to " + write(size.high, size.unit) + way;
  if (!size.one_figure) {
    const std::string second = write(size.second, size.unit);
    return size.placed ? "W " + first + " x H " + second : first + " x " + second;
  }
  return first + way;
}

std::string without_spaces(std::string text) {
  std::erase(text, ' ');
  return text;
}

// "2-3/8in ±1/32in"
std::string printed_size(const SizeIs& size) {
  std::string out = relation_word(size.relation);
  const auto figure = [&](Length length) { return without_spaces(write(length, size.unit)); };
  out += figure(size.low);
  if (size.relation == Relation::between)
    out += " to " + figure(size.high) + (size.placed ? size.height ? " tall" : " wide" : "");
  else if (!size.one_figure)
    out += (size.placed ? " wide x " : " x ") + figure(size.second) + (size.placed ? " tall" : "");
  else if (size.placed)
    out += size.height ? " tall" : " wide";
  if (const Length within = tolerance(size); within != Length()) out += " ±" + figure(within);
  return out;
}

std::string size_value(const SizeIs& size) {
  std::string out = relation_word(size.relation) + figures(size);
  if (size.tolerance) out += " ±" + write(*size.tolerance, size.unit);
  // The one form that is still one word without its space.
  if (size.relation == Relation::exact && size.one_figure && !size.placed && !size.tolerance)
    return without_spaces(out);
  return out;
}

std::string_view form_word(ClosedSizeIs::Form form) {
  switch (form) {
    case ClosedSizeIs::Form::square:
      return "square";
    case ClosedSizeIs::Form::landscape:
      return "landscape";
    case ClosedSizeIs::Form::portrait:
      return "portrait";
    case ClosedSizeIs::Form::any:
      return "";
  }
  return "";
}

std::string first_of(const std::vector<std::string>& terms) {
  return terms.empty() ? std::string() : terms.front();
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    if (!out.empty()) out += ' ';
    out += word;
  }
  return out;
}

std::string period_value(const MadeIn& made) {
  if (made.from.size() == 10 && made.to.size() == 10 && made.from.substr(0, 4) == made.to.substr(0, 4) &&
      made.from.substr(4) == "-01-01" && made.to.substr(4) == "-12-31")
    return made.from.substr(0, 4);
  if (made.from == made.to) return made.from;
  return made.from + ".." + made.to;
}

std::string without_note(std::string said) {
  for (const std::string_view note : {by_value_note, by_status_note})
    if (said.ends_with(note)) said.resize(said.size() - note.size());
  return said;
}

std::string die_value(const DieIs& die) {
  const std::string said = without_note(die.said);
  return die.line.empty() ? said : said + ", " + die.line;
}

// The value of a field: what stands behind the colon, before quotes.
std::string value_of(const Says& says) {
  return std::visit(
      [](const auto& is) -> std::string {
        using T = std::decay_t<decltype(is)>;
        if constexpr (std::is_same_v<T, SizeIs>)
          return size_value(is);
        else if constexpr (std::is_same_v<T, ColourIs>)
          return without_note(is.said);
        else if constexpr (std::is_same_v<T, DieIs>)
          return die_value(is);
        else if constexpr (std::is_same_v<T, SideIs>)
          return is.side;
        else if constexpr (std::is_same_v<T, CountIs>)
          return std::to_string(is.least);
        else if constexpr (std::is_same_v<T, ClosedSizeIs>)
          return is.size ? size_value(*is.size) : std::string(form_word(is.form));
        else if constexpr (std::is_same_v<T, EnvelopeIs>)
          return is.size ? size_value(*is.size) : joined(is.words);
        else if constexpr (std::is_same_v<T, MadeIn>)
          return period_value(is);
        else if constexpr (std::is_same_v<T, WordsAre> || std::is_same_v<T, PlaceIs>)
          return joined(is.words);
        else if constexpr (std::is_same_v<T, HasNo>)
          return is.field;
        else if constexpr (std::is_same_v<T, GoesIs>)
          return std::string(goes_word(is.how));
        else if constexpr (requires {
                             is.said;
                             is.terms;
                           })
          return first_of(is.terms);
        else if constexpr (requires { is.said; })
          return without_note(is.said);
        else
          return first_of(is.terms);
      },
      says);
}

std::string words_of_size(const SizeIs& size) {
  std::string out = relation_word(size.relation) + figures(size);
  if (const Length within = tolerance(size); within != Length())
    out += ", within " + write(within, size.unit);
  return out;
}

std::string words_of_envelope(const EnvelopeIs& envelope) {
  if (envelope.named) return "envelope " + means(*envelope_named(envelope.said));
  if (!envelope.size) return "envelope " + joined(envelope.words);
  std::string names;
  const Length within = tolerance(*envelope.size);
  for (const std::string_view name : names_of_envelope(envelope.size->low, envelope.size->second, within))
    names += (names.empty() ? ", or called " : " or ") + std::string(name);
  return "envelope " + words_of_size(*envelope.size) + names;
}

// How the narrower terms are said.
std::string with_kinds(const std::vector<std::string>& terms) {
  return terms.size() > 1 ? first_of(terms) + " or any kind of it" : first_of(terms);
}

std::string words_of_period(const MadeIn& made) {
  if (made.from.empty()) return "made up to " + made.to;
  if (made.to.empty()) return "made since " + made.from;
  if (made.from == made.to) return "made on " + made.from;
  return "made from " + made.from + " to " + made.to;
}

}  // namespace

Length tolerance(const SizeIs& size) {
  if (size.relation != Relation::exact && size.relation != Relation::about) return {};
  if (size.tolerance) return *size.tolerance;
  const bool metric = size.unit == Unit::mm;
  if (size.relation == Relation::exact) return metric ? Length::nm(800'000) : Length::inch_fraction(1, 32);
  return metric ? Length::mm(3) : Length::inch_fraction(1, 8);
}

Length in_unit(Length figure, Unit from, Unit to) {
  if (from == to) return figure;
  // 25.4 mm are an inch.
  return Length::nm(to == Unit::mm ? figure.nm() * 10 / 254 : figure.nm() * 254 / 10);
}

FieldName field_of(GoesHow how) {
  switch (how) {
    case GoesHow::on:
      return FieldName::on;
    case GoesHow::in:
      return FieldName::in;
    case GoesHow::behind:
      return FieldName::behind;
    case GoesHow::around:
      return FieldName::around;
    case GoesHow::through:
      return FieldName::through;
  }
  return FieldName::on;
}

FieldName field_of(const Says& says) {
  if (const auto* colour = std::get_if<ColourIs>(&says)) {
    if (colour->use == ColourUse::paper) return FieldName::paper;
    if (colour->use == ColourUse::ink) return FieldName::ink;
    return FieldName::colour;
  }
  if (const auto* goes = std::get_if<GoesIs>(&says)) return field_of(goes->how);
  if (const auto* words = std::get_if<WordsAre>(&says); words && words->on_card) return FieldName::words;
  if (const auto* die = std::get_if<DieIs>(&says)) return die->lies_in ? FieldName::in : FieldName::die;
  return std::visit([](const auto& is) { return simple_field<std::decay_t<decltype(is)>>(); }, says);
}

std::string printed(const Says& says) {
  const std::string name(field(field_of(says)).name);
  if (const auto* size = std::get_if<SizeIs>(&says)) return name + "=" + printed_size(*size);
  if (const auto* closed = std::get_if<ClosedSizeIs>(&says); closed && closed->size)
    return name + "=" + printed_size(*closed->size);
  if (const auto* envelope = std::get_if<EnvelopeIs>(&says); envelope && envelope->size)
    return name + "=" + printed_size(*envelope->size);
  if (const auto* colour = std::get_if<ColourIs>(&says)) return name + "=" + colour->said;
  if (const auto* words = std::get_if<WordsAre>(&says); words && words->phrase)
    return name + "=\"" + value_of(says) + "\"";
  return name + "=" + value_of(says);
}

std::string quoted(std::string_view value) {
  const bool plain = !value.empty() && std::ranges::all_of(value, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '/' || c == '.';
  });
  // Out of quotes a hyphen parts words, which figures and dates do not mind.
  if (plain && (value.front() >= '0' && value.front() <= '9')) return std::string(value);
  if (plain && value.find_first_of("-/.") == std::string_view::npos) return std::string(value);
  std::string out = "\"";
  for (const char c : value) out += c == '"' ? '\'' : c;
  return out + "\"";
}

std::string as_field(const Says& says) {
  const std::string name(field(field_of(says)).name);
  if (const auto* words = std::get_if<WordsAre>(&says)) {
    std::string value = value_of(says);
    if (words->phrase && !words->on_card) return "\"" + value + "\"";
    return name + ":" + quoted(value);
  }
  return name + ":" + quoted(value_of(says));
}

std::string in_words(const Says& says) {
  const std::string name(field(field_of(says)).name);
  return std::visit(
      [&](const auto& is) -> std::string {
        using T = std::decay_t<decltype(is)>;
        if constexpr (std::is_same_v<T, SizeIs>)
          return "size " + words_of_size(is);
        else if constexpr (std::is_same_v<T, ColourIs>)
          return (is.use == ColourUse::either  ? "colour "
                  : is.use == ColourUse::paper ? "paper "
                                               : "ink ") +
                 is.said;
        else if constexpr (std::is_same_v<T, DieIs>)
          return (is.lies_in ? "lies in " : "cut by ") + die_value(is);
        else if constexpr (std::is_same_v<T, SideIs>)
          return is.side == "inside" ? "on the inside" : "on the " + is.side;
        else if constexpr (std::is_same_v<T, CountIs>)
          return "at least " + std::to_string(is.least);
        else if constexpr (std::is_same_v<T, ClosedSizeIs>)
          return is.size ? "closed card " + words_of_size(*is.size)
                         : std::string(form_word(is.form)) + " card";
        else if constexpr (std::is_same_v<T, EnvelopeIs>)
          return words_of_envelope(is);
        else if constexpr (std::is_same_v<T, MadeIn>)
          return words_of_period(is);
        else if constexpr (std::is_same_v<T, WordsAre>)
          return is.on_card  ? "the card says \"" + joined(is.words) + "\""
                 : is.phrase ? "the words \"" + joined(is.words) + "\""
                             : "the word \"" + joined(is.words) + "\"";
        else if constexpr (std::is_same_v<T, PlaceIs>)
          return "placed " + joined(is.words);
        else if constexpr (std::is_same_v<T, HasNo>)
          return "no " + is.field + " recorded";
        else if constexpr (std::is_same_v<T, BasedOn>)
          return "based on " + is.said;
        else if constexpr (std::is_same_v<T, TitleIs>)
          return "the sample " + is.said;
        else if constexpr (std::is_same_v<T, GoesIs>)
          return std::string("goes ") + std::string(goes_word(is.how));
        else if constexpr (std::is_same_v<T, AlikeTo>)
          return "much in common with " + is.said;
        else if constexpr (std::is_same_v<T, SupplyIs>)
          return "supply " + is.said;
        else
          return name + " " + with_kinds(is.terms);
      },
      says);
}

std::string order_words(int rank, bool from_smallest) {
  constexpr std::string_view words[] = {"",       "second ",  "third ",  "fourth ", "fifth ",
                                        "sixth ", "seventh ", "eighth ", "ninth ",  "tenth "};
  std::string out;
  if (rank <= 10)
    out = words[rank - 1];
  else {
    const int last = rank % 10;
    const bool teen = rank % 100 >= 11 && rank % 100 <= 13;
    out = std::to_string(rank) + (teen || last > 3 || last == 0 ? "th "
                                  : last == 1                   ? "st "
                                  : last == 2                   ? "nd "
                                                                : "rd ");
  }
  return out + (from_smallest ? "smallest" : "largest");
}

}  // namespace insetbook
