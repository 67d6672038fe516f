#include "documents/letter_facts.h"

#include <algorithm>
#include <set>

#include "documents/decision_words.h"
#include "documents/summary_record.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using facts::Definition;
using facts::DerivedKind;
using facts::Fact;
using facts::FactType;
using screening::Screening;

bool isTrue(const Screening& screening, const std::string& id) {
  const Definition* definition = screening.facts.dictionary().find(id);
  return definition != nullptr && definition->group.empty() &&
         screening.facts.at(definition->slot).value.truth == expression::Truth::True;
}

/// The questions of a topic that stand for themselves: not those that ask further about another.
std::vector<const Definition*> mainQuestions(const facts::Dictionary& dictionary, const std::string& topic) {
  std::vector<const Definition*> list;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& definition = dictionary.at(slot);
    if (definition.topic != topic || definition.type != FactType::Boolean || !definition.group.empty() ||
        definition.derived.kind != DerivedKind::None || definition.concern != facts::Concern::True)
      continue;
    const bool isFurther = std::any_of(list.begin(), list.end(), [&](const Definition* main) {
      return definition.id.starts_with(main->id);
    });
    if (!isFurther) list.push_back(&definition);
  }
  return list;
}

Row symptomRow(const Screening& screening, const LetterTexts& texts) {
  Row row{texts.headings.say("symptoms"), {}, {}};
  std::vector<std::string> said;
  bool isOpen = false;
  for (const char* topic : {"acute", "symptoms"})
    for (const Definition* definition : mainQuestions(screening.facts.dictionary(), topic)) {
      const Fact& fact = screening.facts.at(definition->slot);
      isOpen = isOpen || (!isKnown(fact) && fact.reason != facts::UnknownReason::NotApplicable);
      if (fact.value.truth != expression::Truth::True) continue;
      std::string label = uncapitalized(definition->label);
      if (isTrue(screening, definition->id + "New")) label = texts.phrases.say("newWithin", {{"symptom", label}});
      said.push_back(std::move(label));
    }
  if (!said.empty()) row.text.push_back(asSentence(capitalized(listed(said))));
  if (isOpen) row.text.push_back(texts.phrases.say("symptomsOpen"));
  if (row.text.empty()) row.text.push_back(texts.phrases.say("noSymptoms"));
  return row;
}

/// What was told of one condition, with the answers that belong to it: "osteoarthritis of a knee (left)".
struct Condition {
  std::string id, words;
  std::vector<std::string> more;
};

std::string wordsOfCondition(const Condition& condition) {
  std::string text = condition.words;
  for (std::size_t i = 0; i < condition.more.size(); ++i) text += (i == 0 ? " (" : ", ") + condition.more[i];
  return text + (condition.more.empty() ? "" : ")");
}

/// An answer within a sentence; months keep their capitals.
std::string answerInside(const Definition& definition, const Fact& fact) {
  const std::string text = facts::display(definition, fact);
  return definition.type == FactType::Date ? text : uncapitalized(text);
}

/// The answers of one question that takes several stand together: "lung conditions: COPD, asthma".
void addOption(const Definition& definition, std::vector<Condition>& conditions) {
  const auto colon = definition.label.find(": ");
  const std::string question = definition.label.substr(0, colon);
  const std::string option = colon == std::string::npos ? "" : uncapitalized(definition.label.substr(colon + 2));
  const auto same = std::find_if(conditions.begin(), conditions.end(), [&](const Condition& one) { return one.id == question; });
  if (same != conditions.end())
    same->words += ", " + option;
  else
    conditions.push_back({question, uncapitalized(question) + (option.empty() ? "" : ": " + option), {}});
}

/// A side or a grade stands with the condition it is of.
void addChoice(const Definition& definition, const Fact& fact, std::vector<Condition>& conditions) {
  const std::string answer = answerInside(definition, fact);
  const auto of = std::find_if(conditions.rbegin(), conditions.rend(), [&](const Condition& one) { return definition.id.starts_with(one.id); });
  if (of != conditions.rend())
    of->more.push_back(answer);
  else
    conditions.push_back({definition.id, uncapitalized(definition.label) + ": " + answer, {}});
}

/// Whole repetitions: "joint replacements: hip, right, September 2025".
void addRepetitions(const Screening& screening, const std::set<std::string>& topics, std::vector<std::string>& said) {
  const auto& dictionary = screening.facts.dictionary();
  for (const auto& [group, title] : dictionary.groupTitles()) {
    if (group == "medicine" || dictionary.isSeries(dictionary.groupIndex(group))) continue;
    std::string all;
    for (int i = 0; i < screening.facts.repetitions(group); ++i) {
      std::string words;
      int taken = 0;
      for (const int slot : dictionary.groupMembers(dictionary.groupIndex(group))) {
        const Definition& member = dictionary.at(slot);
        if (!topics.contains(member.topic) || taken == 3) continue;
        if (member.derived.kind != DerivedKind::None || member.type == FactType::Boolean) continue;
        const Fact& fact = screening.facts.at(slot, i);
        if (!isKnown(fact)) continue;
        words += (words.empty() ? "" : ", ") + answerInside(member, fact);
        ++taken;
      }
      if (!words.empty()) all += (all.empty() ? ": " : " and ") + words;
    }
    if (!all.empty()) said.push_back(uncapitalized(title) + all);
  }
}

