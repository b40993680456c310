// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a piece is called, held against words: a piece called "oval frame" is called a frame. The SQL function
// called(key, words) of every connection of a book answers the same for a row of `element`; the table
// name_piece (schema/migrations) leads to such rows. And where a piece sits: placed(at, words) answers as
// says_place (text/place_words.h), the words with spaces between them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/sqlite.h"

namespace insetbook {

// Labels, folded, as the one text that is looked for.
std::string called_one_of(const std::vector<std::string>& labels);
// Whether some label stands in the folded name, as whole words one behind the other.
bool is_called(std::string_view folded_name, std::string_view one_of);

// Gives the connection its function.
void know_piece_names(const Database& db);

}  // namespace insetbook
