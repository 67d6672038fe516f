#include "interview/rule_shape.h"

#include "rules/rule_reads.h"

namespace stile::interview {
namespace {

using expression::Truth;
using rules::IfUnknown;

bool hasFixedAmounts(const rules::LimitsTemplate& part) {
  const auto isFixed = [](const std::optional<rules::Amount>& amount) { return !amount || amount->fixed; };
  for (const auto& cap : part.caps)
    if (cap.sideSlot >= 0 || !cap.degrees.fixed) return false;
  for (const auto& ban : part.bans)
    if (ban.sideSlot >= 0) return false;
  for (const auto& dose : part.doses)
    if (!dose.amount.fixed) return false;
  for (const auto& stop : part.stops)
    if (!stop.amount.fixed) return false;
  return isFixed(part.loadKilograms) && isFixed(part.loadPercentOfMaximum) &&
         isFixed(part.heartRatePerMinute);
}

/// Every way in which an open or certain rule can stand.
std::vector<rules::Judgement> waysOf(const rules::Rule& rule) {
  std::vector<rules::Judgement> ways(1);
  ways[0].truth = Truth::True;
  std::vector<IfUnknown> modes{IfUnknown::Cautious};
  if (rule.ifUnknown != IfUnknown::Cautious) modes.push_back(rule.ifUnknown);
  if (rule.ifUnknown != IfUnknown::Pass && !rule.passReason.empty()) modes.push_back(IfUnknown::Pass);
  for (const IfUnknown mode : modes) {
    rules::Judgement open;
    open.truth = Truth::Unknown;
    open.counted = mode;
    ways.push_back(open);
    if (!rule.whenUnsure) continue;
    open.unsureCall = *rule.whenUnsure;
    ways.push_back(open);
  }
  return ways;
}

void widen(Demands& into, const Demands& by) {
  into.decision.tighten(by.decision);
  into.atoms.insert(into.atoms.end(), by.atoms.begin(), by.atoms.end());
}

}  // namespace

std::size_t RuleShape::wayOf(const rules::Judgement& judgement) {
  if (judgement.truth == Truth::True) return 0;
  return 1 + 2 * static_cast<std::size_t>(judgement.counted) +
         (judgement.unsureCall == limits::Action::None ? 0 : 1);
}

std::vector<RuleShape> shapesOf(const rules::RuleSet& ruleSet, const facts::Dictionary& dictionary,
                                base::Date today, LimitKeys& keys) {
  const facts::FactSet nobody(dictionary);  // unknown sides and amounts become the strictest
  std::vector<RuleShape> shapes;
  for (const rules::Rule& rule : ruleSet.rules) {
    RuleShape shape;
    shape.isFixed = hasFixedAmounts(rule.then) && (!rule.meanwhile || hasFixedAmounts(*rule.meanwhile)) &&
                    !rule.assessable;
    shape.reads = rules::slotsReadBy(rule, dictionary);
    shape.certainReads = rules::slotsReadWhenCertain(rule);
    const facts::FactSlots slots(nobody, rule.forEach, 0, nullptr, today);
    for (const rules::Judgement& way : waysOf(rule)) {
      const rules::Contribution contribution = rules::contributionOf(rule, way, slots);
      shape.fullAction = contribution.full.action;
      auto floor = std::make_shared<const Demands>(Demands::of(contribution.floor, keys));
      auto reach = std::make_shared<const Demands>(Demands::of(contribution.reach, keys));
      widen(shape.mostAtFloor, *floor);
      widen(shape.mostAtReach, *reach);
      shape.ways[RuleShape::wayOf(way)] = {std::move(floor), std::move(reach)};
    }
    shapes.push_back(std::move(shape));
  }
  return shapes;
}

}  // namespace stile::interview
