#include "point_solve.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/model/cone_flank.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/four_facet.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/model/uneven_lips.hpp>
#include <quillside/model/wear.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/quantity/propagate.hpp>

#include "evidence.hpp"

namespace quillside {

namespace {

constexpr Angle no_relief = degrees(0.01);   // a flank that does not fall away has no slope to work with
constexpr Angle steepest_edge = degrees(32); // acute; with a web of half the drill it still leaves a lip
constexpr Angle sharpest = degrees(40);
constexpr Angle bluntest = degrees(178);
constexpr Angle square = degrees(89.9); // a chisel edge square to the lips, as nearly as the relations allow

/// Readings for one way of grinding, turned into figures one after another; the included angle that the relief needs is
/// taken from the pass before.
class Solver {
public:
  Solver(GrindingWay way, const PointReadings& readings, const PointDefaults& defaults, const Known<Angle>& included)
      : readings_(readings), defaults_(defaults), included_(included) {
    point_.way = way;
  }

  SolvedPoint solve() {
    find_web();
    find_chisel();
    find_relief();
    find_included();
    find_heel();
    find_heights();
    find_oversize();
    find_wear();
    return std::move(point_);
  }

private:
  /// A relation worked out for a reading; what cannot be said of any point is a contradiction of the reading.
  template <class Relation, class... Quantity>
  auto through(const std::string& from, const Relation& relation, const Spread<Quantity>&... spreads) const {
    try {
      return propagate(relation, spreads...);
    } catch (const std::domain_error& error) {
      throw contradiction(from, from + " is no reading of this drill: " + error.what());
    }
  }

  template <class Quantity> void because(std::string step, const Law& law, const Spread<Quantity>& spread) {
    point_.steps.push_back({std::move(step), &law, Answer::of(spread)});
  }
  void not_judged(const char* flag) { point_.not_judged.emplace_back(flag); }

  [[nodiscard]] bool two_facet() const { return point_.way == GrindingWay::two_facet; }
  [[nodiscard]] bool cone() const { return point_.way == GrindingWay::cone; }
  [[nodiscard]] bool inner_ends_moved() const { return readings_.split || readings_.thinned; }
  [[nodiscard]] PointShape shape(Length web, Angle included) const { return {readings_.diameter, web, included}; }

  /// No web reaches the diameter, no lip goes on without a reach: ends of a wide doubt are cut there.
  [[nodiscard]] Spread<Length> fitting(Spread<Length> web) const {
    return at_most(at_least(web, readings_.diameter * 0.01), readings_.diameter / 2.0);
  }

  static Spread<Angle> within_edges(Spread<Angle> acute) { return at_most(at_least(acute, steepest_edge), square); }

  void find_web() {
    std::vector<Known<Length>> known;
    if (readings_.web) known.push_back({fitting(*readings_.web), "--web"});
    if (readings_.end) because("web from the photograph", end_marks_law, readings_.end->web);
    if (readings_.end) known.push_back({fitting(readings_.end->web), "--end-marks"});
    if (readings_.chisel && readings_.chisel_length && !inner_ends_moved()) {
      const auto web = through(
          "--chisel-length",
          [](Length length, Angle edge) {
            return web_from_chisel({length, edge});
          },
          *readings_.chisel_length, *readings_.chisel);
      known.push_back({fitting(web), "--chisel-length"});
      because("web from the chisel edge", chisel_web_law, web);
    }
    if (!known.empty()) point_.web_found = agreed("the web is", known).spread;
    // Thinning takes the middle away: how far apart the lips lie further out is still that of the drill.
    point_.web_read = !known.empty() && !inner_ends_moved();
    point_.web = point_.web_read ? agreed("the web is", known) : Known<Length>{fitting(defaults_.web), ""};
  }

  void find_chisel() {
    if (inner_ends_moved()) {
      if (readings_.chisel) not_judged("--chisel");
      if (readings_.chisel_length) not_judged("--chisel-length");
      if (readings_.end) not_judged("--end-marks");
      point_.chisel = usual_chisel();
      return;
    }
    std::vector<Known<Angle>> known;
    if (readings_.chisel) known.push_back({*readings_.chisel, "--chisel"});
    if (readings_.end) {
      const auto& edge = readings_.end->chisel_edge;
      known.push_back(
          {within_edges({turns(0.5) - edge.high, turns(0.5) - edge.value, turns(0.5) - edge.low}), "--end-marks"});
      because("chisel edge from the photograph", end_marks_law, edge);
    }
    if (readings_.chisel_length && readings_.web) known.push_back({chisel_of_lengths(), "--chisel-length"});
    point_.chisel_read = !known.empty();
    point_.chisel = point_.chisel_read ? agreed("the chisel edge lies, acute, at", known) : usual_chisel();
    if (readings_.chisel_length)
      point_.chisel_length = *readings_.chisel_length;
    else if (readings_.end)
      point_.chisel_length = readings_.end->chisel_length;
    else if (point_.chisel_read)
      point_.chisel_length = through(
          "--chisel", [](Length web, Angle edge) { return chisel_length(web, edge); }, point_.web.spread,
          point_.chisel.spread);
  }

