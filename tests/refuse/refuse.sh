#!/usr/bin/env bash
# Holds that one line is refused by the compiler, and for the right reason:
#   the file compiles with its right line; with its wrong line it does not; the compiler points at the wrong line, and
#   says the word that the case names ("// says: WORD").
# usage: refuse.sh CASE.cpp COMPILER [FLAG...]
set -u
case_file=$1
shift
compile=("$@" -fsyntax-only -fno-diagnostics-show-caret)

fail() {
  echo "$case_file: $1"
  [ $# -lt 2 ] || printf '%s\n' "$2" | head -40
  exit 1
}

word=$(sed -n 's,^// says: ,,p' "$case_file")
[ -n "$word" ] || fail "names no word that the compiler must say"
first=$(grep -n '^#ifdef REFUSE$' "$case_file" | cut -d: -f1)
last=$(grep -n '^#else$' "$case_file" | cut -d: -f1)
[ -n "$first" ] && [ -n "$last" ] || fail "wants one '#ifdef REFUSE' and one '#else'"

twin=$(LC_ALL=C "${compile[@]}" "$case_file" 2>&1) || fail "the right line does not compile" "$twin"
if said=$(LC_ALL=C "${compile[@]}" -DREFUSE "$case_file" 2>&1); then
  fail "the wrong line compiles, and must not"
fi

# A compiler that died, or that found no file, also fails: only a place in the wrong line counts.
printf '%s\n' "$said" | awk -v file="$case_file" -v first="$first" -v last="$last" '
  index($0, file ":") == 1 {
    split(substr($0, length(file) + 2), at, ":")
    if (at[1] > first && at[1] < last) found = 1
  }
  END { exit !found }' || fail "not refused at its wrong line" "$said"
# The source is not shown in what is searched, and the path is cut off: the compiler itself must say the word.
printf '%s\n' "$said" | sed -nE 's/^.*: (error|note): //p' | grep -qF -- "$word" ||
  fail "refused without the word '$word'" "$said"
echo "refused in $(printf '%s\n' "$said" | wc -l) lines, with the word '$word'"
