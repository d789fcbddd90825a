#pragma once
// The fields of forces, and what a cutter bears.

#include <concepts>
#include <type_traits>

#include <quillside/data/force_row.hpp>

#include "field.hpp"

namespace quillside {

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

} // namespace quillside
