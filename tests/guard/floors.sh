#!/usr/bin/env bash
# The floors of the house: quantity < words < model < data < answer < job < render < page < cli.
# Reads every include under lib/ and cli/ and fails on one that points up. Headers of the project that stand on no
# floor (quillside/version.hpp) are below all of them. lib/embed makes tables, so it stands with data.
# usage: floors.sh ROOT
set -u
cd "$1" || exit 2
trees=()
for tree in lib cli; do [ -d "$tree" ] && trees+=("$tree"); done
[ ${#trees[@]} -gt 0 ] || { echo "$1: has neither lib/ nor cli/"; exit 2; }

find "${trees[@]}" -type f | LC_ALL=C sort | sed 's,^,F ,' |
  cat - <(grep -rnE '^[[:space:]]*#[[:space:]]*(include|include_next|import)' "${trees[@]}" |
    LC_ALL=C sort -t: -k1,1 -k2,2n) |
  awk '
  BEGIN {
    count = split("quantity words model data answer job render page cli", name, " ")
    for (i = 1; i <= count; ++i) level[name[i]] = i
    name[0] = "below all floors"
  }
  # The floor a file stands on, by where it lies: 0 below all of them, -1 where there is no floor.
  function floor_of(path, part, depth) {
    depth = split(path, part, "/")
    if (part[1] == "cli") return level["cli"]
    if (part[1] != "lib") return -1
    if (part[2] == "embed") return level["data"]
    if (part[2] == "cmake") return 0
    if (part[2] == "include" && part[3] == "quillside") {
      if (depth == 4) return 0
      return (part[4] in level) ? level[part[4]] : -1
    }
    if (part[2] == "src" && depth > 3 && (part[3] in level)) return level[part[3]]
    return -1
  }
  # a/b/../c is a/c.
  function plain(path, part, depth, i, kept, out) {
    depth = split(path, part, "/"); kept = 0
    for (i = 1; i <= depth; ++i) {
      if (part[i] == "." || part[i] == "") continue
      if (part[i] == ".." && kept > 0) { --kept; continue }
      out[++kept] = part[i]
    }
    path = out[1]
    for (i = 2; i <= kept; ++i) path = path "/" out[i]
    return path
  }
  function fault(text) { print at ": " text; ++faults }
  /^F / { there[substr($0, 3)] = 1; next }
  {
    split($0, place, ":")
    file = place[1]
    at = file ":" place[2]
    line = substr($0, length(at) + 2)
    ++includes
    from = floor_of(file)
    if (from < 0) { fault("stands on no floor"); next }
    if (match(line, /<[^>]*>/)) {
      to = substr(line, RSTART + 1, RLENGTH - 2)
      if (to !~ /^quillside\//) next
      target = "lib/include/" to
    } else if (match(line, /"[^"]*"/)) {
      to = substr(line, RSTART + 1, RLENGTH - 2)
      folder = file
      sub(/[^\/]*$/, "", folder)
      target = plain(folder to)
      if (!(target in there)) target = to ~ /^quillside\// ? "lib/include/" to : plain("cli/" to)
      if (target ~ /^cli\// && !(target in there)) { fault("\"" to "\" leads nowhere in lib/ and cli/"); next }
    } else { fault("this include cannot be read: name the header plainly"); next }
    floor = floor_of(plain(target))
    if (floor < 0) fault(to " stands on no floor")
    else if (floor > from) fault(name[from] " includes " to ", which stands above it, on " name[floor])
  }
  END {
    if (!includes) { print "no include was read"; exit 2 }
    if (faults) { print faults " of " includes " includes are wrong"; exit 1 }
    print includes " includes, none points up"
  }'