  [[nodiscard]] Spread<Angle> chisel_of_lengths_spread() const {
    const auto edge = [](Length web, Length chisel) {
      return chisel_edge_from_lengths({std::min(web, chisel), chisel});
    };
    return through("--chisel-length", edge, fitting(*readings_.web), *readings_.chisel_length);
  }
  Spread<Angle> chisel_of_lengths() {
    const auto& chisel = *readings_.chisel_length;
    if (chisel.high < readings_.web->low)
      throw contradiction("--chisel-length", "--chisel-length " + in_words(chisel) + " is shorter than --web " +
                                                 in_words(*readings_.web) +
                                                 ": a chisel edge is as long as the web, or longer");
    const auto spread = within_edges(chisel_of_lengths_spread());
    because("chisel edge from its length", chisel_web_law, spread);
    return spread;
  }

  /// Where nobody read the edge: as flat facets or a cone usually leave it.
  [[nodiscard]] Known<Angle> usual_chisel() const {
    if (two_facet()) return {{degrees(46), degrees(60), degrees(87)}, ""};
    if (cone()) return {{degrees(45), degrees(50), degrees(60)}, ""};
    return {{degrees(47), degrees(60), degrees(72)}, ""};
  }

  void find_relief() {
    std::vector<Known<Angle>> known;
    if (readings_.relief) known.push_back({*readings_.relief, "--relief"});
    if (readings_.drop) known.push_back({relief_of_drop(), "--drop"});
    if (!point_.chisel_read) {
      if (!known.empty()) point_.relief = agreed("the lip relief is", known);
      follow_chisel();
      return;
    }
    const auto most = through(
        point_.chisel.from,
        [&](Angle included, Length web, Angle edge) { return most_relief_of_chisel(shape(web, included), edge); },
        included_.spread, point_.web.spread, point_.chisel.spread);
    because(two_facet() ? "relief from the chisel edge" : "most relief the chisel edge allows", chisel_edge_law, most);
    if (two_facet()) {
      known.push_back({most, point_.chisel.from});
      point_.relief = agreed("the lip relief is", known);
      return;
    }
    for (const auto& one : known)
      if (one.spread.low > most.high)
        contradict("the lip relief is", one, {most, point_.chisel.from + ", which allows no more,"});
    if (known.empty()) {
      point_.relief = Known<Angle>{{degrees(0), most.value, most.high}, point_.chisel.from};
      point_.relief_is_most = true;
      return;
    }
    point_.relief = agreed("the lip relief is", known);
    point_.relief->spread = at_most(point_.relief->spread, most.high);
  }

  /// The chisel edge of two flats follows from their relief.
  void follow_chisel() {
    if (!two_facet() || !point_.relief || inner_ends_moved()) return;
    const auto edge = [&](Angle included, Length web, Angle relief) {
      const PointShape point = shape(web, included);
      const Angle above_least = std::max(relief, least_relief_of_straight_lip(point) + no_relief);
      return turns(0.5) - chisel_edge_of_flat(point, flank_slope(point, above_least));
    };
    const auto spread = through(point_.relief->from, edge, included_.spread, point_.web.spread, point_.relief->spread);
    point_.chisel = {within_edges(spread), point_.relief->from};
    point_.chisel_follows = true;
    because("chisel edge that follows", chisel_edge_law,
            Spread<Angle>{turns(0.5) - spread.high, turns(0.5) - spread.value, turns(0.5) - spread.low});
  }

  /// A dial on the flank: exact for one flat; a cone falls away faster the further it turns, so that its lip has less
  /// than the mean; a flat with a second facet behind it is exact as long as the dial stays on the first.
  Spread<Angle> relief_of_drop() {
    const Length radius = readings_.diameter / 2.0;
    const auto mean = through(
        "--drop",
        [&](Length drop, Angle turn) {
          return mean_relief({radius, turn}, std::max(drop, mm(1e-6)));
        },
        *readings_.drop, *readings_.turn);
    because("mean relief over the turn", mean_relief_law, mean);
    const auto relief = cone() ? cone_relief() : flat_relief();
    return at_least(relief, degrees(0));
  }

