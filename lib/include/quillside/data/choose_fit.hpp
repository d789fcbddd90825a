#pragma once
// The limits of a fit for a size: by the name the trade calls it, by hole and shaft class, or by a whole fit.
//
// The limits are those of a hole and a shaft both made to them. A part that is there already and was measured takes the
// place of the shaft; then the hole is cut to the part less `interference`.

#include <string>
#include <vector>

#include <quillside/data/tables.hpp>

namespace quillside {

/// The fit that is taken where none is named.
inline constexpr std::string_view usual_fit = "push";

struct FitLimits {
  std::string name;       // as the rows have it: press, H7/p6, FN2
  std::string class_name; // H7/p6, FN2; empty where no class says it (driven)
  std::string words;      // what the name means, where it is a name: "press: held tight, located exactly"
  Range<Length> hole;     // off the basic size
  Range<Length> shaft;
  Range<Length> interference;            // above zero tight, below zero clearance
  std::vector<std::string_view> sources; // of every row it rests on, the name's first

  /// Neither always tight nor always loose: the low end may slip.
  [[nodiscard]] bool transition() const { return interference.low < mm(0) && interference.high > mm(0); }
};

/// \p name a key of the fits, HOLE/SHAFT as `H7/p6`, or a fit class as `FN2` (in either case of letters).
/// \param size the basic size, above 0: the thickness that has to go in
/// Throws a Fault of the kind `word`: for a name that is none of these (it lists what is), and for a size that the
/// class's rows do not reach (it says how far they do).
FitLimits fit_limits(const Tables& tables, std::string_view name, Length size);

/// Everything `fit_limits` knows by one word: the names, then the fit classes.
std::vector<std::string_view> fit_names(const Tables& tables);

} // namespace quillside
