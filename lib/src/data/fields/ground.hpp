#pragma once
// The fields of what every table stands on: sources, metals, cutters, hardness, limits of verdicts.

#include <concepts>
#include <type_traits>

#include <quillside/data/convert_hardness.hpp>
#include <quillside/data/cutter.hpp>
#include <quillside/data/limit.hpp>
#include <quillside/data/material.hpp>
#include <quillside/data/source.hpp>

#include "field.hpp"

namespace quillside {

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

} // namespace quillside
