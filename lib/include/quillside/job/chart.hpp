#pragma once
// The wall chart: sizes down, materials across, and in each cell the step or the speed to set, as the ask of that tool
// gives it. A cell is asked for like any single ask, so that no chart and no ask can differ.
// Leaves out: depth, feed and width of a cut; each ask has those.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/paper.hpp>
#include <quillside/data/work.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// One tool of the chart, with what it is asked for on.
struct ChartTool {
  std::string_view ask; // drill, mill, burr
  Typed<const Cutter*> cutter;
  std::optional<Typed<const Machine*>> machine = {};
};

struct ChartQuestion {
  std::vector<ChartTool> tools;
  std::optional<std::string> asks = {};                          // as typed
  std::optional<Typed<std::vector<Typed<Work>>>> materials = {}; // absent: the list of the tables
  std::optional<Typed<std::vector<SizeWord>>> sizes = {};        // absent: the list of the tables, for each tool
  std::optional<Typed<Length>> read_from = {};                   // absent: as the tables have it
  Typed<const Paper*> paper{papers.data(), std::nullopt};        // never null
  std::optional<std::string> tables = {}; // the last --tables as typed; which files answer, the job finds
};

/// The asks a chart is made of.
inline constexpr std::array<std::string_view, 3> chart_asks{"drill", "mill", "burr"};

/// Throws a Fault for a size that none of the tools comes in, for a list without a size, for letters that are smaller
/// than the small print or too large for the paper, and where no table has a speed for any cell.
Answer chart(const Tables& tables, const ChartQuestion& question);

} // namespace quillside
