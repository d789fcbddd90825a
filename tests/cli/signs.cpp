// What signs tell. The rows and their sources stand in tables/signs.toml; here is how they are found.

#include "json_of.hpp"

#include <algorithm>

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::Json;

namespace {

std::vector<std::string> signs_found(const std::string& words) {
  std::vector<std::string> found;
  const Json answer = answer_of("signs " + words);
  for (const auto& row : answer["found"]["rows"]) found.push_back(row["sign"]);
  return found;
}

bool holds(const std::vector<std::string>& signs, const std::string& part) {
  return std::any_of(signs.begin(), signs.end(),
                     [&](const std::string& sign) { return sign.find(part) != std::string::npos; });
}

} // namespace

TEST_CASE("a sign is found by its words: the row that holds them in its own name comes first") {
  CHECK(signs_found("corners worn").front() == "outer corners worn");
  CHECK(signs_found("one chip").front() == "one chip only, from one lip");
  CHECK(holds(signs_found("hole oversize"), "hole oversize"));
  CHECK(holds(signs_found("squeal"), "squeals"));
  CHECK(signs_found("chip blue").front() == "chip blue in steel");
  CHECK(holds(signs_found("web split"), "web split"));
}

TEST_CASE("order and number of a word do not matter, and a tool's name keeps only its rows") {
  CHECK(signs_found("worn corner") == signs_found("corners worn"));
  const Json wheel = answer_of("signs wheel glazed");
  for (const auto& row : wheel["found"]["rows"]) CHECK(row["tool"] == "wheel");
  CHECK(signs_found("burr loaded").front() == "burr teeth loaded");
}

TEST_CASE("no words: every sign, each with its cause, what to set, and a source that is named") {
  const Json answer = answer_of("signs");
  const auto& rows = answer["found"]["rows"];
  CHECK(rows.size() >= 40);
  for (const auto& row : rows) {
    INFO(row["sign"]);
    for (const char* member : {"sign", "tool", "cause", "set", "source"})
      CHECK_FALSE(row[member].get<std::string>().empty());
    CHECK(test::names_source(answer, row["source"]));
  }
}

TEST_CASE("words that no sign holds are refused, with the nearest that one does") {
  CHECK(error_of("signs xyzzy", 2)["kind"] == "word");
  const Json error = error_of("signs skweal", 2);
  CHECK(error["word"] == "skweal");
  CHECK(error["try"].is_string());
}
