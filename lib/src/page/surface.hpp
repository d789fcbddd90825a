#pragma once
// The drawing library's handles, each given back when its owner goes.

#include <memory>
#include <stdexcept>
#include <string>

#include <cairo-pdf.h>
#include <cairo-svg.h>

namespace quillside::page {

struct DestroySurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct DestroyDrawing {
  void operator()(cairo_t* drawing) const { cairo_destroy(drawing); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroySurface>;
using Drawing = std::unique_ptr<cairo_t, DestroyDrawing>;

inline void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error{std::string("the drawing library: ") + cairo_status_to_string(status)};
}

/// What a stream surface calls with each piece; \p out is a std::string.
inline cairo_status_t append_bytes(void* out, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

inline void finish(cairo_t* drawing, cairo_surface_t* surface) {
  check(cairo_status(drawing));
  cairo_surface_finish(surface);
  check(cairo_surface_status(surface));
}

} // namespace quillside::page
