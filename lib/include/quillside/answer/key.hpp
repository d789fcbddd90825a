#pragma once
// The names of an answer's members, each with the quantity it carries, and the fixed unit each quantity is written in.
// A length filed under a speed does not compile. Names and units are a promise: programs read them.

#include <optional>

#include <quillside/quantity/units.hpp>

namespace quillside {

/// A quantity as a record carries it: unrounded, in its fixed unit. Both or neither of low and high.
struct Measure {
  double value = 0;
  std::optional<double> low;
  std::optional<double> high;
  const char* unit = "1";
};

// The fixed units.
inline Measure measure(Length length) { return {in_mm(length), {}, {}, "mm"}; }
inline Measure measure(Angle angle) { return {in_degrees(angle), {}, {}, "deg"}; }
inline Measure measure(CuttingSpeed speed) { return {in_m_per_min(speed), {}, {}, "m/min"}; }
inline Measure measure(SpindleSpeed speed) { return {in_rev_per_min(speed), {}, {}, "rev/min"}; }
inline Measure measure(FeedRate rate) { return {in_mm_per_min(rate), {}, {}, "mm/min"}; }
inline Measure measure(FeedPerRev feed) { return {in_mm_per_rev(feed), {}, {}, "mm/rev"}; }
inline Measure measure(FeedPerTooth feed) { return {in_mm_per_tooth(feed), {}, {}, "mm/tooth"}; }
inline Measure measure(Force force) { return {in_newtons(force), {}, {}, "N"}; }
inline Measure measure(Torque torque) { return {in_newton_metres(torque), {}, {}, "N.m"}; }
inline Measure measure(Power power) { return {in_watts(power), {}, {}, "W"}; }
inline Measure measure(Time time) { return {in_seconds(time), {}, {}, "s"}; }
inline Measure measure(Temperature temperature) { return {in_celsius(temperature), {}, {}, "degC"}; }
inline Measure measure(Stress stress) { return {in_megapascals(stress), {}, {}, "MPa"}; }
// Of a step of `why` only.
inline Measure measure(Energy energy) { return {in_joules(energy), {}, {}, "J"}; }
inline Measure measure(Compliance give) { return {in_mm_per_newton(give), {}, {}, "mm/N"}; }
inline Measure measure(Expansion expansion) { return {in_per_kelvin(expansion), {}, {}, "1/degC"}; }
inline Measure measure(double ratio) { return {ratio, {}, {}, "1"}; }

/// The name of a member that carries one kind of quantity.
template <class Quantity> struct Key { const char* name; };
/// The name of a member that carries a word.
struct WordKey {
  const char* name;
};
/// The name of a member that carries a list or an object.
struct ListKey {
  const char* name;
};

namespace key {

// Settings: what to dial in.
inline constexpr Key<SpindleSpeed> spindle_speed{"spindle_speed"};
inline constexpr WordKey step{"step"};
inline constexpr Key<FeedPerRev> feed_per_rev{"feed_per_rev"};
inline constexpr Key<FeedPerTooth> feed_per_tooth{"feed_per_tooth"};
inline constexpr Key<FeedRate> feed_rate{"feed_rate"};
inline constexpr WordKey fluid{"fluid"};
inline constexpr Key<Length> depth_stop{"depth_stop"};
inline constexpr ListKey stop_shim{"stop_shim"};
inline constexpr ListKey pecks{"pecks"};
inline constexpr Key<Length> to_depth{"to_depth"};
inline constexpr Key<Time> turn_time{"turn_time"};
inline constexpr Key<Length> width_of_cut{"width_of_cut"};
inline constexpr Key<Length> depth_of_cut{"depth_of_cut"};

// Findings: what follows, and what was taken from the tables.
inline constexpr Key<SpindleSpeed> wanted_spindle_speed{"wanted_spindle_speed"};
inline constexpr Key<CuttingSpeed> cutting_speed{"cutting_speed"};
inline constexpr WordKey limited_by{"limited_by"};
inline constexpr Key<SpindleSpeed> limit_speed{"limit_speed"};
inline constexpr Key<Time> cut_time{"cut_time"};
inline constexpr Key<Length> point_allowance{"point_allowance"};
inline constexpr Key<Length> left_under_tip{"left_under_tip"};
inline constexpr Key<Length> left_under_corner{"left_under_corner"};
inline constexpr Key<Length> spot_diameter{"spot_diameter"};
inline constexpr Key<Angle> wanted_point{"wanted_point"};
inline constexpr Key<Angle> wanted_relief{"wanted_relief"};
inline constexpr Key<Length> chip_thickness{"chip_thickness"};

// Forces.
inline constexpr Key<Torque> torque{"torque"};
inline constexpr Key<Force> thrust{"thrust"};
inline constexpr Key<Power> power{"power"};
inline constexpr Key<Force> lever_force{"lever_force"};
inline constexpr Key<Torque> grab_torque{"grab_torque"};
inline constexpr Key<Force> buckling_load{"buckling_load"};
inline constexpr Key<Torque> stall_torque{"stall_torque"};
inline constexpr Key<SpindleSpeed> whirl_speed{"whirl_speed"};
inline constexpr Key<Force> tangential_force{"tangential_force"}; // mean
inline constexpr Key<Force> bending_force{"bending_force"};       // peak resultant
inline constexpr Key<Length> deflection{"deflection"};
inline constexpr ListKey walls{"walls"};
inline constexpr Key<Length> error{"error"};
inline constexpr Key<Length> wall_error{"wall_error"}; // the larger of the walls'
inline constexpr Key<Stress> root_stress{"root_stress"};

// Gauges.
inline constexpr Key<Angle> notch_angle{"notch_angle"};
inline constexpr ListKey light_gap{"light_gap"};
inline constexpr Key<Angle> included_angle{"included_angle"};
inline constexpr Key<Length> gap{"gap"};
inline constexpr ListKey angles{"angles"};
inline constexpr Key<Length> ruler_length{"ruler_length"};
inline constexpr ListKey file{"file"}; // a word, or nothing

// Points.
inline constexpr ListKey half_angles{"half_angles"};
inline constexpr Key<Angle> half_angle_difference{"half_angle_difference"};
inline constexpr Key<Length> lip_height_difference{"lip_height_difference"};
inline constexpr Key<Angle> lip_relief{"lip_relief"};
inline constexpr Key<Angle> chisel_edge_angle{"chisel_edge_angle"};             // the obtuse one
inline constexpr Key<Angle> chisel_edge_angle_acute{"chisel_edge_angle_acute"}; // its supplement
inline constexpr Key<Length> web{"web"};
inline constexpr Key<Length> chisel_length{"chisel_length"};
inline constexpr Key<Length> oversize{"oversize"};
inline constexpr Key<Length> grind_off{"grind_off"};
inline constexpr ListKey checks{"checks"};

// Grinding a point.
inline constexpr WordKey way{"way"};
inline constexpr ListKey facets{"facets"};
inline constexpr Key<Angle> fence_angle{"fence_angle"}; // drill to disk, in the plane of the table
inline constexpr Key<Angle> mitre_scale{"mitre_scale"}; // its complement
inline constexpr Key<Angle> table_tilt{"table_tilt"};
inline constexpr Key<Length> tilt_rise{"tilt_rise"}; // over 100 mm
inline constexpr Key<Angle> swing{"swing"};
inline constexpr Key<Angle> tilt{"tilt"};
inline constexpr Key<Angle> roll{"roll"};
inline constexpr Key<Length> infeed{"infeed"}; // first touch to done
inline constexpr Key<Length> clearance_left{"clearance_left"};
inline constexpr ListKey cone{"cone"};
inline constexpr Key<Angle> cone_half_angle{"cone_half_angle"};
inline constexpr Key<Angle> cone_axis_angle{"cone_axis_angle"};
inline constexpr Key<Length> cone_skew{"cone_skew"};
inline constexpr Key<Angle> lip_clock{"lip_clock"};
inline constexpr Key<Length> point_overhang{"point_overhang"};
inline constexpr Key<Length> axis_distance{"axis_distance"}; // apex to foot, along the cone's axis
inline constexpr Key<Length> apex_offset{"apex_offset"};
inline constexpr Key<Angle> swing_needed{"swing_needed"};
inline constexpr Key<Angle> swing_limit{"swing_limit"};
inline constexpr Key<Length> chisel_flat{"chisel_flat"};
inline constexpr Key<Angle> heel_clear_angle{"heel_clear_angle"};
inline constexpr Key<Length> height_error_per_degree{"height_error_per_degree"};
inline constexpr Key<Length> web_after{"web_after"};

// Slots.
inline constexpr Key<Length> slot_width{"slot_width"};
inline constexpr Key<Length> slot_length{"slot_length"};
inline constexpr Key<Length> side_offset{"side_offset"};   // from the slot's middle, each wall
inline constexpr Key<Length> wall_to_wall{"wall_to_wall"}; // travel of the table between them
inline constexpr ListKey steps{"steps"};
inline constexpr Key<Length> depth{"depth"};
inline constexpr Key<Length> offset{"offset"};
inline constexpr ListKey positions{"positions"};
inline constexpr Key<Length> wall_left{"wall_left"};       // standing at one wall after a step
inline constexpr Key<Length> interference{"interference"}; // below 0: clearance
inline constexpr Key<Length> width_doubt{"width_doubt"};   // of the slot as cut, either way
inline constexpr Key<Length> corner_left{"corner_left"};   // along the diagonal
inline constexpr Key<double> passes{"passes"};
inline constexpr Key<Time> time{"time"};

// Fits, and heating for them.
inline constexpr Key<Temperature> heat_to{"heat_to"};
inline constexpr Key<Length> gain{"gain"};
inline constexpr Key<Length> clearance_hot{"clearance_hot"};
inline constexpr Key<Temperature> heat_limit{"heat_limit"};

// Signs, and other lists of rows.
inline constexpr ListKey rows{"rows"};

// Holes.
inline constexpr ListKey drill{"drill"};
inline constexpr ListKey reamer{"reamer"};
inline constexpr Key<double> engagement{"engagement"}; // share of a thread, in the trade's count
inline constexpr Key<Length> clearance{"clearance"};
inline constexpr Key<Length> countersink_depth{"countersink_depth"};

// Charts.
inline constexpr Key<double> pages{"pages"};
inline constexpr Key<Length> letter_height{"letter_height"};
inline constexpr ListKey columns{"columns"};
inline constexpr ListKey cells{"cells"};

// Sizes.
inline constexpr ListKey size{"size"};
inline constexpr ListKey same{"same"};
inline constexpr ListKey below{"below"};
inline constexpr ListKey above{"above"};
inline constexpr Key<Length> length{"length"};

} // namespace key

/// Steps of `why` that carry a limit, which a page shows beside what is held to it.
namespace limit_step {
inline constexpr const char* stress = "stress to stay under";
inline constexpr const char* power = "power of the machine";
} // namespace limit_step
} // namespace quillside
