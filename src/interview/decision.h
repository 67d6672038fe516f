// A decision: action, clearance and both ceilings, at one end; the part of the limits that says
// whether and how hard a client may exercise.
#pragma once

#include <algorithm>

#include "limits/limits.h"
#include "screening/merge.h"

namespace stile::interview {

/// Always true: Decision{} restrains nothing, and tighten() only goes towards graver.
struct Decision {
  limits::Action action = limits::Action::None;
  limits::PerBay<limits::Clearance> clearance{limits::Clearance::None, limits::Clearance::None};
  limits::PerBay<limits::Rung> ceiling{limits::Rung::Vigorous, limits::Rung::Vigorous};

  static Decision of(const limits::Limits& limits) { return {limits.action, limits.clearance, limits.ceiling}; }

  void tighten(const Decision& by) {
    action = std::max(action, by.action);
    for (const limits::Bay bay : limits::kBays) {
      clearance[bay] = std::max(clearance[bay], by.clearance[bay]);
      ceiling[bay] = std::min(ceiling[bay], by.ceiling[bay]);
    }
  }
  /// True if `other` is at least as grave in every part.
  bool isAtMost(const Decision& other) const {
    Decision sum = *this;
    sum.tighten(other);
    return sum == other;
  }
  limits::Rung usable(limits::Bay bay) const { return screening::usableRung(action, clearance[bay], ceiling[bay]); }
  bool operator==(const Decision&) const = default;
};

}  // namespace stile::interview
