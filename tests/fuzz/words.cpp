// Words and tables at random: whatever is typed, the program answers or says what is wrong, in valid UTF-8, and is
// never at fault itself. The seeds are fixed, so that what fails once fails again.

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include <stdlib.h>

#include <quillside/data/load.hpp>
#include <quillside/words/utf8.hpp>

#include "folder.hpp"
#include "json_of.hpp"

using namespace quillside;
using quillside::test::Folder;
using test::Json;

namespace {

const std::vector<std::string> good_lines{
    "drill no30 303",
    "drill '#30' 303 --machine pillar",
    "drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar",
    "drill 9/64 C752 --thick 3/16+-0.002 --leave 1mm --leave-at corner",
    "drill 4.8mm 304@cold-drawn --depth 20mm --dry",
    "drill 1-1/8 1018 --through --thick 1in --point 118",
    "drill F 416@28HRC --cutter cobalt --units metric",
    "drill 55thou \"mild steel\" --cutter carbide --why",
    "drill 0.5mm layered-steel@200HB --machine pillar12 --large",
    "mill 1/8 416 --machine bench",
    "mill 6mm C360 --width 1mm --flutes 3 --cutter carbide",
    "mill 0.25 1095@annealed --dial 0.1 --machine cordless",
    "burr 3mm 416 --marked 25000",
    "burr 1/4 C752 --machine shaft --cutter hss",
    "size no30",
    "size 3.2mm --over 0.002in --under 1mm",
    "tables show 416",
    "tables list",
    "tables path",
    "tables new machine",
    "drill --help",
    "--version",
};

const std::vector<std::string> odd_words{"",
                                         "0",
                                         "-1",
                                         "1e308",
                                         "1e-308",
                                         "nan",
                                         "inf",
                                         "1/0",
                                         "0/0",
                                         "99999999999999999999",
                                         "+-",
                                         "1+-2",
                                         "+-1",
                                         "no0",
                                         "no97",
                                         "no98",
                                         "#",
                                         "Z",
                                         "@",
                                         "303@",
                                         "@28HRC",
                                         "--",
                                         "-",
                                         "--=",
                                         "--units=metric",
                                         "--format=json",
                                         "--machine=",
                                         "0.0000001mm",
                                         "1mm1in",
                                         "\xc2\xb5m",
                                         "\xe2\x88\x9e",
                                         "\xff",
                                         "\xc0\x80",
                                         "\xed\xa0\x80",
                                         "1,5",
                                         "'",
                                         "\"",
                                         "\\",
                                         "\x01",
                                         "\x7f",
                                         "1/2/3",
                                         "1-1-1",
                                         "3.2.1mm",
                                         "0x10",
                                         "1_000",
                                         "179.999",
                                         "360deg",
                                         "70HRC",
                                         "0HB",
                                         "65HRC+-3"};

const std::vector<std::string> odd_lines{"",
                                         "[[machine]]",
                                         "[drilling_speed]",
                                         "material = []",
                                         "material = [[\"303\"]]",
                                         "material = {a = 1}",
                                         "speed = \"0 ft/min\"",
                                         "speed = \"-1 ft/min\"",
                                         "speed = \"1e9 ft/min\"",
                                         "speed = \"99999999999999999999 ft/min\"",
                                         "speed = \"0.000000000000001 ft/min\"",
                                         "speed = nan",
                                         "hb = nan",
                                         "hb = -inf",
                                         "hrc = 1e300",
                                         "ratio = \"0\"",
                                         "diameter = \"0 mm\"",
                                         "diameter = \"5 to 1 mm\"",
                                         "diameters = [\"1/8 in\", \"1/8 in\", \"1/8 in\"]",
                                         "diameters = []",
                                         "loads = [\"0 in/tooth\", \"0 in/tooth\", \"0 in/tooth\"]",
                                         "steps = []",
                                         "steps = [\"1 rev/min\"]",
                                         "spindle_pulleys = [\"0 in\", \"0 in\"]",
                                         "range = \"1 to 1000000 rev/min\"",
                                         "first = \"0\"",
                                         "next = \"0.000001\"",
                                         "deep_next = \"0\"",
                                         "speed_cut = \"100 %\"",
                                         "feed_cut = \"99.999999 %\"",
                                         "point = \"180 deg\"",
                                         "step = \"0.0000001 mm\"",
                                         "error = \"lots\"",
                                         "value = \"1000000\"",
                                         "text = \"{}}{{material\"",
                                         "when = []",
                                         "key = \"\"",
                                         "family = \"latch-stock\"",
                                         "layers = [\"303\", \"304\"]",
                                         "name = \"\\u0000\\u001b\"",
                                         "title = '''\nover\nlines'''",
                                         "usual = 1979-05-27",
                                         "\xef\xbb\xbf",
                                         "x = [[[[[[[[[[[[]]]]]]]]]]]]"};

/// Changes a text at random, with what lies in the corpus and with bytes of any kind.
class Mutator {
public:
  explicit Mutator(unsigned seed) : random_(seed) {}

