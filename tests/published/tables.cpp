// The built-in speeds and feeds against the figures as published, typed a second time, apart from the tables
// (drilling-speeds.csv, milling-speeds.csv, reaming-speeds.csv, drilling-feeds.csv, deep-holes.csv, chip-loads.csv;
// each names its sources block by block). Figures are compared as text, so to the printed digit: no tolerance.
// A figure that was read stands with a source that was read; one that was recalled stands as "from memory".

#include "catch.hpp"

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

#include <quillside/data/tables.hpp>

using namespace quillside;

namespace {

// --- reading the lists ---

std::vector<std::string> parts_of(const std::string& text, const std::string& between) {
  std::vector<std::string> parts;
  std::size_t start = 0;
  for (auto end = text.find(between); end != std::string::npos; end = text.find(between, start)) {
    parts.push_back(text.substr(start, end - start));
    start = end + between.size();
  }
  parts.push_back(text.substr(start));
  return parts;
}

using Cells = std::vector<std::string>;

/// The lines of a list below its heading, without remarks, cell by cell.
std::vector<Cells> listed(const std::string& name, const std::string& heading) {
  std::ifstream file{QUILLSIDE_SOURCE_DIR "/tests/published/" + name};
  REQUIRE(file);
  std::vector<Cells> lines;
  bool headed = false;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    if (!headed) {
      REQUIRE(line == heading);
      headed = true;
      continue;
    }
    INFO(name << ": " << line);
    lines.push_back(parts_of(line, ","));
    REQUIRE(lines.back().size() == parts_of(heading, ",").size());
  }
  REQUIRE(headed);
  return lines;
}

/// `90 ft/min`, `70 to 80 ft/min`: as a table prints one figure or a range.
std::string as_printed(const std::string& low, const std::string& high, const std::string& unit) {
  return (low == high ? low : low + " to " + high) + " " + unit;
}

// --- sources ---

/// Who published a figure, by words of the citation, and whether the page was read.
struct Origin {
  std::string words;
  std::string status; // seen, memory or derived
};

bool is_of(const Source& source, const Origin& origin) {
  const std::string citation = cite(source);
  const auto words = parts_of(origin.words, " + ");
  if (!std::all_of(words.begin(), words.end(),
                   [&](const std::string& word) { return citation.find(word) != std::string::npos; }))
    return false;
  if (origin.status == "memory") return source.standing == "from memory";
  if (origin.status == "derived") return source.standing == "derived";
  // A row that was left out is looked for as if it had been kept: it must not be there.
  REQUIRE((origin.status == "seen" || origin.status == "left-out"));
  return source.standing == "published" || source.standing == "reprint" || source.standing == "maker's sheet";
}

/// A source somebody read: its rows must all be in the lists.
bool was_read(const Source& source) { return is_of(source, {"", "seen"}); }

// --- speeds ---

struct ListedSpeed {
  std::string material;
  std::string condition;
  std::string hardness;
  std::string cutter;
  std::string speed;
  Origin origin;
};

std::string hardness_as_printed(const std::string& cell) {
  if (cell.empty()) return "";
  const auto blank = cell.find(' ');
  const auto ends = parts_of(cell.substr(0, blank), "-");
  REQUIRE(ends.size() == 2);
  return as_printed(ends[0], ends[1], cell.substr(blank + 1));
}

/// One for each material, condition and cutter that a line names.
std::vector<ListedSpeed> listed_speeds(const std::string& name) {
  std::vector<ListedSpeed> speeds;
  for (const auto& cells : listed(name, "grade,condition,hardness,cutter,low,high,unit,status,source_words,comment"))
    for (const auto& material : parts_of(cells[0], " "))
      for (const auto& condition : parts_of(cells[1], " "))
        for (const auto& cutter : parts_of(cells[3], " "))
          speeds.push_back({material,
                            condition,
                            hardness_as_printed(cells[2]),
                            cutter,
                            as_printed(cells[4], cells[5], cells[6]),
                            {cells[8], cells[7]}});
  return speeds;
}

