#pragma once
// What a drawing of a slot wants out of its answer, and nothing that the answer does not say.

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside::page {

/// Holes in a row along the slot.
struct HolesSeen {
  std::string drill;           // 9/64 drill
  std::vector<Length> centres; // along the slot, from its middle; empty where the length is not known
  std::optional<Length> stop;  // of the tip, from the back
  std::optional<Length> point; // height of its cone
};

/// The recess at the back.
struct PocketSeen {
  std::string mill; // 9/64 end mill; empty when it is cut already
  Length width{};
  Length tool{};                // diameter
  Length depth{};               // from the back
  std::optional<Length> half{}; // of its length; nothing where that is not known
  std::optional<HolesSeen> holes{};
};

struct SlotSeen {
  Length cut{};          // width of the first cut: as measured, or the cutter
  bool measured = false; // it is cut already
  std::string mill;      // 7/64 end mill; empty when nothing is milled any more
  Measure width{};
  std::optional<Measure> length;
  bool filed = true; // its corners
  std::optional<Length> thick;
  std::optional<Length> leave; // at the front, under a pocket
  std::optional<PocketSeen> pocket;
  std::optional<Length> first_cut_depth; // from the front
  std::optional<Length> half_run;        // of the cutter's last pass along the slot
  std::vector<Length> offsets;           // of the passes along the walls, the last one last
  Length side_offset{};
  Length wall_to_wall{};
  bool climbs_too = false; // the machine's row says that it has no backlash

  /// There is a pocket to be cut.
  [[nodiscard]] bool opens_the_back() const { return pocket && !pocket->mill.empty(); }
  /// Of slot and pocket.
  [[nodiscard]] Length widest() const { return std::max(mm(width.value), pocket ? pocket->width : mm(0)); }
};

/// Nothing for an answer that plans no slot, such as `do not`.
std::optional<SlotSeen> slot_seen(const Answer& answer);

} // namespace quillside::page
