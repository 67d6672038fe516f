#include "documents/summary_record.h"

#include <algorithm>
#include <set>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/norm_plot.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using facts::Definition;
using facts::DerivedKind;
using facts::Fact;
using facts::FactType;
using screening::Screening;

/// A value somebody measured, or the mean, worst, last or norm of such values.
bool isMeasurement(const Definition& definition) {
  if (definition.topic != "measurements" && definition.topic != "tests") return false;
  if (!definition.group.empty() || definition.type == FactType::Boolean || definition.type == FactType::Text)
    return false;
  switch (definition.derived.kind) {
    case DerivedKind::None:
    case DerivedKind::Mean:
    case DerivedKind::Worst:
    case DerivedKind::Last:
    case DerivedKind::Norm:
      return true;
    default:
      return false;
  }
}

/// Classes of what was measured, and what a published formula makes of it.
void addReference(std::vector<std::string>& lines, const Screening& screening, const facts::Reference& reference) {
  for (const auto& entry : reference.entries()) {
    if (entry.of.empty()) continue;
    const auto inputs = facts::Reference::inputsFrom(entry, screening.facts);
    if (!inputs) continue;
    if (const auto* row = reference.classOf(entry.id, *inputs))
      lines.push_back(entry.title + ": " + row->display);
    else if (const auto value = reference.evaluate(entry.id, *inputs))
      lines.push_back(entry.title + ": about " + value->toText(1) + " " + entry.unitText);
  }
}

/// The day of a reading that was not taken on the day of the screening.
std::string dayWords(const Screening& screening, const Fact& fact) {
  return fact.date && fact.date->first() != screening.date ? " (" + fact.date->toText() + ")" : "";
}

/// Slots of results that stand in a row of their own, with their norm.
std::set<int> testedSlots(const Screening& screening) {
  std::set<int> slots;
  for (int slot = 0; slot < screening.facts.dictionary().size(); ++slot) {
    const Definition& definition = screening.facts.dictionary().at(slot);
    if (definition.derived.kind == DerivedKind::Norm && isKnown(screening.facts.at(slot)) &&
        !definition.derived.inputs.empty()) {
      slots.insert(slot);
      slots.insert(definition.derived.inputs.front());
    }
  }
  return slots;
}

Row measuredRow(const Screening& screening, const facts::Reference& reference) {
  Row row{"Measured", {}, {}, {}};
  const std::set<int> tested = testedSlots(screening);
  std::string text;
  for (int slot = 0; slot < screening.facts.dictionary().size(); ++slot) {
    const Definition& definition = screening.facts.dictionary().at(slot);
    if (!isMeasurement(definition) || tested.contains(slot)) continue;
    const Fact& fact = screening.facts.at(slot);
    if (!isKnown(fact)) continue;
    text += (text.empty() ? "" : " · ") + definition.label + " " + facts::display(definition, fact) + dayWords(screening, fact);
  }
  if (!text.empty()) row.text.push_back(asSentence(text));
  std::vector<std::string> classes;
  addReference(classes, screening, reference);
  text.clear();
  for (const std::string& one : classes) text += (text.empty() ? "" : " · ") + one;
  if (!text.empty()) row.text.push_back(asSentence(text));
  return row;
}

Row medicineRow(const Screening& screening) {
  Row row{"Medicines", {}, {}};
  const auto& dictionary = screening.facts.dictionary();
  const Definition* name = dictionary.find("medicineName");
  const Definition* reason = dictionary.find("medicineReason");
  if (name == nullptr || name->group.empty()) return row;
  std::vector<std::string> items;
  for (int i = 0; i < screening.facts.repetitions(name->group); ++i) {
    const Fact& fact = screening.facts.at(name->slot, i);
    if (!isKnown(fact)) continue;
    std::string item = facts::display(*name, fact);
    if (reason != nullptr && reason->group == name->group)
      if (const Fact& why = screening.facts.at(reason->slot, i); isKnown(why))
        item += " (" + uncapitalized(facts::display(*reason, why)) + ")";
    items.push_back(item);
  }
  if (!items.empty()) {
    row.text.push_back(asSentence(capitalized(listed(items))));
  } else if (screening.facts.repetitions(name->group) == 0 && !screening.facts.isOpenEnded(name->group)) {
    row.text.push_back("None.");
  }
  return row;
}

