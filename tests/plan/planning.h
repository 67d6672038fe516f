// What the tests of plan/ share: the real library read from the project's own content, a client
// built fact by fact, and rules made up for one test.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "plan/doses.h"
#include "plan/library.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// The content files plans need, without the rules: tests make their own findings.
inline std::map<std::string, std::string> planFiles() {
  std::map<std::string, std::string> files;
  const std::filesystem::path root = STILE_SOURCE_DIR;
  for (const char* part : {"rules/facts", "rules/exercises", "rules/movement", "rules/sources", "rules/norms", "rules/policy.json",
                           "rules/doses.json", "rules/easing.json", "rules/wishes.json", "rules/vocabulary.json", "rules/medicines/classes.json"}) {
    const auto take = [&](const std::filesystem::path& path) {
      std::ifstream in(path, std::ios::binary);
      files[std::filesystem::relative(path, root).generic_string()] = {std::istreambuf_iterator<char>(in), {}};
    };
    if (std::filesystem::is_directory(root / part)) {
      for (const auto& entry : std::filesystem::directory_iterator(root / part)) take(entry.path());
    } else {
      take(root / part);
    }
  }
  return files;
}

struct PlanContent {
  facts::Dictionary dictionary;
  rules::RuleSet rules;
  Library library;
  base::Issues issues;  ///< of the library alone

  explicit PlanContent(const std::map<std::string, std::string>& files) {
    base::Issues others;
    dictionary = facts::Dictionary::load(files, others);
    rules = rules::RuleSet::load(files, dictionary, others);
    library = Library::load(files, dictionary, rules, issues);
  }
};

inline const PlanContent& realContent() {
  static const PlanContent content(planFiles());
  return content;
}

/// A client, the limits and the made-up rules that set them.
class Client {
 public:
  /// Nothing is known of this client, but that memory is no problem: every level but the gentlest asks for that.
  Client() : facts_(realContent().dictionary) { is("memoryProblem", false); }

  Client& leavesOpen(std::string_view fact) {
    facts_.forget(realContent().dictionary.find(fact)->slot, -1, facts::UnknownReason::NotAsked);
    return *this;
  }

  Client& is(std::string_view fact, bool value) { return set(fact, expression::Value::boolean(value)); }
  Client& is(std::string_view fact, int value) { return set(fact, expression::Value::number(value)); }
  /// The clinic chose this alternative of a policy.
  Client& under(std::string_view policy, std::string code) { return set(policy, expression::Value::code(std::move(code))); }
  /// Every piece of equipment and every ability is there.
  Client& hasEverything() {
    for (const char* fact :
         {"homeHasChair", "homeHasArmChair", "homeHasHighSeat", "homeHasWall", "homeHasCounter", "homeHasDoorFrame",
          "homeHasStairs", "homeHasFirmBed", "homeHasMat", "homeHasBedOrMat", "homeHasBand", "homeHasWeights",
          "homeHasCycle", "homeHasHandPedals", "homeHasCrossTrainer", "homeWalkingSpace", "poolAccess", "floorAccess", "canLieOnBack"}) {
      is(fact, true);
    }
    return *this;
  }
  /// Levels as the starting-level table has them.
  Client& startsAt(char level) {
    if (level == 'D') {
      return is("regularlyActive", true).active(3, 30).is("activityMonths", 6).is("activityIsModerate", true);
    }
    if (level == 'C') return active(3, 20).is("activityMonths", 6).is("regularlyActive", false);
    if (level == 'B') return active(2, 10).is("regularlyActive", false);
    return *this;
  }
  Client& active(int days, int minutes) {
    return is("activityDaysPerWeek", days).is("activityMinutesPerDay", minutes);
  }
  /// Adds a rule whose finding asks for these limits; they join the client's.
  Client& under(const std::string& ruleId, const limits::Limits& asked, bool surgical = false,
                std::vector<std::string> prefer = {}, std::vector<std::string> discourage = {}, bool acute = false,
             bool absolute = false) {
    auto rule = std::make_shared<rules::Rule>();
    rule->id = ruleId;
    rule->surgical = surgical;
    rule->prefer = std::move(prefer);
    rule->discourage = std::move(discourage);
    rule->acute = acute;
    rule->absolute = absolute;
    rules::Finding finding;
    finding.rule = rule.get();
    rules_.push_back(std::move(rule));
    finding.standing = rules::Standing::Certain;
    finding.full = finding.floor = finding.reach = asked;
    findings_.push_back(finding);
    limits_ = limits::join(limits_, asked);
    return *this;
  }
  Client& usable(limits::Rung aerobic, limits::Rung strength) {
    usable_ = {aerobic, strength};
    return *this;
  }

  Request request() const { return {limits_, usable_, facts_, findings_, *base::Date::of(2026, 11, 25)}; }
  StarterPlan plan(const Library& library = realContent().library) const { return makeStarterPlan(library, request()); }
  EditedPlan edited(const Edits& edits) const { return editStarterPlan(realContent().library, request(), edits); }
  const limits::Limits& limits() const { return limits_; }

 private:
  Client& set(std::string_view id, expression::Value value) {
    auto& fact = facts_.change(realContent().dictionary.find(id)->slot);
    fact.value = std::move(value);
    fact.reason = facts::UnknownReason::None;
    return *this;
  }

  facts::FactSet facts_;
  std::vector<std::shared_ptr<const rules::Rule>> rules_;
  std::vector<rules::Finding> findings_;
  limits::Limits limits_;
  limits::PerBay<limits::Rung> usable_{limits::Rung::Vigorous, limits::Rung::Vigorous};
};

inline limits::Limits banned(const std::string& ban, limits::Side side = limits::Side::Both) {
  limits::Limits asked;
  asked.bans.insert({ban, side});
  return asked;
}

inline limits::Limits capped(const std::string& movement, int degrees, limits::Side side = limits::Side::Both,
                             limits::Qualifier qualifier = limits::Qualifier::Any) {
  limits::Limits asked;
  asked.caps[{movement, side, qualifier}] = degrees;
  return asked;
}

inline limits::Limits dosed(const std::string& name, int value, bool isFloor = false) {
  limits::Limits asked;
  (isFloor ? asked.doseFloors : asked.doseCaps)[name] = value;
  return asked;
}

inline const Line* lineOf(const StarterPlan& plan, std::string_view exercise) {
  for (const Line& line : plan.lines) {
    if (line.exercise->id == exercise) return &line;
  }
  return nullptr;
}

inline const Line* lineFor(const StarterPlan& plan, std::string_view purpose) {
  for (const Line& line : plan.lines) {
    if (line.exercise->purpose == purpose) return &line;
  }
  return nullptr;
}

inline const LeftOut* leftOutOf(const StarterPlan& plan, std::string_view exercise, std::string_view purpose = "") {
  for (const LeftOut& each : plan.leftOut) {
    if (each.exerciseId == exercise && (purpose.empty() || each.purpose == purpose)) return &each;
  }
  return nullptr;
}

}  // namespace stile::plan
