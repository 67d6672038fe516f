// FHIRPath (HL7, normative release 2.0.0, with the functions its trial-use successor adds) over
// JSON resources: the full evaluator, for questionnaires and for the command line. Rules and
// derived facts use the scalar profile of program.h; both share lexer, grammar and syntax tree.
//
//   auto age = Expression::parse("today() - 18 years >= %patient.birthDate", origin, "item 3", issues);
//   auto outcome = age->evaluate(focus, environment, issues);
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "expression/environment.h"
#include "expression/item.h"
#include "expression/syntax.h"

namespace stile::expression {

/// A parsed expression, its functions known and given the right number of arguments. Cheap to copy.
class Expression {
 public:
  /// nullopt and located issues when the text is not FHIRPath. `origin` must give places as long
  /// as the expression lives.
  static std::optional<Expression> parse(std::string_view text, std::shared_ptr<const Origin> origin,
                                         const std::string& subject, base::Issues& issues);
  /// An expression that stands on its own, called `name` in issues.
  static std::optional<Expression> parse(std::string_view text, const std::string& name,
                                         base::Issues& issues);

  /// Evaluates on `focus` (usually one item; `itemsOf(document->root(), model)`).
  ///
  /// nullopt and one located issue when the specification says that it ends in an error, or when a
  /// limit is passed. Pure: the same input gives the same result. The result shares the lifetime
  /// of the documents it was read from.
  std::optional<Collection> evaluate(const Collection& focus, const Environment& environment,
                                     base::Issues& issues) const;

  const std::string& text() const;
  /// Names of the variables it reads, without the percent sign, each once, in reading order; those
  /// defined within the expression are left out.
  std::vector<std::string> variablesRead() const;

 private:
  struct Parts;
  std::shared_ptr<const Parts> parts_;
};

/// A result as a condition: true for {true}, false for {false} and for empty (FHIRPath 2.0.0, 5.2 where():
/// a condition that is not true does not hold), true for one item of another type. nullopt for
/// several items, which is an error.
std::optional<bool> asCondition(const Collection& result);

}  // namespace stile::expression
