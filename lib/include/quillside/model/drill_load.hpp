#pragma once
// Thrust and torque of a twist drill, and what stands up to them: lever, motor, the drill as a column and as a shaft,
// the hand or clamp that keeps the part from going round when the drill grabs.
// Assumes: two alike lips of usual rake, full diameter in the metal, flutes that clear, a fluid suited to the metal.
// Leaves out: rub of margins and of packed chips (see grab_torque), point angle and helix (no published model seen has
// them), speed, depth. Published models agree within a factor of 1.7 on steel and of 2 to 4 on brass: take what comes
// out as a Spread.

#include <optional>

#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law drill_thrust_law{
    "drill-thrust", "T = 2 Kd Ff FT B W + Kd D^2 J W (lb, in); Ff = f^0.8, FT = D^0.8",
    "Oberg et al., Machinery's Handbook, 31st ed., 2020, Machining Power, pages 1152-1153", "published"};
inline constexpr Law drill_torque_law{
    "drill-torque", "M = Kd Ff FM A W (in-lb, in); Ff = f^0.8, FM = D^1.8",
    "Oberg et al., Machinery's Handbook, 31st ed., 2020, Machining Power, pages 1152-1153", "published"};
inline constexpr Law chisel_factors_law{
    "chisel-factors",
    "A = (1-x^2)/(1+x)^0.2 + 3.2 x^1.8, B = (1-x)/(1+x)^0.2 + 2.2 x^0.8, J = x^2; x = c/D, or pilot/D without the "
    "chisel's terms",
    "fitted to the chisel edge factors of Machinery's Handbook, 31st ed., 2020, page 1152; form after Shaw and Oxford, "
    "On the Drilling of Metals, Trans. ASME 79, 1957 (from memory)",
    "derived"};
inline constexpr Law catalogue_thrust_law{
    "drill-thrust-catalogue", "T = 570 K D f^0.85 (N, mm)",
    "a tool maker's catalogue of 2020, technical pages on drilling; name withheld", "maker's sheet"};
inline constexpr Law catalogue_torque_law{
    "drill-torque-catalogue", "M = K D^2 (0.630 + 16.84 f) / 100 (N m, mm)",
    "a tool maker's catalogue of 2020, technical pages on drilling; name withheld", "maker's sheet"};
inline constexpr Law power_law_torque_law{"drill-torque-power-law", "M = k f^0.75 D^1.8 (N m, mm)",
                                          "Carvill, Mechanical Engineer's Data Handbook; the form of the formula",
                                          "from memory"};
inline constexpr Law spindle_power_law{"spindle-power", "P = M w", "definition of power", "derived"};
inline constexpr Law stall_torque_law{"stall-torque", "M = efficiency P / w", "definition of power", "derived"};
inline constexpr Law lever_force_law{"lever-force", "hand = thrust x pinion radius / lever",
                                     "moments about the pinion of a quill", "derived"};
inline constexpr Law drill_buckling_law{
    "drill-buckling", "P = k E I / L^2, I = pi (0.7 D)^4 / 64; k = 20.19 tip located, 2.467 tip free",
    "Euler's column; the share 0.7 of a fluted drill: common practice, no source", "common practice"};
inline constexpr Law drill_torsion_law{"drill-torsion", "stress = M / (0.10 D^3)",
                                       "torsion of a bar, with about half the modulus of a round one for the flutes",
                                       "common practice"};
inline constexpr Law grab_torque_law{
    "grab-torque",
    "push x D: from T D (1+x)/2, the chisel edge through, over T D, the last of the lips, to 5 M, packed",
    "derived from the handbook's thrust and torque; the factor 5: common practice, no source", "derived"};
inline constexpr Law holding_force_law{"holding-force", "force = torque / arm", "moments about the spindle", "derived"};

/// Length of the chisel edge over the diameter: drills of standard design, and split points (Machinery's Handbook, 31st
/// ed., page 1152).
inline constexpr double standard_chisel = 0.18;
inline constexpr double split_chisel = 0.03;

/// The edges of a drill in the metal. Diameter above 0; chisel edge 0 to 0.4 of the diameter; pilot 0 or more and under
/// the diameter. Anything else throws std::domain_error.
struct DrillEdges {
  Length diameter;
  Length chisel;        // length of the chisel edge
  Length pilot = mm(0); // diameter of a hole already there; no wider than the chisel edge, it relieves nothing
};

/// Work-material factors Kd of the handbook and the wear factor W, pure numbers, the same in inch and metric: 24 000
/// for steel of 200 HB, 14 000 for most brasses (both from memory). Factors above 0; wear 1 (sharp) to 2, 1.3 for
/// normal drilling, 1.5 for a very dull drill (from memory). Anything else throws std::domain_error.
struct DrillWork {
  double torque_factor;
  double thrust_factor;
  double wear = 1.3;
};

// Every function below that takes a feed wants it above 0 and, where it has the diameter, at most half of it a turn;
// otherwise it throws std::domain_error.

/// Whether the handbook's tables print this: diameter 0.063 to 3 in, feed 0.0005 to 0.050 in a turn, chisel edge 0.03
/// to 0.40 of the diameter. Beyond, its formulas still give a number, and nobody vouches for it.
bool in_printed_range(DrillEdges drill, FeedPerRev feed);

/// Ff, FT, FM: pure numbers of the handbook's inch tables. Times 25.4^0.8 or 25.4^1.8 they are those of its metric
/// ones.
double feed_factor(FeedPerRev feed);
double thrust_diameter_factor(Length diameter);
double torque_diameter_factor(Length diameter);

