// Table files from text: what a row becomes, where it stands, and what it goes over.
// The figures are invented and mean nothing.

#include <string>
#include <string_view>
#include <vector>

#include <quillside/data/load.hpp>

#include "catch.hpp"
#include "tables_of.hpp"

using namespace quillside;
using test::WithinAbs;
using test::WithinRel;

namespace {

/// Loads one text over tables; a fault fails the test.
Tables over(const Tables& below, const std::string& text, std::string_view name = "own.toml") {
  const Loaded loaded = load_over(below, {{name, text}});
  for (const auto& fault : loaded.faults)
    FAIL_CHECK(fault.place.line << ":" << fault.place.column << ": " << fault.what);
  return loaded.tables;
}

/// The small tables that `below` and `above` are laid on one after the other, as two files.
Tables both(const std::string& below, const std::string& above) {
  return over(over(test::tables_of(""), below, "below.toml"), above, "above.toml");
}

std::string row(const std::string& kind, const std::string& fields, const std::string& source = "a") {
  return "[[" + kind + "]]\n" + fields + "\nsource = \"" + source + "\"\n";
}

template <class Row> std::vector<std::string> sources_of(const std::span<const Row>& rows) {
  std::vector<std::string> sources;
  for (const auto& one : rows) sources.emplace_back(one.source);
  return sources;
}

using Names = std::vector<std::string>;

const Machine& machine(const Tables& tables, std::string_view key) { return find_machine(tables, key); }

std::string mill(const std::string& speeds) {
  return row("machine", "key = \"m\"\nname = \"m\"\nkind = \"mill\"\n" + speeds);
}

} // namespace

TEST_CASE("a list of materials and of conditions stands for one row each") {
  const Tables tables =
      over(test::tables_of(""), row("drilling_speed", "material = [\"G1\", \"tough\", \"steel\"]\n"
                                                      "condition = [\"annealed\", \"cold-drawn\"]\n"
                                                      "cutter = \"hss\"\nspeed = \"50 to 60 ft/min\""));
  REQUIRE(tables.drilling_speeds.size() == 6);
  std::vector<std::string> seen;
  for (const auto& speed : tables.drilling_speeds) {
    seen.push_back(std::string(speed.material) + " " + std::string(speed.condition));
    CHECK(speed.cutter == "hss");
    CHECK(speed.source == "a");
    CHECK(speed.speed.text == "50 to 60 ft/min");
    CHECK_THAT(in_m_per_min(speed.speed.range.low), WithinRel(50 * 0.3048, 1e-12));
    CHECK_THAT(in_m_per_min(speed.speed.range.high), WithinRel(60 * 0.3048, 1e-12));
    CHECK(speed.place.line == 1);
    CHECK(speed.place.column == 1);
  }
  CHECK(seen == Names{"G1 annealed", "G1 cold-drawn", "tough annealed", "tough cold-drawn", "steel annealed",
                      "steel cold-drawn"});
}

TEST_CASE("a row stands at its head: line and column from 1, and the name of its file") {
  const std::string text = "# a remark\n\n  [[machine]]\n  key = \"m\"\n  name = \"m\"\n  kind = \"mill\"\n"
                           "  range = \"100 to 200 rev/min\"\n  source = \"c\"\n\n[source.c]\nauthor = \"C\"\n"
                           "title = \"third\"\nstanding = \"demo\"\n[[size]]\nkind = \"metric\"\nname = \"s\"\n"
                           "size = \"3 mm\"\nsource = \"c\"\n";
  const Tables tables = over(test::tables_of(""), text);
  const Machine& m = machine(tables, "m");
  CHECK(m.place.file == "own.toml");
  CHECK(m.place.line == 3);
  CHECK(m.place.column == 3);
  CHECK(source_of(tables, "c").place.line == 10);
  REQUIRE(tables.sizes.size() == 1);
  CHECK(tables.sizes[0].place.line == 14);
  // The texts are kept, so that a row can be shown as it was typed.
  CHECK(tables.texts.size() == 2);
  CHECK(tables.texts.back().name == "own.toml");
  CHECK(tables.texts.back().text == text);
}

TEST_CASE("faults come in the order of file, line and column, each once") {
  const std::string first = "[[mashine]]\n" + row("drill_point", "material = \"G2\"\npoint = \"20 mm\"\ncolour = 1");
  const std::string second = "[[drill_point]]\npoint = 135\n";
  const Loaded loaded = load_over(test::tables_of(""), {{"a.toml", first}, {"b.toml", second}});
  std::vector<std::string> places;
  for (const auto& fault : loaded.faults)
    places.push_back(fault.place.file + ":" + std::to_string(fault.place.line) + ":" +
                     std::to_string(fault.place.column));
  CHECK(places == Names{"a.toml:1:1", "a.toml:2:1", "a.toml:4:9", "a.toml:5:10", "b.toml:1:1", "b.toml:2:9"});
}

