// Which items of a form apply, given a response: what a face shows, and what validation holds to.
//
// Unlike the enablement of facts (questionnaire/enablement.h) an unanswered question is simply not
// valued here, as the standard says, and forms may nest and look ahead as they like. Unknown is left
// for what cannot be decided: conditions that hang on each other, quantities that cannot be compared,
// dates known in part, expressions that end in an error.
#pragma once

#include <map>
#include <set>
#include <utility>

#include "answers/response_tree.h"
#include "expression/value.h"

namespace stile::answers {

/// Evaluates enableWhenExpression; the room's other part implements it.
class ConditionEvaluator {
 public:
  virtual ~ConditionEvaluator() = default;
  /// `self` is the item's place in the response, or nullptr where it has none.
  virtual expression::Truth holds(const questionnaire::Expression& condition, const questionnaire::Item& item,
                                  const Occurrence& within, const ResponseItem* self) = 0;
};

/// Conditions looked at for one question from outside; a form whose conditions go round in circles past
/// this is undecided.
inline constexpr std::size_t kMaxEnablementSteps = 100'000;

/// Enablement of every item of one response. Results are kept; the tree must not change meanwhile.
class ResponseEnablement {
 public:
  ResponseEnablement(const ResponseTree& tree, ConditionEvaluator* expressions);

  /// Whether `item`, which belongs into `within`, applies there; it need not stand in the response.
  /// False also where what it stands in does not apply.
  ///
  /// enableWhen looks at the nearest occurrence of its question: within the same repetition; else, of
  /// several, the last one before, else the first one after. A question that is disabled counts as
  /// unanswered whatever stands in the response.
  expression::Truth isEnabled(const questionnaire::Item& item, const Occurrence& within);
  /// An occurrence applies if its item does, and so on upward.
  expression::Truth isEnabled(const Occurrence& occurrence);

 private:
  using Key = std::pair<const questionnaire::Item*, const Occurrence*>;

  expression::Truth compute(const questionnaire::Item& item, const Occurrence& within);
  expression::Truth holds(const questionnaire::EnableWhen& condition, const questionnaire::Item& item,
                          const Occurrence& within);
  const ResponseItem* nearest(const questionnaire::Item& question, const questionnaire::Item& from,
                              const Occurrence& within) const;

  const ResponseTree& tree_;
  ConditionEvaluator* expressions_;
  std::map<const questionnaire::Item*, std::size_t> order_;
  std::map<Key, expression::Truth> known_;
  std::set<Key> open_;  ///< being computed; asking for one of these again is a circle
  bool sawCircle_ = false;
  std::size_t steps_ = 0;
};

}  // namespace stile::answers
