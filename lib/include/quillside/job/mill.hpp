#pragma once
// End milling: spindle speed, chip load, feed rate, the time of one handwheel turn; the deepest pass that keeps its
// walls, its cutter and its machine, or what a pass of a given depth comes to. Leaves out: chatter, chips packed in a
// deep slot, the give of the machine and of how the work is held.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>

namespace quillside {

struct MillQuestion {
  Typed<NamedSize> size;
  Typed<Work> material;
  Typed<const Cutter*> cutter;                       // never null
  std::optional<Typed<const Machine*>> machine = {}; // absent: any speed can be set
  Typed<int> flutes{2, std::nullopt};                // 1 to 12
  std::optional<Typed<Length>> width = {};           // radial; absent: a full slot
  std::optional<Typed<Length>> dial = {};            // table travel a handwheel turn; absent: the machine's
  std::optional<Typed<Length>> overhang = {};        // holder to tip; absent: 3 diameters and 1/8 in
  std::optional<Typed<Length>> flute_length = {};    // absent: 3 diameters
  std::optional<Typed<Length>> shank = {};           // absent: the cutter's own size, 1/8 in at the least
  std::optional<Typed<Length>> depth = {};           // of a pass to be judged; absent: the deepest is found
  std::optional<Typed<Length>> wall_allow = {};      // how far a wall may be off; absent: 0.001 in
  std::optional<Typed<Length>> runout = {};          // total, at the cutter; absent: the machine's
  std::optional<Typed<Angle>> helix = {};            // absent: 30 deg
  bool climb = false;                                // of a pass that is no full slot
};

/// Sizes that end mills come in here, 0.3 mm to 25.4 mm (1 in).
inline constexpr ToolSizes mill_sizes{"end mill", mm(0.3), inches(1.0)};

/// Shanks of end mills, 1 mm to 25.4 mm (1 in).
inline constexpr ToolSizes mill_shank_sizes{"shank", mm(1), inches(1.0)};

/// Throws a Fault of the kind `conflict` where the flags contradict each other.
Answer mill(const Tables& tables, const MillQuestion& question);

} // namespace quillside
