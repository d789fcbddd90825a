#include "flags.hpp"

#include <algorithm>

#include <boost/program_options/cmdline.hpp>
#include <boost/program_options/options_description.hpp>
#include <boost/program_options/parsers.hpp>
#include <boost/program_options/value_semantic.hpp>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside::cli {

namespace {

namespace po = boost::program_options;

const Flag cutter{"cutter", "NAME", "what the edge is made of: hss, cobalt, carbide, diamond"};

std::vector<AskDescription> describe() {
  return {
      {"drill",
       "SIZE MATERIAL",
       "spindle speed, feed, depth stop, pecks, fluid, the point it wants",
       2,
       2,
       {cutter,
        {"thick", "L", "thickness of the part"},
        {"leave", "L", "metal left under the tip; needs --thick"},
        {"leave-at", "tip|corner", "where --leave is measured from (tip)"},
        {"depth", "L", "depth to full diameter"},
        {"through", "", "all the way through; needs --thick"},
        {"point", "A", "included point angle (what the material wants)"},
        {"web", "L", "web at the point, for the forces (of a standard point)"},
        {"overhang", "L", "chuck to tip (about the flutes of an ordinary drill)"},
        {"lever", "L", "length of the quill's lever (the machine's)"},
        {"dry", "", "no fluid"}},
       {"quillside drill no30 303 --machine pillar", "quillside drill 9/64 C752 --thick 3/16 --leave 0.040",
        "quillside drill 4.8mm 304@cold-drawn --depth 20mm"}},
      {"mill",
       "SIZE MATERIAL",
       "spindle speed, chip load, feed rate, seconds per handwheel turn",
       2,
       2,
       {cutter,
        {"flutes", "N", "teeth of the cutter (2)"},
        {"width", "L", "radial width of cut (a full slot)"},
        {"depth", "L", "axial depth of a pass to be judged (the deepest is found)"},
        {"overhang", "L", "holder to tip (3 diameters and 1/8 in)"},
        {"flute-length", "L", "length of the flutes (3 diameters)"},
        {"shank", "SIZE", "diameter of the shank (the cutter's own, 1/8 in at the least)"},
        {"helix", "A", "of the flutes (30)"},
        {"wall-allow", "L", "how far a wall may be off (0.001 in)"},
        {"runout", "L", "total run-out at the cutter (the machine's)"},
        {"climb", "", "the pass is climb milled, where it is no full slot"},
        {"dial", "L", "table travel a handwheel turn (the machine's)"}},
       {"quillside mill 1/8 416 --machine bench", "quillside mill 6mm C360 --width 1mm --flutes 3"}},
      {"burr",
       "SIZE MATERIAL",
       "speed for a burr held in the hand: band, first value, what limits it",
       2,
       2,
       {cutter,
        {"marked", "SPEED", "the maximum marked on the burr"},
        {"shank", "SIZE", "diameter of the shank (what such a head usually comes on)"},
        {"overhang", "L", "chuck nose to back of the head (1/2 in)"},
        {"head-length", "L", "of the head (of an ordinary cylinder)"},
        {"shape", "NAME", "cylinder, ball, oval, cone, tree, flame, inverted-cone (cylinder)"}},
       {"quillside burr 3mm 416 --marked 25000", "quillside burr 1/4 C752 --machine shaft"}},
      {"point",
       "SIZE [MATERIAL]",
       "judges a drill's point from bench readings: keep, touch up, regrind, or which reading to take next",
       1,
       2,
       {{"way", "two-facet|four-facet|cone", "how it was ground (unknown: only what holds for every way decides)"},
        {"angle", "A", "included angle"},
        {"half-angles", "A,B", "each lip from the axis"},
        {"lip-depth", "L", "along the axis, outer corner to inner end of the lip"},
        {"point-length", "L", "along the axis, outer corner to tip"},
        {"lip-lengths", "L,L", "outer corner to inner end, each lip"},
        {"lip-height", "L", "one lip over the other at mid-lip, the drill turned 180 deg"},
        {"web", "L", "between the flutes, at the point"},
        {"chisel", "A", "chisel edge angle, obtuse or its supplement"},
        {"chisel-length", "L", "of the chisel edge, end on"},
        {"relief", "A", "lip relief at the outer corner"},
        {"drop", "L", "how far the flank falls at the margin; needs --turn"},
        {"turn", "A", "the drill turned by this in its cutting direction, for --drop"},
        {"gauge-angle", "A", "of a gauge held to the point; needs --light"},
        {"light", "P,P", "where light shows at each lip: tip, middle, corner or none"},
        {"light-gap", "L,L", "how wide it is, each lip"},
        {"trial-hole", "L", "size of a hole it drilled"},
        {"chips", "one|two", "out of how many flutes they come"},
        {"feed", "L", "travel a turn, for --chips"},
        {"land-wear", "L", "width of the worn land behind the lip, at the corner"},
        {"margin-wear", "L", "length of worn or rounded margin"},
        {"thinned", "", "the web was thinned"},
        {"split", "", "the point was split"},
        {"side-marks", "X,Y...",
         "six marks off a photo from the side, in pixels: outer corner A, inner end A, inner end B, "
         "outer corner B, one point up margin A, one up margin B"},
        {"end-marks", "X,Y...",
         "four marks off a photo end on: outer corner A, inner end A, inner end B, outer corner B"}},
       {"quillside point 1/4 303 --half-angles 58,61",
        "quillside point 12.7mm 1018 --way two-facet --web 1.8mm --lip-depth 3.66mm --relief 12",
        "quillside point 3/16 --gauge-angle 120 --light corner,corner --light-gap 0.05mm,0.05mm"}},
      {"grind",
       "SIZE [MATERIAL]",
       "how to hold the drill to a disk or wheel for a wanted point; or what point a setting gives",
       1,
       2,
       {{"way", "two-facet|four-facet|cone", "one flat a lip, two, or a cone (two-facet)"},
        {"angle", "A", "included angle (what the material wants)"},
        {"relief", "A", "lip relief at the corner (one flat: what clears its heel; else by size)"},
        {"chisel", "A", "chisel edge angle, obtuse or its supplement (130 for a cone)"},
        {"web", "L", "between the flutes, at the point (by size)"},
        {"second-relief", "A", "of the second facet (25, or what clears the heel)"},
        {"flute-angle", "A", "the included angle that the flutes were made for (the wanted one)"},
        {"cone-half-angle", "A", "between wheel face and pivot axis (by the drop of the heel)"},
        {"land", "A", "outer corner back to heel, seen end on (80)"},
        {"fence", "A", "a setting to be read: drill to disk, in the table; needs --table-tilt"},
        {"table-tilt", "A", "how the table slopes up toward the disk; needs --fence"},
        {"swing", "A", "a setting to be read: drill to disk, in plan; needs --tilt or --roll"},
        {"tilt", "A", "point higher than shank, with --swing (level)"},
        {"roll", "A", "drill turned in its cutting direction, with --swing (lip level end on)"},
        {"land-wear", "L", "width of the worn land behind the lip, at the corner"},
        {"margin-wear", "L", "length of worn or rounded margin"},
        {"wheel", "L", "diameter of the wheel whose rim is used (a flat disk)"},
        {"wheel-speed", "N", "rev/min that it runs at"},
        {"wheel-marked", "N", "the most rev/min that is marked on it"}},
       {"quillside grind 1/4 303 --way four-facet", "quillside grind 1/4 --web 0.044",
        "quillside grind 1/4 1018 --fence 59 --table-tilt 17"}},
      {"slot",
       "MATERIAL",
       "a whole slot to fit a measured part: holes, pocket, passes, offsets, stop, speeds",
       1,
       1,
       {{"part", "L", "measured thickness of what goes in; required"},
        {"part-width", "L", "its measure along the slot"},
        {"length", "L", "of the slot (what the part's width wants)"},
        {"ends", "filed|clear", "filed square, or so long that round ends clear the part (filed)"},
        {"thick", "L", "thickness of the plate"},
        {"leave", "L", "metal left at the front when the back is opened (0.050 in); needs --thick"},
        {"pocket-width", "L", "of the recess at the back (chosen); needs --thick"},
        {"cutter-size", "SIZE", "end mill of the slot (chosen of what is sold)"},
        cutter,
        {"cut-width", "L", "what the first cut measured: plans what is left"},
        {"fit", "NAME", "press, push, slide, or a class as H7/g6 or FN2 (push)"},
        {"clearance", "L", "in place of a fit: slot over part"},
        {"interference", "L", "in place of a fit: part over slot"}},
       {"quillside slot C752 --part 0.118 --part-width 0.630 --thick 3/16 --machine bench",
        "quillside slot C752 --part 0.118 --part-width 0.630 --thick 3/16 --cut-width 0.1105",
        "quillside slot 303 --part 3.18mm --part-width 12mm --thick 2mm --fit slide"}},
      {"fit",
       "MATERIAL",
       "a part in a slot: press, push, slide by class; what heating the plate gains, how hot it may get",
       1,
       1,
       {{"part", "L", "measured thickness of the part, as 0.118 or 0.118+-0.0005"},
        {"part-width", "L", "its measured width"},
        {"interference", "L", "how much tighter than the part the slot is"},
        {"clearance", "L", "or how much looser"},
        {"fit", "NAME", "or a fit: press, push, slide, driven, or a class, as H7/p6, FN2, LN3 (push)"},
        {"to", "MATERIAL", "the metal of the part that goes in"},
        {"tempered", "T", "the heat at which part or plate was tempered, as 300C or 570F"},
        {"heat", "T", "what the plate is heated to, as 150C or 300F (what the fit wants)"}},
       {"quillside fit C752 --part 0.118 --part-width 0.630 --fit press --to 1084 --tempered 300C",
        "quillside fit 303 --part 3mm --heat 500F", "quillside fit C752 --part 0.118 --interference 0.0003"}},
      {"hole",
       "WHAT SIZE [MATERIAL]",
       "the drill for a pin, ream, tap, clear or countersink hole: its speed and feed, depth, what follows it",
       2,
       3,
       {{"thick", "L", "thickness of the part, for a hole through it"},
        {"thread", "NAME", "M3x0.35, 4-48 (the size's usual one)"},
        {"engagement", "PERCENT", "of thread, as tap-drill charts count it: of 0.6495 pitches each side (by metal)"},
        {"head", "L", "width of a flat head at the face (by the tables, to its sharp edge)"},
        {"cone", "A", "included angle of a flat head (90 metric, 82 Unified)"}},
       {"quillside hole tap M3 C360 --thick 5mm", "quillside hole pin 1/8 303", "quillside hole countersink no6 C260"}},
      {"notch",
       "FIGURE FIGURE",
       "angle of a gauge from two regular figures laid flat to flat, and the light a point shows in it",
       2,
       2,
       {},
       {"quillside notch hex hex", "quillside notch octagon square"}},
      {"gauge",
       "",
       "gauges to print true to size: a V for each angle, fence, wedge, a disk of degrees, rulers that prove the print",
       0,
       0,
       {{"angles", "A,B...", "included angles (those that the tables want of a drill)"},
        {"table-tilt", "A", "of the wedge, as grind says (that of a 1/4 drill with one flat a lip)"},
        {"out", "FILE", "the picture: .pdf, .svg or .png; - is standard output (none: text)"}},
       {"quillside gauge --angles 118,135 --out gauges.pdf",
        "quillside gauge --angles 118 --table-tilt 12.3 --out gauge.pdf"}},
      {"signs",
       "[WORDS]",
       "what the chip, the hole, the worn tool tell: sign, likely cause, what to set",
       0,
       16,
       {},
       {"quillside signs corners worn", "quillside signs one chip", "quillside signs squeal"}},
      {"size",
       "TEXT",
       "a size in inch and mm, and its neighbours in the drill ladder",
       1,
       1,
       {{"over", "L", "the nearest sizes at least so much larger"},
        {"under", "L", "the nearest sizes at least so much smaller"}},
       {"quillside size no30", "quillside size 3.2mm --over 0.002in"}},
      {"chart",
       "",
       "the wall chart: sizes by metals, in each cell the step or the speed to set",
       0,
       0,
       {{"materials", "M,M...", "metals, or a family for all of its grades (those of the demo)"},
        {"sizes", "SIZE,...", "of the tools (a usual set of each)"},
        {"asks", "drill,mill,burr", "which tools; each has sheets of its own (drill)"},
        {"read-from", "L", "how far off it is read: it sets how high the letters are (2m)"},
        {"out", "FILE", "the chart as a picture: .pdf, .svg or .png; - is standard output"}},
       {"quillside chart --machine pillar --materials 416,304,C360,C752,1084",
        "quillside chart --materials brass --sizes 1/8,no30,5mm --asks drill,mill --paper a3"}},
      {"tables",
       "list | show NAME | check FILE... | path | new KIND",
       "the data: what there is, a row as typed, the faults of a file, where it is looked for, a row to fill in",
       1,
       64,
       {},
       {"quillside tables show 416", "quillside tables new machine", "quillside tables check my.toml"}},
      {"batch",
       "[FILE]",
       "one ask a line in, one JSON record a line out; - or nothing is standard input",
       0,
       1,
       {},
       {"quillside batch asks.txt"}},
  };
}

std::string dashed(std::string_view name) { return "--" + std::string(name); }

std::vector<Flag> flags_of(const AskDescription& ask) {
  std::vector<Flag> flags = ask.flags;
  flags.insert(flags.end(), flags_everywhere().begin(), flags_everywhere().end());
  return flags;
}

[[noreturn]] void unknown_flag(const AskDescription& ask, const std::string& token) {
  const std::string name = token.substr(0, token.find('='));
  for (const auto& other : asks()) {
    const bool has = std::any_of(other.flags.begin(), other.flags.end(),
                                 [&](const Flag& flag) { return dashed(flag.name) == name; });
    if (has)
      throw wrong_word(name, "is no flag of " + std::string(ask.name) + ": it belongs to " + std::string(other.name),
                       {});
  }
  std::vector<std::string> names;
  for (const auto& flag : flags_of(ask)) names.push_back(dashed(flag.name));
  const std::vector<std::string_view> views(names.begin(), names.end());
  const auto nearest = nearest_word(name, views);
  std::string list;
  for (const auto& one : names) list += (list.empty() ? "" : " ") + one;
  throw wrong_word(printable(name),
                   "is no flag of " + std::string(ask.name) + (nearest ? "; '" + *nearest + "' is meant?" : ";") +
                       " allowed: " + list,
                   names, nearest);
}

std::vector<po::option> parts_of(const AskDescription& ask, const std::vector<std::string>& words) {
  po::options_description description;
  for (const auto& flag : flags_of(ask)) {
    const std::string name(flag.name);
    if (flag.value.empty())
      description.add_options()(name.c_str(), "");
    else
      description.add_options()(name.c_str(), po::value<std::string>(), "");
  }
  // Long names only, written out: no guessing, so that a later flag cannot change an old script, and -3mm is a word.
  const int style = po::command_line_style::allow_long | po::command_line_style::long_allow_adjacent |
                    po::command_line_style::long_allow_next;
  try {
    return po::command_line_parser(words).options(description).style(style).allow_unregistered().run().options;
  } catch (const po::error_with_option_name& error) {
    const std::string name = error.get_option_name();
    const bool alone = std::any_of(ask.flags.begin(), ask.flags.end(),
                                   [&](const Flag& flag) { return flag.value.empty() && dashed(flag.name) == name; });
    throw wrong_word(name, alone ? "stands alone: it takes no value" : "needs a value behind it");
  }
}

void add_flag(Call& call, const po::option& part) {
  const std::string& name = part.string_key;
  const auto flags = flags_of(*call.ask);
  const auto flag = std::find_if(flags.begin(), flags.end(), [&](const Flag& one) { return one.name == name; });
  if (call.flags.contains(name) && !flag->repeatable) throw wrong_word(dashed(name), "is given twice; once will do");
  const std::string value = part.value.empty() ? std::string{} : part.value.front();
  if (!flag->value.empty() && (value.empty() || value.starts_with("--")))
    throw wrong_word(dashed(name), "needs a value behind it: " + std::string(flag->value));
  if (name == "tables") call.tables.push_back(value);
  call.flags[name] = value;
}

void check_count(const Call& call) {
  const AskDescription& ask = *call.ask;
  if (call.words.size() < ask.least_words) {
    std::string hint;
    if (ask.name == "drill" || ask.name == "point" || ask.name == "grind" || ask.name == "mill" || ask.name == "burr" ||
        ask.name == "size" || ask.name == "hole")
      hint = "; the shell eats a bare #30: quote '#30' or write no30";
    throw wrong_word(std::string(ask.name), "needs " + std::string(ask.words) + ", and the words ran out" + hint,
                     {std::string(ask.words)});
  }
  if (call.words.size() > ask.most_words)
    throw wrong_word(printable(call.words[ask.most_words]),
                     "is one word too many: " + std::string(ask.name) +
                         (ask.words.empty() ? "" : " takes " + std::string(ask.words)));
}

} // namespace