TEST_CASE("load_or_fail tells of all faults in one Fault of the kind data, the first as its place") {
  try {
    (void)load_or_fail(test::tables_of(""), {{"own.toml", "[[drill_point]]\npoint = \"20 mm\"\n"}});
    FAIL("it loads");
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::data);
    REQUIRE(fault.place);
    CHECK(fault.place->file == "own.toml");
    CHECK(fault.place->line == 1);
    CHECK(fault.place->column == 1);
    CHECK(fault.message.find("own.toml:1:1: 'source' is missing") != std::string::npos);
    CHECK(fault.message.find("own.toml:2:9: ") != std::string::npos);
  }
}

TEST_CASE("what lay below stays, and the tables outlive the text they were read from") {
  Tables tables;
  {
    const std::string text = mill("steps = [\"300 rev/min\", \"150 rev/min\"]");
    tables = over(test::tables_of(test::drilling("G1", "50 ft/min")), text);
  }
  REQUIRE(tables.drilling_speeds.size() == 1);
  CHECK(tables.drilling_speeds[0].material == "G1");
  CHECK(tables.materials.size() == test::tables_of("").materials.size());
  CHECK(machine(tables, "m").steps.size() == 2);
  CHECK(machine(tables, "m").steps[0].name == "1");
}

TEST_CASE("a size series: every step from end to end, both ends in it, no step off its decimal") {
  const Tables tables =
      over(test::tables_of(""),
           row("size_series", "kind = \"metric\"\nfrom = \"0.5 mm\"\nto = \"3 mm\"\nstep = \"0.05 mm\""));
  REQUIRE(tables.sizes.size() == 51);
  for (std::size_t i = 0; i < 51; ++i) {
    const auto hundredths = 50 + 5 * static_cast<int>(i);
    CHECK_THAT(in_mm(tables.sizes[i].length()), WithinAbs(hundredths / 100.0, 1e-12));
    CHECK(tables.sizes[i].kind == "metric");
    CHECK(tables.sizes[i].source == "a");
    CHECK(tables.sizes[i].place.line == 1);
  }
  CHECK(tables.sizes[0].name == "0.5mm");
  CHECK(tables.sizes[8].name == "0.9mm");
  CHECK(tables.sizes[10].name == "1mm");
  CHECK(tables.sizes[50].name == "3mm");
  // A step that does not come out even ends below the high end.
  const Tables uneven = over(
      test::tables_of(""), row("size_series", "kind = \"metric\"\nfrom = \"1 mm\"\nto = \"2 mm\"\nstep = \"0.3 mm\""));
  REQUIRE(uneven.sizes.size() == 4);
  CHECK_THAT(in_mm(uneven.sizes[3].length()), WithinAbs(1.9, 1e-12));
  // From one end to the same: one size.
  CHECK(over(test::tables_of(""),
             row("size_series", "kind = \"metric\"\nfrom = \"1 mm\"\nto = \"1 mm\"\nstep = \"1 mm\""))
            .sizes.size() == 1);
}

TEST_CASE("sizes and hardness come in order, whatever the order of their rows") {
  const Tables tables =
      over(test::tables_of(""), row("size", "kind = \"metric\"\nname = \"c\"\nsize = \"3 mm\"") +
                                    row("size", "kind = \"fraction\"\nname = \"b\"\nsize = \"1/16 in\"") +
                                    row("size", "kind = \"number\"\nname = \"a\"\nsize = \"0.01 in\"") +
                                    row("hardness", "hb = 250\nhrc = 25") + row("hardness", "hb = 150\nhrb = 80"));
  REQUIRE(tables.sizes.size() == 3);
  CHECK(tables.sizes[0].name == "a");
  CHECK(tables.sizes[1].name == "b");
  CHECK(tables.sizes[2].name == "c");
  std::vector<double> hb;
  for (const auto& one : tables.hardness) hb.push_back(one.hb);
  CHECK(hb == std::vector<double>{150, 200, 250, 300, 400});
}

TEST_CASE("steps are named from 1 at the slowest, in whatever order they are typed") {
  const Tables tables =
      over(test::tables_of(""), mill("steps = [\"1100 rev/min\", \"620 rev/min\", \"1720 rev/min\"]"));
  const auto steps = machine(tables, "m").steps;
  REQUIRE(steps.size() == 3);
  const std::vector<double> speeds{620, 1100, 1720};
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(in_rev_per_min(steps[i].speed) == speeds[i]);
    CHECK(steps[i].name == std::to_string(i + 1));
  }
  CHECK(in_rev_per_min(machine(tables, "m").range.low) == 620);
  CHECK(in_rev_per_min(machine(tables, "m").range.high) == 1720);
}