bool same_place(const Tables& tables, const SpeedRow& row, const ListedSpeed& speed) {
  // A page that names no condition may stand at one: "hardened to 45 HRC" is tempered.
  const bool condition = speed.condition.empty() || row.condition == speed.condition;
  return row.material == speed.material && condition && row.hardness.text == speed.hardness &&
         row.cutter == speed.cutter && is_of(source_of(tables, row.source), speed.origin);
}

/// Two figures of one source for one material (soft and hard bronze, say) are two rows.
std::vector<std::string> figures_at(const Tables& tables, std::span<const SpeedRow> rows, const ListedSpeed& speed) {
  std::vector<std::string> figures;
  for (const auto& row : rows)
    if (same_place(tables, row, speed)) figures.emplace_back(row.speed.text);
  std::sort(figures.begin(), figures.end());
  return figures;
}

std::vector<std::string> figures_listed(const std::vector<ListedSpeed>& speeds, const ListedSpeed& like) {
  std::vector<std::string> figures;
  for (const auto& speed : speeds)
    if (speed.material == like.material && speed.condition == like.condition && speed.hardness == like.hardness &&
        speed.cutter == like.cutter && speed.origin.words == like.origin.words &&
        speed.origin.status == like.origin.status)
      figures.push_back(speed.speed);
  std::sort(figures.begin(), figures.end());
  return figures;
}

struct SpeedTable {
  std::string list;
  std::span<const SpeedRow> Tables::*rows;
};

SpeedTable one_of_the_speed_tables() {
  return GENERATE(SpeedTable{"drilling-speeds.csv", &Tables::drilling_speeds},
                  SpeedTable{"milling-speeds.csv", &Tables::milling_speeds},
                  SpeedTable{"reaming-speeds.csv", &Tables::reaming_speeds});
}

} // namespace

TEST_CASE("every published speed is in the tables once, to the printed digit") {
  const Tables tables = builtin_tables();
  const SpeedTable table = one_of_the_speed_tables();
  const auto speeds = listed_speeds(table.list);
  REQUIRE(!speeds.empty());
  for (const auto& speed : speeds) {
    INFO(table.list << ": " << speed.material << " " << speed.condition << " " << speed.hardness << " " << speed.cutter
                    << " " << speed.speed << ", " << speed.origin.words << ", " << speed.origin.status);
    const auto figures = figures_at(tables, tables.*table.rows, speed);
    if (speed.origin.status == "left-out")
      CHECK(std::find(figures.begin(), figures.end(), speed.speed) == figures.end());
    else
      CHECK(figures == figures_listed(speeds, speed));
  }
}

TEST_CASE("every built-in speed whose source was read is published") {
  const Tables tables = builtin_tables();
  const SpeedTable table = one_of_the_speed_tables();
  const auto speeds = listed_speeds(table.list);
  for (const auto& row : tables.*table.rows) {
    const Source& source = source_of(tables, row.source);
    if (!was_read(source)) continue;
    INFO(row.place.file << ":" << row.place.line << ": " << row.material << " " << row.condition << " "
                        << row.hardness.text << " " << row.cutter << " " << row.speed.text << ", " << cite(source));
    CHECK(std::any_of(speeds.begin(), speeds.end(), [&](const ListedSpeed& speed) {
      return same_place(tables, row, speed) && row.speed.text == speed.speed;
    }));
  }
}

// --- feeds ---

