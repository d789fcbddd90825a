// The algebra of the units, and the ways in and out of them.

#include "catch.hpp"

#include <cmath>
#include <stdexcept>
#include <type_traits>
#include <utility>

#include <quillside/model/belt.hpp>
#include <quillside/model/feed.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/quantity/units.hpp>

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

template <class A, class B> using Product = decltype(std::declval<A>() * std::declval<B>());
template <class A, class B> using Quotient = decltype(std::declval<A>() / std::declval<B>());
template <class From, class To> constexpr bool stands_for = std::is_convertible_v<From, To>;

} // namespace

// --- what the compiler knows ---

TEST_CASE("a feed per tooth times teeth times turns is a feed rate, by the compiler's own algebra") {
  STATIC_REQUIRE(std::is_same_v<Product<FeedPerTooth, TeethPerTurn>, FeedPerRev>);
  STATIC_REQUIRE(std::is_same_v<Product<FeedPerRev, SpindleSpeed>, FeedRate>);
  STATIC_REQUIRE(std::is_same_v<Product<Product<FeedPerTooth, TeethPerTurn>, SpindleSpeed>, FeedRate>);
  STATIC_REQUIRE(std::is_same_v<Quotient<Length, FeedRate>, Time>);
  STATIC_REQUIRE(std::is_same_v<Product<SpindleSpeed, Time>, Angle>);
  STATIC_REQUIRE(std::is_same_v<Product<Force, Length>, Torque>);
  STATIC_REQUIRE(std::is_same_v<Product<Force, FeedRate>, Power>);
  STATIC_REQUIRE(std::is_same_v<Quotient<Force, Product<Length, Length>>, Stress>);
}

TEST_CASE("a ratio of two lengths is a plain number") {
  const double ratio = mm(3) / mm(2);
  CHECK(ratio == 1.5);
}

TEST_CASE("no quantity stands for another, though both are so much in a time or so much of a length") {
  STATIC_REQUIRE(stands_for<Length, Length>);
  STATIC_REQUIRE_FALSE(stands_for<Length, FeedPerRev>);
  STATIC_REQUIRE_FALSE(stands_for<Length, FeedPerTooth>);
  STATIC_REQUIRE_FALSE(stands_for<FeedPerTooth, FeedPerRev>);
  STATIC_REQUIRE_FALSE(stands_for<FeedPerRev, FeedPerTooth>);
  STATIC_REQUIRE_FALSE(stands_for<CuttingSpeed, FeedRate>);
  STATIC_REQUIRE_FALSE(stands_for<FeedRate, CuttingSpeed>);
  STATIC_REQUIRE_FALSE(stands_for<SpindleSpeed, CuttingSpeed>);
  STATIC_REQUIRE_FALSE(stands_for<SpindleSpeed, AngularVelocity>);
  STATIC_REQUIRE_FALSE(stands_for<AngularVelocity, SpindleSpeed>);
  STATIC_REQUIRE_FALSE(stands_for<Torque, Force>);
  STATIC_REQUIRE_FALSE(stands_for<Temperature, TemperatureDifference>);
  STATIC_REQUIRE_FALSE(stands_for<TemperatureDifference, Temperature>);
}

TEST_CASE("a bare number is no quantity, and a quantity is no bare number") {
  STATIC_REQUIRE_FALSE(stands_for<double, Length>);
  STATIC_REQUIRE_FALSE(stands_for<double, Angle>);
  STATIC_REQUIRE_FALSE(stands_for<double, SpindleSpeed>);
  STATIC_REQUIRE_FALSE(stands_for<int, TeethPerTurn>);
  STATIC_REQUIRE_FALSE(stands_for<Length, double>);
  STATIC_REQUIRE_FALSE(stands_for<Angle, double>);
}

