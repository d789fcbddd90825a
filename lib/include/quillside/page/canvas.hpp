#pragma once
// Sheets of paper to draw on, in lengths on the paper, black on white. What is drawn is kept, so that a test can ask
// where every text and line lies. Letters are measured by the height of a capital, as a reader at a distance is.
// One font, DejaVu Sans; a letter that it has not is shown as a box. Leaves out: colour, pictures, curved text.

#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/data/paper.hpp>

namespace quillside::page {

/// A place on a sheet, from its upper left corner.
struct Spot {
  Length right{};
  Length down{};
};

struct Box {
  Length left{};
  Length top{};
  Length width{};
  Length height{};

  [[nodiscard]] Length right() const { return left + width; }
  [[nodiscard]] Length bottom() const { return top + height; }
};

enum class Weight { plain, bold };
enum class Face { even, columns }; // columns: every letter of one width

struct Lettering {
  Length height = mm(3); // of a capital
  Weight weight = Weight::plain;
  Face face = Face::even;
  double grey = 0; // 0 black to 1 white
};

enum class Across { left, centre, right };
enum class Along { top, middle, foot }; // of the capitals

/// Which place of a text lies on the spot that it is drawn at, and how it is turned about it.
struct Hold {
  Across across = Across::left;
  Along along = Along::foot;
  Angle turned{}; // against the clock, as seen
};

struct Pen {
  Length width = mm(0.25);
  double grey = 0; // 0 black to 1 white
  bool dashed = false;

  bool operator==(const Pen&) const = default;
};

/// A text as it stands: the box of its ink, a turned one's the upright box round it.
struct TextDrawn {
  int sheet = 0;
  std::string text;
  Box ink;
  Length height{};             // of its capitals
  std::array<Spot, 4> corners; // of its ink as it is turned, in order round it
};
/// A straight line, or a piece of a curve.
struct LineDrawn {
  int sheet = 0;
  Spot from;
  Spot to;
  Length width{};
};

enum class PictureKind { pdf, svg, png };

/// What a picture says of itself to a program that opens it.
struct PictureFacts {
  std::string title;
  std::string date; // 2026-11-30; empty: none is written
};

class Canvas {
public:
  /// One empty sheet.
  explicit Canvas(Sheet sheet);
  Canvas(Canvas&& other) noexcept;
  Canvas& operator=(Canvas&& other) noexcept;
  ~Canvas();

  [[nodiscard]] Sheet sheet() const;
  [[nodiscard]] int sheets() const;
  /// Adds a sheet behind the last one and turns to it.
  void add_sheet();
  /// \param number 0 to sheets() - 1
  void turn_to(int number);

  // Texts are single lines. Each throws a Fault of the kind `file` when the font is not installed.

  [[nodiscard]] Length width_of(std::string_view text, const Lettering& lettering) const;
  /// The text in lines of at most that width, broken at blanks, and inside a word only where it alone is too long.
  [[nodiscard]] std::vector<std::string> broken(std::string_view text, const Lettering& lettering, Length width) const;
  /// Gives the box of its ink.
  Box letters(Spot at, std::string_view text, const Lettering& lettering, const Hold& hold = {});

  void line(Spot from, Spot to, const Pen& pen = {});
  /// Open: through the spots in turn.
  void path(const std::vector<Spot>& spots, const Pen& pen = {});
  /// Closed.
  void outline(const std::vector<Spot>& spots, const Pen& pen = {});
  void frame(const Box& box, const Pen& pen = {});
  void fill(const std::vector<Spot>& spots, double grey);
  void fill(const Box& box, double grey);
  /// \param from, to against the clock, from the right; the arc runs from the one to the other, \p to is the larger
  void arc(Spot centre, Length radius, Angle from, Angle to, const Pen& pen = {});
  void circle(Spot centre, Length radius, const Pen& pen = {});

  [[nodiscard]] const std::vector<TextDrawn>& texts() const;
  [[nodiscard]] const std::vector<LineDrawn>& lines() const;

  /// The bytes of a file. PDF has a page a sheet; SVG and PNG have the sheets below one another. PNG has 300 dots an
  /// inch, and says so. Throws std::runtime_error when the drawing library fails.
  [[nodiscard]] std::string picture(PictureKind kind, const PictureFacts& facts) const;

private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

} // namespace quillside::page
