#include "screening/open_questions.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "screening/merge.h"

namespace stile::screening {
namespace {

using facts::DerivedKind;

/// Walks from an unknown fact down to the facts that a person can be asked.
class InputWalk {
 public:
  explicit InputWalk(const facts::FactSet& facts) : facts_(facts) {}

  std::set<int> from(int slot, int repetition) {
    asked_.clear();
    seen_.clear();
    visit(slot, repetition);
    return asked_;
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
};

/// Places of facts in the forms, and their words. The first form that asks it counts.
class FormWords {
 public:
  explicit FormWords(const questionnaire::FormSet& forms) : forms_(forms) {}

  const questionnaire::Item* itemOf(const std::string& factId) const {
    for (const auto& form : forms_.forms())
      if (const auto* item = form->find(factId)) return item;
    return nullptr;
  }

  /// By factId; asked of a few, so that the forms are gone through once.
  std::map<std::string, int, std::less<>> placesOf(std::set<std::string, std::less<>> factIds) const {
    std::map<std::string, int, std::less<>> places;
    int next = 0;
    for (const auto& form : forms_.forms())
      for (const auto* item : form->inOrder()) {
        ++next;
        if (factIds.erase(item->linkId) != 0) places[item->linkId] = next;
      }
    return places;
  }

 private:
  const questionnaire::FormSet& forms_;
};

bool shuts(const limits::Limits& limits, const limits::PerBay<limits::Rung>& reach) {
  for (const auto bay : limits::kBays)
    if (usableRung(limits, bay) < reach[bay]) return true;
  return false;
}

}  // namespace

std::vector<OpenQuestion> openQuestionsOf(const Screening& screening, const questionnaire::FormSet& forms) {
  const FormWords words(forms);
  std::map<int, OpenQuestion> bySlot;
  InputWalk walk(screening.facts);
  for (const rules::Finding& finding : screening.findings) {
    if (finding.standing != rules::Standing::Open) continue;
    const bool shutsRungs = shuts(finding.floor, screening.reach.usable);
    for (const rules::Reason& reason : finding.reasons) {
      for (const int slot : walk.from(reason.slot, finding.repetition)) {
        OpenQuestion& question = bySlot[slot];
        const facts::Definition& definition = screening.facts.dictionary().at(slot);
        if (question.slot < 0) {
          question.slot = slot;
          question.factId = definition.id;
          const auto* item = words.itemOf(definition.id);
          question.label = item == nullptr || item->text.empty() ? definition.label : item->text;
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
  std::vector<OpenQuestion> questions;
  std::set<std::string, std::less<>> asked;
  for (auto& [slot, question] : bySlot) {
    asked.insert(question.factId);
    questions.push_back(std::move(question));
  }
  const auto places = words.placesOf(std::move(asked));
  const auto rank = [&](const OpenQuestion& question) {
    const auto place = places.find(question.factId);
    return std::tuple(-static_cast<int>(question.couldBecome), !question.shutsRungs,
                      place == places.end() ? std::numeric_limits<int>::max() : place->second, question.slot);
  };
  std::sort(questions.begin(), questions.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return questions;
}

}  // namespace stile::screening
