// Wrong words: one line that names the word, the right exit, and a suggestion where there is one to make.

#include "json_of.hpp"
#include "wrong_words.hpp"

using namespace quillside;
using test::hold_refused;
using test::Json;
using test::Wrong;

TEST_CASE("words that are wrong") {
  const auto wrong = GENERATE(
      Wrong{"dril 1/8 303", "dril", "is no ask", "drill"}, Wrong{"frobnicate", "frobnicate", "allowed: drill, mill"},
      Wrong{"drill 1/8 313", "313", "is no material", "303"},
      Wrong{"drill 1/8 brss", "brss", "is no material", "brass"},
      Wrong{"drill 1/8 416@aneled", "416@aneled", "allowed: annealed", "416@annealed"},
      Wrong{"drill 1/8 416@", "416@", "names no condition"}, Wrong{"drill 1/8 304@40HRC", "40 HRC", "give HB"},
      Wrong{"drill 30 303", "30", "no30 or 30thou", "no30"}, Wrong{"drill no98 303", "no98", "no1 to no97"},
      Wrong{"mill 3/16mm 303", "3/16mm", "write 3/16in or 4.8mm", "4.8mm"},
      Wrong{"drill 4,8mm 303", "4,8mm", "write 4.8mm", "4.8mm"}, Wrong{"drill 0 303", "0", "larger than 0"},
      Wrong{"drill -3mm 303", "-3mm", "negative"}, Wrong{"drill 1e9 303", "1e9", "'e9' is no unit"},
      Wrong{"drill 99999999mm 303", "99999999mm", "over 10 m"}, Wrong{"drill nan 303", "nan", "is no size"},
      Wrong{"drill inf 303", "inf", "is no size"}, Wrong{"drill 1/8 303 --leave -3mm --thick 1/4", "-3mm", "negative"},
      Wrong{"drill 1/8 303 --dry --dry", "--dry", "given twice"},
      Wrong{"drill 1/8 303 --flutes 2", "--flutes", "belongs to mill"},
      Wrong{"drill 1/8 303 --mashine pillar", "--mashine", "is meant", "--machine"},
      Wrong{"drill 1/8 303 --mach pillar", "--mach", "is no flag"},
      Wrong{"drill 1/8 303 --machine pilar", "pilar", "is no machine", "pillar"},
      Wrong{"drill 1/8 303 --cutter carbid", "carbid", "allowed: hss, cobalt, carbide", "carbide"},
      Wrong{"drill 1/8 303 --units feet", "feet", "inch or metric"}, Wrong{"drill 1/8", "drill", "write no30"},
      Wrong{"drill 1/8 303 304", "304", "one word too many"},
      Wrong{"drill 1/8 303 --thick", "--thick", "needs a value"},
      Wrong{"drill 1/8 303 --point 180", "180", "30 to 175"}, Wrong{"drill 1/8 303 --point 0", "0", "30 to 175"},
      Wrong{"mill 1/8 303 --flutes 0", "0", "1 to 12"}, Wrong{"mill 1/8 303 --flutes 2.5", "2.5", "whole number"},
      Wrong{"mill 1/8 303 --width 0", "0", "more than 0"}, Wrong{"burr 3mm 416 --marked 0", "0", "1 to 1000000"},
      Wrong{"burr 3mm 416 --marked fast", "fast", "is no spindle speed"}, Wrong{"drill '' 303", "", "quote '#30'"},
      Wrong{"drill \xff\xfe 303", "??", "not plain UTF-8"}, Wrong{"tables", "tables", "words ran out"},
      Wrong{"tables shwo", "shwo", "list, show, check", "show"},
      Wrong{"tables show pilar", "pilar", "is meant", "pillar"},
      Wrong{"tables new mashine", "mashine", "no kind of row", "machine"}, Wrong{"size", "size", "words ran out"});
  hold_refused(wrong, "word");
}

TEST_CASE("words that contradict each other") {
  const auto wrong = GENERATE(Wrong{"drill 1/8 303 --thick 1/4 --leave 0.04 --through", "--leave", "--through"},
                              Wrong{"drill 1/8 303 --leave 0.04 --depth 0.1 --thick 1/4", "--leave", "--depth"},
                              Wrong{"drill 1/8 303 --leave 0.04", "--leave", "needs --thick"},
                              Wrong{"drill 1/8 303 --through", "--through", "needs --thick"},
                              Wrong{"drill 1/8 303 --leave-at tip --thick 1/4", "--leave-at", "needs --leave"},
                              Wrong{"drill 1/8 303 --thick 1/4 --depth 0.3", "--depth", "more than the part is thick"},
                              Wrong{"drill 1/8 303 --thick 1/4 --leave 1/4", "--leave", "nothing to drill"},
                              Wrong{"mill 1/8 303 --width 1/4", "--width", "wider than the cutter"},
                              Wrong{"size 1/8 --under 1/8", "--under", "not less than"},
                              Wrong{"burr 3mm brass --cutter diamond", "diamond", "no table has"});
  hold_refused(wrong, "conflict");
}

TEST_CASE("harder than any row is an answer, not an error: do not, and what would do") {
  const Json answer = test::answer_of("drill 1/8 416@60HRC");
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["set"] == Json::object());
  CHECK(answer["reason"].get<std::string>().find("harder than any row") != std::string::npos);
  CHECK_FALSE(answer["instead"].is_null());
}

TEST_CASE("an end mill in a drill chuck: do not") {
  const Json answer = test::answer_of("mill 1/8 416 --machine pillar");
  CHECK(answer["verdict"] == "do not");
  CHECK(test::has_caution(answer, "drill-chuck"));
}

TEST_CASE("no words at all: help on standard error, exit 2; asked for, on standard output, exit 0") {
  const auto none = test::run_words({});
  CHECK(none.exit == 2);
  CHECK(none.out.empty());
  CHECK(none.err.find("quillside ASK") != std::string::npos);
  const auto help = test::quillside("--help");
  CHECK(help.exit == 0);
  CHECK(help.out == none.err);
  const auto one = test::quillside("mill --help");
  CHECK(one.exit == 0);
  CHECK(one.out.find("--flutes") != std::string::npos);
  CHECK(test::quillside("--version").out == "quillside 0.1.0\n");
}

TEST_CASE("in text an error is one line on standard error and nothing on standard output") {
  const auto ran = test::quillside("mill 3/16mm 303");
  CHECK(ran.exit == 2);
  CHECK(ran.out.empty());
  CHECK(ran.err == "quillside: mill: '3/16mm' is no size: a fraction is in inches; write 3/16in or 4.8mm\n");
}
