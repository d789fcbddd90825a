#include "point_chisel.hpp"

#include <algorithm>
#include <vector>

#include <quillside/model/lip.hpp>
#include <quillside/model/photo_marks.hpp>

#include "evidence.hpp"
#include "point_web.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

constexpr Angle steepest_edge = degrees(32); // acute; with a web of half the drill it still leaves a lip
constexpr Angle square = degrees(89.9);      // to the lips, as nearly as the relations allow

Spread<Angle> chisel_of_lengths(PointWork& work) {
  const auto& chisel = *work.readings.chisel_length;
  const auto& web = *work.readings.web;
  if (chisel.high < web.low)
    throw contradiction("--chisel-length", "--chisel-length " + in_words(chisel) + " is shorter than --web " +
                                               in_words(web) + ": a chisel edge is as long as the web, or longer");
  const auto edge = [](Length across, Length along) {
    return chisel_edge_from_lengths({std::min(across, along), along});
  };
  const auto spread = within_edges(work.through("--chisel-length", edge, fitting(work, web), chisel));
  work.because("chisel edge from its length", chisel_web_law, spread);
  return spread;
}

void solve_chisel_length(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  if (readings.chisel_length)
    point.chisel_length = *readings.chisel_length;
  else if (readings.end)
    point.chisel_length = readings.end->chisel_length;
  else if (point.chisel_read)
    point.chisel_length = work.through(
        "--chisel", [](Length web, Angle edge) { return chisel_length(web, edge); }, point.web.spread,
        point.chisel.spread);
}

} // namespace

Spread<Angle> within_edges(Spread<Angle> acute) { return at_most(at_least(acute, steepest_edge), square); }

void solve_chisel(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  const Known<Angle> usual{work.defaults.chisel, ""};
  if (work.inner_ends_moved()) {
    if (readings.chisel) work.not_judged("--chisel");
    if (readings.chisel_length) work.not_judged("--chisel-length");
    if (readings.end) work.not_judged("--end-marks");
    point.chisel = usual;
    return;
  }
  std::vector<Known<Angle>> known;
  if (readings.chisel) known.push_back({*readings.chisel, "--chisel"});
  if (readings.end) {
    const auto& edge = readings.end->chisel_edge;
    known.push_back({within_edges(supplement(edge)), "--end-marks"});
    work.because("chisel edge from the photograph", end_marks_law, edge);
  }
  if (readings.chisel_length && readings.web) known.push_back({chisel_of_lengths(work), "--chisel-length"});
  point.chisel_read = !known.empty();
  point.chisel = point.chisel_read ? agreed("the chisel edge lies, acute, at", known) : usual;
  solve_chisel_length(work);
}

} // namespace quillside
