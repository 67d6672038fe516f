#include "plan/week_plan.h"

#include <algorithm>

namespace stile::plan {
namespace {

using base::Rational;

Rational times(const Rational& a, const Rational& b) { return Rational::multiply(a, b).value_or(Rational(0)); }
Rational plus(const Rational& a, const Rational& b) { return Rational::add(a, b).value_or(a); }

class WeekPlanner {
 public:
  WeekPlanner(const Fitting& fitting, bool hasAerobic, bool hasStrength)
      : fitting_(fitting), growth_(fitting.doses.growth), hasAerobic_(hasAerobic), hasStrength_(hasStrength) {}

  std::vector<Week> run();

 private:
  Rational amount(const char* name) const { return fitting_.prescription.level->dose.amounts.at(name); }
  bool isGrowthWeek(int week, const char* stepWeeks) const;
  void growAerobic(Week& week);
  void growStrength(Week& week);
  void holdBy(Week& week, const std::string& cap);
  void write(Week& week, bool hasGrown) const;

  const Fitting& fitting_;
  const Growth& growth_;
  bool hasAerobic_, hasStrength_;
};

// Weeks count from the first; slow progression makes each step last longer, a hold week grows nothing.
bool WeekPlanner::isGrowthWeek(int week, const char* stepWeeks) const {
  const auto progression = fitting_.limits.progression;
  if (week == 1 || progression == limits::Progression::None || week % growth_.holdEvery == 0) return false;
  std::int64_t every = std::max<std::int64_t>(1, amount(stepWeeks).floor());
  if (progression == limits::Progression::Slow) every *= growth_.slowFactor;
  return (week - 1) % every == 0;
}

void WeekPlanner::holdBy(Week& week, const std::string& cap) {
  const auto at = fitting_.limits.doseCaps.find(cap);
  if (at == fitting_.limits.doseCaps.end()) return;
  const std::string words = cap + " " + at->second.toText() + inBrackets(fitting_.holders.ofDoseCap(cap, at->second));
  if (week.heldBy.find(words) == std::string::npos) week.heldBy += (week.heldBy.empty() ? "" : "; ") + words;
}

// First longer sessions, then more days; intensity stays.
void WeekPlanner::growAerobic(Week& week) {
  if (week.aerobicMinutesPerWeek >= growth_.weeklyGoal) return;
  const Rational most = fitting_.prescription.minutesPerSessionAtMost;
  const Rational longer = std::min(plus(week.aerobicMinutesPerSession, growth_.minutesStep), most);
  if (longer > week.aerobicMinutesPerSession) {
    week.aerobicMinutesPerSession = longer;
    return;
  }
  if (most < growth_.minutesGoal) {
    holdBy(week, "aerobicMinutesPerSession");
    holdBy(week, "sessionMinutes");
  }
  Rational mostDays = std::max(growth_.daysGoal, week.aerobicDays);
  if (const auto cap = doseCap(fitting_.limits, "aerobicDaysPerWeek")) mostDays = std::min(mostDays, *cap);
  if (week.aerobicDays < mostDays) {
    week.aerobicDays = plus(week.aerobicDays, 1);
  } else if (mostDays < growth_.daysGoal) {
    holdBy(week, "aerobicDaysPerWeek");
  }
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

void WeekPlanner::write(Week& week, bool hasGrown) const {
  const auto& doses = fitting_.doses;
  std::string words;
  if (hasAerobic_)
    words = doses.counted("weekAerobic", week.aerobicDays, {{"minutes", week.aerobicMinutesPerSession.toText(0)},
                                         {"days", week.aerobicDays.toText(0)},
                                         {"total", week.aerobicMinutesPerWeek.toText(0)}});
  if (hasStrength_) {
    if (!words.empty()) words += " ";
    words += doses.counted("weekStrength", week.strengthSets, {{"days", week.strengthDays.toText(0)},
                                           {"sets", week.strengthSets.toText(0)},
                                           {"repetitions", week.strengthRepetitions.toText(0)}});
  }
  if (week.number > 1 && !hasGrown) words += " " + doses.phrase("weekHeld");
  week.words = words;
}

std::vector<Week> WeekPlanner::run() {
  const auto& aerobic = fitting_.prescription.sections.at(Section::Aerobic).dose;
  const auto& strength = fitting_.prescription.sections.at(Section::Strength).dose;
  std::vector<Week> weeks;
  Week week;
  if (hasAerobic_) {
    week.aerobicMinutesPerSession = aerobic.minutes.value_or(Rational(0));
    week.aerobicDays = aerobic.daysPerWeek.value_or(Rational(0));
  }
  if (hasStrength_) {
    week.strengthDays = strength.daysPerWeek.value_or(Rational(0));
    week.strengthSets = strength.sets.value_or(Rational(0));
    week.strengthRepetitions = strength.repetitions.value_or(Rational(0));
  }
  for (int number = 1; number <= growth_.weeks; ++number) {
    week.number = number;
    week.heldBy.clear();
    const Week before = week;
    if (hasAerobic_ && isGrowthWeek(number, "aerobicStepWeeks")) growAerobic(week);
    if (hasStrength_ && isGrowthWeek(number, "strengthStepWeeks")) growStrength(week);
    week.aerobicMinutesPerWeek = times(week.aerobicMinutesPerSession, week.aerobicDays);
    if (fitting_.limits.progression == limits::Progression::None && number > 1)
      week.heldBy = "progression none" + inBrackets(fitting_.holders.ofProgression());
    const bool hasGrown = week.aerobicMinutesPerSession != before.aerobicMinutesPerSession ||
                          week.aerobicDays != before.aerobicDays || week.strengthSets != before.strengthSets ||
                          week.strengthRepetitions != before.strengthRepetitions;
    write(week, hasGrown);
    weeks.push_back(week);
  }
  return weeks;
}

}  // namespace

std::vector<Week> weeksOf(const Fitting& fitting, bool hasAerobic, bool hasStrength) {
  if (!hasAerobic && !hasStrength) return {};
  return WeekPlanner(fitting, hasAerobic, hasStrength).run();
}

}  // namespace stile::plan
