#pragma once
// The fields of every kind of row, once: the loader reads by them, the table compiler writes by them, `tables new`
// explains by them. A visitor gets, in the order of the struct, the field and the member.
//
//   visit(field, member)          one value
//   visit.each(field, member)     one word or a list of words; a list stands for one row each
//   visit.points(row)  visit.gears(row)  visit.amount(row)    the three that are made of several keys

#include <array>
#include <concepts>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include <quillside/data/tables.hpp>

namespace quillside {

struct Field {
  std::string_view key;
  std::string_view example; // as TOML, for a person who fills it in
  std::string_view about;
  bool required = false;
  Words allowed = {}; // the closed list, where there is one
  bool shown = false; // of several ways to say it, the one that a blank row shows
};

/// The words in one line, for messages.
inline std::string joined(Words words, std::string_view between) {
  std::string all;
  for (const auto word : words) {
    if (!all.empty()) all += between;
    all += word;
  }
  return all;
}

inline constexpr Field source_field{"source", "\"own-bench\"", "id of a [source.ID]: where the numbers come from",
                                    true};
inline constexpr Field key_field{"key", "\"shop\"", "its name, for you to type", true};
inline constexpr std::array<std::string_view, 5> asks_with_speeds{"drill", "mill", "burr", "ream", "any"};

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Source>
void fields(Row& row, V& visit) {
  visit(Field{"author", "\"you\"", "who wrote or measured it", true}, row.author);
  visit(Field{"title", "\"own trials\"", "", true}, row.title);
  visit(Field{"edition", "\"not seen\"", "\"not seen\" where nobody saw it"}, row.edition);
  visit(Field{"year", "\"2026\"", ""}, row.year);
  visit(Field{"page", "\"not seen\"", ""}, row.page);
  visit(Field{"standing", "\"own bench\"", "how far it is to be trusted", true, standings}, row.standing);
  visit(Field{"note", "\"\"", ""}, row.note);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Material>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"name", "\"303 free-machining austenitic stainless\"", "", true}, row.name);
  visit(Field{"metal", "\"austenitic-stainless\"", "what it is, for cautions, fluids and hardness", true, metals},
        row.metal);
  visit(Field{"family", "\"stainless\"", "the less specific material that answers when this one has no row"},
        row.family);
  visit(Field{"aliases", "[\"our 303\"]", "what else people type"}, row.aliases);
  visit(Field{"group", "true", "a family row, no grade of its own"}, row.group);
  visit(Field{"layers", "[\"1084\", \"1095\"]", "of a layered metal: the slowest layer answers"}, row.layers);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Cutter>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"name", "\"high-speed steel\"", "", true}, row.name);
  visit(Field{"tools", "[\"drill\", \"mill\"]", "which tools come in it", true, tools}, row.tools);
  visit(Field{"usual", "[\"drill\"]", "of which tools it is taken when none is named", false, tools}, row.usual);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, SpeedRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"303\"", "key of a material, or a list of keys", true}, row.material);
  visit.each(Field{"condition", "\"annealed\"", "one condition or a list; absent: any", false, conditions},
             row.condition);
  visit(Field{"hardness", "\"135 to 185 HB\"", "absent: any"}, row.hardness);
  visit(Field{"cutter", "\"hss\"", "key of a cutter", true}, row.cutter);
  visit(Field{"speed", "\"85 ft/min\"", "cutting speed, or a range of it", false, {}, true}, row.speed);
  visit(Field{"spindle_speed", "\"20000 rev/min\"", "burr_speed only, in place of speed"}, row.spindle_speed);
  visit(Field{"diameter", "\"3 to 6 mm\"", "burr_speed only: the heads it holds for"}, row.diameter);
  visit(Field{"usual", "true", "taken when neither condition nor hardness is named"}, row.usual);
  visit(Field{"hand", "true", "burr_speed only: practice with a burr held in the hand"}, row.hand);
  visit(source_field, row.source);
  visit(Field{"note", "\"\"", ""}, row.note);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, SpeedRatio>
