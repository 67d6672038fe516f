#include "plan/prescription.h"

#include <algorithm>

namespace stile::plan {
namespace {

using base::Rational;
using limits::Bay;
using limits::Rung;

Rational minus(const Rational& a, const Rational& b) { return Rational::subtract(a, b).value_or(Rational(0)); }
Rational plus(const Rational& a, const Rational& b) { return Rational::add(a, b).value_or(Rational(0)); }

class Prescriber {
 public:
  Prescriber(const Library::Doses& doses, const Request& request, const Holders& holders)
      : doses_(doses), request_(request), holders_(holders) {}

  Prescription run();

 private:
  SectionDose& at(Section section) { return result_.sections[section]; }
  const Rational& amount(std::string_view name) const { return result_.level->dose.amounts.at(std::string(name)); }
  std::optional<Rational> known(int slot) const;

  void chooseLevel();
  void openSections();
  Rung levelRung(Section section) const;
  void setEffort(Section section, SectionDose& section_dose);
  /// The level's amount under a dose cap; notes the rules when the cap binds.
  Rational under(const char* cap, Rational value, SectionDose& section);
  Rational above(const char* floor, Rational value, SectionDose& section);
  void shut(SectionDose& section, const std::string& because, const std::vector<std::string>& by);
  void shutIfNothing(Section section, const Rational& amount, const char* cap);
  void aerobicTime();
  void sessionTime();
  void heartRate();
  void strength();
  void balance();
  void stretchingAndBreathing();

