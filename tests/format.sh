#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Fails where a source file differs from what clang-format makes of it; `sh tests/format.sh --mend` rewrites them.
set -eu
cd "$(dirname "$0")/.."
how="--dry-run --Werror"
[ "${1:-}" = "--mend" ] && how="-i"
# shellcheck disable=SC2086
find src importers schema tests -name '*.cc' -o -name '*.h' | sort | xargs clang-format $how
echo "formatting: as .clang-format says"
