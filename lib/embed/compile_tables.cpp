// Writes the tables of a folder as C++ values, so that a start of the program parses nothing.
//
//   compile_tables OUT.cpp FILE.toml ...
//
// Reads with the library's own loader: what does not load is not compiled in.

#include <fstream>
#include <iostream>
#include <sstream>
#include <string>

#include <quillside/data/load.hpp>

#include "../src/data/fields.hpp"

namespace {

using namespace quillside;

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\')
      out += std::string("\\") + c;
    else if (c == '\n')
      out += "\\n";
    else
      out += c;
  }
  return out + "\"";
}

std::string exact(double number) {
  std::ostringstream out;
  out << std::hexfloat << number;
  return out.str();
}

class Writer {
public:
  explicit Writer(std::ostream& out) : out_(out) {}

  template <class Row> void write(std::string_view member, std::span<const Row> rows) {
    std::ostringstream body;
    for (const auto& row : rows) {
      text_.str("");
      if constexpr (std::same_as<Row, Source>) put("key", quoted(row.key));
      fields(row, *this);
      put("place", "{" + quoted(row.place.file) + ", " + std::to_string(row.place.line) + ", " +
                       std::to_string(row.place.column) + "}");
      body << "    {" << text_.str() << "},\n";
    }
    if (rows.empty()) return;
    out_ << "constexpr " << type_name(rows) << " all_" << member << "[] = {\n" << body.str() << "};\n\n";
    members_ << "  tables." << member << " = all_" << member << ";\n";
  }

  [[nodiscard]] std::string members() const { return members_.str(); }

  void operator()(const Field& field, std::string_view value) { put(name(field), quoted(value)); }
  void operator()(const Field& field, bool value) { put(field.key, value ? "true" : "false"); }
  void operator()(const Field& field, int value) { put(field.key, std::to_string(value)); }
  void operator()(const Field& field, double value) { put(field.key, exact(value)); }
  void operator()(const Field& field, const Words& words) {
    put(field.key, list("std::string_view", words, [](std::string_view word) { return quoted(word); }));
  }
  void operator()(const Field& field, const PrintedHardness& value) {
    put(field.key, "{" + quoted(value.text) + ", {" + exact(value.band.low) + ", " + exact(value.band.high) +
                       ", HardnessScale(" + std::to_string(static_cast<int>(value.band.scale)) + ")}}");
  }
  void operator()(const Field& field, const Printed<double>& value) {
    put(field.key, "{" + quoted(value.text) + ", {" + exact(value.range.low) + ", " + exact(value.range.high) + "}}");
  }
  void operator()(const Field& field, const PrintedLimits& value) {
    put(name(field), "{" + quoted(value.text) + ", " + range(value.range) + "}");
  }
  template <class Quantity> void operator()(const Field& field, const Printed<Quantity>& value) {
    put(field.key, "{" + quoted(value.text) + ", " + range(value.range) + "}");
  }
  void each(const Field& field, std::string_view value) { put(field.key, quoted(value)); }

  void points(const ChipLoad& row) {
    put("points", list("ChipPoint", row.points, [](const ChipPoint& point) {
          return "{" + quantity(point.diameter) + ", " + range(point.load) + "}";
        }));
  }
  void gears(const Machine& row) {
    put("steps", list("Step", row.steps,
                      [](const Step& step) { return "{" + quoted(step.name) + ", " + quantity(step.speed) + "}"; }));
    put("range", range(row.range));
  }
  void amount(const Limit& row) {
    put("value", quoted(row.value));
    put("ratio", exact(row.ratio));
    put("length", quantity(row.length));
  }

private:
  static std::string_view name(const Field& field) { return field.key; }
  template <class Quantity> static std::string quantity(Quantity value) {
    return quantity_name(value) + "::from_value(" + exact(value.value()) + ")";
  }
  template <class Quantity> static std::string range(const Range<Quantity>& value) {
    return "{" + quantity(value.low) + ", " + quantity(value.high) + "}";
  }

