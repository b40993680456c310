# SPDX-License-Identifier: GPL-3.0-or-later
# The Debian packages that the program, its tests and its benches need, each list once. Read by tests/run.sh,
# tests/bench/run.sh, tests/fuzz/run.sh and sample-data/try.sh.
program_packages="g++ cmake ninja-build pkg-config libsqlite3-dev libxapian-dev nlohmann-json3-dev libexpected-dev libfmt-dev libutf8proc-dev libmd-dev libexpat1-dev"
test_packages="libgtest-dev libgmock-dev librapidcheck-dev libgeos-dev libicu-dev libgmp-dev liblcms2-dev librsvg2-dev sqlite3 ccache mold clang-format locales"
# The JSON Schema validator comes from npm; a machine may have Node.js from elsewhere, which Debian's npm would clash with.
command -v npm >/dev/null 2>&1 || test_packages="$test_packages nodejs npm"
fuzz_packages="clang-19 libclang-rt-19-dev"
bench_packages="libbenchmark-dev libgeos-dev hyperfine sqlite3 time"

# Prints those of the packages named that are not installed.
missing_packages() {
  for package in "$@"; do
    dpkg-query -W -f='${Status}\n' "$package" 2>/dev/null | grep -q 'ok installed' || printf '%s ' "$package"
  done
}

# Installs the packages named, where that is possible; else says what is missing and stops.
install_packages() {
  command -v dpkg-query >/dev/null 2>&1 || { echo "this needs a Debian system with: $*" >&2; exit 1; }
  missing=$(missing_packages "$@")
  [ -z "$missing" ] && return 0
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null 2>&1; then
    echo "missing packages: $missing" >&2
    echo "install them first, as root: apt-get install $missing" >&2
    exit 1
  fi
  echo "+ apt-get install $missing"
  apt-get update -qq >/dev/null
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}
