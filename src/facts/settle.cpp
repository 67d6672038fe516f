// From what was given to what counts: age, enablement, derived facts.
#include "facts/derivation.h"
#include "facts/enablement_closure.h"
#include "facts/fact_set.h"
#include "facts/freshness.h"

namespace stile::facts {
namespace {

// Enablement that depends on enablement settles in as many rounds as the chain is long; a chain
// through several forms in different orders is short. Answers that contradict each other in a
// circle never settle, so there is an end.
constexpr int kMostRounds = 16;

/// What counts before enablement and derivation: nothing derived, everything else if fresh.
void restore(const Definition& definition, Fact& fact, base::Date today) {
  if (definition.isPolicy()) return;  // never unknown, never old; another choice may be tried out
  Counted counted = countedToday(fact, definition.freshFor, today);
  fact.value = std::move(counted.value);
  fact.reason = counted.reason;
}

}  // namespace

void settle(FactSet& facts, const questionnaire::FormSet& forms, base::Date today, base::Issues& issues) {
  auto counting = EnablementPlan::formsThatCount(forms, facts.formsAnswered());
  auto plan = facts.plan();
  if (!plan || plan->forms() != counting)
    plan = std::make_shared<const EnablementPlan>(facts.dictionary(), std::move(counting));
  settleWith(facts, std::move(plan), today, issues);
}

void settleWith(FactSet& facts, std::shared_ptr<const EnablementPlan> conditions, base::Date today,
                base::Issues& issues) {
  const Dictionary& dictionary = facts.dictionary();
  facts.settledOn_ = today;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    restore(dictionary.at(slot), facts.facts_[static_cast<std::size_t>(slot)], today);
  }
  for (std::size_t i = 0; i < facts.groups_.size(); ++i) {
    FactSet::Group& group = facts.groups_[i];
    group.state = FactSet::GroupState::AsGiven;
    const auto& members = dictionary.groupMembers(static_cast<int>(i));
    for (auto& repetition : group.repetitions) {
      for (std::size_t j = 0; j < members.size(); ++j)
        restore(dictionary.at(members[j]), repetition[j], today);
    }
  }
  facts.plan_ = std::move(conditions);
  const EnablementPlan& plan = *facts.plan_;
  EnablementClosure closure(facts, plan, today);
  for (int round = 0; round < kMostRounds; ++round) {
    const bool changed = closure.run();
    if (plan.readsDerived() && (changed || round == 0)) deriveAll(facts, today);
    const bool isExact = plan.needsOneRound() && !plan.readsDerived();
    if (isExact || (!changed && (round > 0 || !plan.readsDerived()))) break;
  }
  if (!plan.readsDerived()) deriveAll(facts, today);
  closure.report(issues);
  reportDerived(facts, today, issues);
}

}  // namespace stile::facts
