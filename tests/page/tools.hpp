#pragma once
// Programs that open what we draw: poppler for PDF, librsvg for SVG; and the pixels they make of it.

#include <cmath>
#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include <cairo.h>

#include "../folder.hpp"

namespace quillside::test {

inline void run_shell(const std::string& line) {
  INFO(line);
  REQUIRE(std::system(line.c_str()) == 0);
}

/// Darkness of each dot, 0 white to 1 black.
class Pixels {
public:
  explicit Pixels(const std::string& png) : surface_(cairo_image_surface_create_from_png(png.c_str())) {
    INFO(png);
    REQUIRE(cairo_surface_status(surface_.get()) == CAIRO_STATUS_SUCCESS);
    cairo_surface_flush(surface_.get());
  }
  [[nodiscard]] int width() const { return cairo_image_surface_get_width(surface_.get()); }
  [[nodiscard]] int height() const { return cairo_image_surface_get_height(surface_.get()); }
  /// White beyond the edge, and where nothing is drawn.
  [[nodiscard]] double dark(int x, int y) const {
    if (x < 0 || y < 0 || x >= width() || y >= height()) return 0;
    const unsigned char* row = cairo_image_surface_get_data(surface_.get()) +
                               static_cast<std::ptrdiff_t>(y) * cairo_image_surface_get_stride(surface_.get());
    const cairo_format_t format = cairo_image_surface_get_format(surface_.get());
    if (format == CAIRO_FORMAT_A8) return row[x] / 255.0;
    const unsigned char* dot = row + static_cast<std::ptrdiff_t>(4) * x;
    const double alpha = format == CAIRO_FORMAT_ARGB32 ? dot[3] / 255.0 : 1;
    return alpha - dot[1] / 255.0; // green of a grey, with its share of alpha in it
  }
  /// Between the centres of four dots.
  [[nodiscard]] double dark_at(double x, double y) const {
    const double left = std::floor(x - 0.5);
    const double top = std::floor(y - 0.5);
    const double across = x - 0.5 - left;
    const double down = y - 0.5 - top;
    const auto at = [&](int dx, int dy) { return dark(static_cast<int>(left) + dx, static_cast<int>(top) + dy); };
    return (1 - down) * ((1 - across) * at(0, 0) + across * at(1, 0)) +
           down * ((1 - across) * at(0, 1) + across * at(1, 1));
  }
  /// Share of all dots' darkness.
  [[nodiscard]] double mean() const {
    double sum = 0;
    for (int y = 0; y < height(); ++y)
      for (int x = 0; x < width(); ++x) sum += dark(x, y);
    return sum / width() / height();
  }

private:
  struct Destroy {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  };
  std::unique_ptr<cairo_surface_t, Destroy> surface_;
};

/// A sheet of a PDF as poppler draws it. \param sheet from 1
inline Pixels pdf_pixels(const Folder& folder, const std::string& file, int sheet, int dots_per_inch) {
  const std::string out = folder.file("poppler");
  run_shell("pdftoppm -q -png -singlefile -f " + std::to_string(sheet) + " -r " + std::to_string(dots_per_inch) + " '" +
            file + "' '" + out + "' 2>'" + folder.file("said") + "'");
  CHECK(folder.read("said").empty());
  return Pixels(out + ".png");
}

/// An SVG as librsvg draws it.
inline Pixels svg_pixels(const Folder& folder, const std::string& file, int dots_per_inch) {
  const std::string dpi = std::to_string(dots_per_inch);
  run_shell("rsvg-convert --unlimited -b white -d " + dpi + " -p " + dpi + " '" + file + "' -o '" +
            folder.file("rsvg.png") + "'");
  return Pixels(folder.file("rsvg.png"));
}

} // namespace quillside::test