  Spread<Angle> flat_relief() {
    const auto exact = through(
        "--drop",
        [&](Angle included, Length web, Length drop, Angle turn) {
          const PointShape point = shape(web, included);
          try {
            return relief_of_slope(point, slope_of_flat_drop(point, {readings_.diameter / 2.0, turn}, drop));
          } catch (const std::domain_error&) {
            return least_relief_of_straight_lip(point); // a flank that hardly falls away, or rises
          }
        },
        included_.spread, point_.web.spread, *readings_.drop, *readings_.turn);
    because("relief from the drop of a flat", flat_drop_law, exact);
    // With a second facet the dial leaves the first one where the boundary on the axis comes under it.
    const Angle boundary = radians(std::asin(point_.web.spread.low / readings_.diameter));
    if (two_facet() || readings_.turn->high <= boundary) return exact;
    const Angle least = least_relief_of_straight_lip(shape(point_.web.spread.value, included_.spread.value));
    return {std::min(least, exact.value), (std::min(least, exact.value) + exact.value) / 2.0, exact.high};
  }

  /// Between a steep cone, which falls away fastest, and a blunt one.
  Spread<Angle> cone_relief() {
    const auto of_cone = [&](double share) {
      return through(
          "--drop",
          [&](Angle included, Length web, Length drop, Angle turn) {
            const PointShape point = shape(web, included);
            try {
              return relief_of_cone_drop(
                  {point, point_.chisel.spread.value, included / 2.0 * share, {readings_.diameter / 2.0, turn}, drop});
            } catch (const std::domain_error&) {
              return mean_relief({readings_.diameter / 2.0, turn}, std::max(drop, mm(1e-6)));
            }
          },
          included_.spread, point_.web.spread, *readings_.drop, *readings_.turn);
    };
    const auto steep = of_cone(steep_cone);
    const auto usual = of_cone(usual_cone);
    const auto blunt = of_cone(blunt_cone);
    const Spread<Angle> all{std::min({steep.low, usual.low, blunt.low}), usual.value,
                            std::max({steep.high, usual.high, blunt.high})};
    because("relief of a cone with that drop", cone_drop_law, all);
    return all;
  }

  void find_included() {
    std::vector<Known<Angle>> known;
    if (readings_.angle) known.push_back({*readings_.angle, "--angle"});
    find_halves(known);
    if (readings_.lip_depth) of_lip_depth(known);
    if (readings_.point_length) of_point_length(known);
    if (readings_.lip_lengths) of_lip_lengths(known);
    // A shallow relation may reach beyond any point: its ends are cut at a needle and at a flat.
    for (auto& one : known) one.spread = at_most(at_least(one.spread, sharpest), bluntest);
    point_.included_read = !known.empty();
    point_.included =
        point_.included_read ? agreed("the included angle is", known) : Known<Angle>{defaults_.included, ""};
  }

  void find_halves(std::vector<Known<Angle>>& included) {
    Pair<std::vector<Known<Angle>>> known;
    const auto add = [&](const Pair<Spread<Angle>>& halves, const char* from) {
      for (std::size_t lip = 0; lip < 2; ++lip) known[lip].push_back({halves[lip], from});
    };
    const auto sum = [](Angle a, Angle b) { return a + b; };
    if (readings_.half_angles) {
      add(*readings_.half_angles, "--half-angles");
      included.push_back({propagate(sum, (*readings_.half_angles)[0], (*readings_.half_angles)[1]), "--half-angles"});
    }
    if (readings_.side) {
      add(readings_.side->half, "--side-marks");
      included.push_back({propagate(sum, readings_.side->half[0], readings_.side->half[1]), "--side-marks"});
      because("half angle of lip A from the photograph", side_marks_law, readings_.side->half[0]);
      because("half angle of lip B from the photograph", side_marks_law, readings_.side->half[1]);
    }
    if (readings_.light) of_light(known, included);
    if (known[0].empty()) return;
    point_.halves = {agreed("half angle A is", known[0]), agreed("half angle B is", known[1])};
    const bool by_light = (*point_.halves)[0].from == "--light" && (*point_.halves)[1].from == "--light";
    point_.half_difference = by_light && readings_.light->gap ? difference_of_light() : difference(half(0), half(1));
  }