TEST_CASE("the words of a call cannot change places") {
  using SpindleSpeedCall = SpindleSpeed (*)(CuttingSpeed, Length);
  STATIC_REQUIRE(std::is_invocable_v<SpindleSpeedCall, CuttingSpeed, Length>);
  STATIC_REQUIRE_FALSE(std::is_invocable_v<SpindleSpeedCall, Length, CuttingSpeed>);
  STATIC_REQUIRE_FALSE(std::is_invocable_v<SpindleSpeedCall, FeedRate, Length>);
  STATIC_REQUIRE(std::is_same_v<decltype(&spindle_speed), SpindleSpeedCall>);
  STATIC_REQUIRE_FALSE(std::is_invocable_v<decltype(&time_to_travel), FeedRate, Length>);
  STATIC_REQUIRE_FALSE(std::is_invocable_v<decltype(&driven_speed), Pulleys, SpindleSpeed>);
}

// --- numbers ---

TEST_CASE("the algebra multiplies the numbers too") {
  // 0.05 mm a tooth, 2 teeth, 1500 turns a minute: 150 mm a minute.
  const FeedRate rate = mm_per_tooth(0.05) * flutes(2) * rev_per_min(1500);
  CHECK_THAT(in_mm_per_min(rate), WithinRel(150.0, 5e-16)); // two products
  CHECK_THAT(in_minutes(mm(300) / rate), WithinRel(2.0, 5e-16));
  // 2 N on 3 mm over 4 mm/min: 6 N mm, 8 N mm/min.
  CHECK(in_newton_metres(newtons(2) * mm(3)) == 0.006);
  CHECK_THAT(in_watts(newtons(2) * mm_per_min(4)), WithinRel(8.0 / 60000, 5e-16));
  CHECK(in_megapascals(newtons(6) / (mm(2) * mm(3))) == 1);
}

TEST_CASE("the turn is the base of angles, and a degree is exactly one 360th of it") {
  CHECK(in_turns(turns(1)) == 1);
  CHECK(degrees(360) == turns(1));
  CHECK(degrees(180) == turns(0.5));
  CHECK(degrees(90) == turns(0.25));
  CHECK(degrees(45) == turns(0.125));
  CHECK(in_degrees(turns(0.25)) == 90);
  // Whole degrees survive the way there and back: n/360 is off by at most half a place, and so is its product.
  for (int whole = 0; whole <= 360; ++whole) CHECK_THAT(in_degrees(degrees(whole)), WithinRel(whole * 1.0, 5e-16));
}

TEST_CASE("spindle turns in a time are an angle in turns") {
  const Angle turned = rev_per_min(620) * seconds(30);
  CHECK_THAT(in_turns(turned), WithinRel(310.0, 5e-16));
}

TEST_CASE("every way in has its way out") {
  // In and out are two roundings each: four of 1.1e-16.
  constexpr double there_and_back = 5e-16;
  const double amount = GENERATE(1.0, 0.1285, 3.0, 1e-6, 25000.0, 1.0 / 3, 999983.0, -2.5);
  const auto same = WithinRel(amount, there_and_back);
  CHECK(in_mm(mm(amount)) == amount);
  CHECK_THAT(in_inches(inches(amount)), same);
  CHECK_THAT(in_thou(thou(amount)), same);
  CHECK_THAT(in_seconds(seconds(amount)), same);
  CHECK(in_minutes(minutes(amount)) == amount);
  CHECK_THAT(in_degrees(degrees(amount)), same);
  CHECK(in_turns(turns(amount)) == amount);
  CHECK_THAT(in_radians(radians(amount)), same);
  CHECK(in_rev_per_min(rev_per_min(amount)) == amount);
  CHECK_THAT(in_m_per_min(m_per_min(amount)), same);
  CHECK_THAT(in_ft_per_min(ft_per_min(amount)), same);
  CHECK_THAT(in_rad_per_s(rad_per_s(amount)), same);
  CHECK(in_mm_per_rev(mm_per_rev(amount)) == amount);
  CHECK_THAT(in_inches_per_rev(in_per_rev(amount)), same);
  CHECK(in_mm_per_tooth(mm_per_tooth(amount)) == amount);
  CHECK_THAT(in_inches_per_tooth(in_per_tooth(amount)), same);
  CHECK(in_mm_per_min(mm_per_min(amount)) == amount);
  CHECK_THAT(in_inches_per_min(in_per_min(amount)), same);
  CHECK(in_newtons(newtons(amount)) == amount);
  CHECK_THAT(in_pounds_force(pounds_force(amount)), same);
  CHECK_THAT(in_newton_metres(newton_metres(amount)), same);
  CHECK_THAT(in_watts(watts(amount)), same);
  CHECK(in_megapascals(megapascals(amount)) == amount);
  CHECK(in_kelvins(kelvins(amount)) == amount);
}

