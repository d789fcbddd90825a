#pragma once
// A row to fill in.

#include <string>
#include <string_view>
#include <vector>

namespace quillside {

/// A commented row of that kind to fill in; a Fault of the kind `word` that lists the kinds when there is none.
std::string blank_row(std::string_view kind);
/// The names of all kinds of row.
std::vector<std::string_view> row_kinds();

} // namespace quillside
