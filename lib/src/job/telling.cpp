#include "telling.hpp"

#include <algorithm>

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

std::string percent(double share) { return shortest_decimal(share); }

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

void Telling::speed(const SpeedChoice& choice) {
  because_of_row("cutting speed", describe(*choice.row) + ": " + std::string(printed(*choice.row)),
                 speed_value(*choice.row), choice.row->source);
  for (const auto* row : choice.spanning)
    because_of_row("spans the band", describe(*row) + ": " + std::string(printed(*row)), speed_value(*row),
                   row->source);
  if (choice.ratio != nullptr)
    because_of_row("by rule",
                   std::string(choice.ratio->cutter) + " runs at " + std::string(choice.ratio->ratio.text) + " times " +
                       std::string(choice.ratio->of),
                   Answer::of(choice.band), choice.ratio->source);
  if (choice.one_value) {
    const Limit& below = limit(tables_.limits, "band_below");
    const Limit& above = limit(tables_.limits, "band_above");
    because_of_row("band", percent(below.ratio) + " to " + percent(above.ratio) + " of the one figure",
                   Answer::of(choice.band), below.source);
    word("below", percent(below.ratio));
    word("above", percent(above.ratio));
  }
  for (const auto* row : choice.others)
    because_of_row("passed over", describe(*row) + ": " + std::string(printed(*row)), speed_value(*row), row->source);

  const std::string_view standing = source_of(tables_, choice.row->source).standing;
  if (choice.ratio != nullptr) {
    word("rule", std::string(choice.ratio->ratio.text) + " times the speed for " + std::string(choice.ratio->of) +
                     (standing == "from memory" ? ", which is from memory" : ""));
    flag("speed-derived");
  } else if (standing == "from memory") {
    flag("speed-from-memory");
  } else if (standing == "derived") {
    word("rule", cite(source_of(tables_, choice.row->source)));
    flag("speed-derived");
  } else if (standing == "common practice") {
    flag("speed-practice");
  } else if (standing == "demo") {
    flag("speed-demo");
  }
  if (choice.one_value) flag("one-source");
  if (choice.between_bands) flag("between-bands");
  if (choice.below_softest) {
    flag("below-softest");
    word("band", std::string(choice.row->hardness.text));
  }
  if (choice.hardness_unstated) flag("hardness-unstated");

  if (choice.assumed) {
    if (!choice.row->condition.empty()) answer_.input_word("condition", choice.row->condition, std::nullopt);
    if (choice.row->hardness.given()) answer_.input_word("hardness", choice.row->hardness.text, std::nullopt);
  }
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