TEST_CASE("one belt: n = motor x driving / driven, pulley facing pulley") {
  const Tables tables = over(test::tables_of(""), mill("motor = \"1725 rev/min\"\n"
                                                       "motor_pulleys = [\"2 in\", \"3 in\", \"4 in\"]\n"
                                                       "spindle_pulleys = [\"4.5 in\", \"3.5 in\", \"2.5 in\"]"));
  const auto steps = machine(tables, "m").steps;
  REQUIRE(steps.size() == 3);
  const std::vector<double> speeds{1725 * 2 / 4.5, 1725 * 3 / 3.5, 1725 * 4 / 2.5};
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK_THAT(in_rev_per_min(steps[i].speed), WithinRel(speeds[i], 1e-12));
    CHECK(steps[i].name == std::to_string(i + 1));
  }
}

TEST_CASE("pulleys may be in any unit of length: only their ratio counts") {
  const Tables inch = over(test::tables_of(""), mill("motor = \"1400 rev/min\"\nmotor_pulleys = [\"2 in\"]\n"
                                                     "spindle_pulleys = [\"4 in\"]"));
  const Tables mixed = over(test::tables_of(""), mill("motor = \"1400 rev/min\"\nmotor_pulleys = [\"50.8 mm\"]\n"
                                                      "spindle_pulleys = [\"4 in\"]"));
  CHECK_THAT(in_rev_per_min(machine(inch, "m").steps[0].speed), WithinRel(700, 1e-12));
  CHECK_THAT(in_rev_per_min(machine(mixed, "m").steps[0].speed), WithinRel(700, 1e-12));
}

TEST_CASE("two belts: every pair of belts is a step, named motor belt first, the slowest first") {
  const std::vector<double> motor{1.75, 2.25};
  const std::vector<double> idler_driven{4.25, 3.75};
  const std::vector<double> idler_driving{1.6, 2.5, 3.45};
  const std::vector<double> spindle{4.4, 3.5, 2.55};
  const Tables tables = over(test::tables_of(""), mill("motor = \"1725 rev/min\"\n"
                                                       "motor_pulleys = [\"1.75 in\", \"2.25 in\"]\n"
                                                       "idler_driven = [\"4.25 in\", \"3.75 in\"]\n"
                                                       "idler_driving = [\"1.6 in\", \"2.5 in\", \"3.45 in\"]\n"
                                                       "spindle_pulleys = [\"4.4 in\", \"3.5 in\", \"2.55 in\"]"));
  const auto steps = machine(tables, "m").steps;
  REQUIRE(steps.size() == 6);
  for (std::size_t i = 0; i < motor.size(); ++i) {
    for (std::size_t k = 0; k < spindle.size(); ++k) {
      const std::string name = std::to_string(i + 1) + "-" + std::to_string(k + 1);
      bool found = false;
      for (const auto& step : steps) {
        if (step.name != name) continue;
        found = true;
        CHECK_THAT(in_rev_per_min(step.speed),
                   WithinRel(1725 * motor[i] / idler_driven[i] * idler_driving[k] / spindle[k], 1e-12));
      }
      CHECK(found);
    }
  }
  for (std::size_t i = 1; i < steps.size(); ++i) CHECK(steps[i - 1].speed <= steps[i].speed);
}

TEST_CASE("a pulley of no diameter is a fault, not a speed without end") {
  const std::string text = mill("motor = \"1725 rev/min\"\nmotor_pulleys = [\"2 in\"]\nspindle_pulleys = [\"0 in\"]");
  const Loaded loaded = load_over(test::tables_of(""), {{"own.toml", text}});
  REQUIRE_FALSE(loaded.faults.empty());
  for (const auto& step : loaded.tables.machines) CHECK(step.steps.empty());
}

TEST_CASE("what a row leaves out stays not given") {
  const Tables tables = over(test::tables_of(""), mill("range = \"100 to 900 rev/min\""));
  const Machine& m = machine(tables, "m");
  CHECK(m.steps.empty());
  CHECK_FALSE(m.dial.given());
  CHECK_FALSE(m.power.given());
  CHECK_FALSE(m.runout.given());
  CHECK_FALSE(m.pinion_radius.given());
  CHECK_FALSE(m.lever.given());
  CHECK_FALSE(m.top_speed.given());
  CHECK(m.holder.empty());
  CHECK_FALSE(m.backlash_free);
}

TEST_CASE("rows of one file stand side by side: two sources may print the same row") {
  const Tables tables = over(test::tables_of(""),
                             test::drilling("G1", "50 ft/min", "", "a") + test::drilling("G1", "60 ft/min", "", "b"));
  CHECK(sources_of(tables.drilling_speeds) == Names{"a", "b"});
}

