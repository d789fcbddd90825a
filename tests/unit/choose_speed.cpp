// Which row answers: each rule by itself, on small invented tables (tests/tables_of.hpp).

#include "catch.hpp"
#include "tables_of.hpp"

#include <quillside/data/choose.hpp>
#include <quillside/words/fault.hpp>

using namespace quillside;
using quillside::test::drilling;
using quillside::test::tables_of;
using quillside::test::WithinRel;

namespace {

SpeedChoice chosen(const Tables& tables, const char* material, const char* cutter = "hss") {
  const SpeedResult result = choose_speed(tables, "drill", read_work(tables, material), cutter);
  REQUIRE(std::holds_alternative<SpeedChoice>(result));
  return std::get<SpeedChoice>(result);
}

double first(const SpeedChoice& choice) { return in_ft_per_min(choice.band.first); }

const std::string soft = "condition = \"annealed\"\nhardness = \"100 to 150 HB\"\nusual = true";
const std::string middle = "condition = \"annealed\"\nhardness = \"150 to 200 HB\"";
const std::string hard = "condition = \"tempered\"\nhardness = \"300 to 350 HB\"";

/// Only tolerance in this file: one multiplication and one division of an inch factor.
constexpr double rounding = 1e-12;

} // namespace

TEST_CASE("the grade's own row goes before its family's, that before the family's family") {
  const auto all =
      tables_of(drilling("G1", "90 ft/min") + drilling("tough", "60 ft/min") + drilling("steel", "30 ft/min"));
  CHECK_THAT(first(chosen(all, "G1")), WithinRel(90.0, rounding));
  const auto families = tables_of(drilling("tough", "60 ft/min") + drilling("steel", "30 ft/min"));
  CHECK_THAT(first(chosen(families, "G1")), WithinRel(60.0, rounding));
  const auto top = tables_of(drilling("steel", "30 ft/min"));
  CHECK_THAT(first(chosen(top, "G1")), WithinRel(30.0, rounding));
}

TEST_CASE("among equals the slower comes first and the others span the band") {
  const auto tables = tables_of(drilling("G1", "90 ft/min") + drilling("G1", "70 to 100 ft/min", "", "b"));
  const SpeedChoice choice = chosen(tables, "G1");
  CHECK(choice.row->source == "b");
  REQUIRE(choice.spanning.size() == 1);
  CHECK(choice.spanning.front()->source == "a");
  CHECK_THAT(in_ft_per_min(choice.band.low), WithinRel(70.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(100.0, rounding));
  CHECK_FALSE(choice.one_value);
}

TEST_CASE("one source with one figure gets the band of the limits, and says so") {
  const SpeedChoice choice = chosen(tables_of(drilling("G1", "90 ft/min")), "G1");
  CHECK(choice.one_value);
  CHECK_THAT(in_ft_per_min(choice.band.low), WithinRel(63.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(99.0, rounding));
}

TEST_CASE("one source with a range is banded by its own range") {
  const SpeedChoice choice = chosen(tables_of(drilling("G1", "60 to 90 ft/min")), "G1");
  CHECK_FALSE(choice.one_value);
  CHECK_THAT(in_ft_per_min(choice.band.low), WithinRel(60.0, rounding));
  CHECK_THAT(first(choice), WithinRel(60.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(90.0, rounding));
}

TEST_CASE("with nothing named the usual row answers and is shown as assumed") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "40 ft/min", hard));
  const SpeedChoice choice = chosen(tables, "G1");
  CHECK(choice.assumed);
  CHECK(choice.row->condition == "annealed");
  CHECK_THAT(first(choice), WithinRel(90.0, rounding));
}

TEST_CASE("a condition picks its rows; where a source prints several bands for it, the usual one") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "70 ft/min", middle) +
                                drilling("G1", "40 ft/min", hard));
  CHECK_THAT(first(chosen(tables, "G1@annealed")), WithinRel(90.0, rounding));
  CHECK_THAT(first(chosen(tables, "G1@tempered")), WithinRel(40.0, rounding));
  CHECK_FALSE(chosen(tables, "G1@tempered").assumed);
}

