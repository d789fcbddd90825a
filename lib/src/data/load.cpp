#include <quillside/data/load.hpp>

#include <algorithm>
#include <deque>
#include <functional>
#include <sstream>
#include <utility>

#define TOML_EXCEPTIONS 1
#include <toml++/toml.h>

#include <quillside/model/belt.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/suggest.hpp>

#include "fields.hpp"

namespace quillside {

namespace {

std::string joined(Words words, std::string_view between) {
  std::string all;
  for (const auto word : words) {
    if (!all.empty()) all += between;
    all += word;
  }
  return all;
}

/// What the rows of a Tables point into, when they came from disk.
struct Storage {
  std::deque<std::string> texts;
  std::deque<std::vector<std::string_view>> words;
  std::deque<std::vector<ChipPoint>> points;
  std::deque<std::vector<Step>> steps;
  std::vector<TableText> files;

  std::vector<Source> sources;
  std::vector<Material> materials;
  std::vector<Cutter> cutters;
  std::vector<SpeedRow> drilling_speeds, milling_speeds, reaming_speeds, burr_speeds;
  std::vector<SpeedRatio> speed_ratios;
  std::vector<DrillingFeed> drilling_feeds;
  std::vector<ChipLoad> chip_loads;
  std::vector<DeepHole> deep_holes;
  std::vector<PeckRow> pecks;
  std::vector<DrillPointRow> drill_points;
  std::vector<LipReliefRow> lip_reliefs;
  std::vector<Fluid> fluids;
  std::vector<Machine> machines;
  std::vector<SizeRow> sizes;
  std::vector<HardnessRow> hardness;
  std::vector<Limit> limits;
  std::vector<Instrument> readings;
  std::vector<Caution> cautions;

  std::shared_ptr<const void> below; // what the rows taken over from the tables below point into

  std::string_view keep(std::string text) { return texts.emplace_back(std::move(text)); }
  Words keep(std::vector<std::string_view> list) { return words.emplace_back(std::move(list)); }
};

struct At {
  int line = 0;
  int column = 0;
};

At place_of(const toml::node& node) {
  return {static_cast<int>(node.source().begin.line), static_cast<int>(node.source().begin.column)};
}

/// Reads one row by its fields; every fault goes to the list, with its place.
class RowReader {
public:
  RowReader(const toml::table& node, std::string_view file, Storage& storage, std::vector<TableFault>& faults)
      : node_(node), file_(file), storage_(storage), faults_(faults) {}

  void operator()(const Field& field, std::string_view& member) {
    if (const auto* found = take(field))
      if (const auto text = as_text(field, *found)) {
        check_allowed(field, *text, *found);
        member = storage_.keep(*text);
      }
  }

  void operator()(const Field& field, Words& member) {
    if (const auto* found = take(field)) member = storage_.keep(as_list(field, *found));
  }

  void operator()(const Field& field, bool& member) {
    const auto* found = take(field);
    if (found == nullptr) return;
    if (const auto value = found->value_exact<bool>())
      member = *value;
    else
      wrong(*found, "'" + std::string(field.key) + "' is no truth value", "true or false");
  }

  void operator()(const Field& field, double& member) {
    const auto* found = take(field);
    if (found == nullptr) return;
    if (found->is_number())
      member = *found->value<double>();
    else
      wrong(*found, "'" + std::string(field.key) + "' is no number", std::string(field.example));
  }

  void operator()(const Field& field, int& member) {
    const auto* found = take(field);
    if (found == nullptr) return;
    if (const auto value = found->value_exact<int64_t>(); value && *value >= 1 && *value <= 5)
      member = static_cast<int>(*value);
    else
      wrong(*found, "'" + std::string(field.key) + "' is no whole number from 1 to 5", std::string(field.example));
  }

  void operator()(const Field& field, PrintedHardness& member) {
    printed(field, member.text, [&](std::string_view text) { member.band = read_hardness_band(text); });
  }
  void operator()(const Field& field, Printed<Length>& m) { range(field, m, read_length_range); }
  void operator()(const Field& field, Printed<Angle>& m) { range(field, m, read_angle_range); }
  void operator()(const Field& field, Printed<SpindleSpeed>& m) { range(field, m, read_spindle_speed_range); }
  void operator()(const Field& field, Printed<CuttingSpeed>& m) { range(field, m, read_cutting_speed_range); }
  void operator()(const Field& field, Printed<FeedPerRev>& m) { range(field, m, read_feed_per_rev_range); }
  void operator()(const Field& field, Printed<Power>& m) { range(field, m, read_power_range); }
  void operator()(const Field& field, Printed<double>& m) {
    const bool percent = field.example.find('%') != std::string_view::npos;
    range(field, m, percent ? read_percent_range : read_ratio_range);
  }

