#include <quillside/model/heat_growth.hpp>

#include <algorithm>
#include <stdexcept>

#include <quillside/quantity/propagate.hpp>

namespace quillside {

Length heat_growth(Expansion mean, Length size, TemperatureDifference rise) {
  if (!(mean > per_kelvin(0))) throw std::domain_error{"growth of a metal that does not expand"};
  if (!(size > mm(0))) throw std::domain_error{"growth of no length"};
  return size * (mean * rise);
}

Spread<Length> heat_growth(const Spread<Expansion>& mean, const Spread<Length>& size, TemperatureDifference rise) {
  return propagate([&](Expansion a, Length w) { return heat_growth(a, w, rise); }, mean, size);
}

Spread<Length> clearance_hot(const Spread<Length>& interference, const Spread<Length>& growth) {
  return propagate([](Length tight, Length grown) { return grown - tight; }, interference, growth);
}

Temperature heat_needed(const HeatedFit& fit) {
  const Length wanted = std::max(mm(0), fit.interference + fit.clearance);
  return fit.room + kelvins(wanted / heat_growth(fit.mean, fit.size, kelvins(1)));
}

Spread<Length> interference_at(const Spread<Length>& interference, const TwoExpansions& expansions, Length size,
                               TemperatureDifference rise) {
  return propagate(
      [&](Length tight, Expansion plate, Expansion part) {
        return tight - (heat_growth(plate, size, rise) - heat_growth(part, size, rise));
      },
      interference, expansions.plate, expansions.part);
}

} // namespace quillside
