// What is wrong with a table file, and where: every fault at once, each with its line and column.
// Lines and columns are counted by hand in the texts below: the four lines of `own` come first, so the first line of
// `rows` is line 5, and a value stands where its quote opens.

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <stdlib.h>

#include "folder.hpp"
#include "json_of.hpp"

using namespace quillside;
using quillside::test::Folder;
using test::Json;

namespace {

const std::string own = "[source.own-bench]\nauthor = \"you\"\ntitle = \"own trials\"\nstanding = \"own bench\"\n";

const std::string sound_row =
    "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = \"90 ft/min\"\nsource = \"own-bench\"\n";

struct Expected {
  int line;
  int column; // 0: somewhere in that line
  std::string says;
  std::string allows; // somewhere in `allowed`, or in the words themselves
};

struct Faulty {
  std::string name;
  std::string rows;
  std::vector<Expected> faults;
};

Json check(const Folder& folder, const std::string& text, int exit) {
  const auto file = folder.write("own.toml", text);
  const auto ran = test::run_words({"tables", "check", file, "--format", "json"});
  INFO(text << "\n" << ran.out << ran.err);
  CHECK(ran.exit == exit);
  const Json record = test::record_of(ran);
  REQUIRE(record["found"]["files"].size() == 1);
  CHECK(record["found"]["files"][0]["file"] == file);
  return record["found"]["files"][0]["faults"];
}

std::string machine(const std::string& speeds) {
  return "[[machine]]\nkey = \"mine\"\nname = \"my drill\"\nkind = \"drill-press\"\nsource = \"own-bench\"\n" + speeds;
}

std::string material(const std::string& key, const std::string& rest) {
  return "[[material]]\nkey = \"" + key + "\"\nname = \"a metal\"\nmetal = \"brass\"\nsource = \"own-bench\"\n" + rest;
}

std::string limit(const std::string& key, const std::string& value) {
  return "[[limit]]\nkey = \"" + key + "\"\nvalue = \"" + value + "\"\nwhat = \"mine\"\nsource = \"own-bench\"\n";
}

std::string speed(const std::string& text) {
  return "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = \"" + text + "\"\nsource = \"own-bench\"\n";
}

const std::vector<Faulty>& faulty_files() {
  static const std::vector<Faulty> all{
      {"a key twice", "[[drilling_speed]]\nmaterial = \"303\"\nmaterial = \"304\"\n", {{7, 0, "no TOML", "material"}}},
      {"prose", "\nthis is prose\n", {{6, 0, "no TOML", ""}}},
      {"a text that is not closed", "[[material]]\nkey = \"abc\n", {{6, 0, "no TOML", ""}}},
      {"a row without a source",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = \"90 ft/min\"\n",
       {{5, 1, "'source' is missing", ""}}},
      {"a source without a standing",
       "[source.other]\nauthor = \"me\"\ntitle = \"t\"\n",
       {{5, 1, "'standing'", "demo"}}},
      {"no such unit", speed("90 furlong/min"), {{8, 9, "'90 furlong/min' is no cutting speed", "ft/min"}}},
      {"no unit", speed("90"), {{8, 9, "'90' is no cutting speed", "ft/min"}}},
      {"an angle for a speed", speed("90 deg"), {{8, 9, "'90 deg' is no cutting speed", "ft/min"}}},
      {"a spindle speed for a cutting speed",
       speed("90 rev/min"),
       {{8, 9, "'90 rev/min' is no cutting speed", "ft/min"}}},
      {"a speed below zero", speed("-90 ft/min"), {{8, 9, "'-90 ft/min'", ""}}},
      {"a speed of nothing", speed("0 ft/min"), {{5, 1, "above 0", ""}}},
      {"a speed that is a bare number",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = 90\nsource = \"own-bench\"\n",
       {{8, 9, "'speed' is no text; quote it", "85 ft/min"}}},
      {"a range that runs down", speed("100 to 50 ft/min"), {{8, 9, "'100 to 50 ft/min' is no range", ""}}},
      {"an unknown key",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeeed = \"90 ft/min\"\nsource = \"own-bench\"\n",
       {{8, 10, "'speeed' is no key of this row; 'speed' is meant?", "speed"}}},
      {"an unknown kind of row",
       "[[drilling_sped]]\nmaterial = \"303\"\n",
       {{5, 1, "'drilling_sped' is no kind of row; 'drilling_speed' is meant?", "drilling_speed"}}},
      {"one row where a list of rows belongs",
       "[drilling_speed]\nmaterial = \"303\"\n",
       {{5, 1, "'drilling_speed' is no list of rows", "[[drilling_speed]]"}}},
      {"an unknown source",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = \"90 ft/min\"\nsource = \"own-bensh\"\n",
       {{5, 1, "source 'own-bensh' is not known; 'own-bench' is meant?", ""}}},
      {"an unknown material",
       "\n[[drilling_speed]]\nmaterial = \"303x\"\ncutter = \"hss\"\nspeed = \"90 ft/min\"\nsource = \"own-bench\"\n",
       {{6, 1, "material '303x' is not known; '303' is meant?", ""}}},
      {"an unknown cutter",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"carbid\"\nspeed = \"90 ft/min\"\nsource = \"own-bench\"\n",
       {{5, 1, "cutter 'carbid' is not known; 'carbide' is meant?", "hss"}}},
      {"a hole of an unknown screw",
       "[[clearance_hole]]\nscrew = \"M3.7\"\nnormal = \"4 mm\"\nsource = \"own-bench\"\n",
       {{5, 1, "screw 'M3.7' is not known; 'M3.5' is meant?", "screw_thread"}}},
      {"a head of an unknown screw",
       "[[screw_head]]\nscrew = \"no14\"\nshape = \"flat\"\nheight = \"3 mm\"\ncone = \"90 deg\"\nsource = "
       "\"own-bench\"\n",
       {{5, 1, "screw 'no14' is not known", "screw_thread"}}},
      {"no such condition",
       "[[drilling_speed]]\nmaterial = \"303\"\ncondition = \"aneled\"\ncutter = \"hss\"\nspeed = \"90 ft/min\"\n"
       "source = \"own-bench\"\n",
       {{7, 13, "'aneled' is no condition; 'annealed' is meant?", "cold-drawn"}}},
      {"no such condition in a list",
       "[[drilling_speed]]\nmaterial = \"303\"\ncondition = [\"annealed\", \"agd\"]\ncutter = \"hss\"\n"
       "speed = \"90 ft/min\"\nsource = \"own-bench\"\n",
       {{7, 26, "'agd' is no condition; 'aged' is meant?", "annealed"}}},
      {"no such metal",
       "[[material]]\nkey = \"mine\"\nname = \"a metal\"\nmetal = \"bras\"\nsource = \"own-bench\"\n",
       {{8, 9, "'bras' is no metal; 'brass' is meant?", "bronze"}}},
      {"no such standing",
       "[source.other]\nauthor = \"me\"\ntitle = \"t\"\nstanding = \"gospel\"\n",
       {{8, 12, "'gospel' is no standing", "published"}}},
      {"no such kind of machine",
       "[[machine]]\nkey = \"mine\"\nname = \"my drill\"\nkind = \"lathe\"\nrange = \"100 to 200 rev/min\"\n"
       "source = \"own-bench\"\n",
       {{8, 8, "'lathe' is no kind", "drill-press"}}},
      {"a key twice among the rows",
       machine("range = \"100 to 200 rev/min\"\n") + machine("range = \"100 to 300 rev/min\"\n"),
       {{11, 1, "'mine' stands twice; the first is in line 5", ""}}},
      {"two materials with one alias",
       material("M1", "aliases = [\"fine brass\"]\n") + material("M2", "aliases = [\"Fine Brass\"]\n"),
       {{11, 1, "'fine brass' already means M1", ""}}},
      {"an alias that a material of the built-in tables has",
       material("M1", "aliases = [\"ss303\"]\n"),
       {{5, 1, "'ss303' already means 303", ""}}},
      {"a family that leads back to itself",
       material("M1", "family = \"M2\"\n") + material("M2", "family = \"M1\"\n"),
       {{5, 1, "the family of 'M1' leads back to itself", ""}, {11, 1, "the family of 'M2' leads back to itself", ""}}},
      {"a family of its own", material("M1", "family = \"M1\"\n"), {{5, 1, "the family of 'M1' leads back", ""}}},
      {"an unknown family", material("M1", "family = \"bras\"\n"), {{5, 1, "family 'bras' is not known; 'brass'", ""}}},
      {"an unknown layer", material("M1", "layers = [\"1084x\"]\n"), {{5, 1, "layer '1084x' is not known", ""}}},
      {"layers in layers", material("M1", "layers = [\"layered-steel\"]\n"), {{5, 1, "is layered itself", ""}}},
      {"a low end of the band above its value", limit("band_below", "2"), {{5, 1, "'band_below'", ""}}},
      {"a high end of the band below its value", limit("band_above", "0.5"), {{5, 1, "'band_above'", ""}}},
      {"a limit of nothing", limit("band_below", "0"), {{5, 1, "'band_below'", ""}}},
      {"a ratio where a length belongs", limit("through_overrun", "2"), {{5, 1, "'through_overrun' is a length", ""}}},
      {"a length where a ratio belongs", limit("dry_speed", "2 mm"), {{5, 1, "'dry_speed' is a pure number", ""}}},
      {"a cone as blunt as its point", limit("cone_blunt", "1"), {{5, 1, "'cone_blunt' is a pure number", ""}}},
      {"a trial hole less than its drill at the most",
       limit("trial_hole_most", "0.9"),
       {{5, 1, "'trial_hole_most'", ""}}},
      {"no such limit", limit("band_bellow", "0.7"), {{5, 1, "'band_bellow' is no limit", ""}}},
      {"a machine with no speeds", machine(""), {{5, 1, "a machine has its spindle speeds one way", "steps"}}},
      {"a machine with its speeds two ways",
       machine("range = \"100 to 200 rev/min\"\nsteps = [\"100 rev/min\"]\n"),
       {{5, 1, "a machine has its spindle speeds one way", "steps"}}},
      {"pulleys that do not pair",
       machine("motor = \"1725 rev/min\"\nmotor_pulleys = [\"2 in\", \"3 in\"]\nspindle_pulleys = [\"4 in\"]\n"),
       {{10, 9, "as many spindle pulleys as motor pulleys", ""}}},
      {"a cutting speed for a step",
       machine("steps = [\"620 rev/min\", \"90 ft/min\"]\n"),
       {{10, 9, "'90 ft/min' is no spindle speed", "rev/min"}}},
      {"loads that do not pair with their diameters",
       "[[chip_load]]\nmaterial = \"303\"\ncutter = \"hss\"\ndiameters = [\"1/8 in\", \"1/4 in\"]\n"
       "loads = [\"0.001 in/tooth\"]\nsource = \"own-bench\"\n",
       {{9, 9, "'loads' has 1 entries, 'diameters' has 2", ""}}},
      {"diameters that are not in order",
       "[[chip_load]]\nmaterial = \"303\"\ncutter = \"hss\"\ndiameters = [\"1/4 in\", \"1/8 in\"]\n"
       "loads = [\"0.001 in/tooth\", \"0.002 in/tooth\"]\nsource = \"own-bench\"\n",
       {{8, 13, "'diameters' are not in order", "smallest first"}}},
      {"one diameter with two loads",
       "[[chip_load]]\nmaterial = \"303\"\ncutter = \"hss\"\ndiameters = [\"1/8 in\", \"1/8 in\"]\n"
       "loads = [\"0.001 in/tooth\", \"0.002 in/tooth\"]\nsource = \"own-bench\"\n",
       {{8, 13, "'diameters'", "smallest first"}}},
      {"a row of no material at all",
       "[[drilling_speed]]\nmaterial = []\ncutter = \"hss\"\nspeed = \"90 ft/min\"\nsource = \"own-bench\"\n",
       {{6, 12, "'material'", ""}}},
      {"a pitch as coarse as the screw",
       "[[screw_thread]]\nkey = \"M3x2\"\nscrew = \"M3\"\nmajor = \"3 mm\"\npitch = \"2 mm\"\nsource = \"own-bench\"\n",
       {{9, 9, "less than half the diameter", ""}}},
      {"a close hole wider than the normal one",
       "[[clearance_hole]]\nscrew = \"M3\"\nnormal = \"3.4 mm\"\nclose = \"3.5 mm\"\nsource = \"own-bench\"\n",
       {{8, 9, "no wider than 'normal'", ""}}},
      {"a loose hole narrower than the normal one",
       "[[clearance_hole]]\nscrew = \"M3\"\nnormal = \"3.4 mm\"\nloose = \"3.3 mm\"\nsource = \"own-bench\"\n",
       {{8, 9, "no narrower than 'normal'", ""}}},
      {"a flat head without its cone",
       "[[screw_head]]\nscrew = \"M3\"\nshape = \"flat\"\nheight = \"1.65 mm\"\nsource = \"own-bench\"\n",
       {{5, 1, "a flat head gives its 'cone'", ""}}},
      {"a cap head with a cone",
       "[[screw_head]]\nscrew = \"M3\"\nshape = \"cap\"\nheight = \"3 mm\"\ncone = \"90 deg\"\nsource = "
       "\"own-bench\"\n",
       {{5, 1, "a cap head its 'counterbore'", ""}}},
      {"a first percentage outside its range",
       "[[thread_engagement]]\nengagement = \"65 to 75 %\"\nfirst = \"80 %\"\nsource = \"own-bench\"\n",
       {{7, 9, "'first' lies inside 'engagement'", ""}}},
      {"more than a whole thread",
       "[[thread_engagement]]\nengagement = \"65 to 105 %\"\nfirst = \"70 %\"\nsource = \"own-bench\"\n",
       {{6, 14, "at most 100 %", ""}}},
      {"an allowance as large as its reamer",
       "[[ream_allowance]]\ndiameter = \"1 to 2 mm\"\nallowance = \"2 mm\"\nsource = \"own-bench\"\n",
       {{7, 13, "less than the reamer", ""}}},
      {"a hardness that is no number", "[[hardness]]\nhb = nan\nsource = \"own-bench\"\n", {{6, 6, "'hb'", ""}}},
      {"a hardness without end", "[[hardness]]\nhb = 250\nhrc = inf\nsource = \"own-bench\"\n", {{7, 7, "'hrc'", ""}}},
      {"a hardness below zero", "[[hardness]]\nhb = -250\nsource = \"own-bench\"\n", {{6, 6, "'hb'", ""}}},
      {"an error of an instrument that is no quantity",
       "[[reading]]\nkey = \"mine\"\nname = \"my caliper\"\nerror = \"lots\"\nreads = [\"thick\"]\ntrouble = 1\n"
       "source = \"own-bench\"\n",
       {{8, 9, "'lots'", ""}}},
      {"a trouble out of bounds",
       "[[reading]]\nkey = \"mine\"\nname = \"my caliper\"\nerror = \"0.001 in\"\nreads = [\"thick\"]\ntrouble = 6\n"
       "source = \"own-bench\"\n",
       {{10, 11, "'trouble' is no whole number from 1 to 5", ""}}},
      {"a tag of a caution that is none",
       "[[caution]]\nkey = \"mine\"\nseverity = \"note\"\ntext = \"Look out.\"\nwhen = [\"aks:drill\"]\n"
       "source = \"own-bench\"\n",
       {{9, 9, "'aks:drill'", ""}}},
      {"a series without end",
       "[[size_series]]\nkind = \"metric\"\nfrom = \"1 mm\"\nto = \"2 mm\"\nstep = \"0 mm\"\nsource = \"own-bench\"\n",
       {{5, 1, "a series runs from its low end to its high end", ""}}},
      {"several at once, of one row and of others",
       "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\nspeed = \"90 deg\"\nusual = 1\n"
       "[[material]]\nkey = \"M1\"\nname = \"a metal\"\nmetal = \"bras\"\nsource = \"nowhere\"\n"
       "[[lip_relief]]\ndiameter = \"1 kg\"\nmetal = [\"brass\"]\nrelief = \"16 deg\"\nsource = \"own-bench\"\n"
       "[[mashine]]\nkey = \"x\"\n",
       {{5, 1, "'source' is missing", ""},
        {8, 9, "'90 deg' is no cutting speed", "ft/min"},
        {9, 9, "'usual' is no truth value", "true or false"},
        {10, 1, "source 'nowhere' is not known", ""},
        {13, 9, "'bras' is no metal", "brass"},
        {16, 12, "'1 kg' is no length", "in"},
        {20, 1, "'mashine' is no kind of row; 'machine' is meant?", "machine"}}}};
  return all;
}

} // namespace

