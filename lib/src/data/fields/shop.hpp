#pragma once
// The fields of what stands in the shop: machines, sizes of tools, instruments.

#include <concepts>
#include <type_traits>

#include <quillside/data/end_mill_stock.hpp>
#include <quillside/data/machine.hpp>
#include <quillside/data/reading_row.hpp>
#include <quillside/data/size_ladder.hpp>

#include "field.hpp"

namespace quillside {

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
requires std::same_as<std::remove_const_t<Row>, EndMillStock>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"units", "\"inch\"", "what the sizes are named in", true, stock_units}, row.units);
  visit(Field{"sizes", "\"1/32 to 1/4 in\"", "smallest to largest", true}, row.sizes);
  visit(Field{"step", "\"1/64 in\"", "from one to the next", true}, row.step);
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

} // namespace quillside
