#include <quillside/page/canvas.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <functional>
#include <stdexcept>
#include <utility>
#include <variant>

#include <quillside/quantity/angle.hpp>

#include "geometry.hpp"
#include "png.hpp"
#include "surface.hpp"
#include "together.hpp"
#include "typesetter.hpp"

namespace quillside::page {

namespace {

using Corners = std::array<Spot, 4>; // in order round it

Corners corners_of(const Box& box) {
  return {{{box.left, box.top}, {box.right(), box.top}, {box.right(), box.bottom()}, {box.left, box.bottom()}}};
}

/// The corners of a box that is measured from \p origin, when it is turned about that.
Corners turned(const Box& box, Spot origin, Angle angle) {
  Corners corners = corners_of(box);
  const double along = cosine(angle);
  const double across = sine(angle);
  for (auto& [right, down] : corners) {
    const Spot flat{right, down};
    right = origin.right + flat.right * along + flat.down * across;
    down = origin.down + flat.down * along - flat.right * across;
  }
  return corners;
}

Box box_round(const Corners& corners) {
  Spot least = corners.front();
  Spot most = corners.front();
  for (const auto& corner : corners) {
    least = {std::min(least.right, corner.right), std::min(least.down, corner.down)};
    most = {std::max(most.right, corner.right), std::max(most.down, corner.down)};
  }
  return {least.right, least.down, most.right - least.right, most.down - least.down};
}

std::vector<Spot> spots_of(const Box& box) {
  const Corners corners = corners_of(box);
  return {corners.begin(), corners.end()};
}

} // namespace

struct Canvas::Inside {
  /// What was drawn: alone, or so that it may go together with others.
  using Drawn = std::variant<std::function<void(cairo_t*)>, Letters, Stroke>;

  Sheet paper;
  mutable Typesetter typesetter;
  std::vector<std::deque<Drawn>> sheets{1};
  int at = 0;
  std::vector<TextDrawn> texts;
  std::vector<LineDrawn> lines;

  [[nodiscard]] const SetLine& set_line(std::string_view text, const Lettering& lettering) const {
    return typesetter.set_line(text, lettering.face, lettering.weight);
  }

  /// How many times as large as it is set.
  [[nodiscard]] double times(const Lettering& lettering) const {
    return lettering.height / typesetter.capital_of(lettering.face, lettering.weight);
  }

  void draw(Drawn drawn) { sheets[static_cast<std::size_t>(at)].push_back(std::move(drawn)); }

  void keep(const std::vector<Spot>& spots, Length width) {
    for (std::size_t i = 1; i < spots.size(); ++i) lines.push_back({at, spots[i - 1], spots[i], width});
  }

  void draw_stroke(Stroke stroke) {
    keep(stroke.spots, stroke.pen.width);
    if (stroke.closed && stroke.spots.size() > 2)
      lines.push_back({at, stroke.spots.back(), stroke.spots.front(), stroke.pen.width});
    draw(std::move(stroke));
  }

  void replay(std::size_t sheet, cairo_t* cairo) const {
    Together together(cairo);
    for (const auto& drawn : sheets[sheet]) {
      if (const auto* letters = std::get_if<Letters>(&drawn)) {
        together.add(*letters);
      } else if (const auto* stroke = std::get_if<Stroke>(&drawn)) {
        together.add(*stroke);
      } else {
        together.flush();
        std::get<0>(drawn)(cairo);
      }
    }
    together.flush();
  }

  void replay_all_below_one_another(cairo_t* cairo) const {
    for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet) {
      cairo_save(cairo);
      cairo_translate(cairo, 0, static_cast<double>(sheet) * points(paper.height));
      replay(sheet, cairo);
      cairo_restore(cairo);
    }
  }

  [[nodiscard]] Length height_of_all() const { return static_cast<double>(sheets.size()) * paper.height; }
  [[nodiscard]] std::string pdf(const PictureFacts& facts) const;
  [[nodiscard]] std::string svg() const;
  [[nodiscard]] std::string png() const;
};

std::string Canvas::Inside::pdf(const PictureFacts& facts) const {
  std::string bytes;
  const Surface surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &bytes, points(paper.width), points(paper.height)));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, facts.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "quillside");
  if (!facts.date.empty())
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, facts.date.c_str());
  const Drawing drawing(cairo_create(surface.get()));
  for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet) {
    replay(sheet, drawing.get());
    cairo_show_page(drawing.get());
  }
  finish(drawing.get(), surface.get());
  return bytes;
}

std::string Canvas::Inside::svg() const {
  std::string bytes;
  const Surface surface(
      cairo_svg_surface_create_for_stream(append_bytes, &bytes, points(paper.width), points(height_of_all())));
  cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_PT);
  const Drawing drawing(cairo_create(surface.get()));
  replay_all_below_one_another(drawing.get());
  finish(drawing.get(), surface.get());
  return bytes;
}

std::string Canvas::Inside::png() const {
  const double scale = dots_per_inch / 72.0;
  const auto dots = [&](Length length) { return static_cast<int>(std::lround(points(length) * scale)); };
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(paper.width), dots(height_of_all())));
  const Drawing drawing(cairo_create(surface.get()));
  set_grey(drawing.get(), 1);
  cairo_paint(drawing.get());
  cairo_scale(drawing.get(), scale, scale);
  replay_all_below_one_another(drawing.get());
  check(cairo_status(drawing.get()));
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes));
  return with_resolution(bytes);
}