  std::size_t below(std::size_t end) { return random_() % end; }
  template <class List> const auto& one_of(const List& list) { return list[below(list.size())]; }

  std::string words(std::string line) {
    const std::size_t changes = 1 + below(2);
    for (std::size_t i = 0; i < changes; ++i) line = below(3) == 0 ? bytes(line) : one_word(line);
    // A line has no end in it, and no ask here may read or write anything but the built-in tables.
    std::replace_if(
        line.begin(), line.end(), [](char c) { return c == '\n' || c == '\0'; }, ' ');
    return line;
  }

  std::string bytes(std::string text) {
    const std::size_t at = below(text.size() + 1);
    switch (below(5)) {
    case 0: text.insert(at, 1, static_cast<char>(below(256))); break;
    case 1: text.erase(at, 1 + below(4)); break;
    case 2: text.insert(at, text.substr(below(text.size() + 1), 1 + below(12))); break;
    case 3: text.insert(at, one_of(odd_words)); break;
    default:
      if (at < text.size()) text[at] = static_cast<char>(text[at] ^ static_cast<char>(1U << below(8)));
    }
    return text;
  }

  /// Swaps, doubles, drops or replaces a whole piece between separators.
  std::string pieces(const std::string& text, char separator, const std::vector<std::string>& others) {
    std::vector<std::string> parts = parted(text, separator);
    const std::size_t at = below(parts.size());
    switch (below(5)) {
    case 0: std::swap(parts[at], parts[below(parts.size())]); break;
    case 1: parts.insert(parts.begin() + static_cast<long>(at), parts[below(parts.size())]); break;
    case 2: parts.erase(parts.begin() + static_cast<long>(at)); break;
    default: parts[at] = one_of(others);
    }
    return joined(parts, separator);
  }

  /// Puts an odd line where one of the same key stands; below all where there is none.
  std::string odd_line(const std::string& text) {
    const std::string& odd = one_of(odd_lines);
    const std::string key = odd.substr(0, odd.find('='));
    std::vector<std::string> parts = parted(text, '\n');
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < parts.size(); ++i)
      if (parts[i].starts_with(key + "=")) places.push_back(i);
    if (places.empty())
      parts.push_back(odd);
    else
      parts[one_of(places)] = odd;
    return joined(parts, '\n');
  }

  static std::string joined(const std::vector<std::string>& parts, char separator) {
    std::string all;
    for (std::size_t i = 0; i < parts.size(); ++i) all += (i == 0 ? "" : std::string(1, separator)) + parts[i];
    return all;
  }

  static std::vector<std::string> parted(const std::string& text, char separator) {
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, separator);) parts.push_back(part);
    if (parts.empty()) parts.emplace_back();
    return parts;
  }

private:
  /// One word more, less or other; half the time it is what another line of the same ask has in its place.
  std::string one_word(const std::string& line) {
    const auto& other = one_of(good_lines);
    std::vector<std::string> parts = parted(line, ' ');
    const std::vector<std::string> others = parted(other, ' ');
    if (below(2) == 0 && std::min(parts.size(), others.size()) > 1 && parts.front() == others.front()) {
      const std::size_t at = 1 + below(std::min(parts.size(), others.size()) - 1);
      parts[at] = others[at];
      return joined(parts, ' ');
    }
    return pieces(line, ' ', below(3) == 0 ? odd_words : others);
  }

  std::mt19937 random_;
};

/// What is wrong with a run; empty when nothing is.
std::string wrong_with(const test::Ran& ran, bool json) {
  if (ran.exit < 0 || ran.exit > 4) return "exit " + std::to_string(ran.exit);
  for (const auto* text : {&ran.out, &ran.err}) {
    std::string without_ends = *text;
    std::replace(without_ends.begin(), without_ends.end(), '\n', ' ');
    if (!is_plain_utf8(without_ends)) return "output that is no plain UTF-8";
  }
  if (ran.exit >= 2 && ran.err.empty()) return "an error that says nothing";
  if (!json) return {};
  std::istringstream in(ran.out);
  for (std::string line; std::getline(in, line);) {
    const Json record = Json::parse(line, nullptr, false);
    if (record.is_discarded()) return "no JSON: " + line;
    if (record.contains("error")) {
      const int exit = record["error"]["exit"];
      if (exit < 2 || exit > 4 || exit > ran.exit) return "a record's exit: " + line;
    } else if (record["verdict"] == "do not" && ran.exit < 1) {
      return "do not, and the exit is 0: " + line;
    }
  }
  return {};
}

