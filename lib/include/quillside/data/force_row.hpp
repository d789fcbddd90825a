#pragma once
// What a metal resists with, and what a tool bears: rows behind forces, bending and whirl.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

/// Kienzle: specific force at a chip of 1 mm, and how it grows as the chip thins.
struct CuttingForceRow {
  std::string_view material;
  PrintedHardness hardness; // not given: any
  Printed<Stress> kc;
  Printed<double> mc;
  Printed<double> doubt; // either way
  std::string_view source;
  std::string_view note;
  RowPlace place;
};

/// Power at the cutter for a rate of metal removed, with a sharp tool at the feed where the factor is 1.
struct UnitPowerRow {
  std::string_view material;
  PrintedHardness hardness;
  Printed<Stress> unit_power;
  std::string_view source;
  RowPlace place;
};

/// What the unit power is multiplied by at a feed.
struct FeedFactorRow {
  Printed<FeedPerTooth> feed;
  Printed<double> factor;
  std::string_view source;
  RowPlace place;
};

/// Constants of one model of drilling; which, `model` says.
struct DrillForceRow {
  std::string_view material;
  PrintedHardness hardness;
  std::string_view model; // one of `drill_force_models`
  Printed<double> torque;
  Printed<double> thrust; // not given: as the torque's; the power law has none
  std::string_view source;
  RowPlace place;
};
inline constexpr std::array<std::string_view, 3> drill_force_models{"handbook", "catalogue", "power-law"};

/// What a burr of that head size usually comes on.
struct BurrSizeRow {
  Printed<Length> diameter; // the low end belongs to it, the high end does not
  Printed<Length> shank;
  Printed<Length> head_length;
  std::string_view source;
  RowPlace place;
};

/// What a cutter's metal bears.
struct CutterStrengthRow {
  std::string_view cutter;
  Printed<Stress> modulus;
  Printed<Stress> shear_modulus;
  Printed<Length> edge_radius;    // of a sharp ground edge
  Printed<Stress> working_stress; // peak bending stress to stay under
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