const std::vector<AskDescription>& asks() {
  static const std::vector<AskDescription> all = describe();
  return all;
}

const std::vector<Flag>& flags_everywhere() {
  static const std::vector<Flag> all{
      {"machine", "NAME", "the machine it is done on: its steps, its dial"},
      {"units", "inch|metric", "what a bare number means, and how text is printed; JSON keeps its own units"},
      {"format", "text|json", "for a person or for a program"},
      {"tables", "FILE", "a table file that goes over the others; may be repeated", true},
      {"why", "", "every step with its formula and its source"},
      {"card", "FILE", "the answer as half a sheet to carry: .pdf, .svg or .png; - is standard output"},
      {"as", "pdf|svg|png|text", "what goes to standard output, with --card - or --out -"},
      {"paper", "a4|letter|a3|tabloid", "for a picture (letter for inch, a4 for metric; a4 for a chart)"},
      {"large", "", "the first number in tall digits"},
      {"help", "", "this"},
      {"version", "", "name and number"}};
  return all;
}

const AskDescription& find_ask(const std::string& name) {
  const auto found =
      std::find_if(asks().begin(), asks().end(), [&](const AskDescription& ask) { return ask.name == name; });
  if (found != asks().end()) return *found;
  std::vector<std::string_view> names;
  for (const auto& ask : asks()) names.push_back(ask.name);
  std::string list;
  for (const auto one : names) list += (list.empty() ? "" : ", ") + std::string(one);
  const auto nearest = nearest_word(name, names);
  throw wrong_word(printable(name),
                   "is no ask" + (nearest ? "; '" + *nearest + "' is meant?" : std::string(";")) + " allowed: " + list,
                   {names.begin(), names.end()}, nearest);
}

