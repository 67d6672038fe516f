// Relevance and the best next question against brute force on generated worlds: every completion
// of the open questions, settled and screened afresh.
#include <catch2/catch.hpp>
#include <map>
#include <tuple>

#include "../support/scale.h"
#include "interview/next_question.h"
#include "facts/enablement_closure.h"
#include "small_world.h"

using namespace stile;
using interview::Outcome;
using interview::PossibleAnswer;
using interview::QuestionRef;
using test::SlowOutcome;
using test::SmallWorld;

namespace {

constexpr unsigned kSeed = 20261125;
constexpr int kWorlds = 100;  // a twentieth of 2,000

std::vector<PossibleAnswer> answersTo(const SmallWorld& world, int place) {
  auto answers = world.ground->questions().at(place).answers;
  answers.push_back({facts::UnknownReason::NotSure, {}, {}});
  return answers;
}

bool isEnabled(const SmallWorld& world, const facts::FactSet& facts, int place) {
  const auto& dependents = world.ground->dependents();
  const int entry = dependents.entryOf(world.ground->questions().at(place).fact->slot);
  return entry < 0 || facts::enablementOf(facts, dependents.plan().entries()[static_cast<std::size_t>(entry)], -1) == expression::Truth::True;
}

/// Every outcome of every completion of the open questions.
class BruteForce {
 public:
  BruteForce(const SmallWorld& world, const facts::FactSet& facts, std::vector<int> open)
      : world_(world), open_(std::move(open)), chosen_(open_.size(), -1) {
    descend(facts, 0);
  }

  bool matters(int place, Outcome outcome) const {
    const auto at = static_cast<std::size_t>(std::find(open_.begin(), open_.end(), place) - open_.begin());
    std::map<std::vector<int>, const SlowOutcome*> seen;
    for (const auto& [chosen, result] : results_) {
      if (chosen.enabled[at] == 0) continue;
      std::vector<int> others = chosen.answers;
      others[at] = -1;
      const auto [first, isNew] = seen.emplace(others, &result);
      if (isNew) continue;
      const bool isSame = outcome == Outcome::Decision ? first->second->isSameDecision(result) : first->second->isSame(result);
      if (!isSame) return true;
    }
    return false;
  }

 private:
  struct Chosen {
    std::vector<int> answers;
    std::vector<char> enabled;
  };

  void descend(const facts::FactSet& facts, std::size_t at) {
    if (at == open_.size()) {
      results_.push_back({{chosen_, enabled_}, test::slowOutcome(world_.rules, facts)});
      return;
    }
    const bool enabled = isEnabled(world_, facts, open_[at]);
    const auto answers = answersTo(world_, open_[at]);
    enabled_.push_back(enabled ? 1 : 0);
    for (std::size_t i = 0; i < answers.size(); ++i) {
      chosen_[at] = static_cast<int>(i);
      descend(enabled ? test::slowAnswer(world_, facts, {open_[at], -1}, answers[i]) : facts, at + 1);
    }
    enabled_.pop_back();
  }

