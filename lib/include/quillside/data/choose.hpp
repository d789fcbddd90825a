#pragma once
// Which row answers.
//
// The most specific rows do: the grade's own, then its family's. Among equals the slower comes first and the others
// span the band. With a hardness, the row whose band holds it; between two bands the harder one; past the last, none.
// With neither hardness nor condition, the row marked usual. A layered metal is answered by its slowest layer. A cutter
// with no row of its own goes by a ratio to another's.

#include <optional>
#include <variant>
#include <vector>

#include <quillside/data/work.hpp>
#include <quillside/quantity/band.hpp>

namespace quillside {

struct SpeedChoice {
  Band<CuttingSpeed> band;
  const SpeedRow* row = nullptr; // the row that gives the first value
  std::vector<const SpeedRow*>
      spanning; // rows of other sources, for the same material and condition, that span the band with it
  std::vector<const SpeedRow*> others; // rows that were passed over: less specific, or a spindle speed for one size
  const SpeedRatio* ratio = nullptr;   // when the speed goes by another cutter's row
  bool one_value = false;              // one source with one figure: the band is a rule of thumb about it
  bool assumed = false;                // neither condition nor hardness was named
  bool below_softest = false;          // softer than the softest band
  bool between_bands = false;          // between two bands: the harder was taken
  bool hardness_unstated = false;      // a hardness was named, but no row states one
  bool condition_unstated = false;     // a condition was named, but the row is not for it
  bool softer_is_slower = false;       // a softer, more specific row is slower than the one that holds: it comes first
};

/// The metal is harder than every row for that cutter.
struct PastLastRow {
  Hardness work;
  const SpeedRow* hardest = nullptr; // the row that reaches furthest
};

using SpeedResult = std::variant<SpeedChoice, PastLastRow>;

/// \p ask is drill, mill, ream or burr. Throws a Fault of the kind `word` when a hardness cannot be compared (it asks
/// for HB), of the kind `conflict` when no table has a speed for that cutter in that material.
SpeedResult choose_speed(const Tables& tables, std::string_view ask, const Work& work, std::string_view cutter);

/// Feed per turn of a drill.
struct FeedChoice {
  Band<FeedPerRev> band;
  const DrillingFeed* row = nullptr;
  std::vector<const DrillingFeed*> spanning;
};
/// Throws a Fault of the kind `conflict` when no row holds for that diameter.
FeedChoice choose_drilling_feed(const Tables& tables, const Work& work, std::string_view cutter, Length diameter);

/// Feed per tooth of an end mill.
struct ChipChoice {
  Band<FeedPerTooth> band;
  const ChipLoad* row = nullptr;
  std::vector<const ChipLoad*> spanning;
  const ChipLoad* held_against = nullptr; // a share-of-diameter row that a scaled load was held against
  bool scaled = false;                    // below the smallest printed cutter, in proportion to the diameter
  bool slot_reduced = false;              // the page's factor for a full slot is in it
  bool other_cutter = false;              // the row is of another kind of cutter
};
/// Throws a Fault of the kind `conflict` when no row holds for that cutter and material.
ChipChoice choose_chip_load(const Tables& tables, const Work& work, std::string_view cutter, Length diameter,
                            bool full_slot);

/// The deepest mark of the deep-hole rows that a hole reaches; null for a hole that is not deep.
const DeepHole* choose_deep_hole(const Tables& tables, double depth_over_diameter);
/// The peck schedule for a drill of that size in that metal. A row for small drills goes before one for a metal.
const PeckRow* choose_peck(const Tables& tables, const Work& work, Length diameter);
/// The point that the material wants: the most specific row.
const DrillPointRow& choose_drill_point(const Tables& tables, const Work& work);
/// The web of a drill of that size; nothing when no row says.
struct WebChoice {
  Length web;
  const DrillWebRow* row = nullptr; // the row below, or the nearest
};
std::optional<WebChoice> choose_drill_web(const Tables& tables, Length diameter);
/// The point that any material wants, when none is named.
const DrillPointRow& choose_drill_point(const Tables& tables);
/// The lip relief for a drill of that size in that metal (as Material::metal; empty: any); null where no row reaches.
const LipReliefRow* choose_lip_relief(const Tables& tables, std::string_view metal, Length diameter);
/// What to put on the cut; null when no row says.
const Fluid* choose_fluid(const Tables& tables, std::string_view ask, const Work& work);

/// A hand-practice burr row for that head and material; null when there is none.
const SpeedRow* choose_hand_practice(const Tables& tables, const Work& work, std::string_view cutter, Length diameter);

} // namespace quillside
