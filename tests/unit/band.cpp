#include "catch.hpp"

#include <quillside/quantity/band.hpp>
#include <quillside/quantity/units.hpp>

using namespace quillside;

TEST_CASE("a band holds its ends and nothing beyond them") {
  const Band<SpindleSpeed> band{rev_per_min(600), rev_per_min(900), rev_per_min(1100)};
  CHECK(holds(band, rev_per_min(600)));
  CHECK(holds(band, rev_per_min(1100)));
  CHECK_FALSE(holds(band, rev_per_min(599.9)));
  CHECK_FALSE(holds(band, rev_per_min(1100.1)));
}
