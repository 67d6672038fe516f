#include "records/progression.h"

#include <algorithm>

namespace stile::records {
namespace {

constexpr int kDaysOfWeek = 7;

base::Rational numberIn(json::Node node, const char* key) {
  const auto found = node.find(key);
  return found && found->isNumber() ? found->number().value_or(base::Rational(0)) : base::Rational(0);
}

std::optional<Move> moveOf(const std::string& id) {
  static const std::pair<const char*, Move> kMoves[] = {{"on", Move::On}, {"again", Move::Again}, {"back", Move::Back}, {"half", Move::Half}, {"start", Move::Start}};
  for (const auto& [word, move] : kMoves)
    if (id == word) return move;
  return std::nullopt;
}

/// Sessions that the plan has in so many weeks, beginning with week `week`; whole ones.
long long plannedSessions(const PlanOutline& plan, int week, int weeks) {
  long long sum = 0;
  for (int i = 0; i < weeks; ++i) sum += plan.weeks[static_cast<std::size_t>(std::min(week + i, static_cast<int>(plan.weeks.size()))) - 1].sessions.floor();
  return sum;
}

bool holds(const ProgressionRule& rule, const CheckIn& told, long long planned, long long effortHigh) {
  constexpr long long kPercent = 100;
  if (rule.isIllness && !told.wasIll) return false;
  if (rule.isUntold && told.sessionsDone && told.effort && told.painNextMorning) return false;
  if (rule.painFrom && !(told.painNextMorning && *told.painNextMorning >= *rule.painFrom)) return false;
  if (rule.isAboveUsual && !(told.painNextMorning && *told.painNextMorning > told.usualPain.value_or(0))) return false;
  if (rule.effortAboveBy && !(told.effort && *told.effort >= effortHigh + *rule.effortAboveBy)) return false;
  if (rule.weeksMissedFrom && !(told.weeksMissed && *told.weeksMissed >= *rule.weeksMissedFrom)) return false;
  if (rule.sessionsBelowPercent && !(told.sessionsDone && *told.sessionsDone * kPercent < planned * *rule.sessionsBelowPercent)) return false;
  return true;
}

/// The last week with at most half of the minutes of `week`.
int halfOf(const PlanOutline& plan, int week) {
  const auto minutes = [&plan](int number) { return plan.weeks[static_cast<std::size_t>(number) - 1].aerobicMinutes.floor(); };
  int half = 1;
  for (int number = 1; number <= week; ++number)
    if (minutes(number) * 2 <= minutes(week)) half = number;
  return half;
}

}  // namespace

PlanOutline PlanOutline::of(json::Node result) {
  PlanOutline outline;
  const auto plan = result.find("plan");
  if (!plan || !plan->isObject()) return outline;
  const auto weeks = plan->find("weeks"), lines = plan->find("lines");
  for (std::size_t i = 0; weeks && i < weeks->size(); ++i) {
    const json::Node week = weeks->at(i);
    const auto words = week.find("words");
    outline.weeks.push_back({std::max(numberIn(week, "aerobicDays"), numberIn(week, "strengthDays")), numberIn(week, "aerobicMinutesPerWeek"),
                             words && words->isString() ? words->string() : ""});
  }
  for (std::size_t i = 0; lines && i < lines->size(); ++i)
    if (const auto dose = lines->at(i).find("dose")) outline.effortHigh = std::max(outline.effortHigh, numberIn(*dose, "effortHigh"));
  return outline;
}

std::vector<ProgressionRule> readProgression(json::ObjectReader& parent, base::Issues& issues) {
  std::vector<ProgressionRule> rules;
  for (const json::Node node : parent.array("progression")) {
    json::ObjectReader reader(node, "progression", issues);
    ProgressionRule rule;
    rule.id = reader.requireString("id");
    const auto number = [&reader](const char* key, std::optional<long long>& into) {
      if (reader.find(key)) into = reader.integer(key);
    };
    number("painFrom", rule.painFrom);
    number("effortAboveBy", rule.effortAboveBy);
    number("weeksMissedFrom", rule.weeksMissedFrom);
    number("sessionsBelowPercent", rule.sessionsBelowPercent);
    rule.isAboveUsual = reader.boolean("aboveUsual").value_or(false);
    rule.isIllness = reader.boolean("illness").value_or(false);
    rule.isUntold = reader.boolean("untold").value_or(false);
    const std::string move = reader.requireString("then");
    if (const auto known = moveOf(move))
      rule.move = *known;
    else
      reader.issue(node, "\"then\" must be one of: on, again, back, half, start");
    rule.clinician = reader.requireString("clinician");
    rule.client = reader.requireString("client");
    reader.strings("sources");
    reader.finish();
    rules.push_back(std::move(rule));
  }
  const auto isLast = [](const ProgressionRule& rule) {
    return !rule.painFrom && !rule.effortAboveBy && !rule.weeksMissedFrom && !rule.sessionsBelowPercent && !rule.isAboveUsual && !rule.isIllness && !rule.isUntold;
  };
  const auto last = std::find_if(rules.begin(), rules.end(), isLast);
  if (last == rules.end() || last + 1 != rules.end())
    parent.issue(parent.node(), "the last rule of \"progression\", and no other, stands without a condition", "end with one such as {\"id\": \"well\", \"then\": \"on\", …}");
  return rules;
}

PlanStand standIn(const PlanOutline& plan, base::Date begun, const std::vector<CheckIn>& checkIns, const std::vector<ProgressionRule>& rules, base::Date today) {
  const int last = static_cast<int>(plan.weeks.size());
  PlanStand stand{1, begun, nullptr};
  const auto weeksUntil = [&stand](base::Date day) { return std::max(0, day.dayNumber() - stand.since.dayNumber()) / kDaysOfWeek; };
  const auto goOnUntil = [&](base::Date day) {
    const int weeks = weeksUntil(day);
    stand.week = std::min(stand.week + weeks, last);
    stand.since = base::Date::fromDayNumber(stand.since.dayNumber() + weeks * kDaysOfWeek);
  };
  base::Date told = begun;
  int weekThen = 1;
  for (const CheckIn& checkIn : checkIns) {
    if (checkIn.date < begun || checkIn.date > today) continue;
    const int weeks = std::max(0, checkIn.date.dayNumber() - told.dayNumber()) / kDaysOfWeek;
    const long long planned = plannedSessions(plan, weekThen, weeks);
    goOnUntil(checkIn.date);
    const auto rule = std::find_if(rules.begin(), rules.end(), [&](const ProgressionRule& one) { return holds(one, checkIn, planned, plan.effortHigh.floor()); });
    if (rule == rules.end()) continue;
    stand.because = &*rule;
    const int now = stand.week;
    switch (rule->move) {
      case Move::On: break;
      case Move::Again: stand.week = now - 1; break;
      case Move::Back: stand.week = now - 2; break;
      case Move::Half: stand.week = halfOf(plan, std::max(1, now - 1)); break;
      case Move::Start: stand.week = 1; break;
    }
    stand.week = std::clamp(stand.week, 1, last);
    if (rule->move != Move::On) stand.since = checkIn.date;
    told = checkIn.date;
    weekThen = stand.week;
  }
  goOnUntil(today);
  return stand;
}

}  // namespace stile::records
