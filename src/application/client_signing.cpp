#include "application/client_signing.h"

#include <map>
#include <set>

#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using Members = std::vector<std::pair<const char*, std::string>>;

constexpr int kOftenAbovePart = 5;  // practice: more than a fifth

/// An entry of a kind that people file, out of its members.
base::Result<std::string> put(Clinic& clinic, const std::string& id, const char* kind, base::Date today, const Members& members, const OverrideRules& rules = {}) {
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText());
  for (const auto& [key, value] : members) writer.member(key, value);
  writer.endObject();
  base::Issues issues;
  auto entry = fileEntry(clinic, id, kind, writer.text(), kind, rules, issues);
  if (entry || issues.empty()) return entry;
  return base::Failure{base::FailureKind::Refused, issues.all().front().message};
}

std::string nameOf(const std::map<std::string, std::string>& names, const std::string& handle) {
  const auto at = names.find(handle);
  return at == names.end() ? handle : at->second;
}

}  // namespace

std::vector<std::string> openMatters(const records::ClientRecord& record) {
  std::vector<std::string> open;
  for (const auto& action : record.actions)
    if (!action.isComplete) open.push_back("The action record of " + action.opened.toLongText() + " is not complete.");
  for (const auto& line : record.overrides)
    if (line.needsSecond && line.secondSigner.empty()) open.push_back("The override of " + line.rule + " waits for a second signature and does not hold yet.");
  return open;
}

base::Result<SignedOff> signOff(Clinic& clinic, const std::string& id, const std::string& screening, base::Date today) {
  auto entry = put(clinic, id, "signOff", today, {{"screening", screening}});
  if (!entry) return entry.failure();
  const auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  return SignedOff{std::move(entry).value(), openMatters(work.value().folded())};
}

std::vector<Overridable> overridable(const screening::Screening& screening) {
  std::vector<Overridable> list;
  if (screening.reach.limits.action == limits::Action::Emergency) return list;
  std::set<std::string> told;
  for (const auto standing : {rules::Standing::Certain, rules::Standing::Open})
    for (const auto& finding : screening.findings)
      if (finding.standing == standing && !finding.rule->absolute && told.insert(finding.rule->id).second)
        list.push_back({finding.rule->id, finding.rule->title, finding.say.clinician, finding.rule->acute, standing == rules::Standing::Certain});
  return list;
}

base::Result<std::string> overrideRule(Clinic& clinic, const std::string& id, const screening::Content& content, const NewOverride& wanted, base::Date today) {
  const Members members{{"screening", wanted.screening}, {"rule", wanted.rule}, {"instead", wanted.instead}, {"reason", wanted.reason}};
  return put(clinic, id, "override", today, members, overrideRulesOf(content));
}

base::Result<std::string> signSecond(Clinic& clinic, const std::string& id, const std::string& override, base::Date today) {
  return put(clinic, id, "secondSignature", today, {{"override", override}});
}

base::Result<std::string> amend(Clinic& clinic, const std::string& id, const std::string& screening, const std::string& text, base::Date today) {
  return put(clinic, id, "amendment", today, {{"screening", screening}, {"text", text}});
}

records::DecisionNotes decisionNotes(const Clinic& clinic, const std::vector<records::Entry>& entries, const std::string& screening) {
  std::map<std::string, std::string> names;
  for (const auto& one : clinic.file().clinicians()) names[one.handle] = one.name + (one.profession.empty() ? "" : ", " + one.profession);
  auto notes = records::decisionNotesOf(entries, screening);
  for (auto& note : notes.overrides) {
    note.by = nameOf(names, note.by);
    note.secondBy = nameOf(names, note.secondBy);
  }
  for (auto& note : notes.signOffs) note.by = nameOf(names, note.by);
  for (auto& note : notes.amendments) note.by = nameOf(names, note.by);
  return notes;
}

OverrideRules overrideRulesOf(const screening::Content& content) {
  OverrideRules rules;
  for (const auto& rule : content.rules.rules) {
    rules.known.push_back(rule.id);
    if (rule.absolute) rules.absolute.push_back(rule.id);
    if (rule.acute) rules.acute.push_back(rule.id);
  }
  return rules;
}

base::Result<std::vector<OftenOverridden>> oftenOverridden(Clinic& clinic) {
  const auto screenings = clinic.file().panel("screening");
  if (!screenings) return screenings.failure();
  const auto overrides = clinic.file().panel("override");
  if (!overrides) return overrides.failure();
  std::map<std::string, OftenOverridden> counts;
  for (const std::string& body : screenings.value()) {
    const auto fired = records::Body(body).texts("rules");
    for (const std::string& rule : std::set<std::string>(fired.begin(), fired.end())) ++counts[rule].fired;
  }
  std::set<std::pair<std::string, std::string>> counted;  // once a screening
  for (const std::string& text : overrides.value()) {
    const records::Body body(text);
    if (counted.emplace(body.text("screening"), body.text("rule")).second) ++counts[body.text("rule")].overridden;
  }
  std::vector<OftenOverridden> often;
  for (auto& [rule, count] : counts) {
    count.rule = rule;
    if (count.overridden * kOftenAbovePart > count.fired) often.push_back(count);
  }
  return often;
}

}  // namespace stile::application
