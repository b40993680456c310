-- SPDX-License-Identifier: GPL-3.0-or-later
-- The book. Lengths are whole nanometres (…_nm). Every table that a person's work goes into has `id INTEGER PRIMARY KEY`
-- and is written to the change log by the store (src/book/changes.h); new columns are only ever added at a table's end.
-- `key` columns hold the folded name (text/utf8.h, fold) by which a record is told apart.

CREATE TABLE book (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  uuid TEXT NOT NULL,
  made TEXT NOT NULL
) STRICT;

CREATE TABLE setting (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  value TEXT NOT NULL
) STRICT;

-- A person's own terms, and labels added to terms of schema/vocabularies.
CREATE TABLE own_term (
  id INTEGER PRIMARY KEY,
  vocabulary TEXT NOT NULL,
  term TEXT NOT NULL,
  labels TEXT NOT NULL DEFAULT '',      -- '; ' between them
  broader TEXT NOT NULL DEFAULT '',
  stands TEXT NOT NULL DEFAULT '',      -- folds: 'built to stand', 'part-open', 'no'
  UNIQUE (vocabulary, term)
) STRICT;

CREATE TABLE colour (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL,
  key TEXT NOT NULL UNIQUE,
  srgb INTEGER,                         -- 0xrrggbb, null = no value known
  note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE die_set (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL,
  key TEXT NOT NULL UNIQUE,
  maker TEXT NOT NULL DEFAULT '',
  code TEXT NOT NULL DEFAULT '',
  stored_in TEXT NOT NULL DEFAULT '',
  status TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE die (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  set_id INTEGER NOT NULL REFERENCES die_set (id),
  label TEXT NOT NULL,                  -- "2", or the name it is called by
  key TEXT NOT NULL,
  rank INTEGER,                         -- 1 = the largest; null = not numbered (rank then comes from the sizes)
  code TEXT NOT NULL DEFAULT '',
  stored_in TEXT NOT NULL DEFAULT '',
  status TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  UNIQUE (set_id, key)
) STRICT;
CREATE INDEX die_labelled ON die (key);

-- One line of one die: what the die leaves on the paper. Its size is that of its current measurement.
CREATE TABLE line (
  id INTEGER PRIMARY KEY,
  die_id INTEGER NOT NULL REFERENCES die (id),
  kind TEXT NOT NULL CHECK (kind IN ('cut', 'stitched', 'pierced', 'scored', 'embossed', 'window')),
  name TEXT NOT NULL,                   -- 'stitched', or 'window 2' where a die has several of a kind
  shape TEXT NOT NULL,                  -- the word recorded: 'rectangle', 'hexagon', 'leaf'
  figures TEXT NOT NULL DEFAULT '',
  outline TEXT NOT NULL DEFAULT '',
  outline_unit TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  UNIQUE (die_id, name)
) STRICT;

-- Evidence: nothing is overwritten. At most one measurement of a line is current.
CREATE TABLE measurement (
  id INTEGER PRIMARY KEY,
  line_id INTEGER NOT NULL REFERENCES line (id),
  standing TEXT NOT NULL CHECK (standing IN ('current', 'confirmation', 'conflict', 'earlier')),
  width_nm INTEGER NOT NULL CHECK (width_nm > 0),
  height_nm INTEGER NOT NULL CHECK (height_nm > 0),
  unit TEXT NOT NULL CHECK (unit IN ('in', 'mm')),
  method TEXT NOT NULL,                 -- ruler, callipers, scan, drawing, maker's figure, estimated
  mark_nm INTEGER,                      -- the mark it was read to; null = not said
  give_nm INTEGER NOT NULL,             -- u, the give or take
  measured TEXT NOT NULL DEFAULT '',    -- ISO date, or empty
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX measurement_of_line ON measurement (line_id);
CREATE UNIQUE INDEX measurement_current ON measurement (line_id) WHERE standing = 'current';

CREATE TABLE supply (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  key TEXT NOT NULL UNIQUE,             -- folded kind, set, name, colour
  kind TEXT NOT NULL,
  set_name TEXT NOT NULL DEFAULT '',
  name TEXT NOT NULL DEFAULT '',
  words TEXT NOT NULL DEFAULT '',
  colour_id INTEGER REFERENCES colour (id),
  width_nm INTEGER,
  height_nm INTEGER,
  unit TEXT NOT NULL DEFAULT '',
  size_text TEXT NOT NULL DEFAULT '',   -- kept where the size is no size ("3 rolls")
  weight_text TEXT NOT NULL DEFAULT '', -- as written ("80 lb cover")
  weight_mg_m2 INTEGER,                 -- milligrams a square metre
  thickness_nm INTEGER,
  from_date TEXT NOT NULL DEFAULT '',
  until_date TEXT NOT NULL DEFAULT '',
  status TEXT NOT NULL DEFAULT '',
  have TEXT NOT NULL DEFAULT '',
  cut_by TEXT NOT NULL DEFAULT '',
  instead TEXT NOT NULL DEFAULT '',
  stored_in TEXT NOT NULL DEFAULT '',
  price TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  name_key TEXT NOT NULL DEFAULT '',    -- folded name, or the colour's where there is no name
  full_key TEXT NOT NULL DEFAULT ''     -- folded set and that, one space between
) STRICT;
CREATE INDEX supply_of_colour ON supply (colour_id);
CREATE INDEX supply_of_kind ON supply (kind);
CREATE INDEX supply_named ON supply (name_key);
CREATE INDEX supply_named_in_full ON supply (full_key);

CREATE TABLE sample (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  title TEXT NOT NULL,
  key TEXT NOT NULL UNIQUE,
  made TEXT NOT NULL DEFAULT '',        -- ISO date, or empty
  base_width_nm INTEGER,
  base_height_nm INTEGER,
  base_unit TEXT NOT NULL DEFAULT '',
  base_text TEXT NOT NULL DEFAULT '',   -- kept where it is no size
  scores TEXT NOT NULL DEFAULT '',      -- as written, '; ' between them
  finished_text TEXT NOT NULL DEFAULT '', -- as written
  closed_width_nm INTEGER,              -- as finished says, else as the fold closes it where that is known; width x height as it stands
  closed_height_nm INTEGER,
  closed_unit TEXT NOT NULL DEFAULT '',
  words TEXT NOT NULL DEFAULT '',
  envelope TEXT NOT NULL DEFAULT '',
  steps TEXT NOT NULL DEFAULT '',       -- '; ' between them
  based_on TEXT NOT NULL DEFAULT '',    -- the other sample's title, as written
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX sample_made ON sample (made);
CREATE INDEX sample_closed ON sample (closed_width_nm, closed_height_nm) WHERE closed_width_nm IS NOT NULL;

-- One piece of a sample.
CREATE TABLE element (
  id INTEGER PRIMARY KEY,
  sample_id INTEGER NOT NULL REFERENCES sample (id),
  position INTEGER NOT NULL,            -- its place in the list, from 1
  name TEXT NOT NULL,
  key TEXT NOT NULL,
  role TEXT NOT NULL DEFAULT '',        -- a term of schema/vocabularies/roles.json, or the word as written
  side TEXT NOT NULL DEFAULT '',        -- front, inside, back
  shape TEXT NOT NULL DEFAULT '',       -- a term of shapes.json, or the word as written
  width_nm INTEGER,                     -- width <= height where nothing said which way up; see `placed`
  height_nm INTEGER,
  placed INTEGER NOT NULL DEFAULT 0,    -- 1: width is width and height is height
  unit TEXT NOT NULL DEFAULT '',
  size_text TEXT NOT NULL DEFAULT '',   -- as written
  set_id INTEGER REFERENCES die_set (id),
  die_id INTEGER REFERENCES die (id),
  line_id INTEGER REFERENCES line (id), -- the line it was cut by
  in_line_id INTEGER REFERENCES line (id), -- the line it lies in, where `goes` is "in"
  goes TEXT NOT NULL DEFAULT '',        -- as written ("in frame")
  goes_how TEXT NOT NULL DEFAULT '',    -- on, in, behind, around, through
  goes_to INTEGER REFERENCES element (id), -- the piece it goes with, where it is one
  at TEXT NOT NULL DEFAULT '',          -- the place, as written
  glue TEXT NOT NULL DEFAULT '',
  count INTEGER NOT NULL DEFAULT 1 CHECK (count > 0),
  note TEXT NOT NULL DEFAULT '',
  UNIQUE (sample_id, key)
) STRICT;
CREATE INDEX element_shape_size ON element (shape, width_nm, height_nm, sample_id);
CREATE INDEX element_size ON element (width_nm, height_nm, sample_id) WHERE width_nm IS NOT NULL;
CREATE INDEX element_role ON element (role, sample_id) WHERE role <> '';
CREATE INDEX element_die ON element (die_id) WHERE die_id IS NOT NULL;
CREATE INDEX element_set ON element (set_id, sample_id) WHERE set_id IS NOT NULL;
CREATE INDEX element_line ON element (line_id) WHERE line_id IS NOT NULL;
CREATE INDEX element_in_line ON element (in_line_id, shape, width_nm, height_nm, placed, unit, sample_id)
  WHERE in_line_id IS NOT NULL;
CREATE INDEX element_goes_to ON element (goes_to) WHERE goes_to IS NOT NULL;

-- What is said of a sample (element_id null) or of one piece of it: folds, techniques, features, occasions, materials,
-- colours of paper and of ink, supplies.
CREATE TABLE mention (
  id INTEGER PRIMARY KEY,
  sample_id INTEGER NOT NULL REFERENCES sample (id),
  element_id INTEGER REFERENCES element (id),
  kind TEXT NOT NULL CHECK (kind IN ('fold', 'technique', 'feature', 'occasion', 'material', 'paper', 'ink', 'supply')),
  term TEXT,                            -- the vocabulary term, where the word is one (fold, technique, feature, occasion, material)
  colour_id INTEGER REFERENCES colour (id),  -- paper, ink
  supply_id INTEGER REFERENCES supply (id),  -- supply
  written TEXT NOT NULL,                -- as the person wrote it
  position INTEGER NOT NULL DEFAULT 1
) STRICT;
CREATE INDEX mention_of_sample ON mention (sample_id);
CREATE INDEX mention_of_element ON mention (element_id) WHERE element_id IS NOT NULL;
CREATE INDEX mention_term ON mention (kind, term, sample_id, element_id) WHERE term IS NOT NULL;
CREATE INDEX mention_colour ON mention (colour_id, kind, sample_id, element_id) WHERE colour_id IS NOT NULL;
CREATE INDEX mention_supply ON mention (supply_id, sample_id, element_id) WHERE supply_id IS NOT NULL;

-- A panel tried by hand in an opening.
CREATE TABLE tried (
  id INTEGER PRIMARY KEY,
  line_id INTEGER NOT NULL REFERENCES line (id),
  shape TEXT NOT NULL,
  width_nm INTEGER NOT NULL CHECK (width_nm > 0),
  height_nm INTEGER NOT NULL CHECK (height_nm > 0),
  unit TEXT NOT NULL CHECK (unit IN ('in', 'mm')),
  result TEXT NOT NULL CHECK (result IN ('fits', 'too tight', 'too loose')),
  tried_on TEXT NOT NULL DEFAULT '',    -- ISO date
  sample_id INTEGER REFERENCES sample (id),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX tried_in_line ON tried (line_id);
CREATE INDEX tried_of_sample ON tried (sample_id) WHERE sample_id IS NOT NULL;

-- A photograph of a sample; the bytes lie under photos/ in the book's folder, named by their hash.
CREATE TABLE photo (
  id INTEGER PRIMARY KEY,
  sample_id INTEGER NOT NULL REFERENCES sample (id),
  position INTEGER NOT NULL,
  file_name TEXT NOT NULL,              -- as the person called it
  hash TEXT NOT NULL,                   -- SHA-256, lower-case hexadecimal
  UNIQUE (sample_id, position)
) STRICT;

-- The change log: one entry for each transaction, one row for each row of a table that it changed.
CREATE TABLE change (
  id INTEGER PRIMARY KEY,
  made TEXT NOT NULL,                   -- UTC, ISO 8601 with seconds
  what TEXT NOT NULL,                   -- one line that a person reads
  undoes INTEGER REFERENCES change (id),   -- this change took that one back
  undone_by INTEGER REFERENCES change (id) -- this change was taken back by that one
) STRICT;
CREATE INDEX change_undoes ON change (undoes) WHERE undoes IS NOT NULL;
CREATE INDEX change_undone_by ON change (undone_by) WHERE undone_by IS NOT NULL;

CREATE TABLE change_row (
  id INTEGER PRIMARY KEY,
  change_id INTEGER NOT NULL REFERENCES change (id),
  tbl TEXT NOT NULL,
  row_id INTEGER NOT NULL,
  sample_id INTEGER,                    -- the sample whose text the row belongs to, for the index
  before TEXT,                          -- JSON array of the row's columns in order; null = the row was not there
  after TEXT                            -- null = the row was deleted
) STRICT;
CREATE INDEX change_row_of_change ON change_row (change_id);
CREATE INDEX change_row_of_row ON change_row (tbl, row_id);