std::optional<std::string> Call::flag(std::string_view name) const {
  const auto found = flags.find(name);
  return found == flags.end() ? std::nullopt : std::optional(found->second);
}

Call parse_call(const std::vector<std::string>& words) {
  Call call;
  call.ask = &find_ask(words.front());
  for (const auto& part : parts_of(*call.ask, {words.begin() + 1, words.end()})) {
    if (part.unregistered) unknown_flag(*call.ask, part.original_tokens.front());
    if (part.string_key.empty())
      call.words.insert(call.words.end(), part.value.begin(), part.value.end());
    else
      add_flag(call, part);
  }
  if (!call.has("help")) check_count(call);
  return call;
}

namespace {

std::string in_columns(std::string left, std::string_view right) {
  constexpr std::size_t column = 26;
  left.resize(std::max(left.size() + 1, column), ' ');
  return "  " + left + std::string(right) + "\n";
}

std::string flag_lines(const std::vector<Flag>& flags) {
  std::string lines;
  for (const auto& flag : flags)
    lines += in_columns(dashed(flag.name) + (flag.value.empty() ? "" : " " + std::string(flag.value)), flag.about);
  return lines;
}

} // namespace

std::string help() {
  std::string page =
      "quillside: what a lone metalworker asks before every cut\n\n  quillside ASK WORDS... FLAGS...\n\n";
  for (const auto& ask : asks()) page += in_columns(std::string(ask.name), ask.about);
  page += "\nEverywhere:\n" + flag_lines(flags_everywhere());
  page += "\nSizes: 3/16  1-1/8  0.1875in  4.8mm  55thou  no30  F     Materials: 416  brass  416@annealed  416@28HRC\n";
  page += "For example:\n  quillside drill no30 303 --machine pillar\n  quillside mill 1/8 416 --machine bench\nMore "
          "on one: quillside drill --help\n";
  return page;
}

std::string help(const AskDescription& ask) {
  std::string page = "quillside " + std::string(ask.name) + (ask.words.empty() ? "" : " " + std::string(ask.words)) +
                     " FLAGS...\n  " + std::string(ask.about) + "\n\nFor example:\n";
  for (const auto example : ask.examples) page += "  " + std::string(example) + "\n";
  if (!ask.flags.empty()) page += "\nFlags:\n" + flag_lines(ask.flags);
  return page + "\nEverywhere:\n" + flag_lines(flags_everywhere());
}

} // namespace quillside::cli
