#include "questionnaire/expression_reader.h"

#include <memory>
#include <utility>

#include "expression/json_origin.h"
#include "questionnaire/item_type.h"

namespace stile::questionnaire {
namespace {

/// Other languages are kept as text; whoever needs the value says that it is not to be had.
void compile(Expression& expression, const std::string& subject, base::Issues& issues) {
  if (!expression.isFhirPath()) return;
  expression.program = expression::Expression::parse(
      expression.text, std::make_shared<expression::JsonOrigin>(*expression.node), subject, issues);
}

/// A FHIR Expression object.
std::optional<Expression> expressionOf(json::Node node, const std::string& subject, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  if (!reader.isObject()) return std::nullopt;
  reader.find("id");
  reader.find("extension");
  Expression expression;
  expression.place = node.place();
  expression.name = reader.string("name");
  expression.language = requireWords(reader, "language");
  expression.text = reader.string("expression");
  expression.node = reader.find("expression");
  acceptUnused(reader, {"description", "name", "language", "expression", "reference"});
  reader.finish();
  if (expression.text.empty()) {
    reader.issue(node, "the expression has no text", "write it in the member expression");
    return std::nullopt;
  }
  expression.place = expression.node->place();
  compile(expression, subject, issues);
  return expression;
}

std::optional<Expression> onlyExpression(Extensions& extensions, std::string_view url,
                                         const std::string& subject, base::Issues& issues) {
  const auto node = extensions.only(url, "valueExpression", json::Kind::Object);
  return node ? expressionOf(*node, subject, issues) : std::nullopt;
}

/// For what must be followed for the form to mean what its author meant.
void needsFhirPath(std::optional<Expression>& expression, const char* what, const std::string& subject,
                   base::Issues& issues) {
  if (!expression || expression->isFhirPath()) return;
  issues.error(expression->place, subject,
               std::string(what) + " is written in " + expression->language + ", which is not evaluated here",
               "write it in text/fhirpath");
  expression.reset();
}

/// The expression of a constraint: a string in R4, an Expression in later guides.
std::optional<Expression> ofConstraint(json::Node part, const std::string& subject, base::Issues& issues) {
  if (const auto object = part.find("valueExpression")) return expressionOf(*object, subject, issues);
  const auto text = part.find("valueString");
  if (!text || !text->isString() || text->string().empty()) return std::nullopt;
  Expression expression;
  expression.language = "text/fhirpath";
  expression.text = text->string();
  expression.node = text;
  expression.place = text->place();
  compile(expression, subject, issues);
  return expression;
}

std::string firstString(json::Node part) {
  for (std::size_t i = 0; i < part.size(); ++i) {
    if (part.keyAt(i).starts_with("value") && part.at(i).isString()) return part.at(i).string();
  }
  return {};
}

std::optional<Constraint> constraintOf(json::Node node, const std::string& subject, base::Issues& issues) {
  Constraint constraint;
  constraint.place = node.place();
  bool hasExpression = false;
  const auto parts = node.find("extension");
  for (std::size_t i = 0; parts && parts->isArray() && i < parts->size(); ++i) {
    const json::Node part = parts->at(i);
    const auto url = part.find("url");
    const std::string name = url && url->isString() ? url->string() : std::string();
    if (name == "key") constraint.key = firstString(part);
    if (name == "human") constraint.human = firstString(part);
    if (name == "severity") constraint.isWarning = firstString(part) == "warning";
    if (name != "expression") continue;
    if (auto expression = ofConstraint(part, subject, issues)) {
      constraint.expression = std::move(*expression);
      hasExpression = true;
    }
  }
  if (!hasExpression) {
    issues.error(node.place(), subject, "the constraint has no expression", "add the part \"expression\"");
    return std::nullopt;
  }
  if (!constraint.expression.isFhirPath()) {
    issues.error(
        constraint.expression.place, subject,
        "the constraint is written in " + constraint.expression.language + ", which is not evaluated here",
        "write it in text/fhirpath");
    return std::nullopt;
  }
  return constraint;
}

/// The option a toggle names: the member value[x] of one of its parts.
std::optional<Option> toggledOption(json::Node part) {
  for (const char* type : {"Coding", "String", "Integer", "Date", "Time", "Reference"}) {
    const auto value = part.find(memberName("value", type));
    if (!value) continue;
    const auto text = [&](std::string_view member) {
      const auto found = value->find(member);
      return found && found->isString() ? found->string() : std::string();
    };
    Option option;
    option.type = type;
    option.system = text("system");
    option.code = value->isString()   ? value->string()
                  : value->isNumber() ? value->numberText()
                                      : text(option.type == "Reference" ? "reference" : "code");
    return option;
  }
  return std::nullopt;
}

std::optional<OptionToggle> toggleOf(json::Node node, const std::string& subject, base::Issues& issues) {
  OptionToggle toggle;
  std::optional<Expression> condition;
  const auto parts = node.find("extension");
  for (std::size_t i = 0; parts && parts->isArray() && i < parts->size(); ++i) {
    const json::Node part = parts->at(i);
    const auto url = part.find("url");
    const std::string name = url && url->isString() ? url->string() : std::string();
    if (name == "expression") {
      if (const auto object = part.find("valueExpression"))
        condition = expressionOf(*object, subject, issues);
    } else if (const auto option = name == "option" ? toggledOption(part) : std::nullopt) {
      toggle.options.push_back(*option);
    }
  }
  needsFhirPath(condition, "answerOptionsToggleExpression", subject, issues);
  if (!condition || toggle.options.empty()) {
    issues.error(node.place(), subject,
                 "answerOptionsToggleExpression needs options and an expression in FHIRPath",
                 "give the parts \"option\" and \"expression\"");
    return std::nullopt;
  }
  toggle.condition = std::move(*condition);
  return toggle;
}

}  // namespace

std::vector<Expression> readVariables(Extensions& extensions, const std::string& subject,
                                      base::Issues& issues) {
  std::vector<Expression> variables;
  for (const json::Node& node :
       extensions.each(extension_url::kVariable, "valueExpression", json::Kind::Object)) {
    auto variable = expressionOf(node, subject, issues);
    if (!variable) continue;
    if (variable->name.empty()) {
      issues.error(node.place(), subject, "the variable has no name", "give it a name to be called by");
      continue;
    }
    variables.push_back(std::move(*variable));
  }
  return variables;
}

std::vector<Constraint> readConstraints(Extensions& extensions, const std::string& subject,
                                        base::Issues& issues) {
  std::vector<Constraint> constraints;
  for (const std::string_view url : {extension_url::kConstraint, extension_url::kTargetConstraint}) {
    for (const json::Node& node : extensions.all(url)) {
      if (auto constraint = constraintOf(node, subject, issues))
        constraints.push_back(std::move(*constraint));
    }
  }
  return constraints;
}

std::vector<std::string> readLaunchContext(Extensions& extensions) {
  std::vector<std::string> names;
  for (const json::Node& context : extensions.all(extension_url::kLaunchContext)) {
    const auto parts = context.find("extension");
    for (std::size_t i = 0; parts && parts->isArray() && i < parts->size(); ++i) {
      const auto url = parts->at(i).find("url");
      if (!url || !url->isString() || url->string() != "name") continue;
      const auto coding = parts->at(i).find("valueCoding");
      const auto code = coding ? coding->find("code") : parts->at(i).find("valueId");
      if (code && code->isString()) names.push_back(code->string());
    }
  }
  return names;
}

void readExpressions(json::ObjectReader& reader, Extensions& extensions, Item& item, base::Issues& issues) {
  item.enableExpression =
      onlyExpression(extensions, extension_url::kEnableWhenExpression, item.linkId, issues);
  item.calculatedExpression =
      onlyExpression(extensions, extension_url::kCalculatedExpression, item.linkId, issues);
  item.initialExpression = onlyExpression(extensions, extension_url::kInitialExpression, item.linkId, issues);
  needsFhirPath(item.enableExpression, "enableWhenExpression", item.linkId, issues);
  needsFhirPath(item.calculatedExpression, "calculatedExpression", item.linkId, issues);
  if (item.enableExpression && !item.enableWhen.empty()) {
    reader.issue(reader.node(), "enableWhen and enableWhenExpression exclude each other", "keep one of them");
  }
  if (item.calculatedExpression && !isQuestion(item.type)) {
    reader.issue(reader.node(), "only a question can have a calculatedExpression", "move it to a question");
  }
  for (const json::Node& node : extensions.all(extension_url::kOptionsToggle)) {
    if (auto toggle = toggleOf(node, item.linkId, issues)) item.toggles.push_back(std::move(*toggle));
  }
  item.variables = readVariables(extensions, item.linkId, issues);
  item.constraints = readConstraints(extensions, item.linkId, issues);
}

}  // namespace stile::questionnaire
