// The program as the shell sees it: exits, streams, pipes, bytes.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <stdlib.h>

#include "as_process.hpp"
#include "folder.hpp"
#include "json_of.hpp"
#include "lines_of.hpp"

using namespace quillside;
using quillside::test::Folder;
using test::Json;
using test::Process;
using test::shell;
using test::tool;

namespace {

Process run(const std::string& words, const std::string& variables = {}) { return shell(tool(variables) + words); }

bool has_escape(const std::string& text) { return text.find('\x1b') != std::string::npos; }

} // namespace

TEST_CASE("exit codes of the process") {
  const Folder folder;
  const auto faulty = folder.write("faulty.toml", "no table at all");
  CHECK(run("drill 1/8 303").exit == 0);
  CHECK(run("--help").exit == 0);
  CHECK(run("--version").exit == 0);
  CHECK(run("drill 1/8 416@60HRC").exit == 1);
  CHECK(run("").exit == 2);
  CHECK(run("drill 3/16mm 303").exit == 2);
  CHECK(run("drill 1/8 303 --tables '" + faulty + "'").exit == 3);
  CHECK(run("tables check '" + faulty + "'").exit == 3);
  CHECK(run("drill 1/8 303 --tables '" + folder.file("nowhere.toml") + "'").exit == 4);
  CHECK(run("batch '" + folder.file("nowhere.txt") + "'").exit == 4);
}

TEST_CASE("answers go to standard output, messages to standard error") {
  const Process answered = run("drill 1/8 303");
  CHECK_FALSE(answered.out.empty());
  CHECK(answered.err.empty());
  const Process wrong = run("drill 3/16mm 303");
  CHECK(wrong.out.empty());
  CHECK(std::count(wrong.err.begin(), wrong.err.end(), '\n') == 1);
  CHECK(wrong.err.starts_with("quillside: drill: '3/16mm'"));
  const Process none = run("");
  CHECK(none.out.empty());
  CHECK(none.err == run("--help").out);
}

TEST_CASE("the process prints what the program prints in this process") {
  for (const auto* line : {"drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar", "mill 1/8 416 --why",
                           "burr 3mm 416 --marked 25000 --format json", "size no30", "tables list", "tables path"}) {
    INFO(line);
    const Process process = run(line);
    const auto inside = test::quillside(line);
    CHECK(process.out == inside.out);
    CHECK(process.err == inside.err);
    CHECK(process.exit == inside.exit);
  }
}

TEST_CASE("a standard output that is full, or closed: exit 4 and one line that says so") {
  for (const auto* words : {"drill 1/8 303", "--help", "drill --help", "--version", "drill 1/8 303 --format json",
                            "tables list", "size no30"}) {
    for (const auto* where : {" >/dev/full", " >&-"}) {
      const Process full = run(std::string(words) + where);
      INFO(words << where << "\n" << full.err);
      CHECK(full.exit == 4);
      CHECK(full.err.starts_with("quillside: "));
      CHECK(full.err.find("standard output") != std::string::npos);
      CHECK(std::count(full.err.begin(), full.err.end(), '\n') == 1);
    }
  }
  // The error record has nowhere to go: that is the larger trouble.
  CHECK(run("drill 3/16mm 303 --format json >/dev/full").exit == 4);
  CHECK(shell("printf 'size no30\\nsize F\\n' | " + tool() + "batch >/dev/full").exit == 4);
}

TEST_CASE("a standard error that is full changes no exit") {
  CHECK(run("drill 3/16mm 303 2>/dev/full").exit == 2);
  CHECK(run("drill 1/8 303 2>&-").exit == 0);
}

TEST_CASE("a pipe that its reader closed is quiet") {
  const Folder folder;
  std::string lines;
  for (int i = 0; i < 5000; ++i) lines += "drill 1/8 303\n";
  const auto asks = folder.write("asks.txt", lines);
  const Process batch =
      shell("{ " + tool() + "batch '" + asks + "'; echo $? >'" + folder.file("exit") + "'; } | head -c 1");
  CHECK(batch.out == "{");
  CHECK(batch.err.empty());
  CHECK(folder.read("exit") == "0\n");
  const Process help = shell("{ sleep 0.2; " + tool() + "--help; echo $? >'" + folder.file("exit") + "'; } | true");
  CHECK(help.err.empty());
  CHECK(folder.read("exit") == "0\n");
}

TEST_CASE("not on a terminal there are no escape bytes, whatever the environment says") {
  for (const auto* variables :
       {"", "TERM=xterm-256color", "TERM=xterm-256color NO_COLOR=1", "TERM=dumb", "NO_COLOR="}) {
    for (const auto* words :
         {"drill 1/8 303 --why", "drill 1/8 416@60HRC", "--help", "tables list", "drill 3/16mm 303"}) {
      const Process process = run(words, variables);
      INFO(variables << " " << words);
      CHECK_FALSE(has_escape(process.out));
      CHECK_FALSE(has_escape(process.err));
      CHECK_FALSE((process.out + process.err).empty());
    }
  }
}

