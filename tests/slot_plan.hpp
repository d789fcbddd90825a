#pragma once
// What tests of a slot share: the steps of its plan, and a mill of the user's own without backlash.

#include <string>
#include <vector>

#include "json_of.hpp"

namespace quillside::test {

/// The steps whose cutter has this name, in order.
inline std::vector<Json> steps_with(const Json& answer, const std::string& cutter) {
  std::vector<Json> found;
  for (const auto& step : answer["set"]["steps"])
    if (step.value("cutter", "") == cutter) found.push_back(step);
  return found;
}

/// A file of tables with the machine `stiff`.
inline const std::string stiff_mill = R"([source.mine]
author = "me"
title = "my mill"
standing = "own bench"
[[machine]]
key = "stiff"
name = "mill with preloaded screws"
kind = "mill"
range = "100 to 5000 rev/min"
holder = "collet"
backlash_free = true
source = "mine"
)";

} // namespace quillside::test
