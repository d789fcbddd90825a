#include "typesetter.hpp"

#include <algorithm>
#include <utility>

#include <quillside/page/draw.hpp>
#include <quillside/words/fault.hpp>

namespace quillside::page {

namespace {

constexpr const char* package_of_fonts = "fonts-dejavu-core";
constexpr double set_size = 20; // points

/// Letters that the font sets beside one another as if each were alone (a test holds it): figures, what stands in and
/// behind them, and their units. A chart has a thousand numbers of them, hardly two alike.
constexpr std::string_view set_apart = "0123456789./-*!dpimn ";

const char* family_of(Face face) { return face == Face::columns ? "DejaVu Sans Mono" : "DejaVu Sans"; }

struct FreeDescription {
  void operator()(PangoFontDescription* description) const { pango_font_description_free(description); }
};
using Description = std::unique_ptr<PangoFontDescription, FreeDescription>;

Length from_points(double amount) { return inches(amount / 72); }

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

Layout layout_in(PangoContext* context, Face face, Weight weight) {
  Layout layout(pango_layout_new(context));
  pango_layout_set_font_description(layout.get(), description_of(face, weight).get());
  return layout;
}

/// Control characters have no shape: they are set as blanks.
void set_text(PangoLayout* layout, std::string_view text) {
  std::string plain(text);
  for (char& c : plain)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  pango_layout_set_text(layout, plain.data(), static_cast<int>(plain.size()));
}

/// Fills in the glyphs of a line that has one for each letter, all of one font; false for any other.
bool take_glyphs(SetLine& line, const PangoLayoutLine* set) {
  if (set->runs == nullptr || set->runs->next != nullptr) return false;
  const auto* run = static_cast<const PangoLayoutRun*>(set->runs->data);
  if (run->glyphs->num_glyphs != run->item->num_chars) return false;
  int at = 0;
  for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
    const PangoGlyphInfo& glyph = run->glyphs->glyphs[i];
    if (glyph.glyph == PANGO_GLYPH_EMPTY || (glyph.glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0) {
      line.glyphs.clear();
      return false;
    }
    line.glyphs.push_back({glyph.glyph, static_cast<double>(at + glyph.geometry.x_offset) / PANGO_SCALE,
                           static_cast<double>(glyph.geometry.y_offset) / PANGO_SCALE});
    at += glyph.geometry.width;
  }
  line.font.reset(
      cairo_scaled_font_reference(pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(run->item->analysis.font))));
  return true;
}

PangoRectangle moved(PangoRectangle box, int right) { return {box.x + right, box.y, box.width, box.height}; }

/// The box round two.
PangoRectangle both(PangoRectangle a, PangoRectangle b) {
  const int left = std::min(a.x, b.x);
  const int top = std::min(a.y, b.y);
  return {left, top, std::max(a.x + a.width, b.x + b.width) - left, std::max(a.y + a.height, b.y + b.height) - top};
}

} // namespace

double points(Length length) { return in_inches(length) * 72; }
Length from_pango(int units) { return from_points(static_cast<double>(units) / PANGO_SCALE); }

// The map of fonts reads what is installed in a thread of its own as soon as it is made.
void look_for_fonts() { pango_cairo_font_map_get_default(); }

Typesetter::Typesetter() : context_(context_of_letters()) {}

Typesetter::Font& Typesetter::font_of(Face face, Weight weight) {
  Font& font = fonts_[(face == Face::columns ? 2U : 0U) + (weight == Weight::bold ? 1U : 0U)];
  if (font.in_turn == nullptr) font.in_turn = layout_in(context_.get(), face, weight);
  return font;
}

const SetLine& Typesetter::set_line(std::string_view text, Face face, Weight weight) {
  return set_line(text, font_of(face, weight));
}

const SetLine& Typesetter::set_line(std::string_view text, Font& font) {
  if (const auto known = font.lines.find(text); known != font.lines.end()) return known->second;
  SetLine line;
  if (text.size() > 1 && text.find_first_not_of(set_apart) == std::string_view::npos)
    join(text, font, line);
  else
    set(text, font, line);
  return font.lines.emplace(std::string(text), std::move(line)).first->second;
}

void Typesetter::join(std::string_view text, Font& font, SetLine& line) {
  for (const char letter : text) {
    const SetLine& one = set_line({&letter, 1}, font);
    const int at = line.logical.width;
    for (auto glyph : one.glyphs) {
      glyph.x += static_cast<double>(at) / PANGO_SCALE;
      line.glyphs.push_back(glyph);
    }
    const bool is_first = line.font == nullptr;
    line.ink = is_first ? one.ink : both(line.ink, moved(one.ink, at));
    line.logical = is_first ? one.logical : both(line.logical, moved(one.logical, at));
    if (is_first) line.font.reset(cairo_scaled_font_reference(one.font.get()));
  }
}

void Typesetter::set(std::string_view text, Font& font, SetLine& line) {
  PangoLayout* layout = font.in_turn.get();
  set_text(layout, text);
  PangoLayoutLine* first = pango_layout_get_line_readonly(layout, 0);
  pango_layout_line_get_extents(first, &line.ink, &line.logical);
  if (take_glyphs(line, first)) return;
  line.layout = std::move(font.in_turn);
  font.in_turn.reset(pango_layout_copy(line.layout.get()));
}

Length Typesetter::capital_of(Face face, Weight weight) {
  Font& font = font_of(face, weight);
  if (font.capital) return *font.capital;
  const std::unique_ptr<PangoFont, GObjectUnref> loaded(
      pango_context_load_font(context_.get(), description_of(face, weight).get()));
  if (loaded == nullptr) font_missing(face);
  const Description is(pango_font_describe(loaded.get()));
  const char* family = pango_font_description_get_family(is.get());
  if (family == nullptr || std::string_view(family) != family_of(face)) font_missing(face);
  font.capital = from_pango(set_line("H", font).ink.height);
  return *font.capital;
}

std::vector<std::string> Typesetter::broken(std::string_view text, Face face, Weight weight, Length width) {
  const Layout layout = layout_in(context_.get(), face, weight);
  set_text(layout.get(), text);
  pango_layout_set_width(layout.get(), static_cast<int>(points(width) * PANGO_SCALE));
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

} // namespace quillside::page
