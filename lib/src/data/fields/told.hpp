#pragma once
// The fields of what a person is told: signs, cautions, the lists of a chart.

#include <concepts>
#include <type_traits>

#include <quillside/data/caution.hpp>
#include <quillside/data/chart_list.hpp>
#include <quillside/data/sign.hpp>

#include "field.hpp"

namespace quillside {

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
requires std::same_as<std::remove_const_t<Row>, Caution>
void fields(Row& row, V& visit) {
  visit(key_field, row.key);
  visit(Field{"severity", "\"warn\"", "", true, severities}, row.severity);
  visit(Field{"text", "\"Clamp the work.\"", "", true}, row.text);
  visit(Field{"when", "[\"ask:drill\", \"metal:brass|copper\"]", "tags that must all hold", true}, row.when);
  visit(source_field, row.source);
}

template <class Row, class V>
requires std::same_as<std::remove_const_t<Row>, ChartList>
void fields(Row& row, V& visit) {
  visit(Field{"key", "\"drill-sizes\"", "", true, chart_lists}, row.key);
  visit(Field{"words", "[\"1/8\", \"no30\"]", "as you would type them", true}, row.words);
  visit(source_field, row.source);
}

} // namespace quillside
