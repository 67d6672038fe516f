#include "answers/expression_scope.h"

#include <utility>

#include "expression/evaluator.h"

namespace stile::answers {
namespace {

using expression::Collection;
using expression::Truth;

constexpr const char* kStartOfClock = "1970-01-01T00:00:00Z";

expression::Clock clockAt(const std::string& now) {
  if (const auto clock = expression::Clock::parse(now)) return *clock;
  return *expression::Clock::parse(kStartOfClock);
}

}  // namespace

ExpressionScope::ExpressionScope(const ResponseTree& tree, const std::string& now) : tree_(tree) {
  environment_.clock = clockAt(now);
  environment_.variables["resource"] = expression::itemsOf(tree.node(), *environment_.model);
  environment_.variables["questionnaire"] = expression::itemsOf(tree.form().node(), *environment_.model);
}

Collection ExpressionScope::focusAt(const ExpressionPlace& place) const {
  if (!place.item) return environment_.variables.find("resource")->second;
  if (!place.self) return {};
  return expression::itemsOf(place.self->node, *environment_.model,
                             environment_.model->find("QuestionnaireResponse.item"));
}

std::optional<Collection> ExpressionScope::run(const questionnaire::Expression& expression,
                                               const ExpressionPlace& place, Variables variables,
                                               base::Issues& issues) const {
  const std::string subject = place.item ? place.item->linkId : tree_.form().name();
  if (!expression.program) {
    issues.error(expression.place, subject,
                 "an expression in " + expression.language + " is not evaluated here",
                 "write it in text/fhirpath");
    return std::nullopt;
  }
  expression::Environment environment = environment_;
  for (auto& [name, value] : variables) environment.variables[name] = std::move(value);
  const Collection focus = focusAt(place);
  environment.variables["context"] = focus;
  if (place.item && place.item->node) {
    environment.variables["qitem"] = expression::itemsOf(*place.item->node, *environment.model,
                                                         environment.model->find("Questionnaire.item"));
  }
  return expression.program->evaluate(focus, environment, issues);
}

void ExpressionScope::addVariables(const std::vector<questionnaire::Expression>& list,
                                   const ExpressionPlace& place, Variables& into) {
  for (const questionnaire::Expression& variable : list) {
    // One that fails or is asked of a server stays undefined; whoever reads it is told.
    base::Issues ignored;
    if (auto value = run(variable, place, into, ignored)) into[variable.name] = std::move(*value);
  }
}

const ExpressionScope::Variables& ExpressionScope::variablesAt(const ExpressionPlace& place) {
  const Key key{place.item, place.within, place.self};
  if (const auto found = variables_.find(key); found != variables_.end()) return found->second;
  Variables variables;
  if (!place.item) {
    addVariables(tree_.form().variables(), place, variables);
  } else {
    ExpressionPlace outer;  // the form as a whole
    outer.within = &tree_.root();
    if (place.within && place.within->of) {
      const ResponseItem* around = place.within->of;
      outer = {around->item, around->within, around};
    }
    variables = variablesAt(outer);
    addVariables(place.item->variables, place, variables);
  }
  return variables_.emplace(key, std::move(variables)).first->second;
}

std::optional<Collection> ExpressionScope::evaluate(const questionnaire::Expression& expression,
                                                    const ExpressionPlace& place, base::Issues& issues) {
  return run(expression, place, variablesAt(place), issues);
}

Truth ExpressionScope::holds(const questionnaire::Expression& condition, const questionnaire::Item& item,
                             const Occurrence& within, const ResponseItem* self) {
  const auto result = evaluate(condition, {&item, &within, self}, conditionIssues_);
  const auto decided = result ? expression::asCondition(*result) : std::nullopt;
  if (!decided) return Truth::Unknown;
  return *decided ? Truth::True : Truth::False;
}

}  // namespace stile::answers
