#!/usr/bin/env bash
# Every public header compiles on its own, twice over, and without a warning.
# usage: headers.sh FOLDER[,FOLDER...] COMPILER [FLAG...]
set -u
IFS=, read -ra folders <<<"$1"
shift
export LC_ALL=C
export QUILLSIDE_COMPILE="$*"

one() {
  local said
  said=$(printf '#include "%s"\n#include "%s"\n' "$1" "$1" |
    $QUILLSIDE_COMPILE -fsyntax-only -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror -x c++ - 2>&1) && return
  echo "$1: does not compile on its own"
  printf '%s\n' "$said" | grep -E ': (error|warning|fatal error): ' | head -5
  return 1
}
export -f one

headers=$(find "${folders[@]}" -name '*.hpp' | sort)
[ -n "$headers" ] || { echo "no header in ${folders[*]}"; exit 2; }
printf '%s\n' "$headers" | xargs -d '\n' -n 1 -P 2 "$BASH" -c 'one "$1"' one || exit 1
echo "$(printf '%s\n' "$headers" | wc -l) headers, each compiles on its own"
