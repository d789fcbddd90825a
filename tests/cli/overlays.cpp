// Tables and settings of the user's own: where they are looked for, which goes over which, and what a row of theirs
// does to the built-in ones.

#include <filesystem>
#include <fstream>
#include <numbers>
#include <string>
#include <vector>

#include <stdlib.h>

#include "folder.hpp"
#include "json_of.hpp"

using namespace quillside;
using quillside::test::Folder;
using test::answer_of;
using test::Json;
using test::names_source;
using test::speed_source;
using test::Surroundings;
using test::value;
using test::WithinRel;

namespace {

std::string source(const std::string& id) {
  return "[source." + id + "]\nauthor = \"me\"\ntitle = \"trials of " + id + "\"\nstanding = \"own bench\"\n";
}

// The row with all five words of a built-in one: 303, annealed, 135 to 185 HB, HSS.
std::string same_five(const std::string& id, const std::string& speed) {
  return source(id) +
         "[[drilling_speed]]\nmaterial = \"303\"\ncondition = \"annealed\"\nhardness = \"135 to 185 HB\"\n" +
         "cutter = \"hss\"\nspeed = \"" + speed + "\"\nusual = true\nsource = \"" + id + "\"\n";
}

std::string machine(const std::string& key, const std::string& kind, const std::string& rest) {
  return "[[machine]]\nkey = \"" + key + "\"\nname = \"my " + key + "\"\nkind = \"" + kind + "\"\nsource = \"shop\"\n" +
         rest;
}

// v = pi D n, D in inch.
double rev_per_min(double ft_per_min, double inch) { return ft_per_min * 12 / (std::numbers::pi * inch); }

std::vector<std::string> steps_from(const Json& answer, const std::string& id) {
  std::vector<std::string> steps;
  for (const auto& why : answer["why"])
    if (why["source"] == id) steps.push_back(why["step"]);
  return steps;
}

Surroundings with(const std::string& variable, const std::string& text) { return {{}, {{variable, text}}}; }

std::string quoted(const std::string& path) { return "'" + path + "'"; }

const std::string ask = "drill 1/4 303@annealed";

} // namespace

TEST_CASE("flag --tables: a row with the same five words replaces the built-in one, its source with it") {
  const Folder folder;
  const Json built_in = answer_of(ask);
  const std::string built_in_source = speed_source(built_in);
  const Json own = answer_of(ask + " --tables " + quoted(folder.write("own.toml", same_five("mine", "50 ft/min"))));
  CHECK_THAT(value(own["found"]["wanted_spindle_speed"]), WithinRel(rev_per_min(50, 0.25), 1e-9));
  CHECK(speed_source(own) == "mine");
  CHECK(names_source(own, "mine"));
  CHECK(built_in_source != "mine");
  CHECK_FALSE(names_source(own, built_in_source));
  for (const auto& named : own["sources"])
    if (named["id"] == "mine") {
      CHECK(named["standing"] == "own bench");
      CHECK(named["cite"].get<std::string>().find("trials of mine") != std::string::npos);
      CHECK(named["page"].is_null());
    }
}

TEST_CASE("a row that differs in one of the five stands beside the built-in one") {
  const Folder folder;
  std::string text = same_five("mine", "50 ft/min");
  text.replace(text.find("135 to 185"), 10, "135 to 186");
  const Json own = answer_of(ask + " --tables " + quoted(folder.write("own.toml", text)));
  // Both are for the grade and condition: the slower comes first, the other spans the band.
  CHECK(speed_source(own) == "mine");
  CHECK(names_source(own, speed_source(answer_of(ask))));
}

TEST_CASE("a row that names fewer words is a less specific one: the grade's own answers, the user's is listed in why") {
  const Folder folder;
  const auto line = GENERATE(as<std::string>{}, "drill 1/4 303", "drill 1/4 303@annealed", "drill 1/4 303@150HB");
  const auto file =
      folder.write("own.toml", source("mine") + "[[drilling_speed]]\nmaterial = \"303\"\ncutter = \"hss\"\n"
                                                "speed = \"20 ft/min\"\nsource = \"mine\"\n");
  const Json built_in = answer_of(line);
  const Json own = answer_of(line + " --tables " + quoted(file));
  INFO(own["why"].dump(1));
  CHECK(own["found"]["wanted_spindle_speed"] == built_in["found"]["wanted_spindle_speed"]);
  CHECK(speed_source(own) == speed_source(built_in));
  CHECK(steps_from(own, "mine") == std::vector<std::string>{"passed over"});
}