  /// A list stands for one row each; rows() multiplies them out.
  void each(const Field& field, std::string_view& member) {
    const auto* found = take(field);
    if (found == nullptr) return;
    Each each{&member, {}};
    if (found->is_array())
      each.values = as_list(field, *found);
    else if (const auto text = as_text(field, *found)) {
      check_allowed(field, *text, *found);
      each.values = {storage_.keep(*text)};
    }
    if (!each.values.empty()) eaches_.push_back(std::move(each));
  }

  void points(ChipLoad& row) {
    const Field diameters{"diameters", "[\"1/8 in\", \"1/4 in\"]", "printed points: the cutters"};
    const Field loads{"loads", "[\"0.0005 in/tooth\", \"0.001 in/tooth\"]", "and the load of each"};
    const auto* at = take(diameters);
    const auto* load = take(loads);
    if (at == nullptr && load == nullptr) return;
    if (at == nullptr || load == nullptr) {
      wrong(node_, "'diameters' and 'loads' go together", "both, of the same length");
      return;
    }
    const auto sizes = as_list(diameters, *at);
    const auto values = as_list(loads, *load);
    if (sizes.size() != values.size()) {
      wrong(*load,
            "'loads' has " + std::to_string(values.size()) + " entries, 'diameters' has " +
                std::to_string(sizes.size()),
            "as many of both");
      return;
    }
    std::vector<ChipPoint> points;
    for (std::size_t i = 0; i < sizes.size(); ++i)
      attempt(*load, "loads", [&] {
        points.push_back({read_length_range(sizes[i]).low, read_feed_per_tooth_range(values[i])});
      });
    if (!std::is_sorted(points.begin(), points.end(),
                        [](const ChipPoint& a, const ChipPoint& b) { return a.diameter < b.diameter; }))
      wrong(*at, "'diameters' are not in order", "the smallest first");
    row.points = storage_.points.emplace_back(std::move(points));
  }

  void gears(Machine& row) {
    std::vector<Step> steps;
    const auto* list = take({"steps", "", ""});
    const auto* range = take({"range", "", ""});
    const auto* motor = take({"motor", "", ""});
    const auto pulleys = [&](std::string_view key) { return lengths(take({key, "", ""}), key); };
    const auto motor_pulleys = pulleys("motor_pulleys");
    const auto idler_driven = pulleys("idler_driven");
    const auto idler_driving = pulleys("idler_driving");
    const auto spindle_pulleys = pulleys("spindle_pulleys");
    if ((list != nullptr) + (range != nullptr) + (motor != nullptr) != 1) {
      wrong(node_, "a machine has its spindle speeds one way", "one of 'steps', 'range', or 'motor' with its pulleys");
      return;
    }
    if (range != nullptr) {
      if (const auto text = as_text({"range", "", ""}, *range))
        attempt(*range, "range", [&] { row.range = read_spindle_speed_range(*text); });
      return;
    }
    if (list != nullptr) {
      for (const auto text : as_list({"steps", "", ""}, *list))
        attempt(*list, "steps", [&] { steps.push_back({{}, read_spindle_speed_range(text).low}); });
    } else if (const auto text = as_text({"motor", "", ""}, *motor)) {
      attempt(*motor, "motor", [&] {
        steps = idler_driven.empty() && idler_driving.empty()
                    ? one_belt(read_spindle_speed_range(*text).low, motor_pulleys, spindle_pulleys)
                    : two_belts(read_spindle_speed_range(*text).low, motor_pulleys, idler_driven, idler_driving,
                                spindle_pulleys);
      });
    }
    std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) { return a.speed < b.speed; });
    if (steps.empty()) {
      wrong(node_, "a machine with no speed", "at least one step");
      return;
    }
    for (std::size_t i = 0; i < steps.size(); ++i)
      if (steps[i].name.empty()) steps[i].name = storage_.keep(std::to_string(i + 1));
    row.range = {steps.front().speed, steps.back().speed};
    row.steps = storage_.steps.emplace_back(std::move(steps));
  }

