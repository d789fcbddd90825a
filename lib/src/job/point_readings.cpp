#include "point_readings.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/model/lip_angles.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

[[noreturn]] void needs(const char* one, const char* other) {
  throw contradiction(one, std::string(one) + " needs " + other);
}

template <class T> std::string typed(const std::optional<Typed<T>>& word) { return word->text.value_or(""); }

void refuse_halves(const PointQuestion& ask) {
  if (ask.drop && !ask.turn) needs("--drop", "--turn, the angle the drill was turned by");
  if (ask.turn && !ask.drop) needs("--turn", "--drop, how far the flank fell away over it");
  if (ask.gauge_angle && !ask.light) needs("--gauge-angle", "--light, where light showed at each lip");
  if (ask.light && !ask.gauge_angle) needs("--light", "--gauge-angle, the angle of the gauge it was held against");
  if (ask.light_gap && !ask.light) needs("--light-gap", "--light, where it showed");
  if (ask.feed && !ask.chips) needs("--feed", "--chips, out of how many flutes they came at that feed");
}

void require_angle(const std::optional<Typed<Reading<Angle>>>& word, Angle least, Angle most, const char* what) {
  if (!word) return;
  if (!(word->value.half_width < word->value.value))
    throw wrong_word(typed(word),
                     std::string("is no reading of the ") + what + ": its error is as large as the reading");
  if (word->value.value >= least && word->value.value <= most) return;
  throw wrong_word(typed(word),
                   std::string("is no ") + what + ": give " + print_angle(least) + " to " + print_angle(most) + " deg");
}

void require_positive(const std::optional<Typed<Reading<Length>>>& word, const char* what) {
  if (word && !(word->value.value > mm(0)))
    throw wrong_word(typed(word), std::string("is no ") + what + ": give more than 0");
  if (word && !(word->value.half_width < word->value.value))
    throw wrong_word(typed(word), std::string("is no reading of a ") + what + ": its error is as large as the reading");
}

/// A length that no drill of that size shows: mostly a unit forgotten.
void require_share(Length diameter, const std::optional<Typed<Reading<Length>>>& word, const char* flag,
                   Range<double> share) {
  if (!word) return;
  const double is = word->value.value / diameter;
  if (is >= share.low && is <= share.high) return;
  const auto in_mm_of = [](Length length) { return print_length_with_unit(length, UnitSystem::metric); };
  throw contradiction(typed(word), std::string(flag) + " " + typed(word) + " is " + in_mm_of(word->value.value) +
                                       ", and a drill of " + in_mm_of(diameter) + " shows " +
                                       in_mm_of(share.low * diameter) + " to " + in_mm_of(share.high * diameter) +
                                       "; is its unit right?");
}
void require_shares(Length diameter, const std::optional<Typed<Pair<Reading<Length>>>>& word, const char* flag,
                    Range<double> share) {
  if (!word) return;
  for (const auto& one : word->value) require_share(diameter, Typed<Reading<Length>>{one, word->text}, flag, share);
}

void refuse_beyond_drill(const Tables& tables, const PointQuestion& ask) {
  const Length diameter = ask.size.value.length;
  const auto share = [&](const char* key) { return limit(tables.limits, key).ratio; };
  const Range<double> deep{share("lip_depth_least"), share("lip_depth_most")};
  require_share(diameter, ask.lip_depth, "--lip-depth", deep);
  require_share(diameter, ask.point_length, "--point-length", deep);
  require_shares(diameter, ask.lip_lengths, "--lip-lengths", {share("lip_length_least"), share("lip_length_most")});
  require_share(diameter, ask.lip_height, "--lip-height", {0, share("lip_height_most")});
  require_share(diameter, ask.chisel_length, "--chisel-length",
                {share("chisel_length_least"), share("chisel_length_most")});
  if (ask.drop && ask.turn) {
    constexpr Angle steepest = degrees(60); // of a relief, as of one that is typed
    const double most = uniform_drop({diameter / 2.0, ask.turn->value.value}, steepest) / diameter;
    require_share(diameter, ask.drop, "--drop", {0, most});
  }
  require_shares(diameter, ask.light_gap, "--light-gap", {0, share("light_gap_most")});
  require_share(diameter, ask.trial_hole, "--trial-hole", {share("trial_hole_least"), share("trial_hole_most")});
  require_share(diameter, ask.land_wear, "--land-wear", {0, share("land_wear_most")});
  require_share(diameter, ask.margin_wear, "--margin-wear", {0, share("margin_wear_most")});
}

