#pragma once
// Small tables for tests, so that a rule is seen by itself. The figures are invented and mean nothing.

#include <string>

#include <quillside/data/load.hpp>

namespace quillside::test {

/// What every small table needs: a source, two families, a grade, the cutters, the limits and two screws.
inline const std::string ground = R"(
[source.a]
author = "A"
title = "first page"
standing = "published"
[source.b]
author = "B"
title = "second page"
standing = "published"

[[material]]
key = "steel"
name = "steel"
metal = "carbon-steel"
group = true
source = "a"
[[material]]
key = "tough"
name = "tough steel"
metal = "carbon-steel"
family = "steel"
group = true
source = "a"
[[material]]
key = "G1"
name = "grade one"
metal = "carbon-steel"
family = "tough"
aliases = ["gee one"]
source = "a"
[[material]]
key = "S1"
name = "an austenitic grade"
metal = "austenitic-stainless"
source = "a"

[[cutter]]
key = "hss"
name = "high-speed steel"
tools = ["drill", "mill"]
usual = ["drill", "mill"]
source = "a"
[[cutter]]
key = "carbide"
name = "solid carbide"
tools = ["drill", "mill", "burr"]
source = "a"

[[limit]]
key = "band_below"
value = "0.7"
what = "low end"
source = "a"
[[limit]]
key = "band_above"
value = "1.1"
what = "high end"
source = "a"

[[hardness]]
hb = 200
hrb = 93
source = "a"
[[hardness]]
hb = 300
hrc = 32
source = "a"
[[hardness]]
hb = 400
hrc = 43
source = "a"

[[screw_thread]]
key = "M2x0.4"
screw = "M2"
major = "2 mm"
pitch = "0.4 mm"
source = "a"
[[screw_thread]]
key = "M4x0.7"
screw = "M4"
major = "4 mm"
pitch = "0.7 mm"
source = "a"
)";

/// Loads them over nothing; what does not load fails the test that asked.
inline Tables tables_of(const std::string& rows) {
  static const std::string name = "test.toml";
  return load_or_fail(Tables{}, {{name, ground + rows}});
}

inline std::string drilling(const std::string& material, const std::string& speed, const std::string& rest = "",
                            const std::string& source = "a") {
  return "\n[[drilling_speed]]\nmaterial = \"" + material + "\"\ncutter = \"hss\"\nspeed = \"" + speed + "\"\n" + rest +
         "\nsource = \"" + source + "\"\n";
}

} // namespace quillside::test
