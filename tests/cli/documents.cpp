// Every command that README and docs show is run, and its output held against what they print.
// A block is fenced as console; a line with … stands for any lines. With QUILLSIDE_ACCEPT=1 in the environment the
// blocks without such a line are written anew instead: the one command to accept a change of text.

#include "catch.hpp"
#include "in_process.hpp"
#include "lines_of.hpp"

#include <cstdlib>
#include <fstream>

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

/// The document with each whole block as the tool prints it now.
std::string rewritten(const std::string& file) {
  std::ifstream in(std::string(QUILLSIDE_SOURCE_DIR) + "/" + file);
  std::string out;
  std::string block;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (inside && line == "```") {
      const auto end = block.find('\n');
      if (block.find("…") == std::string::npos && block.starts_with("$ quillside ")) {
        const auto ran = test::quillside(block.substr(12, end - 12));
        block = block.substr(0, end + 1) + ran.out + ran.err;
      }
      out += block;
      inside = false;
    }
    (inside ? block : out) += line + "\n";
    if (line == "```console") {
      inside = true;
      block.clear();
    }
  }
  return out;
}

} // namespace

TEST_CASE("what README and docs show is what the tool prints") {
  const std::string file = GENERATE(as<std::string>{}, "README.md", "docs/why.md", "docs/record.md", "docs/manual.md");
  if (const char* accept = std::getenv("QUILLSIDE_ACCEPT"); accept != nullptr && std::string_view(accept) == "1") {
    const std::string text = rewritten(file);
    std::ofstream(std::string(QUILLSIDE_SOURCE_DIR) + "/" + file) << text;
  }
  const auto all = shown_in(file);
  REQUIRE_FALSE(all.empty());
  for (const auto& shown : all) {
    INFO(file << ":" << shown.line << ": " << shown.command);
    const auto ran = test::quillside(shown.command);
    INFO("it prints:\n" << ran.out << ran.err);
    CHECK(matches(shown.lines, test::lines_of(ran.out + ran.err)));
  }
}

TEST_CASE("the comparison itself tells a wrong line from a right one") {
  CHECK(matches({"a", "…", "d"}, {"a", "b", "c", "d"}));
  CHECK_FALSE(matches({"a", "c"}, {"a", "b"}));
  CHECK_FALSE(matches({"a"}, {"a", "b"}));
}