void refuse_impossible(const Tables& tables, const PointQuestion& ask) {
  require_angle(ask.angle, degrees(40), degrees(175), "included angle of a point");
  require_angle(ask.relief, degrees(0.1), degrees(60), "lip relief");
  require_angle(ask.turn, degrees(1), degrees(120), "turn behind a lip");
  require_angle(ask.gauge_angle, degrees(30), degrees(178), "gauge that a point stands in");
  if (ask.chisel) {
    const Angle angle = ask.chisel->value.value;
    if (!(angle >= degrees(33) && angle <= degrees(147)) || (angle > degrees(89) && angle < degrees(91)))
      throw wrong_word(typed(ask.chisel), "is no chisel edge angle: give the obtuse one, 91 to 147 deg, or its "
                                          "supplement, 33 to 89 deg");
  }
  if (ask.half_angles)
    for (const auto& half : ask.half_angles->value)
      if (!(half.value >= degrees(20) && half.value <= degrees(87.5)))
        throw wrong_word(typed(ask.half_angles), "is no pair of half angles: give 20 to 87.5 deg each, from the axis "
                                                 "to the lip");
  for (const auto& [word, what] : {std::pair{&ask.lip_depth, "lip depth"},
                                   {&ask.point_length, "point length"},
                                   {&ask.web, "web"},
                                   {&ask.chisel_length, "chisel edge"},
                                   {&ask.trial_hole, "trial hole"}})
    require_positive(*word, what);
  if (ask.lip_lengths)
    for (const auto& length : ask.lip_lengths->value)
      if (!(length.value > length.half_width))
        throw wrong_word(typed(ask.lip_lengths), "is no pair of lip lengths: give more than 0 each");
  if (ask.feed && !(ask.feed->value > mm_per_rev(0))) throw wrong_word(typed(ask.feed), "is no feed: give more than 0");
  const Length diameter = ask.size.value.length;
  if (ask.web && !(ask.web->value.value < diameter))
    throw contradiction(typed(ask.web), "--web " + typed(ask.web) + " is no less than the drill, " +
                                            print_length_with_unit(diameter, UnitSystem::metric));
  if (ask.web && ask.web->value.value > diameter / 2.0)
    throw contradiction(typed(ask.web), "--web " + typed(ask.web) + " is more than half the drill, " +
                                            print_length_with_unit(diameter, UnitSystem::metric) +
                                            ": no twist drill has such a web");
  refuse_beyond_drill(tables, ask);
  if (ask.light && ask.light_gap)
    for (std::size_t lip = 0; lip < 2; ++lip) {
      const bool gap = ask.light_gap->value[lip].value > mm(0);
      if (gap == (ask.light->value[lip] == LightAt::none))
        throw contradiction(typed(ask.light_gap), "--light-gap " + typed(ask.light_gap) + " and --light " +
                                                      typed(ask.light) + " contradict each other at lip " +
                                                      (lip == 0 ? "A" : "B"));
    }
}

/// Never below nothing: a length read near 0 cannot be less.
Spread<Length> at_least_nothing(Spread<Length> spread) {
  return {std::max(spread.low, mm(0)), spread.value, spread.high};
}

Spread<Angle> acute(Spread<Angle> chisel) {
  const Spread<Angle> turned = chisel.value > turns(0.25) ? supplement(chisel) : chisel;
  constexpr Angle least = degrees(32);
  constexpr Angle most = degrees(89.9);
  return {std::max(turned.low, least), std::min(turned.value, most), std::min(turned.high, most)};
}

/// What each mark being off does, one coordinate after another, added up in squares.
template <class Marks, class View, std::size_t count>
std::vector<View> moved_views(const Marks& marks, const std::array<Mark Marks::*, count>& members, double pixels,
                              Length diameter, View (*view)(const Marks&, Length)) {
  std::vector<View> views;
  for (const auto member : members)
    for (const auto coordinate : {&Mark::x, &Mark::y})
      for (const double off : {-pixels, pixels}) {
        Marks moved = marks;
        moved.*member.*coordinate += off;
        views.push_back(view(moved, diameter));
      }
  return views;
}

template <class View, class Part> auto spread_of(const View& read, const std::vector<View>& moved, Part part) {
  const auto value = part(read);
  double below = 0;
  double above = 0;
  for (std::size_t i = 0; i + 1 < moved.size(); i += 2) {
    const double one = (part(moved[i]) - value).value();
    const double other = (part(moved[i + 1]) - value).value();
    const double down = std::max({0.0, -one, -other});
    const double up = std::max({0.0, one, other});
    below += down * down;
    above += up * up;
  }
  using Quantity = std::remove_const_t<decltype(value)>;
  return Spread<Quantity>{value - Quantity::from_value(std::sqrt(below)), value,
                          value + Quantity::from_value(std::sqrt(above))};
}

template <class Read> auto of_photo(const std::string& text, Read read) {
  try {
    return read();
  } catch (const std::domain_error& error) {
    throw wrong_word(text, std::string("are no marks of a drill's point: ") + error.what());
  }
}

MarkedSide marked_side(const Tables& tables, const Typed<MarkReading<SideMarks>>& typed, Length diameter) {
  return of_photo(typed.text.value_or(""), [&] {
    const double pixels = typed.value.pixels.value_or(limit(tables.limits, "mark_error").ratio);
    const SideView read = side_view(typed.value.marks, diameter);
    constexpr std::array members{&SideMarks::corner_a, &SideMarks::inner_a,  &SideMarks::inner_b,
                                 &SideMarks::corner_b, &SideMarks::margin_a, &SideMarks::margin_b};
    const auto moved = moved_views(typed.value.marks, members, pixels, diameter, side_view);
    const auto part = [&](auto member) {
      return spread_of(read, moved, [member](const SideView& view) { return view.*member; });
    };
    return MarkedSide{{part(&SideView::half_a), part(&SideView::half_b)},
                      {part(&SideView::length_a), part(&SideView::length_b)},
                      part(&SideView::height_difference)};
  });
}

