-- SPDX-License-Identifier: GPL-3.0-or-later
-- Look-up by name. Two FTS5 tables over the same names: by word and prefix, and by trigram for misspelt ones. They live in
-- the same transaction as the records (triggers), so they are always in step; they are derived and not in the change log.

CREATE VIRTUAL TABLE name_word USING fts5 (
  name, kind UNINDEXED, ref UNINDEXED,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3', detail = 'column'
);
CREATE VIRTUAL TABLE name_trigram USING fts5 (
  name, kind UNINDEXED, ref UNINDEXED,
  tokenize = 'trigram', detail = 'column'
);
-- Which rows of the two tables belong to a record. rowid = ref * 8 + kind, kind: 1 set, 2 die, 3 supply, 4 colour, 5 sample.
