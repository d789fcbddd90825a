#include <quillside/data/blank_row.hpp>

#include <sstream>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "fields.hpp"

namespace quillside {

namespace {

/// Explains a row, field by field.
class BlankRow {
public:
  explicit BlankRow(std::ostringstream& out) : out_(out) {}
  template <class Member> void operator()(const Field& field, const Member&) { line(field); }
  void each(const Field& field, std::string_view) { line(field); }
  void points(const ChipLoad&) {
    line({"diameters", "[\"1/8 in\", \"1/4 in\"]", "printed points: the cutters", true});
    line({"loads", "[\"0.0005 in/tooth\", \"0.001 in/tooth\"]", "and the load of each", true});
  }
  void gears(const Machine&) {
    line({"steps", "[\"620 rev/min\", \"1100 rev/min\"]", "its spindle speeds, slowest first; or", true});
    line({"range", "\"100 to 2500 rev/min\"", "any speed of a range; or"});
    line({"motor", "\"1725 rev/min\"", "belts: the motor's speed, and"});
    line({"motor_pulleys", "[\"2 in\", \"3 in\"]", "diameters, step by step"});
    line({"idler_driven", "[\"4 in\", \"3 in\"]", "only with two belts: facing the motor"});
    line({"idler_driving", "[\"2 in\", \"3 in\"]", "only with two belts: facing the spindle"});
    line({"spindle_pulleys", "[\"4 in\", \"3 in\"]", ""});
  }
  void amount(const Limit&) { line({"value", "\"0.7\"", "a pure number, or a length", true}); }

private:
  void line(const Field& field) {
    std::string text =
        (field.required || field.shown ? "" : "# ") + std::string(field.key) + " = " + std::string(field.example);
    std::string about(field.about);
    if (!field.allowed.empty()) about += (about.empty() ? "one of: " : "; one of: ") + joined(field.allowed, ", ");
    if (!about.empty()) text += std::string(text.size() < 40 ? 40 - text.size() : 1, ' ') + "# " + about;
    out_ << text << '\n';
  }
  std::ostringstream& out_;
};

} // namespace

std::vector<std::string_view> row_kinds() { return {kind_names.begin(), kind_names.end()}; }

std::string blank_row(std::string_view kind) {
  std::ostringstream out;
  const Tables none;
  kinds(none, [&]<class Row>(std::string_view name, const std::span<const Row>&) {
    if (name != kind) return;
    out << (kind == "source" ? "[source.own-bench]" : "[[" + std::string(kind) + "]]") << '\n';
    const Row row{};
    BlankRow blank(out);
    fields(row, blank);
  });
  std::string row = out.str();
  if (row.empty()) {
    const auto names = row_kinds();
    throw wrong_word(std::string(kind), "is no kind of row", {names.begin(), names.end()}, nearest_word(kind, names));
  }
  if (kind == "source") return row;
  return row + "\n[source.own-bench]\nauthor = \"you\"\ntitle = \"own trials\"\nstanding = \"own bench\"\n";
}

} // namespace quillside
