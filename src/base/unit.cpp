#include "base/unit.h"

#include "base/unit_atom.h"

namespace stile::base {
namespace {

// Mass over amount, in g/mol, as laboratories convert: 18.016 mg/dL of glucose, 38.67 of
// cholesterol and 88.57 of triglycerides are 1 mmol/L.
std::optional<Rational> molarMass(Analyte analyte) {
  switch (analyte) {
    case Analyte::Glucose:
      return Rational::parse("180.16");
    case Analyte::Cholesterol:
      return Rational::parse("386.7");
    case Analyte::Triglycerides:
      return Rational::parse("885.7");
    case Analyte::None:
    case Analyte::HbA1c:
      return std::nullopt;
  }
  return std::nullopt;
}

constexpr Dimension kMassConcentration{-3, 0, 1};
constexpr Dimension kAmountConcentration{-3, 0, 0, 0, 1};

bool isNgspPercent(const Unit& unit) {
  return unit.isPureNumber() && unit.factor == *Rational::fraction(1, 100);
}

bool isIfccRatio(const Unit& unit) {
  return unit.isPureNumber() && unit.factor == *Rational::fraction(1, 1000);
}

/// IFCC-NGSP master equation (Hoelzel et al., Clin Chem 2004;50:166-74):
/// NGSP % = 0.09148 * IFCC mmol/mol + 2.152.
std::optional<Rational> convertHbA1c(const Rational& value, bool toPercent) {
  const Rational slope = *Rational::parse("0.09148");
  const Rational intercept = *Rational::parse("2.152");
  if (toPercent) {
    const auto scaled = Rational::multiply(value, slope);
    return scaled ? Rational::add(*scaled, intercept) : std::nullopt;
  }
  const auto rest = Rational::subtract(value, intercept);
  return rest ? Rational::divide(*rest, slope) : std::nullopt;
}

std::optional<Rational> convertWithinDimension(const Rational& value, const Unit& from, const Unit& to) {
  if (from.factor == to.factor && from.offset == to.offset) return value;
  // The factors first: their quotient is small where value * factor might not fit.
  const auto ratio = Rational::divide(from.factor, to.factor);
  const auto absolute = Rational::add(value, from.offset);
  const auto scaled = ratio && absolute ? Rational::multiply(*absolute, *ratio) : std::nullopt;
  return scaled ? Rational::subtract(*scaled, to.offset) : std::nullopt;
}

bool areMassAndAmount(const Dimension& a, const Dimension& b) {
  return (a == kMassConcentration && b == kAmountConcentration) ||
         (a == kAmountConcentration && b == kMassConcentration);
}

std::string operand(std::string_view text) {
  text = unitCodeForCalendarWord(text);
  const bool isCompound = text.find_first_of("./") != std::string_view::npos;
  return isCompound ? "(" + std::string(text) + ")" : std::string(text);
}

/// Temperatures from another zero and the logarithmic pH take no part in products (UCUM 2.1, section 21).
bool isSpecial(const Unit& unit) {
  constexpr std::size_t kPh = 7;
  return unit.offset != Rational() || unit.dimension[kPh] != 0;
}

std::optional<Unit> combine(const Unit& a, const Unit& b, bool isQuotient) {
  if (isSpecial(a) || isSpecial(b)) return std::nullopt;
  const auto factor =
      isQuotient ? Rational::divide(a.factor, b.factor) : Rational::multiply(a.factor, b.factor);
  if (!factor) return std::nullopt;
  Unit result{{}, *factor, 0, {}};
  for (std::size_t i = 0; i < result.dimension.size(); ++i) {
    const int exponent = isQuotient ? a.dimension[i] - b.dimension[i] : a.dimension[i] + b.dimension[i];
    if (exponent < -99 || exponent > 99) return std::nullopt;
    result.dimension[i] = static_cast<signed char>(exponent);
  }
  if (b.text == "1") {
    result.text = a.text;
  } else if (a.text == "1" && !isQuotient) {
    result.text = b.text;
  } else {
    // The left side needs no parentheses: UCUM reads from left to right.
    result.text = std::string(unitCodeForCalendarWord(a.text)) + (isQuotient ? "/" : ".") + operand(b.text);
  }
  return result;
}

}  // namespace

bool comparable(const Unit& a, const Unit& b, Analyte analyte) {
  if (analyte == Analyte::HbA1c) {
    return (isNgspPercent(a) || isIfccRatio(a)) && (isNgspPercent(b) || isIfccRatio(b));
  }
  if (a.dimension == b.dimension) return true;
  return areMassAndAmount(a.dimension, b.dimension) && molarMass(analyte).has_value();
}

std::optional<Rational> convert(const Rational& value, const Unit& from, const Unit& to, Analyte analyte) {
  if (!comparable(from, to, analyte)) return std::nullopt;
  if (analyte == Analyte::HbA1c) {
    return isNgspPercent(from) == isNgspPercent(to) ? value : convertHbA1c(value, isNgspPercent(to));
  }
  if (from.dimension == to.dimension) return convertWithinDimension(value, from, to);
  const auto mass = molarMass(analyte);
  const auto converted = convertWithinDimension(value, from, to);
  if (!mass || !converted) return std::nullopt;
  return from.dimension == kMassConcentration ? Rational::divide(*converted, *mass)
                                              : Rational::multiply(*converted, *mass);
}

std::optional<Unit> multiply(const Unit& a, const Unit& b) {
  return combine(a, b, false);
}

std::optional<Unit> divide(const Unit& a, const Unit& b) {
  return combine(a, b, true);
}

std::optional<Unit> power(const Unit& base, int exponent) {
  Unit result{"1"};
  for (int i = 0; i < (exponent < 0 ? -exponent : exponent); ++i) {
    const auto next = combine(result, base, exponent < 0);
    if (!next) return std::nullopt;
    result = *next;
  }
  return result;
}

}  // namespace stile::base
