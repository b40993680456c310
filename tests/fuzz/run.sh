#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds every fuzz target and runs each for the seconds given (10 unless said) on its kept corpus. A crasher stays as a
# file in tests/fuzz/corpus/NAME and fails the run.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$(dirname "$here")")
seconds=${1:-10}
. "$root/tests/packages.sh"
# shellcheck disable=SC2086
install_packages $program_packages $fuzz_packages
build=${INSETBOOK_BUILD:-"$root/build"}-fuzz
cmake -S "$root" -B "$build" -G Ninja -DINSETBOOK_FUZZ=ON -DCMAKE_C_COMPILER=clang-19 -DCMAKE_CXX_COMPILER=clang++-19 \
  -DINSETBOOK_SANITIZE=address,undefined -DCMAKE_BUILD_TYPE=RelWithDebInfo >/dev/null
targets=$(sed -n 's/^insetbook_fuzz(\([a-z_]*\).*/\1/p' "$here/CMakeLists.txt")
[ -n "$targets" ] || { echo "no fuzz target is listed"; exit 1; }
for target in $targets; do cmake --build "$build" --target "fuzz_$target"; done
for target in $targets; do
  echo "fuzz $target, $seconds s"
  mkdir -p "$build/corpus/$target" "$here/corpus/$target"
  # Questions are read, and answered from a book.
  more=""
  [ "$target" = find ] && more="$here/corpus/questions"
  # New inputs go to the build folder; a crasher is written beside the kept ones.
  # shellcheck disable=SC2086
  "$build/tests/fuzz/fuzz_$target" -max_total_time="$seconds" -timeout=5 -rss_limit_mb=2048 -print_final_stats=0 -verbosity=0 \
    -artifact_prefix="$here/corpus/$target/" "$build/corpus/$target" "$here/corpus/$target" $more
done
