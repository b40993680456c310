-- SPDX-License-Identifier: GPL-3.0-or-later
-- Look-up by name. Two FTS5 tables over the same names: by word and prefix, and by trigram for misspelt ones. They live in
-- the same transaction as the records (triggers), so they are always in step; they are derived and not in the change log.
-- rowid = ref * 8 + kind; kind: 1 set, 2 die, 3 supply, 4 colour, 5 sample (src/book/names.h). The view says what the names
-- are; the tables keep only the words.

CREATE VIEW name_of (id, name) AS
  SELECT id * 8 + 1, name FROM die_set
  UNION ALL SELECT d.id * 8 + 2, s.name || ' ' || d.label FROM die d JOIN die_set s ON s.id = d.set_id
  UNION ALL SELECT u.id * 8 + 3, u.kind || ' ' || u.set_name || ' ' || u.name || ' ' || coalesce(c.name, '')
    FROM supply u LEFT JOIN colour c ON c.id = u.colour_id
  UNION ALL SELECT id * 8 + 4, name FROM colour
  UNION ALL SELECT id * 8 + 5, title FROM sample;

CREATE VIRTUAL TABLE name_word USING fts5 (
  name, content = 'name_of', content_rowid = 'id',
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3', columnsize = 0
);
CREATE VIRTUAL TABLE name_trigram USING fts5 (
  name, content = 'name_of', content_rowid = 'id',
  tokenize = 'trigram', detail = 'none', columnsize = 0
);

-- die_set, with the names of its dies
CREATE TRIGGER name_set_added AFTER INSERT ON die_set BEGIN
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 1, new.name);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 1, new.name);
END;
CREATE TRIGGER name_set_deleted AFTER DELETE ON die_set BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 1, old.name);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 1, old.name);
END;
CREATE TRIGGER name_set_changed AFTER UPDATE OF name ON die_set WHEN old.name <> new.name BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 1, old.name);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 1, old.name);
  INSERT INTO name_word (name_word, rowid, name)
    SELECT 'delete', id * 8 + 2, old.name || ' ' || label FROM die WHERE set_id = old.id;
  INSERT INTO name_trigram (name_trigram, rowid, name)
    SELECT 'delete', id * 8 + 2, old.name || ' ' || label FROM die WHERE set_id = old.id;
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 1, new.name);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 1, new.name);
  INSERT INTO name_word (rowid, name) SELECT id * 8 + 2, new.name || ' ' || label FROM die WHERE set_id = new.id;
  INSERT INTO name_trigram (rowid, name) SELECT id * 8 + 2, new.name || ' ' || label FROM die WHERE set_id = new.id;
END;

-- die
CREATE TRIGGER name_die_added AFTER INSERT ON die BEGIN
  INSERT INTO name_word (rowid, name) SELECT new.id * 8 + 2, name || ' ' || new.label FROM die_set WHERE id = new.set_id;
  INSERT INTO name_trigram (rowid, name) SELECT new.id * 8 + 2, name || ' ' || new.label FROM die_set WHERE id = new.set_id;
END;
CREATE TRIGGER name_die_deleted AFTER DELETE ON die BEGIN
  INSERT INTO name_word (name_word, rowid, name)
    SELECT 'delete', old.id * 8 + 2, name || ' ' || old.label FROM die_set WHERE id = old.set_id;
  INSERT INTO name_trigram (name_trigram, rowid, name)
    SELECT 'delete', old.id * 8 + 2, name || ' ' || old.label FROM die_set WHERE id = old.set_id;
END;
CREATE TRIGGER name_die_changed AFTER UPDATE OF set_id, label ON die
WHEN old.label <> new.label OR old.set_id <> new.set_id BEGIN
  INSERT INTO name_word (name_word, rowid, name)
    SELECT 'delete', old.id * 8 + 2, name || ' ' || old.label FROM die_set WHERE id = old.set_id;
  INSERT INTO name_trigram (name_trigram, rowid, name)
    SELECT 'delete', old.id * 8 + 2, name || ' ' || old.label FROM die_set WHERE id = old.set_id;
  INSERT INTO name_word (rowid, name) SELECT new.id * 8 + 2, name || ' ' || new.label FROM die_set WHERE id = new.set_id;
  INSERT INTO name_trigram (rowid, name) SELECT new.id * 8 + 2, name || ' ' || new.label FROM die_set WHERE id = new.set_id;