  /// One gauge, one web, one chisel edge: only the gaps make a difference of the lips.
  [[nodiscard]] Spread<Angle> difference_of_light() const {
    const auto& light = *readings_.light;
    const auto half_with = [&](std::size_t lip, Length gap) {
      const auto where = light.at[lip] == LightAt::corner ? LightGap::Where::corner
                         : light.at[lip] == LightAt::tip  ? LightGap::Where::tip
                                                          : LightGap::Where::none;
      return half_angle_from_light(
          light.gauge.value, {readings_.diameter, point_.web.spread.value, point_.chisel.spread.value, {where, gap}});
    };
    return magnitude(through(
        "--light-gap", [&](Length a, Length b) { return half_with(0, a) - half_with(1, b); }, (*light.gap)[0],
        (*light.gap)[1]));
  }

  void of_light(Pair<std::vector<Known<Angle>>>& known, std::vector<Known<Angle>>& included) {
    const Pair<Spread<Angle>> halves = {half_of_light(0), half_of_light(1)};
    point_.halves_are_bounds = known[0].empty() && !light_tells_size();
    for (std::size_t lip = 0; lip < 2; ++lip) known[lip].push_back({at_most(halves[lip], bluntest / 2.0), "--light"});
    // One gauge, one web: what is off for one lip is off for the other as much.
    included.push_back(
        {{halves[0].low + halves[1].low, halves[0].value + halves[1].value, halves[0].high + halves[1].high},
         "--light"});
    because("included angle against the gauge", light_gap_law, included.back().spread);
  }

  /// A magnitude: two halves as far apart either way.
  static Spread<Angle> difference(const Spread<Angle>& a, const Spread<Angle>& b) {
    const auto signed_one = propagate([](Angle one, Angle other) { return one - other; }, a, b);
    return magnitude(signed_one);
  }
  template <class Quantity> static Spread<Quantity> magnitude(const Spread<Quantity>& spread) {
    const Quantity value = std::max(spread.value, -spread.value);
    const Quantity high = std::max(spread.high, -spread.low);
    const bool straddles = spread.low <= Quantity{} && spread.high >= Quantity{};
    return {straddles ? Quantity{} : std::min(std::max(spread.low, -spread.low), std::max(spread.high, -spread.high)),
            value, high};
  }

  /// Light tells how far off a lip is where its gap was measured, where there was none, or where only its middle is
  /// hollow: then both ends touch.
  [[nodiscard]] bool light_tells_size() const {
    const auto& light = *readings_.light;
    return light.gap || std::none_of(light.at.begin(), light.at.end(),
                                     [](LightAt at) { return at == LightAt::corner || at == LightAt::tip; });
  }

  Spread<Angle> half_of_light(std::size_t lip) {
    const auto& light = *readings_.light;
    const LightAt at = light.at[lip];
    if (at == LightAt::middle) note_bow(lip);
    if (at == LightAt::middle || at == LightAt::none) return unseen_light();
    if (!light.gap) return sized_by_nobody(at);
    const auto spread = at == LightAt::corner ? half_of_corner((*light.gap)[lip]) : half_of_tip((*light.gap)[lip]);
    because(lip == 0 ? "half angle of lip A from its light" : "half angle of lip B from its light", light_gap_law,
            spread);
    return spread;
  }

  [[nodiscard]] Spread<Angle> half_of_corner(const Spread<Length>& gap) const {
    const auto half = [&](Angle gauge, Length web, Angle chisel, Length light) {
      return half_angle_from_light(gauge, {readings_.diameter, web, chisel, {LightGap::Where::corner, light}});
    };
    return through("--light-gap", half, readings_.light->gauge, point_.web.spread, point_.chisel.spread, gap);
  }

  /// Light under the tip is what the notch is deep less what the point is long: a reading over the tip, and on a cone
  /// it decides as little.
  Spread<Angle> half_of_tip(const Spread<Length>& gap) {
    const Length least = 0.01 * readings_.diameter;
    const auto long_as = [&](Angle gauge, Length web, Length light) {
      return std::max(least, corner_reach(shape(web, degrees(118))) / tangent(gauge / 2.0) - light);
    };
    const auto length = through("--light-gap", long_as, readings_.light->gauge, point_.web.spread, gap);
    const auto whole = length_as_angle("--light-gap", at_least(length, least));
    const Spread<Angle> half{whole.low / 2.0, whole.value / 2.0, whole.high / 2.0};
    return at_least(half, unseen_light().low);
  }

  /// Sharper, or blunter, than the gauge by more than the least that shows; by how much, nobody measured.
  [[nodiscard]] Spread<Angle> sized_by_nobody(LightAt at) const {
    const auto unseen = unseen_light();
    const Angle off = (unseen.high - unseen.low) / 2.0;
    const Angle side = readings_.light->gauge.value / 2.0;
    constexpr Angle no_more = degrees(15); // a point further off than that is seen without a gauge
    if (at == LightAt::corner) return {side - no_more, side - off, std::max(side - off, unseen.high)};
    const Angle value = std::min(side + off, bluntest / 2.0);
    return {std::min(unseen.low, value), value, std::max(value, std::min(side + no_more, bluntest / 2.0))};
  }

