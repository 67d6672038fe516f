#include "interview/ladder.h"

#include <algorithm>

namespace stile::interview {

using limits::Bay;
using limits::Rung;
using screening::RungState;

namespace {

struct Barrier {
  Rung left;
  limits::Action action;
  LadderReason reason;
};

LadderRung rungOf(const Position& position, const Totals& totals, Bay bay, Rung rung) {
  LadderRung view;
  view.bay = bay;
  view.rung = rung;
  if (rung <= totals.floor.usable(bay)) {
    view.state = RungState::Open;
    return view;
  }
  view.state = rung > totals.reach.usable(bay) ? RungState::Shut : RungState::NotYetKnown;
  std::vector<Barrier> barriers;
  for (std::size_t i = 0; i < position.states().size(); ++i) {
    const rules::Rule& rule = position.ground().rules().rules[i];
    for (std::size_t j = 0; j < position.states()[i].size(); ++j) {
      const RuleState& state = position.states()[i][j];
      if (state.isOut()) continue;
      // A shut rung is explained by what is certain; one not yet known by everything that bars it.
      const Rung left = (view.state == RungState::Shut ? state.reach : state.floor)->decision.usable(bay);
      if (left >= rung) continue;
      const int repetition = rule.forEach.empty() ? -1 : static_cast<int>(j);
      barriers.push_back({left, position.ground().shape(i).fullAction, {&rule, repetition, state.isCertain()}});
    }
  }
  std::stable_sort(barriers.begin(), barriers.end(), [](const Barrier& a, const Barrier& b) {
    return a.left != b.left ? a.left < b.left : a.action > b.action;
  });
  for (const Barrier& barrier : barriers) view.reasons.push_back(barrier.reason);
  return view;
}

}  // namespace

std::vector<LadderRung> ladderOf(const Position& position) {
  const Totals totals = position.totals();
  std::vector<LadderRung> ladder;
  for (const Bay bay : limits::kBays)
    for (const Rung rung : {Rung::Light, Rung::Moderate, Rung::Vigorous}) ladder.push_back(rungOf(position, totals, bay, rung));
  return ladder;
}

}  // namespace stile::interview
