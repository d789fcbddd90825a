#pragma once
// The plan as steps at the machine: each tool is asked about as if alone, and its step carries what that answer says.

#include <optional>
#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/job/slot.hpp>

#include "slot_plan.hpp"
#include "slot_width.hpp"

namespace quillside {

/// An answer about one tool of the plan.
struct ToolAnswer {
  std::string who; // 9/64 drill
  Answer answer;
};

/// What the steps come to.
struct SlotSteps {
  std::vector<Value> steps;
  std::vector<ToolAnswer> tools; // in the order of the steps
  std::optional<Length> depth_stop;
  int passes = 0;                          // in depth, of the first cut; 0: the depth is not known
  Time time{};                             // in the cut; 0: the length is not known
  std::optional<Spread<Length>> wall_left; // at one wall, after the spring passes
};
/// With the first cut measured, only what is left to do.
SlotSteps steps_of(const Tables& tables, const SlotQuestion& question, const SlotPlan& plan, const ShankGauges& gauges);

} // namespace quillside