  /// No light: the lip follows the gauge to within the narrowest gap that shows.
  [[nodiscard]] Spread<Angle> unseen_light() const {
    const auto& gauge = readings_.light->gauge;
    const Length reach = lip_reach(shape(point_.web.spread.value, gauge.value), point_.chisel.spread.value);
    const double slack = defaults_.least_light * sine(gauge.value / 2.0) / reach;
    const Angle unseen = radians(slack);
    return propagate([](Angle whole, Angle off) { return whole / 2.0 + off; }, gauge,
                     Spread<Angle>{-unseen, turns(0), unseen});
  }

  void note_bow(std::size_t lip) {
    const auto& light = *readings_.light;
    const Spread<Length> hollow =
        light.gap ? (*light.gap)[lip]
                  : Spread<Length>{defaults_.least_light, 2.0 * defaults_.least_light, 10.0 * defaults_.least_light};
    if (!point_.bow || hollow.value > point_.bow->spread.value) point_.bow = Known<Length>{hollow, "--light"};
  }

  void of_lip_depth(std::vector<Known<Angle>>& known) {
    if (inner_ends_moved()) return not_judged("--lip-depth");
    const auto spread = depth_as_angle("--lip-depth", *readings_.lip_depth);
    known.push_back({spread, "--lip-depth"});
  }

  /// From a depth to the inner end of the lip: by the chisel edge that was read, else by the relief of two flats.
  Spread<Angle> depth_as_angle(const std::string& from, const Spread<Length>& depth) {
    if (!point_.chisel_read && two_facet() && point_.relief) return flat_depth_as_angle(from, depth);
    const auto relation = [&](Length web, Angle chisel, Length read) {
      return included_from_lip_depth({readings_.diameter, web, chisel, read});
    };
    const auto spread = through(from, relation, point_.web.spread, point_.chisel.spread, depth);
    because("included angle from " + from.substr(2), lip_depth_law, spread);
    return spread;
  }
  Spread<Angle> flat_depth_as_angle(const std::string& from, const Spread<Length>& depth) {
    const auto relation = [&](Length web, Angle relief, Length read) {
      return included_from_flat_lip_depth({readings_.diameter, web, relief, read});
    };
    const auto spread = through(from, relation, point_.web.spread, point_.relief->spread, depth);
    because("included angle from " + from.substr(2), flat_lip_depth_law, spread);
    return spread;
  }

  void of_point_length(std::vector<Known<Angle>>& known) {
    if (inner_ends_moved()) return not_judged("--point-length");
    known.push_back({length_as_angle("--point-length", *readings_.point_length), "--point-length"});
  }

  /// Over the tip. The top of flat facets lies where the first facet meets the axis; a cone's stands out by no one
  /// knows how much, so that between two angles nothing is decided.
  Spread<Angle> length_as_angle(const std::string& from, const Spread<Length>& length) {
    if (two_facet()) return depth_as_angle(from, length);
    if (!cone() && point_.relief && !point_.relief_is_most) return flat_depth_as_angle(from, length);
    const auto bound = [&](Angle IncludedBounds::*end) {
      return [this, end](Length web, Angle chisel, Length read) {
        return included_from_point_length({readings_.diameter, web, chisel, read}, 0).*end;
      };
    };
    const auto least = through(from, bound(&IncludedBounds::least), point_.web.spread, point_.chisel.spread, length);
    const auto most = through(from, bound(&IncludedBounds::most), point_.web.spread, point_.chisel.spread, length);
    const Spread<Angle> spread{least.low, (least.value + most.value) / 2.0, most.high};
    because("included angle from " + from.substr(2) + ", between", point_length_law, spread);
    return spread;
  }

