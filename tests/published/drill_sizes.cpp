// The drill ladder against a list of its own (drill-sizes.csv): numbers 97 to 1, letters A to Z, fractions to 1/2 in.
// The list was typed apart from the tables and compared with three public listings, number by number: 123 sizes of a
// public source listing, 43 of a public-domain drill chart of 2007, 58 of a cutting-tool maker's table (name withheld);
// no difference, but for one plain misprint in the last. The standard itself, ANSI/ASME B94.11M, was not read.

#include "catch.hpp"

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

#include <quillside/data/tables.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

namespace {

struct ListedSize {
  std::string kind;
  std::string name; // as the ladder writes it
  double inches;
};

std::vector<ListedSize> listed_sizes() {
  std::ifstream file{QUILLSIDE_SOURCE_DIR "/tests/published/drill-sizes.csv"};
  std::vector<ListedSize> sizes;
  std::string line;
  std::getline(file, line);
  REQUIRE(line == "name,inch");
  while (std::getline(file, line)) {
    const auto comma = line.find(',');
    REQUIRE(comma != std::string::npos);
    const std::string name = line.substr(0, comma);
    const double size = std::stod(line.substr(comma + 1));
    if (name.front() == '#')
      sizes.push_back({"number", "no" + name.substr(1), size});
    else if (name.find('/') != std::string::npos)
      sizes.push_back({"fraction", name, size});
    else
      sizes.push_back({"letter", name, size});
  }
  return sizes;
}

// Both print ten-thousandths, and fractions of 64 end after six digits: the same decimal, but for a conversion to mm
// and back (four roundings of at most 0.5).
constexpr double same = 1e-15;

} // namespace

TEST_CASE("the list has every number, every letter and every 64th") {
  // Source: the list typed apart from the tables, named at the head of this file.
  const auto sizes = listed_sizes();
  const auto count = [&](const std::string& kind) {
    int found = 0;
    for (const auto& size : sizes)
      if (size.kind == kind) ++found;
    return found;
  };
  CHECK(count("number") == 97);
  CHECK(count("letter") == 26);
  CHECK(count("fraction") == 32);
}

TEST_CASE("every listed drill is on the ladder once, at its size") {
  // Source: the list typed apart from the tables, named at the head of this file.
  const Tables tables = builtin_tables();
  for (const auto& listed : listed_sizes()) {
    INFO(listed.kind << " " << listed.name);
    std::vector<const SizeRow*> rows;
    for (const auto& row : tables.sizes)
      if (row.kind == listed.kind && row.name == listed.name) rows.push_back(&row);
    REQUIRE(rows.size() == 1);
    CHECK_THAT(in_inches(rows.front()->length()), WithinAbs(listed.inches, same));
  }
}

TEST_CASE("every number, letter and fraction to a half inch on the ladder is listed") {
  // Source: the list typed apart from the tables, named at the head of this file.
  const auto sizes = listed_sizes();
  const Tables tables = builtin_tables();
  int compared = 0;
  for (const auto& row : tables.sizes) {
    if (row.kind == "metric" || row.length() > inches(0.5) + thou(0.01)) continue;
    INFO(row.kind << " " << row.name);
    const auto listed = std::find_if(sizes.begin(), sizes.end(), [&](const ListedSize& size) {
      return size.kind == row.kind && size.name == row.name;
    });
    REQUIRE(listed != sizes.end());
    CHECK_THAT(in_inches(row.length()), WithinAbs(listed->inches, same));
    ++compared;
  }
  CHECK(compared == 155); // 97 + 26 + 32
}

TEST_CASE("every fraction is as many inches as its name says") {
  // Source: arithmetic: the name is the size.
  const Tables tables = builtin_tables();
  int fractions = 0;
  for (const auto& row : tables.sizes) {
    if (row.kind != "fraction") continue;
    ++fractions;
    const std::string name{row.name};
    INFO(name);
    const auto stroke = name.find('/');
    const double top = std::stod(name);
    const double bottom = stroke == std::string::npos ? 1 : std::stod(name.substr(stroke + 1));
    CHECK_THAT(in_inches(row.length()), WithinAbs(top / bottom, same));
  }
  CHECK(fractions >= 32);
}

TEST_CASE("the ladder climbs") {
  // Source: what a ladder is.
  const Tables tables = builtin_tables();
  for (std::size_t i = 1; i < tables.sizes.size(); ++i) {
    INFO(tables.sizes[i - 1].name << " before " << tables.sizes[i].name);
    CHECK(tables.sizes[i - 1].length() <= tables.sizes[i].length());
  }
}

TEST_CASE("the letter E and a quarter inch are the same drill") {
  // Source: the three listings at the head of this file agree in it.
  const Tables tables = builtin_tables();
  const auto same_size = sizes_same_as(tables.sizes, inches(1, 4));
  const auto has = [&](std::string_view name) {
    return std::any_of(same_size.begin(), same_size.end(), [&](const SizeRow* row) { return row->name == name; });
  };
  CHECK(has("E"));
  CHECK(has("1/4"));
}
