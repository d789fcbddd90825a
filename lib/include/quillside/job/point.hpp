#pragma once
// Judging a drill's point from what a bench can measure: keep, touch up, regrind, or which reading to take next.
//
// Every reading carries its error, and every figure the doubt that follows from it. A figure is judged by its whole
// doubt: where it covers two verdicts, the answer is to measure again. `keep` needs the included angle, lips known to
// be equal, and relief with the heel known, all for the way the point was ground; where nobody says how, only what
// holds for every way that the readings allow decides. Leaves out: forces, the temper of the lip, run-out of the
// spindle unless the machine's row has it; points that were split or thinned are judged where the relations hold, and
// the rest is said to be not judged.

#include <array>
#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/model/photo_marks.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// How a point was ground.
enum class GrindingWay { two_facet, four_facet, cone };

/// Where light shows along one lip that is held against a gauge.
enum class LightAt { none, tip, middle, corner };

/// Out of how many flutes chips come.
enum class Chips { one, two };

/// Marks read off a photograph, and how many pixels each may be off either way, nine times in ten.
template <class Marks> struct MarkReading {
  Marks marks;
  std::optional<double> pixels; // absent: the usual error
};

template <class Quantity> using Pair = std::array<Quantity, 2>; // of lip A, of lip B

struct PointQuestion {
  Typed<NamedSize> size;
  std::optional<Typed<Work>> material = {};
  std::optional<Typed<const Machine*>> machine = {}; // for the run-out behind a trial hole
  std::optional<Typed<GrindingWay>> way = {};
  std::optional<Typed<FeedPerRev>> feed = {};
  std::optional<Typed<Reading<Angle>>> angle = {};
  std::optional<Typed<Pair<Reading<Angle>>>> half_angles = {};
  std::optional<Typed<Reading<Length>>> lip_depth = {};
  std::optional<Typed<Reading<Length>>> point_length = {};
  std::optional<Typed<Pair<Reading<Length>>>> lip_lengths = {};
  std::optional<Typed<Reading<Length>>> lip_height = {};
  std::optional<Typed<Reading<Length>>> web = {};
  std::optional<Typed<Reading<Angle>>> chisel = {};
  std::optional<Typed<Reading<Length>>> chisel_length = {};
  std::optional<Typed<Reading<Angle>>> relief = {};
  std::optional<Typed<Reading<Length>>> drop = {}; // needs turn
  std::optional<Typed<Reading<Angle>>> turn = {};  // needs drop
  std::optional<Typed<Reading<Angle>>> gauge_angle = {};
  std::optional<Typed<Pair<LightAt>>> light = {};             // needs gauge_angle
  std::optional<Typed<Pair<Reading<Length>>>> light_gap = {}; // needs light
  std::optional<Typed<Reading<Length>>> trial_hole = {};
  std::optional<Typed<Chips>> chips = {};
  std::optional<Typed<Reading<Length>>> land_wear = {};
  std::optional<Typed<Reading<Length>>> margin_wear = {};
  bool thinned = false;
  bool split = false;
  std::optional<Typed<MarkReading<SideMarks>>> side_marks = {};
  std::optional<Typed<MarkReading<EndMarks>>> end_marks = {};
};

/// Drills whose points are judged, 0.5 to 25.4 mm.
inline constexpr ToolSizes judged_drills{"drill point", mm(0.5), inches(1.0)};

/// The readings that a list of numbers can be: six marks, or four. Throws a Fault of the kind `word`.
MarkReading<SideMarks> read_side_marks(std::string_view text);
MarkReading<EndMarks> read_end_marks(std::string_view text);

/// Throws a Fault of the kind `conflict` when two readings contradict each other beyond their errors (it names both and
/// says by how much), or when a reading lacks another that it needs.
Answer point(const Tables& tables, const PointQuestion& question);

} // namespace quillside