void fields(Row& row, V& visit) {
  visit(Field{"ask", "\"drill\"", "", true, asks_with_speeds}, row.ask);
  visit(Field{"cutter", "\"carbide\"", "the cutter that has no row", true}, row.cutter);
  visit(Field{"of", "\"hss\"", "the cutter whose row is taken", true}, row.of);
  visit(Field{"ratio", "\"2 to 3\"", "times its speed", true}, row.ratio);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, DrillingFeed>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"stainless\"", "key of a material, or a list of keys; absent: any"}, row.material);
  visit(Field{"cutter", "\"hss\"", "absent: any"}, row.cutter);
  visit(Field{"diameter", "\"0.125 to 0.25 in\"",
              "the drills it holds for: the low end belongs to it, the high end does not", true},
        row.diameter);
  visit(Field{"feed", "\"0.002 to 0.004 in/rev\"", "feed per turn", false, {}, true}, row.feed);
  visit(Field{"share", "\"0.5 to 1 %\"", "or a share of the diameter per turn"}, row.share);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ChipLoad>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"stainless\"", "key of a material, or a list of keys", true}, row.material);
  visit(Field{"cutter", "\"carbide\"", "", true}, row.cutter);
  visit.points(row);
  visit(Field{"diameter", "\"0.3 to 12 mm\"", "the cutters a share holds for"}, row.diameter);
  visit(Field{"share", "\"0.2 to 0.7 %\"", "or a share of the diameter per tooth"}, row.share);
  visit(Field{"first", "\"0.3 %\"", "of the share: where to begin; absent: its low end"}, row.first);
  visit(Field{"slot", "\"0.8\"", "what to multiply by in a full slot"}, row.slot);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, DeepHole>
void fields(Row& row, V& visit) {
  visit(Field{"depth", "\"3\"", "depth over diameter from which it holds", true}, row.depth);
  visit(Field{"speed_cut", "\"10 %\"", "off the speed", true}, row.speed_cut);
  visit(Field{"feed_cut", "\"10 %\"", "off the feed", true}, row.feed_cut);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, PeckRow>
void fields(Row& row, V& visit) {
  visit(Field{"metal", "[\"austenitic-stainless\"]", "absent: any", false, metals}, row.metal);
  visit(Field{"below", "\"1.6 mm\"", "only for drills smaller than this"}, row.below);
  visit(Field{"first", "\"2\"", "the first bite, in diameters", true}, row.first);
  visit(Field{"next", "\"1\"", "every bite after it", true}, row.next);
  visit(Field{"deep_from", "\"6\"", "beyond this depth", true}, row.deep_from);
  visit(Field{"deep_next", "\"0.5\"", "this bite", true}, row.deep_next);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, DrillPointRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"stainless\"", "absent: any"}, row.material);
  visit(Field{"point", "\"135 deg\"", "included point angle", true}, row.point);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, DrillWebRow>
