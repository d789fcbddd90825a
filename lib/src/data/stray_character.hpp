#pragma once
// A check before the parser. TOML has no letter beyond ASCII outside its texts and comments, but toml++ 3.3 looks such
// a letter up among its blanks and runs into a branch it declares unreachable (found by mutating tables under UBSan):
// it must not see one.

#include <optional>
#include <string_view>

namespace quillside {

struct TextPlace {
  int line = 1;
  int column = 1; // in letters
};

/// Where the first letter beyond ASCII stands outside a text or a comment; nothing in a file that has none.
std::optional<TextPlace> stray_character(std::string_view toml);

} // namespace quillside