MarkedEnd marked_end(const Tables& tables, const Typed<MarkReading<EndMarks>>& typed, Length diameter) {
  return of_photo(typed.text.value_or(""), [&] {
    const double pixels = typed.value.pixels.value_or(limit(tables.limits, "mark_error").ratio);
    const EndView read = end_view(typed.value.marks, diameter);
    constexpr std::array members{&EndMarks::corner_a, &EndMarks::inner_a, &EndMarks::inner_b, &EndMarks::corner_b};
    const auto moved = moved_views(typed.value.marks, members, pixels, diameter, end_view);
    const auto part = [&](auto member) {
      return spread_of(read, moved, [member](const EndView& view) { return view.*member; });
    };
    return MarkedEnd{part(&EndView::web), part(&EndView::chisel_length), part(&EndView::chisel_edge)};
  });
}

/// The feed at which chips were watched: as typed, else whatever the tables give a drill of that size.
Spread<Length> feed_of(const Tables& tables, const PointQuestion& ask) {
  constexpr auto one_turn = Quantity<detail::turn>::from_value(1);
  if (ask.feed) return give_or_take(ask.feed->value * one_turn, mm(0));
  const Length diameter = ask.size.value.length;
  std::optional<Spread<Length>> hull;
  const auto take = [&](Length low, Length high) {
    if (!hull) hull = Spread<Length>{low, low, high};
    hull->low = std::min(hull->low, low);
    hull->high = std::max(hull->high, high);
    hull->value = (hull->low + hull->high) / 2.0;
  };
  for (const auto& row : tables.drilling_feeds) {
    if (!(row.diameter.range.low <= diameter && diameter < row.diameter.range.high)) continue;
    if (row.feed.given())
      take(row.feed.range.low * one_turn, row.feed.range.high * one_turn);
    else
      take(row.share.range.low * diameter, row.share.range.high * diameter);
  }
  if (!hull) needs("--chips", "--feed, the feed they came at: no table has one for this drill");
  return *hull;
}

} // namespace

PointReadings readings_of(const Tables& tables, const PointQuestion& ask) {
  refuse_halves(ask);
  refuse_impossible(tables, ask);
  PointReadings all;
  all.diameter = ask.size.value.length;
  all.thinned = ask.thinned;
  all.split = ask.split;
  const auto read = [&](auto& into, const auto& word, std::string_view what) {
    if (word) into = doubt_of(tables, what, word->value);
  };
  const auto read_pair = [&](auto& into, const auto& word, std::string_view what) {
    if (word) into = {doubt_of(tables, what, word->value[0]), doubt_of(tables, what, word->value[1])};
  };
  read(all.angle, ask.angle, "angle");
  read_pair(all.half_angles, ask.half_angles, "half-angles");
  read(all.lip_depth, ask.lip_depth, "lip-depth");
  read(all.point_length, ask.point_length, "point-length");
  read_pair(all.lip_lengths, ask.lip_lengths, "lip-lengths");
  read(all.lip_height, ask.lip_height, "lip-height");
  read(all.web, ask.web, "web");
  read(all.chisel, ask.chisel, "chisel");
  read(all.chisel_length, ask.chisel_length, "chisel-length");
  read(all.relief, ask.relief, "relief");
  read(all.drop, ask.drop, "drop");
  read(all.turn, ask.turn, "turn");
  read(all.trial_hole, ask.trial_hole, "trial-hole");
  read(all.land_wear, ask.land_wear, "land-wear");
  read(all.margin_wear, ask.margin_wear, "margin-wear");
  for (auto* length : {&all.lip_height, &all.drop, &all.land_wear, &all.margin_wear})
    if (*length) *length = at_least_nothing(**length);
  if (all.relief) all.relief->low = std::max(all.relief->low, degrees(0));
  if (all.chisel) all.chisel = acute(*all.chisel);
  if (ask.light) {
    all.light = LightReadings{doubt_of(tables, "gauge-angle", ask.gauge_angle->value), ask.light->value, {}};
    if (ask.light_gap) {
      all.light->gap = {doubt_of(tables, "light-gap", ask.light_gap->value[0]),
                        doubt_of(tables, "light-gap", ask.light_gap->value[1])};
      for (auto& gap : *all.light->gap) gap = at_least_nothing(gap);
    }
  }
  if (ask.chips) {
    all.chips = ask.chips->value;
    all.feed = feed_of(tables, ask);
  }
  if (ask.side_marks) all.side = marked_side(tables, *ask.side_marks, all.diameter);
  if (ask.end_marks) all.end = marked_end(tables, *ask.end_marks, all.diameter);
  if (ask.machine && ask.machine->value->runout.given()) all.runout = ask.machine->value->runout.range.high;
  return all;
}

} // namespace quillside
