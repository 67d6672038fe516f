// Norm tables: by sex and age, where a measured result lies against published values.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"
#include "base/unit.h"
#include "expression/value.h"
#include "json/document.h"

namespace stile::facts {

/// One band: cut-offs for below / within / above, in the table's unit. A result equal to a cut-off
/// is within, unless the table says that it is below.
struct NormRow {
  std::string sex;
  int ageFrom = 0;
  int ageTo = 0;
  base::Rational below;
  std::optional<base::Rational> above;
};

struct NormTable {
  std::string id;
  std::string title;
  base::Unit unit;
  bool higherIsBetter = true;  ///< false for timed tests: below = slower than the cut-off
  bool equalIsBelow = false;   ///< a result equal to `below` counts as below, where the source says so
  std::vector<std::string> sources;
  std::vector<NormRow> rows;
};

inline constexpr const char* kNormBelow = "below";
inline constexpr const char* kNormWithin = "within";
inline constexpr const char* kNormAbove = "above";

/// Reads rules/norms/<id>.json. nullopt when it is unusable; bands that overlap, a gap between
/// bands of one sex and cut-offs in the wrong order are issues.
std::optional<NormTable> readNormTable(json::Node root, base::Issues& issues);

/// Where `measured` lies: a code that is firm only when every row that may be the client's agrees
/// and no possible age or sex is without a row (the table says nothing about those).
expression::Value normOutcome(const NormTable& table, const expression::Value& measured,
                              const base::Unit& measuredUnit, const expression::Value& sex,
                              const expression::Value& age, base::Analyte analyte = base::Analyte::None);

}  // namespace stile::facts