TEST_CASE("a row that names the condition but no hardness hides nothing: both are in why") {
  const Folder folder;
  const auto file =
      folder.write("own.toml", source("mine") + "[[drilling_speed]]\nmaterial = \"303\"\n"
                                                "condition = \"annealed\"\ncutter = \"hss\"\nspeed = \"20 ft/min\"\n"
                                                "source = \"mine\"\n");
  const Json own = answer_of(ask + " --tables " + quoted(file));
  CHECK(steps_from(own, "mine").size() == 1);
  CHECK(names_source(own, speed_source(answer_of(ask))));
  // With a hardness, only the row that states one can hold it.
  const Json hard = answer_of("drill 1/4 303@150HB --tables " + quoted(file));
  CHECK(speed_source(hard) == speed_source(answer_of("drill 1/4 303@150HB")));
  CHECK(steps_from(hard, "mine") == std::vector<std::string>{"passed over"});
}

TEST_CASE(
    "of rows that list metals the one that lists fewest answers, before one that lists none; among equals yours") {
  const Folder folder;
  const auto with_rows = [&](const std::string& rows, const std::string& line) {
    return answer_of(line + " --tables " + quoted(folder.write("own.toml", source("mine") + rows)));
  };
  // The built-in fluid of C752 is for nickel silver and copper, the relief and the pecks of 303 for all stainless.
  const std::string fluid = "[[fluid]]\nask = \"drill\"\nfluid = \"lamp oil\"\nsource = \"mine\"\n";
  const auto fluid_for = [&](const std::string& metals, const std::string& material) {
    return with_rows(fluid + "metal = [" + metals + "]\n", "drill 1/8 " + material)["set"]["fluid"];
  };
  const Json built_in = answer_of("drill 1/8 C752")["set"]["fluid"];
  CHECK(fluid_for("\"nickel-silver\"", "C752") == "lamp oil");
  CHECK(fluid_for("\"nickel-silver\", \"bronze\"", "C752") == "lamp oil");
  CHECK(fluid_for("\"nickel-silver\", \"bronze\", \"brass\"", "C752") == built_in);
  CHECK(with_rows(fluid, "drill 1/8 C752")["set"]["fluid"] == built_in);

  const std::string relief =
      "[[lip_relief]]\ndiameter = \"0.04 to 0.3 in\"\nrelief = \"9 deg\"\nsource = \"mine\"\nmetal = ";
  const auto wanted = [&](const std::string& metals, const std::string& material) {
    return value(with_rows(relief + metals + "\n", "drill 1/8 " + material)["found"]["wanted_relief"]);
  };
  CHECK_THAT(wanted("[\"austenitic-stainless\"]", "303"), WithinRel(9.0, 1e-12));
  CHECK_THAT(wanted("[\"austenitic-stainless\"]", "416"),
             WithinRel(value(answer_of("drill 1/8 416")["found"]["wanted_relief"]), 1e-12));
  CHECK_THAT(wanted("[\"nickel-silver\"]", "C752"), WithinRel(9.0, 1e-12)); // no built-in row names it

  const Json tapped = with_rows("[[thread_engagement]]\nmetal = [\"nickel-silver\"]\nengagement = \"50 to 60 %\"\n"
                                "first = \"55 %\"\nsource = \"mine\"\n",
                                "hole tap M3 C752 --thick 3mm");
  CHECK(names_source(tapped, "mine"));
}

TEST_CASE("a row for a family answers for its grades only where they have none of their own") {
  const Folder folder;
  const auto file = folder.write(
      "own.toml", source("mine") + "[[drilling_speed]]\nmaterial = \"free-machining-austenitic\"\ncutter = \"hss\"\n"
                                   "speed = \"20 ft/min\"\nusual = true\nsource = \"mine\"\n");
  const Json own = answer_of("drill 1/4 303 --tables " + quoted(file));
  CHECK(speed_source(own) == speed_source(answer_of("drill 1/4 303")));
  CHECK(steps_from(own, "mine") == std::vector<std::string>{"passed over"});
}

