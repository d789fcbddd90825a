#!/usr/bin/env bash
# The visible top level is what design and readers expect, and nothing else.
# Reads what git keeps; in a tree that git does not know, the folder itself, where a folder with a CMakeCache.txt is
# somebody's build.
# usage: top.sh ROOT
set -u
cd "$1" || exit 2
# A hook of git points these at its own tree.
unset GIT_DIR GIT_WORK_TREE GIT_INDEX_FILE
wanted="CMakeLists.txt DEVELOPERS.md README.md cli docs examples lib tables tests"

if [ "$(git rev-parse --show-toplevel 2>/dev/null)" = "$(pwd -P)" ]; then
  read_from="what git keeps"
  there=$(git ls-files | cut -d/ -f1 | grep -v '^\.' | sort -u)
else
  read_from="the folder"
  there=$(for entry in *; do [ -f "$entry/CMakeCache.txt" ] || echo "$entry"; done)
fi

faults=0
for entry in $wanted; do
  printf '%s\n' "$there" | grep -qxF -- "$entry" || { echo "$1/$entry: is missing from $read_from"; faults=1; }
done
while IFS= read -r entry; do
  case " $wanted " in
  *" $entry "*) ;;
  *) echo "$1/$entry: does not belong at the top level ($read_from)"; faults=1 ;;
  esac
done <<<"$there"
[ $faults -eq 0 ] && echo "$read_from: the nine entries, and nothing beside them"
exit $faults
