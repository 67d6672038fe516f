#include "documents/week_grid.h"

#include <algorithm>

namespace stile::documents {
namespace {

int countOf(const base::Rational& days) {
  return static_cast<int>(std::clamp<std::int64_t>(days.floor(), 0, 7));
}

int countOf(const Days& days) {
  return static_cast<int>(std::count(days.begin(), days.end(), true));
}

/// True when no two of the days follow each other, Sunday and Monday included.
bool isSpaced(const Days& days) {
  for (std::size_t i = 0; i < 7; ++i)
    if (days[i] && days[(i + 1) % 7]) return false;
  return true;
}

/// `count` days off `taken`, spaced; the first such choice, or nothing.
std::optional<Days> daysOff(const Days& taken, int count) {
  for (unsigned set = 0; set < 128; ++set) {
    Days days{};
    for (std::size_t i = 0; i < 7; ++i) days[i] = (set >> i) & 1u;
    bool isFree = countOf(days) == count && (count < 2 || isSpaced(days));
    for (std::size_t i = 0; i < 7; ++i) isFree = isFree && !(days[i] && taken[i]);
    if (isFree) return days;
  }
  return std::nullopt;
}

}  // namespace

Days spreadOver(int count) {
  // Weekends stay free as long as the count allows; three strength days never touch.
  constexpr std::array<Days, 8> kSpread{{{false, false, false, false, false, false, false},
                                         {false, true, false, false, false, false, false},
                                         {true, false, false, true, false, false, false},
                                         {true, false, true, false, true, false, false},
                                         {true, true, false, true, true, false, false},
                                         {true, true, true, false, true, true, false},
                                         {true, true, true, true, true, true, false},
                                         {true, true, true, true, true, true, true}}};
  return kSpread[static_cast<std::size_t>(std::clamp(count, 0, 7))];
}

std::vector<Days> daysOf(const plan::StarterPlan& plan, const limits::Limits& limits) {
  std::vector<Days> days;
  Days aerobic{}, all{};
  for (const plan::Line& line : plan.lines)
    if (line.exercise->section == plan::Section::Aerobic && line.dose.daysPerWeek) {
      const Days these = spreadOver(countOf(*line.dose.daysPerWeek));
      for (std::size_t i = 0; i < 7; ++i) aerobic[i] = aerobic[i] || these[i];
    }
  const bool keepsApart = limits.doseCaps.contains("sessionMinutes");
  for (const plan::Line& line : plan.lines) {
    Days these{};
    if (line.dose.daysPerWeek) {
      const int count = countOf(*line.dose.daysPerWeek);
      these = spreadOver(count);
      if (keepsApart && line.exercise->section == plan::Section::Strength)
        these = daysOff(aerobic, count).value_or(these);
    }
    for (std::size_t i = 0; i < 7; ++i) all[i] = all[i] || these[i];
    days.push_back(these);
  }
  for (std::size_t i = 0; i < days.size(); ++i)
    if (!plan.lines[i].dose.daysPerWeek) days[i] = all;
  return days;
}

std::vector<std::string> weekWords(const plan::StarterPlan& plan) {
  std::vector<std::string> words;
  for (const plan::Week& week : plan.weeks) {
    // A week in which nothing grows says the same as the one before, and that it does.
    const bool isAsBefore = !words.empty() && week.words.starts_with(words.back());
    words.push_back(isAsBefore ? words.back() : week.words);
  }
  return words;
}

int lastWeekOfGrid(const plan::StarterPlan& plan) {
  for (const plan::Week& week : plan.weeks) {
    const plan::Week& first = plan.weeks.front();
    if (week.aerobicDays != first.aerobicDays || week.strengthDays != first.strengthDays || week.balanceDays != first.balanceDays)
      return week.number - 1;
  }
  return 0;
}

Table weekGrid(const plan::StarterPlan& plan, const limits::Limits& limits, const HandoutTexts& texts) {
  Table table;
  table.isGrid = true;
  table.caption = texts.heading("week");
  table.columns = {texts.phrase("tickWhenDone")};
  for (std::string& day : texts.wordsOf("weekdays")) table.columns.push_back(std::move(day));
  const std::vector<Days> days = daysOf(plan, limits);
  for (std::size_t i = 0; i < plan.lines.size(); ++i) {
    std::vector<Cell> row{{std::to_string(i + 1) + " " + plan.lines[i].exercise->title, CellKind::Text}};
    for (const bool isOn : days[i]) row.push_back({"", isOn ? CellKind::TickBox : CellKind::Rest});
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace stile::documents
