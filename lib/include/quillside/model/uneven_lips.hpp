#pragma once
// Lips that are not alike: how far off the hole comes, and which lip does the work.
// Assumes: a free point, pivoting about the place where the two lips would meet; the farther corner sweeps the hole.
// Leaves out: the hold of margins or a bushing. A drill held on its axis drills no oversize at all from this cause, so
// what comes out here is an upper bound; run-out of the spindle and a bent drill come on top.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law uneven_lips_law{"uneven-lips", "oversize = 2 |a1 - a2| / (cot k1 + cot k2), at most",
                                     "geometry of two lips about their own apex", "derived"};
inline constexpr Law lip_lengths_law{"lip-lengths", "apex offset = (L_B sin k_B - L_A sin k_A) / 2",
                                     "geometry of two lips about their own apex", "derived"};
inline constexpr Law hole_backward_law{"hole-backward",
                                       "height difference >= (hole - D - usual oversize) / tan(point/2)",
                                       "the free-point bound read backward", "derived"};
inline constexpr Law chip_share_law{"chip-share", "t = f/2 +- height difference, within 0 to f",
                                    "half a turn of each lip in the other's track", "derived"};

/// Heights are axial, toward the work, both at the same distance from the axis. Half angles above 0 and under 90 deg,
/// diameter above 0; otherwise the functions throw std::domain_error.
struct UnevenLips {
  Length diameter;
  Angle half_a;
  Angle half_b;
  Length height_a;
  Length height_b;
  Length at_radius; // where the heights were read: 0 to half the diameter; with equal half angles it does not matter
};

/// How far the place where the lips would meet lies off the axis, toward lip A when above 0 [mm].
Length apex_offset(UnevenLips lips);
/// The most by which a hole drilled with a free point comes out over the drill's size [mm].
Length free_point_oversize(UnevenLips lips);

/// The apex offset that lips of these lengths have, toward lip A when above 0 [mm]: the shorter lip stands nearer the
/// apex. \param lips lengths above 0, half angles above 0 and under 90 deg
struct LipLengths {
  Length a;
  Length b;
  Angle half_a;
  Angle half_b;
};
Length apex_offset_of_lengths(LipLengths lips);

/// Height of lip A over lip B at a distance from the axis, toward the work [mm]; the inverse of apex_offset.
struct ApexOffset {
  Length offset;
  Angle half_a;
  Angle half_b;
  Length at_radius; // 0 or more
};
Length height_difference(ApexOffset apex);

/// The height difference, with equal half angles, whose free-point oversize this is: what a hole so much over size asks
/// of the lips at the least. \param oversize 0 or more \param half above 0 and under 90 deg
Length least_height_difference(Length oversize, Angle half);

/// Thickness of the chip each lip takes, along the axis [mm].
struct ChipShare {
  Length higher;
  Length lower;
};
/// \param feed       0 or more
/// \param difference of the lips' heights, 0 or more; from half the feed on one lip cuts alone
ChipShare chip_share(FeedPerRev feed, Length difference);

} // namespace quillside