TEST_CASE("the last --tables wins over the first") {
  const Folder folder;
  const auto slow = folder.write("slow.toml", same_five("slow", "30 ft/min"));
  const auto fast = folder.write("fast.toml", same_five("fast", "60 ft/min"));
  CHECK(speed_source(answer_of(ask + " --tables " + quoted(slow) + " --tables " + quoted(fast))) == "fast");
  const Json other = answer_of(ask + " --tables " + quoted(fast) + " --tables " + quoted(slow));
  CHECK(speed_source(other) == "slow");
  CHECK_FALSE(names_source(other, "fast"));
  CHECK(other["inputs"]["tables"]["value"] == Json::array({fast, slow}));
}

TEST_CASE("$QUILLSIDE_TABLES: files and folders parted by ':', the later over the earlier") {
  const Folder folder;
  const auto slow = folder.write("slow.toml", same_five("slow", "30 ft/min"));
  const auto fast = folder.write("fast.toml", same_five("fast", "60 ft/min"));
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", slow))) == "slow");
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", slow + ":" + fast))) == "fast");
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", fast + "::" + slow + ":"))) == "slow");
  // A folder is read in the order of the names in it; what is no .toml, or hidden, is not read.
  const auto unread = folder.write("notes.txt", "no table at all");
  const auto hidden = folder.write(".hidden.toml", "no table at all");
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", folder.path()))) == "slow");
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", folder.path() + ":" + fast))) == "fast");
  CHECK(speed_source(answer_of(ask, with("QUILLSIDE_TABLES", ""))) == speed_source(answer_of(ask)));
  CHECK(std::filesystem::exists(unread));
  CHECK(std::filesystem::exists(hidden));
}

TEST_CASE("$XDG_CONFIG_HOME/quillside/tables/*.toml in the order of the names, else ~/.config") {
  const Folder folder;
  (void)folder.write("quillside/tables/a.toml", same_five("slow", "30 ft/min"));
  CHECK(speed_source(answer_of(ask, with("XDG_CONFIG_HOME", folder.path()))) == "slow");
  (void)folder.write("quillside/tables/b.toml", same_five("fast", "60 ft/min"));
  CHECK(speed_source(answer_of(ask, with("XDG_CONFIG_HOME", folder.path()))) == "fast");
  const Folder home;
  (void)home.write(".config/quillside/tables/a.toml", same_five("home", "40 ft/min"));
  CHECK(speed_source(answer_of(ask, with("HOME", home.path()))) == "home");
  const Surroundings both{{}, {{"HOME", home.path()}, {"XDG_CONFIG_HOME", folder.path()}}};
  CHECK(speed_source(answer_of(ask, both)) == "fast");
}

TEST_CASE("flag --tables over $QUILLSIDE_TABLES over the folder of the user over the built-in tables") {
  const Folder folder;
  (void)folder.write("quillside/tables/a.toml", same_five("folder", "30 ft/min"));
  const auto variable = folder.write("variable.toml", same_five("variable", "60 ft/min"));
  const auto named = folder.write("named.toml", same_five("named", "20 ft/min"));
  const Surroundings around{{}, {{"XDG_CONFIG_HOME", folder.path()}, {"QUILLSIDE_TABLES", variable}}};
  CHECK(speed_source(answer_of(ask, around)) == "variable");
  const Json strongest = answer_of(ask + " --tables " + quoted(named), around);
  CHECK(speed_source(strongest) == "named");
  CHECK_FALSE(names_source(strongest, "variable"));
  CHECK_FALSE(names_source(strongest, "folder"));
}

TEST_CASE("a row of one place may name a source of a weaker one") {
  const Folder folder;
  (void)folder.write("quillside/tables/sources.toml", source("shop"));
  std::string rows = same_five("shop", "30 ft/min");
  rows.erase(0, rows.find("[[drilling_speed]]"));
  const auto named = folder.write("named.toml", rows);
  CHECK(speed_source(answer_of(ask + " --tables " + quoted(named), with("XDG_CONFIG_HOME", folder.path()))) == "shop");
  CHECK(test::error_of(ask + " --tables " + quoted(named), 3)["message"].get<std::string>().find("source 'shop'") !=
        std::string::npos);
}

