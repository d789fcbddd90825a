// Growth by heat against worked examples, a printed table of expansion, and a second derivation.

#include <cmath>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <quillside/data/choose_heat.hpp>
#include <quillside/model/heat_growth.hpp>

#include "catch.hpp"

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

template <class Quantity> Spread<Quantity> sure(Quantity value) { return {value, value, value}; }

} // namespace

TEST_CASE("growth and the heat needed, as worked in print") {
  // Worked exercise of a physics text, as solved on a public page: a steel ring of 2.5000 in at 20 degC is to slip over
  // a shaft of 2.5030 in, 13e-6 for a degree: 112.3 degC printed (0.1 its last digit).
  const HeatedFit ring{um_per_m_celsius(13), inches(2.5), inches(0.003), mm(0), celsius(20)};
  CHECK_THAT(in_celsius(heat_needed(ring)), WithinAbs(112.3, 0.05));
  // The same kind: an aluminium ring of 5.000 cm over a rod of 5.050 cm, 24e-6, from 20 degC: 437 printed.
  const HeatedFit aluminium{um_per_m_celsius(24), mm(50), mm(0.5), mm(0), celsius(20)};
  CHECK_THAT(in_celsius(heat_needed(aluminium)), WithinAbs(437, 0.5));
  // A shrink-fit page prints the rule itself: dt = interference / (expansion x hole).
  // Cooling: a rod of 2.0046 cm against a hole of 2.0000 cm, 12e-6: 191.67 degC printed.
  const Length shrunk = heat_growth(um_per_m_celsius(12), mm(20), kelvins(-191.67));
  CHECK_THAT(in_mm(shrunk), WithinAbs(-0.046, 0.00001));
}

TEST_CASE("both parts at one heat, as worked in print") {
  // Knight's brass ring on a steel rod, 2.00 cm, 50 um too tight at 20 degC, both heated: the rise is about 313 degC
  // printed, with 19e-6 and 11e-6; at that rise nothing is left of the interference.
  const TwoExpansions brass_on_steel{sure(um_per_m_celsius(19)), sure(um_per_m_celsius(11))};
  const auto left = interference_at(sure(micrometres(50)), brass_on_steel, mm(20), kelvins(313));
  CHECK_THAT(in_mm(left.value), WithinAbs(0, 0.0001));
  // An iron plug of 8.740 cm in a brass ring of 8.730 cm, both heated from 20: fits at 183.86 degC printed, with 12e-6
  // and 19e-6. The page takes each part's own size; one size for both is off by the hundredth that they differ.
  const TwoExpansions brass_on_iron{sure(um_per_m_celsius(19)), sure(um_per_m_celsius(12))};
  const auto plug = interference_at(sure(mm(0.10)), brass_on_iron, mm(87.3), kelvins(163.86));
  CHECK_THAT(in_mm(plug.value), WithinAbs(0, 0.0005));
  // A brass plug in an iron ring never frees by heating both: it only gets tighter.
  const TwoExpansions iron_on_brass{sure(um_per_m_celsius(12)), sure(um_per_m_celsius(19))};
  CHECK(interference_at(sure(mm(0.10)), iron_on_brass, mm(87.3), kelvins(163.86)).value > mm(0.19));
}

TEST_CASE("after cooling the fit is as it was") {
  const TwoExpansions any{sure(um_per_m_celsius(17)), sure(um_per_m_celsius(11))};
  const Spread<Length> cold{micrometres(-4), micrometres(4), micrometres(12)};
  const auto after = interference_at(cold, any, mm(3), kelvins(0));
  CHECK_THAT(in_mm(after.low), WithinAbs(-0.004, 1e-12));
  CHECK(after.value == cold.value);
  CHECK_THAT(in_mm(after.high), WithinAbs(0.012, 1e-12));
}

TEST_CASE("growth against the growth added up degree by degree") {
  // A solid grows by a dT of what it is already: W exp(integral of a dT) - W. The straight rule leaves out half of
  // a dT of the growth: 0.3 % over 230 degC of brass.
  for (const double rise : {10.0, 100.0, 230.0, 500.0}) {
    INFO(rise);
    const double a = 20.5e-6;
    const double sum =
        boost::math::quadrature::gauss_kronrod<double, 15>::integrate([&](double) { return a; }, 0.0, rise);
    const double exact = 25 * std::expm1(sum);
    CHECK_THAT(in_mm(heat_growth(um_per_m_celsius(20.5), mm(25), kelvins(rise))), WithinRel(exact, 0.51 * a * rise));
  }
}

TEST_CASE("a mean that rises with the heat is the mean of what a degree gives at each") {
  // The rows of 303 against 18Cr-8Ni of a printed table, growth in inches a hundred feet from 70 degF (an expansion
  // joint maker's table): 300 degF 2.61, 400 3.80, 500 5.01, 700 7.50. 303 and 304 differ by less than the row's 5 %.
  struct Printed {
    double to; // degF
    double inches_in_100_ft;
  };
  const Tables tables = builtin_tables();
  const Work work = read_work(tables, "303");
  for (const auto line : {Printed{300, 2.61}, Printed{400, 3.80}, Printed{500, 5.01}, Printed{700, 7.50}}) {
    INFO(line.to);
    const auto mean = choose_expansion(tables, work, fahrenheit(line.to)).mean;
    const auto grown = heat_growth(mean, sure(feet(100)), fahrenheit(line.to) - fahrenheit(70));
    CHECK_THAT(in_inches(grown.value), WithinRel(line.inches_in_100_ft, 0.03));
    CHECK(in_inches(grown.low) < line.inches_in_100_ft);
    CHECK(in_inches(grown.high) > line.inches_in_100_ft);
  }
}

TEST_CASE("the doubt of expansion and size in the growth") {
  // First order by hand: 17.8 +- 5 %, 3.000 +- 0.020 mm over 240: 12.816 um, doubt sqrt(0.05^2 + (0.02/3)^2) = 5.044 %.
  const auto grown = heat_growth(give_or_take(um_per_m_celsius(17.8), um_per_m_celsius(0.89)),
                                 give_or_take(mm(3), mm(0.02)), kelvins(240));
  CHECK_THAT(1000 * in_mm(grown.value), WithinAbs(12.816, 1e-9));
  CHECK_THAT(1000 * in_mm(grown.high - grown.value), WithinAbs(12.816 * 0.050442, 0.0005));
  // Clearance hot: growth less interference, doubts added in squares: 12.816 - 4, sqrt(8^2 + 0.6465^2) = 8.0261.
  const auto left = clearance_hot({micrometres(-4), micrometres(4), micrometres(12)}, grown);
  CHECK_THAT(1000 * in_mm(left.value), WithinAbs(8.816, 1e-9));
  CHECK_THAT(1000 * in_mm(left.value - left.low), WithinAbs(8.0261, 0.001));
}

TEST_CASE("no growth is had of what is no metal and no length") {
  CHECK_THROWS_AS(heat_growth(per_kelvin(0), mm(3), kelvins(100)), std::domain_error);
  CHECK_THROWS_AS(heat_growth(um_per_m_celsius(17), mm(0), kelvins(100)), std::domain_error);
  CHECK_THROWS_AS(heat_needed({um_per_m_celsius(17), mm(0), mm(0.01), mm(0), celsius(20)}), std::domain_error);
  // A fit that is loose by more than is wanted needs no heat.
  CHECK(heat_needed({um_per_m_celsius(17), mm(3), mm(-0.01), mm(0.005), celsius(20)}) == celsius(20));
}
