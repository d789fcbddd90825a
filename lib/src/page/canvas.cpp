#include <quillside/page/canvas.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <stdexcept>
#include <tuple>
#include <utility>
#include <variant>

#include <pango/pangocairo.h>

#include <quillside/quantity/angle.hpp>
#include <quillside/words/fault.hpp>

#include "png.hpp"
#include "surface.hpp"

namespace quillside::page {

namespace {

/// The drawing library counts in points, 72 to the inch.
double points(Length length) { return in_inches(length) * 72; }
Length from_points(double amount) { return inches(amount / 72); }
Length from_pango(int units) { return from_points(static_cast<double>(units) / PANGO_SCALE); }

constexpr const char* package_of_fonts = "fonts-dejavu-core";
const char* family_of(Face face) { return face == Face::columns ? "DejaVu Sans Mono" : "DejaVu Sans"; }

struct GObjectUnref {
  void operator()(gpointer object) const { g_object_unref(object); }
};
struct FreeDescription {
  void operator()(PangoFontDescription* description) const { pango_font_description_free(description); }
};
using Context = std::unique_ptr<PangoContext, GObjectUnref>;
using Font = std::unique_ptr<PangoFont, GObjectUnref>;
using Layout = std::shared_ptr<PangoLayout>;
using Description = std::unique_ptr<PangoFontDescription, FreeDescription>;

/// A letter that is drawn; control characters have no shape.
std::string shown(std::string_view text) {
  std::string plain(text);
  for (char& c : plain)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  return plain;
}

/// Every text is set in letters of this size and drawn larger or smaller: finding a font of another size costs more
/// than setting a line of it.
constexpr double set_size = 20; // points

Description description_of(Face face, Weight weight) {
  Description description(pango_font_description_new());
  pango_font_description_set_family_static(description.get(), family_of(face));
  pango_font_description_set_weight(description.get(),
                                    weight == Weight::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(description.get(), set_size * PANGO_SCALE);
  return description;
}

[[noreturn]] void font_missing(Face face) {
  Fault fault;
  fault.kind = FaultKind::file;
  fault.word = family_of(face);
  fault.message = "no font " + fault.word + " to draw with: install Debian's " + package_of_fonts;
  throw fault;
}

/// Letters measured and set the same on every kind of picture: no fitting to a grid of dots.
Context context_of_letters() {
  // The thread's own map of fonts: a second canvas finds them loaded.
  Context context(pango_font_map_create_context(pango_cairo_font_map_get_default()));
  pango_cairo_context_set_resolution(context.get(), 72);
  const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options(
      cairo_font_options_create(), cairo_font_options_destroy);
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  return context;
}

void set_grey(cairo_t* cairo, double grey) { cairo_set_source_rgb(cairo, grey, grey, grey); }

void set_pen(cairo_t* cairo, const Pen& pen) {
  set_grey(cairo, pen.grey);
  cairo_set_line_width(cairo, points(pen.width));
  cairo_set_line_cap(cairo, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cairo, CAIRO_LINE_JOIN_MITER);
  const std::array<double, 2> dashes{points(mm(2)), points(mm(1.2))};
  cairo_set_dash(cairo, dashes.data(), pen.dashed ? 2 : 0, 0);
}

void trace(cairo_t* cairo, const std::vector<Spot>& spots) {
  cairo_new_path(cairo); // where the last letters ended is no part of it
  for (const auto& spot : spots) cairo_line_to(cairo, points(spot.right), points(spot.down));
}

std::vector<Spot> corners_of(const Box& box) {
  return {{box.left, box.top}, {box.right(), box.top}, {box.right(), box.bottom()}, {box.left, box.bottom()}};
}

Spot on_circle(Spot centre, Length radius, Angle at) {
  return {centre.right + radius * cosine(at), centre.down - radius * sine(at)};
}

/// A line of letters as it is set, before it is drawn larger or smaller.
struct SetLine {
  Layout layout;
  PangoRectangle ink{};
  PangoRectangle logical{};
  cairo_scaled_font_t* font = nullptr; // of all its letters; the layout keeps it
  std::vector<cairo_glyph_t> glyphs;   // from its foot; empty where a glyph is more or less than one letter
};

/// Fills in the glyphs of a line that has one for each letter, all of one font.
void take_glyphs(SetLine& line) {
  const PangoLayoutLine* set = pango_layout_get_line_readonly(line.layout.get(), 0);
  if (set->runs == nullptr || set->runs->next != nullptr) return;
  const auto* run = static_cast<const PangoLayoutRun*>(set->runs->data);
  if (run->glyphs->num_glyphs != run->item->num_chars) return;
  int at = 0;
  for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
    const PangoGlyphInfo& glyph = run->glyphs->glyphs[i];
    if (glyph.glyph == PANGO_GLYPH_EMPTY || (glyph.glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0) {
      line.glyphs.clear();
      return;
    }
    line.glyphs.push_back({glyph.glyph, static_cast<double>(at + glyph.geometry.x_offset) / PANGO_SCALE,
                           static_cast<double>(glyph.geometry.y_offset) / PANGO_SCALE});
    at += glyph.geometry.width;
  }
  line.font = pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(run->item->analysis.font));
}

/// Level letters that stand in the drawing as they are: no turning, so that they may go together with others.
struct Letters {
  const SetLine* line;
  double right; // of their start and their foot, in points
  double down;
  double times; // as large as they are set
  double grey;
};

/// Letters of one grey that follow one another: those of a font and a size go to the drawing library in one call, for
/// in a table it is the calls that cost.
class Together {
public:
  explicit Together(cairo_t* cairo) : cairo_(cairo) {}