TEST_CASE("a material of the user's own goes by its family until it has a row of its own") {
  const Folder folder;
  const std::string metal = source("shop") + "[[material]]\nkey = \"latch-stock\"\nname = \"latch plate stock\"\n"
                                             "metal = \"brass\"\nfamily = \"C360\"\naliases = [\"plate brass\"]\n"
                                             "source = \"shop\"\n";
  const auto file = folder.write("own.toml", metal);
  const Json family = answer_of("drill 1/4 C360");
  for (const auto* name : {"latch-stock", "Latch-Stock", "'plate brass'"}) {
    const Json own = answer_of(std::string("drill 1/4 ") + name + " --tables " + quoted(file));
    CHECK(own["found"]["wanted_spindle_speed"] == family["found"]["wanted_spindle_speed"]);
    CHECK(own["inputs"]["material"]["value"] == "latch-stock");
    CHECK(speed_source(own) == speed_source(family));
  }
  const auto with_row =
      folder.write("row.toml", metal + "[[drilling_speed]]\nmaterial = \"latch-stock\"\ncutter = \"hss\"\n"
                                       "speed = \"77 ft/min\"\nsource = \"shop\"\n");
  const Json own = answer_of("drill 1/4 latch-stock --tables " + quoted(with_row));
  CHECK_THAT(value(own["found"]["wanted_spindle_speed"]), WithinRel(rev_per_min(77, 0.25), 1e-9));
  CHECK(speed_source(own) == "shop");
  CHECK(test::error_of("drill 1/4 latch-stock", 2)["word"] == "latch-stock");
}

TEST_CASE("a machine of the user's own: its steps, and what is not in its row is left out") {
  const Folder folder;
  const auto file = folder.write(
      "own.toml", source("shop") + machine("attic", "drill-press", "steps = [\"400 rev/min\", \"800 rev/min\"]\n") +
                      machine("knee", "mill", "range = \"60 to 900 rev/min\"\n"));
  const std::string tables = " --tables " + quoted(file);
  const Json drilled = answer_of("drill 1/8 303 --machine attic" + tables);
  CHECK(value(drilled["set"]["spindle_speed"]) == 800);
  CHECK(drilled["set"]["step"] == "2");
  CHECK(names_source(drilled, "shop"));
  CHECK_FALSE(names_source(drilled, "demo"));
  CHECK_FALSE(test::has_caution(drilled, "demo-machine"));
  // The demo's mill has a dial of its own; this one does not say.
  const Json milled = answer_of("mill 1/8 303 --machine knee" + tables);
  CHECK(value(milled["set"]["spindle_speed"]) == 900);
  CHECK_FALSE(milled["set"].contains("turn_time"));
  CHECK_FALSE(milled["inputs"].contains("dial"));
  CHECK_FALSE(names_source(milled, "demo"));
  CHECK(answer_of("mill 1/8 303 --machine knee --dial 0.1" + tables)["set"].contains("turn_time"));
}

TEST_CASE("a machine of the user's with the key of a demo machine replaces it as a whole") {
  const Folder folder;
  const auto file =
      folder.write("own.toml", source("shop") + machine("bench", "mill", "range = \"200 to 1000 rev/min\"\n"));
  CHECK(answer_of("mill 1/8 303 --machine bench")["set"].contains("turn_time"));
  const Json own = answer_of("mill 1/8 303 --machine bench --tables " + quoted(file));
  CHECK(value(own["set"]["spindle_speed"]) == 1000);
  CHECK_FALSE(own["set"].contains("turn_time"));
  CHECK_FALSE(names_source(own, "demo"));
}

