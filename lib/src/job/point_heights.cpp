#include "point_heights.hpp"

#include <algorithm>
#include <vector>

#include <quillside/model/photo_marks.hpp>
#include <quillside/model/uneven_lips.hpp>

#include "evidence.hpp"
#include "point_angles.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

/// On a cone the inner end of a lip shifts with its height too: the lengths make 9 to 21 % too much of it (measured on
/// solids).
Spread<Length> with_shifted_ends(const Spread<Length>& height) {
  constexpr double least = 0.8;
  constexpr double usual = 0.9;
  return {height.low > mm(0) ? least * height.low : height.low, usual * height.value,
          height.high < mm(0) ? least * height.high : height.high};
}

Spread<Length> height_of_lengths(PointWork& work, const Pair<Spread<Length>>& lengths) {
  const auto& point = work.point;
  const Length at_radius = work.readings.diameter / 4.0;
  const auto relation = [&](Length a, Length b, Angle half_a, Angle half_b) {
    return height_difference({apex_offset_of_lengths({a, b, half_a, half_b}), half_a, half_b, at_radius});
  };
  // Half angles nobody read may differ by what is kept, and then lips of one length are not of one height. Were they
  // further apart the point would be none to keep, whatever its heights.
  const auto with_difference = [&](Length a, Length b, Angle both, Angle apart) {
    return relation(a, b, both + apart / 2.0, both - apart / 2.0);
  };
  Spread<Length> height =
      halves_known(point)
          ? work.through("--lip-lengths", relation, lengths[0], lengths[1], half_angle(point, 0), half_angle(point, 1))
          : work.through("--lip-lengths", with_difference, lengths[0], lengths[1], half_of_whole(point),
                         apart_by(work.defaults.kept_difference));
  if (work.cone()) height = with_shifted_ends(height);
  work.because("lip height from the lengths of the lips", lip_lengths_law, height);
  return height;
}

void heed_chips_of_one(PointWork& work, const Spread<Length>& half_feed) {
  auto& height = work.point.height;
  work.because("half the feed: the lips differ by at least this", chip_share_law, half_feed);
  if (height && height->spread.high < half_feed.low)
    contradict("the lips differ in height by", *height, {half_feed, "--chips one, which asks half the feed at least,"});
  if (height) return;
  const Length no_more = work.readings.diameter / 10.0; // more than that is seen without any reading
  height = Known<Length>{at_most(Spread<Length>{half_feed.low, half_feed.value, no_more}, no_more), "--chips"};
  work.point.height_is_floor = true;
}

void heed_chips_of_two(PointWork& work, const Spread<Length>& half_feed) {
  auto& height = work.point.height;
  work.because("half the feed: the lips differ by less", chip_share_law, half_feed);
  if (height && height->spread.low > half_feed.high)
    contradict("the lips differ in height by", *height,
               {half_feed, "--chips two, which asks less than half the feed,"});
  if (height)
    height->spread = at_most(height->spread, half_feed.high);
  else
    height = Known<Length>{{mm(0), half_feed.value / 2.0, half_feed.high}, "--chips"};
}

void heed_chips(PointWork& work) {
  if (!work.readings.chips) return;
  const Spread<Length> half_feed = propagate([](Length feed) { return feed / 2.0; }, *work.readings.feed);
  if (*work.readings.chips == Chips::one) return heed_chips_of_one(work, half_feed);
  heed_chips_of_two(work, half_feed);
}

} // namespace

void solve_heights(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  std::vector<Known<Length>> known;
  std::optional<Spread<Length>> with_sign; // the narrowest
  const auto take_signed = [&](const Spread<Length>& height, const char* from) {
    known.push_back({magnitude(height), from});
    if (!with_sign || height.high - height.low < with_sign->high - with_sign->low) with_sign = height;
  };
  if (readings.lip_height) known.push_back({*readings.lip_height, "--lip-height"});
  if (readings.lip_lengths && work.inner_ends_moved())
    work.not_judged("--lip-lengths");
  else if (readings.lip_lengths)
    take_signed(height_of_lengths(work, *readings.lip_lengths), "--lip-lengths");
  if (readings.side) {
    take_signed(readings.side->height, "--side-marks");
    work.because("lip height from the photograph", side_marks_law, readings.side->height);
  }
  if (!known.empty()) point.height = agreed("the lips differ in height by", known);
  if (with_sign && (with_sign->low > mm(0) || with_sign->high < mm(0)))
    point.higher = with_sign->low > mm(0) ? 'A' : 'B';
  heed_chips(work);
}

} // namespace quillside
