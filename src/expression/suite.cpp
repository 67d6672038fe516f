#include "expression/suite.h"

#include "expression/evaluator.h"
#include "json/reader.h"

namespace stile::expression {
namespace {

/// A value as the suite writes it.
std::string suiteText(const Item& item) {
  const auto text = item.toText();
  if (!text) return item.typeName().name.empty() ? "an object" : "a " + item.typeName().name;
  if (!item.isTemporal()) return *text;
  return (item.temporal().kind == TemporalKind::Time ? "@T" : "@") + *text;
}

std::string lowered(std::string text) {
  for (char& c : text) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return text;
}

bool isOfType(const Item& item, const std::string& type) {
  if (type.empty()) return true;
  for (const ModelType* own = item.type; own; own = own->base) {
    if (own->name == type) return true;
  }
  return lowered(item.typeName().name) == lowered(type);
}

bool isSame(const Item& item, const SuiteOutput& output) {
  if (!isOfType(item, output.type)) return false;
  if (const auto number = item.number()) {
    const auto wanted = Decimal::parse(output.value);
    return wanted && wanted->value == number->value;
  }
  return suiteText(item) == output.value;
}

std::string inWords(const Collection& items) {
  if (items.empty()) return "{}";
  std::string text;
  for (const Item& item : items) {
    if (!text.empty()) text += " | ";
    text += item.typeName().name + " " + suiteText(item);
  }
  return text;
}

std::string wantedInWords(const SuiteCase& suiteCase) {
  if (!suiteCase.invalid.empty()) return "an error (" + suiteCase.invalid + ")";
  if (suiteCase.outputs.empty()) return "{}";
  std::string text;
  for (const SuiteOutput& output : suiteCase.outputs) {
    if (!text.empty()) text += " | ";
    text += (output.type.empty() ? "" : output.type + " ") + output.value;
  }
  return text;
}

bool isAsWanted(const SuiteCase& suiteCase, const Collection& result) {
  if (suiteCase.isPredicate) {
    const auto holds = asCondition(result);
    return holds && suiteCase.outputs.size() == 1 &&
           suiteCase.outputs.front().value == (*holds ? "true" : "false");
  }
  if (result.size() != suiteCase.outputs.size()) return false;
  for (std::size_t i = 0; i < result.size(); ++i) {
    if (!isSame(result[i], suiteCase.outputs[i])) return false;
  }
  return true;
}

std::string textOr(json::ObjectReader& reader, std::string_view key) {
  const auto node = reader.find(key);
  return node && node->isString() ? node->string() : std::string();
}

}  // namespace

std::optional<std::vector<SuiteCase>> readSuite(json::Node root, base::Issues& issues) {
  if (!root.isArray()) {
    issues.error(root.place(), "", "a suite is an array of cases", "write [ … ]");
    return std::nullopt;
  }
  std::vector<SuiteCase> cases;
  base::Issues own;
  for (std::size_t i = 0; i < root.size(); ++i) {
    json::ObjectReader reader(root.at(i), "case " + std::to_string(i + 1), own);
    if (!reader.isObject()) continue;
    SuiteCase suiteCase;
    suiteCase.group = textOr(reader, "group");
    suiteCase.name = textOr(reader, "name");
    suiteCase.inputFile = textOr(reader, "inputfile");
    suiteCase.invalid = textOr(reader, "invalid");
    suiteCase.isStrict = textOr(reader, "mode") == "strict";
    suiteCase.text = reader.requireString("expression");
    const auto predicate = reader.find("predicate");
    suiteCase.isPredicate = predicate && predicate->isBoolean() && predicate->boolean();
    for (const json::Node& output : reader.array("outputs")) {
      const auto value = output.find("value");
      const auto type = output.find("type");
      if (!value || !value->isString()) {
        reader.issue(output, "an output has a value, a text");
        continue;
      }
      suiteCase.outputs.push_back({type && type->isString() ? type->string() : "", value->string()});
    }
    cases.push_back(std::move(suiteCase));
  }
  issues.append(own);
  if (own.hasErrors()) return std::nullopt;
  return cases;
}

Verdict judge(const SuiteCase& suiteCase, const std::optional<json::Node>& input, const Clock& clock,
              const TypeModel& model) {
  Verdict verdict;
  verdict.wanted = wantedInWords(suiteCase);
  base::Issues issues;
  const auto expression = Expression::parse(suiteCase.text, suiteCase.name, issues);
  std::optional<Collection> result;
  if (expression) {
    Environment environment;
    environment.clock = clock;
    environment.model = &model;
    environment.isStrict = suiteCase.isStrict;
    result = expression->evaluate(input ? itemsOf(*input, model) : Collection{}, environment, issues);
  }
  if (!result) {
    verdict.given = "an error: " + (issues.empty() ? std::string() : issues.all().front().message);
    verdict.agrees = !suiteCase.invalid.empty();
    return verdict;
  }
  verdict.given = inWords(*result);
  verdict.agrees = suiteCase.invalid.empty() && isAsWanted(suiteCase, *result);
  return verdict;
}

}  // namespace stile::expression
