#include "catch.hpp"

#include <type_traits>

#include <quillside/quantity/band.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

using namespace quillside;

TEST_CASE("a give or take lies the same on either side of its value") {
  // Eighths and quarters: exact in binary, so no tolerance.
  const auto thickness = give_or_take(mm(3), mm(0.125));
  CHECK(in_mm(thickness.low) == 2.875);
  CHECK(in_mm(thickness.value) == 3);
  CHECK(in_mm(thickness.high) == 3.125);
}

TEST_CASE("a value without doubt is a spread of no width") {
  const auto exact = give_or_take(degrees(90), degrees(0));
  CHECK(exact.low == exact.value);
  CHECK(exact.high == exact.value);
}

TEST_CASE("a temperature is given or taken by a difference") {
  const auto tempered = give_or_take(celsius(200), kelvins(10));
  // 473.15 K and 10 K: one rounding each, and one more on the way to Celsius; a place of 483 is 6e-14.
  CHECK_THAT(in_celsius(tempered.low), quillside::test::WithinAbs(190, 1.2e-13));
  CHECK_THAT(in_celsius(tempered.high), quillside::test::WithinAbs(210, 1.2e-13));
}

TEST_CASE("doubt is not freedom: a spread is no band, nor a band a spread") {
  STATIC_REQUIRE_FALSE(std::is_convertible_v<Spread<Length>, Band<Length>>);
  STATIC_REQUIRE_FALSE(std::is_convertible_v<Band<Length>, Spread<Length>>);
}
