#pragma once
// The basic profile of a 60 deg screw thread, metric or Unified, and the drill that leaves so much of it to the tap.
//
// Percentage of thread is the trade's: of three quarters of the sharp triangle (0.6495 P) each side, as published
// tap-drill charts count it, so that 1/4-20 with a no7 drill is 75 % and M3 with 2.5 mm is 77 %. The basic profile
// itself is five eighths of the triangle deep (0.5413 P): the whole of it is 83 % in the trade's count.
// Assumes: a hole as large as its drill. Leaves out: allowances and tolerances of screw and tap, the oversize of a
// drilled hole (which takes off a few parts in a hundred), taps that form the thread instead of cutting it.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law basic_profile_law{"basic-profile", "H = sqrt(3)/2 P; D2 = D - 3/4 H; D1 = D - 5/4 H",
                                       "ISO 68-1 and ASME B1.1, basic profile, as restated in an encyclopaedia",
                                       "reprint"};
inline constexpr Law tap_drill_law{"tap-drill", "drill = D - 1.2990 P x percent / 100 (3/4 H each side)",
                                   "Oberg et al., Machinery's Handbook, 31st ed., 2020, tap drill sizes and percentage "
                                   "of thread, p. 2155, whose percentages it gives",
                                   "derived"};
inline constexpr Law blind_thread_law{"blind-thread", "full width of the hole = full thread + lead of the tap x P",
                                      "geometry of a tap's chamfer", "derived"};

/// Major diameter above 0; pitch above 0 and less than half of it. Otherwise the functions throw std::domain_error.
struct Thread {
  Length major;
  Length pitch;
};

/// H, the height of the sharp triangle [mm].
Length sharp_height(Thread thread);
/// D2 [mm].
Length pitch_diameter(Thread thread);
/// D1 [mm]: the least minor diameter of a nut. A hole smaller than this binds on the screw.
Length basic_minor_diameter(Thread thread);

/// The hole that leaves this share of a thread, in the trade's count [mm]. \param share 0 to 1
Length tap_hole(Thread thread, double share);
/// The share of a thread in the trade's count that a hole of this size leaves: 0 and less for a hole as wide as the
/// screw. \param hole above 0
double share_of_thread(Thread thread, Length hole);
/// The same as a share of the depth of the basic profile. \param hole above 0
double share_of_basic_profile(Thread thread, Length hole);

/// A blind hole: the tap's first threads are ground away and cut no full thread.
struct BlindThread {
  Length full_thread; // wanted, 0 or more
  Length pitch;       // above 0
  double lead;        // threads of the tap's chamfer, 0 or more
};
/// Depth to full width of the drilled hole [mm], without the cone of the drill's point. Room for chips is none of it.
Length blind_hole_depth(BlindThread thread);

} // namespace quillside
