#include "interview/position.h"

#include <algorithm>

#include "facts/enablement_closure.h"
#include "rules/basis.h"

namespace stile::interview {
namespace {

using expression::Truth;
using limits::Rung;
using screening::EndKind;

}  // namespace

Position::Position(const Ground& ground, facts::FactSet facts)
    : ground_(ground), facts_(std::move(facts)), keys_(ground.keys()), states_(ground.rules().rules.size()), weights_(states_.size()) {
  for (std::size_t i = 0; i < states_.size(); ++i) judgeAgain(i);
}

void Position::restart(facts::FactSet facts) {
  const std::vector<bool> touched = ground_.findingReads().touchedBy(facts::changesBetween(facts_, facts));
  facts_ = std::move(facts);
  for (std::size_t i = 0; i < states_.size(); ++i)
    if (touched[i]) judgeAgain(i);
}

void Position::judgeAgain(std::size_t rule) {
  states_[rule] = statesOf(rule);
  weights_[rule] = weightOf(rule);
}

std::vector<RuleState> Position::statesOf(std::size_t index) const {
  const rules::Rule& rule = ground_.rules().rules[index];
  std::vector<RuleState> states;
  if (rule.forEach.empty()) {
    states.push_back(stateOf(index, -1));
    return states;
  }
  for (int repetition = 0; repetition < facts_.repetitions(rule.forEach); ++repetition)
    states.push_back(stateOf(index, repetition));
  return states;
}

RuleState Position::stateOf(std::size_t index, int repetition) const {
  const rules::Rule& rule = ground_.rules().rules[index];
  const RuleShape& shape = ground_.shape(index);
  const facts::FactSlots slots = rules::slotsOf(rule, facts_, repetition, ground_.today());
  RuleState state;
  state.judgement = rules::judge(rule, facts_, slots);
  if (state.isOut()) return state;
  if (shape.isFixed && !ground_.hasReply(index)) {
    const Contributed& contributed = shape.contributed(state.judgement);
    state.floor = contributed.floor;
    state.reach = contributed.reach;
  } else {
    const rules::Contribution contribution = rules::contributionOf(rule, state.judgement, slots);
    if (rule.assessable || ground_.hasReply(index)) {
      cover(state, rule, repetition, contribution);
    } else {
      state.floor = std::make_shared<const Demands>(Demands::of(contribution.floor, keys_));
      state.reach = std::make_shared<const Demands>(Demands::of(contribution.reach, keys_));
    }
  }
  state.granted = state.floor->decision;
  return state;
}

/// A rule that a reply or a signed assessment may lift.
void Position::cover(RuleState& state, const rules::Rule& rule, int repetition,
                     const rules::Contribution& contribution) const {
  rules::Finding finding;
  finding.rule = &rule;
  finding.repetition = repetition;
  finding.standing = state.isCertain() ? rules::Standing::Certain : rules::Standing::Open;
  finding.full = contribution.full;
  finding.floor = contribution.floor;
  finding.reach = contribution.reach;
  if (state.isCertain()) finding.basis = rules::basisOf(rule, facts_, repetition);
  std::vector<screening::ClearanceReply> replies;
  for (const auto& reply : ground_.replies())
    if (reply.ruleId == rule.id) replies.push_back(reply);
  state.coverage = screening::coverageOf(replies, {finding}, facts_, ground_.today());
  const auto demands = [&](EndKind end) {
    return std::make_shared<const Demands>(
        Demands::of(screening::contributionOf(finding, end, state.coverage, facts_), keys_));
  };
  state.floor = demands(EndKind::Floor);
  state.reach = demands(EndKind::Reach);
}

/// The physician's own limits join at both ends.
Demands Position::demandsOfReplies() const {
  if (ground_.replies().empty()) return {};
  std::vector<screening::Coverage> all;
  for (const auto& states : states_)
    for (const RuleState& state : states) all.insert(all.end(), state.coverage.begin(), state.coverage.end());
  return Demands::of(screening::limitsOfReplies(ground_.replies(), all), keys_);
}

void Position::addTo(Strictest& strictest, EndKind end) const {
  strictest.add(demandsOfReplies().atoms);
  for (std::size_t i = 0; i < states_.size(); ++i) {
    if (weights_[i].isOut) continue;
    for (const RuleState& state : states_[i])
      if (!state.isOut()) strictest.add((end == EndKind::Floor ? state.floor : state.reach)->atoms);
  }
}

Position::Weight Position::weightOf(std::size_t rule) const {
  Weight weight;
  DecisionTotals& totals = weight.totals;
  for (const RuleState& state : states_[rule]) {
    if (state.isOut()) continue;
    weight.isOut = false;
    totals.floor.tighten(state.floor->decision);
    totals.reach.tighten(state.reach->decision);
    if (state.isOpen() && state.judgement.counted == rules::IfUnknown::Cautious) totals.openInFull.tighten(state.floor->decision);
    if (state.isOpen() && state.judgement.counted != rules::IfUnknown::Pass)
      totals.couldBecome = std::max(totals.couldBecome, ground_.shape(rule).fullAction);
    for (const Rung wanted : {Rung::None, Rung::Light, Rung::Moderate, Rung::Vigorous}) {
      Decision granted = state.floor->decision;
      if (state.isCertain()) screening::lift(granted, ground_.rules().rules[rule], {wanted, wanted});
      weight.granted[static_cast<std::size_t>(wanted)].tighten(granted);
    }
  }
  totals.openInFull.tighten(totals.reach);
  return weight;
}

DecisionTotals Position::decisionTotals() const {
  DecisionTotals all;
  const auto wanted = static_cast<std::size_t>(ground_.wantedIntensity(facts_));
  for (const Weight& weight : weights_) {
    if (weight.isOut) continue;
    all.floor.tighten(weight.totals.floor);
    all.reach.tighten(weight.totals.reach);
    all.openInFull.tighten(weight.totals.openInFull);
    all.granted.tighten(weight.granted[wanted]);
    all.couldBecome = std::max(all.couldBecome, weight.totals.couldBecome);
  }
  return all;
}

unsigned Position::differingParts() const {
  unsigned parts = 0;
  strictest_.clear();
  addTo(strictest_, EndKind::Reach);
  for (std::size_t i = 0; i < states_.size(); ++i) {
    if (weights_[i].isOut) continue;
    for (const RuleState& state : states_[i]) {
      if (!state.isOpen()) continue;
      for (const LimitAtom& atom : state.floor->atoms) {
        const unsigned part = 1u << static_cast<unsigned>(keys_.partOf(atom.key));
        if ((parts & part) == 0 && !strictest_.covers(atom, keys_)) parts |= part;
      }
    }
  }
  return parts;
}

Totals Position::totals() const { return {decisionTotals(), differingParts()}; }

void Position::push(const QuestionRef& ref, const PossibleAnswer& answer) {
  const FormQuestion& question = ground_.questions().at(ref);
  tried_.push_back({facts::Ripple(facts_, ground_.dependents(), facts::Stale::Dropped), {}});
  facts::Ripple& ripple = tried_.back().ripple;
  const facts::FactRef at{question.fact->slot, ref.repetition};
  if (!answer.isKnown())
    ripple.forget(at, answer.why);
  else if (question.fact->isMultiple)
    ripple.choose(at, answer.codes);
  else
    ripple.give(at, answer.value);
  follow();
}

void Position::pushRepetitions(int group, int count) {
  tried_.push_back({facts::Ripple(facts_, ground_.dependents(), facts::Stale::Dropped), {}});
  tried_.back().ripple.close(group, count);
  follow();
}

void Position::follow() {
  Tried& tried = tried_.back();
  tried.ripple.run();
  std::vector<int> rules;
  for (const int slot : tried.ripple.changedSlots())
    rules.insert(rules.end(), ground_.rulesReading(slot).begin(), ground_.rulesReading(slot).end());
  for (const int group : tried.ripple.changedGroups())
    rules.insert(rules.end(), ground_.rulesOver(group).begin(), ground_.rulesOver(group).end());
  std::sort(rules.begin(), rules.end());
  rules.erase(std::unique(rules.begin(), rules.end()), rules.end());
  for (const int number : rules) {
    const auto rule = static_cast<std::size_t>(number);
    tried.before.push_back({rule, std::move(states_[rule]), weights_[rule]});
    judgeAgain(rule);
  }
}

void Position::pop() {
  Tried& tried = tried_.back();
  for (auto& [rule, states, weight] : tried.before) {
    states_[rule] = std::move(states);
    weights_[rule] = weight;
  }
  tried.ripple.undo();
  tried_.pop_back();
}

bool Position::isEnabled(const QuestionRef& ref) const {
  const FormQuestion& question = ground_.questions().at(ref);
  const auto& entries = ground_.dependents().plan().entries();
  const auto isTrue = [&](int entry, int repetition) {
    return entry < 0 || facts::enablementOf(facts_, entries[static_cast<std::size_t>(entry)], repetition) == Truth::True;
  };
  if (question.group >= 0 && !isTrue(ground_.dependents().entryOfGroup(question.group), -1)) return false;
  return isTrue(ground_.dependents().entryOf(question.fact->slot), ref.repetition);
}

}  // namespace stile::interview
