// From limits as a rule states them to limits of one person: sides and amounts filled in.
#pragma once

#include <string>

#include "facts/fact_set.h"
#include "limits/limits.h"
#include "rules/rule.h"

namespace stile::rules {

/// A side that is not known becomes both sides; an amount that is not known becomes its
/// `ifUnknown`; an amount known between bounds takes the stricter bound.
limits::Limits instantiate(const LimitsTemplate& part, const expression::Slots& slots);

}  // namespace stile::rules
