// Whole people (tests/cases/*.json) through the real entry point: what must and must not follow.
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "application/screen_client.h"
#include "case_file.h"
#include "reply_slip.h"

using namespace stile;

namespace {

std::set<std::string> rulesWith(const screening::Screening& screening, rules::Standing standing) {
  std::set<std::string> ids;
  for (const auto& finding : screening.findings)
    if (finding.standing == standing) ids.insert(finding.rule->id);
  return ids;
}

std::vector<std::string> wordsIn(json::Node object, const char* key) {
  std::vector<std::string> words;
  const auto list = object.find(key);
  for (std::size_t i = 0; list && i < list->size(); ++i) words.push_back(list->at(i).string());
  return words;
}

std::set<std::string> exercisesIn(const screening::Screening& screening) {
  std::set<std::string> ids;
  for (const auto* plan :
       {screening.plan ? &*screening.plan : nullptr, screening.heldPlan ? &*screening.heldPlan : nullptr})
    if (plan != nullptr)
      for (const auto& line : plan->lines) ids.insert(line.exercise->id);
  return ids;
}

const char* planWord(screening::PlanState state) {
  return state == screening::PlanState::Made ? "made" : state == screening::PlanState::Held ? "held" : "none";
}

/// Compares every member that `expect` has, and refuses members it does not know.
class Expectation {
 public:
  Expectation(json::Node expect, const screening::Screening& screening)
      : expect_(expect), screening_(screening) {}

  void check() {
    REQUIRE(expect_.size() >= 3);
    const auto& limits = screening_.floor.limits;
    checkWord("action", limits::idOf(screening_.reach.limits.action));
    checkWord("couldBecome", limits::idOf(screening_.couldBecome));
    checkPerBay("clearance", limits.clearance);
    checkPerBay("floor", screening_.floor.usable);
    checkPerBay("reach", screening_.reach.usable);
    checkPerBay("ifGranted", screening_.ifGranted.usable);
    checkWord("effortGuide", limits::idOf(limits.effortGuide));
    checkWord("progression", limits::idOf(limits.progression));
    checkWord("supervision", limits::idOf(limits.supervision));
    checkWord("plan", planWord(screening_.planState));
    checkRules();
    checkLimits(limits);
    const auto exercises = exercisesIn(screening_);
    checkAll("exercises", exercises, true);
    checkAll("noExercises", exercises, false);
    for (std::size_t i = 0; i < expect_.size(); ++i) {
      INFO("expect has the unknown member " << expect_.keyAt(i));
      CHECK(known_.count(expect_.keyAt(i)) == 1);
    }
  }

 private:
  void checkWord(const char* key, const std::string& actual) {
    known_.insert(key);
    if (const auto expected = expect_.find(key)) {
      INFO(key);
      CHECK(actual == expected->string());
    }
  }

  template <class T>
  void checkPerBay(const char* key, const limits::PerBay<T>& actual) {
    known_.insert(key);
    const auto expected = expect_.find(key);
    if (!expected) return;
    for (const auto bay : limits::kBays) {
      const auto word = expected->find(limits::idOf(bay));
      const auto both = word ? word : expected->find("both");
      INFO(key << " " << limits::idOf(bay));
      if (both) CHECK(std::string(limits::idOf(actual[bay])) == both->string());
    }
  }

  void checkAll(const char* key, const std::set<std::string>& actual, bool mustBeThere) {
    known_.insert(key);
    for (const std::string& word : wordsIn(expect_, key)) {
      INFO(key << ": " << word);
      CHECK((actual.count(word) != 0) == mustBeThere);
    }
  }

  void checkRules() {
    const auto certain = rulesWith(screening_, rules::Standing::Certain);
    const auto open = rulesWith(screening_, rules::Standing::Open);
    checkAll("fires", certain, true);
    checkAll("open", open, true);
    std::set<std::string> any = certain;
    any.insert(open.begin(), open.end());
    checkAll("out", any, false);
    for (const char* key : {"fires", "open", "out"})
      for (const std::string& id : wordsIn(expect_, key)) {
        INFO("there is no rule " << id);
        CHECK(test::content().rules.find(id) != nullptr);
      }
  }