TEST_CASE("settings: the first machine of the list that suits the ask, and none where none does") {
  const Folder folder;
  (void)folder.write("quillside/tables/own.toml", source("shop") +
                                                      machine("attic", "drill-press", "steps = [\"400 rev/min\"]\n") +
                                                      machine("knee", "mill", "range = \"60 to 900 rev/min\"\n"));
  (void)folder.write("quillside/settings.toml", "machine = [\"shaft\", \"attic\", \"knee\"]\n");
  const auto around = with("XDG_CONFIG_HOME", folder.path());
  const auto machine_of = [&](const std::string& line) { return answer_of(line, around)["inputs"]["machine"]; };
  CHECK(machine_of("drill 1/8 303")["value"] == "attic");
  CHECK(machine_of("drill 1/8 303")["given"] == false);
  CHECK(machine_of("drill 1/8 303")["text"].is_null());
  CHECK(machine_of("mill 1/8 303")["value"] == "knee");
  CHECK(machine_of("burr 1/8 303")["value"] == "shaft");
  CHECK(machine_of("drill 1/8 303 --machine pillar")["value"] == "pillar");
  CHECK(machine_of("drill 1/8 303 --machine pillar")["given"] == true);
  (void)folder.write("quillside/settings.toml", "machine = \"attic\"\n");
  CHECK(machine_of("drill 1/8 303")["value"] == "attic");
  const Json milled = answer_of("mill 1/8 303", around);
  CHECK_FALSE(milled["inputs"].contains("machine"));
  CHECK(test::has_caution(milled, "no-machine"));
}

TEST_CASE("settings: units are what a bare number means and how text is printed; a flag goes over them") {
  const Folder folder;
  (void)folder.write("quillside/settings.toml", "units = \"metric\"\n");
  const auto around = with("XDG_CONFIG_HOME", folder.path());
  CHECK(value(answer_of("drill 3 303", around)["inputs"]["size"]) == 3);
  CHECK_THAT(value(answer_of("drill 0.125 303 --units inch", around)["inputs"]["size"]), WithinRel(3.175, 1e-12));
  CHECK_THAT(value(answer_of("drill 1/8 303", around)["inputs"]["size"]), WithinRel(3.175, 1e-12));
  const auto inch = test::quillside("drill 3mm 303");
  const auto metric = test::quillside("drill 3mm 303", around);
  CHECK(metric.out == test::quillside("drill 3mm 303 --units metric").out);
  CHECK(metric.out != inch.out);
}

TEST_CASE("settings that name a machine no table has: exit 3, and the settings file is named") {
  const Folder folder;
  const auto file = folder.write("quillside/settings.toml", "machine = \"atic\"\n");
  const auto around = with("XDG_CONFIG_HOME", folder.path());
  const Json error = test::error_of("drill 1/8 303", 3, around);
  CHECK(error["kind"] == "data");
  REQUIRE(error["place"].is_object());
  CHECK(error["place"]["file"] == file);
  CHECK(error["message"].get<std::string>().find(file) != std::string::npos);
  CHECK(error["message"].get<std::string>().find("'atic'") != std::string::npos);
  CHECK(error["place"]["line"] == 1);
  CHECK(error["place"]["column"] == 11);
  // Of several the one that is wrong, where it stands.
  (void)folder.write("quillside/settings.toml", "units = \"inch\"\nmachine = [\"pillar\", \"atic\"]\n");
  CHECK(test::error_of("mill 1/8 303", 3, around)["place"] == Json{{"file", file}, {"line", 2}, {"column", 22}});
  // Naming one goes round it, and so does an ask that uses none.
  CHECK(answer_of("drill 1/8 303 --machine pillar", around)["verdict"] == "go");
  CHECK(answer_of("size no30", around)["found"].contains("size"));
}

TEST_CASE("tables path: every place, the strongest first, and whether it is there") {
  const Folder folder;
  const auto a = folder.write("quillside/tables/a.toml", source("a"));
  const auto b = folder.write("quillside/tables/b.toml", source("b"));
  const auto named = folder.write("named.toml", source("c"));
  const std::string nowhere = folder.path() + "/nowhere.toml";
  const Surroundings around{{}, {{"XDG_CONFIG_HOME", folder.path()}, {"QUILLSIDE_TABLES", named + ":" + nowhere}}};
  const Json found =
      answer_of("tables path --tables " + quoted(nowhere) + " --tables " + quoted(named), around)["found"];
  const auto place = [](const std::string& path, bool there) { return Json{{"path", path}, {"found", there}}; };
  CHECK(found["searched"] ==
        Json::array({place(named, true), place(nowhere, false), place(nowhere, false), place(named, true),
                     place(b, true), place(a, true), place("built-in", true)}));
  const Folder empty;
  const Json none = answer_of("tables path", with("XDG_CONFIG_HOME", empty.path()))["found"]["searched"];
  CHECK(none == Json::array({place(empty.path() + "/quillside/tables/*.toml", false), place("built-in", true)}));
}

