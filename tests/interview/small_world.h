// Small generated worlds: a form, its facts and some rules, drawn from a seed; and an interview's
// outcome the slow way, by settling and screening afresh.
#pragma once

#include <catch2/catch.hpp>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "interview/next_question.h"
#include "interview/position.h"
#include "interview/relevance.h"
#include "rules/finding.h"

namespace stile::test {

inline const base::Date kInterviewDay = *base::Date::of(2026, 11, 25);

/// Owns what a Ground refers to.
struct SmallWorld {
  facts::Dictionary dictionary;
  questionnaire::FormSet forms;
  rules::RuleSet rules;
  std::unique_ptr<interview::Ground> ground;

  const questionnaire::Form& form() const { return *forms.byName("form"); }
  facts::FactSet blank() const;
};

/// Writes the files of a world and loads them; fails the test when they are not acceptable.
class WorldMaker {
 public:
  explicit WorldMaker(unsigned seed) : random_(seed) {}
  std::unique_ptr<SmallWorld> make();

 private:
  int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }
  bool oneIn(int count) { return upTo(count - 1) == 0; }
  std::string pick(const std::vector<std::string>& list) { return list[static_cast<std::size_t>(upTo(static_cast<int>(list.size()) - 1))]; }

  void addQuestion(int number);
  std::string conditionOnEarlier();
  std::string test();
  std::string condition(int depth);
  std::string limits();
  std::string rule(int number);

  std::mt19937 random_;
  std::vector<std::string> facts_, items_, tests_, gates_;
};

/// Everything an outcome is compared by, worked out by settling and evaluating all rules afresh.
struct SlowOutcome {
  screening::End floor, reach;
  interview::Decision granted;
  bool isSameDecision(const SlowOutcome& other) const {
    using interview::Decision;
    return Decision::of(floor.limits) == Decision::of(other.floor.limits) &&
           Decision::of(reach.limits) == Decision::of(other.reach.limits) && granted == other.granted;
  }
  bool isSame(const SlowOutcome& other) const {
    return floor.limits == other.floor.limits && reach.limits == other.reach.limits && granted == other.granted;
  }
};
SlowOutcome slowOutcome(const rules::RuleSet& rules, const facts::FactSet& facts);

/// `facts` with one answer more, settled afresh; answers it disables fall away.
facts::FactSet slowAnswer(const SmallWorld& world, facts::FactSet facts, const interview::QuestionRef& question,
                          const interview::PossibleAnswer& answer);

}  // namespace stile::test
