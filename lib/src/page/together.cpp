#include "together.hpp"

#include <algorithm>
#include <array>

namespace quillside::page {

void set_grey(cairo_t* cairo, double grey) { cairo_set_source_rgb(cairo, grey, grey, grey); }

void set_pen(cairo_t* cairo, const Pen& pen) {
  set_grey(cairo, pen.grey);
  cairo_set_line_width(cairo, points(pen.width));
  cairo_set_line_cap(cairo, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cairo, CAIRO_LINE_JOIN_MITER);
  const std::array<double, 2> dashes{points(mm(2)), points(mm(1.2))};
  cairo_set_dash(cairo, dashes.data(), pen.dashed ? 2 : 0, 0);
}

void show(cairo_t* cairo, const SetLine& line) {
  cairo_new_path(cairo);
  cairo_move_to(cairo, 0, 0);
  if (line.layout != nullptr) {
    pango_cairo_show_layout_line(cairo, pango_layout_get_line_readonly(line.layout.get(), 0));
    return;
  }
  cairo_set_scaled_font(cairo, line.font.get());
  cairo_show_glyphs(cairo, line.glyphs.data(), static_cast<int>(line.glyphs.size()));
}

void trace(cairo_t* cairo, const std::vector<Spot>& spots) {
  cairo_new_sub_path(cairo);
  for (const auto& spot : spots) cairo_line_to(cairo, points(spot.right), points(spot.down));
}

void Together::add(const Letters& letters) {
  flush_strokes();
  if (letters.grey != grey_) flush_letters();
  grey_ = letters.grey;
  auto& glyphs = glyphs_of({letters.line->font.get(), letters.times});
  for (const auto& glyph : letters.line->glyphs)
    glyphs.push_back({glyph.index, letters.right / letters.times + glyph.x, letters.down / letters.times + glyph.y});
}

void Together::add(const Stroke& stroke) {
  flush_letters();
  if (stroke.pen != pen_) flush_strokes();
  pen_ = stroke.pen;
  strokes_.push_back(&stroke);
}

void Together::flush() {
  flush_letters();
  flush_strokes();
}

void Together::flush_letters() {
  for (const auto& [font, glyphs] : groups_) {
    cairo_save(cairo_);
    set_grey(cairo_, grey_);
    cairo_scale(cairo_, font.times, font.times);
    cairo_set_scaled_font(cairo_, font.font);
    cairo_show_glyphs(cairo_, glyphs.data(), static_cast<int>(glyphs.size()));
    cairo_restore(cairo_);
  }
  groups_.clear();
}

void Together::flush_strokes() {
  if (strokes_.empty()) return;
  set_pen(cairo_, pen_);
  cairo_new_path(cairo_); // where the last letters ended is no part of it
  for (const Stroke* stroke : strokes_) {
    trace(cairo_, stroke->spots);
    if (stroke->closed) cairo_close_path(cairo_);
  }
  cairo_stroke(cairo_);
  strokes_.clear();
}

/// Groups stand in the order in which they came, so that a picture drawn twice is the same; there are but a few.
std::vector<cairo_glyph_t>& Together::glyphs_of(FontAndSize font) {
  const auto known =
      std::find_if(groups_.begin(), groups_.end(), [&](const Group& group) { return group.font == font; });
  if (known != groups_.end()) return known->glyphs;
  groups_.push_back({font, {}});
  return groups_.back().glyphs;
}

} // namespace quillside::page
