// What a whole response must keep to: enablement, occurrences, calculated values, constraints. For
// src/answers only; validateResponse() is the door.
#pragma once

#include <string>

#include "answers/expression_scope.h"
#include "answers/response_enablement.h"
#include "answers/response_head.h"
#include "answers/response_tree.h"

namespace stile::answers {

class ResponseValidator {
 public:
  ResponseValidator(json::Node response, const ResponseHead& head, const std::string& now,
                    base::Issues& issues);

  void validate();

 private:
  void checkLevel(const std::vector<std::unique_ptr<questionnaire::Item>>& items, const Occurrence& within);
  void checkItem(const questionnaire::Item& item, const Occurrence& within);
  void checkDisabled(const std::vector<const ResponseItem*>& found);
  void checkUndecided(const questionnaire::Item& item, const Occurrence& within);
  void checkRequired(const questionnaire::Item& item, const Occurrence& within,
                     const std::vector<const ResponseItem*>& found);
  void checkOccurs(const questionnaire::Item& item, const Occurrence& within,
                   const std::vector<const ResponseItem*>& found);
  void checkAnswers(const ResponseItem& question);
  void checkToggled(const ResponseItem& question);
  void checkCalculated(const ResponseItem& question);
  void checkConstraints(const std::vector<questionnaire::Constraint>& constraints,
                        const ExpressionPlace& place, json::Node at);
  void error(json::Node at, const std::string& subject, std::string message, std::string remedy);
  void note(json::Node at, const std::string& subject, std::string message, std::string remedy);

  const ResponseHead& head_;
  base::Issues& issues_;
  ResponseTree tree_;
  ExpressionScope scope_;
  ResponseEnablement enablement_;
};

}  // namespace stile::answers
