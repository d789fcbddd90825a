#pragma once
// A PNG that says how large it is on paper.

#include <string>

namespace quillside::page {

inline constexpr int dots_per_inch = 300;

/// The same picture with a pHYs chunk of dots_per_inch behind its header. PNG specification (ISO/IEC 15948:2004),
/// 11.3.5.3 pHYs and annex D (the check of a chunk); from memory, no page seen.
/// \param png a whole PNG file; anything else throws std::runtime_error
std::string with_resolution(const std::string& png);

} // namespace quillside::page
