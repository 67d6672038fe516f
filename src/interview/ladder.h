// The ladder as a position has it: which rungs are open, shut or not yet known, and why.
#pragma once

#include <vector>

#include "interview/position.h"
#include "screening/screening.h"

namespace stile::interview {

/// Why a rung is not open: a rule, in which repetition, and the key that opens it.
struct LadderReason {
  const rules::Rule* rule = nullptr;
  int repetition = -1;
  bool isCertain = false;
};

struct LadderRung {
  limits::Bay bay = limits::Bay::Aerobic;
  limits::Rung rung = limits::Rung::Light;
  screening::RungState state = screening::RungState::NotYetKnown;
  std::vector<LadderReason> reasons;  ///< gravest first; empty when the rung is open
};

/// Aerobic light to vigorous, then strength; the same rungs and reasons as in Screening::rungs.
std::vector<LadderRung> ladderOf(const Position& position);

}  // namespace stile::interview
