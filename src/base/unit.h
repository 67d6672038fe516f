// Units of measure, a subset of UCUM (https://ucum.org, version 2.1), exact where UCUM is exact.
//
// Differences from UCUM, on purpose: the mole is a dimension of its own, and so is the plane
// angle (`deg`), because neither is ever compared with a pure number here.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "base/rational.h"

namespace stile::base {

/// Exponents of m, s, g, K, mol, degree of angle, [iU] and [pH]; the last two are arbitrary units,
/// comparable with themselves only.
using Dimension = std::array<signed char, 8>;

/// What a concentration is of: mass and amount per volume are only convertible for a known
/// substance. Glucose, HbA1c and lipids have conversions of their own.
enum class Analyte { None, Glucose, HbA1c, Cholesterol, Triglycerides };

/// A parsed unit: value_in_base = (value + offset) * factor.
struct Unit {
  std::string text;      ///< as written, e.g. `mm[Hg]`; "1" for pure numbers
  Rational factor = 1;
  Rational offset = 0;   ///< not zero for Cel and [degF] only
  Dimension dimension{};

  bool isPureNumber() const { return dimension == Dimension{}; }
};

/// Reads a UCUM unit: atoms with metric prefixes, `.`, `/`, exponents, annotations in braces,
/// `10*9`, parentheses. Known atoms: m g s K mol eq L l min h d wk mo a (a = 365.25 d, mo = a/12)
/// Pa bar W J N gf Hz kat cal m[Hg] m[H2O] Cel [degF] [in_i] [ft_i] [yd_i] [mi_i] [lb_av] [oz_av]
/// [stone_av] [lbf_av] [MET] deg % [pH] U [iU] [IU], and annotations such as {score}, {beats}.
/// FHIRPath's calendar words (year, years, month, months, week, weeks, day, days, hour, minute …)
/// are read as a, mo, wk, d, h, min, s, ms when they are the whole text. nullopt for anything
/// else, the empty text included, and for Cel, [degF] and [pH] within a product.
std::optional<Unit> parseUnit(std::string_view text);

/// True if values of the two can be compared: same dimension, or convertible for `analyte`.
bool comparable(const Unit& a, const Unit& b, Analyte analyte = Analyte::None);

/// Converts exactly. nullopt when the units are not comparable or the number does not fit.
/// HbA1c converts between % (NGSP) and mmol/mol (IFCC) by the published master equation.
std::optional<Rational> convert(const Rational& value, const Unit& from, const Unit& to,
                                Analyte analyte = Analyte::None);

/// Product and quotient, for expressions such as kg/m2. nullopt if Cel, [degF] or [pH] is involved.
std::optional<Unit> multiply(const Unit& a, const Unit& b);
std::optional<Unit> divide(const Unit& a, const Unit& b);

}  // namespace stile::base
