#include "stray_character.hpp"

namespace quillside {

namespace {

/// Walks a file letter by letter, keeping the place.
class Walk {
public:
  explicit Walk(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool done() const { return rest_.empty(); }
  [[nodiscard]] bool at(std::string_view what) const { return rest_.starts_with(what); }
  [[nodiscard]] bool beyond_ascii() const { return static_cast<unsigned char>(rest_.front()) >= 0x80; }
  [[nodiscard]] TextPlace place() const { return place_; }

  void skip(std::size_t bytes = 1) {
    for (; bytes > 0 && !rest_.empty(); --bytes) {
      const auto byte = static_cast<unsigned char>(rest_.front());
      if (byte == '\n')
        place_ = {place_.line + 1, 1};
      else if ((byte & 0xc0U) != 0x80U)
        ++place_.column;
      rest_.remove_prefix(1);
    }
  }

  /// To just behind the closing quote; a text of one line ends with its line, closed or not.
  void skip_text(std::string_view quote) {
    const bool escapes = quote.front() == '"';
    const bool one_line = quote.size() == 1;
    skip(quote.size());
    while (!done() && !at(quote) && !(one_line && at("\n"))) skip(escapes && at("\\") ? 2 : 1);
    skip(at(quote) ? quote.size() : 0);
  }

  void skip_comment() {
    while (!done() && !at("\n")) skip();
  }

private:
  std::string_view rest_;
  TextPlace place_;
};

} // namespace

std::optional<TextPlace> stray_character(std::string_view toml) {
  constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
  if (toml.starts_with(byte_order_mark)) toml.remove_prefix(byte_order_mark.size());
  Walk walk(toml);
  while (!walk.done()) {
    if (walk.at("#"))
      walk.skip_comment();
    else if (walk.at("\"\"\""))
      walk.skip_text("\"\"\"");
    else if (walk.at("'''"))
      walk.skip_text("'''");
    else if (walk.at("\""))
      walk.skip_text("\"");
    else if (walk.at("'"))
      walk.skip_text("'");
    else if (walk.beyond_ascii())
      return walk.place();
    else
      walk.skip();
  }
  return std::nullopt;
}

} // namespace quillside
