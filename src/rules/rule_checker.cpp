#include "rules/rule_checker.h"

#include <algorithm>

#include "rules/sentence.h"

namespace stile::rules {
namespace {

/// Checks one rule against the rest.
class RuleCheck {
 public:
  RuleCheck(const Rule& rule, const RuleSet& ruleSet, const facts::Dictionary& dictionary,
            base::Issues& issues)
      : rule_(rule), ruleSet_(ruleSet), dictionary_(dictionary), issues_(issues) {}

  void run() {
    checkSources();
    checkChecks(rule_.then);
    if (rule_.meanwhile) checkChecks(*rule_.meanwhile);
    checkModes();
    checkEmergency();
    checkUntil();
    checkSentences();
  }

 private:
  void issue(std::string message, std::string remedy) {
    issues_.error(rule_.place, rule_.id, std::move(message), std::move(remedy));
  }

  void checkSources() {
    if (rule_.sources.empty())
      issue("a rule names its source", "add \"sources\", or the words common practice, no source");
    for (const std::string& id : rule_.sources)
      if (id != kNoSource && ruleSet_.sources.find(id) == ruleSet_.sources.end())
        issue("there is no source \"" + id + "\"", "add it under rules/sources/ or correct the id");
  }

  void checkChecks(const LimitsTemplate& part) {
    for (const std::string& id : part.fixed.checks)
      if (ruleSet_.checks.find(id) == ruleSet_.checks.end())
        issue("there is no check \"" + id + "\"", "define it under \"checks\" in a rule file");
  }

  bool isPolicy(int slot) const { return isPolicy(dictionary_.at(slot).id); }
  bool isPolicy(const std::string& id) const {
    for (const Policy& policy : ruleSet_.policies)
      if (policy.id == id) return true;
    return false;
  }

  /// Some fact of the condition must have the class of the rule's mode, else the mode is dead.
  void checkModes() {
    using facts::UnknownAs;
    const bool alsoPasses = rule_.ifUnknown != IfUnknown::Pass && !rule_.passReason.empty();
    if (alsoPasses) checkAlsoPasses();
    if (rule_.ifUnknown == IfUnknown::Cautious) return;
    bool fits = false;
    for (const int slot : rule_.when.slotsRead()) {
      const facts::Definition& fact = dictionary_.at(slot);
      fits = fits || (rule_.ifUnknown == IfUnknown::Gate && fact.unknownAs == UnknownAs::Gate) ||
             (rule_.ifUnknown == IfUnknown::Lowest && fact.unknownAs == UnknownAs::Lowest) ||
             (rule_.ifUnknown == IfUnknown::Pass &&
              (fact.unknownAs == UnknownAs::Optional || fact.optionalWhen));
    }
    if (!fits)
      issue(std::string("ifUnknown is \"") + idOf(rule_.ifUnknown) +
                "\" but no fact of the condition has that class",
            "change the mode, or unknownAs of the fact");
    if (rule_.ifUnknown == IfUnknown::Gate && !rule_.gate)
      issue("a rule with the mode gate says what to measure", "add \"gate\"");
    if (rule_.ifUnknown == IfUnknown::Pass) checkPass();
  }

  /// A rule of another mode that lets an optional fact pass: there must be one, and a policy behind it.
  void checkAlsoPasses() {
    const auto& read = rule_.when.slotsRead();
    const bool hasOptional = std::any_of(read.begin(), read.end(), [&](int slot) {
      const facts::Definition& fact = dictionary_.at(slot);
      return fact.unknownAs == facts::UnknownAs::Optional || fact.optionalWhen;
    });
    if (!hasOptional)
      issue("\"passReason\" stands beside another mode, but no fact of the condition is optional",
            "remove it");
    checkPass();
  }

