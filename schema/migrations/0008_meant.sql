-- SPDX-License-Identifier: GPL-3.0-or-later
-- Problems of the card check that the person has answered "meant": their codes, '; ' between them, of a piece and of the card as
-- a whole.

ALTER TABLE sample ADD COLUMN meant TEXT NOT NULL DEFAULT '';
ALTER TABLE element ADD COLUMN meant TEXT NOT NULL DEFAULT '';
-- Written out in every row: the change log reads a row as it is stored, and of a column that was added later it would read
-- nothing.
UPDATE sample SET meant = '';
UPDATE element SET meant = '';
