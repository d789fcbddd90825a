#pragma once
// Spread: doubt. Where the truth lies nine times in ten. The two sides may differ.

namespace quillside {

/// low <= value <= high, all of one quantity.
template <class Quantity> struct Spread {
  Quantity low;
  Quantity value;
  Quantity high;
};

/// A value with the same doubt on either side; \p half_width >= 0.
template <class Quantity, class Difference>
constexpr Spread<Quantity> give_or_take(Quantity value, Difference half_width) {
  return {value - half_width, value, value + half_width};
}

} // namespace quillside