  void add(const Letters& letters) {
    if (letters.grey != grey_) flush();
    grey_ = letters.grey;
    auto& glyphs = glyphs_of({letters.line->font, letters.times});
    for (const auto& glyph : letters.line->glyphs)
      glyphs.push_back({glyph.index, letters.right / letters.times + glyph.x, letters.down / letters.times + glyph.y});
  }

  void flush() {
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

  /// Groups stand in the order in which they came, so that a picture drawn twice is the same; there are but a few.
  std::vector<cairo_glyph_t>& glyphs_of(FontAndSize font) {
    const auto known =
        std::find_if(groups_.begin(), groups_.end(), [&](const Group& group) { return group.font == font; });
    if (known != groups_.end()) return known->glyphs;
    groups_.push_back({font, {}});
    return groups_.back().glyphs;
  }

  cairo_t* cairo_;
  double grey_ = 0;
  std::vector<Group> groups_;
};

} // namespace

struct Canvas::Inside {
  using Stroke = std::variant<std::function<void(cairo_t*)>, Letters>;

  Sheet paper;
  Context context = context_of_letters();
  mutable std::map<std::pair<Face, Weight>, Length> capitals; // height of a capital of the size that lines are set in
  mutable std::map<std::tuple<std::string, Face, Weight>, SetLine> set_lines;
  std::vector<std::vector<Stroke>> sheets{1};
  int at = 0;
  std::vector<TextDrawn> texts;
  std::vector<LineDrawn> lines;

  [[nodiscard]] Layout layout(std::string_view text, Face face, Weight weight) const {
    Layout made(pango_layout_new(context.get()), GObjectUnref{});
    pango_layout_set_font_description(made.get(), description_of(face, weight).get());
    const std::string plain = shown(text);
    pango_layout_set_text(made.get(), plain.data(), static_cast<int>(plain.size()));
    return made;
  }

  /// Set once, however often it is measured and drawn.
  [[nodiscard]] const SetLine& set_line(std::string_view text, const Lettering& lettering) const {
    const auto [known, is_new] = set_lines.try_emplace({std::string(text), lettering.face, lettering.weight});
    SetLine& line = known->second;
    if (is_new) {
      line.layout = layout(text, lettering.face, lettering.weight);
      pango_layout_line_get_extents(pango_layout_get_line_readonly(line.layout.get(), 0), &line.ink, &line.logical);
      take_glyphs(line);
    }
    return line;
  }

  [[nodiscard]] Length capital_of(Face face, Weight weight) const {
    const auto known = capitals.find({face, weight});
    if (known != capitals.end()) return known->second;
    const Font font(pango_context_load_font(context.get(), description_of(face, weight).get()));
    if (font == nullptr) font_missing(face);
    const Description is(pango_font_describe(font.get()));
    const char* family = pango_font_description_get_family(is.get());
    if (family == nullptr || std::string_view(family) != family_of(face)) font_missing(face);
    const Length height = from_pango(set_line("H", {mm(1), weight, face}).ink.height);
    capitals[{face, weight}] = height;
    return height;
  }

  /// How many times as large as it is set.
  [[nodiscard]] double times(const Lettering& lettering) const {
    return lettering.height / capital_of(lettering.face, lettering.weight);
  }

  void draw(Stroke stroke) { sheets[static_cast<std::size_t>(at)].push_back(std::move(stroke)); }

  void keep(const std::vector<Spot>& spots, Length width, bool closed) {
    for (std::size_t i = 1; i < spots.size(); ++i) lines.push_back({at, spots[i - 1], spots[i], width});
    if (closed && spots.size() > 2) lines.push_back({at, spots.back(), spots.front(), width});
  }

