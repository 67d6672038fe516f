#include "documents/summary_answers.h"

#include <map>

#include "documents/summary_record.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using facts::Definition;
using facts::DerivedKind;
using facts::Fact;
using facts::UnknownReason;
using screening::Screening;

/// Something a person said or measured, in words; "" for what was not.
std::string answerWords(const Screening& screening, const Definition& definition, const Fact& fact) {
  if (!fact.isGiven() && fact.givenReason != UnknownReason::NotSure && fact.givenReason != UnknownReason::Declined) return "";
  Fact shown = fact;
  if (fact.isGiven()) {
    shown.value = fact.asGiven;
    shown.reason = UnknownReason::None;
  }
  std::string words = facts::display(definition, shown);
  std::string beside;
  const auto add = [&](const std::string& part) { beside += (beside.empty() ? "" : ", ") + part; };
  if (fact.date && fact.date->first() != screening.date) add(fact.date->toText());
  if (!fact.givenBy.empty() && fact.givenBy != "client") add("by " + fact.givenBy);
  if (fact.isGiven() && fact.reason != UnknownReason::None && fact.reason != UnknownReason::NotApplicable)
    add("does not count: " + std::string(facts::toText(fact.reason)));
  return beside.empty() ? words : words + " (" + beside + ")";
}

bool isAsked(const Definition& definition) {
  return !definition.isPolicy() && !definition.isOption() && !definition.isDerived();
}

/// The titles of the parts of the clinic's form by what they ask.
class FormParts {
 public:
  explicit FormParts(const questionnaire::FormSet& forms) {
    const questionnaire::Form* form = forms.byName("clinic");
    if (form == nullptr) return;
    for (const auto& item : form->items()) {
      titles_.push_back(item->text);
      place(*item);
    }
  }
  const std::vector<std::string>& titles() const { return titles_; }
  /// titles().size() for what the form does not ask.
  std::size_t of(const std::string& id) const {
    const auto at = parts_.find(id);
    return at == parts_.end() ? titles_.size() : at->second;
  }

 private:
  void place(const questionnaire::Item& item) {
    parts_.emplace(item.linkId, titles_.size() - 1);
    for (const auto& child : item.items) place(*child);
  }
  std::vector<std::string> titles_;
  std::map<std::string, std::size_t> parts_;
};

/// One repetition of a group: "metformin · What the medicine is for, as told: sugar".
std::string repetitionWords(const Screening& screening, int group, int repetition) {
  std::string words;
  for (const int slot : screening.facts.dictionary().groupMembers(group)) {
    const Definition& member = screening.facts.dictionary().at(slot);
    if (!isAsked(member)) continue;
    const std::string answer = answerWords(screening, member, screening.facts.at(slot, repetition));
    // The first answer is what the others are about: "1: metformin · …".
    if (!answer.empty()) words += words.empty() ? answer : " · " + member.label + ": " + answer;
  }
  return words;
}

}  // namespace

std::vector<Row> answerRows(const Screening& screening, const screening::Content& content) {
  const auto& dictionary = screening.facts.dictionary();
  const FormParts parts(content.forms);
  std::vector<std::vector<std::string>> told(parts.titles().size() + 1);
  const auto add = [&](std::size_t part, std::string words) {
    if (!words.empty()) told[part].push_back(std::move(words));
  };
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& definition = dictionary.at(slot);
    if (!definition.group.empty() || !isAsked(definition)) continue;
    const std::string answer = answerWords(screening, definition, screening.facts.at(slot));
    if (!answer.empty()) add(parts.of(definition.id), definition.label + (definition.label.ends_with("?") ? " " : ": ") + answer);
  }
  for (const auto& [group, title] : dictionary.groupTitles()) {
    const int index = dictionary.groupIndex(group);
    if (index < 0) continue;
    for (int i = 0; i < screening.facts.repetitions(index); ++i)
      if (const std::string words = repetitionWords(screening, index, i); !words.empty())
        add(parts.of(group), title + " " + std::to_string(i + 1) + ": " + words);
    if (screening.facts.repetitions(index) == 0 && !screening.facts.isOpenEnded(index)) add(parts.of(group), title + ": none");
  }
  std::vector<Row> rows;
  for (std::size_t i = 0; i < told.size(); ++i)
    addRunOn(rows, i < parts.titles().size() ? parts.titles()[i] : "Asked elsewhere", told[i], " · ");
  return rows;
}

}  // namespace stile::documents
