#include "bench_doubt.hpp"

#include <algorithm>

namespace quillside {

namespace {

bool reads_angles(const Instrument& row) { return row.error.ends_with("deg") || row.error.ends_with("\u00b0"); }

template <class Quantity>
std::vector<Error<Quantity>> instruments(const Tables& tables, std::string_view what, bool angles,
                                         Range<Quantity> (*read)(std::string_view)) {
  std::vector<Error<Quantity>> found;
  for (const auto& row : tables.readings) {
    if (std::find(row.reads.begin(), row.reads.end(), what) == row.reads.end()) continue;
    if (reads_angles(row) == angles) found.push_back({&row, read(row.error).low});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.instrument->trouble < b.instrument->trouble; });
  return found;
}

template <class Quantity>
Spread<Quantity> doubt(const std::vector<Error<Quantity>>& instruments, const Reading<Quantity>& reading) {
  if (reading.half_width_typed || instruments.empty()) return give_or_take(reading.value, reading.half_width);
  constexpr double coarsest = 16; // in halves of the last digit
  // A 0 has no last digit that tells of an instrument, and one whose error is as large as the reading gave none.
  const bool nothing = !(reading.value > Quantity{});
  const bool digits = reading.half_width > Quantity{} && !nothing;
  const auto credible = std::find_if(instruments.begin(), instruments.end(), [&](const auto& one) {
    if (!nothing && !(one.half_width < reading.value)) return false;
    return !digits || one.half_width <= coarsest * reading.half_width;
  });
  const auto finest = std::min_element(instruments.begin(), instruments.end(),
                                       [](const auto& a, const auto& b) { return a.half_width < b.half_width; });
  const Quantity usual = (credible == instruments.end() ? finest : credible)->half_width;
  return give_or_take(reading.value, nothing ? usual : std::max(reading.half_width, usual));
}

} // namespace

std::vector<Error<Length>> length_instruments(const Tables& tables, std::string_view what) {
  return instruments<Length>(tables, what, false, read_length_range);
}
std::vector<Error<Angle>> angle_instruments(const Tables& tables, std::string_view what) {
  return instruments<Angle>(tables, what, true, read_angle_range);
}

Spread<Length> doubt_of(const Tables& tables, std::string_view what, const Reading<Length>& reading) {
  return doubt(length_instruments(tables, what), reading);
}
Spread<Angle> doubt_of(const Tables& tables, std::string_view what, const Reading<Angle>& reading) {
  return doubt(angle_instruments(tables, what), reading);
}

} // namespace quillside
