#pragma once
// Sheets of gauges, true to size: what the ask `gauge` found, drawn one to one. Rulers stand on every sheet: across and
// down, since a printer can be off in one of them alone.

#include <quillside/page/document.hpp>

namespace quillside::page {

/// Height of the smallest capitals on a sheet of gauges.
inline constexpr Length least_gauge_letters = mm(1.8);

Canvas draw_gauge(const Document& document);

} // namespace quillside::page