namespace {

/// `0.001 in/tooth`, `0.0003 to 0.0007 in/tooth`, as a row of points is compared: figures only, by their ends.
struct ListedChip {
  std::string material;
  std::string cutter;
  std::vector<ChipPoint> points;
  std::string share;
  std::string first;
  Origin origin;
};

Length length_of(const std::string& figure, const std::string& unit) {
  return read_length_range(figure + " " + unit).low;
}

ChipPoint point_of(const std::string& cell, const std::string& unit) {
  const auto halves = parts_of(cell, ":");
  REQUIRE(halves.size() == 2);
  const auto ends = parts_of(halves[1], "-");
  return {length_of(halves[0], unit),
          read_feed_per_tooth_range(as_printed(ends.front(), ends.back(), unit + "/tooth"))};
}

std::vector<ListedChip> listed_chips() {
  std::vector<ListedChip> chips;
  for (const auto& cells : listed("chip-loads.csv", "grade,cutter,points,share,unit,status,source_words,comment"))
    for (const auto& material : parts_of(cells[0], " ")) {
      ListedChip chip{material, cells[1], {}, "", "", {cells[6], cells[5]}};
      if (!cells[2].empty())
        for (const auto& point : parts_of(cells[2], " ")) chip.points.push_back(point_of(point, cells[4]));
      if (!cells[3].empty()) {
        const auto share = parts_of(cells[3], "-");
        REQUIRE(share.size() == 3);
        chip.share = as_printed(share[0], share[2], "%");
        chip.first = share[1] + " %";
      }
      chips.push_back(chip);
    }
  return chips;
}

bool same_point(const ChipPoint& a, const ChipPoint& b) {
  return a.diameter == b.diameter && a.load.low == b.load.low && a.load.high == b.load.high;
}

bool is_that(const Tables& tables, const ChipLoad& row, const ListedChip& chip) {
  return row.material == chip.material && row.cutter == chip.cutter && row.share.text == chip.share &&
         row.first.text == chip.first && is_of(source_of(tables, row.source), chip.origin) &&
         std::equal(row.points.begin(), row.points.end(), chip.points.begin(), chip.points.end(), same_point);
}

struct ListedFeed {
  std::string diameter;
  std::string feed;
  Origin origin;
};

std::vector<ListedFeed> listed_feeds() {
  std::vector<ListedFeed> feeds;
  for (const auto& cells : listed("drilling-feeds.csv", "from,to,low,high,unit,status,source_words"))
    feeds.push_back(
        {as_printed(cells[0], cells[1], "in"), as_printed(cells[2], cells[3], cells[4]), {cells[6], cells[5]}});
  return feeds;
}

bool is_that(const Tables& tables, const DrillingFeed& row, const ListedFeed& feed) {
  return row.material.empty() && row.cutter.empty() && row.diameter.text == feed.diameter &&
         row.feed.text == feed.feed && is_of(source_of(tables, row.source), feed.origin);
}

struct ListedDepth {
  std::string depth;
  std::string speed_cut;
  std::string feed_cut;
  Origin origin;
};

std::vector<ListedDepth> listed_depths() {
  std::vector<ListedDepth> depths;
  for (const auto& cells : listed("deep-holes.csv", "depth,speed_low,speed_high,feed,status,source_words"))
    depths.push_back({cells[0], as_printed(cells[1], cells[2], "%"), cells[3] + " %", {cells[5], cells[4]}});
  return depths;
}

bool is_that(const Tables& tables, const DeepHole& row, const ListedDepth& depth) {
  return row.depth.text == depth.depth && row.speed_cut.text == depth.speed_cut &&
         row.feed_cut.text == depth.feed_cut && is_of(source_of(tables, row.source), depth.origin);
}

/// Each line of a list is one row, and each row whose source was read is a line.
template <class Row, class Line>
void hold_both_ways(const Tables& tables, std::span<const Row> rows, const std::vector<Line>& lines) {
  REQUIRE(!lines.empty());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    INFO("line " << i + 1 << " of the list, from " << lines[i].origin.words);
    CHECK(std::count_if(rows.begin(), rows.end(), [&](const Row& row) { return is_that(tables, row, lines[i]); }) == 1);
  }
  for (const auto& row : rows) {
    if (!was_read(source_of(tables, row.source))) continue;
    INFO(row.place.file << ":" << row.place.line << ", " << cite(source_of(tables, row.source)));
    CHECK(std::any_of(lines.begin(), lines.end(), [&](const Line& line) { return is_that(tables, row, line); }));
  }
}

} // namespace

TEST_CASE("feeds of drills, chip loads and what depth takes off are as published, and no others") {
  const Tables tables = builtin_tables();
  REQUIRE_FALSE(tables.drilling_feeds.empty());
  REQUIRE_FALSE(tables.chip_loads.empty());
  REQUIRE_FALSE(tables.deep_holes.empty());
  SECTION("drills, by the turn") { hold_both_ways(tables, tables.drilling_feeds, listed_feeds()); }
  SECTION("end mills, by the tooth") { hold_both_ways(tables, tables.chip_loads, listed_chips()); }
  SECTION("deep holes") { hold_both_ways(tables, tables.deep_holes, listed_depths()); }
}
