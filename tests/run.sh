#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs what is needed, builds the program with its tests, and runs all but the long ones.
#   sh tests/run.sh                  everyday: optimised, assertions on
#   sh tests/run.sh --sanitize       the same with AddressSanitizer and UBSan, in a build folder of its own
#   sh tests/run.sh -R fit           what follows is handed to ctest
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
. "$here/packages.sh"

sanitize=""
build=${INSETBOOK_BUILD:-"$root/build"}
if [ "${1:-}" = "--sanitize" ]; then
  shift
  sanitize="address,undefined"
  build="$build-sanitize"
fi

# shellcheck disable=SC2086
install_packages $program_packages $test_packages

# The JSON Schema check uses a general validator from npm; without it that test reports itself as skipped.
if command -v npm >/dev/null 2>&1 && [ ! -d "$build/node/node_modules/ajv" ]; then
  mkdir -p "$build/node"
  npm install --silent --no-audit --no-fund --prefix "$build/node" ajv@8 csv-spectrum@2 >/dev/null 2>&1 ||
    echo "npm could not install ajv: the JSON Schema test will be skipped"
fi
export INSETBOOK_NODE_MODULES="$build/node/node_modules"

cmake -S "$root" -B "$build" -G Ninja -DINSETBOOK_TESTS=ON -DINSETBOOK_WERROR=ON -DCMAKE_BUILD_TYPE=RelWithDebInfo \
  -DCMAKE_CXX_FLAGS_RELWITHDEBINFO="-O2 -g1" -DINSETBOOK_SANITIZE="$sanitize" >"$build.log" 2>&1 || { cat "$build.log"; exit 1; }
rm -f "$build.log"
cmake --build "$build"

export UBSAN_OPTIONS=print_stacktrace=1
export ASAN_OPTIONS=detect_stack_use_after_return=1
ctest --test-dir "$build" --output-on-failure -j2 "$@"

# Once more where a comma is the decimal mark and the day begins elsewhere: no answer may depend on either.
if [ -z "$sanitize" ] && [ $# -eq 0 ]; then
  mkdir -p "$build/locale"
  [ -d "$build/locale/de_DE.UTF-8" ] || localedef -i de_DE -f UTF-8 "$build/locale/de_DE.UTF-8"
  LOCPATH="$build/locale" LC_ALL=de_DE.UTF-8 TZ=Pacific/Chatham \
    ctest --test-dir "$build" --output-on-failure -j2 -E 'crash|property|structure'
fi
