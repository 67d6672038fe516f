#include "interview/ground.h"

#include <algorithm>
#include <iterator>

#include "interview/possible_answers.h"

namespace stile::interview {

Ground::Ground(const facts::Dictionary& dictionary, const rules::RuleSet& rules, const questionnaire::Form& form,
               std::shared_ptr<const facts::EnablementPlan> plan, base::Date today,
               std::vector<screening::ClearanceReply> replies, const std::set<int>& planSlots)
    : dictionary_(dictionary), rules_(rules), form_(form), dependents_(dictionary, std::move(plan)), today_(today),
      replies_(std::move(replies)), questions_(form, dictionary), findingReads_(rules, dictionary), shapes_(shapesOf(rules, dictionary, today, keys_)),
      rulesReading_(static_cast<std::size_t>(dictionary.size())), rulesOver_(dictionary.groups().size()) {
  for (std::size_t i = 0; i < rules.rules.size(); ++i) {
    const rules::Rule& rule = rules.rules[i];
    hasReply_.push_back(std::any_of(replies_.begin(), replies_.end(),
                                    [&](const screening::ClearanceReply& reply) { return reply.ruleId == rule.id; }));
    for (const int slot : shapes_[i].reads) rulesReading_[static_cast<std::size_t>(slot)].push_back(static_cast<int>(i));
    const int group = rule.forEach.empty() ? -1 : dictionary.groupIndex(rule.forEach);
    if (group >= 0) rulesOver_[static_cast<std::size_t>(group)].push_back(static_cast<int>(i));
  }
  if (const facts::Definition* wanted = dictionary.find("desiredIntensity")) wantedSlot_ = wanted->slot;
  fillInPossibleAnswers(questions_, dictionary, rules, form, today);
  for (const FormQuestion& question : questions_.all()) {
    const std::vector<int> reached = dependents_.allFrom(question.fact->slot);
    std::copy_if(reached.begin(), reached.end(), std::back_inserter(planSlotsFrom_.emplace_back()), [&](int slot) { return planSlots.count(slot) != 0; });
  }
}

limits::Rung Ground::wantedIntensity(const facts::FactSet& facts) const {
  if (wantedSlot_ < 0) return limits::Rung::Light;
  const auto& value = facts.at(wantedSlot_).value;
  return value.text ? limits::rungOf(*value.text).value_or(limits::Rung::Light) : limits::Rung::Light;
}

}  // namespace stile::interview
