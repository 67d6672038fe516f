// The one value type of conditions and derived facts: closed, three-valued, with bounds.
//
// A value may be known in part: a number between two bounds, a date between two days, a boolean
// that is unknown. "Unknown" is a value, never an error and never the same as false.
#pragma once

#include <optional>
#include <string>

#include "base/date.h"
#include "base/rational.h"
#include "base/unit.h"

namespace stile::expression {

enum class Truth { False, True, Unknown };

Truth truthAnd(Truth a, Truth b);  ///< strong Kleene logic
Truth truthOr(Truth a, Truth b);
Truth truthNot(Truth a);
Truth truthXor(Truth a, Truth b);
Truth truthImplies(Truth a, Truth b);

enum class ValueKind { Boolean, Number, Text, Code, Date };

/// What an expression or a fact is of. Numbers carry the unit their digits are in ("1" for pure
/// numbers); codes carry no list here (the checker has it, see Symbol).
struct Type {
  ValueKind kind = ValueKind::Boolean;
  base::Unit unit;                 ///< Number only; default = pure number
  base::Analyte analyte = base::Analyte::None;
  bool isWhole = false;            ///< Number only: integers
};

/// A value of some Type. Always true: members of other kinds are empty.
/// A Number has bounds in its type's unit; a missing bound means "no limit known"; both bounds
/// equal means exactly known. Text and Code: nullopt means unknown.
struct Value {
  ValueKind kind = ValueKind::Boolean;
  Truth truth = Truth::Unknown;
  std::optional<base::Rational> low, high;
  std::optional<std::string> text;
  std::optional<base::PartialDate> date;
  /// The question certainly does not apply, so there is nothing to compare: every comparison with
  /// this value is false and arithmetic with it is again not applicable. Never set on a Boolean.
  bool notApplicable = false;

  static Value boolean(Truth truth);
  static Value boolean(bool value) { return boolean(value ? Truth::True : Truth::False); }
  static Value number(base::Rational value);
  static Value between(std::optional<base::Rational> low, std::optional<base::Rational> high);
  static Value ofText(std::string text);
  static Value code(std::string code);
  static Value ofDate(base::PartialDate date);
  static Value unknown(ValueKind kind);
  static Value ofNotApplicable(ValueKind kind);

  /// Nothing at all is known (no bound, no text, truth unknown); not applicable is something known.
  bool isUnknown() const;
  /// Known to the last digit: a truth, one number, one text, an exact day, or not applicable.
  bool isSettled() const;
  bool operator==(const Value&) const = default;
};

}  // namespace stile::expression
