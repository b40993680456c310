#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Measures the program on synthetic books and prints one table for each size: figures of one run on one machine, ours beside
# the bare library on the same work.
#   sh tests/bench/run.sh                     10 000 and 100 000 samples
#   sh tests/bench/run.sh 10000 100000 1000000
#                                             these sizes; a million samples take 8 GB of disk and half an hour
#   sh tests/bench/run.sh --books DIR …       keeps tables and books there, and uses those that are there already
# INSETBOOK_BUILD names the build folder. A ratio is ours / bare; of import and index, where more is better, bare / ours in time.
# (cpu) is the ratio by processor time, which other programs on the machine disturb less. The sizes of large books are
# imported and indexed once, small ones three times, and the median taken; over 200 000 the import is not timed. At the end
# stands what each kind of question takes in one book against the book before, beside how many more hits it has: what grows
# faster than its answer is a defect.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/tests/packages.sh"

books=""
if [ "${1:-}" = "--books" ]; then
  books=$2
  shift 2
fi
[ $# -gt 0 ] || set -- 10000 100000

# shellcheck disable=SC2086
install_packages $program_packages $bench_packages

build=${INSETBOOK_BUILD:-"$root/build-bench"}
cmake -S "$root" -B "$build" -G Ninja -DINSETBOOK_BENCH=ON -DCMAKE_BUILD_TYPE=Release >"$build.log" 2>&1 ||
  { cat "$build.log"; exit 1; }
rm -f "$build.log"
cmake --build "$build" --target insetbook bench_programs >&2

if [ -z "$books" ]; then
  books=$(mktemp -d)
  trap 'rm -rf "$books"' EXIT
fi
mkdir -p "$books"
PATH="$build/tests/bench:$PATH"
insetbook="$build/src/cli/insetbook"

note() { echo "$*" >&2; }
middle() { printf '%s\n' "$@" | sort -n | sed -n "$((($# + 1) / 2))p"; }
now_ms() { date +%s%N | sed 's/......$//'; }
took_ms() {
  start=$(now_ms)
  "$@" >/dev/null
  echo $(($(now_ms) - start))
}
divided() { awk "BEGIN { printf \"%.2f\", $1 / $2 }"; }
row() { printf '%-68s %11s %11s %6s %6s  %s\n' "$@"; }
pair_row() { # name, unit, target, "ours bare ratio [ratio of processor time …]"
  # shellcheck disable=SC2086
  set -- "$1" "$2" "$3" $4
  row "$1" "$4 $2" "$5 $2" "$6" "${7:-}" "$3"
}

# Tables, book and index, each made once; the book as `import` leaves it. An index that was made for another format is made anew by
# the first question, before anything is timed.
make_book() {
  tables=$books/tables-$1
  book=$books/book-$1
  [ -f "$tables/tried.csv" ] || bench_make_tables "$1" "$tables"
  if [ ! -f "$book/whole" ]; then
    note "making the book of $1 samples"
    rm -rf "$book"
    "$insetbook" import "$tables"/*.csv --book "$book" >/dev/null
    touch "$book/whole"
  fi
  "$insetbook" find kaletern --book "$book" >/dev/null
}

import_rows() {
  work=$books/import-$1
  rm -rf "$work"
  mkdir -p "$work"
  sh "$here/shell_load.sh" dump "$book" "$work/dump"
  ours="" bare=""
  # shellcheck disable=SC2034
  for turn in $turns; do
    rm -rf "$work/book"
    ours="$ours $(took_ms "$insetbook" import "$tables"/*.csv --book "$work/book")"
    # Where the import builds the index too, that is taken off: it is timed apart.
    if [ -d "$work/book/index" ]; then indexed=$(took_ms bench_index build "$work/book"); else indexed=0; fi
    ours="${ours% *} $((${ours##* } - indexed))"
    sh "$here/shell_load.sh" empty "$work/dump" "$work/shell.db"
    bare="$bare $(took_ms sh "$here/shell_load.sh" load "$work/dump" "$work/shell.db")"
  done
  # shellcheck disable=SC2086
  ours=$(middle $ours) bare=$(middle $bare)
  row "import of the five tables / sqlite3 shell loading the same rows" "$ours ms" "$bare ms" \
    "$(divided "$bare" "$ours")" "" ">= 0.4"
  rm -rf "$work"
}

index_row() {
  work=$books/index-$1
  rm -rf "$work"
  mkdir -p "$work"
  bench_index dump "$book" "$work/texts"
  ours="" bare=""
  for turn in $turns; do
    ours="$ours $(took_ms bench_index build "$book")"
    bare="$bare $(took_ms bench_bare_index "$work/texts" "$work/bare-$turn")"
  done
  # shellcheck disable=SC2086
  ours=$(middle $ours) bare=$(middle $bare)
  row "index of all texts / Xapian alone from a file of the texts" "$ours ms" "$bare ms" \
    "$(divided "$bare" "$ours")" "" ">= 0.7"
  rm -rf "$work"
}

# `find` as a whole program, each question of the mix.
find_rows() {
  number=0
  peak=0
  bench_bare_find >"$books/questions"
  while read -r question; do
    number=$((number + 1))
    figures=$(bench_alternate "$runs" "$insetbook" find --book "$book" "$question" -- \
      bench_bare_find "$book" "$number" </dev/null)
    pair_row "find $question" ms "<= 1.5" "$figures"
    peak=$(printf '%s\n%s\n' "$peak" "${figures##* }" | sort -n | tail -1)
  done <"$books/questions"
  row "peak memory of find" "$peak MB" "" "" "" "< 96 MB"
}

fits_row() {
  set_name="bakadedle rectangles"
  line=$(sqlite3 "$book/book.db" "SELECT l.id FROM line l JOIN die d ON d.id = l.die_id JOIN die_set s ON s.id = d.set_id
    WHERE s.key = '$set_name' AND d.rank = 2 AND l.kind = 'stitched'")
  pair_row "fits second largest $set_name / sqlite3 shell, one select" ms "<= 2" \
    "$(bench_alternate "$runs" "$insetbook" fits --book "$book" "second largest $set_name" -- \
      sqlite3 "$book/book.db" "SELECT shape, width_nm, height_nm, result FROM tried WHERE line_id = $line")"
}

disk_rows() {
  for part in book.db index; do
    bytes=$(du -sb "$book/$part" | cut -f1)
    row "$part on disk, bytes a sample" "$((bytes / $1))" "" "" "" ""
  done
}

start_rows() {
  pair_row "insetbook --version / a program that links SQLite and Xapian" ms "" \
    "$(bench_alternate "$runs" "$insetbook" --version -- bench_bare_find)"
  pair_row "insetbook convert 2-3/8 / the same" ms "" \
    "$(bench_alternate "$runs" "$insetbook" convert 2-3/8 -- bench_bare_find)"
}

# From book to book: how many times more hits a question of each kind has, and how many times longer it takes, ours and the
# bare calls.
growth() {
  before=$1
  shift
  for samples in "$@"; do
    echo
    echo "From $before to $samples samples"
    printf '%-50s %9s %9s %9s\n' kind hits median bare
    awk 'FNR == 1 { next } { name = substr($0, 1, 50); $0 = substr($0, 51) }
         NR == FNR { hits[name] = $1; ours[name] = $2; bare[name] = $3; next }
         (name in hits) && hits[name] > 0 { printf "%-50s %9.1f %9.1f %9.1f\n", name, $1 / hits[name], $2 / ours[name], $3 / bare[name] }' \
      "$books/warm-$before" "$books/warm-$samples"
    before=$samples
  done
}

warm_runs=${INSETBOOK_WARM_RUNS:-20}
runs=${INSETBOOK_RUNS:-41}
echo "$(date +%Y-%m-%d), $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(nproc) processors, load $(cut -d' ' -f1 /proc/loadavg)"
for samples in "$@"; do
  echo
  make_book "$samples"
  turns="1 2 3"
  [ "$samples" -le 20000 ] || turns=1
  row "$samples samples, $((samples * 5)) pieces" ours bare ratio "(cpu)" target
  [ "$samples" -gt 200000 ] || import_rows "$samples"
  index_row "$samples"
  find_rows
  fits_row
  pair_row "type-ahead, a keystroke, median / FTS5 prefix query" us "<= 2" "$(bench_type_ahead "$book" 50 | cut -d' ' -f1-3)"
  pair_row "type-ahead, a keystroke, 99th percentile" us "" "$(bench_type_ahead "$book" 50 | cut -d' ' -f4-6)"
  start_rows
  disk_rows "$samples"
  echo
  echo "The mix of 200 questions, each asked $warm_runs times, warm, in one process (target: at most 2 x for one piece and one fold)"
  bench_warm "$book" "$warm_runs" | tee "$books/warm-$samples"
done
growth "$@"
echo
echo "The largest rectangle anywhere in an outline / the largest centred one of 64 x 64 by GEOS, plain (target: at most 1 x) and prepared;"
echo "how many are smaller (target: none), and the mean area against it"
bench_free_places
echo
echo "Ten thousand openings, one in ten drawn with 200 corners"
openings=$books/openings
if [ ! -f "$openings/whole" ]; then
  rm -rf "$openings"
  bench_openings tables "$books/openings.csv"
  "$insetbook" import "$books/openings.csv" --book "$openings" >/dev/null
  touch "$openings/whole"
fi
rm -f "$openings/derived.db"
bench_openings times "$openings"
echo
echo "The card check of a card of 40 pieces / loading it (target: at most 3 x): microseconds, and the ratio"
bench_check "$books/check"
