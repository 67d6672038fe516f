#include "documents/letter_facts.h"

#include <algorithm>
#include <optional>
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

/// Members of a repetition that a letter names: joint, side, date, way of operating, limit.
constexpr int kMembersSaid = 5;

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
void addOption(const Definition& definition, const ConditionWords& words, std::vector<Condition>& conditions) {
  const auto colon = definition.label.find(": ");
  const std::string question = definition.label.substr(0, colon);
  const auto own = words.words.find(definition.id);
  const std::string option = own != words.words.end()        ? own->second
                             : colon == std::string::npos ? ""
                                                          : uncapitalized(definition.label.substr(colon + 2));
  const auto same = std::find_if(conditions.begin(), conditions.end(), [&](const Condition& one) { return one.id == question; });
  if (same != conditions.end())
    same->words += ", " + option;
  else
    conditions.push_back({question, uncapitalized(question) + (option.empty() ? "" : ": " + option), {}});
}

/// The condition that what `id` names belongs to: by the letters' own words, else by its name.
Condition* ownerOf(const std::string& id, const ConditionWords& words, std::vector<Condition>& conditions) {
  const auto named = words.belongsTo.find(id);
  const auto of = std::find_if(conditions.rbegin(), conditions.rend(), [&](const Condition& one) {
    return named == words.belongsTo.end() ? id.starts_with(one.id) : one.id == named->second;
  });
  return of == conditions.rend() ? nullptr : &*of;
}

/// A side, a grade, a date or a number stands with the condition it is of.
void addChoice(const Definition& definition, const Fact& fact, const ConditionWords& words,
               std::vector<Condition>& conditions) {
  const std::string answer = answerInside(definition, fact);
  if (Condition* of = ownerOf(definition.id, words, conditions))
    of->more.push_back(answer);
  else if (definition.type == FactType::Code)
    conditions.push_back({definition.id, uncapitalized(definition.label) + ": " + answer, {}});
}

/// Whether a letter takes in what is told by this fact: by its topic, its own name or that of the question
/// it belongs to.
bool isTakenIn(const std::optional<std::vector<std::string>>& taken, const std::string& topic, const std::string& id,
               const ConditionWords& words) {
  if (!taken) return true;
  const auto owner = words.belongsTo.find(id);
  return std::any_of(taken->begin(), taken->end(), [&](const std::string& one) {
    return one == topic || id.starts_with(one) || (owner != words.belongsTo.end() && owner->second.starts_with(one));
  });
}

/// Whole repetitions: "replaced joint (hip, right, September 2025)", or under the title of their group.
void addRepetitions(const Screening& screening, const std::set<std::string>& topics, const ConditionWords& known,
                    const std::optional<std::vector<std::string>>& taken, std::vector<Condition>& conditions) {
  const auto& dictionary = screening.facts.dictionary();
  for (const auto& [group, title] : dictionary.groupTitles()) {
    if (group == "medicine" || dictionary.isSeries(dictionary.groupIndex(group))) continue;
    std::vector<std::string> all;
    for (int i = 0; i < screening.facts.repetitions(group); ++i) {
      std::string words;
      int count = 0;
      for (const int slot : dictionary.groupMembers(dictionary.groupIndex(group))) {
        const Definition& member = dictionary.at(slot);
        if (!topics.contains(member.topic) || count == kMembersSaid) continue;
        if (!isTakenIn(taken, member.topic, group, known)) continue;
        if (member.derived.kind != DerivedKind::None || member.type == FactType::Boolean) continue;
        const Fact& fact = screening.facts.at(slot, i);
        if (!isKnown(fact)) continue;
        words += (words.empty() ? "" : ", ") + answerInside(member, fact);
        ++count;
      }
      if (!words.empty()) all.push_back(std::move(words));
    }
    if (all.empty()) continue;
    Condition* of = ownerOf(group, known, conditions);
    if (of == nullptr) of = &conditions.emplace_back(Condition{group, uncapitalized(title), {}});
    std::string text;
    for (const std::string& one : all) text += (text.empty() ? "" : "; ") + one;
    of->more.push_back(std::move(text));
  }
}

/// Conditions that were told: yes to a question, or an option chosen; only those `taken` in.
std::vector<Condition> conditionsTold(const Screening& screening, const ConditionWords& known,
                                      const std::optional<std::vector<std::string>>& taken) {
  const std::set<std::string> topics(known.topics.begin(), known.topics.end());
  const std::set<std::string> also(known.also.begin(), known.also.end());
  std::vector<Condition> conditions;
  const auto& dictionary = screening.facts.dictionary();
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& definition = dictionary.at(slot);
    if (!definition.group.empty() || !(topics.contains(definition.topic) || also.contains(definition.id))) continue;
    if (!isTakenIn(taken, definition.topic, definition.id, known)) continue;
    const Fact& fact = screening.facts.at(slot);
    if (!isKnown(fact)) continue;
    const bool isTold = definition.derived.kind == DerivedKind::None;
    const bool isYes = definition.type == FactType::Boolean && definition.concern == facts::Concern::True &&
                       fact.value.truth == expression::Truth::True;
    if (definition.isOption() && isYes)
      addOption(definition, known, conditions);
    else if (isTold && isYes) {
      const auto words = known.words.find(definition.id);
      conditions.push_back({definition.id, words == known.words.end() ? uncapitalized(definition.label) : words->second, {}});
    } else if (isTold && definition.type == FactType::Code && !definition.isMultiple && fact.value.text &&
               *fact.value.text != "no" && *fact.value.text != "none")
      addChoice(definition, fact, known, conditions);
    else if (isTold && known.belongsTo.contains(definition.id) &&
             (definition.type == FactType::Date || definition.type == FactType::Integer))
      addChoice(definition, fact, known, conditions);
  }
  addRepetitions(screening, topics, known, taken, conditions);
  return conditions;
}

