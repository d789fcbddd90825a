// Every command that README and docs show is run, and its output held against what they print.
// A block is fenced as console; a line with … stands for any lines.

#include "catch.hpp"
#include "in_process.hpp"

#include <fstream>
#include <sstream>

using namespace quillside;

namespace {

struct Shown {
  std::string command;
  std::vector<std::string> lines;
  int line = 0;
};

std::vector<Shown> shown_in(const std::string& file) {
  std::ifstream in(std::string(QUILLSIDE_SOURCE_DIR) + "/" + file);
  REQUIRE(in);
  std::vector<Shown> all;
  bool inside = false;
  int number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (line.starts_with("```")) {
      inside = line == "```console";
    } else if (inside && line.starts_with("$ quillside ")) {
      all.push_back({line.substr(12), {}, number});
    } else if (inside && !all.empty()) {
      all.back().lines.push_back(line);
    }
  }
  return all;
}

bool matches(const std::vector<std::string>& shown, const std::vector<std::string>& real, std::size_t i = 0,
             std::size_t k = 0) {
  if (i == shown.size()) return k == real.size();
  if (shown[i] == "…") {
    for (std::size_t skip = k; skip <= real.size(); ++skip)
      if (matches(shown, real, i + 1, skip)) return true;
    return false;
  }
  return k < real.size() && shown[i] == real[k] && matches(shown, real, i + 1, k + 1);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

} // namespace

TEST_CASE("what README and docs show is what the tool prints") {
  const std::string file = GENERATE(as<std::string>{}, "README.md", "docs/why.md", "docs/record.md", "docs/manual.md");
  const auto all = shown_in(file);
  REQUIRE_FALSE(all.empty());
  for (const auto& shown : all) {
    INFO(file << ":" << shown.line << ": " << shown.command);
    const auto ran = test::quillside(shown.command);
    INFO("it prints:\n" << ran.out << ran.err);
    CHECK(matches(shown.lines, lines_of(ran.out + ran.err)));
  }
}

TEST_CASE("the comparison itself tells a wrong line from a right one") {
  CHECK(matches({"a", "…", "d"}, {"a", "b", "c", "d"}));
  CHECK_FALSE(matches({"a", "c"}, {"a", "b"}));
  CHECK_FALSE(matches({"a"}, {"a", "b"}));
}