  const SmallWorld& world_;
  std::vector<int> open_;
  std::vector<int> chosen_;
  std::vector<char> enabled_;
  std::vector<std::pair<Chosen, SlowOutcome>> results_;
};

interview::Width slowWidth(const SmallWorld& world, const facts::FactSet& facts) {
  const auto findings = rules::evaluateRules(world.rules, facts, test::kInterviewDay);
  const SlowOutcome outcome = test::slowOutcome(world.rules, facts);
  interview::Width width;
  for (const auto bay : limits::kBays)
    width.rungs += static_cast<int>(outcome.reach.usable[bay]) - static_cast<int>(outcome.floor.usable[bay]);
  auto couldBecome = limits::Action::None;
  for (const auto& finding : findings)
    if (finding.standing == rules::Standing::Open && finding.counted != rules::IfUnknown::Pass)
      couldBecome = std::max(couldBecome, finding.full.action);
  width.actionSteps = std::max(0, static_cast<int>(couldBecome) - static_cast<int>(outcome.reach.limits.action));
  const auto& a = outcome.floor.limits;
  const auto& b = outcome.reach.limits;
  width.parts = (a.caps != b.caps) + (a.bans != b.bans) + (a.doseCaps != b.doseCaps) + (a.supervision != b.supervision) +
                (a.referrals != b.referrals) + (a.gates != b.gates);
  return width;
}

struct Tally {
  int questions = 0, matter = 0, kept = 0, dropped = 0, keptInVain = 0, wrongNext = 0, wrongWidth = 0, settled = 0;
};

void check(unsigned seed, Tally& tally) {
  const auto world = test::WorldMaker(seed).make();
  std::mt19937 random(seed);
  facts::FactSet facts = world->blank();
  std::vector<int> open;
  for (int place = 0; place < static_cast<int>(world->ground->questions().all().size()); ++place) {
    if (!isEnabled(*world, facts, place) || random() % 3 != 0) {
      open.push_back(place);
      continue;
    }
    const auto answers = answersTo(*world, place);
    facts = test::slowAnswer(*world, facts, {place, -1}, answers[random() % answers.size()]);
  }
  const BruteForce brute(*world, facts, open);
  interview::Position position(*world->ground, facts);
  const interview::Stakes stakes(position);
  const interview::SearchEffort effort{1000000, {}};
  std::vector<interview::Candidate> candidates;
  const interview::Width now = slowWidth(*world, facts);
  // Those that hold the decision come first, then the narrowest.
  std::optional<std::tuple<bool, interview::Width, int>> best;
  int holding = 0;
  for (const int place : open) {
    bool relevant = false;
    for (const Outcome outcome : {Outcome::Decision, Outcome::Limits}) {
      INFO("seed " << seed << ", question " << place << ", outcome " << static_cast<int>(outcome));
      const bool matters = brute.matters(place, outcome);
      const bool kept = interview::mayMatter(position, stakes, {place, -1}, outcome, effort);
      CHECK((kept || !matters));
      ++tally.questions;
      tally.matter += matters;
      tally.kept += kept;
      tally.dropped += matters && !kept;
      tally.keptInVain += kept && !matters;
      relevant = matters;
    }
    if (!isEnabled(*world, facts, place)) continue;
    candidates.push_back({{place, -1}, false});
    if (!relevant) continue;
    interview::Width worst;
    for (const auto& answer : world->ground->questions().at(place).answers)
      worst = std::max(worst, slowWidth(*world, test::slowAnswer(*world, facts, {place, -1}, answer)));
    tally.wrongWidth += interview::worstWidth(position, {place, -1}) != worst;
    const auto* stake = stakes.of({place, -1});
    const bool isSecond = !stake || !stake->holds;
    worst = std::min(worst, now);  // no case is worse than an answer that narrows nothing
    if (!best || std::pair(isSecond, worst) < std::pair(std::get<0>(*best), std::get<1>(*best))) best = {isSecond, worst, place};
  }
  for (const auto& [ref, stake] : stakes.all()) holding += stake.holds;
  INFO("seed " << seed << ": " << holding << " questions hold the decision");
  CHECK((holding == 0) == position.totals().isSettled());
  tally.settled += position.totals().isSettled();
  const auto chosen = interview::bestQuestion(position, stakes, candidates, false, effort);
  const bool isRight = best ? chosen && chosen->question.place == std::get<2>(*best) : !chosen;
  INFO("seed " << seed << ": best next question " << (chosen ? chosen->question.place : -1) << ", by brute force " << (best ? std::get<2>(*best) : -1));
  CHECK(isRight);
  tally.wrongNext += !isRight;
}

}  // namespace

TEST_CASE("Relevance never drops a question that matters, and the best next question is the one defined") {
  Tally tally;
  const int worlds = kWorlds * test::scale();
  for (int i = 0; i < worlds; ++i) check(kSeed + static_cast<unsigned>(i), tally);
  WARN(worlds << " worlds from seed " << kSeed << ", " << tally.questions << " questions: " << tally.matter << " matter, " << tally.kept
              << " kept, " << tally.dropped << " dropped wrongly, " << tally.keptInVain << " kept in vain, " << tally.wrongNext
              << " other next questions, " << tally.wrongWidth << " other widths; " << tally.settled << " were settled");
  CHECK(tally.dropped == 0);
  CHECK(tally.wrongWidth == 0);
  CHECK(tally.keptInVain * 50 <= tally.questions - tally.matter);
}