/// Conditions that were told: yes to a question, or an option chosen.
Row conditionRow(const Screening& screening, const LetterTexts& texts) {
  const std::set<std::string> topics{"heart-vessels", "lungs", "metabolism-kidneys", "bones-joints", "back", "pregnancy", "falls"};
  std::vector<Condition> conditions;
  const auto& dictionary = screening.facts.dictionary();
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& definition = dictionary.at(slot);
    if (!topics.contains(definition.topic) || !definition.group.empty()) continue;
    const Fact& fact = screening.facts.at(slot);
    if (!isKnown(fact)) continue;
    const bool isTold = definition.derived.kind == DerivedKind::None;
    const bool isYes = definition.type == FactType::Boolean && definition.concern == facts::Concern::True &&
                       fact.value.truth == expression::Truth::True;
    if (definition.isOption() && isYes)
      addOption(definition, conditions);
    else if (isTold && isYes)
      conditions.push_back({definition.id, uncapitalized(definition.label), {}});
    else if (isTold && definition.type == FactType::Code && !definition.isMultiple && fact.value.text &&
             *fact.value.text != "no" && *fact.value.text != "none")
      addChoice(definition, fact, conditions);
  }
  std::vector<std::string> said;
  for (const Condition& condition : conditions) said.push_back(wordsOfCondition(condition));
  addRepetitions(screening, topics, said);
  Row row{texts.headings.say("conditions"), {}, {}};
  if (!said.empty()) {
    std::string text;
    for (const std::string& one : said) text += (text.empty() ? "" : "; ") + one;
    row.text.push_back(asSentence(capitalized(text)));
  }
  return row;
}

Row medicineRow(const Screening& screening, const LetterTexts& texts) {
  Row row{texts.headings.say("medicines"), {}, {}};
  const auto& dictionary = screening.facts.dictionary();
  const Definition* name = dictionary.find("medicineName");
  if (name == nullptr || name->group.empty()) return row;
  std::vector<std::string> items;
  for (int i = 0; i < screening.facts.repetitions(name->group); ++i) {
    std::string item;
    for (const int slot : dictionary.groupMembers(name->groupIndex)) {
      const Definition& member = dictionary.at(slot);
      const Fact& fact = screening.facts.at(slot, i);
      if (member.derived.kind != DerivedKind::None || member.type == FactType::Boolean || !isKnown(fact)) continue;
      item += (item.empty() ? "" : ", ") + (item.empty() ? facts::display(member, fact) : uncapitalized(facts::display(member, fact)));
    }
    if (!item.empty()) items.push_back(item);
  }
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
  if (!text.empty()) row.text.push_back(asSentence(capitalized(text)));
  const bool isNone = screening.facts.repetitions(name->group) == 0 && !screening.facts.isOpenEnded(name->group);
  if (text.empty()) row.text.push_back(texts.phrases.say(isNone ? "noMedicines" : "medicinesOpen"));
  if (const Definition* allergies = dictionary.find("allergies"))
    if (const Fact& fact = screening.facts.at(allergies->slot); allergies->group.empty() && isKnown(fact))
      row.text.front() += " " + texts.phrases.say("allergies", {{"allergies", facts::display(*allergies, fact)}});
  return row;
}

Row negativesRow(const Screening& screening, const LetterTexts& texts) {
  std::vector<std::string> said;
  for (const Definition* definition : mainQuestions(screening.facts.dictionary(), "symptoms"))
    if (const Fact& fact = screening.facts.at(definition->slot);
        isKnown(fact) && fact.value.truth == expression::Truth::False)
      said.push_back(uncapitalized(definition->label));
  Row row{texts.headings.say("answeredNo"), {}, {}};
  if (!said.empty()) row.text.push_back(asSentence(capitalized(listed(said))));
  return row;
}

}  // namespace

std::vector<Row> letterFactRows(const Screening& screening, const screening::Content& content,
                                const LetterTexts& texts) {
  std::vector<Row> rows{symptomRow(screening, texts), conditionRow(screening, texts), medicineRow(screening, texts)};
  for (Row& row : recordRows(screening, content.reference))
    if (row.term == "Measured") {
      row.term = texts.headings.say("measured");
      rows.push_back(std::move(row));
    }
  rows.push_back(negativesRow(screening, texts));
  std::erase_if(rows, [](const Row& row) { return row.text.empty(); });
  return rows;
}

}  // namespace stile::documents
