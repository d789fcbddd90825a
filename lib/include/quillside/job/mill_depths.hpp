#pragma once
// The same pass at one depth after another, so that it can be drawn what a deeper one comes to.

#include <vector>

#include <quillside/job/mill.hpp>

namespace quillside {

/// Answers of `mill` at depths above 0, the shallowest first; each is what the ask says with that depth. The depths are
/// spread evenly as far as is worth a look: well past the deepest pass that can be right, past where the cutter breaks
/// when that is near, no further than the flutes. Between them stand the depths at which something changes: the
/// deepest pass that keeps every limit, the one of a metal no harder than the tables say, the depth asked for, and
/// those at which the verdict changes, and stress or power, at the high end of their doubt, reach their limits (to a
/// thousandth of the reach). Empty when the question is answered with `do not`, or when no page tells of the force.
/// Throws what `mill` throws.
std::vector<Answer> mill_depths(const Tables& tables, const MillQuestion& question);

} // namespace quillside
