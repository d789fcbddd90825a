// The pictures in docs/pictures are what the tool draws now. With QUILLSIDE_ACCEPT=1 in the environment they are drawn
// anew instead: the one command to accept a change.

#include <cstdlib>

#include "../folder.hpp"
#include "../in_process.hpp"
#include "tools.hpp"

using namespace quillside;
using test::Folder;
using test::Pixels;

namespace {

struct Picture {
  const char* name;
  const char* ask;   // without its file
  const char* flag;  // that names it
  int dots_per_inch; // small: they are to be looked at in a page of text
  int sheet = 1;
};
const std::vector<Picture> pictures{
    {"card-drill", "drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar", "--card", 80},
    {"card-grind", "grind 1/4 --web 0.044", "--card", 80},
    {"chart", "chart --machine pillar --materials 304,C360,C752 --sizes 1/16,no30,9/64,1/4,3/8", "--out", 60},
    {"card-grind-fence", "grind 1/4 --web 0.044", "--card", 80, 3},
    {"card-point", "point 1/4 1018 --way cone --half-angles 58,63 --lip-height 0.006 --web 0.044", "--card", 80},
    {"card-mill", "mill 1/8 416 --machine bench", "--card", 80},
    {"card-slot", "slot C752 --part 0.118 --part-width 0.630 --thick 3/16 --machine bench", "--card", 90, 4},
    {"gauge", "gauge --angles 118,135 --table-tilt 12.3", "--out", 60},
};

/// The darkest difference between squares of 4 dots of the two: 0 the same, 1 black against white.
double apart(const Pixels& a, const Pixels& b) {
  if (a.width() != b.width() || a.height() != b.height()) return 1;
  double most = 0;
  for (int y = 0; y + 4 <= a.height(); y += 2)
    for (int x = 0; x + 4 <= a.width(); x += 2) {
      double sum = 0;
      for (int dy = 0; dy < 4; ++dy)
        for (int dx = 0; dx < 4; ++dx) sum += (a.dark(x + dx, y + dy) - b.dark(x + dx, y + dy)) / 16;
      most = std::max(most, std::abs(sum));
    }
  return most;
}

} // namespace

TEST_CASE("docs/pictures show what the tool draws") {
  const auto& picture = GENERATE(from_range(pictures));
  INFO(picture.name);
  const Folder folder;
  // In the folder, so that the foot names the file and no path.
  const auto file = folder.file("sheet.pdf");
  const auto ran = test::quillside(std::string(picture.ask) + " " + picture.flag + " '" + file + "'",
                                   {{}, {{"SOURCE_DATE_EPOCH", "1764460800"}}});
  REQUIRE(ran.exit == 0);
  test::run_shell("pdftoppm -q -gray -png -singlefile -f " + std::to_string(picture.sheet) + " -r " +
                  std::to_string(picture.dots_per_inch) + " '" + file + "' '" + folder.file("now") + "'");
  const std::string kept = std::string(QUILLSIDE_SOURCE_DIR) + "/docs/pictures/" + picture.name + ".png";
  if (const char* accept = std::getenv("QUILLSIDE_ACCEPT"); accept != nullptr && std::string_view(accept) == "1")
    test::run_shell("cp '" + folder.file("now.png") + "' '" + kept + "'");
  // Another version of the libraries may set a letter by a hair elsewhere; another digit of the smallest letters is
  // twice as much as is let through.
  CHECK(apart(Pixels(folder.file("now.png")), Pixels(kept)) < 0.03);
}

TEST_CASE("the comparison of pictures tells one digit from another") {
  const Folder folder;
  const auto drawn = [&](const std::string& ask) {
    REQUIRE(test::quillside(ask + " --card '" + folder.file("a.pdf") + "'", {{}, {{"SOURCE_DATE_EPOCH", "1764460800"}}})
                .exit == 0);
    test::run_shell("pdftoppm -q -gray -png -singlefile -r 80 '" + folder.file("a.pdf") + "' '" + folder.file("a") +
                    "'");
    return Pixels(folder.file("a.png"));
  };
  CHECK(apart(drawn("size 3.2mm"), drawn("size 3.2mm")) == 0);
  CHECK(apart(drawn("size 3.2mm"), drawn("size 3.3mm")) > 0.03);
  // One digit of the smallest letters: those of the foot.
  CHECK(apart(drawn("size 3.2mm --over 0.0001"), drawn("size 3.2mm --over 0.0002")) > 0.03);
}
