#include <quillside/job/point.hpp>

#include <quillside/words/fault.hpp>

#include "choices.hpp"

namespace quillside::cli {

namespace {

constexpr Choices<LightAt, 4> lights{"place of light",
                                     {"tip", "middle", "corner", "none"},
                                     {LightAt::tip, LightAt::middle, LightAt::corner, LightAt::none}};
constexpr Choices<Chips, 2> chip_counts{"count of chips", {"one", "two"}, {Chips::one, Chips::two}};

/// Two readings, of lip A and of lip B, parted by one comma.
template <class Read> auto pair_of(const Call& call, std::string_view flag, const char* example, Read read) {
  using Quantity = decltype(read(std::string{}));
  const auto word = call.flag(flag);
  std::optional<Typed<Pair<Quantity>>> pair;
  if (!word) return pair;
  const auto comma = word->find(',');
  if (comma == std::string::npos || word->find(',', comma + 1) != std::string::npos)
    throw wrong_word(
        *word, "is no pair: --" + std::string(flag) + " takes one for each lip, parted by one comma, as " + example,
        {example});
  return std::optional(Typed<Pair<Quantity>>{{read(word->substr(0, comma)), read(word->substr(comma + 1))}, word});
}

template <class Marks>
std::optional<Typed<MarkReading<Marks>>> marks_of(const Call& call, std::string_view flag,
                                                  MarkReading<Marks> (*read)(std::string_view)) {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<MarkReading<Marks>>{read(*word), word};
}

/// A feed is a length a turn; either way of saying it will do.
std::optional<Typed<FeedPerRev>> feed_of(const Call& call, UnitSystem units) {
  const auto word = call.flag("feed");
  if (!word) return std::nullopt;
  if (word->find("/rev") != std::string::npos) return Typed<FeedPerRev>{read_feed_per_rev(*word, units), word};
  return Typed<FeedPerRev>{mm_per_rev(in_mm(read_length(*word, units, "feed"))), word};
}

} // namespace

Reply ask_point(const Call& call, const Session& session) {
  PointQuestion question{session.size(call.words[0], judged_drills)};
  if (call.words.size() > 1) question.material = session.material(call.words[1]);
  if (call.has("machine")) question.machine = session.machine(call, {});
  const auto length_pair = [&](std::string_view flag) {
    return pair_of(call, flag, "3.10mm,3.15mm",
                   [&](const std::string& part) { return read_length_reading(part, session.units()); });
  };
  question.way = choice(call, "way", ways);
  question.feed = feed_of(call, session.units());
  question.angle = session.angle_reading(call, "angle");
  question.half_angles =
      pair_of(call, "half-angles", "59,59.5", [](const std::string& part) { return read_angle_reading(part); });
  question.lip_depth = session.reading(call, "lip-depth");
  question.point_length = session.reading(call, "point-length");
  question.lip_lengths = length_pair("lip-lengths");
  question.lip_height = session.reading(call, "lip-height");
  question.web = session.reading(call, "web");
  question.chisel = session.angle_reading(call, "chisel");
  question.chisel_length = session.reading(call, "chisel-length");
  question.relief = session.angle_reading(call, "relief");
  question.drop = session.reading(call, "drop");
  question.turn = session.angle_reading(call, "turn");
  question.gauge_angle = session.angle_reading(call, "gauge-angle");
  question.light = pair_of(call, "light", "corner,none", [](const std::string& part) { return lights.read(part); });
  question.light_gap = length_pair("light-gap");
  question.trial_hole = session.reading(call, "trial-hole");
  question.chips = choice(call, "chips", chip_counts);
  question.land_wear = session.reading(call, "land-wear");
  question.margin_wear = session.reading(call, "margin-wear");
  question.thinned = call.has("thinned");
  question.split = call.has("split");
  question.side_marks = marks_of(call, "side-marks", read_side_marks);
  question.end_marks = marks_of(call, "end-marks", read_end_marks);
  return {point(session.tables(), question)};
}

} // namespace quillside::cli
