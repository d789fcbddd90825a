#pragma once
// Text as it comes from outside: may it be shown, and how.

#include <string>
#include <string_view>

namespace quillside {

/// Whether the bytes are valid UTF-8 without control characters.
bool is_plain_utf8(std::string_view text);
/// The text with every byte that is not plain printable UTF-8 shown as `?`: safe to print in a message.
std::string printable(std::string_view text);

} // namespace quillside
