#include "screening/open_questions.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

#include "screening/merge.h"

namespace stile::screening {
namespace {

using facts::DerivedKind;

/// Walks from an unknown fact down to the facts that a person can be asked.
class InputWalk {
 public:
  explicit InputWalk(const facts::FactSet& facts) : facts_(facts) {}

  /// Many findings rest on the same facts, so that each way is gone once.
  const std::set<int>& from(int slot, int repetition) {
    const auto [at, isNew] = found_.try_emplace({slot, repetition});
    if (!isNew) return at->second;
    asked_.clear();
    seen_.clear();
    visit(slot, repetition);
    return at->second = std::move(asked_);
  }

 private:
  void visit(int slot, int repetition) {
    if (!seen_.insert(slot).second) return;
    const facts::Definition& definition = facts_.dictionary().at(slot);
    const facts::Derivation& derived = definition.derived;
    switch (derived.kind) {
      case DerivedKind::None: asked_.insert(slot); return;
      case DerivedKind::Expression: {
        const facts::FactSlots slots(facts_, definition.group, definition.group.empty() ? -1 : repetition);
        for (const int input : derived.program->decidedBy(slots)) visit(input, repetition);
        return;
      }
      case DerivedKind::Summary: visitGroup(derived); return;
      case DerivedKind::ClassMember: visitMedicine(slot); return;
      case DerivedKind::Norm:
      case DerivedKind::Score:
        for (const int input : derived.inputs)
          if (!isSettled(input, repetition)) visit(input, repetition);
        return;
      case DerivedKind::Option:
      case DerivedKind::Elapsed:
      case DerivedKind::Mean:
      case DerivedKind::Worst:
      case DerivedKind::Last:
        if (derived.of >= 0) visit(derived.of, repetition);
        return;
    }
  }

  void visitGroup(const facts::Derivation& derived) {
    for (const auto* program : {derived.program ? &*derived.program : nullptr, derived.where ? &*derived.where : nullptr})
      if (program != nullptr)
        for (const int input : program->slotsRead()) visit(input, 0);
  }

  void visitMedicine(int slot) {
    const facts::Definition* name = facts_.dictionary().find("medicineName");
    asked_.insert(name != nullptr ? name->slot : slot);
  }

  bool isSettled(int slot, int repetition) const {
    const bool inGroup = !facts_.dictionary().at(slot).group.empty();
    return (inGroup ? facts_.at(slot, std::max(repetition, 0)) : facts_.at(slot)).value.isSettled();
  }

  const facts::FactSet& facts_;
  std::set<int> asked_;
  std::set<int> seen_;
  std::map<std::pair<int, int>, std::set<int>> found_;
};

/// The first form that asks it counts.
const questionnaire::Item* itemOf(const questionnaire::FormSet& forms, const std::string& factId) {
  for (const auto& form : forms.forms())
    if (const auto* item = form->find(factId)) return item;
  return nullptr;
}

struct Placed {
  OpenQuestion question;
  const questionnaire::Item* item = nullptr;  ///< that asks it
  int place = std::numeric_limits<int>::max();  ///< of the item, all forms one after the other
};

/// Of all at once, so that the forms are gone through once.
void findPlaces(const questionnaire::FormSet& forms, std::map<int, Placed>& bySlot) {
  std::unordered_map<const questionnaire::Item*, Placed*> byItem;
  for (auto& [slot, placed] : bySlot)
    if (placed.item != nullptr) byItem.emplace(placed.item, &placed);
  int next = 0;
  for (const auto& form : forms.forms())
    for (const auto* item : form->inOrder()) {
      ++next;
      if (const auto at = byItem.find(item); at != byItem.end()) at->second->place = next;
    }
}

bool shuts(const limits::Limits& limits, const limits::PerBay<limits::Rung>& reach) {
  for (const auto bay : limits::kBays)
    if (usableRung(limits, bay) < reach[bay]) return true;
  return false;
}

}  // namespace

std::vector<OpenQuestion> openQuestionsOf(const Screening& screening, const questionnaire::FormSet& forms) {
  std::map<int, Placed> bySlot;
  InputWalk walk(screening.facts);
  for (const rules::Finding& finding : screening.findings) {
    if (finding.standing != rules::Standing::Open) continue;
    const bool shutsRungs = shuts(finding.floor, screening.reach.usable);
    for (const rules::Reason& reason : finding.reasons) {
      for (const int slot : walk.from(reason.slot, finding.repetition)) {
        Placed& placed = bySlot[slot];
        OpenQuestion& question = placed.question;
        const facts::Definition& definition = screening.facts.dictionary().at(slot);
        if (question.slot < 0) {
          question.slot = slot;
          question.factId = definition.id;
          placed.item = itemOf(forms, definition.id);
          question.label = placed.item == nullptr || placed.item->text.empty() ? definition.label : placed.item->text;
        }
        question.why = (definition.group.empty() ? screening.facts.at(slot)
                                                 : screening.facts.at(slot, std::max(finding.repetition, 0))).reason;
        // A rule that lets the unknown pass calls nobody while it is unknown, nor threatens to.
        if (finding.counted != rules::IfUnknown::Pass)
          question.couldBecome = std::max(question.couldBecome, finding.full.action);
        question.shutsRungs = question.shutsRungs || shutsRungs;
        if (question.ruleIds.empty() || question.ruleIds.back() != finding.rule->id)
          question.ruleIds.push_back(finding.rule->id);
      }
    }
  }
  findPlaces(forms, bySlot);
  const auto rank = [](const Placed& placed) {
    const OpenQuestion& question = placed.question;
    return std::tuple(-static_cast<int>(question.couldBecome), !question.shutsRungs, placed.place, question.slot);
  };
  std::vector<Placed*> inOrder;
  for (auto& [slot, one] : bySlot) inOrder.push_back(&one);
  std::sort(inOrder.begin(), inOrder.end(), [&](const Placed* a, const Placed* b) { return rank(*a) < rank(*b); });
  std::vector<OpenQuestion> questions;
  for (Placed* one : inOrder) questions.push_back(std::move(one->question));
  return questions;
}

}  // namespace stile::screening
