// What an expression is evaluated in: variables, clock, type model and limits.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "expression/clock.h"
#include "expression/item.h"
#include "expression/type_model.h"

namespace stile::expression {

inline constexpr std::size_t kMaxSteps = 2'000'000;      ///< items looked at or made, per evaluation
inline constexpr std::size_t kMaxItems = 100'000;        ///< in one collection
inline constexpr std::size_t kMaxTextLength = 1u << 20;  ///< bytes of one computed text
inline constexpr std::size_t kMaxTextBytes = 64u << 20;  ///< of all computed texts of one evaluation

/// What one evaluation may use up. With the parser's kMaxLength, kMaxDepth and kMaxHeight they see
/// to it that no expression and no resource can hang or exhaust the process. Whatever passes a
/// limit ends the evaluation with an error that names it.
struct EvaluationLimits {
  std::size_t steps = kMaxSteps;
  std::size_t items = kMaxItems;
  std::size_t textLength = kMaxTextLength;
  std::size_t textBytes = kMaxTextBytes;
};

/// What trace() told.
struct Traced {
  std::string name;
  Collection items;
};

/// The surroundings of an evaluation.
///
/// `variables` are the caller's, by name without the percent sign: `resource`, `context`,
/// `questionnaire`, `qitem` and others. Where they are not given, %context and %resource and
/// %rootResource are the focus. %ucum, %sct, %loinc, %vs-NAME and %ext-NAME are always there.
struct Environment {
  std::map<std::string, Collection, std::less<>> variables;
  Clock clock;
  const TypeModel* model = &r4Model();
  /// Members and types that the model does not know are errors instead of empty.
  bool isStrict = false;
  EvaluationLimits limits;
  std::vector<Traced>* traces = nullptr;  ///< where trace() writes; may be null
};

}  // namespace stile::expression
