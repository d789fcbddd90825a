// Which bytes may be shown. The bounds are those of RFC 3629 (UTF-8, 2003, section 4; from memory): no overlong form,
// no surrogate, nothing beyond U+10FFFF; control characters are U+0000 to U+001F and U+007F to U+009F (Unicode,
// category Cc; from memory).

#include "catch.hpp"

#include <string>

#include <quillside/words/utf8.hpp>

using namespace quillside;
using namespace std::string_literals;

namespace {

/// The code point as UTF-8, by the definition: six bits a byte behind a lead byte that tells how many follow.
std::string encoded(unsigned code) {
  const auto tail = [&](unsigned shift) { return static_cast<char>(0x80U | ((code >> shift) & 0x3fU)); };
  if (code < 0x80) return {static_cast<char>(code)};
  if (code < 0x800) return {static_cast<char>(0xc0U | (code >> 6U)), tail(0)};
  if (code < 0x10000) return {static_cast<char>(0xe0U | (code >> 12U)), tail(6), tail(0)};
  return {static_cast<char>(0xf0U | (code >> 18U)), tail(12), tail(6), tail(0)};
}

} // namespace

TEST_CASE("every character but a control character or a surrogate is plain, and is shown as it is") {
  unsigned wrong = 0;
  unsigned first_wrong = 0;
  for (unsigned code = 0; code <= 0x10ffff; ++code) {
    const bool control = code < 0x20 || (code >= 0x7f && code <= 0x9f);
    const bool surrogate = code >= 0xd800 && code <= 0xdfff;
    const std::string text = encoded(code);
    const bool plain = !control && !surrogate;
    if (is_plain_utf8(text) == plain && (!plain || printable(text) == text)) continue;
    if (wrong++ == 0) first_wrong = code;
  }
  INFO("the first of them is code point " << first_wrong);
  CHECK(wrong == 0);
}

TEST_CASE("text is plain when all of it is") {
  CHECK(is_plain_utf8(""));
  CHECK(is_plain_utf8("121\xc2\xb1"
                      "1.5"));
  CHECK(is_plain_utf8("\xe2\x88\x92"
                      "5"));                     // U+2212, the minus sign
  CHECK(is_plain_utf8("\xf0\x9f\x94\xa9 no30")); // U+1F529, beyond the basic plane
  CHECK_FALSE(is_plain_utf8("no30\n"));
  CHECK_FALSE(is_plain_utf8("no30\0"s));
  CHECK_FALSE(is_plain_utf8("\x1b[31mno30"));
  CHECK_FALSE(is_plain_utf8("no30\xff"));
}

TEST_CASE("bytes that are no UTF-8 are not plain") {
  const std::string bytes = GENERATE("\x80",         // a continuation with nothing to continue
                                     "\xc3",         // a lead with nothing behind it
                                     "\xe2\x88",     // cut off
                                     "\xf0\x9f\x94", // cut off
                                     "\xc3"
                                     "a",                // a letter where a continuation belongs
                                     "\xc0\xaf",         // overlong stroke
                                     "\xc1\xbf",         // overlong
                                     "\xe0\x80\xaf",     // overlong stroke
                                     "\xe0\x9f\xbf",     // overlong
                                     "\xf0\x80\x80\xaf", // overlong stroke
                                     "\xf0\x8f\xbf\xbf", // overlong
                                     "\xed\xa0\x80",     // the first surrogate
                                     "\xed\xbf\xbf",     // the last surrogate
                                     "\xf4\x90\x80\x80", // one beyond U+10FFFF
                                     "\xf5\x80\x80\x80", "\xf8\x88\x80\x80\x80", "\xfe", "\xff");
  CHECK_FALSE(is_plain_utf8(bytes));
  CHECK_FALSE(is_plain_utf8("3/16" + bytes));
  CHECK_FALSE(is_plain_utf8(bytes + "3/16"));
  CHECK(is_plain_utf8(printable(bytes)));
}

TEST_CASE("what cannot be shown is shown as a question mark, and what stands beside it stays") {
  struct Row {
    std::string bytes;
    std::string shown;
  };
  const auto row = GENERATE(Row{"", ""}, Row{"3/16", "3/16"}, Row{"\xff", "?"}, Row{"\xff\xfe", "??"},
                            Row{"3\xff"
                                "/16",
                                "3?/16"},
                            Row{"a\xc3", "a?"},
                            Row{"\xc3"
                                "a",
                                "?a"},
                            Row{"a\x80", "a?"}, // a stray continuation behind a letter
                            Row{"121\xc2\xb1"
                                "1\x80"
                                "5",
                                "121\xc2\xb1"
                                "1?5"},
                            Row{"\x1b[31m", "?[31m"}, Row{"a\nb", "a?b"}, Row{"\xc2\xb1\xc2\xb1", "\xc2\xb1\xc2\xb1"});
  CHECK(printable(row.bytes) == row.shown);
}

TEST_CASE("each byte that is not plain is one question mark") {
  CHECK(printable("\xe2\x88") == "??");
  CHECK(printable("\x80\x80\x80\x80\x80") == "?????");
  CHECK(printable("\xed\xa0\x80") == "???");
}