  void checkLimits(const limits::Limits& limits) {
    std::set<std::string> bans, gates, referrals, stops, caps;
    for (const auto& ban : limits.bans) bans.insert(ban.ban);
    for (const auto& [measure, gate] : limits.gates) gates.insert(measure);
    for (const auto& [service, referral] : screening_.reach.limits.referrals) referrals.insert(service);
    for (const auto& [key, value] : limits.stopValues) stops.insert(key.measure);
    for (const auto& [key, value] : limits.caps)
      caps.insert(key.movement + " " + limits::idOf(key.side) + " " + limits::idOf(key.qualifier) + " " +
                  value.toText());
    checkAll("bans", bans, true);
    checkAll("noBans", bans, false);
    checkAll("gates", gates, true);
    checkAll("noGates", gates, false);
    checkAll("checks", limits.checks, true);
    checkAll("noChecks", limits.checks, false);
    checkAll("referrals", referrals, true);
    checkAll("noReferrals", referrals, false);
    checkAll("stopValues", stops, true);
    checkAll("settings", limits.settings, true);
    checkAll("caps", caps, true);
    std::set<std::string> policies;
    for (const auto& policy : screening_.policies) policies.insert(policy.id);
    checkAll("policies", policies, true);
  }

  json::Node expect_;
  const screening::Screening& screening_;
  std::set<std::string> known_;
};

}  // namespace

/// How many whole people of each kind there must be, at least.
const std::map<std::string, int> kLeast = {{"interacting", 30},  {"threshold", 15}, {"notSure", 12},
                                           {"medicineOnly", 12}, {"telephone", 10}, {"partialReply", 6}};

/// What a case says of itself must be true of it: a case of interacting conditions has certain
/// findings from two rule files, a "not sure" case an answer of that kind, and so on.
void checkKind(const std::string& kind, const test::CaseFile& file, const screening::Screening& screening) {
  INFO("said to be of the kind " << kind);
  CHECK(kLeast.count(kind) == 1);
  std::set<std::string> topics;
  for (const auto& finding : screening.findings)
    if (finding.standing == rules::Standing::Certain) topics.insert(finding.rule->file);
  const std::string facts = file.facts();
  if (kind == "interacting") CHECK(topics.size() >= 2);
  if (kind == "notSure")
    CHECK((facts.find("notSure") != std::string::npos || facts.find("declined") != std::string::npos));
  if (kind == "medicineOnly") CHECK(facts.find("medicineName") != std::string::npos);
  if (kind == "telephone") CHECK(facts.find("readingSystolic") == std::string::npos);
  if (kind == "partialReply") CHECK(file.root().find("replies"));
}

TEST_CASE("Each whole person gets what must follow and nothing that must not") {
  const auto paths = test::jsonFiles("cases");
  std::map<std::string, int> kinds;
  for (const auto& path : paths) {
    const test::CaseFile file(path);
    INFO(path.filename().string() << ": " << file.title());
    CHECK_FALSE(file.source().empty());
    base::Issues issues;
    const auto screened =
        application::screenClient(test::content(), test::inputsWithReplies(file), file.date(), issues);
    std::string told;
    for (const auto& issue : issues.all()) told += toText(issue) + "\n";
    INFO(told);
    CHECK(screened.ok());
    if (!screened.ok()) continue;
    Expectation(file.expect(), screened.value()).check();
    for (const std::string& kind : wordsIn(file.root(), "categories")) {
      checkKind(kind, file, screened.value());
      ++kinds[kind];
    }
  }
  std::string counted;
  for (const auto& [kind, least] : kLeast) {
    INFO(kind << ": at least " << least);
    CHECK(kinds[kind] >= least);
    counted += ", " + std::to_string(kinds[kind]) + " " + kind;
  }
  WARN(paths.size() << " whole people" << counted);
  CHECK(paths.size() >= 100);
}
