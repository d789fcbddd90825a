// One ask a line in, one record a line out.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <stdlib.h>

#include "folder.hpp"
#include "json_of.hpp"
#include "lines_of.hpp"

using namespace quillside;
using quillside::test::Folder;
using test::Json;
using test::value;

namespace {

std::vector<Json> records_in(const std::string& out) {
  std::vector<Json> records;
  for (const auto& line : test::lines_of(out)) records.push_back(Json::parse(line));
  CHECK((out.empty() || out.back() == '\n'));
  return records;
}

struct Batch {
  std::vector<Json> records;
  int exit = 0;
  std::string err;
};

Batch from_input(const std::vector<std::string>& lines, const std::string& words = "batch") {
  const auto ran = test::quillside(words, {lines, {}});
  return {records_in(ran.out), ran.exit, ran.err};
}

Batch from_file(const std::string& text) {
  const Folder folder;
  const auto ran = test::run_words({"batch", folder.write("asks.txt", text)});
  return {records_in(ran.out), ran.exit, ran.err};
}

/// The record of one line, as the whole of a batch.
Json one(const std::string& line) {
  const Batch batch = from_input({line});
  INFO(line << "\n" << batch.err);
  REQUIRE(batch.records.size() == 1);
  return batch.records[0];
}

} // namespace

TEST_CASE("a batch gives one record a line, in order, each with its line") {
  const Batch batch = from_input({"drill 1/8 303", "mill 3mm 416", "burr 3mm 416", "size no30"});
  REQUIRE(batch.records.size() == 4);
  CHECK(batch.exit == 0);
  CHECK(batch.err.empty());
  const std::vector<std::string> asks{"drill", "mill", "burr", "size"};
  for (std::size_t i = 0; i < asks.size(); ++i) {
    CHECK(batch.records[i]["ask"] == asks[i]);
    CHECK(batch.records[i]["line"] == i + 1);
  }
}

TEST_CASE("a line of a batch says what the same words say alone, but for its line") {
  for (const auto* line : {"drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar", "mill 1/8 416 --flutes 3",
                           "burr 3mm 416 --marked 25000", "size 3.2mm --over 0.002in", "tables list"}) {
    Json alone = test::answer_of(line);
    Json in_batch = one(line);
    alone["inputs"].erase("format");
    CHECK(in_batch["line"] == 1);
    in_batch["line"] = nullptr;
    CHECK(in_batch == alone);
  }
}

TEST_CASE("lines that are blank or start with // give no record but count") {
  const Batch batch = from_input({"", "   ", "// the plates", "\t", "size no30", "  // the pins", "size F", "/ size"});
  REQUIRE(batch.records.size() == 3);
  CHECK(batch.records[0]["line"] == 5);
  CHECK(batch.records[1]["line"] == 7);
  CHECK(batch.records[2]["line"] == 8);
  CHECK(batch.records[2].contains("error"));
}

TEST_CASE("quoting in a line is that of a shell") {
  // A number 30 drill is 0.1285 in, as every drill chart prints it.
  for (const auto* line : {"size #30", "size '#30'", "size \"#30\"", "size \\#30", "  size\t#30  ", "'size' no30",
                           "size n'o3'0", "size no\"30\""}) {
    INFO(line);
    CHECK_THAT(value(one(line)["inputs"]["size"]), test::WithinRel(0.1285 * 25.4, 1e-12));
  }
  CHECK(one("drill 1/8 'mild steel'")["inputs"]["material"]["value"] == "low-carbon-steel");
  CHECK(one("drill 1/8 \"mild steel\"")["inputs"]["material"]["value"] == "low-carbon-steel");
  CHECK(one("drill 1/8 mild\\ steel")["inputs"]["material"]["value"] == "low-carbon-steel");
  // # begins no comment, $ and * are letters like any other.
  CHECK(one("drill 1/8 303 # a remark")["error"]["word"] == "#");
  CHECK(one("drill 1/8 $HOME")["error"]["word"] == "$HOME");
  CHECK(one("drill 1/8 '*'")["error"]["word"] == "*");
  // Inside "..." a backslash takes only " and itself.
  CHECK(one("drill 1/8 \"a\\\"b\"")["error"]["word"] == "a\"b");
  CHECK(one("drill 1/8 \"a\\nb\"")["error"]["word"] == "a\\nb");
  CHECK(one("drill 1/8 'a\\'")["error"]["word"] == "a\\");
  CHECK(one("drill '' 303")["error"]["kind"] == "word");
}

