#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# The same rows loaded by the sqlite3 shell.
#   shell_load.sh dump BOOK FOLDER      a CSV file of every table that holds rows, the change log included
#   shell_load.sh empty FOLDER FILE     an empty database with the book's schema
#   shell_load.sh load FOLDER FILE      loads the files into it, in one transaction (this is what is timed)
#
# The shell reads an empty cell as an empty text, not as null, so its schema is not STRICT and its partial indexes leave out
# empty texts as well as nulls: the tables hold the same rows and the indexes the same entries. It checks no foreign keys (the book does).
# The two tables of names are filled by the schema's own triggers, as in the book. Pragmas as src/book sets them.
set -eu
schema=$(cd "$(dirname "$0")/../../schema/migrations" && pwd)

case "$1" in
dump)
  mkdir -p "$3"
  rm -f "$3"/*
  # In the order of the schema: the triggers look up rows of the tables before.
  for table in $(sqlite3 "$2/book.db" "SELECT name FROM sqlite_schema WHERE type = 'table' AND sql LIKE '%STRICT%'"); do
    [ "$(sqlite3 "$2/book.db" "SELECT EXISTS (SELECT 1 FROM $table)")" = 1 ] || continue
    sqlite3 -csv "$2/book.db" "SELECT * FROM $table" >"$3/$table.csv"
    echo "$table" >>"$3/tables"
  done
  ;;
empty)
  rm -f "$3" "$3-wal" "$3-shm"
  {
    echo "PRAGMA journal_mode = WAL;"
    sed -e "s/^) STRICT;/);/" -e "/^CREATE.* INDEX/s/IS NOT NULL/<> ''/; /^  WHERE/s/IS NOT NULL/<> ''/" \
      "$schema"/*.sql
  } | sqlite3 "$3" >/dev/null
  ;;
load)
  {
    echo "PRAGMA synchronous = FULL;"
    echo "PRAGMA cache_size = -65536;"
    echo "BEGIN;"
    while read -r table; do
      echo ".import --csv $2/$table.csv $table"
    done <"$2/tables"
    echo "COMMIT;"
  } | sqlite3 -bail "$3"
  ;;
esac
