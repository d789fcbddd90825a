#include <quillside/data/load.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>

#include <quillside/words/print.hpp>
#include <quillside/words/suggest.hpp>

#include "fields.hpp"
#include "reference_check.hpp"
#include "row_reader.hpp"
#include "same_row.hpp"
#include "storage.hpp"
#include "stray_character.hpp"
#include "toml.hpp"
#include "whole_row.hpp"

namespace quillside {

namespace {

/// Reads the rows of one file into the storage, above what it holds already.
class FileReader {
public:
  FileReader(const TableText& text, Storage& storage, std::vector<TableFault>& faults)
      : file_(storage.keep(std::string(text.name))), storage_(storage), faults_(faults) {
    storage_.files.push_back({file_, storage_.keep(std::string(text.text))});
  }

  void read() {
    if (const auto stray = stray_character(storage_.files.back().text)) {
      faults_.push_back({{std::string(file_), stray->place.line, stray->place.column}, stray->what, ""});
      return;
    }
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
    // A row with a fault is kept all the same, so that the words it names are checked too; the tables are not used
    // then.
    if (faults_.size() == faults_before) {
      const WrongRow wrong = wrong_as_a_whole(row, kind);
      const toml::node* at_fault = wrong.key.empty() ? nullptr : entry.get(wrong.key);
      if (at_fault != nullptr && at_fault->is_array()) at_fault = at_fault->as_array()->get(wrong.entry);
      if (!wrong.what.empty()) fault(at_fault == nullptr ? entry : *at_fault, wrong.what, "");
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

  /// Regular sizes are metric: number and letter sizes follow no rule, and fractions stand as rows.
  static constexpr std::array<std::string_view, 1> series_kinds{"metric"};

  void read_series(const toml::node& node) {
    for_each_row("size_series", node, [&](const toml::table& entry) {
      struct Series {
        std::string_view kind;
        Printed<Length> from, to, step;
        std::string_view source;
      } series;
      const std::size_t faults_before = faults_.size();
      RowReader reader(entry, file_, storage_, faults_);
      reader(Field{"kind", "\"metric\"", "", true, series_kinds}, series.kind);
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
        const std::string text = shortest_decimal(std::round(exact * 1000) / 1000);
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

void take_over(const Tables& base, Storage& storage) {
  kinds_of_both(storage, base,
                [](std::string_view, auto& to, const auto& from) { to.assign(from.begin(), from.end()); });
  storage.files.assign(base.texts.begin(), base.texts.end());
  storage.below = base.owner;
}

Tables view_of(const std::shared_ptr<Storage>& storage) {
  Tables tables;
  kinds_of_both(tables, *storage, [](std::string_view, auto& to, const auto& from) { to = from; });
  tables.texts = storage->files;
  tables.owner = storage;
  return tables;
}

} // namespace

Loaded load_over(const Tables& base, const std::vector<TableText>& texts) {
  auto storage = std::make_shared<Storage>();
  take_over(base, *storage);
  Loaded loaded;
  for (const auto& text : texts) FileReader(text, *storage, loaded.faults).read();
  std::stable_sort(storage->sizes.begin(), storage->sizes.end(),
                   [](const SizeRow& a, const SizeRow& b) { return a.length() < b.length(); });
  std::stable_sort(
      storage->drill_webs.begin(), storage->drill_webs.end(),
      [](const DrillWebRow& a, const DrillWebRow& b) { return a.diameter.range.low < b.diameter.range.low; });
  std::stable_sort(storage->feed_factors.begin(), storage->feed_factors.end(),
                   [](const FeedFactorRow& a, const FeedFactorRow& b) { return a.feed.range.low < b.feed.range.low; });
  std::stable_sort(storage->hardness.begin(), storage->hardness.end(),
                   [](const HardnessRow& a, const HardnessRow& b) { return a.hb < b.hb; });
  check_references(*storage, texts, loaded.faults);
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

} // namespace quillside
