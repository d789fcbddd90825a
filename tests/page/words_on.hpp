#pragma once
// What is lettered on a drawing. Sheets are counted from 0.

#include <algorithm>
#include <cmath>
#include <string>

#include <quillside/page/canvas.hpp>

namespace quillside::test {

/// Each text behind the other, with a blank after each.
inline std::string words_on(const page::Canvas& canvas) {
  std::string all;
  for (const auto& text : canvas.texts()) all += text.text + " ";
  return all;
}
inline std::string words_on(const page::Canvas& canvas, int sheet) {
  std::string all;
  for (const auto& text : canvas.texts())
    if (text.sheet == sheet) all += text.text + " ";
  return all;
}
inline bool says(const page::Canvas& canvas, const std::string& words) {
  return words_on(canvas).find(words) != std::string::npos;
}

/// Whether one of the texts is this, whole.
inline bool lettered(const page::Canvas& canvas, const std::string& text) {
  return std::any_of(canvas.texts().begin(), canvas.texts().end(), [&](const auto& one) { return one.text == text; });
}
inline bool lettered(const page::Canvas& canvas, int sheet, const std::string& text) {
  return std::any_of(canvas.texts().begin(), canvas.texts().end(),
                     [&](const auto& one) { return one.sheet == sheet && one.text == text; });
}

/// To a tenth, as every angle is printed: 59, 17.5.
inline std::string tenth(double angle) {
  std::string text = std::to_string(std::round(angle * 10) / 10);
  text.resize(text.find('.') + 2);
  return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

} // namespace quillside::test
