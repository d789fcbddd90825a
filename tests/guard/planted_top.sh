#!/usr/bin/env bash
# Holds that the guard of the top level passes the right tree, and names a stray entry and a missing one: in a plain
# folder and in one that git keeps.
# usage: planted_top.sh top.sh WORK-FOLDER
set -u
guard=$1
work=$2
unset GIT_DIR GIT_WORK_TREE GIT_INDEX_FILE
fail() { printf '%s\n' "$@"; exit 1; }

for kind in folder git; do
  tree=$work/$kind
  rm -rf "$tree"
  mkdir -p "$tree"/{cli,docs,examples,lib,tables,tests,.hidden}
  for folder in cli docs examples lib tables tests .hidden; do : >"$tree/$folder/a"; done
  for file in CMakeLists.txt README.md DEVELOPERS.md; do : >"$tree/$file"; done
  mkdir "$tree/out" && : >"$tree/out/CMakeCache.txt"
  keep() { :; }
  if [ $kind = git ]; then
    command -v git >/dev/null || fail "git is not here, so its half of the guard cannot be shown failing"
    git -C "$tree" init -q || exit 2
    keep() { git -C "$tree" add -A -- . ':!out'; }
  fi

  keep
  said=$("$BASH" "$guard" "$tree") || fail "$kind: the right tree is failed:" "$said"
  : >"$tree/notes.txt"
  keep
  said=$("$BASH" "$guard" "$tree") && fail "$kind: a stray notes.txt is passed"
  grep -qF "notes.txt: does not belong" <<<"$said" || fail "$kind: notes.txt is not named:" "$said"
  rm -r "$tree/notes.txt" "$tree/docs"
  keep
  said=$("$BASH" "$guard" "$tree") && fail "$kind: a tree without docs is passed"
  grep -qF "docs: is missing" <<<"$said" || fail "$kind: docs is not named:" "$said"
  grep -qF "notes.txt" <<<"$said" && fail "$kind: notes.txt is gone, and still named:" "$said"
done
echo "as it should be: the right tree passes, a stray entry and a missing one are named"
