#pragma once
// Lines of letters as the font sets them, before they are drawn larger or smaller. Every text is set in letters of one
// size: finding a font of another size costs more than setting a line of it.

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include <pango/pangocairo.h>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// The drawing library counts in points, 72 to the inch.
double points(Length length);
Length from_pango(int units);

struct GObjectUnref {
  void operator()(gpointer object) const { g_object_unref(object); }
};
struct DestroyFont {
  void operator()(cairo_scaled_font_t* font) const { cairo_scaled_font_destroy(font); }
};
using ScaledFont = std::unique_ptr<cairo_scaled_font_t, DestroyFont>;
using Context = std::unique_ptr<PangoContext, GObjectUnref>;
using Layout = std::unique_ptr<PangoLayout, GObjectUnref>;

/// A line of letters as it is set.
struct SetLine {
  PangoRectangle ink{};
  PangoRectangle logical{};
  ScaledFont font;                   // of all its letters
  std::vector<cairo_glyph_t> glyphs; // from its foot
  Layout layout;                     // where a glyph is more or less than one letter: then there are no glyphs
};

class Typesetter {
public:
  Typesetter();

  /// Set once, however often it is measured and drawn.
  const SetLine& set_line(std::string_view text, Face face, Weight weight);
  /// Height of a capital in the size that lines are set in. Throws a Fault of the kind `file` when the font is not
  /// installed.
  Length capital_of(Face face, Weight weight);
  /// The text in lines of at most that width, in the size that lines are set in.
  std::vector<std::string> broken(std::string_view text, Face face, Weight weight, Length width);

private:
  struct Hash : std::hash<std::string_view> {
    using is_transparent = void;
  };
  /// What is known of a face in a weight.
  struct Font {
    Layout in_turn; // sets one line after another
    std::optional<Length> capital;
    std::unordered_map<std::string, SetLine, Hash, std::equal_to<>> lines; // by their text
  };

  Font& font_of(Face face, Weight weight);
  const SetLine& set_line(std::string_view text, Font& font);
  void set(std::string_view text, Font& font, SetLine& line);
  /// Letter by letter, each set once.
  void join(std::string_view text, Font& font, SetLine& line);

  Context context_;
  std::array<Font, 4> fonts_; // two faces in two weights
};

} // namespace quillside::page
