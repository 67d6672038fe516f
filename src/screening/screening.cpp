#include "screening/screening.h"

#include <algorithm>
#include <tuple>

#include "facts/fact_changes.h"
#include "screening/content.h"
#include "screening/decide_again.h"
#include "screening/merge.h"
#include "screening/open_questions.h"
#include "screening/policies.h"

namespace stile::screening {
namespace {

using limits::Action;
using limits::Bay;
using limits::PerBay;
using limits::Rung;

/// What each finding alone leaves usable at one end, in the order of the findings.
std::vector<PerBay<Rung>> leftByEach(const Screening& screening, EndKind kind) {
  std::vector<PerBay<Rung>> left;
  for (const rules::Finding& finding : screening.findings) {
    limits::Limits alone;
    const bool isPlain = screening.coverage.empty() && !finding.rule->assessable;
    const limits::Limits& own = kind == EndKind::Floor ? finding.floor : finding.reach;
    if (!isPlain) alone = contributionOf(finding, kind, screening.coverage, screening.facts);
    const limits::Limits& limits = isPlain ? own : alone;
    left.push_back({usableRung(limits, Bay::Aerobic), usableRung(limits, Bay::Strength)});
  }
  return left;
}

RungView viewOf(const Screening& screening, Bay bay, Rung rung, const std::vector<PerBay<Rung>>& leftAtFloor,
                const std::vector<PerBay<Rung>>& leftAtReach) {
  RungView view;
  view.bay = bay;
  view.rung = rung;
  if (rung <= screening.floor.usable[bay]) {
    view.state = RungState::Open;
    return view;
  }
  view.state = rung > screening.reach.usable[bay] ? RungState::Shut : RungState::NotYetKnown;
  // A shut rung is explained by what is certain; one not yet known by everything that bars it.
  const auto& leftByFindings = view.state == RungState::Shut ? leftAtReach : leftAtFloor;
  struct Found {
    Rung left;
    Action action;
    std::size_t finding;
  };
  std::vector<Found> found;
  for (std::size_t i = 0; i < screening.findings.size(); ++i) {
    const Rung left = leftByFindings[i][bay];
    if (left < rung) found.push_back({left, screening.findings[i].full.action, i});
  }
  std::sort(found.begin(), found.end(), [](const Found& a, const Found& b) {
    return std::tuple(a.left, b.action, a.finding) < std::tuple(b.left, a.action, b.finding);
  });
  view.reasons.reserve(found.size());
  for (const Found& one : found) {
    const rules::Until& until = screening.findings[one.finding].rule->until;
    view.reasons.push_back({one.finding, until.say, until.key});
  }
  return view;
}

bool anyUsable(const PerBay<Rung>& usable) { return usable.aerobic > Rung::None || usable.strength > Rung::None; }

plan::Request requestOf(const Screening& screening, const End& end) {
  return {end.limits, end.usable, screening.facts, screening.findings, screening.date};
}

/// Whether a plan may be made, and why not.
void decidePlanState(Screening& screening) {
  if (anyUsable(screening.floor.usable)) {
    screening.planState = PlanState::Made;
  } else if (anyUsable(screening.ifGranted.usable)) {
    screening.planState = PlanState::Held;
    screening.planBecause = "Held until the clearance asked for has come.";
  } else if (screening.reach.limits.action >= Action::SameDay) {
    screening.planBecause = "No plan: the action today comes first.";
  } else if (anyUsable(screening.reach.usable)) {
    screening.planBecause = "No plan to start, for want of answers: see the open questions.";
  } else if (screening.couldBecome >= Action::SameDay && screening.reach.limits.action < Action::SameDay) {
    screening.planBecause = "No plan to start: a finding holds it, and answers are still wanted.";
  } else {
    screening.planBecause = "No plan to start today: a finding holds both bays.";
  }
}

void makePlan(Screening& screening, const Content& content) {
  const auto make = [&](const End& end) { return plan::makeStarterPlan(content.library, requestOf(screening, end)); };
  if (screening.planState == PlanState::Made) screening.plan = make(screening.floor);
  if (screening.planState == PlanState::Held) screening.heldPlan = make(screening.ifGranted);
}

Screening blank(facts::FactSet facts, base::Date today) {
  return {.date = today, .facts = std::move(facts), .findings = {}, .coverage = {}, .floor = {}, .reach = {},
          .rungs = {}, .openQuestions = {}, .policies = {}, .planBecause = {}, .plan = {}, .heldPlan = {},
          .ifGranted = {}};
}

void mergeEnds(Screening& screening, const std::vector<ClearanceReply>& replies, Merged what) {
  screening.floor = mergeEnd(screening.findings, EndKind::Floor, screening.coverage, replies, screening.facts, what);
  screening.reach = mergeEnd(screening.findings, EndKind::Reach, screening.coverage, replies, screening.facts, what);
  screening.ifGranted = mergeIfGranted(screening.findings, wantedIntensity(screening.facts), screening.coverage, replies,
                                       screening.facts, what);
}

/// Everything that follows from the findings, but plan, policies, open questions and what the decision does not rest
/// on.
void decideFromFindings(Screening& screening, const std::vector<ClearanceReply>& replies) {
  screening.coverage = coverageOf(replies, screening.findings, screening.facts, screening.date);
  mergeEnds(screening, replies, Merged::Decision);
  const auto leftAtFloor = leftByEach(screening, EndKind::Floor);
  const auto leftAtReach = leftByEach(screening, EndKind::Reach);
  for (const Bay bay : limits::kBays)
    for (const Rung rung : {Rung::Light, Rung::Moderate, Rung::Vigorous})
      screening.rungs.push_back(viewOf(screening, bay, rung, leftAtFloor, leftAtReach));
  for (const rules::Finding& finding : screening.findings)
    if (finding.standing == rules::Standing::Open && finding.counted != rules::IfUnknown::Pass)
      screening.couldBecome = std::max(screening.couldBecome, finding.full.action);
  screening.isSettled = decisionIsSettled(screening.findings, screening.reach.limits);
  decidePlanState(screening);
}

}  // namespace

Screening decide(const Content& content, facts::FactSet facts, const std::vector<ClearanceReply>& replies,
                 base::Date today) {
  Screening screening = blank(std::move(facts), today);
  screening.findings = rules::evaluateRules(content.rules, screening.facts, today);
  decideFromFindings(screening, replies);
  return screening;
}

Screening decideAgain(const Content& content, const rules::FindingReads& reads, Screening before, const facts::FactSet& facts,
                      const std::vector<ClearanceReply>& replies) {
  const std::vector<bool> touched = reads.touchedBy(facts::changesBetween(before.facts, facts));
  // Into the room that the earlier ones take: new room costs more than what is put there.
  before.facts = facts;
  Screening screening = blank(std::move(before.facts), before.date);
  screening.findings = std::move(before.findings);
  rules::evaluateChanged(content.rules, touched, screening.facts, screening.date, screening.findings);
  decideFromFindings(screening, replies);
  return screening;
}

void complete(const Content& content, Screening& screening, const std::vector<ClearanceReply>& replies) {
  mergeEnds(screening, replies, Merged::All);
  screening.openQuestions = openQuestionsOf(screening, content.forms);
  screening.policies = policiesThatDecide(content, screening, replies);
  makePlan(screening, content);
  if (const auto& plan = screening.plan ? screening.plan : screening.heldPlan)
    for (PolicyNote& note : policiesThatShape(content, *plan)) screening.policies.push_back(std::move(note));
}

Screening screen(const Content& content, facts::FactSet facts, const std::vector<ClearanceReply>& replies,
                 base::Date today) {
  Screening screening = decide(content, std::move(facts), replies, today);
  complete(content, screening, replies);
  return screening;
}

std::vector<plan::RefusedEdit> editPlan(const Content& content, Screening& screening, const plan::Edits& edits) {
  if (screening.planState == PlanState::Nothing) {
    std::vector<plan::RefusedEdit> refused;
    for (std::size_t i = 0; i < edits.list.size(); ++i) refused.push_back({i, screening.planBecause, false});
    return refused;
  }
  const bool isMade = screening.planState == PlanState::Made;
  auto edited = plan::editStarterPlan(content.library, requestOf(screening, isMade ? screening.floor : screening.ifGranted), edits);
  (isMade ? screening.plan : screening.heldPlan) = std::move(edited.plan);
  return std::move(edited.refused);
}

}  // namespace stile::screening
