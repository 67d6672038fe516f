// matches(), matchesFull() and replaceMatches() (FHIRPath 2.0.0, 5.6).
#include <array>

#include "expression/function_table.h"
#include "expression/pattern.h"

namespace stile::expression {
namespace {

// Compiling a pattern costs as much as looking at so many items.
constexpr std::size_t kPatternSteps = 200;

std::shared_ptr<const Pattern> patternOf(Call& call, const std::string& text, std::size_t flagsAt) {
  const std::string flags = call.count() > flagsAt ? call.textArgument(flagsAt).value_or("") : std::string();
  for (const char c : flags) {
    if (c != 'i' && c != 'm') call.machine.fail(call.at(flagsAt), "the flags of a pattern are i and m");
  }
  call.machine.budget().step(kPatternSteps + text.size());
  std::string reason;
  auto pattern = Pattern::compile(text, reason, flags.find('i') != std::string::npos,
                                  flags.find('m') != std::string::npos);
  if (!pattern) call.machine.fail(call.at(0), reason, "look-around and back references are not known here");
  return pattern;
}

Collection matched(Call& call, bool isFull) {
  const std::string* text = call.text();
  const auto regex = call.textArgument(0);
  if (!text || !regex) return {};
  const auto pattern = patternOf(call, *regex, 1);
  // Linear in the text and in the pattern.
  call.machine.budget().scan(text->size() * (1 + regex->size() / 16));
  return {Item::boolean(isFull ? pattern->matches(*text) : pattern->isFoundIn(*text))};
}

Collection matches(Call& call) {
  return matched(call, false);
}
Collection matchesFull(Call& call) {
  return matched(call, true);
}

Collection replaceMatches(Call& call) {
  const std::string* text = call.text();
  const auto regex = call.textArgument(0);
  const auto substitution = call.textArgument(1);
  if (!text || !regex || !substitution) return {};
  if (regex->empty()) return call.input;
  const auto pattern = patternOf(call, *regex, 2);
  Budget& budget = call.machine.budget();
  budget.scan(text->size() * (1 + regex->size() / 16));
  auto result = pattern->replaceAll(*text, *substitution, budget.limits().textLength);
  if (!result) budget.text(budget.limits().textLength + 1);
  budget.text(result->size());
  return {Item::text(std::move(*result))};
}

constexpr std::array<FunctionEntry, 3> kMatchingFunctions{{{"matches", 1, 2, matches},
                                                   {"matchesFull", 1, 2, matchesFull},
                                                   {"replaceMatches", 2, 3, replaceMatches}}};

}  // namespace

std::span<const FunctionEntry> matchingFunctions() {
  return kMatchingFunctions;
}

}  // namespace stile::expression
