#include "point_web.hpp"

#include <vector>

#include <quillside/model/lip.hpp>
#include <quillside/model/photo_marks.hpp>

#include "evidence.hpp"
#include "spread_ends.hpp"

namespace quillside {

Spread<Length> fitting(const PointWork& work, Spread<Length> web) {
  return at_most(at_least(web, work.readings.diameter * 0.01), work.readings.diameter / 2.0);
}

void solve_web(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  std::vector<Known<Length>> known;
  if (readings.web) known.push_back({fitting(work, *readings.web), "--web"});
  if (readings.end) work.because("web from the photograph", end_marks_law, readings.end->web);
  if (readings.end) known.push_back({fitting(work, readings.end->web), "--end-marks"});
  if (readings.chisel && readings.chisel_length && !work.inner_ends_moved()) {
    const auto web = work.through(
        "--chisel-length",
        [](Length length, Angle edge) {
          return web_from_chisel({length, edge});
        },
        *readings.chisel_length, *readings.chisel);
    known.push_back({fitting(work, web), "--chisel-length"});
    work.because("web from the chisel edge", chisel_web_law, web);
  }
  if (!known.empty()) point.web_found = agreed("the web is", known).spread;
  // Thinning takes the middle away: how far apart the lips lie further out is still that of the drill.
  point.web_read = !known.empty() && !work.inner_ends_moved();
  point.web = point.web_read ? agreed("the web is", known) : Known<Length>{fitting(work, work.defaults.web), ""};
}

} // namespace quillside