  void amount(Limit& row) {
    const Field field{"value", "\"0.7\"", "a pure number, or a length", true};
    (*this)(field, row.value);
    if (row.value.empty()) return;
    try {
      row.ratio = read_ratio_range(row.value).low;
    } catch (const Fault&) {
      attempt(node_, "value", [&] { row.length = read_length_range(row.value).low; });
    }
  }

  /// Keys that no field took.
  void finish() {
    for (const auto& [key, value] : node_) {
      if (std::find(known_.begin(), known_.end(), key.str()) != known_.end()) continue;
      const auto nearest = nearest_word(key.str(), known_);
      wrong(value,
            "'" + std::string(key.str()) + "' is no key of this row" +
                (nearest ? "; '" + *nearest + "' is meant?" : ""),
            joined(known_, " "));
    }
  }

  /// One row for each combination of the lists.
  template <class Row> void rows(Row& row, std::vector<Row>& into, std::size_t next = 0) {
    if (next == eaches_.size()) {
      into.push_back(row);
      return;
    }
    for (const auto value : eaches_[next].values) {
      *eaches_[next].member = value;
      rows(row, into, next + 1);
    }
  }

private:
  struct Each {
    std::string_view* member;
    std::vector<std::string_view> values;
  };

  const toml::node* take(const Field& field) {
    known_.push_back(field.key);
    const toml::node* found = node_.get(field.key);
    if (found == nullptr && field.required)
      wrong(node_,
            "'" + std::string(field.key) + "' is missing" +
                (field.key == "source" ? ": a row without a source does not load" : ""),
            field.allowed.empty() ? std::string(field.example) : joined(field.allowed, " "));
    return found;
  }

  std::optional<std::string> as_text(const Field& field, const toml::node& found) {
    if (const auto text = found.value_exact<std::string>()) {
      if (field.required && text->empty())
        wrong(found, "'" + std::string(field.key) + "' is empty", std::string(field.example));
      return text;
    }
    wrong(found, "'" + std::string(field.key) + "' is no text; quote it", std::string(field.example));
    return std::nullopt;
  }

  std::vector<std::string_view> as_list(const Field& field, const toml::node& found) {
    std::vector<std::string_view> list;
    if (const auto* array = found.as_array()) {
      for (const auto& entry : *array) {
        if (const auto text = as_text(field, entry)) {
          check_allowed(field, *text, entry);
          list.push_back(storage_.keep(*text));
        }
      }
    } else {
      wrong(found, "'" + std::string(field.key) + "' is no list of texts", std::string(field.example));
    }
    return list;
  }

  void check_allowed(const Field& field, const std::string& text, const toml::node& found) {
    if (field.allowed.empty() || std::find(field.allowed.begin(), field.allowed.end(), text) != field.allowed.end())
      return;
    const auto nearest = nearest_word(text, field.allowed);
    wrong(found, "'" + text + "' is no " + std::string(field.key) + (nearest ? "; '" + *nearest + "' is meant?" : ""),
          joined(field.allowed, ", "));
  }

  template <class Read> void printed(const Field& field, std::string_view& member, Read read) {
    const auto* found = take(field);
    if (found == nullptr) return;
    if (const auto text = as_text(field, *found)) {
      member = storage_.keep(*text);
      attempt(*found, field.key, [&] { read(member); });
    }
  }

  template <class Quantity, class Read> void range(const Field& field, Printed<Quantity>& member, Read read) {
    printed(field, member.text, [&](std::string_view text) { member.range = read(text); });
  }

  template <class Act> void attempt(const toml::node& at, std::string_view key, Act act) {
    try {
      act();
    } catch (const Fault& fault) {
      std::string allowed;
      for (const auto& word : fault.allowed) allowed += (allowed.empty() ? "" : ", ") + word;
      wrong(at, "'" + std::string(key) + "': " + fault.message, allowed);
    } catch (const std::domain_error& error) {
      wrong(at, "'" + std::string(key) + "': " + error.what(), "");
    }
  }

  std::vector<Length> lengths(const toml::node* found, std::string_view key) {
    std::vector<Length> list;
    if (found == nullptr) return list;
    for (const auto text : as_list({key, "[\"2 in\", \"3 in\"]", ""}, *found))
      attempt(*found, key, [&] { list.push_back(read_length_range(text).low); });
    return list;
  }

