#pragma once
// What cuts the slot and where: cutter, side passes, pocket and holes. Geometry and choice only; what each tool is run
// at, its own job says.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <quillside/data/size_ladder.hpp>
#include <quillside/job/slot.hpp>
#include <quillside/model/chain_holes.hpp>
#include <quillside/quantity/band.hpp>
#include <quillside/quantity/spread.hpp>

namespace quillside {

/// One setting of the table, the same on either wall.
struct SideSetting {
  Length offset;       // from the slot's middle
  Length width_of_cut; // radial
};

/// The recess at the back, as wide as its cutter or in two passes.
struct Pocket {
  NamedSize tool; // of the drill and of the end mill
  Length width;
  Length offset;                // of the tool each side of the middle; 0: as wide as the tool
  Length depth;                 // to its floor, from the back
  std::optional<Length> length; // over its round ends; nothing where the slot's length is not known
  std::optional<HolesPlaced> holes;
};

struct SlotPlan {
  NamedSize cutter;
  Spread<Length> first_cut; // measured, or the cutter and how far it may be off
  bool measured = false;
  Length side_offset;      // the last one; 0 where the first cut is the slot
  bool fits_now = false;   // the first cut, as measured, is in the fit already
  bool too_little = false; // less is left on a wall than the table can be set by
  std::vector<SideSetting> sides;
  std::optional<Band<Length>> length;
  std::optional<Length> depth; // from the front, through
  std::optional<Pocket> pocket;

  /// Half of the cutter's run along the slot, the ends finished; nothing where the length is not known.
  [[nodiscard]] std::optional<Length> half_run() const;
};

/// It cannot be cut like that.
struct Unworkable {
  std::string reason;
  std::string instead;
};

/// \param width what the slot is to be wide; \param length what it is to be long, where that is known
/// Throws a Fault of the kind `conflict` for a first cut narrower than its cutter.
std::variant<SlotPlan, Unworkable> plan_slot(const Tables& tables, const SlotQuestion& question,
                                             const Band<Length>& width, const std::optional<Band<Length>>& length);

/// A size by the name the trade has for it.
NamedSize named(const Tables& tables, Length size, UnitSystem units);

} // namespace quillside