TEST_CASE("a row of a later file with the same words replaces all of the earlier ones") {
  const Tables tables = both(test::drilling("G1", "50 ft/min", "", "a") + test::drilling("G1", "60 ft/min", "", "b"),
                             test::drilling("G1", "70 ft/min", "", "b"));
  REQUIRE(tables.drilling_speeds.size() == 1);
  CHECK(tables.drilling_speeds[0].speed.text == "70 ft/min");
}

TEST_CASE("files of one call lie over one another as those of two do") {
  const std::string below = test::drilling("G1", "50 ft/min", "", "a");
  const std::string above = test::drilling("G1", "70 ft/min", "", "b");
  const Loaded loaded = load_over(test::tables_of(""), {{"below.toml", below}, {"above.toml", above}});
  CHECK(loaded.faults.empty());
  CHECK(sources_of(loaded.tables.drilling_speeds) == Names{"b"});
}

TEST_CASE("a speed row is known by material, condition, hardness and cutter, and no other word") {
  const std::string base = "condition = \"annealed\"\nhardness = \"150 to 200 HB\"";
  const std::string below = test::drilling("G1", "50 ft/min", base, "a");
  const auto count = [&](const std::string& above) { return both(below, above).drilling_speeds.size(); };
  CHECK(count(test::drilling("G1", "70 ft/min", base + "\nusual = true\nnote = \"mine\"", "b")) == 1);
  CHECK(count(test::drilling("G1", "70 ft/min", "condition = \"annealed\"", "b")) == 2);
  CHECK(count(test::drilling("G1", "70 ft/min", "hardness = \"150 to 200 HB\"", "b")) == 2);
  CHECK(count(test::drilling("G1", "70 ft/min", "", "b")) == 2);
  CHECK(count(test::drilling("tough", "70 ft/min", base, "b")) == 2);
  CHECK(count(test::drilling("G1", "70 ft/min", "condition = \"cold-drawn\"\nhardness = \"150 to 200 HB\"", "b")) == 2);
  CHECK(count(test::drilling("G1", "70 ft/min", "condition = \"annealed\"\nhardness = \"150 to 201 HB\"", "b")) == 2);
  CHECK(count(test::drilling("G1", "70 ft/min", "condition = \"annealed\"\nhardness = \"150 to 200 HV\"", "b")) == 2);
  CHECK(count(row("drilling_speed", "material = \"G1\"\ncutter = \"carbide\"\nspeed = \"70 ft/min\"\n" + base, "b")) ==
        2);
  // Another kind of row with the same words is another row.
  const Tables milled =
      both(below, row("milling_speed", "material = \"G1\"\ncutter = \"hss\"\nspeed = \"70 ft/min\"\n" + base, "b"));
  CHECK(milled.drilling_speeds.size() == 1);
  CHECK(milled.milling_speeds.size() == 1);
}

TEST_CASE("a list goes over the rows it names and leaves the others") {
  const Tables tables = both(row("drilling_speed", "material = [\"G1\", \"tough\", \"steel\"]\ncutter = \"hss\"\n"
                                                   "speed = \"50 ft/min\""),
                             row("drilling_speed",
                                 "material = [\"G1\", \"steel\"]\ncutter = \"hss\"\n"
                                 "speed = \"70 ft/min\"",
                                 "b"));
  REQUIRE(tables.drilling_speeds.size() == 3);
  for (const auto& one : tables.drilling_speeds) {
    INFO(one.material);
    CHECK(one.source == (one.material == "tough" ? "a" : "b"));
  }
}