TEST_CASE("of several bands for a condition with none marked usual, the hardest") {
  const auto tables = tables_of(drilling("G1", "50 ft/min", "condition = \"tempered\"\nhardness = \"250 to 300 HB\"") +
                                drilling("G1", "40 ft/min", hard));
  CHECK_THAT(first(chosen(tables, "G1@tempered")), WithinRel(40.0, rounding));
}

TEST_CASE("a hardness picks the row whose band holds it") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "70 ft/min", middle) +
                                drilling("G1", "40 ft/min", hard));
  CHECK_THAT(first(chosen(tables, "G1@120HB")), WithinRel(90.0, rounding));
  CHECK_THAT(first(chosen(tables, "G1@325HB")), WithinRel(40.0, rounding));
}

TEST_CASE("at the edge of two bands the harder row answers") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "70 ft/min", middle));
  CHECK_THAT(first(chosen(tables, "G1@150HB")), WithinRel(70.0, rounding));
}

TEST_CASE("in the gap between two bands the harder row answers, and says so") {
  const auto tables = tables_of(drilling("G1", "70 ft/min", middle) + drilling("G1", "40 ft/min", hard));
  const SpeedChoice choice = chosen(tables, "G1@250HB");
  CHECK_THAT(first(choice), WithinRel(40.0, rounding));
  CHECK(choice.between_bands);
}

TEST_CASE("softer than the softest band is answered by the softest, and says so") {
  const SpeedChoice choice = chosen(tables_of(drilling("G1", "90 ft/min", soft)), "G1@80HB");
  CHECK_THAT(first(choice), WithinRel(90.0, rounding));
  CHECK(choice.below_softest);
}

TEST_CASE("past the last band the family's harder row answers; past that, nothing does") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("tough", "40 ft/min", hard) +
                                drilling("steel", "30 ft/min"));
  CHECK_THAT(first(chosen(tables, "G1@320HB")), WithinRel(40.0, rounding));
  const SpeedResult result = choose_speed(tables, "drill", read_work(tables, "G1@360HB"), "hss");
  REQUIRE(std::holds_alternative<PastLastRow>(result));
  CHECK(std::get<PastLastRow>(result).hardest->hardness.band.high == 350);
  CHECK(std::get<PastLastRow>(result).work.number == 360);
}

TEST_CASE("a Rockwell number is carried over for carbon steel by the table, straight between its lines") {
  // 37.5 HRC lies half way between 32 (300 HB) and 43 (400 HB): 350 HB, which the band still holds.
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "40 ft/min", hard));
  CHECK_THAT(first(chosen(tables, "G1@37.5HRC")), WithinRel(40.0, rounding));
  CHECK(std::holds_alternative<PastLastRow>(choose_speed(tables, "drill", read_work(tables, "G1@38HRC"), "hss")));
}

TEST_CASE("a Rockwell number of an austenitic grade is refused with a request for HB") {
  const auto tables = tables_of(drilling("S1", "50 ft/min", soft));
  try {
    choose_speed(tables, "drill", read_work(tables, "S1@90HRB"), "hss");
    FAIL("it was answered");
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::word);
    CHECK(fault.word == "90 HRB");
    CHECK(fault.message.find("give HB") != std::string::npos);
  }
}

TEST_CASE("a row on the same scale needs no conversion, whatever the metal") {
  const auto tables = tables_of(drilling("S1", "50 ft/min", "hardness = \"80 to 95 HRB\""));
  CHECK_THAT(first(chosen(tables, "S1@90HRB")), WithinRel(50.0, rounding));
}

TEST_CASE("rows that state no hardness answer for any, and say so") {
  const SpeedChoice choice = chosen(tables_of(drilling("G1", "50 ft/min")), "G1@180HB");
  CHECK(choice.hardness_unstated);
  CHECK_THAT(first(choice), WithinRel(50.0, rounding));
}

