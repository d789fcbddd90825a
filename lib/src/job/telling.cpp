#include "telling.hpp"

#include <algorithm>

#include <quillside/model/surface_speed.hpp>
#include <quillside/words/print.hpp>

namespace quillside {

namespace {

std::string describe(const SpeedRow& row) {
  std::string text = std::string(row.material) + (row.condition.empty() ? "" : " " + std::string(row.condition));
  if (row.hardness.given()) text += ", " + std::string(row.hardness.text);
  return text + ", " + std::string(row.cutter);
}

std::string_view printed(const SpeedRow& row) { return row.speed.given() ? row.speed.text : row.spindle_speed.text; }

Value speed_value(const SpeedRow& row) {
  if (row.speed.given())
    return Answer::of(Band<CuttingSpeed>{row.speed.range.low, row.speed.range.low, row.speed.range.high});
  return Answer::of(
      Band<SpindleSpeed>{row.spindle_speed.range.low, row.spindle_speed.range.low, row.spindle_speed.range.high});
}

} // namespace

Telling::Telling(const Tables& tables, Answer& answer, const Work* work, std::string_view cutter)
    : tables_(tables), answer_(answer), work_(work), cutter_(cutter) {}

void Telling::name_source(std::string_view id) {
  const bool named = std::any_of(answer_.sources.begin(), answer_.sources.end(),
                                 [&](const SourceNamed& source) { return source.id == id; });
  if (named) return;
  const Source& source = source_of(tables_, id);
  const bool page_seen = !source.page.empty() && source.page != "not seen";
  answer_.sources.push_back({std::string(id), cite(source), std::string(source.standing),
                             page_seen ? std::optional(std::string(source.page)) : std::nullopt});
}

void Telling::because_of_row(std::string step, std::string formula, Value value, std::string_view source_id) {
  answer_.why.push_back({std::move(step), std::move(formula), std::move(value), std::string(source_id)});
  name_source(source_id);
}

void Telling::because_of_law(std::string step, const Law& law, Value value) {
  answer_.why.push_back({std::move(step), law.formula, std::move(value), law.id});
  const bool named = std::any_of(answer_.sources.begin(), answer_.sources.end(),
                                 [&](const SourceNamed& source) { return source.id == law.id; });
  if (!named) answer_.sources.push_back({law.id, law.source, law.standing, std::nullopt});
}

void Telling::tool(const Typed<NamedSize>& size, const Typed<Work>& material, const Typed<const Cutter*>& cutter,
                   const std::optional<Typed<const Machine*>>& machine) {
  answer_.input("size", Typed<Length>{size.value.length, size.text});
  answer_.input_word("material", material.value.material->key, material.text);
  if (!material.value.condition.empty()) answer_.input_word("condition", material.value.condition, material.text);
  if (material.value.hardness) answer_.input_word("hardness", print_hardness(*material.value.hardness), material.text);
  answer_.input_word("cutter", cutter.value->key, cutter.text);
  if (machine) answer_.input_word("machine", machine->value->key, machine->text);
}

void Telling::past_last_row(const PastLastRow& past, std::string instead) {
  const SpeedRow& row = *past.hardest;
  because_of_row("past the last row", describe(row) + ": " + std::string(printed(row)), speed_value(row), row.source);
  answer_.refuse("harder than any row for this cutter: " + print_hardness(past.work) + ", and the rows end at " +
                 print_hardness({row.hardness.band.high, row.hardness.band.scale}));
  answer_.instead = std::move(instead);
}

std::optional<Band<SpindleSpeed>> Telling::wanted_speed(Length diameter, std::string instead) {
  const SpeedResult result = choose_speed(tables_, answer_.ask, *work_, cutter_);
  if (const auto* past = std::get_if<PastLastRow>(&result)) {
    past_last_row(*past, std::move(instead));
    return std::nullopt;
  }
  const auto& choice = std::get<SpeedChoice>(result);
  rows_of(choice);
  basis_of(choice);
  // What nobody named is shown as taken: the condition of the usual row, the hardness band of any row.
  if (choice.assumed && !choice.row->condition.empty())
    answer_.input_word("condition", choice.row->condition, std::nullopt);
  if (choice.row->hardness.given()) assumed_hardness_ = choice.row->hardness.band;
  if (!work_->hardness && choice.row->hardness.given())
    answer_.input_word("hardness", choice.row->hardness.text, std::nullopt);
  const Band<SpindleSpeed> wanted{spindle_speed(choice.band.low, diameter), spindle_speed(choice.band.first, diameter),
                                  spindle_speed(choice.band.high, diameter)};
  answer_.found_wanted(wanted);
  because_of_law("spindle speed", surface_speed_law, Answer::of(wanted));
  return wanted;
}

void Telling::rows_of(const SpeedChoice& choice) {
  const auto tell = [&](const char* step, const SpeedRow& row) {
    because_of_row(step, describe(row) + ": " + std::string(printed(row)), speed_value(row), row.source);
  };
  tell("cutting speed", *choice.row);
  for (const auto* row : choice.spanning) tell("spans the band", *row);
  if (choice.ratio != nullptr)
    because_of_row("by rule",
                   std::string(choice.ratio->cutter) + " runs at " + std::string(choice.ratio->ratio.text) + " times " +
                       std::string(choice.ratio->of),
                   Answer::of(choice.band), choice.ratio->source);
  if (choice.one_value) {
    const Limit& below = limit(tables_.limits, "band_below");
    const Limit& above = limit(tables_.limits, "band_above");
    word("below", std::string(below.value));
    word("above", std::string(above.value));
    because_of_row("band", std::string(below.value) + " to " + std::string(above.value) + " of the one figure",
                   Answer::of(choice.band), below.source);
  }
  for (const auto* row : choice.others) tell("passed over", *row);
}

void Telling::basis_of(const SpeedChoice& choice) {
  const Source& source = source_of(tables_, choice.row->source);
  if (choice.ratio != nullptr) {
    word("rule", std::string(choice.ratio->ratio.text) + " times the speed for " + std::string(choice.ratio->of) +
                     (source.standing == "from memory" ? ", which is from memory" : ""));
    flag("speed-derived");
  } else if (source.standing == "from memory") {
    flag("speed-from-memory");
  } else if (source.standing == "derived") {
    word("rule", std::string(source.title));
    flag("speed-derived");
  } else if (source.standing == "common practice") {
    flag("speed-practice");
  } else if (source.standing == "demo") {
    flag("speed-demo");
  }
  word("row", describe(*choice.row));
  if (choice.one_value) flag("one-source");
  if (choice.between_bands) flag("between-bands");
  if (choice.below_softest) flag("below-softest");
  if (choice.hardness_unstated) flag("hardness-unstated");
  if (choice.condition_unstated) flag("condition-unstated");
  if (choice.softer_is_slower) flag("softer-is-slower");
}

void Telling::fluid() {
  const Fluid* fluid = choose_fluid(tables_, answer_.ask, *work_);
  if (fluid == nullptr) {
    answer_.set_none(key::fluid);
    return;
  }
  answer_.set(key::fluid, fluid->fluid);
  because_of_row("fluid", std::string(fluid->fluid), Value{}, fluid->source);
}

std::string Telling::filled_in(std::string_view text) const {
  std::string filled;
  while (!text.empty()) {
    const auto open = text.find('{');
    const auto close = text.find('}', open == std::string_view::npos ? text.size() : open);
    if (close == std::string_view::npos) break;
    filled += text.substr(0, open);
    const auto found = words_.find(text.substr(open + 1, close - open - 1));
    if (found != words_.end()) filled += found->second;
    text.remove_prefix(close + 1);
  }
  return filled + std::string(text);
}

void Telling::cautions(std::string_view machine_kind) {
  if (work_ != nullptr) word("material", std::string(work_->material->key));
  for (const auto& cutter : tables_.cutters)
    if (cutter.key == cutter_) word("cutter", std::string(cutter.name));
  const CautionSubject subject{answer_.ask,
                               work_ == nullptr ? std::string_view{} : work_->material->metal,
                               cutter_,
                               machine_kind,
                               {flags_.begin(), flags_.end()}};
  for (const auto severity : severities) {
    for (const auto& row : tables_.cautions) {
      if (row.severity == severity && holds(row, subject))
        answer_.cautions.push_back({std::string(row.key), std::string(row.severity), filled_in(row.text)});
    }
  }
}

} // namespace quillside
