// What the parser of table files must not see: letters beyond ASCII outside a text, headers without a name.

#include "catch.hpp"
#include "json_of.hpp"

#include <quillside/data/load.hpp>

using namespace quillside;

namespace {

std::vector<TableFault> faults_of(const std::string& text) {
  return load_over(builtin_tables(), {{"t.toml", text}}).faults;
}

} // namespace

TEST_CASE("a letter beyond ASCII outside a text is a fault with its place") {
  struct Row {
    std::string text;
    int line;
    int column;
  };
  const auto row = GENERATE(Row{"\xc2\xa7", 1, 1}, Row{"[[material]]\n\xc3\xa9 = 1\n", 2, 1},
                            Row{"a = \"\xc2\xb0\" \xc2\xb0\n", 1, 9}, Row{"# \xc2\xb0\n\xe2\x80\x83x = 1\n", 2, 1},
                            Row{"a = 'x'\nb = \"y\\\"\" \xd2\x80", 2, 11});
  const auto faults = faults_of(row.text);
  INFO(row.text);
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().what.find("beyond ASCII") != std::string::npos);
  CHECK(faults.front().place.line == row.line);
  CHECK(faults.front().place.column == row.column);
}

TEST_CASE("inside a text or a comment any letter may stand") {
  const std::string source = "[source.o]\nauthor = \"\xc3\xa9\"\ntitle = '\xc2\xb0'\nstanding = \"own bench\"\nnote = "
                             "\"\"\"\n\xc3\xa9\n\"\"\" # \xc2\xb1\n";
  CHECK(faults_of(source).empty());
  CHECK(faults_of("\xef\xbb\xbf" + source).empty());
}

TEST_CASE("a table header that begins with no name is a fault with its place") {
  struct Row {
    std::string text;
    int line;
  };
  const auto row = GENERATE(Row{"[=x]\n", 1}, Row{"[[(material)]]\n", 1}, Row{"[[\n", 1}, Row{"[#x]\n", 1},
                            Row{"[[[material]]]\n", 1}, Row{"a = 1\n  [[ ?x]]\n", 2}, Row{"a = [1,\n  [2]]\n[%]\n", 3},
                            Row{"a = '['\n[.x]\n", 2}, Row{"# [\n[,]\n", 2});
  const auto faults = faults_of(row.text);
  INFO(row.text);
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().what.find("a table header holds a name") != std::string::npos);
  CHECK(faults.front().place.line == row.line);
}

TEST_CASE("headers as TOML has them, and lists that begin a line with a bracket, are none") {
  const std::string source = "[ source.o ]\nauthor = \"a\"\ntitle = \"t\"\nstanding = \"own bench\"\n"
                             "['source'.\"p\"]\nauthor = \"a\"\ntitle = \"t\"\nstanding = \"own bench\"\n";
  CHECK(faults_of(source).empty());
  // In a list a line may begin with any: what is wrong is said by who reads the list, not of a header.
  for (const auto& fault : faults_of("[[material]]\nlayers = [\n[ {} ], [\n(]]\n"))
    CHECK(fault.what.find("a table header holds a name") == std::string::npos);
}