TEST_CASE("tables check names every fault of a file with its line and column") {
  const Folder folder;
  for (const auto& faulty : faulty_files()) {
    const Json faults = check(folder, own + faulty.rows, 3);
    INFO(faulty.name << "\n" << faulty.rows << "\n" << faults.dump(1));
    CHECK(faults.size() == faulty.faults.size());
    for (std::size_t i = 0; i < std::min(faults.size(), faulty.faults.size()); ++i) {
      const auto& expected = faulty.faults[i];
      CHECK(faults[i]["line"] == expected.line);
      if (expected.column == 0)
        CHECK(faults[i]["column"].get<int>() >= 1);
      else
        CHECK(faults[i]["column"] == expected.column);
      const std::string what = faults[i]["what"].get<std::string>();
      CHECK(what.find(expected.says) != std::string::npos);
      const std::string allowed = faults[i]["allowed"].is_null() ? "" : faults[i]["allowed"].get<std::string>();
      CHECK((what + allowed).find(expected.allows) != std::string::npos);
    }
  }
}

TEST_CASE("the same faults stop an ask: exit 3, FILE:LINE:COLUMN in the message, the first as the place") {
  const Folder folder;
  for (const auto& faulty : faulty_files()) {
    const auto file = folder.write("own.toml", own + faulty.rows);
    INFO(faulty.name << "\n" << faulty.rows);
    const Json error = test::error_of("drill 1/8 303 --tables '" + file + "'", 3);
    CHECK(error["kind"] == "data");
    REQUIRE(error["place"].is_object());
    CHECK(error["place"]["file"] == file);
    CHECK(error["place"]["line"] == faulty.faults.front().line);
    const std::string message = error["message"];
    for (const auto& expected : faulty.faults) {
      const std::string place = file + ":" + std::to_string(expected.line) + ":" +
                                (expected.column == 0 ? "" : std::to_string(expected.column) + ": ");
      INFO(message);
      CHECK(message.find(place) != std::string::npos);
    }
  }
}

