// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <vector>

#include "importers/json/format.h"
#include "importers/report/report.h"
#include "measure/length.h"
#include "text/quote.h"

namespace insetbook {

using nlohmann::json;

class JsonObject::Parts {
 public:
  const json& value;
  std::optional<Problem>& problem;
};

namespace {

constexpr std::string_view type_words[] = {"null",          "an object", "a list",   "a text",
                                           "true or false", "a number",  "a number", "a number"};

std::string_view type_word(const json& value) {
  const auto type = static_cast<std::size_t>(value.type());
  return type < std::size(type_words) ? type_words[type] : "something else";
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (i != 4 && i != 7 && !is_digit(text[i])) return false;
  const int month = std::stoi(std::string(text.substr(5, 2))),
            day = std::stoi(std::string(text.substr(8, 2)));
  return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

// What all readings of the text have in common: depth, names that come twice, the library's own complaints.
class Checked : public nlohmann::json_sax<json> {
 public:
  bool null() override { return take(json(nullptr)); }
  bool boolean(bool value) override { return take(json(value)); }
  bool number_integer(number_integer_t value) override { return take(json(value)); }
  bool number_unsigned(number_unsigned_t value) override { return take(json(value)); }
  bool number_float(number_float_t value, const string_t&) override { return take(json(value)); }
  bool string(string_t& value) override { return take(json(std::move(value))); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(json::object()); }
  bool start_array(std::size_t) override { return open(json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool parse_error(std::size_t at, const std::string&, const nlohmann::detail::exception& error) override {
    std::string what = error.what();
    if (const std::size_t end = what.find("] "); end != std::string::npos) what.erase(0, end + 2);
    return stop(fmt::format("the file is no JSON at byte {}: {}", at, what),
                "a whole file in JSON, as export writes it");
  }

  std::optional<Problem> problem;

 protected:
  virtual bool take(json value) = 0;
  virtual bool open(json value) = 0;
  virtual bool close() = 0;
  bool stop(std::string what, std::string expected) {
    if (!problem) problem = bad_input(std::move(what), std::move(expected));
    return false;
  }
  bool deeper() {
    return ++depth_ <= deepest ||
           stop(fmt::format("the file is nested deeper than {}", deepest), "the exchange format");
  }
  int depth_ = 0;
};

int section_of(std::string_view name) {
  const auto* it = std::find(std::begin(section_names), std::end(section_names), name);
  return it == std::end(section_names) ? -1 : static_cast<int>(it - std::begin(section_names));
}

// The first reading: the order of the sections, the format and its version.
class Outline : public Checked {
 public:
  bool key(string_t& name) override {
    if (depth_ != 1) return true;
    name_ = name;
    if (!names_.insert(name).second)
      return stop(fmt::format("{} comes twice", in_quotes(name)), "each name once");
    if (const int section = section_of(name); section >= 0)
      sections.push_back(section);
    else if (name != "format" && name != "version" && name != "$schema")
      return stop(fmt::format("{} is no part of the format", in_quotes(name)),
                  "the parts that export writes");
    return true;
  }

  std::vector<int> sections;
  std::string format;
  std::optional<std::int64_t> version;

 private:
  bool take(json value) override {
    if (depth_ == 0) return no_object();
    if (depth_ != 1) return true;
    if (section_of(name_) >= 0)
      return stop(fmt::format("{}: {} stands here", name_, type_word(value)), "a list");
    if (name_ == "format" && value.is_string()) format = value.get<std::string>();
    if (name_ == "version" && value.is_number_integer()) version = value.get<std::int64_t>();
    return true;
  }
  bool open(json value) override {
    if (depth_ == 0 && !value.is_object()) return no_object();
    if (depth_ == 1 && !value.is_array())
      return stop(fmt::format("{}: {} stands here", name_, type_word(value)), "a list");
    return deeper();
  }
  bool close() override {
    --depth_;
    return true;
  }
  bool no_object() {
    return stop("the file is JSON, but no book",
                "a book as export writes it, an object with \"format\": \"insetbook\"; a table as CSV");
  }

  std::set<std::string, std::less<>> names_;
  std::string name_;
};

// A later reading: builds one record after the other of the sections that are due, and hands it on.
class Records : public Checked {
 public:
  Records(const std::vector<bool>& due, const std::function<Result<void>(int, const JsonObject&)>& record)
      : due_(due), record_(record) {}

  bool key(string_t& name) override {
    if (depth_ == 1) {
      section_ = section_of(name);
      index_ = 0;
    } else if (building() && !open_.back()->emplace(name, nullptr).second) {
      return stop(fmt::format("{}: {} comes twice", path(), in_quotes(name)), "each name once");
    } else if (building()) {
      name_ = name;
    }
    return true;
  }

 private:
  bool building() const { return depth_ >= 3 && section_ >= 0 && due_[static_cast<std::size_t>(section_)]; }
  bool due() const { return section_ >= 0 && due_[static_cast<std::size_t>(section_)]; }
  std::string path() const { return fmt::format("{}[{}]", section_names[section_], index_); }

  json* place(json value) {
    if (open_.empty()) {
      record_value_ = std::move(value);
      return &record_value_;
    }
    json& in = *open_.back();
    if (in.is_array()) return &in.emplace_back(std::move(value));
    json& member = in[name_];
    member = std::move(value);
    return &member;
  }
  bool take(json value) override {
    if (depth_ == 2 && due())
      return stop(fmt::format("{}: {} stands here", path(), type_word(value)), "an object");
    if (building()) place(std::move(value));
    return true;
  }
  bool open(json value) override {
    if (depth_ == 2 && due() && !value.is_object())
      return stop(fmt::format("{}: {} stands here", path(), type_word(value)), "an object");
    if (!deeper()) return false;
    if (building()) open_.push_back(place(std::move(value)));
    return true;
  }
  bool close() override {
    const bool was_building = building();
    --depth_;
    if (!was_building) return true;
    open_.pop_back();
    return !open_.empty() || finished();
  }
  bool finished() {
    const JsonObject::Parts parts{record_value_, problem};
    const JsonObject record(parts, path());
    const Result<void> taken = record_(section_, record);
    if (!taken && !problem) problem = taken.error();
    ++index_;
    return !problem;
  }

  const std::vector<bool>& due_;
  const std::function<Result<void>(int, const JsonObject&)>& record_;
  int section_ = -1;
  std::size_t index_ = 0;
  json record_value_;
  std::vector<json*> open_;
  std::string name_;
};

Result<void> check_version(const Outline& outline) {
  if (outline.format != exchange_format)
    return failure(bad_input("the file is JSON, but no book",
                             fmt::format("\"format\": {}", in_quotes(exchange_format))));
  if (!outline.version) return failure(bad_input("the file says no version of the format", "\"version\": 1"));
  if (*outline.version > exchange_version)
    return failure(bad_input(fmt::format("the file has version {} of the format", *outline.version),
                             fmt::format("version {}, or a newer program", exchange_version)));
  if (*outline.version < 1)
    return failure(bad_input("the file has no version of the format that ever was", "\"version\": 1"));
  return {};
}

}  // namespace

bool JsonObject::fine() const {
  return !parts_.problem;
}

void JsonObject::wrong(std::string_view member, std::string what, std::string expected) const {
  if (parts_.problem) return;
  const std::string path = member.empty() ? path_ : fmt::format("{}.{}", path_, member);
  Problem problem = bad_input(fmt::format("{}: {}", path, what), std::move(expected));
  problem.where.column = path;
  parts_.problem = std::move(problem);
}

void JsonObject::only(std::initializer_list<std::string_view> names) const {
  for (const auto& [name, value] : parts_.value.items()) {
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    std::string known;
    for (const std::string_view one : names) known += fmt::format("{}{}", known.empty() ? "" : ", ", one);
    wrong(cut_short(name), "there is no such member in the format", known);
  }
}

bool JsonObject::has(std::string_view name) const {
  return parts_.value.find(name) != parts_.value.end();
}

std::string JsonObject::text(std::string_view name) const {
  const auto it = parts_.value.find(name);
  if (it == parts_.value.end()) return {};
  if (!it->is_string()) {
    wrong(name, fmt::format("{} stands here", type_word(*it)), "a text");
    return {};
  }
  const auto& text = it->get_ref<const std::string&>();
  if (const auto control = control_character(text, Lines::several))
    wrong(name, fmt::format("the text holds {}, at {}", name_of(*control), control->at),
          "the text without it");
  return text;
}

std::string JsonObject::needed_text(std::string_view name) const {
  std::string text = this->text(name);
  if (text.empty()) wrong(name, "nothing stands here", "a text");
  return text;
}

std::string JsonObject::one_of(std::string_view name, std::initializer_list<std::string_view> words) const {
  std::string text = this->text(name);
  if (text.empty() || std::find(words.begin(), words.end(), text) != words.end()) return text;
  std::string known;
  for (const std::string_view word : words) known += fmt::format("{}{}", known.empty() ? "" : ", ", word);
  wrong(name, fmt::format("{} is none of the words that may stand here", in_quotes(text)), known);
  return {};
}

std::optional<std::int64_t> JsonObject::number(std::string_view name) const {
  const auto it = parts_.value.find(name);
  if (it == parts_.value.end()) return std::nullopt;
  const bool whole =
      it->is_number_integer() && (!it->is_number_unsigned() || it->get<std::uint64_t>() <= INT64_MAX);
  if (whole) return it->get<std::int64_t>();
  wrong(name,
        fmt::format("{} stands here",
                    it->is_number() ? "a number that is not whole, or too large," : type_word(*it)),
        "a whole number");
  return std::nullopt;
}

std::optional<std::int64_t> JsonObject::nm(std::string_view name) const {
  const auto value = number(name);
  if (!value) return std::nullopt;
  if (*value > 0 && *value <= longest_length.nm()) return value;
  wrong(name, fmt::format("{} is no length", *value), "whole nanometres, above zero and at most 1 km");
  return std::nullopt;
}

std::string JsonObject::date(std::string_view name) const {
  std::string text = this->text(name);
  if (text.empty() || is_iso_date(text)) return text;
  wrong(name, fmt::format("{} is no date", in_quotes(text)), "a date like 2026-03-02");
  return {};
}

void JsonObject::each(std::string_view name, const std::function<void(const JsonObject&)>& work) const {
  const auto it = parts_.value.find(name);
  if (it == parts_.value.end()) return;
  if (!it->is_array()) return wrong(name, fmt::format("{} stands here", type_word(*it)), "a list");
  for (std::size_t i = 0; i < it->size() && !parts_.problem; ++i) {
    const json& item = (*it)[i];
    const Parts parts{item, parts_.problem};
    const JsonObject object(parts, fmt::format("{}.{}[{}]", path_, name, i));
    if (!item.is_object())
      return object.wrong({}, fmt::format("{} stands here", type_word(item)), "an object");
    work(object);
  }
}

void JsonObject::inside(std::string_view name, const std::function<void(const JsonObject&)>& work) const {
  const auto it = parts_.value.find(name);
  if (it == parts_.value.end()) return;
  if (!it->is_object()) return wrong(name, fmt::format("{} stands here", type_word(*it)), "an object");
  const Parts parts{*it, parts_.problem};
  work(JsonObject(parts, fmt::format("{}.{}", path_, name)));
}

Result<void> read_exchange(std::string_view text,
                           const std::function<Result<void>(int section, const JsonObject& record)>& record) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  Outline outline;
  if (!json::sax_parse(text.begin(), text.end(), &outline)) return failure(*outline.problem);
  if (auto checked = check_version(outline); !checked) return checked;
  // One reading where the sections stand in their order, as export writes them; else one for each that is out
  // of it.
  const std::vector<int>& order = outline.sections;
  for (int next = 0; next < section_count;) {
    std::vector<bool> due(section_count, false);
    bool any = false;
    auto from = order.begin();
    for (; next < section_count; ++next) {
      const auto it = std::find(order.begin(), order.end(), next);
      if (it == order.end()) continue;
      if (it < from) break;
      from = it;
      due[static_cast<std::size_t>(next)] = any = true;
    }
    if (!any) break;
    Records records(due, record);
    if (!json::sax_parse(text.begin(), text.end(), &records)) return failure(*records.problem);
  }
  return {};
}

}  // namespace insetbook