  static std::vector<Step> one_belt(SpindleSpeed motor, const std::vector<Length>& driving,
                                    const std::vector<Length>& driven) {
    if (driving.size() != driven.size() || driving.empty())
      throw std::domain_error{"as many spindle pulleys as motor pulleys, at least one"};
    std::vector<Step> steps;
    for (std::size_t i = 0; i < driving.size(); ++i)
      steps.push_back({{}, driven_speed(motor, {driving[i], driven[i]})});
    return steps;
  }

  std::vector<Step> two_belts(SpindleSpeed motor, const std::vector<Length>& motor_pulleys,
                              const std::vector<Length>& idler_driven, const std::vector<Length>& idler_driving,
                              const std::vector<Length>& spindle_pulleys) {
    if (motor_pulleys.size() != idler_driven.size() || idler_driving.size() != spindle_pulleys.size() ||
        motor_pulleys.empty() || idler_driving.empty())
      throw std::domain_error{
          "as many idler pulleys as the pulleys they face: idler_driven faces the motor, idler_driving the spindle"};
    std::vector<Step> steps;
    for (std::size_t i = 0; i < motor_pulleys.size(); ++i) {
      const SpindleSpeed idler = driven_speed(motor, {motor_pulleys[i], idler_driven[i]});
      for (std::size_t k = 0; k < idler_driving.size(); ++k)
        steps.push_back({storage_.keep(std::to_string(i + 1) + "-" + std::to_string(k + 1)),
                         driven_speed(idler, {idler_driving[k], spindle_pulleys[k]})});
    }
    return steps;
  }

  void wrong(const toml::node& at, std::string what, std::string allowed) {
    const At place = place_of(at);
    faults_.push_back({{std::string(file_), place.line, place.column}, std::move(what), std::move(allowed)});
  }

  const toml::table& node_;
  std::string_view file_;
  Storage& storage_;
  std::vector<TableFault>& faults_;
  std::vector<std::string_view> known_;
  std::vector<Each> eaches_;
};

bool same_band(const PrintedHardness& a, const PrintedHardness& b) {
  if (!a.given() || !b.given()) return a.given() == b.given();
  return a.band.scale == b.band.scale && a.band.low == b.band.low && a.band.high == b.band.high;
}
bool same_range(const Printed<Length>& a, const Printed<Length>& b) {
  if (!a.given() || !b.given()) return a.given() == b.given();
  return a.range.low == b.range.low && a.range.high == b.range.high;
}

// Which row below a row replaces: the same five words, or the same key.
bool replaces(const SpeedRow& a, const SpeedRow& b) {
  return a.material == b.material && a.condition == b.condition && same_band(a.hardness, b.hardness) &&
         a.cutter == b.cutter && same_range(a.diameter, b.diameter) && a.hand == b.hand;
}
bool replaces(const SpeedRatio& a, const SpeedRatio& b) { return a.ask == b.ask && a.cutter == b.cutter; }
bool replaces(const DrillingFeed& a, const DrillingFeed& b) {
  return a.material == b.material && a.cutter == b.cutter && same_range(a.diameter, b.diameter);
}
bool replaces(const ChipLoad& a, const ChipLoad& b) { return a.material == b.material && a.cutter == b.cutter; }
bool replaces(const DeepHole& a, const DeepHole& b) { return a.depth.range.low == b.depth.range.low; }
bool replaces(const PeckRow& a, const PeckRow& b) {
  return std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end()) && same_range(a.below, b.below);
}
bool replaces(const DrillPointRow& a, const DrillPointRow& b) { return a.material == b.material; }
bool replaces(const LipReliefRow& a, const LipReliefRow& b) {
  return a.work == b.work && same_range(a.diameter, b.diameter);
}
bool replaces(const Fluid& a, const Fluid& b) {
  return a.ask == b.ask && std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end());
}
bool replaces(const SizeRow& a, const SizeRow& b) { return a.name == b.name; }
bool replaces(const HardnessRow& a, const HardnessRow& b) { return a.hb == b.hb; }
template <class Row> bool replaces(const Row& a, const Row& b) { return a.key == b.key; }

