#pragma once
// Strokes of one pen, and letters of one font and size, that follow one another go to the drawing library in one call:
// in a table it is the calls that cost.

#include <vector>

#include <quillside/page/canvas.hpp>

#include "surface.hpp"
#include "typesetter.hpp"

namespace quillside::page {

/// Letters that stand in the drawing level, as they are.
struct Letters {
  const SetLine* line;
  double right; // of their start and their foot, in points
  double down;
  double times; // as large as they are set
  double grey;
};

/// A line through spots in turn.
struct Stroke {
  std::vector<Spot> spots;
  Pen pen;
  bool closed = false;
};

void set_grey(cairo_t* cairo, double grey);
void set_pen(cairo_t* cairo, const Pen& pen);
/// Letters with their foot at the origin, as they are set.
void show(cairo_t* cairo, const SetLine& line);
/// Adds a path of its own to what is traced already.
void trace(cairo_t* cairo, const std::vector<Spot>& spots);

/// Draws in the order in which it is handed, but for letters of several fonts between two strokes: those lie nowhere
/// over one another.
class Together {
public:
  explicit Together(cairo_t* cairo) : cairo_(cairo) {}

  void add(const Letters& letters);
  void add(const Stroke& stroke);
  /// Draws what is yet to be drawn: before anything else is, and at the end.
  void flush();

private:
  struct FontAndSize {
    cairo_scaled_font_t* font;
    double times;
    bool operator==(const FontAndSize&) const = default;
  };
  struct Group {
    FontAndSize font;
    std::vector<cairo_glyph_t> glyphs;
  };

  std::vector<cairo_glyph_t>& glyphs_of(FontAndSize font);
  void flush_letters();
  void flush_strokes();

  cairo_t* cairo_;
  double grey_ = 0; // of the letters
  std::vector<Group> groups_;
  Pen pen_; // of the strokes
  std::vector<const Stroke*> strokes_;
};

} // namespace quillside::page
