#include "plan/week_plan.h"

#include <algorithm>

namespace stile::plan {
namespace {

using base::Rational;

Rational times(const Rational& a, const Rational& b) { return Rational::multiply(a, b).value_or(Rational(0)); }
Rational plus(const Rational& a, const Rational& b) { return Rational::add(a, b).value_or(a); }

class WeekPlanner {
 public:
  WeekPlanner(const Fitting& fitting, const PlanParts& parts, const AerobicGrowth* way)
      : fitting_(fitting), growth_(fitting.doses.growth), parts_(parts), way_(way) {}

  std::vector<Week> run();

 private:
  Rational amount(const char* name) const { return fitting_.prescription.level->dose.amounts.at(name); }
  Week firstWeek();
  void grow(Week& week);
  bool isGrowthWeek(int week, std::int64_t every) const;
  bool isGrowthWeek(int week, const char* stepWeeks) const { return isGrowthWeek(week, amount(stepWeeks).floor()); }
  void growAerobic(Week& week);
  void growByMinutes(Week& week);
  void growByShare(Week& week);
  Rational mostDays(const Week& week) const;
  void holdAerobic(Week& week, const Rational& mostDays);
  void growStrength(Week& week);
  void growBalance(Week& week);
  void growStretching(Week& week);
  void holdBy(Week& week, const std::string& cap);
  void write(Week& week, bool hasGrown) const;

