// The ask fit: figures worked by hand from the rows, verdicts, what is refused.

#include "json_of.hpp"

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::has_caution;
using test::Json;
using test::names_source;
using test::value;
using test::why_value;
using test::WithinAbs;

namespace {

double um(const Json& measure, const char* end = "value") { return 1000 * measure[end].get<double>(); }

std::string caution_text(const Json& answer, const std::string& id) {
  for (const auto& caution : answer["cautions"])
    if (caution["id"] == id) return caution["text"];
  return {};
}

} // namespace

TEST_CASE("a press fit on a latch plate's tongue: interference, the heat it wants, what that gains") {
  const Json answer =
      answer_of("fit C752 --part 0.118+-0.0002 --part-width 0.630 --fit press --to 1084 --tempered 300C");
  // H7/p6 up to 3 mm: -4 to 12 um, its middle 4.
  CHECK_THAT(um(answer["found"]["interference"], "low"), WithinAbs(-4, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"]), WithinAbs(4, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"], "high"), WithinAbs(12, 1e-6));
  // Nickel silver 16.2 to 17.1, its middle 16.65e-6; 0.118 in = 2.9972 mm; 4 um and 5 um of room:
  // 0.009 / (16.65e-6 x 2.9972) = 180.35 over 20 degC.
  CHECK_THAT(value(answer["set"]["heat_to"]), WithinAbs(200.35, 0.01));
  CHECK(answer["set"]["heat_to"]["unit"] == "degC");
  // The ceiling is the plate's, 260, not the tongue's temper; an oven overshoots 15.
  CHECK_THAT(value(answer["found"]["heat_limit"]), WithinAbs(260, 1e-9));
  CHECK_THAT(answer["set"]["heat_to"]["high"].get<double>(), WithinAbs(245, 1e-9));
  CHECK_THAT(um(answer["found"]["gain"]), WithinAbs(9, 1e-6));
  CHECK_THAT(um(answer["found"]["clearance_hot"]), WithinAbs(5, 1e-6));
  // 0.45/16.65 of expansion and 0.0002/0.118 of the reading, in squares: 2.708 % of 9 um.
  CHECK_THAT(um(answer["found"]["gain"], "high") - 9, WithinAbs(0.2437, 0.001));
  // Over 0.630 in: 16.002 x 16.65e-6 x 180.35 = 48.05 um. With the tongue (11.0e-6) as hot: 4 - 5.65e-6 x 2.9972 x
  // 180.35 = 0.946 um.
  CHECK_THAT(1000 * why_value(answer, "gain over the width"), WithinAbs(48.05, 0.01));
  CHECK_THAT(1000 * why_value(answer, "interference with the part as hot as the plate"), WithinAbs(0.946, 0.001));
  CHECK(answer["verdict"] == "go");
  for (const char* id :
       {"may-slip", "hot-parts", "zinc-fume", "pressing", "heat-ceiling", "heat-little", "cold-again"}) {
    INFO(id);
    CHECK(has_caution(answer, id));
  }
  CHECK(caution_text(answer, "gain-over-width").find("48") != std::string::npos);
  for (const char* id :
       {"iso-286-holes", "iso-286-shafts", "ansi-b42-preferred", "heat-growth", "expansion-families"}) {
    INFO(id);
    CHECK(names_source(answer, id));
  }
  for (const auto& [name, member] : answer["found"].items())
    CHECK((name == "interference" || name == "gain" || name == "clearance_hot" || name == "heat_limit"));
}

TEST_CASE("a heat that is given: gain and clearance at it") {
  // 416 between its rows 9.9 at 100 and 10.998 at 315 degC: 10.1497e-6 at 148.89; x 2.9972 x 128.89 = 3.921 um. FN2 0.2
  // to 0.85 thou, its middle 0.525 thou = 13.335 um: still 9.414 um tight.
  const Json answer = answer_of("fit 416 --part 0.118 --fit FN2 --heat 300F");
  CHECK_THAT(um(answer["found"]["gain"]), WithinAbs(3.921, 0.001));
  CHECK_THAT(um(answer["found"]["clearance_hot"]), WithinAbs(-9.414, 0.001));
  CHECK(answer["verdict"] == "back off");
  CHECK(answer["reason"].get<std::string>().find("still") != std::string::npos);
  CHECK(answer["instead"].get<std::string>().find("heat alone") != std::string::npos);
  // Over a long dimension the same heat opens it, and with none given the heat is found.
  const Json wide = answer_of("fit 416 --part-width 0.630 --interference 0.0005 --heat 150F");
  CHECK(wide["verdict"] == "back off");
  CHECK(wide["instead"].get<std::string>().find("heat to") == 0);
  const Json found = answer_of("fit 416 --part-width 0.630 --interference 0.0005");
  // 12.7 + 5 um over 16.002 mm at 9.9 to 10.0e-6: some 111 over 20 degC.
  CHECK_THAT(value(found["set"]["heat_to"]), WithinAbs(131, 1));
  CHECK_THAT(um(found["found"]["clearance_hot"]), WithinAbs(5, 1e-3));
}

