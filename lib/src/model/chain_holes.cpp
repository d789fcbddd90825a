#include <quillside/model/chain_holes.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace quillside {

namespace {

// A count that comes out whole but for rounding is that whole number: 3 holes at just the pitch asked for.
constexpr double rounding = 1e-9;

Length between_end_holes(HoleRow row) {
  if (!(row.diameter > mm(0))) throw std::domain_error{"a row of holes with no diameter"};
  if (!(row.slot_length >= row.diameter)) throw std::domain_error{"a slot shorter than its holes are wide"};
  return row.slot_length - row.diameter;
}

HolesPlaced placed(Length run, int count) {
  if (count < 2) return {1, mm(0), {mm(0)}};
  HolesPlaced holes{count, run / (count - 1), {}};
  for (int i = 0; i < count; ++i) holes.centres.push_back(run * (static_cast<double>(i) / (count - 1) - 0.5));
  return holes;
}

void require_pair(HolePair pair) {
  if (!(pair.diameter > mm(0)) || !(pair.pitch > mm(0))) throw std::domain_error{"two holes with no size or no pitch"};
}

/// sqrt(1 - (p/D)^2): half the chord in which two circles meet, over their radius.
double chord_share(HolePair pair) {
  require_pair(pair);
  const double apart = std::min(pair.pitch / pair.diameter, 1.0);
  return std::sqrt(1 - apart * apart);
}

} // namespace

HolesPlaced holes_apart(HoleRow row, Length least_pitch) {
  const Length run = between_end_holes(row);
  if (!(least_pitch > mm(0))) throw std::domain_error{"a row of holes with no pitch"};
  return placed(run, 1 + static_cast<int>(std::floor(run / least_pitch + rounding)));
}

HolesPlaced holes_together(HoleRow row, Length most_pitch) {
  const Length run = between_end_holes(row);
  if (!(most_pitch > mm(0))) throw std::domain_error{"a row of holes with no pitch"};
  return placed(run, 1 + static_cast<int>(std::ceil(run / most_pitch - rounding)));
}

Length web_between(HolePair pair) {
  require_pair(pair);
  return pair.pitch - pair.diameter;
}

Length cusp_height(HolePair pair) { return pair.diameter / 2.0 * (1 - chord_share(pair)); }

Length clear_width(HolePair pair) { return pair.diameter * chord_share(pair); }

} // namespace quillside
