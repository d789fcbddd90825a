#pragma once
// What light between a lip and a gauge tells of the half angle there, and of a hollow lip.

#include "point_work.hpp"

namespace quillside {

/// Of both lips; a hollow lip sets `bow`. Needs light among the readings, web, chisel edge and relief solved.
Pair<Spread<Angle>> halves_of_light(PointWork& work);

/// Light tells how far off a lip is where its gap was measured, where there was none, or where only its middle is
/// hollow: then both ends touch.
bool light_tells_size(const LightReadings& light);

/// One gauge, one web, one chisel edge: only the gaps, which have to be measured, make a difference of the lips.
Spread<Angle> difference_of_light(const PointWork& work);

} // namespace quillside