TEST_CASE("a quote that is not closed is an error record of its line; the next line is read as it stands") {
  const Batch batch = from_input({"drill 1/8 'mild steel", "size no30", "drill 1/8 \"brass"});
  REQUIRE(batch.records.size() == 3);
  CHECK(batch.records[0]["error"]["message"].get<std::string>().find("not closed") != std::string::npos);
  CHECK(batch.records[1].contains("found"));
  CHECK(batch.records[2]["error"]["kind"] == "word");
  CHECK(batch.exit == 2);
}

TEST_CASE("errors stand in their place, on standard error with their line, and the exit is the largest") {
  const Batch batch = from_input({"size no30", "drill 3/16mm 303", "drill 1/8 416@60HRC", "frobnicate", "size F"});
  REQUIRE(batch.records.size() == 5);
  CHECK(batch.exit == 2);
  CHECK(batch.records[1]["ask"] == "drill");
  CHECK(batch.records[1]["line"] == 2);
  CHECK(batch.records[1]["error"]["exit"] == 2);
  CHECK(batch.records[1]["error"]["word"] == "3/16mm");
  CHECK(batch.records[2]["verdict"] == "do not");
  CHECK(batch.records[3]["ask"].is_null());
  CHECK(batch.records[3]["line"] == 4);
  CHECK(batch.records[4]["line"] == 5);
  CHECK(std::count(batch.err.begin(), batch.err.end(), '\n') == 2);
  CHECK(batch.err.find("quillside: line 2: drill: '3/16mm'") == 0);
  CHECK(batch.err.find("\nquillside: line 4: 'frobnicate'") != std::string::npos);
}

TEST_CASE("the exit of a batch: 0 when all is answered, 1 with a do not, 3 and 4 for files") {
  const Folder folder;
  const auto faulty = folder.write("faulty.toml", "no table at all");
  CHECK(from_input({}).exit == 0);
  CHECK(from_input({"size no30"}).exit == 0);
  CHECK(from_input({"drill 1/8 416@60HRC", "size no30"}).exit == 1);
  const Batch wrong = from_input({"drill 1/8 303 --tables '" + faulty + "'", "drill 1/8 nothing", "size no30"});
  CHECK(wrong.exit == 3);
  CHECK(wrong.records.at(0)["error"]["kind"] == "data");
  // The tables of one line are not those of the next.
  CHECK(wrong.records.at(2).contains("found"));
  const Batch nowhere = from_input(
      {"drill 1/8 303 --tables '" + folder.path() + "/nowhere.toml'", "size no30", "tables check '" + faulty + "'"});
  CHECK(nowhere.exit == 4);
  CHECK(nowhere.records.at(0)["error"]["exit"] == 4);
  CHECK(nowhere.records.at(2)["found"]["files"][0]["faults"].size() == 1);
  CHECK(from_input({"tables check '" + faulty + "'"}).exit == 3);
}

TEST_CASE("the flags of the batch hold for every line that does not say otherwise") {
  const Batch batch =
      from_input({"drill 3 303", "drill 0.125 303 --units inch", "drill 3 303 --machine pillar12", "mill 3 303"},
                 "batch --units metric --machine pillar");
  REQUIRE(batch.records.size() == 4);
  CHECK(value(batch.records[0]["inputs"]["size"]) == 3);
  CHECK(batch.records[0]["inputs"]["machine"]["value"] == "pillar");
  CHECK_THAT(value(batch.records[1]["inputs"]["size"]), test::WithinRel(3.175, 1e-12));
  CHECK(batch.records[2]["inputs"]["machine"]["value"] == "pillar12");
  CHECK(batch.records[3]["verdict"] == "do not");
}

TEST_CASE("flag --tables of the batch holds for its lines, and a line's own goes in its place") {
  const Folder folder;
  const auto file = folder.write("own.toml", "[source.mine]\nauthor = \"me\"\ntitle = \"t\"\nstanding = \"own bench\"\n"
                                             "[[machine]]\nkey = \"attic\"\nname = \"my drill\"\nkind = \"mill\"\n"
                                             "range = \"100 to 200 rev/min\"\nsource = \"mine\"\n");
  const auto other = folder.write("other.toml", "");
  const Batch batch =
      from_input({"drill 1/4 303 --machine attic", "drill 1/4 303 --machine attic --tables '" + other + "'",
                  "drill 1/4 303 --machine attic"},
                 "batch --tables '" + file + "'");
  REQUIRE(batch.records.size() == 3);
  CHECK(value(batch.records[0]["set"]["spindle_speed"]) == 200);
  CHECK(batch.records[1]["error"]["word"] == "attic");
  CHECK(value(batch.records[2]["set"]["spindle_speed"]) == 200);
}

