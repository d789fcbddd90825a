#include <quillside/data/chart_list.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>

namespace quillside {

Words chart_list(std::span<const ChartList> lists, std::string_view key) {
  const auto found = std::find_if(lists.begin(), lists.end(), [&](const ChartList& row) { return row.key == key; });
  if (found != lists.end()) return found->words;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = std::string(key);
  fault.message = "no table has the chart_list '" + std::string(key) + "'";
  throw fault;
}

} // namespace quillside