void fields(Row& row, V& visit) {
  visit(Field{"diameter", "\"1/4 in\"", "", true}, row.diameter);
  visit(Field{"web", "\"0.044 in\"", "at the point", true}, row.web);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, LipReliefRow>
void fields(Row& row, V& visit) {
  visit(Field{"diameter", "\"0.125 to 0.25 in\"", "", true}, row.diameter);
  visit(Field{"metal", "[\"tool-steel\"]", "absent: any", false, metals}, row.metal);
  visit(Field{"relief", "\"16 deg\"", "lip relief at the outer corner", true}, row.relief);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Fluid>
void fields(Row& row, V& visit) {
  visit(Field{"ask", "\"drill\"", "", true, asks_with_speeds}, row.ask);
  visit(Field{"metal", "[\"brass\"]", "absent: any", false, metals}, row.metal);
  visit(Field{"fluid", "\"light oil\"", "what to use, in words", true}, row.fluid);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Machine>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"name", "\"my pillar drill\"", "", true}, row.name);
  visit(Field{"kind", "\"drill-press\"", "", true, machine_kinds}, row.kind);
  visit.gears(row);
  visit(Field{"top_speed", "\"18000 rev/min\"", "marked on the tool body, where that is lower"}, row.top_speed);
  visit(Field{"dial", "\"0.100 in\"", "table travel a handwheel turn"}, row.dial);
  visit(Field{"holder", "\"collet\"", "what holds the cutter", false, holders}, row.holder);
  visit(Field{"power", "\"250 W\"", "at the spindle"}, row.power);
  visit(Field{"runout", "\"0.02 mm\"", "total, at the cutter"}, row.runout);
  visit(Field{"pinion_radius", "\"0.5 in\"", "of the quill's pinion, to its pitch line"}, row.pinion_radius);
  visit(Field{"lever", "\"7 in\"", "from the pinion's axis to the hand"}, row.lever);
  visit(Field{"stiffness", "\"2000 N/mm\"", "sideways at the cutter: push with a spring scale, dial on the shank"},
        row.stiffness);
  visit(Field{"backlash_free", "true", "the table has no backlash"}, row.backlash_free);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, SizeRow>
void fields(Row& row, V& visit) {
  visit(Field{"kind", "\"number\"", "", true, size_kinds}, row.kind);
  visit(Field{"name", "\"no30\"", "", true}, row.name);
  visit(Field{"size", "\"0.1285 in\"", "", true}, row.size);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, HardnessRow>
void fields(Row& row, V& visit) {
  visit(Field{"hb", "226", "", true}, row.hb);
  visit(Field{"hv", "238", ""}, row.hv);
  visit(Field{"hrc", "20", ""}, row.hrc);
  visit(Field{"hrb", "97", ""}, row.hrb);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Limit>
void fields(Row& row, V& visit) {
  visit(Field{"key", "\"band_below\"", "which limit", true}, row.key);
  visit.amount(row);
  visit(Field{"what", "\"low end of a band that one source gives, times its value\"", "", true}, row.what);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, CuttingForceRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"416\"", "key of a material, or a list of keys", true}, row.material);
  visit(Field{"hardness", "\"135 to 185 HB\"", "absent: any"}, row.hardness);
  visit(Field{"kc", "\"1500 MPa\"", "kc1.1, specific force at a chip of 1 mm", true}, row.kc);
  visit(Field{"mc", "\"0.21\"", "how it grows as the chip thins", true}, row.mc);
  visit(Field{"doubt", "\"25 %\"", "either way", true}, row.doubt);
  visit(source_field, row.source);
  visit(Field{"note", "\"\"", ""}, row.note);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, UnitPowerRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"1018\"", "key of a material, or a list of keys", true}, row.material);
  visit(Field{"hardness", "\"120 to 140 HB\"", "absent: any"}, row.hardness);
  visit(Field{"unit_power", "\"0.69 hp/(in3/min)\"", "with a sharp tool", true}, row.unit_power);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, FeedFactorRow>
void fields(Row& row, V& visit) {
  visit(Field{"feed", "\"0.001 in/tooth\"", "", true}, row.feed);
  visit(Field{"factor", "\"1.60\"", "what the unit power is multiplied by", true}, row.factor);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, DrillForceRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"stainless\"", "key of a material, or a list of keys", true}, row.material);
  visit(Field{"hardness", "\"135 to 185 HB\"", "absent: any"}, row.hardness);
  visit(Field{"model", "\"handbook\"", "whose constants they are", true, drill_force_models}, row.model);
  visit(Field{"torque", "\"24000\"", "", true}, row.torque);
  visit(Field{"thrust", "\"35000\"", "absent: as the torque's"}, row.thrust);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, BurrSizeRow>
