#pragma once
// A check before the parser. toml++ 3.3 takes two things for granted that a file need not keep, and runs into branches
// it declares unreachable (found by mutating tables, under UBSan and with its assertions on): no letter beyond ASCII
// stands outside texts and comments, and the name in a table header begins as a name. It must not see such a file.

#include <optional>
#include <string_view>

namespace quillside {

struct TextPlace {
  int line = 1;
  int column = 1; // in letters
};

struct StrayCharacter {
  TextPlace place;
  const char* what; // in words, for whoever wrote the file
};

/// The first letter beyond ASCII outside a text or a comment, or the first that no name in a table header begins with;
/// nothing in a file that has none.
std::optional<StrayCharacter> stray_character(std::string_view toml);

} // namespace quillside