  void of_lip_lengths(std::vector<Known<Angle>>& known) {
    const auto& lengths = *readings_.lip_lengths;
    const auto mean = propagate([](Length a, Length b) { return (a + b) / 2.0; }, lengths[0], lengths[1]);
    if (readings_.lip_depth && !inner_ends_moved()) {
      if (readings_.lip_depth->low > mean.high)
        throw contradiction("--lip-depth", "--lip-depth " + in_words(*readings_.lip_depth) +
                                               " is more than --lip-lengths, in the mean " + in_words(mean) +
                                               ": no lip is deeper than it is long");
      const auto triangle = [](Length length, Length depth) {
        return included_from_lip_triangle({length, std::min(depth, length * 0.999)});
      };
      const auto spread = through("--lip-lengths", triangle, mean, *readings_.lip_depth);
      because("included angle from lip depth and length", depth_over_length_law, spread);
      known.push_back({spread, "--lip-lengths with --lip-depth"});
    }
    if (inner_ends_moved()) return not_judged("--lip-lengths for the angle");
    const auto reach = through(
        "--lip-lengths", [&](Length web, Angle edge) { return lip_reach(shape(web, degrees(118)), edge); },
        point_.web.spread, point_.chisel.spread);
    if (mean.high < reach.low)
      throw contradiction("--lip-lengths", "--lip-lengths, in the mean " + in_words(mean) +
                                               ", are shorter than the lips reach from web to margin, " +
                                               in_words(reach) + ": no drill has such lips");
    const auto angle = [&](Length web, Angle edge, Length length) {
      const Length least = lip_reach(shape(web, degrees(118)), edge);
      return included_from_lip_length({readings_.diameter, web, edge, std::max(length, least * 1.0000001)});
    };
    auto spread = through("--lip-lengths", angle, point_.web.spread, point_.chisel.spread, mean);
    // Where the reach may be as long as the lip, how blunt the point is cannot be told.
    if (reach.high >= mean.low) spread.high = bluntest;
    spread = {spread.low, std::min(spread.value, (spread.low + spread.high) / 2.0), spread.high};
    because("included angle from the lengths of the lips", lip_length_angle_law, spread);
    known.push_back({spread, "--lip-lengths"});
  }

  void find_heel() {
    if (readings_.drop && readings_.turn->low >= defaults_.land && readings_.drop->low > mm(0))
      point_.heel_clears = true;
    if (!point_.relief || point_.relief_is_most) return;
    if (cone()) {
      point_.heel_clears = true; // a cone falls away ever faster behind its lip
      return;
    }
    const auto above_least = [](PointShape point, Angle relief) {
      return std::max(relief, least_relief_of_straight_lip(point) + no_relief);
    };
    if (two_facet() && point_.chisel_read) {
      // The edge itself shows where the two flats meet: neither angle nor relief is needed.
      point_.heel = through(
          point_.chisel.from,
          [&](Length web, Angle edge) {
            return 2.0 * (radians(std::asin(web / readings_.diameter)) + turns(0.25) - edge);
          },
          point_.web.spread, point_.chisel.spread);
      because("turn at which the heel is back at the lip", flat_heel_law, *point_.heel);
    } else if (two_facet()) {
      point_.heel = through(
          point_.relief->from,
          [&](Angle included, Length web, Angle relief) {
            const PointShape point = shape(web, included);
            return heel_clear_angle(FlatFlank{point, flank_slope(point, above_least(point, relief))});
          },
          point_.included.spread, point_.web.spread, point_.relief->spread);
      because("turn at which the heel is back at the lip", flat_heel_law, *point_.heel);
    } else if (point_.chisel_read) {
      point_.heel = through(
          point_.chisel.from,
          [&](Angle included, Length web, Angle relief, Angle edge) {
            const PointShape point = shape(web, included);
            return heel_of_four(point, flank_slope(point, above_least(point, relief)), edge);
          },
          point_.included.spread, point_.web.spread, point_.relief->spread, point_.chisel.spread);
      because("turn at which the heel is back at the lip", four_facet_heel_law, *point_.heel);
    }
  }

  /// A chisel edge that asks no second facet steeper than the first is that of one flat.
  static Angle heel_of_four(PointShape point, double first, Angle edge) {
    try {
      const double second = second_slope_of_chisel({point.included, first}, edge);
      return heel_clear_angle(FourFacet{point, first, second, mm(0)});
    } catch (const std::domain_error&) {
      return heel_clear_angle(FlatFlank{point, first});
    }
  }

  void find_heights() {
    std::vector<Known<Length>> known;
    std::optional<Known<Length>> with_sign;
    const auto take_signed = [&](const Spread<Length>& height, const char* from) {
      known.push_back({magnitude(height), from});
      if (!with_sign || height.high - height.low < with_sign->spread.high - with_sign->spread.low)
        with_sign = Known<Length>{height, from};
    };
    if (readings_.lip_height) known.push_back({*readings_.lip_height, "--lip-height"});
    if (readings_.lip_lengths && inner_ends_moved())
      not_judged("--lip-lengths");
    else if (readings_.lip_lengths)
      take_signed(height_of_lengths(*readings_.lip_lengths), "--lip-lengths");
    if (readings_.side) {
      take_signed(readings_.side->height, "--side-marks");
      because("lip height from the photograph", side_marks_law, readings_.side->height);
    }
    if (!known.empty()) point_.height = agreed("the lips differ in height by", known);
    if (with_sign && (with_sign->spread.low > mm(0) || with_sign->spread.high < mm(0)))
      point_.higher = with_sign->spread.low > mm(0) ? 'A' : 'B';
    heed_chips();
    heed_hole();
  }

