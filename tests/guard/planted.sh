#!/usr/bin/env bash
# Holds that a guard fails on a planted fault, and names it.
# usage: planted.sh TEXT GUARD.sh [ARGUMENT...]
set -u
wanted=$1
shift
if said=$("$BASH" "$@" 2>&1); then
  echo "the guard passed a tree with a fault: $said"
  exit 1
fi
if ! grep -qF -- "$wanted" <<<"$said"; then
  printf '%s\n' "the guard failed, but not with '$wanted':" "$said"
  exit 1
fi
printf '%s\n' "as it should be:" "$said"