/// "Acute questions: all 6." or those that were answered no, by name.
std::string answeredNo(const Screening& screening, const std::string& topic, const std::string& name) {
  std::vector<std::string> labels;
  std::size_t asked = 0;
  for (int slot = 0; slot < screening.facts.dictionary().size(); ++slot) {
    const Definition& definition = screening.facts.dictionary().at(slot);
    if (definition.topic != topic || !definition.group.empty() || definition.type != FactType::Boolean)
      continue;
    if (definition.derived.kind != DerivedKind::None || definition.concern != facts::Concern::True) continue;
    const Fact& fact = screening.facts.at(slot);
    // What asks further about something that is not there was not asked.
    if (fact.reason == facts::UnknownReason::NotApplicable) continue;
    ++asked;
    if (isKnown(fact) && fact.value.truth == expression::Truth::False)
      labels.push_back(uncapitalized(definition.label));
  }
  if (labels.empty()) return "";
  if (labels.size() == asked && asked > 3) return name + ": all " + std::to_string(asked) + ".";
  return asSentence(name + ": " + listed(labels));
}

Row answeredNoRow(const Screening& screening) {
  const std::string acute = answeredNo(screening, "acute", "Acute questions"),
                    symptoms = answeredNo(screening, "symptoms", "Symptoms");
  Row row{"Answered no", {}, {}};
  const std::string text = acute + (acute.empty() || symptoms.empty() ? "" : " ") + symptoms;
  if (!text.empty()) row.text.push_back(text);
  return row;
}

/// Those that are left out are counted.
std::vector<std::string> sentences(const std::set<std::string>& words, const std::string& lead, std::size_t most) {
  std::vector<std::string> lines;
  for (const std::string& one : words)
    if (lines.size() < most) lines.push_back(lead + asSentence(lead.empty() ? capitalized(one) : one));
  if (words.size() > most) lines.back() += " (" + std::to_string(words.size() - most) + " more.)";
  return lines;
}

