#!/usr/bin/env bash
# Installs the build into a folder, moves that folder away, and from there builds and runs examples/consumer: so no
# path of the source or of the build may be in what is installed.
# usage: installed.sh SOURCE BUILD CONFIG WORK-FOLDER CMAKE GENERATOR COMPILER FLAGS TOOL(1|0) DRAWING(1|0)
set -u
source=$1 build=$2 config=$3 work=$4 cmake=$5 generator=$6 compiler=$7 flags=$8 tool=$9 drawing=${10}
fail() { printf '%s\n' "$@"; exit 1; }
rm -rf "$work" && mkdir -p "$work" || exit 2

"$cmake" --install "$build" --config "$config" --prefix "$work/first" >"$work/install.log" 2>&1 ||
  fail "the install failed:" "$(tail -20 "$work/install.log")"
mv "$work/first" "$work/prefix"
named=$(grep -rlF -e "$source" -e "$build" -e "$work/first" --include='*.cmake' --include='*.hpp' "$work/prefix")
[ -z "$named" ] || fail "these name the tree they came from:" "$named"
find "$work/prefix" -name '*.toml' | grep -q . || fail "no table is installed"
if [ "$tool" = 1 ]; then
  "$work/prefix/bin/quillside" --version || fail "the installed tool does not run"
  if [ "$drawing" = 1 ]; then
    # The drawing program is found from where the tool stands, and by nothing else.
    env -i "$work/prefix/bin/quillside" size no30 --card "$work/card.pdf" >/dev/null || fail "the installed tool draws no card"
    head -c 5 "$work/card.pdf" | grep -q '^%PDF-' || fail "the card is no PDF"
  fi
fi

"$cmake" -S "$source/examples/consumer" -B "$work/consumer" -G "$generator" -DCMAKE_PREFIX_PATH="$work/prefix" \
  -DCMAKE_BUILD_TYPE="$config" -DCMAKE_CXX_COMPILER="$compiler" -DCMAKE_CXX_FLAGS="$flags" \
  >"$work/configure.log" 2>&1 ||
  fail "examples/consumer does not configure:" "$(tail -20 "$work/configure.log")"
grep -q "quillside_DIR:PATH=$work/prefix/" "$work/consumer/CMakeCache.txt" ||
  fail "another quillside was found:" "$(grep quillside_DIR "$work/consumer/CMakeCache.txt")"
"$cmake" --build "$work/consumer" --config "$config" >"$work/build.log" 2>&1 ||
  fail "examples/consumer does not build:" "$(tail -20 "$work/build.log")"
exec "$BASH" "$(dirname "$0")/run.sh" "$work/consumer/ask"
