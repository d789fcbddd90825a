#include <cmath>
#include <numbers>

#include "raw.hpp"

namespace raw {

double tangent(double angle) { return std::tan(angle * (2 * std::numbers::pi)); }

} // namespace raw
