#include "facts/enablement_plan.h"

#include <algorithm>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace stile::facts {
namespace {

using questionnaire::EnableWhen;
using questionnaire::Item;
using questionnaire::ItemType;

/// The item itself or the nearest group above it that has conditions; null = always applies.
const Item* nextConditional(const Item* item) {
  while (item && item->enableWhen.empty()) item = item->parent;
  return item;
}

bool isSame(const EnableWhen& a, const EnableWhen& b) {
  return a.question == b.question && a.op == b.op && a.boolean == b.boolean && a.number == b.number &&
         a.unit == b.unit && a.text == b.text;
}

/// Whether two occurrences of an item apply under the same conditions, all the way up.
bool haveSameConditions(const Item* a, const Item* b) {
  while (a && b) {
    if (a->enableAny != b->enableAny || !std::equal(a->enableWhen.begin(), a->enableWhen.end(),
                                                    b->enableWhen.begin(), b->enableWhen.end(), isSame)) {
      return false;
    }
    a = nextConditional(a->parent);
    b = nextConditional(b->parent);
  }
  return !a && !b;
}

}  // namespace

std::vector<EnablementPlan::FormPtr> EnablementPlan::formsThatCount(
    const questionnaire::FormSet& all, const std::vector<std::string>& answered) {
  std::vector<FormPtr> result;
  for (const FormPtr& form : all.forms()) {
    if (answered.empty() || std::find(answered.begin(), answered.end(), form->name()) != answered.end()) {
      result.push_back(form);
    }
  }
  return result;
}

EnablementPlan::EnablementPlan(const Dictionary& dictionary, std::vector<FormPtr> forms)
    : forms_(std::move(forms)) {
  std::unordered_set<std::string_view> seen;
  for (const FormPtr& form : forms_) {
    for (const Item* item : form->inOrder()) {
      if (item->type == ItemType::Display || !nextConditional(item)) continue;
      if (seen.insert(item->linkId).second) add(dictionary, *item);
    }
  }
  // A condition may look at a question that is conditional itself: that must be settled before.
  std::vector<bool> isLater(static_cast<std::size_t>(dictionary.size()), false);
  for (auto entry = entries_.rbegin(); entry != entries_.rend(); ++entry) {
    for (const int slot : entry->slots) isLater[static_cast<std::size_t>(slot)] = true;
    if (entry->group >= 0) {
      for (const int slot : dictionary.groupMembers(entry->group))
        isLater[static_cast<std::size_t>(slot)] = true;
    }
    for (const int gate : entry->gates)
      needsOneRound_ = needsOneRound_ && !isLater[static_cast<std::size_t>(gate)];
  }
}

void EnablementPlan::add(const Dictionary& dictionary, const Item& item) {
  Entry entry;
  if (item.type == ItemType::Group) {
    entry.group = item.repeats ? dictionary.groupIndex(item.linkId) : -1;
  } else if (const Definition* definition = dictionary.find(item.linkId)) {
    // What is derived applies as far as what it is derived from does.
    if (!definition->isDerived() && !definition->isPolicy()) entry.slot = definition->slot;
  }
  if (entry.slot < 0 && entry.group < 0) return;
  for (const FormPtr& form : forms_) {
    const Item* found = form->find(item.linkId);
    if (!found) continue;
    const Item* conditional = nextConditional(found);
    if (!conditional) return;  // always applies in that form
    const bool isRepeated =
        std::any_of(entry.occurrences.begin(), entry.occurrences.end(), [&](const Item* other) {
          return haveSameConditions(nextConditional(other), conditional);
        });
    if (isRepeated) continue;
    entry.occurrences.push_back(found);
    addGates(dictionary, *found, entry);
  }
  if (entry.slot >= 0) {
    const Definition& question = dictionary.at(entry.slot);
    entry.slots.push_back(entry.slot);
    for (const OptionDefinition& option : question.options) {
      if (option.slot >= 0) entry.slots.push_back(option.slot);
    }
  }
  entries_.push_back(std::move(entry));
}

void EnablementPlan::addGates(const Dictionary& dictionary, const Item& item, Entry& entry) {
  for (const Item* at = &item; at; at = at->parent) {
    for (const EnableWhen& condition : at->enableWhen) {
      const Definition* definition = dictionary.find(condition.question);
      if (!definition) continue;
      if (condition.asked) entry.asked.push_back({condition.asked, definition});
      readsDerived_ = readsDerived_ || definition->isDerived();
      if (std::find(entry.gates.begin(), entry.gates.end(), definition->slot) == entry.gates.end()) {
        entry.gates.push_back(definition->slot);
      }
    }
  }
}

}  // namespace stile::facts
