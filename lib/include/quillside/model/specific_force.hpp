#pragma once
// How a metal resists an edge: its specific force, by two models, each with figures of its own.
// Leaves out: rake, speed, heat; wear, but for the handbooks' factor.

#include <span>

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law kienzle_law{"kienzle-force", "kc = kc11 h^-mc, h no less than the least chip",
                                 "Kienzle, Die Bestimmung von Kraeften und Leistungen an spanenden Werkzeugen und "
                                 "Werkzeugmaschinen, VDI-Z 94, 1952",
                                 "from memory"};
inline constexpr Law least_chip_law{"least-chip", "h_min = lambda r_edge",
                                    "Wojciechowski, Estimation of Minimum Uncut Chip Thickness (review), Materials 15, "
                                    "2022",
                                    "from memory"};
inline constexpr Law unit_power_law{"unit-power", "kc = Kp C W, P = kc Q",
                                    "Oberg et al., Machinery's Handbook, 31st ed., 2020, machining power",
                                    "from memory"};

/// A chip, and the thinnest that the edge still cuts; below it the edge rubs.
struct Chip {
  Length thickness; // 0 or more
  Length least;     // 0 or more; one of the two above 0
};
/// How a metal resists a sharp edge.
struct Kienzle {
  Stress kc11; // specific force of a chip 1 mm thick and 1 mm wide; above 0
  double mc;   // 0 or more, less than 1
};
/// Force on a square mm of chip section [MPa]. Below the least chip it stays what it is there.
/// Throws std::domain_error outside the ranges of its parts.
Stress specific_force(Kienzle metal, Chip chip);

/// The thinnest chip that an edge cuts [mm].
/// \param edge_radius 0 or more \param lambda 0 or more, 0.14 to 0.43 for most metals, 0.60 to 0.68 for C260 brass
/// (micro-milling papers, from memory). Less than 0 or no number throws std::domain_error.
Length minimum_chip_thickness(Length edge_radius, double lambda);

/// The handbooks' way to the same force, a second model with figures of its own.
struct HandbookPower {
  Stress unit_power;  // Kp: hp_per_in3_per_min(0.82); above 0
  double feed_factor; // C; above 0
  double wear;        // W: 1 sharp, 1.10 end milling, to 1.6 and over for a dull edge; 1 or more
};
/// Kp C W as a specific force [MPa]; throws std::domain_error outside the ranges of its parts.
Stress specific_force(HandbookPower power);

/// One line of a feed factor table.
struct FeedFactor {
  FeedPerTooth feed;
  double factor;
};
/// The feed factor C at a feed: a power law of the feed between two printed lines, the nearest pair's beyond the ends.
/// \param printed two lines or more, feeds rising, all above 0; \param feed above 0; otherwise throws std::domain_error
double feed_factor(std::span<const FeedFactor> printed, FeedPerTooth feed);

} // namespace quillside