/// Checks that need the row as a whole.
template <class Row> std::string wrong_as_a_whole(const Row&, std::string_view) { return {}; }
std::string wrong_as_a_whole(const SpeedRow& row, std::string_view kind) {
  if (row.speed.given() == row.spindle_speed.given())
    return "a speed row gives 'speed', or (a burr_speed) 'spindle_speed'; one of them";
  if (kind != "burr_speed" && (row.spindle_speed.given() || row.diameter.given() || row.hand))
    return "'spindle_speed', 'diameter' and 'hand' belong to burr_speed";
  return {};
}
std::string wrong_as_a_whole(const DrillingFeed& row, std::string_view) {
  return row.feed.given() == row.share.given() ? "a drilling_feed gives 'feed' or 'share'; one of them" : "";
}
std::string wrong_as_a_whole(const ChipLoad& row, std::string_view) {
  if (row.points.empty() == !row.share.given())
    return "a chip_load gives 'diameters' with 'loads', or 'share' with 'diameter'; one of them";
  return row.share.given() && !row.diameter.given() ? "a share of the diameter needs the 'diameter' it holds for" : "";
}
std::string wrong_as_a_whole(const Material& row, std::string_view) {
  return row.key.find('@') != std::string_view::npos ? "a material's key has no '@': that parts it from its condition"
                                                     : "";
}

/// Reads the rows of one file into the storage, above what it holds already.
class FileReader {
public:
  FileReader(const TableText& text, Storage& storage, std::vector<TableFault>& faults)
      : file_(storage.keep(std::string(text.name))), storage_(storage), faults_(faults) {
    storage_.files.push_back({file_, storage_.keep(std::string(text.text))});
  }

  void read() {
    toml::table root;
    try {
      root = toml::parse(storage_.files.back().text, file_);
    } catch (const toml::parse_error& error) {
      const auto& begin = error.source().begin;
      std::string what(error.description());
      std::replace(what.begin(), what.end(), '\n', ' ');
      faults_.push_back(
          {{std::string(file_), static_cast<int>(begin.line), static_cast<int>(begin.column)}, "no TOML: " + what, ""});
      return;
    }
    std::vector<std::string_view> known;
    kinds(storage_, [&](std::string_view kind, auto& rows) {
      known.push_back(kind);
      if (const toml::node* node = root.get(kind)) read_kind(kind, *node, rows);
    });
    known.emplace_back("size_series");
    if (const toml::node* node = root.get("size_series")) read_series(*node);
    for (const auto& [key, value] : root) {
      if (std::find(known.begin(), known.end(), key.str()) != known.end()) continue;
      const auto nearest = nearest_word(key.str(), known);
      fault(value,
            "'" + std::string(key.str()) + "' is no kind of row" + (nearest ? "; '" + *nearest + "' is meant?" : ""),
            joined(known, " "));
    }
  }

private:
  void fault(const toml::node& at, std::string what, std::string allowed) {
    const At place = place_of(at);
    faults_.push_back({{std::string(file_), place.line, place.column}, std::move(what), std::move(allowed)});
  }

  void read_kind(std::string_view, const toml::node& node, std::vector<Source>& rows) {
    const auto* table = node.as_table();
    if (table == nullptr) {
      fault(node, "'source' is no table", "[source.ID]");
      return;
    }
    for (const auto& [id, value] : *table) {
      const auto* entry = value.as_table();
      if (entry == nullptr) {
        fault(value, "source '" + std::string(id.str()) + "' is no table", "[source.ID]");
        continue;
      }
      Source row;
      row.key = storage_.keep(std::string(id.str()));
      read_row("source", *entry, row, rows);
    }
  }

  template <class Row> void read_kind(std::string_view kind, const toml::node& node, std::vector<Row>& rows) {
    for_each_row(kind, node, [&](const toml::table& entry) {
      Row row;
      read_row(kind, entry, row, rows);
    });
  }

  template <class Act> void for_each_row(std::string_view kind, const toml::node& node, Act act) {
    const auto* array = node.as_array();
    if (array == nullptr) {
      fault(node, "'" + std::string(kind) + "' is no list of rows", "[[" + std::string(kind) + "]]");
      return;
    }
    for (const auto& entry : *array) {
      if (const auto* table = entry.as_table())
        act(*table);
      else
        fault(entry, "this '" + std::string(kind) + "' is no row", "[[" + std::string(kind) + "]]");
    }
  }

  template <class Row>
  void read_row(std::string_view kind, const toml::table& entry, Row& row, std::vector<Row>& rows) {
    const At at = place_of(entry);
    row.place = {file_, at.line, at.column};
    const std::size_t faults_before = faults_.size();
    RowReader reader(entry, file_, storage_, faults_);
    fields(row, reader);
    reader.finish();
    if (faults_.size() != faults_before) return;
    if (const std::string wrong = wrong_as_a_whole(row, kind); !wrong.empty()) {
      fault(entry, wrong, "");
      return;
    }
    std::vector<Row> read;
    reader.rows(row, read);
    for (const auto& one : read) put(one, rows);
  }

