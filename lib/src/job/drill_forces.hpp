#pragma once
// What a drill takes to push and to turn, and what its own slenderness and the machine allow of that.

#include <optional>
#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose_force.hpp>
#include <quillside/job/drill.hpp>
#include <quillside/model/drill_load.hpp>

#include "telling.hpp"

namespace quillside {

/// A drill at work. No row for the metal, or for the cutter: no forces are known.
struct DrillAtWork {
  DrillEdges edges;
  DrillColumn column;
  DrillModels models;
  Scatter torque_scatter;
  Scatter thrust_scatter;
  Stress modulus;
  std::optional<Torque> stall; // of the machine at the speed that is set
  SpindleSpeed speed;
};
/// Tells the rows it stands on.
std::optional<DrillAtWork> drill_at_work(const Tables& tables, Telling& telling, const DrillQuestion& question,
                                         Length overhang, SpindleSpeed speed);

/// The feed that drill and motor allow, of the one wanted. \param rubs slower than that it cuts nothing
struct AllowedFeed {
  FeedPerRev feed;
  enum class By { nothing, buckling, stall } by = By::nothing;
  std::string reason;  // where nothing reasonable is left
  std::string instead; // what else would do
};
AllowedFeed allowed_feed(const DrillAtWork& drill, FeedPerRev wanted, FeedPerRev rubs);

/// Tells forces at the feed that is set, and the cautions that follow from them.
void tell_drill_forces(Answer& answer, Telling& telling, const DrillQuestion& question, const DrillAtWork& drill,
                       FeedPerRev feed);

} // namespace quillside