TEST_CASE("a sound file has no faults: exit 0, a record with an empty list, nothing on standard error") {
  const Folder folder;
  CHECK(check(folder, own + sound_row, 0) == Json::array());
  CHECK(check(folder, "", 0) == Json::array());
  CHECK(check(folder, "# nothing but a remark\r\n", 0) == Json::array());
  const auto ran = test::run_words({"tables", "check", folder.write("own.toml", own + sound_row)});
  CHECK(ran.exit == 0);
  CHECK(ran.err.empty());
}

TEST_CASE("the faults of a check stand on standard error too, one a line, and the record on standard output") {
  const Folder folder;
  const auto file = folder.write("own.toml", own + speed("90 deg") + speed("90 rev/min"));
  const auto ran = test::run_words({"tables", "check", file, "--format", "json"});
  CHECK(ran.exit == 3);
  CHECK(Json::parse(ran.out)["found"]["files"][0]["faults"].size() == 2);
  CHECK(ran.err.find("quillside: tables: " + file + ":8:9: ") == 0);
  CHECK(ran.err.find("\nquillside: tables: " + file + ":13:9: ") != std::string::npos);
}

TEST_CASE("several files are checked one after another: a later one may lean on an earlier one, not the other way") {
  const Folder folder;
  const auto first = folder.write("first.toml", own);
  const auto second = folder.write("second.toml", sound_row);
  CHECK(test::run_words({"tables", "check", first, second}).exit == 0);
  const auto ran = test::run_words({"tables", "check", second, first, "--format", "json"});
  CHECK(ran.exit == 3);
  const Json files = Json::parse(ran.out)["found"]["files"];
  REQUIRE(files.size() == 2);
  CHECK(files[0]["faults"].size() == 1);
  CHECK(files[0]["faults"][0]["what"].get<std::string>().find("source 'own-bench'") != std::string::npos);
  CHECK(files[1]["faults"] == Json::array());
}