  Spread<Length> height_of_lengths(const Pair<Spread<Length>>& lengths) {
    const Length at_radius = readings_.diameter / 4.0;
    const auto relation = [&](Length a, Length b, Angle half_a, Angle half_b) {
      return height_difference({apex_offset_of_lengths({a, b, half_a, half_b}), half_a, half_b, at_radius});
    };
    Spread<Length> height{};
    if (halves_known()) {
      height = through("--lip-lengths", relation, lengths[0], lengths[1], half(0), half(1));
    } else {
      // Half angles nobody read may differ by what is kept, and then lips of one length are not of one height. Were
      // they further apart the point would be none to keep, whatever its heights.
      const auto with_difference = [&](Length a, Length b, Angle both, Angle apart) {
        return relation(a, b, both + apart / 2.0, both - apart / 2.0);
      };
      height = through("--lip-lengths", with_difference, lengths[0], lengths[1], half_of_whole(),
                       within(defaults_.kept_difference));
    }
    if (cone()) height = with_shifted_ends(height);
    because("lip height from the lengths of the lips", lip_lengths_law, height);
    return height;
  }

  /// On a cone the inner end of a lip shifts with its height too: the lengths make 9 to 21 % too much of it (measured
  /// on solids).
  static Spread<Length> with_shifted_ends(const Spread<Length>& height) {
    constexpr double least = 0.8;
    constexpr double usual = 0.9;
    return {height.low > mm(0) ? least * height.low : height.low, usual * height.value,
            height.high < mm(0) ? least * height.high : height.high};
  }

  [[nodiscard]] bool halves_known() const { return point_.halves && !point_.halves_are_bounds; }
  [[nodiscard]] const Spread<Angle>& half(std::size_t lip) const { return (*point_.halves)[lip].spread; }
  [[nodiscard]] Spread<Angle> half_of_whole() const {
    return propagate([](Angle whole) { return whole / 2.0; }, point_.included.spread);
  }
  static Spread<Angle> within(Angle difference) { return {-difference, turns(0), difference}; }

  void heed_chips() {
    if (!readings_.chips) return;
    const Spread<Length> half_feed = propagate([](Length feed) { return feed / 2.0; }, *readings_.feed);
    if (*readings_.chips == Chips::one) {
      because("half the feed: the lips differ by at least this", chip_share_law, half_feed);
      if (point_.height && point_.height->spread.high < half_feed.low)
        contradict("the lips differ in height by", *point_.height,
                   {half_feed, "--chips one, which asks half the feed at least,"});
      if (point_.height) return;
      const Length no_more = readings_.diameter / 10.0; // more than that is seen without any reading
      point_.height =
          Known<Length>{at_most(Spread<Length>{half_feed.low, half_feed.value, no_more}, no_more), "--chips"};
      point_.height_is_floor = true;
      return;
    }
    because("half the feed: the lips differ by less", chip_share_law, half_feed);
    if (point_.height && point_.height->spread.low > half_feed.high)
      contradict("the lips differ in height by", *point_.height,
                 {half_feed, "--chips two, which asks less than half the feed,"});
    if (point_.height)
      point_.height->spread = at_most(point_.height->spread, half_feed.high);
    else
      point_.height = Known<Length>{{mm(0), half_feed.value / 2.0, half_feed.high}, "--chips"};
  }
  /// Oversize of a free point. Which lip is higher is not always known: then whichever drills the larger hole.
  [[nodiscard]] Length free_oversize(Angle half_a, Angle half_b, Length height) const {
    const Length at_radius = readings_.diameter / 4.0;
    const auto with = [&](Length one) {
      return free_point_oversize({readings_.diameter, half_a, half_b, one, mm(0), at_radius});
    };
    if (point_.higher) return with(*point_.higher == 'A' ? height : -height);
    return std::max(with(height), with(-height));
  }

  [[nodiscard]] Spread<Length> oversize_of_lips(const Spread<Length>& height) const {
    if (halves_known())
      return through((*point_.halves)[0].from, [&](Angle a, Angle b, Length one) { return free_oversize(a, b, one); },
                     half(0), half(1), height);
    const auto with_difference = [&](Angle both, Angle apart, Length one) {
      return free_oversize(both + apart / 2.0, both - apart / 2.0, one);
    };
    return through(point_.height ? point_.height->from : std::string("the angle taken"), with_difference,
                   half_of_whole(), within(defaults_.unread_difference), height);
  }