  static std::string quantity_name(Length) { return "Length"; }
  static std::string quantity_name(Angle) { return "Angle"; }
  static std::string quantity_name(SpindleSpeed) { return "SpindleSpeed"; }
  static std::string quantity_name(CuttingSpeed) { return "CuttingSpeed"; }
  static std::string quantity_name(FeedPerRev) { return "FeedPerRev"; }
  static std::string quantity_name(FeedPerTooth) { return "FeedPerTooth"; }
  static std::string quantity_name(Power) { return "Power"; }
  static std::string quantity_name(Stress) { return "Stress"; }
  static std::string quantity_name(Stiffness) { return "Stiffness"; }
  static std::string quantity_name(Temperature) { return "Temperature"; }
  static std::string quantity_name(Expansion) { return "Expansion"; }

  static std::string type_name(std::span<const Source>) { return "Source"; }
  static std::string type_name(std::span<const Material>) { return "Material"; }
  static std::string type_name(std::span<const Cutter>) { return "Cutter"; }
  static std::string type_name(std::span<const SpeedRow>) { return "SpeedRow"; }
  static std::string type_name(std::span<const SpeedRatio>) { return "SpeedRatio"; }
  static std::string type_name(std::span<const DrillingFeed>) { return "DrillingFeed"; }
  static std::string type_name(std::span<const ChipLoad>) { return "ChipLoad"; }
  static std::string type_name(std::span<const DeepHole>) { return "DeepHole"; }
  static std::string type_name(std::span<const PeckRow>) { return "PeckRow"; }
  static std::string type_name(std::span<const DrillPointRow>) { return "DrillPointRow"; }
  static std::string type_name(std::span<const DrillWebRow>) { return "DrillWebRow"; }
  static std::string type_name(std::span<const LipReliefRow>) { return "LipReliefRow"; }
  static std::string type_name(std::span<const Fluid>) { return "Fluid"; }
  static std::string type_name(std::span<const Machine>) { return "Machine"; }
  static std::string type_name(std::span<const SizeRow>) { return "SizeRow"; }
  static std::string type_name(std::span<const HardnessRow>) { return "HardnessRow"; }
  static std::string type_name(std::span<const Limit>) { return "Limit"; }
  static std::string type_name(std::span<const CuttingForceRow>) { return "CuttingForceRow"; }
  static std::string type_name(std::span<const UnitPowerRow>) { return "UnitPowerRow"; }
  static std::string type_name(std::span<const FeedFactorRow>) { return "FeedFactorRow"; }
  static std::string type_name(std::span<const DrillForceRow>) { return "DrillForceRow"; }
  static std::string type_name(std::span<const BurrSizeRow>) { return "BurrSizeRow"; }
  static std::string type_name(std::span<const CutterStrengthRow>) { return "CutterStrengthRow"; }
  static std::string type_name(std::span<const EndMillStock>) { return "EndMillStock"; }
  static std::string type_name(std::span<const PointLimit>) { return "PointLimit"; }
  static std::string type_name(std::span<const UsualOversize>) { return "UsualOversize"; }
  static std::string type_name(std::span<const ToleranceClass>) { return "ToleranceClass"; }
  static std::string type_name(std::span<const FitClass>) { return "FitClass"; }
  static std::string type_name(std::span<const FitRow>) { return "FitRow"; }
  static std::string type_name(std::span<const ExpansionRow>) { return "ExpansionRow"; }
  static std::string type_name(std::span<const OxideColour>) { return "OxideColour"; }
  static std::string type_name(std::span<const HeatCeiling>) { return "HeatCeiling"; }
  static std::string type_name(std::span<const Instrument>) { return "Instrument"; }
  static std::string type_name(std::span<const Sign>) { return "Sign"; }
  static std::string type_name(std::span<const ScrewThread>) { return "ScrewThread"; }
  static std::string type_name(std::span<const ClearanceHole>) { return "ClearanceHole"; }
  static std::string type_name(std::span<const ScrewHead>) { return "ScrewHead"; }
  static std::string type_name(std::span<const ThreadEngagement>) { return "ThreadEngagement"; }
  static std::string type_name(std::span<const ReamAllowance>) { return "ReamAllowance"; }
  static std::string type_name(std::span<const ChartList>) { return "ChartList"; }
  static std::string type_name(std::span<const Caution>) { return "Caution"; }

