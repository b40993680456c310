-- SPDX-License-Identifier: GPL-3.0-or-later
-- Envelopes are asked for: every way one was ever written, each once, and the samples written so.

CREATE INDEX sample_envelope ON sample (envelope) WHERE envelope <> '';
