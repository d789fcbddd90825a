#!/usr/bin/env bash
# Holds that the driver fails a faulty case, and says what is wrong with it ("// driver says: TEXT").
# usage: planted.sh CASE.cpp COMPILER [FLAG...]
set -u
wanted=$(sed -n 's,^// driver says: ,,p' "$1")
[ -n "$wanted" ] || { echo "$1: does not tell what the driver should say"; exit 1; }
if said=$("$BASH" "$(dirname "$0")/refuse.sh" "$@"); then
  echo "$1: the driver passed a faulty case: $said"
  exit 1
fi
if ! head -1 <<<"$said" | grep -qF -- "$wanted"; then
  printf '%s\n' "$1: wanted '$wanted', got:" "$said"
  exit 1
fi
echo "as it should be: $said" | head -1
