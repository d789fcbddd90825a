#pragma once
// The fields of speeds and feeds, and the fluid that goes with them.

#include <concepts>
#include <type_traits>

#include <quillside/data/feed_row.hpp>
#include <quillside/data/fluid.hpp>
#include <quillside/data/material.hpp>
#include <quillside/data/speed_row.hpp>

#include "field.hpp"

namespace quillside {

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
requires std::same_as<std::remove_const_t<Row>, Fluid>
void fields(Row& row, V& visit) {
  visit(Field{"ask", "\"drill\"", "", true, asks_with_speeds}, row.ask);
  visit(Field{"metal", "[\"brass\"]", "absent: any", false, metals}, row.metal);
  visit(Field{"fluid", "\"light oil\"", "what to use, in words", true}, row.fluid);
  visit(source_field, row.source);
}

} // namespace quillside
