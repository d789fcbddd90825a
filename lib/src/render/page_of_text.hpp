#pragma once
// What the text of every ask is made of. Each ask has its own file, text_ASK.cpp; text.cpp joins them.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <quillside/render/text.hpp>

namespace quillside {

/// A line that follows the first one.
struct PageLine {
  std::string text;
  bool step = false;                 // one of an order of work: the page numbers them
  std::vector<std::string> cells;    // where it stands in columns: what it is made of, without the blanks between
  std::optional<std::size_t> indent; // of the lines it is broken into where it is too long; absent: it is not broken

  PageLine(std::string of) : text(std::move(of)) {}
  PageLine(const char* of) : text(of) {}
};
/// A line whose cells stand under those of its neighbours.
PageLine in_columns(std::string text, std::vector<std::string> cells);
/// One of an order of work.
PageLine step_of_work(std::string text);

/// The part of an answer between its first number and its cautions.
struct Page {
  std::string number;          // the number to dial in, for tall digits; empty when there is none
  std::string first;           // the whole first line
  std::vector<PageLine> lines; // what follows
};

Page page_of_drill(const Answer& answer, const TextStyle& style);
Page page_of_mill(const Answer& answer, const TextStyle& style);
Page page_of_chart(const Answer& answer, const TextStyle& style);
Page page_of_burr(const Answer& answer, const TextStyle& style);
Page page_of_fit(const Answer& answer, const TextStyle& style);
Page page_of_gauge(const Answer& answer, const TextStyle& style);
Page page_of_grind(const Answer& answer, const TextStyle& style);
Page page_of_hole(const Answer& answer, const TextStyle& style);
Page page_of_notch(const Answer& answer, const TextStyle& style);
Page page_of_point(const Answer& answer, const TextStyle& style);
Page page_of_signs(const Answer& answer, const TextStyle& style);
Page page_of_size(const Answer& answer, const TextStyle& style);
Page page_of_slot(const Answer& answer, const TextStyle& style);
Page page_of_tables(const Answer& answer, const TextStyle& style);

/// Breaks a line at blanks so that none is longer than a terminal is wide; what follows is set in under its beginning.
/// Ends with a line end.
std::string wrapped(std::string_view line, std::size_t indent);

// Quantities out of an answer; each is nothing when the answer does not have the member.
std::string spindle_speed_of(const Measure& measure);
/// "1100 to 1720 rev/min", or nothing when low and high are the same.
std::string band_of_speed(const Measure& measure);
/// "step 2   wanted 1630, band 1140 to 1790": the rest of a first line.
std::string about_speed(const Answer& answer);
std::string length_of(const Measure& measure, UnitSystem units);
/// "12 lb (6.1 lb to 18 lb)": the value and where it may lie. \param print of one number in the measure's fixed unit
template <class Print> std::string doubted(const Measure& measure, Print print) {
  std::string text = print(measure.value);
  if (measure.low && measure.high && *measure.low < *measure.high)
    text += " (" + print(*measure.low) + " to " + print(*measure.high) + ")";
  return text;
}

} // namespace quillside
