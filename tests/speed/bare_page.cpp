// The least that a program with the same libraries can do: one word, on one page of a PDF, to standard output. What our
// drawing is held against.

#include <cstdio>

#include <cairo-pdf.h>
#include <pango/pangocairo.h>

namespace {

cairo_status_t write_out(void*, const unsigned char* data, unsigned int length) {
  return std::fwrite(data, 1, length, stdout) == length ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_WRITE_ERROR;
}

} // namespace

int main() {
  cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(write_out, nullptr, 420, 595);
  cairo_t* cairo = cairo_create(surface);
  PangoLayout* layout = pango_cairo_create_layout(cairo);
  PangoFontDescription* font = pango_font_description_from_string("DejaVu Sans 12");
  pango_layout_set_font_description(layout, font);
  pango_layout_set_text(layout, "quillside", -1);
  cairo_move_to(cairo, 72, 72);
  pango_cairo_show_layout(cairo, layout);
  cairo_show_page(cairo);
  cairo_surface_finish(surface);
  const bool fine = cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
  pango_font_description_free(font);
  g_object_unref(layout);
  cairo_destroy(cairo);
  cairo_surface_destroy(surface);
  return fine ? 0 : 1;
}
