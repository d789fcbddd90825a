// Which size of those that are sold is taken. The rows are the built-in ones: inch 1/32 to 1/4 by 64ths, then to 1 by
// 16ths; metric 1 to 6 mm by halves, then to 20 mm by whole millimetres.

#include "catch.hpp"

#include <quillside/data/tables.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

TEST_CASE("the nearest size that is sold") {
  const Tables tables = builtin_tables();
  struct Given {
    UnitSystem units;
    double wanted; // mm
    double under, over;
  };
  const auto given = GENERATE(Given{UnitSystem::inch, 2.9, 25.4 * 7 / 64, 25.4 / 8},
                              Given{UnitSystem::inch, 25.4 / 8, 25.4 / 8, 25.4 / 8}, // a size is its own neighbour
                              Given{UnitSystem::inch, 6.5, 25.4 / 4, 25.4 * 5 / 16},
                              Given{UnitSystem::inch, 25.4 / 4, 25.4 / 4, 25.4 / 4},
                              Given{UnitSystem::metric, 2.9, 2.5, 3}, Given{UnitSystem::metric, 5.9, 5.5, 6},
                              Given{UnitSystem::metric, 6.2, 6, 7}, Given{UnitSystem::metric, 19.5, 19, 20});
  INFO(given.wanted);
  const auto under = stock_at_or_under(tables.end_mill_stock, given.units, mm(given.wanted));
  const auto over = stock_at_or_over(tables.end_mill_stock, given.units, mm(given.wanted));
  REQUIRE(under);
  REQUIRE(over);
  CHECK_THAT(in_mm(under->size), WithinAbs(given.under, 1e-9));
  CHECK_THAT(in_mm(over->size), WithinAbs(given.over, 1e-9));
}

TEST_CASE("beyond what is sold there is no size") {
  const Tables tables = builtin_tables();
  CHECK_FALSE(stock_at_or_under(tables.end_mill_stock, UnitSystem::inch, mm(0.7)));
  CHECK_FALSE(stock_at_or_over(tables.end_mill_stock, UnitSystem::inch, inches(1.01)));
  CHECK_FALSE(stock_at_or_under(tables.end_mill_stock, UnitSystem::metric, mm(0.9)));
  CHECK_FALSE(stock_at_or_over(tables.end_mill_stock, UnitSystem::metric, mm(20.1)));
  CHECK_THAT(in_mm(stock_at_or_under(tables.end_mill_stock, UnitSystem::metric, mm(50))->size), WithinAbs(20, 1e-9));
  CHECK_THAT(in_mm(stock_at_or_over(tables.end_mill_stock, UnitSystem::inch, mm(0.1))->size),
             WithinAbs(25.4 / 32, 1e-9));
}
