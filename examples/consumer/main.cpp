// A maker of cabinet fittings drills 303 escutcheons: what does the spindle run at for the number 30 drill?
#include <iostream>

#include <quillside/job/drill.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

int main() {
  using namespace quillside;
  try {
    const Tables tables = builtin_tables();
    const SizeWord word = read_size("no30", UnitSystem::inch);
    const DrillQuestion question{
        .size = {resolve_size(tables.sizes, word, drill_sizes), word.text},
        .material = {read_work(tables, "303"), "303"},
        .cutter = {&usual_cutter(tables, "drill"), {}}, // none was named: the usual one
    };

    const Answer answer = drill(tables, question);
    const Measure* speed = find_measure(answer.settings, key::spindle_speed.name);
    if (speed == nullptr) { // the verdict is `do not`: there is nothing to set
      std::cerr << answer.reason.value_or("no speed") << '\n';
      return 1;
    }
    std::cout << question.size.value.name << " in 303: " << print_spindle_speed(rev_per_min(speed->value))
              << " rev/min\n";
    for (const CautionGiven& caution : answer.cautions) std::cout << caution.severity << ": " << caution.text << '\n';
  } catch (const Fault& fault) {
    std::cerr << fault.message << '\n';
    return exit_code(fault.kind);
  }
}
