-- SPDX-License-Identifier: GPL-3.0-or-later
-- What a piece is for may stand in its name only ("oval frame"): the words of all names of pieces, as they are folded in
-- `key`. Derived, in step by its triggers and not in the change log, as the tables of 0002 are.

CREATE VIRTUAL TABLE name_piece USING fts5 (
  key, content = 'element', content_rowid = 'id', tokenize = 'unicode61 remove_diacritics 0', columnsize = 0
);
CREATE TRIGGER name_piece_added AFTER INSERT ON element BEGIN
  INSERT INTO name_piece (rowid, key) VALUES (new.id, new.key);
END;
CREATE TRIGGER name_piece_deleted AFTER DELETE ON element BEGIN
  INSERT INTO name_piece (name_piece, rowid, key) VALUES ('delete', old.id, old.key);
END;
CREATE TRIGGER name_piece_changed AFTER UPDATE OF key ON element WHEN old.key <> new.key BEGIN
  INSERT INTO name_piece (name_piece, rowid, key) VALUES ('delete', old.id, old.key);
  INSERT INTO name_piece (rowid, key) VALUES (new.id, new.key);
END;

-- What an older book holds already.
INSERT INTO name_piece (name_piece) VALUES ('rebuild');
