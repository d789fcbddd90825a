#pragma once
// What the chip, the hole, the worn tool tell: every row of the table of signs that holds the words, best first.

#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/tables.hpp>

namespace quillside {

/// No words: every sign. Throws a Fault of the kind `word` when no sign holds them; it suggests the nearest word.
Answer signs(const Tables& tables, const std::vector<std::string>& words);

} // namespace quillside
