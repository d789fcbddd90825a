#include "written.hpp"

#include <charconv>
#include <cmath>

#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool same_ignoring_case(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

namespace {

/// Eats decimal digits with at most one point; nothing eaten leaves \p text alone.
std::optional<Written> take_decimal(std::string_view& text) {
  std::size_t end = 0;
  std::size_t digits = 0;
  std::size_t decimals = 0;
  bool point = false;
  for (; end < text.size(); ++end) {
    if (is_digit(text[end])) {
      ++digits;
      if (point) ++decimals;
    } else if (text[end] == '.' && !point) {
      point = true;
    } else {
      break;
    }
  }
  if (digits == 0 || digits > 30) return std::nullopt;
  Written written;
  const auto result = std::from_chars(text.data(), text.data() + end, written.number);
  if (result.ec != std::errc{} || result.ptr != text.data() + end) return std::nullopt;
  written.last_digit = std::pow(10.0, -static_cast<double>(decimals));
  text.remove_prefix(end);
  return written;
}

std::optional<double> take_whole(std::string_view& text) {
  std::size_t end = 0;
  while (end < text.size() && is_digit(text[end])) ++end;
  if (end == 0 || end > 6) return std::nullopt;
  double whole = 0;
  std::from_chars(text.data(), text.data() + end, whole);
  text.remove_prefix(end);
  return whole;
}

} // namespace

std::optional<Written> take_apart(std::string_view text) {
  text = trimmed(text);
  std::string_view rest = text;
  double wholes = 0;
  if (const auto first = take_whole(rest)) {
    std::string_view after = rest;
    double top = *first;
    if (!after.empty() && (after.front() == '-' || after.front() == ' ')) {
      std::string_view behind = after.substr(1);
      if (const auto next = take_whole(behind); next && !behind.empty() && behind.front() == '/') {
        wholes = *first;
        top = *next;
        after = behind;
      }
    }
    if (!after.empty() && after.front() == '/') {
      after.remove_prefix(1);
      const auto bottom = take_whole(after);
      if (!bottom || *bottom == 0) return std::nullopt;
      return Written{wholes + top / *bottom, 0, true, trimmed(after)};
    }
  }
  rest = text;
  auto written = take_decimal(rest);
  if (written) written->unit = trimmed(rest);
  return written;
}

std::string article(std::string_view what) { return "is no " + std::string(what); }

namespace {

/// What is meant by a word with commas: decimal points; nothing where they may part thousands, as in 25,000.
std::optional<std::string> without_commas(std::string_view word) {
  std::string meant(word);
  for (std::size_t at = meant.find(','); at != std::string::npos; at = meant.find(',', at)) {
    std::size_t digits = at + 1;
    while (digits < meant.size() && is_digit(meant[digits])) ++digits;
    const bool after_zero = at == 0 || meant[at - 1] == '0';
    if (digits - at - 1 == 3 && !after_zero) return std::nullopt;
    meant[at] = '.';
  }
  return meant;
}

} // namespace

std::string_view plain_word(std::string_view text, std::string_view what, const std::vector<std::string>& allowed) {
  if (!is_plain_utf8(text))
    throw wrong_word(std::string(text), article(what) + ": it is not plain UTF-8 text", allowed);
  const std::string_view word = trimmed(text);
  if (word.empty())
    throw wrong_word("", article(what) + ": the word is empty" + (what == "size" ? "; quote '#30' or write no30" : ""),
                     allowed);
  if (word.find(',') != std::string_view::npos) {
    const auto meant = without_commas(word);
    throw wrong_word(std::string(word),
                     article(what) + (meant ? ": a decimal is written with a point; write " + *meant
                                            : ": a decimal is written with a point, and thousands are not parted"),
                     allowed, meant);
  }
  if (word.front() == '-' || word.substr(0, 3) == "\u2212")
    throw wrong_word(std::string(word), article(what) + ": it is negative; give 0 or more", allowed);
  return word;
}

std::string list_of(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
}

} // namespace quillside