std::vector<std::string> words_of(const std::string& line) {
  try {
    return cli::shell_words(line);
  } catch (const Fault&) {
    return Mutator::parted(line, ' '); // a quote without its end: the shell would not have started the program
  }
}

bool reads_files(const std::vector<std::string>& words) {
  return std::any_of(words.begin(), words.end(), [](const std::string& word) {
    return word == "check" || word == "batch" || word.starts_with("--tables");
  });
}

const std::string own_table = R"([source.own-bench]
author = "me"
title = "own trials"
standing = "own bench"
[[material]]
key = "latch-stock"
name = "latch plate stock"
metal = "nickel-silver"
family = "nickel-silver"
aliases = ["plate stock"]
source = "own-bench"
[[drilling_speed]]
material = ["latch-stock", "303"]
condition = "annealed"
hardness = "135 to 185 HB"
cutter = "hss"
speed = "50 to 60 ft/min"
usual = true
source = "own-bench"
[[milling_speed]]
material = "303"
cutter = "carbide"
speed = "60 m/min"
source = "own-bench"
[[burr_speed]]
material = "303"
cutter = "carbide"
spindle_speed = "20000 rev/min"
diameter = "3 to 6 mm"
hand = true
source = "own-bench"
[[speed_ratio]]
ask = "drill"
cutter = "carbide"
of = "hss"
ratio = "2 to 3"
source = "own-bench"
[[drilling_feed]]
material = "303"
diameter = "0.125 to 0.25 in"
feed = "0.002 to 0.004 in/rev"
source = "own-bench"
[[chip_load]]
material = "303"
cutter = "hss"
diameters = ["1/8 in", "1/4 in", "1/2 in"]
loads = ["0.0005 in/tooth", "0.001 to 0.002 in/tooth", "0.003 in/tooth"]
slot = "0.8"
source = "own-bench"
[[deep_hole]]
depth = "3"
speed_cut = "10 %"
feed_cut = "10 to 20 %"
source = "own-bench"
[[peck]]
first = "2"
next = "1"
deep_from = "6"
deep_next = "0.5"
source = "own-bench"
[[drill_point]]
material = "303"
point = "130 deg"
source = "own-bench"
[[machine]]
key = "pillar"
name = "my pillar drill"
kind = "drill-press"
motor = "1725 rev/min"
motor_pulleys = ["2 in", "3 in"]
spindle_pulleys = ["4 in", "3 in"]
dial = "0.1 in"
top_speed = "3000 rev/min"
source = "own-bench"
[[size_series]]
kind = "metric"
from = "20 mm"
to = "21 mm"
step = "0.5 mm"
source = "own-bench"
[[hardness]]
hb = 226
hrc = 20
source = "own-bench"
[[limit]]
key = "band_below"
value = "0.7"
what = "low end"
source = "own-bench"
[[reading]]
key = "rule"
name = "my caliper"
error = "0.001 in"
reads = ["thick"]
trouble = 1
source = "own-bench"
[[caution]]
key = "mine"
severity = "warn"
text = "Clamp the {material}."
when = ["ask:drill", "metal:brass|nickel-silver"]
source = "own-bench"
)";

} // namespace

TEST_CASE("words at random, one run each: an answer or an error, never a fault of our own") {
  Mutator mutator(20260101);
  int answered = 0;
  int refused = 0;
  std::string first_wrong;
  for (int i = 0; i < 12000; ++i) {
    std::vector<std::string> words = words_of(mutator.words(mutator.one_of(good_lines)));
    if (reads_files(words)) continue;
    const bool json = i % 2 == 0;
    const bool asks = std::none_of(words.begin(), words.end(), [](const std::string& word) {
      return word.starts_with("--help") || word.starts_with("--version") || word.starts_with("--format");
    });
    if (json && asks) words.insert(words.end(), {"--format", "json"});
    const auto ran = test::run_words(words);
    (ran.exit < 2 ? answered : refused) += 1;
    const std::string wrong = wrong_with(ran, json && asks && !words.empty());
    if (wrong.empty() || !first_wrong.empty()) continue;
    first_wrong = wrong + ":";
    for (const auto& word : words) first_wrong += " '" + word + "'";
    first_wrong += "\n" + ran.out + ran.err;
  }
  CHECK(first_wrong == "");
  // Both kinds are many, so that neither path is left out.
  CHECK(answered > 1000);
  CHECK(refused > 1000);
}

