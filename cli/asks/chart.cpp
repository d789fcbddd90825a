#include <quillside/job/chart.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include <algorithm>

#include "asks.hpp"

namespace quillside::cli {

namespace {

std::vector<SizeWord> sizes_of(const std::string& list, UnitSystem units) {
  std::vector<SizeWord> sizes;
  for (const auto& word : words_of_list(list)) sizes.push_back(read_size(word, units));
  if (sizes.empty()) throw wrong_word(list, "names no size: give some, as 1/8,no30,4mm");
  return sizes;
}

std::vector<std::string> asks_of(const std::string& list) {
  std::vector<std::string> names;
  for (const auto& word : words_of_list(list)) {
    if (std::find(chart_asks.begin(), chart_asks.end(), word) == chart_asks.end())
      throw wrong_word(word, "is no ask of a chart; allowed: drill, mill, burr", {chart_asks.begin(), chart_asks.end()},
                       nearest_word(word, chart_asks));
    if (std::find(names.begin(), names.end(), word) == names.end()) names.push_back(word);
  }
  if (names.empty())
    throw wrong_word(list, "names no ask of a chart; allowed: drill, mill, burr",
                     {chart_asks.begin(), chart_asks.end()});
  return names;
}

ChartTool tool_of(const Call& call, const Session& session, const std::string& name) {
  const auto ask = *std::find(chart_asks.begin(), chart_asks.end(), name);
  if (ask == "drill") return {ask, session.cutter(call, ask), session.machine(call, drilled_on)};
  if (ask == "mill") return {ask, session.cutter(call, ask), session.machine(call, milled_on)};
  return {ask, session.cutter(call, ask), session.machine(call, burred_on)};
}

} // namespace

Reply ask_chart(const Call& call, const Session& session) {
  ChartQuestion question;
  question.asks = call.flag("asks");
  for (const auto& name : asks_of(question.asks.value_or("drill")))
    question.tools.push_back(tool_of(call, session, name));
  if (const auto list = call.flag("materials")) question.materials = {read_works(session.tables(), *list), list};
  if (const auto list = call.flag("sizes")) question.sizes = {sizes_of(*list, session.units()), list};
  question.read_from = session.length(call, "read-from");
  question.paper = session.paper(call, "a4");
  question.tables = call.flag("tables");
  return {chart(session.tables(), question)};
}

} // namespace quillside::cli