TEST_CASE("no fit named is taken as a push fit, and that is shown") {
  const Json answer = answer_of("fit C752 --part 3mm --heat 150C");
  CHECK(answer["inputs"]["fit"]["value"] == "push");
  CHECK(answer["inputs"]["fit"]["given"] == false);
  CHECK(answer["verdict"] == "go");
  CHECK_THAT(um(answer["found"]["gain"]), WithinAbs(16.65e-3 * 3 * 130, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"]), WithinAbs(-8, 1e-6));
  CHECK_THAT(um(answer["found"]["clearance_hot"]), WithinAbs(14.4935, 1e-4));
  const Json cold = answer_of("fit C752 --part 3mm");
  CHECK(cold["set"]["heat_to"].is_null());
  CHECK_FALSE(cold["found"].contains("gain"));
  CHECK(caution_text(cold, "fits-here").find("press H7/p6") != std::string::npos);
}

TEST_CASE("never past the ceiling: of the plate, of the part, of a named temper") {
  struct Case {
    const char* line;
    double limit;
    const char* verdict;
  };
  const auto one = GENERATE(
      Case{"fit C752 --part 3mm --heat 500C", 260, "do not"}, Case{"fit C752 --part 3mm --heat 260C", 260, "back off"},
      Case{"fit C752 --part 3mm --heat 245C", 260, "go"},
      Case{"fit C752 --part 3mm --heat 201C --to 1084", 200, "do not"},
      Case{"fit C752 --part 3mm --heat 201C --to 1084@annealed", 260, "go"},
      Case{"fit C752 --part 3mm --heat 201C --to 1084 --tempered 230C", 230, "go"},
      Case{"fit C752 --part 3mm --heat 231C --to 1084 --tempered 230C", 230, "do not"},
      Case{"fit 303 --part 3mm --heat 500F", 426.67, "go"}, Case{"fit 416 --part 3mm --heat 500F", 398.89, "go"},
      Case{"fit 416 --part 3mm --heat 760F", 398.89, "do not"},
      Case{"fit 416@tempered --part 3mm --heat 500F", 200, "do not"});
  INFO(one.line);
  const Json answer = answer_of(one.line);
  CHECK_THAT(value(answer["found"]["heat_limit"]), WithinAbs(one.limit, 0.01));
  CHECK(answer["verdict"] == one.verdict);
  if (answer["verdict"] == "do not") {
    CHECK(answer["set"] == Json::object());
    CHECK_FALSE(answer["reason"].get<std::string>().empty());
    CHECK(answer["instead"].get<std::string>().find("no hotter") == 0);
  }
}

TEST_CASE("a driven fit is asked for by its name, warned of, and backed off from") {
  const Json answer = answer_of("fit C752 --part 0.118 --fit driven");
  CHECK_THAT(um(answer["found"]["interference"], "low"), WithinAbs(50.8, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"], "high"), WithinAbs(127, 1e-6));
  CHECK(answer["verdict"] == "back off");
  CHECK(has_caution(answer, "driven-fit"));
  CHECK(answer["set"]["heat_to"].is_null());
  // As tight by a figure: the same warning. FN2 itself: none.
  CHECK(has_caution(answer_of("fit C752 --part 0.118 --interference 0.002"), "driven-fit"));
  CHECK_FALSE(has_caution(answer_of("fit C752 --part 0.118 --fit FN2"), "driven-fit"));
}

TEST_CASE("an allowance is as doubtful as the reading of the part") {
  const Json answer = answer_of("fit 303 --part 0.118+-0.0005 --clearance 0.0012");
  CHECK_THAT(um(answer["found"]["interference"]), WithinAbs(-30.48, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"], "low"), WithinAbs(-43.18, 1e-6));
  CHECK_THAT(um(answer["found"]["interference"], "high"), WithinAbs(-17.78, 1e-6));
  CHECK_FALSE(has_caution(answer, "reading-too-coarse"));
  CHECK(has_caution(answer_of("fit 303 --part 0.118+-0.0005 --clearance 0.0005"), "reading-too-coarse"));
  CHECK(has_caution(answer_of("fit 303 --part 0.118+-0.0005 --fit press"), "reading-too-coarse"));
  CHECK_FALSE(has_caution(answer_of("fit 303 --part 0.118+-0.0002 --fit press"), "reading-too-coarse"));
}

TEST_CASE("stainless is told from carbon steel by its colours") {
  const Json stainless = answer_of("fit 303 --part-width 0.630 --heat 700F");
  CHECK(caution_text(stainless, "oxide-colour").find("dark yellow") != std::string::npos);
  CHECK(has_caution(stainless, "stainless-colours-hotter"));
  CHECK(has_caution(stainless, "stainless-usual-heat"));
  const Json steel = answer_of("fit 1018 --part-width 0.630 --heat 500F");
  CHECK(caution_text(steel, "oxide-colour").find("brownish yellow") != std::string::npos);
  CHECK_FALSE(has_caution(steel, "stainless-colours-hotter"));
  CHECK(caution_text(answer_of("fit 303 --part 3mm --heat 500F"), "no-colour-yet").find("550 F") != std::string::npos);
}

TEST_CASE("what is no question of fit is refused in one line, in text and as a record") {
  struct Wrong {
    const char* line;
    const char* word;
    const char* kind;
    const char* says;
  };
  const auto wrong = GENERATE(
      Wrong{"fit C752", "--part", "word", "--part-width"}, Wrong{"fit", "fit", "word", "MATERIAL"},
      Wrong{"fit C752 --part 0", "0", "word", "thickness"}, Wrong{"fit C752 --part-width 0", "0", "word", "width"},
      Wrong{"fit C752 --part 0.118+-0.2", "0.118+-0.2", "word", "error"},
      Wrong{"fit C752 --part thick", "thick", "word", "thick"},
      Wrong{"fit C752 --part 3mm --interference 0.001 --clearance 0.001", "--clearance", "conflict", "--interference"},
      Wrong{"fit C752 --part 3mm --clearance 0.001 --fit press", "--fit", "conflict", "--clearance"},
      Wrong{"fit C752 --part 3mm --fit pres", "pres", "word", "press"},
      Wrong{"fit C752 --part 3mm --fit H7/p9", "H7/p9", "word", "H7"},
      Wrong{"fit C752 --part 60mm --fit press", "H7", "word", "50.000 mm"},
      Wrong{"fit C752 --part 3mm --heat 150", "150", "word", "unit"},
      Wrong{"fit C752 --part 3mm --heat 10C", "10C", "word", "--heat"},
      Wrong{"fit C752 --part 3mm --tempered 20C", "20C", "word", "--tempered"},
      Wrong{"fit C752 --part 3mm --to 1085", "1085", "word", "material"},
      Wrong{"fit C752 --part 3mm --length 1", "--length", "word", "fit"},
      Wrong{"fit C752 303 --part 3mm", "303", "word", "too many"});
  INFO(wrong.line);
  const Json error = error_of(wrong.line, 2);
  CHECK(error["word"] == wrong.word);
  CHECK(error["kind"] == wrong.kind);
  CHECK(error["message"].get<std::string>().find(wrong.says) != std::string::npos);
  const auto text = test::quillside(wrong.line);
  CHECK(text.exit == 2);
  CHECK(text.out.empty());
  CHECK(text.err.starts_with("quillside: "));
  CHECK(text.err.find('\n') == text.err.size() - 1);
}

TEST_CASE("every metal has an answer, cold and warm") {
  const Json list = answer_of("tables list");
  for (const auto& row : list["found"]["material"]) {
    const std::string key = row["key"];
    INFO(key);
    const Json answer = answer_of("fit " + key + " --part 3.00mm --part-width 16.0mm --fit press --heat 100C");
    CHECK(answer["found"]["gain"]["value"].get<double>() > 0);
    CHECK(answer["found"].contains("heat_limit"));
    const auto text = test::quillside("fit " + key + " --part 3.00mm --units metric");
    CHECK(text.exit == 0);
    CHECK(text.out.find('{') == std::string::npos); // every word of a caution is filled in
  }
}
