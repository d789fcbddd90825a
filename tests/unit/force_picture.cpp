// The picture in docs/models/milling_load.md: the force on an end mill round one turn, drawn anew by the model each
// time the tests run, so that it cannot go stale. QUILLSIDE_ACCEPT=1 in the environment writes it.

#include "catch.hpp"

#include <array>
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <sstream>

#include <quillside/model/milling_forces.hpp>
#include <quillside/model/milling_load.hpp>

using namespace quillside;

namespace {

constexpr double left = 64;
constexpr double top = 24;
constexpr double wide = 600;
constexpr double high = 220;
constexpr double most_force = 70; // N at the top of the frame

/// 1/8 in, full slot, 304 (kc1.1 2150 MPa, mc 0.20), 0.0127 mm a tooth, a quarter of the diameter deep, helix 30.
MillingLoad slot(int teeth) {
  const Length diameter = inches(1, 8);
  return {
      {{diameter, diameter}, diameter / 4.0, mm_per_tooth(0.0127), flutes(teeth), degrees(30), MillSide::conventional},
      {{megapascals(2150), 0.20}, 0.3, mm(0.0024)}};
}

std::string number(double value) {
  std::ostringstream out;
  out << std::fixed << std::setprecision(1) << value;
  return out.str();
}

double x_of(double turn) { return left + wide * turn / 360; }
double y_of(double force) { return top + high * (1 - force / most_force); }

std::string curve(const MillingLoad& load, const char* dashes) {
  std::string points;
  for (int turn = 0; turn <= 360; turn += 2)
    points += number(x_of(turn)) + "," + number(y_of(in_newtons(resultant(load.at(degrees(turn)))))) + " ";
  points.pop_back();
  return "<polyline fill=\"none\" stroke=\"black\" stroke-width=\"2\"" + std::string(dashes) + " points=\"" + points +
         "\"/>\n";
}

std::string text(double x, double y, const char* anchor, const std::string& words) {
  return "<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor + "\">" + words + "</text>\n";
}

std::string picture() {
  std::string out =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"700\" height=\"340\" viewBox=\"0 0 700 340\" "
      "font-family=\"sans-serif\" font-size=\"14\">\n<rect width=\"700\" height=\"340\" fill=\"white\"/>\n";
  for (int force = 0; force <= 70; force += 10) {
    out += "<line x1=\"" + number(left) + "\" x2=\"" + number(left + wide) + "\" y1=\"" + number(y_of(force)) +
           "\" y2=\"" + number(y_of(force)) + "\" stroke=\"" + (force == 0 ? "black" : "silver") + "\"/>\n";
    if (force % 20 == 0) out += text(left - 8, y_of(force) + 5, "end", std::to_string(force) + " N");
  }
  for (int turn = 0; turn <= 360; turn += 90) out += text(x_of(turn), top + high + 20, "middle", std::to_string(turn));
  out += text(left + wide / 2, top + high + 40, "middle", "turn of the cutter, deg");
  out += curve(slot(2), "") + curve(slot(4), " stroke-dasharray=\"8 5\"");
  out += text(left, top + high + 62, "start",
              "Force across a 1/8 in end mill in a full slot, 304, 0.0127 mm a tooth, 0.79 mm deep:");
  out += text(left, top + high + 80 - 2, "start",
              "2 flutes (line) peak almost as high as 4 (dashes), which never let go.");
  return out + "</svg>\n";
}

} // namespace

TEST_CASE("the picture of the force round the turn is what the model draws now") {
  const std::string file = std::string(QUILLSIDE_SOURCE_DIR) + "/docs/models/force_round_the_turn.svg";
  const std::string now = picture();
  if (std::getenv("QUILLSIDE_ACCEPT") != nullptr) std::ofstream(file) << now;
  std::ifstream in(file);
  REQUIRE(in);
  std::ostringstream shown;
  shown << in.rdbuf();
  CHECK(shown.str() == now);
  // What it is there to show: with a force in step with the chip the peak would be one for 2 and for 4 flutes
  // (derived); since it falls off more slowly than the chip, that of 4 is a little higher. 4 flutes never let go.
  const auto two = milling_forces(slot(2));
  const auto four = milling_forces(slot(4));
  CHECK(two.peak_resultant / four.peak_resultant > 0.9);
  CHECK(two.peak_resultant / four.peak_resultant < 1);
  CHECK(two.mean_resultant / four.mean_resultant < 0.7);
}
