#pragma once
// The fields of fits, and the heat that helps them.

#include <concepts>
#include <type_traits>

#include <quillside/data/fit_row.hpp>
#include <quillside/data/heat_row.hpp>
#include <quillside/data/material.hpp>

#include "field.hpp"

namespace quillside {

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

} // namespace quillside