struct ChiselFactors {
  double torque;    // A
  double thrust;    // B
  double extrusion; // J: what the chisel edge takes however slow the feed
};
/// \param chisel_share chisel edge over diameter, 0 to 0.4. Printed c/d 0.15 for A is a misprint: 1.080 for 1.056.
ChiselFactors chisel_factors(double chisel_share);

/// Thrust along the axis by the handbook [N].
Force handbook_thrust(DrillEdges drill, FeedPerRev feed, DrillWork work);
/// Torque by the handbook [N mm].
Torque handbook_torque(DrillEdges drill, FeedPerRev feed, DrillWork work);
/// Share of the thrust that the chisel edge takes, 0 to 1; 0 where a pilot hole takes it away.
double chisel_thrust_share(DrillEdges drill, FeedPerRev feed);

/// The feed at which the handbook's thrust is \p limit, at most half the diameter a turn; nothing where the chisel edge
/// alone takes as much. \param limit above 0
std::optional<FeedPerRev> feed_for_thrust(Force limit, DrillEdges drill, DrillWork work);

/// The second formulas: for a standard point in solid metal, drill neither sharp nor dull by name. Constants above 0.
Force catalogue_thrust(Length diameter, FeedPerRev feed, double constant);
Torque catalogue_torque(Length diameter, FeedPerRev feed, double constant);
Torque power_law_torque(Length diameter, FeedPerRev feed, double constant);

/// What is known of a metal for each model; a model without a figure is left out.
struct DrillModels {
  std::optional<DrillWork> handbook = std::nullopt;
  std::optional<double> catalogue = std::nullopt; // K: 2.22 for a steel of 160 HB
  std::optional<double> power_law = std::nullopt; // k: 0.36 for mild steel
};

/// Where the truth lies nine times in ten, as shares of the value: low above 0 and at most 1, high 1 or more.
struct Scatter {
  double low;
  double high;
};
/// Torque give or take 40 %, thrust 50 %; copper alloys from a quarter to twice (how far published models and constants
/// for one metal lie apart; derived).
inline constexpr Scatter steel_torque_scatter{0.6, 1.4};
inline constexpr Scatter steel_thrust_scatter{0.5, 1.5};
inline constexpr Scatter copper_alloy_scatter{0.25, 2.0};

/// The value is that of the first model present: handbook, catalogue, power law. Low and high are the farther of the
/// scatter about it and of the other models. Those know no split point, no thin web and no pilot hole: they are carried
/// over by the handbook's ratio of these edges to standard ones. No model present throws std::domain_error; for thrust
/// the power law counts as absent.
Spread<Force> drill_thrust(DrillEdges drill, FeedPerRev feed, DrillModels models, Scatter scatter);
Spread<Torque> drill_torque(DrillEdges drill, FeedPerRev feed, DrillModels models, Scatter scatter);

/// Power at the drill; torque and speed 0 or more.
Power spindle_power(Torque torque, SpindleSpeed speed);
/// Torque at the spindle when the motor gives its rated power: what it holds for long. An induction motor gives two or
/// three times as much before it stands still (from memory), and what turns with it adds to that for a moment.
/// \param rated above 0 \param speed above 0 \param efficiency from motor to spindle, above 0 and at most 1
Torque stall_torque(Power rated, SpindleSpeed speed, double efficiency);

/// Radius of the pinion that moves the quill, and length of the lever on its shaft; both above 0.
struct QuillLever {
  Length pinion_radius;
  Length lever;
};
/// Force at the end of the lever. Leaves out the return spring and friction, which come on top. \param thrust 0 or more
Force lever_force(Force thrust, QuillLever quill);

/// First root of tan x = x, squared: a column with one end held and the other kept on its line (4.4934^2; the tests
/// find it as the first zero of the Bessel function of order 3/2).
inline constexpr double located_tip_column = 20.190728556426630;
/// (pi/2)^2: the other end free.
inline constexpr double free_tip_column = 2.4674011002723397;
/// Diameter of the round bar that bends like a fluted drill, over the drill's (common practice, no source).
inline constexpr double fluted_bending_diameter = 0.7;
/// Polar modulus of the fluted part over D^3; a round bar has pi/16 = 0.196 (common practice, no source).
inline constexpr double fluted_torsion_modulus = 0.10;

enum class DrillTip { free, located }; // before it bites, and once it stands in a spot or its own cone

/// Both above 0.
struct DrillColumn {
  Length diameter;
  Length overhang; // chuck to tip
};
/// Thrust that buckles the drill. Under about 8 diameters (3 with the tip free) steel yields first: an upper bound.
/// \param modulus above 0; 207 GPa for high-speed steel
Force buckling_load(DrillColumn drill, Stress modulus, DrillTip tip);

/// Shear stress in the fluted part. \param torque 0 or more \param diameter above 0
Stress torsion_stress(Torque torque, Length diameter);

/// High end of the torque with packed flutes or a drill that screws itself in, over the cutting torque (common
/// practice, no source: 3 to 5).
inline constexpr double packed_flute_factor = 5;
/// Torque when the drill breaks through and grabs, the push on it unchanged. The chisel edge comes out first and leaves
/// its share of the push to the lips (low); then the lips come out from the middle, and what is left of them near the
/// corner takes all the push (value): the push times the diameter, by the handbook's own factors. Packed flutes and a
/// drill that draws itself in are the high end. Leaves out the stored turning of motor and belts: a stall torque below
/// this does not stop it.
Spread<Torque> grab_torque(DrillEdges drill, FeedPerRev feed, DrillWork work);
/// Force at \p arm from the spindle that holds a part against this torque. \param torque 0 or more \param arm above 0
Force holding_force(Torque torque, Length arm);

} // namespace quillside
