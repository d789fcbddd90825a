#pragma once
// How large a thing is drawn: by a round number, so that a reader can say it. A plan has a scale that is named as 5:1;
// a detail is drawn some times its size.

#include <string>
#include <vector>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// 5:1 draws a millimetre as five. ISO 5455:1979 has 1, 2 and 5 and their tens (from memory, no page seen); 3:1 and
/// 4:1 are there besides, since half a sheet is small.
struct Scale {
  int paper = 1;
  int work = 1;

  /// \param length of the work
  [[nodiscard]] Length drawn(Length length) const { return length * (static_cast<double>(paper) / work); }
  [[nodiscard]] std::string words() const { return std::to_string(paper) + ":" + std::to_string(work); }

  bool operator==(const Scale&) const = default;
};

/// How long a thing is, and the most of the paper that it may take.
struct Fitting {
  Length of_work{};
  Length on_paper{};
};
/// The largest scale at which each fits; the smallest there is, 1:1000, where none does.
Scale largest_scale(const std::vector<Fitting>& all);

/// The greatest round number of times that it may be drawn: 1, 1.5, 2, 2.5... 80. 1 for what is too long: nothing is
/// drawn smaller than it is.
double times_drawn(const Fitting& fitting);
/// "drawn 8 times its size", or "true to size".
std::string how_large(double times);

} // namespace quillside::page
