#!/usr/bin/env bash
# Runs the example and holds what it prints: the speed as the trade writes it, and that cautions come with it.
# usage: run.sh PROGRAM
set -u
said=$("$1") || { echo "$1: exit $?"; exit 1; }
printf '%s\n' "$said"
head -1 <<<"$said" | grep -qE '^no30 in 303: [0-9]+ rev/min$' || { echo "$1: its first line is no speed"; exit 1; }
grep -q '^danger: ' <<<"$said" || { echo "$1: no caution comes with the speed"; exit 1; }