  const Library::Doses& doses_;
  const Request& request_;
  const Holders& holders_;
  Prescription result_;
};

std::optional<Rational> Prescriber::known(int slot) const {
  if (slot < 0) return std::nullopt;
  return request_.facts.at(slot).value.low;
}

void Prescriber::chooseLevel() {
  const facts::FactSlots slots(request_.facts);
  for (const Level& level : doses_.levels) {
    if (level.when && level.when->evaluate(slots).truth != expression::Truth::True) continue;
    result_.level = &level;
    result_.levelBecause = level.because;
    return;
  }
}

// The aerobic start is moderate where moderate activity is certainly done now (and nothing caps it).
Rung Prescriber::levelRung(Section section) const {
  if (!isGraded(section)) return Rung::Light;
  const Rung own = result_.level->rung[bayOf(section)];
  if (section != Section::Aerobic || !result_.level->keepsModerate || doses_.currentModerateSlot < 0) return own;
  const bool isModerate =
      request_.facts.at(doses_.currentModerateSlot).value.truth == expression::Truth::True;
  return isModerate ? std::max(own, Rung::Moderate) : own;
}

void Prescriber::shut(SectionDose& section, const std::string& because, const std::vector<std::string>& by) {
  section.isOpen = false;
  section.shutBecause = because + inBrackets(by);
  section.shutBy = by;
}

void Prescriber::openSections() {
  for (Section section : kSections) {
    SectionDose& entry = at(section);
    const Bay bay = bayOf(section);
    entry.linesAtMost = result_.level->lines.at(section);
    if (request_.usable[bay] == Rung::None) {
      shut(entry, std::string("the ") + limits::idOf(bay) + " bay is at rest", holders_.ofRung(bay, Rung::Light));
      continue;
    }
    entry.isOpen = true;
    entry.rung = std::min(request_.usable[bay], levelRung(section));
    if (entry.rung < levelRung(section)) addEach(entry.shapedBy, holders_.ofRung(bay, levelRung(section)));
    setEffort(section, entry);
  }
}

void Prescriber::setEffort(Section section, SectionDose& entry) {
  const char* name = bayOf(section) == Bay::Aerobic ? "aerobicEffort" : "strengthEffort";
  const auto cap = request_.limits.doseCaps.find(name);
  const bool isCapped = cap != request_.limits.doseCaps.end();
  const auto& percent = request_.limits.loadPercentOfMaximum;
  while (entry.rung > Rung::Light) {
    const EffortRow* row = doses_.effort(section, entry.rung);
    const auto heaviest = doses_.loadPercentOfMaximum.find(entry.rung);
    const bool isTooHeavy = section == Section::Strength && percent && heaviest != doses_.loadPercentOfMaximum.end() &&
                            heaviest->second > *percent;
    if (isTooHeavy) addEach(entry.shapedBy, holders_.ofLoad());
    if (row != nullptr && !isTooHeavy && (!isCapped || row->low <= cap->second)) break;
    entry.rung = static_cast<Rung>(static_cast<int>(entry.rung) - 1);
  }
  const EffortRow* row = doses_.effort(section, entry.rung);
  if (row == nullptr) {
    shut(entry, std::string("no effort is laid down for ") + idOf(section), {});
    return;
  }
  entry.dose.effortHigh = under(name, row->high, entry);
  if (*entry.dose.effortHigh < Rational(1)) shutIfNothing(section, *entry.dose.effortHigh, name);
  entry.dose.effortLow = std::min(row->low, *entry.dose.effortHigh);
  entry.effortWords = wordsFor(doses_, *entry.dose.effortLow, *entry.dose.effortHigh);
  entry.effortClient = row->client;
  if (row->repetitionsInReserve)
    entry.dose.repetitionsInReserve = above("repetitionsInReserve", *row->repetitionsInReserve, entry);
}

Rational Prescriber::under(const char* cap, Rational value, SectionDose& section) {
  const auto limit = doseCap(request_.limits, cap);
  if (!limit || *limit >= value) return value;
  addEach(section.shapedBy, holders_.ofDoseCap(cap, request_.limits.doseCaps.at(cap)));
  return *limit;
}

Rational Prescriber::above(const char* floor, Rational value, SectionDose& section) {
  const auto limit = request_.limits.doseFloors.find(floor);
  if (limit == request_.limits.doseFloors.end() || roundedUp(limit->second) <= value) return value;
  addEach(section.shapedBy, holders_.ofDoseFloor(floor, limit->second));
  return roundedUp(limit->second);
}

void Prescriber::shutIfNothing(Section section, const Rational& left, const char* cap) {
  SectionDose& entry = at(section);
  if (!entry.isOpen || left >= Rational(1)) return;
  const auto limit = request_.limits.doseCaps.find(cap);
  const Rational value = limit == request_.limits.doseCaps.end() ? Rational(0) : limit->second;
  shut(entry, std::string("the limit ") + cap + " leaves nothing", holders_.ofDoseCap(cap, value));
}

void Prescriber::aerobicTime() {
  SectionDose& entry = at(Section::Aerobic);
  Rational minutes = amount("aerobicMinutes"), days = amount("aerobicDays");
  const auto nowMinutes = known(doses_.currentMinutesSlot), nowDays = known(doses_.currentDaysSlot);
  if (nowMinutes && nowDays) {
    // The weekly total is kept; long sessions on few days are spread over the level's days.
    const Rational now = Rational::multiply(*nowMinutes, *nowDays).value_or(Rational(0));
    if (now > Rational::multiply(minutes, days).value_or(now)) {
      days = std::max(days, *nowDays);
      minutes = std::max(minutes, roundedUp(Rational::divide(now, days).value_or(minutes)));
      result_.levelBecause += " Aerobic time is not set below what is done now: " + nowMinutes->toText() +
                              " minutes on " + nowDays->toText() + " days a week.";
    }
  }
  entry.dose.minutes = under("aerobicMinutesPerSession", minutes, entry);
  entry.dose.daysPerWeek = under("aerobicDaysPerWeek", days, entry);
  shutIfNothing(Section::Aerobic, *entry.dose.minutes, "aerobicMinutesPerSession");
  shutIfNothing(Section::Aerobic, *entry.dose.daysPerWeek, "aerobicDaysPerWeek");
}

// Warm-up and cool-down come first; the aerobic part takes what the session cap leaves. They give
// way only as far as is needed, and never below their floors unless those alone exceed the cap.
void Prescriber::sessionTime() {
  SectionDose& warmUp = at(Section::WarmUp);
  SectionDose& coolDown = at(Section::CoolDown);
  SectionDose& aerobic = at(Section::Aerobic);
  Rational warm = above("warmUpMinutes", amount("warmUpMinutes"), warmUp);
  Rational cool = above("coolDownMinutes", amount("coolDownMinutes"), coolDown);
  result_.minutesPerSessionAtMost = std::max(doses_.growth.minutesGoal, *aerobic.dose.minutes);
  if (const auto cap = doseCap(request_.limits, "aerobicMinutesPerSession"))
    result_.minutesPerSessionAtMost = std::min(result_.minutesPerSessionAtMost, *cap);
  if (const auto session = doseCap(request_.limits, "sessionMinutes")) {
    result_.sessionMinutes = static_cast<int>(session->floor());
    const auto by = holders_.ofDoseCap("sessionMinutes", request_.limits.doseCaps.at("sessionMinutes"));
    const Rational least = std::min(doses_.leastAerobicMinutes, *aerobic.dose.minutes);
    const auto giveWay = [&](Rational& minutes, const Rational& floor, const Rational& wanted) {
      const Rational missing = minus(plus(plus(warm, cool), wanted), *session);
      if (missing > Rational(0) && minutes > floor) minutes = std::max(floor, minus(minutes, missing));
    };
    SectionDose unused;
    giveWay(warm, above("warmUpMinutes", std::min(doses_.leastWarmUpMinutes, warm), unused), least);
    giveWay(cool, above("coolDownMinutes", std::min(doses_.leastCoolDownMinutes, cool), unused), least);
    if (plus(warm, cool) > *session) {
      result_.floorsDoNotFit = true;
      cool = std::min(cool, *session);
      warm = minus(*session, cool);
    }
    const Rational left = minus(*session, plus(warm, cool));
    if (aerobic.isOpen && left < *aerobic.dose.minutes) {
      result_.mainPartShrank = true;
      aerobic.dose.minutes = left;
      addEach(aerobic.shapedBy, by);
      addEach(aerobic.shapedBy, warmUp.shapedBy);
      addEach(aerobic.shapedBy, coolDown.shapedBy);
      if (left < Rational(1)) shut(aerobic, "warm-up and cool-down fill the session", aerobic.shapedBy);
    }
    result_.minutesPerSessionAtMost = std::min(result_.minutesPerSessionAtMost, left);
  }
  warmUp.dose.minutes = warm;
  coolDown.dose.minutes = cool;
  shutIfNothing(Section::WarmUp, warm, "sessionMinutes");
  shutIfNothing(Section::CoolDown, cool, "sessionMinutes");
}

// Both facts must be known and the guide must allow it; a heart-rate ceiling cuts the band's top.
void Prescriber::heartRate() {
  SectionDose& entry = at(Section::Aerobic);
  if (!entry.isOpen || request_.limits.effortGuide != limits::EffortGuide::HeartRateAllowed) return;
  const auto band = doses_.heartRate.find(entry.rung);
  if (band == doses_.heartRate.end()) return;
  const facts::FactSlots slots(request_.facts);
  const auto low = band->second.low.evaluate(slots), high = band->second.high.evaluate(slots);
  if (!low.isSettled() || !high.isSettled()) return;
  Rational top = Rational(high.low->floor());
  const Rational bottom = roundedUp(*low.low);
  if (const auto& ceiling = request_.limits.heartRatePerMinute) top = std::min(top, Rational(ceiling->floor()));
  if (bottom > top) return;
  entry.dose.heartRateLow = bottom;
  entry.dose.heartRateHigh = top;
}

void Prescriber::strength() {
  SectionDose& entry = at(Section::Strength);
  result_.hoursBetweenStrength = above("hoursBetweenStrength", doses_.hoursBetweenStrength, entry);
  entry.dose.sets = under("strengthSets", amount("strengthSets"), entry);
  entry.dose.repetitions = under("strengthRepetitions", amount("strengthRepetitions"), entry);
  constexpr int kHoursPerWeek = 7 * 24;
  const auto fits = Rational::divide(kHoursPerWeek, result_.hoursBetweenStrength);
  const Rational days = under("strengthDaysPerWeek", amount("strengthDays"), entry);
  entry.dose.daysPerWeek = std::max(Rational(1), fits ? std::min(days, Rational(fits->floor())) : days);
  entry.dose.restSeconds = above("restSeconds", amount("restSeconds"), entry);
  shutIfNothing(Section::Strength, *entry.dose.sets, "strengthSets");
  shutIfNothing(Section::Strength, *entry.dose.repetitions, "strengthRepetitions");
  shutIfNothing(Section::Strength, days, "strengthDaysPerWeek");
}

// The minutes of a session are shared among as many balance lines as the level has.
void Prescriber::balance() {
  SectionDose& entry = at(Section::Balance);
  const Rational minutes = under("balanceMinutes", amount("balanceMinutes"), entry);
  shutIfNothing(Section::Balance, minutes, "balanceMinutes");
  const auto whole = std::max<std::int64_t>(1, minutes.floor());
  entry.linesAtMost = static_cast<int>(std::min<std::int64_t>(entry.linesAtMost, whole));
  entry.dose.minutes = Rational(whole / std::max(1, result_.level->lines.at(Section::Balance)));
  if (*entry.dose.minutes < Rational(1)) entry.dose.minutes = Rational(1);
  entry.dose.holdSeconds = amount("balanceHoldSeconds");
  entry.dose.repetitions = amount("balanceRepetitions");
  entry.dose.daysPerWeek = amount("balanceDays");
}

void Prescriber::stretchingAndBreathing() {
  SectionDose& stretch = at(Section::Stretching);
  stretch.dose.holdSeconds = under("stretchHoldSeconds", amount("stretchHoldSeconds"), stretch);
  stretch.dose.repetitions = amount("stretchRepetitions");
  stretch.dose.minutes = amount("stretchMinutes");
  stretch.dose.daysPerWeek = amount("stretchDays");
  shutIfNothing(Section::Stretching, *stretch.dose.holdSeconds, "stretchHoldSeconds");
  at(Section::Breathing).dose.minutes = amount("breathingMinutes");
}

Prescription Prescriber::run() {
  chooseLevel();
  if (result_.level == nullptr) return result_;
  openSections();
  aerobicTime();
  sessionTime();
  heartRate();
  strength();
  balance();
  stretchingAndBreathing();
  return result_;
}

}  // namespace

std::optional<Rational> doseCap(const limits::Limits& limits, const std::string& name) {
  const auto at = limits.doseCaps.find(name);
  if (at == limits.doseCaps.end()) return std::nullopt;
  return std::max(Rational(0), Rational(at->second.floor()));
}

Rational roundedUp(const Rational& value) { return Rational(-value.negated().floor()); }

Prescription prescribe(const Library::Doses& doses, const Request& request, const Holders& holders) {
  return Prescriber(doses, request, holders).run();
}

}  // namespace stile::plan