void fields(Row& row, V& visit) {
  visit(Field{"diameter", "\"2.35 to 4.5 mm\"", "the heads it holds for", true}, row.diameter);
  visit(Field{"shank", "\"1/8 in\"", "", true}, row.shank);
  visit(Field{"head_length", "\"12 mm\"", "of an ordinary cylinder", true}, row.head_length);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, CutterStrengthRow>
void fields(Row& row, V& visit) {
  visit(Field{"cutter", "\"hss\"", "key of a cutter", true}, row.cutter);
  visit(Field{"modulus", "\"207 GPa\"", "", true}, row.modulus);
  visit(Field{"shear_modulus", "\"80 GPa\"", "", true}, row.shear_modulus);
  visit(Field{"edge_radius", "\"6 um\"", "of a sharp ground edge", true}, row.edge_radius);
  visit(Field{"working_stress", "\"700 MPa\"", "peak bending stress to stay under", true}, row.working_stress);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, EndMillStock>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"units", "\"inch\"", "what the sizes are named in", true, stock_units}, row.units);
  visit(Field{"sizes", "\"1/32 to 1/4 in\"", "smallest to largest", true}, row.sizes);
  visit(Field{"step", "\"1/64 in\"", "from one to the next", true}, row.step);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, PointLimit>
void fields(Row& row, V& visit) {
  visit(Field{"item", "\"lip_height_difference\"", "what is judged", true, point_items}, row.item);
  visit(Field{"way", "\"cone\"", "how the point is ground; absent: any", false, grinding_ways}, row.way);
  visit(Field{"diameter", "\"2 to 10 mm\"", "the drills it holds for; absent: all"}, row.diameter);
  visit(Field{"keep", "\"0.05 mm\"", "off by no more than this: keep", true}, row.keep);
  visit(Field{"touch_up", "\"0.1 mm\"", "by no more than this: touch up; beyond it: regrind", true}, row.touch_up);
  visit(Field{"what", "\"lips by a dial, turned half round\"", "", true}, row.what);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, UsualOversize>
void fields(Row& row, V& visit) {
  visit(Field{"diameter", "\"0.126 to 0.251 in\"", "the drills it holds for", true}, row.diameter);
  visit(Field{"oversize", "\"0 to 0.005 in\"", "hole over drill, of a good point", true}, row.oversize);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Sign>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"sign", "\"outer corners worn\"", "what is seen, heard or felt", true}, row.sign);
  visit(Field{"words", "[\"burnt\"]", "what else people call it"}, row.words);
  visit(Field{"tool", "\"drill\"", "", true, sign_tools}, row.tool);
  visit(Field{"cause", "\"cutting speed too high\"", "", true}, row.cause);
  visit(Field{"set", "\"less spindle speed\"", "what to do about it", true}, row.set);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ScrewThread>