TEST_CASE("what each kind of row is known by: the same words replace, others stand beside") {
  struct Kind {
    std::string kind;
    std::string below;
    std::string same;
    std::string other;
    std::size_t (*count)(const Tables&);
    std::size_t ground; // rows of the kind that the small tables have already
  };
  const std::vector<Kind> kinds{
      {"milling_speed", "material = \"G1\"\ncutter = \"hss\"\nspeed = \"50 ft/min\"",
       "material = \"G1\"\ncutter = \"hss\"\nspeed = \"60 ft/min\"",
       "material = \"G1\"\ncutter = \"carbide\"\nspeed = \"60 ft/min\"",
       [](const Tables& t) { return t.milling_speeds.size(); }, 0},
      {"reaming_speed", "material = \"G1\"\ncutter = \"hss\"\nspeed = \"50 ft/min\"",
       "material = \"G1\"\ncutter = \"hss\"\nspeed = \"60 ft/min\"",
       "material = \"tough\"\ncutter = \"hss\"\nspeed = \"60 ft/min\"",
       [](const Tables& t) { return t.reaming_speeds.size(); }, 0},
      {"burr_speed", "material = \"G1\"\ncutter = \"carbide\"\nspeed = \"50 ft/min\"",
       "material = \"G1\"\ncutter = \"carbide\"\nspindle_speed = \"9000 rev/min\"",
       "material = \"G1\"\ncutter = \"carbide\"\nspindle_speed = \"9000 rev/min\"\ndiameter = \"3 mm\"\nhand = true",
       [](const Tables& t) { return t.burr_speeds.size(); }, 0},
      {"speed_ratio", "ask = \"drill\"\ncutter = \"carbide\"\nof = \"hss\"\nratio = \"2\"",
       "ask = \"drill\"\ncutter = \"carbide\"\nof = \"hss\"\nratio = \"2 to 3\"",
       "ask = \"mill\"\ncutter = \"carbide\"\nof = \"hss\"\nratio = \"2\"",
       [](const Tables& t) { return t.speed_ratios.size(); }, 0},
      {"drilling_feed", "diameter = \"1 to 3 mm\"\nfeed = \"0.05 mm/rev\"",
       "diameter = \"1 to 3 mm\"\nshare = \"1 to 2 %\"", "diameter = \"1 to 3 mm\"\nmaterial = \"G1\"\nshare = \"1 %\"",
       [](const Tables& t) { return t.drilling_feeds.size(); }, 0},
      {"chip_load", "material = \"G1\"\ncutter = \"hss\"\ndiameters = [\"3 mm\"]\nloads = [\"0.01 mm/tooth\"]",
       "material = \"G1\"\ncutter = \"hss\"\nshare = \"0.2 to 0.7 %\"\ndiameter = \"1 to 9 mm\"",
       "material = \"G1\"\ncutter = \"carbide\"\nshare = \"0.2 %\"\ndiameter = \"1 to 9 mm\"",
       [](const Tables& t) { return t.chip_loads.size(); }, 0},
      {"deep_hole", "depth = \"3\"\nspeed_cut = \"10 %\"\nfeed_cut = \"10 %\"",
       "depth = \"3\"\nspeed_cut = \"20 %\"\nfeed_cut = \"20 %\"",
       "depth = \"4\"\nspeed_cut = \"20 %\"\nfeed_cut = \"20 %\"", [](const Tables& t) { return t.deep_holes.size(); },
       0},
      {"peck", "metal = [\"brass\"]\nfirst = \"3\"\nnext = \"1\"\ndeep_from = \"6\"\ndeep_next = \"0.5\"",
       "metal = [\"brass\"]\nfirst = \"2\"\nnext = \"1\"\ndeep_from = \"5\"\ndeep_next = \"0.5\"",
       "first = \"2\"\nnext = \"1\"\ndeep_from = \"5\"\ndeep_next = \"0.5\"",
       [](const Tables& t) { return t.pecks.size(); }, 0},
      {"drill_point", "material = \"G1\"\npoint = \"118 deg\"", "material = \"G1\"\npoint = \"130 deg\"",
       "point = \"130 deg\"", [](const Tables& t) { return t.drill_points.size(); }, 0},
      {"lip_relief", "diameter = \"1 to 3 mm\"\nmetal = [\"brass\"]\nrelief = \"10 deg\"",
       "diameter = \"1 to 3 mm\"\nmetal = [\"brass\"]\nrelief = \"12 deg\"",
       "diameter = \"1 to 3 mm\"\nmetal = [\"bronze\"]\nrelief = \"12 deg\"",
       [](const Tables& t) { return t.lip_reliefs.size(); }, 0},
      {"fluid", "ask = \"drill\"\nmetal = [\"brass\"]\nfluid = \"none\"",
       "ask = \"drill\"\nmetal = [\"brass\"]\nfluid = \"light oil\"", "ask = \"drill\"\nfluid = \"light oil\"",
       [](const Tables& t) { return t.fluids.size(); }, 0},
      {"machine", "key = \"m\"\nname = \"m\"\nkind = \"mill\"\nrange = \"100 to 200 rev/min\"",
       "key = \"m\"\nname = \"n\"\nkind = \"drill-press\"\nsteps = [\"100 rev/min\"]",
       "key = \"n\"\nname = \"m\"\nkind = \"mill\"\nrange = \"100 to 200 rev/min\"",
       [](const Tables& t) { return t.machines.size(); }, 0},
      {"size", "kind = \"metric\"\nname = \"3mm\"\nsize = \"3 mm\"",
       "kind = \"metric\"\nname = \"3mm\"\nsize = \"3.01 mm\"",
       "kind = \"metric\"\nname = \"3.1mm\"\nsize = \"3.1 mm\"", [](const Tables& t) { return t.sizes.size(); }, 0},
      {"hardness", "hb = 250\nhrc = 25", "hb = 250\nhrc = 26", "hb = 251\nhrc = 25",
       [](const Tables& t) { return t.hardness.size(); }, 3},
      {"limit", "key = \"dry_speed\"\nvalue = \"0.5\"\nwhat = \"w\"",
       "key = \"dry_speed\"\nvalue = \"0.6\"\nwhat = \"w\"", "key = \"shim_over\"\nvalue = \"0.1\"\nwhat = \"w\"",
       [](const Tables& t) { return t.limits.size(); }, 2},
      {"point_limit", "item = \"web\"\nkeep = \"20 %\"\ntouch_up = \"30 %\"\nwhat = \"w\"",
       "item = \"web\"\nkeep = \"25 %\"\ntouch_up = \"30 %\"\nwhat = \"w\"",
       "item = \"web\"\nway = \"cone\"\nkeep = \"20 %\"\ntouch_up = \"30 %\"\nwhat = \"w\"",
       [](const Tables& t) { return t.point_limits.size(); }, 0},
      {"usual_oversize", "diameter = \"1 to 3 mm\"\noversize = \"0 to 0.1 mm\"",
       "diameter = \"1 to 3 mm\"\noversize = \"0 to 0.2 mm\"", "diameter = \"3 to 6 mm\"\noversize = \"0 to 0.1 mm\"",
       [](const Tables& t) { return t.usual_oversizes.size(); }, 0},
      {"tolerance_class", "name = \"H7\"\nsize = \"3 to 6 mm\"\nlimits = \"0 to +12 um\"",
       "name = \"H7\"\nsize = \"3 to 6 mm\"\nlimits = \"0 to +13 um\"",
       "name = \"H7\"\nsize = \"6 to 10 mm\"\nlimits = \"0 to +12 um\"",
       [](const Tables& t) { return t.tolerance_classes.size(); }, 0},
      {"fit_class", "name = \"FN2\"\nsize = \"0 to 1 in\"\nhole = \"0 to +1 thou\"\nshaft = \"+1 to +2 thou\"",
       "name = \"FN2\"\nsize = \"0 to 1 in\"\nhole = \"0 to +1 thou\"\nshaft = \"+2 to +3 thou\"",
       "name = \"FN1\"\nsize = \"0 to 1 in\"\nhole = \"0 to +1 thou\"\nshaft = \"+1 to +2 thou\"",
       [](const Tables& t) { return t.fit_classes.size(); }, 0},
      {"fit", "key = \"press\"\nname = \"p\"\nfit_class = \"H7/p6\"",
       "key = \"press\"\nname = \"p\"\ninterference = \"1 to 2 thou\"",
       "key = \"push\"\nname = \"p\"\nfit_class = \"H7/p6\"", [](const Tables& t) { return t.fits.size(); }, 0},
      {"expansion", "material = \"G1\"\nexpansion = \"11 um/(m degC)\"\nover = \"0 to 100 degC\"",
       "material = \"G1\"\nexpansion = \"12 um/(m degC)\"\nover = \"0 to 100 degC\"",
       "material = \"G1\"\nexpansion = \"12 um/(m degC)\"\nover = \"0 to 300 degC\"",
       [](const Tables& t) { return t.expansions.size(); }, 0},
      {"oxide_colour", "metal = [\"carbon-steel\"]\nheat = \"430 degF\"\ncolour = \"straw\"",
       "metal = [\"carbon-steel\"]\nheat = \"440 degF\"\ncolour = \"straw\"",
       "metal = [\"carbon-steel\"]\nheat = \"570 degF\"\ncolour = \"blue\"",
       [](const Tables& t) { return t.oxide_colours.size(); }, 0},
      {"heat_ceiling", "material = \"G1\"\nceiling = \"250 degC\"\nwhat = \"w\"",
       "material = \"G1\"\nceiling = \"260 degC\"\nwhat = \"w\"",
       "material = \"G1\"\nceiling = \"260 degC\"\nuntil_tempered = true\nwhat = \"w\"",
       [](const Tables& t) { return t.heat_ceilings.size(); }, 0},
      {"screw_thread", "key = \"M3x0.5\"\nscrew = \"M3\"\nmajor = \"3 mm\"\npitch = \"0.5 mm\"",
       "key = \"M3x0.5\"\nscrew = \"M3\"\nmajor = \"3 mm\"\npitch = \"0.6 mm\"",
       "key = \"M3x0.35\"\nscrew = \"M3\"\nmajor = \"3 mm\"\npitch = \"0.35 mm\"",
       [](const Tables& t) { return t.screw_threads.size(); }, 2},
      {"clearance_hole", "screw = \"M4\"\nnormal = \"3.4 mm\"", "screw = \"M4\"\nnormal = \"3.5 mm\"",
       "screw = \"M2\"\nnormal = \"4.5 mm\"", [](const Tables& t) { return t.clearance_holes.size(); }, 0},
      {"screw_head", "screw = \"M4\"\nshape = \"flat\"\nheight = \"1.65 mm\"\ncone = \"90 deg\"",
       "screw = \"M4\"\nshape = \"flat\"\nheight = \"1.7 mm\"\ncone = \"90 deg\"",
       "screw = \"M4\"\nshape = \"cap\"\nheight = \"3 mm\"\ncounterbore = \"6 mm\"",
       [](const Tables& t) { return t.screw_heads.size(); }, 0},
      {"thread_engagement", "metal = [\"brass\"]\nengagement = \"65 to 75 %\"\nfirst = \"75 %\"",
       "metal = [\"brass\"]\nengagement = \"65 to 75 %\"\nfirst = \"70 %\"",
       "engagement = \"65 to 75 %\"\nfirst = \"75 %\"", [](const Tables& t) { return t.thread_engagements.size(); }, 0},
      {"ream_allowance", "diameter = \"1 to 3 mm\"\nallowance = \"0.1 to 0.2 mm\"",
       "diameter = \"1 to 3 mm\"\nallowance = \"0.1 to 0.3 mm\"",
       "diameter = \"3 to 6 mm\"\nallowance = \"0.1 to 0.2 mm\"",
       [](const Tables& t) { return t.ream_allowances.size(); }, 0},
      {"sign", "key = \"s\"\nsign = \"a\"\ntool = \"drill\"\ncause = \"c\"\nset = \"d\"",
       "key = \"s\"\nsign = \"b\"\ntool = \"mill\"\ncause = \"c\"\nset = \"d\"",
       "key = \"t\"\nsign = \"a\"\ntool = \"drill\"\ncause = \"c\"\nset = \"d\"",
       [](const Tables& t) { return t.signs.size(); }, 0},
      {"cutting_force", "material = \"G1\"\nkc = \"1500 MPa\"\nmc = \"0.2\"\ndoubt = \"25 %\"",
       "material = \"G1\"\nkc = \"1600 MPa\"\nmc = \"0.2\"\ndoubt = \"25 %\"",
       "material = \"G1\"\nhardness = \"100 to 200 HB\"\nkc = \"1500 MPa\"\nmc = \"0.2\"\ndoubt = \"25 %\"",
       [](const Tables& t) { return t.cutting_forces.size(); }, 0},
      {"unit_power", "material = \"G1\"\nunit_power = \"0.7 hp/(in3/min)\"",
       "material = \"G1\"\nunit_power = \"0.8 hp/(in3/min)\"",
       "material = \"tough\"\nunit_power = \"0.7 hp/(in3/min)\"", [](const Tables& t) { return t.unit_powers.size(); },
       0},
      {"feed_factor", "feed = \"0.001 in/tooth\"\nfactor = \"1.6\"", "feed = \"0.001 in/tooth\"\nfactor = \"1.5\"",
       "feed = \"0.002 in/tooth\"\nfactor = \"1.4\"", [](const Tables& t) { return t.feed_factors.size(); }, 0},
      {"drill_force", "material = \"G1\"\nmodel = \"handbook\"\ntorque = \"24000\"",
       "material = \"G1\"\nmodel = \"handbook\"\ntorque = \"25000\"",
       "material = \"G1\"\nmodel = \"catalogue\"\ntorque = \"2.2\"",
       [](const Tables& t) { return t.drill_forces.size(); }, 0},
      {"burr_size", "diameter = \"1 to 3 mm\"\nshank = \"3 mm\"\nhead_length = \"8 mm\"",
       "diameter = \"1 to 3 mm\"\nshank = \"2 mm\"\nhead_length = \"8 mm\"",
       "diameter = \"3 to 6 mm\"\nshank = \"3 mm\"\nhead_length = \"8 mm\"",
       [](const Tables& t) { return t.burr_sizes.size(); }, 0},
      {"cutter_strength",
       "cutter = \"hss\"\nmodulus = \"207 GPa\"\nshear_modulus = \"80 GPa\"\nedge_radius = \"6 um\"\nworking_stress = "
       "\"700 MPa\"",
       "cutter = \"hss\"\nmodulus = \"210 GPa\"\nshear_modulus = \"80 GPa\"\nedge_radius = \"6 um\"\nworking_stress = "
       "\"700 MPa\"",
       "cutter = \"carbide\"\nmodulus = \"580 GPa\"\nshear_modulus = \"240 GPa\"\nedge_radius = \"6 "
       "um\"\nworking_stress = \"800 MPa\"",
       [](const Tables& t) { return t.cutter_strengths.size(); }, 0},
      {"end_mill_stock", "key = \"e\"\nunits = \"inch\"\nsizes = \"1/32 to 1/4 in\"\nstep = \"1/32 in\"",
       "key = \"e\"\nunits = \"inch\"\nsizes = \"1/32 to 1/4 in\"\nstep = \"1/64 in\"",
       "key = \"f\"\nunits = \"inch\"\nsizes = \"1/32 to 1/4 in\"\nstep = \"1/64 in\"",
       [](const Tables& t) { return t.end_mill_stock.size(); }, 0},
      {"reading", "key = \"r\"\nname = \"r\"\nerror = \"1 mm\"\nreads = [\"thick\"]\ntrouble = 1",
       "key = \"r\"\nname = \"r\"\nerror = \"2 mm\"\nreads = [\"thick\"]\ntrouble = 2",
       "key = \"s\"\nname = \"r\"\nerror = \"2 mm\"\nreads = [\"thick\"]\ntrouble = 2",
       [](const Tables& t) { return t.readings.size(); }, 0},
      {"chart_list", "key = \"drill-sizes\"\nwords = [\"1/8\"]", "key = \"drill-sizes\"\nwords = [\"3mm\"]",
       "key = \"mill-sizes\"\nwords = [\"1/8\"]", [](const Tables& t) { return t.chart_lists.size(); }, 0},
      {"caution", "key = \"c\"\nseverity = \"note\"\ntext = \"t\"\nwhen = [\"ask:drill\"]",
       "key = \"c\"\nseverity = \"warn\"\ntext = \"t\"\nwhen = [\"ask:mill\"]",
       "key = \"d\"\nseverity = \"note\"\ntext = \"t\"\nwhen = [\"ask:drill\"]",
       [](const Tables& t) { return t.cautions.size(); }, 0},
      {"cutter", "key = \"stone\"\nname = \"stone\"\ntools = [\"burr\"]",
       "key = \"stone\"\nname = \"a stone\"\ntools = [\"burr\"]",
       "key = \"slate\"\nname = \"slate\"\ntools = [\"burr\"]", [](const Tables& t) { return t.cutters.size(); }, 2},
      {"material", "key = \"G2\"\nname = \"two\"\nmetal = \"brass\"",
       "key = \"G2\"\nname = \"deux\"\nmetal = \"bronze\"", "key = \"G3\"\nname = \"three\"\nmetal = \"brass\"",
       [](const Tables& t) { return t.materials.size(); }, 4}};
  for (const auto& kind : kinds) {
    INFO(kind.kind);
    const std::string below = row(kind.kind, kind.below, "a");
    CHECK(kind.count(both(below, "")) == kind.ground + 1);
    CHECK(kind.count(both(below, row(kind.kind, kind.same, "b"))) == kind.ground + 1);
    CHECK(kind.count(both(below, row(kind.kind, kind.other, "b"))) == kind.ground + 2);
  }
}

