#pragma once
// Drilling: spindle speed, feed, depth stop, pecks, thrust and torque, and what drill and machine bear of them.
// Leaves out: the wander of the start; oversize of the hole; wear beyond the ordinary.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// Where the metal to be left is measured from.
enum class LeaveAt { tip, corner };

struct DrillQuestion {
  Typed<NamedSize> size;
  Typed<Work> material;
  Typed<const Cutter*> cutter;                       // never null
  std::optional<Typed<const Machine*>> machine = {}; // absent: no step is chosen
  std::optional<Typed<Reading<Length>>> thick = {};  // of the part
  std::optional<Typed<Length>> leave = {};           // metal left; needs thick
  std::optional<Typed<LeaveAt>> leave_at = {};       // absent: at the tip
  std::optional<Typed<Length>> depth = {};           // to full diameter
  bool through = false;                              // needs thick
  std::optional<Typed<Angle>> point = {};            // absent: the one the material wants
  bool dry = false;
  std::optional<Typed<Length>> web = {};      // at the point; absent: of a standard point, for the forces
  std::optional<Typed<Length>> overhang = {}; // chuck to tip; absent: about the flutes of an ordinary drill
  std::optional<Typed<Length>> lever = {};    // of the quill; absent: the machine's
};

/// Sizes that drills come in, 0.1 mm to 25.4 mm (1 in).
inline constexpr ToolSizes drill_sizes{"drill", mm(0.1), inches(1.0)};

/// Throws a Fault of the kind `conflict` where the flags contradict each other or ask for the impossible.
Answer drill(const Tables& tables, const DrillQuestion& question);

} // namespace quillside