TEST_CASE("a file that is named twice has no fault for that") {
  const Folder folder;
  const auto file = folder.write("own.toml", own + machine("range = \"100 to 200 rev/min\"\n"));
  const auto ran = test::run_words({"tables", "check", file, file});
  INFO(ran.out << ran.err);
  CHECK(ran.exit == 0);
  CHECK(test::run_words({"drill", "1/8", "303", "--tables", file, "--tables", file, "--machine", "mine"}).exit < 2);
}

TEST_CASE("a family that leads back to itself through the built-in rows is the fault of the file that closed it") {
  const Folder folder;
  const Json faults = check(folder, own + material("stainless", "family = \"303\"\n"), 3);
  INFO(faults.dump(1));
  CHECK(faults.size() == 1);
  CHECK(faults[0]["line"] == 5);
  CHECK(faults[0]["column"] == 1);
}

TEST_CASE("a file that is not there, and a folder, cannot be read: exit 4") {
  const Folder folder;
  const std::string nowhere = folder.path() + "/nowhere.toml";
  for (const auto& path : {nowhere, folder.path()}) {
    for (const auto& line : {"tables check '" + path + "'", "drill 1/8 303 --tables '" + path + "'"}) {
      const Json error = test::error_of(line, 4);
      INFO(line << "\n" << error.dump());
      CHECK(error["kind"] == "file");
      CHECK(error["word"] == path);
    }
  }
  const Json named = test::error_of("drill 1/8 303", 4, {{}, {{"QUILLSIDE_TABLES", nowhere}}});
  CHECK(named["kind"] == "file");
  CHECK(named["word"] == nowhere);
}