TEST_CASE("a source goes over the source of its name, with every row that names it") {
  const Tables tables = both(test::drilling("G1", "50 ft/min", "", "a"),
                             "[source.a]\nauthor = \"C\"\ntitle = \"third page\"\nstanding = \"own bench\"\n");
  CHECK(tables.sources.size() == 2);
  CHECK(source_of(tables, "a").title == "third page");
  CHECK(source_of(tables, "a").standing == "own bench");
}

TEST_CASE("the built-in tables can be read again from their own texts, and give the same rows") {
  const Tables built_in = builtin_tables();
  const std::vector<TableText> texts(built_in.texts.begin(), built_in.texts.end());
  REQUIRE(texts.size() > 5);
  const Loaded loaded = load_over(Tables{}, texts);
  CHECK(loaded.faults.empty());
  CHECK(loaded.tables.materials.size() == built_in.materials.size());
  CHECK(loaded.tables.sources.size() == built_in.sources.size());
  CHECK(loaded.tables.machines.size() == built_in.machines.size());
  CHECK(loaded.tables.sizes.size() == built_in.sizes.size());
  REQUIRE(loaded.tables.drilling_speeds.size() == built_in.drilling_speeds.size());
  for (std::size_t i = 0; i < built_in.drilling_speeds.size(); ++i) {
    const auto& one = loaded.tables.drilling_speeds[i];
    const auto& other = built_in.drilling_speeds[i];
    CHECK(one.material == other.material);
    CHECK(one.speed.text == other.speed.text);
    CHECK(in_m_per_min(one.speed.range.low) == in_m_per_min(other.speed.range.low));
    CHECK(one.place.file == other.place.file);
    CHECK(one.place.line == other.place.line);
  }
}
