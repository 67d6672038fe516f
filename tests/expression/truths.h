// Truth values as the tables of the tests write them.
#pragma once

#include "expression/value.h"

namespace stile::expression::sample {

inline constexpr Truth F = Truth::False;
inline constexpr Truth T = Truth::True;
inline constexpr Truth U = Truth::Unknown;

}  // namespace stile::expression::sample