TEST_CASE("tables path answers while a table file is wrong") {
  const Folder folder;
  (void)folder.write("quillside/tables/a.toml", "no table at all");
  (void)folder.write("quillside/settings.toml", "no settings at all");
  const auto around = with("XDG_CONFIG_HOME", folder.path());
  CHECK(answer_of("tables path", around)["found"]["searched"].size() == 2);
  CHECK(test::error_of("tables list", 3, around)["kind"] == "data");
  CHECK(answer_of("tables new machine", around)["found"].contains("file"));
}

TEST_CASE("tables list: every row that has a name, with the file it stands in") {
  const Folder folder;
  const auto file =
      folder.write("own.toml", source("shop") + machine("bench", "mill", "range = \"200 to 1000 rev/min\"\n"));
  const Json found = answer_of("tables list --tables " + quoted(file))["found"];
  for (const auto* kind : {"source", "material", "cutter", "machine", "size", "limit", "reading", "caution"})
    CHECK(found.contains(kind));
  std::vector<Json> bench;
  for (const auto& row : found["machine"])
    if (row["key"] == "bench") bench.push_back(row);
  REQUIRE(bench.size() == 1);
  CHECK(bench[0] == Json{{"key", "bench"}, {"name", "my bench"}, {"file", file}});
  for (const auto& [kind, rows] : found.items())
    for (const auto& row : rows) {
      INFO(kind << " " << row.dump());
      CHECK_FALSE(row["key"].get<std::string>().empty());
      const std::string from = row["file"];
      CHECK((from == file || from.starts_with("built-in:")));
    }
}

TEST_CASE("tables show: the row as typed, its file, line and column, and what it goes over") {
  const Folder folder;
  const auto file =
      folder.write("own.toml", "\n" + source("shop") + "\n" +
                                   machine("bench", "mill",
                                           "range = \"200 to 1000 rev/min\"\ndial = \"2.5 mm\"\n"
                                           "backlash_free = true\n") +
                                   machine("attic", "drill-press", "steps = [\"400 rev/min\", \"800 rev/min\"]\n"));
  const std::string tables = " --tables " + quoted(file);
  const Json own = answer_of("tables show bench" + tables)["found"];
  CHECK(own["row"] == Json{{"key", "bench"},
                           {"name", "my bench"},
                           {"kind", "mill"},
                           {"source", "shop"},
                           {"range", "200 to 1000 rev/min"},
                           {"dial", "2.5 mm"},
                           {"backlash_free", true}});
  CHECK(own["file"] == file);
  CHECK(own["line"] == 7);
  CHECK(own["column"] == 1);
  REQUIRE(own["overrides"].is_string());
  CHECK(own["overrides"].get<std::string>().starts_with("built-in:machines.toml:"));
  const Json other = answer_of("tables show attic" + tables)["found"];
  CHECK(other["line"] == 15);
  CHECK(other["overrides"].is_null());
  CHECK(other["row"]["steps"] == Json::array({"400 rev/min", "800 rev/min"}));
  // The built-in row is shown from its own file, which lies in the tree.
  const Json built_in = answer_of("tables show bench")["found"];
  CHECK(built_in["file"] == "built-in:machines.toml");
  CHECK(built_in["overrides"].is_null());
  std::ifstream in(std::string(QUILLSIDE_SOURCE_DIR) + "/tables/machines.toml");
  std::string line;
  for (int i = 0; i < built_in["line"].get<int>(); ++i) std::getline(in, line);
  CHECK(line == "[[machine]]");
  std::getline(in, line);
  CHECK(line == "key = \"bench\"");
}

