#!/usr/bin/env bash
# A name is a path: every model has a body, and a page of the book.
#   partners.sh TREE
set -u
cd "$1" || exit 2
faults=0
found=0
for header in lib/include/quillside/model/*.hpp; do
  [ -e "$header" ] || continue
  found=1
  name=$(basename "$header" .hpp)
  [ "$name" = law ] && continue
  for partner in "lib/src/model/$name.cpp" "docs/models/$name.md"; do
    [ -e "$partner" ] || { echo "$header:1: has no $partner"; faults=1; }
  done
done
[ $found = 1 ] || { echo "no model found: is the guard reading the right tree?"; faults=1; }
[ $faults = 0 ] && echo "every model has its partners"
exit $faults
