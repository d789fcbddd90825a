#include "shell_words.hpp"

#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside::cli {

std::vector<std::string> shell_words(std::string_view line) {
  std::vector<std::string> words;
  std::string word;
  bool in_word = false;
  char quote = '\0';
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    const bool has_next = i + 1 < line.size();
    if (quote == '\'') {
      if (c == '\'')
        quote = '\0';
      else
        word += c;
    } else if (quote == '"') {
      if (c == '"')
        quote = '\0';
      else if (c == '\\' && has_next && (line[i + 1] == '"' || line[i + 1] == '\\'))
        word += line[++i];
      else
        word += c;
    } else if (c == '\'' || c == '"') {
      quote = c;
      in_word = true;
    } else if (c == '\\' && has_next) {
      word += line[++i];
      in_word = true;
    } else if (c == ' ') {
      if (in_word) words.push_back(std::move(word));
      word.clear();
      in_word = false;
    } else {
      word += c;
      in_word = true;
    }
  }
  if (quote != '\0') throw wrong_word(printable(word), std::string("begins with a quote that is not closed: ") + quote);
  if (in_word) words.push_back(std::move(word));
  return words;
}

} // namespace quillside::cli
