#include "plan/doses.h"

#include <algorithm>

#include "plan/phrase.h"

namespace stile::plan {

const EffortRow* Library::Doses::effort(Section section, limits::Rung rung) const {
  for (const EffortRow& row : efforts) {
    if (row.section == section && row.rung == rung) return &row;
  }
  return nullptr;
}

std::vector<std::string> Library::Doses::sentencesOf(std::string_view key,
                                                     const std::vector<rules::Finding>& findings) const {
  std::vector<std::string> said;
  const auto at = sentences.find(key);
  if (at == sentences.end()) return said;
  // What is merely not ruled out neither adds a sentence nor takes one away.
  const auto isCertain = [&](const std::string& id) {
    return std::any_of(findings.begin(), findings.end(), [&](const rules::Finding& finding) {
      return finding.rule != nullptr && finding.rule->id == id && finding.standing == rules::Standing::Certain;
    });
  };
  for (const PlanSentence& sentence : at->second) {
    const auto any = [&](const std::vector<std::string>& ids) { return std::any_of(ids.begin(), ids.end(), isCertain); };
    if ((sentence.ifRules.empty() || any(sentence.ifRules)) && !any(sentence.unlessRules)) said.push_back(sentence.say);
  }
  return said;
}

const AerobicGrowth* Library::Doses::aerobicGrowthFor(const facts::FactSet& facts) const {
  const facts::FactSlots slots(facts);
  for (const AerobicGrowth& way : aerobicGrowth)
    if (!way.when || way.when->evaluate(slots).truth == expression::Truth::True) return &way;
  return nullptr;
}

std::string Library::Doses::phrase(std::string_view key, const std::map<std::string, std::string>& slots) const {
  const auto at = phrases.find(key);
  return at == phrases.end() ? std::string() : filledIn(at->second, slots);
}

std::string Library::Doses::counted(std::string_view key, const base::Rational& number,
                                    const std::map<std::string, std::string>& slots) const {
  const std::string one = std::string(key) + "One";
  return phrase(number == base::Rational(1) && phrases.count(one) != 0 ? std::string_view(one) : key, slots);
}

std::string wordsFor(const Library::Doses& doses, const base::Rational& low, const base::Rational& high) {
  std::vector<std::string> names;
  for (const EffortAnchor& anchor : doses.anchors) {
    if (anchor.to >= low && anchor.from <= high) names.push_back(anchor.name);
  }
  if (names.empty()) return {};
  return names.size() == 1 ? names.front() : doses.phrase("range", {{"low", names.front()}, {"high", names.back()}});
}

}  // namespace stile::plan
