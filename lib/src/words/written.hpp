#pragma once
// A word taken apart into its number and its unit, before anybody asks what they mean; and what no reader accepts.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quillside {

/// A number and the unit word behind it, before anybody asks what they mean.
struct Written {
  double number = 0;
  double last_digit = 0; // what one step of the last digit typed is worth; 0 for a fraction
  bool fraction = false;
  std::string_view unit;
};

bool is_digit(char c);
bool same_ignoring_case(std::string_view a, std::string_view b);
std::string_view trimmed(std::string_view text);

/// `3/16`, `1-1/8`, `1 1/8`, `0.1875`, each with a unit word or none; nothing for any other form.
std::optional<Written> take_apart(std::string_view text);

/// "is no WHAT".
std::string article(std::string_view what);
/// "a, b or c".
std::string list_of(const std::vector<std::string>& words);

/// Refuses what no reader accepts, before the form is looked at. Gives the word without white space round it.
std::string_view plain_word(std::string_view text, std::string_view what, const std::vector<std::string>& allowed);

} // namespace quillside