TEST_CASE("tables show of a material lists the rows that answer for it, the user's among them") {
  const Folder folder;
  const auto file = folder.write("own.toml", same_five("mine", "50 ft/min"));
  const Json answer = answer_of("tables show 303 --tables " + quoted(file));
  int own = 0;
  for (const auto& row : answer["found"]["rows"]) {
    if (row["file"] != file) continue;
    ++own;
    CHECK(row["kind"] == "drilling_speed");
    CHECK(row["row"]["speed"] == "50 ft/min");
    CHECK(row["line"] == 5);
    REQUIRE(row["overrides"].is_string());
    CHECK(row["overrides"].get<std::string>().starts_with("built-in:drilling.toml:"));
  }
  CHECK(own == 1);
  CHECK(names_source(answer, "mine"));
}

TEST_CASE("tables new: a row of every kind loads as it is") {
  const Folder folder;
  const std::vector<std::string> kinds{
      "source",       "material",     "cutter",    "drilling_speed",  "milling_speed", "reaming_speed",
      "burr_speed",   "speed_ratio",  "chip_load", "deep_hole",       "drilling_feed", "peck",
      "drill_point",  "lip_relief",   "fluid",     "machine",         "size",          "hardness",
      "limit",        "reading",      "caution",   "tolerance_class", "fit_class",     "expansion",
      "oxide_colour", "heat_ceiling", "fit"};
  for (const auto& kind : kinds) {
    const auto made = test::quillside("tables new " + kind);
    INFO(made.out);
    CHECK(made.exit == 0);
    CHECK(made.out.find(kind == "source" ? "[source." : "[[" + kind + "]]") != std::string::npos);
    CHECK(made.out.find("[source.own-bench]") != std::string::npos);
    CHECK(answer_of("tables new " + kind)["found"]["file"] == made.out);
    const auto checked = test::run_words({"tables", "check", folder.write("new.toml", made.out), "--format", "json"});
    INFO(checked.out << checked.err);
    CHECK(checked.exit == 0);
    CHECK(Json::parse(checked.out)["found"]["files"][0]["faults"] == Json::array());
  }
  CHECK(test::error_of("tables new size_serie", 2)["kind"] == "word");
}

TEST_CASE("what a row of every kind calls optional is right too, once it is put in") {
  // Lines that begin with '# ' and a key are the ways not taken; for a machine they exclude one another.
  const Folder folder;
  for (const auto* kind :
       {"material", "cutter", "drilling_feed", "fluid", "hardness", "peck", "lip_relief", "source"}) {
    std::string text = test::quillside(std::string("tables new ") + kind).out;
    for (std::size_t at = 0; (at = text.find("\n# ", at)) != std::string::npos; ++at) text.erase(at + 1, 2);
    if (const auto share = text.find("\nshare"); share != std::string::npos) text.insert(share + 1, "# ");
    const auto checked = test::run_words({"tables", "check", folder.write("new.toml", text), "--format", "json"});
    INFO(text << checked.out << checked.err);
    CHECK(checked.exit == 0);
  }
}

TEST_CASE(
    "a machine whose stiffness was measured gives way with the cutter, and the answer no longer says cutter alone") {
  const Folder folder;
  const auto table = [&](const std::string& stiffness) {
    return folder.write(
        "mill" + stiffness.substr(0, 3) + ".toml",
        source("shop") +
            machine("light", "mill", "range = \"100 to 3000 rev/min\"\nstiffness = \"" + stiffness + "\"\n"));
  };
  const auto bend = [&](const std::string& more) { return answer_of("mill 1/4 416 --flutes 4 --depth 0.02" + more); };
  const Json alone = bend("");
  const Json light = bend(" --machine light --tables " + table("2000 N/mm"));
  CHECK(test::has_caution(alone, "cutter-alone"));
  CHECK_FALSE(test::has_caution(light, "cutter-alone"));
  // The whole cutter is pushed aside by the force over the stiffness, on top of its own bend: F / 2000 mm.
  const double given = value(light["found"]["deflection"]) - value(alone["found"]["deflection"]);
  CHECK_THAT(given, WithinRel(value(alone["found"]["bending_force"]) / 2000, 0.01));
}