  void checkPass() {
    if (rule_.passReason.empty()) issue("a rule that lets the unknown pass says why", "add \"passReason\"");
    const limits::Limits& then = rule_.then.fixed;
    const limits::Limits nothing;
    const bool restrains = then.action != limits::Action::None || !(then.clearance == nothing.clearance) ||
                           !(then.ceiling == nothing.ceiling) || !rule_.then.bans.empty();
    if (!restrains) return;
    if (rule_.passPolicy.empty())
      issue("letting the unknown pass a rule with an action, clearance, ceiling or ban needs a named policy",
            "add \"passPolicy\"");
    else if (!isPolicy(rule_.passPolicy))
      issue("there is no policy \"" + rule_.passPolicy + "\"", "name a policy of rules/policy.json");
  }

  void checkEmergency() {
    if (rule_.then.fixed.action != limits::Action::Emergency) return;
    if (!rule_.whenUnsure || *rule_.whenUnsure < limits::Action::SameDay)
      issue("an emergency rule says what to do when the answer is not sure",
            R"(add "whenUnsure": "sameDay" or "emergency")");
  }

  void checkUntil() {
    const limits::Limits nothing;
    const limits::Limits& then = rule_.then.fixed;
    const bool shuts = !(then.clearance == nothing.clearance) || !(then.ceiling == nothing.ceiling);
    if (shuts && rule_.until.key == KeyKind::None)
      issue("a rule that shuts a rung names the key that opens it", "add \"until\"");
    if (rule_.until.unchanged && rule_.until.key != KeyKind::Clearance)
      issue("\"unchanged\" belongs to a clearance", "change \"until\"");
  }

  void checkSentences() {
    const std::set<int> known = rule_.when.knownWhen(true);
    checkSentence(rule_.say, "say", &known);
    bool canBeOpen = false;
    for (const int slot : rule_.when.slotsRead()) canBeOpen = canBeOpen || !isPolicy(slot);
    if (rule_.sayOpen)
      checkSentence(*rule_.sayOpen, "sayOpen", nullptr);
    else if (canBeOpen)
      issue("there are no words for when the answer is unknown", "add \"sayOpen\"");
  }

  void checkSentence(const Sentence& sentence, const std::string& member, const std::set<int>* known) {
    for (const std::string* text : {&sentence.clinician, &sentence.client}) {
      for (const std::string& id : slotsIn(*text)) {
        const facts::Definition* fact = dictionary_.find(id);
        if (fact == nullptr) {
          issue(member + " uses {" + id + "}, and there is no such fact", "name a fact of the dictionary");
          continue;
        }
        const bool usable = isPolicy(id) || (known != nullptr && known->count(fact->slot) != 0);
        if (!usable)
          issue(member + " uses {" + id + "}, which is not known in every state the sentence serves",
                "use only facts that the condition settles, or leave the slot out");
      }
    }
  }

  const Rule& rule_;
  const RuleSet& ruleSet_;
  const facts::Dictionary& dictionary_;
  base::Issues& issues_;
};

}  // namespace

void checkRules(const RuleSet& ruleSet, const facts::Dictionary& dictionary, base::Issues& issues) {
  for (const Rule& rule : ruleSet.rules) RuleCheck(rule, ruleSet, dictionary, issues).run();
  for (const auto& [id, check] : ruleSet.checks) {
    if (check.sources.empty()) issues.error(check.place, id, "a check names its source", "add \"sources\"");
    for (const std::string& source : check.sources)
      if (source != kNoSource && ruleSet.sources.find(source) == ruleSet.sources.end())
        issues.error(check.place, id, "there is no source \"" + source + "\"", "add it under rules/sources/");
  }
  for (const auto& [id, measure] : ruleSet.vocabulary.measures)
    for (const std::string& fact : measure.facts)
      if (dictionary.find(fact) == nullptr)
        issues.error({"rules/vocabulary.json", 0, 0, {}}, id, "there is no fact \"" + fact + "\"",
                     "name a fact of the dictionary");
}

}  // namespace stile::rules
