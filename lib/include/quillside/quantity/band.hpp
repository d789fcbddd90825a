#pragma once
// Band: freedom. What may be dialled, and the value to begin with.
// A band never passes through a model; doubt does, and is a Spread.

namespace quillside {

/// low <= first <= high, all of one quantity.
template <class Quantity> struct Band {
  Quantity low;
  Quantity first;
  Quantity high;
};

/// A band of one value.
template <class Quantity> constexpr Band<Quantity> only(Quantity value) { return {value, value, value}; }

template <class Quantity> constexpr bool holds(const Band<Quantity>& band, Quantity value) {
  return band.low <= value && value <= band.high;
}

} // namespace quillside