TEST_CASE("a file of 1 MiB is read, one that is a byte longer is not: exit 3") {
  const Folder folder;
  const std::size_t mebibyte = 1024UL * 1024UL;
  std::string text = own + sound_row + "# ";
  text.resize(mebibyte, 'x');
  CHECK(check(folder, text, 0) == Json::array());
  const auto file = folder.write("long.toml", text + "x");
  for (const auto& line : {"tables check '" + file + "'", "drill 1/8 303 --tables '" + file + "'"}) {
    const Json error = test::error_of(line, 3);
    CHECK(error["kind"] == "data");
    CHECK(error["message"].get<std::string>().find("over 1 MiB") != std::string::npos);
    CHECK(error["place"]["file"] == file);
  }
}

TEST_CASE("settings that are wrong: exit 3, the place in the settings file") {
  const Folder folder;
  const std::string config = folder.path();
  std::filesystem::create_directories(config + "/quillside");
  struct Wrong {
    std::string text;
    int line;
    int column;
    std::string says;
  };
  const std::vector<Wrong> all{{"units = \"feet\"\n", 1, 9, "'units' is one of inch, metric"},
                               {"\nmashine = \"pillar\"\n", 2, 11, "'mashine' is no setting"},
                               {"machine = 3\n", 1, 11, "'machine' is a name in quotes"},
                               {"machine = [\"pillar\", 3]\n", 1, 22, "'machine' holds names"},
                               {"units = \"inch\"\npaper = \"a9\"\n", 2, 9, "'paper' is one of a4"}};
  for (const auto& wrong : all) {
    const auto file = folder.write("quillside/settings.toml", wrong.text);
    const Json error = test::error_of("drill 1/8 303", 3, {{}, {{"XDG_CONFIG_HOME", config}}});
    INFO(wrong.text << error.dump());
    CHECK(error["kind"] == "data");
    CHECK(error["place"] == Json{{"file", file}, {"line", wrong.line}, {"column", wrong.column}});
    CHECK(error["message"].get<std::string>().find(wrong.says) != std::string::npos);
  }
}