  void replay(std::size_t sheet, cairo_t* cairo) const {
    Together together(cairo);
    for (const auto& stroke : sheets[sheet]) {
      if (const auto* letters = std::get_if<Letters>(&stroke)) {
        together.add(*letters);
      } else {
        together.flush();
        std::get<0>(stroke)(cairo);
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
  const Layout layout = inside_->layout(text, lettering.face, lettering.weight);
  pango_layout_set_width(layout.get(), static_cast<int>(points(width) / inside_->times(lettering) * PANGO_SCALE));
  pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  std::vector<std::string> all;
  const std::string whole = pango_layout_get_text(layout.get());
  for (int i = 0; i < pango_layout_get_line_count(layout.get()); ++i) {
    const PangoLayoutLine* line = pango_layout_get_line_readonly(layout.get(), i);
    std::string piece =
        whole.substr(static_cast<std::size_t>(line->start_index), static_cast<std::size_t>(line->length));
    while (!piece.empty() && piece.back() == ' ') piece.pop_back();
    all.push_back(std::move(piece));
  }
  return all;
}

Box Canvas::letters(Spot at, std::string_view text, const Lettering& lettering, const Hold& hold) {
  const double times = inside_->times(lettering);
  const SetLine& set = inside_->set_line(text, lettering);
  const double back = hold.across == Across::left ? 0 : hold.across == Across::centre ? 0.5 : 1;
  const double lower = hold.along == Along::foot ? 0 : hold.along == Along::middle ? 0.5 : 1;
  const Length start = -back * times * from_pango(set.logical.width);
  const Length foot = lower * lettering.height;
  if (hold.turned == Angle{} && !set.glyphs.empty()) {
    inside_->draw(Letters{&set, points(at.right + start), points(at.down + foot), times, lettering.grey});
  } else {
    inside_->draw([=, layout = set.layout](cairo_t* cairo) {
      cairo_save(cairo);
      set_grey(cairo, lettering.grey);
      cairo_translate(cairo, points(at.right), points(at.down));
      cairo_rotate(cairo, -in_radians(hold.turned));
      cairo_translate(cairo, points(start), points(foot));
      cairo_scale(cairo, times, times);
      cairo_move_to(cairo, 0, 0);
      pango_cairo_show_layout_line(cairo, pango_layout_get_line_readonly(layout.get(), 0));
      cairo_restore(cairo);
    });
  }
  const Box flat{start + times * from_pango(set.ink.x), foot + times * from_pango(set.ink.y),
                 times * from_pango(set.ink.width), times * from_pango(set.ink.height)};
  Spot least{mm(1e9), mm(1e9)};
  Spot most{mm(-1e9), mm(-1e9)};
  std::array<Spot, 4> corners;
  std::size_t number = 0;
  for (const auto& corner : corners_of(flat)) {
    const Length right = corner.right * cosine(hold.turned) + corner.down * sine(hold.turned);
    const Length down = corner.down * cosine(hold.turned) - corner.right * sine(hold.turned);
    least = {std::min(least.right, right), std::min(least.down, down)};
    most = {std::max(most.right, right), std::max(most.down, down)};
    corners[number++] = {at.right + right, at.down + down};
  }
  const Box box{at.right + least.right, at.down + least.down, most.right - least.right, most.down - least.down};
  inside_->texts.push_back({inside_->at, std::string(text), box, lettering.height, corners});
  return box;
}

void Canvas::line(Spot from, Spot to, const Pen& pen) { path({from, to}, pen); }

void Canvas::path(const std::vector<Spot>& spots, const Pen& pen) {
  inside_->keep(spots, pen.width, false);
  inside_->draw([=](cairo_t* cairo) {
    set_pen(cairo, pen);
    trace(cairo, spots);
    cairo_stroke(cairo);
  });
}

void Canvas::outline(const std::vector<Spot>& spots, const Pen& pen) {
  inside_->keep(spots, pen.width, true);
  inside_->draw([=](cairo_t* cairo) {
    set_pen(cairo, pen);
    trace(cairo, spots);
    cairo_close_path(cairo);
    cairo_stroke(cairo);
  });
}

void Canvas::frame(const Box& box, const Pen& pen) { outline(corners_of(box), pen); }

void Canvas::fill(const std::vector<Spot>& spots, double grey) {
  inside_->draw([=](cairo_t* cairo) {
    set_grey(cairo, grey);
    trace(cairo, spots);
    cairo_close_path(cairo);
    cairo_fill(cairo);
  });
}

void Canvas::fill(const Box& box, double grey) { fill(corners_of(box), grey); }

void Canvas::arc(Spot centre, Length radius, Angle from, Angle to, const Pen& pen) {
  const int pieces = std::max(1, static_cast<int>(std::ceil((to - from) / degrees(5))));
  std::vector<Spot> chords;
  for (int i = 0; i <= pieces; ++i)
    chords.push_back(on_circle(centre, radius, from + (to - from) * (static_cast<double>(i) / pieces)));
  inside_->keep(chords, pen.width, false);
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
