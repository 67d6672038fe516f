// Any bytes as an expression over a resource: reading and evaluating must not crash, hang or go beyond
// its limits, must say why when it fails, and must say the same twice. A zero byte ends the expression;
// what follows it is the resource, if it is one.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "expression/evaluator.h"
#include "json/document.h"

using namespace stile;
using namespace stile::expression;

namespace {

/// One value of each kind, in groups and lists, as a response to a form has them.
constexpr const char* kResponse = R"({"resourceType": "QuestionnaireResponse", "status": "completed",
  "authored": "2026-11-25T10:30:00+01:00", "item": [
  {"linkId": "a", "answer": [{"valueBoolean": true}]},
  {"linkId": "b", "answer": [{"valueQuantity": {"value": 81.5, "unit": "kg", "system": "http://unitsofmeasure.org", "code": "kg"}}]},
  {"linkId": "c", "answer": [{"valueDate": "2025-03"}, {"valueTime": "10:30:00"}, {"valueString": "Tarnside"}]},
  {"linkId": "d", "item": [{"linkId": "e", "answer": [{"valueInteger": 3}, {"valueDecimal": 0.10},
    {"valueCoding": {"system": "urn:x", "code": "y"}}]}]}]})";

void require(bool isTrue) {
  if (!isTrue) std::abort();
}

Environment surroundings() {
  Environment environment;
  environment.clock = *Clock::parse("2026-11-25T10:30:00.000+00:00");
  environment.limits = {20'000, 2'000, 1u << 12, 1u << 16};  // small, so that limits are met
  return environment;
}

std::string inWords(const std::optional<Collection>& result, const base::Issues& issues) {
  std::string words;
  for (const base::Issue& issue : issues.all()) words += base::toText(issue) + "\n";
  if (!result) return words;
  for (const Item& item : *result) words += item.toText().value_or("-") + "\n";
  return words;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view all(reinterpret_cast<const char*>(data), size);
  const std::string text(all.substr(0, all.find('\0')));
  const std::string own(all.size() > text.size() ? all.substr(text.size() + 1) : std::string_view());

  base::Issues issues;
  const auto expression = Expression::parse(text, "fuzz", issues);
  require(expression.has_value() == !issues.hasErrors());
  if (!expression) return 0;
  expression->variablesRead();

  base::Issues ignored;
  auto document = own.empty() ? nullptr : json::Document::parse(own, "own", ignored);
  if (!document) document = json::Document::parse(kResponse, "response", ignored);
  const Collection focus = itemsOf(document->root(), r4Model());
  const Environment environment = surroundings();
  base::Issues first, second;
  const auto result = expression->evaluate(focus, environment, first);
  require(result.has_value() || first.hasErrors());
  require(!result || result->size() <= environment.limits.items);
  const auto again = expression->evaluate(focus, environment, second);
  require(inWords(result, first) == inWords(again, second));
  if (result) asCondition(*result);
  return 0;
}
