#pragma once
// The document that the tool would hand to the drawing program, from a line of words.

#include <quillside/page/document.hpp>
#include <quillside/render/json.hpp>

#include "../json_of.hpp"

namespace quillside::test {

struct Wanted {
  std::string kind = "card";
  std::string paper = "a4";
  std::string units = "inch";
};

/// The answer and its lines by way of its record, as the program on the other side sees it.
inline page::Document document_of(const std::string& line, const Wanted& wanted = {}) {
  const Ran ran = quillside(line + " --units " + wanted.units + " --format json");
  INFO(line << "\n" << ran.err);
  REQUIRE(ran.exit <= 1);
  const Answer answer = page::read_record(ran.out);
  const UnitSystem units = wanted.units == "inch" ? UnitSystem::inch : UnitSystem::metric;
  return page::read_document("{\"answer\":" + ran.out + ",\"text\":" + json(lines(answer, units)) +
                             ",\"page\":{\"kind\":\"" + wanted.kind + "\",\"as\":\"pdf\",\"paper\":\"" + wanted.paper +
                             "\",\"units\":\"" + wanted.units + "\",\"title\":" + json(std::string_view(line)) +
                             ",\"asked\":" + json(std::string_view("quillside " + line)) +
                             ",\"date\":\"2026-11-30\",\"maker\":\"quillside\"}}");
}

/// A line or two of every ask there is, plain and far gone.
inline const std::vector<std::string>& every_ask() {
  static const std::vector<std::string> all{
      "drill no30 303 --machine pillar",
      "drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar",
      "drill 3mm 303 --depth 40mm",
      "drill 1/8 416@60HRC",
      "drill 1/2 D2 --machine pillar",
      "mill 1/8 416 --machine bench",
      "mill 6mm C360 --width 1mm --flutes 3",
      "burr 3mm 416 --marked 25000",
      "burr 1/4 C752 --machine shaft",
      "point 1/4 303 --half-angles 58,61",
      "point 12.7mm 1018 --way two-facet --web 1.8mm --lip-depth 3.66mm --relief 12",
      "grind 1/4 303 --way four-facet",
      "grind 1/4 1018 --way cone",
      "grind 1/4 1018 --fence 59 --table-tilt 17",
      "slot C752 --part 0.118 --part-width 0.630 --thick 3/16",
      "fit C752 --part 3mm --heat 150C",
      "hole pin 1/8 303",
      "hole tap M3 C360 --machine pillar",
      "notch hex hex",
      "gauge --angles 118,135",
      "signs squeal",
      "signs",
      "size no30",
      "chart --machine pillar",
      "chart --asks drill,mill,burr --materials stainless",
      "tables show 416",
      "tables list",
      "tables new machine"};
  return all;
}

} // namespace quillside::test
