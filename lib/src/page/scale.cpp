#include "scale.hpp"

#include <algorithm>
#include <array>

#include <quillside/words/print.hpp>

namespace quillside::page {

namespace {

constexpr std::array<Scale, 21> scales{{{1000, 1}, {500, 1}, {200, 1}, {100, 1}, {50, 1},  {20, 1},  {10, 1},
                                        {5, 1},    {4, 1},   {3, 1},   {2, 1},   {1, 1},   {1, 2},   {1, 5},
                                        {1, 10},   {1, 20},  {1, 50},  {1, 100}, {1, 200}, {1, 500}, {1, 1000}}};

constexpr std::array<double, 18> round_times{80, 60, 50, 40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5};

} // namespace

Scale largest_scale(const std::vector<Fitting>& all) {
  const auto fits = [&](const Scale& scale) {
    return std::all_of(all.begin(), all.end(),
                       [&](const Fitting& one) { return scale.drawn(one.of_work) <= one.on_paper; });
  };
  const auto* found = std::find_if(scales.begin(), scales.end(), fits);
  return found == scales.end() ? scales.back() : *found;
}

double times_drawn(const Fitting& fitting) {
  for (const double times : round_times)
    if (times * fitting.of_work <= fitting.on_paper) return times;
  return 1;
}

std::string how_large(double times) {
  return times == 1 ? "true to size" : "drawn " + shortest_decimal(times) + " times its size";
}

} // namespace quillside::page