  const Fitting& fitting_;
  const Growth& growth_;
  PlanParts parts_;
  const AerobicGrowth* way_;
  Rational weekTotal_ = 0;  ///< aerobic minutes a week, kept exactly where they grow by a share
};

// Weeks count from the first; slow progression makes each step last longer, a hold week grows nothing.
bool WeekPlanner::isGrowthWeek(int week, std::int64_t every) const {
  const auto progression = fitting_.limits.progression;
  if (week == 1 || progression == limits::Progression::None || week % growth_.holdEvery == 0) return false;
  every = std::max<std::int64_t>(1, every);
  if (progression == limits::Progression::Slow) every *= growth_.slowFactor;
  return (week - 1) % every == 0;
}

void WeekPlanner::holdBy(Week& week, const std::string& cap) {
  const auto at = fitting_.limits.doseCaps.find(cap);
  if (at == fitting_.limits.doseCaps.end()) return;
  const std::string words = cap + " " + at->second.toText() + inBrackets(fitting_.holders.ofDoseCap(cap, at->second));
  if (week.heldBy.find(words) == std::string::npos) week.heldBy += (week.heldBy.empty() ? "" : "; ") + words;
}

void WeekPlanner::growAerobic(Week& week) {
  if (way_ == nullptr || week.aerobicMinutesPerWeek >= growth_.weeklyGoal) return;
  if (way_->percentStep > Rational(0)) {
    growByShare(week);
  } else {
    growByMinutes(week);
  }
}

Rational WeekPlanner::mostDays(const Week& week) const {
  const Rational most = std::max(growth_.daysGoal, week.aerobicDays);
  const auto cap = doseCap(fitting_.limits, "aerobicDaysPerWeek");
  return cap ? std::min(most, *cap) : most;
}

void WeekPlanner::holdAerobic(Week& week, const Rational& mostDays) {
  if (fitting_.prescription.minutesPerSessionAtMost < growth_.minutesGoal) {
    holdBy(week, "aerobicMinutesPerSession");
    holdBy(week, "sessionMinutes");
  }
  if (week.aerobicDays >= mostDays && mostDays < growth_.daysGoal) holdBy(week, "aerobicDaysPerWeek");
}

// First longer sessions, then more days; intensity stays.
void WeekPlanner::growByMinutes(Week& week) {
  const Rational most = fitting_.prescription.minutesPerSessionAtMost;
  const Rational longer = std::min(plus(week.aerobicMinutesPerSession, way_->minutesStep), most);
  if (longer > week.aerobicMinutesPerSession) {
    week.aerobicMinutesPerSession = longer;
    return;
  }
  const Rational days = mostDays(week);
  holdAerobic(week, days);
  if (week.aerobicDays < days) week.aerobicDays = plus(week.aerobicDays, 1);
}

// The week's total grows by a share; a day is added when the sessions are as long as they may be, and
// they are shorter then. Whole minutes are given, what is left over counts for the next week.
void WeekPlanner::growByShare(Week& week) {
  const Rational most = fitting_.prescription.minutesPerSessionAtMost;
  const Rational share = plus(Rational(1), Rational::divide(way_->percentStep, 100).value_or(Rational(0)));
  weekTotal_ = std::min(times(weekTotal_, share), growth_.weeklyGoal);
  const Rational days = mostDays(week);
  while (week.aerobicDays < days && weekTotal_ > times(most, week.aerobicDays)) week.aerobicDays = plus(week.aerobicDays, 1);
  if (weekTotal_ > times(most, week.aerobicDays)) {
    weekTotal_ = times(most, week.aerobicDays);
    holdAerobic(week, days);
  }
  week.aerobicMinutesPerSession = Rational(Rational::divide(weekTotal_, week.aerobicDays).value_or(most).floor());
}

// First more repetitions, then one more set.
void WeekPlanner::growStrength(Week& week) {
  Rational mostRepetitions = std::max(amount("strengthRepetitionsGoal"), week.strengthRepetitions);
  if (const auto cap = doseCap(fitting_.limits, "strengthRepetitions")) mostRepetitions = std::min(mostRepetitions, *cap);
  const Rational more = std::min(plus(week.strengthRepetitions, growth_.repetitionsStep), mostRepetitions);
  if (more > week.strengthRepetitions) {
    week.strengthRepetitions = more;
    return;
  }
  if (mostRepetitions < amount("strengthRepetitionsGoal")) holdBy(week, "strengthRepetitions");
  Rational mostSets = std::max(amount("strengthSetsGoal"), week.strengthSets);
  if (const auto cap = doseCap(fitting_.limits, "strengthSets")) mostSets = std::min(mostSets, *cap);
  if (week.strengthSets < mostSets) {
    week.strengthSets = plus(week.strengthSets, 1);
  } else if (mostSets < amount("strengthSetsGoal")) {
    holdBy(week, "strengthSets");
  }
}

// More minutes at the same hold; a session of bounded length leaves no room for more.
void WeekPlanner::growBalance(Week& week) {
  const Rational goal = std::max(amount("balanceMinutesGoal"), week.balanceMinutes);
  if (fitting_.prescription.sessionMinutes) {
    holdBy(week, "sessionMinutes");
    return;
  }
  const auto cap = doseCap(fitting_.limits, "balanceMinutes");
  const Rational most = cap ? std::min(goal, *cap) : goal;
  if (week.balanceMinutes >= most && most < goal) holdBy(week, "balanceMinutes");
  week.balanceMinutes = std::max(week.balanceMinutes, std::min(plus(week.balanceMinutes, growth_.balanceMinutesStep), most));
}

void WeekPlanner::growStretching(Week& week) {
  if (fitting_.prescription.sessionMinutes || week.stretchRepetitions >= amount("stretchRepetitionsGoal")) return;
  week.stretchRepetitions = plus(week.stretchRepetitions, 1);
}

void WeekPlanner::write(Week& week, bool hasGrown) const {
  const auto& doses = fitting_.doses;
  std::string words;
  const auto add = [&words](const std::string& more) { words += (words.empty() ? "" : " ") + more; };
  if (parts_.hasAerobic)
    add(doses.counted("weekAerobic", week.aerobicDays, {{"minutes", week.aerobicMinutesPerSession.toText(0)},
                                                        {"days", week.aerobicDays.toText(0)},
                                                        {"total", week.aerobicMinutesPerWeek.toText(0)}}));
  if (parts_.hasStrength)
    add(doses.counted("weekStrength", week.strengthSets, {{"days", week.strengthDays.toText(0)},
                                                          {"sets", week.strengthSets.toText(0)},
                                                          {"repetitions", week.strengthRepetitions.toText(0)}}));
  if (parts_.hasBalance)
    add(doses.counted("weekBalance", week.balanceMinutes, {{"days", week.balanceDays.toText(0)},
                                                           {"minutes", week.balanceMinutes.toText(0)}}));
  if (parts_.hasStretching)
    add(doses.counted("weekStretch", week.stretchRepetitions, {{"repetitions", week.stretchRepetitions.toText(0)}}));
  if (week.number > 1 && !hasGrown) add(doses.phrase("weekHeld"));
  week.words = words;
}

Week WeekPlanner::firstWeek() {
  const auto& sections = fitting_.prescription.sections;
  const auto known = [](const std::optional<Rational>& value) { return value.value_or(Rational(0)); };
  Week week;
  if (parts_.hasAerobic) {
    week.aerobicMinutesPerSession = known(sections.at(Section::Aerobic).dose.minutes);
    week.aerobicDays = known(sections.at(Section::Aerobic).dose.daysPerWeek);
    weekTotal_ = times(week.aerobicMinutesPerSession, week.aerobicDays);
  }
  if (parts_.hasStrength) {
    week.strengthDays = known(sections.at(Section::Strength).dose.daysPerWeek);
    week.strengthSets = known(sections.at(Section::Strength).dose.sets);
    week.strengthRepetitions = known(sections.at(Section::Strength).dose.repetitions);
  }
  if (parts_.hasBalance) {
    const auto cap = doseCap(fitting_.limits, "balanceMinutes");
    week.balanceMinutes = cap ? std::min(*cap, amount("balanceMinutes")) : amount("balanceMinutes");
    week.balanceDays = known(sections.at(Section::Balance).dose.daysPerWeek);
  }
  if (parts_.hasStretching) week.stretchRepetitions = known(sections.at(Section::Stretching).dose.repetitions);
  return week;
}

void WeekPlanner::grow(Week& week) {
  const bool hasOwnPace = way_ != nullptr && way_->everyWeeks > 0;
  const bool isAerobicWeek =
      hasOwnPace ? isGrowthWeek(week.number, way_->everyWeeks) : isGrowthWeek(week.number, "aerobicStepWeeks");
  if (parts_.hasAerobic && isAerobicWeek) growAerobic(week);
  if (parts_.hasStrength && isGrowthWeek(week.number, "strengthStepWeeks")) growStrength(week);
  if (parts_.hasBalance && isGrowthWeek(week.number, "balanceStepWeeks")) growBalance(week);
  if (parts_.hasStretching && isGrowthWeek(week.number, "stretchStepWeeks")) growStretching(week);
}

std::vector<Week> WeekPlanner::run() {
  std::vector<Week> weeks;
  Week week = firstWeek();
  for (int number = 1; number <= growth_.weeks; ++number) {
    week.number = number;
    week.heldBy.clear();
    const Week before = week;
    grow(week);
    week.aerobicMinutesPerWeek = times(week.aerobicMinutesPerSession, week.aerobicDays);
    if (fitting_.limits.progression == limits::Progression::None && number > 1)
      week.heldBy = "progression none" + inBrackets(fitting_.holders.ofProgression());
    const bool hasGrown = week.aerobicMinutesPerSession != before.aerobicMinutesPerSession ||
                          week.aerobicDays != before.aerobicDays || week.strengthSets != before.strengthSets ||
                          week.strengthRepetitions != before.strengthRepetitions ||
                          week.balanceMinutes != before.balanceMinutes ||
                          week.stretchRepetitions != before.stretchRepetitions;
    write(week, hasGrown);
    weeks.push_back(week);
  }
  return weeks;
}

}  // namespace

std::vector<Week> weeksOf(const Fitting& fitting, const PlanParts& parts, const AerobicGrowth* way) {
  if (!parts.hasAerobic && !parts.hasStrength && !parts.hasBalance) return {};
  return WeekPlanner(fitting, parts, way).run();
}

}  // namespace stile::plan
