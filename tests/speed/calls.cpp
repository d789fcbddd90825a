// What units cost when the program runs: calls of the library against the same sums in plain double.
//
// Both sides are called out of line and check their arguments alike. Short runs of either side take turns, and each
// call is judged by the median of the ratios of neighbouring runs, so that a busy machine slows both or is outvoted.

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numeric>
#include <vector>

#include <quillside/model/belt.hpp>
#include <quillside/model/chip.hpp>
#include <quillside/model/depth_stop.hpp>
#include <quillside/model/feed.hpp>
#include <quillside/model/surface_speed.hpp>

#include "raw.hpp"

namespace {

using namespace quillside;

constexpr double most = 1.05;
constexpr std::size_t inputs = 512;
constexpr int rounds = 8;  // over the inputs, in one run
constexpr int pairs = 401; // of runs
constexpr double near = 1e-12;

/// One set of figures, as quantities and as plain numbers.
struct Figures {
  Length length;
  Length shorter;
  CuttingSpeed edge;
  SpindleSpeed spindle;
  FeedPerRev feed;
  FeedPerTooth chip;
  TeethPerTurn teeth;
  FeedRate rate;
  Angle point;
};
struct RawFigures {
  double length, shorter, edge, spindle, feed, chip, teeth, rate, point;
};

std::array<Figures, inputs> figures;
std::array<RawFigures, inputs> raw_figures;

void fill() {
  for (std::size_t i = 0; i < inputs; ++i) {
    const double at = static_cast<double>(i) / inputs;
    figures[i] = {mm(1 + 12 * at),
                  mm(0.4 + 2 * at),
                  m_per_min(10 + 40 * at),
                  rev_per_min(600 + 3000 * at),
                  mm_per_rev(0.02 + 0.2 * at),
                  mm_per_tooth(0.01 + 0.05 * at),
                  flutes(2 + static_cast<int>(i % 3)),
                  mm_per_min(20 + 200 * at),
                  degrees(90 + 50 * at)};
    const Figures& f = figures[i];
    raw_figures[i] = {f.length.value(), f.shorter.value(), f.edge.value(), f.spindle.value(), f.feed.value(),
                      f.chip.value(),   f.teeth.value(),   f.rate.value(), f.point.value()};
  }
}

struct Run {
  double seconds;
  double sum;
};

/// Each call's result has its own place: a running sum would be waited for, and would hide what a call costs.
std::array<double, inputs> results;

template <class Inputs, class Call> Run run(const Inputs& all, Call call) {
  const auto start = std::chrono::steady_clock::now();
  for (int round = 0; round < rounds; ++round)
    for (std::size_t i = 0; i < inputs; ++i) results[i] = call(all[i]);
  const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
  return {time.count(), std::accumulate(results.begin(), results.end(), 0.0)};
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

struct Cost {
  double library;
  double plain;
};

/// Seconds a run of either side: the plain side's median, and that times the median ratio.
template <class Call, class RawCall> Cost compare(const char* name, Call call, RawCall raw_call) {
  std::vector<double> ratios;
  std::vector<double> plain_times;
  for (int pair = 0; pair < pairs; ++pair) {
    Run library{};
    Run plain{};
    if (pair % 2 == 0) library = run(figures, call);
    plain = run(raw_figures, raw_call);
    if (pair % 2 != 0) library = run(figures, call);
    if (!(std::abs(library.sum - plain.sum) <= near * std::abs(plain.sum))) {
      std::printf("%s: the library's sum is %.17g, the plain one %.17g\n", name, library.sum, plain.sum);
      std::exit(1);
    }
    ratios.push_back(library.seconds / plain.seconds);
    plain_times.push_back(plain.seconds);
  }
  const double ratio = median(ratios);
  const double plain = median(plain_times);
  std::printf("  %-28s %6.2f ns plain, ratio %.3f\n", name, 1e9 * plain / (inputs * rounds), ratio);
  return {ratio * plain, plain};
}

} // namespace

int main() {
  fill();
  const std::array costs{
      compare(
          "spindle_speed", [](const Figures& f) { return in_rev_per_min(spindle_speed(f.edge, f.length)); },
          [](const RawFigures& f) { return raw::spindle_speed(f.edge, f.length); }),
      compare(
          "cutting_speed", [](const Figures& f) { return cutting_speed(f.spindle, f.length).value(); },
          [](const RawFigures& f) { return raw::cutting_speed(f.spindle, f.length); }),
      compare(
          "feed_rate of a drill", [](const Figures& f) { return in_mm_per_min(feed_rate(f.feed, f.spindle)); },
          [](const RawFigures& f) { return raw::feed_rate(f.feed, f.spindle); }),
      compare(
          "feed_rate of a mill", [](const Figures& f) { return in_mm_per_min(feed_rate(f.chip, f.teeth, f.spindle)); },
          [](const RawFigures& f) { return raw::feed_rate(f.chip, f.teeth, f.spindle); }),
      compare(
          "time_to_travel", [](const Figures& f) { return in_minutes(time_to_travel(f.length, f.rate)); },
          [](const RawFigures& f) { return raw::time_to_travel(f.length, f.rate); }),
      compare(
          "driven_speed",
          [](const Figures& f) {
            return in_rev_per_min(driven_speed(f.spindle, {.driving = f.shorter, .driven = f.length}));
          },
          [](const RawFigures& f) { return raw::driven_speed(f.spindle, {.driving = f.shorter, .driven = f.length}); }),
      compare(
          "point_allowance",
          [](const Figures& f) { return in_mm(point_allowance({.diameter = f.length, .included = f.point})); },
          [](const RawFigures& f) { return raw::point_allowance({.diameter = f.length, .included = f.point}); }),
      compare(
          "largest_chip",
          [](const Figures& f) {
            return in_mm(largest_chip(f.chip, {.width = f.shorter / 2.5, .diameter = f.length}));
          },
          [](const RawFigures& f) {
            return raw::largest_chip(f.chip, {.width = f.shorter / 2.5, .diameter = f.length});
          }),
  };
  Cost all{};
  for (const Cost& cost : costs) {
    all.library += cost.library;
    all.plain += cost.plain;
  }
  const double ratio = all.library / all.plain;
  std::printf("library calls against raw double: ratio %.3f (at most %.2f)\n", ratio, most);
  return ratio <= most ? 0 : 1;
}