void addEach(std::vector<std::string>& into, std::vector<std::string> from) {
  into.insert(into.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

}  // namespace

bool isKnown(const Fact& fact) {
  return fact.reason == facts::UnknownReason::None && !fact.value.isUnknown();
}

std::vector<Row> referralRows(const Screening& screening, const rules::RuleSet& rules, std::size_t most) {
  // Calls take effect from certain findings: the reach end. The soonest stands first.
  std::vector<std::pair<std::string, limits::Referral>> referrals(screening.reach.limits.referrals.begin(),
                                                                  screening.reach.limits.referrals.end());
  std::stable_sort(referrals.begin(), referrals.end(),
                   [](const auto& a, const auto& b) { return a.second.within > b.second.within; });
  std::vector<Row> rows;
  for (const auto& [service, referral] : referrals) {
    Row row{
        capitalized(termWords(rules.vocabulary.services, service, false)) + ", " + wordsOf(referral.within),
        {},
        {}};
    std::vector<std::string> all;
    addEach(all, sentences(referral.why, "", most));
    addEach(all, sentences(referral.ask, "To ask: ", most));
    // While everything is shut, no word about what goes on may stand beside it.
    const auto& usable = screening.floor.usable;
    const bool isShut = usable.aerobic == limits::Rung::None && usable.strength == limits::Rung::None;
    if (most > 1 && !isShut) addEach(all, sentences(referral.meanwhile, "Meanwhile: ", most));
    std::string text;
    for (const std::string& sentence : all) text += (text.empty() ? "" : " ") + sentence;
    row.text.push_back(text);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> testRows(const Screening& screening) {
  std::vector<Row> rows;
  const auto& dictionary = screening.facts.dictionary();
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const Definition& norm = dictionary.at(slot);
    const Fact& where = screening.facts.at(slot);
    if (norm.derived.kind != DerivedKind::Norm || !isKnown(where) || norm.derived.inputs.size() < 3) continue;
    const Definition& definition = dictionary.at(norm.derived.inputs[0]);
    const Fact& result = screening.facts.at(definition.slot);
    Row row{definition.label, {}, {}, {}};
    row.text.push_back(facts::display(definition, result) + dayWords(screening, result) + ": " + facts::display(norm, where));
    const facts::NormTable* table = dictionary.norm(norm.derived.table);
    const Fact &sex = screening.facts.at(norm.derived.inputs[1]), &age = screening.facts.at(norm.derived.inputs[2]);
    if (table != nullptr && isKnown(sex) && isKnown(age) && sex.value.text && age.value.low && result.value.low) {
      const int years = static_cast<int>(age.value.low->floor());
      if (const auto* band = normRowFor(*table, *sex.value.text, years))
        row.plot = normPlot(*table, *band, *result.value.low, facts::unitWords(table->unit.text));
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> recordRows(const Screening& screening, const facts::Reference& reference) {
  std::vector<Row> rows{measuredRow(screening, reference), medicineRow(screening),
                        answeredNoRow(screening)};
  std::erase_if(rows, [](const Row& row) { return row.text.empty(); });
  return rows;
}

std::vector<Row> clearanceRows(const Screening& screening, const rules::RuleSet& rules) {
  std::vector<Row> rows;
  for (const screening::Coverage& coverage : screening.coverage) {
    const rules::Rule* rule = rules.find(coverage.ruleId);
    Row row{rule == nullptr ? coverage.ruleId : rule->title, {}, {}};
    if (coverage.covers) {
      std::string text = "Covered: aerobic up to " + std::string(wordsOf(coverage.upTo.aerobic)) +
                         ", strength up to " + wordsOf(coverage.upTo.strength);
      if (coverage.until) text += ", until " + coverage.until->toLongText();
      row.text.push_back(text + ".");
    } else {
      row.text.push_back("Not covered.");
    }
    if (!coverage.because.empty()) row.text.push_back(asSentence(capitalized(coverage.because)));
    if (!coverage.by.empty()) row.note.push_back("reply by " + coverage.by);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> policyRows(const Screening& screening, bool isFull) {
  std::vector<Row> rows;
  for (const screening::PolicyNote& policy : screening.policies)
    rows.push_back({policy.title, {asSentence(policy.display) + (isFull ? " " + policy.decides : "")}, {}});
  return rows;
}

void addRunOn(std::vector<Row>& rows, const std::string& term, const std::vector<std::string>& pieces, const char* between) {
  constexpr std::size_t kLongest = 420;  // about eight lines of half a page
  Row row{term, {}, {}};
  std::string text;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const auto isSentence = [](const std::string& piece) { return piece.ends_with('?') || piece.ends_with('.'); };
    text += i > 0 && isSentence(pieces[i - 1]) ? capitalized(pieces[i]) : pieces[i];
    const bool isLast = i + 1 == pieces.size();
    text += isSentence(pieces[i]) ? (isLast ? "" : " ") : isLast ? "." : between;
    if (text.size() < kLongest && i + 1 < pieces.size()) continue;
    row.text = {text};
    rows.push_back(std::move(row));
    row = {"", {}, {}};
    text.clear();
  }
}

std::vector<Row> questionRows(const Screening& screening, std::size_t most) {
  struct Group {
    std::string stake;
    std::vector<std::string> named;
  };
  std::vector<Group> groups;
  for (const screening::OpenQuestion& question : screening.openQuestions) {
    const std::string stake = question.couldBecome > limits::Action::None
                                  ? std::string("Could become ") + wordsOf(question.couldBecome)
                              : question.shutsRungs ? "Decides a rung"
                                                    : "Other limits";
    auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& one) { return one.stake == stake; });
    if (group == groups.end()) group = groups.insert(groups.end(), {stake, {}});
    // Most were not asked: the heading says so, and only another reason stands beside its question.
    const bool isPlain = question.why == facts::UnknownReason::NotAsked;
    group->named.push_back(question.label + (isPlain ? "" : std::string(" (") + facts::toText(question.why) + ")"));
  }
  std::vector<Row> rows;
  for (Group& group : groups) {
    const std::string term = group.stake + ", " + counted(group.named.size(), "question");
    if (const std::size_t more = group.named.size() > most ? group.named.size() - most : 0; more > 0) {
      group.named.resize(most);
      group.named.push_back("and " + std::to_string(more) + " more");
    }
    addRunOn(rows, term, group.named, "; ");
  }
  return rows;
}

std::vector<Row> askedBackRows(const base::Issues& askedBack) {
  std::vector<Row> rows;
  for (const base::Issue& issue : askedBack.all()) {
    if (issue.severity != base::Severity::AskBack) continue;
    Row row{"", {asSentence(capitalized(issue.message))}, {}};
    if (!issue.remedy.empty()) row.text.push_back(asSentence(capitalized(issue.remedy)));
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace stile::documents
