#pragma once
// Numbers at random, the same in every run.

#include <random>

namespace quillside::test {

/// \param random with a fixed seed, so that a failure repeats; it outlives what is given back
inline auto evenly(std::mt19937_64& random) {
  return [&random](double low, double high) { return std::uniform_real_distribution<double>{low, high}(random); };
}

} // namespace quillside::test
