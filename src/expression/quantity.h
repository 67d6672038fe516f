// Quantities of the full evaluator: a number and a unit, which is a UCUM code or a calendar word
// (FHIRPath 2.0.0, 4.1.8 and 6.1 to 6.7).
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

#include "expression/decimal.h"
#include "expression/temporal.h"

namespace stile::expression {

/// Always true: `unit` is a UCUM code ("1" for pure numbers) or, for a calendar duration, the
/// word in the singular.
struct Quantity {
  Decimal value;
  std::string unit = "1";
  bool isCalendar = false;
  /// Read from a resource, where UCUM's codes for time also stand for calendar durations (FHIR R4,
  /// "Using FHIR types in expressions"): it is taken as whichever the other operand is.
  bool isEither = false;

  /// `unit` as an expression writes it: `month`, `months` or a UCUM code.
  static Quantity ofUnit(Decimal value, std::string_view unit, bool isCalendarWord);
  /// `5 days`, `5 'kg'` or a number alone.
  static std::optional<Quantity> parse(std::string_view text);
  std::string toText() const;  ///< `5 days`, `5 'kg'`
};

/// Equality as `=` asks: nullopt where it is undecided (a calendar year is not said to be a UCUM
/// year), false for units that are not comparable.
std::optional<bool> areEqual(const Quantity& a, const Quantity& b);
/// Order; nullopt for units that are not comparable.
std::optional<std::partial_ordering> compare(const Quantity& a, const Quantity& b);
/// Equal after conversion, rounded to the coarser of the two, as `~` asks.
bool areEquivalent(const Quantity& a, const Quantity& b);
/// True if both have the same dimension.
bool areComparable(const Quantity& a, const Quantity& b);

/// Sum and difference in the unit of the finer operand; nullopt when the units are not comparable.
std::optional<Quantity> add(const Quantity& a, const Quantity& b, bool isMinus);
std::optional<Quantity> multiply(const Quantity& a, const Quantity& b);
std::optional<Quantity> divide(const Quantity& a, const Quantity& b);
/// In another unit; nullopt when it is not comparable.
std::optional<Quantity> convert(const Quantity& value, std::string_view unit);

/// Why a quantity cannot be added to a date or time; empty when it can.
std::string whyNotAddable(const Temporal& to, const Quantity& quantity);
/// `value` plus (or minus) the quantity, which must be addable. Calendar semantics: months are
/// clamped to their last day, and what is finer than the value's precision is cut off. nullopt
/// when the year leaves 1 to 9999.
std::optional<Temporal> plus(const Temporal& value, const Quantity& quantity, bool isMinus);

}  // namespace stile::expression
