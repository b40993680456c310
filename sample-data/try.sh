#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# On a fresh machine: installs what is needed, builds, makes a book from the tables beside this file, and asks both
# questions, showing the commands. Needs g++, CMake and the libraries; no clang, no browser.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
. "$root/tests/packages.sh"
# shellcheck disable=SC2086
install_packages $program_packages

build=${INSETBOOK_BUILD:-"$root/build-try"}
book=${INSETBOOK_TRY_BOOK:-"$root/try-book"}
say() { printf '\n$ %s\n' "$*"; }

say cmake -S "$root" -B "$build"
cmake -S "$root" -B "$build" -G Ninja >/dev/null
say cmake --build "$build"
cmake --build "$build"

insetbook="$build/src/cli/insetbook"
if [ -n "${INSETBOOK_TRY_BOOK:-}" ] && [ -e "$book" ]; then
  echo "$book is there already: name a folder that is not" >&2
  exit 1
fi
rm -rf "$root/try-book"
say insetbook --book "$book" import dies.csv supplies.csv samples.csv elements.csv tried.csv
"$insetbook" --book "$book" import "$here/dies.csv" "$here/supplies.csv" "$here/samples.csv" "$here/elements.csv" "$here/tried.csv"
say insetbook --book "$book" fits second largest tidepool rectangle
"$insetbook" --book "$book" fits second largest tidepool rectangle
say insetbook --book "$book" find designs using a 2-3/8 in circle with a stand-up fold
"$insetbook" --book "$book" find designs using a 2-3/8 in circle with a stand-up fold
printf '\nThe book is in %s. The program is %s.\n' "$book" "$insetbook"
