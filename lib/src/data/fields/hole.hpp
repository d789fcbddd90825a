#pragma once
// The fields of holes for screws and reamers.

#include <concepts>
#include <type_traits>

#include <quillside/data/material.hpp>
#include <quillside/data/thread_row.hpp>

#include "field.hpp"

namespace quillside {

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

} // namespace quillside
