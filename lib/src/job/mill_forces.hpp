#pragma once
// What an end mill bears and bends: the deepest pass, or what one of a given depth comes to.

#include <optional>
#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose_force.hpp>
#include <quillside/job/mill.hpp>
#include <quillside/model/depth_of_cut.hpp>

#include "telling.hpp"

namespace quillside {

/// The cutter as it is held; what nobody said, as taken.
struct HeldMill {
  Typed<Length> overhang;
  Typed<Length> flute_length;
  Typed<Length> shank;
  Typed<Angle> helix;
  Typed<Length> wall_allow;
  std::optional<Typed<Length>> runout; // absent: neither typed nor in the machine's row
};
/// Throws a Fault of the kind `conflict` where the lengths contradict one another.
HeldMill held_mill(const Tables& tables, const MillQuestion& question);

/// The thinnest chip that a sharp edge of that cutter cuts in that metal; nothing where no row tells of the edge.
std::optional<Length> least_chip_of(const Tables& tables, std::string_view metal, std::string_view cutter);

/// A cutter in its metal, with what doubt there is of the force.
struct MillAtWork {
  DepthQuestion question; // its pass has the depth of nothing yet
  PassLimits limits;
  HandbookPower handbook; // unit_power 0: no row for the metal
  double scatter = 0;     // of the force, either way
  double breaks_at = 1;   // times the working stress
  SpindleSpeed speed;
};
/// Tells the rows it stands on; nothing where the metal or the cutter has none.
std::optional<MillAtWork> mill_at_work(const Tables& tables, Telling& telling, const MillQuestion& question,
                                       const HeldMill& held, Length width, FeedPerTooth feed, SpindleSpeed speed);

/// The depths a pass may have: first keeps every limit at the high end of the force's doubt, high at its value.
struct AllowedDepth {
  Band<Length> band;
  DepthLimit bound_by = DepthLimit::flute;
};
AllowedDepth allowed_depth(const MillAtWork& mill);

/// What a depth that was asked for comes to.
struct DepthVerdict {
  std::string verdict = "go";
  std::string reason;
};
DepthVerdict judge_depth(const MillAtWork& mill, const AllowedDepth& allowed, Length depth);

/// Tells forces, bend, walls and stress of a pass this deep.
void tell_mill_forces(Answer& answer, Telling& telling, const MillAtWork& mill, Length depth);

} // namespace quillside
