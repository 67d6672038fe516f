// A small plot of one result against published norms: three stretches of a line, and a mark.
#pragma once

#include <optional>
#include <string>

#include "drawing/shape.h"
#include "facts/norm_table.h"

namespace stile::documents {

/// The row of the table that serves this sex and age; nullptr when there is none.
const facts::NormRow* normRowFor(const facts::NormTable& table, const std::string& sex, int age);

/// The line runs from worse at the left to better at the right, whichever way the numbers run; the
/// stretch within the norms is the heavy one. `unit` stands behind the numbers.
drawing::Drawing normPlot(const facts::NormTable& table, const facts::NormRow& row, const base::Rational& result,
                          const std::string& unit);

}  // namespace stile::documents
