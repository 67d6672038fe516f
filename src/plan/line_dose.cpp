#include "plan/line_dose.h"

#include <algorithm>

namespace stile::plan {
namespace {

using base::Rational;

Rational times(const Rational& a, const Rational& b) { return Rational::multiply(a, b).value_or(Rational(0)); }

int sidesOf(const Candidate& candidate) {
  return candidate.exercise->oneSided && candidate.side.empty() ? 2 : 1;
}

std::string text(const std::optional<Rational>& value) { return value ? value->toText(1) : std::string("?"); }

/// A hold takes as long again to get into and out of.
Rational holdsInMinutes(const Dose& dose, int sides) {
  const Rational seconds = times(times(*dose.holdSeconds, *dose.repetitions), Rational(2 * sides));
  return Rational::divide(seconds, 60).value_or(Rational(0));
}

/// Only what the kind of exercise uses; holds in balance work keep within the line's minutes.
Dose numbersOf(const Candidate& candidate, const SectionDose& section) {
  Dose dose = section.dose;
  const Rational sides = sidesOf(candidate);
  switch (candidate.exercise->dose) {
    case DoseKind::Minutes:
      dose.sets = dose.repetitions = dose.holdSeconds = dose.restSeconds = dose.repetitionsInReserve = std::nullopt;
      break;
    case DoseKind::Repetitions:
      if (candidate.exercise->section == Section::Strength) dose.minutes.reset();
      dose.holdSeconds.reset();
      break;
    case DoseKind::Holds:
      dose.minutes.reset();
      if (candidate.exercise->holdSeconds)
        dose.holdSeconds = std::min(dose.holdSeconds.value_or(*candidate.exercise->holdSeconds), *candidate.exercise->holdSeconds);
      break;
    case DoseKind::BalanceHolds: {
      const Rational perHold = times(times(*dose.holdSeconds, 2), sides);
      const auto fit = Rational::divide(times(*dose.minutes, 60), perHold);
      if (fit) dose.repetitions = std::max(Rational(1), std::min(*dose.repetitions, Rational(fit->floor())));
      dose.minutes.reset();
      break;
    }
  }
  return dose;
}

std::string amountWords(const Candidate& candidate, const Dose& dose, const Library::Doses& doses) {
  const bool isEachSide = sidesOf(candidate) == 2;
  const std::map<std::string, std::string> slots{{"minutes", text(dose.minutes)},     {"sets", text(dose.sets)},
                                                 {"repetitions", text(dose.repetitions)}, {"seconds", text(dose.holdSeconds)},
                                                 {"rest", text(dose.restSeconds)}};
  switch (candidate.exercise->dose) {
    case DoseKind::Minutes: return doses.counted("minutes", dose.minutes.value_or(Rational(0)), slots);
    case DoseKind::Holds: return doses.phrase(isEachSide ? "holdsEachSide" : "holds", slots);
    case DoseKind::BalanceHolds: return doses.phrase(isEachSide ? "balanceHoldsEachSide" : "balanceHolds", slots);
    case DoseKind::Repetitions: {
      const bool isOneSet = !dose.sets || *dose.sets <= Rational(1);
      if (isEachSide) return doses.phrase(isOneSet ? "oneSetEachSide" : "moreSetsEachSide", slots);
      return doses.phrase(isOneSet ? "oneSet" : "moreSets", slots);
    }
  }
  return {};
}

std::string daysWords(const Dose& dose, const Library::Doses& doses) {
  constexpr int kDaysOfWeek = 7;
  if (!dose.daysPerWeek) return doses.phrase("everySession");
  if (*dose.daysPerWeek == Rational(kDaysOfWeek)) return doses.phrase("everyDay");
  return doses.counted("days", *dose.daysPerWeek, {{"days", text(dose.daysPerWeek)}});
}

std::string loadWords(const Exercise& exercise, const Fitting& fitting) {
  std::string words;
  if (exercise.load != Load::Weight && exercise.load != Load::Band) return words;
  if (exercise.load == Load::Weight && fitting.limits.loadKilograms)
    words += " " + fitting.doses.phrase("loadKilograms", {{"kilograms", fitting.limits.loadKilograms->toText(1)}});
  if (fitting.limits.loadPercentOfMaximum)
    words += " " + fitting.doses.phrase("loadPercent", {{"percent", fitting.limits.loadPercentOfMaximum->toText(0)}});
  return words;
}

}  // namespace

Dose doseOf(const Candidate& candidate, const Fitting& fitting) {
  const Exercise& exercise = *candidate.exercise;
  const SectionDose& section = fitting.prescription.sections.at(exercise.section);
  const auto& doses = fitting.doses;
  Dose dose = numbersOf(candidate, section);
  dose.words = amountWords(candidate, dose, doses);
  if (!candidate.side.empty())
    dose.words += " " + doses.phrase(candidate.side == "left only" ? "leftOnly" : "rightOnly");
  dose.words += " " + daysWords(dose, doses);
  if (isGraded(exercise.section)) {
    const bool isOneNumber = *dose.effortLow == *dose.effortHigh;
    dose.words += " " + doses.phrase("effort", {{"effort", isOneNumber ? text(dose.effortLow)
                                                                       : doses.phrase("range", {{"low", text(dose.effortLow)}, {"high", text(dose.effortHigh)}})},
                                                {"words", section.effortWords}});
    dose.words += " " + section.effortClient;
  }
  if (dose.repetitionsInReserve)
    dose.words += " " + doses.phrase("reserve", {{"repetitions", text(dose.repetitionsInReserve)}});
  if (exercise.section == Section::Strength)
    dose.words += " " + doses.phrase("strengthGap", {{"hours", text(fitting.prescription.hoursBetweenStrength)}});
  dose.words += loadWords(exercise, fitting);
  if (dose.heartRateLow && dose.heartRateHigh)
    dose.words += " " + doses.phrase("heartRate", {{"low", text(dose.heartRateLow)}, {"high", text(dose.heartRateHigh)}});
  if (const auto& ceiling = fitting.limits.heartRatePerMinute; ceiling && exercise.section == Section::Aerobic)
    dose.words += " " + doses.phrase("heartRateCeiling", {{"perMinute", ceiling->toText(0)}});
  return dose;
}

int minutesOf(const Candidate& candidate, const Dose& dose, const Library::Doses& doses) {
  Rational minutes = dose.minutes.value_or(Rational(0));
  const int sides = sidesOf(candidate);
  if (candidate.exercise->dose == DoseKind::Holds || candidate.exercise->dose == DoseKind::BalanceHolds) {
    minutes = holdsInMinutes(dose, sides);
  } else if (candidate.exercise->dose == DoseKind::Repetitions && !dose.minutes) {
    const Rational sets = dose.sets.value_or(Rational(1));
    const Rational moving = times(times(*dose.repetitions, doses.secondsPerRepetition), Rational(sides));
    const Rational each = Rational::add(moving, dose.restSeconds.value_or(Rational(0))).value_or(moving);
    minutes = Rational::divide(times(sets, each), 60).value_or(Rational(0));
  }
  return static_cast<int>(std::max<std::int64_t>(1, roundedUp(minutes).floor()));
}

int minutesOf(const Line& line, const Library::Doses& doses) {
  Candidate candidate;
  candidate.exercise = line.exercise;
  candidate.side = line.side;
  return minutesOf(candidate, line.dose, doses);
}

}  // namespace stile::plan