  /// Rows of the same file do not replace one another: two sources may print the same row. A key may stand only once.
  template <class Row> void put(const Row& row, std::vector<Row>& rows) {
    if constexpr (requires { row.key; }) {
      for (const auto& other : rows) {
        if (other.key == row.key && other.place.file == file_) {
          faults_.push_back(
              {{std::string(file_), row.place.line, row.place.column},
               "'" + std::string(row.key) + "' stands twice; the first is in line " + std::to_string(other.place.line),
               ""});
          return;
        }
      }
    }
    std::erase_if(rows, [&](const Row& below) {
      return below.place.file != file_ && overlays(below.place.file) && replaces(row, below);
    });
    rows.push_back(row);
  }

  /// Whether this file goes over that one: the built-in files lie side by side.
  [[nodiscard]] bool overlays(std::string_view other) const {
    return !(file_.starts_with("built-in:") && other.starts_with("built-in:"));
  }

  void read_series(const toml::node& node) {
    for_each_row("size_series", node, [&](const toml::table& entry) {
      struct Series {
        std::string_view kind;
        Printed<Length> from, to, step;
        std::string_view source;
      } series;
      const std::size_t faults_before = faults_.size();
      RowReader reader(entry, file_, storage_, faults_);
      reader(Field{"kind", "\"metric\"", "", true, size_kinds}, series.kind);
      reader(Field{"from", "\"0.1 mm\"", "", true}, series.from);
      reader(Field{"to", "\"3 mm\"", "", true}, series.to);
      reader(Field{"step", "\"0.05 mm\"", "", true}, series.step);
      reader(source_field, series.source);
      reader.finish();
      if (faults_.size() != faults_before) return;
      const double steps = (series.to.range.low - series.from.range.low) / series.step.range.low;
      if (!(series.step.range.low > mm(0)) || !(steps >= 0) || steps > 1000) {
        fault(entry, "a series runs from its low end to its high end in at most 1000 steps above 0", "");
        return;
      }
      const At at = place_of(entry);
      for (int i = 0; i <= static_cast<int>(steps + 1e-6); ++i) {
        // Rounded to a thousandth of a millimetre, so that the eighteenth step of 0.05 is 0.9 and not
        // 0.9000000000000001.
        const double exact = in_mm(series.from.range.low) + i * in_mm(series.step.range.low);
        const std::string text = shortest_decimal(static_cast<double>(static_cast<long>(exact * 1000 + 0.5)) / 1000);
        SizeRow row;
        row.kind = series.kind;
        row.name = storage_.keep(text + "mm");
        row.size.text = storage_.keep(text + " mm");
        row.size.range = read_length_range(row.size.text);
        row.source = series.source;
        row.place = {file_, at.line, at.column};
        put(row, storage_.sizes);
      }
    });
  }

  std::string_view file_;
  Storage& storage_;
  std::vector<TableFault>& faults_;
};

/// Checks that need all tables: every word that names another row.
class ReferenceCheck {
public:
  ReferenceCheck(const Storage& storage, const std::vector<TableText>& checked, std::vector<TableFault>& faults)
      : checked_(checked), faults_(faults) {
    for (const auto& row : storage.sources) sources_.push_back(row.key);
    for (const auto& row : storage.materials) materials_.push_back(row.key);
    for (const auto& row : storage.cutters) cutters_.push_back(row.key);
    kinds(storage, [&](std::string_view, const auto& rows) {
      for (const auto& row : rows) check(row);
    });
    check_names(storage.materials);
  }

private:
  template <class Row> void check(const Row& row) {
    if (!is_checked(row.place)) return;
    if constexpr (requires { row.source; }) named(row.place, "source", row.source, sources_);
    if constexpr (requires { row.material; }) named(row.place, "material", row.material, materials_);
    if constexpr (requires { row.family; }) named(row.place, "family", row.family, materials_);
    if constexpr (requires { row.layers; })
      for (const auto layer : row.layers) named(row.place, "layer", layer, materials_);
    if constexpr (requires { row.cutter; }) named(row.place, "cutter", row.cutter, cutters_);
    if constexpr (requires { row.of; }) named(row.place, "cutter", row.of, cutters_);
  }