TEST_CASE("what has no record cannot stand in a batch: an error record in its place") {
  const Batch batch = from_input({"drill --help", "--help", "--version", "drill 1/8 303 --version", "batch", "batch -",
                                  "drill 1/8 303 --format xml", "drill 1/8 303 --format text", "size no30"});
  REQUIRE(batch.records.size() == 9);
  for (std::size_t i = 0; i < 7; ++i) {
    INFO(batch.records[i].dump());
    CHECK(batch.records[i]["line"] == i + 1);
    REQUIRE(batch.records[i].contains("error"));
    CHECK(batch.records[i]["error"]["exit"] == 2);
  }
  // The format of a line is the record, whatever it says.
  CHECK(batch.records[7]["verdict"] == "go");
  CHECK(batch.exit == 2);
}

TEST_CASE("a file with a byte-order mark, with CRLF, without an end to its last line") {
  const std::string lines = "size no30\r\n\r\n// the pins\r\nsize F\r\ndrill 1/8 'mild steel'";
  for (const auto& text : {lines, "\xef\xbb\xbf" + lines}) {
    const Batch batch = from_file(text);
    CHECK(batch.exit == 0);
    REQUIRE(batch.records.size() == 3);
    CHECK(batch.records[0]["line"] == 1);
    CHECK(batch.records[1]["line"] == 4);
    CHECK(batch.records[1]["inputs"]["size"]["text"] == "F");
    CHECK(batch.records[2]["line"] == 5);
    CHECK(batch.records[2]["inputs"]["material"]["text"] == "mild steel");
  }
  CHECK(from_file("").records.empty());
  CHECK(from_file("\xef\xbb\xbf").records.empty());
  CHECK(from_file("\n\n").records.empty());
  // A mark anywhere else is text like any other.
  CHECK(from_file("size no30\n\xef\xbb\xbfsize no30\n").exit == 2);
}

TEST_CASE("a line that is no UTF-8, or holds a control character, is an error record that is") {
  const Batch batch = from_file("drill \xff\xfe 303\nsize no30\nsize \x01\nsize \x1b[31m\n");
  REQUIRE(batch.records.size() == 4);
  CHECK(batch.exit == 2);
  CHECK(batch.records[0]["error"]["kind"] == "word");
  CHECK(batch.records[1].contains("found"));
  CHECK(batch.records[2]["error"]["kind"] == "word");
  CHECK(batch.records[3]["error"]["kind"] == "word");
  CHECK(batch.err.find('\x1b') == std::string::npos);
}

TEST_CASE("a dash is standard input, as nothing is") {
  CHECK(from_input({"size no30", "size F"}, "batch -").records == from_input({"size no30", "size F"}).records);
  CHECK(from_input({"size no30"}, "batch -").records.size() == 1);
}

TEST_CASE("a batch that is not there, and a folder: exit 4 with one record and no line") {
  const Folder folder;
  for (const auto& path : {folder.path() + "/nowhere.txt", folder.path()}) {
    const auto ran = test::run_words({"batch", path});
    CHECK(ran.exit == 4);
    const Json record = test::record_of(ran);
    CHECK(record["ask"] == "batch");
    CHECK(record["line"].is_null());
    CHECK(record["error"]["kind"] == "file");
    CHECK(record["error"]["word"] == path);
    CHECK(ran.err.starts_with("quillside: batch: "));
  }
}

TEST_CASE("settings that are wrong stop every line that reads them, with the same record") {
  const Folder folder;
  std::filesystem::create_directories(folder.path() + "/quillside");
  (void)folder.write("quillside/settings.toml", "units = \"feet\"\n");
  const auto ran = test::quillside("batch", {{"size no30", "size no31"}, {{"XDG_CONFIG_HOME", folder.path()}}});
  CHECK(ran.exit == 3);
  for (const auto& record : records_in(ran.out)) CHECK(record["error"]["kind"] == "data");
}

TEST_CASE("five thousand lines: five thousand records, in order") {
  std::vector<std::string> lines;
  for (int i = 0; i < 5000; ++i)
    lines.push_back(i % 100 == 99 ? "drill 1/8 nothing" : "size no" + std::to_string(1 + i % 80));
  const Batch batch = from_input(lines);
  REQUIRE(batch.records.size() == 5000);
  int errors = 0;
  int out_of_place = 0;
  for (int i = 0; i < 5000; ++i) {
    const Json& record = batch.records[static_cast<std::size_t>(i)];
    if (record["line"] != i + 1) ++out_of_place;
    if (record.contains("error"))
      ++errors;
    else if (record["inputs"]["size"]["text"] != "no" + std::to_string(1 + i % 80))
      ++out_of_place;
  }
  CHECK(errors == 50);
  CHECK(out_of_place == 0);
  CHECK(batch.exit == 2);
}
