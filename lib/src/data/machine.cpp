#include <quillside/data/machine.hpp>

#include <algorithm>

namespace quillside {

SpindleSetting setting_at_or_below(const Machine& machine, SpindleSpeed wanted) {
  SpindleSetting setting;
  if (machine.steps.empty()) {
    setting.above_wanted = machine.range.low > wanted;
    setting.speed = std::clamp(wanted, machine.range.low, machine.range.high);
    return setting;
  }
  const auto above =
      std::find_if(machine.steps.begin(), machine.steps.end(), [&](const Step& step) { return step.speed > wanted; });
  if (above != machine.steps.end()) setting.next_above = *above;
  setting.above_wanted = above == machine.steps.begin();
  setting.step = setting.above_wanted ? machine.steps.front() : *(above - 1);
  setting.speed = setting.step->speed;
  return setting;
}

SpindleSpeed fastest(const Machine& machine) {
  return machine.top_speed.given() ? std::min(machine.range.high, machine.top_speed.range.low) : machine.range.high;
}

} // namespace quillside