  /// A key or alias may mean one material only, and a family may not lead back to itself.
  void check_names(const std::vector<Material>& materials) {
    const auto lower = [](std::string_view word) {
      std::string text(word);
      std::transform(text.begin(), text.end(), text.begin(),
                     [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
      return text;
    };
    std::vector<std::pair<std::string, const Material*>> names;
    for (const auto& material : materials) {
      names.emplace_back(lower(material.key), &material);
      for (const auto alias : material.aliases) names.emplace_back(lower(alias), &material);
    }
    std::stable_sort(names.begin(), names.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 1; i < names.size(); ++i) {
      if (names[i].first != names[i - 1].first || names[i].second == names[i - 1].second) continue;
      const Material* blamed = is_checked(names[i].second->place) ? names[i].second : names[i - 1].second;
      const Material* other = blamed == names[i].second ? names[i - 1].second : names[i].second;
      add(blamed->place, "'" + names[i].first + "' already means " + std::string(other->key), "a name of its own");
    }
    for (const auto& material : materials) {
      const Material* up = &material;
      for (std::size_t steps = 0; up != nullptr && !up->family.empty(); ++steps) {
        if (steps > materials.size()) {
          add(material.place, "the family of '" + std::string(material.key) + "' leads back to itself",
              "a family above it");
          break;
        }
        const auto next =
            std::find_if(materials.begin(), materials.end(), [&](const Material& m) { return m.key == up->family; });
        up = next == materials.end() ? nullptr : &*next;
      }
    }
  }

  [[nodiscard]] bool is_checked(const RowPlace& place) const {
    return std::any_of(checked_.begin(), checked_.end(),
                       [&](const TableText& text) { return text.name == place.file; });
  }

  void named(const RowPlace& place, std::string_view what, std::string_view word,
             const std::vector<std::string_view>& known) {
    if (word.empty() || std::find(known.begin(), known.end(), word) != known.end()) return;
    const auto nearest = nearest_word(word, known);
    add(place,
        std::string(what) + " '" + std::string(word) + "' is not known" +
            (nearest ? "; '" + *nearest + "' is meant?" : ""),
        what == "cutter" ? joined(known, ", ")
                         : "the key of a " + std::string(what) + " in this file or one loaded before it");
  }

  void add(const RowPlace& place, std::string what, std::string allowed) {
    faults_.push_back({{std::string(place.file), place.line, place.column}, std::move(what), std::move(allowed)});
  }

  const std::vector<TableText>& checked_;
  std::vector<TableFault>& faults_;
  std::vector<std::string_view> sources_, materials_, cutters_;
};

void take_over(const Tables& base, Storage& storage) {
  pair_up(storage, base, [](auto& to, const auto& from) { to.assign(from.begin(), from.end()); });
  storage.files.assign(base.texts.begin(), base.texts.end());
  storage.below = base.owner;
}

Tables view_of(const std::shared_ptr<Storage>& storage) {
  Tables tables;
  pair_up(tables, *storage, [](auto& to, const auto& from) { to = from; });
  tables.texts = storage->files;
  tables.owner = storage;
  return tables;
}

/// Explains a row, field by field.
class BlankRow {
public:
  explicit BlankRow(std::ostringstream& out) : out_(out) {}
  template <class Member> void operator()(const Field& field, const Member&) { line(field); }
  void each(const Field& field, std::string_view) { line(field); }
  void points(const ChipLoad&) {
    line({"diameters", "[\"1/8 in\", \"1/4 in\"]", "printed points: the cutters"});
    line({"loads", "[\"0.0005 in/tooth\", \"0.001 in/tooth\"]", "and the load of each"});
  }
  void gears(const Machine&) {
    line({"steps", "[\"620 rev/min\", \"1100 rev/min\"]", "its spindle speeds, slowest first; or", true});
    line({"range", "\"100 to 2500 rev/min\"", "any speed of a range; or"});
    line({"motor", "\"1725 rev/min\"", "belts: the motor's speed, and"});
    line({"motor_pulleys", "[\"2 in\", \"3 in\"]", "diameters, step by step"});
    line({"idler_driven", "[\"4 in\", \"3 in\"]", "only with two belts: facing the motor"});
    line({"idler_driving", "[\"2 in\", \"3 in\"]", "only with two belts: facing the spindle"});
    line({"spindle_pulleys", "[\"4 in\", \"3 in\"]", ""});
  }
  void amount(const Limit&) { line({"value", "\"0.7\"", "a pure number, or a length", true}); }

private:
  void line(const Field& field) {
    std::string text = (field.required ? "" : "# ") + std::string(field.key) + " = " + std::string(field.example);
    std::string about(field.about);
    if (!field.allowed.empty()) about += (about.empty() ? "one of: " : "; one of: ") + joined(field.allowed, ", ");
    if (!about.empty()) text += std::string(text.size() < 40 ? 40 - text.size() : 1, ' ') + "# " + about;
    out_ << text << '\n';
  }
  std::ostringstream& out_;
};

} // namespace

Loaded load_over(const Tables& base, const std::vector<TableText>& texts) {
  auto storage = std::make_shared<Storage>();
  take_over(base, *storage);
  Loaded loaded;
  for (const auto& text : texts) FileReader(text, *storage, loaded.faults).read();
  std::stable_sort(storage->sizes.begin(), storage->sizes.end(),
                   [](const SizeRow& a, const SizeRow& b) { return a.length() < b.length(); });
  std::stable_sort(storage->hardness.begin(), storage->hardness.end(),
                   [](const HardnessRow& a, const HardnessRow& b) { return a.hb < b.hb; });
  const ReferenceCheck references(*storage, texts, loaded.faults);
  std::stable_sort(loaded.faults.begin(), loaded.faults.end(), [](const TableFault& a, const TableFault& b) {
    return std::tie(a.place.file, a.place.line, a.place.column) < std::tie(b.place.file, b.place.line, b.place.column);
  });
  loaded.tables = view_of(storage);
  return loaded;
}

Tables load_or_fail(const Tables& base, const std::vector<TableText>& texts) {
  Loaded loaded = load_over(base, texts);
  if (loaded.faults.empty()) return std::move(loaded.tables);
  Fault fault;
  fault.kind = FaultKind::data;
  fault.place = loaded.faults.front().place;
  for (const auto& one : loaded.faults) {
    if (!fault.message.empty()) fault.message += "; ";
    fault.message += one.place.file + ":" + std::to_string(one.place.line) + ":" + std::to_string(one.place.column) +
                     ": " + one.what;
    if (!one.allowed.empty()) fault.message += " (allowed: " + one.allowed + ")";
  }
  if (!loaded.faults.front().allowed.empty()) fault.allowed = {loaded.faults.front().allowed};
  throw fault;
}

std::vector<TypedField> row_as_typed(const TableText& text, RowPlace place) {
  std::vector<TypedField> typed;
  const toml::table root = toml::parse(text.text, text.name);
  const std::function<const toml::table*(const toml::node&)> find = [&](const toml::node& node) -> const toml::table* {
    if (const auto* table = node.as_table()) {
      const At at = place_of(node);
      if (&node != &root && at.line == place.line && at.column == place.column) return table;
      for (const auto& [key, value] : *table)
        if (const auto* found = find(value)) return found;
    } else if (const auto* array = node.as_array()) {
      for (const auto& value : *array)
        if (const auto* found = find(value)) return found;
    }
    return nullptr;
  };
  const toml::table* row = find(root);
  if (row == nullptr) return typed;
  std::vector<std::pair<At, TypedField>> placed;
  for (const auto& [key, value] : *row) {
    std::ostringstream source;
    value.visit([&](const auto& node) { source << node; });
    placed.push_back({place_of(value), {std::string(key.str()), source.str()}});
  }
  std::stable_sort(placed.begin(), placed.end(), [](const auto& a, const auto& b) {
    return std::tie(a.first.line, a.first.column) < std::tie(b.first.line, b.first.column);
  });
  for (auto& [at, field] : placed) typed.push_back(std::move(field));
  return typed;
}

std::vector<std::string_view> row_kinds() { return {kind_names.begin(), kind_names.end()}; }

std::string blank_row(std::string_view kind) {
  std::ostringstream out;
  const Tables none;
  kinds(none, [&]<class Row>(std::string_view name, const std::span<const Row>&) {
    if (name != kind) return;
    out << (kind == "source" ? "[source.own-bench]" : "[[" + std::string(kind) + "]]") << '\n';
    const Row row{};
    BlankRow blank(out);
    fields(row, blank);
  });
  const std::string row = out.str();
  if (row.empty()) {
    const auto names = row_kinds();
    throw wrong_word(std::string(kind), "is no kind of row", {names.begin(), names.end()}, nearest_word(kind, names));
  }
  if (kind == "source") return row;
  return row + "\n[source.own-bench]\nauthor = \"you\"\ntitle = \"own trials\"\nstanding = \"own bench\"\n";
}

} // namespace quillside