TEST_CASE("a cutter without a row goes by a ratio to another's, and its band by the ratio's own ends") {
  const auto tables = tables_of(
      drilling("G1", "50 ft/min") +
      "\n[[speed_ratio]]\nask = \"drill\"\ncutter = \"carbide\"\nof = \"hss\"\nratio = \"2 to 3\"\nsource = \"b\"\n");
  const SpeedChoice choice = chosen(tables, "G1", "carbide");
  REQUIRE(choice.ratio != nullptr);
  CHECK_THAT(in_ft_per_min(choice.band.low), WithinRel(100.0, rounding));
  CHECK_THAT(first(choice), WithinRel(100.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(150.0, rounding));
}

TEST_CASE("no row and no ratio: a contradiction that lists the cutters that have one") {
  const auto tables = tables_of(drilling("G1", "50 ft/min"));
  try {
    choose_speed(tables, "drill", read_work(tables, "G1"), "carbide");
    FAIL("it was answered");
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::conflict);
    CHECK(fault.allowed == std::vector<std::string>{"hss"});
  }
}

TEST_CASE("a layered metal is answered by its slowest layer") {
  const auto tables = tables_of(drilling("G1", "50 ft/min") + drilling("S1", "40 ft/min") + R"(
[[material]]
key = "pattern"
name = "layered"
metal = "carbon-steel"
layers = ["G1", "S1"]
source = "a"
)");
  CHECK_THAT(first(chosen(tables, "pattern")), WithinRel(40.0, rounding));
}

TEST_CASE("a material goes by its alias in either case, and a near miss is suggested") {
  const auto tables = tables_of(drilling("G1", "50 ft/min"));
  CHECK(read_work(tables, "Gee One").material->key == "G1");
  CHECK(read_work(tables, "g1").material == read_work(tables, "G1").material);
  try {
    read_work(tables, "gee ons");
    FAIL("it was known");
  } catch (const Fault& fault) {
    CHECK(fault.suggestion == "gee one");
  }
}

TEST_CASE("harder metal is never cut faster: a slower row of a softer band below comes first") {
  const auto tables = tables_of(drilling("G1", "20 ft/min", soft) + drilling("tough", "40 ft/min", hard));
  const SpeedChoice choice = chosen(tables, "G1@320HB");
  CHECK(choice.softer_is_slower);
  CHECK_THAT(first(choice), WithinRel(20.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(40.0, rounding));
}

TEST_CASE("between two bands every source's harder row spans, the slowest first") {
  const auto tables =
      tables_of(drilling("G1", "70 ft/min", middle) + drilling("G1", "50 ft/min", hard) +
                drilling("G1", "40 to 48 ft/min", "condition = \"tempered\"\nhardness = \"310 to 350 HB\"", "b"));
  const SpeedChoice choice = chosen(tables, "G1@250HB");
  CHECK(choice.between_bands);
  CHECK_THAT(first(choice), WithinRel(40.0, rounding));
  CHECK_THAT(in_ft_per_min(choice.band.high), WithinRel(50.0, rounding));
}

TEST_CASE("a condition that only a family's rows name is climbed for; a banded row of another state is no stand-in") {
  const auto tables =
      tables_of(drilling("G1", "90 ft/min", "hardness = \"100 to 150 HB\"") + drilling("tough", "40 ft/min", hard));
  CHECK_THAT(first(chosen(tables, "G1@tempered")), WithinRel(40.0, rounding));
  // A row that names neither condition nor hardness holds for any.
  const auto open = tables_of(drilling("G1", "80 ft/min") + drilling("tough", "40 ft/min", hard));
  CHECK_THAT(first(chosen(open, "G1@tempered")), WithinRel(80.0, rounding));
}

TEST_CASE("a number past the table of comparisons is past every row; one below it is softer than every row") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) + drilling("G1", "40 ft/min", hard));
  CHECK(std::holds_alternative<PastLastRow>(choose_speed(tables, "drill", read_work(tables, "G1@60HRC"), "hss")));
  CHECK(chosen(tables, "G1@60HRB").below_softest);
}

TEST_CASE("of one material's rows those that state a hardness are the more specific") {
  const auto tables = tables_of(drilling("G1", "90 ft/min", soft) +
                                drilling("G1", "40 ft/min", "condition = \"annealed\"\nusual = true", "b"));
  const SpeedChoice choice = chosen(tables, "G1");
  CHECK_THAT(first(choice), WithinRel(90.0, rounding));
  REQUIRE(choice.others.size() == 1);
  CHECK(choice.others.front()->source == "b");
}
