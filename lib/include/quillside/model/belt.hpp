#pragma once
// Spindle speed of a belt-driven machine from its motor and its pulleys.
// Assumes: pitch diameters, or diameters measured alike on both pulleys of a belt.
// Leaves out: slip of the belt (1 to 2 % under load, common practice, no source) and of the motor below its plate
// speed.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law belt_law{"belt", "n2 = n1 d1 / d2", "equal belt speed on both pulleys: kinematics", "derived"};

/// The two pulleys one belt runs over; both above 0.
struct Pulleys {
  Length driving;
  Length driven;
};

/// Speed of the driven pulley [turn/min]. A pulley of no diameter throws std::domain_error.
SpindleSpeed driven_speed(SpindleSpeed driver, Pulleys pulleys);

} // namespace quillside
