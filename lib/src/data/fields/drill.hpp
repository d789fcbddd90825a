#pragma once
// The fields of a drill: how deep and how it is ground.

#include <concepts>
#include <type_traits>

#include <quillside/data/hole_row.hpp>
#include <quillside/data/material.hpp>
#include <quillside/data/point_limit.hpp>

#include "field.hpp"

namespace quillside {

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

} // namespace quillside
