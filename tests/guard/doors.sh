#!/usr/bin/env bash
# Two libraries have one door each: the units library is included by quantity/quantity.hpp alone, the table reader by
# lib/src/data alone, and there by no header that is installed.
# usage: doors.sh ROOT
set -u
cd "$1" || exit 2
trees=()
for tree in lib cli examples; do [ -d "$tree" ] && trees+=("$tree"); done
[ ${#trees[@]} -gt 0 ] || { echo "$1: has none of lib/, cli/ and examples/"; exit 2; }

includes() { grep -rnE "^[[:space:]]*#[[:space:]]*(include|include_next|import)[[:space:]]*[<\"]$1" "${trees[@]}"; }
faults=0
# door LIBRARY PATTERN ALLOWED-FILES WHO
door() {
  local found
  found=$(includes "$2")
  [ -n "$found" ] || { echo "nobody includes $1: is the guard reading the right tree?"; faults=1; return; }
  found=$(printf '%s\n' "$found" | grep -vE "^$3:[0-9]+:") || return
  printf '%s\n' "$found" | sed -E "s,^([^:]*:[0-9]+):.*,\1: includes $1; only $4 does,"
  faults=1
}
door boost/units 'boost/units' 'lib/include/quillside/quantity/quantity\.hpp' 'lib/include/quillside/quantity/quantity.hpp'
door toml++ 'toml(\+\+|plusplus|\.h)' 'lib/src/data/[^/:]*' 'lib/src/data'
[ $faults -eq 0 ] && echo "both doors are kept"
exit $faults