  /// A hole over size asks a height difference of at least so much, once what holes usually are over size, the run-out
  /// of the spindle and unequal half angles that were read are taken off. Margins can hide more: it is a floor, and it
  /// names no lip.
  void heed_hole() {
    if (!readings_.trial_hole) return;
    constexpr Spread<Length> nothing{mm(0), mm(0), mm(0)};
    const auto over = propagate([&](Length hole) { return hole - readings_.diameter; }, *readings_.trial_hole);
    const Length runout = readings_.runout.value_or(mm(0));
    const Spread<Length> running{mm(0), runout / 2.0, runout};
    Spread<Length> by_halves = at_least(oversize_of_lips(nothing), mm(0));
    if (!halves_known()) by_halves = {mm(0), mm(0), by_halves.high}; // unread, they may differ or not
    const auto floor = propagate(
        [](Length oversize, Length usual, Length run, Length halves, Angle included) {
          return least_height_difference(std::max(mm(0), oversize - usual - run - halves), included / 2.0);
        },
        over, defaults_.usual_oversize, running, by_halves, point_.included.spread);
    const Spread<Length> bounded = at_least(floor, mm(0));
    because("height difference the hole asks at least", hole_backward_law, bounded);
    if (point_.height && !point_.height_is_floor) {
      point_.explained_oversize =
          defaults_.usual_oversize.high + runout + std::max(mm(0), oversize_of_lips(point_.height->spread).high);
      return;
    }
    if (point_.height && point_.height->spread.low >= bounded.low) return;
    point_.height = Known<Length>{bounded, "--trial-hole"};
    point_.height_is_floor = true;
  }

  void find_oversize() {
    if (readings_.trial_hole) {
      point_.oversize = propagate([&](Length hole) { return hole - readings_.diameter; }, *readings_.trial_hole);
      return;
    }
    if (!point_.height && !halves_known()) return;
    const Spread<Length> height = point_.height ? point_.height->spread : Spread<Length>{mm(0), mm(0), mm(0)};
    const auto bound = oversize_of_lips(height);
    because("oversize of a free point, at most", uneven_lips_law, bound);
    point_.oversize = Spread<Length>{mm(0), std::max(mm(0), bound.value), std::max(mm(0), bound.high)};
  }

  void find_wear() {
    if (!readings_.land_wear && !readings_.margin_wear) return;
    constexpr Spread<Length> none{mm(0), mm(0), mm(0)};
    const Spread<Angle> relief = point_.relief && !point_.relief_is_most
                                     ? at_least(point_.relief->spread, degrees(1))
                                     : give_or_take(defaults_.wanted_relief, degrees(4));
    const auto bare = through(
        "--land-wear",
        [](Length land, Length margin, Angle at, Angle helix) {
          return length_to_grind_off({{land, std::min(at, degrees(50)), helix}, margin, mm(0)});
        },
        readings_.land_wear.value_or(none), readings_.margin_wear.value_or(none), relief, defaults_.helix);
    because("length until land and margin are whole", wear_land_law, bare);
    // The bare length is the least; a clean-up beyond it is a judgement.
    point_.grind_off = Spread<Length>{std::max(mm(0), bare.low), bare.value + defaults_.clean_up.value,
                                      bare.high + defaults_.clean_up.high};
    because("length to grind off, cleaned up", grind_off_law, *point_.grind_off);
  }

  // Half angles of cones in use, as a share of half the point angle: 25, 44 and 50 deg on a point of 118.
  static constexpr double steep_cone = 0.42;
  static constexpr double usual_cone = 0.75;
  static constexpr double blunt_cone = 0.85;
  const PointReadings& readings_;
  const PointDefaults& defaults_;
  const Known<Angle>& included_;
  SolvedPoint point_;
};

} // namespace

SolvedPoint solve_point(GrindingWay way, const PointReadings& readings, const PointDefaults& defaults) {
  Known<Angle> included{defaults.included, ""};
  SolvedPoint solved;
  // Relief wants the included angle, and a depth read as an angle wants the relief: each pass brings the two closer by
  // a factor of ten or more (w/R times the turn).
  constexpr int passes = 6;
  for (int i = 0; i < passes; ++i) {
    solved = Solver(way, readings, defaults, included).solve();
    included = solved.included;
  }
  return solved;
}

} // namespace quillside
