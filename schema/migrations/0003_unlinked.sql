-- SPDX-License-Identifier: GPL-3.0-or-later
-- Words of pieces that name nothing the book has yet (src/book/link_mentions.h looks for them).

CREATE INDEX mention_unlinked ON mention (kind)
  WHERE colour_id IS NULL AND supply_id IS NULL AND term IS NULL;
