-- SPDX-License-Identifier: GPL-3.0-or-later
-- Path data goes round what SVG says, by non-zero, unless the figures say even-odd. Until here all of it was
-- taken even-odd, which is another area only where there are several lines (or one that crosses itself).

UPDATE line SET figures = figures || iif(figures = '', '', ', ') || 'even-odd'
  WHERE length(outline) - length(replace(replace(outline, 'M', ''), 'm', '')) > 1;
