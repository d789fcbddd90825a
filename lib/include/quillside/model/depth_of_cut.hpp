#pragma once
// The deepest pass of an end mill that keeps its walls, its cutter and its spindle within limits.
// Leaves out: whether the chip is thick enough to be cut (that does not hang on the depth), chips that pack in a deep
// slot, chatter, how well the work is held.

#include <optional>

#include <quillside/model/cutter_bend.hpp>
#include <quillside/model/law.hpp>
#include <quillside/model/milling_load.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law deepest_pass_law{"deepest-pass", "least depth at which wall error, stress, power or flutes bind",
                                      "the four limits solved for the depth", "derived"};

/// Power at the cutter, and the speed it is to be had at; both above 0.
struct PowerLimit {
  Power power;
  SpindleSpeed speed;
};

/// What a pass may come to.
struct PassLimits {
  Length wall_error;  // most, to either side, anywhere on a wall it forms; above 0
  Stress root_stress; // most in a turn; above 0
  std::optional<PowerLimit> power = {};
};

struct DepthQuestion {
  MillPass pass; // its depth is not read
  ToothForce tooth;
  EndMill cutter;
  /// The feed at which the stress is judged: with run-out, that of the tooth that takes the most (largest_tooth_chip).
  /// No less than the pass's own.
  FeedPerTooth heaviest_feed;
  double notch = 1; // of the flute end; 1 or more
  /// A depth that is known to keep every limit: the search begins there. 0 or more, no more than the flutes.
  Length kept = mm(0);
};

enum class DepthLimit { wall, stress, power, flute };

struct DeepestPass {
  Length depth;
  DepthLimit bound_by;
};
/// The depth below which every pass keeps all limits, to a thousandth of itself on the safe side. Any depth above 0 can
/// come out, also one too thin to be worth setting. Throws std::domain_error outside the ranges of its parts.
DeepestPass deepest_pass(const DepthQuestion& question, const PassLimits& limits);

} // namespace quillside
