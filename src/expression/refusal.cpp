#include "expression/refusal.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace stile::expression {
namespace {

// Functions that answer from what is there: where a fact is unknown, nothing is there, and the
// answer is firm all the same.
constexpr std::array<std::string_view, 24> kTurnFirm{
    "exists",   "empty",      "count",      "where",    "all",   "iif",      "allTrue",   "anyTrue",
    "allFalse", "anyFalse",   "isDistinct", "distinct", "first", "last",     "single",    "hasValue",
    "subsetOf", "supersetOf", "select",     "skip",     "take",  "coalesce", "aggregate", "repeat"};

}  // namespace

Refusal refusalOfFunction(const std::string& name) {
  if (std::find(kTurnFirm.begin(), kTurnFirm.end(), name) != kTurnFirm.end()) {
    return {name + "() is refused here: it turns unknown into a firm answer",
            "name the fact itself; for a repeating group use a summary fact"};
  }
  if (name == "today" || name == "now" || name == "timeOfDay") {
    return {name + "() is refused here: conditions never read the clock",
            "use a derived fact of the kind elapsed, which counts up to the screening date"};
  }
  return {name + "() is not part of the scalar profile", "not() is its only function"};
}

Refusal refusalOfOperator(const std::string& text) {
  const std::string message = "the operator " + text + " is not part of the scalar profile";
  if (text == "~") return {message, "write = instead"};
  if (text == "!~") return {message, "write != instead"};
  if (text == "contains") return {message, "write the fact first: %fact in ('a' | 'b')"};
  if (text == "|") return {"a list may stand only behind in", "write or between conditions"};
  if (text == "div" || text == "mod") return {message, "write / instead, or a derived fact"};
  return {message, {}};
}

Refusal refusalOfKind(const Syntax& syntax) {
  switch (syntax.kind) {
    case SyntaxKind::Null:
      return {"{} is refused here: nothing can be compared with the empty collection",
              "unknown facts are handled without it"};
    case SyntaxKind::DateTime:
    case SyntaxKind::Time:
      return {"times of day are not part of the scalar profile", "write a date such as @2026-01-05"};
    case SyntaxKind::Indexer:
      return {"a fact has one value and no index", "remove the brackets"};
    case SyntaxKind::This:
    case SyntaxKind::Index:
    case SyntaxKind::Total:
      return {"$this, $index and $total are not part of the scalar profile",
              "name a fact with a percent sign"};
    case SyntaxKind::TypeOperator:
      return {"the operator " + syntax.text + " is not part of the scalar profile",
              "every fact has one fixed type"};
    default:
      return {"this is not part of the scalar profile", {}};
  }
}

}  // namespace stile::expression
