#pragma once
// The door of this floor: a document in, a drawn page out. One function a kind of page; draw.cpp lists them.

#include <string>

#include <quillside/page/canvas.hpp>
#include <quillside/page/document.hpp>

namespace quillside::page {

/// Has the fonts looked for in the background from now on, which takes as long as reading a large document; the first
/// text that is drawn waits for them. Called again it does nothing.
void look_for_fonts();

/// The page drawn, of whatever kind the document asks for. Throws std::runtime_error for a kind there is not, a Fault
/// for a page that cannot be drawn as asked.
Canvas draw(const Document& document);
/// The same as the bytes of a file.
std::string picture_of(const Document& document);

} // namespace quillside::page
