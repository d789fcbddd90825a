#pragma once
// The wall chart: the sheets that job/chart_sheet lays out, drawn. Black on white; what differs, differs in shape or
// word.

#include <quillside/page/document.hpp>

namespace quillside::page {

Canvas draw_chart(const Document& document);

} // namespace quillside::page
