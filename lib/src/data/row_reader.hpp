#pragma once
// Reads one row of a table file by its fields.

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <quillside/data/load.hpp>
#include <quillside/model/belt.hpp>
#include <quillside/words/suggest.hpp>

#include "fields.hpp"
#include "storage.hpp"
#include "toml.hpp"

namespace quillside {

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
    // The only plain numbers of a table are hardnesses; 3000 is beyond every scale.
    const double number = found->is_number() ? *found->value<double>() : -1;
    if (number >= 0 && number <= 3000)
      member = number;
    else
      wrong(*found, "'" + std::string(field.key) + "' is no number from 0 to 3000", std::string(field.example));
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
  void operator()(const Field& field, PrintedLimits& member) {
    printed(field, member.text, [&](std::string_view text) { member.range = read_limits_of_size(text); });
  }
  void operator()(const Field& field, Printed<Length>& m) { range(field, m, read_length_range); }
  void operator()(const Field& field, Printed<Angle>& m) { range(field, m, read_angle_range); }
  void operator()(const Field& field, Printed<SpindleSpeed>& m) { range(field, m, read_spindle_speed_range); }
  void operator()(const Field& field, Printed<CuttingSpeed>& m) { range(field, m, read_cutting_speed_range); }
  void operator()(const Field& field, Printed<FeedPerRev>& m) { range(field, m, read_feed_per_rev_range); }
  void operator()(const Field& field, Printed<FeedPerTooth>& m) { range(field, m, read_feed_per_tooth_range); }
  void operator()(const Field& field, Printed<Stress>& m) { range(field, m, read_stress_range); }
  void operator()(const Field& field, Printed<Stiffness>& m) { range(field, m, read_stiffness_range); }
  void operator()(const Field& field, Printed<Temperature>& m) { range(field, m, read_temperature_range); }
  void operator()(const Field& field, Printed<Expansion>& m) { range(field, m, read_expansion_range); }
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
    if (found->is_array() && found->as_array()->empty())
      wrong(*found, "'" + std::string(field.key) + "' is an empty list", std::string(field.example));
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
    const auto not_rising = [](const ChipPoint& a, const ChipPoint& b) { return !(a.diameter < b.diameter); };
    if (std::adjacent_find(points.begin(), points.end(), not_rising) != points.end())
      wrong(*at, "'diameters' are not in order", "the smallest first");
    row.points = storage_.points.emplace_back(std::move(points));
  }

  void gears(Machine& row) {
    const std::size_t faults_before = faults_.size();
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
      if (faults_.size() == faults_before) wrong(node_, "a machine with no speed", "at least one step");
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
      attempt(*node_.get("value"), "value", [&] { row.length = read_length_range(row.value).low; });
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
    if (auto text = found.value_exact<std::string>()) {
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
      const bool listed = fault.message.find("allowed: ") != std::string::npos;
      for (const auto& word : fault.allowed)
        if (!listed) allowed += (allowed.empty() ? "" : ", ") + word;
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

} // namespace quillside
