-- SPDX-License-Identifier: GPL-3.0-or-later
-- What pieces are stuck with is asked for: every way it was ever written, each once, and the pieces written so.

CREATE INDEX element_glue ON element (glue, sample_id) WHERE glue <> '';