END;

-- supply
CREATE TRIGGER name_supply_added AFTER INSERT ON supply BEGIN
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 3, new.kind || ' ' || new.set_name || ' ' || new.name || ' ' ||
    coalesce((SELECT name FROM colour WHERE id = new.colour_id), ''));
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 3, new.kind || ' ' || new.set_name || ' ' || new.name || ' ' ||
    coalesce((SELECT name FROM colour WHERE id = new.colour_id), ''));
END;
CREATE TRIGGER name_supply_deleted AFTER DELETE ON supply BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 3, old.kind || ' ' || old.set_name || ' ' ||
    old.name || ' ' || coalesce((SELECT name FROM colour WHERE id = old.colour_id), ''));
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 3, old.kind || ' ' || old.set_name ||
    ' ' || old.name || ' ' || coalesce((SELECT name FROM colour WHERE id = old.colour_id), ''));
END;
CREATE TRIGGER name_supply_changed AFTER UPDATE OF kind, set_name, name, colour_id ON supply
WHEN old.kind <> new.kind OR old.set_name <> new.set_name OR old.name <> new.name OR old.colour_id IS NOT new.colour_id BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 3, old.kind || ' ' || old.set_name || ' ' ||
    old.name || ' ' || coalesce((SELECT name FROM colour WHERE id = old.colour_id), ''));
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 3, old.kind || ' ' || old.set_name ||
    ' ' || old.name || ' ' || coalesce((SELECT name FROM colour WHERE id = old.colour_id), ''));
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 3, new.kind || ' ' || new.set_name || ' ' || new.name || ' ' ||
    coalesce((SELECT name FROM colour WHERE id = new.colour_id), ''));
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 3, new.kind || ' ' || new.set_name || ' ' || new.name || ' ' ||
    coalesce((SELECT name FROM colour WHERE id = new.colour_id), ''));
END;

-- colour, with the names of the supplies of that colour
CREATE TRIGGER name_colour_added AFTER INSERT ON colour BEGIN
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 4, new.name);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 4, new.name);
END;
CREATE TRIGGER name_colour_deleted AFTER DELETE ON colour BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 4, old.name);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 4, old.name);
END;
CREATE TRIGGER name_colour_changed AFTER UPDATE OF name ON colour WHEN old.name <> new.name BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 4, old.name);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 4, old.name);
  INSERT INTO name_word (name_word, rowid, name)
    SELECT 'delete', id * 8 + 3, kind || ' ' || set_name || ' ' || name || ' ' || old.name FROM supply
    WHERE colour_id = old.id;
  INSERT INTO name_trigram (name_trigram, rowid, name)
    SELECT 'delete', id * 8 + 3, kind || ' ' || set_name || ' ' || name || ' ' || old.name FROM supply
    WHERE colour_id = old.id;
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 4, new.name);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 4, new.name);
  INSERT INTO name_word (rowid, name)
    SELECT id * 8 + 3, kind || ' ' || set_name || ' ' || name || ' ' || new.name FROM supply WHERE colour_id = new.id;
  INSERT INTO name_trigram (rowid, name)
    SELECT id * 8 + 3, kind || ' ' || set_name || ' ' || name || ' ' || new.name FROM supply WHERE colour_id = new.id;
END;

-- sample
CREATE TRIGGER name_sample_added AFTER INSERT ON sample BEGIN
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 5, new.title);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 5, new.title);
END;
CREATE TRIGGER name_sample_deleted AFTER DELETE ON sample BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 5, old.title);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 5, old.title);
END;
CREATE TRIGGER name_sample_changed AFTER UPDATE OF title ON sample WHEN old.title <> new.title BEGIN
  INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', old.id * 8 + 5, old.title);
  INSERT INTO name_trigram (name_trigram, rowid, name) VALUES ('delete', old.id * 8 + 5, old.title);
  INSERT INTO name_word (rowid, name) VALUES (new.id * 8 + 5, new.title);
  INSERT INTO name_trigram (rowid, name) VALUES (new.id * 8 + 5, new.title);
END;

-- What an older book holds already.
INSERT INTO name_word (name_word) VALUES ('rebuild');
INSERT INTO name_trigram (name_trigram) VALUES ('rebuild');
