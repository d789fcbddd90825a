// Which rows answer for heat: growth between rows, colours, ceilings.

#include <string>

#include <quillside/data/choose_heat.hpp>
#include <quillside/data/load.hpp>

#include "catch.hpp"
#include "tables_of.hpp"

using namespace quillside;
using test::WithinAbs;

namespace {

double mean_of(const std::string& metal, double celsius_to) {
  const Tables tables = builtin_tables();
  return in_um_per_m_celsius(choose_expansion(tables, read_work(tables, metal), celsius(celsius_to)).mean.value);
}

const HeatCeiling& ceiling_of(const std::string& metal, bool temper_named = false) {
  static const Tables tables = builtin_tables();
  const auto* row = choose_ceiling(tables, read_work(tables, metal), temper_named);
  REQUIRE(row != nullptr);
  return *row;
}

} // namespace

TEST_CASE("mean expansion: a row's own at its reach, between two in proportion, beyond the ends the end row's") {
  CHECK_THAT(mean_of("303", 100), WithinAbs(17.2, 1e-9));
  CHECK_THAT(mean_of("303", 315), WithinAbs(17.8, 1e-9));
  CHECK_THAT(mean_of("303", 207.5), WithinAbs(17.5, 1e-9)); // half way from 100 to 315
  CHECK_THAT(mean_of("303", 60), WithinAbs(17.2, 1e-9));
  CHECK_THAT(mean_of("303", 900), WithinAbs(18.4, 1e-9));
  // 5.5 microinches an inch for a degree F are 9.9 um/(m degC) exactly.
  CHECK_THAT(mean_of("416", 100), WithinAbs(9.9, 1e-9));
}

TEST_CASE("mean expansion: a family's range is its own doubt, a single figure is off by the limit") {
  const Tables tables = builtin_tables();
  const auto family = choose_expansion(tables, read_work(tables, "C752"), celsius(200));
  CHECK(family.rows.front()->material == "nickel-silver");
  CHECK_THAT(in_um_per_m_celsius(family.mean.low), WithinAbs(16.2, 1e-9));
  CHECK_THAT(in_um_per_m_celsius(family.mean.high), WithinAbs(17.1, 1e-9));
  const auto single = choose_expansion(tables, read_work(tables, "304"), celsius(200));
  CHECK_THAT(in_um_per_m_celsius(single.mean.low), WithinAbs(17.2 * 0.95, 1e-9));
  CHECK(choose_expansion(tables, read_work(tables, "303"), celsius(200)).rows.size() == 2);
}

TEST_CASE("a metal without a row for its growth is a fault of the tables that says what to do") {
  const Tables tables = test::tables_of("");
  try {
    choose_expansion(tables, read_work(tables, "G1"), celsius(100));
    FAIL("it was answered");
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::data);
    CHECK(fault.word == "G1");
    CHECK(fault.message.find("tables new expansion") != std::string::npos);
  }
}

TEST_CASE("colour: the last one reached, none below the first") {
  const Tables tables = builtin_tables();
  CHECK(colour_at(tables, "carbon-steel", fahrenheit(429)) == nullptr);
  CHECK(colour_at(tables, "carbon-steel", fahrenheit(431))->colour == "very pale yellow");
  CHECK(colour_at(tables, "carbon-steel", fahrenheit(571))->colour == "dark blue");
  CHECK(colour_at(tables, "carbon-steel", fahrenheit(2000))->colour == "blue tinged with green");
  // The same colours come about 100 degC later on stainless.
  CHECK(colour_at(tables, "austenitic-stainless", fahrenheit(500)) == nullptr);
  CHECK(colour_at(tables, "martensitic-stainless", fahrenheit(660))->colour == "straw yellow");
  const auto later = first_colour(tables, "austenitic-stainless")->heat.range.low -
                     first_colour(tables, "carbon-steel")->heat.range.low;
  CHECK_THAT(in_kelvins(later), WithinAbs(67, 1)); // first tints: 550 against 430 degF
  CHECK(colour_at(tables, "brass", celsius(500)) == nullptr);
  CHECK(first_colour(tables, "brass") == nullptr);
}

TEST_CASE("ceiling: the most specific row that holds; a hardened part is held low until its temper is named") {
  CHECK(ceiling_of("C752").ceiling.range.low == celsius(260));
  CHECK(ceiling_of("C360").ceiling.range.low == celsius(250));
  CHECK(ceiling_of("303").ceiling.range.low == fahrenheit(800));
  CHECK(ceiling_of("416").ceiling.range.low == fahrenheit(750));
  CHECK(ceiling_of("416@tempered").ceiling.range.low == celsius(200));
  CHECK(ceiling_of("416@40HRC").ceiling.range.low == celsius(200));
  CHECK(ceiling_of("416@tempered", true).ceiling.range.low == fahrenheit(750));
  CHECK(ceiling_of("1084").until_tempered);
  CHECK(ceiling_of("1084").ceiling.range.low == celsius(200));
  CHECK(ceiling_of("1084", true).ceiling.range.low == celsius(400));
  CHECK(ceiling_of("1084@annealed").ceiling.range.low == celsius(400));
  CHECK(ceiling_of("O1").ceiling.range.low == celsius(200));
  CHECK(ceiling_of("layered-steel").ceiling.range.low == celsius(200));
}

TEST_CASE("every metal of the tables grows and has a ceiling") {
  const Tables tables = builtin_tables();
  for (const auto& material : tables.materials) {
    INFO(material.key);
    const Work work = read_work(tables, std::string(material.key));
    const auto mean = choose_expansion(tables, work, celsius(200)).mean;
    CHECK(mean.low <= mean.value);
    CHECK(mean.value <= mean.high);
    CHECK(in_um_per_m_celsius(mean.low) > 8);
    CHECK(in_um_per_m_celsius(mean.high) < 26);
    const auto* ceiling = choose_ceiling(tables, work, false);
    REQUIRE(ceiling != nullptr);
    CHECK(ceiling->ceiling.range.low >= celsius(150));
  }
}
