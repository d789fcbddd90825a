#pragma once
// A length along the axis told as the included angle: from the outer corner to the inner end of a lip, or to the tip.

#include "point_work.hpp"

namespace quillside {

/// To the inner end of the lip: by the chisel edge that was read, else by the relief of two flats. \p from is the flag
/// of the reading; the inner ends may not have moved.
Spread<Angle> depth_as_angle(PointWork& work, const std::string& from, const Spread<Length>& depth);

/// Over the tip. The top of flat facets lies where the first facet meets the axis; a cone's stands out by no one knows
/// how much, so that between two angles nothing is decided.
Spread<Angle> length_as_angle(PointWork& work, const std::string& from, const Spread<Length>& length);

} // namespace quillside
