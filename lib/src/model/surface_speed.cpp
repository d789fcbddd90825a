#include <quillside/model/surface_speed.hpp>

#include <numbers>
#include <stdexcept>

namespace quillside {

namespace {

/// One turn of the tool carries an edge once round its rim.
auto rim_per_turn(Length diameter) {
  if (!(diameter > mm(0))) throw std::domain_error{"cutting speed of a tool with no diameter"};
  using RimPerTurn = Quantity<detail::per<detail::times<detail::millimetre, detail::rim>, detail::turn>>;
  return RimPerTurn::from_value(std::numbers::pi * in_mm(diameter));
}

} // namespace

SpindleSpeed spindle_speed(CuttingSpeed speed, Length diameter) { return speed / rim_per_turn(diameter); }

CuttingSpeed cutting_speed(SpindleSpeed speed, Length diameter) { return rim_per_turn(diameter) * speed; }

} // namespace quillside