void fields(Row& row, V& visit) {
  visit(Field{"key", "\"M3x0.5\"", "as it is typed", true}, row.key);
  visit(Field{"screw", "\"M3\"", "what the size alone is called", true}, row.screw);
  visit(Field{"major", "\"3 mm\"", "basic major diameter", true}, row.major);
  visit(Field{"pitch", "\"0.5 mm\"", "\"1/40 in\" for 40 threads to the inch", true}, row.pitch);
  visit(Field{"metric", "true", "of a metric series: drilled with metric drills"}, row.metric);
  visit(Field{"usual", "true", "taken when only the size is named"}, row.usual);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ClearanceHole>
void fields(Row& row, V& visit) {
  visit(Field{"screw", "\"M3\"", "the screw that goes through", true}, row.screw);
  visit(Field{"normal", "\"3.4 mm\"", "", true}, row.normal);
  visit(Field{"close", "\"3.2 mm\"", ""}, row.close);
  visit(Field{"loose", "\"3.6 mm\"", ""}, row.loose);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ScrewHead>
void fields(Row& row, V& visit) {
  visit(Field{"screw", "\"M3\"", "", true}, row.screw);
  visit(Field{"shape", "\"flat\"", "", true, head_shapes}, row.shape);
  visit(Field{"height", "\"1.65 mm\"", "of a flat head: down to where its cone has the width of the screw", true},
        row.height);
  visit(Field{"cone", "\"90 deg\"", "of a flat head"}, row.cone);
  visit(Field{"counterbore", "\"6 mm\"", "of a cap head: how wide it is counterbored"}, row.counterbore);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ThreadEngagement>
void fields(Row& row, V& visit) {
  visit(Field{"metal", "[\"brass\"]", "absent: any", false, metals}, row.metal);
  visit(Field{"engagement", "\"65 to 75 %\"", "percentage of thread, of 0.6495 P each side", true}, row.engagement);
  visit(Field{"first", "\"75 %\"", "the one to take", true}, row.first);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ReamAllowance>
void fields(Row& row, V& visit) {
  visit(Field{"diameter", "\"0.171 to 0.281 in\"",
              "the reamers it holds for: the low end belongs to it, the high end does not", true},
        row.diameter);
  visit(Field{"allowance", "\"0.008 to 0.012 in\"", "on the diameter", true}, row.allowance);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ChartList>
void fields(Row& row, V& visit) {
  visit(Field{"key", "\"drill-sizes\"", "", true, chart_lists}, row.key);
  visit(Field{"words", "[\"1/8\", \"no30\"]", "as you would type them", true}, row.words);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Instrument>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"name", "\"0.001 in dial caliper\"", "", true}, row.name);
  visit(Field{"error", "\"0.001 in\"", "usual half-width, nine times in ten: a length or an angle", true}, row.error);
  visit(Field{"reads", "[\"thickness\"]", "", true}, row.reads);
  visit(Field{"trouble", "1", "1 easy to 5", true}, row.trouble);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ToleranceClass>
void fields(Row& row, V& visit) {
  visit(Field{"name", "\"p6\"", "a hole's begins with a capital, a shaft's with a small letter", true}, row.name);
  visit(Field{"size", "\"3 to 6 mm\"", "over the low end, up to and with the high end", true}, row.size);
  visit(Field{"limits", "\"+12 to +20 um\"", "off the basic size, with their signs", true}, row.limits);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, FitClass>
void fields(Row& row, V& visit) {
  visit(Field{"name", "\"FN2\"", "", true}, row.name);
  visit(Field{"size", "\"0.12 to 0.24 in\"", "over the low end, up to and with the high end", true}, row.size);
  visit(Field{"hole", "\"0 to +0.5 thou\"", "off the basic size, with their signs", true}, row.hole);
  visit(Field{"shaft", "\"+0.7 to +1 thou\"", "the same", true}, row.shaft);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, FitRow>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"name", "\"press: held tight\"", "in words", true}, row.name);
  visit(Field{"fit_class", "\"H7/p6\"", "hole and shaft, or a fit_class", false, {}, true}, row.fit_class);
  visit(Field{"interference", "\"0.002 to 0.005 in\"", "or how much tighter than the part the hole is left"},
        row.interference);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ExpansionRow>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"303\"", "key of a material, or a list of keys", true}, row.material);
  visit(Field{"expansion", "\"17.2 um/(m degC)\"", "the mean over those degrees, or a range of it", true},
        row.expansion);
  visit(Field{"over", "\"0 to 100 degC\"", "from where to where it is the mean", true}, row.over);
  visit(source_field, row.source);
  visit(Field{"note", "\"\"", ""}, row.note);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, OxideColour>
void fields(Row& row, V& visit) {
  visit(Field{"metal", "[\"carbon-steel\"]", "", true, metals}, row.metal);
  visit(Field{"heat", "\"430 degF\"", "where a bright surface takes that colour in air", true}, row.heat);
  visit(Field{"colour", "\"pale yellow\"", "", true}, row.colour);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, HeatCeiling>
void fields(Row& row, V& visit) {
  visit.each(Field{"material", "\"brass\"", "key of a material, or a list of keys", true}, row.material);
  visit.each(Field{"condition", "\"tempered\"", "absent: any", false, conditions}, row.condition);
  visit(Field{"ceiling", "\"250 degC\"", "no hotter than this", true}, row.ceiling);
  visit(Field{"until_tempered", "true", "holds for a hardened part until its temper is named"}, row.until_tempered);
  visit(Field{"what", "\"its hardness from cold work\"", "what is lost past it", true}, row.what);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, Caution>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"severity", "\"warn\"", "", true, severities}, row.severity);
  visit(Field{"text", "\"Clamp the work.\"", "", true}, row.text);
  visit(Field{"when", "[\"ask:drill\", \"metal:brass|copper\"]", "tags that must all hold", true}, row.when);
  visit(source_field, row.source);
}

/// The names of the kinds of row in a table file, in the order of members_of.
inline constexpr auto kind_names = std::to_array<std::string_view>({"source",
                                                                    "material",
                                                                    "cutter",
                                                                    "drilling_speed",
                                                                    "milling_speed",
                                                                    "reaming_speed",
                                                                    "burr_speed",
                                                                    "speed_ratio",
                                                                    "drilling_feed",
                                                                    "chip_load",
                                                                    "deep_hole",
                                                                    "peck",
                                                                    "drill_point",
                                                                    "drill_web",
                                                                    "lip_relief",
                                                                    "fluid",
                                                                    "machine",
                                                                    "size",
                                                                    "hardness",
                                                                    "limit",
                                                                    "cutting_force",
                                                                    "unit_power",
                                                                    "feed_factor",
                                                                    "drill_force",
                                                                    "burr_size",
                                                                    "cutter_strength",
                                                                    "end_mill_stock",
                                                                    "point_limit",
                                                                    "usual_oversize",
                                                                    "tolerance_class",
                                                                    "fit_class",
                                                                    "fit",
                                                                    "expansion",
                                                                    "oxide_colour",
                                                                    "heat_ceiling",
                                                                    "reading",
                                                                    "sign",
                                                                    "screw_thread",
                                                                    "clearance_hole",
                                                                    "screw_head",
                                                                    "thread_engagement",
                                                                    "ream_allowance",
                                                                    "chart_list",
                                                                    "caution"});

/// The rows of each kind: of a Tables, or of any struct with the same members.
template <class T> auto members_of(T& tables) {
  return std::tie(tables.sources, tables.materials, tables.cutters, tables.drilling_speeds, tables.milling_speeds,
                  tables.reaming_speeds, tables.burr_speeds, tables.speed_ratios, tables.drilling_feeds,
                  tables.chip_loads, tables.deep_holes, tables.pecks, tables.drill_points, tables.drill_webs,
                  tables.lip_reliefs, tables.fluids, tables.machines, tables.sizes, tables.hardness, tables.limits,
                  tables.cutting_forces, tables.unit_powers, tables.feed_factors, tables.drill_forces,
                  tables.burr_sizes, tables.cutter_strengths, tables.end_mill_stock, tables.point_limits,
                  tables.usual_oversizes, tables.tolerance_classes, tables.fit_classes, tables.fits, tables.expansions,
                  tables.oxide_colours, tables.heat_ceilings, tables.readings, tables.signs, tables.screw_threads,
                  tables.clearance_holes, tables.screw_heads, tables.thread_engagements, tables.ream_allowances,
                  tables.chart_lists, tables.cautions);
}

/// visit(name, rows) for every kind.
template <class T, class V> void kinds(T& tables, V&& visit) {
  auto members = members_of(tables);
  [&]<std::size_t... i>(std::index_sequence<i...>) { (visit(kind_names[i], std::get<i>(members)), ...); }
  (std::make_index_sequence<kind_names.size()>{});
}

/// visit(name, rows of one, rows of the other) for every kind.
template <class A, class B, class V> void kinds_of_both(A& one, B& other, V&& visit) {
  auto ones = members_of(one);
  auto others = members_of(other);
  [&]<std::size_t... i>(std::index_sequence<i...>) {
    (visit(kind_names[i], std::get<i>(ones), std::get<i>(others)), ...);
  }
  (std::make_index_sequence<kind_names.size()>{});
}

} // namespace quillside