TEST_CASE("words at random in a batch: one record a line, whatever stands in it") {
  Mutator mutator(20260202);
  for (int round = 0; round < 6; ++round) {
    std::vector<std::string> lines;
    while (lines.size() < 2000) {
      const std::string line = mutator.words(mutator.one_of(good_lines));
      const auto words = words_of(line);
      const auto first = line.find_first_not_of(" \t\r");
      const bool gives_record = first != std::string::npos && line.compare(first, 2, "//") != 0;
      if (gives_record && !reads_files(words)) lines.push_back(line);
    }
    const auto ran = test::run_words({"batch"}, {lines, {}});
    CHECK(wrong_with(ran, true) == "");
    CHECK(ran.exit == 2);
    CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 2000);
  }
}

TEST_CASE("the table that is mutated is sound as it stands") {
  const auto loaded = load_over(builtin_tables(), {{"own.toml", own_table}});
  for (const auto& fault : loaded.faults) FAIL_CHECK(fault.place.line << ": " << fault.what);
  CHECK(loaded.tables.machines.size() == builtin_tables().machines.size());
}

TEST_CASE("tables at random: faults in their places, or tables that every ask can live with") {
  Mutator mutator(20260303);
  const Tables built_in = builtin_tables();
  const Folder folder;
  const std::vector<std::string> asks{"drill 1/8 303",
                                      "drill 1/8 303@150HB --machine pillar --thick 1in --leave 0.1",
                                      "drill 3/16 latch-stock --cutter carbide --depth 2in",
                                      "mill 1/8 303",
                                      "mill 3/8 303 --cutter carbide --width 0.01",
                                      "burr 4mm 303",
                                      "tables list",
                                      "tables show 303",
                                      "tables show pillar",
                                      "size 20.5mm"};
  int sound = 0;
  int faulty = 0;
  for (int i = 0; i < 600; ++i) {
    std::string text = own_table;
    const std::size_t changes = 1 + mutator.below(2);
    for (std::size_t k = 0; k < changes; ++k) {
      const auto way = mutator.below(6);
      text = way == 0 ? mutator.bytes(text) : way == 1 ? mutator.pieces(text, '\n', odd_lines) : mutator.odd_line(text);
    }
    INFO(text);
    Loaded loaded;
    try {
      loaded = load_over(built_in, {{"own.toml", text}});
    } catch (const Fault&) {
      ++faulty;
      continue;
    } catch (const std::exception& error) {
      FAIL_CHECK("no Fault: " << error.what());
      continue;
    }
    const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
    for (const auto& fault : loaded.faults) {
      if (fault.place.file == "own.toml" && fault.place.line >= 1 && fault.place.line <= lines &&
          fault.place.column >= 1)
        continue;
      FAIL_CHECK("a fault out of place: " << fault.place.file << ":" << fault.place.line << ": " << fault.what);
    }
    (loaded.faults.empty() ? sound : faulty) += 1;
    if (!loaded.faults.empty()) continue;
    const auto file = folder.write("own.toml", text);
    for (const auto& ask : asks) {
      const auto ran = test::quillside(ask + " --format json --tables " + file);
      std::string wrong = wrong_with(ran, true);
      if (wrong.empty() && ran.exit > 1) {
        // The tables were sound and so were the words, but for a name that the mutation took away.
        const Json error = Json::parse(ran.out)["error"];
        if (error["kind"] == "word" && ask.find(error["word"].get<std::string>()) == std::string::npos)
          wrong = "a word is blamed that nobody typed";
      }
      if (!wrong.empty()) FAIL_CHECK(ask << ": " << wrong << "\n" << ran.out);
    }
  }
  CHECK(sound > 50);
  CHECK(faulty > 100);
}

TEST_CASE("the built-in tables at random: load_over throws nothing but a Fault") {
  Mutator mutator(20260404);
  const Tables built_in = builtin_tables();
  REQUIRE_FALSE(built_in.texts.empty());
  std::size_t faults = 0;
  for (int i = 0; i < 300; ++i) {
    std::string text(mutator.one_of(built_in.texts).text);
    for (int k = 0; k < 3; ++k) text = mutator.bytes(text);
    try {
      faults += load_over(built_in, {{"own.toml", text}}).faults.size();
    } catch (const Fault&) {
      ++faults;
    } catch (const std::exception& error) {
      FAIL_CHECK("no Fault: " << error.what());
    }
  }
  CHECK(faults > 100);
}
