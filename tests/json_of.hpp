#pragma once
// The record of an ask, parsed by a general-purpose library: what a program on the other side would see.

#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "in_process.hpp"

namespace quillside::test {

using Json = nlohmann::json;

inline Json record_of(const Ran& ran) {
  INFO(ran.out << ran.err);
  REQUIRE_FALSE(ran.out.empty());
  CHECK(ran.out.find('\n') == ran.out.size() - 1);
  return Json::parse(ran.out);
}

inline Json answer_of(const std::string& line, const Surroundings& around = {}) {
  const Ran ran = quillside(line + " --format json", around);
  Json record = record_of(ran);
  INFO(ran.out);
  REQUIRE_FALSE(record.contains("error"));
  CHECK(ran.exit == (record["verdict"] == "do not" ? 1 : 0));
  return record;
}

/// The same for words with blanks in them.
inline Json answer_of_words(std::vector<std::string> words) {
  words.insert(words.end(), {"--format", "json"});
  const Ran ran = run_words(words);
  Json record = record_of(ran);
  INFO(ran.out);
  REQUIRE_FALSE(record.contains("error"));
  return record;
}

inline Json error_of(const std::string& line, int exit, const Surroundings& around = {}) {
  const Ran ran = quillside(line + " --format json", around);
  INFO(line << "\n" << ran.out << ran.err);
  CHECK(ran.exit == exit);
  const Json record = record_of(ran);
  REQUIRE(record.contains("error"));
  CHECK(record["error"]["exit"] == exit);
  // One line on standard error, beginning with the program and, where it is known, the ask.
  CHECK(ran.err.starts_with("quillside: "));
  CHECK(ran.err.find('\n') == ran.err.size() - 1);
  return record["error"];
}

/// The value of a measure, in its own unit.
inline double value(const Json& measure) { return measure.at("value").get<double>(); }
inline double value(const Json& of, const char* name) { return value(of.at(name)); }
inline double found(const Json& answer, const char* name) { return value(answer.at("found"), name); }

inline bool has_caution(const Json& answer, const std::string& id) {
  for (const auto& caution : answer["cautions"])
    if (caution["id"] == id) return true;
  return false;
}

inline bool names_source(const Json& answer, const std::string& id) {
  for (const auto& source : answer["sources"])
    if (source["id"] == id) return true;
  return false;
}

/// The first step of its `why` with this name; null where there is none.
inline const Json* why_of(const Json& answer, const std::string& step) {
  for (const auto& why : answer["why"])
    if (why["step"] == step) return &why;
  return nullptr;
}
/// What that step came to; none there fails the test.
inline double why_value(const Json& answer, const std::string& step) {
  const Json* why = why_of(answer, step);
  if (why == nullptr) FAIL("no step " << step);
  return value(*why, "value");
}
/// The source of the row that gave the cutting speed; null where none did.
inline Json speed_source(const Json& answer) {
  for (const auto& why : answer["why"])
    if (why["step"] == "cutting speed" || why["step"] == "past the last row") return why["source"];
  return nullptr;
}

} // namespace quillside::test