TEST_CASE("every number of flutes comes back whole") {
  for (int count = 1; count <= 32; ++count) CHECK(in_flutes(flutes(count)) == count);
}

TEST_CASE("one length has one value, whichever unit it came in") {
  // A few roundings of 25.4, at most 1.1e-16 each.
  const auto one_inch = WithinRel(25.4, 5e-16);
  CHECK_THAT(in_mm(inches(1.0)), one_inch);
  CHECK_THAT(in_mm(thou(1000)), one_inch);
  CHECK_THAT(in_mm(micrometres(25400)), one_inch);
  CHECK_THAT(in_mm(metres(0.0254)), one_inch);
  CHECK_THAT(in_mm(feet(1) / 12.0), one_inch);
  CHECK_THAT(in_mm(inches(64, 64)), one_inch);
  CHECK_THAT(in_mm(inches(3, 16)), WithinRel(4.7625, 5e-16));
}

TEST_CASE("a temperature there and back, and differences apart from points") {
  const double amount = GENERATE(-40.0, 0.0, 20.0, 150.0, 148.88888888888889);
  // 273.15 is added and taken away: a place of some 420 is 6e-14.
  CHECK_THAT(in_celsius(celsius(amount)), WithinAbs(amount, 1.2e-13));
  CHECK_THAT(in_fahrenheit(fahrenheit(amount)), WithinAbs(amount, 2.4e-13));
  CHECK_THAT(in_kelvins(celsius(amount + 10) - celsius(amount)), WithinAbs(10, 1.2e-13));
}

// --- angles as numbers ---

TEST_CASE("sine, cosine and tangent at the angles of the set square") {
  // 30, 45 and 60 degrees by Pythagoras; tolerance: a few roundings of 1.
  constexpr double few = 1e-15;
  CHECK_THAT(sine(degrees(30)), WithinAbs(0.5, few));
  CHECK_THAT(cosine(degrees(60)), WithinAbs(0.5, few));
  CHECK_THAT(tangent(degrees(45)), WithinAbs(1, few));
  CHECK_THAT(sine(degrees(60)), WithinAbs(std::sqrt(3.0) / 2, few));
  CHECK_THAT(tangent(degrees(60)), WithinAbs(std::sqrt(3.0), 2 * few));
  CHECK_THAT(cosine(degrees(90)), WithinAbs(0, few));
  CHECK_THAT(sine(degrees(-90)), WithinAbs(-1, few));
  CHECK_THAT(cosine(degrees(180)), WithinAbs(-1, few));
}

TEST_CASE("an angle comes back from its cosine") {
  for (int whole = 1; whole < 180; ++whole) {
    // Near 0 and 180 deg the cosine is flat: an error of one place in it is 1/sin of one in the angle, 57 at 1 deg.
    CHECK_THAT(in_degrees(angle_of_cosine(cosine(degrees(whole)))), WithinAbs(whole, 1e-12));
  }
  CHECK(in_degrees(angle_of_cosine(1)) == 0);
  CHECK(angle_of_cosine(-1) == turns(0.5));
}

TEST_CASE("no angle has a cosine beyond one") {
  CHECK_THROWS_AS(angle_of_cosine(1.0000001), std::domain_error);
  CHECK_THROWS_AS(angle_of_cosine(-1.0000001), std::domain_error);
  CHECK_THROWS_AS(angle_of_cosine(std::nan("")), std::domain_error);
}

TEST_CASE("one turn a second is two pi radians a second") {
  // 2 pi to the digits of a double, from memory; three roundings.
  CHECK_THAT(in_rad_per_s(angular_velocity(rev_per_min(60))), WithinRel(6.283185307179586, 5e-16));
}
