#include "desktop/today_list.h"

#include <array>
#include <set>

namespace stile::desktop {
namespace {

using application::ClientLine;

std::string nameOf(const ClientLine& line, base::Date today) {
  const std::string age = ageInWords(line.card.born, today);
  return line.card.name() + (age.empty() ? "" : ", " + age);
}

std::string stateWords(const ClientLine& line) {
  if (!line.card.mergedInto.empty()) return "Another record of the same person";
  if (line.card.state != "active" && !line.card.state.empty()) return "State: " + line.card.state;
  return line.card.tasks.empty() ? "No screening yet" : "Nothing is due";
}

}  // namespace

std::string ageInWords(const std::string& born, base::Date today) {
  const auto day = base::Date::parse(born);
  if (!day) return {};
  const int years = base::completedUnits(*day, today, base::CalendarUnit::Year);
  return years == 1 ? "1 year" : std::to_string(years) + " years";
}

std::string dayInWords(base::Date day) {
  constexpr std::array<const char*, 7> kDays{"Thursday", "Friday", "Saturday", "Sunday", "Monday", "Tuesday", "Wednesday"};
  const std::string date = day.toLongText();
  return std::string(kDays[static_cast<std::size_t>(((day.dayNumber() % 7) + 7) % 7)]) + " " + date.substr(0, date.rfind(' '));
}

std::vector<TodayGroup> todayListOf(const application::Clinic& clinic, base::Date today, const std::string& part) {
  if (!part.empty()) {
    TodayGroup found{"Found", {}};
    for (const ClientLine* line : clinic.find(part)) found.rows.push_back({line->id, nameOf(*line, today), stateWords(*line), {}});
    if (found.rows.empty()) return {};
    return {found};
  }
  TodayGroup ours{"Waiting for you", {}}, clients{"Waiting for the client", {}}, others{"Waiting for a physician", {}}, rest{"Clients", {}};
  std::set<std::string> listed;
  for (const auto& line : clinic.worklist(today, false)) {
    if (!listed.insert(line.id).second) continue;
    const std::string& whom = line.task.waitingFor;
    TodayGroup& group = whom == "us" || whom == "a second clinician" ? ours : whom == "the client" ? clients : others;
    group.rows.push_back({line.id, nameOf(*clinic.client(line.id), today), line.next, "since " + line.task.since.toLongText()});
  }
  for (const ClientLine* line : clinic.find(""))
    if (!listed.contains(line->id)) rest.rows.push_back({line->id, nameOf(*line, today), stateWords(*line), {}});
  std::vector<TodayGroup> groups;
  for (TodayGroup* group : {&ours, &clients, &others, &rest})
    if (!group->rows.empty()) groups.push_back(std::move(*group));
  return groups;
}

}  // namespace stile::desktop
