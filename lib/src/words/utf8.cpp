#include <quillside/words/utf8.hpp>

namespace quillside {

bool is_plain_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const auto lead = static_cast<unsigned char>(text[i]);
    const std::size_t length = lead < 0x80                   ? 1
                               : lead >= 0xc2 && lead < 0xe0 ? 2
                               : lead >= 0xe0 && lead < 0xf0 ? 3
                               : lead >= 0xf0 && lead < 0xf5 ? 4
                                                             : 0;
    if (length == 0 || i + length > text.size() || lead < 0x20 || lead == 0x7f) return false;
    for (std::size_t k = 1; k < length; ++k)
      if ((static_cast<unsigned char>(text[i + k]) & 0xc0U) != 0x80U) return false;
    // U+0080 to U+009F are control characters too, and some terminals obey them.
    if (lead == 0xc2 && static_cast<unsigned char>(text[i + 1]) < 0xa0) return false;
    if (length >= 3) {
      const auto second = static_cast<unsigned char>(text[i + 1]);
      const bool overlong = (lead == 0xe0 && second < 0xa0) || (lead == 0xf0 && second < 0x90);
      const bool surrogate_or_beyond = (lead == 0xed && second >= 0xa0) || (lead == 0xf4 && second >= 0x90);
      if (overlong || surrogate_or_beyond) return false;
    }
    i += length;
  }
  return true;
}

std::string printable(std::string_view text) {
  std::string shown;
  while (!text.empty()) {
    // The longest piece that begins here and is plain: one to four bytes.
    std::size_t length = 1;
    while (length <= 4 && length <= text.size() && !is_plain_utf8(text.substr(0, length))) ++length;
    const bool plain = length <= 4 && length <= text.size();
    shown += plain ? text.substr(0, length) : std::string_view("?");
    text.remove_prefix(plain ? length : 1);
  }
  return shown;
}

} // namespace quillside
