#!/usr/bin/env bash
# Libraries have one door each: the units library is included by quantity/quantity.hpp alone, the table reader by
# lib/src/data alone, the drawing libraries and the document reader by lib/src/page and the drawing program alone, so that
# no header that is installed wants them and the tool is not linked to them.
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
door cairo '(cairo|pango|glib)' '(lib/src/page/[^/:]*|cli/draw_main\.cpp)' 'lib/src/page'
door simdjson 'simdjson' 'lib/src/page/[^/:]*' 'lib/src/page'
[ $faults -eq 0 ] && echo "every door is kept"
exit $faults
