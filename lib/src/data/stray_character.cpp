#include "stray_character.hpp"

namespace quillside {

namespace {

/// Walks a file letter by letter, keeping the place.
class Walk {
public:
  explicit Walk(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool done() const { return rest_.empty(); }
  [[nodiscard]] bool at(std::string_view what) const { return rest_.starts_with(what); }
  [[nodiscard]] bool at_one_of(std::string_view letters) const {
    return !done() && letters.find(rest_.front()) != std::string_view::npos;
  }
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

/// At the bracket of a table header: to the first letter of its name.
void skip_to_name(Walk& walk) {
  walk.skip();
  if (walk.at("[")) walk.skip();
  while (walk.at_one_of(" \t")) walk.skip();
}

/// What a name begins with, or the bracket of a header without one, of which the parser has a word to say itself.
bool may_begin_name(const Walk& walk) {
  return walk.done() || walk.at_one_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-\"']");
}

/// Skips a text or a comment, where there is one.
bool skip_quoted(Walk& walk) {
  for (const std::string_view quote : {"\"\"\"", "'''", "\"", "'"})
    if (walk.at(quote)) {
      walk.skip_text(quote);
      return true;
    }
  if (!walk.at("#")) return false;
  walk.skip_comment();
  return true;
}

} // namespace

std::optional<StrayCharacter> stray_character(std::string_view toml) {
  constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
  if (toml.starts_with(byte_order_mark)) toml.remove_prefix(byte_order_mark.size());
  Walk walk(toml);
  bool line_begins = true; // nothing but blanks since
  int open = 0;            // brackets of lists, in which a line may begin with another
  while (!walk.done()) {
    if (line_begins && open == 0 && walk.at("[")) {
      const TextPlace header = walk.place();
      Walk name = walk;
      skip_to_name(name);
      if (!may_begin_name(name))
        return StrayCharacter{header,
                              "no TOML: a table header holds a name, as [[drilling_speed]] or [source.own-bench]"};
    }
    if (walk.beyond_ascii())
      return StrayCharacter{walk.place(), "no TOML: a letter beyond ASCII stands outside a text; quote it"};
    const bool blank = walk.at_one_of(" \t");
    const bool ends_line = walk.at("\n");
    if (walk.at_one_of("[")) ++open;
    if (walk.at_one_of("]") && open > 0) --open;
    if (!skip_quoted(walk)) walk.skip();
    line_begins = ends_line || (line_begins && blank);
  }
  return std::nullopt;
}

} // namespace quillside
