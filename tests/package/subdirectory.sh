#!/usr/bin/env bash
# Takes the source tree into another project, which holds that nothing but the library comes along; builds and runs
# examples/consumer's program there.
# usage: subdirectory.sh SOURCE WORK-FOLDER CMAKE GENERATOR COMPILER
set -u
source=$1 work=$2 cmake=$3 generator=$4 compiler=$5
fail() { printf '%s\n' "$@"; exit 1; }
rm -rf "$work" && mkdir -p "$work" || exit 2

"$cmake" -S "$source/tests/package/subdirectory" -B "$work/build" -G "$generator" -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_CXX_COMPILER="$compiler" >"$work/configure.log" 2>&1 ||
  fail "the outside project does not configure:" "$(tail -20 "$work/configure.log")"
"$cmake" --build "$work/build" --target ask --parallel 2 >"$work/build.log" 2>&1 ||
  fail "the outside project does not build:" "$(tail -20 "$work/build.log")"
"$cmake" --install "$work/build" --prefix "$work/prefix" >"$work/install.log" 2>&1 ||
  fail "the outside project has no rule to install, yet something failed:" "$(tail -20 "$work/install.log")"
installed=$(find "$work/prefix" -type f 2>/dev/null)
[ -z "$installed" ] || fail "an install of the outside project brings these along:" "$installed"
exec "$BASH" "$(dirname "$0")/run.sh" "$work/build/ask"