Row conditionRow(const Screening& screening, const LetterTexts& texts, const LetterKind& kind) {
  Row row{texts.headings.say("conditions"), {}, {}};
  const auto conditions = conditionsTold(screening, texts.conditions, kind.conditions);
  std::string text;
  for (const Condition& condition : conditions) text += (text.empty() ? "" : "; ") + wordsOfCondition(condition);
  if (!text.empty()) row.text.push_back(asSentence(capitalized(text)));
  if (!kind.conditions) return row;
  const std::size_t all = conditionsTold(screening, texts.conditions, std::nullopt).size();
  if (all > conditions.size())
    row.text.push_back(texts.phrases.say("otherConditions", {{"count", std::to_string(all - conditions.size())}}));
  return row;
}

/// A medicine of one of these classes, or of none that is known: what it is cannot be ruled out.
bool isOfClasses(const facts::MedicineClasses& medicines, const std::string& written, const std::vector<std::string>& classes) {
  const facts::MedicineMatch match = medicines.match(written);
  if (!match.isResolved) return true;
  return std::any_of(classes.begin(), classes.end(), [&](const std::string& id) {
    const int wanted = medicines.find(id);
    const auto has = [wanted](const std::vector<int>& list) { return std::find(list.begin(), list.end(), wanted) != list.end(); };
    return has(match.classes) || has(match.possible);
  });
}

Row medicineRow(const Screening& screening, const LetterTexts& texts, const LetterKind& kind) {
  Row row{texts.headings.say("medicines"), {}, {}};
  const auto& dictionary = screening.facts.dictionary();
  const Definition* medicine = dictionary.find("medicineName");
  if (medicine == nullptr || medicine->group.empty()) return row;
  std::vector<std::string> items;
  std::size_t others = 0;
  for (int i = 0; i < screening.facts.repetitions(medicine->group); ++i) {
    std::string name, reasons;
    for (const int slot : dictionary.groupMembers(medicine->groupIndex)) {
      const Definition& member = dictionary.at(slot);
      const Fact& fact = screening.facts.at(slot, i);
      if (member.derived.kind != DerivedKind::None || member.type == FactType::Boolean || !isKnown(fact)) continue;
      const std::string answer = facts::display(member, fact);
      // What it is taken for stands in brackets: it must not read as something told.
      if (name.empty())
        name = answer;
      else
        reasons += (reasons.empty() ? "" : ", ") + uncapitalized(answer);
    }
    if (name.empty()) continue;
    if (kind.medicines && !isOfClasses(dictionary.medicines(), name, *kind.medicines))
      ++others;
    else
      items.push_back(name + (reasons.empty() ? "" : " (" + reasons + ")"));
  }
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
  if (!text.empty()) row.text.push_back(asSentence(capitalized(text)));
  const bool isNone = screening.facts.repetitions(medicine->group) == 0 && !screening.facts.isOpenEnded(medicine->group);
  if (others > 0)
    row.text.push_back(texts.phrases.say("otherMedicines", {{"count", std::to_string(others)}}));
  else if (text.empty())
    row.text.push_back(texts.phrases.say(isNone ? "noMedicines" : "medicinesOpen"));
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

std::vector<Row> letterTestRows(const Screening& screening, const LetterTexts& texts, const LetterKind& kind) {
  Row row{texts.headings.say("tests"), {}, {}};
  const auto& dictionary = screening.facts.dictionary();
  std::string text;
  for (const std::string& id : kind.facts) {
    const Definition* definition = dictionary.find(id);
    if (definition == nullptr || !definition->group.empty()) continue;
    const Fact& fact = screening.facts.at(definition->slot);
    text += (text.empty() ? "" : " · ") + definition->label + ": " +
            (isKnown(fact) ? uncapitalized(facts::display(*definition, fact)) : texts.phrases.say("notKnown"));
  }
  if (kind.hasTests)
    for (const Row& test : testRows(screening)) {
      text += (text.empty() ? "" : " · ") + test.term;
      for (const std::string& words : test.text) text += (text.back() == ':' ? " " : ": ") + words;
    }
  if (text.empty()) return {};
  row.text.push_back(asSentence(text));
  return {row};
}

std::vector<Row> letterFactRows(const Screening& screening, const screening::Content& content,
                                const LetterTexts& texts, const LetterKind& kind) {
  const auto hasPassage = [&kind](const char* key) {
    return std::find(kind.without.begin(), kind.without.end(), key) == kind.without.end();
  };
  std::vector<Row> rows;
  if (hasPassage("symptoms")) rows.push_back(symptomRow(screening, texts));
  rows.push_back(conditionRow(screening, texts, kind));
  rows.push_back(medicineRow(screening, texts, kind));
  for (Row& row : recordRows(screening, content.reference))
    if (row.term == "Measured" && hasPassage("measured")) {
      row.term = texts.headings.say("measured");
      rows.push_back(std::move(row));
    }
  if (hasPassage("answeredNo")) rows.push_back(negativesRow(screening, texts));
  std::erase_if(rows, [](const Row& row) { return row.text.empty(); });
  return rows;
}

}  // namespace stile::documents