TEST_CASE("flag --large: the first number in digits of #, five lines tall, before the answer") {
  const Process plain = run("drill no30 303 --machine pillar");
  const Process large = run("drill no30 303 --machine pillar --large");
  CHECK(large.exit == 0);
  REQUIRE(large.out.size() > plain.out.size());
  CHECK(large.out.ends_with(plain.out));
  const std::string digits = large.out.substr(0, large.out.size() - plain.out.size());
  CHECK(digits.find_first_not_of("# \n") == std::string::npos);
  CHECK(std::count(digits.begin(), digits.end(), '\n') == 6);
  // 2340 rev/min is step 4 of the pillar drill: four digits, each at most five wide, none the same as another.
  std::vector<std::string> lines = test::lines_of(digits);
  for (auto& line : lines) line += std::string(40, ' ');
  REQUIRE(lines.size() == 6);
  std::vector<std::string> shapes;
  for (std::size_t digit = 0; digit < 4; ++digit) {
    std::string shape;
    for (std::size_t row = 0; row < 5; ++row) shape += lines[row].substr(digit * 7, 5) + "\n";
    shapes.push_back(shape);
    CHECK(shape.find('#') != std::string::npos);
  }
  std::sort(shapes.begin(), shapes.end());
  CHECK(std::adjacent_find(shapes.begin(), shapes.end()) == shapes.end());
}

TEST_CASE("an argument that is no UTF-8: exit 2, and nothing of it is printed as it came") {
  for (const auto* words : {"drill '\xff\xfe' 303", "drill 1/8 '\xc3('", "'\xff'", "drill 1/8 303 '--\xff'",
                            "drill 1/8 303 --machine '\xff'", "tables show '\xff'", "drill 1/8 '303\x1b[31m'"}) {
    for (const auto* format : {"", " --format json"}) {
      const Process process = run(std::string(words) + format);
      CHECK(process.exit == 2);
      CHECK(process.err.find('\xff') == std::string::npos);
      CHECK(process.out.find('\xff') == std::string::npos);
      CHECK_FALSE(has_escape(process.err + process.out));
      if (*format != '\0') CHECK(Json::parse(process.out)["error"]["exit"] == 2);
    }
  }
}

TEST_CASE("a batch from standard input: a record a line as they come, the largest exit") {
  const Process process = shell("printf 'size no30\\n\\n// pins\\ndrill 1/8 nothing\\nsize F' | " + tool() + "batch");
  CHECK(process.exit == 2);
  std::vector<Json> records;
  for (const auto& line : test::lines_of(process.out)) records.push_back(Json::parse(line));
  REQUIRE(records.size() == 3);
  CHECK(records[0]["line"] == 1);
  CHECK(records[1]["error"]["word"] == "nothing");
  CHECK(records[2]["line"] == 5);
  CHECK(process.err.starts_with("quillside: line 4: drill: 'nothing'"));
  CHECK(shell("printf 'size no30' | " + tool() + "batch -").exit == 0);
  CHECK(run("batch </dev/null").exit == 0);
  CHECK(run("batch </dev/null").out.empty());
}

TEST_CASE("a standard input that cannot be read, a folder: exit 4, with the record") {
  const Folder folder;
  const Process process = run("batch <'" + folder.file(".") + "'");
  CHECK(process.exit == 4);
  CHECK(process.err.find("standard input") != std::string::npos);
  CHECK(Json::parse(process.out)["error"]["kind"] == "file");
}

TEST_CASE("the environment of the process is the one that counts") {
  const Folder folder;
  const auto own =
      folder.write("own.toml", "[source.mine]\nauthor = \"me\"\ntitle = \"t\"\nstanding = \"own bench\"\n"
                               "[[machine]]\nkey = \"attic\"\nname = \"my drill\"\nkind = \"drill-press\"\n"
                               "range = \"100 to 200 rev/min\"\nsource = \"mine\"\n");
  std::filesystem::create_directories(folder.file("quillside/tables"));
  (void)folder.write("quillside/settings.toml", "units = \"metric\"\nmachine = \"attic\"\n");
  CHECK(run("drill 1/8 303 --machine attic").exit == 2);
  CHECK(run("drill 1/8 303 --machine attic", "QUILLSIDE_TABLES='" + own + "'").exit == 0);
  const Process process =
      run("drill 3 303 --format json", "QUILLSIDE_TABLES='" + own + "' XDG_CONFIG_HOME='" + folder.file("") + "'");
  REQUIRE(process.exit == 0);
  const Json answer = Json::parse(process.out);
  CHECK(answer["inputs"]["size"]["value"] == 3);
  CHECK(answer["set"]["spindle_speed"]["value"] == 200);
}
