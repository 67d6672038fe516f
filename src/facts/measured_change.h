// How one measured result differs from an earlier one.
#pragma once

#include <optional>

#include "base/rational.h"
#include "facts/dictionary.h"

namespace stile::facts {

enum class Turn { None, Better, Worse };

struct MeasuredChange {
  base::Rational by;           ///< now less before, in the fact's unit
  std::optional<bool> isReal;  ///< at least the smallest real change; nullopt when none is published
  Turn turn = Turn::None;      ///< by what the dictionary calls a concern; None where no direction is worse
};

/// Both in the fact's unit. nullopt when the difference does not fit.
std::optional<MeasuredChange> changeOf(const Definition& definition, const base::Rational& before, const base::Rational& now);

}  // namespace stile::facts
