#pragma once
// How far a reading may be off: what was typed behind +-, else the larger of half the last digit typed and the usual
// error of the instrument that the reading looks to come from.

#include <string_view>

#include <quillside/data/tables.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// An instrument with its error as a quantity.
template <class Quantity> struct Error {
  const Instrument* instrument = nullptr;
  Quantity half_width{};
};
/// Those that read \p what, in lengths or in angles, the least trouble first; equal ones in the order of the table.
std::vector<Error<Length>> length_instruments(const Tables& tables, std::string_view what);
std::vector<Error<Angle>> angle_instruments(const Tables& tables, std::string_view what);

/// \p what names the reading, as tables/readings.toml does. The instrument is the least trouble that could have given
/// the digits typed: nobody reads 3.66 mm off a rule, so one counts whose error is at most eight of the last digit;
/// where none is so fine, the finest.
Spread<Length> doubt_of(const Tables& tables, std::string_view what, const Reading<Length>& reading);
Spread<Angle> doubt_of(const Tables& tables, std::string_view what, const Reading<Angle>& reading);

} // namespace quillside
