#include "documents/summary_record.h"

#include <algorithm>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using facts::Definition;
using facts::DerivedKind;
using facts::Fact;
using facts::FactType;
using screening::Screening;

bool isKnown(const Fact& fact) {
  return fact.reason == facts::UnknownReason::None && !fact.value.isUnknown();
}

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

Row measuredRow(const Screening& screening, const facts::Reference& reference) {
  Row row{"Measured", {}, {}};
  for (int slot = 0; slot < screening.facts.dictionary().size(); ++slot) {
    const Definition& definition = screening.facts.dictionary().at(slot);
    if (!isMeasurement(definition)) continue;
    const Fact& fact = screening.facts.at(slot);
    if (!isKnown(fact)) continue;
    std::string text = definition.label + ": " + facts::display(definition, fact);
    if (fact.date && fact.date->first() != screening.date) text += ", " + fact.date->toText();
    row.text.push_back(text);
  }
  addReference(row.text, screening, reference);
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

Row answeredNoRow(const Screening& screening, const std::string& topic, const std::string& term) {
  std::vector<std::string> labels;
  for (int slot = 0; slot < screening.facts.dictionary().size(); ++slot) {
    const Definition& definition = screening.facts.dictionary().at(slot);
    if (definition.topic != topic || !definition.group.empty() || definition.type != FactType::Boolean)
      continue;
    if (definition.derived.kind != DerivedKind::None || definition.concern != facts::Concern::True) continue;
    const Fact& fact = screening.facts.at(slot);
    if (isKnown(fact) && fact.value.truth == expression::Truth::False)
      labels.push_back(uncapitalized(definition.label));
  }
  Row row{term, {}, {}};
  if (!labels.empty()) row.text.push_back(asSentence(capitalized(listed(labels))));
  return row;
}

std::vector<std::string> sentences(const std::set<std::string>& words, const std::string& lead) {
  std::vector<std::string> lines;
  for (const std::string& one : words)
    lines.push_back(lead + asSentence(lead.empty() ? capitalized(one) : one));
  return lines;
}

void addEach(std::vector<std::string>& into, std::vector<std::string> from) {
  into.insert(into.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

}  // namespace

std::vector<Row> referralRows(const Screening& screening, const rules::RuleSet& rules) {
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
    addEach(row.text, sentences(referral.why, ""));
    addEach(row.text, sentences(referral.ask, "To ask: "));
    addEach(row.text, sentences(referral.meanwhile, "Meanwhile: "));
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> recordRows(const Screening& screening, const facts::Reference& reference) {
  std::vector<Row> rows{measuredRow(screening, reference), medicineRow(screening),
                        answeredNoRow(screening, "acute", "Acute, answered no"),
                        answeredNoRow(screening, "symptoms", "Symptoms, answered no")};
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

std::vector<Row> policyRows(const Screening& screening) {
  std::vector<Row> rows;
  for (const screening::PolicyNote& policy : screening.policies)
    rows.push_back({policy.title, {"In force: " + asSentence(policy.display), policy.decides}, {}});
  return rows;
}

std::vector<Row> questionRows(const Screening& screening) {
  std::vector<Row> rows;
  std::string last;
  for (const screening::OpenQuestion& question : screening.openQuestions) {
    const std::string stake = question.couldBecome > limits::Action::None
                                  ? std::string("Could become ") + wordsOf(question.couldBecome)
                              : question.shutsRungs ? "Decides a rung"
                                                    : "Other limits";
    rows.push_back({stake == last ? "" : stake, {question.label}, {facts::toText(question.why)}});
    last = stake;
  }
  return rows;
}

std::vector<Row> askedBackRows(const base::Issues& askedBack) {
  std::vector<Row> rows;
  for (const base::Issue& issue : askedBack.all()) {
    if (issue.severity != base::Severity::AskBack) continue;
    Row row{issue.subject.empty() ? "Answer" : issue.subject, {asSentence(capitalized(issue.message))}, {}};
    if (!issue.remedy.empty()) row.text.push_back(asSentence(capitalized(issue.remedy)));
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace stile::documents
