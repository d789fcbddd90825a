#pragma once
// Cutting speed and spindle speed of a round tool.
// Assumes: the edge at the full diameter.
// Leaves out: the slower edge nearer the axis (a drill's lip cuts at every radius), and feed's share of the path (under
// 0.1 % here).

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law surface_speed_law{"surface-speed", "v = pi D n",
                                       "Oberg et al., Machinery's Handbook, 31st ed., 2020, speed and feed formulas",
                                       "from memory"};

/// Spindle speed that gives the outer edge this cutting speed [turn/min].
/// \param speed    0 or more
/// \param diameter above 0; zero, less or no number throws std::domain_error
SpindleSpeed spindle_speed(CuttingSpeed speed, Length diameter);

/// Cutting speed of the outer edge at this spindle speed [rim mm/min].
/// \param speed    0 or more
/// \param diameter above 0; zero, less or no number throws std::domain_error
CuttingSpeed cutting_speed(SpindleSpeed speed, Length diameter);

} // namespace quillside
