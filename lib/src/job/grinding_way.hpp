#pragma once
// A way of grinding by its name, as tables and answers have it.

#include <array>
#include <cstddef>
#include <string_view>

#include <quillside/data/point_limit.hpp>
#include <quillside/job/point.hpp>

namespace quillside {

inline constexpr std::array all_ways{GrindingWay::two_facet, GrindingWay::four_facet, GrindingWay::cone};

constexpr std::string_view name_of(GrindingWay way) { return grinding_ways[static_cast<std::size_t>(way)]; }

} // namespace quillside
