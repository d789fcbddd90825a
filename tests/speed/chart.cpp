// What the cells of a wall chart cost to draw: 30 materials by 40 sizes against a single one.
//
//   quillside_speed_chart TOOL DRAWING
//
// What is measured is the drawing program from start to end, a document on its standard input and the picture thrown
// away; the two documents take turns, and the ratio is that of the fastest rounds: what a busy machine adds is not the
// drawing's. The whole ask (cells, record, drawing) is measured as well and told, without a bound.

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

#include <unistd.h>

namespace {

/// All 1200 cells over a single one: 1.4 when it was written.
constexpr double most = 1.5;
constexpr int rounds = 40;

double seconds_of(const std::string& line) {
  const auto start = std::chrono::steady_clock::now();
  if (std::system(line.c_str()) != 0) {
    std::fprintf(stderr, "this failed: %s\n", line.c_str());
    std::exit(2);
  }
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Times {
  double many;
  double one;
};

Times measured(const std::string& many, const std::string& one) {
  Times least{seconds_of(many), seconds_of(one)};
  for (int i = 1; i < rounds; ++i) {
    least.many = std::min(least.many, seconds_of(many));
    least.one = std::min(least.one, seconds_of(one));
  }
  return least;
}

void tell(const char* what, Times times) {
  std::printf("%-28s 30 x 40: %6.1f ms   1 x 1: %6.1f ms   ratio %.2f\n", what, 1000 * times.many, 1000 * times.one,
              times.many / times.one);
}

} // namespace

int main(int count, char** words) {
  if (count != 3) return 2;
  const std::string tool = words[1];
  const std::string drawing = words[2];
  std::array<char, 32> folder{"/tmp/quillside-speed-XXXXXX"};
  if (mkdtemp(folder.data()) == nullptr) return 2;
  const std::string place = folder.data();

  std::string sizes;
  for (int i = 0; i < 40; ++i)
    sizes += (i == 0 ? "" : ",") + std::to_string(1 + i / 4) + "." + std::to_string(1 + i % 4 * 2) + "mm";
  const std::string flags = " chart --machine pillar --paper a3 --read-from 0.4m --materials ";
  const std::string many = tool + flags +
                           "303,304,316,410,416,420,440C,17-4PH,C260,C353,C360,C385,C752,C757,C770,C792,1018,12L14,"
                           "1045,1075,1084,1095,O1,A2,"
                           "D2,W1,6061,2024,C110,C510 --sizes " +
                           sizes;
  const std::string one = tool + flags + "303 --sizes 3mm";

  // What the tool would hand to the drawing program, taken down by a program in its place.
  const std::string spy = place + "/spy";
  std::ofstream(spy) << "#!/bin/sh\ncat > \"$SPY_FILE\"\n";
  if (std::system(("chmod +x " + spy).c_str()) != 0) return 2;
  const auto take_down = [&](const std::string& line, const std::string& name) {
    seconds_of("SPY_FILE=" + place + "/" + name + " QUILLSIDE_DRAW=" + spy + " " + line +
               " --out - --as pdf >/dev/null");
  };
  take_down(many, "many");
  take_down(one, "one");

  const auto draw = [&](const char* name) { return drawing + " <" + place + "/" + name + " >/dev/null"; };
  const Times drawn = measured(draw("many"), draw("one"));
  tell("drawn", drawn);
  const std::string out = " --out - --as pdf >/dev/null";
  const std::string by = "QUILLSIDE_DRAW=" + drawing + " ";
  tell("asked and drawn", measured(by + many + out, by + one + out));
  tell("asked only, as a record", measured(many + " --format json >/dev/null", one + " --format json >/dev/null"));
  if (std::system(("rm -r " + place).c_str()) != 0) return 2;
  if (drawn.many <= most * drawn.one) return 0;
  std::printf("drawn: more than %.1f times\n", most);
  return 1;
}
