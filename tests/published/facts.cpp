// Facts of the trade that the tables have to keep to (common practice, no source, unless one is named), and what every
// grade can be asked.

#include "catch.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <string>
#include <vector>

#include <quillside/data/choose.hpp>
#include <quillside/job/burr.hpp>
#include <quillside/job/drill.hpp>
#include <quillside/job/mill.hpp>

using namespace quillside;

namespace {

SpeedChoice chosen(const Tables& tables, const char* ask, const char* material, const char* cutter) {
  const SpeedResult result = choose_speed(tables, ask, read_work(tables, material), cutter);
  REQUIRE(std::holds_alternative<SpeedChoice>(result));
  return std::get<SpeedChoice>(result);
}

} // namespace

TEST_CASE("stainless is drilled with a 135 deg point, other metals with 118 (common practice, no source)") {
  const Tables tables = builtin_tables();
  for (const auto* grade : {"303", "304", "316", "410", "416", "420", "440C", "17-4PH"})
    CHECK(choose_drill_point(tables, read_work(tables, grade)).point.range.low == degrees(135));
  for (const auto* grade : {"1018", "1084", "O1", "C360", "C752", "6061"})
    CHECK(choose_drill_point(tables, read_work(tables, grade)).point.range.low == degrees(118));
}

TEST_CASE("no carbide speed is the first value for HSS in nickel silver") {
  // A maker's sheet for carbide in nickel silver begins at 350 ft/min; HSS there is a tenth to a third of that.
  const Tables tables = builtin_tables();
  for (const auto* grade : {"C752", "C757", "C770", "C792", "nickel-silver"}) {
    for (const auto* ask : {"drill", "mill"}) {
      const SpeedChoice choice = chosen(tables, ask, grade, "hss");
      INFO(ask << " " << grade);
      CHECK(choice.row->cutter == "hss");
      CHECK(choice.ratio == nullptr);
      CHECK(choice.band.first < ft_per_min(200));
      CHECK(source_of(tables, choice.row->source).standing != "published");
    }
  }
}

TEST_CASE("every material can be asked of a drill, an end mill and a burr") {
  const Tables tables = builtin_tables();
  for (const auto& material : tables.materials) {
    const Typed<Work> work{{&material, {}, {}}, std::string(material.key)};
    const Typed<NamedSize> size{{"1/8", inches(1, 8)}, "1/8"};
    for (const auto* name : {"hss", "carbide"}) {
      INFO(material.key << " " << name);
      CHECK(drill(tables, {size, work, {&find_cutter(tables, name, "drill"), name}}).verdict == "go");
      CHECK(mill(tables, {size, work, {&find_cutter(tables, name, "mill"), name}}).verdict == "go");
      CHECK(burr(tables, {size, work, {&find_cutter(tables, name, "burr"), name}}).verdict == "go");
    }
  }
}

TEST_CASE("a layered metal goes by its hardest layer's row, never faster than any of its layers") {
  const Tables tables = builtin_tables();
  const auto layered = chosen(tables, "drill", "layered-steel", "hss").band.first;
  const Work work = read_work(tables, "layered-steel");
  for (const auto* layer : layers_of(tables, *work.material))
    CHECK(layered <= chosen(tables, "drill", std::string(layer->key).c_str(), "hss").band.first);
}

namespace {

template <class Row> void sources_resolve(const Tables& tables, std::span<const Row> rows) {
  for (const auto& row : rows) {
    INFO(row.place.file << ":" << row.place.line);
    CHECK(source_of(tables, row.source).key == row.source);
  }
}

std::string in_small_letters(std::string_view text) {
  std::string small{text};
  std::transform(small.begin(), small.end(), small.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  return small;
}

} // namespace

TEST_CASE("every row has a source that is known") {
  const Tables tables = builtin_tables();
  REQUIRE_FALSE(tables.sources.empty());
  sources_resolve(tables, tables.materials);
  sources_resolve(tables, tables.cutters);
  sources_resolve(tables, tables.drilling_speeds);
  sources_resolve(tables, tables.milling_speeds);
  sources_resolve(tables, tables.reaming_speeds);
  sources_resolve(tables, tables.burr_speeds);
  sources_resolve(tables, tables.speed_ratios);
  sources_resolve(tables, tables.drilling_feeds);
  sources_resolve(tables, tables.chip_loads);
  sources_resolve(tables, tables.deep_holes);
  sources_resolve(tables, tables.pecks);
  sources_resolve(tables, tables.drill_points);
  sources_resolve(tables, tables.drill_webs);
  sources_resolve(tables, tables.lip_reliefs);
  sources_resolve(tables, tables.fluids);
  sources_resolve(tables, tables.machines);
  sources_resolve(tables, tables.sizes);
  sources_resolve(tables, tables.hardness);
  sources_resolve(tables, tables.limits);
  sources_resolve(tables, tables.readings);
  sources_resolve(tables, tables.point_limits);
  sources_resolve(tables, tables.usual_oversizes);
  sources_resolve(tables, tables.tolerance_classes);
  sources_resolve(tables, tables.fit_classes);
  sources_resolve(tables, tables.fits);
  sources_resolve(tables, tables.expansions);
  sources_resolve(tables, tables.oxide_colours);
  sources_resolve(tables, tables.heat_ceilings);
  sources_resolve(tables, tables.screw_threads);
  sources_resolve(tables, tables.clearance_holes);
  sources_resolve(tables, tables.screw_heads);
  sources_resolve(tables, tables.thread_engagements);
  sources_resolve(tables, tables.ream_allowances);
  sources_resolve(tables, tables.signs);
  sources_resolve(tables, tables.chart_lists);
  sources_resolve(tables, tables.cutting_forces);
  sources_resolve(tables, tables.unit_powers);
  sources_resolve(tables, tables.feed_factors);
  sources_resolve(tables, tables.drill_forces);
  sources_resolve(tables, tables.burr_sizes);
  sources_resolve(tables, tables.cutter_strengths);
  sources_resolve(tables, tables.end_mill_stock);
  sources_resolve(tables, tables.cautions);
}

TEST_CASE("no name leads to two metals, in either case of letters") {
  const Tables tables = builtin_tables();
  std::map<std::string, std::string> owner;
  for (const auto& material : tables.materials) {
    std::vector<std::string_view> names{material.key};
    names.insert(names.end(), material.aliases.begin(), material.aliases.end());
    for (const auto& name : names) {
      const auto [place, fresh] = owner.emplace(in_small_letters(name), material.key);
      INFO(name << " is " << place->second << " and " << material.key);
      CHECK(fresh);
      CHECK(read_work(tables, std::string(name)).material->key == material.key);
    }
  }
}
