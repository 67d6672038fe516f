// Expressions of a form evaluated on a response: conditions, variables, calculations, constraints.
//
// They see %resource (the response), %context (the item's place in it), %questionnaire, %qitem and the
// variables of the form and of the items around, as the Structured Data Capture guide has it. For
// src/answers only.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "answers/response_enablement.h"
#include "answers/response_tree.h"
#include "base/issue.h"
#include "expression/environment.h"

namespace stile::answers {

/// Where an expression of a form is evaluated. `item` nullptr: the form as a whole. `self` is the item's
/// place in the response, nullptr where it has none: the expression then starts from nothing.
struct ExpressionPlace {
  const questionnaire::Item* item = nullptr;
  const Occurrence* within = nullptr;
  const ResponseItem* self = nullptr;
};

class ExpressionScope : public ConditionEvaluator {
 public:
  /// `now` is text such as 2026-11-25T10:30:00+00:00; what is no such text leaves the clock at 1970.
  ExpressionScope(const ResponseTree& tree, const std::string& now);

  /// nullopt and one issue, placed in the form, when the expression ends in an error, which includes
  /// reading a variable that nobody gave.
  std::optional<expression::Collection> evaluate(const questionnaire::Expression& expression,
                                                 const ExpressionPlace& place, base::Issues& issues);

  expression::Truth holds(const questionnaire::Expression& condition, const questionnaire::Item& item,
                          const Occurrence& within, const ResponseItem* self) override;
  /// Errors in conditions, as far as they were evaluated.
  const base::Issues& conditionIssues() const { return conditionIssues_; }

 private:
  using Variables = std::map<std::string, expression::Collection, std::less<>>;
  using Key = std::tuple<const questionnaire::Item*, const Occurrence*, const ResponseItem*>;

  /// Variables of the form and of every item down to the place, outer ones first.
  const Variables& variablesAt(const ExpressionPlace& place);
  void addVariables(const std::vector<questionnaire::Expression>& list, const ExpressionPlace& place,
                    Variables& into);
  std::optional<expression::Collection> run(const questionnaire::Expression& expression,
                                            const ExpressionPlace& place, Variables variables,
                                            base::Issues& issues) const;
  expression::Collection focusAt(const ExpressionPlace& place) const;

  const ResponseTree& tree_;
  expression::Environment environment_;
  std::map<Key, Variables> variables_;
  base::Issues conditionIssues_;
};

}  // namespace stile::answers
