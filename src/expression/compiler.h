// Checks a syntax tree against the scalar profile and the known facts, and compiles it.
// For src/expression only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "expression/code.h"
#include "expression/refusal.h"
#include "expression/syntax.h"

namespace stile::expression {

/// A compiled part. `node` is -1 when it was refused; that has been reported, and whatever is
/// built on it stays silent.
struct Operand {
  int node = -1;
  Type type;
  const Syntax* syntax = nullptr;
  std::vector<std::string> options;  ///< of a code fact

  bool isRefused() const { return node < 0; }
};

class Compiler {
 public:
  Compiler(std::string_view text, const SymbolTable& symbols, const Origin& origin,
           const std::string& subject, base::Issues& issues)
      : text_(text), symbols_(symbols), origin_(origin), subject_(subject), issues_(issues) {}

  /// nullopt when anything was refused.
  std::optional<Instructions> run(const Syntax& syntax, const std::optional<Type>& expected);

 private:
  // compiler.cpp: leaves, logic, and the way through the tree
  Operand compile(const Syntax& syntax);
  Operand variable(const Syntax& syntax);
  Operand date(const Syntax& syntax);
  Operand binary(const Syntax& syntax);
  Operand function(const Syntax& syntax);
  Operand member(const Syntax& syntax);
  Operand logical(const Syntax& syntax, Step step);
  bool needBoolean(const Operand& operand, const std::string& user);
  Operand expectedAs(Operand operand, const Type& expected);
  void collectSlots();

  // compiler_comparison.cpp
  Operand comparison(const Syntax& syntax, Relation relation);
  Operand membership(const Syntax& syntax);
  Operand compared(const Syntax& syntax, Operand left, Relation relation, Operand right);
  bool checkCodes(const Operand& left, const Operand& right);
  bool isOption(const Operand& code, const Operand& text);
  Operand refuseKinds(const Operand& left, const Operand& right);

  // compiler_number.cpp
  Operand number(const Syntax& syntax);
  Operand sign(const Syntax& syntax);
  Operand arithmetic(const Syntax& syntax);
  Operand addition(const Syntax& syntax, Step step, Operand left, Operand right);
  Operand inUnitOf(Operand operand, const Type& expected);
  Operand scaling(const Syntax& syntax, Step step, Operand left, Operand right);
  bool refuseNonNumbers(const Operand& left, const Operand& right);
  bool needProportional(const Operand& operand);
  /// Brings both into one unit and, where they have one, one analyte; reports why it cannot.
  bool unify(Operand& left, Operand& right, const std::string& verb);
  bool refuseBare(const Operand& bare, const Operand& other, const std::string& verb);
  /// False (and nothing reported) when the units are not comparable or a number does not fit.
  bool convert(Operand& operand, const base::Unit& unit, base::Analyte analyte);
  std::optional<Scale> scaleBetween(const base::Unit& from, const base::Unit& to,
                                    base::Analyte analyte) const;

  /// The value of a written number, or null.
  const base::Rational* constantOf(const Operand& operand) const;
  bool isWrittenText(const Operand& operand) const;
  /// A step over numbers; over written numbers it is worked out now.
  Operand numeric(const Syntax& syntax, Type type, const Node& node);

  int add(const Node& node);
  int addNumber(const base::Rational& value);
  Operand result(const Syntax& syntax, Type type, const Node& node);
  Operand refuse(const Syntax& at, std::string message, std::string remedy = {});
  Operand refuse(const Syntax& at, Refusal refusal);
  std::string named(const Syntax& syntax) const;

  std::string_view text_;
  const SymbolTable& symbols_;
  const Origin& origin_;
  const std::string& subject_;
  base::Issues& issues_;
  Instructions code_;
};

/// "a number", "a date" …
std::string wordsFor(ValueKind kind);
std::string listed(const std::vector<std::string>& words, const std::string& last);

}  // namespace stile::expression