  /// A list needs an array of its own, written ahead of the rows that point to it.
  template <class Entries, class Print> std::string list(std::string_view type, const Entries& entries, Print print) {
    if (entries.empty()) return "{}";
    std::string array = "list_" + std::to_string(lists_++);
    out_ << "constexpr " << type << " " << array << "[] = {";
    for (const auto& entry : entries) out_ << print(entry) << ", ";
    out_ << "};\n";
    return array;
  }

  void put(std::string_view member, const std::string& value) {
    text_ << (text_.str().empty() ? "" : ", ") << "." << member << " = " << value;
  }

  std::ostream& out_;
  std::ostringstream text_;
  std::ostringstream members_;
  int lists_ = 0;
};

int compile(const std::vector<std::string>& words) {
  std::vector<std::string> names;
  std::vector<std::string> contents;
  for (std::size_t i = 1; i < words.size(); ++i) {
    std::ifstream in(words[i]);
    std::ostringstream content;
    content << in.rdbuf();
    if (!in) {
      std::cerr << words[i] << ": cannot be read\n";
      return 4;
    }
    names.push_back("built-in:" + words[i].substr(words[i].find_last_of('/') + 1));
    contents.push_back(content.str());
  }
  std::vector<TableText> texts;
  for (std::size_t i = 0; i < names.size(); ++i) texts.push_back({names[i], contents[i]});
  const Loaded loaded = load_over(Tables{}, texts);
  for (const auto& fault : loaded.faults)
    std::cerr << fault.place.file << ":" << fault.place.line << ":" << fault.place.column << ": " << fault.what
              << (fault.allowed.empty() ? "" : "; allowed: " + fault.allowed) << '\n';
  if (!loaded.faults.empty()) return 3;

  std::ofstream out(words[0]);
  out << "// Made from tables/*.toml by lib/embed/compile_tables.cpp; edit those.\n\n#include "
         "<quillside/data/tables.hpp>\n\nnamespace quillside {\n\nnamespace {\n\n";
  Writer writer(out);
  const auto& tables = loaded.tables;
  auto members = members_of(tables);
  constexpr std::array<std::string_view, kind_names.size()> member_names{"sources",
                                                                         "materials",
                                                                         "cutters",
                                                                         "drilling_speeds",
                                                                         "milling_speeds",
                                                                         "reaming_speeds",
                                                                         "burr_speeds",
                                                                         "speed_ratios",
                                                                         "drilling_feeds",
                                                                         "chip_loads",
                                                                         "deep_holes",
                                                                         "pecks",
                                                                         "drill_points",
                                                                         "drill_webs",
                                                                         "lip_reliefs",
                                                                         "fluids",
                                                                         "machines",
                                                                         "sizes",
                                                                         "hardness",
                                                                         "limits",
                                                                         "cutting_forces",
                                                                         "unit_powers",
                                                                         "feed_factors",
                                                                         "drill_forces",
                                                                         "burr_sizes",
                                                                         "cutter_strengths",
                                                                         "end_mill_stock",
                                                                         "point_limits",
                                                                         "usual_oversizes",
                                                                         "tolerance_classes",
                                                                         "fit_classes",
                                                                         "fits",
                                                                         "expansions",
                                                                         "oxide_colours",
                                                                         "heat_ceilings",
                                                                         "readings",
                                                                         "signs",
                                                                         "screw_threads",
                                                                         "clearance_holes",
                                                                         "screw_heads",
                                                                         "thread_engagements",
                                                                         "ream_allowances",
                                                                         "chart_lists",
                                                                         "cautions"};
  [&]<std::size_t... i>(std::index_sequence<i...>) { (writer.write(member_names[i], std::get<i>(members)), ...); }
  (std::make_index_sequence<kind_names.size()>{});
  out << "constexpr TableText all_texts[] = {\n";
  for (const auto& text : tables.texts)
    out << "    {" << quoted(text.name) << ",\n     " << quoted(text.text) << "},\n";
  out << "};\n\n} // namespace\n\nTables builtin_tables() {\n  Tables tables;\n"
      << writer.members() << "  tables.texts = all_texts;\n  return tables;\n}\n\n} // namespace quillside\n";
  return out ? 0 : 4;
}

} // namespace

int main(int count, char** words) {
  if (count < 3) {
    std::cerr << "usage: compile_tables OUT.cpp FILE.toml ...\n";
    return 2;
  }
  return compile({words + 1, words + count});
}
