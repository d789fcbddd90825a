#include "slot_width.hpp"

#include <algorithm>

#include <quillside/data/choose_fit.hpp>
#include <quillside/model/slot_walls.hpp>
#include <quillside/quantity/propagate.hpp>

namespace quillside {

Tightness tightness(const Tables& tables, const SlotQuestion& ask, Length size) {
  if (ask.clearance) return {{-ask.clearance->value, -ask.clearance->value}, "", "the clearance asked for", {}};
  if (ask.interference)
    return {{ask.interference->value, ask.interference->value}, "", "the interference asked for", {}};
  const FitLimits limits = fit_limits(tables, ask.fit ? std::string_view(ask.fit->value) : usual_fit, size);
  std::string described = limits.name;
  if (!limits.class_name.empty() && limits.class_name != limits.name) described += ", " + limits.class_name;
  return {limits.interference, limits.name, std::move(described), limits.sources};
}

Band<Length> opening(Length part, const Range<Length>& interference) {
  const auto at = [&](Length tight) { return slot_opening({part, tight}); };
  return {at(interference.high), at((interference.low + interference.high) / 2.0), at(interference.low)};
}

Range<Length> at_the_ends(Range<Length> interference) {
  return {std::min(interference.low, mm(0)), std::min(interference.high, mm(0))};
}

Spread<Length> width_as_cut(const SlotAsCut& cut) {
  const Spread<Length> setting = give_or_take(mm(0), cut.one_setting);
  const auto width = [&](Length first_cut, Length one, Length other) { return first_cut + cut.travel + one + other; };
  return propagate(width, cut.first_cut, setting, setting);
}

Length half_width(const Spread<Length>& spread) {
  return std::max(spread.high - spread.value, spread.value - spread.low);
}

ShankGauges shank_gauges(const Tables& tables, const Band<Length>& width) {
  ShankGauges gauges;
  for (const auto& row : tables.sizes) {
    if (row.length() <= width.low) gauges.goes = &row;
    if (row.length() >= width.high && gauges.stays_out == nullptr) gauges.stays_out = &row;
  }
  return gauges;
}

} // namespace quillside
