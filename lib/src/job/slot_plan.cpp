#include "slot_plan.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/model/slot_ends.hpp>
#include <quillside/model/slot_walls.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"

namespace quillside {

namespace {

Length length_limit(const Tables& tables, std::string_view key) { return limit(tables.limits, key).length; }

std::string in_both(Length length) {
  return print_length_with_unit(length, UnitSystem::inch) + " (" + print_length_with_unit(length, UnitSystem::metric) +
         ")";
}

/// The largest that leaves a last pass at either wall, or the one that was named.
std::variant<NamedSize, Unworkable> cutter_of(const Tables& tables, const SlotQuestion& ask,
                                              const Band<Length>& width) {
  if (ask.cutter_size) {
    const NamedSize& named_size = ask.cutter_size->value;
    if (named_size.length <= width.high) return named_size;
    return Unworkable{"the cutter, " + named_size.name + ", is wider than the slot, " + in_both(width.first),
                      "a smaller cutter: leave out --cutter-size, and one is chosen"};
  }
  const Length most = width.first - 2.0 * length_limit(tables, "finish_left");
  if (const auto stock = stock_at_or_under(tables.end_mill_stock, ask.stock, most))
    return named(tables, stock->size, ask.stock);
  return Unworkable{"no end mill that is commonly sold is small enough for a slot of " + in_both(width.first) +
                        " and a pass along each wall",
                    "name a smaller one with --cutter-size; or saw and file it"};
}

Spread<Length> first_cut_of(const Tables& tables, const SlotQuestion& ask, const NamedSize& cutter) {
  Length off = length_limit(tables, "first_cut_doubt");
  if (ask.machine && ask.machine->value->runout.given())
    off = std::max(off, ask.machine->value->runout.range.low); // a cutter out of true cuts wide by as much at the most
  if (!ask.cut_width) return give_or_take(cutter.length, off);
  const Spread<Length> read = doubt_of(tables, "cut-width", ask.cut_width->value);
  if (read.high < cutter.length - off)
    throw contradiction("--cut-width", "--cut-width " + ask.cut_width->text.value_or("") +
                                           " is less than the cutter cuts, " + cutter.name +
                                           ": measure again, or name the cutter with --cutter-size");
  return read;
}

/// Even steps from the first cut out to the wall, the last one thin.
std::vector<SideSetting> side_settings(Length offset, Length cutter, Length last) {
  if (offset <= 2.0 * last) return {{offset, offset}};
  const int rough = static_cast<int>(std::ceil((offset - last) / (cutter / 2.0)));
  std::vector<SideSetting> settings;
  for (int i = 1; i <= rough; ++i) settings.push_back({(offset - last) * i / rough, (offset - last) / rough});
  settings.push_back({offset, last});
  return settings;
}

/// The slot has to take the part's corners: round ends want it longer by the cutter.
std::variant<std::optional<Band<Length>>, Unworkable> length_of(const SlotQuestion& ask,
                                                                const std::optional<Band<Length>>& wanted, Length cut) {
  std::optional<Band<Length>> length = wanted;
  if (length && ask.ends.value == SlotEnds::clear) {
    const auto longer = [&](Length part) { return cleared_length({part, cut}); };
    length = Band<Length>{longer(length->low), longer(length->first), longer(length->high)};
  }
  if (ask.length) {
    const Length given = ask.length->value;
    if (length && given < length->low)
      return Unworkable{ask.ends.value == SlotEnds::clear
                            ? "the round ends of a slot " + in_both(given) + " long do not clear the part's corners"
                            : "a slot " + in_both(given) + " long does not take the part's width",
                        "a slot " + in_both(length->first) + " long" +
                            (ask.ends.value == SlotEnds::clear ? ", or --ends filed" : "")};
    length = Band<Length>{given, given, given};
  }
  if (length && length->first < cut)
    return Unworkable{"a slot " + in_both(length->first) + " long is shorter than its cutter is wide, " + in_both(cut),
                      "a smaller cutter"};
  return length;
}

/// The pocket has to reach every corner of the slot, with a margin on all sides.
std::optional<Length> pocket_length_for(const Tables& tables, const Pocket& pocket, const Band<Length>& width,
                                        const std::optional<Band<Length>>& slot_length) {
  if (!slot_length) return std::nullopt;
  // Between its round corners the end of a pocket wider than its tool is flat.
  const Length rounded = width.high - 2.0 * pocket.offset;
  const Length reach =
      rounded > mm(0) ? pocket_length({slot_length->high, rounded, pocket.tool.length}) : slot_length->high;
  return std::max(reach + 2.0 * length_limit(tables, "pocket_relief"), pocket.tool.length);
}

/// How far the flutes of an ordinary end mill reach.
Length flutes_of(const Tables& tables, Length diameter) {
  return limit(tables.limits, "flutes_usual").ratio * diameter;
}

/// The one that was asked for; else as wide as a cutter that clears the slot and reaches the floor; else just wide
/// enough.
Length pocket_width_of(const Tables& tables, const SlotQuestion& ask, const Band<Length>& width, Length depth) {
  if (ask.pocket_width) return ask.pocket_width->value;
  const Length clear = width.high + 2.0 * length_limit(tables, "pocket_relief");
  const Length least = std::max(clear, depth / limit(tables.limits, "flutes_usual").ratio);
  const auto stock = stock_at_or_over(tables.end_mill_stock, ask.stock, least);
  return stock ? stock->size : clear;
}

std::variant<Pocket, Unworkable> pocket_of(const Tables& tables, const SlotQuestion& ask, const Band<Length>& width,
                                           Length depth) {
  Pocket pocket{};
  pocket.depth = depth;
  pocket.width = pocket_width_of(tables, ask, width, depth);
  if (pocket.width < width.high)
    return Unworkable{"a pocket " + in_both(pocket.width) + " wide is narrower than the slot, " + in_both(width.first) +
                          ": its corners are not reached",
                      "a pocket of " + in_both(width.high + 2.0 * length_limit(tables, "pocket_relief")) + " or more"};
  const auto stock = stock_at_or_under(tables.end_mill_stock, ask.stock, pocket.width);
  if (!stock)
    return Unworkable{"no end mill that is commonly sold goes into a pocket " + in_both(pocket.width) + " wide",
                      "a wider pocket"};
  pocket.tool = named(tables, stock->size, ask.stock);
  // A size that is sold, and its name read back, may part in the last bit.
  pocket.width = std::max(pocket.width, pocket.tool.length);
  pocket.offset = side_offset({pocket.width, pocket.tool.length});
  if (depth > flutes_of(tables, pocket.tool.length))
    return Unworkable{"a pocket " + in_both(depth) + " deep is beyond the flutes of its cutter, " + pocket.tool.name +
                          ": about " + in_both(flutes_of(tables, pocket.tool.length)),
                      "a wider pocket, more left at the front with --leave, or a thinner plate"};
  if (pocket.offset > pocket.tool.length / 2.0)
    return Unworkable{"a pocket " + in_both(pocket.width) + " wide is more than twice as wide as " + pocket.tool.name +
                          ", the widest end mill that is commonly sold: its middle would stand",
                      "a narrower pocket"};
  return pocket;
}

struct Depths {
  std::optional<Length> front;
  std::optional<Length> pocket;
};

std::variant<Depths, Unworkable> depths_of(const Tables& tables, const SlotQuestion& ask) {
  if (!ask.thick) return Depths{};
  const Length thick = ask.thick->value.value;
  const Length leave = ask.leave ? ask.leave->value : length_limit(tables, "slot_leave");
  const Length overrun = length_limit(tables, "slot_overrun");
  if (ask.leave && !(leave > mm(0)))
    return Unworkable{"a pocket that leaves nothing at the front goes right through the plate",
                      "--leave " + print_length_with_unit(length_limit(tables, "slot_leave"), UnitSystem::inch)};
  const Length deep = thick - leave;
  if (ask.leave && !(deep > mm(0)))
    return Unworkable{"--leave " + ask.leave->text.value_or("") + " leaves all of a plate " + in_both(thick) +
                          " thick: there is no pocket",
                      "leave less, or leave --leave out"};
  const bool asked_for = ask.leave || ask.pocket_width;
  if (!(deep > mm(0)) || (!asked_for && deep < length_limit(tables, "pocket_least")))
    return Depths{thick + overrun, std::nullopt};
  return Depths{leave + overrun, deep};
}

} // namespace

std::optional<Length> SlotPlan::half_run() const {
  if (!length) return std::nullopt;
  return (length->first - first_cut.value) / 2.0;
}

NamedSize named(const Tables& tables, Length size, UnitSystem units) {
  const bool inch = units == UnitSystem::inch;
  for (const auto* row : sizes_same_as(tables.sizes, size))
    if (row->kind == (inch ? "fraction" : "metric")) return {std::string(row->name), row->length()};
  if (inch)
    if (const auto fraction = print_fraction(size)) return {*fraction, read_length(*fraction, UnitSystem::inch)};
  return {inch ? print_length_with_unit(size, units) : shortest_decimal(in_mm(size)) + "mm", size};
}

std::variant<SlotPlan, Unworkable> plan_slot(const Tables& tables, const SlotQuestion& ask, const Band<Length>& width,
                                             const std::optional<Band<Length>>& wanted_length) {
  const auto cutter = cutter_of(tables, ask, width);
  if (const auto* no = std::get_if<Unworkable>(&cutter)) return *no;
  SlotPlan plan{};
  plan.cutter = std::get<NamedSize>(cutter);
  plan.first_cut = first_cut_of(tables, ask, plan.cutter);
  plan.measured = ask.cut_width.has_value();
  const Length cut = plan.first_cut.value;
  if (cut > width.high)
    return Unworkable{"the first cut measured " + in_both(cut) +
                          ": the slot is too wide already for this fit, at most " + in_both(width.high),
                      "a looser fit, a thicker part, or a new plate with a smaller cutter"};
  plan.side_offset = cut < width.first ? side_offset({width.first, cut}) : mm(0);
  // Nothing is moved by less than the dial can set: either the fit takes the cut as it is, or a file does the rest.
  const bool less_than_a_setting = plan.side_offset < length_limit(tables, "dial_setting");
  plan.fits_now = plan.measured && cut >= width.low && less_than_a_setting;
  plan.too_little = cut < width.low && less_than_a_setting;
  if (plan.fits_now) plan.side_offset = mm(0);
  if (!less_than_a_setting)
    plan.sides = side_settings(plan.side_offset, plan.cutter.length, length_limit(tables, "finish_left"));

  const auto length = length_of(ask, wanted_length, cut);
  if (const auto* no = std::get_if<Unworkable>(&length)) return *no;
  plan.length = std::get<std::optional<Band<Length>>>(length);

  const auto depths = depths_of(tables, ask);
  if (const auto* no = std::get_if<Unworkable>(&depths)) return *no;
  plan.depth = std::get<Depths>(depths).front;
  if (plan.depth && *plan.depth > flutes_of(tables, plan.cutter.length))
    return Unworkable{"the slot goes " + in_both(*plan.depth) +
                          " deep from the front, beyond the flutes of its cutter, " + plan.cutter.name + ": about " +
                          in_both(flutes_of(tables, plan.cutter.length)),
                      "leave less at the front with --leave, and open the rest from the back"};
  if (const auto deep = std::get<Depths>(depths).pocket) {
    const auto pocket = pocket_of(tables, ask, width, *deep);
    if (const auto* no = std::get_if<Unworkable>(&pocket)) return *no;
    plan.pocket = std::get<Pocket>(pocket);
    plan.pocket->length = pocket_length_for(tables, *plan.pocket, width, plan.length);
    if (plan.pocket->length)
      plan.pocket->holes = holes_apart({*plan.pocket->length, plan.pocket->tool.length},
                                       limit(tables.limits, "hole_pitch_least").ratio * plan.pocket->tool.length);
  }
  return plan;
}

} // namespace quillside
