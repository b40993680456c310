// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "book/own_words.h"
#include "book/settings.h"
#include "importers/json/json_import.h"
#include "language/vocabulary.h"
#include "text/quote.h"

namespace insetbook {

void JsonImport::take_setting(const JsonObject& record) {
  record.only({"name", "value"});
  const std::string name = record.needed_text("name"), said = record.text("value");
  if (!record.fine()) return;
  const auto value = checked_setting(name, said, settings(book_).unit);
  if (!value)
    return record.wrong(value.error().kind == ProblemKind::unknown_name ? "name" : "value",
                        value.error().what, value.error().expected);
  if (value->empty()) return count(PutResult::same);  // the default, which is not written down
  Statement& insert =
      book_.statement("INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT DO NOTHING");
  insert.bind_all(*setting_called(name), std::string_view(*value)).run();
  count(book_.database().changes() > 0 ? PutResult::added : PutResult::same);
}

void JsonImport::take_term(const JsonObject& record) {
  record.only({"vocabulary", "term", "labels", "broader", "stands"});
  const std::string labels = record.text("labels");
  OwnWord word{.vocabulary = record.needed_text("vocabulary"),
               .term = record.needed_text("term"),
               .labels = split_labels(labels),
               .broader = record.text("broader"),
               .stands = record.one_of("stands", {"built to stand", "part-open", "no"})};
  if (!vocabulary_name(word.vocabulary))
    record.wrong("vocabulary", fmt::format("{} is no vocabulary", in_quotes(word.vocabulary)),
                 "technique, fold, shape …");
  if (const auto fine = check_own_word(word); !fine)
    record.wrong("term", fine.error().what, fine.error().expected);
  if (!record.fine()) return;
  Statement& insert = book_.statement(
      "INSERT INTO own_term (vocabulary, term, labels, broader, stands) VALUES (?, ?, ?, ?, ?) ON CONFLICT "
      "DO NOTHING");
  insert
      .bind_all(std::string_view(word.vocabulary), std::string_view(word.term), std::string_view(labels),
                std::string_view(word.broader), std::string_view(word.stands))
      .run();
  count(book_.database().changes() > 0 ? PutResult::added : PutResult::same);
}

}  // namespace insetbook