Canvas::Canvas(Sheet sheet) : inside_(std::make_unique<Inside>()) { inside_->paper = sheet; }
Canvas::Canvas(Canvas&& other) noexcept = default;
Canvas& Canvas::operator=(Canvas&& other) noexcept = default;
Canvas::~Canvas() = default;

Sheet Canvas::sheet() const { return inside_->paper; }
int Canvas::sheets() const { return static_cast<int>(inside_->sheets.size()); }

void Canvas::add_sheet() {
  inside_->sheets.emplace_back();
  inside_->at = sheets() - 1;
}

void Canvas::turn_to(int number) {
  if (number < 0 || number >= sheets()) throw std::logic_error{"a sheet that is not there"};
  inside_->at = number;
}

Length Canvas::width_of(std::string_view text, const Lettering& lettering) const {
  const double times = inside_->times(lettering);
  return times * from_pango(inside_->set_line(text, lettering).logical.width);
}

std::vector<std::string> Canvas::broken(std::string_view text, const Lettering& lettering, Length width) const {
  return inside_->typesetter.broken(text, lettering.face, lettering.weight, width / inside_->times(lettering));
}

Box Canvas::letters(Spot at, std::string_view text, const Lettering& lettering, const Hold& hold) {
  const double times = inside_->times(lettering);
  const SetLine& set = inside_->set_line(text, lettering);
  const double back = hold.across == Across::left ? 0 : hold.across == Across::centre ? 0.5 : 1;
  const double lower = hold.along == Along::foot ? 0 : hold.along == Along::middle ? 0.5 : 1;
  const Length start = -back * times * from_pango(set.logical.width);
  const Length foot = lower * lettering.height;
  if (hold.turned == Angle{} && set.layout == nullptr) {
    inside_->draw(Letters{&set, points(at.right + start), points(at.down + foot), times, lettering.grey});
  } else {
    inside_->draw([=, &set](cairo_t* cairo) {
      cairo_save(cairo);
      set_grey(cairo, lettering.grey);
      cairo_translate(cairo, points(at.right), points(at.down));
      cairo_rotate(cairo, -in_radians(hold.turned));
      cairo_translate(cairo, points(start), points(foot));
      cairo_scale(cairo, times, times);
      show(cairo, set);
      cairo_restore(cairo);
    });
  }
  const Box flat{start + times * from_pango(set.ink.x), foot + times * from_pango(set.ink.y),
                 times * from_pango(set.ink.width), times * from_pango(set.ink.height)};
  const Corners corners = turned(flat, at, hold.turned);
  const Box box = box_round(corners);
  inside_->texts.push_back({inside_->at, std::string(text), box, lettering.height, corners});
  return box;
}

void Canvas::line(Spot from, Spot to, const Pen& pen) { path({from, to}, pen); }

void Canvas::path(const std::vector<Spot>& spots, const Pen& pen) { inside_->draw_stroke({spots, pen, false}); }
void Canvas::outline(const std::vector<Spot>& spots, const Pen& pen) { inside_->draw_stroke({spots, pen, true}); }
void Canvas::frame(const Box& box, const Pen& pen) { outline(spots_of(box), pen); }

void Canvas::fill(const std::vector<Spot>& spots, double grey) {
  inside_->draw([=](cairo_t* cairo) {
    set_grey(cairo, grey);
    cairo_new_path(cairo); // where the last letters ended is no part of it
    trace(cairo, spots);
    cairo_close_path(cairo);
    cairo_fill(cairo);
  });
}

void Canvas::fill(const Box& box, double grey) { fill(spots_of(box), grey); }

void Canvas::arc(Spot centre, Length radius, Angle from, Angle to, const Pen& pen) {
  const int pieces = std::max(1, static_cast<int>(std::ceil((to - from) / degrees(5))));
  std::vector<Spot> chords;
  for (int i = 0; i <= pieces; ++i)
    chords.push_back(page::from(centre, radius, from + (to - from) * (static_cast<double>(i) / pieces)));
  inside_->keep(chords, pen.width);
  inside_->draw([=](cairo_t* cairo) {
    set_pen(cairo, pen);
    cairo_new_path(cairo);
    cairo_arc_negative(cairo, points(centre.right), points(centre.down), points(radius), -in_radians(from),
                       -in_radians(to));
    cairo_stroke(cairo);
  });
}

void Canvas::circle(Spot centre, Length radius, const Pen& pen) { arc(centre, radius, degrees(0), turns(1), pen); }

const std::vector<TextDrawn>& Canvas::texts() const { return inside_->texts; }
const std::vector<LineDrawn>& Canvas::lines() const { return inside_->lines; }

std::string Canvas::picture(PictureKind kind, const PictureFacts& facts) const {
  switch (kind) {
  case PictureKind::pdf: return inside_->pdf(facts);
  case PictureKind::svg: return inside_->svg();
  case PictureKind::png: return inside_->png();
  }
  throw std::logic_error{"no such kind of picture"};
}

} // namespace quillside::page

#ifdef __SANITIZE_ADDRESS__
/// Fontconfig keeps what it found for as long as a program runs, in ways that the leak checker cannot follow.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\n"; }
#endif
